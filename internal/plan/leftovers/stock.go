package leftovers

import (
	"fmt"
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
)

// Stock is pieces of one sort that are left.
type Stock struct {
	Role     string     `json:"piece"`    // as in a layout
	Cloth    string     `json:"cut_from"` // the fabric, or the strip set as the layouts of the proposals call it
	Reversed bool       `json:"reversed"`
	Pieces   int        `json:"pieces"`
	StripCut measure.NM `json:"strip_cut"` // of the wedges, or of those that the block has beside the pieces

	set    int // of the plan, by index; -1 for pieces of one fabric
	fabric int // of the top, by index, of pieces of one fabric
	wedges bool
}

// stocks are the pieces that a plan leaves, cut ones and unused ones that were on hand, those of one sort together.
func stocks(top *quilt.Top, plan *cutting.Plan) []Stock {
	var list []Stock
	names := map[string]bool{}
	for i := range top.Fabrics {
		names[top.Fabrics[i].Name] = true
	}
	sets := make([]string, len(plan.Sets))
	for i := range plan.Sets {
		sets[i] = freeName(plan.Sets[i].Name, names)
		names[sets[i]] = true
	}
	add := func(line, set int, reversed bool, pieces int) {
		s := Stock{Reversed: reversed, Pieces: pieces, set: set}
		switch {
		case set >= 0:
			s.wedges, s.Cloth, s.StripCut = true, sets[set], plan.Sets[set].StripCut
		case !s.ofLine(top, plan, &plan.Lines[line]):
			return
		}
		s.Role = roleOf(&s, plan, line)
		same := func(o Stock) bool {
			return o.Role == s.Role && o.Cloth == s.Cloth && o.Reversed == s.Reversed && o.StripCut == s.StripCut
		}
		if at := slices.IndexFunc(list, same); at >= 0 {
			list[at].Pieces += pieces
		} else if s.Role != "" {
			list = append(list, s)
		}
	}
	for _, l := range plan.Left {
		add(l.Line, l.Set, l.Reversed, l.Pieces)
	}
	for i := range plan.OnHand {
		if h := &plan.OnHand[i]; h.Line >= 0 && h.Left() > 0 {
			line := &plan.Lines[h.Line]
			add(h.Line, line.Set, line.Reversed, h.Left())
		}
	}
	return list
}

// ofLine fills in pieces of one fabric that are kept; false for others.
func (s *Stock) ofLine(top *quilt.Top, plan *cutting.Plan, line *cutting.Line) bool {
	d := line.Piece.Shape.Description()
	if !d.Kept {
		return false
	}
	s.fabric = plan.Fabrics[line.Fabric].Index
	s.Cloth, s.wedges = top.Fabrics[s.fabric].Name, isWedge(line)
	s.StripCut = line.Piece.AcrossCut
	if !s.wedges {
		s.StripCut = top.CutFacts.StripsCut[heightBeside(line.Piece.Shape)]
	}
	return true
}

// isWedge says whether a line's pieces are wedges.
func isWedge(line *cutting.Line) bool {
	d := line.Piece.Shape.Description()
	return d.Kept && d.Sized == blocks.ByStrip
}

// heightBeside is the height of the wedges in the blocks that have pieces of a shape.
func heightBeside(shape blocks.Shape) blocks.WedgeHeight {
	for _, k := range blocks.Kinds() {
		if slices.ContainsFunc(k.Pieces, func(p blocks.Piece) bool { return p.Shape == shape }) {
			return k.Height
		}
	}
	return blocks.NoWedges
}

// roleOf is the word of a layout for pieces, "" for none.
func roleOf(s *Stock, plan *cutting.Plan, line int) string {
	for _, k := range blocks.KeptRoles(blocks.Kinds()) {
		if wedge := k.Shape.Description().Sized == blocks.ByStrip; s.wedges && wedge || !s.wedges && plan.Lines[line].Piece.Shape == k.Shape {
			return k.Role
		}
	}
	return ""
}

// freeName is a name, with a number where it is taken.
func freeName(name string, taken map[string]bool) string {
	free := name
	for n := 2; taken[free]; n++ {
		free = fmt.Sprintf("%s-%d", name, n)
	}
	return free
}
