package contrast

import (
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/palettes"
)

// TestWholeChanges: a change is whole that leaves nothing, and spoils nothing.
func TestWholeChanges(t *testing.T) {
	for _, c := range []Change{{Leaves: []int{1}}, {Breaks: make([]Broken, 1)}, {spoils: true}} {
		if c.Whole() || !(&Change{Clears: []int{1}}).Whole() {
			t.Errorf("%+v is whole, or one that clears all is not", c)
		}
	}
}

// TestMostFabrics: of a layout of eighty fabrics colors are looked for, of one of more only scraps are taken out.
func TestMostFabrics(t *testing.T) {
	text := "side 6\nfabric pale #e8e4da\nfabric white #f4f4f0\nblock H halves pieces pale white\ngrid\n H H\n"
	for n := range 78 {
		text += fmt.Sprintf("fabric f%d #%02x4040\n", n, n)
	}
	if c := Study(lay.Top(t, text), Options{}).Changes; len(c) == 0 {
		t.Error("of 80 fabrics nothing is offered")
	}
	if c := Study(lay.Top(t, text+"fabric last #123456\n"), Options{}).Changes; len(c) > 0 {
		t.Errorf("of 81 fabrics %+v is offered", c)
	}
}

// TestDifferencesThatCount: from 20 of CIEDE2000 on colors alone hold a seam, below 10 two cloths pass for one; both our choice.
func TestDifferencesThatCount(t *testing.T) {
	if !loud(20) || loud(math.Nextafter(20, 0)) || alike(10) || !alike(math.Nextafter(10, 0)) {
		t.Error("just at a limit it is on the other side")
	}
}

// TestInsteadWithinBounds: another fabric may be just as light as the least or the most that will do, and of several the nearest is told.
func TestInsteadWithinBounds(t *testing.T) {
	gray := func(v uint8) palettes.Colour { return palettes.Colour{R: v, G: v, B: v} }
	top := &quilt.Top{Fabrics: []quilt.Fabric{{Name: "own", Colour: gray(50)}}}
	shelf := []palettes.Palette{{Name: "one", Fabrics: []palettes.Swatch{{Name: "far", Colour: gray(200)}, {Name: "near", Colour: gray(100)}}}, {Name: "other", Fabrics: []palettes.Swatch{{Name: "again", Colour: gray(100)}, {Name: "farther", Colour: gray(240)}}}}
	w := &ways{study: &study{Top: top, Options: Options{Palettes: shelf}}}
	near, far := gray(100).Lightness(), gray(200).Lightness()
	for _, c := range []struct {
		low, high float64
		want      string
	}{{near, near, "near"}, {math.Nextafter(near, 100), far, "far"}, {0, math.Nextafter(near, 0), ""}, {0, 100, "near"}, {math.Nextafter(near, 100), math.Nextafter(far, 0), ""}} {
		got := w.instead(0, c.low, c.high)
		want := map[string]*Instead{
			"near": {"near", "one", "#646464", near, palettes.Difference(gray(50), gray(100))},
			"far":  {"far", "one", "#c8c8c8", far, palettes.Difference(gray(50), gray(200))},
		}[c.want]
		if !reflect.DeepEqual(got, want) {
			t.Errorf("from %g to %g: %+v, not %+v", c.low, c.high, got, want)
		}
	}
}

