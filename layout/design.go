package layout

// Design is a checked layout: every name looked up, every length in whole nanometres,
// every block turned. Frames are in the fields' names. Its parts stand beside the statements
// that they come from.
type Design struct {
	texts
	sizes
	fabrics
	stripSets
	pools
	webs
	turning
	blockList
	grid
	edgings
	finish
	valueSteps
}
