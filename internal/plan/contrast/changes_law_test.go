package contrast

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/palettes"
)

// boundsOf are the least and the most that values may be, by going over what is asked until nothing changes; ok is false where nothing
// will do. Those that are fixed have one value.
func (p *steps) boundsOf(asked []Lack, fixed map[int]float64) (low, high []float64, ok bool) {
	low, high = slices.Clone(p.least), slices.Clone(p.most)
	for v, l := range fixed {
		low[v], high[v] = max(low[v], l), min(high[v], l)
	}
	for range len(low) + 1 {
		for _, m := range asked {
			low[m.b] = max(low[m.b], low[m.a]+m.Step)
			high[m.a] = min(high[m.a], high[m.b]-m.Step)
		}
	}
	for v := range low {
		if low[v] > high[v]+1e-9 {
			return nil, nil, false
		}
	}
	return low, high, true
}

// solvedApart says what is wrong with values that were settled: all that is asked for holds; who comes first in the order stays if it can
// beside those before it; the others, in the order too, move no more than they must.
func (p *steps) solvedApart(asked []Lack, order []int) string {
	got, ok := p.solve(order)
	fixed := map[int]float64{}
	if _, _, can := p.boundsOf(asked, fixed); can != ok {
		return fmt.Sprintf("that it can be had is %v, and %v is said", can, ok)
	}
	if !ok {
		return ""
	}
	want := make([]float64, len(got))
	var rest []int
	for _, v := range order {
		fixed[v] = p.own[v]
		if _, _, can := p.boundsOf(asked, fixed); !can {
			delete(fixed, v)
			rest = append(rest, v)
		}
	}
	for _, v := range rest {
		low, high, _ := p.boundsOf(asked, fixed)
		fixed[v] = min(max(p.own[v], low[v]), high[v])
	}
	for v := range want {
		if math.Abs(got[v]-fixed[v]) > 1e-6 {
			return fmt.Sprintf("value %d is %g, not %g", v, got[v], fixed[v])
		}
	}
	return ""
}

// TestValuesAreSettled over many askings of few fabrics.
func TestValuesAreSettled(t *testing.T) {
	dice := rand.New(rand.NewPCG(1, 2))
	had, moved := 0, 0
	for range 2000 {
		n := 2 + dice.IntN(4)
		own, share := make([]float64, n), make([]float64, n)
		for i := range own {
			own[i], share[i] = float64(dice.IntN(101)), float64(dice.IntN(5))
		}
		p := newSteps(own)
		for i, l := range own {
			if p.least[i] != min(l, palettes.DarkestCloth) || p.most[i] != max(l, palettes.LightestCloth) || p.apart[i][i] != 0 {
				t.Fatalf("cloth of %g may be from %g to %g", l, p.least[i], p.most[i])
			}
		}
		if dice.IntN(3) == 0 {
			p.least[0] = max(p.least[0], own[0])
		}
		var asked []Lack
		for range dice.IntN(3 * n) {
			m := Lack{a: dice.IntN(n), b: dice.IntN(n), Step: float64(1 + dice.IntN(45))}
			if own[m.a] < own[m.b] || own[m.a] == own[m.b] && m.a < m.b { // the darker one first, as the layout has them
				asked = append(asked, m)
				p.ask(m.a, m.b, m.Step)
			}
		}
		p.close()
		for _, order := range orders(own, share) {
			if fault := p.solvedApart(asked, order); fault != "" {
				t.Fatalf("%v, asked %+v, in the order %v: %s", own, asked, order, fault)
			}
			values, ok := p.solve(order)
			had += map[bool]int{true: 1}[ok]
			moved += map[bool]int{true: 1}[ok && !slices.Equal(values, own)]
		}
	}
	if had < 1000 || had > 7950 || moved < 1000 {
		t.Errorf("%d could be had, %d of them by moving something", had, moved)
	}
}

// TestOrders: the first order has what covers most first, the next the darks, the lights, and what covers least.
func TestOrders(t *testing.T) {
	l, share := []float64{50, 20, 90, 20}, []float64{0.2, 0.5, 0.2, 0.1}
	want := [][]int{{1, 0, 2, 3}, {1, 3, 0, 2}, {2, 0, 1, 3}, {3, 0, 2, 1}}
	for i, got := range orders(l, share) {
		if !slices.Equal(got, want[i]) {
			t.Errorf("%v, not %v", got, want[i])
		}
	}
}

