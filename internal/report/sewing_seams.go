package report

import (
	"fmt"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
)

// seamLines is what is to be known of the seams of a step.
func (s *sewer) seamLines(b *sewing.Block, step *sewing.Step) []document.Text {
	if b.Column {
		return s.columnSeam(step)
	}
	var list []document.Text
	for i := range step.Joins {
		list = append(list, s.seam(b, &step.Joins[i])...)
	}
	return list
}

// columnSeam is what is to be known of the seams of a column: they are all alike but for the side to which they fall, those
// of the end pieces too.
func (s *sewer) columnSeam(step *sewing.Step) []document.Text {
	far := step.Joins[0].Ends[0].LeadBlunt // at the other end it is as much the other way
	return []document.Text{lead("Offset:", "at both ends of every slanted seam, let the sharp corner of one piece extend %s past the blunt corner of the other.", s.offset(far))}
}

// offset is by how much one corner leads another.
func (s *sewer) offset(l measure.NM) string { return s.units.Offset(max(l, -l)) }

// seam is what is to be known of one seam.
func (s *sewer) seam(b *sewing.Block, j *sewing.Join) []document.Text {
	names := [2]string{s.partName(b, j.MadeA, j.A), s.partName(b, j.MadeB, j.B)}
	var list []document.Text
	for e := range j.Ends {
		for part, blunt := range j.Ends[e].Blunted {
			if blunt {
				list = append(list, lead("Before sewing:", "%s, cut the tip of the %s off square, %s from its point (%s beyond the seam point).", s.end(b, j, e), names[part], s.units.Nearest(j.Ends[e].Off[part]), s.units.Nearest(s.Seam)))
			}
		}
	}
	list = append(list, s.offsets(b, j, names)...)
	for e := range j.Ends {
		if j.Ends[e].Partial {
			list = append(list, lead("Partial seam:", "stop %s from the raw edge %s, where the seam line ends, and backstitch.", s.units.Nearest(s.Seam), s.end(b, j, e)))
		}
	}
	return list
}

// offsets is by how much cut corners stick out at the ends of a seam. At an end where one piece is oversize and its corner is
// not, it is matched at the other end only.
func (s *sewer) offsets(b *sewing.Block, j *sewing.Join, names [2]string) []document.Text {
	from, to := j.Ends[0].LeadBlunt, j.Ends[1].LeadBlunt
	says := func(l measure.NM, where string) document.Text {
		if l == 0 {
			return lead("Offset:", "none %s.", where)
		}
		leading := names[1]
		if l < 0 {
			leading = names[0]
		}
		leading = strings.TrimPrefix(leading, "corner ") // of a corner triangle
		return lead("Offset:", "let the corner of the %s extend %s beyond the edge %s.", leading, s.offset(l), where)
	}
	for e := range j.Ends {
		for part, spare := range j.Ends[e].Spare {
			if spare > 0 && j.Ends[1-e].Spare == [2]measure.NM{} && len([2][]int{j.A, j.B}[part]) == 1 {
				over := fmt.Sprintf(" %s the %s is oversize: let the excess, %s, hang over.", capital(s.end(b, j, e)), names[part], atMost(s.units.Nearest(spare)))
				return []document.Text{append(says(j.Ends[1-e].LeadBlunt, s.end(b, j, 1-e)), document.Run{Text: over})}
			}
		}
	}
	switch {
	case from == 0 && to == 0:
		return []document.Text{lead("Offset:", "none; the corners match at both ends.")}
	case from == to:
		return []document.Text{says(from, "at both ends")}
	}
	return []document.Text{says(from, s.end(b, j, 0)), says(to, s.end(b, j, 1))}
}

// partName is what a part of a seam is called: a piece by its shape, a unit by its step. Made is the join that made it, -1
// for a piece.
func (s *sewer) partName(b *sewing.Block, made int, pieces []int) string {
	if made < 0 || b.Column {
		return s.Shape(b, pieces[len(pieces)-1]).String()
	}
	for i := range b.Steps {
		for _, j := range b.Steps[i].Joins {
			if j.Number == made && i == len(b.Steps)-1 {
				return "octagon with its corners"
			} else if j.Number == made {
				return b.Steps[i].Name
			}
		}
	}
	return "unit"
}

// end is where an end of a seam comes to lie.
func (s *sewer) end(b *sewing.Block, j *sewing.Join, e int) string {
	inside := func(at measure.Point) bool {
		side := b.Finished.Across
		return at.X > 0 && at.Y > 0 && at.X < side && at.Y < side
	}
	switch from, to := inside(j.From), inside(j.To); {
	case from == to:
		return "at both ends"
	case from == (e == 0):
		return "at the center end"
	}
	return "at the outer end"
}
