package layout

import (
	"eighthturn/blocks"
	"eighthturn/lattice"
	"eighthturn/measure"
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
	Webs          []Fill // of the web centres: none, one, or two set like a draughtboard
	Columns, Rows int
	Cells         []Cell // row by row
	StarFirst     bool   // a star centre stands at the upper left corner
	WebCentres    []lattice.Centre
	StarCentres   []lattice.Centre
	Borders       []Edging // from the inside out
	Binding       *Edging
}

// Fabric is a fabric of the quilt.
type Fabric struct {
	Name        string
	Colour      palettes.Colour
	Print       string
	OnHand      measure.NM // 0 if not said
	UsableWidth measure.NM // the layout's own, or the quilt's
	Span        Span
}

// StripSet is strips sewn together, from the wide end of a wedge to its tip.
type StripSet struct {
	Name  string
	Bands []Band
	Span  Span
}

// Band is one strip of a strip set.
type Band struct {
	Fabric int
	Rest   bool
	// Cut is the band's cut width in the strip for wedges of each height; 0 where no
	// block of the grid uses the set so.
	Cut [blocks.Heights]measure.NM
}

// Fill is what a piece is cut from: a fabric, or a strip set one way or the other.
type Fill struct {
	Fabric int // index, -1 for a strip set
	Set    int // index, -1 for a fabric
	Turned bool
	Span   Span
}

// Same says whether two fills look alike.
func (f Fill) Same(g Fill) bool {
	return f.Fabric == g.Fabric && f.Set == g.Set && f.Turned == g.Turned
}

// Block is a block that the grid may name.
type Block struct {
	Label string
	Kind  *blocks.Kind
	Fills [][]Fill // a role each; empty where `webs` gives the fabric
	Span  Span
	used  bool
}

// Cell is one place of the grid.
type Cell struct {
	Block int   // index, -1 for nothing there
	Turns uint8 // quarter turns clockwise
	Span  Span
}

// Edging is a border or the binding. A border's width is finished, a binding's cut.
type Edging struct {
	Width  measure.NM
	Fabric int
	Span   Span
}
