package cutting

import (
	"slices"
	"strings"

	"eighthturn/internal/measure"
)

// TableRow is a row of a plan as a table: a fabric to buy, a binding, backing or batting, a piece, a strip of a strip set, a
// lengthwise piece, or a stretch of a strip.
type TableRow struct {
	Row, Fabric string
	Lines       string // as people count them, with blanks between; "" for none
	What        string
	Count       int
	Lengths     rowLengths // 0 has no part in the row
	Strips      int        // 0 has no part, and so of Pieces
	Pieces      int
	Note        string
}

// The lengths of a row by their places.
const (
	acrossFinished = iota
	alongFinished
	acrossCut // of a binding the width of its strips, of a backing and a batting the width
	alongCut  // of a binding the least length, sewn together
	exactCut  // along, as geometry asks for it
	trimCut
	stripWidthCut
	stripLengthCut
	clothCut    // of the cloth's length, what is cut from it
	clothNeed   // the same with what is added for its end and for slips
	clothBuy    // rounded up to what shops sell
	usableWidth // of the cloth
	rowLength
)

type rowLengths [rowLength]measure.NM

// TableLengths are the headings of a table's lengths, in the order of a row's.
func TableLengths() []string {
	return []string{
		acrossFinished: "across_finished", alongFinished: "along_finished", acrossCut: "across_cut", alongCut: "along_cut", exactCut: "exact_cut", trimCut: "trim_cut",
		stripWidthCut: "strip_width_cut", stripLengthCut: "strip_length_cut", clothCut: "cloth_cut", clothNeed: "need", clothBuy: "buy", usableWidth: "usable_width",
	}
}

// Table is the plan as a table, in the order to buy, to cut and to finish.
func (w Words) Table() []TableRow {
	var list []TableRow
	for i := range w.Fabrics {
		f := &w.Fabrics[i]
		list = append(list, TableRow{Row: "buy", Fabric: f.Name, What: w.Shop(f.Purchase.Buy), Count: 1,
			Lengths: rowLengths{clothCut: f.Purchase.ExactCut, clothNeed: f.Purchase.Need, clothBuy: f.Purchase.Buy, usableWidth: f.UsableWidth},
			Strips:  f.StripCount, Note: w.OnHand(f.OnHand)})
	}
	for i := range w.Lines {
		l := &w.Lines[i]
		p := &l.Piece
		list = append(list, TableRow{Row: "piece", Fabric: w.Cloth(l), Lines: LineNumbers([]int{i}, " "), What: w.PieceName(l), Count: l.Units,
			Lengths: rowLengths{p.SideFinished, p.LengthFinished, p.AcrossCut, p.AlongCut, p.AlongExact, p.TrimCut}, Pieces: l.Pieces,
			Note: strings.TrimSuffix(p.Method.String()+"; "+w.Hands(l), "; ")})
	}
	for i := range w.Sets {
		list = append(list, w.setRows(i)...)
	}
	for i := range w.Fabrics {
		list = append(list, w.stripRows(&w.Fabrics[i])...)
	}
	return append(list, w.edgeRows()...)
}

// edgeRows are the binding, the backing and the batting: of each the size for one quilt, and how many quilts take it. Strips
// of a binding, panels of a backing and the cloth that they take are those of all quilts.
func (w Words) edgeRows() []TableRow {
	var list []TableRow
	if b := w.Binding; b != nil {
		list = append(list, TableRow{Row: "binding", Fabric: w.bindingFabric(), What: "strips joined on the slant", Count: w.Copies,
			Lengths: rowLengths{acrossCut: b.StripCut, alongCut: b.Need}, Strips: b.Strips * w.Copies, Note: w.several("sizes are for each quilt")})
	}
	if b := w.Backing; b != nil {
		way := &b.Ways[b.Less]
		f := &w.Fabrics[slices.IndexFunc(w.Fabrics, func(f Fabric) bool { return f.Index == w.BackingOf })]
		list = append(list, TableRow{Row: "backing", Fabric: f.Name, What: plural(way.Panels, "panel") + " of " + w.AtLeast(way.PanelCut), Count: w.Copies,
			Lengths: rowLengths{acrossCut: b.WidthCut, alongCut: b.HeightCut, clothCut: way.LengthCut * measure.NM(w.Copies), usableWidth: f.UsableWidth},
			Pieces:  way.Panels * w.Copies, Note: w.several("sizes are for each quilt")})
	}
	if b := w.Batting; b != nil {
		list = append(list, TableRow{Row: "batting", What: "batting", Count: w.Copies,
			Lengths: rowLengths{acrossCut: b.WidthCut, alongCut: b.HeightCut}, Note: w.several("sizes are for each quilt")})
	}
	return list
}

// bindingFabric is the name of the fabric whose strips are joined for the binding.
func (w Words) bindingFabric() string {
	for i := range w.Fabrics {
		for _, s := range w.Fabrics[i].Strips {
			if slices.ContainsFunc(s.Cuts, func(c Cut) bool { return c.Use == ForBinding }) {
				return w.Fabrics[i].Name
			}
		}
	}
	return ""
}

func (w Words) setRows(n int) []TableRow {
	var list []TableRow
	set := &w.Sets[n]
	for _, r := range set.Runs {
		for _, b := range set.Bands {
			list = append(list, TableRow{Row: "strip set", Fabric: w.Fabrics[b.Fabric].Name, What: w.SetName(n), Count: r.Sets,
				Lengths: rowLengths{acrossFinished: b.WidthFinished, acrossCut: b.WidthCut, alongCut: r.LengthCut, stripWidthCut: set.WidthCut, stripLengthCut: r.LengthCut}, Pieces: r.Wedges})
		}
	}
	return list
}

func (w Words) stripRows(f *Fabric) []TableRow {
	var list []TableRow
	for _, b := range f.Blocks {
		for _, c := range b.Columns {
			list = append(list, TableRow{Row: "lengthwise", Fabric: f.Name, Lines: LineNumbers([]int{c.Line}, " "), What: w.EdgingName(&w.Lines[c.Line]), Count: 1,
				Lengths: rowLengths{acrossCut: c.WidthCut, alongCut: c.LengthCut, clothCut: b.LengthCut, usableWidth: f.UsableWidth}})
		}
	}
	for i := range f.Strips {
		s := &f.Strips[i]
		for j := range s.Cuts {
			c := &s.Cuts[j]
			list = append(list, TableRow{Row: "cut", Fabric: f.Name, Lines: LineNumbers(c.Lines, " "), What: w.CutWords(c), Count: c.Units,
				Lengths: rowLengths{acrossCut: c.AcrossCut, alongCut: c.AlongCut, stripWidthCut: s.WidthCut, stripLengthCut: s.LengthCut}, Strips: s.Times})
		}
	}
	return list
}
