package preview

import (
	"io"
	"slices"

	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
	"eighthturn/svgout"
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
	o.View = svgout.View(max(0, slices.Index(svgout.Views(), view)))
	return svgout.Draw(w, t, o)
}
