package svgout

import (
	"strconv"

	"eighthturn/measure"
	"eighthturn/patchwork"
)

// appendNumber writes a length in user units with four decimals at the most: steps of a
// ten-thousandth of a unit are 635/24 nanometres.
func appendNumber(b []byte, nm measure.NM) []byte {
	return appendSteps(b, (int64(nm)*48+sign(nm)*635)/1270, 10_000)
}

func sign(nm measure.NM) int64 {
	if nm < 0 {
		return -1
	}
	return 1
}

// appendSteps writes n/scale, scale being a power of ten, without idle zeros.
func appendSteps(b []byte, n, scale int64) []byte {
	if n < 0 {
		b, n = append(b, '-'), -n
	}
	b = strconv.AppendInt(b, n/scale, 10)
	n %= scale
	if n == 0 {
		return b
	}
	b = append(b, '.')
	for n > 0 {
		scale /= 10
		b = append(b, byte('0'+n/scale))
		n %= scale
	}
	return b
}

func appendPoint(b []byte, p patchwork.Point) []byte {
	b = appendNumber(b, p.X)
	b = append(b, ' ')
	return appendNumber(b, p.Y)
}

// appendOutline writes a closed outline.
func appendOutline(b []byte, outline []patchwork.Point) []byte {
	command := byte('M')
	for _, p := range outline {
		b = append(b, command)
		b = appendPoint(b, p)
		command = 'L'
	}
	return append(b, 'Z')
}

func appendRect(b []byte, r patchwork.Rect) []byte {
	return appendOutline(b, []patchwork.Point{r.Min, {X: r.Max.X, Y: r.Min.Y}, r.Max, {X: r.Min.X, Y: r.Max.Y}})
}

func appendStretch(b []byte, from, to patchwork.Point) []byte {
	b = append(b, 'M')
	b = appendPoint(b, from)
	b = append(b, 'L')
	return appendPoint(b, to)
}

// appendCoarse writes a closed outline of four corners with two decimals, for shapes that
// other shapes cover.
func appendCoarse(b []byte, corners ...patchwork.Point) []byte {
	command := byte('M')
	for _, p := range corners {
		b = append(b, command)
		b = appendSteps(b, (int64(p.X)*48+63_500)/127_000, 100)
		b = append(b, ' ')
		b = appendSteps(b, (int64(p.Y)*48+63_500)/127_000, 100)
		command = 'L'
	}
	return append(b, 'Z')
}
