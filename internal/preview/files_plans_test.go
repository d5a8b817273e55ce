package preview

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
)

// savedTable is a saved cutting table as another reader has it: the headings, and each row by them.
func savedTable(t *testing.T, save func(*bytes.Buffer) error) (head []string, rows []map[string]string) {
	t.Helper()
	var b bytes.Buffer
	must(t, save(&b))
	all, err := csv.NewReader(&b).ReadAll()
	must(t, err)
	for _, cells := range all[1:] {
		row := map[string]string{}
		for i, c := range cells {
			row[all[0][i]] = c
		}
		rows = append(rows, row)
	}
	return all[0], rows
}

// wrongTable compares a table with the plan's own rows, column by column: numbers to a
// ten-thousandth, texts word by word.
func wrongTable(plan *cutting.Plan, head []string, rows []map[string]string) []string {
	unit, name := float64(measure.Inch), "_in"
	if plan.Units == measure.Centimetres {
		unit, name = float64(measure.Centimetre), "_cm"
	}
	var wrong []string
	columns := []string{"row", "fabric", "line", "what", "count"}
	for _, length := range cutting.TableLengths() {
		columns = append(columns, length+name, length)
	}
	if columns = append(columns, "strips", "pieces", "note"); !slices.Equal(head, columns) {
		wrong = append(wrong, fmt.Sprintf("the columns are %v", head))
	}
	want := cutting.Words{Plan: plan}.Table()
	if len(rows) != len(want) {
		return append(wrong, fmt.Sprintf("%d of %d rows", len(rows), len(want)))
	}
	for n, w := range want {
		row := rows[n]
		for i, length := range cutting.TableLengths() {
			got, err := strconv.ParseFloat(row[length+name], 64)
			if nm := w.Lengths[i]; nm == 0 && row[length+name]+row[length] != "" ||
				nm > 0 && (err != nil || math.Abs(got*unit-float64(nm)) > unit/10_000 || row[length] != plan.Units.Nearest(nm)) {
				wrong = append(wrong, fmt.Sprintf("row %d has %q and %q for a length %s of %d nm", n+1, row[length+name], row[length], length, nm))
			}
		}
		for column, text := range map[string]string{"row": w.Row, "fabric": w.Fabric, "line": w.Lines, "what": w.What, "note": w.Note, "count": fmt.Sprint(w.Count)} {
			if row[column] != text {
				wrong = append(wrong, fmt.Sprintf("row %d has %q for %s, not %q", n+1, row[column], column, text))
			}
		}
		for column, number := range map[string]int{"strips": w.Strips, "pieces": w.Pieces} {
			if number == 0 && row[column] != "" || number != 0 && row[column] != fmt.Sprint(number) {
				wrong = append(wrong, fmt.Sprintf("row %d has %q for %s, not %d", n+1, row[column], column, number))
			}
		}
	}
	return wrong
}

// TestCuttingTable: the table has the columns and rows of the plan's own, each piece once.
func TestCuttingTable(t *testing.T) {
	for name, top := range everyTop(t) {
		head, rows := savedTable(t, func(b *bytes.Buffer) error { return saveTable(plansOf(top), b) })
		plan, pieces := plansOf(top).cutting(), 0
		for _, wrong := range wrongTable(plan, head, rows) {
			t.Errorf("%s: %s", name, wrong)
		}
		for _, row := range rows {
			if row["row"] == "piece" {
				pieces++
			}
		}
		if pieces != len(plan.Lines) {
			t.Errorf("%s: %d of %d pieces", name, pieces, len(plan.Lines))
		}
	}
}

// TestCuttingTableCatches: a table with a column too few, another length, another name or a
// row too few is told from the plan's.
func TestCuttingTableCatches(t *testing.T) {
	for _, top := range everyTop(t) {
		plan := cutting.Build(top, cutting.Options{})
		for want, spoil := range map[string]func(head *[]string, rows *[]map[string]string){
			"the columns are": func(head *[]string, _ *[]map[string]string) { *head = (*head)[:len(*head)-1] },
			" for a length ":  func(_ *[]string, rows *[]map[string]string) { (*rows)[0]["along_cut"] = "1 in" },
			" for fabric, ":   func(_ *[]string, rows *[]map[string]string) { (*rows)[0]["fabric"] = "another" },
			" for pieces, ":   func(_ *[]string, rows *[]map[string]string) { (*rows)[len(plan.Fabrics)]["pieces"] = "" },
			" rows":           func(_ *[]string, rows *[]map[string]string) { *rows = (*rows)[1:] },
		} {
			head, rows := savedTable(t, func(b *bytes.Buffer) error { return saveTable(plansOf(top), b) })
			if spoil(&head, &rows); !strings.Contains(strings.Join(wrongTable(plan, head, rows), "\n"), want) {
				t.Errorf("%q is not found", want)
			}
		}
		return
	}
}

// TestTableText: what a spreadsheet would reckon with stays text.
func TestTableText(t *testing.T) {
	for text, want := range map[string]string{"harbour": "harbour", "=1+1": "'=1+1", " -2": "' -2", "＠x": "'＠x", "\t=1": "' =1", "1/2": "1/2", "": ""} {
		if got := tableText(text); got != want {
			t.Errorf("%q is written %q, wanted %q", text, got, want)
		}
	}
}
