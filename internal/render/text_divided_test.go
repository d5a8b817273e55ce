package render

import (
	"fmt"
	"strings"
	"testing"

	"eighthturn/internal/document"
)

// TestWideTablesAreDivided: a table with long words has no row wider than it may be, every word in its order, numbers in the first
// line of their row.
func TestWideTablesAreDivided(t *testing.T) {
	long := strings.Repeat("corner squares and ", 8) + "binding"
	for columns := 3; columns < 6; columns++ {
		table := document.Table{Columns: []document.Column{{Title: "fabric"}, {Title: "buy", Kind: document.Lengths}}}
		for i := 2; i < columns; i++ {
			table.Columns = append(table.Columns, document.Column{Title: fmt.Sprint("used ", i)})
		}
		for n := range 4 {
			row := document.Row{Cells: []document.Cell{{Text: document.Plain(fmt.Sprintf("fabric-%d of a long name", n))}, {Text: document.Plain(fmt.Sprintf("%d1 1/8 yd", n))}}}
			for range columns - 2 {
				row.Cells = append(row.Cells, document.Cell{Text: document.Plain(long)})
			}
			table.Rows = append(table.Rows, row)
		}
		table.Columns = append(table.Columns, document.Column{Title: "usable width", Kind: document.Lengths})
		text := Text(document.Document{Title: "a", Sections: []document.Section{{Title: "b", Blocks: []document.Block{table}}}})
		words := map[string]int{}
		for _, line := range strings.Split(text, "\n") {
			if len(line) > widestRow {
				t.Errorf("%d columns: a row of %d: %s", columns, len(line), line)
			}
			for _, word := range strings.Fields(line) {
				words[word]++
			}
			if strings.Contains(line, "1/8 yd") && !strings.Contains(line, "fabric-") {
				t.Errorf("%d columns: a length stands away from its fabric: %s", columns, line)
			}
		}
		if want := 4 * 8 * (columns - 2); words["corner"] != want || words["squares"] != want || words["binding"] != 4*(columns-2) {
			t.Errorf("%d columns: %d corner, %d squares, expected %d", columns, words["corner"], words["squares"], want)
		}
	}
}
