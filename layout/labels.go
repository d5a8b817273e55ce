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
	if _, known := c.labels.find(n.Label); known || c.poisoned("grid", "repeat") || c.labelOfUnnamed(n.Label) {
		return
	}
	c.labels.poison(n.Label.key())
	if split := c.splitLabels(n.Label.Text); split != nil {
		if c.labels.entries[glued] == nil {
			c.fault(n.Label.Span, "put blanks between the labels: "+strings.Join(split, " "), "these labels have no blanks between them")
			c.labels.poison(glued)
		}
		return
	}
	if n.Label.Text == "" {
		c.fault(n.Span, "write the label in front of it", "there is no label before the turn %s", quote(c.src[n.Start:n.End]))
		return
	}
	var labels []string
	for _, b := range c.guessable(c.tree.Blocks) {
		labels = append(labels, b.Label.Text)
	}
	c.fault(n.Label.Span, c.labelHint(n.Label.Text, labels), "no block is called %s", quote(n.Label.Text))
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
func (c *checker) labelHint(text string, known []string) string {
	const shown = 12
	hint := c.guess(text, known)
	switch {
	case len(c.list) >= maxGuesses:
		return ""
	case hint != "":
		return hint
	case len(known) > shown:
		return "define it: block " + text + " and its kind"
	case len(known) > 0:
		return "blocks are: " + strings.Join(known, ", ")
	}
	return "define it: block " + text + " web wedges navy kites cream"
}
