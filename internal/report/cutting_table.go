package report

import (
	"slices"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
)

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

// tableLengths are the headings of a table's lengths, in the order of a row's.
func tableLengths() [rowLength]string {
	return [rowLength]string{
		acrossFinished: "across_finished", alongFinished: "along_finished", acrossCut: "across_cut", alongCut: "along_cut", exactCut: "exact_cut", trimCut: "trim_cut",
		stripWidthCut: "strip_width_cut", stripLengthCut: "strip_length_cut", clothCut: "cloth_cut", clothNeed: "need", clothBuy: "buy", usableWidth: "usable_width",
	}
}

// tableRow is a row of a plan as a table: a fabric to buy, a binding, backing or batting, a piece, a strip of a strip set, a
// lengthwise piece, or a stretch of a strip.
type tableRow struct {
	row, fabric string
	lines       string // as people count them, with blanks between; "" for none
	what        string
	count       int
	lengths     [rowLength]measure.NM // 0 has no part in the row
	strips      int                   // 0 has no part, and so of pieces
	pieces      int
	note        string
}

type rowLengths = [rowLength]measure.NM

// CuttingTable is the cutting plan as one table for a spreadsheet, in the order to buy, to cut and to finish.
func CuttingTable(p *Plans) document.Document {
	c := newCuts(p)
	l := &ledger{units: c.Units}
	lengths := tableLengths()
	l.columns("row", "fabric", "line", "what", "count")
	l.lengthColumns(lengths[:]...)
	l.columns("strips", "pieces", "note")
	for _, r := range c.table() {
		l.cut(&r)
	}
	return l.document(p.named("what to cut and what to buy, for " + c.quilts()))
}

// cut adds a row; what is 0 has no part in it.
func (l *ledger) cut(r *tableRow) {
	l.row()
	for _, text := range []string{r.row, r.fabric, r.lines, r.what} {
		l.text(text)
	}
	l.count(r.count)
	for _, nm := range r.lengths {
		if nm == 0 {
			l.text("")
			l.text("")
			continue
		}
		l.lengths(nm)
	}
	for _, n := range []int{r.strips, r.pieces} {
		if n == 0 {
			l.text("")
			continue
		}
		l.count(n)
	}
	l.text(r.note)
}

func (c *cuts) table() []tableRow {
	var list []tableRow
	for i := range c.Fabrics {
		f := &c.Fabrics[i]
		list = append(list, tableRow{row: "buy", fabric: f.Name, what: c.Units.Shop(f.Purchase.Buy), count: 1,
			lengths: rowLengths{clothCut: f.Purchase.ExactCut, clothNeed: f.Purchase.Need, clothBuy: f.Purchase.Buy, usableWidth: f.UsableWidth},
			strips:  f.StripCount, note: c.onHand(f.OnHand)})
	}
	if b := c.BackingBuy; b.Buy > 0 {
		list = append(list, tableRow{row: "buy", fabric: chosenBacking, what: c.Units.Shop(b.Buy), count: 1,
			lengths: rowLengths{clothCut: b.ExactCut, clothNeed: b.Need, clothBuy: b.Buy, usableWidth: c.Backing.UsableWidth}})
	}
	for i := range c.Lines {
		l := &c.Lines[i]
		p := &l.Piece
		list = append(list, tableRow{row: "piece", fabric: c.cloth(l), lines: lineNumbers([]int{i}, " "), what: pieceName(l), count: l.Units,
			lengths: rowLengths{finishedAcross(p), finishedAlong(p), p.AcrossCut, p.AlongCut, p.AlongExact, p.TrimCut}, pieces: l.Pieces,
			note: strings.TrimSuffix(methodName(p.Method)+"; "+hands(l), "; ")})
	}
	for i := range c.Sets {
		list = append(list, c.setRows(i)...)
	}
	for i := range c.Fabrics {
		list = append(list, c.stripRows(&c.Fabrics[i])...)
	}
	return append(list, c.edgeRows()...)
}