// calm is the colors of a top once each stray scrap shows that of the fabric in the middle of the rest of its pool.
func (p *plainly) calm(strays []Stray) map[int]palettes.Colour {
	colors := map[int]palettes.Colour{}
	for _, s := range strays {
		f := p.named(s.Fabric)
		for _, pool := range p.Credits.Pools {
			if pool.Name != s.Pool {
				continue
			}
			rest := slices.DeleteFunc(slices.Clone(pool.Fabrics), func(g int) bool { return g == f })
			off := func(g int) float64 { return math.Abs(p.lightOf(g) - p.middle(rest)) }
			colors[f] = p.Fabrics[slices.MinFunc(rest, func(a, b int) int { return cmp.Compare(off(a), off(b)) })].Colour
		}
	}
	return colors
}

func (p *plainly) named(name string) int {
	for f := range p.Fabrics {
		if p.Fabrics[f].Name == name {
			return f
		}
	}
	return -1
}

// mended is a change as it comes out: the whole study is made again in other colors.
func (p *plainly) mended(r *Report, c *Change) (clears, leaves []int, breaks []Broken, spoils bool) {
	colors := p.calm(r.Stray)
	for _, s := range c.Steps {
		colors[p.named(s.Fabric)], _ = palettes.Parse(s.Colour)
	}
	if len(c.Swap) == 2 {
		a, b := p.named(c.Swap[0]), p.named(c.Swap[1])
		colors[a], colors[b] = p.Fabrics[b].Colour, p.Fabrics[a].Colour
	}
	t := *p.Top
	t.Fabrics = slices.Clone(p.Fabrics)
	for f, color := range colors {
		t.Fabrics[f].Colour = color
	}
	after := Study(&t, Options{})
	is := func(l, other *Loss) bool {
		switch {
		case l.Of != other.Of:
			return false
		case l.Of == LossOfScrap:
			return r.Stray[l.Scrap].Fabric == after.Stray[other.Scrap].Fabric
		}
		return r.Figures[l.Figure].place == after.Figures[other.Figure].place
	}
	for i := range r.Losses {
		if slices.ContainsFunc(after.Losses, func(l Loss) bool { return is(&r.Losses[i], &l) }) {
			leaves = append(leaves, i)
		} else {
			clears = append(clears, i)
		}
	}
	for i := range r.Figures {
		f, g := &r.Figures[i], after.Twin(&r.Figures[i])
		switch {
		case g == nil:
		case rank(g.Verdict) > rank(f.Verdict):
			breaks = append(breaks, Broken{i, f.Verdict, g.Verdict})
		case f.Rim != nil && g.Rim != nil && rank(g.Rim.Verdict) > rank(f.Rim.Verdict):
			breaks = append(breaks, Broken{i, f.Rim.Verdict, g.Rim.Verdict})
		}
	}
	spoils = slices.ContainsFunc(after.Losses, func(l Loss) bool { return l.Figure >= 0 && r.Twin(&after.Figures[l.Figure]) == nil })
	return clears, leaves, breaks, spoils
}

// changeApart says what is wrong with a change, "" for nothing.
func (p *plainly) changeApart(r *Report, c *Change) string {
	if c.Of == Unreversed {
		f, as := &r.Figures[c.Figure], -1
		for i, g := range r.Figures {
			if g.Sort == f.Sort && !g.Reversed && g.Verdict == Reads && slices.Equal(g.Of, f.Of) {
				as = i
			}
		}
		if as < 0 || !f.Reversed || len(c.Clears) != 1 || r.Losses[c.Clears[0]].Figure != c.Figure || len(c.Leaves) != len(r.Losses)-1 || slices.Contains(c.Leaves, c.Clears[0]) {
			return "no figure reads of that set as it is, or another loss is cleared"
		}
		return ""
	}
	clears, leaves, breaks, _ := p.mended(r, c)
	if c.Of == Recolor {
		leaves = slices.DeleteFunc(leaves, func(n int) bool { return r.Losses[n].Of == LossOfScrap })
	}
	moved := 0.0
	for i := range c.Steps {
		s := &c.Steps[i]
		moved += s.Away
		if fault := p.stepApart(s); fault != "" {
			return fault
		}
	}
	switch {
	case !slices.Equal(clears, c.Clears) || !slices.Equal(leaves, c.Leaves) || !slices.Equal(breaks, c.Breaks):
		return fmt.Sprintf("it clears %v and leaves %v, breaking %v; not %v, %v, %v", clears, leaves, breaks, c.Clears, c.Leaves, c.Breaks)
	case c.Figure != -1 || math.Abs(moved-c.Moved) > 1e-9:
		return fmt.Sprintf("it is about figure %d, and moves %g, not %g", c.Figure, c.Moved, moved)
	case (c.Of == TakeOut) != (len(c.Scraps) > 0), (c.Of == SwapTwo) != (len(c.Swap) == 2), (c.Of == Recolor) != (len(c.Steps) > 0), len(c.Steps) > 2:
		return "it is of another sort than it says, or changes more than two fabrics"
	case c.Of == TakeOut && len(c.Scraps) != len(r.Stray), c.Of == SwapTwo && !c.Whole():
		return "it leaves scraps out, or a swap is not enough"
	case !slices.IsSortedFunc(c.Steps, func(a, b Step) int { return cmp.Compare(b.Away, a.Away) }):
		return "what moves most does not come first"
	}
	return ""
}

