package cutting

import (
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/supplies"
)

// Whole strips: what is longer than the cloth is wide is joined from strips of its whole width, with enough to spare for
// diagonal seams and for cutting the pieces to the quilt as it measures.

// wholeJoinings is the demands for whole strips of every fabric.
func (p *planning) wholeJoinings(order []edgingKey, of map[edgingKey][]int) [][]joining {
	made := make([]joining, len(p.Fabrics))
	for _, key := range order {
		p.joinWhole(&made[key.fabric], key, of[key])
	}
	p.bindingStrips(made, inGroups)
	all := make([][]joining, len(made))
	for i := range made {
		all[i] = made[i : i+1]
	}
	return all
}

// wholeLoss is what a join takes where either seam is to be possible: as much as a diagonal one, unless that would take half
// the strip.
func (p *planning) wholeLoss(across, usable measure.NM) measure.NM {
	if !p.options.DiagonalBorders && across > usable/2 {
		return 2 * p.Seam
	}
	return max(across, 2*p.Seam)
}

// joinWhole adds the whole strips for the long pieces of one edging, in the way that takes the fewest strips, and then the
// fewest chains that are tight: each piece from its own long strip, like pieces from one, or all of a quilt from one.
func (p *planning) joinWhole(to *joining, key edgingKey, lines []int) {
	usable := p.Fabrics[key.fabric].UsableWidth
	loss := p.wholeLoss(key.across, usable)
	if usable <= loss {
		p.fault(p.Lines[lines[0]].Place, "give it another width", "strips %s wide, joined, would lose all their length", p.text(key.across))
		return
	}
	if p.tooMany(lines) {
		p.oneByOne(to, lines, usable, loss)
		return
	}
	pieces := p.longPieces(lines)
	var best joining
	strips := 0
	for _, m := range []manner{byPiece, inHalves, inQuilts} {
		var try joining
		n := 0
		for _, group := range p.groups(pieces, supplies.StripOptions{}, m) {
			list := p.wholeStrips(group, key.across, usable, loss)
			n += list[0].count
			try.chains = chained(try.chains, p.chainOf(group, list, loss))
			try.list = added(try.list, list[0])
		}
		if best.list == nil || n < strips || n == strips && try.tight() < best.tight() {
			best, strips = try, n
		}
	}
	to.chains = append(to.chains, best.chains...)
	for _, d := range best.list {
		to.list = added(to.list, d)
	}
}

// wholeStrips is the whole strips for pieces that are cut from one long strip.
func (p *planning) wholeStrips(group []long, across, usable, loss measure.NM) []demand {
	var total measure.NM
	for _, l := range group {
		total += l.length + p.Longer
	}
	count := 1
	if total > usable {
		count = int((total - loss + usable - loss - 1) / (usable - loss))
	}
	return []demand{{item: item{across: across, along: usable, count: count}, lines: linesOf(group), set: -1, use: ForJoining}}
}

// wholeBinding is the whole strips of the bindings.
func (p *planning) wholeBinding(stripCut, usable measure.NM, strips int) []demand {
	return []demand{{item: item{across: stripCut, along: usable, count: strips * p.Copies}, set: -1, use: ForBinding}}
}
