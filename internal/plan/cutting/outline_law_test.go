package cutting

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// The law of cut pieces: what is cut, sewn at the stated allowance, gives the finished outline. The finished outline comes
// from the top; it is grown by the allowance with sharp corners, moved and turned, but never turned over, and laid on the
// piece as it is cut.

// xy is a point in nanometres.
type xy struct{ x, y float64 }

func hypot(x, y float64) float64 { return math.Sqrt(x*x + y*y) }

func (p xy) minus(q xy) xy { return xy{p.x - q.x, p.y - q.y} }

// points is an outline of the top, begun at a corner.
func points(o []measure.Point, first int) []xy {
	var list []xy
	for i := range o {
		p := o[(first+i)%len(o)]
		list = append(list, xy{float64(p.X), float64(p.Y)})
	}
	return list
}

func drawn(o []measure.Point) []xy {
	var list []xy
	for _, p := range o {
		list = append(list, xy{float64(p.X), float64(p.Y)})
	}
	return list
}

// laid is an outline with its first side along the x axis, from a point on.
func laid(o []xy, at xy) []xy {
	d := o[1].minus(o[0])
	l := hypot(d.x, d.y)
	list := make([]xy, len(o))
	for i, p := range o {
		v := p.minus(o[0])
		list[i] = xy{(v.x*d.x+v.y*d.y)/l + at.x, (v.y*d.x-v.x*d.y)/l + at.y}
	}
	return list
}

// grownBy is an outline, clockwise on screen, with every side moved outwards.
func grownBy(o []xy, q float64) []xy {
	n := len(o)
	list := make([]xy, n)
	for i := range o {
		a, b, c := o[(i+n-1)%n], o[i], o[(i+1)%n]
		d, e := b.minus(a), c.minus(b)
		dl, el := hypot(d.x, d.y), hypot(e.x, e.y)
		p := xy{a.x + q*d.y/dl, a.y - q*d.x/dl} // a point of the side before, moved
		r := xy{b.x + q*e.y/el, b.y - q*e.x/el}
		s := ((r.x-p.x)*e.y - (r.y-p.y)*e.x) / (d.x*e.y - d.y*e.x)
		list[i] = xy{p.x + s*d.x, p.y + s*d.y}
	}
	return list
}

// beyond is how far a point lies outside a convex outline that goes clockwise on screen; below 0 inside.
func beyond(o []xy, p xy) float64 {
	most := math.Inf(-1)
	for i, a := range o {
		b := o[(i+1)%len(o)]
		d, v := b.minus(a), p.minus(a)
		most = max(most, (v.x*d.y-v.y*d.x)/hypot(d.x, d.y))
	}
	return most
}

// tolerance is what rounding of corners to whole nanometres may add up to, more where sides are short and slanted.
const tolerance = 40.0

// begins is the corner of a patch that is laid first: its outline's side from there lies along the x axis.
func begins(t *quilt.Patch, piece *Piece) int {
	o, twice := t.Outline, piece.Method == TwiceOnDiagonal
	switch t.Shape {
	case blocks.Wedge:
		return 1 // its base
	case blocks.HalfSquare, blocks.RingCorner:
		if twice {
			return 1 // its long edge
		}
	case blocks.Tumbler: // its shorter parallel side
		if o[2].Y-o[1].Y < o[3].Y-o[0].Y {
			return 1
		}
		return 3
	case blocks.HalfTumbler: // the side that follows its square end
		if o[0].Y == o[1].Y {
			return 1
		}
		return 3
	case blocks.Strip: // a side as long as the strip
		if o[1].X-o[0].X != piece.LengthFinished {
			return 1
		}
	}
	return 0
}

// onCut is a patch's finished outline laid on its piece as it is cut, and that.
func onCut(t *quilt.Patch, piece *Piece, seam float64) (on, cut []xy) {
	finished := points(t.Outline, begins(t, piece))
	d := finished[1].minus(finished[0])
	side := hypot(d.x, d.y)
	at := xy{seam, seam}
	switch {
	case t.Shape == blocks.Wedge || t.Shape == blocks.Tumbler:
		at.x = (float64(piece.WideCut) - side) / 2
	case t.Shape == blocks.HalfTumbler:
		at.x += float64(piece.AlongCut-piece.AlongExact) / 2
	case piece.Method == TwiceOnDiagonal:
		at.x = (float64(piece.AlongCut) - side) / 2
	}
	on = laid(finished, at)
	if t.Shape == blocks.Wedge { // its base lies below: turned by half a turn
		for i, p := range on {
			on[i] = xy{float64(piece.WideCut) - p.x, float64(piece.AcrossCut) - p.y}
		}
	}
	return on, drawn(piece.PieceOutline())
}

// illCut says how a line's piece does not give a patch's finished outline.
func illCut(top *quilt.Top, line *Line, patch int, seam float64) error {
	t := &top.Patches[patch]
	piece := &line.Piece
	on, cut := onCut(t, piece, seam)
	for i, p := range on {
		if out := beyond(cut, p) + seam; out > tolerance {
			return fmt.Errorf("corner %d of a %s lies %.0f nanometres too near the edge of what is cut", i, t.Shape, out)
		}
	}
	slack := slackOf(cut, on, seam)
	if want := float64(piece.TrimCut); slack > want+tolerance && t.Shape != blocks.Kite && t.Shape != blocks.Background {
		return fmt.Errorf("a %s is cut %.0f nanometres too large, %.0f are said", t.Shape, slack, want)
	}
	return exactly(piece, points(t.Outline, 0), seam)
}

