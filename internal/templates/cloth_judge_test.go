//go:build judges

package templates

import (
	"bytes"
	"image"
	"image/png"
	"math"
	"strings"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// pixelsPerInch is how finely templates are drawn for the judge.
const pixelsPerInch = 96

// drawnBy is a figure as librsvg draws it.
func drawnBy(t *testing.T, f *diagram.Figure) image.Image {
	var file bytes.Buffer
	if err := diagram.SVG(&file, f, diagram.Options{NoLegend: true}); err != nil {
		t.Fatal(err)
	}
	return drawnFile(t, file.Bytes())
}

// drawnFile is an SVG file as librsvg draws it.
func drawnFile(t *testing.T, file []byte) image.Image {
	out := output(t, program(t, "rsvg-convert", "Debian's librsvg2-bin"), "-d", "96", "-p", "96", saved(t, "template.svg", file))
	picture, err := png.Decode(bytes.NewReader([]byte(out)))
	if err != nil {
		t.Fatal(err)
	}
	return picture
}

// clothApart is how far a drawn template's red, green and blue are from those of the paled cloth, of 255, in the mean of places within the
// seam lines. The places of the cloth are those that the patch shows in the quilt. The template begins at a place in points.
func clothApart(top *quilt.Top, template *Template, drawn image.Image, origin measure.Vec, white float64) float64 {
	patch := patchLike(top, template)
	p := &top.Patches[patch]
	place, _ := top.PlaceSaid(patch)
	cloth := top.Fabrics[top.Faces[p.First].Fabric].Cloth
	picture := cloth.Picture()
	b := picture.Bounds()
	sum, n := 0.0, 0.0
	const steps = 30
	for i := 1; i < steps; i++ {
		for j := 1; i+j < steps; j++ { // within the triangle of the first three corners
			mix := func(at func(k int) measure.Point) (x, y float64) {
				for k, part := range [3]float64{float64(steps - i - j), float64(i), float64(j)} {
					x, y = x+float64(at(k).X)*part/steps, y+float64(at(k).Y)*part/steps
				}
				return x, y
			}
			across, down := place.OnCloth(mix(func(k int) measure.Point { return p.Outline[k] }))
			column, row := across/float64(cloth.Across), down/float64(cloth.Down)
			c := picture.RGBAAt(int((column-math.Floor(column))*float64(b.Dx())), int((row-math.Floor(row))*float64(b.Dy())))
			x, y := mix(func(k int) measure.Point { return template.Finished[k] })
			const scale = pixelsPerInch / float64(measure.Inch)
			red, green, blue, _ := drawn.At(int(x*scale+origin.X*pixelsPerInch/72), int(y*scale+origin.Y*pixelsPerInch/72)).RGBA()
			for k, v := range [3]uint8{c.R, c.G, c.B} {
				sum += math.Abs(float64(v)*(100-white)/100 + 255*white/100 - float64([3]uint32{red, green, blue}[k]>>8))
				n++
			}
		}
	}
	return sum / n
}

// TestDrawnClothIsThePatchs: as another program draws a template, its colors are those of the paled cloth at the places that the quilt's
// patch shows, but for half a pixel at the edges of colors; those of a cloth turned by 2 degrees are not.
func TestDrawnClothIsThePatchs(t *testing.T) {
	for n, top := range append(clothTops(t), tops(t)["promenade"]) {
		for _, template := range usual(top) {
			if template.Print == nil {
				continue
			}
			figure := template.Figure(top, NewCloths(top))
			figure.Marks = figure.Marks[:1]
			origin := diagram.Place(figure, diagram.Options{NoLegend: true}).Origin
			right := clothApart(top, &template, drawnBy(t, figure), origin, clothWhite)
			a := *figure.Marks[0].Area
			figure.Marks = []diagram.Mark{{Area: &a}}
			a.Turn += 2
			turned := clothApart(top, &template, drawnBy(t, figure), origin, clothWhite)
			if right > 4 || turned < 1.5*right {
				t.Errorf("top %d, template %s: colors are %.2f apart, turned by 2 degrees %.2f", n, template.Name(), right, turned)
			}
		}
	}
}

// TestDrawnLayerIsThePatchs: so it is with the cloth in the layers of SVG files, paler as it is; a turn by 2 degrees is noticed.
func TestDrawnLayerIsThePatchs(t *testing.T) {
	for n, top := range append(clothTops(t), tops(t)["promenade"]) {
		right, turned := 0.0, 0.0
		for _, template := range usual(top) {
			if template.Print == nil {
				continue
			}
			var file bytes.Buffer
			if err := template.SVG(&file, top); err != nil {
				t.Fatal(err)
			}
			layer, _, _ := strings.Cut(file.String(), `<g id="cut"`)
			apart := func(layer string) float64 {
				const margin = float64(svgMargin) * 72 / float64(measure.Inch)
				return clothApart(top, &template, drawnFile(t, []byte(layer+"</svg>")), measure.Vec{X: margin, Y: margin}, layersWhite)
			}
			right += apart(layer)
			turned += apart(strings.Replace(layer, " rotate(", " rotate(2) rotate(", 1))
		}
		if right > 5 || turned < 1.5*right {
			t.Errorf("top %d: colors are %.2f apart, turned by 2 degrees %.2f", n, right, turned)
		}
	}
}
