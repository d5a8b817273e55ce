package palettes

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// blots is an invented print of soft blots in colors, laid over and over, made by seed; where mirrored its blots stand in pairs on both
// sides of a line, as a part of its width.
func blots(seed uint64, size image.Point, mirrored bool, line float64) *image.RGBA {
	r := rand.New(rand.NewPCG(seed, 0xb107))
	type blot struct{ x, y, wide, l, g, b float64 }
	var list []blot
	for range 24 {
		b := blot{r.Float64(), r.Float64(), 0.02 + 0.06*r.Float64(), 200*r.Float64() - 100, 160*r.Float64() - 80, 160*r.Float64() - 80}
		list = append(list, b)
		if mirrored {
			b.x = math.Mod(2*line-b.x+2, 1)
			list = append(list, b)
		}
	}
	m := image.NewRGBA(image.Rectangle{Max: size})
	way := func(d float64) float64 { return math.Abs(d - math.Round(d)) }
	for y := range size.Y {
		for x := range size.X {
			red, green, blue := 128.0, 128.0, 128.0
			for _, b := range list {
				dx, dy := way((float64(x)+0.5)/float64(size.X)-b.x), way((float64(y)+0.5)/float64(size.Y)-b.y)
				w := math.Exp(-(dx*dx + dy*dy) / (2 * b.wide * b.wide))
				red, green, blue = red+w*b.l, green+w*b.g, blue+w*b.b
			}
			part := func(v float64) uint8 { return uint8(max(0, min(255, v))) }
			m.SetRGBA(x, y, color.RGBA{part(red), part(green), part(blue), 255})
		}
	}
	return m
}

// specks is a print on which no two squares of three pixels have anything to do with each other; where mirrored its halves are each
// other's mirror image, and all is moved to the right by so many pixels.
func specks(seed uint64, size image.Point, mirrored bool, by int) *image.RGBA {
	r := rand.New(rand.NewPCG(seed, 0x4015e))
	m := image.NewRGBA(image.Rectangle{Max: size})
	for y := 0; y < size.Y; y += 3 {
		for x := 0; x < size.X; x += 3 {
			c := color.RGBA{uint8(r.IntN(256)), uint8(r.IntN(256)), uint8(r.IntN(256)), 255}
			for i := range 9 {
				m.SetRGBA((x+i%3+by)%size.X, y+i/3, c)
				if mirrored {
					m.SetRGBA((2*size.X-1-x-i%3+by)%size.X, y+i/3, c)
				}
			}
		}
	}
	return m
}

// asJPEG is a picture after a camera has saved it.
func asJPEG(t *testing.T, m image.Image, quality int) *image.RGBA {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, m, &jpeg.Options{Quality: quality}); err != nil {
		t.Fatal(err)
	}
	s, err := ReadSwatch(nil, b.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	return s.Tile
}

// nearLine says whether a line is one of those found, which come again at half a picture, up to a part of the width.
func nearLine(found []float64, line, within float64) bool {
	for _, f := range found {
		d := math.Mod(f-line+2, 0.5)
		if min(d, 0.5-d) < within {
			return true
		}
	}
	return false
}

// TestMirrorLinesAreFound: a print whose halves are each other's mirror image has its line wherever it is moved, whether it is soft or
// noise, as it is or saved as a JPEG; a print of the same sort without one has none, either way.
func TestMirrorLinesAreFound(t *testing.T) {
	sizes := []image.Point{{180, 80}, {150, 90}, {222, 60}}
	for seed := range uint64(4) {
		r := rand.New(rand.NewPCG(seed, 0x11e))
		size := sizes[seed%3]
		line, by := r.Float64(), r.IntN(size.X)
		const fine = 0.0005 // of the width
		for _, c := range []struct {
			name   string
			m      *image.RGBA
			line   float64
			within float64 // -1 for no line
		}{
			{"soft", blots(seed, size, true, line), line, fine},
			{"soft, saved", asJPEG(t, blots(seed, size, true, line), 75), line, 4 * fine},
			{"noise", specks(seed, size, true, by), float64(by) / float64(size.X), 4 * fine},
			{"noise, saved", asJPEG(t, specks(seed, size, true, by), 75), float64(by) / float64(size.X), 4 * fine},
			{"soft and not mirrored", blots(seed, size, false, 0), 0, -1},
			{"noise and not mirrored", specks(seed, size, false, by), 0, -1},
		} {
			found, other := MirrorLines(c.m), MirrorLines(OnItsSide(c.m))
			switch {
			case c.within < 0 && len(found) > 0:
				t.Errorf("%s, seed %d: lines at %v", c.name, seed, found)
			case c.within > 0 && !nearLine(found, c.line, c.within):
				t.Errorf("%s, seed %d: lines at %v, not at %.4f", c.name, seed, found, c.line)
			}
			if len(other) > 0 {
				t.Errorf("%s, seed %d: lines the other way at %v", c.name, seed, other)
			}
		}
	}
}

