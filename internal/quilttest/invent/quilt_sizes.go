package invent

import (
	"fmt"
	"math/rand/v2"
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/layout"
)

// sized is a layout with sizes, one in twelve. They are drawn from numbers of their own, as colorways are; that of the layout as it
// is written stands among them.
func (v *inventor) sized(seed uint64, text string) string {
	v.Rand = rand.New(rand.NewPCG(seed, 0x512e))
	if !v.one(12) || len(text) > longest {
		return text
	}
	own := text
	if v.one(2) {
		own = withLine(text, "size Lap_1")
	}
	for _, name := range []string{"größer", "q-3"}[:1+v.IntN(2)] {
		if more := addSize(v.Rand, own, name); more != "" {
			own = more
		}
	}
	return own
}

// longest is how many bytes a layout may have that gets sizes.
const longest = 3000

// WithSize is a layout with one size of a name and without those that it had, its numbers such as the grid can have by what the
// errors say to type; "" where it cannot be had.
func WithSize(seed uint64, text, name string) string {
	tree, _ := layout.Parse(layout.NewSource(text))
	for i := len(tree.Sizes) - 1; i >= 0; i-- {
		n := tree.Sizes[i]
		text = text[:n.Start] + text[n.End:]
	}
	return addSize(rand.New(rand.NewPCG(seed, 23)), text, name)
}

// addSize adds a size to a layout, "" where it cannot be had.
func addSize(rng *rand.Rand, text, name string) string {
	d, _, _ := layout.Read(text)
	if d == nil {
		return ""
	}
	line := "size " + name
	if rng.IntN(5) > 0 {
		line += fmt.Sprint(" across ", max(1, d.Columns-3+rng.IntN(9)))
	}
	if rng.IntN(5) > 0 {
		line += fmt.Sprint(" down ", max(1, d.Rows-3+rng.IntN(9)))
	}
	switch other := rng.IntN(4) == 0; {
	case other && d.Units == measure.Inches:
		line += fmt.Sprint(" ", sizeWord(d), " ", 8+rng.IntN(6), ".5 units cm")
	case other:
		line += fmt.Sprint(" ", sizeWord(d), " ", 3+rng.IntN(4), " 1/2 units inches")
	case d.StripGiven && rng.IntN(3) == 0:
		line += fmt.Sprint(" strip ", 3+rng.IntN(4), " ", 1+rng.IntN(3), "/4 in")
	case !d.StripGiven && rng.IntN(3) == 0:
		line += fmt.Sprint(" side ", 4+rng.IntN(9), " in")
	}
	if len(d.Borders) > 0 && rng.IntN(2) == 0 {
		line += " border"
		for range rng.IntN(len(d.Borders) + 1) {
			line += fmt.Sprint(" ", 1+rng.IntN(5), " in")
		}
		if strings.HasSuffix(line, "border") {
			line += " none"
		}
	}
	text = withLine(text, line)
	for range 4 {
		d, _, faults := layout.Read(text)
		if d != nil {
			return text
		}
		for _, f := range faults {
			if f.Severity == layout.Error && len(f.Edits) > 0 {
				text = layout.Apply(text, f.Edits)
				break
			}
		}
	}
	return ""
}

// sizeWord is what a layout gives of its blocks.
func sizeWord(d *layout.Design) string {
	if d.StripGiven {
		return "strip"
	}
	return "side"
}

// withLine is a layout with one more line at its end.
func withLine(text, line string) string {
	end := lineEnd(text)
	return strings.TrimRight(text, "\r\n") + end + line + end
}

// lineEnd is how a layout ends its lines.
func lineEnd(text string) string {
	if i := strings.IndexAny(text, "\r\n"); i >= 0 && text[i] == '\r' {
		if strings.HasPrefix(text[i:], "\r\n") {
			return "\r\n"
		}
		return "\r"
	}
	return "\n"
}
