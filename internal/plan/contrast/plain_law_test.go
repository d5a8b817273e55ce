package contrast

import (
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/internal/stop"
	"eighthturn/palettes"
)

// partsApart says where the parts of a study and those made by plain means differ.
func (p *plainly) partsApart(r *Report) []string {
	var faults []string
	for _, part := range []struct {
		name      string
		got, want any
	}{
		{"thresholds", r.Thresholds, p.thresholds()}, {"fabrics", r.Fabrics, p.fabrics()}, {"seams", r.Seams, p.totals()}, {"pairs", r.Pairs, p.pairs()},
	} {
		if fault := apartFrom(part.got, part.want); fault != "" {
			faults = append(faults, part.name+fault)
		}
	}
	if want := p.marks(); !reflect.DeepEqual(r.Marks, want) {
		faults = append(faults, fmt.Sprintf("marks: %d, not %d, or others", len(r.Marks), len(want)))
	}
	return append(faults, p.figuresApart(r)...)
}

// figuresApart is partsApart for the figures, and what is said to be lost.
func (p *plainly) figuresApart(r *Report) []string {
	var faults []string
	got, want := slices.Clone(r.Figures), p.figures()
	if len(got) != len(want) {
		return []string{fmt.Sprintf("%d figures, not %d", len(got), len(want))}
	}
	for i := range got {
		g, w := &got[i], &want[i]
		for _, f := range [2]*Figure{g, w} {
			for _, names := range [3]*[]string{&f.Of, &f.Edge, &f.Against} { // of many drawn together in any order
				*names = slices.Compact(slices.Sorted(slices.Values(*names)))
			}
			f.Faces = slices.Sorted(slices.Values(f.Faces))
		}
		if g.Weakest != w.Weakest && p.asWeak(g.Weakest, w.Weak) {
			w.Weakest = g.Weakest
		}
		if w.Mass != nil && atLimit(w.Mass.Score) { // rounding decides
			w.Verdict, w.Lacks = g.Verdict, g.Lacks
		}
		if fault := apartFrom(*g, *w); fault != "" {
			faults = append(faults, fmt.Sprintf("figure %d, %s%s", i, g.Sort, fault))
		}
		if !slices.Equal(g.Faces, w.Faces) {
			faults = append(faults, fmt.Sprintf("figure %d, %s: other faces", i, g.Sort))
		}
	}
	if fault := apartFrom(r.Stray, p.strays()); fault != "" {
		faults = append(faults, "stray"+fault)
	}
	if fault := apartFrom(r.Losses, lossesOf(r.Figures, r.Stray)); fault != "" {
		faults = append(faults, "losses"+fault)
	}
	return faults
}

// atLimit says whether a mass scores just what a verdict asks for.
func atLimit(score float64) bool {
	return slices.ContainsFunc([]float64{70, 55, 100.0 / 3}, func(limit float64) bool { return math.Abs(score-limit) < 1e-9 })
}

