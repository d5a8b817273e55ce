package contrast

import (
	"fmt"
	"slices"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/palettes"
)

// part is what a fabric plays in a figure.
type part string

const (
	noPart    part = "none"    // it is nowhere in it
	lightSide part = "light"   // it is lighter than all that it stands against
	darkSide  part = "other"   // it stands against something lighter, to which it draws near when it is lightened
	passing   part = "passing" // it passes for the ground that it goes on from, and lightened it no longer does
)

// twoSides are the fabrics on either side of a figure: those that its edge or its masses are made of. Of figures without a light
// side as a whole they are taken seam by seam.
func (s *study) twoSides(f *Figure) (whole [2][]int, seams [][2]int, passes []int) {
	at := func(face int32) int { return int(s.Faces[face].Fabric) }
	edge := func(i int32) { seams = append(seams, [2]int{at(s.seams[i].a), at(s.seams[i].b)}) }
	if f.place[0] == len(s.found) {
		zone := f.Border - 1
		if f.Sort == Sashes {
			zone = inSashes
		}
		for i := range s.seams {
			one := &s.seams[i]
			if a, b := s.zone(one.a), s.zone(one.b); max(a, b) == zone && a != b {
				edge(int32(i))
				if s.continues(one, one.a, one.b) || s.continues(one, one.b, one.a) {
					passes = append(passes, at(one.a), at(one.b))
				}
			}
		}
		return whole, seams, passes
	}
	g := s.found[f.place[0]]
	if f.Sort == ByTurns {
		return g.turns, nil, nil
	}
	variants := g.variants
	if len(variants) <= maxVariants {
		variants = variants[f.place[1]:][:1]
	}
	for _, m := range slices.Concat(variants...) {
		for _, o := range slices.Concat(m.seams, m.rim) {
			edge(o.seam)
		}
		if g.sort.massed() {
			for side, faces := range [2][]int32{m.faces, m.against} {
				for _, face := range faces {
					whole[side] = append(whole[side], at(face))
				}
			}
		}
	}
	return [2][]int{distinct(whole[0]), distinct(whole[1])}, seams, nil
}

// plays is what a fabric plays in a figure.
func (s *study) plays(fabric int, f *Figure) part {
	whole, seams, passes := s.twoSides(f)
	if slices.Contains(passes, fabric) {
		return passing
	}
	plays := noPart
	for _, pair := range seams {
		if pair[0] == pair[1] || !slices.Contains(pair[:], fabric) {
			continue
		}
		other := pair[0] + pair[1] - fabric
		if s.lightness[fabric] <= s.lightness[other] {
			return darkSide
		}
		plays = lightSide
	}
	for side, list := range whole {
		if !slices.Contains(list, fabric) {
			continue
		}
		plays = lightSide
		if slices.ContainsFunc(whole[1-side], func(b int) bool { return s.lightness[fabric] <= s.lightness[b] }) {
			return darkSide
		}
	}
	return plays
}

// blurredIn is how many points of a mass's 100 a fabric may take that is nowhere in the figure: to half-shut eyes it spreads over the
// outer edge of the ground that it lies beside. 1.8 is the most that was seen.
const blurredIn = 3.0

// touched says whether a fabric that is nowhere in a figure did something to it that the blur cannot.
func touched(before, after *Figure) bool {
	if before.Outline.Score != after.Outline.Score || before.Outline.Broken != after.Outline.Broken {
		return true
	}
	return before.Mass != nil && after.Mass != nil && before.Mass.Score-after.Mass.Score > blurredIn
}

// lightened says which figures have a worse verdict once a fabric is lighter by a step, or are touched by one that is nowhere in them,
// and what it plays in them.
func (s *study) lightened(before []Figure, fabric int, by float64) map[part][]string {
	own := s.Fabrics[fabric].Colour
	t := *s.Top
	t.Fabrics = slices.Clone(s.Fabrics)
	t.Fabrics[fabric].Colour = palettes.AtLightness(own, own.Lightness()+by)
	n := s.recoloured(&t)
	after := &Report{Figures: n.figures()}
	worse := map[part][]string{}
	for i := range before {
		f := &before[i]
		is := after.Twin(f)
		if is == nil {
			continue
		}
		p := s.plays(fabric, f)
		fell := rank(is.Verdict) > rank(f.Verdict)
		if p == noPart {
			fell = touched(f, is)
		}
		if fell || f.Rim != nil && rank(is.Rim.Verdict) > rank(f.Rim.Verdict) {
			worse[p] = append(worse[p], fmt.Sprintf("%s, playing %s in %s %d, from %s to %s: %+v and %+v, then %+v and %+v", s.Fabrics[fabric].Name, p, f.Sort, i, f.Verdict, is.Verdict, f.Outline, f.Mass, is.Outline, is.Mass))
		}
	}
	return worse
}

// TestLighterLightsNeverHarm: a fabric that is a light of some figure, made lighter, spoils nothing, and figures that it is nowhere in
// keep their outline, and their mass but for what the blur spreads. What is left out, and counted:
// figures in which the same fabric also stands against something lighter, since there it draws near to that, and a teacher would say
// so; and borders that pass for the ground, since a shade off they are borders that must show.
func TestLighterLightsNeverHarm(t *testing.T) {
	tried, worse := map[part]int{}, map[part]int{}
	all := studied()
	for _, name := range halfOf(all) {
		s, before := all[name].study, all[name].figures
		for f := range s.Fabrics {
			parts := map[part]int{}
			for i := range before {
				parts[s.plays(f, &before[i])]++
			}
			if parts[lightSide] == 0 {
				continue
			}
			for p, n := range parts {
				tried[p] += n
			}
			for p, faults := range s.lightened(before, f, float64(4+11*(f%2))) {
				worse[p] += len(faults)
				for _, fault := range faults {
					if p == lightSide || p == noPart {
						t.Errorf("%s: %s", name, fault)
					}
				}
			}
		}
	}
	t.Logf("figures by the part of what was lightened: %v; those that fell: %v", tried, worse)
	if tried[darkSide]+tried[passing] > tried[lightSide] || tried[lightSide] < judges.Of(60, 500) {
		t.Errorf("too few lights were tried, or too much is left out: %v", tried)
	}
}

// TestLightsMadeDarkAreNoticed: the law catches a light that is made dark, in every sort of figure.
func TestLightsMadeDarkAreNoticed(t *testing.T) {
	for _, file := range []string{"g1", "m03", "m09", "m13", "m16", "m18", "m28"} {
		s := newStudy(nil, lay.Top(t, judgedText(t, file)), Options{})
		light := slices.IndexFunc(s.Fabrics, func(f quilt.Fabric) bool { return f.Colour.Lightness() == slices.Max(s.lightness) })
		if len(s.lightened(s.figures(), light, -60)[lightSide]) == 0 {
			t.Errorf("%s: a light made dark goes unnoticed", file)
		}
	}
}
