package svgout

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// legend is the list of fabrics, or of letters, with its place in the picture. Lengths are
// user units but for addsAcross and addsDown, by which it makes the picture larger.
type legend struct {
	entries              []entry
	lines                int     // the most that an entry has
	columns              int     // of entries
	font                 float64 // size of a name's letters
	x, y                 float64 // of the first entry
	columnWidth, row     float64
	addsAcross, addsDown measure.NM
}

// entry is one of the legend's: a swatch or a letter, a name, and lines below it.
type entry struct {
	fill         Fill // of a fabric; unsaid where there is a letter
	letter, name string
	below        []string
}

// Measures of the legend: the size of its letters by that of the top, and all others as
// parts of the size of its letters.
const (
	lettersAcross = 60.0 // in the width of the top
	lettersDown   = 75.0 // in the height, where that makes them larger
	farAcross     = 24.0 // the same where it is read from far off: on a phone 1/24 of a picture's width is as large as a text
	farDown       = 36.0
	tall          = 2.5 // times as high as wide: the legend stands beside the top

	margin       = 1.3
	swatchSize   = 2.2
	swatchGap    = 0.7
	columnGap    = 2.0
	rowGap       = 0.9
	lineHeight   = 1.12
	smallLetters = 0.8
	longestText  = 24.0
)

func (p *picture) newLegend() *legend {
	width, height := userUnits(p.Outer.Width()), userUnits(p.Outer.Height())
	l := &legend{entries: p.entries(), font: max(width/lettersAcross, height/lettersDown)}
	if p.FarOff {
		l.font = max(width/farAcross, height/farDown)
	}
	l.measure()
	edge := l.font * margin
	l.x, l.y = edge, edge
	if height > tall*width {
		l.columns = l.columnsOf(height - 2*edge + l.font*rowGap)
		l.x += width
		l.addsAcross = inches(float64(l.columns)*l.columnWidth - l.font*columnGap + 2*edge)
		return l
	}
	l.columns = max(1, int((width-2*edge+l.font*columnGap)/l.columnWidth))
	l.columns = ceil(len(l.entries), ceil(len(l.entries), l.columns)) // rows of like length
	l.y += height
	l.addsDown = inches(float64(ceil(len(l.entries), l.columns))*l.row - l.font*rowGap + 2*edge)
	return l
}

// measure finds the room that one entry takes.
func (l *legend) measure() {
	widest := 0.0
	for _, e := range l.entries {
		l.lines = max(l.lines, 1+len(e.below))
		widest = max(widest, boldWidth(e.name))
		for _, text := range e.below {
			widest = max(widest, smallLetters*textWidth(text))
		}
	}
	l.columnWidth = l.font * (swatchSize + swatchGap + widest + columnGap)
	l.row = l.font * (max(swatchSize, float64(l.lines)*lineHeight) + rowGap)
}

// columnsOf is how many columns hold all entries in a height, which has room for several rows.
func (l *legend) columnsOf(height float64) int { return ceil(len(l.entries), int(height/l.row)) }

// ceil is n divided by d, rounded up.
func ceil(n, d int) int { return (n + d - 1) / d }

// inches is a length in user units as nanometres.
func inches(units float64) measure.NM {
	return measure.NM(math.Round(units * float64(measure.Inch) / PixelsPerInch))
}

// entries are what the legend lists: fabrics, in the value view from light to dark, or the
// letters of the line view.
func (p *picture) entries() []entry {
	if p.View == Line {
		return p.letterEntries()
	}
	shown, share := p.shown(), p.Share()
	if p.View == Value {
		slices.SortStableFunc(shown, func(a, b int) int {
			return cmp.Compare(p.Fabrics[b].Colour.Lightness(), p.Fabrics[a].Colour.Lightness())
		})
	}
	var list []entry
	for _, f := range shown {
		e := entry{fill: Fill{Kind: Fabric, Fabric: f}, name: fitted(p.Fabrics[f].Name, longestText, boldWidth)}
		if print := p.Fabrics[f].Print; print != "" {
			e.below = append(e.below, fitted(print, longestText/smallLetters, textWidth))
		}
		if p.FarOff {
			e.below = nil
			list = append(list, e)
			continue
		}
		e.below = append(e.below, fmt.Sprintf("%.1f%% of the top, value %.0f", 100*share[f], p.value(f)))
		list = append(list, e)
	}
	return list
}

