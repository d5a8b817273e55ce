package templates

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// published is one line of the table of trapezoids that quilters have published.
type published struct {
	what, source string
	holds        bool
	values       []float64
}

func publishedFigures(t *testing.T) []published {
	t.Helper()
	text, err := os.ReadFile("../../testdata/tumblers/published.tsv")
	if err != nil {
		t.Fatal(err)
	}
	var list []published
	for _, line := range strings.Split(string(text), "\n") {
		fields := strings.Split(line, "\t")
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		if len(fields) != 4 {
			t.Fatalf("%q has %d fields", line, len(fields))
		}
		p := published{what: fields[0], holds: fields[1] == "holds", source: fields[3]}
		for _, number := range strings.Fields(fields[2]) {
			v, err := strconv.ParseFloat(number, 64)
			if err != nil {
				t.Fatal(err)
			}
			p.values = append(p.values, v)
		}
		list = append(list, p)
	}
	return list
}

// upright is a trapezoid with its parallel sides upright, from their lengths and distance in inches; clockwise on screen.
func upright(left, right, width float64) []xy {
	at := func(x, y float64) xy { return xy{x * float64(measure.Inch), y * float64(measure.Inch)} }
	d := (right - left) / 2
	return []xy{at(0, 0), at(width, -d), at(width, right-d), at(0, left)}
}

// cutSides is what a finished trapezoid is cut by a template, in inches: its wide and its narrow side, and its height.
func cutSides(t *testing.T, wide, narrow, height float64) (cutWide, cutNarrow, cutHeight float64) {
	t.Helper()
	cut := cutOutline(upright(wide, narrow, height), float64(measure.Inch)/4)
	if len(cut) != 4 {
		t.Fatalf("a trapezoid is cut with %d corners", len(cut))
	}
	inch := float64(measure.Inch)
	return distance(cut[3], cut[0]) / inch, distance(cut[1], cut[2]) / inch, math.Abs(cut[1].x-cut[0].x) / inch
}

// areaInTop is the area of a trapezoid in square inches, as a top takes it: beside a square inch of another fabric.
func areaInTop(wide, narrow, height float64) float64 {
	whole := func(list []xy) (outline []measure.Point) {
		for _, p := range list {
			outline = append(outline, measure.Point{X: measure.NM(math.Round(p.x)), Y: measure.NM(math.Round(p.y))})
		}
		return outline
	}
	top := quilt.Top{Fabrics: make([]quilt.Fabric, 2), Faces: []quilt.Face{
		{Fabric: 0, Outline: whole(upright(wide, narrow, height))}, {Fabric: 1, Outline: whole(upright(1, 1, 1))},
	}}
	share := top.Share()
	return share[0] / share[1]
}

// differs says how far a published figure lies, in inches or square inches, from what templates and tops give for its piece.
func (p published) differs(t *testing.T) float64 {
	t.Helper()
	v := p.values
	switch p.what {
	case "finished sides": // raw sides and height; the sides and the height that they finish at
		wide, narrow, height := cutSides(t, v[3], v[4], v[5])
		return max(math.Abs(wide-v[0]), math.Abs(narrow-v[1]), math.Abs(height-v[2]))
	case "mean finished": // raw sides and height; the mean of the finished sides
		half := (v[0] - v[1]) / 2 / v[2] * (v[2] - 0.5) // of the difference of the finished sides, which lean alike
		wide, narrow, height := cutSides(t, v[3]+half, v[3]-half, v[2]-0.5)
		return max(math.Abs(wide-v[0]), math.Abs(narrow-v[1]), math.Abs(height-v[2]))
	case "area": // sides and height; the area
		return math.Abs(areaInTop(v[0], v[1], v[2]) - v[3])
	}
	t.Fatalf("nothing is known of %q", p.what)
	return 0
}

// Trapezoids that quilters have published: those that are right are what templates and tops make of the same piece, and
// those known for slips are not.
func TestJudgePublishedTrapezoids(t *testing.T) {
	right, slips := 0, 0
	for _, p := range publishedFigures(t) {
		off := p.differs(t)
		if p.holds {
			right++
		} else {
			slips++
		}
		if (off <= 1.2e-3) != p.holds { // finished sides are given to a thousandth
			t.Errorf("%s %v is off by %.4f (%s)", p.what, p.values, off, p.source)
		}
		if !strings.HasPrefix(p.source, "http") && !strings.HasPrefix(p.source, "derived") {
			t.Errorf("%s %v has no source", p.what, p.values)
		}
	}
	if right < 4 || slips < 2 {
		t.Errorf("%d figures are right, %d are slips", right, slips)
	}
}
