package svgout

import (
	"fmt"
	"math"
	"unicode/utf8"
)

// longest is how many characters of a name the legend shows.
const longest = 22

// entry is one line of the legend.
type entry struct{ fill, letter, first, second string }

// entries are what the legend lists: fabrics, or the letters of the line view.
func (p *picture) entries() []entry {
	if p.View == Line {
		return p.letterEntries()
	}
	share := p.Share()
	var list []entry
	for _, f := range p.shown() {
		c := p.Fabrics[f]
		second := fmt.Sprintf("%.1f %% of the top, value %.0f", 100*share[f], c.Colour.Lightness())
		list = append(list, entry{fill: p.fill(f), first: shortened(c.Name), second: second})
		if c.Print != "" {
			list[len(list)-1].first = shortened(c.Name + " · " + c.Print)
		}
	}
	return list
}

func (p *picture) letterEntries() []entry {
	var list []entry
	for _, r := range p.Roles {
		list = append(list, entry{letter: r.Letter, first: r.Name})
	}
	return list
}

func shortened(text string) string {
	if utf8.RuneCountInString(text) <= longest {
		return text
	}
	return string([]rune(text)[:longest-1]) + "…"
}

// legendColumns is how many entries stand side by side.
func (p *picture) legendColumns() int {
	return max(1, int(pixels(p.Outer.Width())/(p.font*16)))
}

// legendHeight is the legend's height in user units.
func (p *picture) legendHeight() float64 {
	rows := math.Ceil(float64(len(p.entries())) / float64(p.legendColumns()))
	return p.font * (rows*2.8 + 1.2)
}

// legend lists the fabrics below the top.
func (d *document) legend() {
	d.layer("legend", "legend", fmt.Sprintf(`font-family="Helvetica, Arial, sans-serif" font-size="%.2f" fill="#222222"`, d.font))
	columns := d.legendColumns()
	width := pixels(d.Outer.Width()) / float64(columns)
	top := pixels(d.Outer.Height()) + d.font*1.2
	for i, e := range d.entries() {
		x, y := float64(i%columns)*width+d.font*0.4, top+float64(i/columns)*d.font*2.8
		d.entry(e, x, y)
	}
	d.close()
}

func (d *document) entry(e entry, x, y float64) {
	box := d.font * 2
	if e.fill != "" {
		d.canvas.Rect(x, y, box, box, fmt.Sprintf(`fill="%s" stroke="#000000" stroke-opacity="0.4" stroke-width="%.2f"`, e.fill, d.stroke))
	} else {
		d.text(x+box/2, y+d.font*1.3, e.letter, fmt.Sprintf(`text-anchor="middle" font-weight="bold" font-size="%.2f"`, d.font*1.3))
	}
	if e.second == "" {
		d.text(x+box+d.font*0.6, y+d.font*1.25, e.first, "")
		return
	}
	d.text(x+box+d.font*0.6, y+d.font*0.85, e.first, `font-weight="bold"`)
	d.text(x+box+d.font*0.6, y+d.font*1.95, e.second, fmt.Sprintf(`font-size="%.2f"`, d.font*0.8))
}
