package sewing_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
)

// inventedPoint is seams that meet in a point: one that runs through, or all of one turn, and others on either side of it that were sewn before.
func inventedPoint(v *rand.Rand) (m meetPoint) {
	const part = math.Pi / 8
	orders := v.Perm(14)
	for i := range 16 {
		if through := i%8 == 0; through || v.IntN(3) == 0 {
			a := meetArm{way: float64(i) * part, clockwise: v.IntN(2) == 0, order: 99}
			if !through {
				a.order = orders[0]
				orders = orders[1:]
			}
			m = append(m, a)
		}
	}
	m[0].clockwise = v.IntN(2) == 0
	return m
}

// TestLayersEverywhere: at every point round invented points where seams meet lie as many layers as pieces have cloth that comes to lie there,
// in each way of pressing. Seen: the layers that "bulk" tells of.
func TestLayersEverywhere(t *testing.T) {
	v := rand.New(rand.NewPCG(21, 22))
	for range 12 {
		m := inventedPoint(v)
		var arms []sewing.ArmAt
		for _, a := range m {
			arms = append(arms, sewing.ArmAt{From: a.way, Order: a.order, Clockwise: a.clockwise})
		}
		got := sewing.LayersAt(arms)
		for mode, folds := range [4][][]fold{m.sewn(false), m.sewn(true), m.apart(true), m.apart(false)} {
			differ, pieces := 0, m.outlines()
			for row := range got[mode] {
				for column, layers := range got[mode][row] {
					x, y := sewing.GridAt(column, row)
					if int(layers) != layersAt(pieces, measure.Vec{X: x, Y: y}, folds) {
						differ++
					}
				}
			}
			if differ > 0 {
				t.Fatalf("pressed in way %d, %d points have other layers: %+v", mode, differ, m)
			}
		}
	}
}

// TestSlivers: what fewer than four points of the grid see does not count.
func TestSlivers(t *testing.T) {
	for points, want := range map[int]int{0: 2, 3: 2, 4: 7, 50: 7} {
		if got := sewing.Thickest(2, 7, points); got != want {
			t.Errorf("with %d points of 7 layers, 2 elsewhere: %d", points, got)
		}
	}
	if a, b := sewing.Thickest(0, 0, 0), sewing.Thickest(255, 255, 0); a != 0 || b != 255 {
		t.Errorf("with no layers, and with as many as can be counted: %d, %d", a, b)
	}
}