// edgeRows are the binding, the backing and the batting: of each the size for one quilt, and how many quilts take it. Strips
// of a binding, panels of a backing and the cloth that they take are those of all quilts.
func (c *cuts) edgeRows() []tableRow {
	var list []tableRow
	note := c.several("sizes are for each quilt")
	if b := c.Binding; b != nil {
		list = append(list, tableRow{row: "binding", fabric: c.bindingFabric(), what: "strips joined with diagonal seams", count: c.Copies,
			lengths: rowLengths{acrossCut: b.StripCut, alongCut: b.Need}, strips: b.Strips * c.Copies, note: note})
	}
	if b := c.Backing; b != nil {
		way := &b.Ways[b.Less]
		name := chosenBacking
		if at := slices.IndexFunc(c.Fabrics, func(f cutting.Fabric) bool { return f.Index == c.BackingOf }); at >= 0 {
			name = c.Fabrics[at].Name
		}
		list = append(list, tableRow{row: "backing", fabric: name, what: measure.Count(way.Panels, "panel") + " of " + c.Units.AtLeast(way.PanelCut), count: c.Copies,
			lengths: rowLengths{acrossCut: b.WidthCut, alongCut: b.HeightCut, clothCut: way.LengthCut * measure.NM(c.Copies), usableWidth: b.UsableWidth},
			pieces:  way.Panels * c.Copies, note: note})
	}
	if b := c.Batting; b != nil {
		list = append(list, tableRow{row: "batting", what: "batting", count: c.Copies, lengths: rowLengths{acrossCut: b.WidthCut, alongCut: b.HeightCut}, note: note})
	}
	return list
}

// bindingFabric is the name of the fabric whose strips are joined for the binding.
func (c *cuts) bindingFabric() string {
	for i := range c.Fabrics {
		for _, s := range c.Fabrics[i].Strips {
			if slices.ContainsFunc(s.Cuts, func(k cutting.Cut) bool { return k.Use == cutting.ForBinding }) {
				return c.Fabrics[i].Name
			}
		}
	}
	return ""
}

func (c *cuts) setRows(n int) []tableRow {
	var list []tableRow
	set := &c.Sets[n]
	for _, r := range set.Runs {
		for _, b := range set.Bands {
			list = append(list, tableRow{row: "strip set", fabric: c.Fabrics[b.Fabric].Name, what: c.SetName(n), count: r.Sets,
				lengths: rowLengths{acrossFinished: b.WidthFinished, acrossCut: b.WidthCut, alongCut: r.LengthCut, stripWidthCut: set.WidthCut, stripLengthCut: r.LengthCut}, pieces: r.Wedges})
		}
	}
	return list
}

func (c *cuts) stripRows(f *cutting.Fabric) []tableRow {
	var list []tableRow
	for _, b := range f.Blocks {
		for _, column := range b.Columns {
			list = append(list, tableRow{row: "lengthwise", fabric: f.Name, lines: lineNumbers([]int{column.Line}, " "), what: edgingName(&c.Lines[column.Line]), count: 1,
				lengths: rowLengths{acrossCut: column.WidthCut, alongCut: column.LengthCut, clothCut: b.LengthCut, usableWidth: f.UsableWidth}})
		}
	}
	for i := range f.Strips {
		s := &f.Strips[i]
		for j := range s.Cuts {
			k := &s.Cuts[j]
			list = append(list, tableRow{row: "cut", fabric: f.Name, lines: lineNumbers(k.Lines, " "), what: c.cutWords(k, s), count: k.Units,
				lengths: rowLengths{acrossCut: k.AcrossCut, alongCut: k.AlongCut, stripWidthCut: s.WidthCut, stripLengthCut: s.LengthCut}, strips: s.Times})
		}
	}
	return list
}

// finishedAcross is a piece's finished size across, or of one that is known by its edges the first of them.
func finishedAcross(p *cutting.Piece) measure.NM {
	if len(p.EdgesFinished) > 0 {
		return p.EdgesFinished[0]
	}
	return p.SideFinished
}

// finishedAlong is the same along, 0 where there is none.
func finishedAlong(p *cutting.Piece) measure.NM {
	if len(p.EdgesFinished) > 1 {
		return p.EdgesFinished[1]
	}
	return p.LengthFinished
}
