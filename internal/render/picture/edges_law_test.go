package picture

import (
	"bytes"
	"errors"
	"image"
	"io"
	"math"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/internal/quilttest/readpdf"
	"eighthturn/palettes"
	"eighthturn/svgout"
)

func near6(a, b []xy) bool {
	return slices.EqualFunc(a, b, func(p, q xy) bool { return math.Abs(p.x-q.x)+math.Abs(p.y-q.y) < 1e-6 })
}

// TestClothRunsOnPastCorners: a quilt of 100 by 60 units with a bleed of 5: an edge of a piece on the quilt's edge moves out by the bleed, and both at a corner of one piece. At a corner that two pieces
// share, what lies beyond both edges is of the one that lies along the upper or lower edge. Together the pieces then fill the quilt with its bleed.
func TestClothRunsOnPastCorners(t *testing.T) {
	p := &page{scale: 2, bleed: 10, sides: sides{side{quilt: 100}, side{quilt: 60}}}
	for _, c := range []struct{ outline, want []xy }{
		{[]xy{{10, 10}, {20, 10}, {20, 20}}, []xy{{10, 10}, {20, 10}, {20, 20}}},
		{[]xy{{0, 0}, {100, 0}, {100, 60}, {0, 60}}, []xy{{-5, -5}, {105, -5}, {105, 65}, {-5, 65}}},
		{[]xy{{20, 0}, {40, 0}, {40, 30}, {20, 30}}, []xy{{20, 0}, {20, 0}, {20, -5}, {40, -5}, {40, 0}, {40, 0}, {40, 30}, {20, 30}}},
		{[]xy{{0, 0}, {100, 0}, {100, 60}}, []xy{{0, 0}, {-5, 0}, {-5, -5}, {105, -5}, {105, 60}, {100, 60}, {100, 60}}},
		{[]xy{{0, 0}, {100, 60}, {0, 60}}, []xy{{-5, 0}, {0, 0}, {0, 0}, {100, 60}, {105, 60}, {105, 65}, {-5, 65}}},
		{[]xy{{0, 0}, {100, 0}, {0, 60}}, []xy{{-5, -5}, {105, -5}, {105, 0}, {100, 0}, {0, 60}, {0, 60}, {-5, 60}}},
		{[]xy{{100, 0}, {100, 60}, {0, 60}}, []xy{{100, 0}, {100, 0}, {105, 0}, {105, 65}, {-5, 65}, {-5, 60}, {0, 60}}},
		{[]xy{{0, 0}, {50, 0}, {100, 0}, {100, 30}, {100, 60}, {70, 60}, {0, 60}, {0, 20}}, []xy{{-5, -5}, {50, -5}, {105, -5}, {105, 30}, {105, 65}, {70, 65}, {-5, 65}, {-5, 20}}},
	} {
		got := p.ranOn(c.outline)
		if !near6(got, c.want) {
			t.Errorf("%v: %v, expected %v", c.outline, got, c.want)
		}
	}
	for _, c := range []struct {
		off  float64
		want bool
	}{{0, true}, {0.019, true}, {-0.019, true}, {0.021, false}, {-0.021, false}} { // what lies beneath seams is exact to a hundredth
		for i, way := range []xy{{-5, 0}, {5, 0}, {0, -5}, {0, 5}} {
			a, b := []xy{{c.off, 9}, {100 + c.off, 9}, {9, c.off}, {9, 60 + c.off}}[i], []xy{{0, 30}, {100, 30}, {30, 0}, {30, 60}}[i]
			want := xy{}
			if c.want {
				want = way
			}
			if p.outward(a, b) != want || p.outward(b, a) != want {
				t.Errorf("off by %g at side %d: %v", c.off, i, p.outward(a, b))
			}
		}
		if got := p.aside(xy{c.off, 0}, xy{0, -5}); got != map[bool]float64{true: -5}[c.want] {
			t.Errorf("a corner that is off by %g goes aside by %g", c.off, got)
		}
		if got := p.aside(xy{100 + c.off, 0}, xy{0, -5}); got != map[bool]float64{true: 5}[c.want] {
			t.Errorf("a corner that is off by %g goes aside by %g", c.off, got)
		}
	}
	if got := p.aside(xy{0, 0}, xy{-5, 0}); got != 0 {
		t.Errorf("what goes out to the left goes aside by %g", got)
	}
}

