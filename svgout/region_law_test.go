package svgout

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
)

// lawRegions says that what lies beneath the seams, painted in its order, shows each face's fabric at places near all of its corners,
// and that on both sides of every seam of two fabrics lies one and the same of them, so that it goes on under the other.
func lawRegions(top *quilt.Top, beneath *Layer) error {
	places, seams := insideOf(top), besideSeams(top)
	shown, goesOn := make([]int, len(places)), make([]bool, len(seams))
	for _, item := range beneath.Items {
		outlines, fabric := collected(item.Outlines), item.Style.Fill.Fabric
		for i, p := range places {
			if p.in(outlines) {
				shown[i] = fabric + 1
			}
		}
		for i, s := range seams {
			ofThese := int(top.Faces[s[0].face].Fabric) == fabric || int(top.Faces[s[1].face].Fabric) == fabric
			goesOn[i] = goesOn[i] || ofThese && s[0].in(outlines) && s[1].in(outlines)
		}
	}
	for i, p := range places {
		if f := top.Faces[p.face].Fabric; shown[i] != int(f+1) {
			return fmt.Errorf("face %d of fabric %d has fabric %d beneath it near a corner", p.face, f, shown[i]-1)
		}
	}
	if err := inOrder(top, beneath); err != nil {
		return err
	}
	for n, item := range beneath.Items {
		last := n == len(beneath.Items)-1 // it goes on under nothing, and so its corners are all its own
		for _, o := range collected(item.Outlines) {
			for i, p := range o {
				if p == o[(i+1)%len(o)] {
					return fmt.Errorf("fabric %d has the corner %v twice, one behind the other", item.Style.Fill.Fabric, p)
				}
				if q, r := o[(i+1)%len(o)], o[(i+2)%len(o)]; last && i+2 < len(o) && goesStraight(p, q, r) {
					return fmt.Errorf("fabric %d has a corner at %v, where it goes straight on", item.Style.Fill.Fabric, q)
				}
			}
		}
	}
	if i := slices.Index(goesOn, false); i >= 0 {
		return fmt.Errorf("nothing goes on under the seam of faces %d and %d", seams[i][0].face, seams[i][1].face)
	}
	return nil
}

// inOrder says that beneath all lies the fabric that has most seams to others, the first of them, and then the others against the order of the
// layout, so that what is drawn anew is little.
func inOrder(top *quilt.Top, beneath *Layer) error {
	seams, want := map[int]int{}, []int{}
	for _, s := range slices.Concat(top.Seams, top.StripSeams) {
		if a, b := int(top.Faces[s.A].Fabric), int(top.Faces[s.B].Fabric); a != b {
			seams[a], seams[b] = seams[a]+1, seams[b]+1
		}
	}
	most := -1
	for f := range top.Fabrics {
		if shown := slices.ContainsFunc(top.Faces, func(face quilt.Face) bool { return int(face.Fabric) == f }); shown {
			want = append([]int{f}, want...)
			if most < 0 || seams[f] > seams[most] {
				most = f
			}
		}
	}
	want = append([]int{most}, slices.DeleteFunc(want, func(f int) bool { return f == most })...)
	var got []int
	for _, item := range beneath.Items {
		got = append(got, item.Style.Fill.Fabric)
	}
	if !slices.Equal(got, want) {
		return fmt.Errorf("beneath the seams lie the fabrics %v, expected %v", got, want)
	}
	return nil
}

// goesStraight says whether a way goes straight on from a by b to c, to the rounding of corners to a hundredth of a unit.
func goesStraight(a, b, c measure.Point) bool {
	x, y, dx, dy := userUnits(b.X-a.X), userUnits(b.Y-a.Y), userUnits(c.X-b.X), userUnits(c.Y-b.Y)
	return x*dx+y*dy > 0 && math.Abs(x*dy-y*dx) < 0.01*min(math.Hypot(x, y), math.Hypot(dx, dy))
}

// mean is the mean of an outline's corners in user units.
func mean(outline []measure.Point) (x, y float64) {
	for _, p := range outline {
		x, y = x+userUnits(p.X), y+userUnits(p.Y)
	}
	return x / float64(len(outline)), y / float64(len(outline))
}

// bare is a picture without the lines of its seams, which would lie over what is judged here.
var bare = Options{SeamLines: SeamsLeftOut}

