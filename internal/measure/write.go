package measure

import (
	"fmt"
	"math/big"
	"strconv"
	"strings"
)

// Number writes nm in the system's unit as the language reads it back, without naming it: inches as a mixed fraction
// where a sixty-fourth shows it exactly and with four decimals where not, centimetres with
// as many decimals as are needed and four at the most.
func Number(nm NM, s System) string {
	if s == Centimetres {
		return decimal(nm, Centimetre, 4)
	}
	const sixtyFourth = Inch / 64
	if nm%sixtyFourth != 0 {
		return decimal(nm, Inch, 4)
	}
	return mixedFraction(int64(nm / sixtyFourth))
}

// Text writes nm with its unit as the language reads it back: `3 1/2 in`, `9.5 cm`.
func Text(nm NM, s System) string {
	if s == Centimetres {
		return Number(nm, s) + " cm"
	}
	return Number(nm, s) + " in"
}

// Written is nm with its unit so that the language reads it back to the last nanometre: as Text does, or in millimetres.
func Written(nm NM, s System) string {
	text := Text(nm, s)
	if r, err := Read(text); err == nil && r.In(s).Cmp(Of(nm)) == 0 {
		return text
	}
	return fmt.Sprintf("%d.%06d mm", nm/Millimetre, nm%Millimetre)
}

// Text writes an exact length as NM's Text does, by its nearest nanometre.
func (l Length) Text(s System) string { return Text(l.NM(), s) }

// Decimal writes nm in the system's unit with exactly the given number of decimals, halves
// away from zero.
func Decimal(nm NM, s System, decimals int) string {
	return big.NewRat(int64(nm), int64(s.Unit())).FloatString(decimals)
}

// mixedFraction writes n sixty-fourths as a mixed number in lowest terms.
func mixedFraction(n int64) string {
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	whole, upper, lower := n/64, n%64, int64(64)
	for upper != 0 && upper%2 == 0 {
		upper, lower = upper/2, lower/2
	}
	switch {
	case upper == 0:
		return sign + strconv.FormatInt(whole, 10)
	case whole == 0:
		return fmt.Sprintf("%s%d/%d", sign, upper, lower)
	}
	return fmt.Sprintf("%s%d %d/%d", sign, whole, upper, lower)
}

// decimal writes nm in units with up to the given number of decimals, without idle zeros.
func decimal(nm, unit NM, decimals int) string {
	text := big.NewRat(int64(nm), int64(unit)).FloatString(decimals)
	text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	if text == "-0" || text == "" {
		return "0"
	}
	return text
}
