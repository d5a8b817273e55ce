// Package sewing turns a top into the order of joining, offsets, pressing and bulk: which
// pieces are sewn first, by how much raw corners stick out, which way allowances lie, and
// where the cloth stretches or grows thick.
//
// A plan is data; what is to be said of it stands in package report, and the recipes of the kinds in package blocks.
// Lengths are whole nanometres. Finished is from seam to seam, unfinished is with the seam
// allowances that are not sewn yet. Patches are named by their index in the top, cells by
// theirs, so that a page can light them up.
//
// The plan takes for granted that wedges are cut from strips, so that their tips are blunt:
// cut off flat a seam allowance beyond the finished tip.
package sewing

import (
	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/internal/stop"
)

// Options say how a plan is made. The zero value is the normal case.
type Options struct {
	MaxOddCycles int // how many joints that cannot nest are proved with their odd cycle; default 50
}

// Plan is how one top is sewn.
type Plan struct {
	Title        string         `json:"title"`
	Units        measure.System `json:"-"`
	Seam         measure.NM     `json:"seam_allowance"`
	SideFinished measure.NM     `json:"block_side_finished"`
	Columns      int            `json:"columns"`
	Rows         int            `json:"rows"`
	Cloths       []Cloth        `json:"cloths"`
	Blocks       []Block        `json:"blocks"`   // by label, in the order in which they first appear
	Assembly     Assembly       `json:"assembly"` // of the blocks
	Pressing     Pressing       `json:"pressing"`
	Grain        Grain          `json:"grain"`
	Bulk         Bulk           `json:"bulk"`

	sign  *stop.Sign // ends the work on it; nil for never, and once it is made
	top   *quilt.Top
	cuts  *cutting.Plan // how the top's pieces are cut
	kinds []*sewn       // by Block
	cells []cellSewn    // by cell
	index []int32       // by piece of a cell, see cellSewn: the patch

	lines       []line
	seamLines   []seamLine
	columnEdges map[int]*rawEdges // by a column's upper cell
}

// Size is across by down. A unit that is no block yet is measured as it lies with its square
// corner in a ruler's corner, or, without one, with its longest side along the ruler; its
// longer measure stands first.
type Size struct {
	Across measure.NM `json:"across"`
	Down   measure.NM `json:"down"`
}

// Form is what a unit looks like.
type Form string

const (
	Rectangle Form = "rectangle" // squares too
	Triangle  Form = "triangle"  // with a square corner and two short sides of one length
	Slanted   Form = "slanted"   // any other: its size is that of the rectangle into which it fits
)

// Block is how the blocks of one label are sewn.
type Block struct {
	Label      string            `json:"label"`
	Kind       string            `json:"kind"`
	Column     bool              `json:"column,omitempty"` // its cells under one another are one column
	Count      int               `json:"count"`            // blocks of the label in the top, or columns
	Finished   Size              `json:"finished"`         // of the block; of a column, the longest one
	Unfinished Size              `json:"unfinished"`
	FromCenter measure.NM        `json:"center_to_raw_edge"` // of a square block, half its unfinished size
	Variants   []FabricVariant   `json:"variants"`
	Unturned   bool              `json:"unturned"` // the blocks look the same in every turn
	Steps      []Step            `json:"steps"`    // empty where there is nothing to sew
	Rounds     []Round           `json:"rounds"`
	Pressings  []blocks.Pressing `json:"pressings"` // by choice of the block, see Pressing
	Edges      [4]EdgeGrain      `json:"edges"`
}

// Cloth is what a piece is cut from.
type Cloth struct {
	Name     string   `json:"name"`               // of the fabric, or of the strip set
	Bands    []string `json:"bands,omitempty"`    // the fabrics of a strip set whose wedges differ, from the wide end to the tip; nil for others
	Reversed bool     `json:"reversed,omitempty"` // a wedge whose tip lies on the other edge of its strip set
}

// Obstacle is why allowances cannot all turn one way round a point.
type Obstacle string

const (
	RunsThrough      Obstacle = "runs through"      // one piece has no corner there, so that its allowance runs past the point
	PressedOtherwise Obstacle = "pressed otherwise" // some seam there is pressed to one side
)

// FabricVariant is blocks of one label that are sewn of the same cloth: they differ in nothing
// but how they are turned.
type FabricVariant struct {
	Number int      `json:"number"` // among the block's, from 1
	Cloths []int    `json:"cloths"` // by piece of the kind, of Plan.Cloths
	Cells  []Placed `json:"cells"`
	Makes  []Make   `json:"makes"`                  // of each step, the units that are alike
	Leans  string   `json:"leans,omitempty"`        // of a column: the side to which its first slanted seam falls, "left" or "right"
	Longer []string `json:"longer_sides,omitempty"` // of a column's end pieces, above and below: on which side their longer side lies, "left" or "right", as the right side shows it
	Hands  []string `json:"hands,omitempty"`        // of these: "left" or "right" as they are cut
}