// place is a place in a face, in nanometers.
type place struct {
	face int
	x, y float64
}

// insideOf are places in all faces: near each corner, a twentieth of the way to the middle.
func insideOf(top *quilt.Top) (list []place) {
	for i := range top.Faces {
		x, y := mean(top.Faces[i].Outline)
		for _, p := range top.Faces[i].Outline {
			list = append(list, toward(i, p, x, y, 0.05))
		}
	}
	return list
}

// toward is a place a part of the way from a place to another that is in user units.
func toward(face int, p measure.Point, x, y, part float64) place {
	const nm = float64(measure.Inch) / PixelsPerInch
	return place{face, float64(p.X)*(1-part) + x*nm*part, float64(p.Y)*(1-part) + y*nm*part}
}

// besideSeams are places half of the way from the middle of each seam of two fabrics to what lies opposite it in the middle of its faces,
// and from near its ends: what goes on under it goes as far as it is long.
func besideSeams(top *quilt.Top) (list [][2]place) {
	for _, s := range slices.Concat(top.Seams, top.StripSeams) {
		if top.Faces[s.A].Fabric == top.Faces[s.B].Fabric {
			continue
		}
		for _, part := range []float64{0.04, 0.5, 0.96} {
			var pair [2]place
			for i, face := range [2]int32{s.A, s.B} {
				pair[i] = opposite(int(face), top.Faces[face].Outline, s, part)
			}
			list = append(list, pair)
		}
	}
	return list
}

// opposite is half of the way from a place along a seam of a face to the nearest place of the side that the seam's side of the outline has
// where that is drawn in.
func opposite(face int, outline []measure.Point, s quilt.Seam, part float64) place {
	x, y := float64(s.From.X)+part*float64(s.To.X-s.From.X), float64(s.From.Y)+part*float64(s.To.Y-s.From.Y)
	corners, _ := drawnIn(outline)
	best, off := 0, math.MaxFloat64
	for i, p := range outline { // the side that the seam lies on
		q := outline[(i+1)%len(outline)]
		dx, dy := float64(q.X-p.X), float64(q.Y-p.Y)
		long := math.Hypot(dx, dy)
		if o := math.Abs(dx*(y-float64(p.Y))-dy*(x-float64(p.X)))/long + math.Abs(dx*float64(s.To.Y-s.From.Y)-dy*float64(s.To.X-s.From.X))/long; o < off {
			best, off = i, o
		}
	}
	a, b := corners[best], corners[(best+1)%len(corners)]
	dx, dy := b[0]-a[0], b[1]-a[1]
	at := 0.0
	if square := dx*dx + dy*dy; square > 1e6 {
		at = max(0, min(1, ((x-a[0])*dx+(y-a[1])*dy)/square))
	}
	return place{face, (x + a[0] + at*dx) / 2, (y + a[1] + at*dy) / 2}
}

func collected(outlines Outlines) (list [][]measure.Point) {
	for o := range outlines {
		list = append(list, slices.Clone(o))
	}
	return list
}

// in says whether outlines wind round a place clockwise on screen, as the rule nonzero counts.
func (p place) in(outlines [][]measure.Point) bool {
	n := 0
	for _, o := range outlines {
		last := o[len(o)-1]
		for _, q := range o {
			ax, ay, bx, by := float64(last.X), float64(last.Y), float64(q.X), float64(q.Y)
			right := (bx-ax)*(p.y-ay) - (by-ay)*(p.x-ax) // above 0 where the place lies to the right of the way
			switch {
			case ay <= p.y && by > p.y && right < 0:
				n--
			case by <= p.y && ay > p.y && right > 0:
				n++
			}
			last = q
		}
	}
	return n > 0
}

func beneathOf(t *testing.T, top *quilt.Top) *Layer {
	t.Helper()
	s, err := NewScene(top, bare)
	if err != nil || s.Layers[0].Part != Beneath {
		t.Fatal(err, s.Layers[0].Name)
	}
	return &s.Layers[0]
}

