package main

import (
	"bytes"
	"io"
	"slices"

	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/quilt"
	"eighthturn/internal/render/pixels"
	"eighthturn/palettes"
	"eighthturn/svgout"
)

// squintPixels is how many pixels the longer side of a squinted picture has.
const squintPixels = 1600

// Views beside those that package svgout draws by itself and those of colour vision.
const (
	squintView    = "squint"
	vanishingView = "vanishing"
)

// viewNames is every view that a picture can be drawn in.
func viewNames() []string {
	names := append(svgout.Views(), squintView, vanishingView)
	for _, d := range contrast.Deficiencies() {
		names = append(names, d.Name)
	}
	return names
}

// viewHelp says what the views are.
func viewHelp() string {
	return "the `VIEW`: colour, value (greys by value), line (outlines to colour in), squint (as seen with eyes half shut), " +
		"vanishing (seams that vanish and should not are marked), or as eyes see it that lack one sort of colour sense: protan, deutan, tritan"
}

// drawView writes a picture of a top in the view of that number.
func drawView(w io.Writer, top *quilt.Top, view int, o svgout.Options) error {
	own := len(svgout.Views())
	switch name := viewNames()[view]; {
	case view < own:
		o.View = svgout.View(view)
		return svgout.Draw(w, top, o)
	case name == squintView:
		return drawSquint(w, top)
	case name == vanishingView:
		return drawVanishing(w, top, o)
	}
	at := slices.Index(viewNames()[own+2:], viewNames()[view])
	d := contrast.Deficiencies()[at]
	return svgout.DrawMarked(w, top, svgout.Marks{Options: o, Shows: "as " + d.Name + " eyes see it", Colours: func(fabric int) palettes.Colour {
		return top.Fabrics[fabric].Colour.SeenBy(d.Kind, 1)
	}})
}

// drawSquint writes the top blurred, in few steps of value.
func drawSquint(w io.Writer, top *quilt.Top) error {
	size, err := pixels.SizeOf(top, squintPixels)
	if err != nil {
		return err
	}
	squint, err := pixels.Squinting(top, size, pixels.Squint{})
	if err != nil {
		return err
	}
	var png bytes.Buffer
	if err := pixels.WritePNG(&png, top, squint.Picture); err != nil {
		return err
	}
	return svgout.DrawPixels(w, top, png.Bytes(), "as it looks with eyes half shut")
}

// drawVanishing writes the top in greys with the seams marked that vanish or are soft, where a line should show.
func drawVanishing(w io.Writer, top *quilt.Top, o svgout.Options) error {
	var seams []svgout.Mark
	for _, m := range contrast.Study(top, contrast.Options{}).Marks {
		if !m.Inside {
			seams = append(seams, svgout.Mark{Seam: m.Seam, Heavy: m.Band == contrast.Vanishes})
		}
	}
	return svgout.DrawMarked(w, top, svgout.Marks{Options: o, Seams: seams, Shows: "in the greys of its values, with the seams marked that are hard to see",
		Colours: func(fabric int) palettes.Colour { return top.Fabrics[fabric].Colour.Grey() },
		Values:  func(fabric int) float64 { return top.Fabrics[fabric].Colour.Lightness() }})
}
