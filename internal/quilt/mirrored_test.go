package quilt_test

import (
	"fmt"
	"image"
	"image/color"
	"maps"
	"math"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// foldedPrint is a photo of a print that is its own mirror image at a line, a part of the way across, or where it lies on its side, down.
func foldedPrint(line float64, onSide bool) palettes.PhotoSample {
	m := image.NewRGBA(image.Rect(0, 0, 120, 80))
	for y := range 80 {
		for x := range 120 {
			a, b := 2*math.Pi*((float64(x)+0.5)/120-line), 2*math.Pi*(float64(y)+0.5)/80
			if onSide {
				a, b = 2*math.Pi*((float64(y)+0.5)/80-line), 2*math.Pi*(float64(x)+0.5)/120
			}
			m.SetRGBA(x, y, color.RGBA{uint8(128 + 60*math.Cos(a) + 50*math.Sin(2*b)), uint8(128 + 60*math.Cos(3*a) + 50*math.Sin(b)), uint8(128 + 90*math.Cos(a)*math.Sin(b+1)), 255})
		}
	}
	return palettes.PhotoSample{Colour: palettes.Colour{R: 128, G: 128, B: 128}, Width: 120, Height: 80, Tile: m}
}

// everyPiece is a quilt in which pieces of all shapes are cut from one motif, of a fabric that is given.
const everyPiece = `side 8
fabric cloth %s
fabric sand #e8d9b0
motif rose cloth across %s down %s pointing %d mirrored
block R ring wedges rose corners rose
block W web wedges rose kites rose
block F floating wedges sand background rose
block H halves pieces rose
block P plain piece rose
block T tumblers pieces rose about 5
grid
  F F F F H:nw H:ne
  F W W F H:sw H:se
  F W W F T T
  F F F F T T
  P P P R T T
`

// folded is that quilt of a print that is mirrored.
func folded(t *testing.T, fabric string, at [2]string, pointing int, photo palettes.PhotoSample) (*quilt.Top, *layout.MirrorLine) {
	t.Helper()
	text := fmt.Sprintf(everyPiece, fabric, at[0], at[1], pointing)
	design, _, faults := layout.ReadWith(text, func(string) (palettes.PhotoSample, error) { return photo, nil })
	if design == nil {
		t.Fatal(faults)
	}
	return quilt.Lay(design), design.Motifs[0].Mirror
}

// modRepeat brings outlines that lie on like places of a print together: their middles lie in one repeat, of which a length that is 0 is
// left out, as along stripes.
func modRepeat(outline []measure.Vec, across, down float64) []measure.Vec {
	var middle measure.Vec
	for _, p := range outline {
		middle.X, middle.Y = middle.X+p.X/float64(len(outline)), middle.Y+p.Y/float64(len(outline))
	}
	by := measure.Vec{X: middle.X, Y: middle.Y}
	const hair = 1000 // a place on the edge of a repeat stays on one side
	if across > 0 {
		by.X = across * math.Floor((middle.X+hair)/across)
	}
	if down > 0 {
		by.Y = down * math.Floor((middle.Y+hair)/down)
	}
	moved := make([]measure.Vec, len(outline))
	for i, p := range outline {
		moved[i] = measure.Vec{X: p.X - by.X, Y: p.Y - by.Y}
	}
	return moved
}

// sameOutline says whether two outlines have the same corners, up to a hundredth of a millimeter.
func sameOutline(a, b []measure.Vec) bool {
	if len(a) != len(b) {
		return false
	}
	for _, p := range a {
		near := math.Inf(1)
		for _, q := range b {
			near = min(near, math.Hypot(p.X-q.X, p.Y-q.Y))
		}
		if near > float64(measure.Millimetre)/100 {
			return false
		}
	}
	return true
}

// unmirrored are the faults of pieces that are cut from a mirrored place: those that are the mirror image, at the print's line, of no
// piece of the motif itself.
func unmirrored(top *quilt.Top, places []quilt.ClothPlace, line *layout.MirrorLine) (faults []string, mirrored int) {
	cloth := top.Fabrics[0].Cloth
	across, down := float64(cloth.Across), float64(cloth.Down)
	if cloth.Stripes != nil && cloth.Stripes.Crosswise {
		across = 0
	} else if cloth.Stripes != nil {
		down = 0
	}
	var own [][]measure.Vec
	for i := range top.Patches {
		if c := top.CutOfPatch(i); c != nil && !c.Mirrored {
			p := &top.Patches[i]
			reflected := onCloth(p.Outline, &places[p.First])
			for n, q := range reflected {
				if line.Crosswise {
					reflected[n].Y = 2*float64(line.At) - q.Y
				} else {
					reflected[n].X = 2*float64(line.At) - q.X
				}
			}
			own = append(own, modRepeat(reflected, across, down))
		}
	}
	for i := range top.Patches {
		c, p := top.CutOfPatch(i), &top.Patches[i]
		if c == nil || !c.Mirrored {
			continue
		}
		mirrored++
		outline, found := modRepeat(onCloth(p.Outline, &places[p.First]), across, down), false
		for _, o := range own {
			found = found || sameOutline(outline, o)
		}
		if !found {
			faults = append(faults, fmt.Sprintf("the %s %d", p.Shape, i))
		}
	}
	return faults, mirrored
}

// alikeBeside is how many seams have pieces of one shape on both sides, whose first corners meet at an end of it, that are both cut from
// the motif or both from its mirrored place; and how many such seams there are.
func alikeBeside(top *quilt.Top) (alike, met int) {
	for i := range top.Seams {
		s := &top.Seams[i]
		a, b := top.Faces[s.A].Patch, top.Faces[s.B].Patch
		p, q := &top.Patches[a], &top.Patches[b]
		cut, other := top.CutOfPatch(int(a)), top.CutOfPatch(int(b))
		if cut == nil || other == nil || p.Shape != q.Shape || p.Outline[0] != q.Outline[0] || p.Shape.Description().Round == 0 {
			continue
		}
		if met++; cut.Mirrored == other.Mirrored {
			alike++
		}
	}
	return alike, met
}

// TestMirroredPlacesAreMirrored: whatever its shape, a piece that is cut from a motif's mirrored place is the mirror image of one that is
// cut from the motif, at the line of the print; round every point every other piece is one, and of left and right pieces one hand; and no
// piece is ever turned over. A piece that lies askew is noticed, and so is one that is turned over.
func TestMirroredPlacesAreMirrored(t *testing.T) {
	const photo = `swatch "a.png" across 12 repeat across 12 down 8`
	cases := []struct {
		name, fabric string
		at           [2]string
		pointing     int
		photo        palettes.PhotoSample
	}{
		{"a line along the selvages", photo, [2]string{"3", "2"}, 30, foldedPrint(0.3, false)},
		{"and near the edge", photo, [2]string{"11", "7 1/2"}, 200, foldedPrint(0.93, false)},
		{"a line across", photo, [2]string{"3", "2"}, 75, foldedPrint(0.41, true)},
		{"stripes", "stripes navy 3/4 #c9503c 1/2 white 1/4", [2]string{"3/8", "0"}, 20, palettes.PhotoSample{}},
		{"stripes across", "stripes navy 3/4 #c9503c 1/2 white 1/4 crosswise", [2]string{"0", "3/8"}, 20, palettes.PhotoSample{}},
	}
	for _, c := range cases {
		top, line := folded(t, c.fabric, c.at, c.pointing, c.photo)
		places := top.ClothPlaces()
		faults, mirrored := unmirrored(top, places, line)
		if len(faults) > 0 || mirrored < 30 {
			t.Errorf("%s: of %d pieces no mirror image are %v", c.name, mirrored, faults)
		}
		for i := range top.Faces {
			o := onCloth(top.Faces[i].Outline[:3], &places[i])
			if (o[1].X-o[0].X)*(o[2].Y-o[0].Y)-(o[1].Y-o[0].Y)*(o[2].X-o[0].X) <= 0 {
				t.Errorf("%s: face %d is turned over", c.name, i)
			}
		}
		if beside, met := alikeBeside(top); beside > 0 || met < 20 {
			t.Errorf("%s: at %d of %d seams that run to a common corner the two pieces are cut from one place", c.name, beside, met)
		}
		for i := range top.Patches {
			if top.CutOfPatch(i) != nil && top.CutOfPatch(i).Mirrored {
				places[top.Patches[i].First].Turn += 3
				break
			}
		}
		if faults, _ := unmirrored(top, places, line); len(faults) != 1 {
			t.Errorf("%s: of a piece askew %v is said", c.name, faults)
		}
	}
}

// TestMirroredInVain: a motif is told whose pieces are all alike, though mirrored ones are asked for; one with mirrored pieces is not.
func TestMirroredInVain(t *testing.T) {
	const text = "side 8\nfabric sand #e8d9b0\nfabric awning stripes navy 3/4 #c9503c 1/2\nmotif rose awning across 3/8 down 0 pointing 30 mirrored\n" +
		"block R ring wedges rose corners sand\nblock P plain piece rose\ngrid\n  R\n"
	for _, c := range []struct{ from, to, warned string }{
		{"", "", ""},
		{"  R\n", "  P\n", `no piece of "rose" is cut mirrored: none of them meet round a point`},
		{"pointing 30", "pointing 90", `"rose" lies on the mirror line of the print: its pieces are their own mirror image`},
		{"wedges rose", "wedges sand", ""},
	} {
		if told := toldOf(t, strings.Replace(text, c.from, c.to, 1)); told != c.warned {
			t.Errorf("%q in place of %q: told %q", c.to, c.from, told)
		}
	}
}

// TestSquaresOfMotifs: corner squares of a border and posts of sashing are all cut from their motif, upright as it points, and the strips
// beside them are not; of a fabric they come as they lie along strips.
func TestSquaresOfMotifs(t *testing.T) {
	const text = "side 6\nfabric sand #e8d9b0\nfabric awning stripes navy 3/4 #c9503c 1/2\nmotif rose awning across 3/8 down 1 pointing 45\n" +
		"block P plain piece sand\ngrid\n  P P\n  P P\nsash 1 awning posts %s around\nborder 3 awning corners %s\n"
	for _, c := range []struct {
		posts, corners string
		cut            map[string]int
	}{{"rose", "rose", map[string]int{"posts": 9, "corner squares": 4}}, {"awning", "rose", map[string]int{"corner squares": 4}}, {"rose", "sand", map[string]int{"posts": 9}}, {"sand", "awning", map[string]int{}}} {
		design, _, faults := layout.Read(fmt.Sprintf(text, c.posts, c.corners))
		if design == nil {
			t.Fatal(faults)
		}
		top, found := quilt.Lay(design), map[string]int{}
		for i := range top.Patches {
			if at, said := top.PlaceSaid(i); said {
				found[top.Roles[top.Patches[i].Role].Name]++
				if at.Cloth != (measure.Point{X: 3 * measure.Inch / 8, Y: measure.Inch}) || at.Turn != 315 {
					t.Errorf("a square lies at %+v", at)
				}
			}
		}
		if !maps.Equal(found, c.cut) {
			t.Errorf("posts %s, corners %s: cut from the motif are %v", c.posts, c.corners, found)
		}
	}
}

// centerOf is the center of gravity of an outline, by the usual sum over its sides from the corner of the quilt (the shoelace formula).
func centerOf(outline []measure.Vec) measure.Vec {
	var twice, x, y float64
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		cross := (p.X*q.Y - q.X*p.Y) / 1e12
		twice, x, y = twice+cross, x+(p.X+q.X)*cross, y+(p.Y+q.Y)*cross
	}
	return measure.Vec{X: x / (3 * twice), Y: y / (3 * twice)}
}

