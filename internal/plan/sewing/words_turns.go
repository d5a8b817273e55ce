package sewing

import (
	"slices"
	"strings"
)

// turnNames is the turns of a block by its step pictures, where nothing of it tells them.
func turnNames(turns int) string {
	return [4]string{"as in the picture of its last step", "a quarter clockwise from the picture of its last step", "upside down from the picture of its last step", "a quarter anticlockwise from the picture of its last step"}[turns&3]
}

// TurnText says how a block of a variant is turned, by what one sees of it: a piece that
// lies at one of its corners or sides and at no other. It is "" where the block looks the
// same in every turn.
func (w Words) TurnText(b *Block, c *FabricVariant, turns int) string {
	if b.Column || len(c.Cloths) < 2 || w.looksAlike(b, c, 1) {
		return ""
	}
	half := w.looksAlike(b, c, 2)
	for _, marks := range [2][4]mark{w.cornerMarks(b, c), w.sideMarks(b, c)} {
		if at := alone(marks); at >= 0 {
			return "with " + marks[at].text + " at " + marks[at].places[(at+turns)&3]
		}
		if at := neighbours(marks); at >= 0 {
			m := &marks[at]
			return "with " + m.text + " at " + m.places[(at+turns)&3] + " and at " + m.places[(at+turns+1)&3]
		}
		if half && marks[0].key != marks[1].key {
			first := 0
			if marks[1].pieces < marks[0].pieces {
				first = 1
			}
			return "with " + marks[first].text + " at " + marks[first].places[(first+turns)&3] + " and at " + marks[first].places[(first+turns+2)&3]
		}
	}
	return turnNames(turns)
}

// mark is what lies at a corner or a side of a block.
type mark struct {
	key, text string
	pieces    int
	places    *[4]string // names of the four, clockwise
}

// alone is which of four marks is unlike the others, the plainest of them; -1 for none.
func alone(marks [4]mark) int {
	best := -1
	for i, m := range marks {
		same := 0
		for _, other := range marks {
			if other.key == m.key {
				same++
			}
		}
		if same == 1 && m.pieces > 0 && (best < 0 || m.pieces < marks[best].pieces) {
			best = i
		}
	}
	return best
}

// neighbours is the first of two marks that follow each other clockwise, are alike and unlike
// the other two; -1 where there are none.
func neighbours(marks [4]mark) int {
	for i, m := range marks {
		next, third, last := marks[(i+1)&3].key, marks[(i+2)&3].key, marks[(i+3)&3].key
		if m.pieces > 0 && m.key == next && m.key != third && m.key != last {
			return i
		}
	}
	return -1
}

// cornerMarks is what lies at the corners of a block, clockwise from the upper left.
func (w Words) cornerMarks(b *Block, c *FabricVariant) [4]mark {
	side := b.Finished.Across.NM
	corners := [4]point{{}, {X: side}, {X: side, Y: side}, {Y: side}}
	return w.marks(b, c, &[4]string{"the upper left", "the upper right", "the lower right", "the lower left"},
		func(n int, o outline) bool { return slices.Contains(o, corners[n]) })
}

// sideMarks is what lies along the sides of a block, clockwise from the top.
func (w Words) sideMarks(b *Block, c *FabricVariant) [4]mark {
	side := b.Finished.Across.NM
	return w.marks(b, c, &[4]string{"the top", "the right", "the bottom", "the left"}, func(n int, o outline) bool {
		on := 0
		for _, p := range o {
			if [4]bool{p.Y == 0, p.X == side, p.Y == side, p.X == 0}[n] {
				on++
			}
		}
		return on > 1
	})
}

// marks is the pieces at four places.
func (w Words) marks(b *Block, c *FabricVariant, places *[4]string, lies func(n int, o outline) bool) [4]mark {
	var list [4]mark
	kind := w.kinds[w.cells[c.Cells[0].Cell].block]
	for n := range list {
		var names []string
		for i, o := range kind.pieces {
			if lies(n, o) {
				names = append(names, w.pieceName(b, c, i))
			}
		}
		slices.Sort(names)
		list[n] = mark{strings.Join(names, ";"), "the " + Listed(plurals(names)), len(names), places}
	}
	return list
}

// plurals is names in their order, each once; one that is there several times as their plural.
func plurals(names []string) []string {
	var list []string
	for i := 0; i < len(names); {
		n := i
		for n < len(names) && names[n] == names[i] {
			n++
		}
		name := names[i]
		if n > i+1 {
			name += "s"
		}
		list, i = append(list, name), n
	}
	return list
}

// pieceName is a piece by its cloth and shape.
func (w Words) pieceName(b *Block, c *FabricVariant, piece int) string {
	cloth, turned := strings.CutSuffix(c.Cloths[piece], ", turned")
	if turned {
		cloth = "turned " + cloth
	}
	return cloth + " " + w.ShapeName(b, piece)
}

// looksAlike says whether a block of a variant looks the same after so many quarter turns.
func (w Words) looksAlike(b *Block, c *FabricVariant, quarters int) bool {
	to := w.kinds[w.cells[c.Cells[0].Cell].block].symmetric[quarters]
	if to == nil {
		return false
	}
	for i, n := range to {
		if c.Cloths[i] != c.Cloths[n] {
			return false
		}
	}
	return true
}
