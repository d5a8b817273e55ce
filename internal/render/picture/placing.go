package picture

import (
	"image"
	"math"
	"slices"

	"eighthturn/palettes"
)

// canvas puts all on its place: pictures and title together stand in the middle of the canvas.
func (a *arranging) canvas(w *way) *Canvas {
	c := &Canvas{Poster: a.Poster, Width: int(a.wide), Height: int(a.high), Lacks: a.lacks, unit: a.unit}
	c.Ink = InkOn(a.Ground, a.inks())
	pitch := max(w.groupWide, w.captionWide)
	wide := float64(w.columns)*pitch + float64(w.columns-1)*groupGap*a.unit
	high := w.groupHigh + w.captionHigh
	rowsHigh := float64(a.rows(w))*high + float64(a.rows(w)-1)*groupGap*a.unit
	left, upper := (a.wide-wide)/2, (a.high-a.content(w))/2
	if w.beside {
		gap := 1.5 * headGap * a.unit
		left = (a.wide - wide - gap - w.headWide) / 2
		upper = (a.high - rowsHigh) / 2
		c.put(w.head, left+wide+gap, (a.high-w.headHigh)/2, 0)
	} else {
		c.put(w.head, a.wide/2, upper+a.content(w)-w.headHigh, 0.5)
	}
	for i := range a.Groups {
		row, column := i/w.columns, i%w.columns
		inRow := min(w.columns, len(a.Groups)-row*w.columns)
		indent := float64(w.columns-inRow) * (pitch + groupGap*a.unit) / 2
		if slices.ContainsFunc(a.Groups, func(g Group) bool { return len(g.Says) > 0 }) { // to be compared from above to below
			indent = 0
		}
		x, y := left+indent+float64(column)*(pitch+groupGap*a.unit), upper+float64(row)*(high+groupGap*a.unit)
		a.group(c, w, i, x+pitch/2, y)
	}
	return c
}

// group puts a group's pictures and words about a middle, from a height on.
func (a *arranging) group(c *Canvas, w *way, n int, middle, y float64) {
	g := &a.Groups[n]
	across, down, gapsAcross, gapsDown := a.extent(g, w.stacked)
	wide, high := across*w.scale+gapsAcross, down*w.scale+gapsDown
	at := xy{middle - wide/2, y + (w.groupHigh - high)}
	if w.stacked {
		at.x = middle
	}
	for i := range g.Parts {
		partWide, partHigh := g.Parts[i].size()
		partWide, partHigh = partWide*w.scale, partHigh*w.scale
		from := xy{at.x, at.y + (high-partHigh)/2}
		if w.stacked {
			from = xy{at.x - partWide/2, at.y}
			at.y += partHigh + partGap*a.unit
		} else {
			at.x += partWide + partGap*a.unit
		}
		corner := image.Pt(int(math.Round(from.x)), int(math.Round(from.y)))
		size := image.Pt(max(1, int(math.Round(partWide))), max(1, int(math.Round(partHigh))))
		c.Panels = append(c.Panels, Panel{g.Parts[i].Scene, image.Rectangle{Min: corner, Max: corner.Add(size)}})
	}
	if len(g.Says) > 0 {
		c.put(w.captions[n], middle-max(w.groupWide, w.captionWide)/2, y+w.groupHigh, 0)
	} else {
		c.put(w.captions[n], middle, y+w.groupHigh, 0.5)
	}
}

// put puts lines of words at a place: a part of each line's width stands to the left of it.
func (c *Canvas) put(list []Words, x, y, part float64) {
	for _, w := range list {
		w.Box.X, w.Box.Y = x-part*w.Box.Width, y+w.Box.Y
		w.X, w.Y = w.Box.X, y+w.Y
		c.Words = append(c.Words, w)
	}
}

// inks are the colors of the fabrics that the first picture shows.
func (a *arranging) inks() (list []palettes.Colour) {
	top := a.Groups[0].Parts[0].Scene.Top
	shown := make([]bool, len(top.Fabrics))
	for i := range top.Faces {
		shown[top.Faces[i].Fabric] = true
	}
	for f := range top.Fabrics {
		if shown[f] {
			list = append(list, top.Fabrics[f].Colour)
		}
	}
	return list
}

// Contrasts of words with what they stand on, as ratios (WCAG 2.1, success criterion 1.4.3 asks for 4.5): what all have, and what
// a fabric's color must have to be taken for them.
const (
	LeastContrast = 4.5
	goodContrast  = 9
)

// InkOn is a color for words on a ground: that of some colors which stands out most, where one does well, else a soft black or
// white, and where neither is enough, black or white. Its contrast is LeastContrast at the least on any ground.
func InkOn(ground palettes.Colour, of []palettes.Colour) palettes.Colour {
	grey := func(v uint8) palettes.Colour { return palettes.Colour{R: v, G: v, B: v} }
	best := func(list []palettes.Colour) (ink palettes.Colour, contrast float64) {
		for _, c := range list {
			if r := palettes.ContrastRatio(c, ground); r > contrast {
				ink, contrast = c, r
			}
		}
		return ink, contrast
	}
	if ink, contrast := best(of); contrast >= goodContrast {
		return ink
	}
	if ink, contrast := best([]palettes.Colour{grey(0x22), grey(0xfa)}); contrast >= LeastContrast {
		return ink
	}
	ink, _ := best([]palettes.Colour{grey(0), grey(255)})
	return ink
}
