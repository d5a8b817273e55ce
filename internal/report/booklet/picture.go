package booklet

import (
	"bytes"
	"image"
	"slices"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	pictures "eighthturn/internal/render/picture"
	"eighthturn/internal/render/pixels"
	"eighthturn/internal/stop"
	"eighthturn/palettes"
	"eighthturn/svgout"
)

// maxFaces is how many faces a picture of the top has as outlines; one of more is a picture in pixels, which shows as much of
// them on a page and takes a small part of the room.
const maxFaces = 50_000

// pixelsAlong is how many pixels the longer side of a picture in pixels has: about 250 an inch of the page.
const pixelsAlong = 2000

// inPixels is the top with each fabric in a colour, on white, as a PNG file. A picture that nothing shines through goes into a PDF as
// it is; any other would be unpacked and packed again.
func inPixels(sign *stop.Sign, t *quilt.Top, along int, colour func(palettes.Colour) palettes.Colour) []byte {
	size, err := pixels.SizeOf(t, along)
	if err != nil {
		panic(err) // the number is within the limits
	}
	var file bytes.Buffer
	picture := pixels.Paint(t, size, func(f int) palettes.Colour { return colour(t.Fabrics[f].Colour) })
	onWhite(picture)
	_ = pixels.WritePNG(sign.Writer(&file), t, picture) // a buffer takes all
	return file.Bytes()
}

// onWhite lays a picture on white paper.
func onWhite(p *image.NRGBA) {
	for i := 0; i < len(p.Pix); i += 4 {
		alpha := int(p.Pix[i+3])
		if alpha == 255 {
			continue
		}
		for c := range 3 {
			p.Pix[i+c] = uint8((int(p.Pix[i+c])*alpha + 255*(255-alpha) + 127) / 255)
		}
		p.Pix[i+3] = 255
	}
}

// inColor is the top as it looks, with its prints where it has some: those are a picture in pixels, and seams lie over it as lines. It has
// so many faces at most as outlines, and so many pixels along.
func (b *patternBuilder) inColor(t *quilt.Top, along, most int) document.Drawing {
	d := b.pictureOf(t, along, most, func(c palettes.Colour) palettes.Colour { return c }, svgout.SeamsByView)
	return b.withPrints(d, t, along, svgout.Colour)
}

// inGrays is the top by value, with its prints as well.
func (b *patternBuilder) inGrays() document.Drawing {
	return b.withPrints(b.picture(palettes.Colour.Grey, svgout.SeamsLeftOut), b.Top, pixelsAlong, svgout.Value)
}

// withPrints is a picture with the top's prints in a view, where it has some and is no picture in pixels already.
func (b *patternBuilder) withPrints(d document.Drawing, t *quilt.Top, along int, view svgout.View) document.Drawing {
	if d.Ground != nil || !patterned(t) {
		return d
	}
	scene, err := svgout.NewScene(t, svgout.Options{View: view, ByFabric: true, Prints: true, SeamLines: svgout.SeamsLeftOut})
	if err != nil {
		panic(err) // there is such a view
	}
	var file bytes.Buffer
	if err := pictures.PNG(b.plans.Sign().Writer(&file), scene, pictures.Frame{Pixels: along, TrueColour: true}); err != nil {
		panic(err) // the number is within the limits, and a buffer takes all
	}
	d.Ground = file.Bytes()
	d.Layers = slices.DeleteFunc(d.Layers, func(l document.Layer) bool { return !l.Open })
	return d
}

// patterned says whether a top shows a fabric that is no plain color.
func patterned(t *quilt.Top) bool {
	return slices.ContainsFunc(t.Faces, func(f quilt.Face) bool { return t.Fabrics[f.Fabric].Cloth != nil })
}

// picture is the top with each fabric in a colour, and with its seams where they are wanted.
func (b *patternBuilder) picture(colour func(palettes.Colour) palettes.Colour, seams svgout.Seams) document.Drawing {
	return b.pictureOf(b.Top, pixelsAlong, maxFaces, colour, seams)
}

// pictureOf is picture of another top, with so many faces at most as outlines, and so many pixels along where it has more.
func (b *patternBuilder) pictureOf(t *quilt.Top, along, most int, colour func(palettes.Colour) palettes.Colour, seams svgout.Seams) document.Drawing {
	b.plans.Sign().Look()
	d := document.Drawing{Min: measure.Point(t.Outer.Min), Max: measure.Point(t.Outer.Max)}
	if len(t.Faces) > most {
		d.Ground = inPixels(b.plans.Sign(), t, along, colour)
		return d
	}
	scene, err := svgout.NewScene(t, svgout.Options{ByFabric: true, SeamLines: seams})
	if err != nil {
		panic(err) // there is such a view
	}
	for i := range scene.Layers {
		l := &scene.Layers[i]
		for n := range l.Items {
			style := l.Styled(&l.Items[n])
			layer := document.Layer{Name: l.Name}
			if style.Line != nil {
				layer.Open, layer.Ink, layer.Line = true, colour(*style.Line), b.hairline()*seamShare
			} else {
				fill, _ := scene.Colour(style.Fill)
				fill = colour(fill)
				layer.Fill = &fill
			}
			for outline := range l.Items[n].Outlines {
				layer.Paths = append(layer.Paths, points(outline))
			}
			d.Layers = append(d.Layers, layer)
		}
	}
	return d
}

// seamShare is how broad seams are drawn on a picture in colour, as part of a line to colour in.
const seamShare = 0.6

func points(outline []measure.Point) []measure.Point {
	list := make([]measure.Point, len(outline))
	for i, p := range outline {
		list[i] = measure.Point(p)
	}
	return list
}

// lineDrawing is the top's outlines, to colour in.
func (b *patternBuilder) lineDrawing() document.Drawing {
	t := b.Top
	d := document.Drawing{Min: measure.Point(t.Outer.Min), Max: measure.Point(t.Outer.Max)}
	var outlines, bands [][]measure.Point
	for i := range t.Patches {
		outlines = append(outlines, points(t.Patches[i].Outline))
	}
	for _, s := range t.StripSeams {
		bands = append(bands, []measure.Point{measure.Point(s.From), measure.Point(s.To)})
	}
	d.Layers = append(d.Layers, document.Layer{Name: "pieces", Paths: outlines, Line: b.hairline(), Ink: ink()})
	if len(bands) > 0 {
		d.Layers = append(d.Layers, document.Layer{Name: "strips", Paths: bands, Open: true, Line: b.hairline(), Ink: ink()})
	}
	return d
}

// hairline is how broad the lines of a top are that is to be coloured, in points: finer where its pieces are many.
func (b *patternBuilder) hairline() float64 {
	const many, few = 4000, 1000
	switch n := len(b.Top.Patches); {
	case n > many:
		return 0.2
	case n > few:
		return 0.4
	}
	return 0.6
}
