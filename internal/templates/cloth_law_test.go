package templates

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/palettes"
)

const cutText = "side 6\nfabric navy #1f3350\nfabric garden stripes navy 3/4 white 3/4 navy 1\nmotif rose garden across 4 down 3 pointing 17\nmotif bud garden across 7 down 5 pointing 200 mirrored\n" +
	"block A ring wedges rose corners bud\nblock B ring wedges bud corners navy\ngrid\n A B A\n B A B\n"

// clothTops are tops with stripes and with a photo, 9 in by 6 in: 90 by 60 pixels, in waves of red, green and blue.
func clothTops(t testing.TB) []*quilt.Top {
	striped, photographed := lay.Top(t, cutText), lay.Top(t, cutText)
	picture := image.NewRGBA(image.Rect(0, 0, 90, 60))
	wave := func(turns float64) uint8 { return uint8(128 + 127*math.Sin(2*math.Pi*turns)) }
	for y := range 60 {
		for x := range 90 {
			across, down := float64(x)/90, float64(y)/60
			picture.SetRGBA(x, y, color.RGBA{wave(6 * across), wave(4 * down), wave(3*across + down), 255})
		}
	}
	photographed.Fabrics[1].Cloth = &quilt.Cloth{Across: 9 * measure.Inch, Down: 6 * measure.Inch, PhotoSample: palettes.PhotoSample{Tile: picture}}
	return []*quilt.Top{striped, photographed}
}

// patchLike is the first patch of a top that a template of pieces of a print is made from.
func patchLike(top *quilt.Top, t *Template) int {
	for i := range top.Patches {
		if top.CutOf[i] == int16(t.Print.Place) && top.Patches[i].Shape == t.Shape {
			return i
		}
	}
	return -1
}

// misplacedCloth says which corner of a template's piece does not show the place of the cloth that its patch shows. The piece lies on a
// figure, with its finished outline there.
func misplacedCloth(top *quilt.Top, patch int, a *diagram.Area, finished []measure.Point) error {
	place, _ := top.PlaceSaid(patch)
	cloth := top.Fabrics[top.Faces[top.Patches[patch].First].Fabric].Cloth
	s := diagram.Cloth{At: measure.Vec{X: float64(a.Repeat.X), Y: float64(a.Repeat.Y)}, Turn: a.Turn}
	for i, q := range finished {
		on := s.OnCloth(measure.Vec{X: float64(q.X), Y: float64(q.Y)})
		p := top.Patches[patch].Outline[i]
		across, down := place.OnCloth(float64(p.X), float64(p.Y))
		x, y := math.Remainder(on.X-across, float64(cloth.Across)), math.Remainder(on.Y-down, float64(cloth.Down))
		if math.Hypot(x, y) > 2000 {
			return fmt.Errorf("corner %d shows a place %.0f, %.0f nanometers beside its own", i, x, y)
		}
	}
	if a.Print.Across != cloth.Across || a.Print.Down != cloth.Down {
		return fmt.Errorf("a repeat is %d by %d", a.Print.Across, a.Print.Down)
	}
	return nil
}

// TestTemplatesShowTheirCloth: on the template of pieces that are cut from a place of a print lies the cloth as it lies in their patches, as
// the template lies and after a quarter turn; a cloth turned by 2 degrees or moved is noticed. The places of three corners, in order, are a
// motion's: nothing is stretched or seen from its wrong side. Templates of other pieces show no cloth.
func TestTemplatesShowTheirCloth(t *testing.T) {
	list := append(clothTops(t), tops(t)["promenade"])
	shown := map[blocks.Shape]int{}
	for n, top := range list {
		cloths := NewCloths(top)
		for _, template := range usual(top) {
			figure := template.Figure(top, cloths)
			a := figure.Marks[0].Area
			if template.Print == nil {
				if a.Print != nil {
					t.Errorf("top %d: template %s shows a cloth", n, template.Name())
				}
				continue
			}
			patch := patchLike(top, &template)
			if err := misplacedCloth(top, patch, a, template.Finished); err != nil {
				t.Errorf("top %d, template %s: %v", n, template.Name(), err)
			}
			aside := turned(&diagram.Figure{Max: figure.Max, Marks: []diagram.Mark{figure.Marks[0], {Area: &diagram.Area{Outline: template.Finished}}}})
			if err := misplacedCloth(top, patch, aside.Marks[0].Area, aside.Marks[1].Area.Outline); err != nil {
				t.Errorf("top %d, template %s turned: %v", n, template.Name(), err)
			}
			bad := *a
			if bad.Turn += 2; misplacedCloth(top, patch, &bad, template.Finished) == nil {
				t.Errorf("top %d, template %s: a turn of 2 degrees is not noticed", n, template.Name())
			}
			shown[template.Shape]++
		}
	}
	if len(shown) < 2 {
		t.Errorf("cloth was shown on %v", shown)
	}
	unread := lay.Top(t, cutText)
	unread.Fabrics[1].Cloth = &quilt.Cloth{Across: 9 * measure.Inch, Down: 6 * measure.Inch, Repeats: true}
	for _, template := range usual(unread) {
		if a := template.Figure(unread, NewCloths(unread)).Marks[0].Area; a.Print != nil || a.Edge != diagram.Cut {
			t.Errorf("template %s shows a cloth without a picture", template.Name())
		}
	}
}

