package palettes

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"io"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/stop"
)

// TestBoundsOfTextFiles: names, lines, numbers and files that are just as long or as large as they may be are read, and one more is a fault
// of its line.
func TestBoundsOfTextFiles(t *testing.T) {
	letters := func(n int) string { return strings.Repeat("x", n) }
	for _, c := range []struct {
		read       func(io.Reader) (Palette, error)
		text       string // %s for what there may be so much of
		good, over string
		line       int
	}{
		{readGPL, "GIMP Palette\nName: %s\n1 2 3\n", letters(maxNameBytes), letters(maxNameBytes + 1), 2},
		{readGPL, "GIMP Palette\n1 2 3 %s\n", letters(maxNameBytes), letters(maxNameBytes + 1), 2},
		{readGPL, "GIMP Palette\n1 2 3\n#%s", letters(maxLineBytes - 1), letters(maxLineBytes), 3},
		{readGPL, "GIMP Palette\nColumns: %s\n1 2 3\n", "255", "256", 2},
		{readGPL, "GIMP Palette\nColumns: %s\n1 2 3\n", "0", "-1", 2},
		{readGPL, "GIMP Palette\n%s 2 3\n", "255", "256", 2},
		{readGPL, "GIMP Palette\n1 2 %s\n", "0", "-1", 2},
		{readHexList, "#123456 %s\n", letters(maxNameBytes), letters(maxNameBytes + 1), 1},
		{readHexList, "\n%s\n", "12345f", "12345", 2},
		{readHexList, "\n%s\n", "abcdef", "abcdef0", 2},
		{readCSS, "a {\n--%s: red }", letters(maxNameBytes), letters(maxNameBytes + 1), 2},
		{readCSS, "a {\n--x: rgb(1 2 %s) }", "255", "255.1", 2},
		{readCSS, "a {\n--x: rgb(1 2 %s) }", "0", "-0.1", 2},
		{readCSS, "a {\n--x: rgb(%s 2%% 3%%) }", "100%", "100.1%", 2},
		{readCSS, "a {\n--x: rgb(1 2 3 / %s) }", "1", "0.99", 2},
		{readCSS, "a {\n--x: rgb(1 2 3 / %s) }", "100%", "99%", 2},
		{readCSS, "a {\n--x: rgb(1,2,3%s) }", ",1", ",1,1", 2},
		{readCSS, "a {\n--x: rgb(1%s) }", ",2,3", ",2", 2},
	} {
		if p, err := c.read(strings.NewReader(fmt.Sprintf(c.text, c.good))); err != nil || len(p.Fabrics) != 1 {
			t.Errorf("%.40q: %d colors, %v", fmt.Sprintf(c.text, c.good), len(p.Fabrics), err)
		}
		var fault *fileError
		if _, err := c.read(strings.NewReader(fmt.Sprintf(c.text, c.over))); !errors.As(err, &fault) || fault.Line != c.line {
			t.Errorf("%.40q: %v, expected a fault in line %d", fmt.Sprintf(c.text, c.over), err, c.line)
		}
	}
}

