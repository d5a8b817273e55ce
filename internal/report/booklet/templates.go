package booklet

import (
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/render"
	"eighthturn/internal/render/paper"
)

// Measures of a page of templates.
const (
	squaresHeight = 27 * measure.Inch / 20 // at the foot, for the test squares
	templateGap   = 3 * measure.Inch / 20
	overlap       = measure.Inch / 2 // of the parts of a template that is larger than the page
	mostSheets    = 40
)

// sheet is one page of templates.
type sheet struct {
	marks   []diagram.Mark
	beside  bool // the test squares stand at the side, not at the foot
	part    bool // it is a part of a template that is larger than the page
	caption string
	shows   []string // the names of the templates on it
}

// templatesPart is the templates at true size.
func (b *book) templatesPart() {
	if b.left(templates) {
		return
	}
	sheets, out := b.templateSheets()
	if len(sheets) == 0 {
		return
	}
	b.part("Templates", true)
	b.add(document.List{Items: b.aboutTemplates(sheets)}, b.templateTable(sheets))
	b.tooLarge("template", out)
	b.sheets(sheets, templateKey)
}

// tooLarge names what the pages have no room for.
func (b *book) tooLarge(noun string, out []string) {
	if len(out) > 0 {
		b.add(para("Too large for these pages %s %s %s: cut from the sizes in the cutting lists.", verb(len(out), "is", "are"), noun, listed(out)))
	}
}

// sheets adds pages of figures at true size.
func (b *book) sheets(list []sheet, key string) {
	for i, s := range list {
		room := b.templateRoom()
		f := diagram.Figure{
			Title: s.caption, Description: "At true size: " + s.caption + " With it are a square of 1 inch and one of 3 centimetres to measure.",
			TrueSize: true, Max: room, Marks: append(s.marks, testSquares(room, s.beside)...),
		}
		b.add(document.PageBreak{}, document.Figure{Of: f, Caption: caption(key+numeral(i), s.caption+" Print at 100 %.")})
	}
}

// aboutTemplates is what to know before the templates are used.
func (b *book) aboutTemplates(sheets []sheet) []document.Item {
	hands := ""
	if slices.ContainsFunc(b.Templates, func(t paper.Template) bool { return t.Hand != "" }) {
		hands = " A piece that has a mirror image has a template for the left one and one for the right one."
	}
	items := []document.Item{
		item(lead("Print at 100 %,", "without fitting the page to the paper, and measure both test squares on every page before you use it.")),
		item(lead("Right side up:", "the templates show the right side of the cloth.%s", hands)),
		item(lead("Seams:", "the solid line is cut and has the seam allowance of %s in it; the dashed line is sewn; dots mark where seams begin and end.", b.length(b.Top.Seam))),
	}
	if list := b.ruled(); len(list) > 0 {
		items = append(items, item(lead(capital(listed(list)), "are cut with a ruler and have no templates here.")))
	}
	if slices.ContainsFunc(sheets, func(s sheet) bool { return s.part }) {
		items = append(items, item(lead("Parts:", "a template that is larger than the page comes in parts. Cut them off at their frames and tape them together, each frame on the dotted line of its neighbour.")))
	}
	return items
}

// ruled names the pieces of the quilt that are cut with a ruler alone.
func (b *book) ruled() []string {
	var list []string
	for i := range b.Templates {
		if t := &b.Templates[i]; t.ByRuler() {
			list = append(list, plural(t.Shape.String()))
		}
	}
	if slices.ContainsFunc(b.Top.Patches, func(p quilt.Patch) bool { return p.Shape == blocks.Strip }) {
		list = append(list, "strips")
	}
	return unique(list)
}

// templateRoom is the width and height that a page has for templates.
func (b *book) templateRoom() diagram.Point {
	p, spare := b.paper(), 8*measure.Inch/5
	if b.Large {
		spare = 3 * measure.Inch
	}
	return diagram.Point{X: p.Width - 2*p.Margin - measure.Inch/8, Y: p.Height - 2*p.Margin - spare}
}

// paper is the page.
func (b *book) paper() render.Paper {
	if b.Paper.Width == 0 {
		return render.Letter()
	}
	return b.Paper
}

