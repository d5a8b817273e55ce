package stop

import "time"

// turn is how long work has kept a browser's worker to itself, in which nothing else runs meanwhile.
type turn struct{ since time.Time }

const longest = 50 * time.Millisecond // between two breaths; one costs up to 4, the shortest time that a nested timer takes (HTML, 8.7)

// breathe lets the worker take in what pages ask for, and what they ask for no longer.
func (t *turn) breathe() {
	now := time.Now()
	if t.since.IsZero() {
		t.since = now
	}
	if now.Sub(t.since) < longest {
		return
	}
	time.Sleep(time.Nanosecond)
	t.since = time.Now()
}
