package preview

import (
	"io"
	"slices"

	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
	"eighthturn/svgout"
)

// Views beside those that package svgout draws by itself and those of colour vision.
const (
	squintView    = "squint"
	vanishingView = "vanishing"
)

// seen is a fabric's colour in the views of colour vision, by their names.
func seen(c palettes.Colour) map[string]string {
	list := map[string]string{}
	for _, d := range contrast.Deficiencies() {
		list[d.Name] = c.SeenBy(d.Kind, 1).Hex()
	}
	return list
}

// drawView writes a picture of the top as a file of its own, in colour if there is no such
// view.
func drawView(w io.Writer, t *quilt.Top, view string, o svgout.Options) error {
	if n := slices.Index(svgout.Views(), view); n >= 0 {
		o.View = svgout.View(n)
		return svgout.Draw(w, t, o)
	}
	for _, d := range contrast.Deficiencies() {
		if d.Name == view {
			return svgout.DrawMarked(w, t, svgout.Marks{Options: o, Shows: "as " + view + " eyes see it", Colours: func(f int) palettes.Colour {
				return t.Fabrics[f].Colour.SeenBy(d.Kind, 1)
			}})
		}
	}
	switch view {
	case squintView:
		return drawSquint(w, t)
	case vanishingView:
		return drawVanishing(w, t, o)
	}
	return svgout.Draw(w, t, o)
}

func drawSquint(w io.Writer, t *quilt.Top) error {
	png, err := (&studies{}).squinted(&picture{top: t})
	if err != nil {
		return err
	}
	return svgout.DrawPixels(w, t, png, "as it looks with eyes half shut")
}

// drawVanishing writes the top in greys with the seams marked that vanish or are soft, where a line should show.
func drawVanishing(w io.Writer, t *quilt.Top, o svgout.Options) error {
	var seams []svgout.Mark
	for _, m := range contrast.Study(t, contrast.Options{Distance: viewedFrom}).Marks {
		if !m.Inside {
			seams = append(seams, svgout.Mark{Seam: m.Seam, Heavy: m.Band == contrast.Vanishes})
		}
	}
	return svgout.DrawMarked(w, t, svgout.Marks{Options: o, Seams: seams, Shows: "in the greys of its values, with the seams marked that are hard to see",
		Colours: func(f int) palettes.Colour { return t.Fabrics[f].Colour.Grey() },
		Values:  func(f int) float64 { return t.Fabrics[f].Colour.Lightness() }})
}
