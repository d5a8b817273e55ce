package render

import (
	"encoding/csv"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/document"
)

// armed are texts that a spreadsheet would reckon with, and whether it would.
func armed() map[string]bool {
	return map[string]bool{
		"plain": false, `say "x"`: false, "a,b": false, "=1+1": true, "+1": true, "-1": true, "@x": true, "\t=1": true, "  =1": true, "\r=1": true,
		"＝1": true, "＋1": true, "＠x": true, "é ½": false, "": false, "a=b": false, "1/4 in": false,
	}
}

// TestDisarmed: what a spreadsheet would reckon with gets a mark before it, and nothing else.
func TestDisarmed(t *testing.T) {
	for text, dangerous := range armed() {
		if want := map[bool]string{true: "'" + text, false: text}[dangerous]; disarmed(text) != want {
			t.Errorf("%q becomes %q, want %q", text, disarmed(text), want)
		}
	}
}

// TestCSV: every table is written with its heads, numbers as they are, texts disarmed, short rows filled up.
func TestCSV(t *testing.T) {
	table := document.Table{Columns: []document.Column{{Title: "what"}, {Title: "in", Kind: document.Lengths}, {Title: "note"}}}
	for text := range armed() {
		table.Rows = append(table.Rows, document.Row{Cells: []document.Cell{{Text: document.Plain(text)}, {Text: document.Plain("-1 in"), Number: "-1.0"}}})
	}
	d := document.Document{Title: "t", Sections: []document.Section{{Blocks: []document.Block{document.Section{Title: "inner", Blocks: []document.Block{table}}}}}}
	rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(CSV(d), byteOrderMark))).ReadAll()
	if err != nil || len(rows) != len(table.Rows)+1 || !slices.Equal(rows[0], []string{"what", "in", "note"}) {
		t.Fatalf("%q, %v", rows, err)
	}
	for _, row := range rows[1:] {
		if row[1] != "-1.0" || row[2] != "" || strings.IndexAny(strings.TrimSpace(row[0]), "=+-@＝＋－＠") == 0 {
			t.Errorf("%q", row)
		}
	}
}
