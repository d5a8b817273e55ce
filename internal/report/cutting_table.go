package report

import (
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/supplies"
)

// The lengths of a row by their places.
const (
	acrossFinished = iota
	alongFinished
	acrossCut // of one unit; of a backing and a batting the width
	alongCut  // of one unit; of a backing and a batting the length
	exactCut  // along, as geometry asks for it
	trimCut
	stretchCut    // of strip, that the units take together
	joinedCut     // of a binding, sewn together, at the least
	stripWidthCut // of the strip or of the strip set that units are cut from
	stripLengthCut
	panelCut    // of each panel of a backing, at the least
	blockCut    // of the cloth's length, from which lengthwise pieces are cut side by side
	backingCut  // of the cloth's length, for all panels
	clothCut    // of the cloth's length, all that is cut from it
	clothNeed   // the same with what is added for its end and for slips
	usableWidth // of the cloth
	rowLength
)

// tableLengths are the headings of a table's lengths, in the order of a row's.
func tableLengths() [rowLength]string {
	return [rowLength]string{
		acrossFinished: "across_finished", alongFinished: "along_finished", acrossCut: "across_cut", alongCut: "along_cut", exactCut: "exact_cut", trimCut: "trim_cut",
		stretchCut: "stretch_cut", joinedCut: "joined_cut", stripWidthCut: "strip_width_cut", stripLengthCut: "strip_length_cut", panelCut: "panel_cut",
		blockCut: "block_cut", backingCut: "backing_cut", clothCut: "cloth_cut", clothNeed: "need", usableWidth: "usable_width",
	}
}

// The counts of a row by their places.
const (
	quilts    = iota // that the row is for
	perQuilt         // pieces
	pieces           // of all quilts
	left             // of them left-hand ones
	right            // right-hand ones
	newStrips        // to cut across the cloth; where a strip is cut into several things its first row has them
	fromStrips
	fromEach     // units
	units        // squares, wedges, rectangles or strips that are cut from strips or along the cloth
	lineUnits    // the same, all of one line together
	sets         // strip sets
	fromSet      // wedges from each
	wedges       // from all of them
	band         // place of a strip in its set, from the wide end
	joinedStrips // sewn end to end
	panels       // of a backing
	rowCount
)

// tableCounts are the headings of a table's counts, in the order of a row's.
func tableCounts() [rowCount]string {
	return [rowCount]string{
		quilts: "quilts", perQuilt: "per_quilt", pieces: "pieces", left: "left", right: "right", newStrips: "new_strips", fromStrips: "from_strips", fromEach: "from_each",
		units: "units", lineUnits: "line_units", sets: "strip_sets", fromSet: "from_set", wedges: "wedges", band: "band", joinedStrips: "joined_strips", panels: "panels",
	}
}

// tableRow is a row of a plan as a table: a fabric to buy or for one kit, a binding, backing or batting, a piece, a strip set or
// a strip of one, a lengthwise piece, or a stretch of a strip.
type tableRow struct {
	size        string // its name where there are several; "" else
	row, fabric string
	lines       string // as people count them, with blanks between; "" for none
	what        string
	counts      rowCounts  // 0 has no part in the row
	lengths     rowLengths // 0 has no part in the row
	buy         amount
	kit, kits   amount // for one, and for all
	note        string
}

type (
	rowLengths = [rowLength]measure.NM
	rowCounts  = [rowCount]int
)

// amount is a length of cloth as shops sell it, in each of the units that they sell by.
type amount struct{ yards, metres measure.NM }

// amount is what to buy of a purchase: as the plan has it, and what is needed rounded up as shops do that sell by the other unit.
func (c *cuts) amount(buy, need measure.NM) amount {
	if c.Units == measure.Centimetres {
		return amount{measure.RoundUp(need, measure.Inches.ShopStep()), buy}
	}
	return amount{buy, measure.RoundUp(need, measure.Centimetres.ShopStep())}
}

// shop is what to buy of a purchase, as shops sell it; in both units where that is asked for, each rounded up by itself.
func (c *cuts) shop(p *supplies.Purchase) string {
	if p.Buy == 0 { // all that is cut from it is on hand
		return none
	}
	text := c.Units.Shop(p.Buy)
	if !c.plans.BothShop {
		return text
	}
	a := c.amount(p.Buy, p.Need)
	if c.Units == measure.Centimetres {
		return text + " or " + measure.Inches.Shop(a.yards)
	}
	return text + " or " + measure.Centimetres.Shop(a.metres)
}

