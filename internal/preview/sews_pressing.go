package preview

import (
	"fmt"

	"eighthturn/internal/plan/sewing"
)

// pressing is which way the seams between blocks are pressed, and which joints nest.
func (s *sewRows) pressing() section {
	out := section{Title: "Pressing, so that seams nest"}
	if len(s.Assembly.Seams) == 0 {
		return out
	}
	for _, c := range s.LineWays() {
		w := row{Cells: []string{c.Text}}
		for _, n := range c.Stages {
			st := &s.Assembly.Stages[n]
			w.Seams = append(w.Seams, s.seamsFrom(st.First, st.Count)...)
		}
		out.Rows = append(out.Rows, w)
	}
	out.Rows = append(out.Rows, s.longWays()...)
	out.Rows = append(out.Rows, s.nesting()...)
	return out
}

// longWays is which way long seams are pressed.
func (s *sewRows) longWays() []row {
	text := s.LongLine()
	if text == "" {
		return nil
	}
	all, inwards := row{Cells: []string{text}}, row{}
	but, turned := s.Inwards()
	for i := range s.Assembly.Seams {
		if s.Pressing.Choices[s.Choice(i)].Sort == sewing.SeamChoice && s.Assembly.Seams[i].Press {
			all.Seams = append(all.Seams, s.seamsFrom(i, 1)...)
		}
	}
	if but == "" {
		return []row{all}
	}
	for _, i := range turned {
		inwards.Seams = append(inwards.Seams, s.seamsFrom(i, 1)...)
	}
	inwards.Cells = []string{but}
	return []row{all, inwards}
}

// nesting is at how many places seams nest, and where they do not.
func (s *sewRows) nesting() []row {
	g := &s.Pressing
	var list []row
	if text := s.JointsLine(); text != "" {
		list = append(list, row{Cells: []string{text}, Patches: s.joints(func(j *sewing.Joint) bool { return j.Nests })})
	}
	if text := s.InsideLine(); text != "" {
		list = append(list, row{Cells: []string{text}})
	}
	if g.Nests == len(g.Joints) {
		return list
	}
	w := row{Tone: doubtful, Cells: []string{fmt.Sprintf("At %s they do not nest: press the later seam open there, or let the seams lie on each other.", plural(len(g.Joints)-g.Nests, "place"))},
		Under: []string{s.ProofLine()}}
	w.Patches = s.joints(func(j *sewing.Joint) bool { return !j.Nests })
	return append(append(list, w), s.cannot()...)
}

// cannot lists the joints that do not nest, with the reason.
func (s *sewRows) cannot() []row {
	var list []row
	for _, c := range s.Pressing.Cannot[:min(mostRows, len(s.Pressing.Cannot))] {
		w := row{Tone: doubtful, Patches: s.JointPatches(c.Joint), Cells: []string{"It does not nest at " + s.Where(s.Pressing.Joints[c.Joint].At) + "."}}
		if len(c.Ring) > 0 {
			w.Under = []string{fmt.Sprintf("A ring of %s asks for an odd number of changes, so one of them must give way.", plural(len(c.Ring), "joint"))}
		}
		list = append(list, w)
	}
	return list
}
