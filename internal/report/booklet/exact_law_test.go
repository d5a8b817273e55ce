package booklet

import (
	"fmt"
	"math/big"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/samples"
)

// Laws of what must be exact: a size that no ruler shows is named within half of a thousandth of its unit, a row of a table stands in it
// once, and no sign is a fabric's and a template's.

// everyReport hands on the reports of the samples and of invented layouts, with their names.
func everyReport(t *testing.T, invented uint64, with func(name string, r Reports)) {
	for _, s := range samples.All() {
		with(s.Name, study(t, s.Text, cutting.Options{}))
	}
	for seed := range min(invented, uint64(judges.Of(12, 60))) {
		with(fmt.Sprint("invented ", seed), study(t, invent.Layout(seed), cutting.Options{}))
	}
}

// wrongExact are sizes between the marks that lie further from each exact size of the plan than half of their last decimal.
func wrongExact(d document.Document, r Reports) (wrong []string, told int) {
	half := big.NewRat(int64(r.Cuts.Units.Unit()/2000), 1)
	for _, b := range under(d, "Cutting")["Sizes between ruler marks"] {
		list, ok := b.(document.List)
		if !ok {
			continue
		}
		for _, it := range list.Items {
			told++
			before, _, _ := strings.Cut(it.Text.String(), " cut, ")
			named := lengthsIn(before)
			said := named[len(named)-1]
			near := func(o cutting.Ruler) bool {
				off := new(big.Rat).Sub(said.nm, big.NewRat(int64(o.ExactCut), 1))
				return !o.OnMark && off.Abs(off).Cmp(half) <= 0
			}
			band := func(s cutting.StripSet) bool {
				return slices.ContainsFunc(s.Bands, func(b cutting.Band) bool { return near(b.OnRuler) })
			}
			if !slices.ContainsFunc(r.Cuts.Lines, func(l cutting.Line) bool { return slices.ContainsFunc(l.Piece.OnRuler, near) }) && !slices.ContainsFunc(r.Cuts.Sets, band) {
				wrong = append(wrong, "no piece is cut at "+it.Text.String())
			}
		}
	}
	return wrong, told
}

func TestExactSizes(t *testing.T) {
	t.Parallel()
	told := 0
	everyReport(t, 40, func(name string, r Reports) {
		d := Pattern(r, Options{})
		wrong, n := wrongExact(d, r)
		told += n
		for _, w := range wrong {
			t.Errorf("%s: %s", name, w)
		}
		for i := range r.Cuts.Lines {
			for n := range r.Cuts.Lines[i].Piece.OnRuler {
				r.Cuts.Lines[i].Piece.OnRuler[n].ExactCut -= measure.Inch / 64
			}
		}
		for i := range r.Cuts.Sets {
			for n := range r.Cuts.Sets[i].Bands {
				r.Cuts.Sets[i].Bands[n].OnRuler.ExactCut -= measure.Inch / 64
			}
		}
		if wrong, _ := wrongExact(d, r); n > 0 && len(wrong) == 0 {
			t.Errorf("%s: sizes that are a sixty-fourth too large are not noticed", name)
		}
	})
	if told == 0 {
		t.Error("no size lies between the marks")
	}
}

// twice are the rows of tables of strips that read as another does.
func twice(d document.Document) []string {
	var wrong []string
	for _, t := range tables(d, "Cutting", "Strip, cut") {
		seen := map[string]bool{}
		for _, row := range t.Rows {
			text := ""
			for _, c := range row.Cells {
				text += c.Text.String() + " | "
			}
			if seen[text] {
				wrong = append(wrong, text)
			}
			seen[text] = true
		}
	}
	return wrong
}

func TestRowsStandOnce(t *testing.T) {
	t.Parallel()
	rows := 0
	everyReport(t, 40, func(name string, r Reports) {
		d := Pattern(r, Options{})
		for _, text := range twice(d) {
			t.Errorf("%s: twice: %s", name, text)
		}
		for _, table := range tables(d, "Cutting", "Strip, cut") {
			rows++
			table.Rows = append(table.Rows, table.Rows[0])
			if len(twice(document.Document{Sections: []document.Section{{Title: "Cutting", Blocks: []document.Block{table}}}})) != 1 {
				t.Errorf("%s: a row that stands twice is not noticed", name)
			}
		}
	})
	if rows == 0 {
		t.Error("no table of strips")
	}
}

// twoMeanings are the letters of fabrics, and the signs of templates, that stand for something else too.
func twoMeanings(b *patternBuilder) []string {
	var wrong []string
	unused := b.Top.CutFacts.Unused
	shown := 0
	for i, letter := range b.letters { // A block may have the same letter: it is always called a block.
		if first := slices.Index(b.letters, letter); first < i {
			wrong = append(wrong, letter)
		}
		if slices.Contains(unused, i) {
			continue
		}
		if letter != lettersOf(shown) {
			wrong = append(wrong, letter)
		}
		shown++
	}
	for i := range b.Templates {
		letter := b.Templates[i].Letter
		if slices.Contains(b.letters, letter) {
			wrong = append(wrong, letter)
		}
		for k := range b.Sewing.Blocks {
			block := &b.Sewing.Blocks[k]
			for c := range block.Variants {
				if letter == block.Label || letter == block.VariantName(c+1) {
					wrong = append(wrong, letter)
				}
			}
		}
	}
	return wrong
}

