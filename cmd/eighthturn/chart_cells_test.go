package main

import (
	"encoding/csv"
	"regexp"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sizes"
	"eighthturn/internal/render"
)

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
