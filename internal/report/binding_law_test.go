package report

import (
	"fmt"
	"slices"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/lay"
)

// areasOf and linesIn are the areas and the lines of a panel.
func areasOf(f *diagram.Figure, panel int) (list []*diagram.Area) {
	for _, m := range f.Marks[f.Panels[panel].First:][:f.Panels[panel].Count] {
		if m.Area != nil {
			list = append(list, m.Area)
		}
	}
	return list
}

func linesIn(f *diagram.Figure, panel int) (list []*diagram.Line) {
	for _, m := range f.Marks[f.Panels[panel].First:][:f.Panels[panel].Count] {
		if m.Line != nil {
			list = append(list, m.Line)
		}
	}
	return list
}

// extent is from where to where an outline reaches.
func extent(o []measure.Point) (low, high measure.Point) {
	low, high = o[0], o[0]
	for _, p := range o {
		low = measure.Point{X: min(low.X, p.X), Y: min(low.Y, p.Y)}
		high = measure.Point{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
	}
	return low, high
}

// unfolded says what is wrong with a mitered corner as cloth folds: the seam stops one allowance from the next edge and begins again at the
// edge, the fold is at 45 degrees from the quilt's corner, what is folded is the strip's own width and lies even with the next edge. Common practice.
func unfolded(f *diagram.Figure, first int) error {
	quilt, _ := extent(areasOf(f, first)[0].Outline)
	_, corner := extent(areasOf(f, first)[0].Outline)
	corner.Y = quilt.Y // the upper right
	low, high := extent(areasOf(f, first)[1].Outline)
	width, seam := high.Y-low.Y, linesIn(f, first)[0]
	allowance := seam.Points[0].Y - corner.Y
	switch {
	case low.Y != corner.Y || high.X <= corner.X:
		return fmt.Errorf("the strip lies from %v to %v, the corner at %v", low, high, corner)
	case seam.Points[0].Y != seam.Points[1].Y || corner.X-seam.Points[1].X != allowance || allowance <= 0 || seam.Points[0].X != low.X:
		return fmt.Errorf("the seam runs from %v to %v, the corner is at %v", seam.Points[0], seam.Points[1], corner)
	}
	up := areasOf(f, first+1)
	fold := linesIn(f, first+1)[1]
	a, b := fold.Points[0], fold.Points[1]
	if b != corner || b.X-a.X != a.Y-b.Y || a.Y-b.Y != width || !slices.Equal(linesIn(f, first+1)[0].Points, seam.Points) {
		return fmt.Errorf("the fold runs from %v to %v", a, b)
	}
	low, high = extent(up[2].Outline)
	if low.X != a.X || high.X != b.X || high.X-low.X != width || low.Y != 0 || !slices.Contains(up[2].Outline, a) || !slices.Contains(up[2].Outline, b) || up[1].Hatch == up[2].Hatch {
		return fmt.Errorf("folded up it lies from %v to %v", low, high)
	}
	if !slices.Equal(up[1].Outline, areasOf(f, first+2)[1].Outline) || !slices.Contains(up[1].Outline, a) || !slices.Contains(up[1].Outline, b) {
		return fmt.Errorf("the strip beneath the fold has the corners %v", up[1].Outline)
	}
	low, high = extent(areasOf(f, first+2)[2].Outline)
	down := linesIn(f, first+2)
	if low != (measure.Point{X: a.X, Y: corner.Y}) || high.X != corner.X || high.Y != bindingSide {
		return fmt.Errorf("folded down it lies from %v to %v", low, high)
	}
	if s := down[0].Points; s[0].Y != corner.Y || s[0].X != s[1].X || corner.X-s[0].X != allowance || s[1].Y != bindingSide {
		return fmt.Errorf("the next seam runs from %v to %v", s[0], s[1])
	}
	if s := down[1].Points; s[0] != low || s[1] != corner {
		return fmt.Errorf("the upper fold runs from %v to %v", s[0], s[1])
	}
	for i := range 3 { // the quilt is the same in all
		if !slices.Equal(areasOf(f, first+i)[0].Outline, areasOf(f, first)[0].Outline) {
			return fmt.Errorf("the quilt is another in step %d", i+1)
		}
	}
	return nil
}

// uncrossed says what is wrong with a diagonal join: two strips of one width cross at their ends, the seam goes through the corners at which
// they cross, and what is trimmed lies beyond it; open, the seam lies at 45 degrees across one straight strip. Common practice.
func uncrossed(f *diagram.Figure) error {
	list, lines := areasOf(f, 0), linesIn(f, 0)
	alow, ahigh := extent(list[0].Outline)
	blow, bhigh := extent(list[1].Outline)
	width := ahigh.Y - alow.Y
	if bhigh.X-blow.X != width || alow.Y != blow.Y || ahigh.X != bhigh.X || list[0].Hatch || !list[1].Hatch {
		return fmt.Errorf("strips cross from %v to %v and from %v to %v", alow, ahigh, blow, bhigh)
	}
	seam, trim := lines[0].Points, lines[1].Points
	on := func(p, q, at measure.Point) bool { return (q.X-p.X)*(at.Y-p.Y) == (q.Y-p.Y)*(at.X-p.X) }
	lower := measure.Point{X: blow.X, Y: blow.Y}
	upper := measure.Point{X: blow.X + width, Y: blow.Y + width}
	if !on(seam[0], seam[1], lower) || !on(seam[0], seam[1], upper) || seam[0].X >= lower.X || seam[1].X <= upper.X {
		return fmt.Errorf("the seam runs from %v to %v", seam[0], seam[1])
	}
	if trim[1].X-trim[0].X != trim[1].Y-trim[0].Y || trim[0].X-trim[0].Y <= seam[0].X-seam[0].Y || trim[0].X-trim[0].Y >= ahigh.X-alow.Y {
		return fmt.Errorf("it is trimmed from %v to %v", trim[0], trim[1])
	}
	open := areasOf(f, 1)
	alow, ahigh = extent(open[0].Outline)
	blow, bhigh = extent(open[1].Outline)
	if alow.X != 0 || bhigh.X != bindingSide || alow.Y != blow.Y || ahigh.Y != bhigh.Y || ahigh.Y-alow.Y != width || ahigh.X-blow.X != width {
		return fmt.Errorf("open they lie from %v to %v and from %v to %v", alow, ahigh, blow, bhigh)
	}
	for _, p := range []measure.Point{{X: blow.X, Y: alow.Y}, {X: ahigh.X, Y: ahigh.Y}} {
		if !slices.Contains(open[0].Outline, p) || !slices.Contains(open[1].Outline, p) {
			return fmt.Errorf("the open seam does not end at %v", p)
		}
	}
	if around2(open[0].Outline)+around2(open[1].Outline) != 2*float64(bindingSide)*float64(width) {
		return fmt.Errorf("open they do not make one strip")
	}
	return nil
}

// TestBindingFolds: the pictures of a binding show what cloth does that is folded.
func TestBindingFolds(t *testing.T) {
	top := lay.Top(t, "side 6\nfabric a #204060\nblock P plain piece a\ngrid\n P\nbinding 2 1/2 a\n")
	for _, diagonal := range []bool{false, true} {
		f := (&finishing{top: top}).bindingFigures(diagonal).Of
		first := len(f.Panels) - 3
		if err := unfolded(&f, first); err != nil {
			t.Error(err)
		}
		for _, m := range f.Marks {
			if m.Area != nil && (m.Area.Fill == top.Fabrics[0].Colour) == (m.Area.Fill.Hex() == "#e9e4da") {
				t.Errorf("a piece is %s", m.Area.Fill.Hex())
			}
		}
		if first != map[bool]int{true: 2}[diagonal] || f.Max != (measure.Point{X: bindingSide, Y: bindingSide}) {
			t.Errorf("%d panels before the corner, in %v", first, f.Max)
		}
		if diagonal {
			if err := uncrossed(&f); err != nil {
				t.Error(err)
			}
			f.Marks[f.Panels[0].First+2].Line.Points[0].X += measure.Millimetre
			if uncrossed(&f) == nil {
				t.Error("a seam beside the corner is not noticed")
			}
		}
		linesIn(&f, first)[0].Points[1].X += measure.Millimetre
		if unfolded(&f, first) == nil {
			t.Error("a seam that goes on too far is not noticed")
		}
	}
}
