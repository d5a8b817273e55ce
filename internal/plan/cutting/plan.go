// Package cutting turns a top into what is cut from which cloth, in what order, and how much to buy.
//
// Everything is plain data in whole nanometres. Names carry the frame: Finished is seam to seam, Cut is as it lies on the
// table, Exact is a cut size that geometry asks for before any ruler has its say. Cut sizes that are rounded never lie below
// the exact ones.
//
// A plan knows one way to cut: strips across the cloth, the widest first, each stretch of a strip cut into one row of like
// pieces, and blocks of cloth for what the layout wants cut lengthwise. Bounds are bounds for that way of cutting. Where the least
// cloth is asked for, ends of strips are cut into narrower strips as well. Precuts that the layout gives are cut before yardage,
// into strips in the same way.
package cutting

import (
	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/supplies"
)

// Plan is what to cut and what to buy for a top.
type Plan struct {
	Title     string
	Units     measure.System
	Seam      measure.NM        `json:"seam_allowance"` // allowance
	Steps     blocks.Steps      // what cut sizes were rounded to
	Copies    int               `json:"copies"`          // how many quilts are planned
	Allowance Allowance         `json:"allowance"`       // added to each fabric
	Longer    measure.NM        `json:"longer"`          // strips of a border are cut so much longer than reckoned, to be cut to the quilt as measured; 0 for least cloth
	Fabrics   []Fabric          `json:"fabrics"`         // those that something is cut from, in the top's order
	Sets      []StripSet        `json:"strip_sets"`      // strip sets of the real fabrics: those that were dealt, and the others in the order they first appear
	Dealt     []Dealing         `json:"dealt,omitempty"` // strip sets that were dealt set by set, in the order they first appear
	Lines     []Line            `json:"lines"`           // every distinct piece; a line's number is its index
	LineOf    []int             // line that supplies each patch of the top, by the patch's index
	HandOf    []Hand            // of each patch
	OnHand    []OnHandPieces    `json:"on_hand_pieces"`        // used before others are cut
	Left      []LeftPieces      `json:"left_pieces"`           // cut beyond those that the quilt takes
	Wedges    []Wedge           `json:"wedges"`                // what each strip that wedges come from gives, widest first
	Tumblers  []Tumbler         `json:"tumblers"`              // the same for columns
	Binding   *supplies.Binding `json:"binding"`               // of one quilt
	Backing   *supplies.Backing `json:"backing"`               // of one quilt; nil where there can be none
	BackingOf int               `json:"backing_layout_fabric"` // fabric, by the top's index, -1 for one of your choice
	// BackingBuy is what to buy for the backings of all quilts where they are of a fabric of your choice, and zero else.
	BackingBuy supplies.Purchase `json:"backing_to_buy"`
	Batting    *supplies.Batting `json:"batting"` // of one quilt
	Faults     []Fault           // what cannot be cut; a plan with faults has no strips for those lines
	Warnings   []Fault           // what should be known before cutting

	dealtNumbers map[int]int // of strip sets that were dealt, by index
	setNumbers   []int       // of the strip sets among those of their name, from 1; 0 where there is one of the name
}

// Place is a stretch of the source in bytes, the end not included, as in a layout's spans.
type Place struct{ Start, End int }

// Fault is a message about the plan with its place in the layout: one sentence, and a hint that says what to type.
type Fault struct {
	Place         Place
	Message, Hint string
}

// Wedge is what one width of wedge strip gives.
type Wedge struct {
	StripCut    measure.NM `json:"strip_cut"`
	OnRuler     Ruler
	BaseCut     measure.NM `json:"wide_cut"` // of a wedge, along the strip's edge
	TipCut      measure.NM `json:"tip_cut"`
	PitchCut    measure.NM `json:"pitch_cut"`    // of strip that each wedge takes
	UsableWidth measure.NM `json:"usable_width"` // of the cloth
	PerStrip    int        `json:"per_strip"`    // wedges from a strip that long
	WasteCut    measure.NM `json:"waste_cut"`    // at its ends together: the slants and what is left
}

// Tumbler is what one size of a column's pieces is cut by.
type Tumbler struct {
	StripCut  measure.NM `json:"strip_cut"`
	LineCut   measure.NM `json:"line_cut"` // of a wedge rule, laid on the strip's edge
	OnRuler   Ruler      // for the line
	WideCut   measure.NM `json:"wide_cut"`
	NarrowCut measure.NM `json:"narrow_cut"`
	Slim      bool       `json:"slim"` // the narrow side finishes below two seam allowances
}

// Ruler says how a size that must be exact stands to a ruler's marks. The zero value is not used.
type Ruler struct {
	What     string     `json:"what,omitempty"` // the size: "the strip for wedges"; "" of a strip in a strip set
	ExactCut measure.NM `json:"exact_cut"`
	OnMark   bool       `json:"on_mark"`   // a line of the ruler shows it
	BelowCut measure.NM `json:"below_cut"` // the mark below; the size itself if on a mark
	AboveCut measure.NM `json:"above_cut"` // the mark above
	// BelowSideFinished and AboveSideFinished are the block's sides that would put the size on these marks, 0 where the
	// side has no part in it.
	BelowSideFinished measure.NM `json:"below_side_finished,omitempty"`
	AboveSideFinished measure.NM `json:"above_side_finished,omitempty"`
}

// Options say how to plan. The zero value is the normal case.
type Options struct {
	Copies            int          // of the whole quilt; default 1
	Quarters          bool         // buy by quarters of a yard in place of eighths; has no part in metres
	SquareUp          measure.NM   // added to each fabric for squaring its ends; default what the layout says, else 2 in, 5 cm
	NoSquareUp        bool         // nothing is added for that, whatever the layout says
	Spare             measure.NM   // added to each fabric for slips; default what the layout says, else one more of its widest strip
	NoSpare           bool         // nothing is added for that, whatever the layout says
	LeastCloth        bool         // strips to be joined are cut as short as will do, and from the ends of others, in place of whole ones
	Steps             blocks.Steps // what cut sizes are rounded to; each one that is 0 is the units' own
	CornersByCustom   bool         // ring corners from the kite's square where it is large enough, in place of their exact one
	LongEdgesStraight bool         // triangles from squares cut twice, their long edge on the straight grain
	DiagonalBorders   bool         // border strips joined with diagonal seams, in place of straight ones; whole strips suffice for either
	BindingAllowance  measure.NM   // beyond the perimeter; default 10 in, 25 cm
	NothingOnHand     bool         // pieces on hand are not used
	BackingOverhang   measure.NM   // on each side; default 4 in, 10 cm
	BattingOverhang   measure.NM   // on each side; default 3 in, 7.5 cm
}

// Limits, checked before anything is planned.
const (
	MaxCopies = 1000
	MaxExtra  = 100 * measure.Inch // of an allowance, a spare length, an overhang
	MaxStep   = 2 * measure.Inch
)