// TestFilesByteByByte: what is written of a palette in each format, whole: as the formats' descriptions have it, names and all.
func TestFilesByteByByte(t *testing.T) {
	p := Palette{Name: "Dock", Fabrics: []Swatch{{"navy blue", Colour{0, 51, 255}}, {"", Colour{255, 255, 255}}}}
	u16 := func(text string) string {
		var b strings.Builder
		for _, r := range text {
			b.WriteString("\x00" + string(r))
		}
		return b.String()
	}
	for ending, want := range map[string]string{
		".gpl": "GIMP Palette\nName: Dock\n#\n  0  51 255\tnavy blue\n255 255 255\n",
		".hex": "0033ff\nffffff\n",
		".txt": "// Dock\n#0033ff navy blue\n#ffffff\n",
		".css": ":root {\n  --navy-blue: #0033ff;\n  --colour-2: #ffffff;\n}\n",
		".ase": "ASEF\x00\x01\x00\x00\x00\x00\x00\x04" + // four blocks: a group begins, two colors, it ends
			"\xc0\x01\x00\x00\x00\x0c" + "\x00\x05" + u16("Dock") + "\x00\x00" +
			"\x00\x01\x00\x00\x00\x28" + "\x00\x0a" + u16("navy blue") + "\x00\x00" + "RGB " + "\x00\x00\x00\x00" + "\x3e\x4c\xcc\xcd" + "\x3f\x80\x00\x00" + "\x00\x02" + // 51/255 is 0.2
			"\x00\x01\x00\x00\x00\x16" + "\x00\x01" + "\x00\x00" + "RGB " + "\x3f\x80\x00\x00" + "\x3f\x80\x00\x00" + "\x3f\x80\x00\x00" + "\x00\x02" +
			"\xc0\x02\x00\x00\x00\x00",
	} {
		f, _ := FormatOf("x" + ending)
		var b strings.Builder
		if err := f.Write(&b, p); err != nil || b.String() != want {
			t.Errorf("%s: %q, expected %q (%v)", ending, b.String(), want, err)
		}
	}
	var b strings.Builder
	p.Name = " "
	if err := writeASE(&b, p); err != nil || !strings.HasPrefix(b.String(), "ASEF\x00\x01\x00\x00\x00\x00\x00\x02\x00\x01") || strings.HasSuffix(b.String(), "\xc0\x02\x00\x00\x00\x00") {
		t.Errorf("a palette without a name has a group: %q, %v", b.String(), err)
	}
}

// TestBoundsOfASE: every number of a color at the ends of its range and beyond them, bodies that are just long enough, bytes at the end, and
// colors that are omitted among as many as there may be.
func TestBoundsOfASE(t *testing.T) {
	body := func(model string, numbers []float32) []byte {
		return aseFile(1, aseBlock(aseColour, aseBody("x", model, numbers...)))
	}
	for _, c := range []struct {
		model     string
		low, high []float32
	}{{"RGB ", []float32{0, 0, 0}, []float32{1, 1, 1}}, {"Gray", []float32{0}, []float32{1}}, {"GRAY", []float32{0}, []float32{1}}, {"LAB ", []float32{0, -128, -128}, []float32{1, 128, 128}}, {"Lab ", []float32{0, -128, -128}, []float32{1, 128, 128}}} {
		for i := range c.low {
			for _, off := range []float32{0, 0.0005, 0.002, 0.2, 20} {
				for _, high := range []bool{false, true} {
					numbers := slices.Clone(c.low)
					numbers[i] = c.low[i] - off
					if high {
						numbers[i] = c.high[i] + off
					}
					if _, err := readASE(strings.NewReader(string(body(c.model, numbers)))); (err == nil) != (off < 0.001) {
						t.Errorf("%s %v: %v", c.model, numbers, err)
					}
				}
			}
		}
		bare := aseBody("x", c.model, c.high...)
		bare = bare[:len(bare)-2] // without what says of what type the color is
		if p, err := readASE(strings.NewReader(string(aseFile(1, aseBlock(aseColour, bare))))); err != nil || len(p.Fabrics) != 1 {
			t.Errorf("%s, just long enough: %v", c.model, err)
		}
		if _, err := readASE(strings.NewReader(string(aseFile(1, aseBlock(aseColour, bare[:len(bare)-1]))))); err == nil {
			t.Errorf("%s is read, a byte short", c.model)
		}
	}
	gray := body("Gray", []float32{1})
	for n := 1; n <= 5; n++ {
		if _, err := readASE(strings.NewReader(string(gray) + strings.Repeat("\x00", n))); err == nil || !strings.Contains(err.Error(), fmt.Sprint(n, " bytes are left")) {
			t.Errorf("%d bytes behind the last block: %v", n, err)
		}
	}
	some := func(omitted, n int) []byte {
		blocks := slices.Repeat([][]byte{aseBlock(aseColour, aseBody("c", "CMYK", 0, 0, 0, 0))}, omitted)
		return aseFile(omitted+n, append(blocks, slices.Repeat([][]byte{aseBlock(aseColour, aseBody("x", "Gray", 0.5))}, n)...)...)
	}
	if p, err := readASE(strings.NewReader(string(some(3, maxFabrics-3)))); err != nil || len(p.Omitted) != 3 || len(p.Fabrics) != maxFabrics-3 {
		t.Errorf("%d colors and %d omitted: %v", len(p.Fabrics), len(p.Omitted), err)
	}
	if _, err := readASE(strings.NewReader(string(some(3, maxFabrics-2)))); err == nil {
		t.Error("a color more than there may be is read, behind some that are omitted")
	}
}

