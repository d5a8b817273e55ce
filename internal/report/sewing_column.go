package report

import (
	"fmt"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
)

// pieces is what blocks of a variant are sewn of; of a column, in which order.
func (s *sewer) pieces(b *sewing.Block, v *sewing.FabricVariant) string {
	many := measure.Count(len(v.Cells), noun(b))
	names := s.clothNames(v.Cloths)
	switch {
	case !b.Column && len(v.Cells) > 1:
		return many + ", each of " + s.pieceCounts(b, v)
	case !b.Column:
		return many + " of " + s.pieceCounts(b, v)
	}
	if !alikeEnds(b) {
		many += ": " + columnPieces(v)
	}
	return many + ". From the top: " + measure.List(names)
}

// columnPieces is the pieces of a column but for their fabrics: how many, of which hand the end pieces are, and how it begins.
func columnPieces(v *sewing.FabricVariant) string {
	end := func(n int) string {
		return fmt.Sprintf("a %s end piece, its longer edge on the %s", v.Hands[n], v.Longer[n])
	}
	whole := len(v.Cloths) - 2
	if whole < 1 {
		return fmt.Sprintf("at the top %s; at the bottom %s", end(0), end(1))
	}
	wide := "right" // the first tumbler is narrow where the end piece above it is long
	if v.Longer[0] == wide {
		wide = "left"
	}
	tumblers := measure.Count(whole, "tumbler") + ", the first with its wide side on the " + wide
	if whole == 1 {
		tumblers = "1 tumbler with its wide side on the " + wide
	}
	return fmt.Sprintf("at the top %s; %s; at the bottom %s", end(0), tumblers, end(1))
}

// alikeEnds says whether all columns of a label have the same pieces but for their fabrics.
func alikeEnds(b *sewing.Block) bool {
	first := &b.Variants[0]
	return len(first.Longer) > 1 && !slices.ContainsFunc(b.Variants, func(v sewing.FabricVariant) bool {
		return len(v.Cloths) != len(first.Cloths) || !slices.Equal(v.Longer, first.Longer) || !slices.Equal(v.Hands, first.Hands)
	})
}

// sameLength says whether all columns of a label are as long.
func (s *sewer) sameLength(b *sewing.Block) bool {
	long := b.Variants[0].Cells[0].Cells
	for i := range b.Variants {
		if slices.ContainsFunc(b.Variants[i].Cells, func(p sewing.Placed) bool { return p.Cells != long }) {
			return false
		}
	}
	return true
}
