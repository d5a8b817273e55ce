package report

import (
	"fmt"
	"math/big"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilttest/judges"
)

// wrongRows says which row of a plan's table has a number in a column that is not its own, or something else than the plan.
func wrongRows(p *cuts, rows []tableRow) error {
	mayHave := map[string][]int{
		"buy": {clothCut, clothNeed, usableWidth}, "kit": {usableWidth}, "binding": {joinedCut, stripWidthCut}, "batting": {acrossCut, alongCut},
		"backing": {acrossCut, alongCut, panelCut, backingCut, usableWidth}, "piece": {acrossFinished, alongFinished, acrossCut, alongCut, exactCut, trimCut},
		"strip set": {stripWidthCut, stripLengthCut}, "strip of set": {acrossFinished, acrossCut}, "lengthwise": {acrossCut, alongCut, blockCut, usableWidth},
		"cut": {acrossCut, alongCut, stretchCut, stripWidthCut, stripLengthCut}, "fussy-cut": {stripWidthCut, stripLengthCut},
	}
	mayCount := map[string][]int{
		"kit": {quilts}, "binding": {quilts, joinedStrips}, "batting": {quilts}, "backing": {quilts, panels}, "piece": {quilts, perQuilt, pieces, left, right, lineUnits},
		"strip set": {sets, fromSet, wedges}, "strip of set": {band}, "lengthwise": {units}, "cut": {newStrips, fromStrips, fromEach, units}, "fussy-cut": {newStrips, fromStrips, fromEach, units},
	}
	count := map[string]int{}
	for i := range rows {
		r := &rows[i]
		count[r.row]++
		for at, nm := range r.lengths {
			if nm != 0 && !slices.Contains(mayHave[r.row], at) {
				return fmt.Errorf("row %d, %s: %s stands under %s", i, r.row, p.length(nm), tableLengths()[at])
			}
		}
		for at, n := range r.counts {
			if n != 0 && !slices.Contains(mayCount[r.row], at) {
				return fmt.Errorf("row %d, %s: %d stands under %s", i, r.row, n, tableCounts()[at])
			}
		}
		if (r.buy != amount{}) != (r.row == "buy" && r.lengths[clothNeed] > 0) || (r.kit != amount{} || r.kits != amount{}) && r.row != "kit" || r.kits != r.kit.times(p.Copies) {
			return fmt.Errorf("row %d, %s: another row's fabric to buy", i, r.row)
		}
		if l := r.lengths; r.row == "buy" && (l[clothCut] > l[clothNeed] || l[clothNeed] > r.buy.yards || l[clothNeed] > r.buy.metres) {
			return fmt.Errorf("%s: %s cut, %s needed, %v bought", r.fabric, p.length(l[clothCut]), p.length(l[clothNeed]), r.buy)
		}
	}
	for row, there := range map[string]bool{"binding": p.Binding != nil, "backing": p.Backing != nil, "batting": p.Batting != nil} {
		if there != (count[row] == 1) {
			return fmt.Errorf("%d rows of %s", count[row], row)
		}
	}
	buy := len(p.Fabrics)
	if p.BackingBuy.Buy > 0 {
		buy++ // the backing of your choice
	}
	if count["buy"] != buy || count["kit"] != buy || count["piece"] != len(p.Lines) {
		return fmt.Errorf("%d fabrics to buy, %d in a kit, %d pieces", count["buy"], count["kit"], count["piece"])
	}
	if len(p.Faults) > 0 {
		return nil // a plan without strips for some lines
	}
	return wrongSums(p, rows)
}

// wrongSums says which column of the table adds up to something else than the plan.
func wrongSums(p *cuts, rows []tableRow) error {
	var all rowCounts
	ofLine := make([]int, len(p.Lines))
	shared := make([]bool, len(p.Lines))
	for i := range rows {
		r := &rows[i]
		for at, n := range r.counts {
			all[at] += n
		}
		var n int
		if fmt.Sscan(r.lines, &n); r.counts[units] == 0 {
			continue
		}
		if strings.Contains(r.lines, " ") {
			for _, word := range strings.Fields(r.lines) {
				fmt.Sscan(word, &n)
				shared[n-1] = true
			}
		} else if r.lines != "" {
			ofLine[n-1] += r.counts[units]
		}
	}
	strips, wanted := 0, 0
	for i := range p.Fabrics {
		strips += p.Fabrics[i].StripCount
		for k := range p.Fabrics[i].FromPrint {
			strips += len(p.Fabrics[i].FromPrint[k].Strips) * p.Fabrics[i].FromPrint[k].Times
		}
	}
	for i := range p.Lines {
		l := &p.Lines[i]
		wanted += l.Pieces
		if m := l.Piece.Method; !shared[i] && m != cutting.Joined && l.Set < 0 && ofLine[i] != l.Units {
			return fmt.Errorf("line %d: %d units are cut, %d wanted", i+1, ofLine[i], l.Units)
		}
	}
	if all[newStrips] != strips || all[pieces] != wanted {
		return fmt.Errorf("%d strips and %d pieces, not %d and %d", all[newStrips], all[pieces], strips, wanted)
	}
	return nil
}