// TestClassesWorkedOut: three values by hand, with sizes and without: the classes, their means and the share of the spread between them.
func TestClassesWorkedOut(t *testing.T) {
	for _, c := range []struct {
		areas     []Area
		means     []float64
		explained float64
	}{
		{[]Area{{10, 1}, {20, 1}, {90, 1}}, []float64{15, 90}, 1 - 50.0/3800},                                   // about 40: 900 + 400 + 2500, and 25 + 25 are left
		{[]Area{{10, 0}, {20, 0}, {90, 0}}, []float64{15, 90}, 1 - 50.0/3800},                                   // all alike where none has a size
		{[]Area{{10, 1}, {20, 3}, {90, 1}}, []float64{17.5, 90}, 1 - (7.5*7.5+3*2.5*2.5)/(22*22+3*12*12+58*58)}, // about 32
		{[]Area{{90, 2}, {90, 1}, {10, 7}}, []float64{10, 90}, 1},
	} {
		got := Classify(c.areas, 2)
		if len(got.Means) != 2 || math.Abs(got.Means[0]-c.means[0])+math.Abs(got.Means[1]-c.means[1]) > 1e-9 || math.Abs(got.Explained-c.explained) > 1e-9 {
			t.Errorf("%v: %+v, expected %v, %g", c.areas, got, c.means, c.explained)
		}
		for i, a := range c.areas {
			if (got.Of[i] == 1) != (a.Lightness == 90) {
				t.Errorf("%v: %+v", c.areas, got)
			}
		}
	}
	if got := Classify([]Area{{10, 1}, {20, 1}, {30, 1}}, 2); !slices.Equal(got.Of, []int{0, 1, 1}) {
		t.Errorf("of two splits as good the one with fewer dark ones is %+v", got)
	}
	rng := rand.New(rand.NewPCG(3, 1))
	for range 50 { // in what unit areas are measured does not matter
		list := make([]Area, 3+rng.IntN(8))
		for i := range list {
			list[i] = Area{float64(rng.IntN(1000)) / 10, float64(1 + rng.IntN(90))}
		}
		small := slices.Clone(list)
		for i := range small {
			small[i].Size /= 1 << 20
		}
		a, b := Classify(list, 3), Classify(small, 3)
		if !slices.Equal(a.Of, b.Of) || math.Abs(a.Explained-b.Explained) > 1e-9 {
			t.Errorf("%v: %+v, with small areas %+v", list, a, b)
		}
	}
	for want, wish := range map[string]Ladder{"greys": {Scheme: Greys, Hue: 250}, "blue-250": {Hue: 250.9}, "rose-359": {Hue: -0.5}} {
		if got, err := wish.Palette(); err != nil || got.Name != want {
			t.Errorf("%+v is called %q, expected %q (%v)", wish, got.Name, want, err)
		}
	}
	if got := Classify([]Area{{10, 0}, {12, 0}, {50, 0}, {52, 0}, {90, 0}}, 3); !slices.Equal(got.Of, []int{0, 0, 1, 1, 2}) {
		t.Errorf("five without a size: %+v", got)
	}
}

