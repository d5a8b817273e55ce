//go:build judges

package preview

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// TestSizesOnThePage: a key and a menu show the quilt in the layout's sizes; the facts, the report, what is saved and the address go with
// it, and so do colorways and errors' lines; saves keep it while it is there, and where it is gone the page says so.
func TestSizesOnThePage(t *testing.T) {
	r, p := start(t, inSizes, Options{Edit: true}), newTab(t)
	p.load(r.address)
	p.watching()
	const name, facts = `document.getElementById('size-name').textContent`, `document.getElementById('facts').textContent`
	p.until(name + ` === 'lap' && ` + facts + `.includes('4 × 3 blocks')`)
	p.key("r")
	p.until(reporting)
	p.key("z")
	p.until(name + ` === 'queen' && ` + facts + `.includes('8 × 9 blocks') && location.hash.includes('size=queen') && document.getElementById('title').textContent === 'Seafarers'`)
	p.until(reporting)
	eval[bool](p, `(document.getElementById('tab-5').click(), true)`)
	p.until(reporting + ` && document.querySelector('#report-rows a.file')?.getAttribute('href') === 'save/picture.svg?size=queen' && document.querySelector('#report-rows a.file').download === 'quilt-queen.svg'`)
	p.key("o")
	p.until(`document.querySelector('#report-rows a.file')?.download === 'quilt-queen-dusk.svg' && document.querySelector('#report-rows a.file').getAttribute('href') === 'save/picture.svg?size=queen&colorway=dusk'`)
	if got := eval[string](p, `document.getElementById('save-picture').getAttribute('href') + ' ' + document.getElementById('save-picture').download`); got != "picture.svg?view=colour&seams=1&size=queen&colorway=dusk quilt-queen-dusk-color.svg" {
		t.Errorf("the picture is saved from %s", got)
	}
	p.picture("size-queen")
	other := p.beside()
	other.do(chromedp.EmulateViewport(390, 844))
	other.load(eval[string](p, `location.href`))
	other.until(name + ` === 'queen' && ` + facts + `.includes('8 × 9 blocks')`)
	other.picture("size-queen-phone")
	put(t, r.file, strings.Replace(inSizes, "border 5", "border 6", 1))
	p.revision(2)
	p.until(facts + `.includes('8 × 9 blocks') && ` + name + ` === 'queen'`)
	put(t, r.file, "nonsense\n"+inSizes)
	p.revision(3)
	p.until(`document.querySelector('#faults .message').textContent.includes(':1:1') && ` + facts + `.includes('8 × 9 blocks')`)
	put(t, r.file, strings.Replace(inSizes, "size queen", "size king", 1))
	p.revision(4)
	p.until(name + ` === 'lap' && ` + facts + `.includes('4 × 3 blocks') && document.getElementById('note').textContent.includes('no size “queen”') && !location.hash.includes('size')`)
	eval[bool](p, `(document.querySelector('#sizes .opener').click(), [...document.querySelectorAll('#size-items button')].find((b) => b.textContent === 'king').click(), true)`)
	p.until(facts + `.includes('8 × 9 blocks')`)
	put(t, r.file, inColorways)
	p.revision(5)
	p.until(`document.getElementById('sizes').hidden && ` + facts + `.includes('4 × 3 blocks')`)
	begun := start(t, inSizes, Options{Size: "queen"})
	p.load(begun.address)
	p.until(name + ` === 'queen'`)
	p.key("z")
	p.until(name + ` === 'lap' && ` + facts + `.includes('4 × 3 blocks')`)
}
