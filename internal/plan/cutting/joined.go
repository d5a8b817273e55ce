package cutting

import (
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/supplies"
)

// Pieces longer than the cloth is wide are cut from strips sewn end to end. Which pieces are cut from one long strip is free,
// and what is best depends on what else is cut from the ends; so several ways are planned and the best is kept.

// edgingKey is a border or the sashes in one fabric.
type edgingKey struct {
	fabric, border int
	across         measure.NM
}

// manner says which pieces of an edging are cut from one long strip, and whether its last strip is cut with something to
// spare.
type manner uint8

const (
	inGroups    manner = iota // those that take the fewest strips together
	byPiece                   // each by itself
	allInOne                  // all from one
	inQuilts                  // those of one quilt together, where several are planned
	inHalves                  // those of one length together
	besideBlock               // all from one, its strips cut from the width that lengthwise pieces leave; a binding too
	nothingOver               // from here on the same with nothing to spare, for cloth that would not do otherwise
	lastManner  = 2 * nothingOver
)

// joining is the demands for joined strips of a fabric in one manner.
type joining struct {
	list    []demand
	chains  []Chain           // what is sewn end to end
	binding *supplies.Binding // nil where the fabric makes none
}

// joinings is the demands for joined strips of every fabric, one for each manner that differs from the others.
func (p *planning) joinings() [][]joining {
	of := map[edgingKey][]int{}
	var order []edgingKey
	for i := range p.Lines {
		line := &p.Lines[i]
		if line.Piece.Method != Joined {
			continue
		}
		key := edgingKey{line.Fabric, line.Border, line.Piece.AcrossCut}
		if of[key] == nil {
			order = append(order, key)
		}
		of[key] = append(of[key], i)
	}
	if !p.options.LeastCloth {
		return p.wholeJoinings(order, of)
	}
	all := make([][]joining, len(p.Fabrics))
	for m := range lastManner {
		made := make([]joining, len(p.Fabrics))
		for _, key := range order {
			p.join(&made[key.fabric], key, of[key], m)
		}
		p.bindingStrips(made, m)
		for i, now := range made {
			all[i] = either(all[i], now)
		}
	}
	return all
}

// either is joinings with one more; of those that ask for the same strips the one with fewer tight chains.
func either(list []joining, now joining) []joining {
	at := slices.IndexFunc(list, func(l joining) bool { return slices.EqualFunc(l.list, now.list, sameDemand) })
	switch {
	case at < 0:
		return append(list, now)
	case now.tight() < list[at].tight():
		list[at] = now
	}
	return list
}

// tight is how many chains leave too little over, or hold too short a piece.
func (j *joining) tight() int {
	n := 0
	for i := range j.chains {
		if c := &j.chains[i]; c.Scant || c.Short {
			n += c.Times
		}
	}
	return n
}

// lengthFor is how long strips to be joined are in a manner, if joins do not take it all.
func (p *planning) lengthFor(fabric int, m manner, loss measure.NM) measure.NM {
	f := &p.Fabrics[fabric]
	if m%nothingOver == besideBlock && len(f.Blocks) > 0 && f.Blocks[0].LeftWidthCut > max(f.UsableWidth/4, loss) {
		return f.Blocks[0].LeftWidthCut
	}
	return f.UsableWidth
}

func sameDemand(a, b demand) bool {
	return a.item == b.item && a.use == b.use && slices.Equal(a.lines, b.lines)
}

// maxJoined is up to how many long pieces the best groups are looked for; of more, all are cut from one long strip.
const maxJoined = 60

// long is a piece to be cut from joined strips.
type long struct {
	line   int
	length measure.NM
}

// join adds the strips for the long pieces of one edging.
func (p *planning) join(to *joining, key edgingKey, lines []int, m manner) {
	o := supplies.StripOptions{Units: p.Units, StripCut: key.across, Join: supplies.Straight, Seam: p.Seam}
	loss := 2 * p.Seam
	if p.options.DiagonalBorders {
		o.Join, loss = supplies.Diagonal, key.across
	}
	o.UsableWidth = p.lengthFor(key.fabric, m, loss)
	if o.UsableWidth <= loss {
		p.fault(p.Lines[lines[0]].Place, "give it another width", "strips %s wide, joined, would lose all their length", p.text(key.across))
		return
	}
	if p.tooMany(lines) {
		p.oneByOne(to, lines, o.UsableWidth, loss)
		return
	}
	for _, group := range p.groups(p.longPieces(lines), o, m) {
		strips := p.group(group, o.UsableWidth, loss, key.across, m < nothingOver)
		to.chains = chained(to.chains, p.chainOf(group, strips, loss))
		for _, d := range strips {
			to.list = added(to.list, d)
		}
	}
}

