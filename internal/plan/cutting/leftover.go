package cutting

import (
	"slices"

	"eighthturn/internal/measure"
)

// minLeft is how wide and long cloth must be to be worth listing as left over.
const minLeft = 2 * measure.Inch

// leftOvers lists the cloth that is left in pieces large enough for something, wherever they lie: at the ends of strips,
// beside narrower pieces in them, beside and behind lengthwise pieces, at the ends of joined strips, between what is lined up on a print.
func (p *planning) leftOvers(f *Fabric) {
	for i := range f.Strips {
		f.leftInStrip(&f.Strips[i])
	}
	f.leftOnSheets()
	p.leftOnPrint(f)
	for _, e := range f.Ends {
		f.left(e.LeftWidthCut, e.LengthCut, e.Times)
	}
	for n := range f.Blocks {
		f.leftInBlock(n)
	}
	for _, c := range f.Chains {
		line := &p.Lines[c.Pieces[0].Line]
		pieces := 0
		for _, s := range c.Pieces {
			pieces += s.Count
		}
		f.left(line.Piece.AcrossCut, c.SpareCut-measure.NM(pieces)*p.Longer, c.Times)
	}
}

// left adds so many like pieces of cloth, where they are large enough.
func (f *Fabric) left(across, along measure.NM, times int) {
	if across < minLeft || along < minLeft || times <= 0 {
		return
	}
	at := slices.IndexFunc(f.LeftOver, func(l LeftOver) bool { return l.AcrossCut == across && l.AlongCut == along })
	if at < 0 {
		at = len(f.LeftOver)
		f.LeftOver = append(f.LeftOver, LeftOver{AcrossCut: across, AlongCut: along})
	}
	f.LeftOver[at].Times += times
}

// leftInStrip adds what is left of a strip: its end, what lies beside stretches that are narrower than it is, and the places
// in the last length of rows that are not all filled.
func (f *Fabric) leftInStrip(s *Strip) {
	f.left(s.WidthCut, s.EndLeftCut, s.Times)
	var beside, along measure.NM
	for i := range s.Cuts {
		c := &s.Cuts[i]
		if d := s.WidthCut - measure.NM(c.Rows)*c.AcrossCut; d != beside {
			f.left(beside, along, s.Times)
			beside, along = d, 0
		}
		along += c.Length()
		if last := c.Units % c.Rows; last > 0 {
			f.left(measure.NM(c.Rows-last)*c.AcrossCut, c.AlongCut, s.Times)
		}
	}
	f.left(beside, along, s.Times)
}

// leftInBlock adds what is left of a block of lengthwise pieces: beside them what no strip is cut from, and behind those that
// are shorter than the block.
func (f *Fabric) leftInBlock(n int) {
	b := &f.Blocks[n]
	room := b.LengthCut
	for i := range f.Strips {
		if s := &f.Strips[i]; s.InBlock == n {
			room -= measure.NM(s.Times) * s.WidthCut
		}
	}
	f.left(room, b.LeftWidthCut, b.Times)
	for _, c := range b.Columns {
		f.left(b.LengthCut-c.LengthCut, c.WidthCut, b.Times)
	}
}
