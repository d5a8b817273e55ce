package render

import (
	"regexp"
	"strings"
	"sync"

	"github.com/rivo/uniseg"

	"eighthturn/layout"
)

// terminalWidth is how many columns lines of terminal text have at the most; rows of tables may have a few more.
const (
	terminalWidth = 80
	widestRow     = 100
)

// mixedNumber is a whole number before a fraction, which stay together.
var mixedNumber = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`(\d) (\d+/\d)`) })

// numberUnit is a number before its unit, which stay together in a narrow column.
var numberUnit = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`(\d) (in|cm|yd|m)\b`) })

// Wrapped is text in lines of at most 80 columns, each indented and ended; a longer word has a line of its own. What blanks
// that do not break hold together stays on one line, and so do a whole number and its fraction, `-o` and its name.
func Wrapped(text, indent string) string { return wrappedTo(terminalWidth, text, indent) }

// wrappedTo is Wrapped in lines of at most so many columns.
func wrappedTo(columns int, text, indent string) string {
	var b strings.Builder
	line, width := indent, len(indent)
	text = strings.ReplaceAll(text, "-o ", "-o\u00a0")
	text = mixedNumber().ReplaceAllString(text, "$1\u00a0$2")
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '\t' }) {
		word = strings.ReplaceAll(word, "\u00a0", " ")
		w := uniseg.StringWidth(word)
		if width > len(indent) && width+1+w > columns {
			b.WriteString(line + "\n")
			line, width = indent, len(indent)
		}
		if width > len(indent) {
			line, width = line+" ", width+1
		}
		line, width = line+word, width+w
	}
	return b.String() + line + "\n"
}

// Aligned is rows of cells in columns, three blanks between them; the last cell of a row is not padded. Cells are made
// visible first. A cell that begins with a blank stands at the right of its column.
func Aligned(rows [][]string, indent string) string { return alignedBy(rows, indent, "   ") }

// alignedBy is Aligned with a gap of one's own.
func alignedBy(rows [][]string, indent, gap string) string {
	var widths []int
	for _, row := range rows {
		for i, cell := range row {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			widths[i] = max(widths[i], Columns(cell))
		}
	}
	var b strings.Builder
	for _, row := range rows {
		line := indent
		for i, cell := range row {
			if i > 0 {
				line += gap
			}
			pad := strings.Repeat(" ", widths[i]-Columns(cell))
			if strings.HasPrefix(cell, " ") {
				line += pad + cellText(cell)
			} else {
				line += cellText(cell) + pad
			}
		}
		b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	return b.String()
}

// Labeled is rows of a label and a text; the texts stand in a column, in as many lines as they need.
func Labeled(rows [][2]string, indent string) string {
	wide := 0
	for _, row := range rows {
		wide = max(wide, Columns(row[0]))
	}
	var b strings.Builder
	column := len(indent) + wide + 3
	for _, row := range rows {
		lines := Wrapped(layout.Visible(row[1]), strings.Repeat(" ", column))
		b.WriteString(indent + cellText(row[0]) + strings.Repeat(" ", wide-Columns(row[0])) + lines[len(indent)+wide:])
	}
	return b.String()
}

// cellText is a cell as it is written.
func cellText(cell string) string { return layout.Visible(strings.TrimPrefix(cell, " ")) }

// Columns is how many columns of a terminal a cell takes.
func Columns(cell string) int { return uniseg.StringWidth(cellText(cell)) }
