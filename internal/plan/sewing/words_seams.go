package sewing

import (
	"fmt"

	"eighthturn/internal/quilt"
)

// seamLines is what is to be known of the seams of a step.
func (w Words) seamLines(b *Block, s *Step) []string {
	if b.Column {
		return w.columnSeam(s)
	}
	var list []string
	for i := range s.Joins {
		list = append(list, w.seam(b, &s.Joins[i])...)
	}
	return list
}

// columnSeam is what is to be known of the seams of a column: they are all alike but for the
// side to which they fall, those of the end pieces too.
func (w Words) columnSeam(s *Step) []string {
	if len(s.Joins) == 0 {
		return nil
	}
	j := &s.Joins[0]
	high := 0 // the end that lies higher
	if j.To.Y < j.From.Y {
		high = 1
	}
	upper, lower := j.Ends[high].LeadBlunt, j.Ends[1-high].LeadBlunt
	who := func(l Length) string { // B lies below A
		if l.NM > 0 {
			return "the lower piece"
		}
		return "the upper piece"
	}
	return []string{
		fmt.Sprintf("Offset, at every slanted seam, those of the end pieces too: where the seam ends higher up the column, the corner of %s sticks out by %s; where it ends lower down, that of %s by %s.",
			who(upper), w.Offset(upper), who(lower), w.Offset(lower)),
	}
}

// seam is what is to be known of one seam.
func (w Words) seam(b *Block, j *Join) []string {
	names := [2]string{w.PartName(b, j.MadeA, j.A), w.PartName(b, j.MadeB, j.B)}
	var list []string
	for e := range j.Ends {
		for part, blunt := range j.Ends[e].Blunted {
			if blunt {
				list = append(list, fmt.Sprintf("Before sewing: cut the sharp corner of the %s off flat, %s beyond its finished point, %s.", names[part], w.Text(w.Seam), w.end(b, j, e)))
			}
		}
	}
	list = append(list, w.offsets(b, j, names)...)
	for e := range j.Ends {
		for part, spare := range j.Ends[e].Spare {
			if spare.NM > 0 && j.Ends[1-e].Spare[0].NM == 0 && j.Ends[1-e].Spare[1].NM == 0 && len([2][]int{j.A, j.B}[part]) == 1 {
				list = append(list, fmt.Sprintf("The %s is cut larger: set the corners by that offset %s, and let it stand out %s by up to %s more.", names[part], w.end(b, j, 1-e), w.end(b, j, e), w.UpTo(spare)))
			}
		}
	}
	for e := range j.Ends {
		if j.Ends[e].Partial {
			list = append(list, fmt.Sprintf("Sewn in part: stop %s before the cut edge %s, where the seam line ends, and sew one stitch back.", w.Text(w.Seam), w.end(b, j, e)))
		}
	}
	return list
}

// offsets is by how much cut corners stick out at the ends of a seam.
func (w Words) offsets(b *Block, j *Join, names [2]string) []string {
	from, to := j.Ends[0].LeadBlunt, j.Ends[1].LeadBlunt
	says := func(l Length, where string) string {
		leading := names[1]
		if l.NM < 0 {
			leading = names[0]
		}
		return fmt.Sprintf("Offset: the corner of the %s sticks out by %s %s.", leading, w.Offset(l), where)
	}
	switch {
	case from.NM == 0 && to.NM == 0:
		return []string{"Offset: none, the cut corners lie on each other at both ends."}
	case from.NM == to.NM:
		return []string{says(from, "at both ends")}
	}
	return []string{says(from, w.end(b, j, 0)), says(to, w.end(b, j, 1))}
}

// PartName is what a part of a seam is called: a piece by its shape, a unit by its step. Made
// is the join that made it, -1 for a piece.
func (w Words) PartName(b *Block, made int, pieces []int) string {
	if made < 0 || b.Column {
		return w.ShapeName(b, pieces[len(pieces)-1])
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
func (w Words) end(b *Block, j *Join, e int) string {
	inside := func(at quilt.Point) bool {
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