// longPieces are the pieces of some lines, one by one.
func (p *planning) longPieces(lines []int) []long {
	var pieces []long
	for _, n := range lines {
		for range p.Lines[n].Pieces {
			pieces = append(pieces, long{n, p.Lines[n].Piece.AlongCut})
		}
	}
	return pieces
}

// linesOf are the lines of pieces, each once.
func linesOf(group []long) []int {
	var lines []int
	for _, l := range group {
		lines = append(lines, l.line)
	}
	slices.Sort(lines)
	return slices.Compact(lines)
}

// maxLong is up to how many long pieces anything but one by one is tried.
const maxLong = 20_000

func (p *planning) tooMany(lines []int) bool {
	n := 0
	for _, line := range lines {
		n += p.Lines[line].Pieces
	}
	return n > maxLong
}

// oneByOne adds the strips for long pieces that are each cut from one of their own.
func (p *planning) oneByOne(to *joining, lines []int, usable, loss measure.NM) {
	for _, n := range lines {
		piece := &p.Lines[n].Piece
		group := []long{{n, piece.AlongCut}}
		strips := p.group(group, usable, loss, piece.AcrossCut, true)
		chain := p.chainOf(group, strips, loss)
		chain.Times = p.Lines[n].Pieces
		to.chains = append(to.chains, chain)
		for _, d := range strips {
			d.count *= p.Lines[n].Pieces
			to.list = added(to.list, d)
		}
	}
}

// groups are the pieces that are cut from one long strip each.
func (p *planning) groups(pieces []long, o supplies.StripOptions, m manner) [][]long {
	switch m %= nothingOver; {
	case m == byPiece:
		return parted(pieces, func(i int) int { return i })
	case m == inHalves:
		return parted(pieces, func(i int) int { return pieces[i].line })
	case m == inQuilts:
		nth := map[int]int{}
		return parted(pieces, func(i int) int {
			line := pieces[i].line
			nth[line]++
			return (nth[line] - 1) * p.Copies / p.Lines[line].Pieces
		})
	case m == inGroups && len(pieces) <= maxJoined:
		var lengths []measure.NM
		for _, l := range pieces {
			lengths = append(lengths, l.length)
		}
		groups, err := supplies.Crosswise(o, lengths...)
		if err != nil {
			break // larger than it reckons with
		}
		of := make([]int, len(pieces))
		for n, g := range groups {
			for _, i := range g {
				of[i] = n
			}
		}
		return parted(pieces, func(i int) int { return of[i] })
	}
	return [][]long{pieces}
}

// parted is pieces put into groups by a number, in the order in which the numbers first come.
func parted(pieces []long, by func(int) int) [][]long {
	var groups [][]long
	at := map[int]int{}
	for i, l := range pieces {
		key := by(i)
		n, ok := at[key]
		if !ok {
			n = len(groups)
			at[key] = n
			groups = append(groups, nil)
		}
		groups[n] = append(groups[n], l)
	}
	return groups
}

// group is the strips for pieces that are cut from one long strip: whole ones, and the last only as long as it need be, or
// with something to spare.
func (p *planning) group(group []long, usable, loss, across measure.NM, spare bool) []demand {
	if !p.options.LeastCloth {
		return p.wholeStrips(group, across, usable, loss)
	}
	var total measure.NM
	for _, l := range group {
		total += l.length
	}
	lines := linesOf(group)
	whole := 0
	if total > usable {
		whole = int((total-loss+usable-loss-1)/(usable-loss)) - 1
	}
	last := total + measure.NM(whole)*loss - measure.NM(whole)*usable
	if spare {
		last = max(last+p.Steps.Trimmed, minInJoin(p.Units))
	}
	list := p.ends(across, whole, last, usable)
	for i := range list {
		list[i].lines, list[i].use = lines, ForJoining
	}
	return list
}
