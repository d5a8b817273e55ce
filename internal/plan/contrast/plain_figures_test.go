package contrast

import (
	"cmp"
	"math"
	"slices"

	"eighthturn/internal/render/pixels"
	"eighthturn/palettes"
)

// The figures of a top judged again by the plainest means.

// plainSums is what is added up along outlines.
type plainSums struct {
	length, held, against, step, seen, broken, gap, near, soft, runsOn float64
}

// sums adds up one outline: which faces are the figure's does not matter where it is the same which of both sides is darker.
func (p *plainly) sums(seams []outlineSeam, own map[int32]bool, both bool) plainSums {
	var t plainSums
	var gone []int
	lighter, darker := 0.0, 0.0
	for _, o := range seams {
		s := &p.seams[o.seam]
		step := s.step
		switch {
		case own != nil && own[s.A] == own[s.B]: // of an odd number of runs of wedges two of one side meet
			step *= o.side
		case !own[s.A]:
			step = -step
		}
		t.length, t.soft, t.held = t.length+s.length, t.soft+s.soft*s.length, t.held+s.length*s.held()
		if doubtful(math.Abs(step), s.soft, s.clear) {
			t.near += s.length
		}
		if s.band == Vanishes {
			t.broken += s.length
			gone = append(gone, int(o.seam))
			continue
		}
		t.seen += s.length
		if step > 0 {
			lighter, t.step = lighter+s.length*s.held(), t.step+s.length
		} else {
			darker, t.step = darker+s.length*s.held(), t.step-s.length
		}
	}
	t.against, t.step = min(lighter, darker), math.Abs(t.step)
	if both {
		t.against, t.step = 0, t.seen
	}
	t.gap = p.longestChain(gone)
	return t
}

// longestChain is the length of the longest stretch of seams that share their ends.
func (p *plainly) longestChain(seams []int) float64 {
	most := 0.0
	for len(seams) > 0 {
		chain, length := []int{seams[0]}, 0.0
		seams = seams[1:]
		for i := 0; i < len(chain); i++ {
			one := &p.seams[chain[i]]
			length += one.length
			seams = slices.DeleteFunc(slices.Clone(seams), func(n int) bool {
				s := &p.seams[n]
				touches := s.From == one.From || s.From == one.To || s.To == one.From || s.To == one.To
				if touches {
					chain = append(chain, n)
				}
				return touches
			})
		}
		most = max(most, length)
	}
	return most
}

// with adds up two figures.
func (t plainSums) with(u plainSums) plainSums {
	return plainSums{t.length + u.length, t.held + u.held, t.against + u.against, t.step + u.step, t.seen + u.seen, t.broken + u.broken,
		max(t.gap, u.gap), t.near + u.near, t.soft + u.soft, t.runsOn + u.runsOn}
}

// outline is what comes of the sums: half of what the lesser side holds is taken off.
func (t plainSums) outline() Outline {
	o := Outline{Polarity: 1, Length: nearest(t.length), Broken: nearest(t.broken), LongestGap: nearest(t.gap), RunsOn: nearest(t.runsOn)}
	if t.length > 0 {
		o.Edge, o.Score = min(1, t.held/t.length), min(100, 100*(t.held-t.against/2)/t.length)
	}
	if t.seen > 0 {
		o.Polarity = t.step / t.seen
	}
	return o
}

// lacks are the fabrics on both sides of seams that are not clear, those of the longest seams first.
func (p *plainly) lacks(seams []outlineSeam) []Lack {
	one := *p
	one.seams = nil
	for _, o := range seams {
		if s := p.seams[o.seam]; s.a != s.b && s.band < Clear {
			one.seams = append(one.seams, s)
		}
	}
	list := []Lack{}
	for _, q := range one.pairs() {
		l := Lack{Names: q.Names, Step: q.Step, Length: q.Length, Band: Soft, a: q.A, b: q.B}
		if q.ByBand["vanishes"] > 0 {
			l.Band = Vanishes
		}
		list = append(list, l)
	}
	slices.SortStableFunc(list, func(a, b Lack) int {
		return cmp.Or(cmp.Compare(b.Length, a.Length), cmp.Compare(a.a, b.a), cmp.Compare(a.b, b.b))
	})
	return list
}

// namesOf are the names of fabrics, each once and in the layout's order.
func (p *plainly) namesOf(fabrics []int) []string {
	names := []string{}
	for f := range p.Fabrics {
		if slices.Contains(fabrics, f) {
			names = append(names, p.Fabrics[f].Name)
		}
	}
	return names
}

// fabricsOf are the fabrics of faces.
func (p *plainly) fabricsOf(faces []int32) []int {
	var list []int
	for _, f := range faces {
		list = append(list, int(p.Faces[f].Fabric))
	}
	return distinct(list)
}

