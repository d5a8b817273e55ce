package layout

func valueStepStatements() []Statement {
	return []Statement{{
		Word: "contrast", Form: "contrast number number", Summary: "the two steps of value that the value study uses", Once: true,
		Example: "contrast 10 25", parse: parseContrast, check: (*checker).contrast,
	}}
}

// contrastNode is the two thresholds of the value study, in steps of CIE L*.
type contrastNode struct {
	Span
	Soft, Clear float64
}

// Contrast is the thresholds of the value study in steps of CIE L*: below Soft a seam
// vanishes, from Clear on it is clear.
type Contrast struct{ Soft, Clear float64 }

func parseContrast(p *parser, c *cursor, keyword Span) {
	n := &contrastNode{}
	var counts []countNode
	for _, to := range []*float64{&n.Soft, &n.Clear} {
		c.newField()
		count, ok := c.count("a step of value from 1 to 99")
		if ok && (count.Count < 1 || count.Count > 99) {
			c.fault(count.Span, "", "a step of value is a number from 1 to 99, found %d", count.Count)
			ok = false
		}
		if !ok {
			c.dropRest()
			return
		}
		*to, counts = float64(count.Count), append(counts, count)
	}
	n.Span = keyword.To(c.last())
	if n.Soft >= n.Clear {
		swapped := edit("the smaller number first", counts[0].Span.To(counts[1].Span), c.text(counts[1].Span)+" "+c.text(counts[0].Span))
		c.fault(n.Span, "", "below the first step seams vanish, from the second on they are clear, so the first must be the smaller").suggest(swapped)
		c.dropRest()
		return
	}
	p.tree.Contrast = n
}

func (c *checker) contrast() {
	if n := c.tree.Contrast; n != nil {
		c.design.Contrast = &Contrast{n.Soft, n.Clear}
	}
}
