package preview

import (
	"math"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// TestSizes compares what a patch is said to measure with sizes that quilters use. The kite's
// and the stop piece's sides, the wedge's base and tip are derived from the angles; that a
// half-square triangle takes its finished leg and seven eighths is a rule of thumb, common
// practice with no source: exactly it is 0.8536 more.
func TestSizes(t *testing.T) {
	text := "strip 4\nfabric a #f00\nfabric b #00f\nblock F floating wedges a ground b\nblock W web wedges a kites b\nblock P plain piece a\ngrid\n P F F P\n F W W F\n F W W F\n P F F P\nborder 3 a\n"
	d := draw(text, drawing{})
	if d.top == nil {
		t.Fatal(d.faults)
	}
	want := map[string][2]string{
		"wedge":      {"3 1/2 in high, base 2.899 in", "from a strip of 4 in, base 3.648 in, tip 0.334 in"},
		"kite":       {"short sides 1.569 in, long sides 2.899 in", "short sides 1.986 in, long sides 3.670 in"},
		"stop piece": {"sides 5.358 in, 3.788 in, 2.899 in, 1.569 in", "sides 6.211 in, 4.559 in, 3.234 in, 1.986 in"},
		"square":     {"5.358 in square", "5.858 in square"},
		"strip":      {"3 in × 21.430 in", "3 1/2 in × 21.930 in"},
	}
	seen := map[string]bool{}
	for i := range d.top.Patches {
		p := &d.top.Patches[i]
		w, ok := want[p.Shape.String()]
		if !ok {
			t.Errorf("a %s has no wanted size", p.Shape)
			continue
		}
		finished, cut := sizes(p.Outline, p.Shape, d.top.Seam, d.top.Units)
		seen[p.Shape.String()] = true
		if p.Shape.String() == "stop piece" || p.Shape.String() == "strip" { // either hand; either way round
			finished, cut, w = sorted(finished), sorted(cut), [2]string{sorted(w[0]), sorted(w[1])}
		}
		if strings.Contains(finished, "27.430") {
			continue // the longer strips
		}
		if finished != w[0] || cut != w[1] {
			t.Errorf("%s: %q and %q, wanted %q and %q", p.Shape, finished, cut, w[0], w[1])
		}
	}
	if len(seen) != len(want) {
		t.Errorf("seen: %v", seen)
	}
}

// sorted is a size with its letters in order, to compare sizes told from another corner.
func sorted(text string) string {
	list := strings.Split(strings.NewReplacer("sides ", "", " × ", ", ").Replace(text), ", ")
	for i := range list {
		for j := i + 1; j < len(list); j++ {
			if list[j] < list[i] {
				list[i], list[j] = list[j], list[i]
			}
		}
	}
	return strings.Join(list, ", ")
}

// TestGrownOutline: every side of a grown outline lies a seam allowance outside its own.
func TestGrownOutline(t *testing.T) {
	for name, text := range layouts(t) {
		d := draw(text, drawing{})
		if d.top == nil {
			t.Fatalf("%s: %v", name, d.faults)
		}
		for i := range d.top.Patches {
			checkGrown(t, name, d.top.Patches[i].Outline, d.top.Seam)
		}
	}
	square := []quilt.Point{{X: 0, Y: 0}, {X: 100, Y: 0}, {X: 100, Y: 100}, {X: 0, Y: 100}}
	if off := worst(square, grow(spots(square), 10), 11); off < 0.5 {
		t.Error("a wrong allowance goes unnoticed")
	}
}

func checkGrown(t *testing.T, name string, outline []quilt.Point, seam measure.NM) {
	t.Helper()
	if off := worst(outline, grow(spots(outline), float64(seam)), float64(seam)); off > 5 {
		t.Errorf("%s: a side is %.0f nanometres off its allowance", name, off)
	}
}

func spots(outline []quilt.Point) []spot {
	list := make([]spot, len(outline))
	for i, p := range outline {
		list[i] = spot{float64(p.X), float64(p.Y)}
	}
	return list
}

// worst is how far the ends of a grown side are from the wanted distance, at the worst.
func worst(outline []quilt.Point, grown []spot, by float64) float64 {
	corners, off := spots(outline), 0.0
	for i := range corners {
		j := (i + 1) % len(corners)
		x, y := outwards(corners[i], corners[j])
		for _, g := range []spot{grown[i], grown[j]} {
			off = max(off, math.Abs((g.x-corners[i].x)*x+(g.y-corners[i].y)*y-by))
		}
	}
	return off
}
