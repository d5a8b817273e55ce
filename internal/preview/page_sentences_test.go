//go:build judges

package preview

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// cutOff are the sentences of errors that reach beyond their card, or beyond the window.
const cutOff = `[...document.querySelectorAll('#faults .message, #faults .hint, #text-fault p')].filter((e) => e.checkVisibility()).filter((e) => {
	const b = e.getBoundingClientRect(), card = (e.closest('#faults') ?? e.parentElement).getBoundingClientRect();
	const range = document.createRange();
	range.selectNodeContents(e);
	const words = range.getBoundingClientRect();
	return words.right > Math.min(card.right, innerWidth) + 0.5 || words.left < card.left - 0.5 || words.width > b.width + 0.5;
}).map((e) => e.textContent.slice(0, 40))`

// TestErrorsAreReadWhole: however narrow the window, what is wrong and what to type are in sight, over the last good picture and in its place.
func TestErrorsAreReadWhole(t *testing.T) {
	wrong := strings.Replace(strings.Replace(lanterns, "\nblock", "\nblo\nblock", 1), "kites navy", "kites navyandsomeverylongnamethatnobodywrites", 1)
	p := newTab(t)
	for _, size := range [][2]int64{{1280, 800}, {820, 1180}, {390, 844}} {
		r := start(t, wrong, Options{})
		p.do(chromedp.EmulateViewport(size[0], size[1]))
		for _, good := range []bool{false, true} {
			if good {
				put(t, r.file, lanterns)
			}
			p.load(r.address)
			if good {
				p.until(`document.getElementById('faults').hidden`)
				put(t, r.file, wrong)
			}
			p.until(`document.querySelectorAll('#faults .hint').length >= 2`)
			for _, sentence := range eval[[]string](p, cutOff) {
				t.Errorf("%d wide, over a picture %v: “%s …” is cut off", size[0], good, sentence)
			}
			p.picture(fmt.Sprintf("errors-whole-%d-%v", size[0], good))
		}
	}
	eval[bool](p, `(document.querySelector('#faults .hint').style.whiteSpace = 'pre', document.querySelector('#faults .message').style.whiteSpace = 'nowrap', true)`)
	if len(eval[[]string](p, cutOff)) == 0 {
		t.Error("not noticed: a sentence in one long line")
	}
}

// TestErrorsWhileTyping: beside the pane that tells of an error the card is folded, and the pane applies the hint.
func TestErrorsWhileTyping(t *testing.T) {
	r, p := start(t, lanterns, Options{Edit: true}), newTab(t)
	p.load(r.address)
	p.watching()
	p.until(`!document.querySelector('[data-action=text]').hidden`)
	p.key("e")
	p.until(saved)
	put(t, r.file, strings.Replace(lanterns, "kites navy", "kites nayv", 1))
	p.revision(2)
	p.until(`document.querySelector('#text-fault button').checkVisibility() && document.getElementById('text-fault').textContent.includes('nayv')`)
	if eval[bool](p, `document.getElementById('faults-list').checkVisibility()`) {
		t.Error("the card lies over the picture while the pane tells the same")
	}
	p.picture("error-while-typing")
	eval[bool](p, `(document.querySelector('#text-fault button').click(), true)`)
	p.until(`document.getElementById('text-fault').hidden && document.getElementById('faults').hidden && !document.getElementById('typed').value.includes('nayv')`)
	put(t, r.file, strings.Replace(lanterns, "kites navy", "kites nayv", 1))
	p.until(`document.querySelector('#text-fault button').checkVisibility()`)
	p.key("\x1b")
	p.until(`document.activeElement?.id !== 'typed'`)
	p.key("e")
	p.until(`document.getElementById('faults-list').checkVisibility()`)
}

// TestAChosenFabricIsRead: the name of the fabric whose card is open can be read with the pointer on it.
func TestAChosenFabricIsRead(t *testing.T) {
	r, p := start(t, starfish(t), Options{}), newTab(t)
	p.load(r.address)
	for _, dark := range []bool{false, true} {
		p.dark(dark)
		p.do(chromedp.Click(chromedp.CSS(`#fabrics li:nth-child(2) button`)))
		p.until(`document.querySelector('#fabrics [aria-pressed=true]:hover')`)
		for _, wrong := range eval[[]string](p, laidOut) {
			t.Errorf("dark %v: %s", dark, wrong)
		}
		p.key("\x1b")
		p.until(`document.getElementById('color-card').hidden`)
	}
}
