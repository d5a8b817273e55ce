package picture

import (
	"bytes"
	"eighthturn/internal/quilttest/lay"
	"errors"
	"image"
	"image/png"
	"io"
	"math"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/render/pdf"
	"eighthturn/internal/render/pixels"
	"eighthturn/samples"
	"eighthturn/svgout"
)

// tops are the samples laid out.
func tops(t testing.TB) map[string]*quilt.Top {
	t.Helper()
	list := map[string]*quilt.Top{}
	for _, s := range samples.All() {
		list[s.Name] = lay.Top(t, s.Text)
	}
	return list
}

// scened is a picture of a top.
func scened(t testing.TB, top *quilt.Top, o svgout.Options) *svgout.Scene {
	t.Helper()
	s, err := svgout.NewScene(top, o)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func decoded(t testing.TB, file []byte) image.Image {
	t.Helper()
	m, err := png.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func pngOf(t testing.TB, s *svgout.Scene, f Frame) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := PNG(&b, s, f); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func pdfOf(t testing.TB, s *svgout.Scene, f Frame) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := PDF(&b, s, f); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// TestSameBytes: pictures are written alike every time.
func TestSameBytes(t *testing.T) {
	p := scened(t, lay.Top(t, samples.All()[0].Text), svgout.Options{Legend: true, SeamLines: svgout.SeamsDrawn})
	f := Frame{Pixels: 500, Margin: measure.Inch}
	if !bytes.Equal(pngOf(t, p, f), pngOf(t, p, f)) {
		t.Error("two PNG pictures differ")
	}
	f = Frame{Bleed: measure.Inch}
	want := pdfOf(t, p, f)
	for range 5 {
		if !bytes.Equal(want, pdfOf(t, p, f)) {
			t.Fatal("two PDF pictures differ")
		}
	}
}

// TestSizes: worked figures for a quilt of 10 by 20 in.
func TestSizes(t *testing.T) {
	top := lay.Top(t, "side 10\nfabric red #b5532a\nblock P plain piece red\ngrid\n P\n P\n")
	for _, c := range []struct {
		frame         Frame
		width, height int
		perInch       float64
	}{
		{Frame{}, 3000, 6000, 300},
		{Frame{PerInch: 100}, 1000, 2000, 100},
		{Frame{Pixels: 2100}, 1050, 2100, 105},
		{Frame{Pixels: 2100, PerInch: 300}, 1050, 2100, 300},
		{Frame{Longest: 10 * measure.Inch}, 1500, 3000, 300},
		{Frame{Longest: 10 * measure.Inch, PerInch: 72}, 360, 720, 72},
		{Frame{Longest: 254 * measure.Millimetre, PerInch: 72, Margin: measure.Inch / 2, Bleed: measure.Inch / 8}, 360 + 2*45, 720 + 2*45, 72},
	} {
		p := scened(t, top, svgout.Options{})
		size, perInch, err := PNGSize(p, c.frame)
		if err != nil || size != (pixels.Size{Width: c.width, Height: c.height}) || perInch != c.perInch {
			t.Errorf("%+v: %v at %g, expected %d by %d at %g (%v)", c.frame, size, perInch, c.width, c.height, c.perInch, err)
		}
		if m := decoded(t, pngOf(t, p, c.frame)); m.Bounds().Dx() != c.width || m.Bounds().Dy() != c.height {
			t.Errorf("%+v: the file has %v", c.frame, m.Bounds())
		}
	}
}

// TestTooLarge: what is refused names what can be had, and that can be had.
func TestTooLarge(t *testing.T) {
	top := lay.Top(t, samples.All()[0].Text)
	p := scened(t, top, svgout.Options{})
	for _, f := range []Frame{{PerInch: 4800}, {Pixels: 1_000_000}, {Longest: 400 * measure.Yard, PerInch: 4800}, {PerInch: 1200, Margin: 40 * measure.Inch}} {
		var large *TooLarge
		if err := PNG(io.Discard, p, f); !errors.As(err, &large) {
			t.Errorf("%+v: the error is %v", f, err)
			continue
		}
		if f.Pixels > 0 {
			f.Pixels = large.Longest
		} else {
			f.PerInch = float64(large.PerInch)
		}
		if size, _, err := PNGSize(p, f); err != nil || size.Width*size.Height < pixels.MostPrintedInAll/2 {
			t.Errorf("%+v gives %v, %v", f, size, err)
		}
	}
	var long *TooLong
	if err := PDF(io.Discard, p, Frame{Longest: 300 * measure.Inch, Margin: measure.Inch}); !errors.As(err, &long) || long.Longest != 198*measure.Inch {
		t.Errorf("the error is %v", err)
	}
	if err := PDF(io.Discard, p, Frame{Longest: long.Longest, Margin: measure.Inch}); err != nil {
		t.Error(err)
	}
}

// TestMarks: both files say near their beginning whose they are.
func TestMarks(t *testing.T) {
	p := scened(t, lay.Top(t, samples.All()[0].Text), svgout.Options{})
	if file := pngOf(t, p, Frame{Pixels: 50}); !IsOurs(file[:200]) {
		t.Error("the PNG is not marked")
	}
	if file := pdfOf(t, p, Frame{}); !IsOurs(file[:1000]) || pdf.Marked(file, "eighthturn templates") {
		t.Error("the PDF is not marked")
	}
	if IsOurs([]byte("%PDF-1.4\n%âãÏÓ\n1 0 obj")) || IsOurs([]byte("%"+marker+"\n")) || IsOurs(nil) {
		t.Error("a file of another's is taken for ours")
	}
}

// middle is the mean of an outline's corners, and how far from its sides it lies; below 0
// outside.
func middle(outline []measure.Point) (x, y, room float64) {
	for _, p := range outline {
		x, y = x+float64(p.X)/float64(len(outline)), y+float64(p.Y)/float64(len(outline))
	}
	room = math.Inf(1)
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		dx, dy := float64(q.X-p.X), float64(q.Y-p.Y)
		room = min(room, (dx*(y-float64(p.Y))-dy*(x-float64(p.X)))/math.Hypot(dx, dy))
	}
	return x, y, room
}
