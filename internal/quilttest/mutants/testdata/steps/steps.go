// Package steps is broken by the test of its folder's parent.
package steps

const most = 3

var start = 5

// Count counts down from start, at most so often, and says how often it did.
func Count(from int, stop bool) int {
	n := 0
	for i := from; i > 0; {
		if stop && n+1 > most {
			break
		}
		n++
		i--
	}
	return n
}

// Idle does what no test sees.
func Idle(n int64) int64 {
	if n < 2000 {
		n += 2000
	}
	return -n - 1
}

// Share is reached, and what it does is not looked at.
func Share(of float64) float64 { return of * 0.5 }

// Start is where counting starts.
func Start() int { return start }

// Half is half of an even number; the number beside false means nothing, and is not broken.
func Half(n int64) (int64, bool) {
	if n%2 != 0 {
		return 0, false
	}
	return n / 2, true
}

// Fourfold doubles twice, on lines that are alike, and has a statement of several lines.
func Fourfold(n int64) int64 {
	n += n // twice
	n += n
	n = max(
		n,
		-1,
	)
	return n
}