// TestStudiesByPlainMeans: what a study says of fabrics, seams, pairs and figures is what the plainest means make of the same top.
func TestStudiesByPlainMeans(t *testing.T) {
	all := maps.Clone(studied())
	texts := map[string]string{
		"many colorings": "strip 4\nfabric d1 #1f3350\nfabric d2 #46302a\nfabric d3 #5c5c5c\nfabric d4 #707070\nfabric l1 #b8b8b8\nfabric l2 #8c8c8c\nfabric l3 #7c7c7c\n" +
			"scraps darks d1 d2 d3 d4\nscraps lights l1 l2 l3\nblock W web wedges darks kites lights\ngrid\n W W W W\n W W W W\n W W W W\n W W W W\nborder 2 d3\n",
		// Of a pool's scraps, one is the ground and one, a clear step away, the border.
		"a border of the ground's pool": "strip 4\nfabric navy #1f3350\nfabric gray #8a8a8a\nfabric pale #e8e8e8\nfabric unused #123456\nscraps lights gray pale\nblock W web wedges navy kites pale\ngrid\n W W\n W W\nborder 2 gray\n",
		"prints beside plain cloth":     "side 6\nfabric deck stripes navy 1/2 white 1/2\nfabric pale #8899aa\nfabric dusk stripes red 1/4 pink 1/2\nfabric dark #202020\nblock P plain piece dusk\nblock H halves pieces deck pale\nblock R ring wedges dark dusk corners deck\ngrid\n H H P\n R P H\n",
		"light and dark wheels":         "side 6\nfabric a #102030\nfabric b #304050\nfabric c #e0e0d0\nfabric d #c0b0a0\nfabric e #707070\nblock A ring wedges a corners e\nblock B ring wedges c corners e\nblock C ring wedges a b c a corners e\nblock D ring wedges d corners b\ngrid\n A B C D\n . A A D\nborder 1 a\nborder 1 e\n",
	}
	for _, file := range []string{"b3", "m12", "m14", "m27", "n05", "n10", "n12", "n13"} {
		texts[file] = judgedText(t, file)
	}
	for name, text := range texts {
		top := lay.Top(t, text)
		s := newStudy(nil, top, Options{})
		all[name] = studiedTop{Top: top, report: Study(top, Options{}), study: s}
		if fault := newFinding(top).foundApart(s.found); fault != "" {
			t.Errorf("%s: %s", name, fault)
		}
	}
	for _, name := range judges.Some(slices.Sorted(maps.Keys(all)), 60) {
		p := newPlainly(all[name])
		for _, fault := range p.partsApart(all[name].report) {
			t.Errorf("%s: %s", name, fault)
		}
	}
}

// TestEdgesOfSorts: what is as wide as two standard deviations of the blur is a mass, what is a nanometer narrower is none; of a sort a
// third is not few.
func TestEdgesOfSorts(t *testing.T) {
	top := sawtooth(2*measure.Inch, [3]palettes.Colour{colour(t, "#e6d3b1"), colour(t, "#303030"), colour(t, "#303030")})
	if judged(top, Options{Blur: 2 * measure.Inch}).Mass == nil || judged(top, Options{Blur: 2*measure.Inch + 1}).Mass != nil {
		t.Error("a square of 4 in is no mass for a blur of 2 in, or is one for a wider blur")
	}
	few := func(count int) []Figure {
		return []Figure{{Sort: Web, Count: count, Of: []string{"odd"}, Verdict: Lost}, {Sort: Web, Count: 4, Of: []string{"even"}, Verdict: Lost}}
	}
	for count, want := range map[int]LossOf{1: LossOfFigure, 2: LossOfFigure} {
		stray := []Stray{{Fabric: "odd"}}
		got := losses(few(count), stray)
		if fault := apartFrom(got, lossesOf(few(count), stray)); fault != "" || got[0].Of != want || (got[0].Figure == 0) != (count == 2) {
			t.Errorf("%d of a sort: %+v", count, got)
		}
	}
}

// TestAlternation of pieces down a column: of those with two neighbors the part that is darker than both, or lighter.
func TestAlternation(t *testing.T) {
	for _, c := range []struct {
		lights []float64
		want   float64
	}{
		{[]float64{50, 60}, 0}, {[]float64{50, 60, 50}, 1}, {[]float64{50, 50.4, 50}, 1}, {[]float64{50, 49.6, 50}, 1}, {[]float64{50, 50, 40}, 0}, {[]float64{40, 50, 60}, 0},
		{[]float64{40, 50, 60, 50}, 0.5}, {[]float64{50, 40, 60, 50, 51.5, 51}, 1}, {[]float64{50, 49.5, 49}, 0},
	} {
		s, m := &study{}, member{}
		for i := 1; i < len(c.lights); i++ {
			s.seams = append(s.seams, seam{a: int32(i - 1), b: int32(i), step: c.lights[i-1] - c.lights[i]})
			m.seams = append(m.seams, outlineSeam{int32(i - 1), 1})
		}
		near(t, fmt.Sprint(c.lights), s.alternates([]member{m}), c.want, 1e-9)
	}
}