// testSquares are two squares of known size at the foot of a page, side by side, or at its right side, one above the other.
func testSquares(room diagram.Point, beside bool) []diagram.Mark {
	const inch, cm, gap = measure.Inch, 3 * measure.Centimetre, measure.Inch / 4
	first := diagram.Point{X: measure.Inch / 20, Y: room.Y - 5*measure.Inch/4}
	second := diagram.Point{X: first.X + inch + gap, Y: first.Y}
	if beside {
		first = diagram.Point{X: room.X - 5*measure.Inch/4, Y: measure.Inch / 20}
		second = diagram.Point{X: first.X, Y: first.Y + inch + gap}
	}
	var marks []diagram.Mark
	for _, s := range []struct {
		at   diagram.Point
		side measure.NM
		text string
	}{{first, inch, "1 inch"}, {second, cm, "3 centimetres"}} {
		far := diagram.Point{X: s.at.X + s.side, Y: s.at.Y + s.side}
		middle := diagram.Point{X: s.at.X + s.side/2, Y: s.at.Y + s.side/2}
		marks = append(marks, diagram.Mark{Area: &diagram.Area{Outline: box(s.at, far), Clear: true, Edge: diagram.Cut}},
			diagram.Mark{Words: &diagram.Words{Text: s.text, At: middle, Points: 8, Room: s.side * 9 / 10, Colour: ink()}})
	}
	return marks
}

// laying puts templates on pages.
type laying struct {
	room   diagram.Point // for templates, the squares below
	sheets []sheet
	open   bool
	at     diagram.Point
	shelf  measure.NM
}

// templateSheets lays the templates on pages; those that take too many pages are left out and named.
func (b *book) templateSheets() (sheets []sheet, out []string) {
	var list []trueSize
	for i := range b.Templates {
		if t := &b.Templates[i]; !t.ByRuler() {
			list = append(list, trueSize{t.Name(), "Template " + t.Name() + ", " + t.Shape.String(), pieceAlone(t.Figure(b.Top))})
		}
	}
	return b.laid(list, "Template")
}

// laid lays figures on pages; those that take too many pages are left out and named.
func (b *book) laid(list []trueSize, noun string) (sheets []sheet, out []string) {
	room := b.templateRoom()
	l := &laying{room: diagram.Point{X: room.X, Y: room.Y - squaresHeight}}
	for _, t := range list {
		f, aside := t.Figure, turned(t.Figure)
		if l.place(f, t.name) || l.place(aside, t.name) || l.alone(f, t.name) || l.alone(aside, t.name) {
			continue
		}
		if parts := l.parts(f); len(parts)+len(l.sheets) <= mostSheets {
			for n, p := range parts {
				p.shows, p.part = []string{t.name}, true
				p.caption = t.what + ": part " + numeral(n+1) + " of " + numeral(len(parts)) + "."
				l.sheets = append(l.sheets, p)
			}
			l.open = false
			continue
		}
		out = append(out, t.name)
	}
	for i := range l.sheets {
		if s := &l.sheets[i]; s.caption == "" {
			s.caption = verb(len(s.shows), noun+" ", plural(noun)+" ") + listed(s.shows) + "."
		}
	}
	return l.sheets, out
}

// pieceAlone is a template's figure without the words below the piece, which stand in a table.
func pieceAlone(f *diagram.Figure) *diagram.Figure {
	f.Marks = slices.DeleteFunc(f.Marks, func(m diagram.Mark) bool { return m.Words != nil && m.Words.At.Y > f.Max.Y })
	return f
}

// templateTable says what is cut by each template.
func (b *book) templateTable(sheets []sheet) document.Table {
	t := document.Table{Named: true, Columns: []document.Column{{Title: "Template"}, {Title: "Piece"}, {Title: "Number", Kind: document.Counts}, {Title: "Cloth"}, {Title: "Shown in"}}}
	if b.Cuts.Copies > 1 {
		t.Columns[2].Title = "Number for a quilt"
	}
	for i := range b.Templates {
		piece := &b.Templates[i]
		if piece.ByRuler() {
			continue
		}
		var cloths []string
		for _, c := range piece.Cloths {
			if c.Fabric >= 0 {
				cloths = append(cloths, b.Top.Fabrics[c.Fabric].Name+": "+numeral(c.Count))
			} else {
				cloths = append(cloths, "strip set "+b.Top.Cloth.Sets[c.Set].Name+": "+numeral(c.Count))
			}
		}
		t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{{Text: document.Bold(piece.Name())}, cell(piece.Shape.String()), cell(numeral(piece.Count)), cell(joinedBy(cloths, "; ")), cell(shownIn(sheets, piece.Name(), templateKey))}})
	}
	return t
}

