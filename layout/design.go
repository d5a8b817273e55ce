package layout

import (
	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt/orient"
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
