package contrast

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/render/pixels"
	"eighthturn/palettes"
)

// greys is the CIE L* of each pixel of a top's squint picture, as it is shown in the most steps that it has, cut where its values part, and the face that each lies on.
func greys(t *testing.T, top *quilt.Top) (lightness []float64, faces []int32) {
	t.Helper()
	size, err := pixels.SizeOf(top, 240)
	if err != nil {
		t.Fatal(err)
	}
	squinted, err := pixels.Squinting(top, size, pixels.Squint{Steps: 5, Relative: true})
	if err != nil {
		t.Fatal(err)
	}
	for y := range size.Height {
		for x := range size.Width {
			r, g, b, _ := squinted.Picture.At(x, y).RGBA()
			lightness = append(lightness, palettes.Colour{R: uint8(r >> 8), G: uint8(g >> 8), B: uint8(b >> 8)}.Lightness())
		}
	}
	return lightness, pixels.FaceAt(top, size)
}

// meanOf is the mean of a picture over faces.
func meanOf(lightness []float64, at []int32, faces map[int32]bool) float64 {
	sum, n := 0.0, 0
	for i, f := range at {
		if faces[f] {
			sum += lightness[i]
			n++
		}
	}
	return sum / float64(max(1, n))
}

// squintDisagrees says how the squint picture parts from a verdict on a figure that is meant as a mass, "" where it does not. Many
// colourings that were drawn together may be lighter than their ground in one and darker in the next: each has its own step, and it
// weighs as much as it has figures.
func squintDisagrees(f *Figure, sides []twoMasses, lightness []float64, at []int32) string {
	step, count := 0.0, 0
	for _, s := range sides {
		step += float64(s.count) * math.Abs(meanOf(lightness, at, s.own)-meanOf(lightness, at, s.against))
		count += s.count
	}
	step /= float64(max(1, count))
	switch {
	case (f.Verdict == Reads || f.Verdict == FromAfarOnly) && step < clearStep/2:
		return fmt.Sprintf("%s %v: %s, and squinted at its mean is %.1f from its ground's", f.Sort, f.place, f.Verdict, step)
	case f.Verdict == Lost && step > clearStep:
		return fmt.Sprintf("%s %v is lost, and squinted at its mean is %.1f from its ground's", f.Sort, f.place, step)
	}
	return ""
}

// twoMasses are the faces of figures of one colouring and those that they stand against.
type twoMasses struct {
	own, against map[int32]bool
	count        int // figures
}

// bothSides are the two sides of a figure: of each of its colourings where many are drawn together.
func (s *study) bothSides(f *Figure) (list []twoMasses) {
	g := s.found[f.place[0]]
	if f.Sort == ByTurns {
		return []twoMasses{s.turnsOf(g)}
	}
	for n, members := range g.variants {
		if n != f.place[1] && len(g.variants) <= maxVariants {
			continue
		}
		one := twoMasses{map[int32]bool{}, map[int32]bool{}, len(members)}
		for _, m := range whole(members) {
			mark(one.own, m.faces)
			mark(one.against, m.against)
		}
		list = append(list, one)
	}
	return list
}

// turnsOf are the faces of two sorts of figures that take turns.
func (s *study) turnsOf(g group) twoMasses {
	one := twoMasses{map[int32]bool{}, map[int32]bool{}, 1}
	for _, members := range g.variants {
		to := one.own
		if _, fabrics, _ := s.colouring(&members[0]); slices.Equal(fabrics, g.turns[1]) {
			to = one.against
		}
		for _, m := range whole(members) {
			mark(to, m.faces)
		}
	}
	return one
}

// mark marks faces.
func mark(marked map[int32]bool, faces []int32) {
	for _, i := range faces {
		marked[i] = true
	}
}

// TestTheSquintPictureAgrees with every verdict on figures that are meant as one mass, over all layouts that were judged, and on
// invented ones; and a verdict that is turned round is noticed. Left out, and counted, are figures that are darker along one part of
// their edge and lighter along about a third of that or more: in their mean both cancel out.
func TestTheSquintPictureAgrees(t *testing.T) {
	tried, noticed, mixed := 0, 0, 0
	all := studied()
	for _, name := range halfOf(all) {
		s := all[name].study
		lightness, at := greys(t, s.Top)
		for _, f := range all[name].figures {
			if f.Mass == nil {
				continue
			}
			if f.Outline.Length > 0 && f.Outline.Polarity < 0.51 {
				mixed++
				continue
			}
			sides := s.bothSides(&f)
			tried++
			if fault := squintDisagrees(&f, sides, lightness, at); fault != "" {
				t.Errorf("%s: %s: %+v %+v", name, fault, f.Outline, f.Mass)
			}
			if other := map[Verdict]Verdict{Reads: Lost, Lost: Reads}[f.Verdict]; other != "" {
				f.Verdict = other
				if squintDisagrees(&f, sides, lightness, at) != "" {
					noticed++
				}
			}
		}
	}
	t.Logf("%d figures were tried, and the wrong verdict was noticed on %d; %d are dark and light", tried, noticed, mixed)
	if mixed > tried/7 || tried < judges.Of(15, 100) || noticed < tried/2 {
		t.Errorf("%d figures were tried, and the wrong verdict was noticed on %d", tried, noticed)
	}
}
