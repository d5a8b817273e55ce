package picture

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/color"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"golang.org/x/image/webp"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/internal/render/pixels"
	"eighthturn/palettes"
	"eighthturn/svgout"
)

// box is the room of something on a canvas.
type box struct {
	what                string
	left, up, right, at float64
}

// roomOf is the room of every picture and every line of words. Words reach as far as the outlines of their letters do.
func roomOf(c *Canvas) (list []box) {
	for i, p := range c.Panels {
		list = append(list, box{fmt.Sprintf("picture %d", i), float64(p.At.Min.X), float64(p.At.Min.Y), float64(p.At.Max.X), float64(p.At.Max.Y)})
	}
	g := newGlyphs()
	for i := range c.Words {
		t := &c.Words[i].Text
		b := box{fmt.Sprintf("%q", t.Text), 1e9, 1e9, -1e9, -1e9}
		for _, outline := range g.text(t, false) {
			for _, q := range outline {
				b.left, b.up, b.right, b.at = min(b.left, q.x), min(b.up, q.y), max(b.right, q.x), max(b.at, q.y)
			}
		}
		list = append(list, b)
	}
	return list
}

// lawNothingClipped: all lies within the margins, nothing lies on anything else, and pictures keep their shape.
func lawNothingClipped(c *Canvas, edge float64) error {
	list := roomOf(c)
	const slack = 1 // pixels, for what is rounded
	for i, a := range list {
		if a.right <= a.left || a.at <= a.up {
			return fmt.Errorf("%s has no room", a.what)
		}
		if a.left < edge-slack || a.up < edge-slack || a.right > float64(c.Width)-edge+slack || a.at > float64(c.Height)-edge+slack {
			return fmt.Errorf("%s at %.1f %.1f %.1f %.1f leaves the margin of %.1f in %d by %d", a.what, a.left, a.up, a.right, a.at, edge, c.Width, c.Height)
		}
		for _, b := range list[:i] {
			if a.left < b.right && b.left < a.right && a.up < b.at && b.up < a.at {
				return fmt.Errorf("%s and %s overlap", a.what, b.what)
			}
		}
	}
	for _, p := range c.Panels {
		want, is := float64(p.Scene.Width)/float64(p.Scene.Height), float64(p.At.Dx())/float64(p.At.Dy())
		if pixel := 1.5 * (1 + want) / float64(min(p.At.Dx(), p.At.Dy())); is < want*(1-pixel)-pixel || is > want*(1+pixel)+pixel {
			return fmt.Errorf("a picture of %v is drawn %v", want, is)
		}
	}
	return nil
}

