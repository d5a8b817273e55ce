package report

import (
	"fmt"
	"testing"

	"eighthturn/internal/measure"
)

// wrongRows says which row of a plan's table has a length in a column that is not its own, or something else than the plan.
func wrongRows(p *cuts, rows []tableRow) error {
	cloth := []int{clothCut, clothNeed, clothBuy, usableWidth}
	mayHave := map[string][]int{
		"buy": cloth, "binding": {acrossCut, alongCut}, "backing": {acrossCut, alongCut, clothCut, usableWidth}, "batting": {acrossCut, alongCut},
		"piece": {acrossFinished, alongFinished, acrossCut, alongCut, exactCut, trimCut}, "strip set": {acrossFinished, acrossCut, alongCut, stripWidthCut, stripLengthCut},
		"lengthwise": {acrossCut, alongCut, clothCut, usableWidth}, "cut": {acrossCut, alongCut, stripWidthCut, stripLengthCut},
	}
	count := map[string]int{}
	bought := map[string]measure.NM{}
	for i := range rows {
		r := &rows[i]
		count[r.row]++
		own := map[int]bool{}
		for _, at := range mayHave[r.row] {
			own[at] = true
		}
		for at, nm := range r.lengths {
			if nm != 0 && !own[at] {
				return fmt.Errorf("row %d, %s: %s stands under %s", i, r.row, p.length(nm), tableLengths()[at])
			}
		}
		if r.row == "buy" {
			bought[r.fabric] = r.lengths[clothBuy]
			if l := r.lengths; l[clothCut] > l[clothNeed] || l[clothNeed] > l[clothBuy] {
				return fmt.Errorf("%s: %s cut, %s needed, %s bought", r.fabric, p.length(l[clothCut]), p.length(l[clothNeed]), p.length(l[clothBuy]))
			}
		}
		if r.row == "backing" && r.lengths[clothCut] > bought[r.fabric] {
			return fmt.Errorf("the backing takes %s of %s, of which %s is bought", p.length(r.lengths[clothCut]), r.fabric, p.length(bought[r.fabric]))
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
	if count["buy"] != buy || count["piece"] != len(p.Lines) {
		return fmt.Errorf("%d fabrics to buy, %d pieces", count["buy"], count["piece"])
	}
	return nil
}

// TestTableColumns: every length of a table stands under its own heading; binding, backing and batting have rows where the
// quilt has them.
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
			if r := &rows[i]; r.row == "binding" {
				edges++
				if r.fabric == "" || r.count != p.Copies || r.strips != p.Copies*p.Binding.Strips || r.lengths[alongCut] != p.Binding.Need {
					t.Errorf("%s: %+v", n.name, r)
				}
			}
		}
		rows[0].lengths[stripWidthCut] = rows[0].lengths[usableWidth]
		if wrongRows(p, rows) == nil {
			t.Errorf("%s: the cloth's width in the column of strips is not noticed", n.name)
		}
	}
	if edges == 0 {
		t.Error("no plan has a binding")
	}
}
