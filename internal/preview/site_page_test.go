//go:build judges

package preview

import (
	"fmt"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// begin begins a copy of a layout on the page of all quilts, and waits for its picture.
func (p *tab) begin(which int, name string) {
	p.t.Helper()
	p.until(`document.querySelectorAll('#beginnings button').length > 5`)
	eval[bool](p, fmt.Sprintf(`(document.querySelectorAll('#beginnings button')[%d].click(), true)`, which))
	p.until(`document.getElementById('naming').open && document.activeElement.id === 'name'`)
	eval[bool](p, `(document.getElementById('name').value = '`+name+`', true)`)
	p.key(kb.Enter)
	p.arrive()
}

// arrive waits for a picture, whichever page is on its way.
func (p *tab) arrive() {
	p.t.Helper()
	for deadline := time.Now().Add(patience); time.Now().Before(deadline); time.Sleep(20 * time.Millisecond) {
		if there, err := chromedp.Run(p.ctx, chromedp.Evaluate[bool](`document.querySelector('.pane svg path') !== null && !document.querySelector('[data-action=text]').hidden`)); err == nil && there {
			return
		}
	}
	p.t.Fatalf("there is no picture; the page says %s", eval[string](p, `document.body.innerText`))
}

// TestSite: from the folder of `site` alone, on a host that knows nothing and forbids what pages need not do, a layout is begun, drawn,
// typed in, and there again when the page is loaded anew.
func TestSite(t *testing.T) {
	h, p := newHost(t), newTab(t)
	p.do(chromedp.Navigate(h.URL))
	p.begin(2, "mine")
	p.openText()
	p.caret("\n")
	p.key("# typed\n")
	p.until(saved)
	typed := eval[string](p, typedText)
	p.do(chromedp.Reload())
	p.arrive()
	p.openText()
	if again := eval[string](p, typedText); again != typed {
		t.Errorf("after it was loaded again the page has\n%s", again)
	}
	for _, wrong := range h.asked {
		t.Error(wrong)
	}
}
