package palettes

import (
	"bytes"
	"cmp"
	"compress/zlib"
	"context"
	"encoding/binary"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/stop"
)

// light is the light of an sRGB byte and back (IEC 61966-2-1), worked out by itself.
func light(b uint8) float64 {
	if v := float64(b) / 255; v > 0.04045 {
		return math.Pow((v+0.055)/1.055, 2.4)
	}
	return float64(b) / 255 / 12.92
}

func byteOfLight(v float64) float64 {
	if v > 0.0031308 {
		return 255 * (1.055*math.Pow(v, 1/2.4) - 0.055)
	}
	return 255 * 12.92 * v
}

// mottled is a picture in which no two places are alike, its corner somewhere.
func mottled(width, height int) *image.RGBA {
	m, rng := image.NewRGBA(image.Rect(3, 5, 3+width, 5+height)), rand.New(rand.NewPCG(uint64(width), uint64(height)))
	for i := range m.Pix {
		m.Pix[i] = uint8(rng.IntN(256)) | uint8(-(i % 4 / 3)) // opaque
	}
	return m
}

// TestJoinedSoftlyIsAMixture: each place is a mixture, in linear light, of itself and of what lies a whole repeat to the right and below;
// that has the less part the farther from the edge, and none beyond the strip that is shown twice. What is too small to overlap stays.
func TestJoinedSoftlyIsAMixture(t *testing.T) {
	for _, size := range []image.Point{{40, 20}, {21, 33}, {1, 1}, {3, 2}, {4, 5}, {2, 30}} {
		m := mottled(size.X, size.Y)
		j := JoinedSoftly(m)
		width, height := max(1, int(math.Round(0.9*float64(size.X)))), max(1, int(math.Round(0.9*float64(size.Y))))
		if j.Bounds() != image.Rect(0, 0, width, height) {
			t.Fatalf("%v joined is %v", size, j.Bounds())
		}
		own := func(at, twice int) float64 { // the part that a place itself has
			if at >= twice {
				return 1
			}
			return (float64(at) + 0.5) / float64(twice)
		}
		for y := range height {
			for x := range width {
				across, down := own(x, size.X-width), own(y, size.Y-height)
				channel := func(of func(color.RGBA) uint8) float64 {
					at := func(x, y int) float64 { return light(of(m.RGBAAt(3+x, 5+y))) }
					sum := across * down * at(x, y)
					if across < 1 {
						sum += (1 - across) * down * at(x+width, y)
					}
					if down < 1 {
						sum += across * (1 - down) * at(x, y+height)
					}
					if across < 1 && down < 1 {
						sum += (1 - across) * (1 - down) * at(x+width, y+height)
					}
					return byteOfLight(sum)
				}
				got := j.RGBAAt(x, y)
				for i, want := range [3]float64{channel(func(c color.RGBA) uint8 { return c.R }), channel(func(c color.RGBA) uint8 { return c.G }), channel(func(c color.RGBA) uint8 { return c.B })} {
					if off := float64([3]uint8{got.R, got.G, got.B}[i]) - want; math.Abs(off) > 0.8 || got.A != 255 {
						t.Fatalf("%v: %v at %d, %d, expected %.1f of channel %d", size, got, x, y, want, i)
					}
				}
			}
		}
	}
}

// TestSquaresAreMeans: squares at the right and the lower edge are of what is there.
func TestSquaresAreMeans(t *testing.T) {
	m := mottled(11, 7)
	for _, side := range []int{1, 3, 4, 7, 20} {
		got, n := Squares(m, side), 0
		for y := 5; y < 12; y += side {
			for x := 3; x < 14; x += side {
				var sum, count float64
				for v := y; v < min(y+side, 12); v++ {
					for u := x; u < min(x+side, 14); u++ {
						sum, count = sum+light(m.RGBAAt(u, v).G), count+1
					}
				}
				if n >= len(got) || math.Abs(got[n].G-sum/count) > 1e-9 {
					t.Fatalf("squares of %d: number %d of %d is not the mean %g", side, n, len(got), sum/count)
				}
				n++
			}
		}
		if n != len(got) {
			t.Errorf("squares of %d: %d, expected %d", side, len(got), n)
		}
	}
}