// TestStepsOfAStudy: a study counts a step for each face and each seam, so that work which somebody no longer waits for ends soon.
func TestStepsOfAStudy(t *testing.T) {
	for _, file := range []string{"g1", "m03", "m16"} {
		top := lay.Top(t, judgedText(t, file))
		got := stop.Count(func(s *stop.Sign) { StudyUntil(s, top, Options{}) })
		if want := len(top.Faces) + len(top.Seams) + len(top.StripSeams); got != want {
			t.Errorf("%s: %d steps, not %d", file, got, want)
		}
	}
}

// TestWidthsAreRemembered: outlines that are alike in some corners keep widths of their own.
func TestWidthsAreRemembered(t *testing.T) {
	w := widths{}
	p := func(x, y measure.NM) measure.Point { return measure.Point{X: x, Y: y} }
	for _, o := range [][]measure.Point{
		{p(5, 5), p(105, 5), p(105, 85)}, {p(15, 5), p(105, 5), p(105, 85)}, {p(5, 0), p(105, 5), p(105, 85)}, {p(15, 5), p(95, 5), p(95, 85)}, {p(5, 15), p(105, -5), p(105, 75)}, {p(5, 5), p(65, 5), p(105, 85)}, {p(5, 5), p(105, 5), p(85, 85)}, {p(5, 5), p(105, 5), p(105, 85), p(5, 85)},
		{p(5, 5), p(105, 5), p(105, 85), p(5, 65)}, {p(5, 5), p(105, 5), p(115, 45), p(105, 85), p(5, 85)}, {p(5, 5), p(105, 5), p(115, 45), p(105, 85), p(5, 75)},
		{p(5, 5), p(105, 5), p(115, 45), p(105, 85), p(5, 85), p(-95, 45)}, {p(5, 5), p(105, 5), p(115, 45), p(105, 85), p(5, 85), p(-5, 45)},
	} {
		for range 2 {
			near(t, fmt.Sprint("the width of ", o), w.of(o), narrowestOf(o), 1e-9)
		}
	}
}

// TestPlainMeansNotice: of a study that is spoilt in one place the law tells.
func TestPlainMeansNotice(t *testing.T) {
	top := lay.Top(t, judgedText(t, "g2"))
	one := studiedTop{Top: top, study: newStudy(nil, top, Options{})}
	for name, spoil := range map[string]func(r *Report){
		"a threshold":              func(r *Report) { r.Thresholds.SoftLeast += 1e-3 },
		"a share":                  func(r *Report) { r.Fabrics[0].Share += 1e-4 },
		"two fabrics that change":  func(r *Report) { r.Fabrics[0], r.Fabrics[1] = r.Fabrics[1], r.Fabrics[0] },
		"a length":                 func(r *Report) { r.Seams.Length += 40 },
		"a pair's place":           func(r *Report) { r.Pairs[0].Sight[1].Band ^= 1 },
		"a pair that is left out":  func(r *Report) { r.Pairs = r.Pairs[1:] },
		"a mark":                   func(r *Report) { r.Marks = append(r.Marks, Mark{}) },
		"a score":                  func(r *Report) { r.Figures[0].Outline.Score += 1e-3 },
		"a face":                   func(r *Report) { r.Figures[0].Faces[0]++ },
		"a mass":                   func(r *Report) { m := *r.Figures[0].Mass; m.Score++; r.Figures[0].Mass = &m },
		"a figure that is missing": func(r *Report) { r.Figures = r.Figures[1:] },
		"a loss":                   func(r *Report) { r.Losses = append(r.Losses, Loss{Of: LossOfFrame}) },
		"a scrap":                  func(r *Report) { r.Stray = append(r.Stray, Stray{}) },
	} {
		r := Study(top, Options{})
		spoil(r)
		if len(newPlainly(one).partsApart(r)) == 0 {
			t.Errorf("%s goes unnoticed", name)
		}
	}
}

