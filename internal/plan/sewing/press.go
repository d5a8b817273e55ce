package sewing

// press chooses which way every allowance lies.
func (p *Plan) press(o Options) {
	r := &constraintGraph{choices: len(p.Pressing.Choices), max: o.MaxOddCycles, wants: p.customs(), sign: p.sign}
	for i := range p.Pressing.Joints {
		j := &p.Pressing.Joints[i]
		r.constraints = append(r.constraints, constraint{j.A.Choice, j.B.Choice, j.A.Turned != j.B.Turned})
	}
	s := r.solve()
	p.apply(s)
}

// apply writes down what was chosen.
func (p *Plan) apply(s *assignment) {
	g := &p.Pressing
	for i, way := range s.ways {
		if way {
			g.Choices[i].Way = 1
		}
	}
	for i := range g.Joints {
		j := &g.Joints[i]
		if j.Nests = (g.Choices[j.A.Choice].Way == g.Choices[j.B.Choice].Way) == (j.A.Turned == j.B.Turned); j.Nests {
			g.Nests++
		}
	}
	g.AtMost = len(g.Joints) - s.least
	g.Proved = g.AtMost == g.Nests
	for i, n := range s.broken {
		g.Cannot = append(g.Cannot, Cannot{int(n), numbers(s.oddCycles[i])})
	}
	for i := range p.Assembly.Seams {
		seam := &p.Assembly.Seams[i]
		seam.Press = (g.Choices[seam.choice].Way == 0) != seam.towardsA
	}
}

func numbers(list []int32) []int {
	var out []int
	for _, n := range list {
		out = append(out, int(n))
	}
	return out
}

// customs is what custom wants of each choice, above 0 for way 1: allowances towards the
// darker cloth, so that they do not show through; those of long seams and lines as their
// way 0 has it.
func (p *Plan) customs() []float64 {
	light := make([]float64, len(p.top.Fabrics))
	for i := range light {
		light[i] = p.top.Fabrics[i].Colour.Lightness()
	}
	wants := make([]float64, len(p.Pressing.Choices))
	for i := range wants {
		c := &p.Pressing.Choices[i]
		if wants[i] = -1; c.Sort == BlockChoice {
			wants[i] += p.lighter(c, light)
		}
	}
	return wants
}

// lighter is by how much lighter the pieces are on the side to which way 0 of a block's
// choice presses than those on the other, in L*, over all its seams.
func (p *Plan) lighter(c *Choice, light []float64) float64 {
	cell := &p.cells[c.Cell]
	k := p.kinds[cell.block]
	if cell.columns || k.kind.Recipe.Pressing[c.Group].Round {
		return 0
	}
	sum := 0.0
	for i := range k.joins {
		j := &k.joins[i]
		if j.Press != c.Group {
			continue
		}
		b := beside(k.pieces, j.pieces[1], j.seam)
		a := beside(k.pieces, j.pieces[0], j.seam)
		sum += p.lightness(c.Cell, b, light) - p.lightness(c.Cell, a, light)
	}
	return sum
}

// lightness is how light a piece is at its wide end, CIE L*.
func (p *Plan) lightness(cell, piece int, light []float64) float64 {
	return light[p.top.Faces[p.top.Patches[p.patch(cell, piece)].First].Fabric]
}
