package paper

import (
	"fmt"
	"math"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// Size is a size of paper.
type Size uint8

const (
	Letter Size = iota
	A4
)

// Sizes are the names of the sizes of paper, in their order.
func Sizes() []string { return []string{"letter", "a4"} }

// points are the paper's width and height (ANSI Y14.1: 8 1/2 by 11 in; ISO 216: 210 by 297 mm).
func (s Size) points() xy {
	if s == A4 {
		return xy{210 / 25.4 * pointsPerInch, 297 / 25.4 * pointsPerInch}
	}
	return xy{8.5 * pointsPerInch, 11 * pointsPerInch}
}

// Measures of a sheet of templates, in points.
const (
	sheetEdge   = 36.0 // that printers may not reach
	headRoom    = 26.0
	footRoom    = 92.0 // with the test squares
	sheetGap    = 12.0 // between templates
	tileOverlap = 36.0 // of two sheets that are taped together
	mostSheets  = 60   // for one template
	mostPages   = 1000 // in all
)

// area is the room for templates on a sheet.
func (s Size) area() (origin, size xy) {
	p := s.points()
	return xy{sheetEdge, sheetEdge + headRoom}, xy{p.x - 2*sheetEdge, p.y - 2*sheetEdge - headRoom - footRoom}
}

// sheet is one page of templates: figures at their places, or one part of a figure that is
// larger than a page.
type sheet struct {
	placed []placedFigure
	tile   *tile
}

type placedFigure struct {
	*diagram.Sheet
	at xy // of the figure's upper left corner, on the page
}

// tile is a part of a figure that is larger than a page.
type tile struct {
	*diagram.Sheet
	name          string
	column, row   int // from 0
	columns, rows int
	from          xy       // the place of the figure that lies in the upper left corner of the room
	size          xy       // of the room
	lines         []string // what it is
}

// TooManySheets says that a template, or all of them, would need more sheets than are
// printed.
type TooManySheets struct {
	Name       string
	Sheets     int
	Wide, High measure.NM // of the piece, cut
}

func (e *TooManySheets) Error() string {
	if e.Name == "" {
		return fmt.Sprintf("the templates would take %d sheets of paper and more, and %d are printed at the most", e.Sheets, mostPages)
	}
	return fmt.Sprintf("template %s would take %d sheets of paper, and %d are printed at the most", e.Name, e.Sheets, mostSheets)
}

// sheets lays templates on pages, in their order: side by side where they fit, and those
// that are larger than a page in parts to be taped together.
func sheets(top *quilt.Top, list []Template, paper Size) ([]sheet, error) {
	l := &laying{paper: paper}
	l.origin, l.room = paper.area()
	for i := range list {
		t := &list[i]
		turned := t.turned()
		if l.places(t.Figure(top)) || l.places(turned.Figure(top)) {
			continue
		}
		if err := l.tiles(large{t.shapeFigure(top), t.Cut, t.Name(), t.caption(top)}); err != nil {
			return nil, err
		}
		if n := len(l.pages); n > mostPages {
			return nil, &TooManySheets{Sheets: n}
		}
	}
	return l.pages, nil
}

// laying is the work on the pages.
type laying struct {
	paper  Size
	origin xy // of the room for templates, on the page
	room   xy
	pages  []sheet
	open   bool    // the last page takes more
	at     xy      // where the next figure goes, in the room
	shelf  float64 // height of the row of figures that it joins
}

// places puts a figure on a page, if it fits on one.
func (l *laying) places(f *diagram.Figure) bool {
	whole := diagram.Place(f, diagram.Options{NoLegend: true})
	if whole.Width > l.room.x || whole.Height > l.room.y {
		return false
	}
	l.place(whole)
	return true
}

// place puts a figure beside the last one, or below it, or on a new page.
func (l *laying) place(s *diagram.Sheet) {
	if l.open && l.at.x > 0 && l.at.x+s.Width > l.room.x {
		l.at, l.shelf = xy{0, l.at.y + l.shelf + sheetGap}, 0
	}
	if !l.open || l.at.y+s.Height > l.room.y {
		l.pages = append(l.pages, sheet{})
		l.open, l.at, l.shelf = true, xy{}, 0
	}
	last := &l.pages[len(l.pages)-1]
	last.placed = append(last.placed, placedFigure{s, xy{l.origin.x + l.at.x, l.origin.y + l.at.y}})
	l.at.x += s.Width + sheetGap
	l.shelf = max(l.shelf, s.Height)
}

// large is a figure that is larger than a page.
type large struct {
	figure *diagram.Figure
	cut    []diagram.Point // what of it must be on paper
	name   string
	lines  []string // what it is
}

// tiles puts a figure on as many pages as it takes; pages that the piece does not reach are
// left out.
func (l *laying) tiles(f large) error {
	s := diagram.Place(f.figure, diagram.Options{NoLegend: true})
	room := xy{l.room.x, l.room.y - tileHead}
	columns, rows := tilesOf(s.Width, room.x), tilesOf(s.Height, room.y)
	_, high := bounds(f.cut)
	if columns*rows > 4*mostSheets {
		return &TooManySheets{f.name, columns * rows, high.X, high.Y}
	}
	first := len(l.pages)
	for row := range rows {
		for column := range columns {
			part := tile{Sheet: s, name: f.name, column: column, row: row, columns: columns, rows: rows, size: room, lines: f.lines}
			part.from = xy{float64(column) * (room.x - tileOverlap), float64(row) * (room.y - tileOverlap)}
			if part.reached(f.cut) {
				l.pages = append(l.pages, sheet{tile: &part})
			}
		}
	}
	l.open = false
	if n := len(l.pages) - first; n > mostSheets {
		return &TooManySheets{f.name, n, high.X, high.Y}
	}
	return nil
}

// tileHead is the room above a part of a template, for words.
const tileHead = 40.0

// tilesOf is how many parts a length takes.
func tilesOf(length, room float64) int {
	return max(1, int(math.Ceil((length-tileOverlap)/(room-tileOverlap)-1e-9)))
}

// reached says whether a part shows any of an outline or of what lies in it.
func (t *tile) reached(outline []diagram.Point) bool {
	window := []xy{{t.from.x, t.from.y}, {t.from.x + t.size.x, t.from.y}, {t.from.x + t.size.x, t.from.y + t.size.y}, {t.from.x, t.from.y + t.size.y}}
	piece := make([]xy, len(outline))
	for i, p := range outline {
		at := t.At(p)
		piece[i] = xy{at.X, at.Y}
	}
	return overlap(window, piece)
}

// overlap says whether two convex outlines share a place: no side of either has the other
// wholly on its outer side.
func overlap(a, b []xy) bool {
	for _, pair := range [][2][]xy{{a, b}, {b, a}} {
		for i, p := range pair[0] {
			q := pair[0][(i+1)%len(pair[0])]
			apart := true
			for _, c := range pair[1] {
				apart = apart && float64((q.x-p.x)*(c.y-p.y))-float64((q.y-p.y)*(c.x-p.x)) <= 0
			}
			if apart {
				return false
			}
		}
	}
	return true
}
