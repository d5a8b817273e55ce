package quilt

import (
	"fmt"
	"math"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/layout"
)

// Block is one block of a label, or the whole column that it stands in, as a top of its own: the one nearest to the middle of the
// grid. Labels are compared as the language compares names. That there is none is the error.
func (t *Top) Block(label string) (*Top, error) {
	for _, i := range t.fromTheMiddle() {
		if t.Empty(i) || layout.FoldName(t.Cells[i].Label) != layout.FoldName(label) {
			continue
		}
		for _, c := range t.CutFacts.Columns {
			if x := i % t.Columns; c.First%t.Columns == x && i >= c.First && i < c.First+c.Cells*t.Columns {
				return t.cut(c.First, 1, c.Cells), nil
			}
		}
		return t.cut(i, 1, 1), nil
	}
	return nil, fmt.Errorf(`no block of the grid is called "%s"`, layout.Visible(label))
}

// Center is four blocks whose corner is the middle of a whole figure, "web" or "star" as in layout.Centers, as a top of their
// own: those nearest to the middle of the grid. That there are none is the error.
func (t *Top) Center(figure string) (*Top, error) {
	if t.StepFinished == t.SideFinished {
		whole := map[string]int{layout.Centers()[0]: wedgesRound, layout.Centers()[1]: kitesRound}[figure]
		pointing := map[measure.Point][]int{}
		for i := range t.Patches {
			if p := &t.Patches[i]; p.Cell >= 0 {
				pointing[p.Outline[0]] = append(pointing[p.Outline[0]], i)
			}
		}
		for _, i := range t.fromTheMiddle() {
			if t.closes(pointing[t.CellRect(i).Max], whole) { // which no corner on an edge of the grid does
				return t.cut(i, 2, 2), nil
			}
		}
	}
	return nil, fmt.Errorf("no %s is complete within the blocks of the grid", figure)
}

// fromTheMiddle is all cells, those nearest to the middle of the grid first.
func (t *Top) fromTheMiddle() []int {
	list := make([]int, len(t.Cells))
	for i := range list {
		list[i] = i
	}
	away := func(i int) int {
		x, y := 2*(i%t.Columns)+1-t.Columns, 2*(i/t.Columns)+1-t.Rows
		return x*x + y*y
	}
	slices.SortStableFunc(list, func(a, b int) int { return away(a) - away(b) })
	return list
}

// Pieces that make a whole turn round a corner of four blocks.
const (
	wedgesRound = 8
	kitesRound  = 4
)

// closes says whether so many patches of one shape that point at one place close round it.
func (t *Top) closes(patches []int, whole int) bool {
	sum := 0.0
	for _, i := range patches {
		if t.Patches[i].Shape != t.Patches[patches[0]].Shape {
			return false
		}
		o := t.Patches[i].Outline
		sum += angle(o[0], o[1], o[len(o)-1])
	}
	const slack = 1e-3 // radians
	return len(patches) == whole && math.Abs(sum-2*math.Pi) < slack
}

// angle is the angle at a corner between the ways to two others, in radians, 0 to pi.
func angle(at, a, b measure.Point) float64 {
	ax, ay, bx, by := float64(a.X-at.X), float64(a.Y-at.Y), float64(b.X-at.X), float64(b.Y-at.Y)
	return math.Acos((float64(ax*bx) + float64(ay*by)) / (math.Hypot(ax, ay) * math.Hypot(bx, by)))
}

// cut is some cells side by side as a top without borders and sashes. Its fabrics and roles are those of the whole, by index.
func (t *Top) cut(first, across, down int) *Top {
	other := *t
	from, to := t.CellRect(first), t.CellRect(first+(down-1)*t.Columns+across-1)
	other.Columns, other.Rows = across, down
	other.Outer = Rect{Max: measure.Point{X: to.Max.X - from.Min.X, Y: to.Max.Y - from.Min.Y}}
	other.Field, other.FirstCell, other.StepFinished = other.Outer, measure.Point{}, t.StepFinished
	other.Cells, other.Patches, other.Faces, other.CutOf = nil, nil, nil, nil
	other.Colorways, other.Sizes, other.Warnings, other.Dealt = nil, nil, nil, nil
	c := &cutting{whole: t, part: &other, by: measure.Point{X: -from.Min.X, Y: -from.Min.Y}, face: make([]int32, len(t.Faces))}
	for i := range c.face {
		c.face[i] = -1
	}
	for y := range down {
		for x := range across {
			c.cell(first + y*t.Columns + x)
		}
	}
	other.Seams, other.StripSeams, other.Alike = c.seams(t.Seams), c.seams(t.StripSeams), nil
	other.CutFacts = CutFacts{Fabrics: t.CutFacts.Fabrics, Sets: t.CutFacts.Sets, StripsCut: t.CutFacts.StripsCut, StripGiven: t.CutFacts.StripGiven, Backing: -1}
	return &other
}

// cutting takes cells out of a top.
type cutting struct {
	whole, part *Top
	by          measure.Point // what is added to every place
	face        []int32       // by face of the whole: its index in the part, -1 for none
}

func (c *cutting) cell(i int) {
	cell := c.whole.Cells[i]
	patches := c.whole.Patches[cell.First:][:cell.Count]
	cell.First = len(c.part.Patches)
	for n, p := range patches {
		first := p.First
		if c.whole.CutOf != nil {
			c.part.CutOf = append(c.part.CutOf, c.whole.CutOf[c.whole.Cells[i].First+n])
		}
		p.Outline, p.Cell, p.First = c.moved(p.Outline), int32(len(c.part.Cells)), int32(len(c.part.Faces))
		for f := first; f < first+p.Count; f++ {
			face := c.whole.Faces[f]
			c.face[f] = int32(len(c.part.Faces))
			face.Outline, face.Patch = c.moved(face.Outline), int32(len(c.part.Patches))
			c.part.Faces = append(c.part.Faces, face)
		}
		c.part.Patches = append(c.part.Patches, p)
	}
	c.part.Cells = append(c.part.Cells, cell)
}

func (c *cutting) moved(outline []measure.Point) []measure.Point {
	outline = slices.Clone(outline)
	for i := range outline {
		outline[i] = outline[i].Add(c.by)
	}
	return outline
}

// seams are those whose two faces are both in the part.
func (c *cutting) seams(list []Seam) (kept []Seam) {
	for _, s := range list {
		if s.A, s.B = c.face[s.A], c.face[s.B]; s.A >= 0 && s.B >= 0 {
			s.From, s.To = s.From.Add(c.by), s.To.Add(c.by)
			kept = append(kept, s)
		}
	}
	return kept
}
