package paper

import (
	"fmt"
	"io"
	"math"
	"strings"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// TemplateOptions say how templates are printed. The zero value is Letter paper without
// foundations.
type TemplateOptions struct {
	Paper       Size
	Foundations bool // print the halves of blocks for sewing on paper, too
}

// Printed says what a file of templates holds.
type Printed struct {
	Pages       int
	Templates   int
	Foundations int
	Tiled       []string // templates that take several sheets each
	Missing     []rune   // signs of the layout's names that the fonts lack; a mark stands in their place
}

// TemplatesPDF writes the templates of a top as pages to be printed at 100 %. Every page has
// an inch and a centimetre square to measure, and says what its lines mean. A *TooManySheets
// is a template that is too large to be printed; nothing is written then.
func TemplatesPDF(w io.Writer, top *quilt.Top, cuts *cutting.Plan, o TemplateOptions) (*Printed, error) {
	list := Templates(top, cuts)
	pages, err := sheets(top, list, o.Paper)
	if err != nil {
		return nil, err
	}
	made := &Printed{Templates: len(list)}
	for _, p := range pages {
		if p.tile != nil && (len(made.Tiled) == 0 || made.Tiled[len(made.Tiled)-1] != p.tile.name) {
			made.Tiled = append(made.Tiled, p.tile.name)
		}
	}
	book := &templateBook{top: top, paper: o.Paper, letters: diagram.NewLettering()}
	if o.Foundations {
		halves := Foundations(top)
		made.Foundations = len(halves)
		more, err := foundationSheets(top, halves, o.Paper)
		if err != nil {
			return nil, err
		}
		pages = append(pages, more...)
		book.foundations = len(halves) > 0
	}
	book.missing = missing(book.letters, book.texts(list))
	made.Missing = book.missing
	notes := book.flow(book.notes(list))
	made.Pages = len(notes) + len(pages)
	if book.file, err = newPDF(book.title(), templateMarker); err != nil {
		return nil, err
	}
	book.pages = made.Pages
	for _, n := range notes {
		book.begin()
		book.lines(n)
	}
	for i := range pages {
		book.begin()
		book.sheet(&pages[i])
	}
	return made, book.file.end(w)
}

// templateBook is the work on one file of templates.
type templateBook struct {
	top         *quilt.Top
	paper       Size
	letters     *diagram.Lettering
	file        *pdfFile
	page, pages int
	foundations bool
	missing     []rune // signs that the fonts lack
}

func (b *templateBook) title() string {
	if b.top.Title == "" {
		return "Quilt top, templates"
	}
	return b.top.Title + ", templates"
}

func black() palettes.Colour { return palettes.Colour{R: 0x11, G: 0x11, B: 0x11} }

// begin begins a page with its head and foot.
func (b *templateBook) begin() {
	b.page++
	size := b.paper.points()
	b.file.page(size.x, size.y)
	small := setting{size: 9, colour: black()}
	number := fmt.Sprintf("page %d of %d", b.page, b.pages)
	wide := b.letters.Width(number, 9, false)
	title := b.fitted(b.title(), size.x-2*sheetEdge-wide-12, 9)
	b.file.words(title, xy{sheetEdge, sheetEdge + 10}, small)
	b.file.words(number, xy{size.x - sheetEdge - wide, sheetEdge + 10}, small)
	b.foot()
}

// fitted is a text cut to a width in points.
func (b *templateBook) fitted(text string, width, size float64) string {
	if b.letters.Width(text, size, false) <= width {
		return text
	}
	runes := []rune(text)
	for len(runes) > 0 && b.letters.Width(string(runes)+"…", size, false) > width {
		runes = runes[:len(runes)-1]
	}
	return string(runes) + "…"
}

// Sides of the test squares, in points: an inch, and three centimetres. They are measured
// over their outer edges.
const (
	inchSquare       = 72.0
	centimetreSquare = 30 / 25.4 * pointsPerInch
	squareLine       = 1.0
)

// foot draws the test squares and says how to print, and what lines mean.
func (b *templateBook) foot() {
	size := b.paper.points()
	y := size.y - sheetEdge - centimetreSquare
	b.square(xy{sheetEdge, y + centimetreSquare - inchSquare}, inchSquare, "1 in")
	x := sheetEdge + inchSquare + 10
	b.square(xy{x, y}, centimetreSquare, "3 cm")
	x += centimetreSquare + 12
	b.file.words("Print at 100 %.", xy{x, y + 9}, setting{size: 11, bold: true, colour: black()})
	y += 22
	text := "Choose actual size: no scaling, no fit to page. Then measure: the squares must be 1 in and 3 cm along each side, over their outer edges. If they are not, the pieces will not fit."
	for _, line := range wrapped(b.letters, text, size.x-sheetEdge-x, setting{size: 7.5}) {
		b.file.words(line, xy{x, y}, setting{size: 7.5, colour: black()})
		y += 9.5
	}
	b.legend(xy{x, y + 6}, size.x-sheetEdge)
}

func (b *templateBook) square(at xy, side float64, name string) {
	ink, paper := black(), palettes.Colour{R: 255, G: 255, B: 255}
	b.file.paths([]path{rectangle(at, xy{side, side})}, paint{fill: &ink, opacity: 1})
	b.file.paths([]path{rectangle(xy{at.x + squareLine, at.y + squareLine}, xy{side - 2*squareLine, side - 2*squareLine})}, paint{fill: &paper, opacity: 1})
	b.file.words(name, xy{at.x + (side-b.letters.Width(name, 9, false))/2, at.y + side/2 + 3}, setting{size: 9, colour: black()})
}

func rectangle(at, size xy) path {
	return path{[]xy{at, {at.x + size.x, at.y}, {at.x + size.x, at.y + size.y}, {at.x, at.y + size.y}}, true}
}

// legend says what lines mean, from a place on to the right.
func (b *templateBook) legend(at xy, right float64) {
	x := at.x
	entry := func(text string, sample func(xy)) {
		wide := 24 + 4 + b.letters.Width(text, 7.5, false)
		if x > at.x && x+wide > right {
			x, at.y = at.x, at.y+11
		}
		sample(xy{x, at.y - 2.5})
		b.file.words(text, xy{x + 28, at.y}, setting{size: 7.5, colour: black()})
		x += wide + 10
	}
	for _, l := range []struct {
		stroke diagram.Stroke
		text   string
		ends   diagram.Ending
	}{{diagram.Cut, "cut", diagram.Plain}, {diagram.Sew, "sew", diagram.Plain}, {diagram.Grain, "straight grain", diagram.Arrow}, {diagram.Fold, "another sheet joins here", diagram.Plain}} {
		entry(l.text, func(at xy) { b.sample(at, l.stroke, l.ends) })
	}
	entry("pin here", func(at xy) { b.file.dot(xy{at.x + 12, at.y}, 2, black()) })
}

// sample is a short line of a style.
func (b *templateBook) sample(at xy, stroke diagram.Stroke, ends diagram.Ending) {
	f := &diagram.Figure{TrueSize: true, Marks: []diagram.Mark{{Line: &diagram.Line{
		Points: []diagram.Point{{}, {X: nanometres(22)}}, Stroke: stroke, Start: ends, End: ends,
	}}}}
	s := diagram.Place(f, diagram.Options{NoLegend: true})
	b.file.figure(s, xy{at.x - s.Origin.X, at.y - s.Origin.Y})
}

// sheet draws what a page holds.
func (b *templateBook) sheet(s *sheet) {
	for _, p := range s.placed {
		b.file.figure(p.Sheet, p.at)
	}
	if s.tile != nil {
		b.tile(s.tile)
	}
}

// tile draws a part of a template with the lines along which other sheets join it, and
// crosses where their corners lie.
func (b *templateBook) tile(t *tile) {
	origin, _ := b.paper.area()
	y := origin.y + 8
	for i, line := range []string{t.lines[0] + ": " + t.where(), strings.Join(t.lines[1:], " "), "Lay sheets over one another so that dotted lines and crosses meet, and tape them."} {
		b.file.words(b.fitted(line, t.size.x, 8.5), xy{origin.x, y}, setting{size: 8, bold: i == 0, colour: black()})
		y += 11
	}
	corner := xy{origin.x, origin.y + tileHead}
	b.file.flush()
	b.file.document.ClipRect(corner.x, corner.y, t.size.x, t.size.y, false)
	b.file.figure(t.Sheet, xy{corner.x - t.from.x, corner.y - t.from.y})
	b.file.flush()
	b.file.document.ClipEnd()
	b.joins(t, corner)
}

// where says which part of a template a sheet has.
func (t *tile) where() string {
	return fmt.Sprintf("row %d of %d, sheet %d of %d across", t.row+1, t.rows, t.column+1, t.columns)
}

// joins draws the dotted lines in the middle of what two sheets have in common, and a cross
// where two such lines meet or end.
func (b *templateBook) joins(t *tile, corner xy) {
	var xs, ys []float64
	near, farX, farY := tileOverlap/2, t.size.x-tileOverlap/2, t.size.y-tileOverlap/2
	xs, ys = joinsOf(t.column, t.columns, near, farX), joinsOf(t.row, t.rows, near, farY)
	pen := diagram.Fold.Pen()
	line := func(a, c xy) {
		b.file.paths([]path{{points: []xy{a, c}}}, paint{line: &pen.Colour, width: pen.Width, dashes: pen.Dashes, opacity: 1})
	}
	for _, x := range xs {
		line(xy{corner.x + x, corner.y}, xy{corner.x + x, corner.y + t.size.y})
	}
	for _, y := range ys {
		line(xy{corner.x, corner.y + y}, xy{corner.x + t.size.x, corner.y + y})
	}
	for _, x := range append(xs, near, farX) {
		for _, y := range append(ys, near, farY) {
			b.cross(xy{corner.x + x, corner.y + y})
		}
	}
}

// joinsOf are the places, along one axis, where sheets join a sheet.
func joinsOf(n, count int, near, far float64) []float64 {
	var list []float64
	if n > 0 {
		list = append(list, near)
	}
	if n < count-1 {
		list = append(list, far)
	}
	return list
}

// cross is a register mark.
func (b *templateBook) cross(at xy) {
	const arm = 6
	ink := black()
	b.file.paths([]path{{points: []xy{{at.x - arm, at.y}, {at.x + arm, at.y}}}, {points: []xy{{at.x, at.y - arm}, {at.x, at.y + arm}}}}, paint{line: &ink, width: 0.5, opacity: 1})
	b.file.paths([]path{{disc(at, 3.5), true}}, paint{line: &ink, width: 0.5, opacity: 1})
}

// dot is a filled disc.
func (f *pdfFile) dot(at xy, radius float64, c palettes.Colour) {
	f.paths([]path{{disc(at, radius), true}}, paint{fill: &c, opacity: 1})
}

// figure draws a figure that was put on paper, its upper left corner at a place.
func (f *pdfFile) figure(s *diagram.Sheet, at xy) {
	move := func(p diagram.XY) xy { return xy{at.x + p.X, at.y + p.Y} }
	for i := range s.Items {
		item := &s.Items[i]
		if l := item.Label; l != nil {
			rim := 0.0
			if l.Halo {
				rim = 1.1
			}
			f.words(l.Text, move(l.At), setting{l.Size, l.Bold, l.Colour, l.Quarters, rim})
			continue
		}
		shape := item.Shape
		p := paint{width: shape.Pen.Width, dashes: shape.Pen.Dashes, opacity: 1}
		if shape.Filled {
			p.fill = &shape.Fill
		}
		if shape.Pen.Width > 0 {
			p.line = &shape.Pen.Colour
		}
		outline := path{closed: shape.Closed || shape.Round}
		for _, q := range shape.Points {
			outline.points = append(outline.points, move(q))
		}
		if shape.Round {
			outline.points = disc(outline.points[0], shape.Radius)
		}
		f.paths([]path{outline}, p)
	}
}

// pageLine is a line of a page of text.
type pageLine struct {
	setting
	text  string
	above float64 // left free, in points
	in    float64 // from the left edge, in points
}

// flow breaks paragraphs into pages.
func (b *templateBook) flow(paragraphs []pageLine) [][]pageLine {
	_, room := b.paper.area()
	var pages [][]pageLine
	left := 0.0
	for _, p := range paragraphs {
		for i, text := range wrapped(b.letters, p.text, room.x-p.in, p.setting) {
			line := p
			line.text = text
			if i > 0 {
				line.above = 0
			}
			high := line.above + 1.35*line.size
			if len(pages) == 0 || left < high {
				pages, left = append(pages, nil), room.y
			}
			pages[len(pages)-1] = append(pages[len(pages)-1], line)
			left -= high
		}
	}
	return pages
}

// lines draws a page of text.
func (b *templateBook) lines(list []pageLine) {
	origin, _ := b.paper.area()
	y := origin.y
	for _, l := range list {
		y += l.above + 1.35*l.size
		b.file.words(l.text, xy{origin.x + l.in, y - 0.35*l.size}, l.setting)
	}
}

// nanometres is a length of the page as one of the subject at true size.
func nanometres(points float64) measure.NM { return measure.NM(math.Round(points / diagram.TrueScale)) }
