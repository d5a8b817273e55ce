package cutting

import (
	"cmp"
	"slices"
)

// lengthwise says whether a line's pieces are cut along the cloth.
func (p *planning) lengthwise(line *Line) bool {
	return line.Border >= 0 && p.top.CutFacts.Borders[line.Border].Lengthwise
}

// layBlocks lays the lengthwise pieces of every fabric side by side, the longest together.
func (p *planning) layBlocks() {
	for i := range p.Fabrics {
		f := &p.Fabrics[i]
		var list []Column
		for _, n := range f.Lines {
			line := &p.Lines[n]
			if !line.edging() || !p.lengthwise(line) {
				continue
			}
			line.Piece.Method = Lengthwise
			if line.Piece.AcrossCut > f.UsableWidth {
				p.fault(line.Place, "the widest border that "+f.Name+" gives is "+p.text(f.UsableWidth-2*p.Seam)+" finished",
					"a border of %s finished is cut %s, but %s is %s between its selvages", p.text(line.Piece.SideFinished), p.text(line.Piece.AcrossCut), f.Name, p.text(f.UsableWidth))
				continue
			}
			for range line.Pieces {
				list = append(list, Column{n, line.Piece.AcrossCut, line.Piece.AlongCut + p.longer(line)})
			}
		}
		f.along = list
		f.layBlocks(len(list))
	}
}

// layBlocks puts the lengthwise pieces side by side, up to a number of them: each in the first block that has room for it,
// the longest first, so that a block is as long as its first column.
func (f *Fabric) layBlocks(most int) {
	slices.SortStableFunc(f.along, func(a, b Column) int {
		return cmp.Or(cmp.Compare(b.LengthCut, a.LengthCut), cmp.Compare(b.WidthCut, a.WidthCut))
	})
	f.Blocks = nil
	for _, c := range f.along {
		at := slices.IndexFunc(f.Blocks, func(b Block) bool { return b.LeftWidthCut >= c.WidthCut && len(b.Columns) < most })
		if at < 0 {
			at = len(f.Blocks)
			f.Blocks = append(f.Blocks, Block{LengthCut: c.LengthCut, LeftWidthCut: f.UsableWidth})
		}
		b := &f.Blocks[at]
		b.Columns = append(b.Columns, c)
		b.LeftWidthCut -= c.WidthCut
	}
}