// TestStripesTellWhatTheirClothWould: what stripes tell is what a cloth of a thousand threads in those colors tells.
func TestStripesTellWhatTheirClothWould(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 7))
	for range 60 {
		var list []Part
		var threads []Linear
		left := 1000
		for left > 0 {
			n := min(left, 1+rng.IntN(400))
			c := Colour{uint8(rng.IntN(4) * 85), uint8(rng.IntN(4) * 85), uint8(rng.IntN(256))}
			list, left = append(list, Part{c, float64(n) / 1000}), left-n
			threads = append(threads, slices.Repeat([]Linear{c.Linear()}, n)...)
		}
		got, mean, values := StripesSample(list), meanOf(threads), sortedLightness(threads)
		squares, middle := 0.0, 0.0
		for _, v := range values {
			middle += v / 1000
		}
		for _, v := range values {
			squares += (v - middle) * (v - middle) / 1000
		}
		if got.Colour != mean.Colour() || math.Abs(got.Lightness-LightnessOf(mean.Luminance())) > 1e-9 || math.Abs(got.Spread-math.Sqrt(squares)) > 1e-6 {
			t.Errorf("%v: %s, L* %g, spread %g, expected %s, %g, %g", list, got.Colour.Hex(), got.Lightness, got.Spread, mean.Colour().Hex(), LightnessOf(mean.Luminance()), math.Sqrt(squares))
		}
		if !slices.Contains(values[45:55], got.Darkest) || !slices.Contains(values[945:955], got.Lightest) {
			t.Errorf("%v: from L* %g to %g, expected %g to %g", list, got.Darkest, got.Lightest, values[50], values[950])
		}
		whole := map[Colour]float64{}
		for _, p := range list {
			whole[p.Colour] += p.Share
		}
		if len(got.Colours) != min(len(whole), 4) || !slices.IsSortedFunc(got.Colours, func(a, b Part) int { return cmp.Compare(b.Share, a.Share) }) {
			t.Errorf("%v: the colors are %v", list, got.Colours)
		}
		for _, p := range got.Colours {
			if math.Abs(p.Share-whole[p.Colour]) > 1e-9 {
				t.Errorf("%s takes %g of the stripes, expected %g", p.Colour.Hex(), p.Share, whole[p.Colour])
			}
		}
	}
	if got := StripesSample(nil); got.Colours != nil || got.Spread != 0 {
		t.Errorf("no stripes tell %v", got)
	}
}

// TestStripesPictureMixesLight: a pixel is what its stripes have of it, in linear light, whichever way the stripes run.
func TestStripesPictureMixesLight(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 8))
	for range 40 {
		var list []Part
		left := 1.0
		for range rng.IntN(6) {
			share := left * rng.Float64()
			list, left = append(list, Part{Colour{G: uint8(rng.IntN(256))}, share}), left-share
		}
		list = append(list, Part{Colour{G: 200}, left})
		const pixels = 12
		across, down := StripesPicture(list, pixels, false), StripesPicture(list, pixels, true)
		if across.Bounds() != image.Rect(0, 0, pixels, 1) || down.Bounds() != image.Rect(0, 0, 1, pixels) {
			t.Fatalf("%v and %v", across.Bounds(), down.Bounds())
		}
		for i := range pixels {
			want, begin := 0.0, 0.0
			for _, p := range list {
				if covers := min(float64(i+1)/pixels, begin+p.Share) - max(float64(i)/pixels, begin); covers > 0 {
					want += covers * pixels * light(p.Colour.G)
				}
				begin += p.Share
			}
			if got := across.RGBAAt(i, 0); math.Abs(float64(got.G)-byteOfLight(want)) > 0.6 || got.A != 255 || got != down.RGBAAt(0, i) {
				t.Fatalf("%v: pixel %d is %v and %v, expected %.1f", list, i, got, down.RGBAAt(0, i), byteOfLight(want))
			}
		}
	}
}