// TestOutlinesGoClockwise: an outline of any size is turned to go clockwise on screen, begun at its other end, and left as it is where it does.
func TestOutlinesGoClockwise(t *testing.T) {
	for _, side := range []float64{0.01, 0.9, 1.5, 200} {
		way := []xy{{3, 4}, {3 + side, 4}, {3 + side, 4 + side/2}}
		back := []xy{way[2], way[1], way[0]}
		if got := clockwise(way); !near6(got, way) {
			t.Errorf("%v becomes %v", way, got)
		}
		if got := clockwise(back); !near6(got, way) {
			t.Errorf("%v becomes %v", back, got)
		}
	}
}

// TestDashesOfLines: each stretch of a line begins with a dash, dashes and gaps are alike, and the last is cut where the line ends; a line that is not dashed has its stretches, a closed one the way back as well. A line is as broad as its
// pen, with a disc at each end where it has round ends.
func TestDashesOfLines(t *testing.T) {
	corner := []xy{{0, 0}, {10, 0}, {10, 5}}
	for _, c := range []struct {
		p    path
		dash float64
		want []xy
	}{
		{path{corner, false}, 0, []xy{{0, 0}, {10, 0}, {10, 0}, {10, 5}}}, {path{corner, true}, 0, []xy{{0, 0}, {10, 0}, {10, 0}, {10, 5}, {10, 5}, {0, 0}}},
		{path{corner, false}, 2.5, []xy{{0, 0}, {2.5, 0}, {5, 0}, {7.5, 0}, {10, 0}, {10, 2.5}}}, {path{corner, false}, 4, []xy{{0, 0}, {4, 0}, {8, 0}, {10, 0}, {10, 0}, {10, 4}}}, {path{corner[:1], true}, 0, nil}, {path{corner[:1], false}, 3, nil}, {path{corner[:2], true}, 20, []xy{{0, 0}, {10, 0}, {10, 0}, {0, 0}}},
		{path{[]xy{{5, 7}, {8, 11}}, false}, 0.9, []xy{{5, 7}, {5.54, 7.72}, {6.08, 8.44}, {6.62, 9.16}, {7.16, 9.88}, {7.7, 10.6}}},
	} {
		var got []xy
		for _, stretch := range dashed(c.p, c.dash) {
			got = append(got, stretch[0], stretch[1])
		}
		if !near6(got, c.want) {
			t.Errorf("%+v in dashes of %g: %v, expected %v", c.p, c.dash, got, c.want)
		}
	}
	if got := appendDashes(nil, xy{}, xy{x: 1e9}, 1); len(got) != 100_000 {
		t.Errorf("%d dashes of a line without end", len(got))
	}
	list := stroked([]path{{[]xy{{10, 20}, {40, 60}}, false}}, svgout.Style{Width: 5})
	if want := []xy{{8, 21.5}, {12, 18.5}, {42, 58.5}, {38, 61.5}}; len(list) != 1 || !near6(clockwise(list[0]), list[0]) || !near6(fromLeft(list[0]), fromLeft(want)) {
		t.Errorf("a line is %v", list)
	}
	if list = stroked([]path{{[]xy{{0, 0}, {0, 0}}, false}}, svgout.Style{Width: 5}); len(list) != 0 {
		t.Errorf("a line of no length is %v", list)
	}
	list = stroked([]path{{[]xy{{0, 0}, {30, 40}}, false}}, svgout.Style{Width: 5, Caps: true})
	if len(list) != 3 || len(list[1]) != 16 || len(list[2]) != 16 {
		t.Fatalf("a line with round ends is %v", list)
	}
	for i, middle := range []xy{{0, 0}, {30, 40}} {
		disc := list[i+1]
		for n, q := range disc {
			turn := 2 * math.Pi * float64(n) / 16
			if math.Abs(q.x-middle.x-2.5*math.Cos(turn))+math.Abs(q.y-middle.y-2.5*math.Sin(turn)) > 1e-9 {
				t.Errorf("a round end has the corner %v", q)
			}
		}
	}
}

