package svgout

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"math"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// printedEverywhere is a top of pieces that are turned every way, of a photo and of stripes along and across the cloth.
func printedEverywhere(t *testing.T) *quilt.Top {
	t.Helper()
	design, _, faults := layout.ReadWith("side 6\nfabric sea swatch \"sea.png\" across 10 repeat across 10 down 5\nfabric awning stripes navy 1 white 1/2\nfabric deck stripes red 1/4 white 3/4 navy 1/2 crosswise\n"+
		"motif shell sea across 3 down 2 pointing 75\nblock R ring wedges shell sea corners awning\nblock H halves pieces sea deck\nblock W web wedges awning lengthwise from 1/4 kites shell\ngrid\n  W W H\n  W W R\nborder 2 deck\n",
		func(string) (palettes.PhotoSample, error) { return striped(t), nil })
	if design == nil {
		t.Fatal(faults)
	}
	return quilt.Lay(design)
}

// lawReferences says that whatever a file refers to is there once, and that all that is defined is referred to.
func lawReferences(svg []byte) error {
	root, err := parse(svg)
	if err != nil {
		return err
	}
	defined, used := map[string]int{}, map[string]bool{}
	for n := range root.all() {
		if n.name == "pattern" || n.name == "linearGradient" {
			defined[n.attr("id")]++
		}
		if name, ok := strings.CutPrefix(n.attr("xlink:href"), "#"); ok {
			used[name] = true
		}
		for _, m := range regexp.MustCompile(`url\(#([^)]*)\)`).FindAllStringSubmatch(n.attr("fill"), -1) {
			used[m[1]] = true
		}
	}
	for name := range used {
		if defined[name] != 1 {
			return fmt.Errorf("%s is defined %d times", name, defined[name])
		}
	}
	for name := range defined {
		if !used[name] {
			return fmt.Errorf("nothing shows %s", name)
		}
	}
	return nil
}

// TestWhatIsReferredToIsThere: every print and paint of a file is defined once and shown.
func TestWhatIsReferredToIsThere(t *testing.T) {
	for _, top := range []*quilt.Top{printedEverywhere(t), lapTop(t)} {
		for _, o := range []Options{{Prints: true}, {Prints: true, Prefix: "b-", Legend: true, ByFabric: true}, {Prints: true, View: Value, Legend: true}, {Prints: true, View: Vanishing}, {OnePaint: true}, {OnePaint: true, Prefix: "c"}} {
			if err := lawReferences(drawn(t, top, o)); err != nil {
				t.Errorf("%+v: %v", o, err)
			}
		}
	}
	svg := drawn(t, printedEverywhere(t), Options{Prints: true})
	for pattern, bad := range map[string]string{`<pattern id="print-1-\d+"[^\n]*\n`: "", `href="#print-1"`: `href="#print-9"`, `fill="url\(#print-1-`: `fill="url(#print-8-`, `(<pattern id="print-2-)`: "${1}0"} {
		broken(t, lawReferences, svg, pattern, bad)
	}
}

// TestFacesShowTheirPlaceOfThePrint: the matrix of every face takes each of its corners to the place of the cloth that the top says it
// shows, or to the same place of another repeat.
func TestFacesShowTheirPlaceOfThePrint(t *testing.T) {
	top := printedEverywhere(t)
	s, err := NewScene(top, Options{Prints: true})
	if err != nil {
		t.Fatal(err)
	}
	whole := func(v, repeat float64) bool { return math.Abs(v/repeat-math.Round(v/repeat)) < 1e-6 }
	for i := range top.Faces {
		m, cloth := s.Matrix(int32(i)), top.Fabrics[top.Faces[i].Fabric].Cloth
		for _, p := range top.Faces[i].Outline {
			across, down := s.Places[i].OnCloth(float64(p.X), float64(p.Y))
			x, y := userUnits(p.X)-m[4], userUnits(p.Y)-m[5] // a motion's matrix turned back is its mirror image
			x, y = x*m[0]+y*m[1], x*m[2]+y*m[3]
			if !whole(x-across*96/25_400_000, userUnits(cloth.Across)) || !whole(y-down*96/25_400_000, userUnits(cloth.Down)) {
				t.Fatalf("the corner %v of face %d shows the cloth at %g, %g, expected %g, %g nm", p, i, x, y, across, down)
			}
		}
	}
}

