package scraps

import (
	"cmp"
	"container/heap"
)

// queue is the places of a group that have no fabric yet, first the one to go on with: of
// those beside a place that has its fabric the one with the fewest fabrics left, then the
// one with more neighbours that have theirs, then the first. It is a heap.
type queue struct {
	*solver
	waiting []waiter
}

// waiter is a place that waits, with what it was put in order by: a heap allows one of its
// members to change at a time, and a fabric changes all neighbours of its place at once.
type waiter struct {
	place        int32
	free, beside int
}

func newQueue(t *solver, group []int32) *queue {
	q := &queue{t, make([]waiter, len(group))}
	for i, p := range group {
		q.waiting[i], t.seats[p].waits = q.waiter(p), i
	}
	return q // a heap already: its first place comes first, and no other comes before one beside it has its fabric
}

func (q *queue) waiter(place int32) waiter {
	return waiter{place, q.seats[place].free, q.seats[place].beside}
}

// take is the place to go on with; it no longer waits.
func (q *queue) take() int32 { return heap.Pop(q).(waiter).place }

// giveBack lets a place wait again.
func (q *queue) giveBack(place int32) { heap.Push(q, q.waiter(place)) }

// around notes that a place has got or lost its fabric.
func (q *queue) around(place int32) {
	for _, n := range q.places[place].Neighbours {
		if at := q.seats[n].waits; at >= 0 {
			q.waiting[at] = q.waiter(n)
			heap.Fix(q, at)
		}
	}
}

// Len is how many places wait.
func (q *queue) Len() int { return len(q.waiting) }

// Less says which of two places comes first.
func (q *queue) Less(i, j int) bool {
	a, b := &q.waiting[i], &q.waiting[j]
	if a.beside == 0 || b.beside == 0 {
		return a.beside > 0 || b.beside == 0 && a.place < b.place
	}
	return cmp.Or(cmp.Compare(a.free, b.free), cmp.Compare(b.beside, a.beside), cmp.Compare(a.place, b.place)) < 0
}

// Swap changes two places about.
func (q *queue) Swap(i, j int) {
	w := q.waiting
	w[i], w[j] = w[j], w[i]
	q.seats[w[i].place].waits, q.seats[w[j].place].waits = i, j
}

// Push adds a place at the end.
func (q *queue) Push(w any) {
	q.seats[w.(waiter).place].waits = len(q.waiting)
	q.waiting = append(q.waiting, w.(waiter))
}

// Pop takes the place at the end.
func (q *queue) Pop() any {
	last := len(q.waiting) - 1
	w := q.waiting[last]
	q.waiting, q.seats[w.place].waits = q.waiting[:last], -1
	return w
}
