package report

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/layout"
)

// sewers are the sewing plans in words of the samples and of invented layouts, by name, made once. Nobody changes them.
var sewers = sync.OnceValue(func() map[string]*sewer {
	list := map[string]*sewer{}
	for name, text := range sewnLayouts() {
		if d, _, _ := layout.Read(text); d != nil {
			list[name] = newSewer(&Plans{Top: quilt.Lay(d)})
		}
	}
	for _, n := range slices.Concat(seldom(), lay.Reference()) {
		list[n.Name] = newSewer(&Plans{Top: n.Top})
	}
	return list
})

// outlinesBy are the areas of marks by the patch that they stand for.
func outlinesBy(marks []diagram.Mark) map[int][][]measure.Point {
	list := map[int][][]measure.Point{}
	for _, m := range marks {
		if m.Area != nil && len(m.Lit) == 1 {
			list[m.Lit[0]] = append(list[m.Lit[0]], m.Area.Outline)
		}
	}
	return list
}

// shifted is by how much one outline lies beside another that is the same else.
func shifted(from, to []measure.Point) (by measure.Point, ok bool) {
	if len(from) != len(to) {
		return by, false
	}
	for i := range from {
		d := measure.Point{X: to[i].X - from[i].X, Y: to[i].Y - from[i].Y}
		if i > 0 && d != by {
			return by, false
		}
		by = d
	}
	return by, true
}

// shiftOf is by how much all faces of a patch are moved in a picture, which must draw it once as it is.
func (s *sewer) shiftOf(patch int, drawn [][]measure.Point) (by measure.Point, err error) {
	p := &s.top.Patches[patch]
	if len(drawn) != int(p.Count) {
		return by, fmt.Errorf("patch %d has %d faces, %d are drawn", patch, p.Count, len(drawn))
	}
	for i, o := range drawn {
		d, ok := shifted(s.top.Faces[int(p.First)+i].Outline, o)
		if !ok || i > 0 && d != by {
			return by, fmt.Errorf("patch %d is drawn in another shape", patch)
		}
		by = d
	}
	return by, nil
}

// wrongLines is what is wrong with the picture of all rows, or columns: every patch of the field stands in it once, moved with its line alone, a
// quarter of a block farther for each line; the frame ends with the last; numbers and labels stand in their lines and blocks; arrows cross seams.
func wrongLines(s *sewer, f *diagram.Figure) error {
	along := func(p measure.Point) measure.NM { return p.Y }
	if s.Assembly.ByColumns {
		along = func(p measure.Point) measure.NM { return p.X }
	}
	drawn := outlinesBy(f.Marks)
	most := measure.Point{X: math.MinInt64, Y: math.MinInt64}
	startOf := map[measure.Point]measure.NM{} // where the patches of a shift begin and end
	endOf := map[measure.Point]measure.NM{}
	for i := range s.top.Patches {
		if s.top.Patches[i].Border >= 0 {
			if drawn[i] != nil {
				return fmt.Errorf("patch %d of a border stands among the lines", i)
			}
			continue
		}
		by, err := s.shiftOf(i, drawn[i])
		if err != nil {
			return err
		}
		if measure.Point(by).X != 0 && measure.Point(by).Y != 0 || along(by)%(s.SideFinished/4) != 0 {
			return fmt.Errorf("patch %d is moved by %v", i, by)
		}
		for _, p := range s.top.Patches[i].Outline {
			if at, is := startOf[by]; !is || along(p) < at {
				startOf[by] = along(p)
			}
			endOf[by] = max(endOf[by], along(p))
			most = measure.Point{X: max(most.X, p.X+by.X), Y: max(most.Y, p.Y+by.Y)}
		}
	}
	if len(startOf) != len(s.Lines()) {
		return fmt.Errorf("%d lines are moved in %d ways", len(s.Lines()), len(startOf))
	}
	for a := range startOf {
		for b := range startOf {
			if along(a) < along(b) && startOf[b] < endOf[a] {
				return fmt.Errorf("lines moved by %v and %v lie the other way round", a, b)
			}
		}
	}
	if f.Max != most || f.Min.X >= s.top.Field.Min.X || f.Min.Y >= s.top.Field.Min.Y {
		return fmt.Errorf("the frame is %v to %v, the outlines end at %v", f.Min, f.Max, most)
	}
	return s.wrongMarks(f)
}

