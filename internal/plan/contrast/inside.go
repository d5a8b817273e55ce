package contrast

import "slices"

// sides is what the figures make of the faces and seams of a top. A seam inside one figure, or inside the ground that figures
// stand against, need not show: scraps of one value are meant to draw together there.
type sides struct {
	figure  []int32 // by face, the number of its figure from 1 on; 0 for none
	ground  []bool  // by face: a figure stands against it
	last    int32   // figure's number
	outline []bool  // by seam: some figure's outline, a border's and a strip's among them, runs along it
}

func (s *study) newSides() sides {
	return sides{figure: make([]int32, len(s.Faces)), ground: make([]bool, len(s.Faces)), outline: make([]bool, len(s.seams))}
}

// clone is the same for a study beside this one.
func (d *sides) clone() sides {
	return sides{slices.Clone(d.figure), slices.Clone(d.ground), d.last, slices.Clone(d.outline)}
}

// mark notes the outline of figures, and with parts what lies on either side of it.
func (d *sides) mark(members []member, parts bool) {
	for n := range members {
		m := &members[n]
		for _, o := range m.seams {
			d.outline[o.seam] = true
		}
		if !parts {
			continue
		}
		d.last++
		for _, f := range m.faces {
			d.figure[f] = d.last
		}
		for _, f := range m.against {
			d.ground[f] = true
		}
	}
}

// inside says whether a seam lies inside one figure or inside their ground.
func (d *sides) inside(n int, one *seam) bool {
	if d.outline[n] {
		return false
	}
	a, b := d.figure[one.a], d.figure[one.b]
	return a != 0 && a == b || a == 0 && b == 0 && d.ground[one.a] && d.ground[one.b]
}
