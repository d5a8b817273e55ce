package cutting

import (
	"fmt"
	"testing"

	"eighthturn/internal/quilt"
)

// sortOf is pieces of one sort: a line's, or a strip set's wedges of one order.
type sortOf struct {
	line, set int // -1 where it is the other
	reversed  bool
}

// sortOfLine is the sort of a line's pieces.
func sortOfLine(p *Plan, n int) sortOf {
	if l := &p.Lines[n]; l.Set >= 0 {
		return sortOf{-1, l.Set, l.Reversed}
	}
	return sortOf{n, -1, false}
}

// lost says of which sort more or fewer pieces are cut than are used and left. Pieces are counted where they are cut, and used ones in
// the top.
func lost(top *quilt.Top, p *Plan) error {
	cut, gone := map[sortOf]int{}, map[sortOf]int{}
	for i := range p.Sets {
		given := cutFromSets(p, i)
		cut[sortOf{-1, i, false}], cut[sortOf{-1, i, true}] = given[0], given[1]
	}
	for i := range p.Fabrics {
		for n, units := range unitsCut(&p.Fabrics[i]) {
			if p.Lines[n].Piece.Method == Joined { // cut from strips sewn end to end, by length
				continue
			}
			cut[sortOf{n, -1, false}] += units * p.Lines[n].Piece.Method.PerUnit()
		}
	}
	for _, h := range p.OnHand { // which serve as if they were cut
		if h.Used < 0 || h.Used > h.Pieces {
			return fmt.Errorf("%d of %d pieces on hand are used", h.Used, h.Pieces)
		}
		if h.Used > 0 {
			cut[sortOfLine(p, h.Line)] += h.Used
		}
	}
	for i := range top.Patches {
		gone[sortOfLine(p, p.LineOf[i])] += p.Copies
	}
	for _, l := range p.Left {
		s := sortOf{l.Line, -1, false}
		if l.Set >= 0 {
			s = sortOf{-1, l.Set, l.Reversed}
		}
		if l.Pieces <= 0 {
			return fmt.Errorf("%d pieces of %v are left", l.Pieces, s)
		}
		gone[s] += l.Pieces
	}
	for s, n := range gone {
		if s.line >= 0 && p.Lines[s.line].Piece.Method == Joined {
			continue
		}
		if cut[s] != n {
			return fmt.Errorf("of %v %d pieces are cut, %d are used or left", s, cut[s], n)
		}
		delete(cut, s)
	}
	for s, n := range cut {
		if n > 0 {
			return fmt.Errorf("of %v %d pieces are cut, none is used or left", s, n)
		}
	}
	return nil
}

// cutFromSets cuts a strip set wedge by wedge: how many wedges of each order it gives.
func cutFromSets(p *Plan, n int) (given [2]int) {
	s := &p.Sets[n]
	for _, r := range s.Runs {
		for set := range r.Sets {
			way := 0
			if set < r.FirstReversed {
				way = 1
			}
			for range r.Wedges {
				given[way]++
				way = 1 - way
			}
		}
	}
	if s.Alike {
		given = [2]int{given[0] + given[1], 0}
	}
	return given
}

// unitsCut is what is cut off a fabric's strips and blocks for pieces, by line.
func unitsCut(f *Fabric) map[int]int {
	units := map[int]int{}
	for _, s := range f.Strips {
		for _, c := range s.Cuts {
			if c.Use == ForPieces {
				units[c.Lines[0]] += c.Units * s.Times
			}
		}
	}
	for _, b := range f.Blocks {
		for _, c := range b.Columns {
			units[c.Line] += c.Units * b.Times
		}
	}
	unitsFromPrint(f, units)
	return units
}

// TestNoPieceIsLost: of every sort, pieces that are used and pieces that are left are those that are cut.
func TestNoPieceIsLost(t *testing.T) {
	left, used := 0, 0
	for _, n := range everyTop(150) {
		for _, o := range n.variants {
			p := planned(n.Top, o)
			if len(p.Faults) > 0 {
				continue
			}
			left += len(p.Left)
			for _, h := range p.OnHand {
				used += h.Used
			}
			if err := lost(n.Top, p); err != nil {
				t.Fatalf("%s: %v", n.name, err)
			}
		}
	}
	if left < 50 {
		t.Errorf("only %d sorts of pieces are left", left)
	}
	if used < 50 {
		t.Errorf("only %d pieces on hand are used", used)
	}
	for what, harm := range map[string]func(*Plan){
		"leftover wedges that are not told":  func(p *Plan) { p.Left = nil },
		"one leftover wedge too many":        func(p *Plan) { p.Left[0].Pieces++ },
		"leftover wedges of the wrong order": func(p *Plan) { p.Left[0].Reversed = !p.Left[0].Reversed },
		"a set more than is counted":         func(p *Plan) { p.Sets[0].Runs[0].Sets++ },
	} {
		top := topNamed("lanterns")
		p := Build(nil, top, Options{})
		harm(p)
		if lost(top, p) == nil {
			t.Errorf("%s: not noticed", what)
		}
	}
}
