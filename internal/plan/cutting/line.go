package cutting

import "eighthturn/internal/blocks"

// Method is how pieces come from what is cut off a strip.
type Method = blocks.Method

// The methods, as in the descriptions of shapes.
const (
	Whole           = blocks.Whole
	OnceOnDiagonal  = blocks.OnceOnDiagonal
	TwiceOnDiagonal = blocks.TwiceOnDiagonal
	Nested          = blocks.Nested
	EndPairs        = blocks.EndPairs
	Joined          = blocks.Joined
	Lengthwise      = blocks.Lengthwise
)

// Hand is which of two mirror images a piece is.
type Hand = blocks.Hand

// The hands.
const (
	Either = blocks.Either
	Left   = blocks.Left
	Right  = blocks.Right
)

// Line is one line of the plan: one distinct piece of one fabric, or of one strip set, with all patches that it supplies.
type Line struct {
	Number   int
	Fabric   int // index of the plan's fabrics, -1 for wedges of a strip set
	Set      int // index of the plan's strip sets, -1 for pieces of one fabric
	Reversed bool
	Piece    Piece
	Border   int   // of the top, from the inside out, -1 elsewhere
	Patches  []int // of the top, by index, rising; each stands for as many pieces as there are copies
	Pieces   int   // wanted: patches times copies
	Left     int   // of them left-hand ones, where hands matter
	Right    int   // right-hand ones
	Units    int   // cut off strips: squares, wedges, rectangles; strips to be joined
	Spare    int   // pieces cut beyond those wanted
	Place    Place // in the layout
}

// edging says whether a line is strips of a border or a sash.
func (l *Line) edging() bool { return l.Piece.Shape.Description().Edging }

// Piece is a distinct piece: its shape with its sizes.
type Piece struct {
	Shape blocks.Shape
	Role  string // border, sash, posts and so on as in the top
	Hand  Hand   // of end pieces, whose rectangles differ by hand
	blocks.CutSize
	OnRuler []Ruler // for sizes that must be exact
}
