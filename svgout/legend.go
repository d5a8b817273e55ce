package svgout

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"eighthturn/internal/measure"
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
	fill, letter, name string
	below              []string
}

// Measures of the legend: the size of its letters by that of the top, and all others as
// parts of the size of its letters.
const (
	lettersAcross = 60.0 // in the width of the top
	lettersDown   = 75.0 // in the height, where that makes them larger
	tall          = 2.5  // times as high as wide: the legend stands beside the top

	margin       = 1.3
	swatchSize   = 2.2
	swatchGap    = 0.7
	columnGap    = 2.0
	rowGap       = 0.9
	lineHeight   = 1.12
	smallLetters = 0.8
	longestText  = 24.0
)

func (p *picture) newLegend() legend {
	width, height := pixels(p.Outer.Width()), pixels(p.Outer.Height())
	l := legend{entries: p.entries(), font: max(width/lettersAcross, height/lettersDown)}
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

// columnsOf is how many columns hold all entries in a height.
func (l *legend) columnsOf(height float64) int {
	return max(1, ceil(len(l.entries), max(1, int(height/l.row))))
}

// ceil is n divided by d, rounded up; 0 where there is nothing to divide by.
func ceil(n, d int) int {
	if d == 0 {
		return 0
	}
	return (n + d - 1) / d
}

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
		e := entry{fill: p.cover(f), name: fitted(p.Fabrics[f].Name, longestText, boldWidth)}
		if print := p.Fabrics[f].Print; print != "" {
			e.below = append(e.below, fitted(print, longestText/smallLetters, textWidth))
		}
		e.below = append(e.below, fmt.Sprintf("%.1f %% of the top, value %.0f", 100*share[f], p.value(f)))
		list = append(list, e)
	}
	return list
}

func (p *picture) letterEntries() []entry {
	bands := make([]int, len(p.Roles))
	for i := range p.Patches {
		role := p.Patches[i].Role
		bands[role] = max(bands[role], p.Patches[i].Count)
	}
	var list []entry
	for i, r := range p.Roles {
		e := entry{letter: r.Letter, name: r.Name}
		if bands[i] > 1 {
			e.below = []string{fmt.Sprintf("%s1, %s2 …: strips from the wide end to the tip", r.Letter, r.Letter)}
		}
		list = append(list, e)
	}
	return list
}

// drawLegend lists the fabrics or letters on a ground of white.
func (d *document) drawLegend() {
	l := &d.legend
	d.layer("legend", "legend", `fill="#222222" `+lettering)
	d.canvas.Rect(d.ground())
	for i, e := range l.entries {
		d.entry(e, l.x+float64(i%l.columns)*l.columnWidth, l.y+float64(i/l.columns)*l.row)
	}
	d.close()
}

// ground is the place of the legend in the picture.
func (d *document) ground() (x, y, width, height float64, fill string) {
	fill = `fill="#ffffff"`
	across, down := pixels(d.Outer.Width()), pixels(d.Outer.Height())
	if d.legend.addsAcross > 0 {
		return across, 0, pixels(d.legend.addsAcross), down, fill
	}
	return 0, down, across, pixels(d.legend.addsDown), fill
}

// entry draws an entry with its upper left corner at a place.
func (d *document) entry(e entry, x, y float64) {
	font := d.legend.font
	size := font * swatchSize
	text := x + size + font*swatchGap
	if e.fill != "" {
		d.canvas.Rect(x, y, size, size, fmt.Sprintf(`fill="%s" stroke="#000000" stroke-opacity="0.4" stroke-width="%s"`, e.fill, rounded(font*0.05)))
	} else {
		d.canvas.Text(x+size/2, y+font*1.5, e.letter, fmt.Sprintf(`text-anchor="middle" font-weight="bold" font-size="%s"`, rounded(font*1.3)))
	}
	if len(e.below) == 0 {
		d.canvas.Text(text, y+font*1.45, e.name, fmt.Sprintf(`font-weight="bold" font-size="%s"`, rounded(font)))
		return
	}
	d.canvas.Text(text, y+font*0.82, e.name, fmt.Sprintf(`font-weight="bold" font-size="%s"`, rounded(font)))
	for i, line := range e.below {
		d.canvas.Text(text, y+font*(0.82+lineHeight*float64(i+1)), line, fmt.Sprintf(`font-size="%s"`, rounded(font*smallLetters)))
	}
}