// swapOf are the two fabrics whose change of places should be offered: none where one fabric in another color clears all, else the first of
// which one, but not the other, costs a loss with a third, both prints or neither, so that all that costs losses then stands a clear step
// apart, fabrics that meet as far as they are, up to that, and all is cleared and nothing spoilt. Three are tried.
func (p *plainly) swapOf(r *Report) []string {
	for _, c := range r.Changes {
		if c.Of == Recolor && c.Whole() && len(c.Steps) == 1 {
			return nil
		}
	}
	tried, calm := 0, p.calm(r.Stray)
	lights := map[int]float64{}
	for f := range p.Fabrics {
		lights[f] = p.lightOf(f)
		if color, is := calm[f]; is {
			lights[f] = color.Lightness()
		}
	}
	for a := range p.Fabrics {
		for b := a + 1; b < len(p.Fabrics) && tried < 3; b++ {
			then := maps.Clone(lights)
			then[a], then[b] = lights[b], lights[a]
			apart := func(c, d int) float64 { return math.Abs(then[c] - then[d]) }
			one := slices.ContainsFunc(p.costs(r), func(m Lack) bool { return (m.a == a || m.b == a) != (m.a == b || m.b == b) })
			near := slices.ContainsFunc(p.costs(r), func(m Lack) bool { return apart(m.a, m.b) < r.Thresholds.Clear })
			nearer := slices.ContainsFunc(r.Pairs, func(q Pair) bool { return q.Inside < q.Length && apart(q.A, q.B) < min(q.Step, r.Thresholds.Clear) })
			if !one || near || nearer || (p.Fabrics[a].Cloth == nil) != (p.Fabrics[b].Cloth == nil) {
				continue
			}
			tried++
			c := Change{Of: SwapTwo, Swap: []string{p.Fabrics[a].Name, p.Fabrics[b].Name}}
			if _, leaves, breaks, spoils := p.mended(r, &c); len(leaves)+len(breaks) == 0 && !spoils {
				return c.Swap
			}
		}
	}
	return nil
}

// swapApart says what is wrong with the change of places that is offered, "" for nothing.
func (p *plainly) swapApart(r *Report) string {
	var got []string
	for _, c := range r.Changes {
		if c.Of == SwapTwo {
			got = append(got, c.Swap...)
		}
	}
	var want []string
	if len(r.Losses) > 0 && len(p.Fabrics) <= 80 {
		want = p.swapOf(r)
	}
	if !slices.Equal(got, want) {
		return fmt.Sprintf("%v may change places, and %v would do", got, want)
	}
	return ""
}

// TestFabricsThatMayChangePlaces: one of the two must clash with a third fabric; then all that clash must stand a clear step apart, and all
// that meet, but only inside figures, as far as they do now, up to that. Both are prints or neither is, and the first three such two are tried.
func TestFabricsThatMayChangePlaces(t *testing.T) {
	dice := rand.New(rand.NewPCG(3, 4))
	would, many := 0, 0
	for range 3000 {
		own := make([]float64, 4)
		for i := range own {
			own[i] = float64(10 * dice.IntN(10))
		}
		var clashing []Lack
		r := &Report{}
		for a := range own {
			for b := range own {
				if own[a] < own[b] || own[a] == own[b] && a < b {
					if dice.IntN(3) == 0 {
						clashing = append(clashing, Lack{a: a, b: b})
					}
					if dice.IntN(3) == 0 {
						r.Pairs = append(r.Pairs, Pair{A: a, B: b, Step: own[b] - own[a], Length: 9, Inside: nearest(float64(9 * dice.IntN(2)))})
					}
				}
			}
		}
		prints := make([]Print, len(own))
		prints[dice.IntN(len(own))].Spread = float64(dice.IntN(2))
		w := &ways{study: &study{Top: &quilt.Top{Fabrics: make([]quilt.Fabric, len(own))}, Options: Options{Contrast: &Contrast{5, 20}, Prints: prints}}, report: r}
		var may [][2]int
		for a := range own {
			for b := a + 1; b < len(own); b++ {
				is := slices.ContainsFunc(clashing, func(m Lack) bool {
					ends := []int{m.a, m.b}
					return slices.Contains(ends, a) != slices.Contains(ends, b)
				})
				if involved(clashing, a, b) != is {
					t.Fatalf("%v: that %d or %d is involved is %v", clashing, a, b, !is)
				}
				then := slices.Clone(own)
				then[a], then[b] = own[b], own[a]
				will := !slices.ContainsFunc(clashing, func(m Lack) bool { return math.Abs(then[m.a]-then[m.b]) < 20 }) &&
					!slices.ContainsFunc(r.Pairs, func(p Pair) bool { return p.Inside < 9 && math.Abs(then[p.A]-then[p.B]) < min(20, p.Step) })
				if got := w.wouldDo(clashing, newSteps(own), a, b); got != will {
					t.Fatalf("%v, clashing %v, meeting %v: that %d and %d may change places is %v", own, clashing, r.Pairs, a, b, got)
				}
				would += map[bool]int{true: 1}[will]
				if is && will && prints[a] == prints[b] {
					may = append(may, [2]int{a, b})
				}
			}
		}
		if len(may) > 3 {
			may, many = may[:3], many+1
		}
		if got := w.swappable(clashing, newSteps(own)); !slices.Equal(got, may) {
			t.Fatalf("%v, clashing %v, meeting %v, prints %v: %v are tried, not %v", own, clashing, r.Pairs, prints, got, may)
		}
	}
	if would < 300 || many < 5 {
		t.Errorf("only %d could change places, %d times more than three", would, many)
	}
}

