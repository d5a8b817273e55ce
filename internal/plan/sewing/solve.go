package sewing

import "eighthturn/internal/stop"

// constraint is what a joint asks of two choices: that they go the same way, or opposite ways.
type constraint struct {
	a, b     int32
	opposite bool
}

// constraintGraph is choices between two ways and the constraints between them. Which of them should go one
// way by custom is in wants: above 0 for way 1.
type constraintGraph struct {
	choices     int
	constraints []constraint
	wants       []float64
	sign        *stop.Sign // ends the work; nil for never
	max         int        // odd cycles to show
	at          [][]int32  // by choice: its constraints, by index
	left        int        // steps that searches may still take; after them what was found stands, and less is known to be the best
}

// assignment is a way for every choice, and what is known of it.
type assignment struct {
	ways      []bool
	broken    []int32   // constraints that are broken, by index
	oddCycles [][]int32 // for each of them: a cycle of constraints that cannot all be kept, itself first; nil where none was found
	least     int       // no ways leave less broken
}

// solve finds ways that leave little broken.
//
// Constraints that agree all round are kept one after the other. Where a cycle of them asks for an
// odd number of changes, something must be left broken. Then, component by component: a
// descent from there; cycles that share no constraint prove how much must be left broken at least;
// if that is less, the best is found exactly by taking choices out one by one, each with a
// table over its neighbours, as long as tables stay small. Where they do not, the same is done
// for one small part after the other, and only the bound is known.
func (r *constraintGraph) solve() *assignment {
	r.index()
	r.left = maxSolveSteps
	s := &assignment{ways: make([]bool, r.choices)}
	for _, c := range r.components(s.ways) {
		r.sign.Look()
		r.solveComponent(c, s)
		r.byCustom(c, s)
	}
	r.prove(s)
	r.sign.Step(len(r.constraints) + maxSolveSteps - r.left)
	return s
}

func (r *constraintGraph) index() {
	counts := make([]int32, r.choices)
	for _, a := range r.constraints {
		counts[a.a]++
		counts[a.b]++
	}
	room := make([]int32, 0, 2*len(r.constraints))
	r.at = make([][]int32, r.choices)
	for i, n := range counts {
		r.at[i] = room[len(room) : len(room) : len(room)+int(n)]
		room = room[:len(room)+int(n)]
	}
	for i, a := range r.constraints {
		r.at[a.a] = append(r.at[a.a], int32(i))
		if a.b != a.a {
			r.at[a.b] = append(r.at[a.b], int32(i))
		}
	}
}

// other is the choice at the other end of a constraint.
func (a *constraint) other(n int32) int32 {
	if a.a == n {
		return a.b
	}
	return a.a
}

func (a *constraint) kept(ways []bool) bool { return (ways[a.a] != ways[a.b]) == a.opposite }

// component is choices that hang together, each next to one that stands before it.
type component struct {
	choices []int32
}

// components finds what hangs together, and sets ways that keep the constraints from the first choice outwards; what closes a cycle may be
// left broken.
func (r *constraintGraph) components(ways []bool) []component {
	var list []component
	seen := make([]bool, r.choices)
	for start := range seen {
		if seen[start] {
			continue
		}
		c := component{choices: []int32{int32(start)}}
		seen[start] = true
		for i := 0; i < len(c.choices); i++ {
			at := c.choices[i]
			for _, n := range r.at[at] {
				if next := r.constraints[n].other(at); !seen[next] {
					seen[next], ways[next] = true, ways[at] != r.constraints[n].opposite
					c.choices = append(c.choices, next)
				}
			}
		}
		list = append(list, c)
	}
	return list
}

// solveComponent solves one component.
func (r *constraintGraph) solveComponent(c component, s *assignment) {
	broken := r.broken(c, s.ways)
	if len(broken) == 0 {
		return
	}
	r.descend(c, s.ways)
	r.orAlike(c, s.ways)
	broken = r.broken(c, s.ways)
	least := r.disjoint(broken, s.ways)
	if least < len(broken) {
		if r.exact(c, s.ways) {
			broken = r.broken(c, s.ways)
			least = len(broken)
		} else {
			r.byWindows(c, s.ways)
			broken = r.broken(c, s.ways)
			least = max(least, r.disjoint(broken, s.ways))
		}
	}
	s.broken = append(s.broken, broken...)
	s.least += least
}

// broken is the constraints of a component that are broken.
func (r *constraintGraph) broken(c component, ways []bool) []int32 {
	var list []int32
	for _, at := range c.choices {
		for _, n := range r.at[at] {
			if r.constraints[n].a == at && !r.constraints[n].kept(ways) {
				list = append(list, n)
			}
		}
	}
	return list
}

// gain is how much less would be broken if a choice went the other way.
func (r *constraintGraph) gain(at int32, ways []bool) int {
	gain := 0
	for _, n := range r.at[at] {
		switch a := &r.constraints[n]; {
		case a.a == a.b:
		case a.kept(ways):
			gain--
		default:
			gain++
		}
	}
	return gain
}

// descend turns choices round one by one as long as that leaves less broken.
func (r *constraintGraph) descend(c component, ways []bool) {
	for again := true; again && r.left > 0; {
		again = false
		r.left -= len(c.choices)
		for _, at := range c.choices {
			if r.gain(at, ways) > 0 {
				ways[at] = !ways[at]
				again = true
			}
		}
	}
}

// maxSolveSteps is how many steps all searches of one plan may take: a step is a choice looked at, or an entry of a table.
const maxSolveSteps = 30_000_000

// Limits of the search part by part.
const (
	windowChoices = 90
	maxWindows    = 150
)

// byWindows betters ways part by part: round each constraint that is broken, the nearest choices are
// set as well as can be.
func (r *constraintGraph) byWindows(c component, ways []bool) {
	for windows, again := 0, true; again && windows < maxWindows && r.left > 0; {
		again = false
		broken := r.broken(c, ways)
		for _, n := range broken {
			if windows == maxWindows || r.left <= 0 || r.constraints[n].kept(ways) {
				continue
			}
			windows++
			part := r.window(r.constraints[n].a)
			before := len(r.broken(part, ways))
			if r.exact(part, ways) && len(r.broken(part, ways)) < before {
				again = true
			}
		}
	}
}

// window is the choices nearest to one.
func (r *constraintGraph) window(from int32) component {
	list := []int32{from}
	seen := map[int32]bool{from: true}
	for i := 0; i < len(list) && len(list) < windowChoices; i++ {
		for _, n := range r.at[list[i]] {
			if next := r.constraints[n].other(list[i]); !seen[next] {
				seen[next] = true
				list = append(list, next)
			}
		}
	}
	return component{list}
}

// orAlike tries all choices alike, with a descent from there, and keeps what is better.
func (r *constraintGraph) orAlike(c component, ways []bool) {
	before := len(r.broken(c, ways))
	kept := make([]bool, len(c.choices))
	for i, at := range c.choices {
		kept[i], ways[at] = ways[at], false
	}
	r.descend(c, ways)
	if len(r.broken(c, ways)) < before {
		return
	}
	for i, at := range c.choices {
		ways[at] = kept[i]
	}
}

// byCustom turns a whole component round where custom wants it so: all that is done stays
// done.
func (r *constraintGraph) byCustom(c component, s *assignment) {
	sum := 0.0
	for _, at := range c.choices {
		if s.ways[at] {
			sum -= r.wants[at]
		} else {
			sum += r.wants[at]
		}
	}
	if sum <= 0 {
		return
	}
	for _, at := range c.choices {
		s.ways[at] = !s.ways[at]
	}
}
