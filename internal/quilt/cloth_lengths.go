package quilt

import (
	"math"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt/lengths"
)

// AlongSelvage says whether a patch is cut from a strip along the selvages, wherever on it.
func (t *Top) AlongSelvage(patch int) bool {
	c := t.CutOfPatch(patch)
	return c != nil && c.Motif == "" && !c.Alike && !c.Crosswise && t.Fabrics[t.Faces[t.Patches[patch].First].Fabric].Cloth != nil
}

// onLengths is the strips along the selvages that alike pieces are cut from, as the cutting plan lays them.
type onLengths struct {
	want   lengths.Want
	strips []lengthStrip
}

// lengthStrip is a strip along the selvages: its upper left corner on the cloth, and its pieces.
type lengthStrip struct {
	at     measure.Point
	pieces int
}

// alongFrom is where lengths begin whose strips run along the fabric, far below strips across it.
const alongFrom = 1000 * measure.Yard

// slantBeside is by how many seam allowances more the wide end of a wedge is cut than its middle: 2 tan 22.5 degrees.
const slantBeside = 2 * (math.Sqrt2 - 1)

// layLengths lays the strips along the selvages of every fabric, which only then can be told how long they are.
func (l *clothLaying) layLengths() {
	order := make([][]alikePieces, len(l.Fabrics))
	for i := range l.Patches {
		p := &l.Patches[i]
		if !l.lengthwise(i, p) {
			continue
		}
		f, of := l.alikePieces(int32(i))
		on := l.onLengths[of]
		if on == nil {
			on = l.wantOf(&f, of.nest, p)
			l.onLengths[of] = on
			order[of.fabric] = append(order[of.fabric], of)
		}
		on.want.Count++
	}
	for fabric, list := range order {
		wants := make([]lengths.Want, len(list))
		for i, of := range list {
			if wants[i] = l.onLengths[of].want; of.nest == inSquares {
				wants[i].Count = (wants[i].Count + 1) / 2
			}
		}
		down := alongFrom
		width := l.CutFacts.Fabrics[fabric].UsableWidth
		for i := range wants {
			wants[i].Across = min(wants[i].Across, width) // what is wider cannot be cut at all
		}
		for _, length := range lengths.Lay(lengths.Cloth{Usable: width, Longest: lengths.Longest(l.Units)}, wants) {
			for _, s := range length.Strips {
				on := l.onLengths[list[s.Want]]
				on.strips = append(on.strips, lengthStrip{measure.Point{X: s.From, Y: down}, s.Pieces})
			}
			down += length.Long
		}
	}
}

// wantOf is what a piece takes of strips along the selvages, by its frame.
func (l *clothLaying) wantOf(f *inFrame, nest nesting, p *Patch) *onLengths {
	seam := float64(l.Seam)
	long := f.right - f.left
	on := &onLengths{want: lengths.Want{Across: nearly(f.lower - f.upper + 2*seam), Along: nearly(long + 2*seam), Whole: p.Shape.Description().Edging}}
	switch nest {
	case headsInTurn:
		wide := nearly(long + (seamsBeside+slantBeside)*seam)
		on.want.Along = nearly(f.mean + seamsBeside*seam)
		on.want.Extra = wide - on.want.Along
	case inSquares:
		on.want.Across, on.want.Along = nearly(f.lower-f.upper+onDiagonal*seam), nearly(long+onDiagonal*seam)
	}
	if on.want.Whole {
		on.want.Along += lengths.Longer(l.Units)
	}
	return on
}

// onLength is the place of the cloth that a piece of a strip along the selvages shows. The strip's beginning is its upper end.
func (l *clothLaying) onLength(of alikePieces, p *stripPiece) ClothPlace {
	on, slot := l.onLengths[of], p.slot
	if p.nest == inSquares {
		slot /= 2
	}
	n := 0
	for slot >= on.strips[n].pieces {
		slot -= on.strips[n].pieces
		n++
	}
	seam, long, wide := float64(l.Seam), p.whole.right-p.whole.left, p.whole.lower-p.whole.upper
	along, beside := float64(slot)*float64(on.want.Along)+seam+long/2, seam+wide/2
	switch p.nest {
	case headsInTurn:
		along = float64(slot)*float64(on.want.Along) + float64(on.want.Along+on.want.Extra)/2
	case inSquares:
		if p.down {
			along, beside = along+math.Sqrt2*seam, beside+math.Sqrt2*seam
		}
	}
	return p.place(on.strips[n].at.Add(measure.Point{X: measure.NM(math.Round(float64(on.want.Across) - beside)), Y: measure.NM(math.Round(along))}), 90)
}
