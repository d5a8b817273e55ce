package contrast

import (
	"fmt"
	"math"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/internal/render/pixels"
	"eighthturn/palettes"
)

// greys is the CIE L* of each pixel of a top's squint picture, as it is shown, and the face that each lies on.
func greys(t *testing.T, top *quilt.Top) (lightness []float64, faces []int32) {
	t.Helper()
	size, err := pixels.SizeOf(top, 240)
	if err != nil {
		t.Fatal(err)
	}
	squinted, err := pixels.Squinting(top, size, pixels.Squint{})
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

// squintDisagrees says how the squint picture parts from a verdict on a figure, "" where it does not.
func squintDisagrees(f *Figure, members []member, lightness []float64, at []int32) string {
	figure, against := map[int32]bool{}, map[int32]bool{}
	for _, m := range whole(members) {
		for _, i := range m.faces {
			figure[i] = true
		}
		for _, i := range m.against {
			against[i] = true
		}
	}
	step := math.Abs(meanOf(lightness, at, figure) - meanOf(lightness, at, against))
	switch {
	case f.Verdict == Reads && step < clearStep/2:
		return fmt.Sprintf("%s reads, and squinted at its mean is %.1f from its ground's", f.Sort, step)
	case f.Verdict == Lost && step > clearStep:
		return fmt.Sprintf("%s is lost, and squinted at its mean is %.1f from its ground's", f.Sort, step)
	}
	return ""
}

// TestTheSquintPictureAgrees with every verdict on figures that are meant as one mass, over all layouts that were judged.
func TestTheSquintPictureAgrees(t *testing.T) {
	tried, noticed := 0, 0
	for _, j := range judges.Some(judgements(t), 16) {
		top := lay.Top(t, judgedText(t, j.file))
		s := newStudy(nil, top, Options{})
		lightness, at := greys(t, top)
		mass := s.newMasses()
		for _, g := range s.found {
			if !g.sort.centred() {
				continue
			}
			for _, members := range g.variants {
				f := s.figure(g.sort, members, mass)
				tried++
				if fault := squintDisagrees(&f, members, lightness, at); fault != "" {
					t.Errorf("%s: %s", j.file, fault)
				}
				if spoilt := f; f.Verdict == Reads || f.Verdict == Lost {
					spoilt.Verdict = map[Verdict]Verdict{Reads: Lost, Lost: Reads}[f.Verdict]
					if squintDisagrees(&spoilt, members, lightness, at) != "" {
						noticed++
					}
				}
			}
		}
	}
	if tried < 10 || noticed < tried*3/4 {
		t.Errorf("%d figures were tried, and the wrong verdict was noticed on %d", tried, noticed)
	}
}
