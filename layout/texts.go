package layout

import "strings"

func parseTitle(p *parser, c *cursor, _ Span) { p.tree.Title = c.onlyText("the quilt's title") }

func parseDesigner(p *parser, c *cursor, _ Span) { p.tree.Designer = c.onlyText("the designer's name") }

func parseLevel(p *parser, c *cursor, _ Span) { p.tree.Level = c.onlyText("the level") }

func parseCopyright(p *parser, c *cursor, _ Span) {
	p.tree.Copyright = c.onlyText("the copyright notice")
}

// NoteNode is a note for the printed pattern and the place it belongs to, if given.
type NoteNode struct {
	Span
	Place *NameNode
	Text  TextNode
}

// NoteText is a note for the printed pattern; Place is a block's label, a part of the
// pattern, or "".
type NoteText struct{ Place, Text string }

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

// words takes what the printed pattern says.
func (c *checker) words() {
	d, t := &c.design, c.tree
	d.Backing = -1
	for _, text := range []struct {
		from *TextNode
		to   *string
	}{{t.Designer, &d.Designer}, {t.Level, &d.Level}, {t.Copyright, &d.Copyright}} {
		if text.from != nil {
			*text.to = text.from.Text
		}
	}
	for _, n := range t.Notes {
		d.Notes = append(d.Notes, NoteText{c.notePlace(n), n.Text.Text})
	}
	if t.Backing != nil {
		d.Backing, _ = c.fabric(*t.Backing, "a backing is cut from one fabric")
	}
	d.Batting = t.Batting != nil
	if t.Contrast != nil {
		d.Contrast = &Contrast{t.Contrast.Soft, t.Contrast.Clear}
	}
}

// notePlace is the place that a note names: a block's label or a part of the pattern.
func (c *checker) notePlace(n *NoteNode) string {
	if n.Place == nil {
		return ""
	}
	if i, ok := c.labels[n.Place.key()]; ok {
		return c.design.Blocks[i].Label
	}
	for _, part := range noteParts() {
		if strings.EqualFold(part, n.Place.Text) {
			return part
		}
	}
	if c.spoilt[n.Place.key()] || c.noLabel[n.Place.key()] || c.unlabelled > 0 {
		return ""
	}
	c.fault(n.Place.Span, "parts are: "+strings.Join(noteParts(), ", "), "%s is neither a block nor a part of the pattern", quote(n.Place.Text))
	return ""
}
