package summary

import "eighthturn/internal/quilt/orient"

// What closes a centre: a web with all wedge tips, a star with all kites.
const (
	webIsWhole  = 8
	starIsWhole = 4
)

// Centres are the web centres, or the star centres, inside the quilt on which anything stands: corners of the grid with a
// block on each of their four sides.
type Centres struct {
	Whole  int    `json:"whole"`  // how many wedges, or kites, make one whole
	Closed int    `json:"closed"` // how many are whole
	Open   []Open `json:"open"`
}

// Open is a centre that is not whole, between rows Row and Row+1 and columns Column and Column+1, counted from 1.
type Open struct {
	Row    int `json:"row"`
	Column int `json:"column"`
	Has    int `json:"has"`
}

// Inside is how many there are.
func (c *Centres) Inside() int { return c.Closed + len(c.Open) }

func tips(c orient.Centre) int  { return c.Tips }
func kites(c orient.Centre) int { return c.Kites }

// centres sorts centres into whole ones and open ones; those of which the blocks round them have no part are left out.
func centres(list []orient.Centre, whole int, has func(orient.Centre) int) Centres {
	s := Centres{Whole: whole}
	for _, c := range list {
		switch n := has(c); n {
		case 0:
		case whole:
			s.Closed++
		default:
			s.Open = append(s.Open, Open{c.Y, c.X, n})
		}
	}
	return s
}