// asPNG is a picture as a file.
func asPNG(t *testing.T, m image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, m); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// TestTheInnerFourFifths: of a photo the outer tenth on each side is not looked at, and all within it is.
func TestTheInnerFourFifths(t *testing.T) {
	for _, in := range []struct {
		x, y int
		seen bool
	}{{9, 50, false}, {90, 50, false}, {50, 9, false}, {50, 90, false}, {10, 50, true}, {89, 50, true}, {50, 10, true}, {50, 89, true}} {
		m := image.NewRGBA(image.Rect(20, 30, 120, 130))
		for i := range m.Pix {
			m.Pix[i] = 255
		}
		m.SetRGBA(20+in.x, 30+in.y, color.RGBA{A: 255})
		seen := slices.Contains(sampled(nil, m), Linear{})
		if seen != in.seen {
			t.Errorf("the point at %d, %d of 100 by 100 is looked at: %v", in.x, in.y, seen)
		}
	}
	if n := len(sampled(nil, image.NewUniform(color.White))); n > 160_000 {
		t.Errorf("%d points of a large photo are looked at", n)
	}
}

// TestTilesAreThePhoto: a small photo's tile is the photo, not turned, white where it is see-through; no more is asked of a picture's
// file than that it has no notes.
func TestTilesAreThePhoto(t *testing.T) {
	m := image.NewNRGBA(image.Rect(0, 0, 30, 20))
	for i := range 600 {
		m.SetNRGBA(i%30, i/30, color.NRGBA{uint8(40 + 5*(i%30)), uint8(40 + 9*(i/30)), 90, 255})
	}
	m.SetNRGBA(4, 7, color.NRGBA{10, 10, 10, 254})
	sample, err := ReadSwatch(nil, asPNG(t, m))
	if err != nil {
		t.Fatal(err)
	}
	for i := range 600 {
		want := color.RGBA{uint8(40 + 5*(i%30)), uint8(40 + 9*(i/30)), 90, 255}
		if i == 7*30+4 {
			want = color.RGBA{255, 255, 255, 255}
		}
		if got := sample.Tile.RGBAAt(i%30, i/30); got != want {
			t.Fatalf("the tile is %v at %d, %d, expected %v", got, i%30, i/30, want)
		}
	}
	for _, size := range []image.Point{{1000, 10}, {1001, 10}, {3000, 1500}, {10, 2500}, {3000, 1}, {1, 3000}} {
		b := tile(nil, image.NewYCbCr(image.Rect(0, 0, size.X, size.Y), image.YCbCrSubsampleRatio420)).Bounds()
		scale := max(1, float64(max(size.X, size.Y))/1000)
		if b.Dx() != max(1, int(float64(size.X)/scale)) || b.Dy() != max(1, int(float64(size.Y)/scale)) || max(b.Dx(), b.Dy()) > 1000 {
			t.Errorf("a photo of %v has a tile of %v", size, b.Size())
		}
	}
}

// TestWorkOnTilesEnds: whoever no longer wants a photo does not wait for its tile.
func TestWorkOnTilesEnds(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	made := false
	err := stop.Do(ctx, func(sign *stop.Sign) {
		cancel()
		tile(sign, image.NewRGBA(image.Rect(0, 0, 10, 10)))
		made = true
	})
	if err == nil || made {
		t.Errorf("a tile was made after its work had ended: %v", err)
	}
}

// TestGlareOfAColor: points with a channel at its limit are glare, whatever their value, where they are a tenth of the photo or less.
func TestGlareOfAColor(t *testing.T) {
	grey, red := Colour{127, 127, 127}.Linear(), Colour{250, 20, 20}.Linear() // of one value, near L* 53
	for few, kept := range map[int]bool{1: false, 10: false, 11: true, 50: true} {
		points := append(slices.Repeat([]Linear{grey}, 100-few), slices.Repeat([]Linear{red}, few)...)
		left := clothOnly(points)
		if got := slices.Contains(left, red); got != kept || !slices.Contains(left, grey) {
			t.Errorf("%d red points of 100 are kept: %v", few, got)
		}
	}
	nearly := Colour{249, 20, 20}.Linear()
	if left := clothOnly(append(slices.Repeat([]Linear{grey}, 95), slices.Repeat([]Linear{nearly}, 5)...)); !slices.Contains(left, nearly) {
		t.Error("what is a step below the limit is taken for glare")
	}
}

