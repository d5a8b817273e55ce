package palettes

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// isOurs holds every palette of the collection to the promises of All.
func isOurs(p Palette) error {
	aWord := regexp.MustCompile(`^[a-z][a-z0-9-]*$`)
	n := len(p.Fabrics)
	if !aWord.MatchString(p.Name) || p.About == "" || strings.HasSuffix(p.About, ".") {
		return fmt.Errorf("palette %q, %q", p.Name, p.About)
	}
	if n < 6 || n > 9 {
		return fmt.Errorf("%s has %d fabrics, expected 6 to 9", p.Name, n)
	}
	if dark, light := p.Fabrics[0].Colour.Lightness(), p.Fabrics[n-1].Colour.Lightness(); dark >= 35 || light <= 82 {
		return fmt.Errorf("%s runs from L* %.1f to %.1f, expected below 35 to above 82", p.Name, dark, light)
	}
	for i, f := range p.Fabrics {
		if !aWord.MatchString(f.Name) {
			return fmt.Errorf("%s has a fabric %q", p.Name, f.Name)
		}
		if i > 0 && f.Colour.Lightness()-p.Fabrics[i-1].Colour.Lightness() < 6 {
			return fmt.Errorf("%s: %s lies too close to the fabric before it", p.Name, f.Name)
		}
	}
	return nil
}

func namesDiffer(all []Palette) error {
	seen := make(map[string]bool)
	for _, p := range all {
		for _, name := range append([]string{p.Name}, fabricNames(p)...) {
			if _, isCSS := namedColour(name); isCSS || seen[name] {
				return fmt.Errorf("the name %q is taken", name)
			}
			seen[name] = true
		}
	}
	return nil
}

func fabricNames(p Palette) []string {
	names := make([]string, len(p.Fabrics))
	for i, f := range p.Fabrics {
		names[i] = f.Name
	}
	return names
}

func TestCollection(t *testing.T) {
	all := All()
	if len(all) < 6 {
		t.Errorf("%d palettes, expected at least 6", len(all))
	}
	for _, p := range all {
		holds(t, isOurs(p))
		holds(t, sameFabrics(InValueOrder(p.Fabrics), p.Fabrics))
		if got, ok := Find(strings.ToUpper(p.Name)); !ok || got.Name != p.Name {
			t.Errorf("%s is not found", p.Name)
		}
	}
	holds(t, namesDiffer(all))
	if !slices.IsSortedFunc(all, func(a, b Palette) int { return strings.Compare(a.Name, b.Name) }) {
		t.Error("the palettes are out of order")
	}
	if _, ok := Find("tidewate"); ok {
		t.Error("a palette is found that does not exist")
	}
}

func TestCollectionLawCatches(t *testing.T) {
	broken := func(change func(*Palette)) error {
		p, _ := Find("tidewater")
		change(&p)
		return isOurs(p)
	}
	catches(t, "a missing dark", broken(func(p *Palette) { p.Fabrics = p.Fabrics[2:] }))
	catches(t, "a missing light", broken(func(p *Palette) { p.Fabrics = p.Fabrics[:6] }))
	catches(t, "too few", broken(func(p *Palette) { p.Fabrics = p.Fabrics[:5] }))
	catches(t, "two words", broken(func(p *Palette) { p.Fabrics[1].Name = "wet slate" }))
	catches(t, "close neighbours", broken(func(p *Palette) { p.Fabrics[2].Colour = p.Fabrics[1].Colour.OKLCh().atLightness(35) }))
	catches(t, "wrong order", broken(func(p *Palette) { slices.Reverse(p.Fabrics[2:5]) }))
	catches(t, "no color", broken(func(p *Palette) { p.Fabrics[3] = ours("", "", "shoal #41").Fabrics[0] }))
	catches(t, "no description", broken(func(p *Palette) { p.About = "" }))
	catches(t, "a name twice", namesDiffer(append(All(), tidewater())))
	catches(t, "a CSS name", namesDiffer([]Palette{{Name: "navy"}}))
}

func TestAllIsNotShared(t *testing.T) {
	All()[0].Fabrics[0].Name = "changed"
	if All()[0].Fabrics[0].Name == "changed" {
		t.Error("a caller can change the collection")
	}
}

