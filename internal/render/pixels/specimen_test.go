package pixels

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"eighthturn/internal/credits"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/golden"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/palettes"
)

// holes is a quilt with an empty place, and pieces of every slant.
const holes = "side 4\nfabric night #1f3350\nfabric oat #e9dfc9\nfabric rust #b5552b\nblock W web wedges night rust kites oat\nblock R ring wedges rust corners oat\ngrid\n  W R\n  R .\n"

// wholeQuilt is one without, wider than high.
const wholeQuilt = "side 4\nfabric night #1f3350\nfabric oat #e9dfc9\nfabric rust #b5552b\nblock W web wedges night rust kites oat\nblock R ring wedges rust corners oat\ngrid\n  W R\nborder 1/2 rust\n"

// tiled is a print of a striped quilt that lies turned, with a tile of few colors for its other fabric.
func tiled(t *testing.T) *Print {
	t.Helper()
	top := lay.Top(t, "side 3\nfabric deck stripes #1f3350 3/4 #e9dfc9 1/2\nfabric rust #b5552b\nmotif slant deck across 1 down 0 pointing 30\nblock D plain piece slant\nblock H halves pieces deck rust\ngrid\n  D H\n  H D\n")
	p := printed(top, 40, 40)
	picture := image.NewRGBA(image.Rect(0, 0, 3, 2))
	for i := range 6 {
		picture.SetRGBA(i%3, i/3, color.RGBA{uint8(40 * i), uint8(250 - 30*i), uint8(90 + 20*i), 255})
	}
	p.Tiles, p.Places = tilesOf(top), top.ClothPlaces()
	for f := range top.Fabrics {
		if top.Fabrics[f].Name == "rust" {
			p.Tiles[f] = &Tile{picture, 2 * measure.Inch, measure.Inch}
		}
	}
	return p
}

// specimens are prints of every sort.
func specimens(t *testing.T) map[string]*Print {
	t.Helper()
	of := func(text string, width, height int, change func(p *Print)) *Print {
		p := printed(lay.Top(t, text), width, height)
		change(p)
		return p
	}
	over := func(p *Print) {
		p.Over = []Layer{{Outlines: [][]Place{{{3, 3}, {30.5, 4}, {6, 20.25}}, {{1, 1}, {2, 2}}, {}, {{-9, 20}, {50, 22}, {50, 24}, {-9, 22}}}, Colour: palettes.Colour{R: 20, G: 200, B: 90}, Opacity: 0.5}, {Outlines: [][]Place{{{20, 2}, {36, 2}, {36, 30}, {20, 30}}}, Colour: palettes.Colour{B: 255}, Opacity: 1}}
	}
	gray := func(p *Print) {
		p.Colour = func(f int) palettes.Colour { return p.Top.Fabrics[f].Colour.Grey() }
		p.Over = []Layer{{Outlines: [][]Place{{{3, 3}, {30, 4}, {6, 20}}}, Opacity: 0.25}}
	}
	pictured := image.NewNRGBA(image.Rect(2, 3, 7, 8))
	for i := range 25 {
		pictured.SetNRGBA(2+i%5, 3+i/5, color.NRGBA{uint8(10 * i), uint8(255 - 9*i), 60, uint8(255 - 255*(i%3/2))})
	}
	list := map[string]*Print{
		"numbered": of(wholeQuilt, 45, 25, func(p *Print) { p.Colour = nil }), "numbered-holes": of(holes, 32, 32, func(p *Print) { p.Background = palettes.Colour{R: 9, G: 99, B: 9} }),
		"numbered-clear": of(holes, 32, 32, func(p *Print) { p.Clear = true }), "true": of(holes, 32, 32, func(p *Print) { p.TrueColour = true }), "true-clear": of(holes, 32, 32, func(p *Print) { p.TrueColour, p.Clear = true, true }),
		"over": of(holes, 40, 40, over), "over-clear": of(holes, 40, 40, func(p *Print) { over(p); p.Clear = true }), "gray": of(wholeQuilt, 40, 24, gray),
		"round": of(holes, 44, 44, func(p *Print) { p.Quilt, p.RunOn = image.Rect(6, 6, 38, 38), 4 }),
		"image": of(holes, 44, 30, func(p *Print) { p.Image, p.Quilt, p.RunOn = pictured, image.Rect(10, 6, 34, 24), 3 }), "image-clear": of(holes, 44, 30, func(p *Print) { p.Image, p.Quilt, p.Clear = pictured, image.Rect(10, 6, 34, 24), true }),
		"tiles": tiled(t), "tiles-clear": tiled(t), "tiles-round": tiled(t),
	}
	list["tiles-clear"].Clear = true
	list["tiles-round"].Quilt, list["tiles-round"].RunOn = image.Rect(4, 4, 36, 36), 3
	return list
}

