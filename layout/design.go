package layout

import (
	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt/orient"
	"eighthturn/palettes"
)

// Design is a checked layout: every name looked up, every length in whole nanometres,
// every block turned. Frames are in the fields' names.
type Design struct {
	Title         string
	Units         measure.System
	Seam          measure.NM // allowance
	UsableWidth   measure.NM // of the cloth
	SideFinished  measure.NM // of a block; an even number of nanometres
	StripGiven    bool       // the layout gave the strip, not the side
	StripsCut     [blocks.Heights]measure.NM
	Fabrics       []Fabric
	StripSets     []StripSet
	Blocks        []Block
	Pools         []Pool
	Webs          []Fill // of the web centres: none, one, or two set like a draughtboard
	WebTable      []Fill // of single web centres, by corner of the grid in reading order; nil if there is no table
	Columns, Rows int
	Cells         []Cell // row by row
	StarFirst     bool   // a star centre stands at the upper left corner
	WebCentres    []orient.Centre
	StarCentres   []orient.Centre
	Runs          []Run    // the columns of the grid's column blocks
	Sash          *Edging  // between the blocks, nil if there is none
	Borders       []Edging // from the inside out
	Binding       *Edging
	Backing       int  // fabric, -1 if not said
	Batting       bool // asked for
	Designer      string
	Level         string
	Copyright     string
	Notes         []NoteText
	Contrast      *Contrast // nil if not said
}

// Fabric is a fabric of the quilt.
type Fabric struct {
	Name        string
	Colour      palettes.Colour
	Print       string
	Photo       *Photo     // nil if the colour was written
	OnHand      measure.NM // 0 if not said
	UsableWidth measure.NM // the layout's own, or the quilt's
	Span        Span
}

// Photo is the photo of a fabric.
type Photo struct {
	File   string     // as written
	Across measure.NM // how much cloth it shows from left to right
	palettes.Cloth
}

// StripSet is strips sewn together, from the wide end of a wedge to its tip.
type StripSet struct {
	Name  string
	Bands []Band
	Span  Span
}

// Band is one strip of a strip set.
type Band struct {
	Fabric int // index, -1 for a pool
	Pool   int // index, -1 for a fabric
	Rest   bool
	// Cut is the band's cut width in the strip for wedges of each height; 0 where no
	// block of the grid uses the set so.
	Cut [blocks.Heights]measure.NM
}

// Fill is what a piece is cut from: a fabric, a pool of scraps, or a strip set one way or
// the other. Of the three indexes two are -1; where all are, nothing was said.
type Fill struct {
	Fabric, Set, Pool int
	Turned            bool
	Span              Span
}

// noFill is a fill of which nothing was said.
var noFill = Fill{Fabric: -1, Set: -1, Pool: -1}

// Given says whether the fill is one.
func (f Fill) Given() bool { return f.Fabric >= 0 || f.Set >= 0 || f.Pool >= 0 }

// Same says whether two fills look alike.
func (f Fill) Same(g Fill) bool {
	return f.Fabric == g.Fabric && f.Set == g.Set && f.Pool == g.Pool && f.Turned == g.Turned
}

// DealtBy is what of a quilt gets one fabric of a pool.
type DealtBy uint8

const (
	ByPiece DealtBy = iota
	ByBlock
	ByWeb
)

// Pool is a pool of scraps.
type Pool struct {
	Name    string
	Fabrics []int // each once
	By      DealtBy
	Deal    int // another number gives another deal
	Span    Span
}

// Run is a column of cells that are one column of pieces.
type Run struct {
	Block       int // index
	X, Y, Cells int // its first cell, and how many it has
	Divided     blocks.Column
}

// NoteText is a note for the printed pattern; Place is a block's label, a part of the
// pattern, or "".
type NoteText struct{ Place, Text string }

// Contrast is the thresholds of the value study in steps of CIE L*: below Soft a seam
// vanishes, from Clear on it is clear.
type Contrast struct{ Soft, Clear float64 }

// Block is a block that the grid may name.
type Block struct {
	Label string
	Kind  *blocks.Kind
	Fills [][]Fill // a role each; empty where `webs` gives the fabric or the role may be left out
	Span  Span
	line  *LengthNode
	about *LengthNode
	used  bool
}

// Cell is one place of the grid.
type Cell struct {
	Block int   // index, -1 for nothing there
	Turns uint8 // quarter turns clockwise
	Run   int   // index of its column, -1 for blocks of their own
	Span  Span
}

// Edging is a border, the sashes or the binding. The width of borders and sashes is
// finished, a binding's cut.
type Edging struct {
	Width      measure.NM
	Fabric     int
	Corners    int  // fabric of a border's corner squares or the sashes' posts, -1 for none
	Lengthwise bool // cut along the cloth
	Around     bool // sashes go round the outside too
	Span       Span
}
