package picture

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/layout"
	"eighthturn/palettes"
	"eighthturn/svgout"
)

// clothAt is the light of each color, 0 to 255, of a print at a place of it, counted in repeats: no two places of one repeat are alike,
// and neither is any its own mirror image.
func clothAt(across, down float64) [3]float64 {
	turn := 2 * math.Pi
	return [3]float64{128 + 90*math.Sin(turn*across), 128 + 90*math.Sin(turn*down), 128 + 50*math.Cos(turn*across) + 50*math.Cos(turn*(down-across)+1)}
}

// printOfPixels is a photo of one repeat of that print.
func printOfPixels(t testing.TB, width, height int) palettes.PhotoSample {
	t.Helper()
	m := image.NewRGBA(image.Rect(0, 0, width, height))
	for y := range height {
		for x := range width {
			c := clothAt((float64(x)+0.5)/float64(width), (float64(y)+0.5)/float64(height))
			m.SetRGBA(x, y, color.RGBA{uint8(c[0] + 0.5), uint8(c[1] + 0.5), uint8(c[2] + 0.5), 255})
		}
	}
	var file bytes.Buffer
	if err := png.Encode(&file, m); err != nil {
		t.Fatal(err)
	}
	cloth, err := palettes.ReadSwatch(nil, file.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	return cloth
}

// gardens is a quilt of every sort of piece, cut from a print.
const gardens = `side 8
fabric garden swatch "garden.png" across 12 repeat across 12 down 9
fabric sand #e8d9b0
motif rose garden across 3 down 2 pointing 30
motif leaf garden across 7 1/2 down 6
strip-set pair garden 2 1/2 sand rest
block R ring wedges rose corners garden
block S ring wedges pair reversed pair corners leaf
block W web wedges garden kites rose
block P plain piece leaf
block H halves pieces garden sand
grid
  R S W W
  P H W W
border 2 garden
border 1 1/2 garden corners sand lengthwise
`

func printedTop(t testing.TB, text string) *quilt.Top { return printedBy(t, text, 960, 720) }

// printedBy is a layout laid out with a print of so many pixels.
func printedBy(t testing.TB, text string, width, height int) *quilt.Top {
	t.Helper()
	cloth := printOfPixels(t, width, height)
	design, source, faults := layout.ReadWith(text, func(string) (palettes.PhotoSample, error) { return cloth, nil })
	if design == nil {
		var b bytes.Buffer
		_ = layout.Report(&b, "gardens.quilt", source, faults)
		t.Fatal(b.String())
	}
	return quilt.Lay(design)
}

// offCloth is by how much the pixels of a picture are off the places of the cloth that the top says its faces show, at the worst, of 255;
// and how many were looked at.
func offCloth(top *quilt.Top, m image.Image, places []quilt.ClothPlace) (worst float64, looked int) {
	perNM := float64(m.Bounds().Dx()) / float64(top.Outer.Width())
	for i := range top.Faces {
		f := &top.Faces[i]
		cloth := top.Fabrics[f.Fabric].Cloth
		if cloth == nil {
			continue
		}
		for _, q := range insides(f.Outline) {
			px, py := int(q.X*perNM), int(q.Y*perNM)
			across, down := places[i].OnCloth((float64(px)+0.5)/perNM, (float64(py)+0.5)/perNM)
			want := clothAt(across/float64(cloth.Across), down/float64(cloth.Down))
			r, g, b, _ := m.At(px, py).RGBA()
			for c, got := range [3]uint32{r >> 8, g >> 8, b >> 8} {
				worst = max(worst, math.Abs(float64(got)-want[c]))
			}
			looked++
		}
	}
	return worst, looked
}

// insides are places well within an outline: its middle, and between that and its corners.
func insides(outline []measure.Point) (list []measure.Vec) {
	var middle measure.Vec
	for _, p := range outline {
		middle.X, middle.Y = middle.X+float64(p.X)/float64(len(outline)), middle.Y+float64(p.Y)/float64(len(outline))
	}
	list = append(list, middle)
	for _, p := range outline {
		list = append(list, measure.Vec{X: middle.X + 0.6*(float64(p.X)-middle.X), Y: middle.Y + 0.6*(float64(p.Y)-middle.Y)})
	}
	return list
}

const mostOffCloth = 6 // of 255: programs smooth the pixels of a photo each in its own way

// TestPrintsLieAsTheTopSays: each pixel of a PNG is the color of the place of the cloth that the top names for it; pieces that lie
// elsewhere are noticed.
func TestPrintsLieAsTheTopSays(t *testing.T) {
	top := printedTop(t, gardens)
	m := decoded(t, pngOf(t, scened(t, top, svgout.Options{Prints: true, SeamLines: svgout.SeamsLeftOut}), Frame{Pixels: 1000}))
	places := top.ClothPlaces()
	worst, looked := offCloth(top, m, places)
	if t.Logf("%d places, off by %.1f at the most", looked, worst); worst > mostOffCloth || looked < 200 {
		t.Errorf("%d places are off by up to %.1f", looked, worst)
	}
	places[0].Turn += 30
	if worst, _ := offCloth(top, m, places); worst <= mostOffCloth {
		t.Error("a wedge that lies askew is not noticed")
	}
}

// lookAt is a picture's color between pixels.
func lookAt(m image.Image, x, y float64) (c [3]float64) {
	x, y = x-0.5, y-0.5
	x0, y0 := math.Floor(x), math.Floor(y)
	for dy := range 2 {
		for dx := range 2 {
			part := math.Abs(1-float64(dx)-(x-x0)) * math.Abs(1-float64(dy)-(y-y0))
			r, g, b, _ := m.At(int(x0)+dx, int(y0)+dy).RGBA()
			c[0], c[1], c[2] = c[0]+part*float64(r>>8), c[1]+part*float64(g>>8), c[2]+part*float64(b>>8)
		}
	}
	return c
}

// offTurned is by how much a square picture is off itself turned by an eighth of a turn, or off its mirror image, at the worst and within
// its circle; and in the mean.
func offTurned(m image.Image, mirrored bool) (worst, mean float64) {
	looked := 0.0
	middle := float64(m.Bounds().Dx()) / 2
	for n := range 6_000 {
		r, angle := middle*0.85*math.Sqrt(float64(n)/6_000)+6, 2.399963*float64(n) // a spiral of seeds
		if near := math.Abs(math.Mod(angle, math.Pi/4) - math.Pi/8); near < 8/r || r < 20 {
			continue // near a seam
		}
		other := angle + math.Pi/4
		if mirrored {
			other = math.Pi/4 - angle
		}
		a := lookAt(m, middle+r*math.Cos(angle), middle+r*math.Sin(angle))
		b := lookAt(m, middle+r*math.Cos(other), middle+r*math.Sin(other))
		for c := range a {
			worst = max(worst, math.Abs(a[c]-b[c]))
			mean, looked = mean+math.Abs(a[c]-b[c]), looked+1
		}
	}
	return worst, mean / looked
}

// mirroredPrint is that print laid over its own mirror image, so that it has a line along the selvages, a part of its width from the left.
func mirroredPrint(t testing.TB, line float64) palettes.PhotoSample {
	t.Helper()
	cloth := printOfPixels(t, 480, 360)
	tile := image.NewRGBA(cloth.Tile.Rect)
	at := 2 * int(math.Round(line*480))
	for y := range 360 {
		for x := range 480 {
			a, b := cloth.Tile.RGBAAt(x, y), cloth.Tile.RGBAAt(((at-1-x)%480+480)%480, y)
			tile.SetRGBA(x, y, color.RGBA{uint8((int(a.R) + int(b.R)) / 2), uint8((int(a.G) + int(b.G)) / 2), uint8((int(a.B) + int(b.B)) / 2), 255})
		}
	}
	cloth.Tile = tile
	return cloth
}

// offMirrored is by how much what lies on one side of seams between wedges of one motif is off the mirror image of what lies on the other
// side, in the mean and at the worst, of 255; and how many places were looked at.
func offMirrored(top *quilt.Top, m image.Image) (worst, mean float64, looked int) {
	perNM := float64(m.Bounds().Dx()) / float64(top.Outer.Width())
	for i := range top.Seams {
		s := &top.Seams[i]
		a, b := &top.Patches[top.Faces[s.A].Patch], &top.Patches[top.Faces[s.B].Patch]
		if top.CutOfPatch(int(top.Faces[s.A].Patch)) == nil || a.Shape != b.Shape || a.Outline[0] != b.Outline[0] {
			continue
		}
		dx, dy := float64(s.To.X-s.From.X), float64(s.To.Y-s.From.Y)
		long := math.Hypot(dx, dy)
		for n := range 12 {
			along, away := 0.35+0.05*float64(n), 0.004*long*float64(5+n)
			if a.Outline[0] == s.To {
				along = 1 - along
			}
			x, y := float64(s.From.X)+along*dx, float64(s.From.Y)+along*dy
			p := lookAt(m, (x-away*dy/long)*perNM, (y+away*dx/long)*perNM)
			q := lookAt(m, (x+away*dy/long)*perNM, (y-away*dx/long)*perNM)
			for c := range p {
				worst, mean = max(worst, math.Abs(p[c]-q[c])), mean+math.Abs(p[c]-q[c])
			}
			looked += len(p)
		}
	}
	return worst, mean / float64(max(looked, 1)), looked
}

// TestMirroredPairsMeet: at every seam of a figure whose pieces are mirrored in pairs, what lies on one side is the mirror image of what
// lies on the other, pixel by pixel, wherever the print has its line; without pairs it is not.
func TestMirroredPairsMeet(t *testing.T) {
	const text = "strip 6 1/2\nfabric garden swatch \"garden.png\" across 12 repeat across 12 down 9\nmotif rose garden across 3 down 2 pointing 30 mirrored\n" +
		"block R ring wedges rose corners rose\nblock W web wedges rose kites rose\ngrid\n  W W\n  W W\n"
	for _, c := range []struct {
		line   float64
		blocks string
	}{{0.2, "  R R\n  R R\n"}, {0.7315, "  W W\n  W W\n"}} {
		cloth := mirroredPrint(t, c.line)
		design, _, faults := layout.ReadWith(strings.Replace(text, "  W W\n  W W\n", c.blocks, 1), func(string) (palettes.PhotoSample, error) { return cloth, nil })
		if design == nil {
			t.Fatal(faults)
		}
		top := quilt.Lay(design)
		draw := func() image.Image {
			return decoded(t, pngOf(t, scened(t, top, svgout.Options{Prints: true, SeamLines: svgout.SeamsLeftOut}), Frame{Pixels: 400}))
		}
		const most = 6 // of 255
		worst, mean, looked := offMirrored(top, draw())
		if t.Logf("line at %.4f: %d places, off by %.1f, %.2f in the mean", c.line, looked, worst, mean); worst > most || looked < 200 {
			t.Errorf("line at %.4f: of %d places some are off by %.1f", c.line, looked, worst)
		}
		for i := range top.Cuts {
			top.Cuts[i] = top.Cuts[0]
		}
		if worst, _, _ := offMirrored(top, draw()); worst < 10*most {
			t.Errorf("pieces that are all cut from one place are off by %.1f alone", worst)
		}
	}
}

// TestEightOfAMotifAreAlike: eight wedges of a motif are one figure, which turned by an eighth is itself, pixel by pixel; its mirror image
// is another, and so are eight wedges that come along a strip.
func TestEightOfAMotifAreAlike(t *testing.T) {
	const most = 3 // of 255, by looking between pixels
	draw := func(value string) image.Image {
		top := printedTop(t, "strip 6 1/2\nfabric garden swatch \"garden.png\" across 12 repeat across 12 down 9\nfabric awning stripes navy 1 white 1/2 rust-red 3/4\nfabric rust-red #b5532a\n"+
			"motif rose garden across 3 down 2 pointing 30\nfabric sand #e8d9b0\nblock R ring wedges "+value+" corners sand\ngrid\n  R\n")
		return decoded(t, pngOf(t, scened(t, top, svgout.Options{Prints: true, SeamLines: svgout.SeamsLeftOut}), Frame{Pixels: 600}))
	}
	m := draw("rose")
	if worst, _ := offTurned(m, false); worst > most {
		t.Errorf("the figure turned by an eighth is off itself by %.1f", worst)
	}
	if worst, _ := offTurned(m, true); worst < 10*most {
		t.Error("the figure is its mirror image, which no wedge of this print can be")
	}
	if worst, _ := offTurned(draw("garden"), false); worst < 10*most {
		t.Error("eight wedges as they come along a strip are one figure")
	}
	if judges.On {
		for _, value := range []string{"awning lengthwise from 1/2", "awning crosswise from 1/4"} {
			if _, mean := offTurned(draw(value), false); mean > 1 { // beside the edges of stripes alone
				t.Errorf("%s: the figure turned by an eighth is off itself by %.1f in the mean", value, mean)
			}
		}
	}
}
