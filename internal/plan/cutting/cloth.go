package cutting

import (
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/supplies"
	"eighthturn/internal/quilt/lengths"
	"eighthturn/palettes"
)

// Fabric is all that is cut from one fabric, in the order to cut: blocks for lengthwise pieces, then strips, widest first.
type Fabric struct {
	Index       int    `json:"layout_fabric"` // of the top's fabrics
	Name        string `json:"name"`
	Print       string `json:"print,omitempty"`
	Colour      palettes.Colour
	UsableWidth measure.NM   `json:"usable_width"` // between the selvages
	Lines       []int        `json:"lines"`        // plan lines cut from it alone
	Blocks      []Block      `json:"lengthwise"`
	Strips      []Strip      `json:"strips"`              // across the width, widest first; like ones together
	Ends        []End        `json:"ends_cut_lengthwise"` // ends of strips that are cut into narrower strips
	Chains      []Chain      `json:"joined"`              // which strips are sewn end to end
	EightAlike  []EightAlike `json:"eight_alike"`         // wedges of a print that repeats, cut as they come: how they would be eight and eight alike
	FromPrint   []FromPrint  `json:"from_print"`          // pieces that are cut from places of its print; empty for none

	StripCount  int               `json:"strip_count"`                  // strips of yardage, counting like ones
	StripRows   int               `json:"strip_rows"`                   // the same, a strip counted as often as it has rows
	StripBound  int               `json:"strip_bound"`                  // so counted, no plan of strips that takes no more cloth takes fewer, every stretch of strip cut into like pieces
	LengthCut   measure.NM        `json:"cloth_cut" length:"atleast"`   // of cloth, for blocks and strips
	LengthBound measure.NM        `json:"cloth_bound" length:"atleast"` // no plan of such strips takes less
	BackingCut  measure.NM        `json:"backing_cut" length:"atleast"` // of cloth, where the back is made of it too
	Purchase    supplies.Purchase `json:"purchase"`
	Precuts     []Precut          `json:"precuts"`      // what would do instead, if anything would
	From        *FromPrecuts      `json:"from_precuts"` // nil if the layout does not say
	OnHand      *OnHand           `json:"on_hand"`      // nil if the layout does not say
	LeftOver    []LeftOver        `json:"left_over"`

	Tight       bool `json:"tight"`        // every strip is used to within TightEnd, so that a spoiled piece takes one strip more
	SearchEnded bool `json:"search_ended"` // before all was tried, its steps used up: a plan with less cloth, fewer strips or fewer precuts may be there

	budget     *budget
	wanted     []demand       // of its strips
	stacks     bool           // ends of strips may be cut into narrower strips
	along      []lengths.Want // what is cut along the selvages
	gapsLeft   []gap          // between strips on a print, what strips leave of them
	longest    measure.NM     // length that strips of several pieces are cut from
	alongLines []int          // of the plan, of each
	laid       *alike         // what is wanted of its strips, as it was laid
}

// Strip is a strip across the cloth, or as many like ones.
type Strip struct {
	WidthCut   measure.NM `json:"width_cut"`
	LengthCut  measure.NM `json:"length_cut"`                   // what the cloth gives: its usable width, or what a block leaves of it
	InBlock    int        `json:"beside_lengthwise"`            // index of the block beside which it lies, -1 for the whole width
	OnSheet    int        `json:"on_precut"`                    // index of the precut that it lies on, -1 for yardage
	OnPrint    bool       `json:"between_lined_up,omitempty"`   // it lies between strips that are lined up on a print
	OnEnd      int        `json:"on_end"`                       // index of the end of a wider strip that it lies on, -1 for none
	End        int        `json:"end"`                          // index of its own end that is cut into narrower strips, -1 for none
	Times      int        `json:"strips"`                       // like strips
	Cuts       []Cut      `json:"cuts"`                         // from one end
	EndLeftCut measure.NM `json:"end_left_cut" length:"atmost"` // length left at the other end
}

// OfYardage says whether a strip takes yardage: it lies on no other cloth that is cut already.
func (s *Strip) OfYardage() bool { return s.InBlock < 0 && s.OnSheet < 0 && s.OnEnd < 0 && !s.OnPrint }

// rows is in how many rows a strip is cut at the most.
func (s *Strip) rows() int {
	most := 1
	for i := range s.Cuts {
		most = max(most, s.Cuts[i].Rows)
	}
	return most
}

// Cut is a stretch of a strip that is cut into like pieces side by side, in one row or several.
type Cut struct {
	Lines     []int      `json:"lines"`     // of the plan, that it supplies: one, or those of a joined border or a strip set
	Set       int        `json:"strip_set"` // strip set that the stretch is a strip of, -1 if none
	Use       Use        `json:"use"`
	Units     int        `json:"units"`      // cut off it
	Rows      int        `json:"rows"`       // that they lie in, one above the other; the last length of strip may hold fewer
	AcrossCut measure.NM `json:"across_cut"` // of a unit; less than the strip's width where a wider strip's end is used up
	AlongCut  measure.NM `json:"along_cut"`  // of a unit, or of the whole stretch where wedges and tumblers nest
	Nests     bool       `json:"nests"`      // wedges or tumblers side by side
}