// TestStyleSheetsAreFollowed: what is no declaration has none of the next one, and a fault is in the line of its own declaration.
func TestStyleSheetsAreFollowed(t *testing.T) {
	p, err := readCSS(strings.NewReader("a { --x; --y: red }\nb, c > d { color: red; } e{--z:blue}"))
	if err != nil {
		t.Fatal(err)
	}
	holds(t, sameFabrics(p.Fabrics, []Swatch{{"y", Colour{255, 0, 0}}, {"z", Colour{0, 0, 255}}}))
	for text, line := range map[string]int{"a { \n\t\n  --x: #12 }": 3, "a {\t\n--x: #12 }": 2, "a {/* \n */ \n--x: #12 }": 3, "a { --y: red;  \n  --x: #12 }": 2, "--x: 'a' #12": 0, "a {\n--x:\n#12 }": 2} {
		_, err := readCSS(strings.NewReader(text))
		var fault *fileError
		if !errors.As(err, &fault) || line > 0 && fault.Line != line {
			t.Errorf("%q: %v, expected line %d", text, err, line)
		}
	}
}

// TestLightRungsArePaler: from where chroma fades it falls evenly to its last part at white; grays have none.
func TestLightRungsArePaler(t *testing.T) {
	wish := Ladder{Chroma: 0.2}
	for l, want := range map[float64]float64{0: 0.2, fadeFrom - 1: 0.2, fadeFrom: 0.2, 82.5: 0.2 * (1 + fadeTo) / 2, 100: 0.2 * fadeTo, 91.25: 0.2 * (1 + 3*fadeTo) / 4} {
		near(t, fmt.Sprint("chroma at L* ", l), wish.chromaAt(l), want, 1e-12)
	}
	if got := (Ladder{Chroma: 0.2, Scheme: Greys}).chromaAt(50); got != 0 {
		t.Errorf("a gray has a chroma of %g", got)
	}
}

// TestPointsAreCounted: every point that is looked at in a picture is a step of the work.
func TestPointsAreCounted(t *testing.T) {
	m := mottled(300, 200)
	points := 0
	steps := stop.Count(func(sign *stop.Sign) { points = len(sampled(sign, m)) })
	if points < 1000 || steps < points*9/10 || steps > points*11/10 {
		t.Errorf("%d steps for %d points", steps, points)
	}
}

// TestSegmentsOfNothing: a segment that is said to be shorter than its own length is empty, and the next one begins where it ends.
func TestSegmentsOfNothing(t *testing.T) {
	for length := range byte(4) {
		var got []string
		for marker, data := range segments([]byte("\xff\xd8\xff\xe1\x00" + string([]byte{length}) + "a\xff\xe2\x00\x03c\xff\xd9")) {
			got = append(got, fmt.Sprintf("%x %s", marker, data))
		}
		want := []string{"e1 ", "e2 c"}
		if length == 3 {
			want[0] = "e1 a"
		}
		if !slices.Equal(got, want) {
			t.Errorf("of length %d: %q, expected %q", length, got, want)
		}
	}
}

// TestSegmentsOfCutOffFiles: of a JPEG file that ends early the segments that are whole are as they are in the whole one.
func TestSegmentsOfCutOffFiles(t *testing.T) {
	file := []byte("\xff\xd8" + "\xff\xdb\x00\x04ab" + "x\xff\x00" + "\xff\xc4\x00\x02" + "\xff\xe1\x00\x05cde" + "\xff\xd9")
	whole := []string{"db ab", "c4 ", "e1 cde"}
	ends := []int{8, 15, 22}
	for n := range len(file) + 1 {
		var got []string
		for marker, data := range segments(file[:n]) {
			got = append(got, fmt.Sprintf("%x %s", marker, data))
		}
		var want []string
		for i, end := range ends {
			if end <= n {
				want = append(want, whole[i])
			}
		}
		if len(got) < len(want) || !slices.Equal(got[:len(want)], want) || len(got) > len(want)+1 {
			t.Errorf("%d bytes: %q, expected %q", n, got, want)
		}
	}
}

