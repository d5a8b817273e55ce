package palettes

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/lucasb-eyer/go-colorful"
)

// Laws hold for any input. Each is a function that returns what breaks it, and each is shown something broken.

func holds(t *testing.T, law error) {
	t.Helper()
	if law != nil {
		t.Error(law)
	}
}

func catches(t *testing.T, what string, law error) {
	t.Helper()
	if law == nil {
		t.Errorf("the law does not catch %s", what)
	}
}

// cube gives the colours of a grid of n to the third through sRGB.
func cube(n int) []Colour {
	at := func(i int) uint8 { return uint8(i * 255 / (n - 1)) }
	list := make([]Colour, 0, n*n*n)
	for i := range n * n * n {
		list = append(list, Colour{at(i / n / n), at(i / n % n), at(i % n)})
	}
	return list
}

func greysAreNeutral(lab func(Colour) Lab) error {
	for i := range 256 {
		v := uint8(i)
		if c := lab(Colour{v, v, v}); c.Chroma() >= 1e-9 {
			return fmt.Errorf("grey %d has a chroma of %g", i, c.Chroma())
		}
	}
	return nil
}

func TestGreysAreNeutral(t *testing.T) {
	holds(t, greysAreNeutral(Colour.Lab))
	holds(t, greysAreNeutral(func(c Colour) Lab {
		o := c.okLab()
		return Lab{o.L, o.A, o.B}
	}))
	catches(t, "a white that is not the matrix's", greysAreNeutral(func(c Colour) Lab {
		l, a, b := c.encoded().Lab()
		return Lab{100 * l, 100 * a, 100 * b}
	}))
}

func comesBack(way func(Colour) Colour, colours []Colour) error {
	for _, c := range colours {
		if got := way(c); got != c {
			return fmt.Errorf("%s comes back as %s", c.Hex(), got.Hex())
		}
	}
	return nil
}

func TestColoursComeBack(t *testing.T) {
	grid := cube(16)
	holds(t, comesBack(func(c Colour) Colour { return c.okLab().linear().Colour() }, grid))
	holds(t, comesBack(func(c Colour) Colour { return c.OKLCh().colour() }, grid))
	holds(t, comesBack(func(c Colour) Colour { return c.Linear().Colour() }, grid))
	holds(t, comesBack(func(c Colour) Colour {
		got, _ := Parse(strings.ToUpper(c.Hex()))
		return got
	}, grid))
	catches(t, "an inverse that is not one", comesBack(func(c Colour) Colour {
		r, g, b := colorful.OkLab(c.encoded().OkLab()).RGB255()
		return Colour{r, g, b}
	}, grid))
}

func greysStay(see func(Linear, Deficiency, float64) Linear) error {
	for _, kind := range []Deficiency{Protan, Deutan, Tritan} {
		for i := range 41 {
			for _, y := range []float64{0, 0.01, 0.2, 0.5, 1} {
				l := see(Linear{y, y, y}, kind, float64(i)/40)
				if math.Abs(l.R-y) > 2e-6 || math.Abs(l.G-y) > 2e-6 || math.Abs(l.B-y) > 2e-6 {
					return fmt.Errorf("a grey of %g becomes %v", y, l)
				}
			}
		}
	}
	return nil
}

func TestGreysStayUnderDeficiency(t *testing.T) {
	holds(t, greysStay(Linear.seenBy))
	catches(t, "a tint", greysStay(func(l Linear, d Deficiency, s float64) Linear {
		l = l.seenBy(d, s)
		l.B *= 1.001
		return l
	}))
	for i := range 256 {
		c := Colour{uint8(i), uint8(i), uint8(i)}
		if got := c.SeenBy(Tritan, 0.73); got != c {
			t.Errorf("%s becomes %s", c.Hex(), got.Hex())
		}
	}
}

// A step of severity changes a colour by little, and half-way is the mean of the two published ends.
func TestSeverityIsContinuous(t *testing.T) {
	l := Colour{0xcd, 0x85, 0x3f}.Linear()
	for _, kind := range []Deficiency{Protan, Deutan, Tritan} {
		a, b, mid := l.seenBy(kind, 0.3), l.seenBy(kind, 0.4), l.seenBy(kind, 0.35)
		near(t, "half-way", mid.R, (a.R+b.R)/2, 1e-12)
		near(t, "above 1", l.seenBy(kind, 7).G, l.seenBy(kind, 1).G, 0)
		near(t, "below 0", l.seenBy(kind, -1).G, l.G, 0)
	}
}

func differenceIsFair(diff func(a, b Lab) float64) error {
	colours := cube(5)
	for i, a := range colours {
		b := colours[(i*37+11)%len(colours)]
		there, back := diff(a.Lab(), b.Lab()), diff(b.Lab(), a.Lab())
		if !(math.Abs(there-back) < 1e-9) {
			return fmt.Errorf("%s to %s is %g, back %g", a.Hex(), b.Hex(), there, back)
		}
		if a != b && !(there > 0) {
			return fmt.Errorf("%s and %s differ by %g", a.Hex(), b.Hex(), there)
		}
		if d := diff(a.Lab(), a.Lab()); d != 0 {
			return fmt.Errorf("%s differs from itself by %g", a.Hex(), d)
		}
	}
	return nil
}

