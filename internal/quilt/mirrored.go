package quilt

import (
	"fmt"
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/layout"
)

// takesMirrored says whether a patch is one of those that are cut from a motif's mirrored place: every other one of those whose first
// corners meet round a point, and of pieces that are left and right the right ones.
func (p *Patch) takesMirrored() bool {
	d := p.Shape.Description()
	switch {
	case d.Hand != nil:
		return d.Hand(p.places()) == blocks.Right
	case d.Round > 0:
		const rounding = 1 // degree; pieces are turned by halves of an eighth
		f := p.upright()
		return int(f.turn+rounding)/d.Round%2 == 1
	}
	return false
}

// places is a patch's outline as its shape's description takes it.
func (p *Patch) places() []blocks.Place {
	outline := make([]blocks.Place, len(p.Outline))
	for i, q := range p.Outline {
		outline[i] = blocks.Place(q)
	}
	return outline
}

// mirroredAt is a motif's place mirrored at a line of its print, for pieces with an axis. Where it is the same place again it is none.
func (c Cut) mirroredAt(line *layout.MirrorLine, cloth *Cloth, axis int) Cut {
	m := c
	m.Mirrored, m.Pointing = true, -c.Pointing-2*axis
	if line.Crosswise {
		m.Place.Y, m.Pointing = within(2*line.At-c.Place.Y, cloth.Down), m.Pointing+180
	} else {
		m.Place.X = within(2*line.At-c.Place.X, cloth.Across)
	}
	if m.Pointing = (m.Pointing%around + around) % around; m.Pointing == c.Pointing && m.Place == (measure.Point{X: within(c.Place.X, cloth.Across), Y: within(c.Place.Y, cloth.Down)}) {
		return c
	}
	return m
}

// around is a whole turn, in degrees.
const around = 360

// within is a place of the repeat that shows what another place does.
func within(at, repeat measure.NM) measure.NM { return (at%repeat + repeat) % repeat }

// MirrorPair is the cut of a motif's wedges that are mirrored at a line of a fabric's print, beside one of them.
func (t *Top) MirrorPair(fabric int, cut Cut, line *layout.MirrorLine) [2]Cut {
	return [2]Cut{cut, cut.mirroredAt(line, t.Fabrics[fabric].Cloth, blocks.Gathering(blocks.WebCentre).Description().Axis)}
}

// warnUnmirrored warns of each motif of which pieces are cut, but none from its mirrored place.
func (l *builder) warnUnmirrored() {
	for i := range l.design.Motifs {
		m := &l.design.Motifs[i]
		of := func(mirrored bool) bool {
			return slices.ContainsFunc(l.Cuts, func(c Cut) bool { return c.Motif == m.Name && c.Mirrored == mirrored })
		}
		if m.Mirror == nil || !of(false) || of(true) {
			continue
		}
		own := Cut{Motif: m.Name, Place: measure.Point{X: m.Across, Y: m.Down}, Pointing: m.Pointing}
		if pair := l.MirrorPair(m.Fabric, own, m.Mirror); pair[0] == pair[1] {
			l.warn(m.Span, fmt.Sprintf("%q lies on the mirror line of the print: its pieces are their own mirror image", m.Name), "leave out mirrored, or move or turn the motif")
		} else {
			l.warn(m.Span, fmt.Sprintf("no piece of %q is cut mirrored: none of them meet round a point", m.Name), "leave out mirrored, or give the motif to wedges, kites, corners or halves")
		}
	}
}

// warn adds a warning of the laid-out top.
func (l *builder) warn(at layout.Span, message, hint string) {
	l.Warnings = append(l.Warnings, layout.Fault{Severity: layout.Warning, Span: at, Message: message, Hint: hint})
}
