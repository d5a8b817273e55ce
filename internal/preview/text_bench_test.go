//go:build judges

package preview

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// typingWork notes for each keystroke how long the page works on it, from the key to a page that is laid out anew, in milliseconds.
const typingWork = `(() => {
	window.strokes = [];
	let began = 0;
	addEventListener('keydown', () => { began = performance.now(); }, true);
	addEventListener('input', (e) => queueMicrotask(() => {
		e.target.parentElement.getBoundingClientRect();
		window.strokes.push(performance.now() - began);
	}));
	return true;
})()`

// BenchmarkTyping types in the middle of a lap quilt's layout and of one of 200 by 200 blocks, in the pane and in a plain field with
// the same text; the aim is 16 ms a keystroke at the median.
func BenchmarkTyping(b *testing.B) {
	rows := strings.Repeat("  "+strings.TrimSpace(strings.Repeat("W F ", 100))+"\n", 200)
	large := "title \"Two hundred\"\nstrip 4\nfabric sand #f0e4cc\nfabric deep #24445a\nblock W plain piece sand\nblock F plain piece deep\ngrid\n" + rows
	for name, text := range map[string]string{"lap": starfish(b), "200 by 200": large} {
		for _, where := range []string{"pane", "plain"} {
			b.Run(name+", "+where, func(b *testing.B) {
				r := start(b, text, Options{Edit: true})
				p := newTab(b)
				p.load(r.address)
				if where == "pane" {
					p.until(`!document.querySelector('[data-action=text]').hidden`)
					p.press("text")
					p.until(`document.querySelector('#typed-layer .keyword')`)
				} else {
					eval[bool](p, fmt.Sprintf(`(document.body.innerHTML = '<div><textarea id="typed" wrap="off" style="width: 450px; height: 600px"></textarea></div>', document.getElementById('typed').value = %q, document.getElementById('typed').focus(), true)`, text))
				}
				p.caret("grid\n")
				eval[bool](p, typingWork)
				b.ResetTimer()
				for i := range b.N {
					p.do(chromedp.KeyEvent(string(rune('a' + i%26))))
					time.Sleep(30 * time.Millisecond)
				}
				b.StopTimer()
				p.until(`window.strokes.length > 0`)
				b.ReportMetric(eval[float64](p, `window.strokes.sort((a, b) => a - b)[Math.floor(window.strokes.length / 2)]`), "work-ms")
				b.ReportMetric(0, "ns/op")
			})
		}
	}
}
