package preview

import (
	"cmp"
	"fmt"
	"slices"

	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/quilt"
)

// lightAndDark turns a top into the study of its values as a report: what the command prints,
// with the places of the top that each line is about.
func lightAndDark(t *quilt.Top) report {
	v := newValueRows(t)
	r := report{Name: "Light and dark", Says: "seen from " + v.Away(), Marks: v.marks()}
	for _, s := range []section{
		v.figures(), v.fabrics(), v.totals(), v.pairs(), v.vanishing(), v.eyes(), v.waysOut(), v.rests(),
	} {
		if len(s.Rows) > 0 {
			r.Sections = append(r.Sections, s)
		}
	}
	return r
}

// valueRows turns a study of values into rows.
type valueRows struct {
	contrast.Words
	top     *quilt.Top
	index   map[string]int   // of fabrics, by name
	facesOf [][]int          // by fabric
	meet    [][]int          // seams by the two fabrics, see between
	marked  []*contrast.Mark // by seam, nil for none
}

func newValueRows(t *quilt.Top) *valueRows {
	v := &valueRows{Words: contrast.Words{Report: contrast.Study(t, contrast.Options{Distance: viewedFrom})}, top: t,
		index: map[string]int{}, facesOf: make([][]int, len(t.Fabrics)),
		meet: make([][]int, len(t.Fabrics)*len(t.Fabrics)), marked: make([]*contrast.Mark, len(t.Seams)+len(t.StripSeams))}
	for i := range t.Fabrics {
		v.index[t.Fabrics[i].Name] = i
	}
	for i := range t.Faces {
		v.facesOf[t.Faces[i].Fabric] = append(v.facesOf[t.Faces[i].Fabric], i)
	}
	next := 0 // marks stand in the order of the top
	for i := range v.marked {
		s := seamOf(t, i)
		both := v.between(t.Faces[s.A].Fabric, t.Faces[s.B].Fabric)
		*both = append(*both, i)
		if next < len(v.Marks) && v.Marks[next].Seam == *s {
			v.marked[i] = &v.Marks[next]
			next++
		}
	}
	return v
}

// between are the seams between two fabrics.
func (v *valueRows) between(a, b int) *[]int { return &v.meet[min(a, b)*len(v.top.Fabrics)+max(a, b)] }

func (v *valueRows) seams(p *contrast.Pair) []int { return *v.between(p.A, p.B) }

// gone are those of some seams that vanish where a line should show.
func (v *valueRows) gone(seams []int) []int {
	return v.only(seams, func(m *contrast.Mark) bool { return m.Band == contrast.Vanishes && !m.Inside })
}

func (v *valueRows) only(seams []int, wanted func(*contrast.Mark) bool) []int {
	var list []int
	for _, i := range seams {
		if m := v.marked[i]; m != nil && wanted(m) {
			list = append(list, i)
		}
	}
	return list
}

// markedSeams are the seams whose marks are wanted, in the order of the top.
func (v *valueRows) markedSeams(wanted func(*contrast.Mark) bool) []int {
	return v.only(upTo(0, len(v.marked)-1), wanted)
}

func (v *valueRows) inBand(b contrast.Band) []int {
	return v.markedSeams(func(m *contrast.Mark) bool { return m.Band == b })
}

// marks are the seams that are hard to see where a line should show.
func (v *valueRows) marks() []mark {
	var list []mark
	for _, b := range [2]contrast.Band{contrast.Vanishes, contrast.Soft} {
		length := v.Report.Seams.ByBand[b.String()] - v.Report.Seams.Inside[b.String()]
		list = append(list, mark{Says: b.String() + ", " + v.Length(length), Heavy: b == contrast.Vanishes,
			Seams: v.markedSeams(func(m *contrast.Mark) bool { return m.Band == b && !m.Inside })})
	}
	return list
}

