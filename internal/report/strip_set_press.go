package report

import (
	"fmt"
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
)

// pressSets is how the strip sets are pressed.
func (c *cuts) pressSets() *sewing.StripSets { return sewing.PressSets(c.plans.Top, c.Plan) }

// setPressed says which way the seams of a strip set are pressed.
func (c *cuts) setPressed(p *sewing.StripSets, n int) string {
	set, press := &c.Sets[n], &p.Sets[n]
	if len(set.Bands) < 2 {
		return ""
	}
	seams := "its seam"
	if len(set.Bands) > 2 {
		seams = "its seams"
	}
	toward := c.setEnds(set)
	switch {
	case set.Alike && press.Alternate:
		return "Press " + seams + " in one direction: half of the wedges are then pressed toward the wide end and half toward the tip. Keep the two groups apart."
	case set.Alike:
		return "Press " + seams + " in one direction."
	case !press.Alternate && press.Wedges[1] > 0:
		return "Press " + seams + " toward " + toward[1] + "."
	case !press.Alternate:
		return "Press " + seams + " toward " + toward[0] + "."
	}
	return c.bothWays(n, press, seams)
}

// bothWays says how strip sets are pressed of which some wedges are to be pressed one way and some the other.
func (c *cuts) bothWays(n int, press *sewing.SetPressing, seams string) string {
	set, each := &c.Sets[n], max(1, c.Copies)
	toward := c.setEnds(set)
	wedge, short := c.wedgesName(n, false)+" wedge", ""
	if min(set.Wanted[0], set.Wanted[1]) > 0 { // of both kinds
		wedge, short = "wedge", " Re-press single wedges if either group runs short of one kind."
	}
	first, last := each*press.Wedges[0], each*press.Wedges[1]
	if how := c.halfEachWay(n, press, seams); how != "" && first == last {
		return fmt.Sprintf("%s: you need %s of each. Keep the two groups apart.", how, measure.Count(first, wedge))
	}
	if len(set.Runs) > 1 || first != last {
		return fmt.Sprintf("Press %s toward %s for %s and toward %s for %d: press each set one way, and one set in part each way if needed.%s Keep the two groups apart.",
			seams, toward[0], measure.Count(first, wedge), toward[1], last, short)
	}
	how := fmt.Sprintf("Press %s toward %s in half of the sets and toward %s in the other half", seams, toward[0], toward[1])
	switch sets := set.Runs[0].Sets; {
	case sets == 1:
		how = fmt.Sprintf("Press %s toward %s in one half of the set and toward %s in the other", seams, toward[0], toward[1])
	case sets%2 == 1:
		how = fmt.Sprintf("Press %s toward %s in %d of the sets, toward %s in %d, and half each way in one", seams, toward[0], sets/2, toward[1], sets/2)
	}
	return fmt.Sprintf("%s: you need %s of each.%s Keep the two groups apart.", how, measure.Count(first, wedge), short)
}

// halfEachWay is how sets of several lengths are pressed half one way and half the other; "" where whole sets, with one
// divided set at most, do not come to that.
func (c *cuts) halfEachWay(n int, press *sewing.SetPressing, seams string) string {
	set, toward, sets, alike := &c.Sets[n], c.setEnds(&c.Sets[n]), 0, true
	if len(set.Runs) < 2 || min(set.Wanted[0], set.Wanted[1]) > 0 {
		return ""
	}
	gives := make([]int, len(set.Runs)) // of the wedges that are wanted, from each set
	for i, r := range set.Runs {
		first := r.FirstReversed == r.Sets // a reversed wedge, in each of them
		if !first && r.FirstReversed > 0 {
			return ""
		}
		gives[i] = r.Wedges / 2
		if first == (set.Wanted[0] == 0) {
			gives[i] = (r.Wedges + 1) / 2
		}
		sets, alike = sets+r.Sets, alike && gives[i] == gives[0]
	}
	need, long, short := max(1, c.Copies)*press.Wedges[0], &set.Runs[0], &set.Runs[1]
	switch {
	case alike && sets%2 == 0 && sets/2*gives[0] >= need:
		return fmt.Sprintf("Press %s toward %s in %s and toward %s in the other %d", seams, toward[0], measure.Count(sets/2, "set"), toward[1], sets/2)
	case len(set.Runs) == 2 && long.Sets%2 == 0 && short.Sets == 1 && long.Sets/2*gives[0]+gives[1]/2 >= need:
		return fmt.Sprintf("Press %s toward %s in %d of the sets %s long, toward %s in the other %d, and half each way in the set %s long",
			seams, toward[0], long.Sets/2, c.Units.AtLeast(long.LengthCut), toward[1], long.Sets/2, c.Units.AtLeast(short.LengthCut))
	}
	return ""
}

