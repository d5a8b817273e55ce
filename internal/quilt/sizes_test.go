package quilt_test

import (
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/fit"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/samples"
)

// TestSizeIsTheLayoutWrittenOut: a size's top is that of the layout whose grid, table of webs, borders and lengths are written
// as the size has them.
func TestSizeIsTheLayoutWrittenOut(t *testing.T) {
	var texts []string
	for _, s := range samples.All() {
		texts = append(texts, s.Text)
	}
	for seed := range uint64(judges.Of(25, 120)) {
		texts = append(texts, invent.Layout(seed))
	}
	tried, noticed, tables, redrafted := 0, 0, 0, 0
	for i, text := range texts {
		text = invent.WithSize(uint64(i), text, "other")
		if text == "" || len(text) > 20_000 {
			continue
		}
		top := lay(t, text)
		want := lay(t, fit.WrittenOut(text, "other", nil))
		size := &top.Sizes[len(top.Sizes)-1]
		if part := sameIn(size.Top(nil), want); part != "" {
			t.Errorf("layout %d: %s differs\n%s\n%s", i, part, text, fit.WrittenOut(text, "other", nil))
		}
		tried++
		if !size.Own && sameIn(top, want) != "" || size.Own && sameIn(top, want) == "" {
			noticed++
		}
		if size.Units != top.Units {
			redrafted++
		}
		if strings.Contains(text, "webs\n") && !size.Own {
			tables++
		}
	}
	t.Logf("%d layouts of %d were tried, %d with tables of webs", tried, len(texts), tables)
	if redrafted < 4 {
		t.Errorf("only %d sizes are in other units", redrafted)
	}
	if tried < 25 || noticed < tried {
		t.Errorf("%d layouts were tried, of %d another size is noticed", tried, noticed)
	}
}

// TestSizesByHand are sizes written out by hand.
func TestSizesByHand(t *testing.T) {
	const head = "strip 4\nfabric cream #f4ead7\nfabric navy #1f3350\nfabric rust #b5532a\nblock W web wedges navy kites cream\nblock F floating wedges navy background cream\n"
	for name, c := range map[string][3]string{
		"a frame that is kept": {
			"grid\n  F F F F\n  F W W F\n  F W W F\n  F F F F\nborder 1 navy\nborder 4 rust\n", "size other across 6 border 2",
			"grid\n  F F F F F F\n  F W W W W F\n  F W W W W F\n  F F F F F F\nborder 2 navy\n",
		},
		"rows that take turns": {
			"grid\n  F F F F\n  W W W W\n  F F F F\n  W W W W\n", "size other down 6",
			"grid\n  F F F F\n  W W W W\n  F F F F\n  W W W W\n  F F F F\n  W W W W\n",
		},
		"a repeat": {"grid\n  F W\n  W F\nrepeat across 2 down 2\n", "size other across 6 down 8", "grid\n  F W\n  W F\nrepeat across 3 down 4\n"},
		"a table of webs": {
			"webs\n  navy rust\n  rust\n  navy rust\ngrid\n  W W W W\n  W W W W\n  W W W W\n  W W W W\n", "size other down 6",
			"webs\n  navy rust\n  rust\n  navy rust\n  rust\n  navy rust\ngrid\n  W W W W\n  W W W W\n  W W W W\n  W W W W\n  W W W W\n  W W W W\n",
		},
		"a turn by hand": {"grid\n  F:se F:sw\n  F:ne F:nw\n", "size other across 4 down 4", "grid\n  F:se F:sw F:se F:sw\n  F:ne F:nw F:ne F:nw\n  F:se F:sw F:se F:sw\n  F:ne F:nw F:ne F:nw\n"},
		"sashes":         {"grid\n  W W\n  W W\nsash 1 rust posts navy around\n", "size other across 4 strip 5", "grid\n  W W W W\n  W W W W\nsash 1 rust posts navy around\n"},
		"a strip set": {
			"strip-set shore rust 2 cream 1 3/4 navy 1 1/4\nwebs shore\ngrid\n  W W\n  W W\n", "size other strip 5",
			"strip-set shore rust 2 3/8 cream 2 1/8 navy 1 1/2\nwebs shore\ngrid\n  W W\n  W W\n",
		},
	} {
		top := lay(t, head+c[0]+c[1]+"\n")
		want := head + c[2]
		if strings.Contains(c[1], "strip 5") {
			want = strings.Replace(want, "strip 4", "strip 5", 1)
		}
		if part := sameIn(top.Sizes[0].Top(nil), lay(t, want)); part != "" {
			t.Errorf("%s: %s differs, written out: %s", name, part, fit.WrittenOut(head+c[0]+c[1]+"\n", "other", nil))
		}
	}
}

