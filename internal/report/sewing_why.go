package report

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
)

// judged is how the plan was judged: what calls for nothing, what is proved, and exact lengths.
func (s *sewer) judged() document.Section {
	var list sentences
	if n := s.Pressing.Inside; n > 0 {
		list.add(fmt.Sprintf("Within blocks, seams meet at %s, and all of them nest.", measure.Count(n, "place")), document.About{})
	}
	if s.Pressing.Nests < len(s.Pressing.Joints) {
		list.add(s.proof(), document.About{})
		for _, c := range s.Pressing.Cannot[:min(maxListed, len(s.Pressing.Cannot))] {
			list.add(s.oddCycle(&c), document.About{Patches: s.JointPatches(c.Joint)})
		}
	}
	s.layers(&list)
	for i := range s.Blocks {
		list.add(s.edgeWords(&s.Blocks[i], true), document.About{Patches: s.wholeBlock(&s.Blocks[i])})
	}
	for i := range s.Bulk.Points {
		if p := &s.Bulk.Points[i]; p.Keep == p.Count {
			list.add(points(p), document.About{})
		}
	}
	out := document.Section{ID: "judged", Title: "How this was worked out", Depth: document.Why, Blocks: list.blocks()}
	if t := s.exact(); len(t.Rows) > 0 {
		out.Blocks = append(out.Blocks, t)
	}
	return out
}

// proof says whether more joints could nest.
func (s *sewer) proof() string {
	if s.Pressing.Proved {
		return "No other pressing plan makes more of them nest; this is proved."
	}
	return fmt.Sprintf("No pressing plan can make more than %d of them nest; this is proved. A better plan than this one may exist, but the quilt is too large to try them all.", s.Pressing.AtMost)
}

// oddCycle says why a joint does not nest; "" where no reason was found.
func (s *sewer) oddCycle(c *sewing.Cannot) string {
	if len(c.OddCycle) == 0 {
		return ""
	}
	const most = 8
	var list []string
	for _, n := range c.OddCycle[:min(len(c.OddCycle), most)] {
		if at := s.Pressing.Joints[n].At; s.CellOf(at) >= 0 {
			list = append(list, s.where(at))
		}
	}
	text := strings.Join(slices.Compact(list), "; ")
	if len(c.OddCycle) > most {
		text += " and on"
	}
	return fmt.Sprintf("At %s: a ring of %s needs an odd number of changes, so one of them must give way (%s).", s.where(s.Pressing.Joints[c.Joint].At), measure.Count(len(c.OddCycle), "joint"), text)
}

// layers says how many layers lie where seams meet, where nothing has to be done about it.
func (s *sewer) layers(list *sentences) {
	for i := range s.Blocks {
		b := &s.Blocks[i]
		for n := range b.Rounds {
			if r := &b.Rounds[n]; r.Turns {
				list.add(fmt.Sprintf("At the center of %s: no more than %d layers with the seams spun; sewn in full and pressed to one side, there would be %d%s.", b.Label, r.Layers, r.Without, lastOpen(r)), document.About{Patches: s.patchesOf(b, r.Pieces)})
			} else {
				list.add(fmt.Sprintf("At the center of %s: no more than %d layers pressed to one side%s.", b.Label, r.Without, lastOpen(r)), document.About{Patches: s.patchesOf(b, r.Pieces)})
			}
		}
	}
	switch b := &s.Bulk; {
	case b.Most == 0:
		list.add(fmt.Sprintf("There are never more than %d layers.", b.Limit), document.About{})
	case len(b.Thick) == 0:
		list.add(fmt.Sprintf("There are never more than %d layers; the most is %d.", b.Limit, b.Most), document.About{})
	default:
		list.add(fmt.Sprintf("Points are called bulky above %d layers, counting folded allowances, to within one.", b.Limit), document.About{})
		for i := range b.Thick[:min(maxListed, len(b.Thick))] {
			list.add(s.thickLayers(&b.Thick[i]), document.About{Patches: s.patchesAt(b.Thick[i].At)})
		}
	}
}

// exact is the lengths that are rounded in the steps, with their decimals.
func (s *sewer) exact() document.Table {
	t := document.Table{Caption: document.Plain("Exact lengths, " + s.units.String()), Named: true,
		Columns: []document.Column{{Title: "Step"}, {Title: "Offsets", Kind: document.Lengths}, {Title: "To trim", Kind: document.Lengths}, {Title: "Unfinished", Kind: document.Lengths}}}
	decimal := func(nm measure.NM) string { return measure.Decimal(nm, s.units, 3) }
	for i := range s.Blocks {
		b := &s.Blocks[i]
		for n := range b.Steps {
			step := &b.Steps[n]
			if len(step.Joins) == 0 || b.Column {
				continue
			}
			var offsets []string
			for _, j := range step.Joins {
				for _, e := range j.Ends {
					if text := decimal(max(e.LeadBlunt, -e.LeadBlunt)); !slices.Contains(offsets, text) {
						offsets = append(offsets, text)
					}
				}
			}
			trim := ""
			if step.StandsOut > 0 {
				trim = decimal(step.StandsOut)
			}
			t.Rows = append(t.Rows, document.Row{Cells: cells(fmt.Sprintf("%s, step %d", b.Label, n+1), strings.Join(offsets, " and "), trim, exactSize(step, decimal)),
				About: document.About{Patches: s.stepPatches(b, step)}})
		}
	}
	return t
}

// exactSize is what a ruler measures of a step's unit, with its decimals.
func exactSize(step *sewing.Step, decimal func(measure.NM) string) string {
	if step.CheckSizes[1].Length == 0 {
		return decimal(step.CheckSizes[0].Length)
	}
	return decimal(step.CheckSizes[0].Length) + " by " + decimal(step.CheckSizes[1].Length)
}