func plainScene(t testing.TB, top *quilt.Top, view svgout.View, prefix string) *svgout.Scene {
	t.Helper()
	s, err := svgout.NewScene(top, svgout.Options{View: view, ByFabric: true, Prefix: prefix})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

var titles = []string{
	"", "Webs", "Lanterns along the quay at the turn of the tide, for Grandmother's porch swing and everyone who sits there on long evenings",
	strings.Repeat("Unbroken", 30), "Läntern & <Œuvre> — Ψηφίδα, Звезда", "風車と星", "e\u0301cole \u200d\u202eright to left", "\U0001f9f5 thread",
}

// invented is a poster of a top by seed: pictures, words and a size of all sorts.
func inventedPoster(t testing.TB, top *quilt.Top, seed uint64) *Poster {
	r := rand.New(rand.NewPCG(seed, 1))
	sizes := [][2]int{{1080, 1080}, {1080, 1350}, {2048, 2048}, {1000, 1500}, {1080, 1920}, {2100, 1400}, {4200, 2100}, {0, 0}, {1500, 500}}
	size := sizes[r.IntN(len(sizes))]
	p := &Poster{Width: size[0], Height: size[1], PerInch: 300, Margin: -1, Ground: palettes.Colour{R: uint8(r.UintN(256)), G: uint8(r.UintN(256)), B: uint8(r.UintN(256))}}
	p.Letters = []float64{0, 0.4, 0.82}[seed%3]
	p.Title = titles[r.IntN(len(titles))]
	p.Lines = []string{"about 64 1/2 by 80 9/16 in", "Designed by " + titles[r.IntN(len(titles))]}[:r.IntN(3)]
	color := plainScene(t, top, svgout.Colour, "")
	value := plainScene(t, top, svgout.Value, "")
	for n := range 1 + r.IntN(9) {
		g := Group{Parts: []Part{{Scene: color}}}
		if r.IntN(2) == 0 {
			g.Parts = append(g.Parts, Part{Scene: value, Size: []float64{0, 0.5}[r.IntN(2)]})
		}
		if r.IntN(2) == 0 {
			g.Name = fmt.Sprint(n+1, " ", titles[r.IntN(len(titles))])
		}
		for range r.IntN(3) {
			g.Says = append(g.Says, titles[1+r.IntN(len(titles)-1)])
		}
		p.Groups = append(p.Groups, g)
	}
	return p
}

// TestLettersAreAsLargeAsSaid: of half the size they are half as large, title, names and all.
func TestLettersAreAsLargeAsSaid(t *testing.T) {
	p := &Poster{Width: 2000, Height: 2000, PerInch: 300, Margin: -1, Title: "Webs", Lines: []string{"by hand"}, Groups: []Group{
		{Parts: []Part{{Scene: plainScene(t, lay.Samples()[0].Top, svgout.Colour, "")}}, Name: "one", Says: []string{"two"}},
	}}
	arranged := func(letters float64) *Canvas {
		p.Letters = letters
		c, err := p.Arrange()
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	whole, half := arranged(0), arranged(0.5)
	for i := range whole.Words {
		if a, b := whole.Words[i].Text, half.Words[i].Text; a.Text != b.Text || math.Abs(a.Size/2-b.Size) > 0.5 {
			t.Errorf("%q is %g pixels high, and of half the size %g", a.Text, a.Size, b.Size)
		}
	}
	if len(whole.Words) != 4 {
		t.Errorf("%d lines of words", len(whole.Words))
	}
}

// TestNothingIsClipped on canvases of all sizes with long titles and names of all letters.
func TestNothingIsClipped(t *testing.T) {
	tops := append(lay.Samples(), lay.Invented(810, judges.Of(3, 60), 600)...)
	made, refused := 0, 0
	for i, top := range tops {
		for n := range judges.Of(2, 12) {
			p := inventedPoster(t, top.Top, uint64(100*i+n))
			c, err := p.Arrange()
			var room *NoRoom
			if errors.As(err, &room) {
				refused++
				continue
			}
			if err != nil {
				t.Fatal(err)
			}
			made++
			if err := lawNothingClipped(c, UsualMargin*float64(min(c.Width, c.Height))*0.99-1); err != nil && p.Width > 0 {
				t.Errorf("%s, %d: %v", top.Name, n, err)
			} else if err := lawNothingClipped(c, 0); err != nil {
				t.Errorf("%s, %d: %v", top.Name, n, err)
			}
			if r := palettes.ContrastRatio(c.Ink, c.Ground); r < LeastContrast {
				t.Errorf("%s, %d: type of %s on %s has a contrast of %.2f", top.Name, n, c.Ink.Hex(), c.Ground.Hex(), r)
			}
		}
	}
	if made < 5*refused {
		t.Errorf("%d canvases were made and %d refused", made, refused)
	}
}

// TestNothingIsClippedCatches what is moved, stretched, or lies on something else.
func TestNothingIsClippedCatches(t *testing.T) {
	top := lay.Samples()[0].Top
	made := func() *Canvas {
		c, err := (&Poster{Width: 1080, Height: 1080, Margin: -1, Title: "Webs", Lines: []string{"small"},
			Groups: []Group{{Parts: []Part{{Scene: plainScene(t, top, svgout.Colour, "")}}}}}).Arrange()
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	const edge = 60
	if err := lawNothingClipped(made(), edge); err != nil {
		t.Fatal(err)
	}
	for what, spoil := range map[string]func(*Canvas){
		"words on the picture": func(c *Canvas) {
			c.Words[0].X, c.Words[0].Y = float64(c.Panels[0].At.Min.X+50), float64(c.Panels[0].At.Min.Y+90)
		},
		"words beyond the edge":   func(c *Canvas) { c.Words[1].X += 600 },
		"a picture off its place": func(c *Canvas) { c.Panels[0].At = c.Panels[0].At.Add(image.Pt(-400, 0)) },
		"a picture stretched":     func(c *Canvas) { c.Panels[0].At.Min.Y += 80 },
		"words without letters":   func(c *Canvas) { c.Words[0].Text.Text = " " },
	} {
		c := made()
		spoil(c)
		if lawNothingClipped(c, edge) == nil {
			t.Errorf("%s: not found", what)
		}
	}
}

// TestInkIsReadOnAnyGround: WCAG 2.1, success criterion 1.4.3, asks for 4.5 to 1.
func TestInkIsReadOnAnyGround(t *testing.T) {
	for v := range 256 {
		for _, of := range [][]palettes.Colour{nil, {{R: 120, G: 40, B: 40}}, {{R: 255, G: 255, B: 255}, {R: 9, G: 9, B: 40}}} {
			for _, ground := range []palettes.Colour{{R: uint8(v), G: uint8(v), B: uint8(v)}, {R: uint8(v), G: 128, B: uint8(255 - v)}} {
				if r := palettes.ContrastRatio(InkOn(ground, of), ground); r < LeastContrast {
					t.Errorf("on %s: %.2f", ground.Hex(), r)
				}
			}
		}
	}
	if ink := InkOn(palettes.Colour{R: 255, G: 255, B: 255}, []palettes.Colour{{R: 20, G: 20, B: 60}, {R: 200, G: 200, B: 60}}); ink != (palettes.Colour{R: 20, G: 20, B: 60}) {
		t.Errorf("a dark fabric of the quilt is not taken for words: %s", ink.Hex())
	}
}

func shopCanvas(t testing.TB, title string) *Canvas {
	t.Helper()
	top := lay.Samples()[0].Top
	p := &Poster{Width: 540, Height: 700, PerInch: 150, Margin: -1, Ground: palettes.Colour{R: 250, G: 240, B: 230}, Title: title, Says: "Quilt top",
		Groups: []Group{{Name: "As written", Parts: []Part{{Scene: plainScene(t, top, svgout.Colour, "a-")}, {Scene: plainScene(t, top, svgout.Value, "b-")}}}}}
	p.Credits.Title, p.Credits.Author = title, "Mara Ellery"
	c, err := p.Arrange()
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestWebPHoldsThePicture: the decoder of golang.org/x/image reads every pixel of a WebP as a PNG's has it, of a canvas and of
// a picture with seams; both are of the size asked for.
func TestWebPHoldsThePicture(t *testing.T) {
	c := shopCanvas(t, "Beacon")
	var asPNG, asWebP bytes.Buffer
	if err := errors.Join(c.PNG(&asPNG), c.WebP(&asWebP)); err != nil {
		t.Fatal(err)
	}
	samePixels(t, decoded(t, asPNG.Bytes()), asWebP.Bytes())
	if size := decoded(t, asPNG.Bytes()).Bounds().Size(); size != image.Pt(540, 700) {
		t.Errorf("the canvas has %v", size)
	}
	for _, top := range judges.Some(lay.Samples(), 2) {
		asPNG.Reset()
		asWebP.Reset()
		s, f := plainScene(t, top.Top, svgout.Colour, ""), Frame{Pixels: 300, Margin: measure.Inch, PerInch: 20}
		if err := errors.Join(PNG(&asPNG, s, f), WebP(&asWebP, s, f)); err != nil {
			t.Fatal(err)
		}
		samePixels(t, decoded(t, asPNG.Bytes()), asWebP.Bytes())
	}
}

func samePixels(t *testing.T, want image.Image, file []byte) {
	t.Helper()
	got, err := webp.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	if got.Bounds() != want.Bounds() {
		t.Fatalf("%v, not %v", got.Bounds(), want.Bounds())
	}
	for y := range want.Bounds().Dy() {
		for x := range want.Bounds().Dx() {
			if a, b := color.NRGBAModel.Convert(want.At(x, y)), color.NRGBAModel.Convert(got.At(x, y)); a != b {
				t.Fatalf("at %d, %d: %v, not %v", x, y, b, a)
			}
		}
	}
}

// TestCanvasShowsItsPictures: the middle of a face has its fabric's color in the picture's place, the corners have the ground's, and words
// are drawn in ink.
func TestCanvasShowsItsPictures(t *testing.T) {
	c := shopCanvas(t, "Beacon")
	job, err := c.print()
	if err != nil {
		t.Fatal(err)
	}
	m := job.Picture()
	is := func(x, y int, want palettes.Colour) bool {
		p := m.RGBAAt(x, y)
		return p.R == want.R && p.G == want.G && p.B == want.B
	}
	if !is(0, 0, c.Ground) || !is(c.Width-1, c.Height-1, c.Ground) {
		t.Error("the corners are not of the ground")
	}
	for _, p := range c.Panels {
		top := p.Scene.Top
		face := &top.Faces[len(top.Faces)-1] // a border's
		var x, y float64
		for _, q := range face.Outline {
			x, y = x+float64(q.X)/float64(len(face.Outline)), y+float64(q.Y)/float64(len(face.Outline))
		}
		at := p.At.Min.Add(image.Pt(int(x/float64(top.Outer.Width())*float64(p.At.Dx())), int(y/float64(top.Outer.Height())*float64(p.At.Dy()))))
		if want := p.Scene.Paints[face.Fabric].Colour; !is(at.X, at.Y, want) {
			t.Errorf("at %v: %v, not %v", at, m.RGBAAt(at.X, at.Y), want)
		}
	}
	inked := 0
	w := c.Words[0].Box
	for y := int(w.Y); y < int(w.Y+w.Height); y++ {
		for x := int(w.X); x < int(w.X+w.Width); x++ {
			if is(x, y, c.Ink) {
				inked++
			}
		}
	}
	if inked < 50 {
		t.Errorf("only %d pixels of the words are in ink", inked)
	}
}

// TestCanvasesAreAlike: the same canvas gives the same bytes, and each file is known for one of ours.
func TestCanvasesAreAlike(t *testing.T) {
	for name, write := range map[string]func(*Canvas, *bytes.Buffer) error{
		"png": func(c *Canvas, b *bytes.Buffer) error { return c.PNG(b) }, "jpg": func(c *Canvas, b *bytes.Buffer) error { return c.JPEG(b, 0) },
		"webp": func(c *Canvas, b *bytes.Buffer) error { return c.WebP(b) }, "pdf": func(c *Canvas, b *bytes.Buffer) error { return c.PDF(b) },
		"svg": func(c *Canvas, b *bytes.Buffer) error { return c.SVG(b) },
	} {
		var a, b bytes.Buffer
		if err := errors.Join(write(shopCanvas(t, "Beacon"), &a), write(shopCanvas(t, "Beacon"), &b)); err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(a.Bytes(), b.Bytes()) {
			t.Errorf("%s: two canvases alike give other bytes", name)
		}
		head := a.Bytes()[:min(a.Len(), 1000)]
		if !IsOurs(head) && !bytes.Contains(head, []byte(svgout.Marker)) {
			t.Errorf("%s is not known for ours", name)
		}
	}
}

// TestWebPTooLarge is refused before anything is drawn.
func TestWebPTooLarge(t *testing.T) {
	s := plainScene(t, lay.Samples()[0].Top, svgout.Colour, "")
	var large *TooLarge
	if err := WebP(&bytes.Buffer{}, s, Frame{Pixels: pixels.MostWebPASide + 100}); !errors.As(err, &large) || large.Longest > pixels.MostWebPASide {
		t.Errorf("%v", err)
	}
}
