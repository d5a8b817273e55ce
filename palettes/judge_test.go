package palettes

import (
	"bytes"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/lucasb-eyer/go-colorful"
)

// Judges: published figures and other programs' numbers, each with its source.

const fourDigits = 5e-4

func TestSharmaPairs(t *testing.T) {
	rows := table(t, "sharma.csv")
	if len(rows) != 34 {
		t.Fatalf("%d pairs, expected 34", len(rows))
	}
	for _, row := range rows {
		v := numbers(t, row)
		a, b, want := Lab{v[1], v[2], v[3]}, Lab{v[4], v[5], v[6]}, v[7]
		near(t, "pair "+row[0], a.difference(b), want, 5.1e-5)
		near(t, "pair "+row[0]+" turned round", b.difference(a), want, 5.1e-5)
	}
}

func TestNamesAgainstColournames(t *testing.T) {
	rows := table(t, "names.csv")
	names := Names()
	if len(rows) != 148 || len(names) != 148 {
		t.Fatalf("%d rows and %d names, expected 148 of each", len(rows), len(names))
	}
	for i, row := range rows {
		if names[i] != row[0] {
			t.Errorf("name %d is %q, expected %q", i, names[i], row[0])
		}
		for _, name := range []string{row[0], strings.ToUpper(row[0])} {
			if c, err := Parse(name); err != nil || c.Hex() != row[1] {
				t.Errorf("%s is %s (%v), expected %s", name, c.Hex(), err, row[1])
			}
		}
	}
}

func TestColoursAgainstCulori(t *testing.T) {
	rows := table(t, "colours.csv")
	if len(rows) < 96 {
		t.Fatalf("only %d colours", len(rows))
	}
	for i, row := range rows {
		c, next := parse(t, row[0]), parse(t, rows[(i+1)%len(rows)][0])
		v := numbers(t, row[1:])
		lab, ok := c.Lab(), c.okLab()
		near(t, row[0]+" L*", c.Lightness(), v[0], 2e-6)
		near(t, row[0]+" L", lab.L, v[0], 2e-6)
		near(t, row[0]+" a*", lab.A, v[1], 2e-6)
		near(t, row[0]+" b*", lab.B, v[2], 2e-6)
		near(t, row[0]+" OKLab L", ok.L, v[3], 2e-6)
		near(t, row[0]+" OKLab a", ok.A, v[4], 2e-6)
		near(t, row[0]+" OKLab b", ok.B, v[5], 2e-6)
		near(t, row[0]+" CIEDE2000", Difference(c, next), v[6], 2e-6)
		// culori rounds the three weights of luminance to the four digits of WCAG.
		near(t, row[0]+" contrast", ContrastRatio(c, next), v[7], 1e-3*v[7])
	}
}

func TestLabCheckPoints(t *testing.T) {
	for _, row := range []struct {
		text    string
		l, a, b float64
	}{ // npm culori 4.0.2, equal to colorjs.io 0.7.1 under D65
		{"#808080", 53.5850, 0, 0},
		{"#ff0000", 53.2371, 80.0901, 67.2033},
		{"#00ff00", 87.7355, -86.1816, 83.1866},
		{"#0000ff", 32.3009, 79.1953, -107.8555},
		{"#336699", 42.0092, -0.1459, -32.8451},
	} {
		lab := parse(t, row.text).Lab()
		near(t, row.text+" L*", lab.L, row.l, fourDigits)
		near(t, row.text+" a*", lab.A, row.a, fourDigits)
		near(t, row.text+" b*", lab.B, row.b, fourDigits)
	}
	// The davengrace.com calculator, as quoted in colorspacious 1.1.2, gold_values.py; its white is rounded.
	lab := parse(t, "#336699").Lab()
	near(t, "#336699 L*", lab.L, 42.0099857768665, 0.002)
	near(t, "#336699 a*", lab.A, -0.147373964354935, 0.002)
	near(t, "#336699 b*", lab.B, -32.8445986139017, 0.002)
}

func TestLightnessCheckPoints(t *testing.T) {
	for _, row := range []struct {
		text string
		l    float64
	}{ // npm culori 4.0.2, equal to colorjs.io 0.7.1 under D65
		{"#ffff00", 97.1386}, {"wheat", 89.3511}, {"peru", 61.7530}, {"#8b0000", 28.0874}, {"navy", 12.9743},
		{"rebeccapurple", 32.9028}, {"#000", 0}, {"#fff", 100},
	} {
		near(t, row.text, parse(t, row.text).Lightness(), row.l, fourDigits)
	}
	// CIE 15:2004, worked by hand: 116 times the cube root of 1/2, less 16.
	near(t, "half black, half white", LightnessOf(0.5), 76.069, fourDigits)
	near(t, "the bend", LightnessOf(216.0/24389), 8, 1e-12)
}