// figures says of every figure whether it reads, and what that rests on.
func (v *valueRows) figures() section {
	s := section{Title: "Does it read?", Heads: []column{{Head: "figure"}, {Head: "verdict"}}}
	for i := range v.Figures {
		f := &v.Figures[i]
		w := row{Cells: visible(v.Figure(f), string(f.Verdict)), Under: visible(v.Parts(f)...), Faces: indices(f.Faces)}
		switch {
		case f.Verdict == contrast.Lost:
			w.Tone = wrong
		case f.Verdict != contrast.Reads && f.Verdict != contrast.RunsOn, f.Doubtful:
			w.Tone = doubtful
		}
		s.Rows = append(s.Rows, w)
	}
	return s
}

func indices(list []int32) []int {
	all := make([]int, len(list))
	for i, n := range list {
		all[i] = int(n)
	}
	return all
}

func (v *valueRows) fabrics() section {
	s := section{Title: "Fabrics from dark to light", Heads: []column{{}, {"L*", true}, {"Munsell", true}, {Head: "by itself"}, {Head: "here"}, {"of the top", true}}}
	for i := range v.Report.Fabrics {
		f := &v.Report.Fabrics[i]
		w := row{Swatches: []string{f.Colour}, Faces: v.facesOf[f.Index], Cells: visible(
			f.Name, fmt.Sprintf("%.0f", f.Lightness), fmt.Sprintf("%.1f", f.Munsell), f.Family, f.Here, fmt.Sprintf("%.1f %%", 100*f.Share))}
		if note := f.Note(); note != "" {
			w.Under = []string{note}
		}
		s.Rows = append(s.Rows, w)
	}
	return s
}

// totals adds up all seams. Of those that are clear or strong a study does not say which.
func (v *valueRows) totals() section {
	all := v.Report.Seams.Length
	s := section{Title: "Seams, " + v.Length(all) + " in all", Heads: []column{{}, {"length", true}, {"of all", true}, {"seams", true}}}
	for _, b := range contrast.Bands() {
		l := v.Report.Seams.ByBand[b.String()]
		w := row{Cells: []string{b.String(), v.Length(l), contrast.Percent(l, all), fmt.Sprint(v.Report.Seams.CountBand[b.String()])}, Seams: v.inBand(b)}
		s.Rows = append(s.Rows, w)
	}
	if l := v.Report.Seams.ColourOnly; l > 0 {
		seams := v.markedSeams(func(m *contrast.Mark) bool { return m.ColourOnly })
		held := row{Cells: []string{"held by colour only", v.Length(l), contrast.Percent(l, all), fmt.Sprint(len(seams))}, Seams: seams}
		s.Rows = slices.Insert(s.Rows, 1, held)
	}
	one := v.Report.Seams.OneFabric
	s.Rows = append(s.Rows, row{Cells: []string{"one fabric", v.Length(one), contrast.Percent(one, all), ""}, Seams: v.oneFabric()})
	return s
}

// oneFabric are the seams with one fabric on both sides.
func (v *valueRows) oneFabric() []int {
	var list []int
	for f := range v.top.Fabrics {
		list = append(list, *v.between(f, f)...)
	}
	return list
}

// upTo are the numbers from the first to the last.
func upTo(first, last int) []int {
	var list []int
	for n := first; n <= last; n++ {
		list = append(list, n)
	}
	return list
}

// mostRows is how many rows a section has that may have very many.
const mostRows = 40

// more says that a section was cut.
func more(n int) string {
	if n <= mostRows {
		return ""
	}
	return fmt.Sprintf("and %d more; eighthturn values --json lists them all", n-mostRows)
}

func (v *valueRows) pairs() section {
	s := section{Title: "Fabrics that meet, what asks for a look first", More: more(len(v.Pairs)),
		Heads: []column{{}, {Head: "seam"}, {"step L*", true}, {"colour", true}, {"length", true}}}
	for i := range v.Pairs[:min(mostRows, len(v.Pairs))] {
		p := &v.Pairs[i]
		w := row{Swatches: v.swatches(p), Seams: v.seams(p), Cells: visible(
			v.names(p), p.Band.String(), fmt.Sprintf("%.1f", p.Step), fmt.Sprintf("%.0f", p.Colour), v.Length(p.Length))}
		if note := p.Note(); note != "" {
			w.Under = []string{note}
		}
		if p.Band == contrast.Vanishes && p.Inside < p.Length {
			w.Tone = doubtful
		}
		s.Rows = append(s.Rows, w)
	}
	return s
}

