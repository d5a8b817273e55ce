package quilt_test

import (
	"math"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// place is a point in inches, y downwards.
type place struct{ x, y float64 }

func (p place) minus(q place) place { return place{p.x - q.x, p.y - q.y} }
func (p place) length() float64     { return math.Hypot(p.x, p.y) }

func apart(p, q place) float64 { return p.minus(q).length() }

func inInches(nm measure.NM) float64 { return float64(nm) / float64(measure.Inch) }

// finished is a patch's outline in inches.
func finished(outline []measure.Point) []place {
	list := make([]place, len(outline))
	for i, p := range outline {
		list[i] = place{inInches(p.X), inInches(p.Y)}
	}
	return list
}

// grown is a convex outline with every side moved outwards by q and the corners mitred: the
// piece as it is cut, before any tip is cut off. Corners keep their numbers.
func grown(o []place, q float64) []place {
	list := make([]place, len(o))
	for i := range o {
		before, here, after := o[(i+len(o)-1)%len(o)], o[i], o[(i+1)%len(o)]
		a, b := here.minus(before), after.minus(here)
		la, lb := a.length(), b.length()
		// With both sides moved by q, the corner moves along the sum of the two ways away
		// from it until it stands q off either side.
		cross := (a.x*b.y - a.y*b.x) / (la * lb)
		list[i] = place{
			here.x + q/cross*(a.x/la-b.x/lb),
			here.y + q/cross*(a.y/la-b.y/lb),
		}
	}
	return list
}

// side is the length of an outline's side from corner i to the next.
func side(o []place, i int) float64 { return apart(o[i], o[(i+1)%len(o)]) }

// areaOf is an outline's area in square inches.
func areaOf(o []place) float64 {
	sum := 0.0
	for i, p := range o {
		q := o[(i+1)%len(o)]
		sum += p.x*q.y - p.y*q.x
	}
	return sum / 2
}

// middle is half way between two places.
func middle(p, q place) place { return place{(p.x + q.x) / 2, (p.y + q.y) / 2} }

// wedge is a wedge measured: finished and as cut, all in inches.
type wedge struct {
	finished, raw []place
	height        float64 // finished
	strip         float64 // cut
	base, tip     float64 // of the cut piece, which stands between the strip's raw edges
}

// measureWedge measures a wedge's outline for a seam allowance.
func measureWedge(outline []measure.Point, q float64) wedge {
	w := wedge{finished: finished(outline)}
	w.raw = grown(w.finished, q)
	w.height = apart(w.finished[0], middle(w.finished[1], w.finished[2]))
	w.strip = w.height + 2*q
	w.base = side(w.raw, 1)
	sharp := apart(w.raw[0], middle(w.raw[1], w.raw[2]))
	w.tip = w.base * (sharp - w.strip) / sharp
	return w
}

// fromStrip is how many wedges, turned by half a turn at every cut, come from so much of a
// strip: the first takes a base, each further one half a base and half a tip.
func (w wedge) fromStrip(length float64) int {
	return 1 + int(math.Floor((length-w.base)/((w.base+w.tip)/2)))
}

// ofShape is the outlines of a top's patches of one shape, in the order of the list.
func ofShape(t testing.TB, top *quilt.Top, s blocks.Shape) [][]measure.Point {
	t.Helper()
	var list [][]measure.Point
	for i := range top.Patches {
		if top.Patches[i].Shape == s {
			list = append(list, top.Patches[i].Outline)
		}
	}
	if len(list) == 0 {
		t.Fatalf("the top has no %s", s)
	}
	return list
}

// byHeight is the name of the first kind that lays pieces of its own with wedges of that
// height.
func byHeight(h blocks.WedgeHeight) string {
	for _, k := range blocks.Kinds() {
		if k.Height == h && len(k.Pieces) > 0 {
			return k.Name
		}
	}
	return ""
}

// plainBlocks is a layout of one size line and a grid of one kind, all of one fabric.
func plainBlocks(size, kind, grid string) string {
	text := size + "\nfabric a #123\nblock A " + kind
	k, _ := blocks.Find(blocks.Kinds(), kind)
	for _, r := range k.Roles {
		text += " " + r.Name + " a"
		for n := 1; len(r.Counts) > 0 && n < r.Counts[0]; n++ {
			text += " a"
		}
	}
	return text + "\ngrid\n" + grid + "\n"
}

// about tells two measures apart that differ by more than a tolerance.
func about(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if math.Abs(got-want) > tolerance {
		t.Errorf("%s: %.6f, want %.6f", what, got, want)
	}
}

// TestMeasuringMeasures tries the measuring itself on shapes whose measures are known: a
// square grows by a seam on each side, and a right triangle by (2 + sqrt 2) q.
func TestMeasuringMeasures(t *testing.T) {
	square := grown([]place{{0, 0}, {3, 0}, {3, 3}, {0, 3}}, 0.25)
	about(t, "a square's side", side(square, 0), 3.5, 1e-12)
	about(t, "a square's area", areaOf(square), 3.5*3.5, 1e-12)
	triangle := grown([]place{{0, 0}, {3, 0}, {0, 3}}, 0.25)
	about(t, "a triangle's side", side(triangle, 0), 3+(2+math.Sqrt2)/4, 1e-12)
	w := wedge{base: 3, tip: 1}
	if w.fromStrip(3) != 1 || w.fromStrip(4.999) != 1 || w.fromStrip(5) != 2 || w.fromStrip(7) != 3 {
		t.Error("wedges from a strip are miscounted")
	}
}
