package svgout

import (
	"bytes"

	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/quilt"
	"eighthturn/internal/render/pixels"
	"eighthturn/palettes"
)

// View is what a picture shows.
type View uint8

const (
	Colour    View = iota // fabrics in their colours
	Value                 // each fabric in the grey of its lightness, CIE L*
	Line                  // outlines and the letters of the roles
	Squint                // blurred, in few steps of value, as half-shut eyes see it
	Vanishing             // in greys, with the seams marked that vanish and should not
	Protan                // in the colours that eyes see which lack one sort of colour sense
	Deutan
	Tritan
)

// Views are the names of the views, in their order.
func Views() []string {
	return []string{"colour", "value", "line", "squint", "vanishing", "protan", "deutan", "tritan"}
}

// marks choose a picture of a top in colours other than its own, with some seams marked.
type marks struct {
	Options
	colours func(palettes.Colour) palettes.Colour
	shows   string // what the picture shows, to go on from "drawn "
	seams   []mark
}

// mark is a seam to be marked.
type mark struct {
	quilt.Seam
	heavy bool // a broad line, and not a thin dashed one
}

// marksOf is a view that changes colours or marks seams.
func marksOf(t *quilt.Top, o Options) marks {
	if o.View == Vanishing {
		return marks{o, palettes.Colour.Grey, "in the grays of its values, with the seams marked that are hard to see", hardToSee(t)}
	}
	eyes := palettes.Deficiency(o.View - Protan)
	return marks{o, func(c palettes.Colour) palettes.Colour { return c.SeenBy(eyes, 1) }, "as " + Views()[o.View] + " eyes see it", nil}
}

// hardToSee are the seams that vanish or are soft where a line should show.
func hardToSee(t *quilt.Top) []mark {
	var list []mark
	for _, m := range contrast.Study(t, contrast.Options{}).Marks {
		if !m.Inside {
			list = append(list, mark{m.Seam, m.Band == contrast.Vanishes})
		}
	}
	return list
}

// marked is a picture with marked seams. The values that its legend names are the fabrics' own
// where the picture is about values, and else those of the colours that it shows.
func marked(t *quilt.Top, m marks) *Scene {
	p := newPicture(t, m.Options)
	for f := range p.scene.Paints {
		paint := &p.scene.Paints[f]
		if paint.Colour = m.colours(t.Fabrics[f].Colour); paint.Print != nil {
			paint.Print = paint.Print.in(m.colours)
		}
	}
	if m.View != Vanishing {
		p.value = func(f int) float64 { return p.scene.Paints[f].Colour.Lightness() }
	}
	p.describeAs(m.shows)
	p.cloth()
	p.marks(m.seams, false)
	p.marks(m.seams, true)
	return p.finished()
}

// squintPixels is how many pixels the longer side of a squinted picture has.
const squintPixels = 1600

// squinted is the top blurred, in few steps of value: a picture in pixels.
func squinted(t *quilt.Top, o Options) (*Scene, error) {
	size, err := pixels.SizeOf(t, squintPixels)
	if err != nil {
		return nil, err
	}
	squint, err := pixels.Squinting(t, size, pixels.Squint{})
	if err != nil {
		return nil, err
	}
	var png bytes.Buffer
	if err := pixels.WritePNG(&png, t, squint.Picture); err != nil {
		return nil, err
	}
	return inPixels(t, o, png.Bytes(), "as it looks with eyes half shut"), nil
}

// inPixels is a scene of one picture in pixels that is stretched over the whole top.
func inPixels(t *quilt.Top, o Options, png []byte, shows string) *Scene {
	o.Legend = false
	p := newPicture(t, o)
	p.describeAs(shows)
	p.layer(Layer{Items: []Item{{Picture: png}}})
	return p.finished()
}
