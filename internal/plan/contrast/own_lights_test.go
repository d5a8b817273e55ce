package contrast

import (
	"math"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/palettes"
)

// TestPiecesHaveTheirOwnLight: a piece is as light as the part of the print that it shows, not as the print is in the mean; a seam on it is
// judged by that, and another color for the print is all there is once that is tried. Half of black and half of white is the lightness of
// half of the light, 76 (CIE 15:2004).
func TestPiecesHaveTheirOwnLight(t *testing.T) {
	top := lay.Top(t, "side 3\nfabric deck stripes black 5 white 5\nfabric gray #777777\nmotif night deck across 2 1/2 down 0\nmotif day deck across 7 1/2 down 0\nmotif both deck across 5 down 0\n"+
		"block N plain piece night\nblock D plain piece day\nblock B plain piece both\nblock G plain piece gray\ngrid\n  N G D\n  G B G\n")
	s := newStudy(nil, top, Options{Prints: photographed(top)})
	want := []float64{0, 50, 100, 50, 76, 50}
	for i, w := range want {
		if got := s.light(int32(i)); math.Abs(got-w) > 1.5 {
			t.Errorf("face %d has L* %.1f, not %.0f", i, got, w)
		}
	}
	if mean := s.lightness[0]; math.Abs(mean-76) > 0.5 {
		t.Errorf("the print has L* %.1f in the mean", mean)
	}
	steps := map[int]bool{}
	for i := range s.seams {
		steps[int(math.Round(s.seams[i].step/10))] = true
	}
	if !steps[-5] || !steps[5] {
		t.Errorf("seams do not go by the pieces' own lights: %v", steps)
	}
	tried := s.recoloured(Tried(top, []Try{{Fabric: 0, Colour: top.Fabrics[1].Colour}}))
	for i := range want {
		if got := tried.light(int32(i)); math.Abs(got-50) > 0.5 {
			t.Errorf("in gray face %d has L* %.1f", i, got)
		}
	}
}

// TestMassesGoByTheirOwnLight: a figure whose wedges are cut from the dark stripe stands out of corners cut from the light one, though the
// print is one; cut from one place alike it does not. Half-shut eyes see of the two what a plain black and a plain white show.
func TestMassesGoByTheirOwnLight(t *testing.T) {
	score := func(wedges, corners string) float64 {
		top := lay.Top(t, "side 12\nfabric deck stripes black 16 white 16\nfabric black2 black\nfabric white2 white\nmotif night deck across 8 down 0\nmotif day deck across 24 down 0\n"+
			"block W web wedges "+wedges+" kites "+corners+"\ngrid\n  W W W W\n  W W W W\n  W W W W\n  W W W W\n")
		for _, f := range Study(top, Options{}).Figures {
			if f.Sort == Web && f.Mass != nil {
				return f.Mass.Score
			}
		}
		t.Fatalf("%s on %s: no webs are judged", wedges, corners)
		return 0
	}
	plain, printed, alike := score("black2", "white2"), score("night", "day"), score("night", "night")
	if t.Logf("plain %.1f, own places %.1f, one place %.1f", plain, printed, alike); math.Abs(plain-printed) > 2 || plain < 90 || alike > 20 {
		t.Errorf("the webs score %.1f in black on white, %.1f from a black and a white place, %.1f from one", plain, printed, alike)
	}
}

// TestMassesInOtherColors: a print that a color is tried for is that color in the masses, and a print that stays keeps its places' lights.
func TestMassesInOtherColors(t *testing.T) {
	top := lay.Top(t, "side 12\nfabric deck stripes black 16 white 16\nfabric gray #777777\nmotif night deck across 8 down 0\nmotif day deck across 24 down 0\n"+
		"block W web wedges night kites day\nblock P plain piece gray\ngrid\n  W W\n  W W\n  P P\n")
	s := newStudy(nil, top, Options{Prints: photographed(top)})
	m := s.newMasses()
	values := func(m *masses) (least, most uint16) {
		least, most = m.values[0], m.values[0]
		for _, v := range m.values {
			least, most = min(least, v), max(most, v)
		}
		return least, most
	}
	for _, c := range []struct {
		fabric      int
		least, most uint16
	}{{1, 0, 100}, {0, 50, 50}} { // the gray in itself changes nothing; the print in gray is all gray
		tried := s.recoloured(Tried(top, []Try{{Fabric: c.fabric, Colour: top.Fabrics[1].Colour}}))
		least, most := values(tried.newMasses())
		if off := max(int(least)/10-int(c.least), int(c.most)-int(most)/10); off > 12 || tried.canvas != m.canvas {
			t.Errorf("fabric %d in gray: masses from %d to %d", c.fabric, least/10, most/10)
		}
	}
}

// TestLightsOfPieces: a piece of a print is as light as a great many places of it are in the mean, in linear light, wherever the print
// lies under it; what lies beyond one repeat is the next one.
func TestLightsOfPieces(t *testing.T) {
	top := lay.Top(t, "strip 4\nfabric deck stripes black 2 white 3 navy 1 gold 4\nfabric gray #777777\nblock W web wedges deck kites gray\nblock H halves pieces deck gray\ngrid\n W W H\n W W H:ne\n")
	places := top.ClothPlaces()
	deck := top.Fabrics[0].Cloth
	picture := deck.Picture()
	box, s := picture.Bounds(), newStudy(nil, top, Options{Prints: photographed(top)})
	looked, sumOff := 0, 0.0
	for i := range top.Faces {
		f := &top.Faces[i]
		if top.Fabrics[f.Fabric].Cloth == nil {
			near(t, "a plain piece", s.light(int32(i)), top.Fabrics[f.Fabric].Colour.Lightness(), 1e-9)
			continue
		}
		looked++
		sum, n := 0.0, 0
		least, most := f.Outline[0], f.Outline[0]
		for _, p := range f.Outline {
			least.X, least.Y, most.X, most.Y = min(least.X, p.X), min(least.Y, p.Y), max(most.X, p.X), max(most.Y, p.Y)
		}
		const each = 60
		for k := range each * each {
			x := float64(least.X) + (float64(k%each)+0.5)/each*float64(most.X-least.X)
			y := float64(least.Y) + (float64(k/each)+0.5)/each*float64(most.Y-least.Y)
			if !covers(f.Outline, x, y) {
				continue
			}
			across, down := places[i].OnCloth(x, y)
			part := func(at float64, of measure.NM) float64 { return at/float64(of) - math.Floor(at/float64(of)) }
			px, py := box.Min.X+int(part(across, deck.Across)*float64(box.Dx())), box.Min.Y+int(part(down, deck.Down)*float64(box.Dy()))
			r, g, b, _ := picture.At(px, py).RGBA()
			sum, n = sum+palettes.Colour{R: uint8(r >> 8), G: uint8(g >> 8), B: uint8(b >> 8)}.Luminance(), n+1
		}
		off := math.Abs(palettes.LuminanceOf(s.light(int32(i))) - sum/float64(n))
		if sumOff += off; off > 0.11 {
			t.Errorf("face %d: luminance off by %.3f", i, off)
		}
	}
	if looked < 10 || sumOff > 0.03*float64(looked) {
		t.Errorf("%d pieces of the print are off by %.3f in the mean", looked, sumOff/float64(looked))
	}
}

// covers says whether a place lies in a convex outline that goes clockwise.
func covers(o []measure.Point, x, y float64) bool {
	for i, p := range o {
		q := o[(i+1)%len(o)]
		if float64(q.X-p.X)*(y-float64(p.Y))-float64(q.Y-p.Y)*(x-float64(p.X)) < 0 {
			return false
		}
	}
	return true
}
