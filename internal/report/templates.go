package report

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/templates"
)

// TemplateBook words a book of templates of a top.
type TemplateBook struct {
	Top       *quilt.Top
	Templates []templates.Template
	Parts     bool // some of them come in several parts
	Several   bool // of quilts are made
}

// About is what to know before the templates are used.
func (b TemplateBook) About() []document.Item {
	hands := ""
	if slices.ContainsFunc(b.Templates, func(t templates.Template) bool { return t.Hand != "" }) {
		hands = " Mirror-image pieces have a left template and a right template."
	}
	items := []document.Item{
		{Text: lead("Print at 100% (Actual size);", "turn off 'Fit to page'. Measure both test squares on every page before you use it.")},
		{Text: lead("Right side up:", "templates show the right side of the fabric.%s", hands)},
		{Text: lead("Seams:", "cut on the solid line, which includes a %s seam allowance; sew on the dashed line; dots mark where seams begin and end.", b.Top.Units.Nearest(b.Top.Seam))},
	}
	if slices.ContainsFunc(b.Templates, func(t templates.Template) bool { return t.Print != nil }) {
		items = append(items, document.Item{Text: lead("Print:", "line up the dotted lines, and the pale print where it is drawn, with the fabric the same way for every piece. The lines show the edges of stripes, where a repeat begins, and the middle of a motif, which a cross marks; the arrow points along the selvage.")})
	}
	if b.Parts {
		items = append(items, document.Item{Text: lead("Parts:", "a template larger than the page comes in parts. Trim them on their frames and tape them together, each frame on the dotted line of the next part.")})
	}
	return items
}

// Lines is what lines, dots and arrows of templates mean beyond that, for a book of templates by themselves.
func (b TemplateBook) Lines() []document.Item {
	return []document.Item{
		item(b.Top.Units.AboutMeans()),
		{Text: lead("Blunt tips:", "sharp tips are trimmed one seam allowance beyond the seam point, so that raw edges align. Pin dot to dot.")},
		{Text: lead("Grain:", "align the arrow with the straight grain, as in pieces cut with a ruler: up the center of a wedge, with its base across the grain; along one side of the square corner of kites and triangles; and across a tumbler, from one parallel side to the other.")},
	}
}

// ByRuler says which pieces need no template, nothing where all do.
func (b TemplateBook) ByRuler() []document.Item {
	var list []string
	for i := range b.Templates {
		if t := &b.Templates[i]; t.ByRuler() && !slices.Contains(list, measure.Plural(t.Shape.String())) {
			list = append(list, measure.Plural(t.Shape.String()))
		}
	}
	if b.strips() {
		list = append(list, "strips")
	}
	if len(list) == 0 {
		return nil
	}
	return []document.Item{{Text: lead(capital(measure.List(list)), "are cut with a ruler and need no templates.")}}
}

// strips says whether the top has strips, which have no templates.
func (b TemplateBook) strips() bool {
	return slices.ContainsFunc(b.Top.Patches, func(p quilt.Patch) bool { return p.Shape.Description().Edging })
}

// Strips says what becomes of strips, nothing where there are none.
func (b TemplateBook) Strips() []document.Block {
	switch {
	case len(b.Templates) == 0:
		return []document.Block{para("This quilt has only strips; cut them with a ruler.")}
	case b.strips():
		return []document.Block{para("Borders and sashes are strips: cut them with a ruler, following the cutting plan.")}
	}
	return nil
}

// Table says what is cut by each template, and where each is shown; with sizes, how large it is.
func (b TemplateBook) Table(list []templates.Template, shown func(name string) string, sizes bool) document.Table {
	t := document.Table{Named: true, Columns: []document.Column{words("Template"), words("Piece"), document.Column{Title: "Number", Kind: document.Counts, BySize: true}, words("Fabric"), words("Shown in")}}
	if b.Several {
		t.Columns[2].Title = "Number per quilt"
	}
	if sizes {
		t.Columns = slices.Insert(t.Columns, 2, words("Finished"), words("Template"))
		t.Columns[0].Title = "Name"
	}
	for i := range list {
		piece := &list[i]
		var fabrics []string
		for _, c := range piece.Cloths {
			fabrics = append(fabrics, b.cloth(c)+": "+number(c.Count))
		}
		r := row(piece.Name(), piece.Piece(), number(piece.Count), fewFabrics(fabrics), shown(piece.Name()))
		r.Cells[0].Text = document.Bold(piece.Name())
		if sizes {
			finished, cut := piece.Sizes()
			r.Cells = slices.Insert(r.Cells, 2, cell(b.Top.Units.By(finished.X, finished.Y)), cell(b.Top.Units.By(cut.X, cut.Y)))
		}
		t.Rows = append(t.Rows, r)
	}
	return t
}

