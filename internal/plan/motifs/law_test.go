package motifs_test

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"strings"
	"sync"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/motifs"
	"eighthturn/internal/quilt"
	"eighthturn/internal/render/picture"
	"eighthturn/internal/stop"
	"eighthturn/layout"
	"eighthturn/palettes"
	"eighthturn/svgout"
)

// waves is a photo of one repeat of a print: no two places of it are alike, and none is its own mirror image.
var waves = sync.OnceValues(func() (palettes.PhotoSample, error) {
	const width, height = 240, 160
	m := image.NewRGBA(image.Rect(0, 0, width, height))
	light := func(v float64) uint8 { return uint8(128 + 100*math.Max(-1, math.Min(1, v))) }
	for y := range height {
		for x := range width {
			a, d := 2*math.Pi*(float64(x)+0.5)/float64(width), 2*math.Pi*(float64(y)+0.5)/float64(height)
			m.SetRGBA(x, y, color.RGBA{light(math.Sin(a) + 0.5*math.Sin(3*a-2*d)), light(math.Sin(d) + 0.5*math.Cos(2*a)), light(math.Cos(d-a+1) + 0.5*math.Sin(4*d)), 255})
		}
	}
	var file bytes.Buffer
	if err := png.Encode(&file, m); err != nil {
		return palettes.PhotoSample{}, err
	}
	return palettes.ReadSwatch(nil, file.Bytes())
})

// laid is a layout laid out, whose photos all show the waves.
func laid(t testing.TB, text string) *quilt.Top {
	t.Helper()
	design, source, faults := layout.ReadWith(text, func(string) (palettes.PhotoSample, error) { return waves() })
	if design == nil {
		var b bytes.Buffer
		_ = layout.Report(&b, "print.quilt", source, faults)
		t.Fatal(b.String())
	}
	return quilt.Lay(design)
}

// Layouts whose first fabric is a print; a block of a ring and four of a web.
const (
	ringOf = "block R ring wedges %s corners sand\ngrid\n  R\n"
	websOf = "block W web wedges %s kites sand\ngrid\n  W W\n  W W\n"
	sand   = "fabric sand #e8d9b0\n"
)

func prints() map[string]string {
	return map[string]string{
		"large":     "strip 4 1/2\nfabric cloth swatch \"a.png\" across 24 repeat across 24 down 16\n" + sand,
		"small":     "strip 3\nfabric cloth swatch \"a.png\" across 5 repeat across 4 7/8 down 3\n" + sand,
		"metric":    "units cm\nstrip 9\nfabric cloth swatch \"a.png\" across 30 repeat across 30 down 20\n" + sand,
		"awning":    "strip 4\nfabric cloth stripes navy 3/4 white 1/2 #c9503c 1\n" + sand,
		"deckchair": "strip 4\nfabric cloth stripes navy 3/4 white 1/2 #c9503c 1 crosswise\n" + sand,
	}
}

func planned(t testing.TB, text string, count int) (*quilt.Top, *motifs.Plan) {
	t.Helper()
	top := laid(t, fmt.Sprintf(text+ringOf, "cloth"))
	p, err := motifs.Build(top, 0, motifs.Options{Count: count})
	if err != nil {
		t.Fatal(err)
	}
	return top, p
}

// tooClose is what two motifs of a plan lie nearer to each other than it says, on a print that comes again; "" for none.
func tooClose(p *motifs.Plan) string {
	for i, m := range p.Motifs {
		for _, n := range p.Motifs[:i] {
			near := math.Inf(1)
			for x := -1; x <= 1; x++ {
				for y := -1; y <= 1; y++ {
					near = min(near, math.Hypot(float64(m.Across-n.Across+measure.NM(x)*p.RepeatAcross), float64(m.Down-n.Down+measure.NM(y)*p.RepeatDown)))
				}
			}
			turn := (m.Pointing - n.Pointing + 360) % 360
			if near < float64(p.Apart)-1 && !(p.Striped && min(turn, 360-turn) >= motifs.Quarter) {
				return fmt.Sprintf("%s and %s are %.1f mm apart, not %.1f", m.Name, n.Name, near/1e6, float64(p.Apart)/1e6)
			}
		}
	}
	return ""
}

// crowded says that a plan keeps places less apart than there is room for: so many circles of that distance across cover a fifth
// of a print's repeat, and as many lengths half of a stripe's.
func crowded(p *motifs.Plan) string {
	n, apart := float64(p.Asked), float64(p.Apart)
	if p.Striped {
		if covered := n * apart / float64(p.RepeatAcross); covered < 0.49 || covered > 0.51 {
			return fmt.Sprintf("stripes are covered by %.2f", covered)
		}
		return ""
	}
	if covered := n * math.Pi * apart * apart / 4 / (float64(p.RepeatAcross) * float64(p.RepeatDown)); covered < 0.19 || covered > 0.2 {
		return fmt.Sprintf("the repeat is covered by %.3f", covered)
	}
	return ""
}

