package layout

import "eighthturn/internal/measure"

// Limits are published in the language's reference and checked before anything is made.
const (
	MaxBytes     = 4 << 20 // of a layout
	MaxLineBytes = 1 << 16 // of one line
	MaxLines     = 100_000
	MaxCells     = 40_000 // columns times rows, with what repeats
	MaxPatches   = 150_000
	MaxColumn    = 400 // pieces of a column of tumblers
	MaxBorders   = 200
	MaxNameChars = 60
	MaxTextChars = 1000
	MaxBands     = 40   // in a strip set
	MaxStripes   = 40   // of a fabric
	MaxSetStrips = 5000 // in all strip sets together
	MaxDealt     = 500  // sets that a strip set is dealt as
	MaxPooled    = 5000 // fabrics in all pools together
	MaxDefined   = 1000 // names of fabrics, pools, strip sets and motifs
	MaxBlocks    = 500  // labels
	MaxColorways = 40
	MaxSizes     = 20
	MaxOnHand    = 100  // lines of pieces on hand
	MaxPrecuts   = 1000 // of one fabric

	MaxPhotosPixels = 300_000_000 // in all photos together: two dozen as phones take them; one saved in passes counts more
	MaxPhotosBytes  = 250_000_000 // in all photos together
)

// Limits of lengths, finished or cut as the statement says.
const (
	MaxSeam = measure.Inch
	MinSide = measure.Inch / 4

	MinFinished = measure.Millimetre / 10 // of a strip in a strip set
	MaxSide     = 120 * measure.Inch
	MaxStrip    = 120 * measure.Inch
	MaxCloth    = 400 * measure.Inch

	MaxExtraCloth = 100 * measure.Inch    // for squaring up, and for slips
	MaxTop        = 10_000 * measure.Inch // a side of the finished top
)
