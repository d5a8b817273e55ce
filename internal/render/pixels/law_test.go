package pixels

import (
	"bytes"
	"eighthturn/internal/quilttest/lay"
	"encoding/binary"
	"image"
	"image/png"
	"math"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// own is each fabric in its own colour.
func own(t *quilt.Top) func(int) palettes.Colour {
	return func(f int) palettes.Colour { return t.Fabrics[f].Colour }
}

func sized(t testing.TB, top *quilt.Top, longerSide int) Size {
	t.Helper()
	s, err := SizeOf(top, longerSide)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// spots counts the pixels that are not of one colour.
func spots(m *image.NRGBA, c palettes.Colour) int {
	n := 0
	for i := 0; i < len(m.Pix); i += 4 {
		if m.Pix[i] != c.R || m.Pix[i+1] != c.G || m.Pix[i+2] != c.B || m.Pix[i+3] != 255 {
			n++
		}
	}
	return n
}

// TestNothingLeaks: a top whose fabrics are all of one colour is that colour in every pixel,
// whatever seams run through it and however large the pixels are.
func TestNothingLeaks(t *testing.T) {
	top := lay.Top(t, webs(5, 4))
	for _, side := range []int{1, 7, 33, 250, 1001} {
		for _, c := range []palettes.Colour{{R: 181, G: 83, B: 42}, {R: 1, G: 2, B: 3}, {R: 255, G: 255, B: 255}} {
			m := Paint(top, sized(t, top, side), func(int) palettes.Colour { return c })
			if n := spots(m, c); n > 0 {
				t.Errorf("%d pixels of %d a side are not %s", n, side, c.Hex())
			}
		}
	}
}

// TestLeaksAreNoticed: the law above catches a face that is not there.
func TestLeaksAreNoticed(t *testing.T) {
	top := lay.Top(t, webs(2, 2))
	top.Faces = top.Faces[1:]
	if spots(Paint(top, sized(t, top, 250), func(int) palettes.Colour { return palettes.Colour{R: 9} }), palettes.Colour{R: 9}) == 0 {
		t.Error("a hole was not noticed")
	}
}

// TestEveryFabricHasItsShare: each fabric alone in white on black gives as much light as it
// has of the top, to within the eighth of a pixel to which four lines a row know the upper
// and lower edges of the borders.
func TestEveryFabricHasItsShare(t *testing.T) {
	top := lay.Top(t, webs(5, 4))
	for f, share := range top.Share() {
		p := luminance(top, sized(t, top, 700), func(g int) palettes.Colour {
			if g == f {
				return palettes.Colour{R: 255, G: 255, B: 255}
			}
			return palettes.Colour{}
		})
		if got := mean(p.Luminance); math.Abs(got-share) > 5e-4 {
			t.Errorf("%s has %.6f of the picture and %.6f of the top", top.Fabrics[f].Name, got, share)
		}
	}
}

func mean(list []float32) float64 {
	sum := 0.0
	for _, v := range list {
		sum += float64(v)
	}
	return sum / float64(len(list))
}

// TestEmptyPlacesAreSeeThrough, and what lies beside them is not darkened by them.
func TestEmptyPlacesAreSeeThrough(t *testing.T) {
	top := lay.Top(t, "side 5\nfabric red #b5532a\nblock P plain piece red\ngrid\n P P\n P .")
	m := Paint(top, Size{40, 40}, own(top))
	if _, _, _, a := m.At(35, 35).RGBA(); a != 0 {
		t.Error("the empty place is painted")
	}
	if c := m.NRGBAAt(5, 5); c.R != 0xb5 || c.A != 255 {
		t.Errorf("the cloth is %v", c)
	}
	blurred := luminance(top, Size{40, 40}, own(top)).blurred(4)
	want := top.Fabrics[0].Colour.Luminance()
	for y := range 20 {
		for x := range 40 {
			if got := blurred.Luminance[y*40+x]; math.Abs(float64(got)-want) > 1e-5 {
				t.Fatalf("%d, %d: luminance %.5f, expected %.5f", x, y, got, want)
			}
		}
	}
	s, err := Squinting(top, Size{40, 40}, Squint{})
	if err != nil || s.Picture.ColorIndexAt(35, 35) != 0 || s.Picture.ColorIndexAt(5, 5) == 0 {
		t.Errorf("the squint picture: %v", err)
	}
}

// TestFaceAtIsWhatIsPainted: the face under a pixel's middle has the colour of the pixel,
// wherever no other face comes near.
func TestFaceAtIsWhatIsPainted(t *testing.T) {
	top := lay.Top(t, webs(3, 3))
	s := sized(t, top, 300)
	faces, m := FaceAt(top, s), Paint(top, s, own(top))
	for y := 1; y < s.Height-1; y++ {
		for x := 1; x < s.Width-1; x++ {
			f := faces[y*s.Width+x]
			if f < 0 {
				t.Fatalf("nothing at %d, %d", x, y)
			}
			if !alone(faces, s, x, y) {
				continue
			}
			c := top.Fabrics[top.Faces[f].Fabric].Colour
			if got := m.NRGBAAt(x, y); got.R != c.R || got.G != c.G || got.B != c.B {
				t.Fatalf("%d, %d is %v, expected %s", x, y, got, c.Hex())
			}
		}
	}
}

// alone says whether a pixel and those about it lie on one face.
func alone(faces []int32, s Size, x, y int) bool {
	for dy := -1; dy <= 1; dy++ {
		for dx := -1; dx <= 1; dx++ {
			if faces[(y+dy)*s.Width+x+dx] != faces[y*s.Width+x] {
				return false
			}
		}
	}
	return true
}

// TestBlurKeepsWhatIsEven: a plane of one light stays so, up to its very edge.
func TestBlurKeepsWhatIsEven(t *testing.T) {
	for _, v := range []float32{0, 0.18, 0.5, 1} {
		for _, sigma := range []float64{0, 0.5, 1, 3.7, 20, 400} {
			p := &Plane{Size: Size{60, 41}, Luminance: make([]float32, 60*41)}
			for i := range p.Luminance {
				p.Luminance[i] = v
			}
			for i, got := range p.blurred(sigma).Luminance {
				if math.Abs(float64(got-v)) > 2e-6 {
					t.Fatalf("sigma %g: %g at %d became %g", sigma, v, i, got)
				}
			}
		}
	}
}

// TestBlurSpreadsAPointAndLosesNothing: a point of light sums to itself, lies round its
// place, and has the width that was asked for.
func TestBlurSpreadsAPointAndLosesNothing(t *testing.T) {
	for _, sigma := range []float64{0.5, 1, 3.7, 8} {
		const side, at = 101, 50
		p := &Plane{Size: Size{side, side}, Luminance: make([]float32, side*side)}
		p.Luminance[at*side+at] = 1
		b := p.blurred(sigma)
		sum, across, variance := 0.0, 0.0, 0.0
		for i, v := range b.Luminance {
			x := float64(i%side - at)
			sum += float64(v)
			across += float64(v) * x
			variance += float64(v) * x * x
		}
		if math.Abs(sum-1) > 1e-5 || math.Abs(across) > 1e-5 {
			t.Errorf("sigma %g: sum %.6f, middle %.6f", sigma, sum, across)
		}
		if want := sigma * sigma; math.Abs(variance-want) > 0.04*want+0.04 {
			t.Errorf("sigma %g: variance %.4f, expected %.4f less what three sigmas cut off", sigma, variance, want)
		}
	}
}

// TestStepsRise: in a squint picture what has more light is never drawn darker, and each
// step's grey lies between its cuts.
func TestStepsRise(t *testing.T) {
	top := lay.Top(t, webs(6, 4))
	s := sized(t, top, 400)
	for steps := 2; steps <= 5; steps++ {
		for _, relative := range []bool{false, true} {
			q := Squint{Steps: steps, Relative: relative}
			out, err := Squinting(top, s, q)
			if err != nil {
				t.Fatal(err)
			}
			share := 0.0
			for i, step := range out.Steps {
				share += step.Share
				if step.Lightness < step.From || i+1 < len(out.Steps) && step.Lightness >= out.Steps[i+1].From {
					t.Errorf("%d steps: %v", steps, out.Steps)
				}
			}
			if math.Abs(share-1) > 1e-9 || len(out.Steps) > steps {
				t.Errorf("%d steps: %v", steps, out.Steps)
			}
			risesWithLight(t, Blurred(top, s, q.Sigma(), own(top)).stretched(s), out)
		}
	}
}

func risesWithLight(t *testing.T, p *Plane, out *Squinted) {
	t.Helper()
	var low, high [8]float32
	for i := range low {
		low[i] = 2
	}
	for i, y := range p.Luminance {
		n := out.Picture.Pix[i]
		low[n], high[n] = min(low[n], y), max(high[n], y)
	}
	for n := 2; n <= len(out.Steps); n++ {
		if low[n] < high[n-1] {
			t.Errorf("step %d holds luminance %g, step %d %g", n-1, high[n-1], n, low[n])
		}
	}
}

// TestCoarserGridShowsTheSame: a blurred picture made on a coarse grid is that made on the
// fine one, to within a small part of a step of value.
func TestCoarserGridShowsTheSame(t *testing.T) {
	top := lay.Top(t, webs(4, 4))
	s := sized(t, top, 1200)
	sigma := measure.NM(12 * float64(measure.Inch) / first(s.perInch(top)))
	coarse := Blurred(top, s, sigma, own(top))
	if coarse.Size == s {
		t.Fatal("no coarser grid was taken")
	}
	fineOne, got := luminance(top, s, own(top)).blurred(12), coarse.stretched(s)
	worst := 0.0
	for i := range got.Luminance {
		worst = max(worst, math.Abs(palettes.LightnessOf(float64(got.Luminance[i]))-palettes.LightnessOf(float64(fineOne.Luminance[i]))))
	}
	if worst > 1 {
		t.Errorf("the two are up to %.2f L* apart", worst)
	}
}

func first(a, _ float64) float64 { return a }

// TestGreysStayForAllEyes: a top in greys looks the same to those whose sight for colours
// differs.
func TestGreysStayForAllEyes(t *testing.T) {
	top := lay.Top(t, webs(2, 2))
	grey := func(f int) palettes.Colour { return top.Fabrics[f].Colour.Grey() }
	s := sized(t, top, 120)
	plain := Paint(top, s, grey)
	for _, d := range []palettes.Deficiency{palettes.Protan, palettes.Deutan, palettes.Tritan} {
		seen := Paint(top, s, func(f int) palettes.Colour { return grey(f).SeenBy(d, 1) })
		for i := range seen.Pix {
			if diff := int(seen.Pix[i]) - int(plain.Pix[i]); diff < -1 || diff > 1 {
				t.Fatalf("deficiency %d: byte %d is %d, expected %d", d, i, seen.Pix[i], plain.Pix[i])
			}
		}
	}
}

// TestTheSameEveryTime: pictures do not depend on how rows are shared out.
func TestTheSameEveryTime(t *testing.T) {
	top := lay.Top(t, webs(3, 3))
	s := sized(t, top, 500)
	write := func() []byte {
		out, err := Squinting(top, s, Squint{})
		if err != nil {
			t.Fatal(err)
		}
		var b bytes.Buffer
		if err := WritePNG(&b, top, out.Picture); err != nil {
			t.Fatal(err)
		}
		if err := WritePNG(&b, top, Paint(top, s, own(top))); err != nil {
			t.Fatal(err)
		}
		return b.Bytes()
	}
	one := write()
	for range 10 {
		if !bytes.Equal(one, write()) {
			t.Fatal("two pictures of one top differ")
		}
	}
}

// TestPNGSaysHowLargeTheTopIs: the pHYs block times the pixels is the top's own size.
func TestPNGSaysHowLargeTheTopIs(t *testing.T) {
	top := lay.Top(t, webs(3, 2))
	s := sized(t, top, 900)
	var b bytes.Buffer
	if err := WritePNG(&b, top, Paint(top, s, own(top))); err != nil {
		t.Fatal(err)
	}
	if _, err := png.Decode(bytes.NewReader(b.Bytes())); err != nil {
		t.Fatalf("the file cannot be read back: %v", err)
	}
	at := bytes.Index(b.Bytes(), []byte("pHYs"))
	if at < 0 || b.Bytes()[at+12] != 1 {
		t.Fatal("there is no pHYs block in metres")
	}
	across := binary.BigEndian.Uint32(b.Bytes()[at+4:])
	width := float64(s.Width) / float64(across) / metresAnInch
	if want := inches(top.Outer.Width()); math.Abs(width-want) > want/2000 {
		t.Errorf("the picture is %.4f in wide, the top %.4f", width, want)
	}
}

func TestSizesAndSquintsThatAreRefused(t *testing.T) {
	top := lay.Top(t, webs(2, 2))
	for _, side := range []int{0, -5, mostASide + 1, 20_000} {
		if s, err := SizeOf(top, side); err == nil {
			t.Errorf("%d pixels a side gave %v", side, s)
		}
	}
	for _, q := range []Squint{{Steps: 1}, {Steps: 6}, {Blur: -1}, {Distance: -1}, {Acuity: -1}} {
		if _, err := Squinting(top, Size{10, 10}, q); err == nil {
			t.Errorf("%+v was taken", q)
		}
	}
}

// TestSigma: worked figures for a quilt 10 feet away, in inches: sight of one minute of arc
// 0.028, three 0.084, ten 0.28, twenty 0.56.
func TestSigma(t *testing.T) {
	for acuity, want := range map[float64]float64{1: 0.028, 3: 0.084, 10: 0.28, 20: 0.56} {
		if got := inches(Squint{Acuity: acuity}.Sigma()); math.Abs(got-want) > 0.002 {
			t.Errorf("acuity %g blurs by %.4f in, expected %.3f", acuity, got, want)
		}
	}
}
