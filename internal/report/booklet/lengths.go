package booklet

import (
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
)

// length is a length with its unit: exactly, where a ruler's finest marks show it, and else the nearest of them and the word
// about.
func (b *book) length(nm measure.NM) string {
	return b.beside(nm) + measure.Text(b.measurable(nm), b.units)
}

// measurable is the nearest length that can be measured, to a sixty-fourth of an inch or a tenth of a millimetre; a length that
// is shorter than half of that is one of them.
func (b *book) measurable(nm measure.NM) measure.NM {
	fine := measure.Inch / 64
	if b.units == measure.Centimetres {
		fine = measure.Millimetre / 10
	}
	if at := measure.Nearest(nm, fine); at != 0 || nm == 0 {
		return at
	}
	return fine
}

// hair is what arithmetic with rounded numbers may leave between a length and the mark that it is meant to lie on.
const hair = 20

// beside is the word about and a blank for lengths that lie beside a ruler's finest marks, any of several.
func (b *book) beside(lengths ...measure.NM) string {
	for _, nm := range lengths {
		if at := b.measurable(nm); at-nm > hair || nm-at > hair {
			return "about "
		}
	}
	return ""
}

// noLess is a length of which more does no harm: as it is where a ruler shows it, and else at least so much.
func (b *book) noLess(nm measure.NM) string {
	if b.beside(nm) == "" {
		return b.length(nm)
	}
	return "at least " + b.cutWords().AtLeast(nm)
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
	return b.beside(across, down) + measure.Number(b.measurable(across), b.units) + " by " + measure.Text(b.measurable(down), b.units)
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