// stepApart says what is wrong with other cloth for one fabric.
func (p *plainly) stepApart(s *Step) string {
	f := &p.Fabrics[p.named(s.Fabric)]
	color, err := palettes.Parse(s.Colour)
	spread := 0.0
	if f.Cloth != nil {
		spread = f.Cloth.Spread
	}
	switch {
	case err != nil || math.Abs(s.Lightness-color.Lightness()) > 1e-9 || math.Abs(s.Away-palettes.Difference(f.Colour, color)) > 1e-9:
		return fmt.Sprintf("%+v does not fit its color", *s)
	case s.Lighter != (s.Lightness > f.Colour.Lightness()) || s.Print != (f.Cloth != nil) || s.Quieter != (spread >= 4):
		return fmt.Sprintf("%+v: lighter, a print, or quieter?", *s)
	case s.Print && s.Other != nil:
		return "a plain fabric is offered for a print"
	}
	if o := s.Other; o != nil {
		if math.Abs(o.Away-palettes.Difference(f.Colour, mustParse(o.Colour))) > 1e-9 || math.Abs(o.Lightness-mustParse(o.Colour).Lightness()) > 1e-9 {
			return fmt.Sprintf("%+v does not fit its color", *o)
		}
	}
	return ""
}

func mustParse(text string) palettes.Colour {
	c, err := palettes.Parse(text)
	if err != nil {
		panic(err)
	}
	return c
}

// askedOf is what a mended quilt asks of its fabrics' values: those that cost a loss, unless they are stray scraps, a clear step apart and
// 0.3 more for rounding; those that meet elsewhere, and not only inside figures or their ground, as far as they are now, up to that. The
// lights of a pool stay that light, its darks that dark.
func (p *plainly) askedOf(r *Report) (*steps, []Lack) {
	own := slices.Clone(p.study.lightness)
	calm := p.calm(r.Stray)
	for f, color := range calm {
		own[f] = color.Lightness()
	}
	bounds := newSteps(own)
	for _, pool := range p.Credits.Pools {
		for _, f := range pool.Fabrics {
			switch middle := p.middle(pool.Fabrics); {
			case middle >= 66:
				bounds.least[f] = max(bounds.least[f], own[f])
			case middle < 46:
				bounds.most[f] = min(bounds.most[f], own[f])
			}
		}
	}
	var asked []Lack
	for _, m := range p.costs(r) {
		asked = append(asked, Lack{a: m.a, b: m.b, Step: p.clear + 0.3})
	}
	for _, q := range r.Pairs {
		if q.Inside < q.Length {
			asked = append(asked, Lack{a: q.A, b: q.B, Step: min(max(0, own[q.B]-own[q.A]), p.clear+0.3)})
		}
	}
	return bounds, asked
}

// costs are the fabrics that cost losses, but for stray scraps.
func (p *plainly) costs(r *Report) (list []Lack) {
	calm := p.calm(r.Stray)
	for _, l := range r.Losses {
		lacks := []Lack{}
		if l.Of == LossOfRim {
			lacks = r.Figures[l.Figure].Rim.Lacks
		} else if l.Of != LossOfScrap {
			lacks = r.Figures[l.Figure].Lacks
		}
		for _, m := range lacks {
			_, one := calm[m.a]
			_, other := calm[m.b]
			if !one && !other {
				list = append(list, m)
			}
		}
	}
	return list
}

