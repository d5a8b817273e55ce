package contrast

import (
	"maps"
	"math"
	"reflect"
	"slices"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// otherColors are the top in other colors: each fabric in the next one's, and a print as plain cloth.
func otherColors(top *quilt.Top) *quilt.Top {
	var tries []Try
	for f := range top.Fabrics {
		tries = append(tries, Try{f, top.Fabrics[(f+1)%len(top.Fabrics)].Colour})
	}
	return Tried(top, tries)
}

// whatReads is what of a study tells whether the quilt reads.
func whatReads(r *Report) []any {
	return []any{r.Title, r.Units, r.Thresholds, r.Fabrics, r.Figures, r.Stray, r.Losses}
}

// TestAgainIsTheSame: tops studied again, in their own colors, in others, and with others' findings, read as they do studied by themselves.
func TestAgainIsTheSame(t *testing.T) {
	all := studied()
	var again Again
	before := &Again{}
	for n, name := range slices.Sorted(maps.Keys(all)) {
		top := all[name].Top
		if n%judges.Of(3, 9) > 0 {
			continue
		}
		again = Again{}
		again.First(before) // of another top
		before = &Again{}
		other := otherColors(top)
		for _, c := range []struct {
			what string
			by   *Again
			of   *quilt.Top
			want *Report
		}{
			{"first", before, top, all[name].report}, {"in other colors", before, other, Study(other, Options{})},
			{"with what another found", &again, top, all[name].report}, {"as it was", before, top, all[name].report},
		} {
			if got := c.by.Of(c.of); !reflect.DeepEqual(whatReads(got), whatReads(c.want)) {
				t.Errorf("%s, %s: it does not read as it does by itself", name, c.what)
			}
		}
	}
}

// TestAgainWithOtherPrints: what prints were found in one top is not taken for those of the next.
func TestAgainWithOtherPrints(t *testing.T) {
	printed := lay.Top(t, "side 6\nfabric deck stripes navy 1/2 white 1/2\nfabric pale #8899aa\nfabric dusk stripes red 1/2 pink 1/2\nblock P plain piece dusk\nblock H halves pieces deck pale\ngrid\n H H P\n H P H\n")
	plain := otherColors(printed)
	again := &Again{}
	again.Of(plain)
	if got, want := again.Of(printed), Study(printed, Options{}); !reflect.DeepEqual(whatReads(got), whatReads(want)) {
		t.Errorf("%+v, not %+v", got.Thresholds, want.Thresholds)
	}
	for what, other := range map[string]*quilt.Top{"a plain fabric in another color": Tried(printed, []Try{{1, palettes.Colour{R: 20}}}), "prints that change places": changedPlacesOf(printed, 0, 2)} {
		again := &Again{}
		again.Of(printed)
		if got, want := again.Of(other), Study(other, Options{}); !reflect.DeepEqual(whatReads(got), whatReads(want)) {
			t.Errorf("%s: it does not read as it does by itself", what)
		}
	}
	one := lay.Top(t, "side 6\nfabric pale #8899aa\nblock P plain piece pale\ngrid\n P\n")
	again = &Again{}
	if got, want := again.Of(one), again.Of(one); !reflect.DeepEqual(whatReads(got), whatReads(want)) {
		t.Error("a top of one piece does not read as it did")
	}
	own := *plain
	own.Credits.Contrast = &layout.Contrast{Soft: 6, Clear: 24}
	if got, want := (&Again{}).Of(&own), Study(&own, Options{}); !reflect.DeepEqual(whatReads(got), whatReads(want)) || got.Thresholds.Clear != 24 {
		t.Errorf("%+v, not %+v", got.Thresholds, want.Thresholds)
	}
	given := &Again{Options: Options{Contrast: &Contrast{5, 30}}}
	if got := given.Of(&own); got.Thresholds.Clear != 30 {
		t.Errorf("of what was asked for and what the layout says, %g was taken", got.Thresholds.Clear)
	}
}

// changedPlacesOf is a top two fabrics of which change places.
func changedPlacesOf(top *quilt.Top, a, b int) *quilt.Top {
	t := *top
	t.Fabrics = slices.Clone(top.Fabrics)
	t.Fabrics[a], t.Fabrics[b] = top.Fabrics[b], top.Fabrics[a]
	return &t
}

// TestBetter: of two studies the one of which less is lost is better, then the one whose figures score higher; a loss counts one and the
// part that it is, half where it is faint, a figure by its outline and half by its mass where it has one. Strips, and borders that go on
// from the ground, count for nothing.
func TestBetter(t *testing.T) {
	loss := func(v Verdict, part float64) Loss { return Loss{Verdict: v, Part: part} }
	figure := func(sort Sort, outline float64, count int) Figure {
		return Figure{Sort: sort, Outline: Outline{Score: outline}, Count: count}
	}
	massed := func(f Figure, score float64) Figure { f.Mass = &Mass{Score: score}; return f }
	runsOn := figure(Border, 0, 9)
	runsOn.Verdict = RunsOn
	order := []*Report{ // the better first
		{},
		{Losses: []Loss{loss(Faint, 0.1)}, Figures: []Figure{figure(Web, 80, 1)}},
		{Losses: []Loss{loss(Faint, 0.2)}},
		{Losses: []Loss{loss(Lost, 0.1)}},
		{Losses: []Loss{loss(Lost, 0.3)}},
		{Losses: []Loss{loss(Lost, 0.2), loss(Faint, 0.2)}, Figures: []Figure{massed(figure(Web, 81, 1), 90), runsOn, figure(Strips, 0, 9)}},
		{Losses: []Loss{loss(Lost, 0.2), loss(Faint, 0.2)}, Figures: []Figure{figure(Web, 90, 3), figure(Star, 70, 1)}},
		{Losses: []Loss{loss(Lost, 0.2), loss(Faint, 0.2)}, Figures: []Figure{figure(Web, 90, 1), figure(Star, 70, 1)}},
	}
	for i, a := range order {
		for j, b := range order {
			if got, want := Better(a, b), map[bool]int{true: -1}[i < j]+map[bool]int{true: 1}[i > j]; got != want {
				t.Errorf("%d beside %d: %d, not %d", i, j, got, want)
			}
		}
	}
	if got := order[1].score(); got != 80 {
		t.Errorf("one figure that scores 80 makes a score of %g", got)
	}
	if got := order[5].score(); got != 85.5 {
		t.Errorf("a score of %g, not 85.5", got)
	}
}

// TestVerdicts at the limits of what is asked of outlines and masses, from both sides.
func TestVerdicts(t *testing.T) {
	const length = 1000
	outline := func(score float64, broken int64) Outline {
		return Outline{Score: score, Length: length, Broken: nearest(float64(broken))}
	}
	below := func(v float64) float64 { return math.Nextafter(v, 0) }
	for _, c := range []struct {
		outline Outline
		mass    *Mass
		want    Verdict
	}{
		{outline(70, 0), nil, Reads},
		{outline(70, 0), &Mass{Score: 55}, Reads},
		{outline(70, 0), &Mass{Score: below(55)}, OutlineOnly},
		{outline(below(70), 0), &Mass{Score: 70}, FromAfarOnly},
		{outline(below(70), 500), &Mass{Score: below(70)}, Faint},
		{outline(below(70), 499), nil, Faint},
		{outline(below(70), 500), nil, Lost},
		{outline(0, 1000), &Mass{Score: 100.0 / 3}, Faint},
		{outline(0, 1000), &Mass{Score: below(100.0 / 3), Hold: 1}, Lost},
		{Outline{}, &Mass{Score: 70}, Reads},
		{Outline{Score: 100}, &Mass{Score: 55}, Faint},
		{Outline{}, &Mass{Score: below(100.0 / 3), Hold: 1e-9}, Faint},
		{Outline{}, &Mass{}, Lost},
		{Outline{}, nil, Lost},
		{Outline{RunsOn: 1}, nil, RunsOn},
		{Outline{RunsOn: 1, Length: length, Score: 100}, nil, Reads},
	} {
		if got := verdict(&Figure{Outline: c.outline, Mass: c.mass}); got != c.want {
			t.Errorf("%+v %+v: %s, not %s", c.outline, c.mass, got, c.want)
		}
	}
	ranks := []Verdict{Reads, OutlineOnly, FromAfarOnly, Faint, Lost}
	for i, v := range ranks {
		if rank(v) != i || v.Shows() != (i < 3) {
			t.Errorf("%s has rank %d, and that it shows is %v", v, rank(v), v.Shows())
		}
	}
	if rank(RunsOn) != 0 || !RunsOn.Shows() {
		t.Error("what is meant to run on counts as a loss")
	}
}

// TestBandNames: bands are read as they are written, and no others.
func TestBandNames(t *testing.T) {
	for _, b := range Bands() {
		var again Band
		text, _ := b.MarshalText()
		if err := again.UnmarshalText(text); err != nil || again != b {
			t.Errorf("%s is read as %s: %v", text, again, err)
		}
	}
	var b Band
	if b.UnmarshalText([]byte("loud")) == nil {
		t.Error("a band that nobody knows was taken")
	}
}

// TestEveryTryIsRead: a fabric and a color round an equals sign, in any case, and a print becomes plain cloth.
func TestEveryTryIsRead(t *testing.T) {
	top := read(t, "harbour")
	for f := range top.Fabrics {
		try, err := ParseTry(top, " "+top.Fabrics[f].Name+" = #123456 ")
		if err != nil || try.Fabric != f || try.Colour != (palettes.Colour{R: 0x12, G: 0x34, B: 0x56}) {
			t.Errorf("%+v: %v", try, err)
		}
	}
	printed := *top
	printed.Fabrics = slices.Clone(top.Fabrics)
	printed.Fabrics[1].Cloth = &quilt.Cloth{Across: 1, Down: 1}
	if tried := Tried(&printed, []Try{{1, palettes.Colour{}}}); tried.Fabrics[1].Cloth != nil || printed.Fabrics[1].Cloth == nil {
		t.Error("a color was tried on a print")
	}
}

// TestLimitsOfOptions from both sides.
func TestLimitsOfOptions(t *testing.T) {
	for _, c := range []struct {
		soft, clear float64
		good        bool
	}{{1e-9, 100, true}, {0, 20, false}, {20, 20, false}, {math.Nextafter(20, 0), 20, true}, {5, math.Nextafter(100, 101), false}, {-1, 5, false}} {
		if err := (&Options{Contrast: &Contrast{c.soft, c.clear}}).Check(); (err == nil) != c.good {
			t.Errorf("contrast %g %g: %v", c.soft, c.clear, err)
		}
	}
	for _, c := range []struct {
		o    Options
		good bool
	}{{Options{}, true}, {Options{Distance: -1}, false}, {Options{Blur: -1}, false}, {Options{Distance: 1, Blur: 1}, true}} {
		if err := c.o.Check(); (err == nil) != c.good {
			t.Errorf("%+v: %v", c.o, err)
		}
	}
	if d := (&Options{Distance: 1}).distance(); d != 1 {
		t.Errorf("1 nm is taken for %d", d)
	}
}
