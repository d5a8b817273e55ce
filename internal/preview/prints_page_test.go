//go:build judges

package preview

import (
	"strings"
	"testing"
	"time"
)

// laidPrints is how many pixels across the picture of prints has that the page shows, 0 where there is none.
const laidPrints = `(async () => {
	const href = [...document.querySelectorAll('.pane svg image')].map((e) => e.getAttribute('href')).find(Boolean), image = new Image();
	if (!href) return 0;
	image.src = href;
	await image.decode();
	return image.naturalWidth;
})()`

// TestPageShowsPrints: where a fabric is striped or printed, the page lays it over its faces, finer once the quilt is looked at more
// nearly; a button takes it away; where a save makes all fabrics plain, it goes and its button with it.
func TestPageShowsPrints(t *testing.T) {
	r, p := start(t, deckchairs, Options{}), newTab(t)
	r.next()
	p.load(r.address)
	laid := func(want string) {
		t.Helper()
		for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(10 * time.Millisecond) {
			if eval[bool](p, `(async () => (await `+laidPrints+`) `+want+`)()`) {
				return
			}
		}
		t.Fatalf("the picture of prints is %g pixels wide, not %s", eval[float64](p, laidPrints), want)
	}
	laid("=== 1000")
	p.picture("prints")
	p.press("prints")
	laid("=== 0")
	p.press("prints")
	laid("=== 1000")
	for range 8 {
		p.key("+")
	}
	laid("> 1000")
	p.picture("prints-near")
	plain := strings.NewReplacer("stripes navy 3/4 white 1/4 crimson 1/2", "navy", "motif mill awning across 3/8 down 0 pointing 45\n", "", "wedges mill", "wedges awning", "awning lengthwise from 0", "awning")
	put(t, r.file, plain.Replace(deckchairs))
	laid("=== 0")
	p.until(`document.querySelector('[data-action=prints]').hidden`)
}
