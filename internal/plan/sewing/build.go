package sewing

import (
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/internal/stop"
)

// Build plans how a top is sewn whose pieces are cut as a cutting plan of it says, unless a sign ends it; nil for none. Of the
// cutting plan it reads the pieces alone. The plan keeps both, which must not be changed.
func Build(sign *stop.Sign, t *quilt.Top, cuts *cutting.Plan, o Options) *Plan {
	p := &Plan{
		sign:  sign,
		Title: t.Title, Units: t.Units, Seam: t.Seam, SideFinished: t.SideFinished,
		Columns: t.Columns, Rows: t.Rows, top: t, cuts: cuts, columnEdges: map[int]*rawEdges{},
	}
	if o.MaxOddCycles == 0 {
		o.MaxOddCycles = 50
	}
	p.sort()
	for i := range p.Blocks {
		p.sign.Look()
		p.rounds(&p.Blocks[i], p.kinds[i])
	}
	p.chooseInBlocks()
	for _, part := range []func(){p.assemble, p.joints, func() { p.press(o) }, p.bulk, p.points, p.grain} {
		p.sign.Look()
		part()
	}
	p.sign = nil
	return p
}

// chooseInBlocks gives every block its choices of pressing.
func (p *Plan) chooseInBlocks() {
	p.Pressing.Cells = make([][]int32, len(p.cells))
	for cell := range p.cells {
		c := &p.cells[cell]
		if c.block < 0 {
			continue
		}
		for group := range p.Blocks[c.block].Pressings {
			p.Pressing.Cells[cell] = append(p.Pressing.Cells[cell], p.choose(Choice{Sort: BlockChoice, Cell: cell, Group: group, Stage: -1, Seam: -1}))
		}
	}
}
