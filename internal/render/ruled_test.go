package render

import (
	"testing"

	"eighthturn/internal/document"
)

// TestPagesToWriteOnStandBeforeTheBack: pages that are added to make fours stand before the back cover, also where that goes over
// several pages.
func TestPagesToWriteOnStandBeforeTheBack(t *testing.T) {
	b := newBuilder(Options{Paper: A5()}.look())
	parts := func(list ...int) (pages []page) {
		for _, part := range list {
			pages = append(pages, page{part: part, placed: []placed{{}}})
		}
		return pages
	}
	for _, c := range []struct {
		pages []page
		back  bool
		empty []bool // the pages of the result that are to write on
	}{
		{parts(0, 1, 2), true, []bool{false, false, true, false}},
		{parts(0, 1, 1), true, []bool{false, true, false, false}},
		{parts(0, 1, 1), false, []bool{false, false, false, true}},
		{parts(0, 1, 2, 2, 2), true, []bool{false, false, true, true, true, false, false, false}},
	} {
		d := document.Document{Sections: make([]document.Section, 3)}
		d.Sections[2].Back = c.back
		d.Sections[1].Blocks = []document.Block{document.Ruled{}}
		got := b.fours(c.pages, d)
		if len(got) != len(c.empty) {
			t.Fatalf("%d pages, expected %d", len(got), len(c.empty))
		}
		for i, p := range got {
			if p.placed[0].newPage != c.empty[i] {
				t.Errorf("of %d pages the %d. is to write on: %v", len(got), i+1, p.placed[0].newPage)
			}
			if c.empty[i] && p.part != 1 {
				t.Errorf("of %d pages the %d. is to write on and stands under the name of chapter %d", len(got), i+1, p.part)
			}
		}
	}
}