func fromLeft(list []xy) []xy {
	list = slices.Clone(list)
	slices.SortFunc(list, func(a, b xy) int { return int(math.Copysign(1, a.x-b.x)) })
	return list
}

// TestRepeatsSideBySide: a picture laid out has itself at each place, of a part of a larger picture as well.
func TestRepeatsSideBySide(t *testing.T) {
	whole := image.NewRGBA(image.Rect(0, 0, 7, 6))
	for i := range whole.Pix {
		whole.Pix[i] = uint8(i * 7)
	}
	part := whole.SubImage(image.Rect(2, 1, 5, 3)).(*image.RGBA)
	for _, times := range [][2]int{{1, 1}, {2, 1}, {1, 2}, {3, 2}} {
		got := laidOut(part, times[0], times[1])
		b := got.Bounds()
		if b.Dx() != 3*times[0] || b.Dy() != 2*times[1] || (got == part) != (times == [2]int{1, 1}) {
			t.Errorf("%v times: %v", times, b)
		}
		if all := laidOut(whole, times[0], times[1]); all.RGBAAt(all.Rect.Dx()-1, all.Rect.Dy()-1) != whole.RGBAAt(6, 5) {
			t.Errorf("%v times the whole: another last pixel", times)
		}
		for y := range b.Dy() {
			for x := range b.Dx() {
				if got.RGBAAt(b.Min.X+x, b.Min.Y+y) != whole.RGBAAt(2+x%3, 1+y%2) {
					t.Fatalf("%v times: another pixel at %d, %d", times, x, y)
				}
			}
		}
	}
}

// TestLinesOfPosters: words go into lines as full as may be, up to the last digit of the width; of more lines than may be the last ends in an ellipsis, and so does a line that
// is too wide, after the letters that have room with it, without the comma before it.
func TestLinesOfPosters(t *testing.T) {
	a := &arranging{letters: diagram.NewLettering()}
	wide := func(text string) float64 { return a.letters.Width(text, 20, true) }
	less := func(v float64) float64 { return math.Nextafter(v, 0) }
	for _, c := range []struct {
		room float64
		want string
	}{{wide("Webs on the"), "Webs on the|quay"}, {less(wide("Webs on the")), "Webs on|the quay"}, {wide("Webs"), "Webs|on|the|quay"}, {1, "Webs|on|the|quay"}, {wide("Webs on the quay"), "Webs on the quay"}} {
		if got := strings.Join(a.broken(" Webs on  the quay ", 20, true, c.room), "|"); got != c.want {
			t.Errorf("%g wide: %s, expected %s", c.room, got, c.want)
		}
	}
	if got := a.broken("", 20, true, 9); len(got) != 1 || got[0] != "" {
		t.Errorf("of no words: %q", got)
	}
	for _, c := range []struct {
		lines string
		most  int
		room  float64
		want  string
	}{
		{"Webs|on", 2, 999, "Webs|on"}, {"Webs|on|the", 2, 999, "Webs|on…"}, {"Webs,|on;|the", 1, 999, "Webs…"}, {"Webs", 2, wide("Webs"), "Webs"}, {"Webs", 2, less(wide("Webs")), "We…"}, {"Webs", 2, wide("We…"), "We…"}, {"Webs", 2, less(wide("We…")), "W…"},
		{"Webs|on", 1, wide("Webs…"), "Webs…"}, {"Webs|on", 1, less(wide("Webs…")), "Web…"}, {"Webs|longer ones|on", 3, wide("longer…"), "Webs|longer…|on"}, {"e\u0301e\u0301|x", 1, wide("e\u0301…"), "e\u0301…"}, {"Webs", 1, 1, "…"}, {"🇫🇷🇩🇪|x", 1, wide("🇫🇷…"), "🇫🇷…"}, {"🇫🇷🇩🇪|x", 1, less(wide("🇫🇷…")), "…"},
	} {
		if got := strings.Join(a.clipped(strings.Split(c.lines, "|"), c.most, 20, true, c.room), "|"); got != c.want {
			t.Errorf("%s in %d lines of %g: %s, expected %s", c.lines, c.most, c.room, got, c.want)
		}
	}
}