// judgedOf are the figures that a verdict goes by: those that have all their pieces, or all where none has.
func judgedOf(members []member) []member {
	closed := slices.DeleteFunc(slices.Clone(members), func(m member) bool { return !m.closed })
	if len(closed) > 0 {
		return closed
	}
	return members
}

// figure judges figures of one coloring.
func (p *plainly) figure(sort Sort, members []member) Figure {
	f := Figure{Sort: sort, Count: len(members), Weak: math.Inf(1), Lacks: []Lack{}}
	edge := []int{}
	first := &members[0]
	for _, o := range first.seams {
		for _, face := range [2]int32{p.seams[o.seam].A, p.seams[o.seam].B} {
			if slices.Contains(first.faces, face) {
				edge = append(edge, int(p.Faces[face].Fabric))
			}
		}
	}
	f.Of, f.Edge, f.Against = p.namesOf(p.fabricsOf(first.faces)), p.namesOf(edge), p.namesOf(p.fabricsOf(first.against))
	f.Reversed = p.reversedOf(members)
	var all []outlineSeam
	for i := range members {
		m := &members[i]
		f.Closed += map[bool]int{true: 1}[m.closed]
		f.Faces = append(f.Faces, m.faces...)
		if sort == Alternation {
			f.Faces = append(f.Faces, m.against...)
		}
		all = append(all, m.seams...)
	}
	var sum plainSums
	both := sort != Web && sort != Star && sort != Wheel && sort != Alternation
	for _, m := range judgedOf(members) {
		own := map[int32]bool{}
		for _, face := range m.faces {
			own[face] = true
		}
		one := p.sums(m.seams, own, both)
		score := one.outline().Score
		f.Lost += map[bool]int{true: 1}[score < 70]
		p.weak = append(p.weak, weakPlace{p.firstPlace(m.faces), score})
		if score < f.Weak {
			f.Weak, f.Weakest = score, p.firstPlace(m.faces)
		}
		sum = sum.with(one)
	}
	f.Outline, f.Doubtful = sum.outline(), sum.near > sum.length/2
	if !both {
		f.Mass = p.mass(judgedOf(members), sum.soft/sum.length)
	}
	if sort == Web || sort == Star || sort == Wheel {
		f.Rim = p.rim(members)
	}
	if sort == DownColumns {
		f.Alternates = p.alternatesOf(all)
	}
	if f.Verdict = verdict(&f); f.Verdict != Reads {
		f.Lacks = p.lacks(all)
	}
	return f
}

// weakPlace is where a figure lies, and its outline's score.
type weakPlace struct {
	Place
	score float64
}

// asWeak says whether some figure at a place scores just so: of several that are as weak as each other any may be told of.
func (p *plainly) asWeak(at Place, score float64) bool {
	return slices.ContainsFunc(p.weak, func(w weakPlace) bool { return w.Place == at && math.Abs(w.score-score) < 1e-9 })
}

// reversedOf says whether figures are made of strip sets, all of which lie the other way round.
func (p *plainly) reversedOf(members []member) bool {
	some := false
	for _, m := range members {
		for _, f := range m.faces {
			patch := &p.Patches[p.Faces[f].Patch]
			if patch.Count > 1 && !patch.Reversed {
				return false
			}
			some = some || patch.Count > 1
		}
	}
	return some
}

// firstPlace is the place of the uppermost face, of those the one farthest to the left.
func (p *plainly) firstPlace(faces []int32) Place {
	return p.placeOf(slices.MinFunc(faces, func(a, b int32) int {
		one, other := p.placeOf(a), p.placeOf(b)
		return cmp.Or(cmp.Compare(one.Row, other.Row), cmp.Compare(one.Column, other.Column))
	}))
}

// alternatesOf is the part of the pieces with two neighbors that are darker, or lighter, than both.
func (p *plainly) alternatesOf(seams []outlineSeam) float64 {
	own := map[int32][]float64{}
	for _, o := range seams {
		s := &p.seams[o.seam]
		own[s.A], own[s.B] = append(own[s.A], s.step), append(own[s.B], -s.step)
	}
	of, both := 0.0, 0.0
	for _, steps := range own {
		if len(steps) == 2 {
			of++
			if steps[0] > 0 && steps[1] > 0 || steps[0] < 0 && steps[1] < 0 {
				both++
			}
		}
	}
	return both / max(1, of)
}

