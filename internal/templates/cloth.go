package templates

import (
	"math"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// How many parts of white in a hundred cloth in templates is mixed with. On whatever is so pale black has a contrast of more than 7 to 1
// (WCAG 2.2, 1.4.6), and in SVG files the red of words has 4.5 to 1 and the inks of lines have 3 to 1 (1.4.3, 1.4.11).
const (
	clothWhite  = 60
	layersWhite = 90
)

// Cloths are the pictures of a top's fabrics that templates show, each made once; nil where there is none to show.
type Cloths struct {
	top    *quilt.Top
	white  int
	prints map[int]*diagram.Print
}

// NewCloths are those of a top.
func NewCloths(top *quilt.Top) *Cloths { return &Cloths{top, clothWhite, map[int]*diagram.Print{}} }

// of is the picture of a fabric.
func (c *Cloths) of(fabric int) *diagram.Print {
	made, known := c.prints[fabric]
	if known {
		return made
	}
	cloth := c.top.Fabrics[fabric].Cloth
	if picture := cloth.Picture(); picture != nil {
		made = diagram.NewPrint(picture, cloth.Across, cloth.Down, c.white)
	}
	c.prints[fabric] = made
	return made
}

// area is the cloth that a template's pieces are cut from, as it lies on the template; nil where there is no picture of it.
func (c *Cloths) area(t *Template) *diagram.Area {
	if t.Print == nil {
		return nil
	}
	shown := c.of(t.Print.Fabric)
	if shown == nil {
		return nil
	}
	white := palettes.Colour{R: 255, G: 255, B: 255}
	return &diagram.Area{Outline: t.Cut, Fill: white, Print: shown, Repeat: t.Print.Repeat, Turn: t.Print.Turn}
}

// degreesOf is which way a line runs: degrees clockwise from level to the right.
func degreesOf(from, to measure.Point) float64 {
	return math.Atan2(float64(to.Y-from.Y), float64(to.X-from.X)) * 180 / math.Pi
}

// outline is what a window shows of a convex outline, nil for nothing: it is cut off side by side (after Sutherland and Hodgman, Reentrant
// polygon clipping, 1974); from memory.
func (w window) outline(corners []measure.Point) []measure.Point {
	list := floats(corners)
	for _, side := range []func(xy) float64{
		func(p xy) float64 { return p.x - float64(w.min.X) }, func(p xy) float64 { return float64(w.max.X) - p.x },
		func(p xy) float64 { return p.y - float64(w.min.Y) }, func(p xy) float64 { return float64(w.max.Y) - p.y },
	} {
		var kept []xy
		for i, p := range list {
			q := list[(i+1)%len(list)]
			u, v := side(p), side(q)
			if u >= 0 {
				kept = append(kept, p)
			}
			if u*v < 0 {
				kept = append(kept, xy{p.x + float64((q.x-p.x)*(u/(u-v))), p.y + float64((q.y-p.y)*(u/(u-v)))})
			}
		}
		list = kept
	}
	if len(list) < 3 {
		return nil
	}
	return rounded(list)
}
