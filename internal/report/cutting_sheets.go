package report

import (
	"slices"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/orders"
)

// CuttingTable is the cutting plan as one table for a spreadsheet, in the order to buy, to cut and to finish. A column means
// the same in every row, and has the name that it has in CuttingSheets. Of a layout with sizes it has the rows of each size, whose
// name stands first in them.
func CuttingTable(p *Plans) document.Document {
	c := newCuts(p)
	rows := c.table()
	if sizes := sizedCuts(p); len(sizes) > 0 {
		rows = nil
		for i, name := range p.SizeNames() {
			for _, r := range sizes[i].table() {
				r.size = name
				rows = append(rows, r)
			}
		}
	}
	return document.Document{Title: c.sheetsTitle(), Sections: []document.Section{{Blocks: []document.Block{c.sheet(rows, anyRow)}}}}
}

// CutsInSizes is the cutting plan for other programs, with those of all sizes where the layout has sizes.
type CutsInSizes struct {
	cutting.Plan
	BothWays []orders.Better `json:"both_ways,omitempty"` // the nearest layouts that use strip sets both ways round, where they save sets
	Sizes    []SizeCuts      `json:"sizes,omitempty"`
}

// SizeCuts is the cutting plan of a size.
type SizeCuts struct {
	Name      string        `json:"name"`
	AsWritten bool          `json:"as_written"`
	Plan      *cutting.Plan `json:"plan"`
}

// CutsForPrograms is the cutting plan of a top and those of its sizes.
func CutsForPrograms(p *Plans) *CutsInSizes {
	made := &CutsInSizes{Plan: *p.Cuts(), BothWays: p.bothWays()}
	names := p.SizeNames()
	for i, other := range p.Sized() {
		made.Sizes = append(made.Sizes, SizeCuts{names[i], i == 0, other.Cuts()})
	}
	return made
}

// CuttingSheets is the cutting plan as a workbook: what to buy, what to cut, how strip sets are made, the pieces, what finishes
// the quilt, and what each kit holds; of the rows and columns of CuttingTable each sheet has those that have a part in it.
func CuttingSheets(p *Plans) document.Document {
	c := newCuts(p)
	d := document.Document{Title: c.sheetsTitle()}
	rows := c.table()
	for _, s := range []struct {
		title string
		rows  []string
	}{
		{"Buy", []string{"buy"}},
		{"Cut", []string{"lengthwise", "cut", "fussy-cut"}},
		{"Strip sets", []string{"strip set", "strip of set"}},
		{"Pieces", []string{"piece"}},
		{"Finishing", []string{"binding", "backing", "batting"}},
		{"Kits", []string{"kit"}},
	} {
		t := c.sheet(rows, func(r *tableRow) bool { return slices.Contains(s.rows, r.row) })
		if len(t.Rows) > 0 {
			d.Sections = append(d.Sections, document.Section{Title: s.title, Blocks: []document.Block{filled(t)}})
		}
	}
	return c.withSizeSheets(d)
}

func (c *cuts) sheetsTitle() string {
	return c.plans.named("what to cut and what to buy, for " + c.quilts())
}

func anyRow(*tableRow) bool { return true }

// sheet is some of the rows as a table with all columns.
func (c *cuts) sheet(rows []tableRow, of func(*tableRow) bool) document.Table {
	l := &ledger{units: c.Units, sized: slices.ContainsFunc(rows, func(r tableRow) bool { return r.size != "" })}
	if l.sized {
		l.columns("size")
	}
	l.columns("row", "fabric", "lines", "what")
	for _, name := range []string{"buy_yd", "buy_m", "kit_yd", "kit_m", "kits_yd", "kits_m"} {
		l.numberColumn(name, document.Lengths, true)
	}
	counts, lengths := tableCounts(), tableLengths()
	for i, name := range counts {
		l.numberColumn(name, document.Counts, slices.Contains([]int{pieces, left, right, newStrips, units, lineUnits, sets, wedges, joinedStrips, panels}, i))
	}
	for i, name := range lengths {
		l.numberColumn(l.withUnit(name), document.Lengths, i == clothCut || i == clothNeed)
		l.columns(name)
	}
	l.columns("note")
	for i := range rows {
		if r := &rows[i]; of(r) {
			l.cut(r)
		}
	}
	return l.Table
}

// products are the columns that a workbook reckons of others, in the rows that have all of them.
func products() map[string][]string {
	return map[string][]string{
		"pieces": {"per_quilt", "quilts"}, "units": {"from_strips", "from_each"}, "wedges": {"strip_sets", "from_set"},
		"kits_yd": {"kit_yd", "quilts"}, "kits_m": {"kit_m", "quilts"},
	}
}

// cut adds a row; what is 0 has no part in it.
func (l *ledger) cut(r *tableRow) {
	l.row()
	if l.sized {
		l.text(r.size)
	}
	for _, text := range []string{r.row, r.fabric, r.lines, r.what} {
		l.text(text)
	}
	for _, a := range []amount{r.buy, r.kit, r.kits} {
		l.shop(a.yards, measure.Yard)
		l.shop(a.metres, measure.Metre)
	}
	for _, n := range r.counts {
		if n == 0 {
			l.text("")
			continue
		}
		l.count(n)
	}
	for _, nm := range r.lengths {
		if nm == 0 {
			l.text("")
			l.text("")
			continue
		}
		l.lengths(nm)
	}
	l.text(r.note)
}

// filled is a table with the columns alone in which something stands, and without the kind of its rows where that is one.
func filled(t document.Table) document.Table {
	var keep []int
	for i := range t.Columns {
		first := ""
		several := false
		for n, r := range t.Rows {
			text := r.Cells[i].Number + r.Cells[i].Text.String()
			several = several || n > 0 && text != first
			if n == 0 {
				first = text
			}
		}
		if several || first != "" && i > 0 {
			keep = append(keep, i)
		}
	}
	of := document.Table{Named: true}
	for _, i := range keep {
		of.Columns = append(of.Columns, t.Columns[i])
	}
	for _, r := range t.Rows {
		var cells []document.Cell
		for _, i := range keep {
			cells = append(cells, r.Cells[i])
		}
		of.Rows = append(of.Rows, document.Row{Cells: cells})
	}
	return of
}