// rim judges where figures meet a border.
func (p *plainly) rim(members []member) *Rim {
	r := &Rim{Lacks: []Lack{}}
	var all []outlineSeam
	var border []int
	lost, sum := 0.0, plainSums{}
	for _, m := range members {
		weak := 0.0
		for _, o := range m.rim {
			s := &p.seams[o.seam]
			if 100*s.held() < 70 {
				weak += s.length
			}
			if p.zoneOf(s.A) >= 0 {
				border = append(border, s.a)
			} else {
				border = append(border, s.b)
			}
		}
		lost, all = lost+weak, append(all, m.rim...)
		r.Count += map[bool]int{true: 1}[weak > 0]
		sum = sum.with(p.sums(m.rim, nil, true))
	}
	if len(all) == 0 {
		return nil
	}
	o := sum.outline()
	r.Against, r.Length, r.Lost, r.Verdict = p.namesOf(border), o.Length, nearest(lost), verdict(&Figure{Outline: o})
	if r.Verdict != Reads {
		r.Lacks = p.lacks(all)
	}
	return r
}

// frame judges the sashes or a border.
func (p *plainly) frame(zone int) Figure {
	f := Figure{Sort: Sashes, Count: 1, Closed: 1}
	if zone >= 0 {
		f.Sort, f.Border, f.Weakest = Border, zone+1, Place{Border: zone + 1}
	}
	edge, runsOn := p.frameSeams(zone)
	var seams []outlineSeam
	for _, i := range edge {
		seams = append(seams, outlineSeam{seam: int32(i)})
	}
	sum := p.sums(seams, nil, true)
	var of, at, against []int
	for i := range p.seams {
		s := &p.seams[i]
		own, inner, zones := s.a, s.b, [2]int{p.zoneOf(s.A), p.zoneOf(s.B)}
		if zones[1] == zone {
			own, inner, zones = s.b, s.a, [2]int{zones[1], zones[0]}
		}
		if zones[0] != zone || zones[1] >= zone {
			continue
		}
		of, against = append(of, own), append(against, inner)
		if slices.Contains(runsOn, i) {
			sum.runsOn += s.length
		} else {
			at = append(at, own)
		}
	}
	f.Of, f.Edge, f.Against = p.namesOf(of), p.namesOf(at), p.namesOf(against)
	for i := range p.Faces {
		if p.zoneOf(int32(i)) == zone {
			f.Faces = append(f.Faces, int32(i))
		}
	}
	f.Outline, f.Doubtful, f.Lacks = sum.outline(), sum.near > sum.length/2, p.lacks(seams)
	f.Weak, f.Verdict = f.Outline.Score, verdict(&f)
	if f.Verdict == Faint || f.Verdict == Lost {
		f.Lost = 1
	}
	return f
}

// counted are the pixels of faces, each once, by their blurred CIE L* in tenths, and how many there are.
func (p *plainly) counted(faces []int32) (counts [1001]float64, total float64) {
	if p.pixels == nil {
		p.blur()
	}
	for _, f := range slices.Compact(slices.Sorted(slices.Values(faces))) {
		for _, v := range p.pixels[f] {
			counts[v]++
			total++
		}
	}
	return counts, total
}

// blur makes the pixels.
func (p *plainly) blur() {
	s := p.study
	if s.canvas == nil {
		s.canvas = s.newCanvas()
	}
	plane := pixels.Blurred(p.Top, s.canvas.Size, s.squint().Sigma(), func(f int) palettes.Colour { return p.Fabrics[f].Colour })
	p.pixels = make([][]int, len(p.Faces))
	for i, f := range pixels.FaceAt(p.Top, plane.Size) {
		if f >= 0 {
			y := math.Round(float64(plane.Luminance[i])*(1<<14)) / (1 << 14)
			p.pixels[f] = append(p.pixels[f], int(math.Round(10*palettes.LightnessOf(y))))
		}
	}
}

// mass judges figures as one mass. What is narrower than two standard deviations of the blur, 0.28 in from 10 feet, is none.
func (p *plainly) mass(members []member, soft float64) *Mass {
	var own, other []int32
	widest := 0.0
	for _, m := range members {
		own, other = append(own, m.faces...), append(other, m.against...)
		for _, f := range m.faces {
			widest = max(widest, narrowestOf(p.Patches[p.Faces[f].Patch].Outline))
		}
	}
	if widest < 2*float64(p.blurOf()) {
		return nil
	}
	return p.massOf(own, other, soft)
}

