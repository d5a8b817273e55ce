package main

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/patchwork"
	"eighthturn/sewing"
)

// course is what blocks are sewn into first.
func (p *sewPage) course() string {
	if p.Assembly.ByColumns {
		return "column"
	}
	return "row"
}

// assembly writes how blocks, sashes and borders go together.
func (p *sewPage) assembly() {
	if len(p.Assembly.Parts) > 1 {
		p.heading("Blocks together")
	}
	rows, sashes, seams := 0, 0, 0
	var size sewing.Size
	for _, s := range p.Assembly.Stages {
		switch {
		case s.Sort != sewing.CourseStage:
		case s.Number > 0:
			rows++
			if s.Size.Across.NM+s.Size.Down.NM > size.Across.NM+size.Down.NM {
				size = s.Size
			}
			seams += s.Count
		default:
			sashes++
			seams += s.Count
		}
	}
	if seams > 0 {
		p.item(fmt.Sprintf("Lay all blocks out by their places and turns. Sew the blocks of each %s together: %s, a whole one about %s. Pin where seam lines meet, not raw corners.", p.course(), plural(rows, p.course()), p.size(size)))
	}
	if sashes > 0 {
		p.item(fmt.Sprintf("Between them lie %s; sew those of several pieces together in the same way.", plural(sashes, "row")+" of sashes"))
	}
	for i := range p.Assembly.Stages {
		p.stage(&p.Assembly.Stages[i])
	}
	for range p.Assembly.Loose {
		p.item("A part hangs together with nothing else: places beside it are empty, and no border reaches it.")
	}
}

func (p *sewPage) stage(s *sewing.Stage) {
	switch s.Sort {
	case sewing.CoursesStage:
		p.item(fmt.Sprintf("Sew the %ss together in their order, each to the one before: about %s in all.", p.course(), p.size(s.Size)))
	case sewing.BorderStage:
		how := "the strips at the two sides first, then those above and below across the whole width"
		if s.Count > 4 {
			how = "the strips at the two sides first; sew a square to both ends of the other two, and then those above and below"
		}
		p.item(fmt.Sprintf("Border %d: %s; about %s then.", s.Number, how, p.size(s.Size)))
	}
}

// pressing writes which way the seams between blocks are pressed, and which joints nest.
func (p *sewPage) pressing() {
	if len(p.Assembly.Seams) == 0 {
		return
	}
	p.heading("Pressing, so that seams nest")
	p.courseWays()
	p.longWays()
	g := &p.Pressing
	total := len(g.Joints)
	if total+g.Inside > 0 {
		text := fmt.Sprintf("Seams butt together at %s where blocks meet, and at all of them their allowances lie opposite ways and nest.", plural(total, "place"))
		if g.Nests < total {
			text = fmt.Sprintf("Seams butt together at %s where blocks meet: at %d of them their allowances lie opposite ways and nest.", plural(total, "place"), g.Nests)
		}
		if g.Inside > 0 {
			text += fmt.Sprintf(" Within blocks there are %d more, and all of them nest.", g.Inside)
		}
		p.item(text)
	}
	if g.Nests == total {
		return
	}
	if g.Proved {
		p.item("No other way of pressing lets more of them nest: that is proved.")
	} else {
		p.item(fmt.Sprintf("No way of pressing can let more than %d of them nest: that is proved. A better one than this may exist, but the quilt is too large to try them all.", g.AtMost))
	}
	p.cannot()
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
		text := fmt.Sprintf("It does not nest at %s", p.where(at))
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
		if cell := p.CellOf(p.Pressing.Joints[n].At); cell >= 0 {
			list = append(list, p.Place(cell, p.Pressing.Joints[n].At)+" of "+p.place(cell))
		}
	}
	text := strings.Join(slices.Compact(list), ", ")
	if len(joints) > most {
		text += " and on"
	}
	return text
}

// where says where a point of the top lies.
func (p *sewPage) where(at patchwork.Point) string {
	cell := p.CellOf(at)
	if cell < 0 {
		return "the borders or sashes"
	}
	r := p.Place(cell, at)
	return r + " of " + p.place(cell)
}

// courseWays writes which way the seams within rows or columns are pressed.
func (p *sewPage) courseWays() {
	var to [2][]string
	sash := false
	for _, s := range p.Assembly.Stages {
		if s.Sort != sewing.CourseStage || s.Count == 0 {
			continue
		}
		if s.Number == 0 {
			sash = true
			continue
		}
		way := p.Pressing.Choices[p.Choice(s.First)].Way
		to[way] = append(to[way], fmt.Sprint(s.Number))
	}
	ways := [2]string{"to the right", "to the left"}
	if p.Assembly.ByColumns {
		ways = [2]string{"downwards", "upwards"}
	}
	if p.Sashed() {
		ways = [2]string{"towards the sashes", "towards the blocks"}
	}
	for way, list := range to {
		if len(list) > 0 {
			p.item(fmt.Sprintf("Press the seams between blocks %s in %s %s.", ways[way], someOf(len(list), p.course()), strings.Join(list, " ")))
		}
	}
	if sash {
		p.item("Press the seams between sashes and posts " + p.postWay() + ".")
	}
}

