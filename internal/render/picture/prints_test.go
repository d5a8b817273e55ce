//go:build judges

package picture

import (
	"image"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/svgout"
)

// TestPrintsAlike: in the PDF as MuPDF draws it and in the SVG as librsvg does, each place shows the color of the place of the cloth that
// the top names for it, piece by piece and one path a fabric alike; a photo of another scale is noticed.
func TestPrintsAlike(t *testing.T) {
	top := printedTop(t, gardens)
	places := top.ClothPlaces()
	perInch := 1000 / inches(top.Outer.Width())
	for _, o := range []svgout.Options{{Prints: true, SeamLines: svgout.SeamsLeftOut}, {Prints: true, SeamLines: svgout.SeamsLeftOut, ByFabric: true}} {
		s := scened(t, top, o)
		size := decoded(t, pngOf(t, s, Frame{Pixels: 1000})).Bounds().Size()
		for kind, m := range map[string]image.Image{"PDF": pageAt(t, pdfOf(t, s, Frame{}), 1, perInch), "SVG": svgAt(t, top, o, size)} {
			worst, looked := offCloth(top, m, places)
			if t.Logf("%s: %d places, off by %.1f at the most", kind, looked, worst); worst > mostOffCloth || looked < 200 {
				t.Errorf("%s: %d places are off by up to %.1f", kind, looked, worst)
			}
		}
	}
	o := svgout.Options{Prints: true, SeamLines: svgout.SeamsLeftOut}
	before := top.Fabrics[0].Cloth.Across
	top.Fabrics[0].Cloth.Across += measure.Inch
	m := svgAt(t, top, o, image.Pt(1000, 1000*int(top.Outer.Height())/int(top.Outer.Width())))
	top.Fabrics[0].Cloth.Across = before
	if worst, _ := offCloth(top, m, places); worst <= mostOffCloth {
		t.Error("a photo of another scale is not noticed")
	}
}
