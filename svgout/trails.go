package svgout

import (
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// trails are lines along stretches that meet end to end, every stretch once, so that a file holds most of the ends once and not twice.
// Where several stretches meet, those that go straight on are joined first, and leave no corner; of those that are left every two are
// joined, and so no place begins more than one trail. A line drawn with round joins and round caps covers what its stretches do.
func trails(n int, seam func(i int) *quilt.Seam) Outlines {
	return func(yield func([]measure.Point) bool) {
		j := joined(n, seam)
		var room []measure.Point
		for _, loops := range [2]bool{false, true} { // those that begin somewhere, then those that come round
			for end, next := range j.next {
				if !j.gone[end/2] && (loops || next < 0) {
					if room = j.walk(room[:0], int32(end)); !yield(room) {
						return
					}
				}
			}
		}
	}
}

// joins are the ends of stretches, two each: 2i is where stretch i comes from, 2i+1 where it goes to.
type joins struct {
	at   []measure.Point // by end
	next []int32         // by end, the end that it is joined with, -1 for none
	gone []bool          // by stretch, whether a trail has it
}

// joined joins the ends of n stretches.
func joined(n int, seam func(i int) *quilt.Seam) *joins {
	j := &joins{make([]measure.Point, 0, 2*n), make([]int32, 2*n), make([]bool, n)}
	for i := range n {
		s := seam(i)
		j.at = append(j.at, s.From, s.To)
	}
	size := 1
	for size < 2*n {
		size *= 2
	}
	first := make([]int32, size) // by slot of places, an end in it, counted from 1; j.next has the others that far
	for end, p := range j.at {
		slot := &first[slotOf(p, size)]
		j.next[end], *slot = *slot, int32(end+1)
	}
	var room []int32
	for _, end := range first {
		for room = room[:0]; end > 0; end = j.next[end-1] {
			room = append(room, end-1)
		}
		j.join(room)
	}
	return j
}

// join joins those ends of a slot that lie at one place.
func (j *joins) join(ends []int32) {
	for _, end := range ends {
		j.next[end] = -1
	}
	for i, a := range ends { // straight on
		for _, b := range ends[i+1:] {
			if j.next[a] < 0 && j.next[b] < 0 && j.at[a] == j.at[b] && straightOn(j.at[a^1], j.at[a], j.at[b^1]) {
				j.next[a], j.next[b] = b, a
			}
		}
	}
	for i, a := range ends {
		for _, b := range ends[i+1:] {
			if j.next[a] < 0 && j.next[b] < 0 && j.at[a] == j.at[b] {
				j.next[a], j.next[b] = b, a
			}
		}
	}
}

// walk goes from an end along all that is joined.
func (j *joins) walk(room []measure.Point, end int32) []measure.Point {
	for room = append(room, j.at[end]); end >= 0 && !j.gone[end/2]; end = j.next[end^1] {
		j.gone[end/2] = true
		to, last := j.at[end^1], len(room)-1
		if last > 0 && straightOn(room[last-1], room[last], to) {
			room[last] = to
		} else {
			room = append(room, to)
		}
	}
	return room
}
