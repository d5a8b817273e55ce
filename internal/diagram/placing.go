package diagram

import (
	"math"
	"strings"
	"unicode"

	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// placing is the work on one sheet.
type placing struct {
	figure  *Figure
	letters *Lettering
	reaches []reach
	words   []words // of the marks, by index
	shrink  float64 // by which all words are smaller, since the paper is narrow
}

// words are words as they will be set, before the scale is known.
type words struct {
	text        string
	size, width float64 // in points, as asked for
}

// reach is a point of the subject and how far, in points, something reaches from it.
type reach struct {
	at                    measure.Point
	left, right, up, down float64
	room                  measure.NM // the length that the words must fit into, 0 for none
	width                 float64    // of the words
	letters               bool       // it is words, and smaller where all words are
}

// box is a rectangle in points.
type box struct{ min, max measure.Vec }

// nothing is a box that holds no point.
func nothing() box {
	endless := math.Inf(1)
	return box{measure.Vec{X: endless, Y: endless}, measure.Vec{X: -endless, Y: -endless}}
}

// Sizes of words in points: where none that can be drawn is asked for, and the greatest.
const (
	usualPoints = 8
	mostPoints  = 400
)

// measure notes how far each mark reaches.
func (p *placing) measure() {
	f := p.figure
	p.words = make([]words, len(f.Marks))
	p.reach(reach{at: f.Min})
	p.reach(reach{at: f.Max})
	for i := range f.Marks {
		switch m := &f.Marks[i]; {
		case m.Area != nil:
			for _, at := range m.Area.Outline {
				p.around(at, m.Area.Edge.Pen().Width)
			}
		case m.Line != nil:
			p.line(m.Line)
		case m.Words != nil:
			p.label(i, m.Words)
		}
	}
}

func (p *placing) reach(r reach) { p.reaches = append(p.reaches, r) }

// around notes something that reaches equally far in all directions.
func (p *placing) around(at measure.Point, by float64) {
	p.reach(reach{at: at, left: by, right: by, up: by, down: by})
}

func (p *placing) line(l *Line) {
	by := l.Stroke.Pen().Width / 2
	if l.Stroke.rimmed() {
		by += rim
	}
	for i, at := range l.Points {
		wide := by
		if i == 0 {
			wide = max(wide, l.Start.reach())
		}
		if i == len(l.Points)-1 {
			wide = max(wide, l.End.reach())
		}
		p.around(at, wide)
	}
}

// plain is text on one line, with what cannot be shown left out.
func plain(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case unicode.IsControl(r):
			return -1
		}
		return r
	}, strings.ToValidUTF8(text, "\uFFFD"))
}

func (p *placing) label(i int, w *Words) {
	size := w.Points
	if !(size > 0) {
		size = usualPoints
	}
	size = min(size, mostPoints)
	text := plain(w.Text)
	width := p.letters.Width(text, size, w.Bold)
	p.words[i] = words{text, size, width}
	halo := rim
	before, after := width/2, width/2
	switch w.Anchor {
	case Start:
		before, after = 0, width
	case End:
		before, after = width, 0
	}
	up, down := (highest-capital/2)*size, (lowest+capital/2)*size
	r := reach{at: w.At, room: w.Room, width: width, letters: true}
	r.left, r.up, r.right, r.down = turned(w.Quarters, [4]float64{before + halo, up + halo, after + halo, down + halo})
	p.reach(r)
}

// turned gives how far something reaches left, up, right and down once it is turned by
// quarters clockwise.
func turned(quarters int, reach [4]float64) (left, up, right, down float64) {
	q := quarter(quarters)
	return reach[(4-q)%4], reach[(5-q)%4], reach[(6-q)%4], reach[(7-q)%4]
}

// quarter is quarter turns as 0 to 3.
func quarter(quarters int) int { return (quarters%4 + 4) % 4 }

// factor is by how much words are made smaller at a scale.
func (p *placing) factor(room measure.NM, width, scale float64) float64 {
	factor := p.shrink
	if room > 0 && width > 0 {
		factor = min(factor, float64(room)*scale/width)
	}
	return factor
}

// leastPoints is the size of the least words that can be read.
const leastPoints = 8

// leastPlate is the room across for words on what is filled, as a multiple of their size: lines above and below must not touch
// their tails.
const leastPlate = 1.2

// crowded says whether optional words have too little room at a scale.
func (p *placing) crowded(w *Words, set words, scale float64) bool {
	if !w.Optional {
		return false
	}
	across, least := float64(w.Across)*scale, capital*leastPoints
	if w.Plate {
		least = leastPlate * leastPoints
	}
	return set.size*p.factor(w.Room, set.width, scale) < leastPoints-1e-9 || w.Across > 0 && across < least
}

// box is how far everything reaches at a scale, from the subject's point (0, 0).
func (p *placing) box(scale float64) box {
	b := nothing()
	for i := range p.reaches {
		r, factor := &p.reaches[i], 1.0
		if r.letters {
			factor = p.factor(r.room, r.width, scale)
		}
		x, y := float64(float64(r.at.X)*scale), float64(float64(r.at.Y)*scale)
		b.min = measure.Vec{X: min(b.min.X, x-float64(r.left*factor)), Y: min(b.min.Y, y-float64(r.up*factor))}
		b.max = measure.Vec{X: max(b.max.X, x+float64(r.right*factor)), Y: max(b.max.Y, y+float64(r.down*factor))}
	}
	return b
}

