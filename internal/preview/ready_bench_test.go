//go:build judges

package preview

import (
	"context"
	"path/filepath"
	"testing"
	"time"

	pages "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// BenchmarkReady measures from the opening of a tab until the first picture of a lap quilt is seen in it, by the page's own clock: what a
// reader waits for who has the program running. Beside it stands the smallest page that shows as much, since a browser has enough to do
// with any.
func BenchmarkReady(b *testing.B) {
	need(b)
	file := filepath.Join(b.TempDir(), "a.quilt")
	put(b, file, quiltOf(12, 12, false))
	ctx, cancel := context.WithCancel(context.Background())
	addresses, published, ended := make(chan string, 1), make(chan bool, 1), make(chan error, 1)
	o := Options{NoOpen: true, opened: func(a string) { addresses <- a }, published: func(*snapshot, timings) { published <- true }}
	go func() { ended <- Run(ctx, file, o) }()
	defer func() { cancel(); <-ended }()
	address, plain := <-addresses, newPlain(b, file).URL
	<-published
	previews, plains := []float64{}, []float64{}
	for b.Loop() {
		previews = append(previews, seenAfter(b, address))
		plains = append(plains, seenAfter(b, plain))
	}
	measured(b, "all", previews)
	measured(b, "plain", plains)
}

// seenAfter is how many milliseconds after it was opened a page's first picture is seen.
func seenAfter(b *testing.B, address string) float64 {
	p := newTab(b)
	defer func() { must(b, chromedp.Cancel(p.ctx)) }() // pages that stay open are in one another's way
	_, err := chromedp.Call(p.ctx, pages.AddScriptToEvaluateOnNewDocument, pages.AddScriptToEvaluateOnNewDocumentParams{Source: watching + `;
		window.painted = ({ Seen }) => { window.ready ??= Seen - performance.timeOrigin; };`})
	must(b, err)
	p.do(navigate(address))
	p.until(`window.ready`)
	return eval[float64](p, `window.ready`)
}

// BenchmarkReadyWithAPhoto measures from the start of the program on a layout with a photo of 24 megapixels, in whose browser the page is opened
// at once, until the first picture is seen ("first"), and until prints are seen over it ("prints"); "read" is what the photo took of that.
func BenchmarkReadyWithAPhoto(b *testing.B) {
	need(b)
	_, file := withLargePhoto(b)
	first, prints, read := []float64{}, []float64{}, []float64{}
	for b.Loop() {
		ctx, cancel := context.WithCancel(context.Background())
		addresses, published, ended := make(chan string, 1), make(chan timings, 1), make(chan error, 1)
		o := Options{NoOpen: true, opened: func(a string) { addresses <- a }, published: func(_ *snapshot, t timings) { published <- t }}
		p := newTab(b)
		began := time.Now()
		go func() { ended <- Run(ctx, file, o) }()
		p.beforehand(watching + `;
			window.painted = ({ Save, Seen }) => { if (Save === 'prints') window.printed = Seen; else if (Save) window.ready ??= Seen; };
			document.addEventListener('DOMContentLoaded', () => new MutationObserver(() => {
				if (!window.asked && document.querySelector('image.prints')?.hasAttribute('href')) { window.asked = true; window.look('prints', {}); }
			}).observe(document.body, { attributes: true, childList: true, subtree: true, attributeFilter: ['href'] }));`)
		p.do(navigate(<-addresses))
		p.until(`window.ready && window.printed`)
		first = append(first, eval[float64](p, `window.ready`)-milliseconds(began))
		prints = append(prints, eval[float64](p, `window.printed`)-milliseconds(began))
		t := <-published
		read = append(read, float64(t.draw.Microseconds())/1000)
		must(b, chromedp.Cancel(p.ctx))
		cancel()
		<-ended
	}
	measured(b, "first", first)
	measured(b, "prints", prints)
	measured(b, "read", read)
}
