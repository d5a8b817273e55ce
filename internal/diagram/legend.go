package diagram

import (
	"math"

	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// Measures of a legend, in points.
const (
	legendSize   = 8.0
	legendRow    = 13.0
	legendSample = 26.0
	legendGap    = 5.0  // between a sample and its words
	legendApart  = 14.0 // between entries
	legendAbove  = 8.0
)

// legend lists the styles of lines that a figure uses, and the wrong side of cloth.
type legend struct {
	entries []legendEntry
	letters *Lettering
	size    float64
	width   float64 // of the widest row
}

type legendEntry struct {
	stroke     Stroke
	start, end Ending
	hatch      bool
	bent       bool // the line runs round something
	text       string
	at         measure.Vec // its left end and middle, from the legend's upper left corner
}

func newLegend(letters *Lettering, f *Figure) legend {
	key := legend{letters: letters, size: legendSize}
	used, hatched := usedStrokes(f)
	for _, stroke := range strokes() {
		if line, ok := used[stroke]; ok {
			key.entries = append(key.entries, legendEntry{stroke: stroke, start: line.Start, end: line.End, text: stroke.words()})
		}
	}
	if line, ok := bentArrow(f); ok {
		key.entries = append(key.entries, legendEntry{stroke: line.Stroke, end: Arrow, bent: true, text: "spin all seams this way"})
	}
	if hatched {
		key.entries = append(key.entries, legendEntry{hatch: true, text: "wrong side of the fabric"})
	}
	return key
}

// bent says whether a line is an arrow by which allowances are pressed round a point.
func (l *Line) bent() bool { return l.Stroke == Pressing && l.End == Arrow && len(l.Points) > 2 }

// bentArrow is the first such arrow of a figure.
func bentArrow(f *Figure) (*Line, bool) {
	for _, m := range f.keyed() {
		if l := m.Line; l != nil && l.bent() {
			return l, true
		}
	}
	return nil, false
}

// usedStrokes are the styles of a figure, each with a line that has it, and whether it shows
// the wrong side of cloth. Arrows round a point are left out.
func usedStrokes(f *Figure) (used map[Stroke]Line, hatched bool) {
	used = map[Stroke]Line{}
	for _, m := range f.keyed() {
		switch {
		case m.Area != nil:
			hatched = hatched || m.Area.Hatch
			if _, ok := used[m.Area.Edge]; !ok {
				used[m.Area.Edge] = Line{}
			}
		case m.Line != nil && !m.Line.bent():
			if known, ok := used[m.Line.Stroke]; !ok || known.Start == Plain && known.End == Plain {
				used[m.Line.Stroke] = *m.Line
			}
		}
	}
	return used, hatched
}

func (k *legend) entryWidth(e legendEntry) float64 {
	return k.factor() * (legendSample + legendGap + k.letters.Width(e.text, legendSize, false))
}

// factor is by how much the legend is smaller than usual.
func (k *legend) factor() float64 { return k.size / legendSize }

// legendFoot is the least room below the lines of the last row, points: ends of lines are not made smaller.
const legendFoot = 3

// flow lays the entries in rows of a width, or of the widest entry up to the widest that the
// paper allows, and gives the legend's height; 0 where there is nothing to list.
func (k *legend) flow(width, most float64) float64 {
	if len(k.entries) == 0 {
		return 0
	}
	k.size, k.width = legendSize, 0
	widest := 0.0
	for _, e := range k.entries {
		widest = max(widest, k.entryWidth(e))
	}
	if widest > most {
		k.size = legendSize * most / widest
		widest = most
	}
	width = max(width, widest)
	x, y, f := 0.0, k.factor()*(legendAbove+legendRow/2), k.factor()
	for i := range k.entries {
		wide := k.entryWidth(k.entries[i])
		if x > 0 && x+wide > width {
			x, y = 0, y+f*legendRow
		}
		k.entries[i].at = measure.Vec{X: x, Y: y}
		k.width = max(k.width, x+wide)
		x += wide + f*legendApart
	}
	return y + max(f*legendRow/2, legendFoot)
}

// draw puts the legend below what is on the sheet.
func (k *legend) draw(s *Sheet) {
	f := k.factor()
	for _, e := range k.entries {
		at := measure.Vec{X: edge + e.at.X, Y: s.Height - edge + e.at.Y}
		to := measure.Vec{X: at.X + f*legendSample, Y: at.Y}
		k.sample(s, e, [2]measure.Vec{at, to})
		s.Items = append(s.Items, Item{Label: &Label{
			Text: e.text, At: measure.Vec{X: to.X + f*legendGap, Y: at.Y + capital/2*k.size}, Anchor: Start, Size: k.size,
			Width: k.letters.Width(e.text, k.size, false), Colour: Black(),
		}})
	}
}

// sample draws a short line in the entry's style, or a piece of cloth.
func (k *legend) sample(s *Sheet, e legendEntry, ends [2]measure.Vec) {
	if e.hatch {
		half := k.factor() * legendRow * 0.36
		low, high := measure.Vec{X: ends[0].X, Y: ends[0].Y - half}, measure.Vec{X: ends[1].X, Y: ends[0].Y + half}
		outline := []measure.Vec{low, {X: high.X, Y: low.Y}, high, {X: low.X, Y: high.Y}}
		fill := palettes.Colour{R: 0xc6, G: 0xc6, B: 0xc6}
		s.shape(nil, Shape{Points: outline, Closed: true, Filled: true, Fill: fill})
		s.hatch(outline, Pen{Width: 0.5, Colour: hatchColour(fill)}, nil)
		return
	}
	pen := e.stroke.Pen()
	line := []measure.Vec{{X: ends[0].X + barLong/2, Y: ends[0].Y}, {X: ends[1].X - barLong/2, Y: ends[1].Y}}
	if e.bent {
		line = k.arc(ends)
	}
	heads := [2]ending{headOf(line, e.start, pen), headOf(reversed(line), e.end, pen)}
	stem := append([]measure.Vec{heads[0].stem()}, line[1:len(line)-1]...)
	s.shape(nil, Shape{Points: append(stem, heads[1].stem()), Pen: pen})
	s.ending(nil, heads[0])
	s.ending(nil, heads[1])
}

// arc is a bow over the middle between two ends, as high as a row allows; its last stretch is
// long enough for a head.
func (k *legend) arc(ends [2]measure.Vec) []measure.Vec {
	middle := measure.Vec{X: (ends[0].X + ends[1].X) / 2, Y: ends[0].Y + k.factor()*legendRow*0.3}
	radius := k.factor() * legendRow * 0.62
	var points []measure.Vec
	for _, degrees := range []float64{190, 210, 230, 250, 270, 290, 360} {
		a := degrees * math.Pi / 180
		points = append(points, measure.Vec{X: middle.X + float64(radius*math.Cos(a)), Y: middle.Y + float64(radius*math.Sin(a))})
	}
	return points
}
