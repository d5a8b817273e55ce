package booklet

import (
	"slices"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
	"eighthturn/internal/templates"
)

// maxPlates is how many plates a booklet has.
const maxPlates = 40

// templatesPart is what to know of the templates, but those of pieces that are cut with a ruler; their plates follow where the
// returned function is called.
func (b *patternBuilder) templatesPart() (pages func()) {
	none := func() {}
	if b.left(templatesName) {
		return none
	}
	var list []templates.Template
	for i := range b.Templates {
		if t := &b.Templates[i]; !t.ByRuler() {
			list = append(list, *t)
		}
	}
	plates, large := templates.Plates(piecesOf(list, b.Top), b.plateRoom(), templates.Most{OfPiece: maxPlates, InAll: maxPlates})
	if len(plates) == 0 {
		return none
	}
	b.part("Templates", false)
	b.parts[len(b.parts)-1].ID = document.AboutTrueSize
	says := b.templateBook(plates)
	b.add(document.List{Items: append(says.About(), says.ByRuler()...)}, says.Table(list, shownIn(plates, templateKey), false))
	b.add(report.TooLarge("template", large)...)
	return func() {
		b.part("", false)
		b.parts[len(b.parts)-1].Alone = true
		b.plates(plates, templateKey)
	}
}

func piecesOf(list []templates.Template, top *quilt.Top) []templates.Piece {
	var pieces []templates.Piece
	cloths := templates.NewCloths(top)
	for i := range list {
		pieces = append(pieces, templates.Piece{Name: list[i].Name(), Figure: list[i].Figure(top, cloths)})
	}
	return pieces
}

// largePoints is how large letters are at the least in large print.
const largePoints = 18

// plates adds pages of figures at true size.
func (b *patternBuilder) plates(list []templates.Plate, key string) {
	for i := range list {
		if b.Large {
			list[i].Enlarge(largePoints)
		}
		f := list[i].Figure
		f.Title = b.plateTitle(&list[i], key)
		text, description := report.PlateText(f.Title)
		f.Description = description
		if key == templateKey {
			text += " " + b.templateBook(list).PlateFacts(list[i].Shows, b.factsRoom()) + " " + report.OnGrain
		}
		b.add(document.PageBreak{}, document.Figure{Of: f, Caption: caption(key+numeral(i), text)})
	}
}

// plateTitle says what is on a plate.
func (b *patternBuilder) plateTitle(p *templates.Plate, key string) string {
	noun := capital(strings.TrimSpace(key))
	if p.Parts > 0 {
		what := noun + " " + p.Shows[0]
		if i := slices.IndexFunc(b.Templates, func(t templates.Template) bool { return key == templateKey && t.Name() == p.Shows[0] }); i >= 0 {
			what += ", " + b.Templates[i].Piece()
		}
		return what + ": part " + numeral(p.Part) + " of " + numeral(p.Parts) + "."
	}
	return verb(len(p.Shows), noun+" ", plural(noun)+" ") + listed(p.Shows) + "."
}

// templateBook words the templates of plates.
func (b *patternBuilder) templateBook(plates []templates.Plate) report.TemplateBook {
	return report.TemplateBook{Top: b.Top, Templates: b.Templates, Parts: slices.ContainsFunc(plates, func(p templates.Plate) bool { return p.Parts > 0 }), Several: b.Cuts != nil && b.Cuts.Copies > 1}
}

// plateRoom is the width and height that a page has for templates.
func (b *patternBuilder) plateRoom() measure.Point {
	p, spare := b.paper(), 15*measure.Inch/8 // a long caption takes three lines
	if b.Large {
		spare = 31 * measure.Inch / 8 // five lines
	}
	return measure.Point{X: p.Width - 2*p.Margin - measure.Inch/8, Y: p.Height - 2*p.Margin - spare}
}

// factsRoom is how many letters a page of templates has to say what is cut.
func (b *patternBuilder) factsRoom() int {
	if b.Large || b.paper().Width < 6*measure.Inch {
		return 70
	}
	return 160
}

// paper is the page.
func (b *patternBuilder) paper() render.Paper {
	if b.Paper.Width == 0 {
		return render.Letter()
	}
	return b.Paper
}

// shownIn refers to the pages that show a template.
func shownIn(plates []templates.Plate, key string) func(name string) string {
	return func(name string) string {
		var list []string
		for i := range plates {
			if slices.Contains(plates[i].Shows, name) {
				list = append(list, see(key+numeral(i)))
			}
		}
		return listed(list)
	}
}
