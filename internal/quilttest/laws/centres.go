package laws

import (
	"fmt"
	"math"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// Centre is an inner corner of the grid with what the outlines show there.
type Centre struct {
	X, Y    int     // of the corner, from the upper left one
	Tips    int     // wedges that point there
	Kites   int     // kites that have their square corner there
	Degrees float64 // of all patches round it
	Pointed float64 // of the wedges and kites counted
	Slack   float64 // how far rounding may put either out, degrees
}

// Centres is what meets at each corner that has four cells with cloth round it, row by row;
// none where sashes part the cells.
func Centres(t *quilt.Top) []Centre {
	var list []Centre
	if t.StepFinished != t.SideFinished {
		return nil
	}
	boxes := make([]quilt.Rect, len(t.Patches))
	for i := range boxes {
		boxes[i] = boxOf(t.Patches[i].Outline, 0)
	}
	all := newBuckets(boxes)
	for y := 1; y < t.Rows; y++ {
		for x := 1; x < t.Columns; x++ {
			if cellsRound(t, x, y) != nil {
				list = append(list, centreAt(t, all, Centre{X: x, Y: y}))
			}
		}
	}
	return list
}

// cellsRound is the four cells round a corner of the grid, clockwise from the upper left
// one; nil where one of them is empty.
func cellsRound(t *quilt.Top, x, y int) []int {
	i := y*t.Columns + x
	around := []int{i - t.Columns - 1, i - t.Columns, i, i - 1}
	for _, c := range around {
		if t.Cells[c].Label == "" {
			return nil
		}
	}
	return around
}

// centreAt counts the patches round a corner.
func centreAt(t *quilt.Top, all *buckets, c Centre) Centre {
	at := CellRect(t, c.Y*t.Columns+c.X).Min
	for _, i := range all.around(at) {
		p := &t.Patches[i]
		degrees, slack := degreesAt(p.Outline, at)
		c.Degrees += degrees
		c.Slack += slack
		if p.Outline[0] != at {
			continue
		}
		switch p.Shape.Description().Gathers {
		case blocks.WebCentre:
			c.Tips++
			c.Pointed += degrees
		case blocks.StarCentre:
			c.Kites++
			c.Pointed += degrees
		}
	}
	return c
}

// degreesAt is how much of a turn round a point an outline takes: its angle there, half a
// turn where the point lies on a side, and nothing where it does not meet it. The second
// number is how far rounding may put it out.
func degreesAt(o Outline, at measure.Point) (degrees, slack float64) {
	for i, p := range o {
		if p == at {
			return angle(o, i), angleError(o, i)
		}
	}
	for i, p := range o {
		if onSide(p, o[(i+1)%len(o)], at) {
			return 180, 0
		}
	}
	return 0, 0
}

// CentresClose: round each corner inside the quilt the patches take one whole turn; it has
// the wedge tips and the kites that its four blocks promise; and eight tips, or four kites,
// leave no room for anything else.
func CentresClose(t *quilt.Top) error {
	pieces := map[turned][]blocks.Piece{}
	kinds := blocks.Kinds()
	for _, c := range Centres(t) {
		if math.Abs(c.Degrees-360) > c.Slack {
			return fmt.Errorf("round the corner %d, %d of the grid lie %v degrees", c.X, c.Y, c.Degrees)
		}
		tips, kites := 0, 0
		for n, cell := range cellsRound(t, c.X, c.Y) {
			key := turned{t.Cells[cell].Kind, t.Cells[cell].Turns}
			if pieces[key] == nil {
				kind, _ := blocks.Find(kinds, key.kind)
				pieces[key] = kind.Turned(key.turns)
			}
			w, k := blocks.Tips(pieces[key], blocks.Corner(n+2)&3)
			tips, kites = tips+w, kites+k
		}
		if c.Tips != tips || c.Kites != kites {
			return fmt.Errorf("at the corner %d, %d of the grid meet %d wedge tips and %d kites, the blocks promise %d and %d", c.X, c.Y, c.Tips, c.Kites, tips, kites)
		}
		if (tips == 8 || kites == 4) && math.Abs(c.Pointed-360) > c.Slack {
			return fmt.Errorf("the points at the corner %d, %d of the grid come to %v degrees", c.X, c.Y, c.Pointed)
		}
	}
	return nil
}

// turned is a kind in one of its turns.
type turned struct {
	kind  string
	turns int
}