// Length is how much of a strip a stretch takes.
func (c *Cut) Length() measure.NM {
	if c.Nests {
		return c.AlongCut
	}
	return measure.NM(up(c.Units, c.Rows)) * c.AlongCut
}

// Use is what a stretch of strip is for.
type Use uint8

const (
	ForPieces  Use = iota
	ForJoining     // sewn end to end with others of its line
	ForSet         // a strip of a strip set
	ForBinding
	ForEnd // cut into narrower strips
)

// String is the use's name for other programs.
func (u Use) String() string {
	return [...]string{"pieces", "joining", "strip-set", "binding", "narrower-strips"}[u]
}

// Block is a length of cloth along which strips are cut side by side, or as many like ones.
type Block struct {
	Times        int        `json:"lengths"`
	LengthCut    measure.NM `json:"length_cut" length:"atleast"` // along the cloth
	Columns      []Column   `json:"pieces"`                      // from one selvage on
	LeftWidthCut measure.NM `json:"left_width_cut"`              // beside them, for strips
}

// Column is one strip along the selvages: a lengthwise piece, or as many as are cut from it one after another.
type Column struct {
	Line      int        `json:"line"`
	Units     int        `json:"units"` // cut off it: wedges, squares, rectangles
	WidthCut  measure.NM `json:"width_cut"`
	LengthCut measure.NM `json:"length_cut"`
	whole     bool       // it is one piece, however long
}

// LeftOver is cloth that is left in one piece, or as many like ones.
type LeftOver struct {
	Times     int        `json:"pieces"`
	AcrossCut measure.NM `json:"across_cut" length:"atmost"`
	AlongCut  measure.NM `json:"along_cut" length:"atmost"`
}

// OnHand is how the cloth that there is compares with what is needed.
type OnHand struct {
	HaveCut   measure.NM `json:"have" length:"shop"`
	NeedCut   measure.NM `json:"need" length:"atleast"` // with squaring up; what is bought for slips one can do without
	Enough    bool       `json:"enough"`
	NoSpare   bool       `json:"enough_without_spare"`              // enough, but not for all that is bought for slips
	ShortCut  measure.NM `json:"short" length:"atleast"`            // 0 if enough
	ByLeast   bool       `json:"enough_with_least_cloth,omitempty"` // planned with the least cloth it would be
	WaysToFit []Way      `json:"ways_to_fit"`                       // each worked out anew with everything else as it is

	SearchEnded bool `json:"search_ended,omitempty"` // before all ways were tried, the steps used up: there may be others
}

// Way is a change with which the cloth on hand suffices.
type Way struct {
	Border        int        `json:"border"`                   // whose width would change, -1 for the block's side
	WidthFinished measure.NM `json:"width_finished,omitempty"` // the border's new width
	SideFinished  measure.NM `json:"side_finished,omitempty"`  // the block's new side
	StripCut      measure.NM `json:"strip_cut,omitempty"`      // the new strip, where the layout gives the strip
	NeedCut       measure.NM `json:"need" length:"atleast"`    // of the fabric with it
}

// Precut is how many of a precut would do in place of cloth by the length.
type Precut struct {
	supplies.Precut
	Count int `json:"count"`
}

// StripSet is a strip set of real fabrics with all wedges that are cut from it, both ways round.
type StripSet struct {
	Name        string     `json:"name"`   // in the layout
	Bands       []Band     `json:"strips"` // from the wide end of the wedges that are not reversed to their tip
	StripCut    measure.NM `json:"strip_cut"`
	WidthCut    measure.NM `json:"width_cut"`      // to check after sewing: what the wedges are cut from
	Alike       bool       `json:"alike"`          // reads the same from both sides: wedges of both kinds are one
	LengthCut   measure.NM `json:"length_cut"`     // of a whole set
	PerSet      int        `json:"wedges_per_set"` // wedges
	FirstOfSet  int        // of them of the kind cut first
	SecondOfSet int
	Runs        []SetRun `json:"sets"`
	Lines       [2]int   `json:"lines"`            // of wedges as the bands stand, and reversed; -1 for none
	Wanted      [2]int   `json:"wanted"`           // wedges
	OnHand      [2]int   `json:"on_hand,omitzero"` // of them on hand, which are not cut
	Given       [2]int   `json:"given"`
	LeftOver    [2]int   `json:"left_over"` // wedges of each kind beyond those that are wanted of it
}

// SetRun is strip sets of one length.
type SetRun struct {
	Sets          int        `json:"sets"`
	LengthCut     measure.NM `json:"length_cut" length:"atleast"`
	Wedges        int        `json:"wedges"`         // from each
	FirstReversed int        `json:"first_reversed"` // of the sets: those in which a reversed wedge is cut first, where the number of wedges is odd
}

// Band is one strip of a strip set.
type Band struct {
	Fabric        int        `json:"fabric"` // index of the plan's fabrics
	WidthCut      measure.NM `json:"width_cut"`
	WidthFinished measure.NM `json:"width_finished"`
	OnRuler       Ruler      `json:"exact_size"`
}
