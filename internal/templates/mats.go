package templates

import (
	"cmp"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"eighthturn/internal/dxf"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// matGap is left free between pieces on a mat, and round them. Common practice, no source.
const matGap = measure.Inch / 8

// Mat is a cutting machine's mat with pieces of one fabric, and how often it is cut.
type Mat struct {
	Fabric int // index of the top's
	Number int // of its fabric's mats, from 1
	Of     int // mats of the fabric
	Times  int
	Counts []MatCount
	pieces []laidPiece
	size   measure.Point
}

// MatCount is how many pieces of a template lie on a mat.
type MatCount struct {
	Name  string
	Count int
}

// TooLarge is the error of a piece that no mat of the size holds.
type TooLarge struct {
	Template *Template
	Size     measure.Point // of the piece, cut, with room about it
	Enough   measure.Point // for every piece that is cut from one fabric
}

func (e *TooLarge) Error() string { return e.Template.Name() + " is larger than the mat" }

// Mats lays the pieces of each fabric on mats of a size, across and down: all that a top takes, in rows of like pieces, every other
// one turned half round, the highest rows first; the straight grain stays along or across. Wedges of strip sets are left out, since
// they are cut from what was sewn. The error is a *TooLarge.
func Mats(top *quilt.Top, list []Template, size measure.Point) ([]Mat, error) {
	list = slices.DeleteFunc(slices.Clone(list), func(t Template) bool { return t.Print != nil }) // lined up on the print one by one
	var all []Mat
	for fabric := range top.Fabrics {
		rows, large := matRows(list, fabric, size)
		if large != nil {
			large.Enough = enough(list)
			return nil, large
		}
		all = append(all, matsOf(fabric, rows, size)...)
	}
	return all, nil
}

// enough is the size of a mat that holds each of the pieces that are cut from one fabric.
func enough(list []Template) measure.Point {
	var most measure.Point
	for i := range list {
		if slices.ContainsFunc(list[i].Cloths, func(c ClothCount) bool { return c.Fabric >= 0 }) {
			_, high := bounds(list[i].Cut)
			most = measure.Point{X: max(most.X, high.X), Y: max(most.Y, high.Y)}
		}
	}
	return most.Add(measure.Point{X: 2 * matGap, Y: 2 * matGap})
}

// matRow is like pieces side by side, and so many rows like it.
type matRow struct {
	template *Template
	pieces   []laidPiece // from 0 across, their tops at 0
	high     measure.NM
	times    int
}

// matRows are the rows of a fabric, the highest first.
func matRows(list []Template, fabric int, size measure.Point) ([]matRow, *TooLarge) {
	var rows []matRow
	for i := range list {
		t := &list[i]
		at := slices.IndexFunc(t.Cloths, func(c ClothCount) bool { return c.Fabric == fabric })
		if at < 0 {
			continue
		}
		_, high := bounds(t.Cut)
		if need := high.Add(measure.Point{X: 2 * matGap, Y: 2 * matGap}); need.X > size.X || need.Y > size.Y {
			if need.Y > size.X || need.X > size.Y {
				return nil, &TooLarge{Template: t, Size: need}
			}
			t = t.quarterTurned()
			_, high = bounds(t.Cut)
		}
		row := rowOf(t, t.Cloths[at].Count, size.X-2*matGap)
		n := t.Cloths[at].Count / len(row)
		rows = append(rows, matRow{t, row, high.Y, n})
		if left := t.Cloths[at].Count % len(row); left > 0 {
			rows = append(rows, matRow{t, row[:left], high.Y, 1})
		}
	}
	slices.SortStableFunc(rows, func(a, b matRow) int { return cmp.Compare(b.high, a.high) })
	return rows, nil
}

// rowOf is as many pieces of a template side by side as are wanted and a width holds, at the least one. Every other one is turned half
// round, and so whatever is clear of the last one is clear of that before it too.
func rowOf(t *Template, wanted int, width measure.NM) []laidPiece {
	row := []laidPiece{{t, measure.Point{}, false, true}}
	for len(row) < wanted {
		next := laidPiece{t, measure.Point{}, len(row)%2 == 1, true}
		next.at.X = clearOf(row[len(row)-1], next) + matGap
		_, high := bounds(t.Cut)
		if next.at.X+high.X > width {
			break
		}
		row = append(row, next)
	}
	return row
}

// clearOf is how far to the right a piece begins that touches one on its left; both are convex, their tops on one line.
func clearOf(left, right laidPiece) measure.NM {
	a, b := floats(left.points(left.Cut)), floats(right.points(right.Cut))
	most := -endless
	for _, p := range slices.Concat(a, b) {
		_, ends := across(a, p.y)
		begins, _ := across(b, p.y)
		most = max(most, ends-begins)
	}
	return measure.NM(math.Ceil(most))
}

// across is where a convex outline begins and ends at a height; nothing where it does not reach.
func across(outline []xy, y float64) (begins, ends float64) {
	begins, ends = endless, -endless
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		switch {
		case y < min(p.y, q.y) || y > max(p.y, q.y):
		case p.y == q.y:
			begins, ends = min(begins, p.x, q.x), max(ends, p.x, q.x)
		default:
			x := p.x + (q.x-p.x)*(y-p.y)/(q.y-p.y)
			begins, ends = min(begins, x), max(ends, x)
		}
	}
	return begins, ends
}

