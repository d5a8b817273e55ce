package cutting

import (
	"cmp"
	"slices"

	"eighthturn/internal/measure"
)

// gap is cloth from selvage to selvage that lies between strips which are lined up on a print, or as many like ones.
type gap struct {
	widthCut measure.NM // along the cloth
	times    int
}

// gaps are what lies between the strips of a fitting, its widest first, as far as it is worth keeping.
func (c *FromPrint) gaps() []gap {
	if c.Lengthwise || len(c.Strips) == 0 {
		return nil
	}
	var list []gap
	add := func(width measure.NM, times int) {
		if width < minLeft || times == 0 {
			return
		}
		at := slices.IndexFunc(list, func(g gap) bool { return g.widthCut == width })
		if at < 0 {
			at = len(list)
			list = append(list, gap{widthCut: width})
		}
		list[at].times += times
	}
	for i := range c.Strips[1:] {
		add(c.Strips[i+1].Min.Y-c.Strips[i].Max.Y, c.Times)
	}
	if c.AlongCut > 0 {
		first, last := c.Strips[0].Min.Y, c.Strips[len(c.Strips)-1].Max.Y
		add(measure.RoundUp(last-first, c.AlongCut)-(last-first), c.Times-1)
	}
	slices.SortStableFunc(list, func(a, b gap) int { return cmp.Compare(b.widthCut, a.widthCut) })
	return list
}

// cutGaps cuts what is wanted of strips from the gaps between strips lined up on a print, gap by gap, and takes it off what is wanted.
func (f *Fabric) cutGaps(list []demand) []Strip {
	var strips []Strip
	for i := range f.FromPrint {
		for _, g := range f.FromPrint[i].gaps() {
			for left := g.times; left > 0; {
				one := Fabric{UsableWidth: f.UsableWidth, budget: f.budget, Blocks: []Block{{Times: 1, LengthCut: g.widthCut, LeftWidthCut: f.UsableWidth}}}
				before := slices.Clone(list)
				cut := one.beside(list, widestBeside)
				times := likeGaps(before, list, left)
				width := measure.NM(0)
				for _, s := range cut {
					width += measure.NM(s.Times) * s.WidthCut
					s.InBlock, s.OnPrint, s.Times = -1, true, s.Times*times
					strips = append(strips, s)
				}
				f.gapsLeft = append(f.gapsLeft, gap{g.widthCut - width, times})
				left -= times
			}
		}
	}
	return strips
}

// likeGaps is in how many gaps, up to a number, as much of everything can be cut as was cut in one; it takes what the others give off
// what is wanted.
func likeGaps(before, list []demand, most int) int {
	times := most
	for i := range list {
		if took := before[i].count - list[i].count; took > 0 {
			times = min(times, before[i].count/took)
		}
	}
	for i := range list {
		list[i].count -= (times - 1) * (before[i].count - list[i].count)
	}
	return times
}

// leftOnPrint adds what is left of the cloth of pieces that are lined up on a print: between their strips, beside strips along the
// selvages, and in the strips between the pieces.
func (p *planning) leftOnPrint(f *Fabric) {
	for _, g := range f.gapsLeft {
		f.left(g.widthCut, f.UsableWidth, g.times)
	}
	for i := range f.FromPrint {
		c := &f.FromPrint[i]
		if c.Lengthwise {
			f.leftBesideStrips(c)
		}
		for n := range c.Strips {
			f.leftInPrintStrip(c, &c.Strips[n])
		}
	}
}

// leftBesideStrips adds what strips along the selvages leave beside them: those that begin together lie side by side.
func (f *Fabric) leftBesideStrips(c *FromPrint) {
	for from := 0; from < len(c.Strips); {
		to, end := from, measure.NM(0)
		for to < len(c.Strips) && c.Strips[to].Min.Y == c.Strips[from].Min.Y {
			end = max(end, c.Strips[to].Max.Y)
			to++
		}
		at := measure.NM(0)
		for i := from; i < to; i++ {
			f.left(c.Strips[i].Min.X-at, end-c.Strips[i].Min.Y, c.Times)
			at = c.Strips[i].Max.X
		}
		f.left(f.UsableWidth-at, end-c.Strips[from].Min.Y, c.Times)
		if to < len(c.Strips) {
			f.left(f.UsableWidth, c.Strips[to].Min.Y-end, c.Times)
		}
		from = to
	}
}

// leftInPrintStrip adds what the pieces of a strip leave of it, from edge to edge of the strip.
func (f *Fabric) leftInPrintStrip(c *FromPrint, s *FussyStrip) {
	way := func(p measure.Point) measure.NM {
		if c.Lengthwise {
			return p.Y
		}
		return p.X
	}
	spans := make([][2]measure.NM, 0, len(s.Pieces)+1)
	for _, piece := range s.Pieces {
		b := bounds(c.CutOutline(piece))
		spans = append(spans, [2]measure.NM{way(b[0]), way(b[1])})
	}
	slices.SortFunc(spans, func(a, b [2]measure.NM) int { return cmp.Compare(a[0], b[0]) })
	at := way(s.Min)
	for _, span := range append(spans, [2]measure.NM{way(s.Max), way(s.Max)}) {
		f.left(s.WidthCut, span[0]-at, c.Times)
		at = max(at, span[1])
	}
}
