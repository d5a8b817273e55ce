package orient

import "eighthturn/internal/blocks"

// divided is the set of coordinates at which a block's pieces divide one of its sides.
type divided [blocks.Full + 1]bool

// sideOf is the coordinates at which pieces divide a vertical side (x fixed) or a
// horizontal one, between its ends.
func sideOf(pieces []blocks.Piece, vertical bool, at blocks.Coord) divided {
	var d divided
	for _, p := range pieces {
		for _, q := range p.Outline {
			across, along := q.Y, q.X
			if vertical {
				across, along = q.X, q.Y
			}
			if across == at && along != blocks.Zero && along != blocks.Full {
				d[along] = true
			}
		}
	}
	return d
}

// within says whether every division of d is one of e.
func (d divided) within(e divided) bool {
	for i := range d {
		if d[i] && !e[i] {
			return false
		}
	}
	return true
}

// meets says whether one side's divisions all run into the other's.
func (d divided) meets(e divided) bool { return d.within(e) || e.within(d) }

// findApart lists the neighbours whose divisions do not meet: across first, then down.
func (l *orienter) findApart(laid []*turnedPieces) {
	known := map[apartKey]bool{}
	check := func(i, j int, vertical bool) {
		one, other := laid[i], laid[j]
		if one == nil || other == nil {
			return
		}
		key := apartKey{one.number, other.number, vertical}
		apart, seen := known[key]
		if !seen {
			apart = !sideOf(one.pieces, vertical, blocks.Full).meets(sideOf(other.pieces, vertical, blocks.Zero))
			known[key] = apart
		}
		if apart {
			l.Apart = append(l.Apart, [2]int{i, j})
		}
	}
	for i := range l.Cells {
		x, y := l.at(i)
		if x+1 < l.Columns {
			check(i, i+1, true)
		}
		if y+1 < l.Rows {
			check(i, i+l.Columns, false)
		}
	}
}

// apartKey are two turned kinds, by number, on either side of an edge.
type apartKey struct {
	one, other int
	vertical   bool
}