// TestMotifsLieInTheMiddle: of a piece of any shape that is cut from a motif the center of gravity lies at the motif's place, and the piece
// as its template lies is turned as the motif points.
func TestMotifsLieInTheMiddle(t *testing.T) {
	shapes := map[string]int{}
	for _, pointing := range []int{0, 75, 200} {
		top, _ := folded(t, "stripes navy 3/4 #c9503c 1/2", [2]string{"3/8", "1"}, pointing, palettes.PhotoSample{})
		for i := range top.Patches {
			c, p := top.CutOfPatch(i), &top.Patches[i]
			if c == nil {
				continue
			}
			at, said := top.PlaceSaid(i)
			o := onCloth(p.Outline, &at)
			d := p.Shape.Description()
			places := make([]blocks.Place, len(p.Outline))
			for n, q := range p.Outline {
				places[n] = blocks.Place(q)
			}
			from, to := d.Lies(places)
			sin, cos := math.Sincos(float64(c.Pointing) * math.Pi / 180)
			way, middle := o[to].Minus(o[from]).Unit(), centerOf(o)
			if off := middle.Minus(measure.Vec{X: float64(c.Place.X), Y: float64(c.Place.Y)}).Length(); !said || off > 1000 || way.Minus(measure.Vec{X: cos, Y: sin}).Length() > 1e-4 {
				t.Errorf("a %s lies %.0f nm from its motif's place, its foot running %v, expected %g, %g", p.Shape, off, way, cos, sin)
			}
			if !c.Mirrored && (c.Pointing != pointing || c.Place != measure.Point{X: 3 * measure.Inch / 8, Y: measure.Inch}) {
				t.Errorf("a %s is cut from %+v", p.Shape, *c)
			}
			shapes[p.Shape.String()]++
		}
	}
	if len(shapes) < 8 {
		t.Errorf("only shapes %v", shapes)
	}
}

