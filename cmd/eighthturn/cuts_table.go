package main

import (
	"strings"

	"eighthturn/cutting"
	"eighthturn/measure"
)

// cutsTable is a plan as a table: a row for everything that is bought, for every piece, for every strip set, and for
// every stretch of every strip, in the order to cut.
func cutsTable(plan *cutting.Plan) *spreadsheet {
	s := &cutsSheet{spreadsheet{units: plan.Units}, cutPage{plan}}
	s.row()
	s.cells("row", "fabric", "line", "what", "count")
	s.lengthNames("across_finished", "along_finished", "across_cut", "along_cut", "exact_cut", "trim_cut", "strip_width_cut", "strip_length_cut")
	s.cells("strips", "pieces", "note")
	for i := range plan.Fabrics {
		s.purchase(&plan.Fabrics[i])
	}
	for i := range plan.Lines {
		s.line(&plan.Lines[i])
	}
	for i := range plan.Sets {
		s.set(i)
	}
	for i := range plan.Fabrics {
		s.strips(&plan.Fabrics[i])
	}
	return &s.spreadsheet
}

type cutsSheet struct {
	spreadsheet
	page cutPage
}

// lengths writes eight lengths; those that are 0 have no part in the row.
func (s *cutsSheet) lengths(list ...measure.NM) {
	for i := range 8 {
		if i < len(list) && list[i] > 0 {
			s.length(list[i])
		} else {
			s.cells("", "")
		}
	}
}

func (s *cutsSheet) head(row, fabric, line, what string, count int) {
	s.row()
	s.cells(row)
	s.text(fabric)
	s.cells(line)
	s.text(what)
	s.number(count)
}

func (s *cutsSheet) purchase(f *cutting.Fabric) {
	s.head("buy", f.Name, "", s.page.shop(f.Purchase.Buy), 1)
	s.lengths(0, 0, 0, f.Purchase.Buy, f.Purchase.ExactCut, 0, f.UsableWidth)
	s.number(f.StripCount)
	s.cells("")
	s.text(s.page.onHand(f.OnHand))
}

func (s *cutsSheet) line(l *cutting.Line) {
	p := &l.Piece
	s.head("piece", s.page.cloth(l), lineNumbers([]int{l.Number}), s.page.piece(l), l.Units)
	s.lengths(p.SideFinished, p.LengthFinished, p.AcrossCut, p.AlongCut, p.AlongExact, p.TrimCut)
	s.cells("")
	s.number(l.Pieces)
	s.text(strings.TrimSuffix(p.Method.String()+"; "+s.page.hands(l), "; "))
}

func (s *cutsSheet) set(n int) {
	set := &s.page.Sets[n]
	for _, r := range set.Runs {
		for _, b := range set.Bands {
			s.head("strip set", s.page.Fabrics[b.Fabric].Name, "", s.page.SetName(n), r.Sets)
			s.lengths(b.WidthFinished, 0, b.WidthCut, r.LengthCut, 0, 0, set.WidthCut, r.LengthCut)
			s.cells("")
			s.number(r.Wedges)
			s.cells("")
		}
	}
}

func (s *cutsSheet) strips(f *cutting.Fabric) {
	for _, b := range f.Blocks {
		for _, c := range b.Columns {
			s.head("lengthwise", f.Name, lineNumbers([]int{c.Line}), s.page.EdgingName(&s.page.Lines[c.Line]), 1)
			s.lengths(0, 0, c.WidthCut, c.LengthCut, 0, 0, f.UsableWidth, b.LengthCut)
			s.cells("", "", "")
		}
	}
	for i := range f.Strips {
		strip := &f.Strips[i]
		for j := range strip.Cuts {
			c := &strip.Cuts[j]
			s.head("cut", f.Name, lineNumbers(c.Lines), s.page.CutWords(c), c.Units)
			s.lengths(0, 0, c.AcrossCut, c.AlongCut, 0, 0, strip.WidthCut, strip.LengthCut)
			s.number(strip.Times)
			s.cells("", "")
		}
	}
}

// lineNumbers are lines as people count them.
func lineNumbers(list []int) string {
	return strings.Join(mapped(list, func(n int) string { return numberText(n + 1) }), " ")
}