func TestInValueOrder(t *testing.T) {
	grey, lighter := Colour{100, 100, 100}, Colour{101, 101, 101}
	got := InValueOrder([]Swatch{{"c", lighter}, {"b", grey}, {"a", grey}, {"d", Colour{}}})
	if names := strings.Join(fabricNames(Palette{Fabrics: got}), ""); names != "dabc" {
		t.Errorf("the order is %s, expected dabc", names)
	}
}

func risesEvenly(p Palette, from, to float64) error {
	for i, f := range p.Fabrics {
		want := from + (to-from)*float64(i)/float64(len(p.Fabrics)-1)
		if got := f.Colour.Lightness(); math.Abs(got-want) > 0.3 {
			return fmt.Errorf("%s has L* %.2f, expected %.2f", f.Name, got, want)
		}
	}
	return nil
}

func TestLadderRisesEvenly(t *testing.T) {
	for _, scheme := range []Scheme{OneHue, Neighbours, Opposite, Thirds, Greys} {
		for hue := 0.0; hue < 360; hue += 40 {
			p, err := Ladder{Hue: hue, Scheme: scheme, Rungs: 6}.Palette()
			if err != nil {
				t.Fatal(err)
			}
			holds(t, risesEvenly(p, 20, 92))
			if names := fabricNames(p); len(slices.Compact(slices.Sorted(slices.Values(names)))) != 6 {
				t.Errorf("a fabric's name comes twice in %v", names)
			}
			holds(t, sameFabrics(p.inWords().Fabrics, p.Fabrics))
		}
	}
	catches(t, "uneven steps", risesEvenly(tidewater(), 17, 94))
}

func TestLadderKeepsToItsScheme(t *testing.T) {
	p, err := Ladder{Hue: 250, Darkest: 25, Lightest: 85}.Palette()
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range p.Fabrics {
		near(t, f.Name, f.Colour.OKLCh().Hue, 250, 3) // eight bits turn muted colours by a degree or two
	}
	greys, err := Ladder{Scheme: Greys}.Palette()
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range greys.Fabrics {
		if c := f.Colour; c.R != c.G || c.G != c.B {
			t.Errorf("%s is %s, expected a grey", f.Name, c.Hex())
		}
	}
	two, err := Ladder{Hue: 250, Scheme: Opposite}.Palette()
	if err != nil {
		t.Fatal(err)
	}
	if names := fabricNames(two); names[0] != "blue-20" || names[1] != "gold-32" {
		t.Errorf("blue and its opposite give %v", names)
	}
}

// TestLaddersAtTheirLimits: what lies just within the limits is made.
func TestLaddersAtTheirLimits(t *testing.T) {
	for _, wish := range []Ladder{{Rungs: 2}, {Rungs: 24}, {Chroma: 0.4}, {Darkest: 0.1, Lightest: 100}, {Rungs: 11, Darkest: 50, Lightest: 75}} {
		p, err := wish.Palette()
		full := wish.filled()
		if err != nil || len(p.Fabrics) != full.Rungs {
			t.Errorf("%+v: %d fabrics, %v", wish, len(p.Fabrics), err)
		}
	}
}

// TestHuesOfSchemes: the hues that a scheme adds, as color wheels name them (common practice): the one across, those a third of a turn
// away, and those beside it, up to a twelfth of a turn.
func TestHuesOfSchemes(t *testing.T) {
	for scheme, want := range map[Scheme][]float64{OneHue: {350}, Opposite: {170, 350}, Thirds: {110, 230, 350}, Neighbours: {0, 10, 20, 320, 330, 340, 350}} {
		got := Ladder{Hue: -10, Scheme: scheme}.hues()
		if more := got[1:]; len(more) > 0 && more[0] != map[Scheme]float64{Opposite: 170, Thirds: 110, Neighbours: 0}[scheme] {
			t.Errorf("scheme %d goes on with hue %g", scheme, more[0])
		}
		if first := got[0]; first != 350 || !slices.Equal(slices.Sorted(slices.Values(got)), want) {
			t.Errorf("scheme %d has the hues %v, expected %v, its own first", scheme, got, want)
		}
	}
}

