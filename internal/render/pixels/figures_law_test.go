package pixels

import (
	"bytes"
	"image"
	"image/color"
	"math"
	"runtime"
	"slices"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/palettes"
)

// plain is a quilt of one piece, so many inches a side.
func plain(t *testing.T, side string) *quilt.Top {
	t.Helper()
	return lay.Top(t, "side "+side+"\nfabric a #b5532a\nblock P plain piece a\ngrid\n P\n")
}

// TestWhatIsSaidOfGreatPictures: who asks for a picture that is too large is told how large it would be, and what can be had.
func TestWhatIsSaidOfGreatPictures(t *testing.T) {
	top := plain(t, "4")
	long := lay.Top(t, "side 4\nfabric a #000\nblock P plain piece a\ngrid\n P P\n")
	_, side := SizeOf(top, 30_001)
	_, all := SizeOf(long, 30_000)
	none, some := printed(top, 5, 5), printed(top, 5, 5)
	none.Size.Height, some.Quilt = 0, image.Rectangle{}
	for want, got := range map[string]error{
		"a picture of 30001 pixels a side, where 1 to 30000 can be had":                             side,
		"a picture of 30000 by 15000 pixels, where 120 million in all can be had":                   all,
		"a picture of 5 by 0 pixels has no room for a quilt":                                        none.Check(),
		"a picture of 5 by 5 pixels has no room for a quilt":                                        some.Check(),
		"a picture of 60001 by 1 pixels, where 60000 a side and 1000 million in all can be had":     printed(top, 60_001, 1).CheckJPEG(),
		"a JPEG of 10000 by 10001 pixels, where 100 million in all can be had":                      printed(top, 10_000, 10_001).CheckJPEG(),
		"a WebP of 10000 by 10001 pixels, where 16384 a side and 100 million in all can be had":     printed(top, 10_000, 10_001).CheckWebP(),
		"a picture of 50000 by 20001 pixels, where 60000 a side and 1000 million in all can be had": printed(top, 50_000, 20_001).CheckWebP(),
	} {
		if got == nil || got.Error() != want {
			t.Errorf("%v, expected %s", got, want)
		}
	}
}

// TestLatin1: the signs that Latin-1 prints are those from the space to ~ and from the space that does not break to ÿ (ISO/IEC 8859-1); a text with any other
// goes as UTF-8.
func TestLatin1(t *testing.T) {
	for r := rune(0); r < 0x120; r++ {
		want := r >= 0x20 && r <= 0x7e || r >= 0xa0 && r <= 0xff
		if got := isLatin1("a" + string(r) + "z"); got != want {
			t.Errorf("%q: %v", r, got)
		}
	}
	if got := latin1("aÿé"); !slices.Equal(got, []byte{'a', 0xff, 0xe9}) {
		t.Errorf("%x", got)
	}
}

// TestWeightsOfBlurs: a blur's weights fall as those of a Gaussian do, make 1 together with those of the other side, and end within three sigmas; below a fifth of a
// pixel there is none.
func TestWeightsOfBlurs(t *testing.T) {
	for _, sigma := range []float64{0, 0.1, 0.1999} {
		if got := gaussian(sigma); !slices.Equal(got, []float32{1}) {
			t.Errorf("sigma %g: %v", sigma, got)
		}
	}
	for sigma, radius := range map[float64]int{0.2: 1, 1.0 / 3: 1, 0.34: 2, 1: 3, 2.5: 8} {
		got, sum := gaussian(sigma), 0.0
		for i, w := range got {
			if want := math.Exp(-float64(i*i) / 2 / (sigma * sigma)); math.Abs(float64(w/got[0])-want) > 1e-6 {
				t.Errorf("sigma %g: weight %d is %g of the middle one, expected %g", sigma, i, w/got[0], want)
			}
			sum += float64(w) * float64(min(i, 1)+1)
		}
		if len(got) != radius+1 || math.Abs(sum-1) > 1e-6 {
			t.Errorf("sigma %g: %d weights to one side, %g together", sigma, len(got)-1, sum)
		}
	}
}