func TestDifferenceCheckPoints(t *testing.T) {
	for _, row := range []struct {
		a, b string
		want float64
	}{ // npm culori 4.0.2, equal to npm color-diff
		{"#dc143c", "#2e8b57", 68.5839},
		{"#808080", "#777777", 3.5148},
		{"#8f8f8f", "#cc33ff", 31.9263},
		{"#000000", "#ffffff", 100},
	} {
		near(t, row.a+" and "+row.b, Difference(parse(t, row.a), parse(t, row.b)), row.want, fourDigits)
	}
	step := parse(t, "#dc143c").Lightness() - parse(t, "#2e8b57").Lightness()
	near(t, "step of crimson and sea green", math.Abs(step), 4.5011, fourDigits)
}

func TestContrastCheckPoints(t *testing.T) {
	white := Colour{255, 255, 255}
	for _, row := range []struct {
		text string
		want float64
	}{ // npm culori 4.0.2, after WCAG 2.1
		{"#767676", 4.5422}, {"#777777", 4.4781}, {"#ffff00", 1.0738}, {"#000000", 21}, {"#ffffff", 1},
	} {
		near(t, row.text+" on white", ContrastRatio(parse(t, row.text), white), row.want, fourDigits)
	}
}

// What this package takes from go-colorful is right where it is used: third-party values of the davengrace.com
// calculator, as quoted in colorspacious 1.1.2, gold_values.py.
func TestLinearLight(t *testing.T) {
	r, g, b := colorful.Color{R: 0.1, G: 0.04, B: 0.9}.LinearRgb()
	near(t, "0.1", r, 0.010022825574869, 1e-14)
	near(t, "0.04", g, 0.00309597523219814, 1e-14)
	near(t, "0.9", b, 0.787412289395617, 1e-14)
}

func TestMunsellValues(t *testing.T) {
	// NBS renotation, Newhall, Nickerson and Judd 1943; the polynomial was fitted to it.
	rows := table(t, "munsell.csv")
	if len(rows) < 8 {
		t.Fatalf("only %d values", len(rows))
	}
	for _, row := range rows {
		v := numbers(t, row)
		near(t, "Y of V "+row[0], 100*luminanceOfMunsell(v[0]), v[1], 0.04)
	}
	// colour-science, documentation of munsell_value_ASTMD1535.
	near(t, "V of Y 12.23634268", MunsellValue(0.1223634268), 4.0824437, 1e-6)
	// munsellinterpol, documentation of MunsellValueToLuminanceFactor.
	near(t, "Y of V 5", 100*luminanceOfMunsell(5), 19.27184, 1e-5)
	near(t, "L* of V 5", LightnessOf(luminanceOfMunsell(5)), 51.0037, fourDigits)
	// npm munsell 1.1.6, after ASTM D1535.
	near(t, "V of #808080", MunsellValue(parse(t, "#808080").Luminance()), 5.2547, fourDigits)
	// Munsell values 4.5 and 6.5 are the borders of the ISCC-NBS medium grey.
	near(t, "L* of V 4.5", LightnessOf(luminanceOfMunsell(4.5)), MediumFrom, 0.15)
	near(t, "L* of V 6.5", LightnessOf(luminanceOfMunsell(6.5)), LightFrom, 0.15)
}

func TestDeficiencyCheckPoints(t *testing.T) {
	for _, row := range []struct {
		text     string
		kind     Deficiency
		severity float64
		want     string
	}{ // the published matrices applied by Debian python3-colorspacious 1.1.2 and, in linear light, npm culori 4.0.2
		{"#cd853f", Protan, 1, "#9b8b37"},
		{"#cd853f", Deutan, 1, "#ac9c40"},
		{"#cd853f", Tritan, 1, "#df7576"},
		{"#cd853f", Deutan, 0.5, "#b6943e"},
		{"#cd853f", Deutan, 0, "#cd853f"},
	} {
		if got := parse(t, row.text).SeenBy(row.kind, row.severity).Hex(); got != row.want {
			t.Errorf("%s at %g of kind %d is %s, expected %s", row.text, row.severity, row.kind, got, row.want)
		}
	}
	// The same matrices on pure red: protans see it darker, deutans lighter.
	red := Colour{255, 0, 0}
	near(t, "L* of red to protans", red.SeenBy(Protan, 1).Lightness(), 40.3, 0.1)
	near(t, "L* of red to deutans", red.SeenBy(Deutan, 1).Lightness(), 59.6, 0.1)
	// Between two published steps: colorspacious 1.1.2, gold_values.py, protanomaly at 95 per cent.
	r, g, b := colorful.Color{R: 0.9, G: 0.5, B: 0.3}.LinearRgb()
	l := Linear{r, g, b}.seenBy(Protan, 0.95)
	seen := colorful.LinearRgb(l.R, l.G, l.B)
	near(t, "red", seen.R, 0.62151883, 1e-7)
	near(t, "green", seen.G, 0.55237436, 1e-7)
	near(t, "blue", seen.B, 0.27997229, 1e-7)
}