func TestDifferenceIsFair(t *testing.T) {
	holds(t, differenceIsFair(Lab.difference))
	catches(t, "a measure that leans on its first colour", differenceIsFair(func(a, b Lab) float64 {
		return math.Hypot(a.L-b.L, (a.Chroma()-b.Chroma())/(1+0.045*a.Chroma()))
	}))
	catches(t, "a measure of chroma alone", differenceIsFair(func(a, b Lab) float64 {
		return math.Abs(math.Round(a.Chroma()) - math.Round(b.Chroma()))
	}))
}

func keepsHueAndValue(at func(OKLCh, float64) Linear) error {
	for hue := 0.0; hue < 360; hue += 15 {
		for lightness := 4.0; lightness < 100; lightness += 8 {
			l := at(OKLCh{Chroma: 0.3, Hue: hue}, lightness)
			got := l.okLab().oklCh()
			turn := math.Abs(math.Remainder(got.Hue-hue, 360))
			if !l.inGamut() || got.Chroma > 0.001 && turn > 0.1 || math.Abs(l.lab().L-lightness) > 0.05 {
				return fmt.Errorf("hue %g at L* %g comes out as hue %g, chroma %g, L* %g", hue, lightness, got.Hue, got.Chroma, l.lab().L)
			}
			if got.Chroma < 0.01 {
				return fmt.Errorf("hue %g at L* %g comes out grey", hue, lightness)
			}
		}
	}
	return nil
}

func TestAtLightnessKeepsHueAndValue(t *testing.T) {
	holds(t, keepsHueAndValue(OKLCh.linearAt))
	catches(t, "channels cut off one by one", keepsHueAndValue(func(o OKLCh, lightness float64) Linear {
		l := OKLCh{lightness / 100, o.Chroma, o.Hue}.okLab().linear()
		return Linear{unit(l.R), unit(l.G), unit(l.B)}
	}))
	catches(t, "greys", keepsHueAndValue(func(_ OKLCh, lightness float64) Linear {
		y := LuminanceOf(lightness)
		return Linear{y, y, y}
	}))
	for lightness := 0.0; lightness <= 100; lightness += 2.5 {
		near(t, "rounded L*", OKLCh{Chroma: 0.2, Hue: 3 * lightness}.atLightness(lightness).Lightness(), lightness, 0.3)
	}
}

func TestAtLightnessOfOddNumbers(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -5, 250} {
		if c := (OKLCh{Chroma: 0.1, Hue: 20}).atLightness(v); c != (Colour{}) && c != (Colour{255, 255, 255}) {
			t.Errorf("L* %g gives %s, expected black or white", v, c.Hex())
		}
		OKLCh{0.5, v, v}.atLightness(50)
		OKLCh{v, v, v}.colour()
	}
}

func TestScalesHaveInverses(t *testing.T) {
	for i := range 1001 {
		v := float64(i) / 1000
		near(t, "L* and back", LuminanceOf(LightnessOf(v)), v, 1e-12)
		near(t, "Munsell value and back", luminanceOfMunsell(MunsellValue(v)), v, 1e-12)
		// L*/10 exceeds the Munsell value by 0.106 at most.
		if d := LightnessOf(v)/10 - MunsellValue(v); d < -1e-9 || d > 0.107 {
			t.Errorf("at Y %g L*/10 exceeds the Munsell value by %g", v, d)
		}
	}
}

func greyKeepsValue(grey func(Colour) Colour) error {
	for _, c := range cube(9) {
		g := grey(c)
		// One eight-bit step near black is 0.28 L*, elsewhere up to 0.45.
		if d := math.Abs(g.Lightness() - c.Lightness()); g.R != g.G || g.G != g.B || d > 0.25 {
			return fmt.Errorf("%s becomes %s, %g L* away", c.Hex(), g.Hex(), d)
		}
	}
	return nil
}

func TestGreyKeepsValue(t *testing.T) {
	holds(t, greyKeepsValue(Colour.Grey))
	catches(t, "Rec. 601 on encoded bytes", greyKeepsValue(func(c Colour) Colour {
		v := uint8((299*int(c.R) + 587*int(c.G) + 114*int(c.B)) / 1000)
		return Colour{v, v, v}
	}))
}

// isBest compares a split with every other split into as many runs.
func isBest(list []Area, classify func([]Area, int) Classes) error {
	for k := 1; k <= 4; k++ {
		c := classify(list, k)
		got := spreadWithin(list, c.Of, k)
		for code := range 1 << (2 * len(list)) {
			of := make([]int, len(list))
			for i := range of {
				of[i] = code >> (2 * i) & 3
			}
			if slices.Max(of) < k && spreadWithin(list, of, k) < got-1e-9 {
				return fmt.Errorf("%v beats %v for %d classes", of, c.Of, k)
			}
		}
	}
	return nil
}

