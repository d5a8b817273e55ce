package preview

import (
	"fmt"
	"strings"

	"eighthturn/sewing"
)

// pressing is which way the seams between blocks are pressed, and which joints nest.
func (s *sewRows) pressing() section {
	out := section{Title: "Pressing, so that seams nest"}
	if len(s.Assembly.Seams) == 0 {
		return out
	}
	out.Rows = append(s.courseWays(), s.longWays()...)
	return section{Title: out.Title, Rows: append(out.Rows, s.nesting()...)}
}

// courseWays is which way the seams within rows or columns are pressed.
func (s *sewRows) courseWays() []row {
	var to [2][]string
	var seams [2][]int
	var posts row
	for _, st := range s.Assembly.Stages {
		if st.Sort != sewing.CourseStage || st.Count == 0 {
			continue
		}
		way := s.Pressing.Choices[s.Choice(st.First)].Way
		sewn := s.seamsFrom(st.First, st.Count)
		if st.Number == 0 {
			posts.Cells = []string{"Press the seams between sashes and posts " + [2]string{"towards the sashes.", "towards the posts."}[way]}
			posts.Seams = append(posts.Seams, sewn...)
			continue
		}
		to[way], seams[way] = append(to[way], fmt.Sprint(st.Number)), append(seams[way], sewn...)
	}
	ways := [2]string{"to the right", "to the left"}
	if s.Assembly.ByColumns {
		ways = [2]string{"downwards", "upwards"}
	}
	if s.Sashed() {
		ways = [2]string{"towards the sashes", "towards the blocks"}
	}
	var list []row
	for way, numbers := range to {
		if len(numbers) > 0 {
			what, _ := strings.CutPrefix(plural(len(numbers), s.course()), fmt.Sprint(len(numbers), " "))
			list = append(list, row{Cells: []string{fmt.Sprintf("Press the seams between blocks %s in %s %s.", ways[way], what, strings.Join(numbers, " "))}, Seams: seams[way]})
		}
	}
	if posts.Cells != nil {
		list = append(list, posts)
	}
	return list
}

// longWays is which way long seams are pressed.
func (s *sewRows) longWays() []row {
	inwards, all := row{}, row{Cells: []string{fmt.Sprintf("Press long seams towards the later %s, and those of borders outwards.", s.course())}}
	count := 0
	for i := range s.Assembly.Seams {
		if s.Pressing.Choices[s.Choice(i)].Sort != sewing.SeamChoice {
			continue
		}
		count++
		if s.Assembly.Seams[i].Press {
			all.Seams = append(all.Seams, s.seamsFrom(i, 1)...)
		} else {
			inwards.Seams = append(inwards.Seams, s.seamsFrom(i, 1)...)
			inwards.Cells = []string{"But press these the other way, as the picture of the borders shows."}
		}
	}
	switch {
	case count == 0:
		return nil
	case inwards.Cells != nil:
		return []row{all, inwards}
	}
	return []row{all}
}

// nesting is at how many places seams nest, and where they do not.
func (s *sewRows) nesting() []row {
	g := &s.Pressing
	total := len(g.Joints)
	var list []row
	if total > 0 {
		w := row{Cells: []string{fmt.Sprintf("Seams butt together at %s where blocks meet, and at all of them their allowances lie opposite ways and nest.", plural(total, "place"))}}
		if g.Nests < total {
			w.Cells[0] = fmt.Sprintf("Seams butt together at %s where blocks meet: at %d of them their allowances lie opposite ways and nest.", plural(total, "place"), g.Nests)
		}
		w.Patches = s.joints(func(j *sewing.Joint) bool { return j.Nests })
		list = append(list, w)
	}
	if g.Inside > 0 {
		list = append(list, row{Cells: []string{fmt.Sprintf("Within blocks there are %d more, and all of them nest.", g.Inside)}})
	}
	if g.Nests == total {
		return list
	}
	w := row{Tone: doubtful, Cells: []string{fmt.Sprintf("At %s they do not nest: press the later seam open there, or let the seams lie on each other.", plural(total-g.Nests, "place"))},
		Under: []string{fmt.Sprintf("No way of pressing can let more than %d of them nest: that is proved. A better one than this may exist, but the quilt is too large to try them all.", g.AtMost)}}
	if g.Proved {
		w.Under[0] = "No other way of pressing lets more of them nest: that is proved."
	}
	w.Patches = s.joints(func(j *sewing.Joint) bool { return !j.Nests })
	return append(append(list, w), s.cannot()...)
}

// cannot lists the joints that do not nest, with the reason.
func (s *sewRows) cannot() []row {
	var list []row
	for _, c := range s.Pressing.Cannot[:min(mostRows, len(s.Pressing.Cannot))] {
		w := row{Tone: doubtful, Patches: s.JointPatches(c.Joint), Cells: []string{"It does not nest at " + s.where(s.Pressing.Joints[c.Joint].At) + "."}}
		if len(c.Ring) > 0 {
			w.Under = []string{fmt.Sprintf("A ring of %s asks for an odd number of changes, so one of them must give way.", plural(len(c.Ring), "joint"))}
		}
		list = append(list, w)
	}
	return list
}
