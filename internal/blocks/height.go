package blocks

import (
	"math"

	"eighthturn/internal/measure"
)

// WedgeHeight is how the finished height of a kind's wedges follows from the finished side
// of its block.
type WedgeHeight uint8

const (
	// NoWedges: the kind takes any side.
	NoWedges WedgeHeight = iota
	// AlongDiagonal: two wedge legs make the block's diagonal, so height = k cos 22.5 side.
	AlongDiagonal
	// ToMiddle: wedges stand on the block's sides and meet in its middle, height = side / 2.
	ToMiddle
	// WholeSide: pieces of a column as wide as the block, height = side.
	WholeSide
)

// alongDiagonal is k cos 22.5 degrees = sqrt((2 + sqrt 2) / 8).
const alongDiagonal = 0.65328148243818826393

// Side is the finished side for wedges of a finished height, rounded to an even number of
// nanometres so that the block's middle is a whole number too.
func (h WedgeHeight) Side(finishedHeight measure.Length) measure.NM {
	nm := float64(finishedHeight.NM())
	switch h {
	case AlongDiagonal:
		return measure.NM(2 * math.Round(nm/(2*alongDiagonal)))
	case WholeSide:
		return 2 * finishedHeight.Half().NM()
	}
	return 2 * finishedHeight.NM()
}

// Finished is the wedges' finished height for a finished side, the nearest nanometre.
func (h WedgeHeight) Finished(finishedSide measure.NM) measure.NM {
	switch h {
	case AlongDiagonal:
		return measure.NM(math.Round(float64(finishedSide) * alongDiagonal))
	case ToMiddle:
		return finishedSide / 2
	case WholeSide:
		return finishedSide
	}
	return 0
}

// Heights is how many ways there are, for tables by WedgeHeight.
const Heights = int(WholeSide) + 1