func (v *valueRows) names(p *contrast.Pair) string { return p.Names[0] + ", " + p.Names[1] }

func (v *valueRows) swatches(p *contrast.Pair) []string { return v.colours(p.A, p.B) }

func (v *valueRows) colours(a, b int) []string {
	return []string{v.top.Fabrics[a].Colour.Hex(), v.top.Fabrics[b].Colour.Hex()}
}

// vanishing lists where seams vanish, the longest first.
func (v *valueRows) vanishing() section {
	var gone []*contrast.Pair
	for i := range v.Pairs {
		if v.Pairs[i].Gone() > 0 {
			gone = append(gone, &v.Pairs[i])
		}
	}
	slices.SortStableFunc(gone, func(a, b *contrast.Pair) int { return -cmp.Compare(a.Gone(), b.Gone()) })
	s := section{Title: "Seams that vanish", More: more(len(gone)), Heads: []column{{}, {"length", true}}}
	for _, p := range gone[:min(mostRows, len(gone))] {
		w := row{Swatches: v.swatches(p), Cells: visible(v.names(p), v.Length(p.Gone())),
			Under: []string{v.Cells(p.Cells)}, Seams: v.gone(v.seams(p))}
		if p.ColourOnly {
			w.Under = append(w.Under, "held by colour only")
		}
		s.Rows = append(s.Rows, w)
	}
	if inside := v.GoneInside(); inside != "" {
		s.Rows = append(s.Rows, row{Cells: []string{inside}, Seams: v.markedSeams(func(m *contrast.Mark) bool { return m.Band == contrast.Vanishes && m.Inside })})
	}
	return s
}

// eyes lists what other sight for colours takes away.
func (v *valueRows) eyes() section {
	s := section{Title: "For eyes that see colours otherwise", Heads: []column{{}, {Head: "sight"}, {Head: "seam"}, {"step L*", true}}}
	n := 0
	for i := range v.Pairs {
		p := &v.Pairs[i]
		for _, sight := range p.Sight {
			if sight.Band >= p.Band || sight.Band >= contrast.Clear {
				continue
			}
			if n++; n <= mostRows {
				s.Rows = append(s.Rows, row{Swatches: v.swatches(p), Seams: v.seams(p), Cells: visible(
					v.names(p), sight.Deficiency, fmt.Sprintf("%s where it is %s", sight.Band, p.Band), fmt.Sprintf("%.0f", sight.Step))})
			}
		}
	}
	s.More = more(n)
	return s
}

// waysOut lists what would mend the pairs that vanish or lose a figure.
func (v *valueRows) waysOut() section {
	s := section{Title: "Ways out, for pairs that vanish or lose a figure"}
	pair := [2]string{}
	for i := range v.WaysOut {
		out := &v.WaysOut[i]
		a, b := v.index[out.Pair[0]], v.index[out.Pair[1]]
		seams := v.only(*v.between(a, b), func(*contrast.Mark) bool { return true })
		if out.Pair != pair {
			pair = out.Pair
			s.Rows = append(s.Rows, row{Head: true, Swatches: v.colours(a, b), Cells: visible(pair[0] + " and " + pair[1]), Seams: seams})
		}
		w := row{Swatches: []string{out.Colour}, Cells: visible(v.WayOut(out)), Seams: seams}
		if out.Other != nil {
			w.Swatches = append(w.Swatches, out.Other.Colour)
		}
		s.Rows = append(s.Rows, w)
	}
	return s
}

// rests says what the study rests on, and what of it is published, derived or our choice.
func (v *valueRows) rests() section {
	s := section{Title: "What this rests on"}
	for _, line := range v.Grounds() {
		s.Rows = append(s.Rows, row{Cells: []string{line}})
	}
	return s
}