func spreadWithin(list []Area, of []int, k int) float64 {
	total := 0.0
	for c := range k {
		var group []Area
		for i, a := range list {
			if of[i] == c {
				group = append(group, a)
			}
		}
		if len(group) > 0 {
			_, spread := meanAndSpread(group)
			total += spread
		}
	}
	return total
}

func TestClassifyIsBest(t *testing.T) {
	for _, list := range [][]Area{
		{{93, 1}, {12, 4}, {50, 2}, {48, 0.5}, {77, 3}, {20, 1}},
		{{50, 1}, {50, 9}, {51, 2}, {49, 1}, {90, 0.1}},
		{{30, 0}, {60, 1}, {90, 0}, {61, 1}},
		{{5, 1}},
	} {
		holds(t, isBest(list, Classify))
	}
	catches(t, "equal numbers in each", isBest([]Area{{1, 1}, {2, 1}, {3, 1}, {90, 1}}, func(list []Area, k int) Classes {
		of := make([]int, len(list))
		for i := range of {
			of[i] = i * k / len(list)
		}
		return Classes{Of: of}
	}))
}

func TestClassifyAtItsEdges(t *testing.T) {
	if c := Classify(nil, 3); len(c.Of) != 0 || len(c.Means) != 0 {
		t.Errorf("nothing to sort gives %v", c)
	}
	if c := Classify(areas(50, 50, 50), 3); len(c.Means) != 1 || c.Explained != 1 {
		t.Errorf("one lightness gives %v", c)
	}
	if c := Classify(areas(10, 90), 0); len(c.Of) != 0 {
		t.Errorf("no classes give %v", c)
	}
	c := Classify([]Area{{10, math.NaN()}, {90, -1}, {50, math.Inf(1)}}, 3)
	equalInts(t, c.Of, []int{0, 2, 1})
	if c := Classify([]Area{{20, 0}, {80, 5}}, 2); !slices.Equal(c.Means, []float64{20, 80}) {
		t.Errorf("areas without size have the means %v", c.Means)
	}
	if cost := newPartition([]Area{{20, 0}, {40, 0}, {80, 5}}).cost(0, 2); cost != 0 {
		t.Errorf("areas without size cost %g", cost)
	}
	many := make([]Area, 2000)
	for i := range many {
		many[i] = Area{float64(i) / 20, 1}
	}
	if c := Classify(many, 3); len(c.Means) != 3 {
		t.Errorf("%d classes of many", len(c.Means))
	}
}

func TestFamilies(t *testing.T) {
	for _, row := range []struct {
		lightness float64
		want      Family
	}{{0, Dark}, {45.99, Dark}, {46, Medium}, {65.99, Medium}, {66, Light}, {100, Light}} {
		if got := FamilyOf(row.lightness); got != row.want {
			t.Errorf("L* %g is %v, expected %v", row.lightness, got, row.want)
		}
	}
	if words := fmt.Sprint(Dark, Medium, Light); words != "dark medium light" {
		t.Errorf("the families are called %s", words)
	}
	for _, row := range []struct {
		areas []Area
		want  []Family
	}{
		{areas(90, 20, 55), []Family{Light, Dark, Medium}},
		{areas(80, 83, 95), []Family{Dark, Dark, Light}},
		{areas(50, 52, 54), []Family{Medium, Medium, Medium}},
		{areas(50), []Family{Medium}},
		{areas(20, 90), []Family{Dark, Light}},
		{areas(40, 50, 60), []Family{Dark, Medium, Light}},
		{areas(40, 49.9, 60), []Family{Dark, Dark, Light}},
		{areas(40, 50), []Family{Dark, Light}},
		{areas(40, 49.9), []Family{Medium, Medium}},
		{nil, nil},
	} {
		if got := RelativeFamilies(row.areas); !slices.Equal(got, row.want) {
			t.Errorf("%v gives %v, expected %v", row.areas, got, row.want)
		}
	}
}

func TestHuesStayBelowAFullTurn(t *testing.T) {
	for _, a := range []float64{0, 360, -360, -1e-20, 720.5, -90} {
		if h := fullTurn(a); h < 0 || h >= 360 || math.Abs(math.Remainder(h-a, 360)) > 1e-9 {
			t.Errorf("%g degrees become %g", a, h)
		}
	}
	// The yellow and blue axis and the diagonal, where a quotient of the axes is at a loss.
	for hue := range 8 {
		want := 45 * float64(hue)
		near(t, "hue", Lab{50, 40 * cosDeg(want), 40 * sinDeg(want)}.hue(), want, 1e-9)
	}
}

func TestTextureFactor(t *testing.T) {
	for _, row := range []struct{ spread, want float64 }{{0, 1}, {3.9, 1}, {4, 1.5}, {10, 1.5}, {10.1, 2}} {
		if got := TextureFactor(row.spread); got != row.want {
			t.Errorf("a spread of %g gives %g, expected %g", row.spread, got, row.want)
		}
	}
	if JustNoticeable(0, 1) != JustNoticeable(0.1, 1) || JustNoticeable(9, 1) != JustNoticeable(6, 1) {
		t.Error("angles outside the fitted range are not cut off")
	}
}