// TestMarginsOfPosters: a margin is what was asked for, none and less than a pixel included; where none was said, 0.06 of the shorter side.
func TestMarginsOfPosters(t *testing.T) {
	for margin, want := range map[float64]float64{-1: 12, 0: 0, 0.5: 0.5, 30: 30} {
		for _, size := range [][2]int{{300, 200}, {200, 300}} {
			a := &arranging{Poster: &Poster{Margin: margin}}
			a.set(size[0], size[1])
			if math.Abs(a.edge-want) > 1e-9 || a.roomAcross != float64(size[0])-2*a.edge || a.roomDown != float64(size[1])-2*a.edge || math.Abs(a.unit-math.Sqrt(60000)) > 1e-9 {
				t.Errorf("margin %g: %g, with room of %g by %g", margin, a.edge, a.roomAcross, a.roomDown)
			}
		}
	}
}

// TestInksOfPosters: words take the color of cloth with the greatest contrast, where that is 9 or more, else a soft black or white where that has 4.5, else black or white.
func TestInksOfPosters(t *testing.T) {
	gray := func(v uint8) palettes.Colour { return palettes.Colour{R: v, G: v, B: v} }
	navy, rust := palettes.Colour{R: 0x1f, G: 0x33, B: 0x50}, palettes.Colour{R: 0xb5, G: 0x55, B: 0x2b}
	for _, c := range []struct {
		ground palettes.Colour
		of     []palettes.Colour
		want   palettes.Colour
	}{
		{gray(255), []palettes.Colour{rust, navy}, navy}, {gray(255), []palettes.Colour{navy, rust}, navy}, {gray(255), []palettes.Colour{rust}, gray(0x22)}, {gray(255), nil, gray(0x22)}, {gray(20), []palettes.Colour{rust, navy}, gray(0xfa)},
		{gray(255), []palettes.Colour{gray(74)}, gray(0x22)}, {gray(255), []palettes.Colour{gray(72)}, gray(72)}, // #4a4a4a has 8.86 on white, #484848 has 9.17 (by the formula of WCAG 2.1)
		{gray(118), nil, gray(0)}, {gray(117), nil, gray(255)}, {gray(112), nil, gray(0xfa)}, {gray(150), nil, gray(0x22)},
	} {
		if got := InkOn(c.ground, c.of); got != c.want {
			t.Errorf("on %s of %v: %s, expected %s", c.ground.Hex(), c.of, got.Hex(), c.want.Hex())
		}
	}
}

