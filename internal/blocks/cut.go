package blocks

import (
	"math"

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
	// Lengthwise: cut along the length of fabric, whole.
	Lengthwise
	// FussyCut: one by one, each from the same place of a print.
	FussyCut
)

// String is the method's name for other programs.
func (m Method) String() string {
	return [...]string{"whole", "once-on-diagonal", "twice-on-diagonal", "nested", "end-pairs", "joined", "lengthwise", "fussy-cut"}[m]
}

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

// Steps are what cut sizes are rounded to: geometry is exact, rulers have marks.
type Steps struct {
	Trimmed measure.NM // pieces that are trimmed after sewing go up to a whole number of these
	Spare   measure.NM // and have at least so much to trim
	Exact   measure.NM // pieces that are not trimmed go up to a whole number of these
	Mark    measure.NM // strips go to the nearest of these
}

// StepsOf is the steps of a system of measures. Common practice, no source.
func StepsOf(s measure.System) Steps {
	return Steps{s.Usual(measure.Inch/4, measure.Centimetre/2), s.Usual(measure.Inch/16, 2*measure.Millimetre), s.CutMark(), s.Mark()}
}

// Filled is the steps, each one that is 0 the units' own.
func (s Steps) Filled(units measure.System) Steps {
	own := StepsOf(units)
	for _, p := range [][2]*measure.NM{{&s.Trimmed, &own.Trimmed}, {&s.Spare, &own.Spare}, {&s.Exact, &own.Exact}, {&s.Mark, &own.Mark}} {
		if *p[0] <= 0 {
			*p[0] = *p[1]
		}
	}
	return s
}

// MaxCut is the widest strip and the highest line of a wedge rule.
const MaxCut = 120 * measure.Inch

// Sizing is what the cut size of a piece follows from.
type Sizing struct {
	Units             measure.System
	Seam              measure.NM          // allowance
	SideFinished      measure.NM          // of the block
	StripsCut         [Heights]measure.NM // that wedges come from, by their height; 0 where there are none
	Steps             Steps
	CornersByCustom   bool // corner triangles from the kite's square where it is large enough
	LongEdgesStraight bool // triangles from squares cut twice, their long edge on the straight grain

	Height         WedgeHeight // of the kind that a piece sized ByStrip belongs to
	Divided        *Column     // the column of a piece sized ByColumn
	AcrossFinished measure.NM  // of a piece sized ByOutline: its width
	AlongFinished  measure.NM  // and its length
	InBlock        bool        // it is a block of its own, so that its size is the block's side
	InBorder       bool        // it belongs to a border, which is cut to the quilt's own measure
}

// CutSize is how a piece is cut. Names carry the frame: Finished is seam to seam, Cut is as it lies on the table, Exact is what
// geometry asks for before any ruler has its say. Cut is never less than exact.
type CutSize struct {
	Method Method `json:"method"`

	SideFinished   measure.NM `json:"side_finished"`             // square: side; triangle: short edge; wedge, tumbler: height; kite, background piece: the block's side; strip: width
	LengthFinished measure.NM `json:"length_finished,omitempty"` // strip: length; tumbler, end piece: mean length down the column; 0 elsewhere

	// What is cut off the strip for one piece, two or four, by Method. Across is measured across the strip, Along along it;
	// both are the same for squares.
	AcrossExact measure.NM `json:"across_exact"`
	AcrossCut   measure.NM `json:"across_cut"`
	AlongExact  measure.NM `json:"along_exact"`
	AlongCut    measure.NM `json:"along_cut"`
	NarrowCut   measure.NM `json:"narrow_cut,omitempty"` // of a wedge or tumbler the shorter of its parallel edges, of an end piece its shorter edge
	WideCut     measure.NM `json:"wide_cut,omitempty"`   // of a wedge or tumbler: its parallel edges; of an end piece: its longer and shorter edge
	Slanted     *SlantCut  `json:"slant,omitempty"`      // of end pieces: how the rectangle is cut in two; nil elsewhere
	TrimCut     measure.NM `json:"trim_cut"`             // beyond the exact size, trimmed after sewing; 0 for what must be exact
	StandsOut   measure.NM `json:"stands_out"`           // by how much the sides that are trimmed after sewing stand out beyond their seam allowance
	OutShared   bool       `json:"stands_out_shared"`    // that is of all such sides together: as much as the piece lies further out at one of them, it lies further in at the others
	RuleCut     measure.NM `json:"rule_cut,omitempty"`   // what the rule of thumb says to cut, where it says otherwise; else 0
	KitesCut    measure.NM `json:"kites_cut,omitempty"`  // ring corners: the kite's square, which may be cut instead; else 0
	Grain       [2]int     // two corners, from one to the other along the straight grain
}

// Exact is a size of a piece that must be exact.
type Exact struct {
	What string // "the strip for wedges"
	Cut  measure.NM
	// SideOf is the block's side, finished, that gives another such size; nil where the side has no part in it.
	SideOf func(cut measure.NM) measure.NM
}

// PitchCut is how much strip each of a row of wedges or tumblers takes.
func (c *CutSize) PitchCut() measure.NM { return (c.WideCut + c.NarrowCut) / 2 }

// OutEach is by how much each of the sides that are trimmed stands out where the piece lies with as much over on either.
func (c *CutSize) OutEach() measure.NM {
	if c.OutShared {
		return c.StandsOut / 2
	}
	return c.StandsOut
}

// Angles of an eighth of a turn: cosine and sine of 22.5 degrees, 1 / sqrt 2. The tangent is tan22.
const (
	cos22 = 0.92387953251128675613
	sin22 = 0.38268343236508977173 // sqrt(2 - sqrt 2) / 2
	k     = math.Sqrt2 / 2
)

// times is a length multiplied by a number, in nanometres. The product stands alone, so that no machine fuses it with a
// sum and rounds it otherwise than the next.
func times(nm measure.NM, by float64) float64 { return float64(float64(nm) * by) }

// nearest is a length of so many nanometres, rounded to a whole one.
func nearest(nm float64) measure.NM { return measure.NM(math.Round(nm)) }

// exact rounds a size up to what pieces that are not trimmed are cut by.
func (z *Sizing) exact(nm measure.NM) measure.NM { return measure.RoundUp(nm, z.Steps.Exact) }

// sideOfSquare is the block's side that gives a plain square of a cut size.
func (z *Sizing) sideOfSquare(cut measure.NM) measure.NM { return cut - 2*z.Seam }

// gives says whether pieces can be cut from a strip at all.
func (z *Sizing) gives(stripCut measure.NM) bool { return stripCut > 2*z.Seam && stripCut <= MaxCut }

// trimmed fills in a square whose pieces are trimmed after sewing.
func (c *CutSize) trimmed(exact, cut measure.NM) {
	c.AcrossExact, c.AlongExact, c.AcrossCut, c.AlongCut = exact, exact, cut, cut
	c.TrimCut = cut - exact
}

// rightAngle is the template of a piece with its square corner in the upper left.
func rightAngle([]Place) (from, to int) { return 0, 1 }