// TestTableColumns: every number of a table stands under its own heading, and columns add up to what the plan has; binding,
// backing and batting have rows where the quilt has them.
func TestTableColumns(t *testing.T) {
	edges := 0
	for _, n := range everyPlan() {
		p := newCuts(n.Plans)
		rows := p.table()
		if err := wrongRows(p, rows); err != nil {
			t.Errorf("%s: %v", n.name, err)
			continue
		}
		for i := range rows {
			r := &rows[i]
			if r.row == "binding" {
				edges++
				if r.fabric == "" || r.counts[quilts] != p.Copies || r.counts[joinedStrips] != p.Copies*p.Binding.Strips || r.lengths[joinedCut] != p.Binding.Need {
					t.Errorf("%s: %+v", n.name, r)
				}
			}
		}
		for _, broken := range []func([]tableRow){
			func(rows []tableRow) { rows[0].lengths[stripWidthCut] = rows[0].lengths[usableWidth] },
			func(rows []tableRow) { rows[0].counts[newStrips]++ },
			func(rows []tableRow) { rows[0].kits = amount{1, 1} },
		} {
			list := slices.Clone(rows)
			if broken(list); wrongRows(p, list) == nil {
				t.Errorf("%s: what stands in the wrong column is not noticed", n.name)
			}
		}
	}
	if edges == 0 {
		t.Error("no plan has a binding")
	}
}

// wrongSheet says which number of a sheet is not the product of its factors, and which column is empty.
func wrongSheet(t *document.Table) error {
	at := map[string]int{}
	for i, c := range t.Columns {
		at[c.Title] = i
	}
	for i, c := range t.Columns {
		filled := false
		for _, r := range t.Rows {
			cell := r.Cells[i]
			filled = filled || cell.Number != "" || cell.Text.String() != ""
			product := big.NewRat(1, 1)
			for _, factor := range c.Factors {
				f, there := at[factor]
				if !there || r.Cells[f].Number == "" || cell.Number == "" {
					product = nil
					break
				}
				n, _ := new(big.Rat).SetString(r.Cells[f].Number)
				product.Mul(product, n)
			}
			if len(c.Factors) > 0 && product != nil {
				if n, _ := new(big.Rat).SetString(cell.Number); n.Cmp(product) != 0 {
					return fmt.Errorf("%s: %s is not the product of %v, %s", c.Title, cell.Number, c.Factors, product.FloatString(4))
				}
			}
		}
		if !filled {
			return fmt.Errorf("%s is empty", c.Title)
		}
	}
	return nil
}

// TestCuttingSheets: every row of the table stands in one sheet, with all that it has; no column is empty, and what is said to be
// a product is one.
func TestCuttingSheets(t *testing.T) {
	said := func(tables ...document.Table) (rows, cells int) {
		for _, t := range tables {
			rows += len(t.Rows)
			for _, r := range t.Rows {
				for i, c := range r.Cells {
					if t.Columns[i].Title != "row" && c.Number+c.Text.String() != "" {
						cells++
					}
				}
			}
		}
		return rows, cells
	}
	products := 0
	for _, n := range judges.Some(everyPlan(), 40) {
		var tables []document.Table
		for _, s := range CuttingSheets(n.Plans).Sections {
			sheet := s.Blocks[0].(document.Table)
			if slices.Contains(sizeSheets(), s.Title) {
				continue // of all sizes, whose laws are TestSizesAreThePlans
			}
			tables = append(tables, sheet)
			if err := wrongSheet(&sheet); err != nil {
				t.Errorf("%s, %s: %v", n.name, s.Title, err)
			}
			if at := slices.IndexFunc(sheet.Columns, func(c document.Column) bool { return c.Title == "pieces" }); at >= 0 && sheet.Rows[0].Cells[at].Number != "" {
				products++
				sheet.Rows[0].Cells[at].Number += "1"
				if wrongSheet(&sheet) == nil {
					t.Errorf("%s: a wrong product is not noticed", n.name)
				}
			}
		}
		rows, cells := said(tables...)
		one := *n.Plans // the table has the rows of all sizes
		top := *one.Top
		top.Sizes, one.Top, one.made = nil, &top, &made{}
		if allRows, allCells := said(CuttingTable(&one).Sections[0].Blocks[0].(document.Table)); rows != allRows || cells != allCells {
			t.Errorf("%s: the sheets have %d rows with %d cells, the table %d with %d", n.name, rows, cells, allRows, allCells)
		}
	}
	if products == 0 {
		t.Error("no sheet has pieces")
	}
}

// TestAmounts: a purchase in the other unit is what is needed, rounded up as shops do that sell by it.
func TestAmounts(t *testing.T) {
	for _, c := range []struct {
		units       measure.System
		buy, need   measure.NM
		yards, m100 int64 // in eighths of a yard, in centimetres
	}{
		{measure.Inches, measure.Yard, 36 * measure.Inch, 8, 100}, // 0.9144 m
		{measure.Inches, 9 * measure.Yard / 8, 79 * measure.Inch / 2, 9, 110},
		{measure.Centimetres, measure.Metre, 92 * measure.Centimetre, 9, 100},
	} {
		a := (&cuts{Plan: &cutting.Plan{Units: c.units}}).amount(c.buy, c.need)
		if a.yards != measure.NM(c.yards)*measure.Yard/8 || a.metres != measure.NM(c.m100)*measure.Centimetre {
			t.Errorf("%+v: %v", c, a)
		}
	}
}