// TestSmallFrames: what is asked for is had from one pixel, and one pixel an inch, on.
func TestSmallFrames(t *testing.T) {
	s := scened(t, lay.Top(t, "side 10\nfabric red #b5532a\nblock P plain piece red\ngrid\n P\n P\n"), svgout.Options{})
	for _, c := range []struct {
		f             Frame
		width, height int
		perInch       float64
	}{
		{Frame{Pixels: 1}, 1, 1, 0.05}, {Frame{PerInch: 1}, 10, 20, 1}, {Frame{PerInch: 0.5}, 5, 10, 0.5}, {Frame{Pixels: 20, MarginPixels: 1}, 12, 22, 1}, {Frame{Pixels: 20, MarginPixels: 3, Margin: measure.Inch}, 16, 26, 1}, {Frame{Pixels: 20, Margin: 2 * measure.Inch, Bleed: measure.Inch}, 16, 26, 1},
		{Frame{Pixels: 1, Longest: 10 * measure.Inch}, 1, 1, 0.1}, {Frame{Pixels: 1, PerInch: 300}, 1, 1, 300}, {Frame{Pixels: 20, MarginPixels: 1, Bleed: measure.Inch}, 14, 24, 1}, {Frame{Pixels: 20, Bleed: 2 * measure.Inch}, 14, 24, 1},
		{Frame{Pixels: 20, Longest: 10 * measure.Inch}, 10, 20, 2}, {Frame{Pixels: 20, Longest: 10 * measure.Inch, PerInch: 300}, 10, 20, 300},
	} {
		size, perInch, err := PNGSize(s, c.f)
		if err != nil || size.Width != c.width || size.Height != c.height || math.Abs(perInch-c.perInch) > 1e-9 {
			t.Errorf("%+v: %v at %g, %v", c.f, size, perInch, err)
		}
		job, err := sized(s, c.f)
		if bleed := int(math.Round(inches(c.f.Bleed) * c.perInch)); err != nil || job.RunOn != map[bool]int{true: bleed}[c.f.Margin == 0 && c.f.MarginPixels == 0] || job.Quilt.Dx() < 1 || job.Quilt.Dy() < 1 || 2*job.Quilt.Min.X != c.width-job.Quilt.Dx() || 2*job.Quilt.Min.Y != c.height-job.Quilt.Dy() {
			t.Errorf("%+v: runs on by %d, the quilt at %v", c.f, job.RunOn, job.Quilt)
		}
	}
	for pixels, want := range map[float64]int{-5: 1, 0: 1, 0.4: 1, 1.49: 1, 1.5: 2, 1e8: 1e8, 1e12: 1e8} {
		if got := whole(pixels); got != want {
			t.Errorf("%g pixels: %d", pixels, got)
		}
	}
	for pixels, want := range map[float64]int{-5: 0, 0: 0, 0.4: 0, 0.5: 1, 1.5: 2, 1e12: 1e8} {
		if got := framing(pixels); got != want {
			t.Errorf("%g pixels round it: %d", pixels, got)
		}
	}
}

// TestSlightBleeds: cloth runs on into a bleed of half a point as well, to the edges of the page, and not into one beyond a margin; the trim lies within.
func TestSlightBleeds(t *testing.T) {
	s := scened(t, lay.Top(t, "side 1\nfabric red #b5532a\nblock P plain piece red\ngrid\n P\n"), svgout.Options{SeamLines: svgout.SeamsLeftOut})
	for _, c := range []struct {
		f    Frame
		want string // the outline of the one piece
		trim bool
	}{
		{Frame{Bleed: measure.Inch / 144}, "0 73 m\n73 73 l\n73 0 l\n0 0 l", true}, {Frame{}, "0 72 m\n72 72 l\n72 0 l\n0 0 l", false}, {Frame{Bleed: measure.Inch / 36, Margin: measure.Inch / 36}, "4 76 m\n76 76 l\n76 4 l\n4 4 l", true},
	} {
		text, err := readpdf.Text(pdfOf(t, s, c.f))
		if err != nil || !strings.Contains(text, c.want) || strings.Contains(text, "/TrimBox") != c.trim {
			t.Errorf("%+v: %v, no outline %q in %s", c.f, err, c.want, text)
		}
	}
}

