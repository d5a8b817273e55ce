package quilt_test

import (
	"fmt"
	"math"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// columnTop is columns of the kind that has them, divided as the option says.
func columnTop(t *testing.T, size, option, grid string) *quilt.Top {
	t.Helper()
	for _, k := range blocks.Kinds() {
		if k.Column {
			return lay(t, size+"\nfabric a #123\nblock A "+k.Name+" "+k.Roles[0].Name+" a "+option+"\ngrid\n"+grid+"\n")
		}
	}
	t.Fatal("no kind has columns")
	return nil
}

// trapezoid is a piece of a column with its long edges measured, finished and cut.
type trapezoid struct {
	left, right       float64 // finished
	rawLeft, rawRight float64
	width             float64 // finished, of the column
}

func measureTrapezoid(outline []measure.Point, q float64) trapezoid {
	o := finished(outline)
	raw := grown(o, q)
	return trapezoid{side(o, 3), side(o, 1), side(raw, 3), side(raw, 1), o[1].x - o[0].x}
}

// TestJudgeTumbler: strips of 7 1/2 cut by line 10 of a wedge rule give pieces of a mean
// length of 4.9706, cut 8.6184 at the wide end and 2.4052 at the narrow one; opposite pieces
// lead each other by 0.2071 where they are sewn (all derived).
func TestJudgeTumbler(t *testing.T) {
	top := columnTop(t, "strip 7 1/2", "line 10", " A A\n A A\n A A\n A A")
	for _, outline := range ofShape(t, top, blocks.Tumbler) {
		p := measureTrapezoid(outline, 0.25)
		about(t, "mean", (p.left+p.right)/2, 4.9706, 5e-5)
		about(t, "wide, cut", max(p.rawLeft, p.rawRight), 8.6184, 5e-5)
		about(t, "narrow, cut", min(p.rawLeft, p.rawRight), 2.4052, 5e-5)
		about(t, "strip, cut", p.width+0.5, 7.5, 1e-7)
		o := finished(outline)
		lead := beyond(o, 0, 1) - beyond(o, 1, 0)
		about(t, "lead", math.Abs(lead), 0.2071, 5e-5)
	}
}

// TestJudgeEndPieces: an end piece of mean length e is cut e + q + q/C +- T w/2 along its two
// edges, so two of one hand come from a rectangle 2(e + q + q/C) by w (derived).
func TestJudgeEndPieces(t *testing.T) {
	const q = 0.25
	cos, tan := math.Cos(math.Pi/8), math.Tan(math.Pi/8)
	for _, c := range [][2]string{{"strip 7 1/2", "line 10"}, {"side 4", "about 3"}, {"side 5 1/8", "line 7 3/8"}} {
		top := columnTop(t, c[0], c[1], " A A\n A A\n A A")
		strip := inInches(top.SideFinished) + 2*q
		for _, outline := range ofShape(t, top, blocks.HalfTumbler) {
			p := measureTrapezoid(outline, q)
			mean := (p.left+p.right)/2 + q + q/cos
			about(t, c[1]+": long edge", max(p.rawLeft, p.rawRight), mean+tan*strip/2, 1e-6)
			about(t, c[1]+": short edge", min(p.rawLeft, p.rawRight), mean-tan*strip/2, 1e-6)
			about(t, c[1]+": two from a rectangle", p.rawLeft+p.rawRight, 2*mean, 1e-6)
		}
	}
}

// TestJudgeHands: the two ends of a column have the same hand, the one turned by half a turn
// being the other, when the number of whole pieces is even, and opposite hands when it is
// odd (derived).
func TestJudgeHands(t *testing.T) {
	seen := map[bool]int{}
	for cells := 1; cells <= 6; cells++ {
		grid := ""
		for range cells {
			grid += " A\n"
		}
		for _, option := range []string{"about 3", "about 2 1/2", "about 4", "line 6"} {
			top := columnTop(t, "side 4", option, grid)
			whole := len(top.Patches) - 2
			ends := ofShape(t, top, blocks.HalfTumbler)
			upper, lower := measureTrapezoid(ends[0], 0.25), measureTrapezoid(ends[1], 0.25)
			same := upper.left > upper.right == (lower.right > lower.left)
			if same != (whole%2 == 0) {
				t.Errorf("%d cells, %s: %d whole pieces, ends of the same hand: %v", cells, option, whole, same)
			}
			seen[same]++
		}
	}
	if seen[true] == 0 || seen[false] == 0 {
		t.Errorf("hands seen: %v", seen)
	}
}

// TestJudgeColumnsMeet: columns side by side are mirror images: every seam of one runs on in
// the other, and wide ends face wide ends (a fact of the trade where the slant is the same:
// common practice, no source).
func TestJudgeColumnsMeet(t *testing.T) {
	top := columnTop(t, "side 4", "about 3", " A A A\n A A A\n A A A")
	between := 0
	for _, s := range top.Seams {
		a, b := top.Patches[top.Faces[s.A].Patch], top.Patches[top.Faces[s.B].Patch]
		if a.Cell%3 == b.Cell%3 {
			continue
		}
		between++
		length := inInches(s.To.Y - s.From.Y)
		p, q := measureTrapezoid(a.Outline, 0.25), measureTrapezoid(b.Outline, 0.25)
		if p.left != q.right && p.right != q.left || math.Abs(length) != p.left && math.Abs(length) != p.right {
			t.Errorf("a seam of %.4f lies between %s and %s", length, fmt.Sprint(a.Outline), fmt.Sprint(b.Outline))
		}
	}
	if pieces := len(top.Patches) / 3; between != 2*pieces {
		t.Errorf("%d seams lie between 3 columns of %d pieces", between, pieces)
	}
}
