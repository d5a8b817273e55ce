package contrast

import (
	"strings"
	"testing"

	"eighthturn/internal/quilttest/lay"
)

// scrapWebs is a field of webs of scraps: two darks that are alike in value, two lights that are, and a border of a light.
const scrapWebs = `
strip 4
fabric pine #2f4f3a
fabric plum #5a3550
fabric shell #efe8d9
fabric mist #e3ebe8
scraps darks pine plum
scraps lights shell mist
block W web wedges darks kites lights
grid
  W W W W
  W W W W
  W W W W
  W W W W
border 2 shell
`

// TestScrapsMayDrawTogether: what quilters say of scrap quilts (common practice, no source): darks need not part from darks
// within a web, nor lights from lights in its ground, but a web must part from its ground, and a border from what it frames.
func TestScrapsMayDrawTogether(t *testing.T) {
	of := func(r *Report, a, b string) *Pair {
		for i := range r.Pairs {
			if p := &r.Pairs[i]; p.Names == [2]string{a, b} || p.Names == [2]string{b, a} {
				return p
			}
		}
		t.Fatalf("%s and %s do not meet", a, b)
		return nil
	}
	r := Study(lay.Top(t, scrapWebs), Options{})
	if p := of(r, "pine", "plum"); p.Inside != p.Length {
		t.Errorf("pine and plum: %d of %d inside", p.Inside, p.Length)
	}
	if p := of(r, "shell", "mist"); p.Inside == 0 || p.Inside >= p.Length {
		t.Errorf("shell and mist: %d of %d inside, though the border is of one of them", p.Inside, p.Length)
	}
	if p := of(r, "pine", "shell"); p.Inside != 0 {
		t.Errorf("pine and shell: %d inside, but that is the webs' edge", p.Inside)
	}
	for _, c := range r.Changes {
		if len(c.Steps) > 0 || len(c.Swap) > 0 {
			t.Errorf("other values for scraps inside a web: %+v", c)
		}
	}
	if last := r.Pairs[len(r.Pairs)-1]; last.Inside != last.Length && last.Band < Clear {
		t.Errorf("what asks least for a look is %+v", last)
	}
	// The same darks as one web against the next are told apart: there it matters.
	r = Study(lay.Top(t, strings.Replace(scrapWebs, "wedges darks", "wedges pine", 1)), Options{})
	if p := of(r, "pine", "shell"); p.Inside != 0 {
		t.Errorf("plain webs: %d inside", p.Inside)
	}
}
