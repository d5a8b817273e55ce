package main

import (
	"eighthturn/internal/plan/cutting"
)

// cutsTable is a plan as a table: a row for every fabric that is bought, for every piece, for every strip set, and for
// every stretch of every strip, in the order to cut; then for binding, backing and batting.
func cutsTable(plan *cutting.Plan) *spreadsheet {
	s := &cutsSheet{spreadsheet{units: plan.Units}}
	s.row()
	s.cells("row", "fabric", "line", "what", "count")
	s.lengthNames(cutting.TableLengths()...)
	s.cells("strips", "pieces", "note")
	for _, r := range (cutting.Words{Plan: plan}).Table() {
		s.write(&r)
	}
	return &s.spreadsheet
}

type cutsSheet struct{ spreadsheet }

func (s *cutsSheet) write(r *cutting.TableRow) {
	s.row()
	s.cells(r.Row)
	s.text(r.Fabric)
	s.cells(r.Lines)
	s.text(r.What)
	s.number(r.Count)
	for _, l := range r.Lengths {
		if l > 0 {
			s.length(l)
		} else {
			s.cells("", "")
		}
	}
	s.part(r.Strips)
	s.part(r.Pieces)
	s.text(r.Note)
}

// part is a number that has no part in the row if it is 0.
func (s *cutsSheet) part(n int) {
	if n == 0 {
		s.cells("")
		return
	}
	s.number(n)
}
