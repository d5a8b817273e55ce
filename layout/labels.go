package layout

import (
	"strings"
	"unicode/utf8"
)

// gluedRow is a row's labels with blanks between them, if it is one word made of labels.
func (c *checker) gluedRow(row RowNode, columns int) string {
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
		if _, ok := c.labels[foldName(string(r))]; !ok && r != '.' {
			return nil
		}
		split = append(split, string(r))
	}
	return split
}

// unknownLabel reports a label that no block has, once for each label; labels without
// blanks between them are reported once for the whole grid.
func (c *checker) unknownLabel(n *CellNode, reported map[string]bool) {
	const glued = " "
	key := n.Label.key()
	if reported[key] || c.spoilt[key] || c.noLabel[key] || c.tree.gridReported {
		return
	}
	reported[key], c.noLabel[key] = true, true
	if c.labelOfNamelessBlock(n.Label.Text) {
		return
	}
	if split := c.splitLabels(n.Label.Text); split != nil {
		if !reported[glued] {
			c.fault(n.Label.Span, "put blanks between the labels: "+strings.Join(split, " "), "these labels stand without blanks between them")
		}
		reported[glued] = true
		return
	}
	if n.Label.Text == "" {
		c.fault(n.Span, "write the label in front of it", "no label stands before the turn %s", quote(c.src[n.Start:n.End]))
		return
	}
	var known []string
	for _, b := range c.guessable(c.tree.Blocks) {
		known = append(known, b.Label.Text)
	}
	c.fault(n.Label.Span, c.labelHint(n.Label.Text, known), "no block is called %s", quote(n.Label.Text))
}

// labelOfNamelessBlock says whether a label that no block has is most likely that of a block
// at fault without one.
func (c *checker) labelOfNamelessBlock(text string) bool {
	if c.unlabelled == 0 {
		return false
	}
	c.unlabelled--
	c.spoilt[foldName(text)] = true
	return true
}

// labelHint is a label that is near, or those that there are, or how to define one.
func (c *checker) labelHint(text string, known []string) string {
	const shown = 12
	hint := c.guess(text, known)
	switch {
	case len(c.list) >= mostGuesses:
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
