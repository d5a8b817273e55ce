package report

import (
	"cmp"
	"fmt"
	"slices"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/quilt"
)

// Values is the study of light and dark: whether the figures read, how light each fabric is, which seams vanish, and what
// would help.
func Values(p *Plans) document.Document {
	v := newValues(p)
	d := document.Document{Title: p.named("value study")}
	for _, s := range []document.Section{
		v.headline(), v.colorways(), v.figures(), v.changes(), v.fabrics(), v.vanishing(), v.totals(), v.pairs(), v.sight(), v.scores(), v.measures(), v.basis(),
	} {
		if len(s.Blocks) > 0 {
			d.Sections = append(d.Sections, s)
		}
	}
	return d
}

// values turns a study into sections.
type values struct {
	valuesText
	plans   *Plans
	top     *quilt.Top
	index   map[string]int   // of fabrics, by name
	facesOf [][]int          // by fabric
	meet    [][]int          // seams by the two fabrics, see between
	marked  []*contrast.Mark // by seam, nil for none
}

func newValues(p *Plans) *values { return valuesOf(p, p.Values()) }

// valuesOf is newValues of a study that is known.
func valuesOf(p *Plans, study *contrast.Report) *values {
	t := p.Top
	v := &values{valuesText: valuesText{Report: study, borders: len(t.CutFacts.Borders)}, plans: p, top: t,
		index: map[string]int{}, facesOf: p.FacesByFabric(),
		meet: make([][]int, len(t.Fabrics)*len(t.Fabrics)), marked: make([]*contrast.Mark, len(t.Seams)+len(t.StripSeams))}
	for i := range t.Fabrics {
		v.index[t.Fabrics[i].Name] = i
	}
	next := 0 // marks stand in the order of the top
	for i := range v.marked {
		s := seamAt(t, i)
		both := v.between(int(t.Faces[s.A].Fabric), int(t.Faces[s.B].Fabric))
		*both = append(*both, i)
		if next < len(v.Marks) && v.Marks[next].Seam == *s {
			v.marked[i] = &v.Marks[next]
			next++
		}
	}
	return v
}

// seamAt is a seam by its index, those of strip sets behind those between patches.
func seamAt(t *quilt.Top, i int) *quilt.Seam {
	if i < len(t.Seams) {
		return &t.Seams[i]
	}
	return &t.StripSeams[i-len(t.Seams)]
}

// between are the seams between two fabrics.
func (v *values) between(a, b int) *[]int { return &v.meet[min(a, b)*len(v.top.Fabrics)+max(a, b)] }

// only are those of some seams whose marks are wanted.
func (v *values) only(seams []int, wanted func(*contrast.Mark) bool) []int {
	var list []int
	for _, i := range seams {
		if m := v.marked[i]; m != nil && wanted(m) {
			list = append(list, i)
		}
	}
	return list
}

// all are the seams of the top whose marks are wanted, in its order.
func (v *values) all(wanted func(*contrast.Mark) bool) []int {
	return v.only(upTo(0, len(v.marked)-1), wanted)
}

// HardToSee is seams of one band that are hard to see where a line should show.
type HardToSee struct {
	Says  string // for a legend
	Band  contrast.Band
	Seams []int // of the top, by index, those of strip sets behind those between patches
}

// SeamsHardToSee are the seams that vanish or are soft where a line should show, for a picture that marks them.
func SeamsHardToSee(p *Plans) []HardToSee {
	v := newValues(p)
	var list []HardToSee
	for _, b := range [2]contrast.Band{contrast.Vanishes, contrast.Soft} {
		length := v.Report.Seams.ByBand[b.String()] - v.Report.Seams.Inside[b.String()]
		list = append(list, HardToSee{Says: b.String() + ", " + v.length(length), Band: b,
			Seams: v.all(func(m *contrast.Mark) bool { return m.Band == b && !m.Inside })})
	}
	return list
}

