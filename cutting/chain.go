package cutting

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/measure"
)

// Chain is strips that are sewn end to end into one long strip, and the long pieces that are cut from it. Strips of one
// edging may make several chains; sewn into one, they would lose a seam more and come out too short.
type Chain struct {
	Times  int       // chains like this one
	Strips []Stretch // the longest first
	Pieces []Share   // by line
}

// Stretch is strips of one length.
type Stretch struct {
	Count     int
	LengthCut measure.NM
}

// Share is pieces of one line.
type Share struct{ Line, Count int }

// chainOf is the chain of a group of long pieces and the demands for its strips.
func chainOf(group []long, strips []demand) Chain {
	c := Chain{Times: 1}
	for _, d := range strips {
		c.Strips = append(c.Strips, Stretch{d.count, d.along})
	}
	slices.SortFunc(c.Strips, func(a, b Stretch) int { return int(min(1, max(-1, b.LengthCut-a.LengthCut))) })
	for _, l := range group {
		at := slices.IndexFunc(c.Pieces, func(s Share) bool { return s.Line == l.line })
		if at < 0 {
			at = len(c.Pieces)
			c.Pieces = append(c.Pieces, Share{Line: l.line})
		}
		c.Pieces[at].Count++
	}
	return c
}

// chained adds a chain to a list in which like ones stand once.
func chained(list []Chain, c Chain) []Chain {
	for i := range list {
		if slices.Equal(list[i].Strips, c.Strips) && slices.Equal(list[i].Pieces, c.Pieces) {
			list[i].Times += c.Times
			return list
		}
	}
	return append(list, c)
}

// ChainWords says which strips are sewn end to end and what is cut from them, in lengths as they are written by text.
func (p *Plan) ChainWords(c *Chain, text func(measure.NM) string) string {
	var strips, pieces []string
	for _, s := range c.Strips {
		strips = append(strips, plural(s.Count, "strip")+" "+text(s.LengthCut)+" long")
	}
	for _, s := range c.Pieces {
		pieces = append(pieces, fmt.Sprintf("%d of %s", s.Count, text(p.Lines[s.Line].Piece.AlongCut)))
	}
	words := fmt.Sprintf("%s: sew %s end to end, and from that cut %s", p.EdgingName(&p.Lines[c.Pieces[0].Line]), strings.Join(strips, " and "), strings.Join(pieces, " and "))
	if c.Times > 1 {
		words += fmt.Sprintf("; make %d like this", c.Times)
	}
	return words + "."
}
