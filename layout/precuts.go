package layout

import (
	"cmp"
	"strings"

	"eighthturn/internal/measure"
)

// PrecutSort is what sort of precut a fabric is cut from.
type PrecutSort uint8

// The sorts.
const (
	FatQuarters PrecutSort = iota
	FatEighths
	Squares // of a side
	Strips  // of a width, from selvage to selvage
)

// Precuts is so many precuts that a fabric is cut from before any yardage.
type Precuts struct {
	Count int
	Sort  PrecutSort
	Size  measure.NM // as sold: the side of squares, the width of strips; 0 of other sorts
	Span  Span
}

// Some says whether there are any.
func (p *Precuts) Some() bool { return p.Count > 0 }

// precutNode is precuts as written.
type precutNode struct {
	Span
	Count countNode
	Sort  PrecutSort
	Size  *LengthNode // nil of sorts that have one size
}

// precutWords are the words for precuts, by their sort.
func precutWords() []string { return []string{"fat-quarters", "fat-eighths", "squares", "strips"} }

// precutSort is the sort of precut that a word is for, of several or of one.
func precutSort(word string) (PrecutSort, bool) {
	for i, w := range precutWords() {
		if strings.EqualFold(word, w) || strings.EqualFold(word+"s", w) {
			return PrecutSort(i), true
		}
	}
	return 0, false
}

// precutOption takes the precuts that a fabric is cut from; nil if they are faulty.
func (c *cursor) precutOption() *precutNode {
	c.newField()
	n := &precutNode{}
	start := c.word()
	const example = "for example from 3 fat-quarters"
	count, ok := c.count("how many precuts there are")
	if !ok {
		last := &c.list[len(c.list)-1]
		last.Hint = cmp.Or(last.Hint, example)
		return nil
	}
	n.Count = count
	sort, known := precutSort(c.peek())
	if !known {
		c.fault(c.here(), "", "expected fat-quarters, fat-eighths, squares or strips, found %s", c.found()).
			suggest(didYouMean(c.peek(), precutWords()).backed(example))
		return nil
	}
	n.Sort, n.Span = sort, start.To(c.word())
	if sort != Squares && sort != Strips {
		return n
	}
	what := map[PrecutSort]string{Squares: "the side of the squares", Strips: "the width of the strips"}[sort]
	length, ok := c.length(what)
	if !ok {
		last := &c.list[len(c.list)-1]
		last.Hint = cmp.Or(last.Hint, map[PrecutSort]string{Squares: "for example squares 10 in", Strips: "for example strips 2 1/2 in"}[sort])
		return nil
	}
	c.noFrame(&length, what)
	n.Size, n.Span = &length, n.To(length.Span)
	return n
}

// notOfPool reports precuts behind a pool's from: they belong to a fabric.
func (c *cursor) notOfPool(count countNode) bool {
	if _, is := precutSort(c.peek()); !is {
		return false
	}
	at := count.To(c.here())
	c.fault(at, "write from "+c.text(at)+" on the line of each fabric", "a pool is not cut from precuts, but its fabrics may be")
	return true
}

// precuts are those of a fabric.
func (c *checker) precuts(n *precutNode) Precuts {
	p := Precuts{Count: n.Count.Count, Sort: n.Sort, Span: n.Span}
	switch {
	case p.Count < 1:
		c.fault(n.Count.Span, "write how many there are, or leave from out", "a fabric cannot be cut from 0 precuts")
	case p.Count > MaxPrecuts:
		c.fault(n.Count.Span, "write a smaller number", "a fabric may be cut from at most %d precuts, found %d", MaxPrecuts, p.Count)
	}
	if n.Size != nil {
		p.Size = c.within(n.Size, measure.Inch/2, MaxCloth, map[PrecutSort]string{Squares: "the side of precut squares", Strips: "the width of precut strips"}[p.Sort])
	}
	return p
}