// TestCutOffNotes: notes of how a camera was held that end early or point elsewhere say nothing, and never more than is there.
func TestCutOffNotes(t *testing.T) {
	for _, order := range []binary.AppendByteOrder{binary.BigEndian, binary.LittleEndian} {
		for held := range 12 {
			want := held
			if held < 1 || held > 8 {
				want = 1
			}
			notes := heldNotes(order, uint16(held))
			whole := len(notes) - 4 // what follows the entries may be missing
			for n := range len(notes) + 1 {
				if got := heldAs(notes[:n]); n >= whole && got != want || n < whole && got != 1 {
					t.Errorf("%d of %d bytes of notes that say %d are read as %d", n, len(notes), held, got)
				}
			}
			for _, at := range []uint32{uint32(len(notes)) - 2, uint32(len(notes)) - 1, uint32(len(notes)), uint32(len(notes)) + 1, uint32(len(notes)) + 2, math.MaxUint32} {
				moved := slices.Clone(notes)
				copy(moved[4:], order.AppendUint32(nil, at))
				if got := heldAs(moved); got != 1 {
					t.Errorf("notes that point to byte %d of %d are read as %d", at, len(notes), got)
				}
			}
		}
	}
	second := heldNotes(binary.BigEndian, 6) // behind another entry
	binary.BigEndian.PutUint16(second[8:], 2)
	second = slices.Concat(second[:10], []byte{1, 0, 0, 3, 0, 0, 0, 1, 0, 8, 0, 0}, second[10:])
	if got := heldAs(second); got != 6 {
		t.Errorf("an orientation behind another entry is read as %d", got)
	}
}

// TestCurvesAreInverse: the curve of sRGB and back is where one began, up to the bend and beyond (IEC 61966-2-1).
func TestCurvesAreInverse(t *testing.T) {
	for i := range 10_001 {
		v := float64(i) / 10_000
		if back := curved(uncurved(v)); math.Abs(back-v) > 1e-6 {
			t.Fatalf("%g comes back as %g", v, back)
		}
		if math.Abs(uncurved(v)-light(uint8(math.Round(v*255)))) > 0.005 {
			t.Fatalf("%g is %g of the light", v, uncurved(v))
		}
	}
	if curved(-0.2) != 0 || curved(1.3) != 1 {
		t.Errorf("beyond the ends it is %g and %g", curved(-0.2), curved(1.3))
	}
}

// TestMeanDistance: the mean CIEDE2000 of points from the nearest of some colors.
func TestMeanDistance(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 9))
	some := func(n int) (list []Colour) {
		for range n {
			list = append(list, Colour{uint8(rng.IntN(256)), uint8(rng.IntN(256)), uint8(rng.IntN(256))})
		}
		return list
	}
	for n := 1; n < 5; n++ {
		colours, sum := some(n), 0.0
		var list []Part
		var points []Linear
		for _, c := range colours {
			list = append(list, Part{Colour: c})
		}
		for _, p := range some(3) {
			nearest := math.Inf(1)
			for _, c := range colours {
				nearest = min(nearest, Difference(p, c))
			}
			points, sum = append(points, p.Linear()), sum+nearest
		}
		if got := meanDistance(points, list); math.Abs(got-sum/3) > 1e-9 {
			t.Errorf("%d colors are %g from their points, expected %g", n, got, sum/3)
		}
	}
}

