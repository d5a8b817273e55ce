package layout

import (
	"cmp"
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// noteParts are the parts of the printed pattern that a note may name.
func noteParts() []string {
	return []string{"cover", "fabric", "cutting", "sewing", "grid", "border", "finishing"}
}

func parseNote(p *parser, c *cursor, keyword Span) {
	c.newField()
	n := &NoteNode{}
	if !c.done() && !c.atQuote() {
		place := c.usedName()
		n.Place = &place
		c.newField()
	}
	text, ok := c.quoted("the note")
	if !ok {
		c.dropRest()
		return
	}
	n.Text, n.Span = text, keyword.To(text.Span)
	p.tree.Notes = append(p.tree.Notes, n)
}

func parsePalette(p *parser, c *cursor, keyword Span) {
	c.newField()
	var names []string
	for _, known := range palettes.All() {
		names = append(names, known.Name)
	}
	if c.done() {
		c.fault(c.here(), "palettes are: "+strings.Join(names, ", "), "expected the name of a palette, found the end of the line")
		return
	}
	n := &PaletteNode{Name: c.usedName()}
	n.Span = keyword.To(n.Name.Span)
	if _, ok := palettes.Find(strings.ToLower(n.Name.Text)); !ok {
		hint := didYouMean(n.Name.Text, names)
		if hint == "" {
			hint = "palettes are: " + strings.Join(names, ", ")
		}
		c.fault(n.Name.Span, hint, "no palette is called %s", quote(n.Name.Text))
		p.tree.paletteReported = true
		c.dropRest()
		return
	}
	p.tree.Palettes = append(p.tree.Palettes, n)
}

func parseScraps(p *parser, c *cursor, keyword Span) {
	c.newField()
	name, ok := c.newName("a pool's name", false)
	if !ok {
		c.dropRest()
		return
	}
	n := &ScrapsNode{Name: name}
	p.tree.Scraps = append(p.tree.Scraps, n)
	c.newField()
	for !c.done() && !n.Broken {
		n.Broken = !c.scrap(n)
	}
	if len(n.Fabrics) == 0 && !n.Broken {
		n.Broken = true
		c.fault(c.here(), "for example scraps "+name.Text+" navy teal rust", "expected the fabrics of %s, found the end of the line", quote(name.Text))
	}
	c.dropIfFaulty(n.Broken)
	n.Span = keyword.To(c.last())
}

// scrap takes one fabric of a pool, or one of its options.
func (c *cursor) scrap(n *ScrapsNode) bool {
	switch word := strings.ToLower(c.peek()); {
	case word == "by" && n.By == nil:
		c.newField()
		c.word()
		n.By = c.oneOf("how the pool is dealt", "piece", "block", "web")
		return n.By != nil
	case word == "deal" && n.Deal == nil:
		c.newField()
		c.word()
		count, ok := c.count("the number of the deal")
		n.Deal = &count
		return ok
	case c.twice():
		return false
	case n.By != nil || n.Deal != nil:
		c.fault(c.here(), "name all fabrics before by and deal", "expected by, deal or the end of the line, found %s", c.found())
		return false
	}
	name, ok := c.nameOf("a fabric's name")
	if ok {
		n.Fabrics = append(n.Fabrics, name)
	}
	return ok
}

// count takes a whole number.
func (c *cursor) count(what string) (CountNode, bool) {
	at := c.here()
	n, err := measure.ReadCount(c.text(at))
	switch {
	case err != nil && !c.done() && strings.Trim(c.text(at), "0123456789") == "":
		c.fault(at, "write a smaller one", "expected %s, a whole number of %d digits at the most, found %s", what, measure.MaxDigits, c.found())
		return CountNode{}, false
	case err != nil || c.done():
		c.fault(at, "", "expected %s, a whole number, found %s", what, c.found())
		return CountNode{}, false
	}
	return CountNode{c.take(at), n}, true
}

func parseRepeat(p *parser, c *cursor, keyword Span) {
	n := &RepeatNode{Across: CountNode{Count: 1}, Down: CountNode{Count: 1}}
	for _, option := range []struct {
		word string
		to   *CountNode
	}{{"across", &n.Across}, {"down", &n.Down}} {
		c.newField()
		if _, ok := c.accept(option.word); !ok {
			continue
		}
		count, ok := c.count("how often the grid is laid " + option.word)
		if ok && count.Count == 0 {
			c.fault(count.Span, "write 1 or more", "a grid cannot be laid 0 times")
			ok = false
		}
		if !ok {
			c.dropRest()
			p.tree.gridReported = true
			return
		}
		*option.to = count
	}
	if n.Across.Empty() && n.Down.Empty() {
		c.fault(c.here(), "for example repeat across 3 down 4", "expected across or down, found %s", c.found())
		c.dropRest()
		return
	}
	n.Span = keyword.To(c.last())
	p.tree.Repeat = n
}

func parseSash(p *parser, c *cursor, keyword Span) { p.tree.Sash = c.edging(keyword, "sash") }

func parseBacking(p *parser, c *cursor, _ Span) {
	c.newField()
	n, ok := c.nameOf("the fabric of the backing")
	if !ok {
		c.dropRest()
		return
	}
	p.tree.Backing = &n
}

func parseBatting(p *parser, _ *cursor, keyword Span) {
	p.tree.Batting = &WordNode{keyword, "batting"}
}

func parseContrast(p *parser, c *cursor, keyword Span) {
	n := &ContrastNode{}
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
		*to = float64(count.Count)
	}
	n.Span = keyword.To(c.last())
	if n.Soft >= n.Clear {
		c.fault(n.Span, "the smaller number first", "below the first step seams vanish, from the second on they are clear, so the first must be the smaller")
		c.dropRest()
		return
	}
	p.tree.Contrast = n
}

// webRow reads one row of the table of webs.
func (p *parser) webRow(c *cursor) {
	w := p.tree.Webs
	row := WebRowNode{Span: Span{c.at, c.end}}
	for !c.done() {
		c.newField()
		if at, ok := c.accept("."); ok {
			row.Values = append(row.Values, WebNode{Span: at, Own: true})
			continue
		}
		v, ok := c.value("a fabric, a strip set or .")
		if !ok {
			last := &c.list[len(c.list)-1]
			last.Hint = cmp.Or(last.Hint, "write a fabric, a strip set, or . for the blocks' own")
			w.Broken = true
			c.dropRest()
			break
		}
		row.Values = append(row.Values, WebNode{Span: v.Span, Value: v})
	}
	row.Span.End = c.last().End
	w.Rows = append(w.Rows, row)
	w.Span.End = row.Span.End
}
