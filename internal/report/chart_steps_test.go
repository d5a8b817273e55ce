package report

import (
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sizes"
)

// TestChartsGrowInLine: a chart has at most so many rows, and each row as much to fill in however many there are.
func TestChartsGrowInLine(t *testing.T) {
	const most = 500 // rows
	for name, make := range map[string]func(sizes.Options) (document.Document, error){
		"strips": func(o sizes.Options) (document.Document, error) {
			c, err := sizes.Strips(o)
			return tableOf(c, err, StripTable)
		},
		"sides": func(o sizes.Options) (document.Document, error) {
			c, err := sizes.Sides(o)
			return tableOf(c, err, SideTable)
		},
		"tumblers": func(o sizes.Options) (document.Document, error) {
			c, err := sizes.Tumblers(o)
			return tableOf(c, err, TumblerTable)
		},
	} {
		of := func(rows int) (cells int, err error) {
			from, step := 6*measure.Inch, measure.Inch/128
			d, err := make(sizes.Options{From: from, To: from + measure.NM(rows-1)*step, Step: step})
			for _, s := range d.Sections {
				cells += cellsOf(s.Blocks)
			}
			return cells, err
		}
		one, err := of(10)
		many, errOfMany := of(most)
		if err != nil || errOfMany != nil || one < 30 || many > one*most/10 {
			t.Errorf("%s: %d cells in 10 rows, %d in %d: %v, %v", name, one, many, most, err, errOfMany)
		}
		if _, err := of(most + 1); err == nil {
			t.Errorf("%s: more than %d rows are made", name, most)
		}
	}
}

func tableOf[T any](chart T, err error, table func(T) document.Document) (document.Document, error) {
	if err != nil {
		return document.Document{}, err
	}
	return table(chart), nil
}

// cellsOf counts the cells of tables, in sections within sections too.
func cellsOf(list []document.Block) (cells int) {
	for _, b := range list {
		switch b := b.(type) {
		case document.Section:
			cells += cellsOf(b.Blocks)
		case document.Table:
			for _, r := range b.Rows {
				cells += len(r.Cells)
			}
		}
	}
	return cells
}
