package templates

import (
	"slices"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// Piece is a figure of true size that is to be printed.
type Piece struct {
	Name string
	*diagram.Figure
}

// Plate is a page of pieces at true size, with two squares to be measured.
type Plate struct {
	Shows       []string       // the names of the pieces on it
	Part, Parts int            // of a piece that is larger than the page, from 1; 0 of whole pieces
	Figure      diagram.Figure // without title and description
}

// Large is a piece that would take more plates than are printed.
type Large struct {
	Name   string
	Plates int
}

// Most is how many plates are printed.
type Most struct {
	OfPiece int // of one piece
	InAll   int
}

// Measures of a plate.
const (
	squaresHigh = 27 * measure.Inch / 20 // the room for the test squares
	plateGap    = 3 * measure.Inch / 20  // between pieces
	overlap     = measure.Inch / 2       // of the parts of a piece that is larger than the page
)

// Plates lays pieces on pages that have a room of a width and a height: side by side on the first page
// with room for them, between the slanted edges of others, turned where they only fit so, alone with the test squares beside them,
// or in parts to be taped together. Those that take too many plates are left out.
func Plates(pieces []Piece, room measure.Point, most Most) (plates []Plate, left []Large) {
	l := &plating{whole: room, room: measure.Point{X: room.X, Y: room.Y - squaresHigh}, shapes: map[int][]shape{}, squares: map[int]twoSquares{}}
	for i, p := range pieces {
		aside := Piece{p.Name, turned(p.Figure)}
		if l.place(p, false) || l.place(aside, false) || i < maxNested && (l.nest(p, false) || l.nest(aside, false)) ||
			l.place(p, true) || l.place(aside, true) || l.nest(p, true) || l.nest(aside, true) {
			continue
		}
		parts := l.parts(p)
		if n := len(parts); n > most.OfPiece || n+len(l.plates) > most.InAll {
			left = append(left, Large{p.Name, n})
			continue
		}
		l.plates = append(l.plates, parts...)
	}
	for i := range l.plates {
		p := &l.plates[i]
		p.Figure.TrueSize, p.Figure.Max = true, room
		squares, moved := l.squares[i]
		if !moved {
			squares = squaresAtFoot(room)
		}
		p.Figure.Marks = append(p.Figure.Marks, squares.marks()...)
	}
	return l.plates, left
}

// plating is the work on the plates.
type plating struct {
	whole   measure.Point // the room of a plate
	room    measure.Point // the same for pieces, the squares below
	plates  []Plate
	shapes  map[int][]shape    // of the pieces on a plate
	squares map[int]twoSquares // of plates that have them elsewhere than at the foot
	open    []shelf            // plates that take more
}

// shelf is where the next piece stands on a plate.
type shelf struct {
	plate int // index into the plates
	at    measure.Point
	high  measure.NM // of what stands there
}

// placed is a piece put on paper, and how large it is there.
func placed(p Piece) (by measure.Point, wide, high measure.NM) {
	s := diagram.Place(p.Figure, diagram.Options{NoLegend: true})
	return measure.Point{X: nanometres(s.Origin.X), Y: nanometres(s.Origin.Y)}, nanometres(s.Width), nanometres(s.Height)
}

// place puts a piece on the first plate that takes it, or on a new one if that is wanted; false where none is large enough.
func (l *plating) place(p Piece, fresh bool) bool {
	by, w, h := placed(p)
	if w > l.room.X || h > l.room.Y {
		return false
	}
	for i := 0; ; i++ {
		if i == len(l.open) {
			if !fresh {
				return false
			}
			l.open, l.plates = append(l.open, shelf{plate: len(l.plates)}), append(l.plates, Plate{})
		}
		s := l.open[i]
		if s.at.X+w > l.room.X {
			s.at, s.high = measure.Point{Y: s.at.Y + s.high + plateGap}, 0
		}
		if s.at.Y+h > l.room.Y {
			continue
		}
		l.plates[s.plate].add(p, measure.Point{X: s.at.X + by.X, Y: s.at.Y + by.Y})
		l.shapes[s.plate] = append(l.shapes[s.plate], shapeOf(p).moved(s.at.X, s.at.Y))
		s.at.X, s.high = s.at.X+w+plateGap, max(s.high, h)
		l.open[i] = s
		return true
	}
}

// close takes a plate from those with shelves.
func (l *plating) close(plate int) {
	l.open = slices.DeleteFunc(l.open, func(s shelf) bool { return s.plate == plate })
}

// add puts a piece on a plate.
func (p *Plate) add(piece Piece, by measure.Point) {
	p.Shows = append(p.Shows, piece.Name)
	for _, m := range piece.Figure.Marks {
		p.Figure.Marks = append(p.Figure.Marks, moved(m, by))
	}
}

// Sides of the test squares over their outer edges, which are what a ruler is laid on, and how
// broad their lines are within.
const (
	inchSquare       = measure.Inch
	centimetreSquare = 3 * measure.Centimetre
	squareLine       = measure.Inch / 72
)

// squaresAtFoot are the places of two squares of known size at the foot of a plate, side by side; squaresAtSide at its right side,
// one above the other.
func squaresAtFoot(room measure.Point) twoSquares {
	const gap = measure.Inch / 4
	first := measure.Point{X: measure.Inch / 20, Y: room.Y - 5*measure.Inch/4}
	return twoSquares{first, {X: first.X + inchSquare + gap, Y: first.Y}}
}

func squaresAtSide(room measure.Point) twoSquares {
	const gap = measure.Inch / 4
	first := measure.Point{X: room.X - 5*measure.Inch/4, Y: measure.Inch / 20}
	return twoSquares{first, {X: first.X, Y: first.Y + inchSquare + gap}}
}

// threeCentimetres is in the larger test square.
const threeCentimetres = "3 centimeters"

// Enlarge sets all words of a plate in so many points at least; those of the larger test square are cut short to have room.
func (p *Plate) Enlarge(points float64) {
	p.Figure.Marks = slices.Clone(p.Figure.Marks)
	for i, m := range p.Figure.Marks {
		if m.Words == nil || m.Words.Points >= points {
			continue
		}
		larger := *m.Words
		if larger.Points = points; larger.Text == threeCentimetres {
			larger.Text = "3 cm"
		}
		p.Figure.Marks[i].Words = &larger
	}
}

// testSquare is a square of known size with its name in it. A line along its edges would stand out by half of its breadth; so it is
// a dark square with a light one within it. On a screen where that leaves less than a pixel of an edge, programs lose it; so a finer line
// runs along the middle of the edges, since they show every line.
func testSquare(at measure.Point, side measure.NM, text string) []diagram.Mark {
	square := func(in measure.NM, fill palettes.Colour) diagram.Mark {
		return diagram.Mark{Area: &diagram.Area{Outline: box(measure.Point{X: at.X + in, Y: at.Y + in}, measure.Point{X: at.X + side - in, Y: at.Y + side - in}), Fill: fill}}
	}
	dark, light := diagram.Black(), palettes.Colour{R: 255, G: 255, B: 255}
	line := square(squareLine/2, light)
	line.Area.Clear, line.Area.Edge = true, diagram.Gauge
	middle := measure.Point{X: at.X + side/2, Y: at.Y + side/2}
	return []diagram.Mark{square(0, dark), square(squareLine, light), line,
		{Words: &diagram.Words{Text: text, At: middle, Points: 8, Room: side * 9 / 10, Colour: dark}}}
}

func box(low, high measure.Point) []measure.Point {
	return []measure.Point{low, {X: high.X, Y: low.Y}, high, {X: low.X, Y: high.Y}}
}

// turned is a figure after a quarter turn clockwise; its words stay upright.
func turned(f *diagram.Figure) *diagram.Figure {
	turn := func(list []measure.Point) []measure.Point {
		out := make([]measure.Point, len(list))
		for i, p := range list {
			out[i] = measure.Point{X: f.Max.Y - p.Y, Y: p.X}
		}
		return out
	}
	g := *f
	g.Max, g.Marks = measure.Point{X: f.Max.Y, Y: f.Max.X}, nil
	for _, m := range f.Marks {
		g.Marks = append(g.Marks, changed(m, turn))
	}
	return &g
}

func nanometres(points float64) measure.NM { return measure.NM(points / diagram.TrueScale) }

// moved is a mark in another place.
func moved(m diagram.Mark, by measure.Point) diagram.Mark {
	return changed(m, func(list []measure.Point) []measure.Point {
		out := make([]measure.Point, len(list))
		for i, p := range list {
			out[i] = measure.Point{X: p.X + by.X, Y: p.Y + by.Y}
		}
		return out
	})
}

// changed is a mark whose points are changed.
func changed(m diagram.Mark, change func([]measure.Point) []measure.Point) diagram.Mark {
	if m.Area != nil {
		a := *m.Area
		a.Outline = change(a.Outline)
		if a.Print != nil {
			ends := change([]measure.Point{a.Repeat, a.Repeat.Add(measure.Point{X: measure.Yard})})
			a.Repeat, a.Turn = ends[0], a.Turn+degreesOf(ends[0], ends[1])
		}
		m.Area = &a
	}
	if m.Line != nil {
		k := *m.Line
		k.Points = change(k.Points)
		m.Line = &k
	}
	if m.Words != nil {
		w := *m.Words
		w.At = change([]measure.Point{w.At})[0]
		m.Words = &w
	}
	return m
}
