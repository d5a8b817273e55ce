package invent

import (
	"fmt"
	"strconv"
	"strings"
)

// ticks counts what a layout's lengths are made of: sixty-fourths of an inch, or tenths of
// a millimetre. Every spelling of them is exact.
type ticks int

// unit is so many inches or centimetres.
func (v *inventor) unit(n int) ticks {
	if v.inches {
		return ticks(64 * n)
	}
	return ticks(100 * n)
}

// units settles the units and the seam allowance.
func (v *inventor) units() {
	v.inches = v.one(2)
	v.seam = 16
	if !v.inches {
		v.seam = 75
	}
	v.chooseSeam()
}

func (v *inventor) unitsLine() string {
	if !v.inches {
		return v.line("units", pick(v, []string{"cm", "CM"}))
	}
	return v.optional(2, "units", "inches")
}

// seamLine is the seam allowance where it is not the usual one.
func (v *inventor) seamLine() string {
	if v.inches && v.seam == 16 || !v.inches && v.seam == 75 {
		return ""
	}
	return v.line("seam", v.length(v.seam))
}

// chooseSeam takes another seam allowance once in a while: from a tick to an inch.
func (v *inventor) chooseSeam() {
	switch {
	case v.one(12):
		v.seam = 1 + ticks(v.IntN(3))
	case v.one(12):
		v.seam = v.unit(1) / 8 * ticks(5+v.IntN(4))
	case v.one(4):
		v.seam = v.unit(1) / 16 * ticks(2+v.IntN(4))
	}
}

// length spells a length in one of the ways that the language has.
func (v *inventor) length(t ticks) string {
	if v.one(8) {
		return v.otherUnit(t)
	}
	if v.inches {
		return v.number(t) + pick(v, []string{"", "", "", "", `"`, "”", "″", "''", " in", " inch", " inches", "in", " IN"})
	}
	return v.number(t) + pick(v, []string{"", "", "", "", " cm", "cm", " Cm"})
}

// otherUnit spells a length in a unit that is not the layout's own.
func (v *inventor) otherUnit(t ticks) string {
	if v.inches && t%(64*9) == 0 && t > 0 {
		return v.mixed(t/(64*9), 4) + " " + pick(v, []string{"yd", "yard", "yards", "yd."})
	}
	nanometres := int64(t) * 100_000
	if v.inches {
		nanometres = int64(t) * 396_875
	}
	if t%100 == 0 && !v.inches && v.one(2) {
		return decimal(nanometres, 1_000_000_000, ".") + " m"
	}
	return decimal(nanometres, 1_000_000, pick(v, []string{".", ","})) + pick(v, []string{" mm", "mm"})
}

// number spells ticks in the layout's own unit.
func (v *inventor) number(t ticks) string {
	per := v.unit(1)
	if v.one(3) || !v.inches && t%25 != 0 {
		return decimal(int64(t)*1_000_000/int64(per), 1_000_000, pick(v, []string{".", ","}))
	}
	return v.mixed(t, int(per))
}

// decimal writes n/per, which must have no more than six decimals, per a power of ten.
func decimal(n, per int64, point string) string {
	part := strings.TrimRight(strconv.FormatInt(per+n%per, 10)[1:], "0")
	if part == "" {
		return strconv.FormatInt(n/per, 10)
	}
	return strconv.FormatInt(n/per, 10) + point + part
}

// vulgar is the fractions that one character shows.
func vulgar() map[[2]int]string {
	return map[[2]int]string{
		{1, 2}: "½", {1, 4}: "¼", {3, 4}: "¾", {1, 8}: "⅛", {3, 8}: "⅜", {5, 8}: "⅝", {7, 8}: "⅞",
	}
}

// mixed spells n/per as a whole number and a fraction in lowest terms, in one of the ways
// that people write it.
func (v *inventor) mixed(n ticks, per int) string {
	whole, upper, lower := int(n)/per, int(n)%per, per
	for d := 2; d <= lower; {
		if upper%d == 0 && lower%d == 0 {
			upper, lower = upper/d, lower/d
		} else {
			d++
		}
	}
	if upper == 0 {
		return strconv.Itoa(whole)
	}
	fraction := fmt.Sprintf("%d%s%d", upper, pick(v, []string{"/", "/", "⁄"}), lower)
	between := []string{" ", "-", "  ", "\u00a0"}
	if one := vulgar()[[2]int{upper, lower}]; one != "" && v.one(2) {
		fraction, between = one, []string{"", " ", "-"}
	}
	if whole == 0 {
		return fraction
	}
	return strconv.Itoa(whole) + pick(v, between) + fraction
}
