package blocks

import (
	"math"
	"slices"
	"sync"

	"eighthturn/internal/measure"
)

// Shape is what a piece is called at the cutting table: a number in the list of descriptions. Nothing outside this package
// names one; whoever wants to know something of a piece asks its description.
type Shape uint8

// The shapes, in the order in which templates are numbered.
const (
	Wedge Shape = iota
	Kite
	Background
	HalfSquare
	RingCorner
	Square
	Tumbler
	HalfTumbler
	Strip
)

// descriptions is every shape's, made when it is first asked for.
var descriptions = sync.OnceValue(func() []*Description {
	return []*Description{
		Wedge: wedgeShape(), Kite: kiteShape(), Background: backgroundShape(), HalfSquare: halfSquareShape(), RingCorner: ringCornerShape(),
		Square: squareShape(), Tumbler: tumblerShape(), HalfTumbler: halfTumblerShape(), Strip: stripShape(),
	}
})

// Shapes is every shape, in order.
func Shapes() []Shape {
	list := make([]Shape, len(descriptions()))
	for i := range list {
		list[i] = Shape(i)
	}
	return list
}

// Description is what there is to know of the shape. It must not be changed.
func (s Shape) Description() *Description { return descriptions()[s] }

// String is the shape's name for one piece.
func (s Shape) String() string { return s.Description().Name }

// Description describes a piece shape: how it lies, how it is cut and from what, what is trimmed, which corners are blunt.
// Corners and sides are counted from 0 in the order of a piece's outline; side n begins at corner n.
type Description struct {
	Name       string      // of one piece, as the trade has it
	Angles     [][]float64 // the angles that it may have, in degrees from its first corner on, one way round or the other
	Sized      Sized       // what its size follows from
	Gathers    Centre      // the centre at which its first corner meets those of its like
	Round      int         // degrees from one of its like to the next where their first corners meet round a point; 0 where they never do
	Axis       int         // degrees clockwise from upright of the line over which, as its template lies, it or the piece of the other hand is its mirror image
	Edging     bool        // a strip as long as need be: it may be joined, and has no template
	Point      int         // the corner that is its point, which no seam should cut off; -1 for none
	Blunt      int         // the corner that the way of cutting leaves flat, a seam allowance beyond the finished one; -1 for none
	Grain      [2]int      // two corners, from one to the other along the straight grain as it is usually cut; see CutSize.Grain
	Trimmed    []int       // sides that are cut to size only after sewing, where it is cut larger
	Edges      []int       // sides whose finished lengths its size is given by; nil where that is its CutSize's
	ByRuler    bool        // a ruler alone cuts it, from its size; what has a template beside that comes last
	Tools      []Tool      // what it is cut with, beside cutter, mat and ruler
	Shaped     bool        // its size does not tell how it is cut, so that words must
	Kept       bool        // what is cut beyond need is kept for another quilt: a layout may say how many are on hand
	Marked     bool        // a line is drawn on the fabric before it is cut
	FinishedAs string      // which of its measures its finished size is, in words; "" for width and length
	CutTitle   string      // how it is cut, in a word and in sentences; "" where its size tells
	CutWords   string
	ByCustom   string // why it is cut larger than need be, %s by %s: cut, least; "" where there is no such custom

	// Lies is the two corners from which to which a template's lower or upper edge runs to the right.
	Lies func(outline []Place) (from, to int)
	// Hand is which of two mirror images an outline is; nil where it has none.
	Hand func(outline []Place) Hand
	// OneHanded says that what is cut off a strip gives pieces of one hand alone.
	OneHanded bool
	// LengthIn is the mean length, finished, that it has down a column; nil where it stands in none.
	LengthIn func(c *Column) float64
	// Square is the square that it is cut from beside wedges from a strip of a cut width, and SquareWords how, with %s for the mark to
	// which squares that must be exact are rounded; nil and "" where its size does not follow from a strip.
	Square      func(stripCut, seam measure.NM, units measure.System) StripSquare
	SquareWords string
	// Cut is the cut size, the sizes in it that must be exact, and false where no strip gives such a piece.
	Cut func(z *Sizing) (CutSize, []Exact, bool)
}

// StripSquare is a square that pieces beside wedges from a strip are cut from.
type StripSquare struct {
	Need     measure.NM `json:"need"`                // the least side, exact to a nanometre
	Cut      measure.NM `json:"cut"`                 // the side to cut, by Steps
	RuleCut  measure.NM `json:"rule_cut,omitempty"`  // by the rule of thumb: the finished leg and 7/8 in, up to the next 1/8 in; 0 where there is no rule
	KitesCut measure.NM `json:"kites_cut,omitempty"` // the kite's square, which may be cut instead and leaves more to trim; 0 where it may not
}

// Tip is the largest angle that counts as a tip, in degrees: the sharpest that a shape has, and one for rounding. The tips of
// templates are blunt, and those of sewn units are trimmed before they are sewn on.
func Tip() float64 { return sharpest() + 1 }

var sharpest = sync.OnceValue(func() float64 {
	least := math.Inf(1)
	for _, d := range descriptions() {
		for _, angles := range d.Angles {
			least = min(least, slices.Min(angles))
		}
	}
	return least
})

// Place is a place in nanometres, y downwards.
type Place struct{ X, Y measure.NM }

// Sized is what the size of a shape follows from, beside the seam allowance.
type Sized uint8

const (
	ByBlock   Sized = iota // the block's side, or the strip that its kind's wedges come from
	ByStrip                // the strip that it is cut from, by the height of its kind's wedges
	ByColumn               // how the column is divided that it stands in
	ByOutline              // its own width and length
)

// Centre is a point of a top where pieces of one shape meet.
type Centre uint8

const (
	NoCentre Centre = iota
	WebCentre
	StarCentre
)

// Gathering is the shape of the pieces that meet in a sort of centre; it must not be NoCentre.
func Gathering(c Centre) Shape {
	for s, d := range descriptions() {
		if d.Gathers == c {
			return Shape(s)
		}
	}
	panic("blocks: nothing gathers there")
}

// EdgingShape is the shape of a strip of a border or a sash, or of the square where two of them meet.
func EdgingShape(corner bool) Shape {
	if corner {
		return Square
	}
	return Strip
}

// ColumnShape is the shape of a column's whole pieces, or of the piece at either end of it.
func ColumnShape(end bool) Shape {
	if end {
		return HalfTumbler
	}
	return Tumbler
}

// Hand is which of two mirror images a piece is, its right side up. A background piece is left where its blunt end lies to the
// left, its square corner away from you; an end piece where its longer edge does, its square end away from you.
type Hand uint8

const (
	Either Hand = iota
	Left
	Right
)

var handNames = [...]string{"either", "left", "right"}

// String is the hand in a word.
func (h Hand) String() string { return handNames[h] }

// handed is Left or Right.
func handed(left bool) Hand {
	if left {
		return Left
	}
	return Right
}

// Tool is something that a shape or a step of the work asks for.
type Tool uint8

const (
	WedgeRule   Tool = iota // of 45 degrees, or a template in its place
	OwnTemplate             // the shape's own template, which nothing replaces
	SquareRuler
)