// fit is the greatest scale at which everything fits into a width and height. Where the
// words alone would take most of it, all words are made smaller.
func (p *placing) fit(width, height float64) float64 {
	for range 60 {
		b := p.box(0)
		if b.max.X-b.min.X <= width*2/3 && b.max.Y-b.min.Y <= height*2/3 {
			break
		}
		p.shrink *= 0.8
	}
	fits := func(scale float64) bool {
		b := p.box(scale)
		return b.max.X-b.min.X <= width && b.max.Y-b.min.Y <= height
	}
	low, high := 0.0, p.greatest(width, height)
	for range 48 {
		middle := (low + high) / 2
		if fits(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}

// greatest is a scale that no drawing of the width and height exceeds: at it a figure's
// points alone fill them. A figure that is a point is drawn at true size.
func (p *placing) greatest(width, height float64) float64 {
	b := p.extent()
	scale := min(width/(b.max.X-b.min.X), height/(b.max.Y-b.min.Y)) // of nothing across or down it is infinite
	if math.IsInf(scale, 1) {
		return TrueScale
	}
	return scale
}

// extent is the rectangle of all points, in nanometres.
func (p *placing) extent() box {
	b := nothing()
	for i := range p.reaches {
		x, y := float64(p.reaches[i].at.X), float64(p.reaches[i].at.Y)
		b.min = measure.Vec{X: min(b.min.X, x), Y: min(b.min.Y, y)}
		b.max = measure.Vec{X: max(b.max.X, x), Y: max(b.max.Y, y)}
	}
	return b
}

// draw puts the marks on the sheet.
func (p *placing) draw(s *Sheet) {
	for i := range p.figure.Marks {
		switch m := &p.figure.Marks[i]; {
		case m.Area != nil:
			s.area(m.Area, m.Lit)
		case m.Line != nil:
			s.line(m.Line, m.Lit)
		case m.Words != nil:
			p.drawWords(s, i)
		}
	}
}

func (p *placing) drawWords(s *Sheet, i int) {
	m, w := &p.figure.Marks[i], p.words[i]
	factor := p.factor(m.Words.Room, w.width, s.Scale)
	size, width := w.size*factor, w.width*factor
	if strings.TrimSpace(w.text) == "" || p.crowded(m.Words, w, s.Scale) {
		return
	}
	along := -width / 2
	switch m.Words.Anchor {
	case Start:
		along = 0
	case End:
		along = -width
	}
	at, q := s.At(m.Words.At), quarter(m.Words.Quarters)
	across := capital / 2 * size
	cos, sin := [4]float64{1, 0, -1, 0}[q], [4]float64{0, 1, 0, -1}[q]
	at = measure.Vec{X: at.X + along*cos - across*sin, Y: at.Y + along*sin + across*cos}
	colour, halo := m.Words.ink()
	label := &Label{w.text, at, m.Words.Anchor, size, width, m.Words.Bold, q, colour, halo, m.Words.rim()}
	if m.Words.Plate {
		s.plate(m, label)
	}
	s.Items = append(s.Items, Item{Lit: m.Lit, Label: label})
}

// plateRim is how far a plate reaches beyond its words, in points, where it has as much room.
const plateRim = 1.6

// plate draws a plate for words.
func (s *Sheet) plate(m *Mark, l *Label) {
	b, along, across := l.box(), plateRim, plateRim
	if m.Words.Across > 0 {
		across = min(across, max(0, float64(m.Words.Across)*s.Scale-capital*l.Size)/2)
	}
	if l.Quarters%2 == 1 {
		along, across = across, along
	}
	low, high := measure.Vec{X: b.min.X - along, Y: b.min.Y - across}, measure.Vec{X: b.max.X + along, Y: b.max.Y + across}
	s.Items = append(s.Items, Item{Lit: m.Lit, Shape: &Shape{
		Points: []measure.Vec{low, {X: high.X, Y: low.Y}, high, {X: low.X, Y: high.Y}}, Closed: true, Filled: true, Fill: m.Words.rim(),
	}})
}

// rim is the colour of the rim of words: that of their backing, else the page's.
func (w *Words) rim() palettes.Colour {
	if w.Backing != nil {
		return *w.Backing
	}
	return page()
}

// ink is the colour of words, and whether they get a rim: on a backing they are dark or
// light, whichever is read more easily.
func (w *Words) ink() (palettes.Colour, bool) {
	if w.Backing == nil {
		return w.Colour, w.Halo
	}
	dark := palettes.Colour{} // with white, one of the two has a ratio of 4.58 at least to any colour
	if palettes.ContrastRatio(*w.Backing, dark) >= palettes.ContrastRatio(*w.Backing, page()) {
		return dark, w.Halo
	}
	return page(), w.Halo
}