// TestPartsShowTheirCloth: of a piece that is larger than a page each part shows the cloth within the page, and where it lies in the whole.
func TestPartsShowTheirCloth(t *testing.T) {
	top := clothTops(t)[1]
	list := usual(top)
	template := list[slices.IndexFunc(list, func(p Template) bool { return p.Print != nil })]
	figure := template.Figure(top, NewCloths(top))
	whole, area := figure.Marks[0].Area, 0.0
	w := window{max: measure.Point{X: figure.Max.X / 2, Y: figure.Max.Y}}
	for _, w := range []window{w, {measure.Point{X: w.max.X}, figure.Max}} {
		a := w.clipped(figure)[0].Area
		area += quilt.Area(a.Outline)
		for _, p := range a.Outline {
			if p.X < 0 || p.Y < 0 || p.X > w.max.X-w.min.X || p.Y > w.max.Y-w.min.Y {
				t.Errorf("the cloth reaches beyond the page, to %v", p)
			}
		}
		if a.Turn != whole.Turn || a.Repeat.Add(w.min) != whole.Repeat || a.Print != whole.Print {
			t.Errorf("the cloth of a part lies at %v, turned by %v", a.Repeat, a.Turn)
		}
	}
	if all := quilt.Area(whole.Outline); math.Abs(area-all) > all/1e6 {
		t.Errorf("the parts show %v of %v", area, all)
	}
	if seen := (window{max: measure.Point{X: -1, Y: -1}, min: measure.Point{X: -2, Y: -2}}).outline(whole.Outline); seen != nil {
		t.Errorf("a page beside the piece shows %v", seen)
	}
}

// TestClothIsPale: on a print of black cloth, as templates show it, words in black have a contrast of 7 to 1 at the least, and in SVG files
// words have 4.5 to 1 and lines 3 to 1 (WCAG 2.2, 1.4.6, 1.4.3 and 1.4.11).
func TestClothIsPale(t *testing.T) {
	for _, c := range []struct {
		ink   string
		white int
		least float64
	}{
		{"#000000", clothWhite, 7}, {labelInk, layersWhite, 4.5}, {cutInk, layersWhite, 3}, {sewInk, layersWhite, 3}, {grainInk, layersWhite, 3},
		{printInk, layersWhite, 3}, {markInk, layersWhite, 3},
	} {
		black := image.NewRGBA(image.Rect(0, 0, 1, 1))
		shown := palettes.Paler(black, c.white).RGBAAt(0, 0)
		var ink color.RGBA
		if _, err := fmt.Sscanf(c.ink, "#%02x%02x%02x", &ink.R, &ink.G, &ink.B); err != nil {
			t.Fatal(err)
		}
		if got := (luminance(shown) + 0.05) / (luminance(ink) + 0.05); got < c.least {
			t.Errorf("%s on a pale print has a contrast of %.2f to 1, less than %v", c.ink, got, c.least)
		}
	}
}

// luminance is the relative luminance of a color (WCAG 2.2, the definition).
func luminance(c color.RGBA) float64 {
	linear := func(v uint8) float64 {
		part := float64(v) / 255
		if part <= 0.04045 {
			return part / 12.92
		}
		return math.Pow((part+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B)
}

// TestLayerOfCloth: an SVG file of pieces of a print has its picture once, in a layer that comes before the others and has no shape of its own;
// what is drawn of it ends at the cut line. The files of other pieces have nothing of it, and say nothing.
func TestLayerOfCloth(t *testing.T) {
	for _, top := range clothTops(t) {
		for _, template := range usual(top) {
			var file bytes.Buffer
			if err := template.SVG(&file, top); err != nil {
				t.Fatal(err)
			}
			before, rest, _ := strings.Cut(file.String(), `<g id="cut"`)
			if template.Print == nil {
				if strings.Contains(before+rest, `id="fabric"`) || strings.Contains(before+rest, "<image") {
					t.Errorf("template %s has a cloth", template.Name())
				}
				continue
			}
			defs, layer, _ := strings.Cut(before, `<g id="fabric"`)
			cut := regexp.MustCompile(`<path d="[^"]*"`).FindString(rest)
			if strings.Count(before, "<image") != 1 || !strings.Contains(defs, cut) || strings.Contains(layer, "<path") || !strings.Contains(layer, "<use") {
				t.Errorf("template %s: the layer of cloth is %s", template.Name(), layer)
			}
			if !strings.Contains(defs, ClothNote) {
				t.Errorf("template %s does not say what the layer is", template.Name())
			}
		}
	}
}
