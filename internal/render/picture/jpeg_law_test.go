package picture

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/jpeg"
	"io"
	"maps"
	"slices"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/internal/render/pixels"
	"eighthturn/samples"
	"eighthturn/svgout"
)

// lawSamePicture says that two pictures are alike: no pixel in the midst of a patch differs by more than so much in any channel, and
// the second is far nearer to the first than to the first moved by a pixel. A pixel is in the midst where its neighbors in the first are as
// it is.
func lawSamePicture(a, b image.Image, inside float64) error {
	if a.Bounds() != b.Bounds() {
		return fmt.Errorf("%v and %v", a.Bounds(), b.Bounds())
	}
	first, second := opaque(a), opaque(b)
	here, moved := 0.0, 0.0
	r := a.Bounds()
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			c, d := first.RGBAAt(x, y), second.RGBAAt(x, y)
			apart := max(absent(c.R, d.R), absent(c.G, d.G), absent(c.B, d.B))
			next := first.RGBAAt(min(x+1, r.Max.X-1), y)
			here, moved = here+apart, moved+max(absent(next.R, d.R), absent(next.G, d.G), absent(next.B, d.B))
			const far = 16 // as far as a block of the encoding and its neighbors' coarser color reach
			if apart > inside && x >= far && y >= far && x < r.Max.X-far && y < r.Max.Y-far && plain(first, x, y, far) {
				return fmt.Errorf("at %d, %d: %v and %v", x, y, c, d)
			}
		}
	}
	if here > moved/2 {
		return fmt.Errorf("they differ by %.2f of what they differ by when moved by a pixel", here/moved)
	}
	return nil
}

// opaque is a picture with its pixels at hand.
func opaque(m image.Image) *image.RGBA {
	o := image.NewRGBA(m.Bounds())
	draw.Draw(o, o.Bounds(), m, m.Bounds().Min, draw.Src)
	return o
}

func absent(a, b uint8) float64 { return max(float64(a), float64(b)) - min(float64(a), float64(b)) }

// plain says whether all pixels so near have one color.
func plain(m *image.RGBA, x, y, far int) bool {
	for dy := -far; dy <= far; dy++ {
		for dx := -far; dx <= far; dx++ {
			if m.RGBAAt(x+dx, y+dy) != m.RGBAAt(x, y) {
				return false
			}
		}
	}
	return true
}

func jpegOf(t testing.TB, s *svgout.Scene, f Frame) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := JPEG(&b, s, f); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// TestJPEGShowsThePNG: a JPEG shows what the PNG shows, and a PNG in full color what one of few colors shows; the same picture gives the
// same bytes; and a better quality is not smaller.
func TestJPEGShowsThePNG(t *testing.T) {
	for _, name := range judges.Some(slices.Sorted(maps.Keys(tops(t))), 3) {
		top := tops(t)[name]
		s, f := scened(t, top, svgout.Options{ByFabric: true}), Frame{Pixels: 500, Margin: measure.Inch}
		if name == "compass" {
			s = scened(t, top, svgout.Options{ByFabric: true, SeamLines: svgout.SeamsLeftOut, Legend: true})
		}
		file := jpegOf(t, s, f)
		if !bytes.Equal(file, jpegOf(t, s, f)) {
			t.Errorf("%s: other bytes", name)
		}
		shown, err := jpeg.Decode(bytes.NewReader(file))
		if err != nil {
			t.Fatal(err)
		}
		picture := decoded(t, pngOf(t, s, f))
		if err := lawSamePicture(picture, shown, 5); err != nil {
			t.Errorf("%s: JPEG: %v", name, err)
		}
		f.TrueColour = true
		full := decoded(t, pngOf(t, s, f))
		if err := lawSamePicture(picture, full, 0); err != nil {
			t.Errorf("%s: full color: %v", name, err)
		}
		if _, numbered := full.(*image.Paletted); numbered {
			t.Errorf("%s: colors by number", name)
		}
		f.Quality = 30
		if small := jpegOf(t, s, f); len(small) > len(file)*2/3 {
			t.Errorf("%s: quality 30 takes %d bytes, %d takes %d", name, len(small), UsualQuality, len(file))
		}
	}
}

// TestOtherPicturesAreSeen: a picture whose colors are a little off, or that is a pixel aside, does not pass.
func TestOtherPicturesAreSeen(t *testing.T) {
	m := image.NewRGBA(image.Rect(0, 0, 200, 200))
	off, aside := image.NewRGBA(m.Bounds()), image.NewRGBA(m.Bounds())
	for y := range 200 {
		for x := range 200 {
			light := func(x int) uint8 { return uint8(x / 50 * 60) }
			m.SetRGBA(x, y, color.RGBA{light(x), 80, 90, 255})
			off.SetRGBA(x, y, color.RGBA{light(x), 80, 95, 255})
			aside.SetRGBA(x, y, color.RGBA{light(x + 1), 80, 90, 255})
		}
	}
	if lawSamePicture(m, m, 0) != nil || lawSamePicture(m, off, 4) == nil || lawSamePicture(m, aside, 5) == nil {
		t.Error("the law of like pictures is blind")
	}
}

// TestLargeJPEGIsRefused: what would not fit into memory is refused before it is made, with what can be had, and that can be had.
func TestLargeJPEGIsRefused(t *testing.T) {
	s := scened(t, lay.Top(t, samples.All()[0].Text), svgout.Options{ByFabric: true})
	var large *TooLarge
	if err := JPEG(io.Discard, s, Frame{Pixels: 20_000}); !errors.As(err, &large) || large.Longest < 9_000 || large.Longest >= 20_000 {
		t.Fatalf("%v: %+v", err, large)
	}
	job, err := sized(s, Frame{Pixels: large.Longest})
	if err != nil || job.CheckJPEG() != nil || job.Size.Width*job.Size.Height < pixels.MostJPEGInAll*9/10 {
		t.Errorf("%v, %v", err, job.Size)
	}
}
