package booklet

import (
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
)

// shorts are the pages of a printed document that are less than half full though no chapter ends there, and pages that do not
// come in fours where sheets are folded.
func shorts(printed render.Printed, o render.Options) []string {
	var list []string
	for _, w := range printed.Warnings {
		if w.Kind == render.ShortPage {
			list = append(list, "page "+numeral(w.Page)+": "+w.Message)
		}
	}
	if o.Paper.Fold && printed.Pages%4 != 0 {
		list = append(list, numeral(printed.Pages)+" pages, which are no fours")
	}
	return list
}

// TestPages: on every page size and in large print nothing overflows, no page is less than half full unless a chapter ends there, folded
// pages come in fours, the layout has a label for each block, and the words of every figure can be read. A pattern is made and
// typeset once for all of that.
func TestPages(t *testing.T) {
	t.Parallel()
	turn, divided := 0, 0
	judgedLayouts(t, func(t *testing.T, text string) {
		r := study(t, text, cutting.Options{})
		huge := len(r.Top.Cells) > 400 // with the judges it is typeset, in one way
		if huge && !judges.On {
			t.Skip("its pictures take long")
		}
		for i, p := range render.Papers() {
			for _, large := range []bool{false, true} {
				if turn++; !judges.On && turn%5 != 0 || strings.Contains(t.Name(), "invented") && turn%7 > 1 || huge && turn%3 > 0 && (i > 0 || large) {
					continue
				}
				what := p.Name
				if large {
					what += ", large print"
				}
				divided += layoutNames(t, what, newBook(r, Options{Paper: p, Large: large}))
				d := Pattern(r, Options{Paper: p, Large: large})
				for _, wrong := range firstOf(illegible(d, p, large), 3) {
					t.Errorf("%s: %s", what, wrong)
				}
				if huge && (i > 0 || large) {
					continue
				}
				o := render.Options{Paper: p, Large: large}
				printed, err := render.PDF(d, o)
				if err != nil {
					t.Fatalf("%s: %v", what, err)
				}
				for _, wrong := range append(overflows(printed, large), shorts(printed, o)...) {
					t.Errorf("%s: %s", what, wrong)
				}
				if n := backPages(t, d, o); n != 1 {
					t.Errorf("%s: the back cover takes %d pages", what, n)
				}
			}
		}
	})
	if divided == 0 {
		t.Error("no layout was divided")
	}
}

// backPages is how many pages the back cover takes behind the front.
func backPages(t *testing.T, d document.Document, o render.Options) int {
	t.Helper()
	d.Sections, o.Paper.Fold = d.Sections[len(d.Sections)-1:], false
	printed, err := render.PDF(d, o)
	if err != nil {
		t.Fatal(err)
	}
	return printed.Pages - 1
}

// TestBackCovers: on every page size and in large print the back cover is one page, with the fabrics' colors where there is room, and
// what is written on it when nothing else has room takes more.
func TestBackCovers(t *testing.T) {
	t.Parallel()
	tables := 0
	for _, name := range []string{"beacon", "flotsam", "tide"} {
		r := study(t, sampleText(t, name), cutting.Options{})
		for _, p := range render.Papers() {
			b := newBook(r, Options{Paper: p, Large: true})
			b.backCover(b.back)
			back := b.parts[0].Blocks[0].(document.Together).Blocks
			o := render.Options{Paper: p, Large: true}
			if !render.OnePage(back, o) {
				t.Errorf("%s, %s: the back cover takes more than a page", name, p.Name)
			}
			for _, block := range back {
				if table, ok := block.(document.Table); ok && len(table.Rows[0].Cells[0].Swatches) == 1 {
					tables++
				}
			}
			if whole := b.back(backForm{true, true, report.ShoppingTable}); p.Width < 6*measure.Inch && render.OnePage(whole, o) {
				t.Errorf("%s, %s: all of it is said to fit on a page", name, p.Name)
			}
		}
	}
	if tables < 3 {
		t.Errorf("%d back covers have a table with colors", tables)
	}
}

func firstOf(list []string, n int) []string { return list[:min(n, len(list))] }

// overflows are what does not fit its page, or is too small to be read where letters are of the usual size.
func overflows(printed render.Printed, large bool) []string {
	var list []string
	for _, w := range printed.Warnings {
		if w.Kind == render.Overflow || w.Kind == render.TooSmall && !large {
			list = append(list, "page "+numeral(w.Page)+": "+w.Message)
		}
	}
	return list
}

// TestOverflowsCatch: each kind of what does not fit is told, and nothing else.
func TestOverflowsCatch(t *testing.T) {
	printed := render.Printed{Warnings: []render.Warning{{Kind: render.Overflow}, {Kind: render.TooSmall}, {Kind: render.ShortPage}}}
	if usual, large := len(overflows(printed, false)), len(overflows(printed, true)); usual != 2 || large != 1 {
		t.Errorf("%d and in large print %d are told", usual, large)
	}
}

// TestPagesAreFullCatches: a picture that is wanted as high as a page after a few lines, in a box that it cannot leave, is seen;
// so are folded sheets whose pages are no fours.
func TestPagesAreFullCatches(t *testing.T) {
	d := pattern(t, sampleText(t, "lanterns"))
	high := *d.Cover.Picture
	high.Width, high.Least = 7*measure.Inch, 7*measure.Inch
	d.Sections = []document.Section{{Title: "Cutting", Blocks: []document.Block{paragraph("Cut."), document.Box{Blocks: []document.Block{high}}, paragraph("Sew.")}}}
	printed, err := render.PDF(d, render.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if list := shorts(printed, render.Options{}); len(list) != 1 {
		t.Errorf("a page with one line is found %d times: %q", len(list), list)
	}
	paper, fours := render.HalfLetter(), 0
	paper.Fold = false
	for _, name := range []string{"beacon", "compass", "nets"} {
		printed, err := render.PDF(Pattern(study(t, sampleText(t, name), cutting.Options{}), Options{Paper: paper}), render.Options{Paper: paper})
		if err != nil {
			t.Fatal(err)
		}
		if printed.Pages%4 == 0 {
			fours++
		}
	}
	if fours == 3 {
		t.Error("pages come in fours even where sheets are not folded")
	}
}
