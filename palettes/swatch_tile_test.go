package palettes

import (
	"image"
	"image/color"
	"math"
	"testing"
)

// TestProfileOfATile: a profile that is known at the corners of small cubes alone gives what it gives color by color, but for 3 of 255
// steps; at the edge of sRGB, where colors are cut off, but for 13.
func TestProfileOfATile(t *testing.T) {
	v := view{image.NewRGBA(image.Rect(0, 0, 1, 1)), 1, fromDisplayP3}
	quick := newProfileCube(v.colour)
	worst, edge := 0, 0
	for r := 0; r < 256; r += 5 {
		for g := 0; g < 256; g += 5 {
			for b := 0; b < 256; b += 5 {
				c := color.RGBA{uint8(r), uint8(g), uint8(b), 255}
				x, y, z, _ := v.colour(c).RGBA()
				got, off := quick.at(c), 0
				cut := false
				for _, pair := range [3][2]uint32{{x >> 8, uint32(got.R)}, {y >> 8, uint32(got.G)}, {z >> 8, uint32(got.B)}} {
					off = max(off, int(math.Abs(float64(pair[0])-float64(pair[1]))))
					cut = cut || pair[0] < 24 || pair[0] > 250
				}
				if cut {
					edge = max(edge, off)
				} else {
					worst = max(worst, off)
				}
			}
		}
	}
	if t.Logf("%d, at the edge %d", worst, edge); worst > 3 || edge > 13 {
		t.Errorf("colors are off by %d, at the edge by %d", worst, edge)
	}
}

// TestTileIsUpright: a tile is the whole photo as it is seen, however its camera was held.
func TestTileIsUpright(t *testing.T) {
	m := image.NewRGBA(image.Rect(0, 0, 40, 20))
	for i := range 800 {
		m.SetRGBA(i%40, i/40, color.RGBA{uint8(6 * (i % 40)), uint8(12 * (i / 40)), 90, 255})
	}
	for held := 1; held <= 8; held++ {
		v := view{m, held, nil}
		if shown, err := seen(m, camera{held: held}); err != nil || shown.Bounds() != v.Bounds() || shown.At(2, 7) != v.At(2, 7) {
			t.Errorf("held %d: it is not shown upright, %v", held, err)
		}
		got := tile(nil, v)
		if got.Bounds() != v.Bounds() {
			t.Fatalf("held %d: %v", held, got.Bounds())
		}
		for y := range got.Rect.Dy() {
			for x := range got.Rect.Dx() {
				if r, g, b, _ := v.At(x, y).RGBA(); got.RGBAAt(x, y) != (color.RGBA{uint8(r >> 8), uint8(g >> 8), uint8(b >> 8), 255}) {
					t.Fatalf("held %d: %v at %d, %d", held, got.RGBAAt(x, y), x, y)
				}
			}
		}
	}
}

// TestTileHasItsProfile: a tile's colors are those of the photo, brought to sRGB.
func TestTileHasItsProfile(t *testing.T) {
	m := image.NewRGBA(image.Rect(0, 0, 12, 12))
	for i := range 144 {
		m.SetRGBA(i%12, i/12, color.RGBA{uint8(90 + 8*(i%12)), uint8(120 + 5*(i/12)), 130, 255})
	}
	v, moved := view{m, 1, fromDisplayP3}, 0
	got := tile(nil, v)
	for i := range 144 {
		x, y := i%12, i/12
		r, g, b, _ := v.At(x, y).RGBA()
		for n, want := range [3]uint32{r >> 8, g >> 8, b >> 8} {
			c := [3]uint8{got.RGBAAt(x, y).R, got.RGBAAt(x, y).G, got.RGBAAt(x, y).B}[n]
			if off := int(c) - int(want); off < -3 || off > 3 {
				t.Fatalf("%v at %d, %d, expected %d of channel %d", got.RGBAAt(x, y), x, y, want, n)
			}
		}
		moved = max(moved, int(got.RGBAAt(x, y).R)-int(m.RGBAAt(x, y).R))
	}
	if moved < 4 {
		t.Errorf("reds are moved by %d at the most", moved)
	}
}

// TestJoinedSoftly: what is laid over and over has no step where it meets itself that is larger than those within it, and its middle is
// the photo's own, unturned.
func TestJoinedSoftly(t *testing.T) {
	m := image.NewRGBA(image.Rect(0, 0, 200, 100))
	for i := range 20_000 {
		x, y := i%200, i/200
		m.SetRGBA(x, y, color.RGBA{uint8(x), uint8(2 * y), uint8(x/2 + y), 255})
	}
	step := func(p *image.RGBA, across, down int) (most int) { // from the last column or row to the first one
		b := p.Bounds()
		for i := range max(b.Dx(), b.Dy()) {
			a, c := p.RGBAAt((b.Dx()-1)*across+i*down, (b.Dy()-1)*down+i*across), p.RGBAAt(i*down, i*across)
			if a.A > 0 && c.A > 0 {
				most = max(most, int(math.Abs(float64(a.R)-float64(c.R))), int(math.Abs(float64(a.G)-float64(c.G))))
			}
		}
		return most
	}
	j := JoinedSoftly(m)
	if j.Bounds().Dx() != 180 || j.Bounds().Dy() != 90 {
		t.Fatalf("%v", j.Bounds())
	}
	if a, b := step(j, 1, 0), step(j, 0, 1); a > 25 || b > 25 {
		t.Errorf("steps of %d and %d where it meets itself", a, b)
	}
	if a := step(m, 1, 0); a < 150 {
		t.Errorf("a photo that does not join on to itself passes: %d", a)
	}
	if j.RGBAAt(100, 50) != m.RGBAAt(100, 50) || j.RGBAAt(179, 89) != m.RGBAAt(179, 89) {
		t.Error("its middle is another")
	}
}

// TestStripesPicture: each stripe has its share of the pixels, and one that two share is a mixture in linear light.
func TestStripesPicture(t *testing.T) {
	black, white := Colour{}, Colour{R: 255, G: 255, B: 255}
	p := StripesPicture([]Part{{black, 0.35}, {white, 0.65}}, 10, true)
	if p.Bounds() != image.Rect(0, 0, 1, 10) {
		t.Fatalf("%v", p.Bounds())
	}
	for y := range 10 {
		want := uint8(0)
		switch {
		case y == 3:
			want = 188 // half of the light (IEC 61966-2-1)
		case y > 3:
			want = 255
		}
		if c := p.RGBAAt(0, y); c.R != want || c.A != 255 {
			t.Errorf("pixel %d is %v, not %d", y, c, want)
		}
	}
}
