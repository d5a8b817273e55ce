package blocks_test

import (
	"eighthturn/internal/quilttest/lay"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

const inch = float64(measure.Inch)

// tumblers is a layout of so many columns and cells, divided as the words say.
func tumblers(size, divided string, columns, cells int) string {
	row := strings.Repeat(" T", columns) + "\n"
	return size + "\nfabric a #123\nblock T tumblers pieces a " + divided + "\ngrid\n" + strings.Repeat(row, cells)
}

// trapezoid is the two parallel sides of a piece, upright on the page, as lengths in inches
// on the left and on the right, and how far apart they lie.
type trapezoid struct{ left, right, width float64 }

// wide and narrow are the longer and the shorter of the parallel sides.
func (p trapezoid) wide() float64   { return max(p.left, p.right) }
func (p trapezoid) narrow() float64 { return min(p.left, p.right) }
func (p trapezoid) mean() float64   { return (p.left + p.right) / 2 }

// measured reads the parallel sides off an outline; ok is false where it has none.
func measured(outline [][2]float64) (p trapezoid, ok bool) {
	at := map[float64][]float64{}
	for _, c := range outline {
		x := math.Round(c[0]*1e7) / 1e7
		at[x] = append(at[x], c[1])
	}
	if len(outline) != 4 || len(at) != 2 {
		return p, false
	}
	least, most := math.Inf(1), math.Inf(-1)
	for x := range at {
		least, most = min(least, x), max(most, x)
	}
	side := func(x float64) float64 { return math.Abs(at[x][0] - at[x][len(at[x])-1]) }
	return trapezoid{side(least), side(most), most - least}, len(at[least]) == 2 && len(at[most]) == 2
}

// inInches is a patch's outline in inches.
func inInches(outline []measure.Point) [][2]float64 {
	var list [][2]float64
	for _, p := range outline {
		list = append(list, [2]float64{float64(p.X) / inch, float64(p.Y) / inch})
	}
	return list
}

// grown is an outline, clockwise on screen, with a seam allowance all round: every side
// moved outwards, neighbouring sides cut where they cross. A negative allowance takes one
// away.
func grown(outline [][2]float64, allowance float64) [][2]float64 {
	n := len(outline)
	line := func(i int) (x, y, dx, dy float64) {
		p, q := outline[i%n], outline[(i+1)%n]
		dx, dy = q[0]-p[0], q[1]-p[1]
		length := math.Hypot(dx, dy)
		return p[0] + dy/length*allowance, p[1] - dx/length*allowance, dx, dy
	}
	var list [][2]float64
	for i := range n {
		x1, y1, dx1, dy1 := line(i + n - 1)
		x2, y2, dx2, dy2 := line(i)
		s := ((x2-x1)*dy2 - (y2-y1)*dx2) / (dx1*dy2 - dy1*dx2)
		list = append(list, [2]float64{x1 + s*dx1, y1 + s*dy1})
	}
	return list
}

func near(a, b, slack float64) bool { return math.Abs(a-b) <= slack }

// TestJudgeCutByLine: a strip of 7 1/2 and line 10 of the rule, measured off the laid-out
// pieces grown by their seams: 8.6184 at the wide end, 2.4052 at the narrow one, 7 1/2
// across; finished they are 4.9706 long in the mean. (Derived: cut wide = 2T(n - q + q/S),
// cut narrow = 2T(n - w - q + q/S), mean = T(2n - w - 2q), with T = tan 22.5, S = sin 22.5.)
func TestJudgeCutByLine(t *testing.T) {
	top := lay.Top(t, tumblers("strip 7 1/2", "line 10", 2, 5))
	whole := 0
	for i, p := range top.Patches {
		finished, ok := measured(inInches(p.Outline))
		cut, okCut := measured(grown(inInches(p.Outline), 0.25))
		if !ok || !okCut {
			t.Fatalf("patch %d is no trapezoid: %v", i, p.Outline)
		}
		if !near(finished.width, 7, 1e-6) || !near(cut.width, 7.5, 1e-6) {
			t.Errorf("patch %d is %.4f wide, cut %.4f", i, finished.width, cut.width)
		}
		if p.Shape != blocks.Tumbler {
			continue
		}
		whole++
		if !near(cut.wide(), 8.6184, 5e-5) || !near(cut.narrow(), 2.4052, 5e-5) || !near(finished.mean(), 4.9706, 5e-5) {
			t.Errorf("patch %d is cut %.4f and %.4f, its mean is %.4f", i, cut.wide(), cut.narrow(), finished.mean())
		}
	}
	if whole < 10 {
		t.Errorf("only %d whole pieces", whole)
	}
}

// TestJudgeEndPieces: an end piece of mean width e is cut e + q + q/C +- T w/2 at its edges
// (derived), and the two of a column with an even number of whole pieces have one hand: the
// same piece turned by half a turn. With an odd number they are mirror images, as in the rows
// of nine of https://www.butterflythreadsquilting.com/2013/09/half-tumblers-and-give-away.html.
func TestJudgeEndPieces(t *testing.T) {
	tan, cos := math.Tan(math.Pi/8), math.Cos(math.Pi/8)
	even, odd := 0, 0
	for cells := 1; cells < 9; cells++ {
		d, _, _ := layout.Read(tumblers("strip 7 1/2", "line 10", 1, cells))
		divided := d.Runs[0].Divided
		top := quilt.Lay(d)
		first, last := top.Patches[0], top.Patches[len(top.Patches)-1]
		for _, p := range []quilt.Patch{first, last} {
			cut, _ := measured(grown(inInches(p.Outline), 0.25))
			mean := divided.End/inch + 0.25 + 0.25/cos
			if p.Shape != blocks.HalfTumbler || !near(cut.wide(), mean+tan*7.5/2, 1e-6) || !near(cut.narrow(), mean-tan*7.5/2, 1e-6) {
				t.Errorf("%d cells: an end piece, a %s, is cut %.4f and %.4f, its mean is %.4f", cells, p.Shape, cut.wide(), cut.narrow(), mean)
			}
		}
		a, _ := measured(inInches(first.Outline))
		b, _ := measured(inInches(last.Outline))
		sameHand := (a.left > a.right) == (b.right > b.left)
		if sameHand != (divided.Whole%2 == 0) {
			t.Errorf("%d whole pieces: the ends are %+v and %+v", divided.Whole, a, b)
		}
		if divided.Whole%2 == 0 {
			even++
		} else {
			odd++
		}
	}
	if even == 0 || odd == 0 {
		t.Errorf("%d columns with an even number of whole pieces, %d with an odd one", even, odd)
	}
}

// TestColumnsMirror: every column is its neighbour's mirror image, the seams of both meet,
// and whole pieces and ends come to the column's length.
func TestColumnsMirror(t *testing.T) {
	rng := rand.New(rand.NewPCG(97, 101))
	for range 150 {
		size, divided := fmt.Sprintf("side %d.%03d", 2+rng.IntN(7), rng.IntN(1000)), fmt.Sprintf("about %d.%02d", 5+rng.IntN(4), rng.IntN(100))
		if rng.IntN(2) == 0 {
			divided = fmt.Sprintf("line %d.%02d", 11+rng.IntN(9), rng.IntN(100))
		}
		text := tumblers(size, divided, 4, 1+rng.IntN(7))
		d, _, faults := layout.Read(text)
		if d == nil {
			t.Fatalf("%+v in\n%s", faults, text)
		}
		top, run := quilt.Lay(d), d.Runs[0]
		if sum, length := float64(run.Divided.Whole)*run.Divided.Mean+2*run.Divided.End, float64(run.Cells)*float64(d.SideFinished); !near(sum, length, 1) {
			t.Errorf("pieces and ends come to %.0f, the column to %.0f in\n%s", sum, length, text)
		}
		if err := mirrored(top); err != nil {
			t.Errorf("%v in\n%s", err, text)
		}
	}
}

// mirrored holds columns of one label against their neighbours.
func mirrored(top *quilt.Top) error {
	columns := make([]map[string]bool, top.Columns)
	seams := make([]map[measure.NM]int, top.Columns+1)
	for i := range seams {
		seams[i] = map[measure.NM]int{}
	}
	for _, p := range top.Patches {
		x := int(p.Cell) % top.Columns
		if columns[x] == nil {
			columns[x] = map[string]bool{}
		}
		columns[x][fmt.Sprint(fromLeft(p.Outline, measure.NM(x)*top.SideFinished, x%2 == 1, top.SideFinished))] = true
		for _, c := range p.Outline {
			seams[int(c.X/top.SideFinished)][c.Y] |= 1 << (x % 2)
		}
	}
	for x := range columns {
		if len(columns[x]) != len(columns[0]) {
			return fmt.Errorf("column %d has %d pieces, the first %d", x, len(columns[x]), len(columns[0]))
		}
		for piece := range columns[x] {
			if !columns[0][piece] {
				return fmt.Errorf("column %d has the piece %s, which mirrors none of the first column's", x, piece)
			}
		}
	}
	for x := 1; x < top.Columns; x++ {
		for y, both := range seams[x] {
			if both != 3 {
				return fmt.Errorf("a seam ends at %d on the line %d, and none goes on", y, x)
			}
		}
	}
	return nil
}

// fromLeft is an outline within its column, mirrored or not, as the set of its corners.
func fromLeft(outline []measure.Point, left measure.NM, mirror bool, side measure.NM) map[measure.Point]bool {
	corners := map[measure.Point]bool{}
	for _, c := range outline {
		c.X -= left
		if mirror {
			c.X = side - c.X
		}
		corners[c] = true
	}
	return corners
}

// TestColumnsMirrorNotices: columns that lean the same way, or are shifted by a nanometre,
// are found.
func TestColumnsMirrorNotices(t *testing.T) {
	text := tumblers("side 6", "about 4", 3, 4)
	if err := mirrored(lay.Top(t, text)); err != nil {
		t.Fatal(err)
	}
	for what, change := range map[string]func(x int, p *measure.Point, side measure.NM){
		"same lean": func(x int, p *measure.Point, side measure.NM) {
			p.X = measure.NM(x)*side + side - (p.X - measure.NM(x)*side)
		},
		"shifted": func(_ int, p *measure.Point, _ measure.NM) { p.Y++ },
	} {
		top := lay.Top(t, text)
		for i := range top.Patches {
			if x := int(top.Patches[i].Cell) % top.Columns; x == 1 {
				for j := range top.Patches[i].Outline {
					change(x, &top.Patches[i].Outline[j], top.SideFinished)
				}
			}
		}
		if mirrored(top) == nil {
			t.Errorf("%s: the spoilt columns pass", what)
		}
	}
}

// TestAboutIsNearest: no other number of pieces of a laid-out column comes nearer to the
// length asked for, ends counted as halves.
func TestAboutIsNearest(t *testing.T) {
	rng := rand.New(rand.NewPCG(103, 107))
	for range 200 {
		about, cells := 2+float64(rng.IntN(600))/100, 1+rng.IntN(8)
		top := lay.Top(t, tumblers("side 4", fmt.Sprintf("about %.2f", about), 1, cells))
		pieces := float64(len(top.Patches) - 1) // two ends are one
		length := float64(4 * cells)
		for other := 1.0; other < 40; other++ {
			if math.Abs(length/about-other) < math.Abs(length/about-pieces)-1e-9 {
				t.Errorf("a column of %v in pieces of about %v has %v, and %v come nearer", length, about, pieces, other)
			}
		}
	}
}

// TestFaultsSayWhatFits: what a fault offers in place of pieces without a narrow side can
// be typed and is laid out.
func TestFaultsSayWhatFits(t *testing.T) {
	offered := 0
	for _, size := range []string{"side 7", "strip 7 1/2", "side 3 3/8", "units cm\nside 18", "side 11.3"} {
		for _, divided := range []string{"line 7", "about 1", "line 1/2", "about 1/2"} {
			d, _, faults := layout.Read(tumblers(size, divided, 2, 5))
			if d != nil {
				continue
			}
			for _, instead := range strings.Split(faults[0].Hint, ", or ") {
				words, ok := strings.CutSuffix(instead, " or more")
				if !ok {
					t.Errorf("%s, %s: the hint is %q", size, divided, faults[0].Hint)
					continue
				}
				offered++
				for _, p := range lay.Top(t, tumblers(size, words, 2, 5)).Patches {
					if m, ok := measured(inInches(p.Outline)); !ok || m.narrow() <= 0 {
						t.Errorf("%s, %s: %s was offered, and a piece is %+v", size, divided, words, m)
					}
				}
			}
		}
	}
	if offered < 20 {
		t.Errorf("only %d offers were made", offered)
	}
}
