package contrast

import (
	"math"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// ownLights are the CIE L* of the part of its print that each face shows, by index, and of a plain fabric its own; nil where all fabrics
// are plain.
func ownLights(t *quilt.Top) []float64 {
	places := t.ClothPlaces()
	if places == nil {
		return nil
	}
	prints := make([]*printLight, len(t.Fabrics))
	for f := range t.Fabrics {
		if c := t.Fabrics[f].Cloth; c != nil {
			prints[f] = newPrintLight(c)
		}
	}
	lights := make([]float64, len(t.Faces))
	for i := range t.Faces {
		face := &t.Faces[i]
		if p := prints[face.Fabric]; p != nil {
			lights[i] = palettes.LightnessOf(p.mean(face.Outline, &places[i]))
		} else {
			lights[i] = t.Fabrics[face.Fabric].Colour.Lightness()
		}
	}
	return lights
}

// printLight is the luminance of one repeat of a print, in squares.
type printLight struct {
	light         []float64
	width, height int     // squares, the last of which may be a part of one
	across, down  float64 // of one repeat, nanometers
	columns, rows float64 // squares of one repeat, with that part
}

// printSquares is into how many squares a repeat is parted along its longer side, at the most.
const printSquares = 256

// newPrintLight is the luminance of a cloth; nil where nothing shows it.
func newPrintLight(c *quilt.Cloth) *printLight {
	picture := c.Picture()
	if picture == nil {
		return nil
	}
	b := picture.Bounds()
	step := max(1, (max(b.Dx(), b.Dy())+printSquares-1)/printSquares)
	p := &printLight{width: (b.Dx() + step - 1) / step, height: (b.Dy() + step - 1) / step, across: float64(c.Across), down: float64(c.Down)}
	p.columns, p.rows = float64(b.Dx())/float64(step), float64(b.Dy())/float64(step)
	for _, mean := range palettes.Squares(picture, step) {
		p.light = append(p.light, mean.Luminance())
	}
	return p
}

// lookedAcross is how many places are looked at along each side of a triangle.
const lookedAcross = 8

// mean is the mean luminance of what an outline shows of the print: it is parted into triangles, and those into like ones, the middle of
// each of which is looked at.
func (p *printLight) mean(outline []measure.Point, at *quilt.ClothPlace) float64 {
	sum, area := 0.0, 0.0
	a := outline[0]
	for i := 1; i+1 < len(outline); i++ {
		b, c := outline[i], outline[i+1]
		weight := quilt.Area([]measure.Point{a, b, c})
		light, count := 0.0, 0
		for j := range lookedAcross {
			for k := range lookedAcross - j {
				u, v := (float64(j)+1.0/3)/lookedAcross, (float64(k)+1.0/3)/lookedAcross
				x := float64(a.X) + float64(u*float64(b.X-a.X)) + float64(v*float64(c.X-a.X))
				y := float64(a.Y) + float64(u*float64(b.Y-a.Y)) + float64(v*float64(c.Y-a.Y))
				light += p.at(at.OnCloth(x, y))
				count++
			}
		}
		sum, area = sum+float64(weight*light)/float64(count), area+weight
	}
	return sum / area
}

// at is the luminance at a place of the cloth.
func (p *printLight) at(across, down float64) float64 {
	part := func(v, repeat float64) float64 { return v/repeat - math.Floor(v/repeat) }
	column, row := int(part(across, p.across)*p.columns), int(part(down, p.down)*p.rows)
	return p.light[min(column, p.width-1)+p.width*min(row, p.height-1)]
}
