package booklet

import (
	"slices"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/render"
	"eighthturn/internal/templates"
)

// maxPlates is how many plates a booklet has.
const maxPlates = 40

// templatesPart is the templates at true size, but those of pieces that are cut with a ruler.
func (b *patternBuilder) templatesPart() {
	if b.left(templatesName) {
		return
	}
	var list []templates.Template
	for i := range b.Templates {
		if t := &b.Templates[i]; !t.ByRuler() {
			list = append(list, *t)
		}
	}
	plates, large := templates.Plates(piecesOf(list, b.Top), b.plateRoom(), templates.Most{OfPiece: maxPlates, InAll: maxPlates})
	if len(plates) == 0 {
		return
	}
	b.part("Templates", true)
	items := b.aboutTemplates(plates)
	if ruled := b.ruled(); len(ruled) > 0 {
		items = append(items, item(lead(capital(listed(ruled)), "are cut with a ruler and need no templates.")))
	}
	b.add(document.List{Items: items}, b.templateTable(list, plates))
	b.tooLarge("template", large)
	b.plates(plates, templateKey)
}

func piecesOf(list []templates.Template, top *quilt.Top) []templates.Piece {
	var pieces []templates.Piece
	for i := range list {
		pieces = append(pieces, templates.Piece{Name: list[i].Name(), Figure: list[i].Figure(top)})
	}
	return pieces
}

// tooLarge names what the pages have no room for.
func (b *patternBuilder) tooLarge(noun string, large []templates.Large) {
	var names []string
	for _, l := range large {
		names = append(names, l.Name)
	}
	if len(names) > 0 {
		b.add(para("Too large for these pages %s %s %s: use the sizes in the cutting lists.", verb(len(names), "is", "are"), noun, listed(names)))
	}
}

// plates adds pages of figures at true size.
func (b *patternBuilder) plates(list []templates.Plate, key string) {
	for i := range list {
		f := list[i].Figure
		f.Title = b.plateTitle(&list[i], key)
		f.Description = "At true size: " + f.Title + " Test squares of 1 inch and 3 centimeters are included."
		b.add(document.PageBreak{}, document.Figure{Of: f, Caption: caption(key+numeral(i), f.Title+" Print at 100%.")})
	}
}

// plateTitle says what is on a plate.
func (b *patternBuilder) plateTitle(p *templates.Plate, key string) string {
	noun := capital(strings.TrimSpace(key))
	if p.Parts > 0 {
		what := noun + " " + p.Shows[0]
		if i := slices.IndexFunc(b.Templates, func(t templates.Template) bool { return key == templateKey && t.Name() == p.Shows[0] }); i >= 0 {
			what += ", " + b.Templates[i].Shape.String()
		}
		return what + ": part " + numeral(p.Part) + " of " + numeral(p.Parts) + "."
	}
	return verb(len(p.Shows), noun+" ", plural(noun)+" ") + listed(p.Shows) + "."
}

// aboutTemplates is what to know before the templates are used.
func (b *patternBuilder) aboutTemplates(plates []templates.Plate) []document.Item {
	hands := ""
	if slices.ContainsFunc(b.Templates, func(t templates.Template) bool { return t.Hand != "" }) {
		hands = " Mirror-image pieces have a left template and a right template."
	}
	items := []document.Item{
		item(lead("Print at 100% (Actual size);", "turn off 'Fit to page'. Measure both test squares on every page before you use it.")),
		item(lead("Right side up:", "templates show the right side of the fabric.%s", hands)),
		item(lead("Seams:", "cut on the solid line, which includes a %s seam allowance; sew on the dashed line; dots mark where seams begin and end.", b.length(b.Top.Seam))),
	}
	if slices.ContainsFunc(plates, func(p templates.Plate) bool { return p.Parts > 0 }) {
		items = append(items, item(lead("Parts:", "a template larger than the page comes in parts. Trim them on their frames and tape them together, each frame on the dotted line of the next part.")))
	}
	return items
}

// ruled names the pieces of the quilt that are cut with a ruler alone.
func (b *patternBuilder) ruled() []string {
	var list []string
	for i := range b.Templates {
		if t := &b.Templates[i]; t.ByRuler() {
			list = append(list, plural(t.Shape.String()))
		}
	}
	if b.hasStrips() {
		list = append(list, "strips")
	}
	return unique(list)
}

func (b *patternBuilder) hasStrips() bool {
	return slices.ContainsFunc(b.Top.Patches, func(p quilt.Patch) bool { return p.Shape.Description().Edging })
}

// plateRoom is the width and height that a page has for templates.
func (b *patternBuilder) plateRoom() measure.Point {
	p, spare := b.paper(), 8*measure.Inch/5
	if b.Large {
		spare = 3 * measure.Inch
	}
	return measure.Point{X: p.Width - 2*p.Margin - measure.Inch/8, Y: p.Height - 2*p.Margin - spare}
}

// paper is the page.
func (b *patternBuilder) paper() render.Paper {
	if b.Paper.Width == 0 {
		return render.Letter()
	}
	return b.Paper
}

// templateTable says what is cut by each template.
func (b *patternBuilder) templateTable(list []templates.Template, plates []templates.Plate) document.Table {
	t := document.Table{Named: true, Columns: []document.Column{{Title: "Template"}, {Title: "Piece"}, {Title: "Number", Kind: document.Counts}, {Title: "Fabric"}, {Title: "Shown in"}}}
	if b.Cuts != nil && b.Cuts.Copies > 1 {
		t.Columns[2].Title = "Number per quilt"
	}
	for i := range list {
		piece := &list[i]
		var cloths []string
		for _, c := range piece.Cloths {
			if c.Fabric >= 0 {
				cloths = append(cloths, b.Top.Fabrics[c.Fabric].Name+": "+numeral(c.Count))
			} else {
				cloths = append(cloths, "strip set "+b.Top.CutFacts.Sets[c.Set].Name+": "+numeral(c.Count))
			}
		}
		t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{{Text: document.Bold(piece.Name())}, cell(piece.Shape.String()), cell(numeral(piece.Count)), cell(strings.Join(cloths, "; ")), cell(shownIn(plates, piece.Name(), templateKey))}})
	}
	return t
}

// shownIn refers to the pages that show a template.
func shownIn(plates []templates.Plate, name, key string) string {
	var list []string
	for i := range plates {
		if slices.Contains(plates[i].Shows, name) {
			list = append(list, see(key+numeral(i)))
		}
	}
	return listed(list)
}
