package layout

import (
	"strings"
	"unicode/utf8"
)

// gluedRow is a row's labels with blanks between them, if it is one word made of labels.
func (c *checker) gluedRow(row rowNode, columns int) string {
	if len(row.Cells) != 1 || !row.Cells[0].Turn.Empty() {
		return ""
	}
	split := c.splitLabels(row.Cells[0].Label.Text)
	if columns > 1 && len(split) != columns {
		return ""
	}
	return strings.Join(split, " ")
}

// splitLabels is a word's letters if each is a block's label, nil if not.
func (c *checker) splitLabels(word string) []string {
	if letters := utf8.RuneCountInString(word); letters < 2 || letters > MaxNameChars {
		return nil
	}
	var split []string
	for _, r := range word {
		if e, known := c.labels.entries[foldName(string(r))]; r != '.' && (!known || e.poisoned()) {
			return nil
		}
		split = append(split, string(r))
	}
	return split
}

// unknownLabel reports a label that no block has, once for each label; labels without
// blanks between them are reported once for the whole grid.
func (c *checker) unknownLabel(n *cellNode) {
	const glued = " " // stands for all labels without blanks
	if e, known := c.labels.find(n.Label); known {
		c.alsoWrite(e, Edit{Span: n.Label.Span})
		return
	}
	if c.poisoned("grid", "repeat") || c.labelOfUnnamed(n.Label) {
		return
	}
	unknown := c.labels.poison(n.Label.key())
	if split := c.splitLabels(n.Label.Text); split != nil {
		if e := c.labels.entries[glued]; e == nil {
			before := len(c.list)
			c.fault(n.Label.Span, "", "these labels have no blanks between them").suggest(apart(split).alone()).orElse(c.labelHint(n.Label.Text, c.knownLabels()))
			c.labels.poison(glued).saidBy(before, c.list)
		} else {
			c.alsoWrite(e, Edit{n.Label.Span, strings.Join(split, " ")})
		}
		return
	}
	if n.Label.Text == "" {
		c.fault(n.Span, "write the label in front of it", "there is no label before the turn %s", quote(c.src[n.Start:n.End]))
		return
	}
	before := len(c.list)
	c.fault(n.Label.Span, "", "no block is called %s", quote(n.Label.Text)).suggest(c.labelHint(n.Label.Text, c.knownLabels()))
	unknown.saidBy(before, c.list)
}

// knownLabels is the labels to guess from.
func (c *checker) knownLabels() []string {
	var labels []string
	for _, b := range c.guessable(c.tree.Blocks) {
		labels = append(labels, b.Label.Text)
	}
	return labels
}

// saidBy notes that the last message of a list is about the entry, if it is new.
func (e *entry) saidBy(before int, list []Fault) {
	if len(list) > before {
		e.message = len(list)
	}
}

// apart is a hint to put blanks between labels.
func apart(labels []string) hint {
	text := strings.Join(labels, " ")
	return write(text).saying("put blanks between the labels: " + text)
}

// alsoWrite adds an edit to those of the message about an entry; without a text it is that of the first.
func (c *checker) alsoWrite(e *entry, also Edit) {
	if e.message == 0 || e.message > len(c.list) {
		return
	}
	f := &c.list[e.message-1]
	if also.Text == "" && len(f.Edits) > 0 {
		also.Text = f.Edits[0].Text
	}
	f.alsoEdit(also)
}

// labelOfUnnamed says whether a label that no block has is most likely that of a poisoned
// block without one; it is poisoned then.
func (c *checker) labelOfUnnamed(label NameNode) bool {
	if c.labels.unnamed == 0 {
		return false
	}
	c.labels.unnamed--
	c.labels.poison(label.key())
	return true
}

// labelHint is a label that is near, or those that there are, or how to define one.
func (c *checker) labelHint(text string, known []string) hint {
	const shown = 12
	hint := c.guess(text, known)
	switch {
	case len(c.list) >= maxGuesses:
		return hint
	case len(known) > shown:
		return hint.backed("define it: block " + text + " and its kind")
	case len(known) > 0:
		return hint.backed("blocks are: " + strings.Join(known, ", "))
	}
	return hint.backed("define it: block " + text + " web wedges navy kites cream")
}
