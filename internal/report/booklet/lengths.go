package booklet

import (
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
)

// length is a length with its unit, as people read it.
func (b *patternBuilder) length(nm measure.NM) string { return b.units.Nearest(nm) }

// size is across by down.
func (b *patternBuilder) size(across, down measure.NM) string { return b.units.Size(across, down) }

// unitSize is a size as the sewing plan has it.
func (b *patternBuilder) unitSize(s sewing.Size) string { return b.size(s.Across, s.Down) }

// atLeast is a length of which more does no harm.
func (b *patternBuilder) atLeast(nm measure.NM) string { return b.units.AtLeast(nm) }

// noLess is a length that is cut exactly where a ruler shows it, and of which else more does no harm.
func (b *patternBuilder) noLess(nm measure.NM) string {
	if _, on := measure.On(nm, b.units.Mark()); on {
		return b.length(nm)
	}
	return "at least " + b.atLeast(nm)
}

// sizeAtLeast is across by down, of which more does no harm.
func (b *patternBuilder) sizeAtLeast(across, down measure.NM) string {
	return b.units.ByAtLeast(across, down)
}

// shop is a length of cloth in yards or metres.
func (b *patternBuilder) shop(nm measure.NM) string { return b.units.Shop(nm) }
