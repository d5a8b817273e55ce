package contrast

import (
	"cmp"
	"math"
	"slices"

	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// ChangeOf is a sort of change.
type ChangeOf string

const (
	Recolor    ChangeOf = "recolor"    // other cloth for one fabric or several
	SwapTwo    ChangeOf = "swap"       // two fabrics of the layout change places
	Unreversed ChangeOf = "unreversed" // a strip set is no longer turned round
	TakeOut    ChangeOf = "take-out"   // a scrap leaves its pool
)

// Change is one way to mend what is lost. It was tried: the whole study was made again with it.
type Change struct {
	Of     ChangeOf `json:"of"`
	Steps  []Step   `json:"steps,omitempty"`  // of a recoloring, the fabric that moves most first
	Swap   []string `json:"swap,omitempty"`   // two fabrics
	Scraps []int    `json:"scraps,omitempty"` // of the report's stray scraps, by index: those that leave their pools
	Figure int      `json:"figure"`           // index of the figure that is made of the reversed set, -1 for none
	Clears []int    `json:"clears"`           // of the report's losses, by index
	Leaves []int    `json:"leaves,omitempty"` // those of them that it leaves
	Breaks []Broken `json:"breaks,omitempty"` // what it would spoil
	Moved  float64  `json:"moved"`            // CIEDE2000 of all fabrics that change, added up
	spoils bool     `json:"-"`                // something would be lost that is not judged as things are
}

// Whole says whether a change clears everything and spoils nothing.
func (c *Change) Whole() bool { return len(c.Leaves) == 0 && len(c.Breaks) == 0 && !c.spoils }

// Step is other cloth for one fabric: the nearest color of the same hue that will do.
type Step struct {
	Fabric    string   `json:"fabric"`
	Lighter   bool     `json:"lighter"` // or darker
	Print     bool     `json:"print"`   // it is a print: another print of that value, and no plain color, will do
	Quieter   bool     `json:"quieter"` // the print is so busy that its seams want a larger step: a quieter one serves best
	Colour    string   `json:"colour"`  // #rrggbb
	Lightness float64  `json:"lightness"`
	Away      float64  `json:"ciede2000"` // from the fabric as it is
	Other     *Instead `json:"other,omitempty"`
}

// Instead is a fabric of the layout or of a palette that would do as well.
type Instead struct {
	Name      string  `json:"name"`
	Palette   string  `json:"palette,omitempty"` // "" for one of the layout's own
	Colour    string  `json:"colour"`
	Lightness float64 `json:"lightness"`
	Away      float64 `json:"ciede2000"` // from the fabric that gives way
}

// Broken is a figure whose verdict a change would lower.
type Broken struct {
	Figure int     `json:"figure"` // index in the report's figures
	From   Verdict `json:"from"`
	To     Verdict `json:"to"`
}

// The most that is tried and told.
const (
	mostTried = 3  // changes of one sort for which the whole study is made again
	mostTold  = 2  // recolorings
	mostSteps = 2  // fabrics that one recoloring changes
	mostMoved = 80 // fabrics of a layout in which changes of color are looked for; what one of so many does is a matter of sorting
)

// changes finds what would help, the best first.
func (s *study) changes(r *Report) []Change {
	list := []Change{}
	if len(r.Losses) == 0 {
		return list
	}
	w := &ways{study: s, report: r}
	list = append(list, w.takeOut()...)
	if len(s.Fabrics) > mostMoved {
		return list
	}
	list = append(list, w.unreversed()...)
	recolored := w.recolored()
	list = append(list, recolored...)
	if len(recolored) == 0 || !recolored[0].Whole() || len(recolored[0].Steps) > 1 {
		list = append(list, w.swapped()...)
	}
	slices.SortStableFunc(list, func(a, b Change) int {
		return cmp.Or(cmp.Compare(len(a.Leaves), len(b.Leaves)), cmp.Compare(len(a.Breaks), len(b.Breaks)))
	})
	return list
}

// ways looks for changes that mend what a report found lost.
type ways struct {
	*study
	report *Report
}

// tried makes the study again in other colors and fills in what of it a change clears, leaves and breaks. hoping takes every
// figure to hold as a mass: what then is not whole never is.
func (w *ways) tried(c Change, colours map[int]palettes.Colour, hoping bool) Change {
	t := *w.Top
	t.Fabrics = slices.Clone(w.Fabrics)
	for f, colour := range colours {
		t.Fabrics[f].Colour = colour
	}
	w.sign.Step(len(w.seams))
	n := w.recoloured(&t)
	mass := &masses{study: n}
	if !hoping {
		mass = n.newMasses()
	}
	after := &Report{Figures: n.figuresBy(mass), Stray: n.stray()}
	after.Losses = losses(after.Figures, after.Stray)
	for i, loss := range w.report.Losses {
		if slices.ContainsFunc(after.Losses, func(l Loss) bool { return w.sameLoss(&loss, &l, after) }) {
			c.Leaves = append(c.Leaves, i)
		} else {
			c.Clears = append(c.Clears, i)
		}
	}
	for i := range w.report.Figures {
		f := &w.report.Figures[i]
		g := after.Twin(f)
		switch {
		case g == nil:
		case rank(g.Verdict) > rank(f.Verdict):
			c.Breaks = append(c.Breaks, Broken{i, f.Verdict, g.Verdict})
		case f.Rim != nil && g.Rim != nil && rank(g.Rim.Verdict) > rank(f.Rim.Verdict):
			c.Breaks = append(c.Breaks, Broken{i, f.Rim.Verdict, g.Rim.Verdict})
		}
	}
	c.spoils = w.losesMore(after)
	return c
}

// losesMore says whether another study has lost a figure that the report does not judge.
func (w *ways) losesMore(after *Report) bool {
	return slices.ContainsFunc(after.Losses, func(l Loss) bool { return l.Figure >= 0 && w.report.Twin(&after.Figures[l.Figure]) == nil })
}

// sameLoss says whether a loss of another study is one of the report's: of one figure, or of one scrap.
func (w *ways) sameLoss(before, now *Loss, after *Report) bool {
	w.sign.Step(1)
	switch {
	case before.Of != now.Of:
		return false
	case before.Of == LossOfScrap:
		return after.Stray[now.Scrap].Fabric == w.report.Stray[before.Scrap].Fabric
	}
	return w.report.Figures[before.Figure].place == after.Figures[now.Figure].place
}

// calmed is the colors of the scraps that fall out of their pools, as if others of the pool stood in their place.
func (w *ways) calmed() map[int]palettes.Colour {
	colours := map[int]palettes.Colour{}
	for i := range w.report.Stray {
		f, colour := w.inItsPlace(&w.report.Stray[i])
		colours[f] = colour
	}
	return colours
}

// inItsPlace is the color of the fabric of a pool's middle value, in place of a scrap.
func (w *ways) inItsPlace(stray *Stray) (fabric int, colour palettes.Colour) {
	fabric = w.named(stray.Fabric)
	best := -1
	for p := range w.Credits.Pools {
		if w.Credits.Pools[p].Name != stray.Pool {
			continue
		}
		rest := slices.DeleteFunc(slices.Clone(w.Credits.Pools[p].Fabrics), func(g int) bool { return g == fabric })
		middle := w.medianOf(rest)
		for _, g := range rest {
			if best < 0 || math.Abs(w.lightness[g]-middle) < math.Abs(w.lightness[best]-middle) {
				best = g
			}
		}
	}
	return fabric, w.Fabrics[best].Colour
}

// named is the index of the fabric of that name.
func (w *ways) named(name string) int {
	return slices.IndexFunc(w.Fabrics, func(f quilt.Fabric) bool { return f.Name == name })
}

// takeOut takes the scraps that make holes out of their pools, all of them at once.
func (w *ways) takeOut() []Change {
	if len(w.report.Stray) == 0 {
		return nil
	}
	c := Change{Of: TakeOut, Figure: -1}
	for i := range w.report.Stray {
		c.Scraps = append(c.Scraps, i)
	}
	return []Change{w.tried(c, w.calmed(), false)}
}

// unreversed leaves out the reversed strip set where the same figure reads with the set as it is.
func (w *ways) unreversed() []Change {
	var list []Change
	for n, loss := range w.report.Losses {
		if loss.Of != LossOfFigure || !w.report.Figures[loss.Figure].Reversed {
			continue
		}
		if w.report.readsUnreversed(&w.report.Figures[loss.Figure]) {
			list = append(list, Change{Of: Unreversed, Figure: loss.Figure, Clears: []int{n}, Leaves: others(len(w.report.Losses), n)})
		}
	}
	return list
}

// readsUnreversed says whether a figure of the same strip set as it is written reads.
func (r *Report) readsUnreversed(f *Figure) bool {
	return slices.ContainsFunc(r.Figures, func(g Figure) bool {
		return g.Sort == f.Sort && !g.Reversed && g.Verdict == Reads && slices.Equal(g.Of, f.Of)
	})
}

// others are the numbers below n but for one.
func others(n, but int) []int {
	var list []int
	for i := range n {
		if i != but {
			list = append(list, i)
		}
	}
	return list
}

// asked is what a mended quilt asks of its fabrics' values: the fabrics that clash a clear step apart in the order in which
// they lie now, and those that meet elsewhere no nearer than they are, up to a clear step.
func (w *ways) asked() *steps {
	lightness := slices.Clone(w.lightness)
	for f, colour := range w.calmed() {
		lightness[f] = colour.Lightness()
	}
	p := newSteps(lightness)
	clear := w.clear() + roundingOf
	for _, m := range w.clashing() {
		p.ask(m.a, m.b, clear)
	}
	for i := range w.report.Pairs {
		pair := &w.report.Pairs[i]
		if pair.Inside < pair.Length {
			p.ask(pair.A, pair.B, min(max(0, lightness[pair.B]-lightness[pair.A]), clear))
		}
	}
	for i := range w.Credits.Pools {
		w.holdPool(p, w.Credits.Pools[i].Fabrics)
	}
	p.close()
	return p
}

// holdPool keeps the lights of a pool from being darkened, and its darks from being lightened.
func (w *ways) holdPool(p *steps, fabrics []int) {
	family := palettes.FamilyOf(w.medianOf(fabrics))
	for _, f := range fabrics {
		switch family {
		case palettes.Light:
			p.least[f] = max(p.least[f], p.own[f])
		case palettes.Dark:
			p.most[f] = min(p.most[f], p.own[f])
		}
	}
}

// clashing are the fabrics that cost the losses, the darker one first, each two once.
func (w *ways) clashing() []Lack {
	strayed := w.calmed()
	var list []Lack
	for _, loss := range w.report.Losses {
		if loss.Figure < 0 {
			continue
		}
		f := &w.report.Figures[loss.Figure]
		lacks := f.Lacks
		if loss.Of == LossOfRim {
			lacks = f.Rim.Lacks
		}
		for _, m := range lacks {
			_, a := strayed[m.a]
			_, b := strayed[m.b]
			if !a && !b && !slices.ContainsFunc(list, func(l Lack) bool { return l.a == m.a && l.b == m.b }) {
				list = append(list, m)
			}
		}
	}
	return list
}

// recolored gives other values to as few fabrics as will do, all of them at once.
func (w *ways) recolored() []Change {
	clashing := w.clashing()
	if len(clashing) == 0 {
		return nil
	}
	asked := w.asked()
	share := w.Share()
	var list []Change
	var known []string
	for _, order := range orders(asked.own, share) {
		values, ok := asked.solve(order)
		if !ok {
			continue
		}
		c := w.recoloring(asked, values)
		key := ""
		for i := range c.Steps {
			key += c.Steps[i].Fabric + c.Steps[i].Colour
		}
		if len(c.Steps) <= mostSteps && !slices.Contains(known, key) {
			known, list = append(known, key), append(list, c)
		}
	}
	slices.SortStableFunc(list, func(a, b Change) int {
		return cmp.Or(cmp.Compare(len(a.Steps), len(b.Steps)), cmp.Compare(a.Moved, b.Moved))
	})
	return w.best(list[:min(mostTried, len(list))])
}

// best tries recolorings, the one that changes least first, and keeps those that mend everything, or where none does the first
// that mends something.
func (w *ways) best(list []Change) []Change {
	var whole, part []Change
	try := func(c Change, hoping bool) Change {
		c = w.tried(c, w.coloursOf(&c), hoping)
		c.Leaves = slices.DeleteFunc(c.Leaves, func(n int) bool { return w.report.Losses[n].Of == LossOfScrap })
		return c
	}
	for _, c := range list {
		if len(whole) == mostTold || len(whole) > 0 && len(c.Steps) > len(whole[0].Steps) {
			break // no more fabrics change than must
		}
		hoped := try(c, true)
		if len(hoped.Clears) > 0 && !hoped.spoils {
			part = append(part, c)
		}
		if hoped.Whole() {
			if c := try(c, false); c.Whole() {
				whole = append(whole, c)
			}
		}
	}
	for i := 0; len(whole) == 0 && i < len(part); i++ {
		if c := try(part[i], false); len(c.Clears) > 0 && !c.spoils {
			whole = append(whole, c)
		}
	}
	return whole
}

// recoloring is the fabrics that values move, with the colors that they get.
func (w *ways) recoloring(asked *steps, values []float64) Change {
	c := Change{Of: Recolor, Figure: -1}
	for f, l := range values {
		if l == asked.own[f] {
			continue
		}
		own := w.Fabrics[f].Colour
		colour := palettes.AtLightness(own, l)
		step := Step{
			Fabric: w.Fabrics[f].Name, Lighter: l > w.lightness[f], Print: w.isPrint(f), Quieter: palettes.TextureFactor(w.print(f).Spread) > 1,
			Colour: colour.Hex(), Lightness: colour.Lightness(), Away: palettes.Difference(own, colour),
		}
		if !step.Print {
			settled := slices.Clone(values)
			settled[f] = math.NaN()
			low, high := asked.between(f, settled)
			step.Other = w.instead(f, low, high)
		}
		c.Steps = append(c.Steps, step)
		c.Moved += step.Away
	}
	slices.SortStableFunc(c.Steps, func(a, b Step) int { return -cmp.Compare(a.Away, b.Away) })
	return c
}

// isPrint says whether a fabric is a print.
func (w *ways) isPrint(f int) bool { return w.Fabrics[f].Cloth != nil || w.print(f).Spread > 0 }

// coloursOf are the colors of a recoloring, and the calm ones of stray scraps.
func (w *ways) coloursOf(c *Change) map[int]palettes.Colour {
	colours := w.calmed()
	for i := range c.Steps {
		colour, err := palettes.Parse(c.Steps[i].Colour)
		if err == nil {
			colours[w.named(c.Steps[i].Fabric)] = colour
		}
	}
	return colours
}

// instead is the nearest fabric of the layout or of the palettes whose value lies between two, nil if there is none.
func (w *ways) instead(change int, low, high float64) *Instead {
	var best *Instead
	consider := func(name, palette string, c palettes.Colour) {
		l := c.Lightness()
		if l < low || l > high {
			return
		}
		away := palettes.Difference(w.Fabrics[change].Colour, c)
		if best == nil || away < best.Away {
			best = &Instead{Name: name, Palette: palette, Colour: c.Hex(), Lightness: l, Away: away}
		}
	}
	for _, p := range w.Palettes {
		for _, f := range p.Fabrics {
			consider(f.Name, p.Name, f.Colour)
		}
	}
	return best
}

// swapped lets two fabrics of the layout change places where that alone is enough.
func (w *ways) swapped() []Change {
	for _, pair := range w.swappable(w.clashing(), w.asked()) {
		a, b := pair[0], pair[1]
		colours := w.calmed()
		colours[a], colours[b] = w.Fabrics[b].Colour, w.Fabrics[a].Colour
		swap := Change{Of: SwapTwo, Figure: -1, Swap: []string{w.Fabrics[a].Name, w.Fabrics[b].Name}}
		if hoped := w.tried(swap, colours, true); hoped.Whole() {
			if c := w.tried(swap, colours, false); c.Whole() {
				return []Change{c}
			}
		}
	}
	return nil
}

// swappable are the first fabrics, two and two, that may change places by their values.
func (w *ways) swappable(clashing []Lack, asked *steps) [][2]int {
	var list [][2]int
	for a := range w.Fabrics {
		for b := a + 1; b < len(w.Fabrics); b++ {
			if involved(clashing, a, b) && w.isPrint(a) == w.isPrint(b) && w.wouldDo(clashing, asked, a, b) {
				list = append(list, [2]int{a, b})
			}
		}
	}
	return list[:min(mostTried, len(list))]
}

// involved says whether one of two fabrics, but not both together, costs a loss.
func involved(clashing []Lack, a, b int) bool {
	for _, m := range clashing {
		if m.a == a && m.b == b || m.a == b && m.b == a {
			continue
		}
		if m.a == a || m.a == b || m.b == a || m.b == b {
			return true
		}
	}
	return false
}

// wouldDo says whether all fabrics that clash, and all that meet, would stand apart with two of them exchanged.
func (w *ways) wouldDo(clashing []Lack, asked *steps, a, b int) bool {
	at := func(f int) float64 {
		switch f {
		case a:
			return asked.own[b]
		case b:
			return asked.own[a]
		}
		return asked.own[f]
	}
	for _, m := range clashing {
		if math.Abs(at(m.a)-at(m.b)) < w.clear() {
			return false
		}
	}
	for i := range w.report.Pairs {
		p := &w.report.Pairs[i]
		if step := math.Abs(at(p.A) - at(p.B)); p.Inside < p.Length && step < min(p.Step, w.clear()) {
			return false
		}
	}
	return true
}
