package report

import (
	"slices"
	"strconv"
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
)

// mostListed is the most pieces that a unit has to be told by their names; larger ones are told by their picture.
const mostListed = 3

// mostInOrder is the most pieces of one shape that a unit has to be told by their fabrics.
const mostInOrder = 4

// made is the units of a step for blocks of one variant, by their pieces; "" where the names of the pieces say it all: where all
// units are alike and their pieces of one shape of one cloth, and of the block itself.
func (s *sewer) made(b *sewing.Block, v *sewing.FabricVariant, step *sewing.Step) string {
	if b.Column || step == &b.Steps[len(b.Steps)-1] {
		return ""
	}
	var list, rows []string
	plain, ordered, pairs := true, false, true
	for i := range v.Makes {
		m := &v.Makes[i]
		if &b.Steps[m.Step] != step {
			continue
		}
		if len(m.Pieces) > mostListed {
			if row := s.inOrder(b, v, m); row != "" {
				rows = append(rows, strconv.Itoa(m.Count)+" with "+row)
			}
			continue
		}
		plain = plain && !s.mixed(b, m)
		ordered = ordered || len(m.Pieces) > 2
		names := make([]string, len(m.Pieces))
		for i, p := range m.Pieces {
			names[i] = measure.WithArticle(s.pieceName(b, v, p))
		}
		named := measure.List(names)
		if pair := len(names) == 2 && s.Shape(b, m.Pieces[0]) == s.Shape(b, m.Pieces[1]); !pair {
			pairs = false
		} else if names[0] == names[1] {
			named = measure.Count(2, s.pieceName(b, v, m.Pieces[0]))
		}
		list = append(list, strconv.Itoa(m.Count)+" with "+named)
	}
	switch {
	case len(list) == 0 && len(rows) > 1:
		return strings.Join(rows, "; ") + "; named from left to right"
	case plain && len(list) < 2:
		return ""
	}
	text := strings.Join(list, "; ")
	switch {
	case pairs && !plain && (len(list) > 1 || s.named(b, step) == step.Do): // which else says what goes on the left
		text += "; the first one named goes on the left"
	case ordered:
		text += ", sewn in this order"
	}
	return text
}

// inOrder is the fabrics of a unit whose pieces are of one shape, from left to right with their tips down; "" where they are
// too many or of several shapes.
func (s *sewer) inOrder(b *sewing.Block, v *sewing.FabricVariant, m *sewing.Make) string {
	var list []string
	for _, p := range m.Pieces {
		if s.Shape(b, p) != s.Shape(b, m.Pieces[0]) || len(m.Pieces) > mostInOrder {
			return ""
		}
		cloth := s.Cloths[v.Cloths[p]]
		if cloth.Reversed {
			cloth.Name += " reversed"
		}
		list = append(list, cloth.Name)
	}
	return measure.List(list) + " " + measure.Plural(s.Shape(b, m.Pieces[0]).String())
}

// mixed says whether a unit has pieces of one shape in several cloths.
func (s *sewer) mixed(b *sewing.Block, m *sewing.Make) bool {
	for i, p := range m.Pieces {
		for n, q := range m.Pieces[:i] {
			if s.Shape(b, p) == s.Shape(b, q) && m.Cloths[i] != m.Cloths[n] {
				return true
			}
		}
	}
	return false
}

// unlikeHalves says whether a step joins two units of one step that are not alike, in all blocks of the label.
func (s *sewer) unlikeHalves(b *sewing.Block, step *sewing.Step) bool {
	for i := range b.Variants {
		if !s.unlikeIn(b, &b.Variants[i], step) {
			return false
		}
	}
	return true
}

// unlikeIn says the same of the blocks of one variant.
func (s *sewer) unlikeIn(b *sewing.Block, v *sewing.FabricVariant, step *sewing.Step) bool {
	if b.Column || len(step.Joins) != 1 {
		return false
	}
	j := &step.Joins[0]
	from := func(number int) int {
		return slices.IndexFunc(b.Steps, func(s sewing.Step) bool {
			return slices.ContainsFunc(s.Joins, func(k sewing.Join) bool { return k.Number == number })
		})
	}
	if j.MadeA < 0 || j.MadeB < 0 || from(j.MadeA) != from(j.MadeB) {
		return false
	}
	return !slices.EqualFunc(j.A, j.B, func(p, q int) bool { return v.Cloths[p] == v.Cloths[q] })
}

// pieceCounts is the pieces of a block of a variant, counted: "2 navy wedges and 2 cream kites".
func (s *sewer) pieceCounts(b *sewing.Block, v *sewing.FabricVariant) string {
	return tallied(len(v.Cloths), func(piece int) string { return s.pieceName(b, v, piece) })
}

// shapeCounts is the pieces of a block of a label, counted whatever their fabrics: "4 wedges and 2 kites".
func (s *sewer) shapeCounts(b *sewing.Block) string {
	return tallied(len(b.Variants[0].Cloths), func(piece int) string { return s.Shape(b, piece).String() })
}

// tallied is so many things by name, each name once with how many there are, in their order.
func tallied(n int, name func(int) string) string {
	var order, list []string
	counts := map[string]int{}
	for i := range n {
		name := name(i)
		if counts[name]++; counts[name] == 1 {
			order = append(order, name)
		}
	}
	for _, name := range order {
		list = append(list, measure.Count(counts[name], name))
	}
	return measure.List(list)
}
