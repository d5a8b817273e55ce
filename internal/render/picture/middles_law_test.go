package picture

import (
	"eighthturn/internal/quilttest/lay"
	"image"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/palettes"
	"eighthturn/samples"
	"eighthturn/svgout"
)

// wrongMiddles counts the faces whose middle is not of their colour in a picture of the
// whole top, of those that are large enough for a pixel to lie in them wholly.
func wrongMiddles(top *quilt.Top, m image.Image, colour func(int) palettes.Colour) (wrong, looked int) {
	across := float64(m.Bounds().Dx()) / float64(top.Outer.Width())
	down := float64(m.Bounds().Dy()) / float64(top.Outer.Height())
	for i := range top.Faces {
		x, y, room := middle(top.Faces[i].Outline)
		if room*min(across, down) < 1.5 {
			continue
		}
		looked++
		want := colour(int(top.Faces[i].Fabric))
		r, g, b, a := m.At(int(x*across), int(y*down)).RGBA()
		if a != 0xffff || uint8(r>>8) != want.R || uint8(g>>8) != want.G || uint8(b>>8) != want.B {
			wrong++
		}
	}
	return wrong, looked
}

// TestMiddlesOfPixels: in a PNG of every sample the pixel at the middle of every face has the
// colour that the scene gives its fabric, in each view that shows cloth.
func TestMiddlesOfPixels(t *testing.T) {
	for name, top := range tops(t) {
		for _, view := range []svgout.View{svgout.Colour, svgout.Value, svgout.Protan, svgout.Tritan} {
			s := scened(t, top, svgout.Options{View: view})
			wrong, looked := wrongMiddles(top, decoded(t, pngOf(t, s, Frame{Pixels: 800})), func(f int) palettes.Colour { return s.Paints[f].Colour })
			if wrong > 0 || looked < len(top.Faces)*9/10 {
				t.Errorf("%s, view %d: %d of %d middles are wrong, of %d faces", name, view, wrong, looked, len(top.Faces))
			}
		}
	}
}

// TestWrongMiddlesAreNoticed: the judge sees two fabrics changed about.
func TestWrongMiddlesAreNoticed(t *testing.T) {
	top := lay.Top(t, samples.All()[0].Text)
	m := decoded(t, pngOf(t, scened(t, top, svgout.Options{}), Frame{Pixels: 800}))
	if wrong, looked := wrongMiddles(top, m, func(f int) palettes.Colour { return top.Fabrics[(f+1)%len(top.Fabrics)].Colour }); wrong < looked/2 {
		t.Errorf("only %d of %d were noticed", wrong, looked)
	}
}
