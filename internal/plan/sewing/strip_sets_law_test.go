package sewing_test

import (
	"fmt"
	"math"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
)

// checkSets is the law of strip sets: wherever the seams of two of their wedges butt together, one is pressed towards the wide
// end and the other towards the tip; each wedge is pressed as its set is, or by its place where sets are pressed both ways; and
// as many wedges are pressed each way as are said. The places are found from the seams between the wedges: at each of them two
// fabrics of one wedge meet two of the other.
func checkSets(top *quilt.Top, cuts *cutting.Plan, s *sewing.StripSets) error {
	faces := map[measure.Point]map[int32]bool{}
	for _, seam := range top.Seams {
		for _, at := range [2]measure.Point{seam.From, seam.To} {
			if faces[at] == nil {
				faces[at] = map[int32]bool{}
			}
			faces[at][seam.A], faces[at][seam.B] = true, true
		}
	}
	joints := 0
	for at, list := range faces {
		patches := map[int]int{}
		for f := range list {
			patches[int(top.Faces[f].Patch)]++
		}
		if len(patches) != 2 || len(list) != 4 {
			continue
		}
		joints++
		var ways []int8
		for p := range patches {
			ways = append(ways, s.Way(p))
		}
		if ways[0] == ways[1] || min(ways[0], ways[1]) < 0 {
			return fmt.Errorf("at %v two wedges are pressed %v", at, ways)
		}
	}
	if joints != s.Joints || joints != s.Nests {
		return fmt.Errorf("%d joints, %d of them nest; there are %d", s.Joints, s.Nests, joints)
	}
	return checkSetWedges(top, cuts, s)
}

func checkSetWedges(top *quilt.Top, cuts *cutting.Plan, s *sewing.StripSets) error {
	seen := 0
	for n, set := range s.Sets {
		var count [2]int
		for way, line := range cuts.Sets[n].Lines {
			if line < 0 {
				continue
			}
			for _, patch := range cuts.Lines[line].Patches {
				seen++
				if s.Alternate(patch) != set.Alternate {
					return fmt.Errorf("patch %d is put in its place by its pressing: %v", patch, s.Alternate(patch))
				}
				if first := (s.Way(patch) == sewing.TowardsWideEnd) == (way == 0); set.Alternate && first != (onAxis(&top.Patches[patch]) != (way == 1)) {
					return fmt.Errorf("patch %d is pressed towards its first strip: %v", patch, first)
				}
				if first := (s.Way(patch) == sewing.TowardsWideEnd) == (way == 0); first {
					count[0]++
				} else {
					count[1]++
				}
			}
		}
		if count != set.Wedges {
			return fmt.Errorf("set %d: %v wedges are pressed the two ways, %v are said", n, count, set.Wedges)
		}
		if set.Alternate && min(count[0], count[1]) == 0 && !cuts.Sets[n].Alike {
			return fmt.Errorf("set %d is pressed one way, and said to be pressed both ways", n)
		}
		if !set.Alternate && min(count[0], count[1]) > 0 {
			return fmt.Errorf("set %d is pressed both ways, and that is not said", n)
		}
	}
	for i := range top.Patches {
		if s.Way(i) >= 0 {
			seen--
		} else if s.Alternate(i) {
			return fmt.Errorf("patch %d is of no set", i)
		}
	}
	if seen != 0 {
		return fmt.Errorf("%d wedges more have a set than are pressed", seen)
	}
	return nil
}

// onAxis says whether a wedge is the first or another odd one, going clockwise from the right round its tip: the ways of pressing alternate so.
func onAxis(p *quilt.Patch) bool {
	tip, a, b := p.Outline[0], p.Outline[1], p.Outline[2]
	degrees := math.Atan2(float64(a.Y+b.Y-2*tip.Y), float64(a.X+b.X-2*tip.X)) * 180 / math.Pi
	return int(math.Floor((degrees+360+11.25)/45))%2 == 0
}

func TestStripSetsNest(t *testing.T) {
	tried := 0
	for _, n := range everyPlan() {
		cuts := cutting.Pieces(n.Top, cutting.Options{})
		s := sewing.PressSets(n.Top, cuts)
		if err := checkSets(n.Top, cuts, s); err != nil {
			t.Errorf("%s: %v", n.name, err)
		}
		tried += s.Joints
	}
	if tried == 0 {
		t.Error("no strip seams butt together in any layout")
	}
}

func TestStripSetsCatch(t *testing.T) {
	text := "strip 4\nfabric a #112233\nfabric b #eeeeee\nfabric c #a04030\nstrip-set glow a 2 b rest\nblock A web kites c wedges glow\ngrid\n A A\n A A\n"
	top := lay.Top(t, text)
	cuts := cutting.Pieces(top, cutting.Options{})
	for name, broken := range map[string]func(s *sewing.StripSets){
		"one joint too many":         func(s *sewing.StripSets) { s.Joints++ },
		"one that does not nest":     func(s *sewing.StripSets) { s.Nests-- },
		"wedges counted another way": func(s *sewing.StripSets) { s.Sets[0].Wedges[0]++ },
		"both ways, unsaid":          func(s *sewing.StripSets) { s.Sets[0].Alternate = false },
	} {
		s := sewing.PressSets(top, cuts)
		if err := checkSets(top, cuts, s); err != nil {
			t.Fatal(err)
		}
		broken(s)
		if checkSets(top, cuts, s) == nil {
			t.Errorf("%s is not caught", name)
		}
	}
}
