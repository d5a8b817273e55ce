package contrast

import (
	"cmp"
	"fmt"
	"slices"
)

// wheel is the figure of the wedges round the middle of a block. Where they are of more
// than one cloth they are meant to alternate: every other one, or every other run of alike
// ones, is the figure, and those between are what it stands against. Where all are alike
// they stand as one against what surrounds them. The wedges come clockwise from the one that points down from the block's upper
// side, as a kind lists them.
func (s *study) wheel(patches []int32) (m member, alternates bool) {
	sides := s.runs(patches)
	if sides == nil {
		return s.alikeWheel(patches), false
	}
	m.closed = len(patches) == s.fullTurn(patches)
	side := map[int32]int{}
	for n, i := range patches {
		for _, f := range s.facesOf([]int32{i}) {
			side[f] = sides[n] % 2
			if sides[n]%2 == 0 {
				m.faces = append(m.faces, f)
			} else {
				m.against = append(m.against, f)
			}
		}
	}
	s.between(&m, side, patches, sides)
	return m, true
}

// between finds the seams between neighbouring runs.
func (s *study) between(m *member, side map[int32]int, round []int32, runs []int) {
	run := map[int]int{}
	for n, i := range round {
		run[int(i)] = runs[n]
	}
	for f := range side {
		for _, i := range s.of[f] {
			one := &s.seams[i]
			g := one.other(f)
			if _, ok := side[g]; !ok || f > g || run[int(s.Faces[f].Patch)] == run[int(s.Faces[g].Patch)] {
				continue
			}
			step := sideOf(one, f)
			if side[f] == 1 {
				step = -step
			}
			m.seams = append(m.seams, outlineSeam{i, step})
		}
	}
	slices.SortFunc(m.seams, func(a, b outlineSeam) int { return cmp.Compare(a.seam, b.seam) })
}

// alikeWheel is a wheel of one cloth, against what surrounds it but for other wheels: two
// that stand side by side touch with their bases.
func (s *study) alikeWheel(patches []int32) member {
	m := s.centred(patches)
	shape := Wheel.shape()
	m.seams = slices.DeleteFunc(m.seams, func(o outlineSeam) bool {
		one := &s.seams[o.seam]
		return s.Patches[s.Faces[one.a].Patch].Shape == shape && s.Patches[s.Faces[one.b].Patch].Shape == shape && !one.strip
	})
	m.against = slices.DeleteFunc(m.against, func(f int32) bool { return s.Patches[s.Faces[f].Patch].Shape == shape })
	return m
}

// runs numbers the runs of neighbours that are cut from the same cloth, from 0; nil where
// all are of one. The last run joins the first where they are alike.
func (s *study) runs(round []int32) []int {
	cloth := make([]string, len(round))
	for n, i := range round {
		p := &s.Patches[i]
		for f := p.First; f < p.First+p.Count; f++ {
			cloth[n] += fmt.Sprint(s.Faces[f].Fabric, " ")
		}
	}
	list := make([]int, len(round))
	for n := 1; n < len(round); n++ {
		list[n] = list[n-1]
		if cloth[n] != cloth[n-1] {
			list[n]++
		}
	}
	last := list[len(list)-1]
	if last == 0 {
		return nil
	}
	if cloth[0] == cloth[len(cloth)-1] {
		for n := range list {
			list[n] %= last
		}
	}
	return list
}