// times is the amount for a number of quilts.
func (a amount) times(n int) amount { return amount{a.yards * measure.NM(n), a.metres * measure.NM(n)} }

// table is the plan's rows in the order to buy, to cut and to finish, and what one kit holds.
func (c *cuts) table() []tableRow {
	list := c.buyRows()
	for i := range c.Lines {
		list = append(list, c.pieceRow(i))
	}
	for i := range c.Sets {
		list = append(list, c.setRows(i)...)
	}
	for i := range c.Fabrics {
		list = append(list, c.stripRows(&c.Fabrics[i])...)
	}
	return slices.Concat(list, c.edgeRows(), c.kitRows())
}

func (c *cuts) buyRows() []tableRow {
	var list []tableRow
	for i := range c.Fabrics {
		f := &c.Fabrics[i]
		list = append(list, tableRow{row: "buy", fabric: f.Name, what: c.bought(f), buy: c.amount(f.Purchase.Buy, f.Purchase.Need),
			lengths: rowLengths{clothCut: f.Purchase.ExactCut, clothNeed: f.Purchase.Need, usableWidth: f.UsableWidth}, note: c.onHand(f.OnHand)})
	}
	if b := c.BackingBuy; b.Buy > 0 {
		list = append(list, tableRow{row: "buy", fabric: chosenBacking, what: c.Units.Shop(b.Buy), buy: c.amount(b.Buy, b.Need),
			lengths: rowLengths{clothCut: b.ExactCut, clothNeed: b.Need, usableWidth: c.Backing.UsableWidth}})
	}
	return list
}

func (c *cuts) pieceRow(n int) tableRow {
	l := &c.Lines[n]
	p := &l.Piece
	r := tableRow{row: "piece", fabric: c.cloth(l), lines: lineNumbers([]int{n}, " "), what: c.plans.pieceName(l), note: methodName(p.Method),
		counts:  rowCounts{quilts: c.Copies, perQuilt: len(l.Patches), pieces: l.Pieces, lineUnits: l.Units},
		lengths: rowLengths{finishedAcross(p), finishedAlong(p), p.AcrossCut, p.AlongCut, p.AlongExact, p.TrimCut}}
	if hands(l) != "" {
		r.counts[left], r.counts[right] = l.Left, l.Right
	}
	return r
}

// edgeRows are the binding, the backing and the batting: of each the size for one quilt; strips, panels and cloth are those of all quilts.
func (c *cuts) edgeRows() []tableRow {
	var list []tableRow
	note := c.several("sizes are for each quilt")
	if b := c.Binding; b != nil {
		list = append(list, tableRow{row: "binding", fabric: c.plans.Top.Fabrics[c.plans.Top.CutFacts.Binding.Fabric].Name, what: "strips joined with diagonal seams", note: note,
			counts: rowCounts{quilts: c.Copies, joinedStrips: b.Strips * c.Copies}, lengths: rowLengths{joinedCut: b.Need, stripWidthCut: b.StripCut}})
	}
	if b := c.Backing; b != nil {
		way := &b.Ways[b.Less]
		name := chosenBacking
		if at := slices.IndexFunc(c.Fabrics, func(f cutting.Fabric) bool { return f.Index == c.BackingOf }); at >= 0 {
			name = c.Fabrics[at].Name
		}
		list = append(list, tableRow{row: "backing", fabric: name, what: measure.Count(way.Panels, "panel") + " of " + c.Units.AtLeast(way.PanelCut), note: note,
			counts:  rowCounts{quilts: c.Copies, panels: way.Panels * c.Copies},
			lengths: rowLengths{acrossCut: b.WidthCut, alongCut: b.HeightCut, panelCut: way.PanelCut, backingCut: way.LengthCut * measure.NM(c.Copies), usableWidth: b.UsableWidth}})
	}
	if b := c.Batting; b != nil {
		list = append(list, tableRow{row: "batting", what: "batting", counts: rowCounts{quilts: c.Copies}, lengths: rowLengths{acrossCut: b.WidthCut, alongCut: b.HeightCut}, note: note})
	}
	return list
}

// setRows are the sets of a strip set, those of one length together, and then its strips.
func (c *cuts) setRows(n int) []tableRow {
	var list []tableRow
	set := &c.Sets[n]
	for _, r := range set.Runs {
		list = append(list, tableRow{row: "strip set", lines: setLines(set), what: c.SetName(n),
			counts: rowCounts{sets: r.Sets, fromSet: r.Wedges, wedges: r.Sets * r.Wedges}, lengths: rowLengths{stripWidthCut: set.WidthCut, stripLengthCut: r.LengthCut}})
	}
	for i, b := range set.Bands {
		list = append(list, tableRow{row: "strip of set", fabric: c.Fabrics[b.Fabric].Name, lines: setLines(set), what: c.SetName(n),
			counts: rowCounts{band: i + 1}, lengths: rowLengths{acrossFinished: b.WidthFinished, acrossCut: b.WidthCut}})
	}
	return list
}

