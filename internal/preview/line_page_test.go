//go:build judges

package preview

import (
	"strings"
	"testing"
)

// copying makes the page's clipboard one that can be looked into.
const copying = `(Object.defineProperty(navigator, 'clipboard', { configurable: true, value: { writeText: async (text) => { window.copied = text; } } }), true)`

// TestLinesAreCopiedAndOpened: the card of a held patch and each error copy their text, and where an editor is known they open it at
// their line; without one there is nothing to open.
func TestLinesAreCopiedAndOpened(t *testing.T) {
	for _, editor := range []string{"", "x-edit://open{file}:{line}"} {
		r, p := start(t, lanterns, Options{Editor: editor}), newTab(t)
		p.load(r.address)
		p.watching()
		eval[bool](p, copying)
		b := eval[[]float64](p, `(() => { const b = document.querySelector('.pane svg > g > g').getBoundingClientRect(); return [b.left + b.width / 2, b.top + b.height / 2]; })()`)
		p.mouse(moved, b[0]+6, b[1]+14)
		p.until(`document.querySelector('#patch dl')`)
		if eval[int](p, `document.querySelectorAll('#patch button').length`) != 0 {
			t.Error("a patch that is only pointed at has buttons that cannot be reached")
		}
		p.mouse(pressed, b[0]+6, b[1]+14, left)
		p.mouse(released, b[0]+6, b[1]+14, left)
		p.until(`document.querySelector('#patch.pinned button')`)
		at := eval[[]float64](p, `(() => { const b = document.querySelector('#patch .copy').getBoundingClientRect(); return [b.left + b.width / 2, b.top + b.height / 2]; })()`)
		p.mouse(moved, at[0], at[1])
		p.mouse(pressed, at[0], at[1], left)
		p.mouse(released, at[0], at[1], left)
		p.until(`window.copied`)
		if got, want := eval[string](p, `window.copied`), strings.Split(lanterns, "\n")[8]; got != want {
			t.Errorf("copied %q, wanted %q", got, want)
		}
		p.picture("copied")
		wanted := 0
		if editor != "" {
			wanted = 1
			if got := eval[string](p, `document.querySelector('#patch a').getAttribute('href')`); got != "x-edit://open"+r.file+":9" {
				t.Errorf("the patch opens %s", got)
			}
		}
		if n := eval[int](p, `document.querySelectorAll('#patch a').length`); n != wanted {
			t.Errorf("editor %q: there are %d links to it", editor, n)
		}
		put(t, r.file, strings.Replace(lanterns, "ground cream", "ground craem", 1)+"nonsense\n")
		p.revision(2)
		eval[bool](p, `(document.querySelector('#faults .copy').click(), true)`)
		p.until(`window.copied.includes('nonsense') || window.copied.includes('craem')`)
		if n := eval[int](p, `document.querySelectorAll('#faults .fault').length - document.querySelectorAll('#faults .copy').length`); n != 0 {
			t.Errorf("%d errors cannot be copied", n)
		}
		if n := eval[int](p, `document.querySelectorAll('#faults a').length`); (n > 0) != (editor != "") {
			t.Errorf("editor %q: %d errors open it", editor, n)
		}
		p.picture("faults-" + strings.TrimRight(editor[:min(len(editor), 6)], ":/"))
	}
}
