//go:build judges

package preview

import (
	"bytes"
	"context"
	"image/png"
	"os"
	"testing"

	"github.com/chromedp/chromedp"

	"eighthturn/internal/quilttest/golden"
)

// The README's picture of the page is what the page looks like, but for a hair; one number that is another differs by more.
func TestReadmeShowsThePage(t *testing.T) {
	text, err := os.ReadFile("../../samples/lanterns.quilt")
	must(t, err)
	r, p := start(t, string(text), Options{}), newTab(t)
	r.next()
	p.do(chromedp.EmulateViewport(1280, 800))
	p.load(r.address)
	p.turnTo(1, "To buy")
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	shot, err := chromedp.Run(ctx, chromedp.CaptureScreenshot())
	must(t, err)
	picture, err := png.Decode(bytes.NewReader(shot))
	must(t, err)
	golden.Picture(t, "../../testdata/pictures/preview.png", picture, golden.Slack{StrongShare: 0.001, MeanLevels: 0.5})
}