// figures says of every figure whether it reads, and what that rests on.
func (v *values) figures() document.Section {
	var list document.List
	for i := range v.Figures {
		f := &v.Figures[i]
		text := v.figure(f) + ": " + verdictOf(f)
		if before := v.plans.studies().before; before != nil {
			if was := before.Twin(f); was != nil && was.Verdict != f.Verdict {
				text += " (as it was: " + verdictText(was.Verdict) + ")"
			}
		}
		w := item(text)
		for _, part := range v.beside(f) {
			w.Blocks = append(w.Blocks, paragraph(part))
		}
		w.About.Faces = indices(f.Faces)
		switch {
		case !f.Verdict.Shows() && f.Sort != contrast.Strips:
			w.Tone = document.Wrong
		case f.Verdict != contrast.Reads && f.Verdict != contrast.RunsOn, f.Doubtful:
			w.Tone = document.Doubtful
		}
		list.Items = append(list.Items, w)
	}
	if len(list.Items) == 0 {
		return document.Section{}
	}
	return with(section("figures", "Figures", document.Answer), list)
}

// scores are the numbers that each verdict rests on.
func (v *values) scores() document.Section {
	var list document.List
	for i := range v.Figures {
		f := &v.Figures[i]
		w := item(v.figure(f))
		for _, part := range v.parts(f) {
			w.Blocks = append(w.Blocks, paragraph(part))
		}
		w.About.Faces = indices(f.Faces)
		list.Items = append(list.Items, w)
	}
	if len(list.Items) == 0 {
		return document.Section{}
	}
	return with(section("scores", "Scores", document.Why), list)
}

func indices(list []int32) []int {
	all := make([]int, len(list))
	for i, n := range list {
		all[i] = int(n)
	}
	return all
}

func (v *values) fabrics() document.Section {
	t := table(words(""), counts("value L*"), words("in this quilt"), counts("of the top"), words(""))
	for i := range v.Report.Fabrics {
		f := &v.Report.Fabrics[i]
		r := row(f.Name, fmt.Sprintf("%.0f", f.Lightness), f.Here, share(f.Share), fabricNote(f))
		r.Cells[0].Swatches = v.swatches(f.Index)
		r.About.Faces = v.facesOf[f.Index]
		t.Rows = append(t.Rows, r)
	}
	return with(section("fabrics", "Fabrics from dark to light", document.Detail), t)
}

// measures are the fabrics' values as they were measured.
func (v *values) measures() document.Section {
	t := table(words(""), counts("L*"), counts("Munsell"), words("by itself"), counts("of the top"))
	for i := range v.Report.Fabrics {
		f := &v.Report.Fabrics[i]
		r := row(f.Name, fmt.Sprintf("%.1f", f.Lightness), fmt.Sprintf("%.1f", f.Munsell), f.Family, fmt.Sprintf("%.1f%%", 100*f.Share))
		r.Cells[0].Swatches = v.swatches(f.Index)
		r.About.Faces = v.facesOf[f.Index]
		t.Rows = append(t.Rows, r)
	}
	return with(section("measures", "Fabrics as measured", document.Why), t)
}

// totals adds up all seams. Of those that are clear or strong a study does not say which.
func (v *values) totals() document.Section {
	sums := &v.Report.Seams
	t := table(words(""), lengths("length"), counts("of all"), counts("seams"))
	add := func(name string, length measure.NM, count string, seams []int) {
		r := row(name, v.length(length), percent(length, sums.Length), count)
		r.About.Seams = seams
		t.Rows = append(t.Rows, r)
	}
	for i, b := range contrast.Bands() {
		add(b.String(), sums.ByBand[b.String()], fmt.Sprint(sums.CountBand[b.String()]), v.all(func(m *contrast.Mark) bool { return m.Band == b }))
		if i == 0 && sums.ColourOnly > 0 {
			seams := v.all(func(m *contrast.Mark) bool { return m.ColourOnly })
			add("held by color only", sums.ColourOnly, fmt.Sprint(len(seams)), seams)
		}
	}
	add("one fabric", sums.OneFabric, "", v.oneFabric())
	return with(section("seams", "Seams, total length "+v.length(sums.Length), document.Detail), t)
}

// oneFabric are the seams with one fabric on both sides.
func (v *values) oneFabric() []int {
	var list []int
	for f := range v.top.Fabrics {
		list = append(list, *v.between(f, f)...)
	}
	return list
}

// MaxRows is how many rows a table has that may have very many.
const MaxRows = 20

// cut cuts a table that is too long, and says so behind its rows.
func cut(t document.Table, n int) document.Table {
	if n <= MaxRows {
		return t
	}
	t.Rows = t.Rows[:MaxRows]
	t.More = document.Plain(fmt.Sprintf("And %d more; eighthturn values --json lists them all.", n-MaxRows))
	return t
}

