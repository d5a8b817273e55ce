package sewing

import (
	"math"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
)

// StripSets is which way the seams between the strips of strip sets are pressed. Where two wedges lie side by side with their
// tips in one point, such seams butt together from the two sides of the seam between them, and they nest where one wedge's are
// pressed towards its wide end and the other's towards its tip.
type StripSets struct {
	Sets   []SetPressing // as the cutting plan has them
	Joints int           // places where such seams butt together
	Nests  int           // of them
	ways   []int8        // by patch of the top
	sets   []setWedge    // the same
}

// SetPressing is how one strip set is pressed.
type SetPressing struct {
	// Wedges is how many wedges of the top are pressed towards the set's first strip, and how many towards its last. The wide end
	// of a wedge that is not reversed shows the first.
	Wedges [2]int
	// Alternate says that the sewer puts the wedges of this set in their places by how they are pressed: sets are pressed both
	// ways, or wedges that look the same come pressed both ways out of one set.
	Alternate bool
}

// Ways of pressing a wedge's strip seams.
const (
	NoStripSeams int8 = iota - 1
	TowardsWideEnd
	TowardsTip
)

// Way is which way the strip seams of a patch are pressed.
func (s *StripSets) Way(patch int) int8 { return s.ways[patch] }

// Alternate says whether a sewer puts a patch in its place by how its strip seams are pressed.
func (s *StripSets) Alternate(patch int) bool {
	set := s.sets[patch].set
	return set >= 0 && s.Sets[set].Alternate
}

// bandJoint is where strip seams of two wedges butt together.
type bandJoint struct{ a, b int }

// setWedge is a wedge of a strip set of the cutting plan.
type setWedge struct {
	set      int // -1 for what is none
	reversed bool
}

// PressSets finds how strip sets are pressed so that their seams nest: each one way where that can be, and else by the way in
// which a wedge points, for then any two that lie side by side differ.
func PressSets(top *quilt.Top, cuts *cutting.Plan) *StripSets {
	s := &StripSets{Sets: make([]SetPressing, len(cuts.Sets)), ways: make([]int8, len(top.Patches))}
	s.sets = setWedges(top, cuts)
	wedges := s.sets
	joints := bandJoints(top)
	sets := newSetGraph(cuts)
	for _, j := range joints {
		sets.unlike(wedges[j.a], wedges[j.b])
	}
	for i := range wedges {
		s.ways[i] = NoStripSeams
		w := wedges[i]
		if w.set < 0 {
			continue
		}
		first := sets.first(w.set)
		if sets.byPlace(w.set) {
			first = (octant(&top.Patches[i])&1 == 0) != w.reversed
		}
		p := &s.Sets[w.set]
		if s.ways[i] = TowardsTip; first != w.reversed {
			s.ways[i] = TowardsWideEnd
		}
		if first {
			p.Wedges[0]++
		} else {
			p.Wedges[1]++
		}
	}
	for i := range s.Sets {
		p := &s.Sets[i]
		p.Alternate = sets.byPlace(i) && (cuts.Sets[i].Alike || p.Wedges[0] > 0 && p.Wedges[1] > 0)
	}
	s.Joints = len(joints)
	for _, j := range joints {
		if s.ways[j.a] != s.ways[j.b] {
			s.Nests++
		}
	}
	return s
}

// setWedges is which strip set of the cutting plan each patch comes from.
func setWedges(top *quilt.Top, cuts *cutting.Plan) []setWedge {
	list := make([]setWedge, len(top.Patches))
	for i := range list {
		list[i].set = -1
	}
	for n := range cuts.Sets {
		for way, line := range cuts.Sets[n].Lines {
			if line < 0 {
				continue
			}
			for _, patch := range cuts.Lines[line].Patches {
				list[patch] = setWedge{n, way == 1}
			}
		}
	}
	return list
}

// octant numbers the eighth of a turn into which a wedge points with its wide end.
func octant(p *quilt.Patch) int {
	tip, a, b := p.Outline[0], p.Outline[1], p.Outline[2]
	way := math.Atan2(float64(a.Y+b.Y)/2-float64(tip.Y), float64(a.X+b.X)/2-float64(tip.X))
	return int(math.Floor(way/(math.Pi/4) + 0.25)) // wedges of a ring point along the grid, those of a web halfway between
}

// bandJoints finds the places where strip seams of two wedges with one tip butt together.
func bandJoints(top *quilt.Top) []bandJoint {
	const mesh = 8 // nm; ends of strip seams lie within a nanometre of each other
	ends := map[point][]bandEnd{}
	var list []bandJoint
	for i := range top.StripSeams {
		patch := top.Faces[top.StripSeams[i].A].Patch
		for _, at := range [2]point{top.StripSeams[i].From, top.StripSeams[i].To} {
			square := point{X: at.X / mesh, Y: at.Y / mesh}
			for dy := measure.NM(-1); dy <= 1; dy++ {
				for dx := measure.NM(-1); dx <= 1; dx++ {
					for _, e := range ends[point{X: square.X + dx, Y: square.Y + dy}] {
						if max(at.X-e.at.X, e.at.X-at.X, at.Y-e.at.Y, e.at.Y-at.Y) <= 2*measure.Tolerance && e.patch != int(patch) && top.Patches[e.patch].Outline[0] == top.Patches[patch].Outline[0] {
							list = append(list, bandJoint{e.patch, int(patch)})
						}
					}
				}
			}
			ends[square] = append(ends[square], bandEnd{at, int(patch)})
		}
	}
	return list
}

// bandEnd is an end of a strip seam.
type bandEnd struct {
	at    point
	patch int
}

// setGraph is strip sets and what joints ask of the ways in which they are pressed.
type setGraph struct {
	up    []int  // another set of the same part, itself for one
	other []bool // pressed the other way than that one
	odd   []bool // by such a one: no ways for whole sets let all joints nest
	alike []bool // wedges of both kinds are one, so that a set pressed one way gives both
}

func newSetGraph(cuts *cutting.Plan) *setGraph {
	g := &setGraph{up: make([]int, len(cuts.Sets)), other: make([]bool, len(cuts.Sets)), odd: make([]bool, len(cuts.Sets)), alike: make([]bool, len(cuts.Sets))}
	for i := range g.up {
		g.up[i], g.alike[i] = i, cuts.Sets[i].Alike
	}
	return g
}

// top is the set by which a part is known, and whether a set goes the other way than that.
func (g *setGraph) top(set int) (int, bool) {
	other := false
	for g.up[set] != set {
		other = other != g.other[set]
		set = g.up[set]
	}
	return set, other
}

// unlike notes that one of two wedges is pressed towards its wide end and the other towards its tip.
func (g *setGraph) unlike(a, b setWedge) {
	if a.set < 0 || b.set < 0 {
		return
	}
	one, way := g.top(a.set)
	two, back := g.top(b.set)
	differ := (a.reversed == b.reversed) != (way != back) // what is asked of the two that stand for their parts
	g.odd[one] = g.odd[one] || g.odd[two] || g.alike[a.set] || g.alike[b.set] || one == two && differ
	if one != two {
		g.up[two], g.other[two] = one, differ
	}
}

// first says whether a set that is pressed one way is pressed towards its first strip.
func (g *setGraph) first(set int) bool {
	_, other := g.top(set)
	return !other
}

// byPlace says whether each wedge of a set is pressed by the way in which it points.
func (g *setGraph) byPlace(set int) bool {
	top, _ := g.top(set)
	return g.odd[top]
}
