package booklet

import (
	"strings"

	"eighthturn/measure"
	"eighthturn/sewing"
)

// length is a length with its unit: exactly, where a ruler's finest marks show it, and else the next mark above.
func (b *book) length(nm measure.NM) string { return measure.Text(b.measurable(nm), b.units) }

// measurable is a length that can be measured. What lies between sixty-fourths of an inch or tenths of a millimetre goes up to
// the next of them; where it is longer than a ruler is wide, up to the next sixteenth or millimetre.
func (b *book) measurable(nm measure.NM) measure.NM {
	fine, long := measure.Inch/64, 12*measure.Inch
	if b.units == measure.Centimetres {
		fine, long = measure.Millimetre/10, 30*measure.Centimetre
	}
	switch {
	case nm%fine == 0:
		return nm
	case nm > long:
		return measure.RoundUp(nm, b.step())
	}
	return measure.RoundUp(nm, fine)
}

// step is the ruler's mark that lengths which are not cut are given to.
func (b *book) step() measure.NM {
	if b.units == measure.Centimetres {
		return measure.Millimetre
	}
	return measure.Inch / 16
}

// near is a length to the nearest mark, and says so where it lies beside one. Less than half a mark is given as it is.
func (b *book) near(nm measure.NM) string {
	if at := measure.Nearest(nm, b.step()); at != nm && at != 0 {
		return "about " + b.length(at)
	}
	return b.length(nm)
}

// size is across by down.
func (b *book) size(across, down measure.NM) string {
	if across == down {
		return b.length(across) + " square"
	}
	return measure.Number(b.measurable(across), b.units) + " by " + b.length(down)
}

// nearSize is across by down to the nearest marks.
func (b *book) nearSize(across, down measure.NM) string {
	a, d := measure.Nearest(across, b.step()), measure.Nearest(down, b.step())
	if a == 0 || d == 0 {
		return b.size(across, down)
	}
	if a != across || d != down {
		return "about " + b.size(a, d)
	}
	return b.size(a, d)
}

// atLeast is across by down, of which more does no harm, as the cutting plan's words round it.
func (b *book) atLeast(across, down measure.NM) string {
	width := strings.TrimSuffix(b.cutWords().AtLeast(across), b.unit())
	return width + " by " + b.cutWords().AtLeast(down)
}

// unit is a unit's short form as it stands behind a number.
func (b *book) unit() string {
	if b.units == measure.Centimetres {
		return " cm"
	}
	return " in"
}

// markSize is a size as a report has it, to its nearest marks.
func (b *book) markSize(s sewing.Size) string {
	text := b.size(s.Across.Nearest, s.Down.Nearest)
	if s.Across.Nearest != s.Across.NM || s.Down.Nearest != s.Down.NM {
		return "about " + text
	}
	return text
}

// have is a length of cloth that is there: as a shop cuts it, or to the nearest mark where no shop would have cut it so.
func (b *book) have(nm measure.NM) string {
	step := measure.Yard / 8
	if b.units == measure.Centimetres {
		step = measure.Metre / 10
	}
	if measure.Nearest(nm, step) == nm {
		return b.shop(nm)
	}
	return b.near(nm)
}

// shop is a length as it is bought: in yards or metres. A yard's eighth is an eighth of an inch 36 times over.
func (b *book) shop(nm measure.NM) string {
	if b.units == measure.Centimetres {
		return measure.Decimal(nm/100, measure.Centimetres, 1) + " m"
	}
	return measure.Number(nm/36, measure.Inches) + " yd"
}
