package pixels

import (
	"bytes"
	"eighthturn/internal/quilttest/lay"
	"encoding/binary"
	"image"
	"image/png"
	"io"
	"math"
	"math/rand/v2"
	"runtime"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// printed is a print of a top alone, of so many pixels across and down.
func printed(t *quilt.Top, width, height int) *Print {
	return &Print{Top: t, Size: Size{width, height}, Quilt: image.Rect(0, 0, width, height), PerInch: 300, Background: palettes.Colour{R: 255, G: 255, B: 255}}
}

func pngOf(t testing.TB, p *Print) (image.Image, []byte) {
	t.Helper()
	var b bytes.Buffer
	if err := p.WritePNG(&b); err != nil {
		t.Fatal(err)
	}
	m, err := png.Decode(bytes.NewReader(b.Bytes()))
	if err != nil {
		t.Fatal(err)
	}
	return m, b.Bytes()
}

func BenchmarkPrint(b *testing.B) {
	top := lay.Top(b, webs(40, 50))
	for _, size := range []Size{{2400, 3000}, {6000, 8000}} {
		b.Run("", func(b *testing.B) {
			b.ReportAllocs()
			for range b.N {
				if err := printed(top, size.Width, size.Height).WritePNG(io.Discard); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// TestPrintedAsPainted: a print differs from the picture that scan lines give by what those
// lines do not know of the edges.
func TestPrintedAsPainted(t *testing.T) {
	for _, top := range []*quilt.Top{lay.Top(t, webs(3, 2)), lay.Top(t, webs(7, 5))} {
		s := sized(t, top, 700)
		want := Paint(top, s, own(top))
		got, _ := pngOf(t, printed(top, s.Width, s.Height))
		worst, sum := 0.0, 0.0
		for y := range s.Height {
			for x := range s.Width {
				r, g, b, _ := got.At(x, y).RGBA()
				c := want.NRGBAAt(x, y)
				for _, d := range []float64{float64(r>>8) - float64(c.R), float64(g>>8) - float64(c.G), float64(b>>8) - float64(c.B)} {
					worst, sum = max(worst, math.Abs(d)), sum+math.Abs(d)
				}
			}
		}
		t.Logf("worst %g, mean %g", worst, sum/float64(3*s.Width*s.Height))
		if worst > 60 || sum/float64(3*s.Width*s.Height) > 0.3 {
			t.Errorf("the two differ by up to %g and by %g in the mean", worst, sum/float64(3*s.Width*s.Height))
		}
	}
}

// TestPrintLeaksNothing: a top whose fabrics are all of one colour is that colour in every
// pixel of a print, whatever the size and where the bands part.
func TestPrintLeaksNothing(t *testing.T) {
	red := palettes.Colour{R: 181, G: 83, B: 42}
	for _, text := range []string{webs(5, 4), "strip 4\nfabric a #fff\nfabric b #000\nblock R ring wedges a b corners a\nblock P plain piece b\ngrid\n R P R\n P R P\nborder 1/3 a\n"} {
		top := lay.Top(t, text)
		for _, s := range []Size{{1, 1}, {7, 5}, {33, 71}, {250, 200}, {1001, 977}} {
			p := printed(top, s.Width, s.Height)
			p.Colour = func(int) palettes.Colour { return red }
			for _, p.Clear = range []bool{false, true} {
				if m, _ := pngOf(t, p); unlike(m, m.Bounds(), red) > 0 {
					t.Errorf("%v: %d pixels are not %s", s, unlike(m, m.Bounds(), red), red.Hex())
				}
			}
		}
	}
}

// unlike counts the pixels within a rectangle that are not of one colour.
func unlike(m image.Image, in image.Rectangle, c palettes.Colour) int {
	n := 0
	for y := in.Min.Y; y < in.Max.Y; y++ {
		for x := in.Min.X; x < in.Max.X; x++ {
			r, g, b, a := m.At(x, y).RGBA()
			if r>>8 != uint32(c.R) || g>>8 != uint32(c.G) || b>>8 != uint32(c.B) || a != 0xffff {
				n++
			}
		}
	}
	return n
}

// TestPrintLeaksAreNoticed: the law above catches a face that is missing.
func TestPrintLeaksAreNoticed(t *testing.T) {
	top := lay.Top(t, webs(2, 2))
	top.Faces[0].Outline = top.Faces[0].Outline[:1]
	p := printed(top, 250, 250)
	p.Colour = func(int) palettes.Colour { return palettes.Colour{R: 9} }
	if m, _ := pngOf(t, p); unlike(m, m.Bounds(), palettes.Colour{R: 9}) == 0 {
		t.Error("a hole was not noticed")
	}
}

// TestPrintSameOnAnyMachine: the bytes do not depend on how many processors share the work.
func TestPrintSameOnAnyMachine(t *testing.T) {
	p := printed(lay.Top(t, webs(4, 3)), 3000, 2300)
	p.Over = []Layer{{Outlines: [][]Place{{{10, 10}, {900.5, 20}, {40, 2200.25}}}, Colour: palettes.Colour{G: 200}, Opacity: 0.5}}
	_, want := pngOf(t, p)
	for _, n := range []int{1, 3, 8} {
		old := runtime.GOMAXPROCS(n)
		_, got := pngOf(t, p)
		runtime.GOMAXPROCS(old)
		if !bytes.Equal(got, want) {
			t.Errorf("with %d processors the bytes differ", n)
		}
	}
}

// TestPrintRunsOn: beyond the quilt's edge the cloth goes on straight, corners too, by one pixel or by many; the rest is background.
func TestPrintRunsOn(t *testing.T) {
	top := lay.Top(t, webs(3, 2))
	inner := printed(top, 150, 120)
	want, _ := pngOf(t, inner)
	for _, on := range []int{0, 1, 20} {
		p := printed(top, 210, 180)
		p.Quilt, p.RunOn = image.Rect(30, 30, 180, 150), on
		got, _ := pngOf(t, p)
		for y := range 180 {
			for x := range 210 {
				r, g, b, _ := got.At(x, y).RGBA()
				of := [3]uint32{0xffff, 0xffff, 0xffff}
				if x >= 30-on && x < 180+on && y >= 30-on && y < 150+on {
					of[0], of[1], of[2], _ = want.At(min(max(x-30, 0), 149), min(max(y-30, 0), 119)).RGBA()
				}
				if [3]uint32{r, g, b} != of {
					t.Fatalf("run on by %d: %d, %d is %x, expected %x", on, x, y, []uint32{r, g, b}, of)
				}
			}
		}
	}
}

// TestPrintHoles: where the layout has nothing the background is seen, or nothing at all.
func TestPrintHoles(t *testing.T) {
	top := lay.Top(t, "side 5\nfabric red #b5532a\nblock P plain piece red\ngrid\n P P\n P .")
	p := printed(top, 40, 40)
	p.Background = palettes.Colour{G: 255}
	if m, _ := pngOf(t, p); unlike(m, image.Rect(20, 20, 40, 40), p.Background) > 0 || unlike(m, image.Rect(0, 0, 20, 40), top.Fabrics[0].Colour) > 0 {
		t.Error("the empty place is not the background, or the cloth is not its colour")
	}
	p.Clear = true
	m, _ := pngOf(t, p)
	if _, _, _, a := m.At(30, 30).RGBA(); a != 0 {
		t.Error("the empty place is not see-through")
	}
}

// TestCoverIsArea: the coverage of all pixels by any outline adds up to its area, and no
// pixel is covered more than once or less than not at all. A law of arithmetic; the area is
// that of the surveyor's formula.
func TestCoverIsArea(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	const side = 40
	for n := range 2000 {
		corners := 4 + r.IntN(5)
		var outline []spot
		for i := range corners { // round the middle, so that it does not cross itself
			sin, cos := math.Sincos(2 * math.Pi * (float64(i) + 0.8*r.Float64()) / float64(corners))
			long := float64(r.IntN(side * part / 2))
			outline = append(outline, spot{side*part/2 + int32(long*cos), side*part/2 + int32(long*sin)})
		}
		double := int64(0)
		for i, p := range outline {
			q := outline[(i+1)%len(outline)]
			double += int64(p.x)*int64(q.y) - int64(q.x)*int64(p.y)
		}
		sum, edges := covered(t, outline, side)
		// Where an edge crosses a row is rounded to a part of a pixel, once a row at either end.
		if slack := int64(edges) * part; sum-double > slack || double-sum > slack {
			t.Fatalf("%d: covered %d, area %d, outline %v", n, sum, double, outline)
		}
	}
}

// covered adds up what an outline covers, twice in parts of parts, and counts the cells.
func covered(t *testing.T, outline []spot, side int) (sum int64, count int) {
	t.Helper()
	c, s := newCells(side), newSweep(1)
	c.begin(0, side)
	c.outline(outline, 0)
	for row := range side {
		count += len(c.rows[row])
		s.row(c.inOrder(row), int32(side), func(from, to int32, list shares) {
			for _, share := range list {
				if share.cover > whole+2*part {
					t.Fatalf("a pixel is covered %d of %d", share.cover, whole)
				}
				sum += int64(share.cover) * int64(to-from)
			}
		})
	}
	return sum, count
}

func TestPrintsThatAreRefused(t *testing.T) {
	top := lay.Top(t, webs(2, 2))
	for _, s := range []Size{{0, 5}, {MostPrintedASide + 1, 5}, {50_000, 50_000}, {-1, -1}} {
		p := printed(top, s.Width, s.Height)
		if err := p.WritePNG(io.Discard); err == nil {
			t.Errorf("%v was printed", s)
		}
	}
}

type failing struct{ left int }

func (f *failing) Write(b []byte) (int, error) {
	if f.left -= len(b); f.left < 0 {
		return 0, io.ErrShortWrite
	}
	return len(b), nil
}

// TestPrintStopsWhereNothingCanBeWritten: an error of the writer ends the work and comes back.
func TestPrintStopsWhereNothingCanBeWritten(t *testing.T) {
	for _, left := range []int{0, 20, 100, 5000} {
		if err := printed(lay.Top(t, webs(4, 3)), 2000, 3000).WritePNG(&failing{left}); err == nil {
			t.Errorf("%d bytes were enough", left)
		}
	}
}

// TestPrintSaysItsResolution: 300 an inch is 11,811 a metre.
func TestPrintSaysItsResolution(t *testing.T) {
	_, file := pngOf(t, printed(lay.Top(t, webs(2, 2)), 50, 50))
	at := bytes.Index(file, []byte("pHYs"))
	if at < 0 || binary.BigEndian.Uint32(file[at+4:]) != 11811 || binary.BigEndian.Uint32(file[at+8:]) != 11811 || file[at+12] != 1 {
		t.Errorf("the pHYs block is %x", file[max(at, 0):at+20])
	}
}
