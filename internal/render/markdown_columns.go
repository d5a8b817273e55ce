package render

import (
	"strings"

	"eighthturn/internal/document"
)

// Widths in a document that is made of Markdown, in letters.
const (
	madeLine   = 72 // of a line on a page
	madeMargin = 3  // of a cell, both sides together
	madeSwatch = 7  // of a swatch with its letter and blanks
)

// columnShares are how wide columns are beside each other in a document that is made of the Markdown: each has room for its longest
// word, for a letter more where all have, and what is left of a line goes to those with longer cells, by what they lack.
func columnShares(t *document.Table) []int {
	words, lacks := make([]int, len(t.Columns)), make([]int, len(t.Columns))
	room, wanted := madeLine, 0
	for i := range t.Columns {
		word, cell := columnNeed(t, i)
		words[i], lacks[i] = word+madeMargin, cell-word
		room, wanted = room-words[i], wanted+lacks[i]
	}
	if room >= len(words) { // letters of some faces are wide
		room -= len(words)
		for i := range words {
			words[i]++
		}
	}
	for i := range words {
		if room > 0 && wanted > 0 {
			words[i] += lacks[i] * min(room, wanted) / wanted
		}
	}
	return words
}

// columnNeed is how wide a column's longest word and its longest cell are, but for rows that go across.
func columnNeed(t *document.Table, at int) (word, cell int) {
	const longest, longestNumber, longestName = 40, 8, 10 // a number stays with its unit, a name with its swatch
	see := func(text string, swatches int) {
		word = max(word, min(swatches, 1)*madeSwatch)
		if w := Columns(text); swatches == 1 && w <= longestName {
			word = max(word, madeSwatch+w)
		}
		if w := Columns(text); t.Columns[at].Kind.Right() && w <= longestNumber {
			word = max(word, w)
		}
		for one := range strings.FieldsFuncSeq(text, func(r rune) bool { return r == ' ' || r == '/' }) { // programs break lines behind a slash
			word = max(word, min(Columns(one), longest))
		}
		cell = max(cell, word, min(Columns(text)+swatches*madeSwatch, madeLine))
	}
	see(line(t.Columns[at].Title), 0)
	for i := range t.Rows {
		if r := &t.Rows[i]; at < len(r.Cells) && !across(*r, len(t.Columns)) {
			see(line(r.Cells[at].Text.String()), len(r.Cells[at].Swatches))
		}
	}
	return word, cell
}

// numbersCentered says whether a table's numbers are centered: where words follow a column of numbers, since there programs that leave
// no room between columns would run the two together.
func numbersCentered(t *document.Table) bool {
	for i := 1; i < len(t.Columns); i++ {
		if t.Columns[i-1].Kind.Right() && !t.Columns[i].Kind.Right() {
			return true
		}
	}
	return false
}