func (p *picture) letterEntries() []entry {
	bands, kinds := make([]int, len(p.Roles)), make([]string, len(p.Roles))
	for i := range p.Patches {
		role, cell := p.Patches[i].Role, p.Patches[i].Cell
		bands[role] = max(bands[role], int(p.Patches[i].Count))
		if cell >= 0 {
			kinds[role] = p.Cells[cell].Kind
		}
	}
	var list []entry
	for i, r := range p.Roles {
		e := entry{letter: r.Letter, name: r.Name}
		if slices.ContainsFunc(p.Roles, func(o quilt.Role) bool { return o.Name == r.Name && o.Letter != r.Letter }) {
			e.below = []string{"of " + kinds[i]} // pieces of two kinds of block
		}
		if bands[i] > 1 {
			e.below = []string{fmt.Sprintf("%s1, %s2 …: strips from the wide end to the tip", r.Letter, r.Letter)}
		}
		list = append(list, e)
	}
	return list
}

// drawLegend lists the fabrics or letters on a ground of white, and makes room for it.
func (p *picture) drawLegend() {
	l := p.newLegend()
	p.scene.Width, p.scene.Height = p.scene.Width+l.addsAcross, p.scene.Height+l.addsDown
	layer := Layer{ID: "legend", Name: "legend", Style: Style{Fill: flat(palettes.Colour{R: 0x22, G: 0x22, B: 0x22}), Words: true}}
	ground := Box{Y: userUnits(p.Outer.Height()), Width: userUnits(p.Outer.Width()), Height: userUnits(l.addsDown)}
	if l.addsAcross > 0 {
		ground = Box{X: userUnits(p.Outer.Width()), Width: userUnits(l.addsAcross), Height: userUnits(p.Outer.Height())}
	}
	layer.Items = append(layer.Items, Item{Style: Style{Fill: flat(*white())}, Box: &ground})
	for i := range l.entries {
		layer.Items = append(layer.Items, l.entry(i)...)
	}
	p.layer(layer)
}

// Measures of an entry, as parts of the size of its letters: how far below its upper edge lines
// of letters stand, and how broad the edge of a swatch is.
const (
	letterSize   = 1.3
	letterLine   = 1.5
	onlyLine     = 1.45
	firstLine    = 0.82
	swatchEdge   = 0.05
	swatchShadow = 0.4 // opacity of the edge
)

// entry draws an entry at its place.
func (l *legend) entry(i int) []Item {
	e, font := &l.entries[i], l.font
	x, y := l.x+float64(i%l.columns)*l.columnWidth, l.y+float64(i/l.columns)*l.row
	size := font * swatchSize
	right := x + size + font*swatchGap
	sign := Item{Style: Style{Fill: e.fill, Line: black(), Opacity: swatchShadow, Width: font * swatchEdge}, Box: &Box{x, y, size, size}}
	if e.fill.Kind == Unsaid {
		sign = Item{Style: Style{Middle: true}, Text: &Text{x + size/2, y + font*letterLine, font * letterSize, e.letter, true}}
	}
	if len(e.below) == 0 {
		return []Item{sign, {Text: &Text{right, y + font*onlyLine, font, e.name, true}}}
	}
	items := []Item{sign, {Text: &Text{right, y + font*firstLine, font, e.name, true}}}
	for i, line := range e.below {
		items = append(items, Item{Text: &Text{right, y + font*(firstLine+lineHeight*float64(i+1)), font * smallLetters, line, false}})
	}
	return items
}