// TestMirrorLinesBetweenSteps: a line of a soft wave is found to a ten thousandth of the width wherever between two of the places that are
// tried it lies.
func TestMirrorLinesBetweenSteps(t *testing.T) {
	const width = 1200
	for i := range 9 {
		line := 0.25 + float64(i)/8/1024
		m := image.NewRGBA(image.Rect(0, 0, width, 2))
		for x := range width {
			v := uint8(math.Round(128 + 100*math.Cos(2*math.Pi*((float64(x)+0.5)/width-line))))
			m.SetRGBA(x, 0, color.RGBA{v, v, v, 255})
			m.SetRGBA(x, 1, color.RGBA{v, v, v, 255})
		}
		if found := MirrorLines(m); len(found) != 1 || math.Abs(found[0]-line) > 4e-5 {
			t.Errorf("a line at %.6f is found at %.6f", line, found)
		}
	}
}

// TestMirrorLinesOfPlainCloth: what is the same all across is its own mirror image anywhere.
func TestMirrorLinesOfPlainCloth(t *testing.T) {
	m := image.NewRGBA(image.Rect(0, 0, 60, 90))
	for i := range 60 * 90 {
		m.SetRGBA(i%60, i/60, color.RGBA{uint8(i / 60 % 17 * 9), 90, 30, 255})
	}
	if found := MirrorLines(m); len(found) != 1 || found[0] != 0 {
		t.Errorf("%v", found)
	}
}

// TestFinestWavesAreNoPrint: what changes from each pixel to the next is the thread of the cloth, and has no mirror line of its own; a wave of
// three pixels has.
func TestFinestWavesAreNoPrint(t *testing.T) {
	for long, want := range map[int]bool{2: true, 3: false} {
		m := image.NewRGBA(image.Rect(0, 0, 12, 3))
		for i := range 36 {
			v := uint8(60)
			if i%12%long == 0 {
				v = 190
			}
			m.SetRGBA(i%12, i/12, color.RGBA{v, v, v, 255})
		}
		if _, energy := wavesAcross(m); (energy < 1e-6) != want {
			t.Errorf("waves of %d pixels have an energy of %g", long, energy)
		}
	}
}

// TestRowsOfAPicture: a picture of few rows has the color of each pixel, row by row, and one of twice as many rows as are looked at has the
// mean light of each two that lie one above the other.
func TestRowsOfAPicture(t *testing.T) {
	for _, times := range []int{1, 2} {
		rows := 5
		if times == 2 {
			rows = mirrorRows
		}
		picture := image.NewRGBA(image.Rect(2, 3, 5, 3+times*rows))
		var want []Lab
		for y := range rows {
			for x := range 3 {
				var sum Linear
				for i := range times {
					c := Colour{R: uint8(40*x + 7*y + 90*i), G: uint8(200 - 30*x - 5*y), B: uint8(17*y*(x+1) + 31*i)}
					picture.SetRGBA(2+x, 3+times*y+i, color.RGBA{c.R, c.G, c.B, 255})
					l := c.Linear()
					sum = Linear{sum.R + l.R, sum.G + l.G, sum.B + l.B}
				}
				n := float64(times)
				want = append(want, Linear{sum.R / n, sum.G / n, sum.B / n}.Colour().Lab())
			}
		}
		if got, columns := rowsOf(picture); columns != 3 || !slices.Equal(got, want) {
			t.Errorf("%d times as many rows: %d columns, %v, expected %v", times, columns, got, want)
		}
	}
}