// TestHuesHaveWords: going round all hues no word comes again once it was left, but for the first, which closes the circle.
func TestHuesHaveWords(t *testing.T) {
	var words []string
	for h := range 3600 {
		if w := (Ladder{}).word(float64(h) / 10); len(words) == 0 || words[len(words)-1] != w {
			words = append(words, w)
		}
	}
	if want := "rose red orange gold yellow green jade teal blue indigo violet plum rose"; strings.Join(words, " ") != want {
		t.Errorf("round the hues stand %v, expected %s", words, want)
	}
	for hue, want := range map[float64]string{
		9.9: "rose", 10: "red", 39.9: "red", 40: "orange", 64.9: "orange", 65: "gold", 89.9: "gold", 90: "yellow", 114.9: "yellow", 115: "green", 154.9: "green", 155: "jade",
		184.9: "jade", 185: "teal", 224.9: "teal", 225: "blue", 269.9: "blue", 270: "indigo", 294.9: "indigo", 295: "violet", 319.9: "violet", 320: "plum", 344.9: "plum", 345: "rose",
	} {
		if got := (Ladder{}).word(hue); got != want {
			t.Errorf("hue %g is %s, expected %s", hue, got, want)
		}
	}
}

func TestLadderIsTheSameEachTime(t *testing.T) {
	wish := Ladder{Hue: 12.5, Scheme: Neighbours}
	first, err := wish.Palette()
	if err != nil {
		t.Fatal(err)
	}
	for range 20 {
		again, _ := wish.Palette()
		holds(t, sameFabrics(again.Fabrics, first.Fabrics))
	}
}

func TestLadderRefuses(t *testing.T) {
	for _, row := range []struct {
		wish Ladder
		want string
	}{
		{Ladder{Hue: math.NaN()}, "the hue is no number"},
		{Ladder{Rungs: 1}, "expected 2 to 24"},
		{Ladder{Rungs: 1 << 40}, "expected 2 to 24"},
		{Ladder{Darkest: 95}, "the darker end first"},
		{Ladder{Lightest: math.NaN()}, "the darker end first"},
		{Ladder{Rungs: 24, Darkest: 40, Lightest: 60}, "ask for fewer fabrics"},
		{Ladder{Chroma: -1}, "expected above 0 to 0.4"},
		{Ladder{Chroma: 0.401}, "expected above 0 to 0.4"},
		{Ladder{Rungs: 25}, "expected 2 to 24"},
		{Ladder{Darkest: 99, Lightest: 100.5}, "both between 0 and 100"},
		{Ladder{Darkest: -1}, "both between 0 and 100"},
		{Ladder{Darkest: 50, Lightest: 50}, "the darker end first"},
		{Ladder{Rungs: 11, Darkest: 50, Lightest: 74.9}, "lie 2.5 apart, expected at least 2.5"},
		{Ladder{Hue: math.Inf(-1)}, "the hue is no number"},
	} {
		if _, err := row.wish.Palette(); err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%+v gives %v, expected %q", row.wish, err, row.want)
		}
	}
}

func standsOff(c Colour, neighbours []Colour, step float64) error {
	for _, n := range neighbours {
		if d := math.Abs(c.Lightness() - n.Lightness()); d < step {
			return fmt.Errorf("%s stands %.2f off from %s, expected %g", c.Hex(), d, n.Hex(), step)
		}
	}
	return nil
}

// TestAtLightness: another value of the same hue, with no more chroma, to within what eight bits allow.
func TestAtLightness(t *testing.T) {
	for _, c := range []Colour{{0xdc, 0x14, 0x3c}, {0x80, 0x60, 0x40}, {0x1f, 0x33, 0x50}, {0xf4, 0xea, 0xd7}} {
		for l := 0.0; l <= 100; l += 2.5 {
			got := AtLightness(c, l)
			near(t, c.Hex()+": L*", got.Lightness(), l, 0.35)
			if got.OKLCh().Chroma > c.OKLCh().Chroma+0.003 {
				t.Errorf("%s at L* %g has more chroma", c.Hex(), l)
			}
			if l > 20 && l < 90 && got.OKLCh().Chroma > 0.02 {
				near(t, c.Hex()+": hue", got.OKLCh().Hue, c.OKLCh().Hue, 4)
			}
		}
	}
	near(t, "below black", AtLightness(Colour{200, 100, 50}, -5).Lightness(), 0, 1e-9)
	near(t, "above white", AtLightness(Colour{200, 100, 50}, 105).Lightness(), 100, 1e-9)
}
