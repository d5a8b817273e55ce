package contrast

import (
	"math"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// outlineSum adds up the seams of outlines.
type outlineSum struct {
	*study
	both     bool // neither side is the figure, so that it does not matter which is darker
	length   float64
	held     float64 // length by weight
	turned   float64 // of that, the lesser of what is darker and what is lighter
	signed   float64 // of what does not vanish, what is lighter less what is darker
	seen     float64 // what does not vanish
	broken   float64
	gap      float64
	runsOn   float64
	doubtful bool // most of its length lies near a threshold
	near     float64
	soft     float64 // length by the step below which it vanishes
}

// meanSoft is the step below which the outline vanishes, in the mean; there must be one.
func (o *outlineSum) meanSoft() float64 {
	return o.soft / o.length
}

// add adds the outline of one figure.
func (o *outlineSum) add(m *member) {
	var gone []int32
	var darker, lighter float64
	for _, edge := range m.seams {
		one := &o.seams[edge.seam]
		step := math.Abs(one.step)
		o.length += one.length
		o.soft += float64(one.length * one.soft)
		held := float64(one.length * o.weight(step, one.soft))
		o.held += held
		if float64(edge.side*one.step) > 0 {
			lighter += held
		} else {
			darker += held
		}
		if o.study.doubtful(step, one.soft) {
			o.near += one.length
		}
		if step < one.soft {
			o.broken += one.length
			if !o.quick {
				gone = append(gone, edge.seam)
			}
			continue
		}
		o.seen += one.length
		o.signed += edge.side * math.Copysign(one.length, one.step)
	}
	o.signed = math.Abs(o.signed)
	o.turned += min(darker, lighter)
	if o.both {
		o.signed, o.turned = o.seen, 0
	}
	o.gap = o.longest(gone)
}

// join adds another figure's sums; each figure may be darker or lighter by itself.
func (o *outlineSum) join(p *outlineSum) {
	o.length += p.length
	o.held += p.held
	o.turned += p.turned
	o.signed += p.signed
	o.seen += p.seen
	o.broken += p.broken
	o.near += p.near
	o.soft += p.soft
	o.gap = max(o.gap, p.gap)
	o.doubtful = o.near > o.length/2
}

// outline is the sums as parts and score.
func (o *outlineSum) outline() Outline {
	out := Outline{Polarity: 1, Length: nearest(o.length), Broken: nearest(o.broken), LongestGap: nearest(o.gap), RunsOn: nearest(o.runsOn)}
	if o.length > 0 {
		out.Edge = min(1, o.held/o.length)
		out.Score = min(100, 100*(o.held-o.turned/2)/o.length)
	}
	if o.seen > 0 {
		out.Polarity = min(1, o.signed/o.seen)
	}
	return out
}

// longest is the length of the longest chain of seams that share their ends.
func (o *outlineSum) longest(seams []int32) float64 {
	at := map[measure.Point]int{}
	chain := make([]int, len(seams)) // each seam's chain, by the number of one of its seams
	root := func(n int) int {
		for chain[n] != n {
			n = chain[n]
		}
		return n
	}
	for i := range seams {
		chain[i] = i
		one := o.seams[seams[i]].at
		for _, end := range [2]measure.Point{one.From, one.To} {
			if n, ok := at[end]; ok {
				chain[root(i)] = root(n)
			} else {
				at[end] = i
			}
		}
	}
	lengths := make([]float64, len(seams))
	most := 0.0
	for i := range seams {
		r := root(i)
		lengths[r] += o.seams[seams[i]].length
		most = max(most, lengths[r])
	}
	return most
}

// centred is the figure of pieces round a web or star centre. A strip at the rim that is of
// the very cloth it meets belongs to the ground, and the figure begins at the next strip.
func (s *study) centred(patches []int32) member {
	inside := map[int32]bool{}
	faces := s.facesOf(patches)
	for _, f := range faces {
		inside[f] = true
	}
	melted := s.melt(patches, inside)
	m := member{closed: len(patches) == s.fullTurn(patches)}
	for _, f := range faces {
		if inside[f] {
			m.faces = append(m.faces, f)
		}
	}
	s.surround(&m, inside)
	for _, f := range melted {
		if !slices.Contains(m.against, f) {
			m.against = append(m.against, f)
		}
	}
	return m
}

// melt takes those faces out of a figure that are of the cloth they meet outside it, as long
// as their wedge keeps another face, and returns them.
func (s *study) melt(patches []int32, inside map[int32]bool) []int32 {
	var melted []int32
	for changed := true; changed; {
		changed = false
		for _, i := range patches {
			p := &s.Patches[i]
			for f := int32(p.First); f < int32(p.First+p.Count); f++ {
				if inside[f] && s.keepsTwo(p, inside) && s.meetsItself(f, inside) {
					delete(inside, f)
					melted = append(melted, f)
					changed = true
				}
			}
		}
	}
	return melted
}

// keepsTwo says whether at least two of a wedge's faces are still inside.
func (s *study) keepsTwo(p *quilt.Patch, inside map[int32]bool) bool {
	n := 0
	for f := p.First; f < p.First+p.Count; f++ {
		if inside[int32(f)] {
			n++
		}
	}
	return n > 1
}

// meetsItself says whether a face meets its own cloth outside the figure, borders left out.
func (s *study) meetsItself(face int32, inside map[int32]bool) bool {
	for _, i := range s.of[face] {
		one := &s.seams[i]
		if f := one.other(face); one.sameOne && !inside[f] && !s.inBorder(f) {
			return true
		}
	}
	return false
}

// surround finds the outline of a figure, borders left out, and what it stands against.
func (s *study) surround(m *member, inside map[int32]bool) {
	for _, f := range m.faces {
		for _, i := range s.of[f] {
			one := &s.seams[i]
			g := one.other(f)
			if inside[g] {
				continue
			}
			if s.inBorder(g) {
				m.rim = append(m.rim, outlineSeam{i, sideOf(one, f)})
				continue
			}
			m.seams = append(m.seams, outlineSeam{i, sideOf(one, f)})
			m.against = append(m.against, g)
		}
	}
	slices.Sort(m.against)
	m.against = slices.Compact(m.against)
}

// sideOf is which side of a seam a face is: 1 for the first, -1 for the second.
func sideOf(one *seam, face int32) float64 {
	if one.a == face {
		return 1
	}
	return -1
}