// TestWhatIsSaidOfLongPages: a page that is too long is told as long as it would be, in the layout's units, and which longest side can be had.
func TestWhatIsSaidOfLongPages(t *testing.T) {
	s := scened(t, lay.Top(t, "side 10\nfabric red #b5532a\nblock P plain piece red\ngrid\n P\n P\n"), svgout.Options{})
	for _, c := range []struct {
		f    Frame
		want string
		left measure.NM
	}{
		{Frame{Longest: 300 * measure.Inch, Margin: measure.Inch / 2, Bleed: measure.Inch / 2}, "the page would be 152 in by 302 in, and a PDF's is at most 200 in long", 198 * measure.Inch},
		{Frame{Margin: 120 * measure.Inch}, "the page would be 250 in by 260 in, and a PDF's is at most 200 in long", 0},
	} {
		var long *TooLong
		if err := PDF(io.Discard, s, c.f); !errors.As(err, &long) || long.Error() != c.want || long.Longest != c.left {
			t.Errorf("%+v: %v, %+v", c.f, err, long)
		}
	}
	var long *TooLong
	metric := scened(t, lay.Top(t, "units cm\nside 25\nfabric red #b5532a\nblock P plain piece red\ngrid\n P\n P\n"), svgout.Options{})
	if err := PDF(io.Discard, metric, Frame{Margin: 300 * measure.Centimetre}); !errors.As(err, &long) || long.Error() != "the page would be 625 cm by 650 cm, and a PDF's is at most 508 cm long" {
		t.Errorf("in centimeters: %v", err)
	}
	if err := PDF(io.Discard, s, Frame{Longest: MaxPage}); err != nil {
		t.Errorf("a page of the greatest length: %v", err)
	}
}

// TestQualityOfPhotos: where nothing is said, a JPEG of a scene or of a canvas has a quality of 92, and else what is said.
func TestQualityOfPhotos(t *testing.T) {
	s, c := scened(t, lay.Top(t, smallQuilt), svgout.Options{}), smallCanvas(t, 1)
	for name, write := range map[string]func(w io.Writer, quality int) error{
		"canvas": c.JPEG, "scene": func(w io.Writer, quality int) error { return JPEG(w, s, Frame{Pixels: 60, Quality: quality}) },
	} {
		var none, usual, low bytes.Buffer
		for file, quality := range map[*bytes.Buffer]int{&none: 0, &usual: 92, &low: 30} {
			if err := write(file, quality); err != nil {
				t.Fatal(err)
			}
		}
		if !bytes.Equal(none.Bytes(), usual.Bytes()) || low.Len() >= usual.Len() {
			t.Errorf("%s: %d bytes, of 92 %d, of 30 %d", name, none.Len(), usual.Len(), low.Len())
		}
	}
}

// TestWordsOfPosters: a canvas has the words of its poster and no others, a title without lines, lines without a title, and names.
func TestWordsOfPosters(t *testing.T) {
	scene := plainScene(t, lay.Top(t, smallQuilt), svgout.Colour, "")
	for _, c := range []struct{ title, line, name, says string }{{}, {title: "Tide"}, {line: "by hand"}, {title: "Tide", line: "by hand", name: "one", says: "two"}, {name: "one"}, {says: "two"}} {
		for _, size := range [][2]int{{600, 400}, {400, 600}, {0, 0}} {
			p := &Poster{Width: size[0], Height: size[1], PerInch: 100, Margin: -1, Ground: palettes.Colour{R: 255, G: 255, B: 255}, Title: c.title, Groups: []Group{{Name: c.name, Parts: []Part{{Scene: scene}}}}}
			var want, got []string
			if c.line != "" {
				p.Lines = []string{c.line}
			}
			if c.says != "" {
				p.Groups[0].Says = []string{c.says}
			}
			for _, text := range []string{c.title, c.line, c.name, c.says} {
				if text != "" {
					want = append(want, text)
				}
			}
			canvas, err := p.Arrange()
			if err != nil {
				t.Fatal(err)
			}
			for _, w := range canvas.Words {
				got = append(got, w.Text.Text)
			}
			slices.Sort(got)
			slices.Sort(want)
			if !slices.Equal(got, want) || len(canvas.Panels) != 1 {
				t.Errorf("%+v on %v: %q", c, size, got)
			}
		}
	}
}
