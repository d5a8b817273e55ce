package sewing

import "slices"

// widest is how many choices a search for a ring looks at before it gives up.
const widest = 4000

// search looks for the shortest way from one choice to another along asks that are done.
type search struct {
	r     *riddle
	ways  []bool
	from  map[int32]int32 // by choice: the ask by which it was reached
	queue []int32
}

// way is the asks from one choice to another, nil if none was found; used ones are passed by.
func (s *search) way(from, to int32, used map[int32]bool) []int32 {
	clear(s.from)
	s.queue = append(s.queue[:0], from)
	s.from[from] = -1
	for i := 0; i < len(s.queue) && i < widest; i++ {
		at := s.queue[i]
		if at == to {
			return s.walked(to)
		}
		for _, n := range s.r.at[at] {
			a := &s.r.asks[n]
			next := a.other(at)
			if _, seen := s.from[next]; !seen && !used[n] && a.done(s.ways) {
				s.from[next] = n
				s.queue = append(s.queue, next)
			}
		}
	}
	return nil
}

// walked is the asks by which a choice was reached, the first one first.
func (s *search) walked(to int32) []int32 {
	list := []int32{}
	for n := s.from[to]; n >= 0; n = s.from[to] {
		list = append(list, n)
		to = s.r.asks[n].other(to)
	}
	slices.Reverse(list)
	return list
}

// disjoint is how many rings were found that share no ask and of which each holds one that is
// undone: of each ring at least one ask must be left undone, whatever is chosen.
func (r *riddle) disjoint(broken []int32, ways []bool) int {
	used := map[int32]bool{}
	s := &search{r: r, ways: ways, from: map[int32]int32{}}
	count := 0
	for _, n := range broken {
		if a := r.asks[n]; a.a == a.b {
			count++ // a ring by itself
		} else if ring := s.way(a.a, a.b, used); ring != nil {
			count++
			for _, m := range ring {
				used[m] = true
			}
		}
	}
	return count
}

// prove finds for each ask that is undone the ring that shows why.
func (r *riddle) prove(s *answer) {
	slices.Sort(s.broken)
	look := &search{r: r, ways: s.ways, from: map[int32]int32{}}
	for _, n := range s.broken {
		var ring []int32
		if len(s.rings) < r.most {
			if way := look.way(r.asks[n].a, r.asks[n].b, nil); way != nil {
				ring = append([]int32{n}, way...)
			}
		}
		s.rings = append(s.rings, ring)
	}
}
