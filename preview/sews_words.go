package preview

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/measure"
	"eighthturn/patchwork"
	"eighthturn/sewing"
)

// sewWords puts a sewing plan into words.
type sewWords struct{ *sewing.Plan }

func (p sewWords) text(nm measure.NM) string { return measure.Text(nm, p.Units) }

// exact is a length to a thousandth, and by the nearest mark of a ruler.
func (p sewWords) exact(l sewing.Length) string {
	near, mm := p.text(max(l.Nearest, -l.Nearest)), max(l.Millimetres, -l.Millimetres)
	text := measure.Decimal(max(l.NM, -l.NM), p.Units, 3) + " " + unitName(p.Units)
	switch {
	case l.NM == l.Nearest:
		return near
	case l.Nearest == 0:
		return text + " (a hair)"
	case p.Units == measure.Centimetres:
		return fmt.Sprintf("%s (about %d mm)", text, mm)
	}
	return fmt.Sprintf("%s (about %s or %d mm)", text, near, mm)
}

// size is across by down.
func (p sewWords) size(s sewing.Size) string {
	if s.Across.Nearest == s.Down.Nearest {
		return p.text(s.Across.Nearest) + " square"
	}
	return measure.Number(s.Across.Nearest, p.Units) + " by " + p.text(s.Down.Nearest)
}

// step is what is to be known of a step, line by line.
func (p sewWords) step(b *sewing.Block, s *sewing.Step) []string {
	list := []string{s.Do}
	joins := s.Joins
	if b.Column {
		joins = joins[:min(1, len(joins))] // all seams of a column are alike, but for their hand
	}
	for i := range joins {
		for _, text := range p.join(b, &joins[i]) {
			if !slices.Contains(list, text) {
				list = append(list, text)
			}
		}
	}
	if s.Before != nil {
		list = append(list, fmt.Sprintf("Trim: %s It may stand out by up to %s.", s.Trim, p.exact(s.StandsOut)))
	}
	if !b.Column && len(s.Joins) > 0 {
		text := "Size: about " + p.size(s.Unfinished) + " unfinished"
		if s.Before != nil && p.size(*s.Before) != p.size(s.Unfinished) {
			text += ", before trimming about " + p.size(*s.Before)
		}
		list = append(list, text+".")
	}
	return append(list, "Check: "+s.Check+".")
}

// join is what is to be known of one seam.
func (p sewWords) join(b *sewing.Block, j *sewing.Join) []string {
	names := [2]string{p.part(b, j.MadeA, j.A), p.part(b, j.MadeB, j.B)}
	var list []string
	for e := range j.Ends {
		for part, blunt := range j.Ends[e].Blunted {
			if blunt {
				list = append(list, fmt.Sprintf("Before sewing: cut the sharp corner of the %s off flat, %s beyond its finished point, %s.", names[part], p.text(p.Seam), p.end(b, j, e)))
			}
		}
	}
	list = append(list, p.offsets(b, j, names)...)
	for e := range j.Ends {
		for part, spare := range j.Ends[e].Spare {
			if spare.NM > 0 && j.Ends[1-e].Spare == [2]sewing.Length{} && len([2][]int{j.A, j.B}[part]) == 1 {
				list = append(list, fmt.Sprintf("The %s is cut larger: set the corners by that offset %s, and let it stand out %s by up to %s more.", names[part], p.end(b, j, 1-e), p.end(b, j, e), p.exact(spare)))
			}
		}
		if j.Ends[e].Partial {
			list = append(list, fmt.Sprintf("Sewn in part: stop %s before the raw edge %s, where the seam line ends, and sew one stitch back.", p.text(p.Seam), p.end(b, j, e)))
		}
	}
	return list
}

// offsets is by how much raw corners stick out at the ends of a seam.
func (p sewWords) offsets(b *sewing.Block, j *sewing.Join, names [2]string) []string {
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
	return []string{says(from, p.end(b, j, 0)), says(to, p.end(b, j, 1))}
}

// part is what a part of a seam is called.
func (p sewWords) part(b *sewing.Block, made int, pieces []int) string {
	if made < 0 || b.Column {
		return p.ShapeName(b, pieces[len(pieces)-1])
	}
	for _, s := range b.Steps {
		for _, j := range s.Joins {
			if j.Number == made && s.Name == "block" {
				return "octagon with its corners"
			} else if j.Number == made {
				return s.Name
			}
		}
	}
	return "unit"
}

// end is where an end of a seam comes to lie.
func (p sewWords) end(b *sewing.Block, j *sewing.Join, e int) string {
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

// round is what happens where the pieces of a block meet.
func (p sewWords) round(r *sewing.Round) string {
	if !r.Turns {
		return fmt.Sprintf("In the middle %d pieces meet; the seams cannot all turn round it: %s. Pressed to one side %d layers lie there at most, with the last seam pressed open %d.", len(r.Pieces), r.WhyNot, r.Without, r.Last)
	}
	return fmt.Sprintf("In the middle %d pieces meet. Turn all allowances one way round it: %d layers lie there at most. Sewn whole and pressed to one side it would be %d; with the last seam pressed open %d.", len(r.Pieces), r.Layers, r.Without, r.Last)
}

// mostPlaces is how many places a text lists; the picture lights all of them up.
const mostPlaces = 24

// places is cells by row and column, neighbours of a row in one: r1c2-5.
func (p sewWords) places(cells []int) string {
	if len(cells) > mostPlaces {
		return fmt.Sprintf("%d places, %s first", len(cells), p.place(cells[0]))
	}
	cells = slices.Sorted(slices.Values(cells))
	var list []string
	for i := 0; i < len(cells); {
		j := i + 1
		for j < len(cells) && cells[j] == cells[j-1]+1 && cells[j]%p.Columns != 0 {
			j++
		}
		text := p.place(cells[i])
		if j > i+1 {
			text += fmt.Sprintf("-%d", cells[j-1]%p.Columns+1)
		}
		list = append(list, text)
		i = j
	}
	return strings.Join(list, " ")
}

func (p sewWords) place(cell int) string {
	return fmt.Sprintf("r%dc%d", cell/p.Columns+1, cell%p.Columns+1)
}

// where says where a point of the top lies.
func (p sewWords) where(at patchwork.Point) string {
	cell := p.CellOf(at)
	if cell < 0 {
		return "the borders or sashes"
	}
	return p.Place(cell, at) + " of " + p.place(cell)
}

// turned is where blocks of one colouring go, by how they are turned.
func (p sewWords) turned(c *sewing.Colouring) string {
	turns := [4]string{"as its pictures show it", "turned a quarter clockwise", "turned by half a turn", "turned a quarter anticlockwise"}
	var parts []string
	for n := range turns {
		var cells []int
		for _, at := range c.Cells {
			if at.Turns == n {
				cells = append(cells, at.Cell)
			}
		}
		if len(cells) == 0 {
			continue
		}
		text := p.places(cells)
		if c.Leans == "" && len(c.Cloths) > 1 {
			text = turns[n] + " in " + text
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, "; ")
}

// clothCounts is cloths with how many pieces each gives.
func clothCounts(cloths []string) string {
	var names, list []string
	counts := map[string]int{}
	for _, c := range cloths {
		if counts[c]++; counts[c] == 1 {
			names = append(names, c)
		}
	}
	for _, c := range names {
		list = append(list, fmt.Sprintf("%d %s", counts[c], c))
	}
	return listed(list)
}

// listed joins words as a sentence does.
func listed(words []string) string {
	last := len(words) - 1
	if last < 1 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:last], ", ") + " and " + words[last]
}
