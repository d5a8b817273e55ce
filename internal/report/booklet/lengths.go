package booklet

import (
	"eighthturn/internal/measure"
)

// size is across by down.
func (b *patternBuilder) size(across, down measure.NM) string { return b.units.Size(across, down) }