// matsOf fills mats with rows, the highest first and lower ones where they have room; mats that are alike are one.
func matsOf(fabric int, rows []matRow, size measure.Point) []Mat {
	var list []Mat
	left := slices.Clone(rows)
	for slices.ContainsFunc(left, func(r matRow) bool { return r.times > 0 }) {
		mat := Mat{Fabric: fabric, size: size}
		y := matGap
		used := make([]int, len(left))
		for i := range left {
			for used[i] < left[i].times && y+left[i].high+matGap <= size.Y {
				mat.lay(&left[i], y)
				used[i]++
				y += left[i].high + matGap
			}
		}
		mat.Times = math.MaxInt
		for i, n := range used { // as often as the rows last
			if n > 0 {
				mat.Times = min(mat.Times, left[i].times/n)
			}
		}
		for i, n := range used {
			left[i].times -= n * mat.Times
		}
		list = append(list, mat)
	}
	for i := range list {
		list[i].Number, list[i].Of = i+1, len(list)
	}
	return list
}

// lay lays a row.
func (m *Mat) lay(r *matRow, y measure.NM) {
	for _, p := range r.pieces {
		p.at = p.at.Add(measure.Point{X: matGap, Y: y})
		m.pieces = append(m.pieces, p)
	}
	at := slices.IndexFunc(m.Counts, func(c MatCount) bool { return c.Name == r.template.Name() })
	if at < 0 {
		at = len(m.Counts)
		m.Counts = append(m.Counts, MatCount{Name: r.template.Name()})
	}
	m.Counts[at].Count += len(r.pieces)
}

// quarterTurned is the template turned a quarter round, clockwise.
func (t *Template) quarterTurned() *Template {
	_, high := bounds(t.Cut)
	turn := func(list []measure.Point) []measure.Point {
		turned := make([]measure.Point, len(list))
		for i, p := range list {
			turned[i] = measure.Point{X: high.Y - p.Y, Y: p.X}
		}
		return turned
	}
	other := *t
	other.Cut, other.Finished = turn(t.Cut), turn(t.Finished)
	copy(other.Grain[:], turn(t.Grain[:]))
	return &other
}

// Holds says what lies on the mat: "12 T1, 4 T2 left".
func (m *Mat) Holds() string {
	list := make([]string, len(m.Counts))
	for i, c := range m.Counts {
		list[i] = strconv.Itoa(c.Count) + " " + c.Name
	}
	return strings.Join(list, ", ")
}

// Name is which mat it is: "navy, mat 2 of 3".
func (m *Mat) Name(top *quilt.Top) string {
	return fmt.Sprintf("%s, mat %d of %d", top.Fabrics[m.Fabric].Name, m.Number, m.Of)
}

// says is which mat it is, how often it is cut and what that gives.
func (m *Mat) says(top *quilt.Top) string {
	return m.Name(top) + ". Cut it " + measure.Count(m.Times, "time") + ": " + m.Holds() + " each"
}

// SVG writes the mat as templates are written, as large as the mat.
func (m *Mat) SVG(w io.Writer, top *quilt.Top) error {
	s := newSheet(w, m.size, top.Units)
	s.canvas.Title(m.says(top))
	s.canvas.Desc(LayersNote)
	s.draw(m.pieces)
	s.canvas.End()
	return s.out.err
}

// MatsDXF writes mats as one drawing, side by side, with the layers of DXF: the edge of each on a layer MATS of its own, and over it on
// LABELS which it is, how often it is cut and what lies on it.
func MatsDXF(w io.Writer, top *quilt.Top, mats []Mat) error {
	const gap, letters = 2 * measure.Inch, measure.Inch / 2
	d := newDrawing(top)
	d.Layers = append(d.Layers, dxf.Layer{Name: matLayer, Colour: 8})
	at := measure.Point{}
	for i := range mats {
		m := &mats[i]
		corner := at.Add(m.size)
		d.Outline(matLayer, []measure.Point{at, {X: corner.X, Y: at.Y}, corner, {X: at.X, Y: corner.Y}})
		text := m.says(top)
		height := min(letters, m.size.X/measure.NM(len([]rune(text))))
		d.Text(labelLayer, measure.Point{X: at.X + m.size.X/2, Y: at.Y - height}, height, text)
		for _, p := range m.pieces {
			p.at = p.at.Add(at)
			p.draw(d)
		}
		at.X += m.size.X + gap
	}
	return d.Write(w)
}