func (p *plainly) massOf(own, other []int32, soft float64) *Mass {
	if p.study.own != nil && p.pixels == nil { // pieces of prints, each by the part that it shows
		return p.study.newMasses().apart([][]int32{own}, [][]int32{other}, soft)
	}
	figure, n := p.counted(own)
	ground, k := p.counted(other)
	if n == 0 || k == 0 {
		return nil
	}
	var lighter, darker, above float64
	for v, a := range figure {
		if a == 0 {
			continue
		}
		for w, b := range ground {
			s := plainSeam{step: float64(v-w) / 10, soft: soft, clear: p.clear}
			switch held := s.held() * a * b; {
			case v > w:
				lighter, above = lighter+held, above+a*b
			case v < w:
				darker, above = darker+held, above-a*b
			}
		}
	}
	m := &Mass{Score: 100 * (max(lighter, darker) / (n * k)), Massing: math.Abs(above) / (n * k), Figure: middleOf(figure[:], n), AgainstMid: middleOf(ground[:], k)}
	between := plainSeam{step: m.Figure - m.AgainstMid, soft: soft, clear: p.clear}
	m.Step, m.Hold = min(1, math.Abs(between.step)/p.clear), between.held()
	return m
}

// middleOf is the CIE L* that half reach.
func middleOf(counts []float64, total float64) float64 {
	sum := 0.0
	for v, n := range counts {
		if sum += n; sum >= total/2 {
			return float64(v) / 10
		}
	}
	return 100
}

// pooledOf draws many colorings together: outlines by length, masses by how many figures there are.
func (p *plainly) pooledOf(sort Sort, variants [][]member) Figure {
	f := Figure{Sort: sort, Weak: math.Inf(1), Lacks: []Lack{}}
	length, massed := 0.0, 0.0
	var lacking, atRim []Lack
	var rims []member
	for _, v := range variants {
		one := p.figure(sort, v)
		f.Count, f.Closed, f.Lost = f.Count+one.Count, f.Closed+one.Closed, f.Lost+one.Lost
		f.Doubtful, f.Faces = f.Doubtful || one.Doubtful, append(f.Faces, one.Faces...)
		for _, names := range [3][2]*[]string{{&f.Of, &one.Of}, {&f.Edge, &one.Edge}, {&f.Against, &one.Against}} {
			*names[0] = append(*names[0], *names[1]...)
		}
		if one.Weak < f.Weak {
			f.Weak, f.Weakest = one.Weak, one.Weakest
		}
		l, o := float64(one.Outline.Length), &f.Outline
		length += l
		o.Score, o.Edge, o.Polarity = o.Score+l*one.Outline.Score, o.Edge+l*one.Outline.Edge, o.Polarity+l*one.Outline.Polarity
		o.Length, o.Broken, o.LongestGap = o.Length+one.Outline.Length, o.Broken+one.Outline.Broken, max(o.LongestGap, one.Outline.LongestGap)
		if one.Mass != nil {
			if f.Mass == nil {
				f.Mass = &Mass{}
			}
			n := float64(one.Count)
			massed += n
			f.Mass.Score, f.Mass.Massing, f.Mass.Step, f.Mass.Hold = f.Mass.Score+n*one.Mass.Score, f.Mass.Massing+n*one.Mass.Massing, f.Mass.Step+n*one.Mass.Step, f.Mass.Hold+n*one.Mass.Hold
		}
		if lacking = append(lacking, one.Lacks...); one.Rim != nil {
			atRim = append(atRim, one.Rim.Lacks...)
		}
		rims = append(rims, v...)
		if one.Rim != nil && (f.Rim == nil || rank(one.Rim.Verdict) > rank(f.Rim.Verdict)) {
			f.Rim = one.Rim
		}
	}
	o := &f.Outline
	o.Score, o.Edge, o.Polarity = o.Score/length, o.Edge/length, o.Polarity/length
	if m := f.Mass; m != nil {
		m.Score, m.Massing, m.Step, m.Hold = m.Score/massed, m.Massing/massed, m.Step/massed, m.Hold/massed
	}
	if f.Rim != nil {
		worst := f.Rim.Verdict
		f.Rim = p.rim(rims)
		f.Rim.Verdict, f.Rim.Lacks = worst, together(atRim)
	}
	f.Verdict, f.Lacks = verdict(&f), together(lacking)
	return f
}

// together is what several colorings lack, each two fabrics once, those of the longest seams first.
func together(lacks []Lack) []Lack {
	list := []Lack{}
	for _, l := range lacks {
		i := slices.IndexFunc(list, func(m Lack) bool { return m.Names == l.Names })
		if i < 0 {
			list = append(list, l)
			continue
		}
		list[i].Length, list[i].Band = list[i].Length+l.Length, min(list[i].Band, l.Band)
	}
	slices.SortStableFunc(list, func(a, b Lack) int {
		return cmp.Or(cmp.Compare(b.Length, a.Length), cmp.Compare(a.a, b.a), cmp.Compare(a.b, b.b))
	})
	return list
}
