package sewing

import "slices"

// widest is how many choices a search for a cycle looks at before it gives up.
const widest = 4000

// search looks for the shortest way from one choice to another along constraints that are done.
type search struct {
	r     *constraintGraph
	ways  []bool
	from  map[int32]int32 // by choice: the constraint by which it was reached
	queue []int32
}

// way is the constraints from one choice to another, nil if none was found; used ones are passed by.
func (s *search) way(from, to int32, used map[int32]bool) []int32 {
	if s.r.left <= 0 {
		return nil
	}
	defer func() { s.r.left -= 4 * len(s.queue) }()
	clear(s.from)
	s.queue = append(s.queue[:0], from)
	s.from[from] = -1
	for i := 0; i < len(s.queue) && i < widest; i++ {
		at := s.queue[i]
		if at == to {
			return s.walked(to)
		}
		for _, n := range s.r.at[at] {
			a := &s.r.constraints[n]
			next := a.other(at)
			if _, seen := s.from[next]; !seen && !used[n] && a.kept(s.ways) {
				s.from[next] = n
				s.queue = append(s.queue, next)
			}
		}
	}
	return nil
}

// walked is the constraints by which a choice was reached, the first one first.
func (s *search) walked(to int32) []int32 {
	list := []int32{}
	for n := s.from[to]; n >= 0; n = s.from[to] {
		list = append(list, n)
		to = s.r.constraints[n].other(to)
	}
	slices.Reverse(list)
	return list
}

// disjoint is how many cycles were found that share no constraint and of which each holds one that is
// broken: of each cycle at least one constraint must be left broken, whatever is chosen.
func (r *constraintGraph) disjoint(broken []int32, ways []bool) int {
	used := map[int32]bool{}
	s := &search{r: r, ways: ways, from: map[int32]int32{}}
	count := 0
	for _, n := range broken {
		if a := r.constraints[n]; a.a == a.b {
			count++ // a cycle by itself
		} else if cycle := s.way(a.a, a.b, used); cycle != nil {
			count++
			for _, m := range cycle {
				used[m] = true
			}
		}
	}
	return count
}

// prove finds for each constraint that is broken the cycle that shows why.
func (r *constraintGraph) prove(s *assignment) {
	slices.Sort(s.broken)
	look := &search{r: r, ways: s.ways, from: map[int32]int32{}}
	for _, n := range s.broken {
		var cycle []int32
		if len(s.oddCycles) < r.max {
			if way := look.way(r.constraints[n].a, r.constraints[n].b, nil); way != nil {
				cycle = append([]int32{n}, way...)
			}
		}
		s.oddCycles = append(s.oddCycles, cycle)
	}
}