// wrongMarks is which words stand outside of the frame, which line has no number of its own or block no label, and which arrow crosses nothing.
func (s *sewer) wrongMarks(f *diagram.Figure) error {
	numbers, labels, arrows := map[string]int{}, 0, 0
	for _, m := range f.Marks {
		switch {
		case m.Words != nil:
			if at := m.Words.At; at.X < f.Min.X || at.Y < f.Min.Y || at.X > f.Max.X || at.Y > f.Max.Y {
				return fmt.Errorf("%q stands outside", m.Words.Text)
			}
			if at := m.Words.At; at.X < s.top.Field.Min.X || at.Y < s.top.Field.Min.Y {
				numbers[strings.TrimPrefix(m.Words.Text, "row ")]++
			} else {
				labels++
			}
		case m.Line != nil && m.Line.Stroke == diagram.Pressing && len(m.Line.Points) == 2:
			arrows++
		}
	}
	if len(s.Assembly.Parts) > maxLabels {
		return nil
	}
	blocks, seams := 0, 0
	for i := range s.Assembly.Parts {
		if s.Assembly.Parts[i].Cell >= 0 {
			blocks++
		}
	}
	for _, l := range s.Lines() {
		if want := min(l.Number, 1); numbers[strconv.Itoa(l.Number)] != want && len(l.Tiles) > 0 {
			return fmt.Errorf("line %d is numbered %d times", l.Number, numbers[strconv.Itoa(l.Number)])
		}
		for _, t := range l.Tiles {
			if t.Seam >= 0 {
				seams++
			}
		}
	}
	if labels != blocks || arrows < seams {
		return fmt.Errorf("%d blocks have %d labels, %d seams have %d arrows", blocks, labels, seams, arrows)
	}
	return nil
}

// wrongBorderPicture is what is wrong with the picture of the borders: all strips and corners stand where they lie, each strip has its
// number, from 1 in the order of sewing, beside or on itself.
func wrongBorderPicture(s *sewer, f *diagram.Figure) error {
	drawn := outlinesBy(f.Marks)
	for i := range s.top.Patches {
		if s.top.Patches[i].Border < 0 {
			if drawn[i] != nil {
				return fmt.Errorf("patch %d of no border is drawn", i)
			}
			continue
		}
		if by, err := s.shiftOf(i, drawn[i]); err != nil || by != (measure.Point{}) {
			return fmt.Errorf("patch %d is moved by %v: %w", i, by, err)
		}
	}
	if f.Min != s.top.Outer.Min || f.Max != s.top.Outer.Max {
		return fmt.Errorf("the frame is %v to %v", f.Min, f.Max)
	}
	at := map[string]measure.Point{}
	for _, m := range f.Marks {
		if m.Words != nil {
			at[m.Words.Text] = m.Words.At
		}
	}
	number, seams := 0, 0
	for i := range s.Assembly.Stages {
		stage := &s.Assembly.Stages[i]
		if stage.Sort != sewing.BorderStage {
			continue
		}
		seams += stage.Count
		for _, n := range s.BorderStrips(stage) {
			number++
			p, is := at[strconv.Itoa(number)]
			if !is {
				return fmt.Errorf("strip %d has no number", number)
			}
			a, b := s.top.Patches[n].Outline[0], s.top.Patches[n].Outline[2]
			if d := fromStrip(p, a, b); d > float64(max(s.top.Outer.Width(), s.top.Outer.Height()))/10 {
				return fmt.Errorf("number %d stands %.0f from its strip", number, d)
			}
		}
	}
	arrows := 0
	for _, m := range f.Marks {
		if m.Line != nil && m.Line.Stroke == diagram.Pressing {
			arrows++
		}
	}
	if len(at) != number+1 || arrows != seams {
		return fmt.Errorf("%d words for %d strips and the center, %d arrows for %d seams", len(at), number, arrows, seams)
	}
	return nil
}

