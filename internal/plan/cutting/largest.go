package cutting

import (
	"slices"
	"sort"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// tooLong says whether what is cut off a strip for a line is longer than the cloth is wide, and makes it a fault that says
// what would fit.
func (p *planning) tooLong(line *Line, usable measure.NM) bool {
	piece := &line.Piece
	if piece.AlongCut <= usable {
		return piece.AlongCut == 0
	}
	cloth := "the strip set"
	if line.Fabric >= 0 {
		cloth = p.Fabrics[line.Fabric].Name
	}
	p.fault(line.Place, p.largest(line, usable), "%s %s, but %s is %s between its selvages", measure.WithArticle(piece.Shape.String()), p.takes(piece), cloth, p.text(usable))
	return true
}

// takes is what a piece that is too large takes, in words.
func (p *planning) takes(piece *Piece) string {
	switch piece.Method {
	case Nested:
		return "from a strip of " + p.text(piece.AcrossCut) + " cut takes " + p.text(piece.WideCut) + " of the strip"
	case OnceOnDiagonal, TwiceOnDiagonal:
		return "is cut from a square of " + p.text(piece.AlongCut)
	case EndPairs:
		return "is cut, with another, from a rectangle " + p.text(piece.AlongCut) + " long"
	}
	return "is cut " + p.text(piece.AlongCut) + " long"
}

// largest is the hint with the largest size that fits.
func (p *planning) largest(line *Line, usable measure.NM) string {
	if line.Border >= 0 || line.edging() {
		return "the longest that it gives is " + p.text(usable-2*p.Seam) + " finished"
	}
	size, sideOf := p.top.SideFinished, func(side measure.NM) measure.NM { return side }
	if p.top.CutFacts.StripGiven {
		h := slices.IndexFunc(p.top.CutFacts.StripsCut[:], func(cut measure.NM) bool { return cut > 0 }) // there are wedges where a strip is given
		size, sideOf = p.top.CutFacts.StripsCut[h], func(cut measure.NM) measure.NM {
			return blocks.WedgeHeight(h).Side(measure.Of(cut - 2*p.Seam))
		}
	}
	mark := p.Steps.Mark
	n := sort.Search(int(size/mark), func(n int) bool { return p.alongAt(line, sideOf(measure.NM(n+1)*mark)) > usable })
	fits := measure.NM(n) * mark
	side := sideOf(fits)
	switch {
	case side <= 0:
		return "use wider fabric"
	case p.top.CutFacts.StripGiven:
		return "write strip " + measure.Number(fits, p.Units) + ", which makes the block's side " + p.text(side)
	}
	return "a block's side of " + p.text(side) + " would fit"
}

// alongAt is what a line's piece would take of a strip if the block's side were another.
func (p *planning) alongAt(line *Line, side measure.NM) measure.NM {
	z := p.sizing
	z.SideFinished, z.AcrossFinished, z.AlongFinished = side, side, side
	for h := range z.StripsCut {
		if z.StripsCut[h] > 0 {
			z.StripsCut[h] = blocks.WedgeHeight(h).Finished(side) + 2*p.Seam
		}
		if p.top.CutFacts.StripsCut[h] == line.Piece.AcrossCut {
			z.Height = blocks.WedgeHeight(h)
		}
	}
	long := float64(times(line.Piece.LengthFinished, float64(side)/float64(p.top.SideFinished)))
	z.Divided = &blocks.Column{Mean: long, End: long}
	size, _, ok := line.Piece.Shape.Description().Cut(&z)
	if !ok {
		return 0
	}
	return size.AlongCut
}