func TestClassifyExamples(t *testing.T) {
	// Worked by an exhaustive search over all cuts.
	even := areas(12.97, 28.09, 32.90, 47.03, 51.53, 61.75, 89.35, 97.14)
	c := Classify(even, 3)
	equalInts(t, c.Of, []int{0, 0, 0, 1, 1, 1, 2, 2})
	near(t, "explained", c.Explained, 0.9400, 5e-5)

	uneven := areas(70, 74, 78, 83, 88, 92)
	for i, size := range []float64{3, 1, 2, 2, 1, 3} {
		uneven[i].Size = size
	}
	c = Classify(uneven, 3)
	equalInts(t, c.Of, []int{0, 0, 1, 1, 2, 2})
	near(t, "explained", c.Explained, 0.9423, 5e-5)
	near(t, "mean of the darkest", c.Means[0], 71, 1e-12)
}

func TestJustNoticeable(t *testing.T) {
	const distance = 120 // inches, ten feet
	for _, row := range []struct{ size, want float64 }{
		// 0.5 (10.16 + 1.5 / angle) of Stone, Szafir and Setlur 2014, worked by hand; the last is cut off at 1/3 degree.
		{2, 5.87}, {1, 6.65}, {0.5, 7.33},
	} {
		near(t, "T0", JustNoticeable(VisualAngle(row.size, distance), 1), row.want, 0.01)
	}
	near(t, "angle of 1 in at 57.29 in", VisualAngle(1, 57.29), 1, 1e-3)
	near(t, "busy cloth", JustNoticeable(1, TextureFactor(11)), 11.66, 1e-9)
}

// W3C web platform tests, css-color lab-004 and lab-006: what CSS lab() looks like in sRGB, in per cent.
func TestLabOfSwatchExchange(t *testing.T) {
	for _, row := range []struct{ l, a, b, red, green, blue float64 }{
		{0.5, 50, 0, 75.62, 30.45, 47.56},
		{0.7, 0, 70, 76.62, 66.36, 5.58},
	} {
		c, err := aseLab(row.l, row.a, row.b)
		if err != nil {
			t.Fatal(err)
		}
		want := Colour{eightBits(row.red / 100), eightBits(row.green / 100), eightBits(row.blue / 100)}
		if c != want {
			t.Errorf("lab(%g %g %g) is %s, expected %s", 100*row.l, row.a, row.b, c.Hex(), want.Hex())
		}
	}
}

// testdata/six.ase was written by npm ase-utils 0.1.1 (MIT) from six colours of ours.
func TestReadASEOfAnotherProgram(t *testing.T) {
	f, err := os.Open("testdata/six.ase")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	p, err := readASE(f)
	if err != nil {
		t.Fatal(err)
	}
	want := []Swatch{
		{"Wet slate", Colour{0x35, 0x4c, 0x5c}}, {"foam", Colour{0xe3, 0xf1, 0xef}}, {"rope – été", Colour{0xbc, 0x97, 0x6a}},
		{"10% Gray", Colour{0xe5, 0xe5, 0xe5}}, {"lab 50 50 0", Colour{0xc1, 0x4e, 0x79}}, {"lab 70 0 70", Colour{0xc3, 0xa9, 0x0e}},
	}
	if err := sameFabrics(p.Fabrics, want); err != nil {
		t.Error(err)
	}
}

// What is written of a color is byte for byte what that other program writes of it.
func TestWriteASELikeAnotherProgram(t *testing.T) {
	theirs, err := os.ReadFile("testdata/six.ase")
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range []Swatch{{"Wet slate", Colour{0x35, 0x4c, 0x5c}}, {"foam", Colour{0xe3, 0xf1, 0xef}}, {"rope – été", Colour{0xbc, 0x97, 0x6a}}} {
		var ours bytes.Buffer
		if err := writeASE(&ours, Palette{Fabrics: []Swatch{s}}); err != nil || !bytes.Contains(theirs, ours.Bytes()[aseHeaderBytes:]) {
			t.Errorf("%s: % x, %v", s.Name, ours.Bytes(), err)
		}
	}
}

func table(t *testing.T, name string) [][]string {
	t.Helper()
	data, err := os.ReadFile("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	var rows [][]string
	for line := range strings.Lines(string(data)) {
		if line = strings.TrimSpace(line); !strings.HasPrefix(line, "# ") {
			rows = append(rows, strings.Split(line, ","))
		}
	}
	return rows
}

func numbers(t *testing.T, row []string) []float64 {
	t.Helper()
	values := make([]float64, len(row))
	for i, text := range row {
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			t.Fatal(err)
		}
		values[i] = v
	}
	return values
}

func parse(t *testing.T, text string) Colour {
	t.Helper()
	c, err := Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func near(t *testing.T, what string, got, want, slack float64) {
	t.Helper()
	if !(math.Abs(got-want) <= slack) {
		t.Errorf("%s is %.9g, expected %.9g within %g", what, got, want, slack)
	}
}

func areas(lightness ...float64) []Area {
	list := make([]Area, len(lightness))
	for i, l := range lightness {
		list[i] = Area{l, 1}
	}
	return list
}

func equalInts(t *testing.T, got, want []int) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("%v, expected %v", got, want)
	}
	for i := range got {
		if got[i] != want[i] {
			t.Fatalf("%v, expected %v", got, want)
		}
	}
}