// slackOf is how much further than the seam the finished outline lies from the side of the cut piece that is farthest.
func slackOf(cut, on []xy, seam float64) float64 {
	most := 0.0
	for i, a := range cut {
		b := cut[(i+1)%len(cut)]
		d := b.minus(a)
		least := math.Inf(1)
		for _, p := range on {
			v := p.minus(a)
			least = min(least, -(v.x*d.y-v.y*d.x)/hypot(d.x, d.y))
		}
		most = max(most, least-seam)
	}
	return most
}

// exactly says where the exact size of a kite's square or a background piece's triangle is not the least that holds the grown
// piece with sharp corners.
func exactly(piece *Piece, finished []xy, seam float64) error {
	if piece.Shape != blocks.Kite && piece.Shape != blocks.Background {
		return nil
	}
	need := 0.0
	for _, p := range grownBy(laid(finished, xy{seam, seam}), seam) {
		if piece.Shape == blocks.Kite {
			need = max(need, p.x, p.y)
		} else {
			need = max(need, p.x+p.y)
		}
	}
	if off := need - float64(piece.AlongExact); math.Abs(off) > tolerance {
		return fmt.Errorf("the exact size for a %s is off by %.0f nanometres", piece.Shape, off)
	}
	return nil
}

func TestCutPiecesGiveFinishedOnes(t *testing.T) {
	seen := map[string]int{}
	for _, n := range everyTop(150) {
		for _, o := range n.variants {
			p := planned(n.Top, o)
			for i := range p.Lines {
				line := &p.Lines[i]
				if line.Piece.AlongCut == 0 {
					continue
				}
				for _, patch := range []int{line.Patches[0], line.Patches[len(line.Patches)-1]} {
					if line.Piece.Method == FussyCut {
						if err := illFussy(n.Top, p, line, patch); err != nil {
							t.Fatalf("%s, line %d: %v", n.name, i, err)
						}
						continue
					}
					if err := illCut(n.Top, line, patch, float64(p.Seam)); err != nil {
						t.Fatalf("%s, line %d, seam %s: %v", n.name, i, p.text(p.Seam), err)
					}
				}
				seen[line.Piece.Shape.String()+", "+line.Piece.Method.String()+", "+line.Piece.Hand.String()]++
			}
		}
	}
	for _, want := range []string{
		"wedge, nested, either", "kite, whole, either", "background piece, once-on-diagonal, either", "half-square triangle, once-on-diagonal, either",
		"half-square triangle, twice-on-diagonal, either", "corner triangle, once-on-diagonal, either", "corner triangle, twice-on-diagonal, either",
		"square, whole, either", "tumbler, nested, either", "end piece, end-pairs, left", "end piece, end-pairs, right", "strip, whole, either",
		"strip, joined, either", "strip, lengthwise, either", "wedge, fussy-cut, either", "kite, fussy-cut, either", "square, fussy-cut, either",
	} {
		if seen[want] < 5 {
			t.Errorf("%s: only %d lines", want, seen[want])
		}
	}
}

// TestCutPiecesCatches: pieces cut by mistakes that people make do not give their finished outlines.
func TestCutPiecesCatches(t *testing.T) {
	for _, c := range []struct {
		name string
		of   blocks.Shape
		harm func(p *Piece, q, side float64)
	}{
		{"a square cut at its finished size", blocks.Square, func(p *Piece, q, _ float64) { p.AcrossCut, p.AlongCut = p.SideFinished, p.SideFinished }},
		{"a triangle's square with half an inch for seams", blocks.HalfSquare, func(p *Piece, q, _ float64) { p.AlongCut = p.SideFinished + inch(0.5); p.AcrossCut = p.AlongCut }},
		{"a corner an eighth too small", blocks.RingCorner, func(p *Piece, q, _ float64) { p.AlongCut -= inch(0.125); p.AcrossCut -= inch(0.125) }},
		{"a wedge with a sharper tip", blocks.Wedge, func(p *Piece, q, _ float64) { p.NarrowCut /= 2 }},
		{"a wedge a sixteenth narrower", blocks.Wedge, func(p *Piece, q, _ float64) { p.WideCut -= inch(1. / 16) }},
		{"a kite's square without its tip", blocks.Kite, func(p *Piece, q, _ float64) { p.AlongExact -= inch(0.167) }},
		{"a tumbler wider than it should be", blocks.Tumbler, func(p *Piece, q, _ float64) { p.WideCut += inch(0.1) }},
		{"an end piece of the other hand", blocks.HalfTumbler, func(p *Piece, q, _ float64) { p.Hand = Left + Right - p.Hand }},
		{"an end piece half of a whole one", blocks.HalfTumbler, func(p *Piece, q, _ float64) { p.WideCut -= inch(q); p.NarrowCut -= inch(q) }},
		{"a border with one seam", blocks.Strip, func(p *Piece, q, _ float64) { p.AcrossCut -= inch(q) }},
	} {
		noticed, tried := 0, 0
		for _, n := range slices.Concat(sampleTops(), invented(60)) {
			p := usual(n)
			for i := range p.Lines {
				line := p.Lines[i]
				if line.Piece.Shape != c.of {
					continue
				}
				tried++
				c.harm(&line.Piece, inches(p.Seam), inches(n.SideFinished))
				if illCut(n.Top, &line, line.Patches[0], float64(p.Seam)) != nil {
					noticed++
				}
			}
		}
		if noticed < tried*9/10 || tried == 0 {
			t.Errorf("%s: noticed %d times of %d", c.name, noticed, tried)
		}
	}
}
