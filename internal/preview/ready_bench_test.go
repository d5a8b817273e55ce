//go:build judges

package preview

import (
	"context"
	"path/filepath"
	"testing"

	pages "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// BenchmarkReady measures from the opening of a tab to the second frame after the first picture of a lap quilt in it, by the page's own
// clock: what a reader waits for who has the program running.
func BenchmarkReady(b *testing.B) {
	need(b)
	file := filepath.Join(b.TempDir(), "a.quilt")
	put(b, file, quiltOf(12, 12, false))
	ctx, cancel := context.WithCancel(context.Background())
	addresses, published, ended := make(chan string, 1), make(chan bool, 1), make(chan error, 1)
	o := Options{NoOpen: true, opened: func(a string) { addresses <- a }, published: func(*snapshot, timings) { published <- true }}
	go func() { ended <- Run(ctx, file, o) }()
	defer func() { cancel(); <-ended }()
	address := <-addresses
	<-published
	var list []float64
	for b.Loop() {
		p := newTab(b)
		_, err := chromedp.Call(p.ctx, pages.AddScriptToEvaluateOnNewDocument, pages.AddScriptToEvaluateOnNewDocumentParams{Source: `
			document.addEventListener('shown', () => requestAnimationFrame(() => requestAnimationFrame(() => { window.ready ??= performance.now(); })), { once: true });`})
		must(b, err)
		p.do(navigate(address))
		p.until(`window.ready`)
		list = append(list, eval[float64](p, `window.ready`))
	}
	measured(b, "all", list)
}
