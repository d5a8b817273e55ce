package main

import (
	"fmt"
	"slices"
	"strings"
)

// assembly writes how blocks, sashes and borders go together.
func (p *sewPage) assembly() {
	if len(p.Assembly.Parts) > 1 {
		p.heading("Blocks together")
	}
	p.lines(p.LinesLine(), p.SashesLine())
	for i := range p.Assembly.Stages {
		p.lines(p.StageLine(&p.Assembly.Stages[i]))
	}
	for n := range p.Assembly.Loose {
		p.item(p.LooseLine(n))
	}
}

// lines writes sentences, but for empty ones.
func (p *sewPage) lines(list ...string) {
	for _, text := range list {
		if text != "" {
			p.item(text)
		}
	}
}

// pressing writes which way the seams between blocks are pressed, and which joints nest.
func (p *sewPage) pressing() {
	if len(p.Assembly.Seams) == 0 {
		return
	}
	p.heading("Pressing, so that seams nest")
	for _, c := range p.LineWays() {
		p.item(c.Text)
	}
	inwards, _ := p.Inwards()
	p.lines(p.LongLine(), inwards, p.JointsLine(), p.InsideLine())
	if p.Pressing.Nests < len(p.Pressing.Joints) {
		p.item(p.ProofLine())
		p.cannot()
	}
}

// mostCannot is how many joints that do not nest are listed.
const mostCannot = 12

// mostThick is how many sorts of thick points are listed.
const mostThick = 6

// cannot lists the joints that do not nest, with the reason.
func (p *sewPage) cannot() {
	for i, c := range p.Pressing.Cannot {
		if i == mostCannot {
			p.item(fmt.Sprintf("and so at %d more", len(p.Pressing.Joints)-p.Pressing.Nests-mostCannot))
			return
		}
		at := p.Pressing.Joints[c.Joint].At
		text := fmt.Sprintf("It does not nest at %s", p.Where(at))
		if len(c.Ring) > 0 {
			text += fmt.Sprintf(": a ring of %s asks for an odd number of changes, so one of them must give way (%s)", plural(len(c.Ring), "joint"), p.ring(c.Ring))
		}
		p.item(text + ". Press the later seam open there, or let the seams lie on each other.")
	}
}

// ring is the cells through which a ring of joints goes, as far as there is room.
func (p *sewPage) ring(joints []int) string {
	const most = 8
	var list []string
	for _, n := range joints[:min(len(joints), most)] {
		if at := p.Pressing.Joints[n].At; p.CellOf(at) >= 0 {
			list = append(list, p.Where(at))
		}
	}
	text := strings.Join(slices.Compact(list), "; ")
	if len(joints) > most {
		text += " and on"
	}
	return text
}

// grain writes which edges lie off the straight grain.
func (p *sewPage) grain() {
	p.heading("Edges that stretch")
	said := false
	for i := range p.Blocks {
		text := p.EdgeLine(&p.Blocks[i])
		p.lines(text)
		said = said || text != ""
	}
	if !said {
		p.item("All edges of blocks lie on the straight grain.")
	}
	for _, s := range p.OutsideLines() {
		p.item(s.Text)
	}
}

// bulk writes where cloth grows thick, and what becomes of points.
func (p *sewPage) bulk() {
	p.heading("Thick places and points")
	b := &p.Bulk
	p.item(p.ThickLine())
	for i := range b.Thick {
		if i == mostThick {
			p.item("and others with fewer layers")
			break
		}
		p.item(p.ThickPointLine(&b.Thick[i]))
	}
	for i := range b.Points {
		p.item(p.PointsLine(&b.Points[i]))
	}
	for i := range b.Blunted {
		p.lines(p.BluntedLine(&b.Blunted[i]))
	}
}
