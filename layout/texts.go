package layout

import "strings"

// textNodes is what the printed pattern says, as written.
type textNodes struct {
	Title     *TextNode
	Designer  *TextNode
	Level     *TextNode
	Copyright *TextNode
	Number    *TextNode // of the pattern
	Version   *TextNode // of the pattern
	Date      *TextNode // of the pattern
	Notes     []*noteNode
}

// texts is what the printed pattern says of a quilt, "" for what is not said.
type texts struct {
	Title     string
	Designer  string
	Level     string
	Copyright string
	Number    string // of the pattern
	Version   string // of the pattern
	Date      string // of the pattern, as it is to be printed
	Notes     []NoteText
}

func textStatements() []Statement {
	return []Statement{
		{
			Word: "title", Form: `title "…"`, Summary: "the quilt's name", Once: true, Example: `title "Harbor lanterns"`, aliases: []string{"name"},
			parse: func(p *parser, c *cursor, _ Span) { p.tree.Title = c.onlyText("the quilt's title") },
			check: func(c *checker) { c.design.Title = c.tree.Title.text() },
		},
		{
			Word: "designer", Form: `designer "…"`, Summary: "who designed it", Once: true, Example: `designer "Anna Miller"`, aliases: []string{"author"},
			parse: func(p *parser, c *cursor, _ Span) { p.tree.Designer = c.onlyText("the designer's name") },
			check: func(c *checker) { c.design.Designer = c.tree.Designer.text() },
		},
		{
			Word: "level", Form: `level "…"`, Summary: "the skill level", Once: true, Example: `level "confident beginner"`,
			parse: func(p *parser, c *cursor, _ Span) { p.tree.Level = c.onlyText("the level") },
			check: func(c *checker) { c.design.Level = c.tree.Level.text() },
		},
		{
			Word: "copyright", Form: `copyright "…"`, Summary: "the copyright notice", Once: true, Example: `copyright "2026 Anna Miller"`,
			parse: func(p *parser, c *cursor, _ Span) { p.tree.Copyright = c.onlyText("the copyright notice") },
			check: func(c *checker) { c.design.Copyright = c.tree.Copyright.text() },
		},
		{
			Word: "pattern-number", Form: `pattern-number "…"`, Summary: "the pattern's number, for its back cover", Once: true, Example: `pattern-number "HL-7"`,
			parse: func(p *parser, c *cursor, _ Span) { p.tree.Number = c.onlyText("the pattern's number") },
			check: func(c *checker) { c.design.Number = c.tree.Number.text() },
		},
		{
			Word: "pattern-version", Form: `pattern-version "…"`, Summary: "the pattern's version, for its back cover", Once: true, Example: `pattern-version "1.1"`,
			parse: func(p *parser, c *cursor, _ Span) { p.tree.Version = c.onlyText("the pattern's version") },
			check: func(c *checker) { c.design.Version = c.tree.Version.text() },
		},
		{
			Word: "pattern-date", Form: `pattern-date "…"`, Summary: "the pattern's date, for its back cover", Once: true, Example: `pattern-date "March 2027"`,
			parse: func(p *parser, c *cursor, _ Span) { p.tree.Date = c.onlyText("the pattern's date") },
			check: func(c *checker) { c.design.Date = c.tree.Date.text() },
		},
		{
			Word: "note", Form: `note [place] "…"`, Summary: "a remark for the printed pattern, about a block or a part",
			Example: `note cutting "leave the kites large"`, parse: parseNote, check: (*checker).notes, after: []string{"binding"},
		},
	}
}

// noteNode is a note for the printed pattern and the place it belongs to, if given.
type noteNode struct {
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
	n := &noteNode{}
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

func (c *checker) notes() {
	for _, n := range c.tree.Notes {
		c.design.Notes = append(c.design.Notes, NoteText{c.notePlace(n), n.Text.Text})
	}
}

// notePlace is the place that a note names: a block's label or a part of the pattern.
func (c *checker) notePlace(n *noteNode) string {
	if n.Place == nil {
		return ""
	}
	label, known := c.labels.find(*n.Place)
	if known && !label.poisoned() {
		return c.design.Blocks[label.index].Label
	}
	for _, part := range noteParts() {
		if strings.EqualFold(part, n.Place.Text) {
			return part
		}
	}
	if !known && c.labels.unnamed == 0 {
		parts := "parts are: " + strings.Join(noteParts(), ", ")
		c.fault(n.Place.Span, "", "%s is neither a block nor a part of the pattern", quote(n.Place.Text)).suggest(c.guess(n.Place.Text, noteParts()).backed(parts))
	}
	return ""
}