func (p *sewPage) postWay() string {
	for _, s := range p.Assembly.Stages {
		if s.Sort == sewing.CourseStage && s.Number == 0 && s.Count > 0 {
			if p.Pressing.Choices[p.Choice(s.First)].Way == 1 {
				return "towards the posts"
			}
			break
		}
	}
	return "towards the sashes"
}

func someOf(n int, what string) string {
	if n == 1 {
		return what
	}
	return what + "s"
}

// longWays writes which way long seams are pressed.
func (p *sewPage) longWays() {
	count, inwards := 0, 0
	for i := range p.Assembly.Seams {
		c := &p.Pressing.Choices[p.Choice(i)]
		if c.Sort != sewing.SeamChoice {
			continue
		}
		count++
		if !p.Assembly.Seams[i].Press {
			inwards++
		}
	}
	switch {
	case count == 0:
	case inwards == 0:
		p.item(fmt.Sprintf("Press long seams towards the later %s, and those of borders outwards.", p.course()))
	default:
		p.item(fmt.Sprintf("Press long seams towards the later %s and those of borders outwards, but %d as the picture of the borders shows.", p.course(), inwards))
	}
}

// grain writes which edges lie off the straight grain.
func (p *sewPage) grain() {
	p.heading("Edges that stretch")
	said := false
	for i := range p.Blocks {
		said = p.blockGrain(&p.Blocks[i]) || said
	}
	if !said {
		p.item("All edges of blocks lie on the straight grain.")
		return
	}
	p.outsideGrain()
}

// blockGrain writes how the edges of one block lie on the cloth, if they are not straight.
func (p *sewPage) blockGrain(b *sewing.Block) bool {
	names := [4]string{"top", "right", "bottom", "left"}
	var sides []string
	var edge sewing.EdgeGrain
	for i, e := range b.Edges {
		if e.OffGrain+e.Bias > 0 {
			sides, edge = append(sides, names[i]), e
		}
	}
	if len(sides) == 0 {
		return false
	}
	what := fmt.Sprintf("%.2f of each off the grain and the rest straight", float64(edge.OffGrain)/float64(edge.OffGrain+edge.Straight+edge.Bias))
	if edge.Bias > 0 {
		what = fmt.Sprintf("%.2f of each on the bias", float64(edge.Bias)/float64(edge.OffGrain+edge.Straight+edge.Bias))
	}
	p.item(fmt.Sprintf("%s, as its pictures show it: %s edge, %s.", b.Label, listed(sides), what))
	return true
}

// outsideGrain writes which of those edges lie on the outside.
func (p *sewPage) outsideGrain() {
	sides := map[string][]int{}
	for _, o := range p.Grain.Outside {
		sides[o.Side] = append(sides[o.Side], o.Cells...)
	}
	what := "Until the border is on, do not pull at these edges of the field, and sew them without stretching"
	if p.Grain.AtEdge {
		what = "These are edges of the top itself: sew a line just inside the seam allowance before you handle it, and do not pull"
	}
	for _, side := range []string{"top", "right", "bottom", "left", "inside"} {
		if cells := sides[side]; len(cells) > 0 {
			where := side
			if side == "inside" {
				where = "beside empty places"
			}
			p.item(fmt.Sprintf("%s, %s: %s.", what, where, p.places(cells)))
			what = "So too"
		}
	}
}

// bulk writes where cloth grows thick, and what becomes of points.
func (p *sewPage) bulk() {
	p.heading("Thick places and points")
	b := &p.Bulk
	if b.Most == 0 {
		p.item(fmt.Sprintf("Nowhere do more than %d layers lie on each other.", b.Limit))
	} else if len(b.Thick) == 0 {
		p.item(fmt.Sprintf("Nowhere do more than %d layers lie on each other; the most is %d.", b.Limit, b.Most))
	} else {
		p.item(fmt.Sprintf("More than %d layers lie on each other at these points, as allowances are folded (counted, to within one). Trim dog ears there, sew slowly over them, and press the last seam open or turn all allowances one way round if they will not lie flat.", b.Limit))
	}
	for i, t := range b.Thick {
		if i == mostThick {
			p.item("and others with fewer layers")
			break
		}
		p.item(p.thickText(&t))
	}
	for _, s := range b.Points {
		text := fmt.Sprintf("Points of %s: %d of %d keep a seam allowance of cloth all round", s.Shape+"s", s.Keep, s.Count)
		if s.AtEdge > 0 {
			text += fmt.Sprintf("; %d lie on the quilt's outside, right in the binding's seam", s.AtEdge)
		}
		p.item(text + ".")
	}
	for _, n := range b.Blunted {
		if n.Distance > 0 {
			p.item(fmt.Sprintf("%s only %s from the quilt's outside, less than a seam allowance: the binding may blunt them, first at %s.", plural(n.Count, "point")+map[bool]string{true: " lies", false: " lie"}[n.Count == 1], p.text(n.Distance), p.where(n.At[0])))
		}
	}
}

func (p *sewPage) thickText(t *sewing.ThickPoint) string {
	text := fmt.Sprintf("%d layers where %d pieces meet, at %s, first at %s", t.Layers, t.Pieces, plural(t.Count, "point"), p.where(t.At[0]))
	if t.Inside {
		return text
	}
	return text + fmt.Sprintf("; %d with the last seam open, %d turned round", t.Open, t.Round)
}