// fromStrip is how far a point lies from a rectangle.
func fromStrip(p, a, b measure.Point) float64 {
	beyond := func(at, one, other measure.NM) float64 {
		return float64(max(min(one, other)-at, at-max(one, other), 0))
	}
	return math.Hypot(beyond(p.X, a.X, b.X), beyond(p.Y, a.Y, b.Y))
}

// around2 is twice the area of an outline, more than nothing where it goes clockwise on the page.
func around2(o []measure.Point) (sum float64) {
	for i := range o {
		a, b := o[i], o[(i+1)%len(o)]
		sum += float64(a.X)*float64(b.Y) - float64(b.X)*float64(a.Y)
	}
	return sum
}

// scaleOf is by how much the pieces of a panel are larger than they are cut, less than nothing where they are shown from behind, the same for all.
func scaleOf(list []sewing.ShownPiece, marks []diagram.Mark) (scale float64, patches []int, err error) {
	drawn := outlinesBy(marks)
	for _, p := range list {
		if drawn[p.Patch] == nil {
			continue
		}
		patches = append(patches, p.Patch)
		if len(drawn[p.Patch]) != len(p.Faces) {
			return 0, nil, fmt.Errorf("patch %d has %d faces, %d are drawn", p.Patch, len(p.Faces), len(drawn[p.Patch]))
		}
		for i, o := range drawn[p.Patch] {
			ratio := around2(o) / around2(p.Faces[i].Outline)
			of := math.Copysign(math.Sqrt(math.Abs(ratio)), ratio)
			if scale != 0 && math.Abs(of/scale-1) > 1e-4 {
				return 0, nil, fmt.Errorf("patch %d is drawn %.5f times as large, another %.5f times", p.Patch, of, scale)
			}
			scale = of
		}
	}
	if len(patches) == 0 {
		return 0, nil, fmt.Errorf("it shows nothing")
	}
	return scale, patches, nil
}

// wrongStep is what is wrong with the picture of a step: its panels lie apart and hold what is drawn in them, each piece is as large as the
// others and the right way round, the unit is shown whole from before and from behind, and the seam runs down along its allowance.
func wrongStep(s *sewer, block, n int) error {
	f := s.drawStep(block, n, "a size")
	if err := wrongPanels(f); err != nil {
		return err
	}
	list := s.Shown(block).Pieces
	var unit []int
	for i := range f.Panels[:4] {
		p := &f.Panels[i]
		scale, patches, err := scaleOf(list, f.Marks[p.First:p.First+p.Count])
		if err != nil {
			return fmt.Errorf("panel %d: %w", i+1, err)
		}
		slices.Sort(patches)
		switch {
		case (scale < 0) != (i == 2):
			return fmt.Errorf("panel %d is drawn %.4f times as large", i+1, scale)
		case i == 0:
			unit = patches
		case i == 1:
			if err := wrongSeam(f.Marks[p.First:p.First+p.Count], scale*float64(s.Seam)); err != nil {
				return err
			}
		case !slices.Equal(patches, unit):
			return fmt.Errorf("panel %d shows the patches %v, the first %v", i+1, patches, unit)
		}
	}
	return nil
}