// TestPatternsAreTheCloth: a pattern is one repeat wide and high; stripes lie in it as the layout has them, without a gap, and an image
// with its margin.
func TestPatternsAreTheCloth(t *testing.T) {
	top := printedEverywhere(t)
	root, err := parse(drawn(t, top, Options{Prints: true}))
	if err != nil {
		t.Fatal(err)
	}
	near := func(n *node, name string, want float64) {
		var got float64
		if _, err := fmt.Sscan(n.attr(name), &got); err != nil || math.Abs(got-want) > 0.00501 {
			t.Errorf("<%s %s=%q>, expected %g", n.name, name, n.attr(name), want)
		}
	}
	seen := 0
	for n := range root.all() {
		var f int
		if _, err := fmt.Sscanf(n.attr("id"), "print-%d", &f); n.name != "pattern" || n.attr("width") == "" || err != nil {
			continue
		}
		seen++
		cloth := top.Fabrics[f-1].Cloth
		across, down := float64(cloth.Across)*96/25_400_000, float64(cloth.Down)*96/25_400_000
		near(n, "width", across)
		near(n, "height", down)
		if cloth.Stripes == nil {
			picture := cloth.Picture().Bounds()
			left, up := 2*across/float64(picture.Dx()), 2*down/float64(picture.Dy()) // two pixels of the repeats beside it
			near(n.children[0], "x", -left)
			near(n.children[0], "y", -up)
			near(n.children[0], "width", across+2*left)
			near(n.children[0], "height", down+2*up)
			continue
		}
		at, ends := 0.0, across
		along, broad, far, wide := "x", "width", "y", "height"
		if cloth.Stripes.Crosswise {
			along, broad, far, wide = far, wide, along, broad
			ends = down
		}
		if len(n.children) != len(cloth.Stripes.List) {
			t.Fatalf("%d stripes, expected %d", len(n.children), len(cloth.Stripes.List))
		}
		for i, stripe := range cloth.Stripes.List {
			near(n.children[i], along, at)
			near(n.children[i], broad, ends-at)
			near(n.children[i], far, 0)
			near(n.children[i], wide, across+down-ends)
			if got := n.children[i].attr("fill"); got != stripe.Colour.Hex() {
				t.Errorf("stripe %d is %s, expected %s", i, got, stripe.Colour.Hex())
			}
			at += float64(stripe.Width) * 96 / 25_400_000
		}
	}
	if seen != 3 {
		t.Errorf("%d patterns, expected 3", seen)
	}
}

// noise is a picture in which no two places are alike, its corner somewhere.
func noise(width, height int) *image.RGBA {
	picture, rng := image.NewRGBA(image.Rect(3, 5, 3+width, 5+height)), rand.New(rand.NewPCG(3, 5))
	for y := range height {
		for x := range width {
			picture.SetRGBA(3+x, 5+y, color.RGBA{uint8(rng.IntN(256)), uint8(rng.IntN(256)), uint8(rng.IntN(256)), 255})
		}
	}
	return picture
}

// TestTheMarginGoesOn: beside a print's picture stand the pixels of the repeats beside it, also of a picture narrower than the margin.
func TestTheMarginGoesOn(t *testing.T) {
	for _, size := range []image.Point{{7, 4}, {1, 1}, {1, 6}} {
		p := &Print{Picture: noise(size.X, size.Y)}
		out, b := p.Margined(), p.Picture.Bounds()
		if out.Bounds() != image.Rect(0, 0, size.X+4, size.Y+4) {
			t.Fatalf("%v with its margin is %v", size, out.Bounds())
		}
		for y := range size.Y + 4 {
			for x := range size.X + 4 {
				want := p.Picture.RGBAAt(b.Min.X+(x+10*size.X-2)%size.X, b.Min.Y+(y+10*size.Y-2)%size.Y)
				if got := out.RGBAAt(x, y); got != want {
					t.Fatalf("%v: %v at %d, %d, expected %v", size, got, x, y, want)
				}
			}
		}
	}
}

// TestLargePrintsAreJPEGs: an image of a print is a PNG, and a JPEG where that is less than half of a PNG that is large.
func TestLargePrintsAreJPEGs(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 9))
	grain := func(size, levels, step int) *image.RGBA {
		picture := image.NewRGBA(image.Rect(0, 0, size, size))
		for y := range size {
			for x := range size {
				g := uint8(40 + step*rng.IntN(levels))
				if step == 1 { // a photo: every pixel near those beside it
					g += uint8(y / 8)
				}
				picture.SetRGBA(x, y, color.RGBA{g, g, g, 255})
			}
		}
		return picture
	}
	for picture, want := range map[*image.RGBA]string{noise(9, 9): "png", grain(600, 40, 1): "jpeg", grain(300, 40, 1): "png", grain(820, 16, 12): "png"} {
		file := (&Print{Picture: picture}).file()
		if _, kind, err := image.DecodeConfig(bytes.NewReader(file)); err != nil || kind != want || kindOf(file) != want {
			t.Errorf("%v is a %s of %d bytes, called %s, expected a %s (%v)", picture.Bounds(), kind, len(file), kindOf(file), want, err)
		}
	}
}