// recoloringsOf are the changes of colors that a study should offer, by what is asked: of as many fabrics as can be left as they are, those
// that are asked first to stay in four orders. Two at the most, of as few fabrics as will do and then the nearest, that clear all and
// spoil nothing; where there is none, one that clears something.
func (p *plainly) recoloringsOf(r *Report, asked *steps) []Change {
	var list []Change
	if len(p.costs(r)) == 0 || len(p.Fabrics) > 80 {
		return nil
	}
	for _, order := range orders(asked.own, p.Share()) {
		values, ok := asked.solve(order)
		c := Change{Of: Recolor, Figure: -1}
		for f, l := range values {
			if own := p.Fabrics[f].Colour; l != asked.own[f] {
				color := palettes.AtLightness(own, l)
				c.Steps = append(c.Steps, Step{Fabric: p.Fabrics[f].Name, Colour: color.Hex(), Away: palettes.Difference(own, color), Lightness: l})
				c.Moved += palettes.Difference(own, color)
			}
		}
		slices.SortStableFunc(c.Steps, func(a, b Step) int { return cmp.Compare(b.Away, a.Away) })
		if ok && len(c.Steps) <= 2 && !slices.ContainsFunc(list, func(d Change) bool { return sameSteps(c.Steps, d.Steps) }) {
			list = append(list, c)
		}
	}
	slices.SortStableFunc(list, func(a, b Change) int {
		return cmp.Or(cmp.Compare(len(a.Steps), len(b.Steps)), cmp.Compare(a.Moved, b.Moved))
	})
	var whole, part []Change
	for _, c := range list[:min(3, len(list))] {
		clears, leaves, breaks, spoils := p.mended(r, &c)
		leaves = slices.DeleteFunc(leaves, func(n int) bool { return r.Losses[n].Of == LossOfScrap })
		switch {
		case len(leaves)+len(breaks) == 0 && !spoils && (len(whole) == 0 || len(c.Steps) == len(whole[0].Steps)):
			whole = append(whole, c)
		case len(clears) > 0 && !spoils:
			part = append(part, c)
		}
	}
	if len(whole) > 0 {
		return whole[:min(2, len(whole))]
	}
	return part
}

func sameSteps(a, b []Step) bool {
	return slices.EqualFunc(a, b, func(s, t Step) bool { return s.Fabric == t.Fabric && s.Colour == t.Colour })
}

// boundsApart says which fabric a study lets be lighter or darker than what is asked for allows, "" for none.
func (p *plainly) boundsApart(r *Report) (asked *steps, fault string) {
	asked = (&ways{study: p.study, report: r}).asked()
	bounds, list := p.askedOf(r)
	low, high, can := bounds.boundsOf(list, nil)
	free := slices.Repeat([]float64{math.NaN()}, len(asked.own))
	for v := range asked.own {
		l, h := asked.between(v, free)
		if asked.own[v] != bounds.own[v] || can && (math.Abs(l-low[v]) > 1e-9 || math.Abs(h-high[v]) > 1e-9) {
			return nil, fmt.Sprintf("%s may be from %g to %g", p.Fabrics[v].Name, l, h)
		}
	}
	return asked, ""
}

// offersApart says what is wrong with the changes of colors that a study offers, "" for nothing.
func (p *plainly) offersApart(r *Report) string {
	asked, fault := p.boundsApart(r)
	if fault != "" {
		return fault
	}
	bounds, list := p.askedOf(r)
	want, n := p.recoloringsOf(r, asked), 0
	for _, c := range r.Changes {
		if c.Of != Recolor {
			continue
		}
		if !slices.ContainsFunc(want, func(d Change) bool { return sameSteps(c.Steps, d.Steps) }) {
			return fmt.Sprintf("offered is %+v", c.Steps)
		}
		n++
		fixed := map[int]float64{}
		for f, l := range asked.own {
			fixed[f] = l
		}
		for _, d := range want {
			for _, s := range d.Steps {
				if sameSteps(c.Steps, d.Steps) {
					fixed[p.named(s.Fabric)] = s.Lightness
				}
			}
		}
		for i := range c.Steps {
			if fault := p.insteadApart(&c.Steps[i], bounds, list, fixed); fault != "" {
				return fault
			}
		}
	}
	if len(want) > 0 && n == 0 || len(want) == 2 && p.wholeOf(r) && n < 2 {
		return fmt.Sprintf("%d are offered, not %+v", n, want)
	}
	return ""
}

// wholeOf says whether some recoloring clears all.
func (p *plainly) wholeOf(r *Report) bool {
	return slices.ContainsFunc(r.Changes, func(c Change) bool { return c.Of == Recolor && c.Whole() })
}

