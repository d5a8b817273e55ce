package cutting

import (
	"strings"

	"eighthturn/measure"
)

// TableRow is a row of a plan as a table: something to buy, a piece, a strip of a strip set, a lengthwise piece, or a stretch
// of a strip.
type TableRow struct {
	Row, Fabric string
	Lines       string // as people count them, with blanks between; "" for none
	What        string
	Count       int
	Lengths     [len(tableLengths)]measure.NM // as TableLengths names them; 0 has no part in the row
	Strips      int                           // 0 has no part, and so of Pieces
	Pieces      int
	Note        string
}

var tableLengths = [...]string{"across_finished", "along_finished", "across_cut", "along_cut", "exact_cut", "trim_cut", "strip_width_cut", "strip_length_cut"}

// TableLengths are the headings of a table's lengths, in the order of a row's.
func TableLengths() []string { return tableLengths[:] }

// Table is the plan as a table, in the order to buy and to cut.
func (w Words) Table() []TableRow {
	var list []TableRow
	for i := range w.Fabrics {
		f := &w.Fabrics[i]
		list = append(list, TableRow{Row: "buy", Fabric: f.Name, What: w.Shop(f.Purchase.Buy), Count: 1,
			Lengths: [...]measure.NM{3: f.Purchase.Buy, 4: f.Purchase.ExactCut, 6: f.UsableWidth, 7: 0}, Strips: f.StripCount, Note: w.OnHand(f.OnHand)})
	}
	for i := range w.Lines {
		l := &w.Lines[i]
		p := &l.Piece
		list = append(list, TableRow{Row: "piece", Fabric: w.Cloth(l), Lines: LineNumbers([]int{i}, " "), What: w.PieceName(l), Count: l.Units,
			Lengths: [...]measure.NM{p.SideFinished, p.LengthFinished, p.AcrossCut, p.AlongCut, p.AlongExact, p.TrimCut, 0, 0}, Pieces: l.Pieces,
			Note: strings.TrimSuffix(p.Method.String()+"; "+w.Hands(l), "; ")})
	}
	for i := range w.Sets {
		list = append(list, w.setRows(i)...)
	}
	for i := range w.Fabrics {
		list = append(list, w.stripRows(&w.Fabrics[i])...)
	}
	return list
}

func (w Words) setRows(n int) []TableRow {
	var list []TableRow
	set := &w.Sets[n]
	for _, r := range set.Runs {
		for _, b := range set.Bands {
			list = append(list, TableRow{Row: "strip set", Fabric: w.Fabrics[b.Fabric].Name, What: w.SetName(n), Count: r.Sets,
				Lengths: [...]measure.NM{b.WidthFinished, 0, b.WidthCut, r.LengthCut, 0, 0, set.WidthCut, r.LengthCut}, Pieces: r.Wedges})
		}
	}
	return list
}

func (w Words) stripRows(f *Fabric) []TableRow {
	var list []TableRow
	for _, b := range f.Blocks {
		for _, c := range b.Columns {
			list = append(list, TableRow{Row: "lengthwise", Fabric: f.Name, Lines: LineNumbers([]int{c.Line}, " "), What: w.EdgingName(&w.Lines[c.Line]), Count: 1,
				Lengths: [...]measure.NM{2: c.WidthCut, 3: c.LengthCut, 6: f.UsableWidth, 7: b.LengthCut}})
		}
	}
	for i := range f.Strips {
		s := &f.Strips[i]
		for j := range s.Cuts {
			c := &s.Cuts[j]
			list = append(list, TableRow{Row: "cut", Fabric: f.Name, Lines: LineNumbers(c.Lines, " "), What: w.CutWords(c), Count: c.Units,
				Lengths: [...]measure.NM{2: c.AcrossCut, 3: c.AlongCut, 6: s.WidthCut, 7: s.LengthCut}, Strips: s.Times})
		}
	}
	return list
}
