package contrast

import (
	"fmt"
	"image"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
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

// speckled is a picture of so many pixels, no two of which are alike in light.
func speckled(width, height int) *image.RGBA {
	dice := rand.New(rand.NewPCG(uint64(width), uint64(height)))
	picture := image.NewRGBA(image.Rect(0, 0, width, height))
	for i := range picture.Pix {
		picture.Pix[i] = uint8(dice.IntN(256))
		if i%4 == 3 {
			picture.Pix[i] = 255
		}
	}
	return picture
}

// TestPlacesOfAPrint: a place of a cloth is as light as the square of pixels that lies there, at most 256 of them beside each other, and
// so it is in every repeat, before and after the first: of a cloth that comes again a hundred times none is out of step.
func TestPlacesOfAPrint(t *testing.T) {
	for _, size := range [][2]int{{1, 1}, {3, 2}, {285, 100}, {284, 300}, {570, 20}, {20, 857}} { // of a photo nine tenths are laid over and over
		cloth := &quilt.Cloth{Across: 10 * measure.Inch, Down: 7 * measure.Inch, PhotoSample: palettes.PhotoSample{Tile: speckled(size[0], size[1])}}
		picture, p := cloth.Picture(), newPrintLight(cloth)
		box := picture.Bounds()
		side := 1
		for side*256 < max(box.Dx(), box.Dy()) {
			side++
		}
		dice := rand.New(rand.NewPCG(7, 8))
		for range 60 {
			x, y := dice.IntN(box.Dx()), dice.IntN(box.Dy())
			sum, n := 0.0, 0.0
			for i := x / side * side; i < min(box.Dx(), x/side*side+side); i++ {
				for j := y / side * side; j < min(box.Dy(), y/side*side+side); j++ {
					c := picture.RGBAAt(box.Min.X+i, box.Min.Y+j)
					sum, n = sum+palettes.Colour{R: c.R, G: c.G, B: c.B}.Luminance(), n+1
				}
			}
			across := float64(cloth.Across) * (float64(dice.IntN(200)-100) + (float64(x)+0.5)/float64(box.Dx()))
			down := float64(cloth.Down) * (float64(dice.IntN(200)-100) + (float64(y)+0.5)/float64(box.Dy()))
			near(t, fmt.Sprintf("%v, pixel %d %d", size, x, y), p.at(across, down), sum/n, 1e-9)
		}
	}
	one := &printLight{light: []float64{0.25, 0.5}, width: 2, height: 1, across: 10, down: 10, columns: 1.5, rows: 1}
	for across, want := range map[float64]float64{0: 0.25, 10: 0.25, -1e-20: 0.5, 6.6: 0.25, 6.7: 0.5, 9.99: 0.5} {
		near(t, fmt.Sprint(across), one.at(across, -1e-20), want, 0)
	}
}

// TestMeansOfPieces: of a print that grows lighter all the way, across or down, a piece shows as much light as its middle does (the
// centroid: of each of its triangles a third of its three corners together, by area), however it is turned on the cloth.
func TestMeansOfPieces(t *testing.T) {
	const wide = 1 << 16
	across, down := &printLight{width: wide, height: 1, across: wide, down: 1, columns: wide, rows: 1}, &printLight{width: 1, height: wide, across: 1, down: wide, columns: 1, rows: wide}
	for i := range wide {
		across.light, down.light = append(across.light, float64(i)+0.5), append(down.light, float64(i)+0.5)
	}
	at := func(x, y measure.NM) measure.Point { return measure.Point{X: x, Y: y} }
	for _, outline := range [][]measure.Point{
		{at(0, 0), at(24_000, 0), at(0, 12_000)}, {at(24_000, 3_000), at(9_000, 18_000), at(1, 2)}, {at(2_400, 700), at(26_400, 700), at(26_400, 24_700), at(2_400, 9_700)},
		{at(0, 0), at(24_000, 0), at(48_000, 12_000), at(0, 12_000)}, {at(5_000, 0), at(9_000, 1_000), at(30_000, 22_000), at(6_000, 40_000), at(100, 700)},
	} {
		x, y, area := 0.0, 0.0, 0.0
		a := outline[0]
		for i := 1; i+1 < len(outline); i++ {
			b, c := outline[i], outline[i+1]
			twice := float64((b.X-a.X)*(c.Y-a.Y) - (c.X-a.X)*(b.Y-a.Y))
			x, y, area = x+twice*float64(a.X+b.X+c.X)/3, y+twice*float64(a.Y+b.Y+c.Y)/3, area+twice
		}
		place := &quilt.ClothPlace{Top: at(300, 200), Cloth: at(700, 900)}
		near(t, fmt.Sprint("across ", outline), across.mean(outline, place), x/area+400, 1)
		near(t, fmt.Sprint("down ", outline), down.mean(outline, place), y/area+700, 1)
		place = &quilt.ClothPlace{Top: at(0, 0), Cloth: at(60_000, 60_000), Turn: 180}
		near(t, fmt.Sprint("upside down ", outline), across.mean(outline, place), 60_000-x/area, 1)
	}
}

// TestPrintsThatNothingShows: a cloth without a picture is as light as its color.
func TestPrintsThatNothingShows(t *testing.T) {
	top := lay.Top(t, "side 6\nfabric pale #8899aa\nfabric deck #223344\nblock H halves pieces deck pale\ngrid\n H\n")
	top.Fabrics[0].Cloth = &quilt.Cloth{Across: measure.Inch, Down: measure.Inch}
	for i, l := range ownLights(top) {
		near(t, fmt.Sprint("face ", i), l, top.Fabrics[top.Faces[i].Fabric].Colour.Lightness(), 0)
	}
}

// TestShadesOfATop: pieces of one plain fabric are of one shade, those of a print of one for each half of a step of lightness; where there
// are more than can be told apart a print has but one.
func TestShadesOfATop(t *testing.T) {
	top := &quilt.Top{Fabrics: make([]quilt.Fabric, 330)}
	s := &study{Top: top}
	for f := range top.Fabrics {
		if f > 0 {
			top.Fabrics[f].Cloth = &quilt.Cloth{}
		}
		top.Fabrics[f].Colour = palettes.Colour{R: uint8(f), G: 100}
	}
	add := func(fabric int32, light float64) {
		top.Faces, s.own = append(top.Faces, quilt.Face{Fabric: fabric}), append(s.own, light)
	}
	for _, one := range [][2]float64{{0, 7}, {1, 50}, {1, 50.2}, {1, 50.3}, {2, 50}, {1, 49.8}, {0, 90}, {2, 0}, {2, -0.5}, {1, 50.4}} {
		add(int32(one[0]), one[1])
	}
	cloth := func(f int) *quilt.Cloth { return top.Fabrics[f].Cloth }
	want := []shade{{0, nil, 0}, {1, cloth(1), 50}, {1, cloth(1), 50.5}, {2, cloth(2), 50}, {2, cloth(2), 0}, {2, cloth(2), -0.5}}
	list, of := s.shades()
	if !slices.Equal(list, want) || !slices.Equal(of.Of, []uint16{0, 1, 1, 2, 3, 1, 0, 4, 5, 2}) || of.Count != len(want) {
		t.Errorf("%v, by piece %v", list, of)
	}
	near(t, "a print's luminance", s.luminance(&list[2]), palettes.LuminanceOf(50.5), 0)
	near(t, "a plain fabric's", s.luminance(&list[0]), top.Fabrics[0].Colour.Luminance(), 0)
	near(t, "that of a print which is another now", s.luminance(&shade{1, cloth(2), 50}), top.Fabrics[1].Colour.Luminance(), 0)
	top.Faces, s.own = nil, nil
	for f := range 328 { // as many as can be told apart
		for step := range 200 {
			if n := 200*f + step; n < math.MaxUint16 {
				add(int32(1+f), float64(step)/2)
			}
		}
	}
	if list, of := s.shades(); len(list) != math.MaxUint16 || of.Of[len(of.Of)-1] != math.MaxUint16-1 {
		t.Errorf("%d shades, the last one %d", len(list), of.Of[len(of.Of)-1])
	}
	add(0, 0)
	list, of = s.shades()
	if len(list) != len(top.Fabrics) || of.Count != len(list) {
		t.Fatalf("of too many %d are left", len(list))
	}
	for f := range list {
		if list[f] != (shade{fabric: int32(f)}) {
			t.Errorf("shade %d is %+v", f, list[f])
		}
	}
	for i, n := range of.Of {
		if int32(n) != top.Faces[i].Fabric {
			t.Fatalf("face %d has shade %d", i, n)
		}
	}
}
