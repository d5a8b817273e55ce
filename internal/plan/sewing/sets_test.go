package sewing

import (
	"math/rand/v2"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
)

// TestSetGraph: sets that joints tie together are pressed one way each so that all joints nest, if any ways do that and none of the sets
// has wedges of both kinds that are one; else each wedge goes by its place. Every way is tried.
func TestSetGraph(t *testing.T) {
	v := rand.New(rand.NewPCG(31, 32))
	whole, byPlace := 0, 0
	for range 400 {
		n := 1 + v.IntN(5)
		cuts := &cutting.Plan{Sets: make([]cutting.StripSet, n)}
		for i := range cuts.Sets {
			cuts.Sets[i].Alike = v.IntN(6) == 0
		}
		var joints [][2]setWedge
		for range v.IntN(2 * n) {
			joints = append(joints, [2]setWedge{{v.IntN(n+1) - 1, v.IntN(2) == 0}, {v.IntN(n+1) - 1, v.IntN(2) == 0}})
		}
		g := newSetGraph(cuts)
		for _, j := range joints {
			g.unlike(j[0], j[1])
		}
		for set := range n {
			tied := tiedTo(set, joints)
			if want := !canNest(n, tied, cuts, joints); g.byPlace(set) != want {
				t.Fatalf("set %d is pressed by place: %v\n%v, %+v", set, !want, joints, cuts.Sets)
			} else if want {
				byPlace++
			} else {
				whole++
			}
		}
		for _, j := range joints {
			if min(j[0].set, j[1].set) >= 0 && !g.byPlace(j[0].set) && (g.first(j[0].set) != j[0].reversed) == (g.first(j[1].set) != j[1].reversed) {
				t.Fatalf("%v are pressed alike", j)
			}
		}
	}
	if whole < 100 || byPlace < 100 {
		t.Errorf("%d sets were pressed one way, %d by place", whole, byPlace)
	}
}

// tiedTo is the sets that hang together with one.
func tiedTo(set int, joints [][2]setWedge) map[int]bool {
	tied := map[int]bool{set: true}
	for range joints {
		for _, j := range joints {
			if a, b := j[0].set, j[1].set; min(a, b) >= 0 && (tied[a] || tied[b]) {
				tied[a], tied[b] = true, true
			}
		}
	}
	return tied
}

// canNest says whether some ways of pressing sets let all joints of those that hang together nest.
func canNest(n int, tied map[int]bool, cuts *cutting.Plan, joints [][2]setWedge) bool {
	for ways := range 1 << n {
		all := true
		for _, j := range joints {
			a, b := j[0], j[1]
			if min(a.set, b.set) < 0 || !tied[a.set] {
				continue
			}
			wide := func(w setWedge) bool { return (ways>>w.set&1 == 1) != w.reversed }
			all = all && wide(a) != wide(b) && !cuts.Sets[a.set].Alike && !cuts.Sets[b.set].Alike
		}
		if all {
			return true
		}
	}
	return false
}

// TestBandJoints: strip seams of two wedges with one tip butt together where their ends lie no more than two roundings apart.
func TestBandJoints(t *testing.T) {
	top := &quilt.Top{Faces: []quilt.Face{{Patch: 0}, {Patch: 1}}, StripSeams: make([]quilt.Seam, 2), Patches: []quilt.Patch{
		{Outline: []measure.Point{{X: 50, Y: 90}}}, {Outline: []measure.Point{{X: 50, Y: 90}}},
	}}
	top.StripSeams[1].A = 1
	for start := measure.NM(-10); start < 10; start++ {
		for dx := measure.NM(-4); dx <= 4; dx++ {
			for dy := measure.NM(-4); dy <= 4; dy++ {
				one, other := &top.StripSeams[0], &top.StripSeams[1]
				one.From, one.To = point{X: start, Y: 3 * start}, point{X: 5000}
				other.From, other.To = point{X: 7000}, point{X: start + dx, Y: 3*start + dy}
				want := max(dx, -dx, dy, -dy) <= 2
				if got := bandJoints(top); (len(got) == 1) != want || want && got[0] != (bandJoint{0, 1}) {
					t.Fatalf("at %v and %v: %v", one.From, other.To, got)
				}
			}
		}
	}
	at := point{X: 10, Y: 10}
	top.StripSeams[0].From, top.StripSeams[1].To = at, at
	top.Patches[1].Outline[0].X++
	if got := bandJoints(top); len(got) > 0 {
		t.Errorf("wedges whose tips lie apart: %v", got)
	}
	top.StripSeams[1].A = 0
	if got := bandJoints(top); len(got) > 0 {
		t.Errorf("seams of one wedge: %v", got)
	}
}