// TestPlacesAreApart: as many places as are asked for, no two nearer to each other than the plan says, whole marks of a ruler, within
// one repeat; a place that is moved next to another is noticed.
func TestPlacesAreApart(t *testing.T) {
	for name, text := range prints() {
		for _, count := range []int{1, 12, 30} {
			top, p := planned(t, text, count)
			if len(p.Motifs) != count {
				t.Errorf("%s: %d places, not %d", name, len(p.Motifs), count)
			}
			if wrong := tooClose(p); wrong != "" {
				t.Errorf("%s: %s", name, wrong)
			}
			if wrong := crowded(p); wrong != "" {
				t.Errorf("%s: %s", name, wrong)
			}
			mark := top.Units.Usual(measure.Inch/8, 5*measure.Millimetre)
			for _, m := range p.Motifs {
				if name == "awning" && m.Down != 0 || name == "deckchair" && m.Across != 0 {
					t.Errorf("%s: %s says a place along the stripes", name, m.Line)
				}
				if m.Across%mark != 0 || m.Down%mark != 0 || m.Across < 0 || m.Down < 0 || m.Across >= p.RepeatAcross || m.Down >= p.RepeatDown {
					t.Errorf("%s: %s lies at no mark of the repeat", name, m.Line)
				}
			}
			if count > 1 {
				p.Motifs[1].Across, p.Motifs[1].Down, p.Motifs[1].Pointing = p.Motifs[0].Across, p.Motifs[0].Down, p.Motifs[0].Pointing
				if tooClose(p) == "" {
					t.Errorf("%s: two motifs at one place are not noticed", name)
				}
			}
		}
	}
}

// onCloth are the places of the cloth that the corners of a top's wedges show that are cut from a motif.
func onCloth(top *quilt.Top, motif string) (list [][]measure.Vec) {
	places := top.ClothPlaces()
	for i := range top.Patches {
		p := &top.Patches[i]
		if c := top.CutOfPatch(i); c == nil || c.Motif != motif || p.Shape != blocks.Wedge {
			continue
		}
		var corners []measure.Vec
		for _, q := range p.Outline {
			x, y := places[p.First].OnCloth(float64(q.X), float64(q.Y))
			corners = append(corners, measure.Vec{X: x, Y: y})
		}
		list = append(list, corners)
	}
	return list
}

// farthest is how far the corners of wedges are from those of one, at the most.
func farthest(wedges [][]measure.Vec, one []measure.Vec) (off float64) {
	for _, w := range wedges {
		for i := range w {
			off = max(off, w[i].Minus(one[i]).Length())
		}
	}
	return off
}

// TestLinesDrawTheirFigures: the line of every motif, written into the layout, is accepted without a word, and the wedges of a ring and of
// webs then show the very place of the cloth that the figure does, the figure's picture being theirs pixel by pixel.
func TestLinesDrawTheirFigures(t *testing.T) {
	const slack = 5_000 // nanometers: corners are rounded
	for name, text := range prints() {
		_, p := planned(t, text, 4)
		for i := range p.Motifs {
			m := &p.Motifs[i]
			figure := onCloth(m.Top, m.Name)
			for _, blocks := range []string{ringOf, websOf} {
				top := laid(t, text+m.Line+"\n"+fmt.Sprintf(blocks, m.Name))
				wedges := onCloth(top, m.Name)
				if len(top.Warnings) > 0 || len(wedges) < 8 || len(figure) != 8 {
					t.Errorf("%s: %s: %d wedges, %d of the figure, %v", name, m.Line, len(wedges), len(figure), top.Warnings)
				}
				if off := farthest(append(wedges, figure...), figure[0]); off > slack {
					t.Errorf("%s: %s: wedges are off the figure's by %.0f nm", name, m.Line, off)
				}
			}
			ring := laid(t, text+m.Line+"\n"+fmt.Sprintf(ringOf, m.Name))
			if off := offPicture(t, ring, m.Top); off > 1 {
				t.Errorf("%s: the picture of %s is off by %.2f of 255 in the mean", name, m.Line, off)
			}
			if i > 0 {
				if off := offPicture(t, ring, p.Motifs[0].Top); off < 5 {
					t.Errorf("%s: the picture of another motif is not noticed", name)
				}
			}
		}
	}
}