// TestLossesOfAnyFigures: whatever figures and scraps there are, what is lost of them is told in its order.
func TestLossesOfAnyFigures(t *testing.T) {
	dice := rand.New(rand.NewPCG(11, 12))
	verdicts := []Verdict{Reads, OutlineOnly, FromAfarOnly, Faint, Lost, RunsOn}
	names := []string{"a", "b", "c", "odd"}
	for range 2000 {
		var figures []Figure
		for range dice.IntN(7) {
			f := Figure{Sort: []Sort{Web, Web, Star, Strips, ByTurns, Border, Sashes, InBlocks}[dice.IntN(8)], Verdict: verdicts[dice.IntN(6)], Count: 1 + dice.IntN(4)}
			f.Of, f.Against = []string{names[dice.IntN(4)]}, []string{names[dice.IntN(4)]}
			if dice.IntN(2) == 0 {
				f.Rim = &Rim{Verdict: verdicts[dice.IntN(6)], Count: 1 + dice.IntN(f.Count)}
			}
			figures = append(figures, f)
		}
		strays := []Stray{{Fabric: "odd"}, {Fabric: "other"}}[:dice.IntN(3)]
		if got, want := losses(figures, strays), lossesOf(figures, strays); !slices.Equal(got, want) {
			t.Fatalf("of %+v, %+v: %+v, not %+v", figures, strays, got, want)
		}
	}
}

// TestTwoSorts: of any figures the first two lists of fabrics take turns that share none, if all others are made of both; of seven lists or
// more none do.
func TestTwoSorts(t *testing.T) {
	dice := rand.New(rand.NewPCG(13, 14))
	s := &study{Top: &quilt.Top{}}
	for f := range int32(5) {
		s.Faces = append(s.Faces, quilt.Face{Fabric: f})
	}
	found, six := 0, 0
	for range 4000 {
		var made [][]int
		var variants [][]member
		fabrics := 2 + dice.IntN(4)
		for range 1 + dice.IntN(9) {
			var faces []int32
			for f := range int32(fabrics) {
				if dice.IntN(2) == 0 {
					faces = append(faces, f)
				}
			}
			if len(made) == 0 || len(made) == 1 && fabrics > 2 && dice.IntN(3) > 0 { // two that share none, to begin with
				faces = [][]int32{{0, 1}, []int32{2, 3, 4}[:fabrics-2]}[len(made)]
			}
			if len(faces) == 0 {
				continue
			}
			variants = append(variants, []member{{faces: faces}, {faces: []int32{0}}}) // the first tells of all
			var of []int
			for _, f := range faces {
				of = append(of, int(f))
			}
			if !slices.ContainsFunc(made, func(list []int) bool { return slices.Equal(list, of) }) {
				made = append(made, of)
			}
		}
		want, ok := sortsOf(made)
		if len(made) > 6 {
			want, ok = [2][]int{}, false
		}
		if got := s.twoSorts(variants); !reflect.DeepEqual(got, want) {
			t.Fatalf("of %v %v take turns, not %v", made, got, want)
		}
		found += map[bool]int{true: 1}[ok]
		six += map[bool]int{true: 1}[ok && len(made) == 6]
	}
	if found < 100 || six < 3 {
		t.Errorf("%d take turns, %d of six", found, six)
	}
}

// TestListsAreThere: where there is nothing to tell, other programs read an empty list, of figures that take turns as well.
func TestListsAreThere(t *testing.T) {
	turns := 0
	for name, one := range studied() {
		r := one.report
		if r.Fabrics == nil || r.Figures == nil || r.Stray == nil || r.Losses == nil || r.Changes == nil {
			t.Errorf("%s: a list is missing", name)
		}
		for i := range r.Figures {
			f := &r.Figures[i]
			if f.Lacks == nil || f.Rim != nil && f.Rim.Lacks == nil {
				t.Errorf("%s: of %s %d no list tells what it lacks", name, f.Sort, i)
			}
			if f.Sort == ByTurns {
				turns++
			}
		}
	}
	if turns == 0 {
		t.Error("no figures take turns")
	}
}