// chunksOf are the parts of a PNG file but for its pixels (ISO/IEC 15948, 5.3).
func chunksOf(file []byte) string {
	var out strings.Builder
	for at := 8; at+12 <= len(file); {
		n := int(binary.BigEndian.Uint32(file[at:]))
		if name := string(file[at+4 : at+8]); name != "IDAT" {
			fmt.Fprintf(&out, "%s %q\n", name, file[at+8:at+8+n])
		}
		at += 12 + n
	}
	return out.String()
}

// TestSpecimenPrints: prints of every sort, pixel by pixel and as their files are.
func TestSpecimenPrints(t *testing.T) {
	var said bytes.Buffer
	for name, p := range specimens(t) {
		m, file := pngOf(t, p)
		golden.Picture(t, filepath.Join("testdata", "specimen", name+".png"), m, golden.Slack{})
		if name == "numbered-clear" || name == "gray" {
			fmt.Fprintf(&said, "%s\n", name)
			said.WriteString(chunksOf(file))
		}
	}
	p := printed(lay.Top(t, holes), 30, 20)
	p.PerInch, p.Clear = 72.6, true
	for _, c := range []credits.Credits{{}, {Title: "Étude", Author: "Ida", Copyright: "© Ida 赤"}} {
		p.Credits = c
		_, file := pngOf(t, p)
		var photo, web bytes.Buffer
		if err := p.WriteJPEG(&photo, 80); err != nil {
			t.Fatal(err)
		}
		if err := p.WriteWebP(&web); err != nil {
			t.Fatal(err)
		}
		if _, err := jpeg.Decode(bytes.NewReader(photo.Bytes())); err != nil {
			t.Fatal(err)
		}
		head, _, _ := bytes.Cut(photo.Bytes(), []byte{0xff, 0xdb})
		picture := bytes.Index(web.Bytes(), []byte("VP8L"))
		end := picture + 8 + int(binary.LittleEndian.Uint32(web.Bytes()[picture+4:]))
		fmt.Fprintf(&said, "%+v\n%sJPEG %q\nWebP %q ... %q\n", c, chunksOf(file), head, web.Bytes()[:picture], web.Bytes()[end+(end-picture)%2:])
	}
	golden.Text(t, filepath.Join("testdata", "specimen", "files.txt"), sorted(said.String()))
}

// sorted is the text of the two files that are looked into, in an order of its own.
func sorted(text string) []byte {
	gray, clear := strings.Index(text, "gray\n"), strings.Index(text, "numbered-clear\n")
	rest := strings.Index(text, "{Title:")
	if gray > clear {
		return []byte(text[gray:rest] + text[clear:gray] + text[rest:])
	}
	return []byte(text)
}

// planeText is a plane row by row, in thousandths of light and of what is covered.
func planeText(p *Plane) string {
	var out strings.Builder
	fmt.Fprintf(&out, "%v\n", p.Size)
	for y := range p.Height {
		for x := range p.Width {
			fmt.Fprintf(&out, " %d", int(math.Round(float64(p.Luminance[y*p.Width+x])*1000)))
			if p.Covered != nil {
				fmt.Fprintf(&out, "/%d", int(math.Round(float64(p.Covered[y*p.Width+x])*1000)))
			}
		}
		out.WriteByte('\n')
	}
	return out.String()
}