func TestRegionsLieUnderTheirFabric(t *testing.T) {
	list := judges.Some(tops(t), 9)
	for seed := range uint64(judges.Of(12, 60)) {
		list = append(list, named{fmt.Sprint("seed ", seed), lay(t, invent.Layout(seed))})
	}
	// A straight edge that comes to the piece in the corner, under which it goes on.
	list = append(list, named{"corner", lay(t, "side 4\nfabric z #111\nfabric x #333\nfabric y #555\nfabric v #777\nfabric w #999\nblock Z plain piece z\nblock X plain piece x\nblock Y plain piece y\nblock V plain piece v\nblock W plain piece w\n"+grid("Z X W V W", "Y X W V W", "V V W V W"))})
	for _, top := range list {
		if err := lawRegions(top.Top, beneathOf(t, top.Top)); err != nil {
			t.Errorf("%s: %v", top.name, err)
		}
	}
	for name, spoil := range map[string]func(l *Layer){
		"a region that is left out":   func(l *Layer) { l.Items = l.Items[:len(l.Items)-1] },
		"an outline that is left out": func(l *Layer) { l.Items[1].Outlines = without(l.Items[1].Outlines, 1) },
		"another order":               func(l *Layer) { l.Items[0], l.Items[1] = l.Items[1], l.Items[0] },
		"faces that end at seams": func(l *Layer) {
			top := lapTop(t)
			for i := range l.Items {
				p := newPicture(top, bare)
				l.Items[i].Outlines = p.outlinesOf(p.faces[l.Items[i].Style.Fill.Fabric])
			}
		},
	} {
		l := beneathOf(t, lapTop(t))
		spoil(l)
		err := lawRegions(lapTop(t), l)
		if err == nil {
			t.Errorf("%s: not caught", name)
		}
		t.Logf("%s: %v", name, err)
	}
}

// without is outlines without one of them.
func without(outlines Outlines, leaveOut int) Outlines {
	return func(yield func([]measure.Point) bool) {
		n := 0
		for o := range outlines {
			if n++; n-1 != leaveOut && !yield(o) {
				return
			}
		}
	}
}

// TestRims: the sides of faces that no seam lies on are those parts of them that are left between the seams, measured along each.
func TestRims(t *testing.T) {
	list := []named{}
	for name, text := range layouts() {
		list = append(list, named{name, lay(t, text)})
	}
	for seed := range uint64(12) {
		list = append(list, named{fmt.Sprint("seed ", seed), lay(t, invent.Layout(seed))})
	}
	gaps := 0
	for _, top := range list {
		p := newPicture(top.Top, bare)
		want, got := map[stretch]int{}, map[stretch]int{}
		newUnderlay(p, p.shown()).rims(func(face int32, from, to measure.Point) { got[stretch{from, to, face}]++ })
		on := map[int32][]stretch{}
		for _, s := range slices.Concat(top.Seams, top.StripSeams) {
			on[s.A], on[s.B] = append(on[s.A], stretch{from: s.From, to: s.To}), append(on[s.B], stretch{from: s.To, to: s.From})
		}
		for i, f := range top.Faces {
			for n, a := range f.Outline {
				b := f.Outline[(n+1)%len(f.Outline)]
				for _, gap := range leftOf(a, b, on[int32(i)]) {
					gap.beyond = int32(i)
					want[gap]++
				}
			}
		}
		gaps += len(want)
		if !maps.Equal(got, want) {
			t.Errorf("%s: without a seam are %v, expected %v", top.name, got, want)
		}
	}
	if gaps < 100 {
		t.Errorf("only %d stretches without a seam", gaps)
	}
}

// leftOf is what stretches leave of a side, from its beginning on.
func leftOf(from, to measure.Point, list []stretch) (left []stretch) {
	dx, dy := float64(to.X-from.X), float64(to.Y-from.Y)
	long := math.Hypot(dx, dy)
	along := func(p measure.Point) float64 { return (float64(p.X-from.X)*dx + float64(p.Y-from.Y)*dy) / long }
	off := func(p measure.Point) float64 { return math.Abs(float64(p.X-from.X)*dy-float64(p.Y-from.Y)*dx) / long }
	at := from
	for {
		next := -1
		for i, s := range list {
			if off(s.from) > 3 || off(s.to) > 3 || along(s.to) <= along(s.from) || along(s.from) < along(at)-1 || along(s.to) > long+1 {
				continue
			}
			if next < 0 || along(s.from) < along(list[next].from) {
				next = i
			}
		}
		if next < 0 {
			break
		}
		if list[next].from != at {
			left = append(left, stretch{from: at, to: list[next].from})
		}
		at = list[next].to
	}
	if at != to {
		left = append(left, stretch{from: at, to: to})
	}
	return left
}
