package booklet

import (
	"bytes"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/quilt"
	"eighthturn/internal/render/pixels"
	"eighthturn/palettes"
)

// seamWidth is how broad the lines beneath the patches are, in points: renderers cover the pixels of a seam in part twice,
// and so show one of its two fabrics there and nothing of the page.
const seamWidth = 0.7

// mostFaces is how many faces a picture of the top has as outlines; one of more is a picture in pixels, which shows as much of
// them on a page and takes a small part of the room.
const mostFaces = 50_000

// pixelsAlong is how many pixels the longer side of a picture in pixels has: about 250 an inch of the page.
const pixelsAlong = 2000

// inPixels is the top with each fabric in a colour, as a PNG file.
func inPixels(t *quilt.Top, colour func(palettes.Colour) palettes.Colour) []byte {
	size, err := pixels.SizeOf(t, pixelsAlong)
	if err != nil {
		panic(err) // the number is within the limits
	}
	var file bytes.Buffer
	_ = pixels.WritePNG(&file, t, pixels.Paint(t, size, func(f int) palettes.Colour { return colour(t.Fabrics[f].Colour) })) // a buffer takes all
	return file.Bytes()
}

// picture is the top with each fabric in a colour.
func (b *book) picture(colour func(palettes.Colour) palettes.Colour) document.Drawing {
	t := b.Top
	d := document.Drawing{Min: diagram.Point(t.Outer.Min), Max: diagram.Point(t.Outer.Max)}
	if len(t.Faces) > mostFaces {
		d.Ground = inPixels(t, colour)
		return d
	}
	fills := make([]palettes.Colour, len(t.Fabrics))
	for i := range fills {
		fills[i] = colour(t.Fabrics[i].Colour)
	}
	d.Layers = append(d.Layers, beneath(t, fills)...)
	faces := make([][][]diagram.Point, len(t.Fabrics))
	for i := range t.Faces {
		f := &t.Faces[i]
		faces[f.Fabric] = append(faces[f.Fabric], points(f.Outline))
	}
	for i, paths := range faces {
		if len(paths) > 0 {
			d.Layers = append(d.Layers, document.Layer{Name: t.Fabrics[i].Name, Paths: paths, Fill: &fills[i]})
		}
	}
	return d
}

// beneath are the seams, each in the colour of one of its fabrics.
func beneath(t *quilt.Top, fills []palettes.Colour) []document.Layer {
	lines := make([][][]diagram.Point, len(t.Fabrics))
	for _, list := range [][]quilt.Seam{t.Seams, t.StripSeams} {
		for _, s := range list {
			f := max(t.Faces[s.A].Fabric, t.Faces[s.B].Fabric)
			lines[f] = append(lines[f], []diagram.Point{diagram.Point(s.From), diagram.Point(s.To)})
		}
	}
	var list []document.Layer
	for i, paths := range lines {
		if len(paths) > 0 {
			list = append(list, document.Layer{Name: "seams", Paths: paths, Open: true, Line: seamWidth, Ink: fills[i]})
		}
	}
	return list
}

func points(outline []quilt.Point) []diagram.Point {
	list := make([]diagram.Point, len(outline))
	for i, p := range outline {
		list[i] = diagram.Point(p)
	}
	return list
}

func asItIs(c palettes.Colour) palettes.Colour { return c }

// lineDrawing is the top's outlines, to colour in.
func (b *book) lineDrawing() document.Drawing {
	t := b.Top
	d := document.Drawing{Min: diagram.Point(t.Outer.Min), Max: diagram.Point(t.Outer.Max)}
	var outlines, bands [][]diagram.Point
	for i := range t.Patches {
		outlines = append(outlines, points(t.Patches[i].Outline))
	}
	for _, s := range t.StripSeams {
		bands = append(bands, []diagram.Point{diagram.Point(s.From), diagram.Point(s.To)})
	}
	ink := palettes.Colour{R: 0x22, G: 0x22, B: 0x22}
	d.Layers = append(d.Layers, document.Layer{Name: "pieces", Paths: outlines, Line: b.hairline(), Ink: ink})
	if len(bands) > 0 {
		d.Layers = append(d.Layers, document.Layer{Name: "strips", Paths: bands, Open: true, Line: b.hairline(), Ink: ink})
	}
	return d
}

// hairline is how broad the lines of a top are that is to be coloured, in points: finer where its pieces are many.
func (b *book) hairline() float64 {
	const many, few = 4000, 1000
	switch n := len(b.Top.Patches); {
	case n > many:
		return 0.2
	case n > few:
		return 0.4
	}
	return 0.6
}
