package main

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/patchwork"
	"eighthturn/sewing"
)

// block writes how the blocks of one label are made.
func (p *sewPage) block(n int) {
	b := &p.Blocks[n]
	noun := "block"
	if b.Column {
		noun = "column"
	}
	p.heading(fmt.Sprintf("%s, %s: make %s", b.Label, b.Kind, plural(b.Count, noun)))
	if len(b.Steps) == 0 {
		p.detailed("", fmt.Sprintf("A piece of cloth, %s; nothing is sewn.", p.size(b.Unfinished)))
	}
	for i := range b.Steps {
		p.step(b, i)
	}
	if b.Column {
		p.item(fmt.Sprintf("The longest are about %s.", p.size(b.Unfinished)))
	}
	p.rounds(b)
	p.ways(n)
	p.colourings(b)
}

func (p *sewPage) detailed(what, text string) {
	if what != "" {
		what += ": "
	}
	p.write("     ", what+text)
}

// step writes one step.
func (p *sewPage) step(b *sewing.Block, n int) {
	s := &b.Steps[n]
	p.WriteString(wrapped(fmt.Sprintf("%d. %s: make %d", n+1, s.Name, s.Make), "  "))
	p.detail(s.Do)
	for _, text := range p.joinTexts(b, s) {
		p.detail(text)
	}
	if s.Before != nil {
		p.detailed("Trim", fmt.Sprintf("%s It may stand out by up to %s.", s.Trim, p.exact(s.StandsOut)))
	}
	if !b.Column && len(s.Joins) > 0 {
		text := "about " + p.size(s.Unfinished)
		if s.Before != nil && *s.Before != s.Unfinished && p.size(*s.Before) != p.size(s.Unfinished) {
			text += ", before trimming about " + p.size(*s.Before)
		}
		p.detailed("Size", text+".")
	}
	p.detailed("Check", s.Check+".")
}

// joinTexts is what is to be known of a step's seams; what is true of several is said once.
func (p *sewPage) joinTexts(b *sewing.Block, s *sewing.Step) []string {
	var list []string
	joins := s.Joins
	if b.Column {
		joins = joins[:min(1, len(joins))] // all seams of a column are alike, but for their hand
	}
	for i := range joins {
		for _, text := range p.joinText(b, &joins[i]) {
			if !slices.Contains(list, text) {
				list = append(list, text)
			}
		}
	}
	return list
}

// joinText is what is to be known of one seam.
func (p *sewPage) joinText(b *sewing.Block, j *sewing.Join) []string {
	names := [2]string{p.partName(b, j.MadeA, j.A), p.partName(b, j.MadeB, j.B)}
	var list []string
	for e := range j.Ends {
		for part, blunt := range j.Ends[e].Blunted {
			if blunt {
				list = append(list, fmt.Sprintf("Before sewing: cut the sharp corner of the %s off flat, %s beyond its finished point, %s.", names[part], p.text(p.Seam), p.endName(b, j, e)))
			}
		}
	}
	list = append(list, p.offsets(b, j, names)...)
	for e := range j.Ends {
		for part, spare := range j.Ends[e].Spare {
			if spare.NM > 0 && j.Ends[1-e].Spare[part].NM == 0 && j.Ends[1-e].Spare[1-part].NM == 0 && len([2][]int{j.A, j.B}[part]) == 1 {
				list = append(list, fmt.Sprintf("The %s is cut larger: set the corners by that offset %s, and let it stand out %s by up to %s more.", names[part], p.endName(b, j, 1-e), p.endName(b, j, e), p.exact(spare)))
			}
		}
	}
	for e := range j.Ends {
		if j.Ends[e].Partial {
			list = append(list, fmt.Sprintf("Sewn in part: stop %s before the raw edge %s, where the seam line ends, and sew one stitch back.", p.text(p.Seam), p.endName(b, j, e)))
		}
	}
	return list
}

// offsets is by how much raw corners stick out at the ends of a seam.
func (p *sewPage) offsets(b *sewing.Block, j *sewing.Join, names [2]string) []string {
	from, to := j.Ends[0].LeadBlunt, j.Ends[1].LeadBlunt
	says := func(l sewing.Length, where string) string {
		leading := names[1]
		if l.NM < 0 {
			leading = names[0]
		}
		return fmt.Sprintf("Offset: the corner of the %s sticks out by %s %s.", leading, p.exact(l), where)
	}
	switch {
	case from.NM == 0 && to.NM == 0:
		return []string{"Offset: none, the raw corners lie on each other at both ends."}
	case b.Column:
		return []string{fmt.Sprintf("Offset: %s at each end; at one end the upper piece's corner sticks out, at the other the lower piece's.", p.exact(from))}
	case from.NM == to.NM:
		return []string{says(from, "at both ends")}
	}
	return []string{says(from, p.endName(b, j, 0)), says(to, p.endName(b, j, 1))}
}

// partName is what a part of a seam is called.
func (p *sewPage) partName(b *sewing.Block, made int, pieces []int) string {
	if made < 0 || b.Column {
		return p.ShapeName(b, pieces[len(pieces)-1])
	}
	for _, s := range b.Steps {
		for _, j := range s.Joins {
			if j.Number == made {
				if s.Name == "block" {
					return "octagon with its corners"
				}
				return s.Name
			}
		}
	}
	return "unit"
}

