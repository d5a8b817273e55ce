package report

import (
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sizes"
)

// uncounted are the columns of tables for spreadsheets that hold numbers with no unit in their heading and are not said to hold counts: a
// program would show 17 wedges as 17.0.
func uncounted(d document.Document) (list []string) {
	for _, s := range d.Sections {
		for _, b := range s.Blocks {
			t, ok := b.(document.Table)
			for i := 0; ok && i < len(t.Columns); i++ {
				c := &t.Columns[i]
				if unit := c.Title[strings.LastIndex(c.Title, "_")+1:]; unit == "in" || unit == "cm" || unit == "yd" || unit == "m" || c.Kind == document.Counts {
					continue
				}
				for n := range t.Rows {
					if cells := t.Rows[n].Cells; i < len(cells) && cells[i].Number != "" {
						list = append(list, c.Title)
						break
					}
				}
			}
		}
	}
	return list
}

// TestCountsAreWhole: in the tables of charts and of cutting plans numbers have a unit, or are counts.
func TestCountsAreWhole(t *testing.T) {
	strips, err := sizes.Strips(sizes.Options{})
	if err != nil {
		t.Fatal(err)
	}
	tumblers, err := sizes.Tumblers(sizes.Options{})
	if err != nil {
		t.Fatal(err)
	}
	sides, err := sizes.Sides(sizes.Options{Units: measure.Centimetres})
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range []document.Document{CuttingSheets(usualPlans()[0].Plans), StripTable(strips), TumblerTable(tumblers), SideTable(sides)} {
		if list := uncounted(d); list != nil {
			t.Errorf("%s: %v", d.Title, list)
		}
	}
	d := StripTable(strips)
	table := d.Sections[0].Blocks[0].(document.Table)
	table.Columns[len(table.Columns)-1].Kind = document.Words
	if uncounted(d) == nil {
		t.Error("a count that is none is not noticed")
	}
}
