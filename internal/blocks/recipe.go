package blocks

import "strings"

// Recipe is how the pieces of a kind are sewn together: the last join makes the block. A kind
// of one piece has none; that of a column has steps without joins, since its pieces are
// joined one after the other.
type Recipe struct {
	Steps    []Step
	Pressing []Pressing
}

// Step is one step of the work: all units of a block that are made in the same way.
type Step struct {
	Name  string `json:"name"`           // of each unit that it makes
	Do    string `json:"do"`             // what to do, in a quilter's words
	Trim  string `json:"trim,omitempty"` // what to cut off afterwards, "" for nothing
	Check string `json:"check"`          // what to look at afterwards

	Named []Named `json:"-"` // what of Do can be said by the name of a fabric
	Tools []Tool  `json:"-"` // what it takes beside cutter, mat and ruler
	Joins []Join  `json:"-"` // a unit each, but a step that goes on with its own unit makes only the last
}

// HalfBlock is where the raw edges of a finished block lie, for those who do not know how large it is.
const HalfBlock = "half the unfinished block size from the center"

// Named is words of a step for some pieces, and what to say instead where all of these are of one fabric and no other piece
// of theirs is.
type Named struct {
	Words  string // in the step's text
	By     string // with the fabric's name for %s
	Pieces []int
	Others []int
}

// Join is one seam.
type Join struct {
	A, B  Part
	Press int // which of the recipe's pressings its allowance follows, by index
}

// Part is what a seam joins: a piece of the kind, by index, or what an earlier join made.
type Part int

// Made is what a join made, by its number in the recipe, from 0.
func Made(join int) Part { return Part(^join) }

// Piece is the part as a piece, by index; false if an earlier join made it.
func (p Part) Piece() (int, bool) { return int(p), p >= 0 }

// Join is the number of the join that made the part; it must not be a piece.
func (p Part) Join() int { return int(^p) }

// Pressing is a choice between two ways in which the allowances of some seams are pressed.
type Pressing struct {
	Round bool      `json:"round"` // they all turn one way round a point: each part of a seam that begins there, as seen from it
	About Point     `json:"-"`     // that point, where Round
	Ways  [2]string `json:"ways"`  // as words. Round: clockwise, anticlockwise; else towards each join's B, towards its A
}

// Joins is every join of the recipe, in order, and the step that each belongs to.
func (r *Recipe) Joins() (joins []Join, steps []int) {
	for i, s := range r.Steps {
		for _, j := range s.Joins {
			joins, steps = append(joins, j), append(steps, i)
		}
	}
	return joins, steps
}

// PiecesOf is the pieces of a part, by index, in the order in which they were joined.
func (r *Recipe) PiecesOf(p Part) []int {
	if n, ok := p.Piece(); ok {
		return []int{n}
	}
	joins, _ := r.Joins()
	j := joins[p.Join()]
	return append(r.PiecesOf(j.A), r.PiecesOf(j.B)...)
}

// worded puts a word into a text in place of its %s.
func worded(text, word string) string { return strings.Replace(text, "%s", word, 1) }