// Placed is a cell that takes a block, and how the block is turned there.
type Placed struct {
	Cell  int `json:"cell"`  // index; of a column its upper cell
	Row   int `json:"row"`   // from 1
	Col   int `json:"col"`   // from 1
	Turns int `json:"turns"` // quarter turns clockwise, from the way the block's pictures show it
	Cells int `json:"cells"` // how many cells down, 1 but for columns

	Patches []int32 `json:"patches"` // by piece of the kind, or down the column: which patch of the top it is here
}

// Make is units of one step that are alike in shape and cloth.
type Make struct {
	Step   int   `json:"step"` // index
	Join   int   `json:"join"` // the first join that makes one, by the kind's recipe
	Count  int   `json:"count"`
	Pieces []int `json:"pieces"` // of the kind, in the order of sewing, of the first of them
	Cloths []int `json:"cloths"` // of these, of Plan.Cloths
}

// Step is one step of the work on a block.
type Step struct {
	*blocks.Step // the kind's own recipe: what to do, trim and check

	PerBlock   int   `json:"per_block"`      // how many units
	Make       int   `json:"make"`           // how many units in the whole top
	Form       Form  `json:"form,omitempty"` // of the unit; "" of a column
	Finished   Size  `json:"finished"`
	Unfinished Size  `json:"unfinished"`       // after trimming
	Before     *Size `json:"before,omitempty"` // as it lies with as much over on all sides that are trimmed
	// CheckSizes are what a ruler measures of it after trimming, the longer first. Of a unit with pieces that only a later
	// step trims there is one, along a raw edge that is exact from end to end.
	CheckSizes  [2]CheckSize `json:"check_sizes"`
	CheckBefore measure.NM   `json:"check_before,omitempty"` // the longer of them before trimming
	StandsOut   measure.NM   `json:"stands_out"`             // by how much at most, beyond where it is trimmed; 0 where nothing is
	Joins       []Join       `json:"joins"`                  // in the order of sewing
}

// Join is one seam of a block, in the block's own frame: its upper left corner is the
// origin, unturned.
type Join struct {
	Number int           `json:"number"` // in the kind's recipe, from 0
	A      []int         `json:"a"`      // pieces of the kind on one side, by index
	B      []int         `json:"b"`      // and those on the other: B lies to the right of the way from From to To
	MadeA  int           `json:"made_a"` // the join that made A, -1 where it is a piece
	MadeB  int           `json:"made_b"`
	From   measure.Point `json:"from"` // finished
	To     measure.Point `json:"to"`
	Ends   [2]End        `json:"ends"`   // at From and To
	Choice int           `json:"choice"` // which of the block's choices of pressing it follows
	Round  bool          `json:"round"`  // its allowances turn round a point: see Round
}

// End is one end of a seam.
type End struct {
	Degrees   [2]float64    `json:"degrees"`    // the angle of A's corner and of B's
	Reach     [2]measure.NM `json:"reach"`      // how far A's raw corner and B's stand out beyond the end of the seam line, as they are cut
	Lead      measure.NM    `json:"lead"`       // by how much B's corner leads A's; below 0, A's leads
	Blunted   [2]bool       `json:"blunted"`    // that corner is to be trimmed before sewing, flat and a seam allowance beyond the finished point
	Off       [2]measure.NM `json:"cut_off"`    // how much of its point that takes off, along the middle of the corner
	LeadBlunt measure.NM    `json:"lead_blunt"` // the same as Lead once that is done
	Spare     [2]measure.NM `json:"spare"`      // how much further it may stand out, since the piece is cut larger and trimmed later; 0 where the corner is exact
	Partial   bool          `json:"partial"`    // stop here a seam allowance before the raw edge, and sew a stitch back
}

// Round is a point inside a block where three or more seams meet.
type Round struct {
	At      measure.Point `json:"at"`
	Pieces  []int         `json:"pieces"`   // of the kind, clockwise
	Seams   int           `json:"seams"`    // that run to it
	Turns   bool          `json:"turns"`    // the allowances can all turn one way round it
	WhyNot  Obstacle      `json:"why_not"`  // "" where they can
	Through int           `json:"through"`  // which piece runs past the point, -1 for none
	Layers  int           `json:"layers"`   // the most that lie on each other there, all turned one way; 0 where they cannot be
	Without int           `json:"without"`  // the same where each seam is pressed whole to one side
	Last    int           `json:"last"`     // the same with the last seam pressed open
	Opened  int           `json:"opened"`   // the same with every seam pressed open
	Partial []int         `json:"partials"` // the joins to be sewn in part
}
