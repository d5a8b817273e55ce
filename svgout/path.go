package svgout

import (
	"math"
	"strconv"

	"eighthturn/internal/measure"
)

// appendNumber writes a length in user units with four decimals at the most: steps of a
// ten-thousandth of a unit are 635/24 nanometres. Halves go away from zero.
func appendNumber(b []byte, nm measure.NM) []byte {
	if nm < 0 {
		if b, nm = append(b, '-'), -nm; nm*48 < 635 {
			return append(b[:len(b)-1], '0')
		}
	}
	n := uint64(nm*48+635) / 1270
	b = appendWhole(b, n/10_000)
	return appendDecimals(b, uint(n%10_000))
}

// appendWhole writes a whole number.
func appendWhole(b []byte, n uint64) []byte {
	hi, lo := 2*(n/100%100), 2*(n%100)
	switch {
	case n >= 10_000:
		b = appendWhole(b, n/10_000)
		return append(b, pairs[hi], pairs[hi+1], pairs[lo], pairs[lo+1])
	case n >= 1000:
		return append(b, pairs[hi], pairs[hi+1], pairs[lo], pairs[lo+1])
	case n >= 100:
		return append(b, pairs[hi+1], pairs[lo], pairs[lo+1])
	case n >= 10:
		return append(b, pairs[lo], pairs[lo+1])
	}
	return append(b, pairs[lo+1])
}

// pairs are the numbers of two digits, one behind the other.
const pairs = "0001020304050607080910111213141516171819202122232425262728293031323334353637383940414243444546474849" +
	"5051525354555657585960616263646566676869707172737475767778798081828384858687888990919293949596979899"

// appendDecimals writes a point and up to four decimals, without idle zeros.
func appendDecimals(b []byte, tenThousandths uint) []byte {
	if tenThousandths == 0 {
		return b
	}
	hi, lo := 2*(tenThousandths/100), 2*(tenThousandths%100)
	b = append(b, '.', pairs[hi], pairs[hi+1], pairs[lo], pairs[lo+1])
	switch {
	case pairs[lo+1] != '0':
		return b
	case lo != 0:
		return b[:len(b)-1]
	case pairs[hi+1] != '0':
		return b[:len(b)-2]
	}
	return b[:len(b)-3]
}

// appendHundredths writes n hundredths, which are 0 or more.
func appendHundredths(b []byte, n int32) []byte {
	b = appendWhole(b, uint64(n/100))
	return appendDecimals(b, 100*uint(n%100))
}

// rounded is a length of 0 or more in user units with two decimals at the most, three
// below a unit, so that thin lines keep their width.
func rounded(units float64) string {
	digits := 2
	if units < 1 {
		digits = 3
	}
	return strconv.FormatFloat(units, 'f', digits, 64)
}

func appendPoint(b []byte, p measure.Point) []byte {
	b = appendNumber(b, p.X)
	b = append(b, ' ')
	return appendNumber(b, p.Y)
}

// appendOutline writes a closed outline.
func appendOutline(b []byte, outline []measure.Point) []byte {
	command := byte('M')
	for _, p := range outline {
		b = append(b, command)
		b = appendPoint(b, p)
		command = 'L'
	}
	return append(b, 'Z')
}

// appendLine writes an outline, closed or open.
func appendLine(b []byte, outline []measure.Point, open bool) []byte {
	b = appendOutline(b, outline)
	if open {
		return b[:len(b)-1]
	}
	return b
}

// hundredths is a length of 0 or more in hundredths of a user unit.
func hundredths(nm measure.NM) int32 { return int32((int64(nm)*48 + 63_500) / 127_000) }

// coarsely is the nearest point of a grid of a hundredth of a user unit, for what need not be
// exact: it is written with two decimals at the most.
func coarsely(p measure.Point) measure.Point {
	return measure.Point{X: ofHundredths(hundredths(p.X)), Y: ofHundredths(hundredths(p.Y))}
}

func ofHundredths(n int32) measure.NM { return measure.NM((int64(n)*127_000 + 24) / 48) }

// coarselyAt is the same for a place in nanometres.
func coarselyAt(x, y float64) measure.Point {
	return coarsely(measure.Point{X: measure.NM(math.Round(x)), Y: measure.NM(math.Round(y))})
}