// TestGridsOfBlurs: a blur of up to 8 pixels is made on the grid that was asked for; a greater one on one whose pixels are as many times as large as brings it to
// between 4 and 8. A quilt of 8 inches.
func TestGridsOfBlurs(t *testing.T) {
	top := plain(t, "8")
	for _, c := range []struct {
		pixels int
		sigma  measure.NM
		want   int
		left   float64
	}{{64, measure.Inch, 64, 8}, {64, measure.Inch / 2, 64, 4}, {64, measure.Inch + 10, 32, 4}, {640, measure.Inch, 32, 4}, {88, measure.Inch, 44, 5.5}, {96, measure.Inch, 32, 4}, {8, 100 * measure.Inch, 1, 12.5}} {
		got, left := blurredSize(top, Size{c.pixels, c.pixels}, c.sigma)
		if got != (Size{c.want, c.want}) || math.Abs(left-c.left) > 1e-5 {
			t.Errorf("%d pixels blurred by %g in: %v with %g, expected %d with %g", c.pixels, inches(c.sigma), got, left, c.want, c.left)
		}
	}
	for sigma, want := range map[float64]float64{0: 0, 0.2: 0, 0.5: math.Sqrt(1.0 / 6), 2: math.Sqrt(4 - 1.0/12)} {
		if got := belowPixels(sigma); math.Abs(got-want) > 1e-12 {
			t.Errorf("of %g pixels %g is left to do, expected %g", sigma, got, want)
		}
	}
}

// TestNumbersOfPalettes: a pixel's number is that of its cloth, or of the step between the two that cover most of it that comes nearest to their shares, those of one color taken together. Of
// two that cover alike the one that was found first counts. Three inks, of which the third looks like the first, seven steps between the first two, the first of which is 4.
func TestNumbersOfPalettes(t *testing.T) {
	k := &inks{table: &table{steps: 7, same: []int32{0, 1, 0, 3}, pair: map[[2]int32]int{{0, 1}: 4, {0, 3}: 11}}}
	for _, c := range []struct {
		list shares
		want uint8
	}{
		{shares{{0, whole}}, 0}, {shares{{1, whole}}, 1}, {shares{{2, whole}}, 0}, {shares{{3, 5}}, 3},
		{shares{{0, 80}, {1, 10}}, 4}, {shares{{0, 94}, {1, 6}}, 0}, {shares{{0, 93}, {1, 7}}, 4}, {shares{{0, 50}, {1, 50}}, 7}, {shares{{1, 50}, {0, 50}}, 7}, {shares{{0, 20}, {1, 80}}, 9}, {shares{{1, 80}, {0, 20}}, 9}, {shares{{1, 88}, {0, 12}}, 10},
		{shares{{2, 80}, {1, 10}}, 4}, {shares{{0, 30}, {1, 40}, {2, 30}}, 6}, {shares{{1, 40}, {0, 30}, {2, 30}}, 6}, {shares{{1, 30}, {0, 40}, {1, 30}}, 8},
		{shares{{0, 50}, {1, 25}, {3, 25}}, 6}, {shares{{0, 50}, {3, 25}, {1, 25}}, 13}, {shares{{0, 50}, {3, 24}, {1, 26}}, 6}, {shares{{3, 24}, {0, 50}, {1, 26}}, 6}, {shares{{1, 60}, {3, 40}}, 1}, {shares{{3, 60}, {1, 40}}, 3},
	} {
		if got := k.number(c.list); got != c.want {
			t.Errorf("%v: %d, expected %d", c.list, got, c.want)
		}
	}
}

// TestRoomOfPalettes: between two inks that meet there are 15 steps, or as many as a palette of 256 has room for, at least 7; else there is no palette. Stripes in a
// ring of n colors meet in n pairs, and the ground is an ink, too.
func TestRoomOfPalettes(t *testing.T) {
	for _, c := range []struct{ fabrics, steps int }{{1, 15}, {5, 15}, {15, 15}, {16, 14}, {31, 7}, {32, 0}} {
		top := &quilt.Top{}
		for f := range c.fabrics {
			top.Fabrics = append(top.Fabrics, quilt.Fabric{Colour: palettes.Colour{R: uint8(f), G: 9}})
			top.Faces = append(top.Faces, quilt.Face{Fabric: int32(f)})
			top.Seams = append(top.Seams, quilt.Seam{A: int32(f), B: int32((f + 1) % c.fabrics)})
		}
		p := &Print{Top: top, Background: palettes.Colour{B: 255}}
		k := p.newInks()
		switch {
		case k.table == nil:
			if c.steps > 0 {
				t.Errorf("%d fabrics: no palette", c.fabrics)
			}
		case k.table.steps != c.steps:
			t.Errorf("%d fabrics: %d steps, expected %d", c.fabrics, k.table.steps, c.steps)
		case len(k.table.colours) != len(k.table.alpha) || len(k.table.colours) != c.fabrics+1+c.steps*len(k.table.pair) || len(k.table.colours) > 256:
			t.Errorf("%d fabrics: %d colors, %d pairs", c.fabrics, len(k.table.colours), len(k.table.pair))
		}
	}
}

