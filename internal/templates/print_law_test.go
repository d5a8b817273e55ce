package templates

import (
	"math"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/samples"
)

// offStripes is how far, in nanometers, a line of a template lies from the edges of stripes at the most, as the patch shows its fabric.
// The template is laid on the patch by its two first corners.
func offStripes(top *quilt.Top, t *Template, patch int, line [2]measure.Point) float64 {
	p := &top.Patches[patch]
	place := top.ClothPlaces()[p.First]
	a, b := floats(p.Outline), floats(t.Finished)
	turn := math.Atan2(a[1].y-a[0].y, a[1].x-a[0].x) - math.Atan2(b[1].y-b[0].y, b[1].x-b[0].x)
	stripes := top.Fabrics[top.Faces[p.First].Fabric].Cloth.Stripes
	most := 0.0
	for _, q := range line {
		x, y := float64(q.X)-b[0].x, float64(q.Y)-b[0].y
		across, down := place.OnCloth(a[0].x+x*math.Cos(turn)-y*math.Sin(turn), a[0].y+x*math.Sin(turn)+y*math.Cos(turn))
		at := across
		if stripes.Crosswise {
			at = down
		}
		off, repeat, edge := math.Inf(1), float64(stripes.Repeat()), 0.0
		for _, s := range stripes.List {
			away := math.Mod(math.Mod(at-edge, repeat)+repeat, repeat)
			off = min(off, away, repeat-away)
			edge += float64(s.Width)
		}
		most = max(most, off)
	}
	return most
}

// TestLinesOfThePrint: the dotted lines of templates are where the edges of stripes lie on their pieces, each piece has some, and the
// cross stands where the motif is.
func TestLinesOfThePrint(t *testing.T) {
	lines, crosses := 0, 0
	for _, s := range samples.All() {
		top := lay.Top(t, s.Text)
		list := usual(top)
		for i := range list {
			template := &list[i]
			if template.Print == nil {
				continue
			}
			patch := -1
			for n := range top.Patches {
				if top.CutOf[n] == int16(template.Print.Place) && top.Patches[n].Shape == template.Shape {
					patch = n
					break
				}
			}
			if len(template.Print.Lines) == 0 {
				t.Errorf("%s: template %s has no line of the print", s.Name, template.Name())
			}
			for _, l := range template.Print.Lines {
				lines++
				if off := offStripes(top, template, patch, l); off > 100 {
					t.Errorf("%s, template %s: a line lies %.0f nanometers beside the edge of a stripe", s.Name, template.Name(), off)
				}
				l[0].X += measure.Inch / 16
				l[0].Y += measure.Inch / 64
				if offStripes(top, template, patch, l) < 1000 {
					t.Errorf("%s, template %s: a line that lies aside is not noticed", s.Name, template.Name())
				}
			}
			if template.Print.Motif != "" {
				crosses++
				x, y := centroidOf(floats(template.Finished))
				if off := math.Hypot(x-float64(template.Print.Center.X), y-float64(template.Print.Center.Y)); off > 100 {
					t.Errorf("%s, template %s: the cross stands %.0f nanometers aside", s.Name, template.Name(), off)
				}
			}
		}
	}
	if lines < 5 || crosses == 0 {
		t.Errorf("only %d lines and %d crosses", lines, crosses)
	}
}

// centroidOf is the center of gravity of a triangle or of a figure that is cut into triangles from its first corner.
func centroidOf(o []xy) (x, y float64) {
	area := 0.0
	for i := 1; i+1 < len(o); i++ {
		twice := (o[i].x-o[0].x)*(o[i+1].y-o[0].y) - (o[i].y-o[0].y)*(o[i+1].x-o[0].x)
		area += twice
		x += twice * (o[0].x + o[i].x + o[i+1].x) / 3
		y += twice * (o[0].y + o[i].y + o[i+1].y) / 3
	}
	return x / area, y / area
}
