package orient

import (
	"math/rand/v2"
	"reflect"
	"testing"
)

// moved is a grid with so many rows with nothing in them above it, and columns on its left.
func moved(g Grid, right, down int) Grid {
	m := field(g.Columns+right, g.Rows+down, nil)
	m.Start = g.Start
	for i, c := range g.Cells {
		m.Cells[(i/g.Columns+down)*m.Columns+i%g.Columns+right] = c
	}
	return m
}

// TestWhereAGridLies: a grid is turned alike wherever it lies among places with nothing in them, an even number of them away so that webs stay
// webs; and all that is told of it is told of the same blocks.
func TestWhereAGridLies(t *testing.T) {
	rng := rand.New(rand.NewPCG(41, 43))
	kinds := pieced()
	tops := kinds[:0:0]
	for _, k := range kinds { // mostly blocks that have a choice
		tops = append(tops, k)
		if k.Turning.Towards() {
			tops = append(tops, k, k, k)
		}
	}
	for n := range 800 {
		g := mixed(rng, tops, 4)
		laid := Lay(g)
		for _, by := range [][2]int{{2, 0}, {0, 2}, {2, 4}} {
			m := moved(g, by[0], by[1])
			other := Lay(m)
			to := func(i int) int { return (i/g.Columns+by[1])*m.Columns + i%g.Columns + by[0] }
			var want, got Orientation
			got, want.StarFirst = other, laid.StarFirst
			got.Turns = nil
			for i := range g.Cells {
				want.Turns, got.Turns = append(want.Turns, laid.Turns[i]), append(got.Turns, other.Turns[to(i)])
			}
			for _, c := range laid.Webs {
				want.Webs = append(want.Webs, Centre{Corner{c.X + by[0], c.Y + by[1]}, c.Tips, c.Kites})
			}
			for _, c := range laid.Stars {
				want.Stars = append(want.Stars, Centre{Corner{c.X + by[0], c.Y + by[1]}, c.Tips, c.Kites})
			}
			for _, i := range laid.Unclosable {
				want.Unclosable = append(want.Unclosable, to(i))
			}
			for _, i := range laid.Open {
				want.Open = append(want.Open, to(i))
			}
			for _, pair := range laid.Apart {
				want.Apart = append(want.Apart, [2]int{to(pair[0]), to(pair[1])})
			}
			if !reflect.DeepEqual(got, want) {
				t.Fatalf("grid %d, %d by %d, moved by %v: %+v, expected %+v", n, g.Columns, g.Rows, by, got, want)
			}
		}
	}
}
