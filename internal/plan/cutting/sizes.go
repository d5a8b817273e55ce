package cutting

import (
	"cmp"
	"math"
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

const tan22 = math.Sqrt2 - 1 // tan 22.5 degrees

// times is a length multiplied by a number, rounded to a whole nanometre.
func times(nm measure.NM, by float64) measure.NM {
	return measure.NM(math.Round(float64(nm) * by))
}

// sizingOf is what all cut sizes of a top follow from.
func sizingOf(top *quilt.Top, steps blocks.Steps, o *Options) blocks.Sizing {
	return blocks.Sizing{
		Units: top.Units, Seam: top.Seam, SideFinished: top.SideFinished, StripsCut: top.CutFacts.StripsCut, Steps: steps,
		CornersByCustom: o.CornersByCustom, LongEdgesStraight: o.LongEdgesStraight,
	}
}

// ruler says how a size that must be exact stands to a ruler's marks.
func (p *planning) ruler(e blocks.Exact) Ruler {
	mark := p.Steps.Mark
	near := measure.Nearest(e.Cut, mark)
	if d := near - e.Cut; d >= -measure.Tolerance && d <= measure.Tolerance { // a third of an inch three times over is an inch
		return Ruler{What: e.What, ExactCut: e.Cut, OnMark: true, BelowCut: e.Cut, AboveCut: e.Cut}
	}
	above := measure.RoundUp(e.Cut, mark)
	r := Ruler{What: e.What, ExactCut: e.Cut, BelowCut: above - mark, AboveCut: above}
	if e.SideOf != nil {
		r.BelowSideFinished, r.AboveSideFinished = max(0, e.SideOf(r.BelowCut)), max(0, e.SideOf(r.AboveCut))
	}
	return r
}

// size fills in a line's piece; false where there is none of that size.
func (p *planning) size(line *Line, k lineKey, t *quilt.Patch) bool {
	z := p.sizing
	z.Height, z.AcrossFinished, z.AlongFinished = k.height, k.across, k.long
	z.InBlock, z.InBorder = t.Cell >= 0, k.border >= 0
	if at, ok := p.columns[int(t.Cell)]; ok {
		z.Divided = &p.top.CutFacts.Columns[at].Divided
	}
	piece := &line.Piece
	size, exact, ok := k.shape.Description().Cut(&z)
	if !ok {
		size.Grain = k.shape.Description().Grain
	}
	piece.CutSize = size
	for _, side := range k.shape.Description().Edges {
		from, to := t.Outline[side], t.Outline[(side+1)%len(t.Outline)]
		piece.EdgesFinished = append(piece.EdgesFinished, measure.NM(math.Round(math.Hypot(float64(to.X-from.X), float64(to.Y-from.Y)))))
	}
	slices.SortFunc(piece.EdgesFinished, func(a, b measure.NM) int { return cmp.Compare(b, a) })
	for _, e := range exact {
		piece.OnRuler = append(piece.OnRuler, p.ruler(e))
	}
	return ok
}