// TestSetsThatReadUnreversed: a strip set is told to be left as it is where the same sort of figure of the same fabrics reads with it so.
func TestSetsThatReadUnreversed(t *testing.T) {
	lost := Figure{Sort: Web, Of: []string{"navy", "rust"}, Reversed: true, Verdict: Lost}
	reads := Figure{Sort: Web, Of: []string{"navy", "rust"}, Verdict: Reads}
	star, reversed, faint, other := reads, reads, reads, reads
	star.Sort, reversed.Reversed, faint.Verdict, other.Of = Star, true, OutlineOnly, []string{"rust", "navy"}
	for name, c := range map[string]struct {
		figures []Figure
		will    bool
	}{
		"the same, as written": {[]Figure{lost, reads}, true}, "a star": {[]Figure{lost, star}, false}, "reversed too": {[]Figure{lost, reversed}, false},
		"only its outline": {[]Figure{lost, faint}, false}, "other fabrics": {[]Figure{lost, other}, false}, "some of them": {[]Figure{star, other, lost, reads}, true},
	} {
		if got := (&Report{Figures: c.figures}).readsUnreversed(&lost); got != c.will {
			t.Errorf("%s: that leaving it as written helps is %v", name, got)
		}
	}
}

// TestWhatIsLostBesides: a change spoils a quilt where figures are lost then, be they the first, that were not judged before; scraps are none.
func TestWhatIsLostBesides(t *testing.T) {
	at := func(places ...int) (list []Figure) {
		for _, p := range places {
			list = append(list, Figure{place: [2]int{p, 0}})
		}
		return list
	}
	w := &ways{report: &Report{Figures: at(1, 2)}}
	for _, c := range []struct {
		after  Report
		spoils bool
	}{
		{Report{Figures: at(1, 2), Losses: []Loss{{Figure: 1}}}, false}, {Report{Figures: at(3, 1), Losses: []Loss{{Figure: 0}}}, true},
		{Report{Figures: at(3, 1), Losses: []Loss{{Figure: 1}}}, false}, {Report{Figures: at(1, 3), Losses: []Loss{{Figure: 0}, {Figure: 1}}}, true},
		{Report{Figures: at(3), Losses: []Loss{{Figure: -1, Of: LossOfScrap}}}, false},
	} {
		if got := w.losesMore(&c.after); got != c.spoils {
			t.Errorf("%+v: that more is lost is %v", c.after.Losses, got)
		}
	}
}

// TestOneValueUpToAClearStep: fabrics are of one value that lie less than a clear step from each other.
func TestOneValueUpToAClearStep(t *testing.T) {
	for _, c := range []struct {
		lights []float64
		one    bool
	}{{[]float64{30, 10, 20}, false}, {[]float64{math.Nextafter(30, 0), 10, 20}, true}, {[]float64{50}, true}, {[]float64{50, 50}, true}} {
		s := &study{lightness: c.lights, Options: Options{Contrast: &Contrast{5, 20}}}
		fabrics := make([]int, len(c.lights))
		for f := range fabrics {
			fabrics[f] = f
		}
		if got := s.oneValue(fabrics); got != c.one {
			t.Errorf("%v: that they are of one value is %v", c.lights, got)
		}
	}
}
