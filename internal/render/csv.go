package render

import (
	"encoding/csv"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/layout"
)

// CSV writes the tables of a document, one under the other with an empty line between them (RFC 4180, but lines end as texts
// here do). Cells that have a number give that; text is made visible, and no program takes it for a formula.
func CSV(d document.Document) string {
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
			_ = w.WriteAll(tableRecords(t)) // writing to memory cannot fail
		}
	}
	return b.String()
}

// tableRecords are a table's heads and rows, each as wide as the table.
func tableRecords(t document.Table) [][]string {
	head := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		head[i] = c.Title
	}
	records := [][]string{head}
	for _, r := range t.Rows {
		row := make([]string, len(t.Columns))
		for i, c := range r.Cells {
			if row[i] = c.Number; c.Number == "" {
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
	if strings.IndexAny(strings.TrimLeft(text, " \t\r\n"), "=+-@＝＋－＠") == 0 || strings.HasPrefix(text, "\t") || strings.HasPrefix(text, "\r") {
		return "'" + text
	}
	return text
}