// setLines are the lines of a strip set's wedges.
func setLines(set *cutting.StripSet) string {
	var list []int
	for _, n := range set.Lines {
		if n >= 0 {
			list = append(list, n)
		}
	}
	return lineNumbers(list, " ")
}

func (c *cuts) stripRows(f *cutting.Fabric) []tableRow {
	var list []tableRow
	for _, b := range f.Blocks {
		for _, column := range b.Columns {
			what, counts := c.plans.edgingName(&c.Lines[column.Line]), rowCounts{units: 1}
			if c.Lines[column.Line].AlongSelvage {
				cut := c.CutOf(&column)
				what, counts = c.cutWords(&cut, &cutting.Strip{WidthCut: column.WidthCut}), rowCounts{fromStrips: b.Times, fromEach: column.Units, units: b.Times * column.Units}
			}
			list = append(list, tableRow{row: "lengthwise", fabric: f.Name, lines: lineNumbers([]int{column.Line}, " "), what: what,
				counts: counts, lengths: rowLengths{acrossCut: column.WidthCut, alongCut: column.LengthCut, blockCut: b.LengthCut, usableWidth: f.UsableWidth}})
		}
	}
	for i := range f.Strips {
		s := &f.Strips[i]
		for j := range s.Cuts {
			k := &s.Cuts[j]
			r := tableRow{row: "cut", fabric: f.Name, lines: lineNumbers(k.Lines, " "), what: c.cutWords(k, s),
				counts:  rowCounts{fromStrips: s.Times, fromEach: k.Units, units: s.Times * k.Units},
				lengths: rowLengths{acrossCut: k.AcrossCut, alongCut: k.AlongCut, stretchCut: k.Length(), stripWidthCut: s.WidthCut, stripLengthCut: s.LengthCut}}
			if r.note = onPrecuts(f, s); s.OnEnd >= 0 {
				r.note = c.onEnd(f, s)
			}
			if s.OnPrint {
				r.note = "between strips lined up on the print"
			}
			if k.Nests {
				r.lengths[alongCut] = 0
			}
			if k.Use == cutting.ForEnd { // no piece yet
				r.counts[fromEach], r.counts[units] = 0, 0
			}
			if j == 0 && s.OnSheet < 0 && s.OnEnd < 0 {
				r.counts[newStrips] = s.Times
			}
			list = append(list, r)
		}
	}
	for i := range f.FromPrint {
		list = append(list, c.printRows(f, &f.FromPrint[i])...)
	}
	return list
}

// printRows are what is cut from places of a fabric's print: of each sort of strip a row for each line.
func (c *cuts) printRows(f *cutting.Fabric, p *cutting.FromPrint) []tableRow {
	var list []tableRow
	for _, l := range likes(p) {
		for i, n := range linesOf(l.first) {
			each := 0
			for _, q := range l.first.Pieces {
				if q.Line == n {
					each++
				}
			}
			long := l.first.Max.X - l.first.Min.X
			if p.Lengthwise {
				long = l.first.Max.Y - l.first.Min.Y
			}
			r := tableRow{row: "fussy-cut", fabric: f.Name, lines: lineNumbers([]int{n}, " "), what: c.plans.countedPieces(each, &c.Lines[n]),
				counts: rowCounts{fromStrips: l.times, fromEach: each, units: l.times * each}, lengths: rowLengths{stripWidthCut: l.first.WidthCut, stripLengthCut: long}}
			if i == 0 {
				r.counts[newStrips] = l.times
			}
			list = append(list, r)
		}
	}
	return list
}

// kitRows are what one kit holds of each fabric: what is bought for one quilt by itself.
func (c *cuts) kitRows() []tableRow {
	one := newCuts(c.plans.as(c.plans.One()))
	list := one.buyRows()
	for i := range list {
		r := &list[i]
		r.row, r.counts[quilts], r.note = "kit", c.Copies, ""
		r.lengths[clothCut], r.lengths[clothNeed] = 0, 0 // those of one quilt, where they are those of all elsewhere
		r.kit, r.kits, r.buy = r.buy, r.buy.times(c.Copies), amount{}
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