// shownIn refers to the pages that show a template.
func shownIn(sheets []sheet, name, key string) string {
	var list []string
	for i := range sheets {
		if slices.Contains(sheets[i].shows, name) {
			list = append(list, see(key+numeral(i)))
		}
	}
	return listed(list)
}

// place puts a template on the page that is open or on a new one; false where none is large enough.
func (l *laying) place(f *diagram.Figure, name string) bool {
	s := diagram.Place(f, diagram.Options{NoLegend: true})
	w, h := nanometres(s.Width), nanometres(s.Height)
	if w > l.room.X || h > l.room.Y {
		return false
	}
	if l.open && l.at.X > 0 && l.at.X+w > l.room.X {
		l.at, l.shelf = diagram.Point{Y: l.at.Y + l.shelf + templateGap}, 0
	}
	if !l.open || l.at.Y+h > l.room.Y {
		l.sheets = append(l.sheets, sheet{})
		l.open, l.at, l.shelf = true, diagram.Point{}, 0
	}
	last := &l.sheets[len(l.sheets)-1]
	last.shows = append(last.shows, name)
	by := diagram.Point{X: l.at.X + nanometres(s.Origin.X), Y: l.at.Y + nanometres(s.Origin.Y)}
	for _, m := range f.Marks {
		last.marks = append(last.marks, moved(m, by))
	}
	l.at.X += w + templateGap
	l.shelf = max(l.shelf, h)
	return true
}

// alone puts a template on a page by itself, the test squares at its side; false where that is not large enough.
func (l *laying) alone(f *diagram.Figure, name string) bool {
	s := diagram.Place(f, diagram.Options{NoLegend: true})
	if nanometres(s.Width) > l.room.X-squaresHeight || nanometres(s.Height) > l.room.Y+squaresHeight {
		return false
	}
	made := sheet{beside: true, shows: []string{name}}
	for _, m := range f.Marks {
		made.marks = append(made.marks, moved(m, diagram.Point{X: nanometres(s.Origin.X), Y: nanometres(s.Origin.Y)}))
	}
	l.sheets, l.open = append(l.sheets, made), false
	return true
}

// turned is a figure after a quarter turn clockwise; its words stay upright.
func turned(f *diagram.Figure) *diagram.Figure {
	turn := func(list []diagram.Point) []diagram.Point {
		out := make([]diagram.Point, len(list))
		for i, p := range list {
			out[i] = diagram.Point{X: f.Max.Y - p.Y, Y: p.X}
		}
		return out
	}
	g := *f
	g.Max, g.Marks = diagram.Point{X: f.Max.Y, Y: f.Max.X}, nil
	for _, m := range f.Marks {
		g.Marks = append(g.Marks, changed(m, turn))
	}
	return &g
}

func nanometres(points float64) measure.NM { return measure.NM(points / diagram.TrueScale) }

// moved is a mark in another place.
func moved(m diagram.Mark, by diagram.Point) diagram.Mark {
	return changed(m, func(list []diagram.Point) []diagram.Point {
		out := make([]diagram.Point, len(list))
		for i, p := range list {
			out[i] = diagram.Point{X: p.X + by.X, Y: p.Y + by.Y}
		}
		return out
	})
}

// changed is a mark whose points are changed.
func changed(m diagram.Mark, change func([]diagram.Point) []diagram.Point) diagram.Mark {
	if m.Area != nil {
		a := *m.Area
		a.Outline = change(a.Outline)
		m.Area = &a
	}
	if m.Line != nil {
		k := *m.Line
		k.Points = change(k.Points)
		m.Line = &k
	}
	if m.Words != nil {
		w := *m.Words
		w.At = change([]diagram.Point{w.At})[0]
		m.Words = &w
	}
	return m
}