// TestTwinsFillPalettes: 255 fabrics of one color and the ground are the 256 colors that a palette has room for, and meet nowhere; one more is too many.
func TestTwinsFillPalettes(t *testing.T) {
	for fabrics, want := range map[int]bool{255: true, 256: false} {
		top := &quilt.Top{Fabrics: make([]quilt.Fabric, fabrics), Faces: []quilt.Face{{}, {Fabric: 1}}, Seams: []quilt.Seam{{B: 1}}}
		if table := (&Print{Top: top, Background: palettes.Colour{B: 9}}).newInks().table; (table != nil) != want || want && (len(table.colours) != 256 || len(table.pair) != 0) {
			t.Errorf("%d fabrics: %v", fabrics, table)
		}
	}
}

// TestClothIsFollowedAlongRows: a row of pixels of one cloth shows what is seen of it at each of them, also where a pixel falls on the very beginning of a repeat, whichever way the cloth
// is turned.
func TestClothIsFollowedAlongRows(t *testing.T) {
	s := &sheet{width: 4, height: 3}
	for i := range lanes(12) {
		s.light = append(s.light, 5000*i|(60000-4000*i)<<laneBits|(900*i)<<(2*laneBits))
	}
	for _, step := range [][2]float64{{1, 0}, {0.5, 0}, {0, 1}, {0.25, -0.5}, {-1, 0.5}, {-0.375, 3}, {5, 0.125}} {
		for _, d := range []depth{colour, opacity} {
			p := &Print{Top: plain(t, "4"), Size: Size{30, 1}, Quilt: image.Rect(0, 0, 30, 1)}
			g := newPainting(p)
			g.as(d)
			b, c := g.newBrush(), &shownCloth{sheet: s, x: 3.5, y: 2, xAcross: step[0], yAcross: step[1], xDown: 1, yDown: 1}
			line, want := make([]byte, 30*d.bytes()), []byte{}
			b.oneCloth(line, 2, 0, c)
			for x := range int32(30) {
				own := c.look(c.at(x+2, 0)).split()
				of := []byte{g.inks.encode[own[0]], g.inks.encode[own[1]], g.inks.encode[own[2]], 255}
				want = append(want, of[:d.bytes()]...)
			}
			if !slices.Equal(line, want) {
				t.Errorf("step %v, %d bytes: %v, expected %v", step, d.bytes(), line, want)
			}
		}
	}
}

// TestRowsBeginAfresh: what covers a pixel is told in the order in which its edges come, from whatever the row before went on with.
func TestRowsBeginAfresh(t *testing.T) {
	s := newSweep(2)
	var got []shares
	keep := func(_, _ int32, list shares) { got = append(got, slices.Clone(list)) }
	s.row([]cell{{x: 0, paint: 1, cover: part}}, 1, keep)
	s.row([]cell{{x: 0, paint: 0, cover: part / 2}, {x: 0, paint: 1, cover: part / 2}}, 1, keep)
	s.row(nil, 1, keep)
	for i, want := range []shares{{{1, whole}}, {{0, whole / 2}, {1, whole / 2}}, {}} {
		if len(got) != 3 || !slices.Equal(got[i], want) {
			t.Errorf("row %d: %v, expected %v", i, got, want)
		}
	}
}

// TestHalfCoveredPlaces: half-shut eyes see a pixel that cloth covers by half or more, and count it; one that it covers by less is empty.
func TestHalfCoveredPlaces(t *testing.T) {
	p := &Plane{Size{4, 1}, []float32{1, 1, 0, 0}, []float32{0.5, 0.49, 1, 0.5}}
	got := posterise(p, Squint{})
	if !slices.Equal(got.Picture.Pix, []uint8{2, 0, 1, 1}) || len(got.Steps) != 2 || got.Steps[0].Share != 2.0/3 {
		t.Errorf("%v, %+v", got.Picture.Pix, got.Steps)
	}
}

// TestPicturesInBands: a picture that is made in several bands is the one that a file of it holds, however many share the work, where the last band is a part of one as well.
func TestPicturesInBands(t *testing.T) {
	top := lay.Top(t, webs(2, 2))
	for _, s := range []Size{{5000, 16}, {5000, 37}, {5000, 48}, {700, 200}} {
		p := printed(top, s.Width, s.Height)
		p.TrueColour = true
		want, _ := pngOf(t, p)
		for _, n := range []int{1, 3} {
			old := runtime.GOMAXPROCS(n)
			got := p.Picture()
			runtime.GOMAXPROCS(old)
			if !slices.Equal(got.Pix, want.(*image.RGBA).Pix) {
				t.Errorf("%v with %d processors: another picture", s, n)
			}
		}
	}
}