// seen is a top as pixels, with its prints.
func seen(t testing.TB, top *quilt.Top) image.Image {
	t.Helper()
	scene, err := svgout.NewScene(top, svgout.Options{Prints: true, SeamLines: svgout.SeamsLeftOut})
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := picture.PNG(&b, scene, picture.Frame{Pixels: 200}); err != nil {
		t.Fatal(err)
	}
	m, err := png.Decode(&b)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// inEight says of a picture of a square whether a place of it, from its middle and in halves of its side, lies within eight wedges.
func inEight(x, y float64) bool {
	const rim = 0.97
	return max(math.Abs(x), math.Abs(y)) < rim && math.Abs(x)+math.Abs(y) < rim*math.Sqrt2
}

// within goes over the pixels of a square picture that lie within its eight wedges.
func within(m image.Image, yield func(x, y int, away float64)) {
	half := float64(m.Bounds().Dx()) / 2
	for y := range m.Bounds().Dy() {
		for x := range m.Bounds().Dx() {
			if dx, dy := (float64(x)+0.5)/half-1, (float64(y)+0.5)/half-1; inEight(dx, dy) {
				yield(x, y, math.Hypot(dx, dy))
			}
		}
	}
}

// offPicture is by how much the wedges of two tops look different, of 255, in the mean.
func offPicture(t testing.TB, a, b *quilt.Top) float64 {
	t.Helper()
	p, q := seen(t, a), seen(t, b)
	off, looked := 0.0, 0.0
	within(p, func(x, y int, _ float64) {
		r, g, b, _ := p.At(x, y).RGBA()
		r2, g2, b2, _ := q.At(x, y).RGBA()
		for _, pair := range [3][2]uint32{{r, r2}, {g, g2}, {b, b2}} {
			off, looked = off+math.Abs(float64(pair[0]>>8)-float64(pair[1]>>8)), looked+1
		}
	})
	return off / looked
}

// TestFiguresAreWhatIsSeen: how light a figure is, and whether its middle or its edge is lighter, is what its picture shows. Lightness is
// that of CIE 15:2004.
func TestFiguresAreWhatIsSeen(t *testing.T) {
	told := 0
	for name, text := range prints() {
		if name == "small" || strings.Contains(text, "stripes") {
			continue // where a wedge shows a whole repeat and more, or edges of stripes, pixels and points are not the same
		}
		_, p := planned(t, text, 12)
		for i := range p.Motifs {
			m := &p.Motifs[i]
			v := seen(t, m.Top)
			var sums, counts [3]float64 // all, the middle, the edge
			within(v, func(x, y int, away float64) {
				r, g, b, _ := v.At(x, y).RGBA()
				l := palettes.Colour{R: uint8(r >> 8), G: uint8(g >> 8), B: uint8(b >> 8)}.Lightness()
				for k, in := range [3]bool{true, away < 0.5, away > 0.85} {
					if in {
						sums[k], counts[k] = sums[k]+l, counts[k]+1
					}
				}
			})
			mean, middle, edge := sums[0]/counts[0], sums[1]/counts[1], sums[2]/counts[2]
			if math.Abs(mean-m.Mean) > 3 {
				t.Errorf("%s: %s has L* %.1f, and its picture %.1f", name, m.Line, m.Mean, mean)
			}
			part := middle
			if m.Figure == motifs.Rim {
				part = edge
			}
			if m.Figure == motifs.Center || m.Figure == motifs.Rim {
				if told++; (part > mean) != m.Light {
					t.Errorf("%s: %s is said to be a figure %v, light %v; it has L* %.1f there and %.1f in all", name, m.Line, m.Figure, m.Light, part, mean)
				}
			}
		}
	}
	if told < 6 {
		t.Errorf("only %d figures have a middle or an edge", told)
	}
}

// TestFirstHasMostContrast: no other motif has more, and none has hardly any where the print has enough.
func TestFirstHasMostContrast(t *testing.T) {
	for name, text := range prints() {
		_, p := planned(t, text, 12)
		for _, m := range p.Motifs {
			if m.Contrast > p.Motifs[0].Contrast || m.Contrast < 5 {
				t.Errorf("%s: %s has a contrast of %.1f, the first one of %.1f", name, m.Line, m.Contrast, p.Motifs[0].Contrast)
			}
		}
	}
}

// TestChosenAreUnlike: on a print that shows everything twice in one repeat no two motifs look alike.
func TestChosenAreUnlike(t *testing.T) {
	text := "strip 4 1/2\nfabric cloth swatch \"a.png\" across 16 repeat across 16 down 10\n" + sand + fmt.Sprintf(ringOf, "cloth")
	design, _, _ := layout.ReadWith(text, func(string) (palettes.PhotoSample, error) {
		once, err := waves()
		twice, b := once, once.Tile.Bounds()
		twice.Width, twice.Tile = 2*once.Width, image.NewRGBA(image.Rect(0, 0, 2*b.Dx(), b.Dy()))
		for y := range b.Dy() {
			for x := range 2 * b.Dx() {
				twice.Tile.SetRGBA(x, y, once.Tile.RGBAAt(x%b.Dx(), y))
			}
		}
		twice.Height = twice.Width * 10 / 16
		return twice, err
	})
	p, err := motifs.Build(quilt.Lay(design), 0, motifs.Options{Count: 8})
	if err != nil {
		t.Fatal(err)
	}
	least := math.Inf(1)
	for i := range p.Motifs {
		for j := range i {
			least = min(least, offPicture(t, p.Motifs[i].Top, p.Motifs[j].Top))
		}
	}
	if t.Logf("the two most alike are off each other by %.1f of 255", least); least < 15 {
		t.Errorf("two of the motifs are off each other by %.1f of 255 only", least)
	}
}

// TestNames: a name that the layout has is not given again, and none is longer than names may be.
func TestNames(t *testing.T) {
	long := strings.Repeat("x", layout.MaxNameChars)
	text := "strip 4\nfabric " + long + " stripes navy 1 white 1/2\n" + sand + fmt.Sprintf(ringOf, long)
	seen := map[string]bool{}
	p, err := motifs.Build(laid(t, text), 0, motifs.Options{Taken: func(name string) bool { return strings.HasSuffix(name, "-2") }})
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range p.Motifs {
		if !layout.IsName(m.Name) || seen[m.Name] || strings.HasSuffix(m.Name, "-2") {
			t.Errorf("%s is no free name", m.Name)
		}
		seen[m.Name] = true
	}
}

// TestStepsAreBounded: however large a repeat is, the search takes no more steps than the most places do.
func TestStepsAreBounded(t *testing.T) {
	const most = 8_000_000
	for _, text := range []string{
		"strip 40\nfabric cloth swatch \"a.png\" across 40 repeat across 40 down 26\n",
		"strip 4\nfabric cloth swatch \"a.png\" across 1 1/4 repeat across 1 1/4 down 1/2\n",
		"strip 12\nfabric cloth stripes navy 10 white 10 red 9 black 10\n",
	} {
		top := laid(t, text+sand+fmt.Sprintf(ringOf, "cloth"))
		steps := stop.Count(func(sign *stop.Sign) {
			if _, err := motifs.Build(top, 0, motifs.Options{Count: motifs.Most, Sign: sign}); err != nil {
				t.Error(err)
			}
		})
		if t.Logf("%d steps", steps); steps > most || steps < 1000 {
			t.Errorf("%d steps for\n%s", steps, text)
		}
	}
}

// TestMirroredCenters: the eight wedges of a mirrored pair are cut by turns from two places, which are each other's mirror image at a line
// of the print, and no place is its own; a print without a line is refused.
func TestMirroredCenters(t *testing.T) {
	for _, stripes := range []string{"navy 3/4 white 1/2 #c9503c 1", "navy 3/4 white 1/2 #c9503c 1 crosswise"} {
		top := laid(t, fmt.Sprintf("strip 4\nfabric cloth stripes "+stripes+"\n"+sand+ringOf, "cloth"))
		p, err := motifs.Build(top, 0, motifs.Options{Count: 8, Mirrored: true})
		if err != nil || !p.Mirrored || p.AnyCrosswise == p.AnyLengthwise || len(p.Motifs) != 8 {
			t.Fatal(err, p)
		}
		for i := range p.Motifs {
			m := &p.Motifs[i]
			if !strings.HasSuffix(m.Line, " mirrored") || m.Figure == motifs.Pinwheel {
				t.Errorf("%s: %s", m.Line, m.Figure)
			}
			if len(m.Top.Cuts) != 2 || m.Top.Cuts[0] == m.Top.Cuts[1] || m.Top.Cuts[0].Mirrored || !m.Top.Cuts[1].Mirrored {
				t.Fatalf("%s: %+v", m.Line, m.Top.Cuts)
			}
			for n, cut := range m.Top.CutOf {
				if int(cut) != n%2 {
					t.Errorf("%s: wedge %d is cut from %d", m.Line, n, cut)
				}
			}
			a, b := m.Top.Cuts[0].Pointing, m.Top.Cuts[1].Pointing
			if want := map[bool]int{true: (540 - a) % 360, false: (360 - a) % 360}[p.AnyCrosswise]; b != want || m.Top.Cuts[0].Place != m.Top.Cuts[1].Place {
				t.Errorf("%s: mirrored it points by %d, not %d", m.Line, b, want)
			}
		}
	}
	top := laid(t, fmt.Sprintf(prints()["large"]+ringOf, "cloth"))
	_, err := motifs.Build(top, 0, motifs.Options{Count: 8, Mirrored: true})
	var unfit *motifs.Unfit
	if !errors.As(err, &unfit) || unfit.Why != motifs.NoMirror {
		t.Errorf("a print without a mirror line: %v", err)
	}
}
