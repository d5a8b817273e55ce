package layout

import (
	"slices"
	"strings"
)

// Deals are the words for what gets one fabric of a pool, in the order of DealtBy.
func Deals() []string { return []string{"piece", "block", "web", "set"} }

func scrapsStatements() []Statement {
	return []Statement{{
		Word: "scraps", Form: "scraps name fabric fabric … [by piece | block | web | set] [deal number] [from value] [to value]",
		Summary: "a pool of fabrics, dealt evenly so that neighbors differ", Example: "scraps blues navy teal sky by block",
		Options: []Option{{Word: "by"}, {Word: "piece"}, {Word: "deal"}, {Word: "from"}, {Word: "to"}}, next: "a fabric", defines: true,
		parse: parseScraps, check: (*checker).scraps, after: []string{"motif"},
	}}
}

// scrapsNode is a pool of fabrics as written.
type scrapsNode struct {
	Span
	Name    NameNode
	Fabrics []NameNode
	By      *WordNode
	Deal    *countNode
	From    *countNode
	To      *countNode
}

// DealtBy is what of a quilt gets one fabric of a pool.
type DealtBy uint8

const (
	ByPiece DealtBy = iota
	ByBlock
	ByWeb
	BySet // the strips of a strip set, for all wedges of one sewn set together
)

// Pool is a pool of scraps.
type Pool struct {
	Name    string
	Fabrics []int // each once
	By      DealtBy
	Deal    int // another number gives another deal
	From    int // CIE L* that every fabric should have at least
	To      int // and at most
	Span    Span
}

func parseScraps(p *parser, c *cursor, keyword Span) {
	c.newField()
	name, ok := c.newName("a pool's name", false)
	if !ok {
		c.dropRest()
		return
	}
	n := &scrapsNode{Name: name}
	p.tree.Scraps = append(p.tree.Scraps, n)
	c.newField()
	for ok && !c.done() {
		ok = c.scrap(n)
	}
	if ok && len(n.Fabrics) == 0 {
		c.fault(c.here(), "for example scraps "+name.Text+" navy teal rust", "expected the fabrics of %s, found the end of the line", quote(name.Text))
	}
	c.dropIfFaulty(!ok)
	n.Span = keyword.To(c.last())
}

// scrap takes one fabric of a pool, or one of its options.
func (c *cursor) scrap(n *scrapsNode) bool {
	switch word := strings.ToLower(c.peek()); {
	case word == "by" && n.By == nil:
		c.newField()
		c.word()
		n.By = c.oneOf("how the pool is dealt", Deals()...)
		return n.By != nil
	case word == "deal" && n.Deal == nil:
		c.newField()
		c.word()
		count, ok := c.count("the number of the deal")
		n.Deal = &count
		return ok
	case word == "from" && n.From == nil:
		return c.lightness(&n.From)
	case word == "to" && n.To == nil:
		return c.lightness(&n.To)
	case c.twice():
		return false
	case n.By != nil || n.Deal != nil || n.From != nil || n.To != nil:
		c.fault(c.here(), "name all fabrics before by, deal, from and to", "expected by, deal, from, to or the end of the line, found %s", c.found())
		return false
	}
	name, ok := c.nameOf("a fabric's name")
	if ok {
		n.Fabrics = append(n.Fabrics, name)
	}
	return ok
}

// lightness takes the value that a pool is held to.
func (c *cursor) lightness(to **countNode) bool {
	c.newField()
	c.word()
	count, ok := c.count("a value from 0 (black) to 100 (white)")
	if ok && c.notOfPool(count) {
		return false
	}
	if ok && count.Count > lightestValue {
		c.fault(count.Span, "", "a value is a number from 0 (black) to %d (white), found %d", lightestValue, count.Count)
		ok = false
	}
	if ok {
		*to = &count
	}
	return ok
}

// lightestValue is the CIE L* of white.
const lightestValue = 100

// scraps makes the pools; a name that was a pool's already adds to it.
func (c *checker) scraps() {
	pooled := 0
	for _, n := range c.tree.Scraps {
		before := pooled
		if pooled += len(n.Fabrics); pooled > MaxPooled {
			if before <= MaxPooled {
				c.fault(n.Span, "", "the pools of a layout may have at most %d fabrics in all", MaxPooled)
			}
			n.Fabrics = nil
		}
		at := len(c.design.Pools)
		if e, known := c.names.find(n.Name); known && e.is == aPool {
			at = e.index
		} else if !c.define(n.Name, aPool, at) {
			continue
		} else {
			c.design.Pools = append(c.design.Pools, Pool{Name: n.Name.Text, To: lightestValue, Span: n.Span})
		}
		c.fillPool(&c.design.Pools[at], n)
	}
	for _, n := range c.tree.Scraps {
		if e, known := c.names.find(n.Name); known && e.is == aPool {
			c.holdValues(&c.design.Pools[e.index], n)
		}
	}
}

// holdValues warns of fabrics that are darker or lighter than their pool is held to.
func (c *checker) holdValues(p *Pool, n *scrapsNode) {
	for _, name := range n.Fabrics {
		e, known := c.names.find(name)
		if !known || e.is != aFabric {
			continue
		}
		f := &c.design.Fabrics[e.index]
		if f.Photo != nil && len(f.Photo.Colours) == 0 {
			continue // its photo was not read
		}
		switch l := f.Colour.Lightness(); {
		case l < float64(p.From):
			c.warn(name.Span, "take it out of "+p.Name, "%s is too dark for %s: its value is L* %.0f, and the pool begins at %d", quote(name.Text), quote(p.Name), l, p.From)
		case l > float64(p.To):
			c.warn(name.Span, "take it out of "+p.Name, "%s is too light for %s: its value is L* %.0f, and the pool ends at %d", quote(name.Text), quote(p.Name), l, p.To)
		}
	}
}

func (c *checker) fillPool(p *Pool, n *scrapsNode) {
	for _, name := range n.Fabrics {
		if f, ok := c.fabric(name, "a pool is made of fabrics"); ok {
			if slices.Contains(p.Fabrics, f) {
				c.warn(name.Span, "", "%s is already in the pool %s", quote(name.Text), quote(p.Name))
				continue
			}
			p.Fabrics = append(p.Fabrics, f)
		}
	}
	if n.By != nil {
		p.By = DealtBy(slices.Index(Deals(), n.By.Word))
	}
	if n.Deal != nil {
		p.Deal = n.Deal.Count
	}
	if n.From != nil {
		p.From = n.From.Count
	}
	if n.To != nil {
		p.To = n.To.Count
	}
	if (n.From != nil || n.To != nil) && p.From >= p.To {
		c.fault(n.Span, "the darker value behind from, the lighter one behind to", "no fabric is as light as %d and as dark as %d", p.From, p.To)
		p.From, p.To = 0, lightestValue
	}
}
