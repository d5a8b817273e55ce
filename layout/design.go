package layout

// Design is a checked layout: every name looked up, every length in whole nanometres,
// every block turned. Frames are in the fields' names. Parts that come from
// several statements stand beside them.
type Design struct {
	texts
	sizes
	Fabrics   []Fabric
	Motifs    []Motif
	StripSets []StripSet
	Pools     []Pool
	Swaps     []Swap // in the order in which they are made
	webs
	Blocks []Block
	grid
	turning
	edgings
	finish
	OnHand    []OnHand
	Contrast  *Contrast // nil if not said
	Colorways []Colorway
	Sizes     []QuiltSize // the one that is the layout as written first; none of a design in a size
}