// TestSpecimenPlanes: the light of quilts, whole and blurred, and what half-shut eyes see of it.
func TestSpecimenPlanes(t *testing.T) {
	var out bytes.Buffer
	deck := tiled(t).Top
	for _, c := range []struct {
		name string
		top  *quilt.Top
		size Size
	}{{"holes", lay.Top(t, holes), Size{14, 14}}, {"whole", lay.Top(t, wholeQuilt), Size{17, 9}}, {"stripes", deck, Size{12, 12}}} {
		fmt.Fprintf(&out, "%s: light %sfaces %v\n", c.name, planeText(luminance(c.top, c.size, nil)), FaceAt(c.top, c.size))
		for _, sigma := range []measure.NM{measure.Inch / 8, measure.Inch / 2, 2 * measure.Inch} {
			fmt.Fprintf(&out, "blurred by %v: %s", inches(sigma), planeText(Blurred(c.top, c.size, sigma, nil)))
		}
		fmt.Fprintf(&out, "at a coarser size: %s", planeText(Blurred(c.top, Size{60 * c.size.Width, 60 * c.size.Height}, measure.Inch, nil)))
		fmt.Fprintf(&out, "and stretched: %s", planeText(Blurred(c.top, c.size, measure.Inch/2, nil).stretched(Size{c.size.Width + 5, 2*c.size.Height - 3})))
		m := NewMosaic(c.top, c.size, measure.Inch/2, byFabric(c.top))
		fmt.Fprintf(&out, "as a mosaic: %s", planeText(m.Blurred(func(f int) float64 { return float64(f+1) / 4 })))
		for steps := range 6 {
			for _, relative := range []bool{false, true} {
				q := Squint{Steps: steps, Relative: relative, Distance: 60 * measure.Inch, Acuity: 20}
				s, err := Squinting(c.top, Size{2 * c.size.Width, 2 * c.size.Height}, q)
				if err != nil {
					fmt.Fprintf(&out, "%d steps: %v\n", steps, err)
					continue
				}
				fmt.Fprintf(&out, "%d steps, %v: %.4f\n", steps, relative, s.Steps)
				if steps == 3 && !relative {
					golden.Picture(t, filepath.Join("testdata", "specimen", "squint-"+c.name+".png"), s.Picture, golden.Slack{})
				}
			}
		}
		var file bytes.Buffer
		m2 := Paint(c.top, Size{2 * c.size.Width, 2 * c.size.Height}, own(c.top))
		golden.Picture(t, filepath.Join("testdata", "specimen", "painted-"+c.name+".png"), m2, golden.Slack{})
		if err := WritePNG(&file, c.top, m2); err != nil {
			t.Fatal(err)
		}
		if _, err := png.Decode(&file); err != nil {
			t.Fatal(err)
		}
	}
	golden.Text(t, filepath.Join("testdata", "specimen", "planes.txt"), out.Bytes())
}

