package main

import (
	"encoding/csv"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sizes"
	"eighthturn/internal/render"
)

// What is written reads back as it was; text that a spreadsheet would take for a formula has a mark before it, numbers do
// not.
func TestSpreadsheet(t *testing.T) {
	texts := []string{"plain", `say "x"`, "a,b", "two\nlines", "=1+1", "+1", "-1", "@x", "\t=1", "  =1", "\r=1", "＝1", "＋1", "é ½", "", "a=b", "1/4 in"}
	s := &spreadsheet{}
	s.row()
	for _, text := range texts {
		s.text(text)
	}
	s.row()
	s.decimal(-3 * measure.Inch / 2)
	s.length(measure.Inch / 4)
	s.number(-2)
	reader := csv.NewReader(strings.NewReader(s.String()))
	reader.FieldsPerRecord = -1
	rows, err := reader.ReadAll()
	if err != nil || len(rows) != 2 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	for i, text := range texts {
		want := text
		if slices.Contains([]int{4, 5, 6, 7, 8, 9, 10, 11, 12}, i) {
			want = "'" + text
		}
		if got := rows[0][i]; got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	if got, want := fmt.Sprint(rows[1]), "[-1.5000 0.2500 1/4 in -2]"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

// Every cell of a chart is a number, or text that no program takes for a number, a date or a formula.
func TestChartCells(t *testing.T) {
	number := regexp.MustCompile(`^-?[0-9]+(\.[0-9]{4})?$`)
	text := regexp.MustCompile(`^((about |under )?[0-9][0-9 ./]* (in|cm)|yes|no)$`)
	for _, units := range []measure.System{measure.Inches, measure.Centimetres} {
		for _, c := range charts() {
			made, err := c.make(sizes.Options{Units: units})
			if err != nil {
				t.Fatal(err)
			}
			rows, err := csv.NewReader(strings.NewReader(render.CSV(made.table()))).ReadAll() // all rows must be of one length
			if err != nil || len(rows) < 10 {
				t.Fatalf("%s: %d rows, %v", c.name, len(rows), err)
			}
			for i, name := range rows[0] {
				if !regexp.MustCompile(`^[a-z_]+$`).MatchString(name) || slices.Index(rows[0], name) != i {
					t.Errorf("%s: the heading %q", c.name, name)
				}
			}
			for _, row := range rows[1:] {
				for i, cell := range row {
					if !number.MatchString(cell) && !text.MatchString(cell) {
						t.Errorf("%s: %s is %q", c.name, rows[0][i], cell)
					}
				}
			}
		}
	}
}