// insteadApart says what is wrong with the fabric that would do as well: of those whose values will do, the others being what they are
// then, it is the nearest.
func (p *plainly) insteadApart(s *Step, bounds *steps, asked []Lack, fixed map[int]float64) string {
	f := p.named(s.Fabric)
	others := maps.Clone(fixed)
	delete(others, f)
	low, high, ok := bounds.boundsOf(asked, others)
	if s.Print || !ok {
		return ""
	}
	best, name := math.Inf(1), ""
	for _, of := range palettes.All() {
		for _, other := range of.Fabrics {
			l := other.Colour.Lightness()
			if away := palettes.Difference(p.Fabrics[f].Colour, other.Colour); l >= low[f] && l <= high[f] && away < best {
				best, name = away, of.Name+" "+other.Name
			}
		}
	}
	if o := s.Other; o == nil && name != "" || o != nil && o.Palette+" "+o.Name != name {
		return fmt.Sprintf("for %s %+v is offered, not %s", s.Fabric, o, name)
	}
	return ""
}

// own are the thresholds that a layout has, nil for none.
func (r *Report) own() *Contrast {
	if !r.Thresholds.Own {
		return nil
	}
	return &Contrast{r.Thresholds.SoftLeast, r.Thresholds.Clear}
}

// TestChangesAreWhatComesOut: each change clears, leaves and spoils what the study tells that is made again with it, and they stand in
// the order of what they leave, then of what they spoil. A layout without losses has none, and one with stray scraps is told to take them out.
func TestChangesAreWhatComesOut(t *testing.T) {
	tried := map[ChangeOf]int{}
	all := maps.Clone(studied())
	for _, file := range []string{"b3", "n12", "m21", "b5", "m02", "n05"} {
		top := lay.Top(t, judgedText(t, file))
		all[file] = studiedTop{Top: top, report: Study(top, Options{Palettes: palettes.All()})}
	}
	// Of a quilt with a stray scrap, for which a color between its own and its pool's is offered: it is darker than the scrap's.
	stray := lay.Top(t, invent.Layout(54))
	all["a stray scrap recolored"] = studiedTop{Top: stray, report: Study(stray, Options{Palettes: palettes.All()})}
	// No cloth is dark enough for a step of 85 from the white one, but the black is there.
	tops := map[string]*quilt.Top{"a swap": lay.Top(t, "side 6\nfabric white #f4f4f0\nfabric cream #e8e4da\nfabric black #0a0a0a\ncontrast 6 85\nblock R ring wedges white cream corners black\ngrid\n R R\n R R\n")}
	for name, seed := range map[string]uint64{"webs of sorts": 0, "rings of one coloring more": 3, "stars and webs": 6} { // two fabrics must change, or change places
		tops[name] = colored(lay.Top(t, relitTexts()[name]), seed)
	}
	tops["changing places alone will do"] = colored(lay.Top(t, relitTexts()["webs of sorts"]), 2)
	for seed, color := range map[uint64]uint64{201: 0, 207: 4, 227: 2, 235: 0, 246: 3, 259: 3, 266: 3} { // that help in part, or spoil a figure or its rim
		tops[fmt.Sprint("invented ", seed)] = colored(lay.Top(t, invent.Layout(seed)), color)
	}
	for name, top := range tops {
		all[name] = studiedTop{Top: top, report: Study(top, Options{Palettes: palettes.All()})}
	}
	if c := all["a swap"].report.Changes; len(c) != 1 || c[0].Of != SwapTwo {
		t.Errorf("in place of a swap %+v is offered", c)
	}
	for name, one := range all {
		r := one.report
		p := &plainly{Top: one.Top, study: newStudy(nil, one.Top, Options{Contrast: r.own(), Palettes: palettes.All()}), clear: r.Thresholds.Clear}
		if fault := p.offersApart(r); fault != "" {
			t.Errorf("%s: %s", name, fault)
		}
		if fault := p.swapApart(r); fault != "" {
			t.Errorf("%s: %s", name, fault)
		}
		for i := range r.Changes {
			tried[r.Changes[i].Of]++
			if fault := p.changeApart(r, &r.Changes[i]); fault != "" {
				t.Errorf("%s: %+v: %s", name, r.Changes[i], fault)
			}
		}
		if len(r.Losses) == 0 && len(r.Changes) > 0 || len(r.Stray) > 0 != slices.ContainsFunc(r.Changes, func(c Change) bool { return c.Of == TakeOut }) {
			t.Errorf("%s: %d losses, %d stray scraps and %d changes", name, len(r.Losses), len(r.Stray), len(r.Changes))
		}
		if !slices.IsSortedFunc(r.Changes, func(a, b Change) int {
			return cmp.Or(cmp.Compare(len(a.Leaves), len(b.Leaves)), cmp.Compare(len(a.Breaks), len(b.Breaks)))
		}) {
			t.Errorf("%s: the best change does not come first", name)
		}
	}
	t.Log(tried)
	if len(tried) < 4 {
		t.Errorf("not every sort of change was tried: %v", tried)
	}
}
