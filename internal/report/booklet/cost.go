package booklet

import "eighthturn/internal/quilt"

// Cost is about what a pattern takes.
type Cost struct {
	Seconds   int // of a usual computer's time
	Megabytes int // of a PDF at the most
	Blocks    int // labels, each of which is explained
}

// What a piece, or a strip of a strip set, and what a block to explain add to the cost: measured on quilts of up to 150,000 pieces
// and 490 labels.
const (
	piecesASecond, bytesForPiece = 40_000, 80
	blocksASecond, bytesForBlock = 100, 20_000
)

// longPattern is from how many seconds on a pattern is said to take long.
const longPattern = 2

// CostOf is what the pattern of a top will take.
func CostOf(t *quilt.Top) Cost {
	labels := map[string]bool{}
	for i := range t.Cells {
		if !t.Empty(i) {
			labels[t.Cells[i].Label] = true
		}
	}
	pieces, blocks := len(t.Faces), len(labels)
	return Cost{pieces/piecesASecond + blocks/blocksASecond, (pieces*bytesForPiece + blocks*bytesForBlock) / 1_000_000, blocks}
}

// Long says whether a pattern takes so long that it is said beforehand.
func (c Cost) Long() bool { return c.Seconds >= longPattern }
