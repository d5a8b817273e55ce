package main

import (
	"encoding/csv"
	"strconv"
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/internal/render"
)

// spreadsheet is a table written as CSV (RFC 4180, but lines end as texts here do). A length takes two columns: a decimal
// number, which sums can be made of, and the same as text with its unit, which no program takes for a date.
type spreadsheet struct {
	units measure.System
	rows  [][]string // the first is the headings
}

// row begins another row.
func (s *spreadsheet) row() { s.rows = append(s.rows, nil) }

func (s *spreadsheet) cells(cells ...string) {
	last := len(s.rows) - 1
	s.rows[last] = append(s.rows[last], cells...)
}

// text is a cell of text that no program takes for a formula.
func (s *spreadsheet) text(text string) { s.cells(render.Disarmed(text)) }

func (s *spreadsheet) number(n int) { s.cells(strconv.Itoa(n)) }

// decimal is a length as a number alone, which may be below 0.
func (s *spreadsheet) decimal(nm measure.NM) { s.cells(measure.Decimal(nm, s.units, 4)) }

// length is a length as a number and as text.
func (s *spreadsheet) length(nm measure.NM) {
	s.decimal(nm)
	s.text(s.units.Nearest(nm))
}

// lengthNames are the headings of a length's two columns.
func (s *spreadsheet) lengthNames(names ...string) {
	for _, name := range names {
		s.cells(s.unitName(name), name)
	}
}

// unitName is a heading with its unit.
func (s *spreadsheet) unitName(name string) string {
	if s.units == measure.Centimetres {
		return name + "_cm"
	}
	return name + "_in"
}

// columnName is a name with characters that formulas would stumble over left out.
func columnName(name string) string { return strings.ReplaceAll(name, "-", "_") }

// String is the table as CSV.
func (s *spreadsheet) String() string {
	var b strings.Builder
	w := csv.NewWriter(&b)
	_ = w.WriteAll(s.rows) // writing to memory cannot fail
	return b.String()
}