// TestSeenOfPhotos: of a photo whose repeat nobody says so much of the cloth is seen as it shows; of a repeat and of stripes all.
func TestSeenOfPhotos(t *testing.T) {
	const text = "side 6\nfabric garden swatch \"garden.jpg\" across 12%s\nfabric awning stripes navy 3/4 #c9503c 1/2\nblock P plain piece garden\nblock Q plain piece awning\ngrid\n  P Q\n"
	for words, want := range map[string][2]measure.NM{"": {12 * measure.Inch, 8 * measure.Inch}, " repeat across 6 down 4": {}} {
		sample := palettes.PhotoSample{Width: 300, Height: 200, Tile: image.NewRGBA(image.Rect(0, 0, 30, 20))}
		design, _, faults := layout.ReadWith(fmt.Sprintf(text, words), func(string) (palettes.PhotoSample, error) { return sample, nil })
		if design == nil {
			t.Fatal(faults)
		}
		top := quilt.Lay(design)
		for fabric, want := range [2][2]measure.NM{want, {}} {
			if across, down := top.Fabrics[fabric].Cloth.Seen(); across != want[0] || down != want[1] {
				t.Errorf("%q: of fabric %d %d by %d are seen, expected %d", words, fabric, across, down, want)
			}
		}
	}
}