// TestShortProfiles: a part of a profile with no byte is none, with one byte is no profile.
func TestShortProfiles(t *testing.T) {
	m := image.NewGray(image.Rect(0, 0, 16, 16))
	var b bytes.Buffer
	if err := jpeg.Encode(&b, m, nil); err != nil {
		t.Fatal(err)
	}
	for data, good := range map[string]bool{"": true, "x": false} {
		segment := "\xff\xe2\x00" + string([]byte{byte(16 + len(data))}) + "ICC_PROFILE\x00\x01\x01" + data
		if _, err := ReadSwatch(nil, []byte(b.String()[:2]+segment+b.String()[2:])); (err == nil) != good {
			t.Errorf("a profile of %d bytes: %v", len(data), err)
		}
	}
}

// somePoints are light, some of them alike.
func somePoints(rng *rand.Rand, n int) []Linear {
	list := make([]Linear, n)
	for i := range list {
		list[i] = Colour{uint8(rng.IntN(5) * 60), uint8(rng.IntN(3) * 100), uint8(rng.IntN(3) * 120)}.Linear()
	}
	return list
}

// TestThinned: of many points every so-manieth is taken, from half of that on, so that no more are left than wanted.
func TestThinned(t *testing.T) {
	points := make([]Linear, 60)
	for i := range points {
		points[i].R = float64(i)
	}
	for n := range points {
		for most := 1; most < 12; most++ {
			step := 1
			for step*most < n {
				step++
			}
			var want []Linear
			for i := range n {
				if i%step == step/2 {
					want = append(want, points[i])
				}
			}
			if got := thinned(points[:n], most); !slices.Equal(got, want) {
				t.Errorf("of %d points %d are %v, expected %v", n, most, got, want)
			}
		}
	}
}

// TestPartsAreSorted: colors begin at the point nearest to the mean and then at the one farthest from all of those; every point goes to the
// nearest; a color is the mean of its points, in light; the largest come first, and what has less than 3 of 100 points is left out.
func TestPartsAreSorted(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 2))
	apart := func(a, b OKLab) float64 { return (a.L-b.L)*(a.L-b.L) + (a.A-b.A)*(a.A-b.A) + (a.B-b.B)*(a.B-b.B) }
	nearest := func(p OKLab, list []OKLab) (at int) {
		for i := range list {
			if apart(p, list[i]) < apart(p, list[at]) {
				at = i
			}
		}
		return at
	}
	for range 120 {
		points := somePoints(rng, 1+rng.IntN(40))
		at := make([]OKLab, len(points))
		for i, p := range points {
			at[i] = p.okLab()
		}
		most := 1 + rng.IntN(6)
		mean := meanOf(points).okLab()
		want := []OKLab{at[nearest(mean, at)]}
		for len(want) < most {
			far := at[0]
			for _, p := range at {
				if apart(p, want[nearest(p, want)]) > apart(far, want[nearest(far, want)]) {
					far = p
				}
			}
			if apart(far, want[nearest(far, want)]) == 0 {
				break
			}
			want = append(want, far)
		}
		centres := begun(at, mean, most)
		if !slices.Equal(centres, want) {
			t.Fatalf("%d colors begin at %v, expected %v", most, centres, want)
		}
		of := make([]int, len(at))
		changed := settle(of, at, centres)
		for i, p := range at {
			if apart(p, centres[of[i]]) > apart(p, centres[nearest(p, centres)]) {
				t.Fatalf("point %d goes to color %d", i, of[i])
			}
		}
		if changed != slices.ContainsFunc(of, func(n int) bool { return n > 0 }) || settle(of, at, centres) {
			t.Fatalf("points that go to %v have changed: %v", of, changed)
		}
		moved := slices.Clone(centres)
		recentre(moved, of, at)
		for c := range moved {
			var sum OKLab
			n := 0.0
			for i, p := range at {
				if of[i] == c {
					sum, n = OKLab{sum.L + p.L, sum.A + p.A, sum.B + p.B}, n+1
				}
			}
			if n == 0 {
				sum, n = centres[c], 1
			}
			if apart(moved[c], OKLab{sum.L / n, sum.A / n, sum.B / n}) > 1e-18 {
				t.Fatalf("color %d of %d points moves to %v", c, int(n), moved[c])
			}
		}
		list, whole := shares(points, of, len(centres)), 0
		for i, p := range list {
			if i > 0 && (p.Share > list[i-1].Share || p.Share < leastShare) {
				t.Fatalf("the colors are %v", list)
			}
		}
		for c := range centres {
			var group []Linear
			for i, p := range points {
				if of[i] == c {
					group = append(group, p)
				}
			}
			share := float64(len(group)) / float64(len(points))
			if share >= leastShare {
				whole++
				if !slices.Contains(list, Part{meanOf(group).Colour(), share}) {
					t.Fatalf("%v is not among %v", Part{meanOf(group).Colour(), share}, list)
				}
			}
		}
		if whole != len(list) {
			t.Fatalf("%d colors of %d", len(list), whole)
		}
	}
	moved := []OKLab{{L: 0.2}, {L: 0.9}}
	recentre(moved, []int{1}, []OKLab{{L: 0.7, A: 0.1}})
	if moved[0].L != 0.2 || moved[1] != (OKLab{L: 0.7, A: 0.1}) {
		t.Errorf("with one point the colors move to %v", moved)
	}
	if list := shares(somePoints(rng, 200), append(make([]int, 195), 1, 1, 1, 1, 1), 3); len(list) != 1 {
		t.Errorf("2.5 of 100 points make a color: %v", list)
	}
	if list := shares(somePoints(rng, 200), append(make([]int, 194), 1, 1, 1, 1, 1, 1), 3); len(list) != 2 {
		t.Errorf("3 of 100 points make no color: %v", list)
	}
}

