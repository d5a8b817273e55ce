package render

import (
	"encoding/csv"
	"strings"
	"unicode/utf8"

	"eighthturn/internal/document"
	"eighthturn/layout"
)

// byteOrderMark stands before a CSV text that has other letters than those of ASCII: spreadsheets read it in the system's own
// letters else.
const byteOrderMark = "\ufeff"

// CSV writes the tables of a document, one under the other with an empty line between them (RFC 4180, but lines end as texts
// here do). Cells that have a number give that; text is made visible, and no program takes it for a formula.
func CSV(d document.Document) string { return CSVFor(d, Locale{}) }

// CSVFor is CSV by a locale's habits.
func CSVFor(d document.Document, locale Locale) string {
	var b strings.Builder
	for _, s := range d.Print().Sections {
		for _, block := range s.Blocks {
			t, ok := block.(document.Table)
			if !ok {
				continue
			}
			if b.Len() > 0 {
				b.WriteByte('\n')
			}
			w := csv.NewWriter(&b)
			w.Comma = locale.separator()
			_ = w.WriteAll(tableRecords(t, locale)) // writing to memory cannot fail
		}
	}
	text := b.String()
	if strings.ContainsFunc(text, func(r rune) bool { return r >= utf8.RuneSelf }) {
		return byteOrderMark + text
	}
	return text
}

// tableRecords are a table's heads and rows, each as wide as the table.
func tableRecords(t document.Table, locale Locale) [][]string {
	head := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		head[i] = c.Title
	}
	records := [][]string{head}
	for _, r := range t.Rows {
		row := make([]string, len(t.Columns))
		for i, c := range r.Cells {
			if row[i] = locale.number(c.Number); c.Number == "" {
				row[i] = disarmed(layout.Visible(c.Text.String()))
			}
		}
		records = append(records, row)
	}
	return records
}

// disarmed is text that no spreadsheet takes for a formula: an apostrophe keeps what begins like one from it, as spreadsheets
// themselves write it.
func disarmed(text string) string {
	if formulaLike(text) {
		return "'" + text
	}
	return text
}

// formulaLike says whether a spreadsheet would reckon with a text.
func formulaLike(text string) bool {
	return strings.IndexAny(strings.TrimLeft(text, " \t\r\n"), "=+-@＝＋－＠") == 0 || strings.HasPrefix(text, "\t") || strings.HasPrefix(text, "\r")
}
