package contrast

import (
	"image"
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
	width, height int
	across, down  float64 // squares for a nanometer
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
	p := &printLight{width: (b.Dx() + step - 1) / step, height: (b.Dy() + step - 1) / step}
	p.across, p.down = float64(b.Dx())/float64(step)/float64(c.Across), float64(b.Dy())/float64(step)/float64(c.Down)
	p.light = make([]float64, p.width*p.height)
	var linear [256]float64
	for i := range linear {
		linear[i] = palettes.Colour{R: uint8(i)}.Linear().R
	}
	for y := range p.height {
		for x := range p.width {
			square := image.Rect(x*step, y*step, x*step+step, y*step+step).Add(b.Min).Intersect(b)
			p.light[y*p.width+x] = meanLight(picture, square, &linear)
		}
	}
	return p
}

// meanLight is the mean luminance of a part of a picture (sRGB: IEC 61966-2-1).
func meanLight(picture *image.RGBA, part image.Rectangle, linear *[256]float64) float64 {
	var sum palettes.Linear
	for y := part.Min.Y; y < part.Max.Y; y++ {
		row := picture.Pix[picture.PixOffset(part.Min.X, y):][:4*part.Dx()]
		for at := 0; at < len(row); at += 4 {
			sum.R, sum.G, sum.B = sum.R+linear[row[at]], sum.G+linear[row[at+1]], sum.B+linear[row[at+2]]
		}
	}
	n := float64(part.Dx() * part.Dy())
	return palettes.Linear{R: sum.R / n, G: sum.G / n, B: sum.B / n}.Luminance()
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
	wrap := func(v float64, n int) int { return ((int(math.Floor(v)) % n) + n) % n }
	return p.light[wrap(across*p.across, p.width)+p.width*wrap(down*p.down, p.height)]
}
