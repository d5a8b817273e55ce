package cutting

import (
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt/lengths"
)

// lengthwise says whether a line's pieces are strips of an edging that are cut along the cloth.
func (p *planning) lengthwise(line *Line) bool {
	return line.Border >= 0 && p.top.CutFacts.Borders[line.Border].Lengthwise
}

// layBlocks lays what is cut along the selvages side by side for every fabric: strips of borders, the longest together, and strips
// that pieces are cut from.
func (p *planning) layBlocks() {
	for i := range p.Fabrics {
		f := &p.Fabrics[i]
		f.longest = lengths.Longest(p.Units)
		for _, n := range f.Lines {
			line := &p.Lines[n]
			switch {
			case line.AlongSelvage:
				p.unitsOf(line)
				if !p.tooLongFor(line, f.UsableWidth) && line.Units > 0 {
					d := lineDemand(line)
					f.along = append(f.along, lengths.Want{Across: d.across, Along: d.along, Extra: d.extra, Count: d.count})
					f.alongLines = append(f.alongLines, n)
				}
			case line.edging() && p.lengthwise(line):
				line.Piece.Method = Lengthwise
				if line.Piece.AcrossCut > f.UsableWidth {
					p.fault(line.Place, "the widest border that "+f.Name+" gives is "+p.text(f.UsableWidth-2*p.Seam)+" finished",
						"a border of %s finished is cut %s, but %s is %s between its selvages", p.text(line.Piece.SideFinished), p.text(line.Piece.AcrossCut), f.Name, p.text(f.UsableWidth))
					continue
				}
				f.along = append(f.along, lengths.Want{Across: line.Piece.AcrossCut, Along: line.Piece.AlongCut + p.longer(line), Count: line.Pieces, Whole: true})
				f.alongLines = append(f.alongLines, n)
			}
		}
		f.layBlocks(0)
	}
}

// tooLongFor says of a piece that is cut along the selvages that the cloth is too narrow for its strip.
func (p *planning) tooLongFor(line *Line, usable measure.NM) bool {
	if line.Piece.AcrossCut <= usable {
		return line.Piece.AcrossCut == 0
	}
	p.fault(line.Place, "make the blocks smaller, or use wider fabric", "%s is cut from a lengthwise strip of %s, but the fabric is %s between its selvages", measure.WithArticle(line.Piece.Shape.String()), p.text(line.Piece.AcrossCut), p.text(usable))
	return true
}

// layBlocks lays what is cut along the selvages, up to a number of whole strips side by side; 0 for as many as there is room for.
func (f *Fabric) layBlocks(most int) {
	f.Blocks = nil
	for _, l := range lengths.Lay(lengths.Cloth{Usable: f.UsableWidth, Longest: f.longest, Most: most}, f.along) {
		b := Block{Times: 1, LengthCut: l.Long, LeftWidthCut: l.Beside}
		for _, s := range l.Strips {
			w := &f.along[s.Want]
			b.Columns = append(b.Columns, Column{Line: f.alongLines[s.Want], Units: s.Pieces, WidthCut: w.Across, LengthCut: s.Long, whole: w.Whole})
		}
		if last := len(f.Blocks) - 1; last >= 0 && b.wholes() == 0 && slices.Equal(b.Columns, f.Blocks[last].Columns) {
			f.Blocks[last].Times++
			continue
		}
		f.Blocks = append(f.Blocks, b)
	}
}

// wholes is how many strips of a block are one piece each.
func (b *Block) wholes() int {
	n := 0
	for _, c := range b.Columns {
		if c.whole {
			n++
		}
	}
	return n
}

// alongBound is what no plan of a fabric's lengthwise strips is shorter than: its longest whole one.
func (f *Fabric) alongBound() measure.NM {
	longest := measure.NM(0)
	for i := range f.along {
		if w := &f.along[i]; w.Count > 0 {
			longest = max(longest, w.Along+w.Extra)
		}
	}
	return longest
}

// CutOf is a strip along the selvages as a stretch that is cut into its pieces.
func (p *Plan) CutOf(c *Column) Cut {
	piece := &p.Lines[c.Line].Piece
	cut := Cut{Lines: []int{c.Line}, Set: -1, Units: c.Units, Rows: 1, AcrossCut: c.WidthCut, AlongCut: c.LengthCut, Nests: piece.Method == Nested}
	if !cut.Nests {
		cut.AlongCut /= measure.NM(c.Units)
	}
	return cut
}

// longestStrip is how long the longest strip is that a line's pieces are cut from.
func (f *Fabric) longestStrip(line int) measure.NM {
	longest := measure.NM(0)
	for _, b := range f.Blocks {
		for _, c := range b.Columns {
			if c.Line == line {
				longest = max(longest, c.LengthCut)
			}
		}
	}
	return longest
}