// TestSizeOfAColorway: the size of a colorway is the colorway of the size.
func TestSizeOfAColorway(t *testing.T) {
	top := lay(t, "title \"Harbor\"\nside 6\nfabric navy #123\nblock P plain piece navy\ngrid\n  P P\ncolorway dusk navy #456\nsize lap\nsize long across 4\n")
	size, err := top.SizeNamed("LONG")
	if err != nil {
		t.Fatal(err)
	}
	a, err := size.Top(nil).InNamed("dusk")
	if err != nil {
		t.Fatal(err)
	}
	in := top.In(0)
	b, err := in.SizeNamed("long")
	if err != nil {
		t.Fatal(err)
	}
	if part := sameIn(a, b.Top(nil)); part != "" || a.Title != "Harbor, long, dusk" || b.Top(nil).Title != a.Title || len(a.Sizes) > 0 {
		t.Errorf("%s differs: %q and %q", part, a.Title, b.Top(nil).Title)
	}
	if _, err := top.SizeNamed("twin"); err == nil || err.Error() != `this layout has no size "twin"` {
		t.Error(err)
	}
	if own := top.Sizes[0].Top(nil); !top.Sizes[0].Own || sameIn(own, top) != "" || own.Title != "Harbor, lap" {
		t.Errorf("the size as written is %q", own.Title)
	}
}

// offMarks are lengths of a top in a system that its rulers do not show, or that are lengths of the other system converted.
func offMarks(top *quilt.Top, seam, mark, fine, width measure.NM) (list []string) {
	if top.Seam != seam {
		list = append(list, "the seam")
	}
	for _, e := range top.CutFacts.Borders {
		if e.Width%mark != 0 {
			list = append(list, "a border")
		}
	}
	if b := top.CutFacts.Binding; b != nil && b.Width%mark != 0 {
		list = append(list, "the binding")
	}
	for _, s := range top.CutFacts.Sets {
		for _, cut := range s.BandsCut {
			if cut%fine != 0 {
				list = append(list, "a strip of "+s.Name)
			}
		}
	}
	if top.CutFacts.UsableWidth != width {
		list = append(list, "the width of fabric")
	}
	return list
}

// TestOtherUnitsAreDrafted: a quilt in the other units has their usual seam and width of fabric, and its lengths lie on marks of their
// rulers: 0.75 cm and 100 cm, half a centimeter, 1 mm (common practice; a shop that redrafts uses 0.75 cm and makes 30 cm of a 12 in
// block: https://www.pandqmagazine.com/forums/postings.asp?th=13).
func TestOtherUnitsAreDrafted(t *testing.T) {
	text := "side 12\nfabric cream #f4ead7\nfabric navy #1f3350\nstrip-set shore navy 2 1/2 cream 2 1/4 navy rest\nblock R ring wedges shore corners cream\ngrid\n  R R\n  R R\n" +
		"border 2 1/4 navy\nborder 4 cream\nbinding 2 1/2 navy\nsize metric side 30 units cm\n"
	top := lay(t, text)
	metric := top.Sizes[0].Top(nil)
	marks := func(top *quilt.Top) []string {
		return offMarks(top, 3*measure.Centimetre/4, measure.Centimetre/2, measure.Millimetre, 100*measure.Centimetre)
	}
	if metric.SideFinished != 30*measure.Centimetre || metric.Units != measure.Centimetres || len(marks(metric)) > 0 {
		t.Errorf("blocks of %s in %v, off marks: %q", measure.Text(metric.SideFinished, metric.Units), metric.Units, marks(metric))
	}
	var widths []measure.NM
	for _, b := range metric.CutFacts.Borders {
		widths = append(widths, b.Width)
	}
	if want := []measure.NM{11 * measure.Centimetre / 2, 10 * measure.Centimetre}; !slices.Equal(widths, want) || metric.CutFacts.Binding.Width != 13*measure.Centimetre/2 {
		t.Errorf("borders of %v, binding of %v", widths, metric.CutFacts.Binding.Width)
	}
	if found := marks(top); len(found) < 4 {
		t.Errorf("of lengths in inches only %q are off the marks", found)
	}
}
