//go:build judges

package preview

import (
	"os"
	"strings"
	"testing"
)

// TestWritingFromThePage: with --edit the card writes the fabric's line, a hint is applied, both are undone by the button and by the
// keys; without it the page offers to copy and writes nothing.
func TestWritingFromThePage(t *testing.T) {
	text := starfish(t)
	r, p := start(t, text, Options{Edit: true}), newTab(t)
	says := func() string {
		b, err := os.ReadFile(r.file)
		must(t, err)
		return string(b)
	}
	p.load(r.address)
	p.watching()
	p.openCard(1)
	own := eval[string](p, `document.querySelector('#color-card input').value`)
	eval[bool](p, `(document.querySelector('.ladder button:nth-child(3)').click(), true)`)
	p.until(`!document.querySelector('#color-card .main').disabled`)
	hex := eval[string](p, `document.querySelector('#color-card input').value`)
	p.picture("card-write")
	eval[bool](p, `(document.querySelector('#color-card .main').click(), true)`)
	p.revision(2)
	written := strings.Replace(text, own, hex, 1)
	if says() != written {
		t.Errorf("written is\n%s", says())
	}
	p.until(`document.getElementById('color-card').hidden && document.querySelector('#note:not([hidden]) button')`)
	p.picture("written")
	eval[bool](p, `(document.querySelector('#note button').click(), true)`)
	p.revision(3)
	if says() != text {
		t.Errorf("undone is\n%s", says())
	}
	eval[bool](p, `(document.body.dispatchEvent(new KeyboardEvent('keydown', { key: 'Z', ctrlKey: true, shiftKey: true, bubbles: true, cancelable: true })), true)`)
	p.revision(4)
	if says() != written {
		t.Errorf("redone is\n%s", says())
	}
	put(t, r.file, strings.Replace(text, "\nblock", "\nblok", 1))
	p.revision(5)
	p.until(`document.querySelector('#faults .fix')`)
	p.picture("fix-apply")
	eval[bool](p, `(document.querySelector('#faults .fix').click(), true)`)
	p.revision(6)
	if says() != text {
		t.Errorf("with the hint applied it says\n%s", says())
	}

	plain := start(t, strings.Replace(text, "\nblock", "\nblok", 1), Options{})
	p.load(plain.address)
	p.until(`document.querySelector('#faults .fix')`)
	if said := eval[string](p, `document.querySelector('#faults .fix').textContent`); said != "Copy new line" {
		t.Errorf("without --edit a hint has the button %q", said)
	}
	p.picture("fix-copy")
}