// TestClothCoversInPart: a pixel that a print covers by two thirds is as opaque as that where there is no ground, and a mixture with the ground where there is one; beside it all is cloth, and nothing. Three places of
// which the last is empty, on 40 pixels.
func TestClothCoversInPart(t *testing.T) {
	top := lay.Top(t, "side 3\nfabric deck stripes #1f3350 3/4 #1f3350 1/2\nfabric rust #b5552b\nblock D plain piece deck\nblock R plain piece rust\ngrid\n D D .\n R R R\n")
	p := printed(top, 40, 26)
	p.Tiles, p.Places = tilesOf(top), top.ClothPlaces()
	m, _ := pngOf(t, p)
	navy, white := palettes.Colour{R: 0x1f, G: 0x33, B: 0x50}.Linear(), palettes.Linear{R: 1, G: 1, B: 1}
	want := palettes.Linear{R: navy.R*2/3 + white.R/3, G: navy.G*2/3 + white.G/3, B: navy.B*2/3 + white.B/3}.Colour()
	if r, g, b, _ := m.At(26, 5).RGBA(); math.Abs(float64(r>>8)-float64(want.R))+math.Abs(float64(g>>8)-float64(want.G))+math.Abs(float64(b>>8)-float64(want.B)) > 6 {
		t.Errorf("half of the way it is %d %d %d, expected %s", r>>8, g>>8, b>>8, want.Hex())
	}
	p.Clear = true
	m, _ = pngOf(t, p)
	for x, want := range map[int]float64{25: 255, 26: 170, 27: 0} {
		if _, _, _, a := m.At(x, 5).RGBA(); math.Abs(float64(a>>8)-want) > 1 {
			t.Errorf("pixel %d is opaque by %d of 255, expected %g", x, a>>8, want)
		}
	}
}

// TestWhatFilesHold: a file says which colors of its palette are see-through where one is, and nothing of that where none is.
func TestWhatFilesHold(t *testing.T) {
	for _, clear := range []bool{false, true} {
		p := printed(lay.Top(t, holes), 30, 20)
		p.Clear = clear
		if _, file := pngOf(t, p); bytes.Contains(file, []byte("tRNS")) != clear || !bytes.Contains(file, []byte("PLTE")) {
			t.Errorf("see-through %v: %s", clear, chunksOf(file))
		}
	}
	one, photo := shownCloth{sheet: &sheet{width: 5, height: 1}}, shownCloth{sheet: &sheet{width: 2, height: 2}}
	stripes := shownCloth{sheet: &sheet{width: 1, height: 5}}
	for i, c := range []struct {
		k    *cloths
		want bool
	}{{nil, false}, {&cloths{}, false}, {&cloths{faces: []shownCloth{{}, one, stripes}}, false}, {&cloths{faces: []shownCloth{{}, one, photo}}, true}} {
		if c.k.photos() != c.want {
			t.Errorf("cloths %d are photos: %v", i, !c.want)
		}
	}
}

// TestFaceAtMiddles: a pixel whose middle lies on the line between two faces is the one's to the right, and no pixel is nobody's.
func TestFaceAtMiddles(t *testing.T) {
	top := lay.Top(t, "side 6\nfabric a #204060\nfabric b #e0c0a0\nblock P plain piece a\nblock Q plain piece b\ngrid\n P Q\n")
	for width, want := range map[int][]int32{2: {0, 1}, 3: {0, 1, 1}, 4: {0, 0, 1, 1}, 5: {0, 0, 1, 1, 1}} {
		if got := FaceAt(top, Size{Width: width, Height: 1}); !slices.Equal(got, want) {
			t.Errorf("%d pixels across: %v, want %v", width, got, want)
		}
	}
}

// TestImagesInPlaceOfCloth: an image stands over the quilt's place from its first row to its last, each of its pixels one flat square.
func TestImagesInPlaceOfCloth(t *testing.T) {
	m := image.NewNRGBA(image.Rect(0, 0, 2, 3))
	for i := range 6 {
		m.SetNRGBA(i%2, i/2, color.NRGBA{uint8(40 * i), uint8(250 - 30*i), 7, 255})
	}
	p := printed(lay.Top(t, webs(2, 2)), 8, 9)
	p.Image = m
	got, _ := pngOf(t, p)
	for y := range 9 {
		for x := range 8 {
			if a, b := color.NRGBAModel.Convert(got.At(x, y)), m.At(x/4, y/3); a != b {
				t.Fatalf("%d, %d is %v, want %v", x, y, a, b)
			}
		}
	}
}