// TestGreatestPictures: sizes are taken up to each limit and not beyond it.
func TestGreatestPictures(t *testing.T) {
	square, long := lay.Top(t, "side 4\nfabric a #000\nblock P plain piece a\ngrid\n P\n"), lay.Top(t, "side 4\nfabric a #000\nblock P plain piece a\ngrid\n P P P P P P P P P P\n")
	for _, c := range []struct {
		top     *quilt.Top
		longest int
		want    Size
	}{{square, 0, Size{}}, {square, 1, Size{1, 1}}, {long, 1, Size{1, 1}}, {long, 15, Size{15, 2}}, {long, 14, Size{14, 1}}, {square, 10_954, Size{10_954, 10_954}}, {square, 10_955, Size{}}, {long, mostASide, Size{mostASide, mostASide / 10}}, {long, mostASide + 1, Size{}}} {
		if got, err := SizeOf(c.top, c.longest); got != c.want || (err == nil) != (c.want.Width > 0) {
			t.Errorf("%d: %v, %v", c.longest, got, err)
		}
	}
	if in, beyond := printed(square, 50_000, 20_000).Check(), printed(square, 50_000, 20_001).Check(); in != nil || beyond == nil {
		t.Errorf("a print of %d pixels: %v, of more: %v", MostPrintedInAll, in, beyond)
	}
	for _, c := range []struct {
		size      Size
		jpeg, web bool
	}{
		{Size{10_000, 10_000}, true, true}, {Size{10_000, 10_001}, false, false}, {Size{MostPrintedASide, 1}, true, false}, {Size{MostPrintedASide + 1, 1}, false, false}, {Size{1, MostPrintedASide}, true, false}, {Size{1, MostPrintedASide + 1}, false, false},
		{Size{MostWebPASide, 1}, true, true}, {Size{MostWebPASide + 1, 1}, true, false}, {Size{1, MostWebPASide}, true, true}, {Size{1, MostWebPASide + 1}, true, false},
	} {
		p := printed(square, c.size.Width, c.size.Height)
		if (p.CheckJPEG() == nil) != c.jpeg || (p.CheckWebP() == nil) != c.web {
			t.Errorf("%v: JPEG %v, WebP %v", c.size, p.CheckJPEG(), p.CheckWebP())
		}
	}
}

// TestClothRunsOnAtCorners: beyond the corners of a quilt where pieces meet there is cloth, too, as far as it runs on at its edges.
func TestClothRunsOnAtCorners(t *testing.T) {
	for _, text := range []string{wholeQuilt, holes, "side 4\nfabric red #b5532a\nfabric sand #e9dfc9\nblock H halves pieces red sand\ngrid\n H H\n H H\n", "side 4\nfabric red #b5532a\nblock P plain piece red\ngrid\n P\n",
		"side 4\nfabric red #b5532a\nfabric sand #e9dfc9\nblock W web wedges red kites sand\ngrid\n W W W\n W W W\n"} {
		top := lay.Top(t, text)
		p := printed(top, 60, 60)
		p.Quilt, p.RunOn, p.Clear = image.Rect(10, 10, 50, 50), 10, true
		m, _ := pngOf(t, p)
		for _, corner := range []image.Point{{0, 0}, {59, 0}, {0, 59}, {59, 59}} {
			inner := image.Pt(min(max(corner.X, 11), 48), min(max(corner.Y, 11), 48))
			_, _, _, out := m.At(corner.X, corner.Y).RGBA()
			if _, _, _, in := m.At(inner.X, inner.Y).RGBA(); in != out {
				t.Errorf("%.60q: at %v the cloth covers %d, in the quilt %d", text, corner, out, in)
			}
		}
	}
}

// TestStepsPartWhereTheQuiltDoes: a quilt of three lights is parted in the middle between each two.
func TestStepsPartWhereTheQuiltDoes(t *testing.T) {
	counts := make([]int, fineSteps)
	for _, l := range []float64{20, 50, 80} {
		at := 0
		for lightnessOf(at) < l {
			at++
		}
		counts[at] = 100
	}
	cuts := ownCuts(counts, 3)
	if len(cuts) != 2 || math.Abs(cuts[0]-35) > 0.6 || math.Abs(cuts[1]-65) > 0.6 {
		t.Errorf("cuts at %v, expected 35 and 65", cuts)
	}
	if cuts = ownCuts(counts, 2); len(cuts) != 1 {
		t.Errorf("two steps are cut at %v", cuts)
	}
}

// TestTwinsAreOneInk: fabrics of one color share a place in the palette, so that more steps are left for others.
func TestTwinsAreOneInk(t *testing.T) {
	text := "side 4\nfabric a #b5532a\nfabric b #b5532a\nfabric c #e9dfc9\nblock H halves pieces a b\nblock G halves pieces a c\ngrid\n  H G\n"
	top := lay.Top(t, text)
	p := printed(top, 20, 10)
	table := p.newInks().table
	if len(table.pair) != 1 || table.same[0] != table.same[1] || table.same[2] == table.same[0] {
		t.Errorf("pairs %v, inks %v", table.pair, table.same)
	}
}
