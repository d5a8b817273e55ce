package cutting

import (
	"cmp"
	"slices"

	"eighthturn/internal/measure"
)

// Chain is strips that are sewn end to end into one long strip, and the long pieces that are cut from it. Strips of one
// edging may make several chains; sewn into one, they would lose a seam more and come out too short.
type Chain struct {
	Times    int        `json:"times"`                    // chains like this one
	Strips   []Stretch  `json:"strips"`                   // in the order in which they are sewn
	Pieces   []Share    `json:"pieces"`                   // in the order in which they are cut, from the first strip on
	LossCut  measure.NM `json:"lost_at_each_join"`        // at each join
	SpareCut measure.NM `json:"spare"`                    // left of the long strip at its end
	LeastCut measure.NM `json:"shortest_piece,omitempty"` // the shortest piece of a strip in a long piece that has a join; 0 if none has
	Scant    bool       `json:"scant"`                    // less to spare than one step of rounding
	Short    bool       `json:"short"`                    // a piece of a strip in a long piece is shorter than it should be
}

// Stretch is strips of one length.
type Stretch struct {
	Count     int        `json:"strips"`
	LengthCut measure.NM `json:"length_cut"`
}

// Share is pieces of one line.
type Share struct {
	Line  int `json:"line"`
	Count int `json:"pieces"`
}

// minInJoin is the shortest piece of a strip that should be sewn into a long piece: below a hand's width, seams lie too
// close to each other. Common practice with no source.
func minInJoin(u measure.System) measure.NM {
	if u == measure.Centimetres {
		return 10 * measure.Centimetre
	}
	return 4 * measure.Inch
}

// chainOf is the chain of a group of long pieces and the demands for its strips, sewn and cut in the order that keeps the
// pieces of strips longest.
func (p *planning) chainOf(group []long, strips []demand, loss measure.NM) Chain {
	c := Chain{Times: 1, LossCut: loss, SpareCut: loss}
	for _, d := range strips {
		c.Strips = append(c.Strips, Stretch{d.count, d.along})
		c.SpareCut += measure.NM(d.count) * (d.along - loss)
	}
	slices.SortFunc(c.Strips, func(a, b Stretch) int { return cmp.Compare(b.LengthCut, a.LengthCut) })
	for _, l := range group {
		at := slices.IndexFunc(c.Pieces, func(s Share) bool { return s.Line == l.line })
		if at < 0 {
			at = len(c.Pieces)
			c.Pieces = append(c.Pieces, Share{Line: l.line})
		}
		c.Pieces[at].Count++
		c.SpareCut -= l.length
	}
	p.order(&c)
	c.Scant = c.SpareCut < p.Steps.Trimmed
	c.Short = c.LeastCut > 0 && c.LeastCut < minInJoin(p.Units)
	return c
}

// maxOrders is up to how many strips and pieces of a chain every order is tried.
const maxOrders = 100

// order puts a chain's strips and pieces into the order that keeps the shortest piece of a strip longest: the one strip that
// is shorter stands anywhere among the others, and pieces of one line are cut one after another.
func (p *planning) order(c *Chain) {
	best := *c
	best.LeastCut = p.leastIn(c)
	size := 0
	for _, s := range c.Strips {
		size += s.Count
	}
	for _, s := range c.Pieces {
		size += s.Count
	}
	if size <= maxOrders && !p.trials.spent() {
		for _, strips := range placings(c.Strips) {
			for turn := range len(c.Pieces) {
				p.trials.spend(size)
				try := *c
				try.Strips, try.Pieces = strips, slices.Concat(c.Pieces[turn:], c.Pieces[:turn])
				if try.LeastCut = p.leastIn(&try); try.LeastCut > best.LeastCut {
					best = try
				}
			}
		}
	}
	*c = best
}

// placings are the ways to put one shorter strip among others.
func placings(strips []Stretch) [][]Stretch {
	if len(strips) != 2 || strips[1].Count != 1 {
		return [][]Stretch{strips}
	}
	var list [][]Stretch
	long, short := strips[0], strips[1]
	for before := long.Count; before >= 0; before-- {
		way := []Stretch{{before, long.LengthCut}, short, {long.Count - before, long.LengthCut}}
		list = append(list, slices.DeleteFunc(way, func(s Stretch) bool { return s.Count == 0 }))
	}
	return list
}

// leastIn is the shortest piece of a strip in those long pieces of a chain that have a join, as they lie in it, each as
// much longer as it is cut to be measured by, from seam to seam or end; 0 if none has.
func (p *Plan) leastIn(c *Chain) measure.NM {
	var joins []measure.NM // where the strips sewn so far end, but for the last
	at := measure.NM(0)
	for _, s := range c.Strips {
		for range s.Count {
			at += s.LengthCut - c.LossCut
			joins = append(joins, at+c.LossCut/2)
		}
	}
	joins = joins[:len(joins)-1]
	least, from := measure.NM(0), measure.NM(0)
	for _, s := range c.Pieces {
		for range s.Count {
			to := from + p.Lines[s.Line].Piece.AlongCut + p.Longer
			for last := from; len(joins) > 0 && joins[0] < to; joins = joins[1:] {
				if joins[0] > from {
					least = shorter(least, joins[0]-last)
					if len(joins) == 1 || joins[1] >= to {
						least = shorter(least, to-joins[0])
					}
					last = joins[0]
				}
			}
			from = to
		}
	}
	return least
}

// shorter is the shorter of two lengths, the first of which may not be known yet.
func shorter(least, nm measure.NM) measure.NM {
	if least == 0 {
		return nm
	}
	return min(least, nm)
}

// chained adds a chain to a list in which like ones stand once.
func chained(list []Chain, c Chain) []Chain {
	for i := range list {
		if slices.Equal(list[i].Strips, c.Strips) && slices.Equal(list[i].Pieces, c.Pieces) && list[i].SpareCut == c.SpareCut {
			list[i].Times += c.Times
			return list
		}
	}
	return append(list, c)
}