// TestQuantiles: the value below which a part of sorted values lies.
func TestQuantiles(t *testing.T) {
	values := []float64{10, 20, 30, 40}
	for part, want := range map[float64]float64{0: 10, 0.24: 10, 0.25: 20, 0.5: 30, 0.75: 40, 0.99: 40, 1: 40} {
		if got := quantile(values, part); got != want {
			t.Errorf("%g of the values lie below %g, expected %g", part, got, want)
		}
	}
}

// TestSeeThroughIsNoCloth: what is see-through, wholly or a little, does not count for the color of the cloth.
func TestSeeThroughIsNoCloth(t *testing.T) {
	m := image.NewNRGBA(image.Rect(0, 0, 40, 40))
	for i := range 1600 {
		c := color.NRGBA{R: 250, G: 10, B: 10, A: 254}
		if i%40 < 15 {
			c = color.NRGBA{R: 31, G: 51, B: 80, A: 255}
		}
		m.SetNRGBA(i%40, i/40, c)
	}
	s, err := ReadSwatch(nil, asPNG(t, m))
	if err != nil || s.Colour != (Colour{31, 51, 80}) || s.Spread > 1e-9 {
		t.Errorf("the cloth is %s, %v", s.Colour.Hex(), err)
	}
}

// TestMeansOfLight: the mean of points, their deviation, and the squares of a picture, in each of the three channels.
func TestMeansOfLight(t *testing.T) {
	if got := meanOf([]Linear{{0.1, 0.2, 0.3}, {0.3, 0.6, 0.9}}); math.Abs(got.R-0.2)+math.Abs(got.G-0.4)+math.Abs(got.B-0.6) > 1e-12 {
		t.Errorf("the mean is %v", got)
	}
	near(t, "deviation", deviation([]float64{2, 4, 4, 4, 5, 5, 7, 9}), 2, 1e-12) // a textbook's example of a standard deviation of 2
	m := mottled(5, 4)
	for n, got := range Squares(m, 2) {
		x, y := n%3*2, n/3*2
		var want [3]float64
		count := 0.0
		for v := y; v < min(y+2, 4); v++ {
			for u := x; u < min(x+2, 5); u++ {
				c := m.RGBAAt(3+u, 5+v)
				want[0], want[1], want[2], count = want[0]+light(c.R), want[1]+light(c.G), want[2]+light(c.B), count+1
			}
		}
		for i, v := range [3]float64{got.R, got.G, got.B} {
			near(t, fmt.Sprint("square ", n, ", channel ", i), v, want[i]/count, 1e-9)
		}
	}
}