// TestDamagedPhotos: what breaks behind a stranger's file is a fault of the photo; work that ended goes on ending.
func TestDamagedPhotos(t *testing.T) {
	read := func(broke any) (err error) {
		defer damaged(&err)
		if broke != nil {
			panic(broke)
		}
		return nil
	}
	if err := read(nil); err != nil {
		t.Error(err)
	}
	if err := read("index out of range"); err == nil || err.Error() != "the photo cannot be read: it is damaged" {
		t.Errorf("a photo that breaks its reader: %v", err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	err := stop.Do(ctx, func(sign *stop.Sign) {
		cancel()
		_ = func() (err error) {
			defer damaged(&err)
			sign.Look()
			return nil
		}()
		t.Error("work went on after its end")
	})
	if err == nil {
		t.Error("the end of the work is taken for a damaged photo")
	}
}

// TestColorsOfPaletteFromPhoto: 2 to 24 colors are asked for.
func TestColorsOfPaletteFromPhoto(t *testing.T) {
	file := asPNG(t, mottled(20, 20))
	for most, good := range map[int]bool{1: false, 2: true, 24: true, 25: false} {
		if p, err := ReadSwatches(file, "p", most); (err == nil) != good || len(p.Fabrics) > most {
			t.Errorf("%d colors: %d, %v", most, len(p.Fabrics), err)
		}
	}
}

// TestPartsHaveSettled: each color of a print is the mean of the points that lie nearest to it, in OKLab, and has their share.
func TestPartsHaveSettled(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 22))
	for range 6 {
		var points []Linear
		for range 1500 {
			v := rng.Float64() * rng.Float64()
			points = append(points, Linear{v, v * rng.Float64(), v * rng.Float64()})
		}
		list := parts(nil, points, 4)
		sums, counts := make([]Linear, len(list)), make([]float64, len(list))
		for _, p := range points {
			best, least := 0, math.Inf(1)
			for i, part := range list {
				a, b := p.okLab(), part.Colour.okLab()
				if d := math.Hypot(math.Hypot(a.L-b.L, a.A-b.A), a.B-b.B); d < least {
					best, least = i, d
				}
			}
			counts[best]++
			sums[best] = Linear{sums[best].R + p.R, sums[best].G + p.G, sums[best].B + p.B}
		}
		for i, part := range list {
			mean := Linear{sums[i].R / counts[i], sums[i].G / counts[i], sums[i].B / counts[i]}
			// Means are of light here and of OKLab where points are sorted, which are a little apart.
			if off := Difference(mean.Colour(), part.Colour); off > 4 || math.Abs(counts[i]/1500-part.Share) > 0.06 {
				t.Errorf("%s takes %.3f; the points nearest to it are %s and %.3f", part.Colour.Hex(), part.Share, mean.Colour().Hex(), counts[i]/1500)
			}
		}
	}
	if got := apartSquared(OKLab{0.5, 0.1, 0.2}, OKLab{0.4, -0.1, 0.5}); math.Abs(got-0.14) > 1e-12 {
		t.Errorf("0.01, 0.04 and 0.09 come to %g", got)
	}
}

// TestLimitsOfPhotos from both sides: bytes, pixels and colors of one print.
func TestLimitsOfPhotos(t *testing.T) {
	if _, err := checkPhoto(make([]byte, MaxPhotoBytes+1)); err == nil || err.Error() != "the photo has 65 MB, expected up to 64" {
		t.Errorf("a byte too many: %v", err)
	}
	if _, err := checkPhoto(make([]byte, MaxPhotoBytes)); err == nil || strings.Contains(err.Error(), "MB") {
		t.Errorf("just as many bytes: %v", err)
	}
	if n, err := checkPhoto(header(8000, 5000)); err != nil || n != 40_000_000 {
		t.Errorf("just as many pixels: %d, %v", n, err)
	}
	if _, err := checkPhoto(header(8001, 5000)); err == nil {
		t.Error("a column too many is taken")
	}
	for n := 1; n <= 6; n++ {
		m := image.NewRGBA(image.Rect(0, 0, 60, 60))
		for i := range 3600 {
			c := [6]color.RGBA{{200, 30, 30, 255}, {30, 180, 40, 255}, {30, 60, 200, 255}, {230, 220, 60, 255}, {20, 20, 20, 255}, {220, 220, 225, 255}}[i*7%n]
			m.SetRGBA(i%60, i/60, c)
		}
		sample, err := ReadSwatch(nil, asPNG(t, m))
		if err != nil || len(sample.Colours) != min(n, 4) {
			t.Errorf("a print of %d colors has %v (%v)", n, sample.Colours, err)
		}
	}
}

