package contrast

import (
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/lay"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// everyLayout is the names of the layouts in testdata.
func everyLayout(t testing.TB) []string {
	t.Helper()
	files, err := filepath.Glob("../../../testdata/values/layouts/*.quilt")
	if err != nil || len(files) == 0 {
		t.Fatalf("no layouts: %v", err)
	}
	var names []string
	for _, f := range files {
		names = append(names, strings.TrimSuffix(filepath.Base(f), ".quilt"))
	}
	return names
}

// seamSum adds up the lengths of a top's seams by another way than the study: by squares.
func seamSum(t *quilt.Top) (all, one float64) {
	for _, list := range [][]quilt.Seam{t.Seams, t.StripSeams} {
		for _, s := range list {
			dx, dy := float64(s.To.X-s.From.X), float64(s.To.Y-s.From.Y)
			length := math.Hypot(dx, dy)
			all += length
			if t.Faces[s.A].Fabric == t.Faces[s.B].Fabric {
				one += length
			}
		}
	}
	return all, one
}

// lengthsAgree says whether a report's lengths add up to those of the top's seams: in all,
// by band, and by pair.
func lengthsAgree(t *quilt.Top, r *Report) bool {
	all, one := seamSum(t)
	var byBand, pairs, pairBands float64
	for _, l := range r.Seams.ByBand {
		byBand += float64(l)
	}
	for _, p := range r.Pairs {
		pairs += float64(p.Length)
		for _, l := range p.ByBand {
			pairBands += float64(l)
		}
	}
	for _, got := range []float64{float64(r.Seams.Length), byBand + one, pairs + one, pairBands + one} {
		if math.Abs(got-all) > 200 { // whole nanometres, one rounding a pair and band
			return false
		}
	}
	return true
}

// TestLengthsNotice: the law above catches a pair that is off by a micrometre, and seams
// that are left out.
func TestLengthsNotice(t *testing.T) {
	top := read(t, "harbour")
	r := Study(top, Options{})
	r.Pairs[0].Length += 1000
	if lengthsAgree(top, r) {
		t.Error("a pair that is too long was not noticed")
	}
	r = Study(top, Options{})
	top.StripSeams = nil
	if lengthsAgree(top, r) {
		t.Error("seams that are not there were not noticed")
	}
}

// TestScaleDoesNotMatter: with thresholds and blur that grow with the quilt, a quilt twice
// as large scores the same.
func TestScaleDoesNotMatter(t *testing.T) {
	colours := [3]palettes.Colour{colour(t, "#e6d3b1"), colour(t, "#b8a681"), colour(t, "#a8966f")}
	contrast := &Contrast{Soft: 6, Clear: 20}
	one := judged(sawtooth(2*measure.Inch, colours), Options{Contrast: contrast, Blur: measure.Inch / 4})
	for _, factor := range []measure.NM{2, 3, 10} {
		f := judged(sawtooth(2*factor*measure.Inch, colours), Options{Contrast: contrast, Blur: factor * measure.Inch / 4})
		near(t, "outline", f.Outline.Score, one.Outline.Score, 1e-9)
		near(t, "mass", f.Mass.Score, one.Mass.Score, 1e-9)
	}
	// With the eye's own threshold it does matter: small pieces want a larger step.
	small := judged(sawtooth(measure.Inch/2, colours), Options{})
	large := judged(sawtooth(6*measure.Inch, colours), Options{})
	if small.Outline.Score >= large.Outline.Score {
		t.Errorf("half-inch pieces score %.1f and six-inch ones %.1f", small.Outline.Score, large.Outline.Score)
	}
}

// TestTheSameEveryTime: ten studies give the same bytes.
func TestTheSameEveryTime(t *testing.T) {
	top := read(t, "ring-scraps-good")
	first := Study(top, Options{})
	for range 10 {
		if again := Study(top, Options{}); !reflect.DeepEqual(first, again) {
			t.Fatal("two studies of one top differ")
		}
	}
}

// TestLighterNeverHarms: with the darker side of an outline held, moving the lighter side
// away from it never lowers the outline's score.
func TestLighterNeverHarms(t *testing.T) {
	last := -1.0
	for l := 30.0; l <= 95; l += 0.5 {
		y := palettes.LuminanceOf(l)
		grey := palettes.Linear{R: y, G: y, B: y}.Colour()
		f := judged(sawtooth(2*measure.Inch, [3]palettes.Colour{grey, colour(t, "#404040"), colour(t, "#404040")}), Options{})
		if f.Outline.Score < last-1e-9 {
			t.Fatalf("at L* %.1f the score falls from %.2f to %.2f", l, last, f.Outline.Score)
		}
		last = f.Outline.Score
	}
	if last != 100 {
		t.Errorf("the lightest ground scores %.1f", last)
	}
}

// TestGreysKeepTheirStepForAllEyes: where every fabric is a grey, no sight for colours
// changes a step by more than the rounding to eight bits does.
func TestGreysKeepTheirStepForAllEyes(t *testing.T) {
	top := sawtooth(2*measure.Inch, [3]palettes.Colour{{R: 220, G: 220, B: 220}, {R: 90, G: 90, B: 90}, {R: 30, G: 30, B: 30}})
	for _, p := range Study(top, Options{}).Pairs {
		for _, s := range p.Sight {
			near(t, p.Names[0]+" and "+p.Names[1]+" for "+s.Deficiency, s.Step, p.Step, 0.8)
		}
	}
}

// TestRedOnBlackFallsForProtan: reds darken for those who lack long-wave cones (Machado,
// Oliveira and Fernandes 2009).
func TestRedOnBlackFallsForProtan(t *testing.T) {
	p := Study(read(t, "web-red-on-black"), Options{}).Pairs[0]
	if p.Sight[0].Deficiency != "protan" || p.Sight[0].Step > p.Step-5 {
		t.Errorf("step %.1f, for protan sight %.1f", p.Step, p.Sight[0].Step)
	}
}

func pairOf(r *Report, a, b string) Pair {
	for _, p := range r.Pairs {
		if p.Names == [2]string{a, b} || p.Names == [2]string{b, a} {
			return p
		}
	}
	return Pair{}
}

// TestTriedLeavesTheTopAlone: other colours are tried on another top, and what names no
// fabric or no colour is refused.
func TestTriedLeavesTheTopAlone(t *testing.T) {
	top := read(t, "harbour")
	before := top.Fabrics[0].Colour
	tried := Tried(top, []Try{{0, palettes.Colour{R: 1, G: 2, B: 3}}})
	if top.Fabrics[0].Colour != before || tried.Fabrics[0].Colour == before {
		t.Error("the colour was changed in the wrong top")
	}
	for _, text := range []string{"", "cream", "cream=", "cream=#12", "kream=#123456", "=#123456"} {
		if _, err := ParseTry(top, text); err == nil {
			t.Errorf("%q was taken", text)
		}
	}
}

// TestPrintsRaiseTheThreshold: a busy print needs twice the step (TextureFactor), and two
// prints whose lights and darks overlap are told.
func TestPrintsRaiseTheThreshold(t *testing.T) {
	top := sawtooth(2*measure.Inch, [3]palettes.Colour{colour(t, "#9a9a9a"), colour(t, "#7f7f7f"), colour(t, "#303030")})
	plain := pairOf(Study(top, Options{}), "ground", "points")
	busy := pairOf(Study(top, Options{Prints: []Print{{12, 40, 80}, {12, 30, 72}}}), "ground", "points")
	near(t, "soft", busy.Soft, 2*plain.Soft, 1e-9)
	if plain.Band != Soft || busy.Band != Vanishes || plain.BreaksUp || !busy.BreaksUp {
		t.Errorf("plain %+v\nbusy %+v", plain, busy)
	}
}

func TestOptionsThatAreRefused(t *testing.T) {
	for _, o := range []Options{
		{Distance: -1}, {Blur: -1}, {Contrast: &Contrast{0, 20}}, {Contrast: &Contrast{20, 20}}, {Contrast: &Contrast{5, 101}},
		{Contrast: &Contrast{math.NaN(), 20}}, {Contrast: &Contrast{5, math.NaN()}},
	} {
		if o.Check() == nil {
			t.Errorf("%+v was taken", o)
		}
	}
	if err := (&Options{Contrast: &Contrast{6, 20}}).Check(); err != nil {
		t.Error(err)
	}
}

// TestEveryLayoutIsInTheTable: no layout lies about unjudged.
func TestEveryLayoutIsInTheTable(t *testing.T) {
	table, err := os.ReadFile("../../../testdata/values/said.csv")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range everyLayout(t) {
		if !strings.Contains(string(table), "\n"+name+",") {
			t.Errorf("%s is not in the table", name)
		}
	}
}

// TestRimOfTheGroundsClothBelongsToTheGround: a strip at the rim in the kites' own
// cloth belongs to the ground.
func TestRimOfTheGroundsClothBelongsToTheGround(t *testing.T) {
	f := Study(read(t, "web-rim-like-kites"), Options{}).Figures[0]
	if strings.Join(f.Of, " ") != "navy rust" || strings.Join(f.Edge, " ") != "navy" || strings.Join(f.Against, " ") != "cream" {
		t.Errorf("of %v, edge %v, against %v", f.Of, f.Edge, f.Against)
	}
}

// TestOddTops: whatever a layout may hold and however near or far it is seen, there is a
// report whose scores lie within their ranges.
func TestOddTops(t *testing.T) {
	const fabrics = "side 7\nfabric a #f4ead7\nfabric b #1f3350\nfabric c #b5532a\n"
	for name, text := range map[string]string{
		"one square":  fabrics + "block P plain piece a\ngrid\n P",
		"holes":       fabrics + "block P plain piece a\nblock R ring wedges a b corners c\ngrid\n P . R\n . R .",
		"one ring":    fabrics + "block R ring wedges a corners b\ngrid\n R",
		"odd turns":   fabrics + "block R ring wedges a a b b corners c\ngrid\n R R",
		"edge":        fabrics + "block R ring wedges a b corners c edge c\ngrid\n R R\n R R\nborder 2 c",
		"one column":  fabrics + "block T tumblers pieces a b c about 4\ngrid\n T\n T",
		"halves":      fabrics + "block H halves pieces a b\ngrid\n H H:ne",
		"sashes":      fabrics + "block W web wedges a kites b\nsash 1 1/2 c posts b around\ngrid\n W W\n W W",
		"own melting": fabrics + "strip-set s a 2 a rest\nblock W web wedges s kites a\ngrid\n W W\n W W",
	} {
		top := lay.Top(t, text)
		for _, o := range []Options{{}, {Distance: 1}, {Distance: 1 << 55}, {Blur: 1}, {Blur: 1 << 45}, {Contrast: &Contrast{1, 100}}} {
			r := Study(top, o)
			if !lengthsAgree(top, r) {
				t.Errorf("%s: the lengths do not add up", name)
			}
			for _, f := range r.Figures {
				sane(t, name, f.Outline.Score/100, f.Outline.Edge, f.Outline.Polarity)
				if f.Mass != nil {
					sane(t, name, f.Mass.Score/100, f.Mass.Massing, f.Mass.Step)
				}
			}
		}
	}
}

func sane(t *testing.T, name string, parts ...float64) {
	t.Helper()
	for _, p := range parts {
		if !(p >= 0 && p <= 1) {
			t.Errorf("%s: a part of %g", name, p)
		}
	}
}
