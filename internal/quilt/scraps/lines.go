package scraps

// Lines are the lines of a quilt that something lies in, numbered from 1: its row, its column, its two diagonals, and what it is a part
// of, such as a web; each 0 where it lies in none.
type Lines [5]int32

// crowds counts fabrics line by line. The sum of the squares of all counts is the lower, the nearer each is to its even share.
type crowds struct {
	fabrics int
	counts  []int32
}

// maxCrowds is how many counts are kept; a top with more lines and fabrics is not spread.
const maxCrowds = 4_000_000

// newCrowds is no counts yet, for lines up to a number; nil if there would be too many.
func newCrowds(lines int32, fabrics int) *crowds {
	size := (int(lines) + 1) * fabrics
	if size > maxCrowds {
		return nil
	}
	return &crowds{fabrics, make([]int32, size)}
}

// of is how often a fabric is in some lines together.
func (c *crowds) of(l *Lines, fabric int) int32 {
	n := int32(0)
	for _, line := range l {
		if line > 0 {
			n += c.counts[int(line)*c.fabrics+fabric]
		}
	}
	return n
}

// add counts a fabric in some lines, or takes it away.
func (c *crowds) add(l *Lines, fabric int, n int32) {
	for _, line := range l {
		if line > 0 {
			c.counts[int(line)*c.fabrics+fabric] += n
		}
	}
}

// shared is how many lines two places have in common.
func shared(a, b *Lines) int32 {
	n := int32(0)
	for i := range a {
		if a[i] > 0 && a[i] == b[i] {
			n++
		}
	}
	return n
}
