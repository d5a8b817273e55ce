package layout

import (
	"math"
	"slices"
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// MirrorLines are where within one repeat a print is its own mirror image.
type MirrorLines struct {
	Lengthwise    []measure.NM // lines along the selvages: so far across, the clearest first
	Crosswise     []measure.NM // lines from selvage to selvage: so far down
	AnyLengthwise bool         // any line along the selvages is one, as of stripes that run crosswise
	AnyCrosswise  bool         // any line from selvage to selvage is one, as of stripes along the selvages
}

// None says whether a print has no mirror line at all.
func (l *MirrorLines) None() bool {
	return len(l.Lengthwise) == 0 && len(l.Crosswise) == 0 && !l.AnyLengthwise && !l.AnyCrosswise
}

// MirrorLine is one line of a print at which it is its own mirror image.
type MirrorLine struct {
	Crosswise bool       // it runs from selvage to selvage, else along them
	At        measure.NM // how far down, or across
}

// Line is the line at which a place of the print is mirrored: one along the selvages where there is one, since what stands on the print
// does so in the mirrored place as well. It is nil where there is none.
func (l *MirrorLines) Line(across, down measure.NM) *MirrorLine {
	switch {
	case l.AnyLengthwise:
		return &MirrorLine{At: across}
	case l.AnyCrosswise:
		return &MirrorLine{Crosswise: true, At: down}
	case len(l.Lengthwise) > 0:
		return &MirrorLine{At: l.Lengthwise[0]}
	case len(l.Crosswise) > 0:
		return &MirrorLine{Crosswise: true, At: l.Crosswise[0]}
	}
	return nil
}

// MirrorLines looks for the mirror lines of a photo's print. Without a repeat, or without a photo that was read, there are none.
func (p *Photo) MirrorLines() MirrorLines {
	if p.Repeat == nil || p.Tile == nil {
		return MirrorLines{}
	}
	across, down := p.Shows()
	tile := palettes.FirstPart(p.Tile, float64(p.Repeat.Across)/float64(across), float64(p.Repeat.Down)/float64(down))
	return MirrorLines{Lengthwise: linesOf(palettes.MirrorLines(tile), p.Repeat.Across), Crosswise: linesOf(palettes.MirrorLines(palettes.OnItsSide(tile)), p.Repeat.Down)}
}

// linesOf are lines as lengths, each again half a repeat further on, the clearest first.
func linesOf(parts []float64, repeat measure.NM) (list []measure.NM) {
	for _, half := range []measure.NM{0, repeat / 2} {
		for _, at := range parts {
			list = append(list, half+measure.NM(math.Round(at*float64(repeat))))
		}
	}
	return list
}

// MirrorLines are the mirror lines of stripes: any line across them, and one along them in the middle of every stripe from which the
// others follow alike both ways.
func (s *Stripes) MirrorLines() MirrorLines {
	var list []measure.NM
	runs := s.broad()
	for i := range runs {
		if mirroredAt(runs, i) {
			list = append(list, (runs[i].from+runs[i].Width/2)%s.Repeat())
		}
	}
	slices.Sort(list)
	if s.Crosswise {
		return MirrorLines{Crosswise: list, AnyLengthwise: true}
	}
	return MirrorLines{Lengthwise: list, AnyCrosswise: true}
}

// broadStripe is stripes of one color side by side.
type broadStripe struct {
	Stripe
	from measure.NM
}

// broad is the stripes with those of one color put together, the last and the first as well.
func (s *Stripes) broad() (list []broadStripe) {
	at := measure.NM(0)
	for _, one := range s.List {
		if n := len(list); n > 0 && list[n-1].Colour == one.Colour {
			list[n-1].Width += one.Width
		} else {
			list = append(list, broadStripe{one, at})
		}
		at += one.Width
	}
	if n := len(list); n > 1 && list[0].Colour == list[n-1].Colour {
		list[n-1].Width += list[0].Width
		list = list[1:]
	}
	return list
}

// mirroredAt says whether runs, over and over, follow alike on both sides of one.
func mirroredAt(runs []broadStripe, middle int) bool {
	n := len(runs)
	for i := range n {
		a, b := &runs[(middle+i)%n], &runs[(middle-i+n)%n]
		if a.Colour != b.Colour || a.Width != b.Width {
			return false
		}
	}
	return true
}

// mirrorMotif finds the line at which every other piece of a motif is mirrored.
func (c *checker) mirrorMotif(n *motifNode, m *Motif) {
	f := &c.design.Fabrics[m.Fabric]
	var lines MirrorLines
	switch {
	case f.Stripes != nil:
		lines = f.Stripes.MirrorLines()
	case f.Photo == nil || f.Photo.Tile == nil:
		return
	case f.Photo.Repeat == nil:
		c.fault(n.Mirrored, "write it behind the photo, for example repeat across 24 down 12", "the layout does not say after how much fabric the print of %s comes again, so no mirror line can be found", quote(f.Name))
		return
	default:
		lines = c.mirrorLines(m.Fabric)
	}
	if m.Mirror = lines.Line(m.Across, m.Down); m.Mirror == nil {
		c.fault(n.Mirrored, "", "the print of %s has no mirror line, so no two places of it are each other's mirror image", quote(f.Name)).suggest(c.leaveOut("mirrored", c.withBlanks(n.Mirrored)))
	}
}

// mirrorLines are the mirror lines of a fabric's photo, looked for once.
func (c *checker) mirrorLines(fabric int) MirrorLines {
	lines, known := c.mirrors[fabric]
	if !known {
		lines = c.design.Fabrics[fabric].Photo.MirrorLines()
		if c.mirrors == nil {
			c.mirrors = map[int]MirrorLines{}
		}
		c.mirrors[fabric] = lines
	}
	return lines
}

// withBlanks is the place of a word with the blanks before it.
func (c *checker) withBlanks(word Span) Span {
	return Span{len(strings.TrimRightFunc(c.src[:word.Start], measure.IsSpace)), word.End}
}
