package contrast

import (
	"fmt"
	"slices"

	"eighthturn/palettes"
)

// stripSets are the wedges of strips, as figures whose outline is the seams between their
// strips.
func (s *study) stripSets() []member {
	var list []member
	at := map[string]int{}
	for i := range s.Patches {
		p := &s.Patches[i]
		if p.Count < 2 {
			continue
		}
		key := s.setKey(i)
		n, ok := at[key]
		if !ok {
			n = len(list)
			at[key] = n
			list = append(list, member{closed: true})
		}
		for f := p.First; f < p.First+p.Count; f++ {
			list[n].faces = append(list[n].faces, int32(f))
		}
	}
	for n := range list {
		s.addStripSeams(&list[n])
	}
	return list
}

// setKey is the same for wedges of the same strips, whichever way round.
func (s *study) setKey(patch int) string {
	p := &s.Patches[patch]
	var fabrics []int
	for f := p.First; f < p.First+p.Count; f++ {
		fabrics = append(fabrics, int(s.Faces[f].Fabric))
	}
	other := slices.Clone(fabrics)
	slices.Reverse(other)
	return fmt.Sprint(slices.MinFunc([][]int{fabrics, other}, slices.Compare))
}

func (s *study) addStripSeams(m *member) {
	for _, f := range m.faces {
		for _, i := range s.of[f] {
			if one := &s.seams[i]; one.strip && one.a == f {
				m.seams = append(m.seams, outlineSeam{i, 1})
			}
		}
	}
}

// Zones of a top, from the inside out; those of the borders follow, from 0.
const (
	inBlocks = iota - 2
	inSashes
)

// zone is where a face lies: the number of its border, or one of the above.
func (s *study) zone(face int32) int {
	p := &s.Patches[s.Faces[face].Patch]
	switch {
	case p.Border >= 0:
		return int(p.Border)
	case p.Cell < 0:
		return inSashes
	}
	return inBlocks
}

// frames judges the sashes, and each border, against what lies inside them. Where one is
// sewn to its own cloth it is meant to run on, and that stretch is left out.
func (s *study) frames() []Figure {
	sashes, last := false, int16(-1)
	for i := range s.Patches {
		sashes = sashes || s.Patches[i].Cell < 0 && s.Patches[i].Border < 0
		last = max(last, s.Patches[i].Border)
	}
	var list []Figure
	if sashes {
		list = append(list, s.frame(inSashes))
	}
	for n := range int(last) + 1 {
		list = append(list, s.frame(n))
	}
	return list
}

// facesIn are the faces of a zone.
func (s *study) facesIn(zone int) []int32 {
	var list []int32
	for i := range s.Faces {
		if s.zone(int32(i)) == zone {
			list = append(list, int32(i))
		}
	}
	return list
}

// alikeStep is the CIEDE2000 difference below which a border is meant to go on where the ground ends; our choice.
const alikeStep = 10

// continues says whether a border goes on where the ground ends: in a cloth that looks like the ground's, or is one of its scraps.
func (s *study) continues(one *seam, own, inner int32) bool {
	if s.zone(own) < 0 || s.sides.figure[inner] != 0 || one.band >= Clear {
		return false
	}
	a, b := s.Faces[own].Fabric, s.Faces[inner].Fabric
	return s.onePool(int(a), int(b)) || alike(palettes.Difference(s.Fabrics[a].Colour, s.Fabrics[b].Colour))
}

// alike says whether two fabrics of such a difference, CIEDE2000, pass for one.
func alike(difference float64) bool { return difference < alikeStep }

func (s *study) frame(zone int) Figure {
	f := Figure{Sort: Sashes, Count: 1, Closed: 1}
	if zone >= 0 {
		f.Sort, f.Border, f.Weakest = Border, zone+1, Place{Border: zone + 1}
	}
	sum := outlineSum{study: s, both: true}
	var m member // seams against the ground; those against figures their rims judge
	var of, edge, against []int
	for i := range s.seams {
		one := &s.seams[i]
		a, b := s.zone(one.a), s.zone(one.b)
		if max(a, b) != zone || a == b {
			continue
		}
		own, inner := one.a, one.b
		if b == zone {
			own, inner = one.b, one.a
		}
		of = append(of, int(s.Faces[own].Fabric))
		against = append(against, int(s.Faces[inner].Fabric))
		if one.sameOne || s.continues(one, own, inner) {
			sum.runsOn += one.length
			continue
		}
		edge = append(edge, int(s.Faces[own].Fabric))
		if s.sides.figure[inner] == 0 {
			m.seams = append(m.seams, outlineSeam{int32(i), sideOf(one, own)})
		}
	}
	sum.add(&m)
	sum.doubtful = sum.near > sum.length/2
	if !s.quick {
		s.sides.mark([]member{m}, false)
		f.Of, f.Edge, f.Against = s.names(distinct(of)), s.names(distinct(edge)), s.names(distinct(against))
		f.Faces = s.facesIn(zone)
	}
	f.Outline, f.Doubtful, f.Lacks = sum.outline(), sum.doubtful, s.lacking(m.seams)
	f.Weak = f.Outline.Score
	f.Verdict = verdict(&f)
	if !f.Verdict.Shows() {
		f.Lost = 1
	}
	return f
}
