package layout

import (
	"fmt"
	"slices"
	"strings"
)

// bandOrSets takes one fabric of a strip set and its width, or how many sets are dealt.
func (c *cursor) bandOrSets(s *StripSetNode) bool {
	word := c.peek()
	switch {
	case strings.EqualFold(word, "sets") && s.Sets == nil && len(s.Bands) > 0:
		c.newField()
		c.word()
		count, ok := c.count("how many sets are dealt")
		s.Sets = &count
		if ok && (count.Count < 1 || count.Count > MaxDealt) {
			c.fault(count.Span, fmt.Sprintf("write a number from 1 to %d", MaxDealt), "a strip set is dealt as 1 to %d sets, found %d", MaxDealt, count.Count)
			ok = false
		}
		return ok
	case s.Sets != nil:
		if !c.twice() {
			c.fault(c.here(), "name all fabrics before sets", "expected the end of the line, found %s", c.found())
		}
		return false
	}
	return c.band(s)
}

// dealt sees that a strip set of pools can be dealt by set: from those alone, with enough fabrics, and none of them twice.
func (c *checker) dealt(n *StripSetNode, s *StripSet) {
	if n.Sets != nil {
		s.Sets = n.Sets.Count
	}
	if n.poisoned || c.poisoned("scraps") {
		return
	}
	s.Dealt = slices.ContainsFunc(s.Bands, func(b Band) bool { return b.Pool >= 0 && c.design.Pools[b.Pool].By == BySet })
	switch {
	case s.Dealt:
		n.poisoned = !c.pooledBySet(n, s) || !c.enoughForSets(n, s) || !c.noneTwice(n, s)
	case n.Sets != nil:
		n.poisoned = true
		c.fault(n.Sets.Span, "write by set behind the fabrics of its pools, or leave out sets", "%s has no strips from a pool that is dealt by set, so there is nothing to deal", quote(s.Name))
	}
}

// pooledBySet sees that all pools of a set are dealt by set.
func (c *checker) pooledBySet(n *StripSetNode, s *StripSet) bool {
	for i, b := range s.Bands {
		if b.Pool < 0 {
			continue
		}
		if p := &c.design.Pools[b.Pool]; p.By != BySet {
			c.fault(n.Bands[i].Fabric.Span, "write by set behind the fabrics of "+p.Name, "%s is dealt by set, but its pool %s is dealt by %s", quote(s.Name), quote(p.Name), Deals()[p.By]).note(p.Span, "defined here")
			return false
		}
	}
	return true
}

// enoughForSets sees that no set must hold a fabric of its pools twice.
func (c *checker) enoughForSets(n *StripSetNode, s *StripSet) bool {
	for i, b := range s.Bands {
		if b.Pool < 0 {
			continue
		}
		p := &c.design.Pools[b.Pool]
		strips := 0
		for _, other := range s.Bands {
			if other.Pool == b.Pool {
				strips++
			}
		}
		if few := strips - len(p.Fabrics); few > 0 {
			c.fault(n.Bands[i].Fabric.Span, "add "+plural(few, "fabric")+" to the pool, or take fewer strips from it",
				"each set of %s takes %s from %s, which has only %s, and no set holds a fabric twice", quote(s.Name), plural(strips, "fabric"), quote(p.Name), plural(len(p.Fabrics), "fabric")).note(p.Span, "defined here")
			return false
		}
	}
	return true
}

// noneTwice sees that no fabric comes into a set from two sides: from two pools, or from a pool and by its name.
func (c *checker) noneTwice(n *StripSetNode, s *StripSet) bool {
	from := map[int]int{} // a fabric of a pool, and the pool
	for _, b := range s.Bands {
		if b.Pool < 0 {
			continue
		}
		for _, f := range c.design.Pools[b.Pool].Fabrics {
			if other, known := from[f]; known && other != b.Pool {
				p := &c.design.Pools[b.Pool]
				c.fault(n.Span, "take it out of one of the two", "%s is in both pools of %s, %s and %s, and no set holds a fabric twice", quote(c.design.Fabrics[f].Name), quote(s.Name), quote(c.design.Pools[other].Name), quote(p.Name)).note(p.Span, "defined here")
				return false
			}
			from[f] = b.Pool
		}
	}
	for i, b := range s.Bands {
		if pool, known := from[b.Fabric]; b.Fabric >= 0 && known {
			p := &c.design.Pools[pool]
			c.fault(n.Bands[i].Fabric.Span, "take it out of the pool", "%s is a strip of every set of %s and in its pool %s, and no set holds a fabric twice", quote(c.design.Fabrics[b.Fabric].Name), quote(s.Name), quote(p.Name)).note(p.Span, "defined here")
			return false
		}
	}
	return true
}