// PlateFacts says of the templates on a page what piece each is, how many to cut and from which fabric, in no more letters
// than there is room for: where there are many fabrics, the table of templates tells them.
func (b TemplateBook) PlateFacts(names []string, room int) string {
	for _, detail := range []func(c templates.ClothCount) string{
		func(c templates.ClothCount) string { return b.cloth(c) + " " + number(c.Count) }, b.cloth, nil,
	} {
		text := ""
		for i := range b.Templates {
			t := &b.Templates[i]
			if !slices.Contains(names, t.Name()) {
				continue
			}
			text += " " + t.Name() + ", " + t.Piece() + ": cut " + number(t.Count)
			if b.Several {
				text += " for each quilt"
			}
			text += fromFabrics(t.Cloths, detail) + "."
		}
		if len(text) <= room || detail == nil {
			return strings.TrimSpace(text)
		}
	}
	return ""
}

// fromFabrics says what pieces are cut from, each fabric in a few words; nil for how many fabrics there are.
func fromFabrics(list []templates.ClothCount, words func(c templates.ClothCount) string) string {
	if words == nil {
		return " from " + measure.Count(len(list), "fabric")
	}
	var named []string
	for _, c := range list {
		named = append(named, words(c))
	}
	return " (" + strings.Join(named, ", ") + ")"
}

// cloth names a fabric or a strip set.
func (b TemplateBook) cloth(c templates.ClothCount) string {
	if c.Fabric >= 0 {
		return b.Top.Fabrics[c.Fabric].Name
	}
	return "strip set " + b.Top.CutFacts.Sets[c.Set].Name
}

// OnGrain says how a template lies on the fabric.
const OnGrain = "Align the arrow with the straight grain."

// PlateText is what stands at a page of templates: its caption, and what it shows for someone who cannot see it.
func PlateText(title string) (caption, description string) {
	return title + " Print at 100%.", "At true size: " + title + " Test squares of 1 inch and 3 centimeters are included."
}

// TooLarge says what the pages of a pattern have no room for, nothing for none.
func TooLarge(noun string, large []templates.Large) []document.Block {
	var names []string
	for _, l := range large {
		names = append(names, l.Name)
	}
	switch len(names) {
	case 0:
		return nil
	case 1:
		return []document.Block{para("Too large for these pages is %s %s: use the sizes in the cutting lists.", noun, names[0])}
	}
	return []document.Block{para("Too large for these pages are %s %s: use the sizes in the cutting lists.", noun, measure.List(names))}
}

// PlatesLimit says that templates would take more sheets of paper than are printed.
func PlatesLimit(name string, sheets, ofPiece, ofAll int) string {
	if sheets <= ofPiece {
		return fmt.Sprintf("the templates would take more than %d sheets of paper, the most that are printed", ofAll)
	}
	return fmt.Sprintf("%s would take %d sheets of paper; the limit is %d", name, sheets, ofPiece)
}

// Foundations is what to know of foundations, and what each is.
func Foundations(list []templates.Foundation, shown func(name string) string) []document.Block {
	t := document.Table{Named: true, Columns: []document.Column{words("Foundation"), counts("Print"), words("In this order"), words("Shown in")}}
	for i := range list {
		f := &list[i]
		var order []string
		for n, p := range f.Pieces {
			order = append(order, number(n+1)+": "+p.What)
		}
		r := row(number(f.Number), number(f.Count), strings.Join(order, "; "), shown(number(f.Number)))
		r.Cells[0].Text = document.Bold(number(f.Number))
		t.Rows = append(t.Rows, r)
	}
	return []document.Block{para("Use these for foundation paper piecing, in place of the template pieces. They are mirror images: place the fabric on the back of the paper, right side out, and sew on the printed side along the dashed lines, in numerical order. " +
		"The outermost dashed line is the finished edge of the half block; trim on the solid line. Print at 100%% (Actual size), and measure both test squares."), t}
}

// maxCloths is how many fabrics of one template a table lists one by one.
const maxCloths = 8

// fewFabrics are fabrics with their numbers; of many, how many there are.
func fewFabrics(list []string) string {
	if len(list) > maxCloths {
		return measure.Count(len(list), "fabric")
	}
	return strings.Join(list, "; ")
}