func TestSignsHaveOneMeaning(t *testing.T) {
	t.Parallel()
	everyReport(t, 40, func(name string, r Reports) {
		b := newBook(r, Options{})
		if wrong := twoMeanings(b); len(wrong) > 0 {
			t.Errorf("%s: %v have two meanings", name, wrong)
		}
		b.Templates = r.Templates
		if len(r.Templates) > 0 && r.Templates[0].Letter == b.letters[0] && len(twoMeanings(b)) == 0 {
			t.Errorf("%s: a template with a fabric's letter is not noticed", name)
		}
		first := 0 // of the fabrics that the quilt shows
		for slices.Contains(b.Top.CutFacts.Unused, first) {
			first++
		}
		b.letters[first] = "B"
		if len(twoMeanings(b)) == 0 {
			t.Errorf("%s: letters of fabrics that do not begin at A are not noticed", name)
		}
	})
}

// TestBackingAsPlanned: the backing takes as much cloth, and its seams run that way, as the cutting plan has it.
func TestBackingAsPlanned(t *testing.T) {
	t.Parallel()
	pieced := 0
	everyReport(t, 60, func(name string, r Reports) {
		k := r.Cuts.Backing
		if k == nil || k.Ways[k.Less].Panels < 2 {
			return
		}
		pieced++
		d := Pattern(r, Options{})
		other := "; with " // the other way, which takes as much for a square quilt
		if k.Ways[0].Panels == k.Ways[1].Panels && k.Ways[0].PanelCut == k.Ways[1].PanelCut {
			other = "."
		}
		for part, want := range map[string]string{
			"Finishing":           [2]string{" vertical seam", " horizontal seam"}[k.Less],
			"Fabric requirements": ": " + r.Cuts.Units.AtLeast(k.Ways[k.Less].LengthCut) + other,
		} {
			said := strings.Join(textsOf(document.Document{Sections: []document.Section{{Blocks: partOf(d, part)}}}), "\n")
			if !strings.Contains(said, want) {
				t.Errorf("%s: %q is not said of the backing", name, want)
			}
		}
	})
	if pieced == 0 {
		t.Error("no backing has a seam")
	}
}

// TestUnitsLeft by hand: of four webs with two units, two halves and one block each, those of the first are sewn in class.
func TestUnitsLeft(t *testing.T) {
	r := study(t, "strip 2\nfabric a #204060\nfabric b #f0e8d8\nblock W web wedges a kites b\ngrid\n W W\n W W\n", cutting.Options{})
	b := newBook(r, Options{})
	if got := b.unitsLeft(); got != 3*(2+2+1) {
		t.Errorf("%d units are left, want 15", got)
	}
}

// TestAuthorIsABareName: the cover says who designed a quilt, the file's properties name the designer alone.
func TestAuthorIsABareName(t *testing.T) {
	d := pattern(t, "title \"Kettle\"\ndesigner \"Lotte Ambros\"\nside 4\nfabric a #204060\nblock A plain piece a\ngrid\n A\n")
	if d.Maker != "Designed by Lotte Ambros" || d.Author != "Lotte Ambros" {
		t.Errorf("maker %q, author %q", d.Maker, d.Author)
	}
}

// hidden are the labels in pictures that name a colouring which the layout does not tell.
func hidden(b *patternBuilder, pictures []document.Figure) int {
	n, names := 0, b.plainNames()
	for _, f := range pictures {
		for _, m := range f.Of.Marks {
			if m.Words != nil && names[m.Words.Text] != "" && names[m.Words.Text] != m.Words.Text {
				n++
			}
		}
	}
	return n
}

// TestBlocksHaveOneLabel: where the layout names blocks by their label alone, the pictures of the rows do too, and where all
// is columns they speak of columns.
func TestBlocksHaveOneLabel(t *testing.T) {
	t.Parallel()
	scraps, columns := 0, 0
	everyReport(t, 20, func(name string, r Reports) {
		b := newBook(r, Options{})
		if hidden(b, b.topFigures()) > 0 {
			t.Errorf("%s: a picture names colourings that the layout does not", name)
		}
		scraps += hidden(b, b.sewnTop())
		for _, f := range b.topFigures() {
			if b.noun() == "column" {
				columns++
				if strings.Contains(f.Of.Title, "blocks") {
					t.Errorf("%s: a picture of columns is called %q", name, f.Of.Title)
				}
			}
		}
	})
	if scraps == 0 || columns == 0 {
		t.Errorf("%d labels with numbers, %d pictures of columns", scraps, columns)
	}
}
