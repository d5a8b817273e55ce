package booklet

import (
	"bytes"
	"image/png"
	"slices"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/render"
	"eighthturn/internal/templates"
)

// A top of more faces than outlines can show on a page is a picture in pixels, and no page to colour is made of it.
func TestManyFacesAreShownInPixels(t *testing.T) {
	text := odd()["hundred"]
	r := study(t, text, cutting.Options{})
	if len(r.Top.Faces) <= maxFaces {
		t.Fatalf("the top has %d faces", len(r.Top.Faces))
	}
	d := pattern(t, text)
	if n := len(partOf(d, "Coloring page")); n > 0 {
		t.Error("a page to colour is made of a top with too many pieces for pencils")
	}
	ground := d.Cover.Picture.Of.Ground
	size, err := png.DecodeConfig(bytes.NewReader(ground))
	if err != nil || size.Width != pixelsAlong || len(d.Cover.Picture.Of.Layers) > 0 {
		t.Fatalf("the cover has a picture of %d pixels across: %v", size.Width, err)
	}
	for _, s := range []string{"lanterns", "jetty"} {
		d := pattern(t, sampleText(t, s))
		if d.Cover.Picture.Of.Ground != nil || len(partOf(d, "Coloring page")) == 0 {
			t.Errorf("%s is shown in pixels, or has no page to colour", s)
		}
	}
}

// Templates in the booklet have numbers, one after another, in the order of the file of templates.
func TestTemplatesAreNumberedInOrder(t *testing.T) {
	t.Parallel()
	judgedDocuments(t, func(t *testing.T, r Reports, d document.Document) {
		for _, table := range tables(d, "Templates", "Template") {
			next := 0
			for _, row := range table.Rows {
				sign, hand, _ := strings.Cut(row.Cells[0].Text.String(), " ")
				n, _ := strconv.Atoi(sign[1:])
				if n != next+1 && !(hand != "" && next > 0 && n == next) {
					t.Errorf("template %s stands where number %d is due", sign, next+1)
				}
				next = n
				if !slices.ContainsFunc(r.Templates, func(p templates.Template) bool {
					return strings.TrimPrefix(p.Name(), p.Letter) == strings.TrimPrefix(row.Cells[0].Text.String(), sign) && p.Piece() == row.Cells[1].Text.String()
				}) {
					t.Errorf("no template is called %s", row.Cells[0].Text.String())
				}
			}
		}
		said := strings.Contains(strings.Join(textsOf(document.Document{Sections: []document.Section{{Blocks: partOf(d, "Templates")}}}), "\n"), "comes in parts")
		if parts := strings.Contains(strings.Join(textsOf(d), "\n"), ": part 1 of "); said != parts {
			t.Errorf("templates come in parts: %v, and that is said: %v", parts, said)
		}
	})
}

// Columns of tumblers are sewn piece to piece and then to each other; no line of the layout runs across them.
func TestColumnsOfTumblers(t *testing.T) {
	r := study(t, sampleText(t, "jetty"), cutting.Options{})
	d := pattern(t, sampleText(t, "jetty"))
	text := strings.Join(ownTexts(d), "\n")
	for _, want := range []string{"9 columns of 15 tumblers", "Make 5 columns", "The quilt center should measure", "The columns are complete"} {
		if !strings.Contains(text, want) {
			t.Errorf("the pattern does not say %q", want)
		}
	}
	for _, wrong := range []string{"blocks of each column", "blocks across", "units. Lay", "The blocks together"} {
		if strings.Contains(text, wrong) {
			t.Errorf("the pattern says %q", wrong)
		}
	}
	for _, b := range partOf(d, "Laying out the columns") {
		if p, ok := b.(document.Picture); ok {
			if lines := p.Of.Layers[len(p.Of.Layers)-1]; len(lines.Paths) != r.Top.Columns {
				t.Errorf("the layout has %d outlines for %d columns", len(lines.Paths), r.Top.Columns)
			}
		}
	}
}

// A kit's backing is in the kit, in the teacher's list and in what is left for home alike.
func TestKitsHoldWhatTheySay(t *testing.T) {
	text := "strip 4\nfabric a #204060\nfabric b #f0e8d8\nblock W web wedges a kites b\ngrid\n W W\n W W\nbinding 2 1/2 cut a\n"
	for _, backing := range []bool{true, false} {
		more := text
		if backing {
			more += "backing b\n"
		}
		said := strings.Join(ownTexts(Handout(study(t, more, cutting.Options{Copies: 3}), Options{})), "\n")
		inKit, inTable, not := strings.Contains(said, "its binding and its backing"), strings.Contains(said, "fabric for the backing, "), strings.Contains(said, "Not in the kit: backing,")
		if inKit != backing || inTable != backing || not == backing || strings.Contains(said, "Backing: of your choice") == backing {
			t.Errorf("with backing %v: in the kit %v, in its table %v, not in it %v", backing, inKit, inTable, not)
		}
		if !strings.Contains(said, "strips for the binding") || !strings.Contains(said, "it is not in the kit") {
			t.Error("nothing is said of binding or batting")
		}
	}
}

// Foundations are printed behind the templates where they are asked for, and each is shown.
func TestFoundationsArePrinted(t *testing.T) {
	t.Parallel()
	for i, s := range []string{"lanterns", "starfish", "tide"} {
		r := study(t, sampleText(t, s), cutting.Options{})
		r.Foundations = templates.Foundations(r.Top)
		for n, p := range render.Papers() {
			if !judges.On && n != i {
				continue
			}
			d := Pattern(r, Options{Paper: p})
			if _, err := render.PDF(d, render.Options{Paper: p}); err != nil {
				t.Errorf("%s, %s: %v", s, p.Name, err)
			}
			list := tables(d, "Foundations", "Foundation")
			if len(list) != 1 || len(list[0].Rows) != len(r.Foundations) {
				t.Fatalf("%s: the table has not a row for each of %d foundations", s, len(r.Foundations))
			}
			for _, row := range list[0].Rows {
				if !strings.HasPrefix(row.Cells[3].Text.String(), "Figure ") {
					t.Errorf("%s: foundation %s is not shown", s, row.Cells[0].Text.String())
				}
			}
			for _, wrong := range edited(d, r) {
				t.Errorf("%s: %s", s, wrong)
			}
		}
	}
}
