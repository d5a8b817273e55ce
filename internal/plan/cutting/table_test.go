package cutting

import (
	"fmt"
	"testing"

	"eighthturn/internal/measure"
)

// wrongRows says which row of a plan's table has a length in a column that is not its own, or something else than the plan.
func wrongRows(p *Plan, rows []TableRow) error {
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
		count[r.Row]++
		own := map[int]bool{}
		for _, at := range mayHave[r.Row] {
			own[at] = true
		}
		for at, nm := range r.Lengths {
			if nm != 0 && !own[at] {
				return fmt.Errorf("row %d, %s: %s stands under %s", i, r.Row, p.text(nm), TableLengths()[at])
			}
		}
		if r.Row == "buy" {
			bought[r.Fabric] = r.Lengths[clothBuy]
			if l := r.Lengths; l[clothCut] > l[clothNeed] || l[clothNeed] > l[clothBuy] {
				return fmt.Errorf("%s: %s cut, %s needed, %s bought", r.Fabric, p.text(l[clothCut]), p.text(l[clothNeed]), p.text(l[clothBuy]))
			}
		}
		if r.Row == "backing" && r.Lengths[clothCut] > bought[r.Fabric] {
			return fmt.Errorf("the backing takes %s of %s, of which %s is bought", p.text(r.Lengths[clothCut]), r.Fabric, p.text(bought[r.Fabric]))
		}
	}
	for row, there := range map[string]bool{"binding": p.Binding != nil, "backing": p.Backing != nil, "batting": p.Batting != nil} {
		if there != (count[row] == 1) {
			return fmt.Errorf("%d rows of %s", count[row], row)
		}
	}
	if count["buy"] != len(p.Fabrics) || count["piece"] != len(p.Lines) {
		return fmt.Errorf("%d fabrics to buy, %d pieces", count["buy"], count["piece"])
	}
	return nil
}

// TestTableColumns: every length of a table stands under its own heading; binding, backing and batting have rows where the
// quilt has them.
func TestTableColumns(t *testing.T) {
	edges := 0
	for _, n := range append(sampleTops(), invented(40)...) {
		p := planned(n.Top, variants()[2])
		rows := Words{p}.Table()
		if err := wrongRows(p, rows); err != nil {
			t.Errorf("%s: %v", n.name, err)
			continue
		}
		for i := range rows {
			if r := &rows[i]; r.Row == "binding" {
				edges++
				if r.Fabric == "" || r.Count != 3 || r.Strips != 3*p.Binding.Strips || r.Lengths[alongCut] != p.Binding.Need {
					t.Errorf("%s: %+v", n.name, r)
				}
			}
		}
		rows[0].Lengths[stripWidthCut] = rows[0].Lengths[usableWidth]
		if wrongRows(p, rows) == nil {
			t.Errorf("%s: the cloth's width in the column of strips is not noticed", n.name)
		}
	}
	if edges == 0 {
		t.Error("no plan has a binding")
	}
}
