package cutting

import (
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/supplies"
	"eighthturn/palettes"
)

// Fabric is all that is cut from one fabric, in the order to cut: blocks for lengthwise pieces, then strips, widest first.
type Fabric struct {
	Index       int // of the top's fabrics
	Name, Print string
	Colour      palettes.Colour
	UsableWidth measure.NM // between the selvages
	Lines       []int      // plan lines cut from it alone
	Blocks      []Block
	Strips      []Strip // across the width, widest first; like ones together
	Chains      []Chain // which strips are sewn end to end

	StripCount  int        // strips, counting like ones
	StripRows   int        // the same, a strip counted as often as it has rows
	StripBound  int        // so counted, no plan of strips that takes no more cloth takes fewer, every stretch of strip cut into like pieces
	LengthCut   measure.NM // of cloth, for blocks and strips
	LengthBound measure.NM // no plan of such strips takes less
	BackingCut  measure.NM // of cloth, where the back is made of it too
	Purchase    supplies.Purchase
	Precuts     []Precut // what would do instead, if anything would
	OnHand      *OnHand  // nil if the layout does not say
	LeftOver    []LeftOver

	wanted []demand // of its strips
	along  []Column // lengthwise pieces
	laid   *alike   // what is wanted of its strips, as it was laid
}

// Strip is a strip across the cloth, or as many like ones.
type Strip struct {
	WidthCut   measure.NM
	LengthCut  measure.NM // what the cloth gives: its usable width, or what a block leaves of it
	InBlock    int        // index of the block beside which it lies, -1 for the whole width
	Times      int        // like strips
	Cuts       []Cut      // from one end
	EndLeftCut measure.NM // length left at the other end
}

// Rows is in how many rows a strip is cut at the most.
func (s *Strip) Rows() int {
	most := 1
	for i := range s.Cuts {
		most = max(most, s.Cuts[i].Rows)
	}
	return most
}

// Cut is a stretch of a strip that is cut into like pieces side by side, in one row or several.
type Cut struct {
	Lines     []int // of the plan, that it supplies: one, or those of a joined border or a strip set
	Set       int   // strip set that the stretch is a strip of, -1 if none
	Use       Use
	Units     int        // cut off it
	Rows      int        // that they lie in, one above the other; the last length of strip may hold fewer
	AcrossCut measure.NM // of a unit; less than the strip's width where a wider strip's end is used up
	AlongCut  measure.NM // of a unit, or of the whole stretch where wedges and tumblers nest
	Nests     bool       // wedges or tumblers side by side
}

// Use is what a stretch of strip is for.
type Use uint8

const (
	ForPieces  Use = iota
	ForJoining     // sewn end to end with others of its line
	ForSet         // a strip of a strip set
	ForBinding
)

// Block is a piece of cloth along which lengthwise pieces are cut side by side.
type Block struct {
	LengthCut    measure.NM // along the cloth
	Columns      []Column   // from one selvage on
	LeftWidthCut measure.NM // beside them, for strips
}

// Column is one lengthwise piece.
type Column struct {
	Line      int
	WidthCut  measure.NM
	LengthCut measure.NM
}

// LeftOver is cloth that is left in one piece, or as many like ones.
type LeftOver struct {
	Times     int
	AcrossCut measure.NM
	AlongCut  measure.NM
}

// OnHand is how the cloth that there is compares with what is needed.
type OnHand struct {
	HaveCut   measure.NM
	NeedCut   measure.NM // with squaring up and spare
	Enough    bool
	ShortCut  measure.NM // 0 if enough
	WaysToFit []Way      // each worked out anew with everything else as it is
}

// Way is a change with which the cloth on hand suffices.
type Way struct {
	Border        int        // whose width would change, -1 for the block's side
	WidthFinished measure.NM // the border's new width
	SideFinished  measure.NM // the block's new side
	StripCut      measure.NM // the new strip, where the layout gives the strip
	NeedCut       measure.NM // of the fabric with it
}

// Precut is how many of a precut would do in place of cloth by the length.
type Precut struct {
	supplies.Precut
	Count int
}

// StripSet is a strip set of real fabrics with all wedges that are cut from it, both ways round.
type StripSet struct {
	Name        string // in the layout
	Bands       []Band // from the wide end of the wedges that are not reversed to their tip
	StripCut    measure.NM
	WidthCut    measure.NM // to check after sewing: what the wedges are cut from
	Alike       bool       // reads the same from both sides: wedges of both kinds are one
	LengthCut   measure.NM // of a whole set
	PerSet      int        // wedges
	FirstOfSet  int        // of them of the kind cut first
	SecondOfSet int
	Runs        []SetRun
	Lines       [2]int // of wedges as the bands stand, and reversed; -1 for none
	Wanted      [2]int // wedges
	Given       [2]int
	LeftOver    [2]int // wedges of each kind beyond those wanted
}

// SetRun is strip sets of one length.
type SetRun struct {
	Sets          int
	LengthCut     measure.NM
	Wedges        int // from each
	FirstReversed int // of the sets: those in which a reversed wedge is cut first, where the number of wedges is odd
}

// Band is one strip of a strip set.
type Band struct {
	Fabric        int // index of the plan's fabrics
	WidthCut      measure.NM
	WidthFinished measure.NM
	OnRuler       Ruler
}
