package svgout

import (
	"fmt"
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
	for _, item := range beneath.Items {
		for _, o := range collected(item.Outlines) {
			for i, p := range o {
				if p == o[(i+1)%len(o)] {
					return fmt.Errorf("fabric %d has the corner %v twice, one behind the other", item.Style.Fill.Fabric, p)
				}
			}
		}
	}
	if i := slices.Index(goesOn, false); i >= 0 {
		return fmt.Errorf("nothing goes on under the seam of faces %d and %d", seams[i][0].face, seams[i][1].face)
	}
	return nil
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

// besideSeams are places a hundredth of the way from the middle of each seam of two fabrics to the middles of its faces, and from near its
// ends, or nearer where the seam is short: what goes on under it goes as far as it is long.
func besideSeams(top *quilt.Top) (list [][2]place) {
	for _, s := range slices.Concat(top.Seams, top.StripSeams) {
		if top.Faces[s.A].Fabric == top.Faces[s.B].Fabric {
			continue
		}
		long := math.Hypot(userUnits(s.To.X-s.From.X), userUnits(s.To.Y-s.From.Y))
		for _, part := range []float64{0.04, 0.5, 0.96} {
			at := measure.Point{X: s.From.X + measure.NM(part*float64(s.To.X-s.From.X)), Y: s.From.Y + measure.NM(part*float64(s.To.Y-s.From.Y))}
			var pair [2]place
			for i, face := range [2]int32{s.A, s.B} {
				x, y := mean(top.Faces[face].Outline)
				far := math.Hypot(x-userUnits(at.X), y-userUnits(at.Y))
				pair[i] = toward(int(face), at, x, y, min(0.01, long/10/far)/10)
			}
			list = append(list, pair)
		}
	}
	return list
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
