package quilt

import "eighthturn/internal/measure"

// span is a stretch of a face's outline, clockwise round its patch.
type span struct {
	face     int32
	from, to measure.Point
}

// spans appends the stretches of a placed piece's edge, a face each, in clockwise order.
func (l *builder) spans(list []span, c *placedCell, e edge) []span {
	from, to := c.ends(e)
	if c.face >= 0 {
		return append(list, span{c.face + int32(e.piece), from.Add(c.at), to.Add(c.at)})
	}
	patch := &l.Patches[c.first+e.piece]
	if patch.Count == 1 {
		return append(list, span{patch.First, from.Add(c.at), to.Add(c.at)})
	}
	b := c.pieces[e.piece].banded[l.bandKey(c, e.piece)]
	widest := patch.First
	switch e.edge {
	case 1: // the base
		return append(list, span{widest, from.Add(c.at), to.Add(c.at)})
	case 0: // from the tip
		return alongLeg(list, b.legs[0], span{widest, from, to}, c.at)
	}
	start := len(list)
	list = alongLeg(list, b.legs[1], span{widest, to, from}, c.at)
	reverse(list[start:])
	return list
}

// alongLeg appends the stretches of a leg from the tip to the wide end. whole is the leg
// with the face of its widest band; the narrower ones follow it.
func alongLeg(list []span, cuts []measure.Point, whole span, at measure.Point) []span {
	face := whole.face + int32(len(cuts))
	from := whole.from
	for _, cut := range cuts {
		list = append(list, span{face, from.Add(at), cut.Add(at)})
		face, from = face-1, cut
	}
	return append(list, span{face, from.Add(at), whole.to.Add(at)})
}

// reverse turns stretches round: the other way along the same line.
func reverse(list []span) {
	for i, j := 0, len(list)-1; i < j; i, j = i+1, j-1 {
		list[i], list[j] = list[j], list[i]
	}
	for i := range list {
		list[i].from, list[i].to = list[i].to, list[i].from
	}
}

// bandKey is how a placed piece is filled.
func (l *builder) bandKey(c *placedCell, piece int) bandKey {
	f, _ := l.fill(int(l.Patches[c.first].Cell), &c.pieces[piece])
	return bandKey{f.Set, f.Reversed}
}

// joiner keeps the lists that a join needs, so that they are made once.
type joiner struct{ one, other []span }

// join adds a seam for every stretch that two lines of spans have in common. Both lie on
// one straight line; one runs clockwise along it and the other, clockwise round its own
// patches, the opposite way.
func (l *builder) join(one, other []span) {
	if len(one) == 0 || len(other) == 0 {
		return
	}
	start, end := one[0].from, one[len(one)-1].to
	at := func(p measure.Point) measure.NM { return along(start, end, p) }
	j := len(other) - 1
	for i := 0; i < len(one) && j >= 0; {
		a, b := &one[i], &other[j]
		from, to := a.from, a.to
		if at(b.to) > at(from) {
			from = b.to
		}
		if at(b.from) < at(to) {
			to = b.from
		}
		if at(from) < at(to) {
			l.Seams = append(l.Seams, Seam{a.face, b.face, from, to})
		}
		if at(a.to) < at(b.from) {
			i++
		} else {
			j--
		}
	}
}

// seamsInBlocks adds the seams within each block and the strip seams within each wedge.
func (l *builder) seamsInBlocks() {
	for i := range l.cells {
		l.sign.Step(10)
		c := &l.cells[i]
		if c.template == nil {
			continue
		}
		if c.face >= 0 { // as the template has them
			for _, s := range c.joined {
				l.Seams = append(l.Seams, Seam{c.face + s.A, c.face + s.B, s.From.Add(c.at), s.To.Add(c.at)})
			}
			continue
		}
		for _, s := range c.seams {
			l.joins.one = l.spans(l.joins.one[:0], c, s.a)
			l.joins.other = l.spans(l.joins.other[:0], c, s.b)
			l.join(l.joins.one, l.joins.other)
		}
		for p := range c.pieces {
			l.stripSeams(&l.Patches[c.first+p])
		}
	}
}

// stripSeams adds the seams between a wedge's bands.
func (l *builder) stripSeams(p *Patch) {
	for n := p.First + 1; n < p.First+p.Count; n++ {
		wide := l.Faces[n-1].Outline
		l.StripSeams = append(l.StripSeams, Seam{n - 1, n, wide[3], wide[0]})
	}
}

// Sides of a cell, clockwise.
const (
	top = iota
	right
	bottom
	left
)

// side appends the spans on one side of a cell, clockwise. A column's side is appended
// whole, by the cell of it that comes first on the way round.
func (l *builder) side(list []span, cell, side int) []span {
	c := &l.cells[cell]
	if c.run != nil && c.shows[side] {
		return append(list, c.run.perimeter[side]...)
	}
	if c.template == nil {
		return list
	}
	for _, s := range c.sides[side] {
		list = l.spans(list, c, s.edge)
	}
	return list
}
