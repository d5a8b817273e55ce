package invent

import (
	"math"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// chooseSize settles the strip, or the side and what the wedges of the lowest kind come to.
func (v *inventor) chooseSize() {
	size := v.unit(3) + ticks(v.IntN(int(v.unit(12))))
	switch {
	case v.one(8):
		size = v.unit(1) / 2 * ticks(2+v.IntN(3))
	case v.one(8):
		size = v.unit(20) + ticks(v.IntN(int(v.unit(25))))
	case v.one(2):
		size -= size % (v.unit(1) / 4)
	}
	v.strip = size
	if v.byStrip {
		v.wedges, v.exact = size, true
		v.strip = size + 2*v.seam
		return
	}
	v.wedges, v.exact = v.lowest(size)
}

// tick is a tick in nanometres.
func (v *inventor) tick() measure.NM {
	if v.inches {
		return measure.Inch / 64
	}
	return measure.Millimetre / 10
}

// lowest is the least finished height of the wedges for a side, in whole ticks, and whether
// all wedges have just that.
func (v *inventor) lowest(side ticks) (height ticks, exact bool) {
	nm := math.Inf(1)
	exact = true
	for _, k := range v.kinds {
		if k.Height == blocks.NoWedges {
			continue
		}
		h := k.Height.Finished(measure.NM(side) * v.tick())
		nm = min(nm, float64(h))
		exact = exact && h%v.tick() == 0 && float64(h) == nm
	}
	if math.IsInf(nm, 1) {
		return 0, false
	}
	return ticks(nm / float64(v.tick())), exact
}

func (v *inventor) sizeLine() string {
	if v.byStrip {
		return v.line("strip", v.length(v.strip), v.word("cut"))
	}
	if v.one(4) {
		return v.line("side", v.length(v.strip+2*v.seam), "cut")
	}
	return v.line("side", v.length(v.strip), v.word("finished"))
}

// side is the finished side of a block where it is whole ticks: where it is given, and where
// it is the strip's finished width.
func (v *inventor) side() ticks {
	if v.byStrip {
		return v.strip - 2*v.seam
	}
	return v.strip
}

// division is how a column of pieces is divided: by a line of the wedge rule, beyond the
// strip so that a narrow side is left, or by a length of half the side or more.
func (v *inventor) division() string {
	if v.one(2) {
		return "line " + v.length(v.side()+2*v.seam+v.unit(1)/8*ticks(1+v.IntN(24)))
	}
	about := v.side()/2 + 1 + ticks(v.IntN(int(v.side())))
	if v.one(3) {
		return "about " + v.length(about+2*v.seam) + " cut"
	}
	return "about " + v.length(about)
}