func (v *values) pairs() document.Section {
	t := table(words(""), words("seam"), counts("contrast L*"), lengths("length"), words(""))
	for i := range v.Pairs[:min(MaxRows, len(v.Pairs))] {
		p := &v.Pairs[i]
		r := row(v.names(p), p.Band.String(), fmt.Sprintf("%.0f", p.Step), v.length(p.Length), pairNote(p))
		r.Cells[0].Swatches = v.swatches(p.A, p.B)
		r.About.Seams = *v.between(p.A, p.B)
		if p.Band == contrast.Vanishes && p.Inside < p.Length {
			r.Tone = document.Doubtful
		}
		t.Rows = append(t.Rows, r)
	}
	return with(section("pairs", "Fabrics that meet, weakest contrast first", document.Detail), cut(t, len(v.Pairs)))
}

func (v *values) names(p *contrast.Pair) string { return p.Names[0] + ", " + p.Names[1] }

// swatches are those of some fabrics of the top.
func (v *values) swatches(list ...int) []document.Swatch {
	var all []document.Swatch
	for _, f := range list {
		all = append(all, document.Swatch{Colour: v.top.Fabrics[f].Colour})
	}
	return all
}

// vanishing lists where seams vanish, the longest first.
func (v *values) vanishing() document.Section {
	var gone []*contrast.Pair
	for i := range v.Pairs {
		if v.Pairs[i].Gone() > 0 {
			gone = append(gone, &v.Pairs[i])
		}
	}
	slices.SortStableFunc(gone, func(a, b *contrast.Pair) int { return -cmp.Compare(a.Gone(), b.Gone()) })
	t := table(words(""), lengths("length"))
	for _, p := range gone[:min(MaxRows, len(gone))] {
		r := row(v.names(p), v.length(p.Gone()))
		r.Cells[0].Swatches = v.swatches(p.A, p.B)
		r.Under = append(r.Under, document.Plain(v.cells(p.Cells)))
		if p.ColourOnly {
			r.Under = append(r.Under, document.Plain("held by color only"))
		}
		r.About.Seams = v.only(*v.between(p.A, p.B), func(m *contrast.Mark) bool { return m.Band == contrast.Vanishes && !m.Inside })
		t.Rows = append(t.Rows, r)
	}
	s := section("vanishing", "Seams that vanish", document.Detail)
	if len(gone) > 0 {
		s.Blocks = append(s.Blocks, cut(t, len(gone)))
	}
	if text := v.goneInside(); text != "" {
		p := document.Paragraph{Text: document.Plain(text)}
		p.About.Seams = v.all(func(m *contrast.Mark) bool { return m.Band == contrast.Vanishes && m.Inside })
		s.Blocks = append(s.Blocks, p)
	}
	return s
}

// sight lists what other sight for colors takes away.
func (v *values) sight() document.Section {
	t := table(words(""), words("sight"), words("seam"), counts("step L*"))
	n := 0
	for i := range v.Pairs {
		p := &v.Pairs[i]
		for _, sight := range p.Sight {
			if sight.Band >= p.Band || sight.Band >= contrast.Clear {
				continue
			}
			if n++; n <= MaxRows {
				r := row(v.names(p), sightName(sight.Deficiency), fmt.Sprintf("%s where it is %s", sight.Band, p.Band), fmt.Sprintf("%.0f", sight.Step))
				r.Cells[0].Swatches = v.swatches(p.A, p.B)
				r.About.Seams = *v.between(p.A, p.B)
				t.Rows = append(t.Rows, r)
			}
		}
	}
	if n == 0 {
		return document.Section{}
	}
	return with(section("sight", "For color-blind viewers", document.Detail), cut(t, n))
}

// basis says what the study rests on, and what of it is published, derived or our choice.
func (v *values) basis() document.Section {
	return with(section("basis", "How values are judged", document.Why), bullets(v.grounds()...)...)
}

// sightName is a kind of color-blindness as its name in views and as people say it.
func sightName(deficiency string) string {
	return deficiency + map[string]string{"protan": " (red-blind)", "deutan": " (green-blind)", "tritan": " (blue-blind)"}[deficiency]
}