// setEnds is what the first and the last strip of a set are called.
func (c *cuts) setEnds(set *cutting.StripSet) [2]string {
	first, last := c.name(set.Bands[0].Fabric), c.name(set.Bands[len(set.Bands)-1].Fabric)
	if first == last {
		return [2]string{"the first strip", "the last strip"}
	}
	return [2]string{first, last}
}

// setPressedShort is the same in a table.
func (c *cuts) setPressedShort(p *sewing.StripSets, n int) string {
	set, press := &c.Sets[n], &p.Sets[n]
	toward := c.setEnds(set)
	switch {
	case len(set.Bands) < 2:
		return ""
	case set.Alike:
		return "one way"
	case press.Alternate:
		return fmt.Sprintf("%s for %d wedges, %s for %d", toward[0], max(1, c.Copies)*press.Wedges[0], toward[1], max(1, c.Copies)*press.Wedges[1])
	case press.Wedges[1] > 0:
		return toward[1]
	}
	return toward[0]
}

// stripWays says which wedges of strip sets a block takes where, by how they are pressed; nil where that makes no difference.
func (s *sewer) stripWays(b *sewing.Block) []document.Block {
	if b.Column || len(s.top.CutFacts.Sets) == 0 {
		return nil
	}
	ways, asked := s.pieceWays(b)
	if !asked {
		return nil
	}
	text := "Where two wedges lie side by side, press the strip seam of one toward its wide end and that of the other toward its tip, so that they nest"
	var steps []string
	for i := range b.Steps {
		if step := s.stripStep(b, &b.Steps[i], ways); step != "" {
			steps = append(steps, fmt.Sprintf("%s in step %d", step, i+1))
		}
	}
	if len(steps) > 0 {
		text += ": use " + measure.List(steps)
	}
	return []document.Block{para("%s.", text)}
}

// pieceWays is how the strip seams of a block's pieces are pressed, where they are pressed alike in all blocks of the label, and
// whether the sewer has to put any of them in their places by that.
func (s *sewer) pieceWays(b *sewing.Block) (ways []int8, asked bool) {
	const unknown = sewing.NoStripSeams - 1
	ways = slices.Repeat([]int8{unknown}, len(b.Variants[0].Cloths))
	for i := range b.Variants {
		for _, at := range b.Variants[i].Cells {
			for piece, patch := range at.Patches {
				way := s.stripSets().Way(int(patch))
				asked = asked || s.stripSets().Alternate(int(patch))
				switch {
				case way == sewing.NoStripSeams || ways[piece] == way:
				case ways[piece] == unknown:
					ways[piece] = way
				default:
					ways[piece] = sewing.NoStripSeams
				}
			}
		}
	}
	return ways, asked
}

// stripStep says which wedges a step takes, by how their strip seams are pressed; "" where it takes none, or not always the same.
func (s *sewer) stripStep(b *sewing.Block, step *sewing.Step, ways []int8) string {
	toward := [2]string{"toward the wide end", "toward the tip"}
	var sides [2][]int8 // of wedges that are sewn on by themselves, A's and B's
	for _, j := range step.Joins {
		for side, pieces := range [2][]int{j.A, j.B} {
			if len(pieces) == 1 && ways[pieces[0]] >= 0 {
				sides[side] = append(sides[side], ways[pieces[0]])
			} else if len(pieces) == 1 && s.Shape(b, pieces[0]).Description().Gathers == blocks.WebCentre { // a wedge of one fabric
				return ""
			}
		}
	}
	a, other := slices.Compact(sides[0]), slices.Compact(sides[1])
	switch {
	case len(a) == 1 && len(other) == 1 && a[0] != other[0]:
		return "tips down, a wedge pressed " + toward[a[0]] + " on the left and one pressed " + toward[other[0]] + " on the right"
	case len(a)+len(other) == 1:
		return "wedges pressed " + toward[slices.Concat(a, other)[0]]
	}
	return ""
}

// stripSets is how the strip sets are pressed.
func (s *sewer) stripSets() *sewing.StripSets {
	if s.sets == nil {
		s.sets = sewing.PressSets(s.top, s.plans.Pieces())
	}
	return s.sets
}
