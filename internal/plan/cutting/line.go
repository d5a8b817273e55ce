package cutting

import (
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

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
	FussyCut        = blocks.FussyCut
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
	Number       int   `json:"line"`
	Fabric       int   `json:"fabric"`    // index of the plan's fabrics, -1 for wedges of a strip set
	Set          int   `json:"strip_set"` // index of the plan's strip sets, -1 for pieces of one fabric
	Reversed     bool  `json:"reversed"`
	Piece        Piece `json:"piece"`
	PrintPlace   int   `json:"print_place"`             // of the top's cuts, by index, where its pieces are all cut alike; -1 elsewhere
	AlongSelvage bool  `json:"along_selvage,omitempty"` // its pieces are cut from strips along the selvages, wherever they come to lie
	Border       int   `json:"border"`                  // of the top, from the inside out, -1 elsewhere
	Patches      []int `json:"patches"`                 // of the top, by index, rising; each stands for as many pieces as there are copies
	Pieces       int   `json:"pieces"`                  // wanted: patches times copies
	Left         int   `json:"left"`                    // of them left-hand ones, where hands matter
	Right        int   `json:"right"`                   // right-hand ones
	OnHand       int   `json:"on_hand,omitempty"`       // of them on hand, which are not cut
	Units        int   `json:"units"`                   // cut off strips: squares, wedges, rectangles; strips to be joined
	Spare        int   `json:"spare"`                   // pieces cut beyond those wanted
	Place        Place // in the layout
}

// edging says whether a line is strips of a border or a sash.
func (l *Line) edging() bool { return l.Piece.Shape.Description().Edging }

// Piece is a distinct piece: its shape with its sizes.
type Piece struct {
	Shape          blocks.Shape `json:"shape"`
	Role           string       `json:"role"` // border, sash, posts and so on as in the top
	Hand           Hand         `json:"hand"` // of end pieces, whose rectangles differ by hand
	blocks.CutSize              // its fields stand beside these
	OnRuler        []Ruler      `json:"exact_sizes"`              // for sizes that must be exact
	EdgesFinished  []measure.NM `json:"edges_finished,omitempty"` // of shapes that are known by some of their edges: the longest first
}

// Cuts says whether pieces of a shape are cut.
func (p *Plan) Cuts(shape blocks.Shape) bool {
	return slices.ContainsFunc(p.Lines, func(l Line) bool { return l.Piece.Shape == shape })
}