// endName is where an end of a seam comes to lie.
func (p *sewPage) endName(b *sewing.Block, j *sewing.Join, e int) string {
	inside := func(at patchwork.Point) bool {
		side := b.Finished.Across.NM
		return at.X > 0 && at.Y > 0 && at.X < side && at.Y < side
	}
	switch from, to := inside(j.From), inside(j.To); {
	case from == to:
		return "at both ends"
	case from == (e == 0):
		return "at the end that comes to lie in the middle of the block"
	}
	return "at the end that comes to lie on the block's edge"
}

// rounds writes what happens in the middle of a block.
func (p *sewPage) rounds(b *sewing.Block) {
	for _, r := range b.Rounds {
		if !r.Turns {
			p.item(fmt.Sprintf("In the middle %d pieces meet; the seams cannot all turn round it: %s. Pressed to one side %d layers lie there at most, with the last seam pressed open %d.", len(r.Pieces), r.WhyNot, r.Without, r.Last))
			continue
		}
		p.item(fmt.Sprintf("In the middle %d pieces meet. Turn all allowances one way round it: %d layers lie there at most. Sewn whole and pressed to one side it would be %d; with the last seam pressed open %d.", len(r.Pieces), r.Layers, r.Without, r.Last))
	}
}

// ways writes how the seams of a block are pressed, for all its places or place by place.
func (p *sewPage) ways(n int) {
	b := &p.Blocks[n]
	for group := range b.Ways {
		words := p.wayWords(b, group)
		var cells [2][]int
		for _, c := range b.Colourings {
			for _, at := range c.Cells {
				way := p.Way(at.Cell, group)
				cells[way] = append(cells[way], at.Cell)
			}
		}
		what := "Press " + p.pressedSeams(b, group)
		switch {
		case len(cells[1]) == 0:
			p.item(what + " " + words[0] + ".")
		case len(cells[0]) == 0:
			p.item(what + " " + words[1] + ".")
		default:
			p.item(fmt.Sprintf("%s %s in %s; %s in %s.", what, words[0], p.places(cells[0]), words[1], p.places(cells[1])))
		}
	}
}

// wayWords is the two ways of a block's choice, by the cloths if every block has the same and
// the choice is about two single pieces.
func (p *sewPage) wayWords(b *sewing.Block, group int) [2]string {
	words := b.Ways[group]
	if len(b.Colourings) != 1 || b.Column || b.Round(group) {
		return words
	}
	cloths := b.Colourings[0].Cloths
	for _, s := range b.Steps {
		for _, j := range s.Joins {
			if j.Choice == group && (len(j.A) > 1 || len(j.B) > 1 || cloths[j.A[0]] == cloths[j.B[0]]) {
				return words
			}
			if j.Choice == group {
				words = [2]string{"towards " + cloths[j.B[0]], "towards " + cloths[j.A[0]]}
			}
		}
	}
	return words
}

// pressedSeams is which seams of a block follow one choice.
func (p *sewPage) pressedSeams(b *sewing.Block, group int) string {
	if len(b.Ways) == 1 {
		return "its seams"
	}
	var names []string
	for _, s := range b.Steps {
		for _, j := range s.Joins {
			if j.Choice == group && !slices.Contains(names, s.Name) {
				names = append(names, s.Name)
			}
		}
	}
	return "the seams of the " + listed(names)
}

// mostColourings is how many ways of colouring a text lists one by one.
const mostColourings = 12

// colourings writes what each block is sewn of, and where it goes.
func (p *sewPage) colourings(b *sewing.Block) {
	if len(b.Colourings) > mostColourings {
		p.item(fmt.Sprintf("%d of them differ in cloth: lay each out by the pictures that --pictures draws, or by the JSON. The first of them:", len(b.Colourings)))
	}
	for i := range b.Colourings[:min(len(b.Colourings), mostColourings)] {
		p.colouring(b, &b.Colourings[i])
	}
}

func (p *sewPage) colouring(b *sewing.Block, c *sewing.Colouring) {
	name := b.Label
	if len(b.Colourings) > 1 {
		name = fmt.Sprintf("%s%d", b.Label, c.Number)
	}
	noun, each := "block", ""
	if b.Column {
		noun = "column"
	}
	if len(c.Cells) > 1 {
		each = " each"
	}
	p.item(fmt.Sprintf("%s: %s of %s%s%s, %s", name, plural(len(c.Cells), noun), listed(clothCounts(c.Cloths)), each, leaning(c), p.turned(c)))
	for _, m := range c.Makes {
		if m.Mirror {
			p.detail(fmt.Sprintf("%s: make %d in this order: %s", b.Steps[m.Step].Name, m.Count, strings.Join(m.Cloths, ", ")))
		}
	}
}

func leaning(c *sewing.Colouring) string {
	if c.Leans == "" {
		return ""
	}
	return ", its first slanted seam falling to the " + c.Leans
}

// turned is where blocks go, by how they are turned.
func (p *sewPage) turned(c *sewing.Colouring) string {
	var parts []string
	for turns := range 4 {
		var cells []int
		for _, at := range c.Cells {
			if at.Turns == turns {
				cells = append(cells, at.Cell)
			}
		}
		if len(cells) > 0 {
			text := p.places(cells)
			if c.Leans == "" && len(c.Cloths) > 1 {
				text = turnWords(turns) + " in " + text
			}
			parts = append(parts, text)
		}
	}
	return strings.Join(parts, "; ")
}

// clothCounts is cloths with how many pieces each gives.
func clothCounts(cloths []string) []string {
	var names, list []string
	counts := map[string]int{}
	for _, c := range cloths {
		if counts[c] == 0 {
			names = append(names, c)
		}
		counts[c]++
	}
	for _, c := range names {
		list = append(list, fmt.Sprintf("%d %s", counts[c], c))
	}
	return list
}
