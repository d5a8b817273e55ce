package cutting

import (
	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// Method is how pieces come from what is cut off a strip.
type Method uint8

const (
	// Whole: what is cut is the piece.
	Whole Method = iota
	// OnceOnDiagonal: a square is cut once, corner to corner, for two pieces.
	OnceOnDiagonal
	// TwiceOnDiagonal: a square is cut corner to corner both ways, for four pieces.
	TwiceOnDiagonal
	// Nested: wedges or tumblers side by side, every other one turned round.
	Nested
	// EndPairs: a rectangle is cut on the slant, for two end pieces of one hand.
	EndPairs
	// Joined: strips are sewn end to end, and the pieces cut from that.
	Joined
	// Lengthwise: cut along the cloth, whole.
	Lengthwise
)

var methodNames = [...]string{"whole", "cut once on the diagonal", "cut twice on the diagonal", "turned round in turn", "cut in two on the slant", "joined end to end", "cut along the cloth"}

// String is the method in a few words.
func (m Method) String() string { return methodNames[m] }

// PerUnit is how many pieces one cut-off gives.
func (m Method) PerUnit() int {
	switch m {
	case OnceOnDiagonal, EndPairs:
		return 2
	case TwiceOnDiagonal:
		return 4
	}
	return 1
}

// Hand is which of two mirror images a piece is, its right side up. A stop piece is left where its blunt end lies to the
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

// Piece is a distinct piece: its shape with its sizes.
type Piece struct {
	Shape  blocks.Shape
	Role   string // border, sash, posts and so on as in the top
	Method Method
	Hand   Hand // of end pieces, whose rectangles differ by hand

	SideFinished   measure.NM // square: side; triangle: short edge; wedge, tumbler: height; kite, stop piece: the block's side; strip: width
	LengthFinished measure.NM // strip: length; tumbler, end piece: mean length down the column; 0 elsewhere

	// What is cut off the strip for one piece, two or four, by Method. Across is measured across the strip, Along along it;
	// both are the same for squares.
	AcrossExact, AcrossCut measure.NM
	AlongExact, AlongCut   measure.NM
	WideCut, NarrowCut     measure.NM // of a wedge or tumbler: its parallel edges; of an end piece: its longer and shorter edge
	TrimCut                measure.NM // beyond the exact size, trimmed after sewing; 0 for what must be exact
	RuleCut                measure.NM // what the rule of thumb says to cut, where it says otherwise; else 0
	KitesCut               measure.NM // ring corners: the kite's square, which may be cut instead; else 0
	OnRuler                []Ruler    // for sizes that must be exact
}

// PitchCut is how much strip each of a row of wedges or tumblers takes.
func (p *Piece) PitchCut() measure.NM { return (p.WideCut + p.NarrowCut) / 2 }