// wrongPanels is which panel of a figure holds something outside of its frame, is as large as no square, lies over another, or has no words.
func wrongPanels(f *diagram.Figure) error {
	next := 0
	for i := range f.Panels {
		p := &f.Panels[i]
		if p.First != next || p.Count == 0 || p.Caption == "" {
			return fmt.Errorf("panel %d, %q, begins with mark %d and has %d", i+1, p.Caption, p.First, p.Count)
		}
		next = p.First + p.Count
		var list []measure.Vec
		for _, m := range f.Marks[p.First:next] {
			if m.Area != nil {
				list = append(list, vecsOf(m.Area.Outline)...)
			}
			if m.Line != nil {
				list = append(list, vecsOf(m.Line.Points)...)
			}
		}
		least, most := box(list)
		if (measure.Point{X: rounded(least.X), Y: rounded(least.Y)}) != p.Min || (measure.Point{X: rounded(most.X), Y: rounded(most.Y)}) != p.Max {
			return fmt.Errorf("panel %d is %v to %v, and holds what goes from %v to %v", i+1, p.Min, p.Max, least, most)
		}
		if side := max(most.X-least.X, most.Y-least.Y); side < 0.99*panel || side > 1.3*panel {
			return fmt.Errorf("panel %d is %.0f large, not %.0f", i+1, side, panel)
		}
		for k := range i {
			if q := &f.Panels[k]; p.Min.X < q.Max.X && q.Min.X < p.Max.X && p.Min.Y < q.Max.Y && q.Min.Y < p.Max.Y {
				return fmt.Errorf("panels %d and %d lie over each other", k+1, i+1)
			}
		}
	}
	if next != len(f.Marks) {
		return fmt.Errorf("%d marks of %d are in panels", next, len(f.Marks))
	}
	return nil
}

// wrongSeam says that the seam does not run down an allowance from the right edges.
func wrongSeam(marks []diagram.Mark, allowance float64) error {
	right, seams := measure.NM(math.MinInt64), 0
	for _, m := range marks {
		if m.Area != nil {
			for _, p := range m.Area.Outline {
				right = max(right, p.X)
			}
		}
	}
	for _, m := range marks {
		if m.Line == nil || m.Line.Stroke != diagram.Sew && m.Line.Stroke != diagram.Partial {
			continue
		}
		seams++
		a, b := m.Line.Points[0], m.Line.Points[1]
		if d := float64(right - a.X); max(a.X-b.X, b.X-a.X) > 2 || math.Abs(d/allowance-1) > 0.01 {
			return fmt.Errorf("the seam runs from %v to %v, %.4f allowances from the edge", a, b, d/allowance)
		}
	}
	if seams != 1 {
		return fmt.Errorf("%d seams are drawn", seams)
	}
	return nil
}

// TestPicturesAreTheTop: what stands in pictures is the quilt, in its shapes, sizes and order, as the top has them.
func TestPicturesAreTheTop(t *testing.T) {
	bordered, steps := 0, 0
	for name, s := range sewers() {
		if len(s.top.Patches) > 700 {
			continue
		}
		if err := wrongLines(s, s.drawLines(s.wholeGrid())); err != nil {
			t.Errorf("%s, lines: %v", name, err)
		}
		if len(s.top.CutFacts.Borders) > 0 {
			bordered++
			if err := wrongBorderPicture(s, s.drawBorders()); err != nil {
				t.Errorf("%s, borders: %v", name, err)
			}
		}
		for b := range s.Blocks {
			for n := range s.Blocks[b].Steps {
				steps++
				if err := wrongStep(s, b, n); err != nil {
					t.Errorf("%s, block %s, step %d: %v", name, s.Blocks[b].Label, n+1, err)
				}
			}
			k := &s.Blocks[b]
			if units, placed := s.overview(b) != nil, s.placements(b) != nil; units != (len(k.Steps) > 1 && !k.Column) || placed != (len(k.Variants) > 1 && len(k.Variants) <= maxPictured && !k.Column) {
				t.Errorf("%s, block %s of %d steps in %d placements: its units are shown: %v, its placements: %v", name, k.Label, len(k.Steps), len(k.Variants), units, placed)
			}
			if u := s.overview(b); u != nil {
				if err := wrongPanels(s.drawUnits(b)); err != nil {
					t.Errorf("%s, units of block %s: %v", name, s.Blocks[b].Label, err)
				}
			}
			if u := s.placements(b); u != nil {
				if err := wrongPanels(s.drawPlacements(b)); err != nil {
					t.Errorf("%s, placements of block %s: %v", name, s.Blocks[b].Label, err)
				}
			}
		}
	}
	if bordered < 5 || steps < 60 {
		t.Errorf("only %d tops with borders and %d steps", bordered, steps)
	}
}