// TestProfilesThatUnpack: a profile of up to 4 MB is read.
func TestProfilesThatUnpack(t *testing.T) {
	for size, good := range map[int]bool{4 << 20: true, 4<<20 + 1: false} {
		var packed bytes.Buffer
		packed.WriteString("p\x00\x00")
		w := zlib.NewWriter(&packed)
		_, _ = w.Write(make([]byte, size)) // into memory
		_ = w.Close()
		if unpacks(packed.Bytes()) != good {
			t.Errorf("a profile of %d bytes is read: %v", size, !good)
		}
	}
	var packed bytes.Buffer
	w := zlib.NewWriter(&packed)
	_ = w.Close()
	for name, good := range map[string]bool{"": false, "p": true, strings.Repeat("p", 79): true, strings.Repeat("p", 80): false} {
		if unpacks([]byte(name+"\x00\x00"+packed.String())) != good || unpacks([]byte(name+"\x00\x01"+packed.String())) || unpacks([]byte(name+"\x00")) {
			t.Errorf("a profile with a name of %d characters is read: %v", len(name), !good)
		}
	}
}

// TestSegments: of a JPEG file, those up to its end are found, and neither what fills up, nor marks of a restart, nor what is
// stuffed with a nought is one (ITU-T T.81, annex B).
func TestSegments(t *testing.T) {
	file := "\xff\xd8" + "\xff\xdb\x00\x04ab" + "x\xff\x00"
	for m := byte(0xd0); m < 0xd8; m++ {
		file += "y\xff" + string([]byte{m}) + "\x00\x05"
	}
	file += "\xff\xff\xc2\x00\x03c" + "\xff\xd9" + "\xff\xc4\x00\x02"
	var got []string
	for marker, data := range segments([]byte(file)) {
		got = append(got, fmt.Sprintf("%x %s", marker, data))
	}
	if want := []string{"db ab", "c2 c"}; !slices.Equal(got, want) {
		t.Errorf("%q, expected %q", got, want)
	}
}

// TestFirstPart: the upper left part of a picture, never nothing and never more than there is.
func TestFirstPart(t *testing.T) {
	m := mottled(20, 10)
	for _, c := range []struct {
		across, down  float64
		width, height int
	}{{0.5, 0.3, 10, 3}, {0.01, 0, 1, 1}, {1, 1, 20, 10}, {1.5, 3, 20, 10}, {0.26, 0.16, 5, 2}} {
		p := FirstPart(m, c.across, c.down)
		if p.Bounds() != image.Rect(3, 5, 3+c.width, 5+c.height) || p.RGBAAt(3, 5) != m.RGBAAt(3, 5) {
			t.Errorf("%g by %g of it is %v, expected %d by %d", c.across, c.down, p.Bounds(), c.width, c.height)
		}
	}
}

// TestFewFarPointsAreNoCloth: of a cloth of one value, points that are far lighter or far darker are left out where they are fewer than 5 of 100,
// and stay where they are 5 or more; those 8 L* away or nearer always stay.
func TestFewFarPointsAreNoCloth(t *testing.T) {
	gray := func(l float64) Linear { y := LuminanceOf(l); return Linear{y, y, y} }
	for _, far := range []float64{20, 31, 42.1, 43, 50, 57, 57.9, 69, 80} {
		for _, few := range []int{1, 4, 5, 6, 20} {
			points := slices.Repeat([]Linear{gray(50)}, 100-few)
			points = append(points, slices.Repeat([]Linear{gray(far)}, few)...)
			want := 100
			if math.Abs(far-50) > 8 && few < 5 {
				want = 100 - few
			}
			if got := len(clothOnly(points)); got != want {
				t.Errorf("%d of 100 points with L* %.1f beside 50: %d are cloth, expected %d", few, far, got, want)
			}
		}
	}
}

// TestGamutHasItsSlack: each channel may leave 0 to 1 by the slack, and by no more.
func TestGamutHasItsSlack(t *testing.T) {
	for channel := range 3 {
		for _, c := range []struct {
			v    float64
			want bool
		}{{-gamutSlack, true}, {-gamutSlack * 1.001, false}, {1 + gamutSlack, true}, {1 + gamutSlack*1.001, false}, {0.5, true}} {
			v := [3]float64{0.5, 0.5, 0.5}
			v[channel] = c.v
			if got := (Linear{v[0], v[1], v[2]}).inGamut(); got != c.want {
				t.Errorf("%v is inside: %v", v, got)
			}
		}
	}
}
