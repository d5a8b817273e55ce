package quilt_test

import (
	"cmp"
	"errors"
	"fmt"
	"maps"
	"math"
	"slices"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/layout"
	"eighthturn/samples"
)

// nearby is how far from where it should be a length of cloth may lie.
const nearby = 20_000 // nanometers: roundings of pieces that are taken for alike

// apartBy is how far apart two pieces lie: across, along, or square to a side of either, whichever parts them most; below 0 where they
// overlap.
func (p *cutPiece) apartBy(q *cutPiece) float64 {
	return max(gap(p.outline, q.outline), p.min.X-q.max.X, q.min.X-p.max.X, p.min.Y-q.max.Y, q.min.Y-p.max.Y)
}

// gap is how far apart two convex outlines lie, square to the side of either that parts them most.
func gap(a, b []measure.Vec) float64 {
	beyond := func(a, b []measure.Vec) float64 {
		most := math.Inf(-1)
		for i, p := range a {
			q := a[(i+1)%len(a)]
			least, long := math.Inf(1), math.Hypot(q.X-p.X, q.Y-p.Y)
			for _, r := range b {
				least = min(least, ((q.Y-p.Y)*(r.X-p.X)-(q.X-p.X)*(r.Y-p.Y))/long)
			}
			most = max(most, least)
		}
		return most
	}
	return max(beyond(a, b), beyond(b, a))
}

// cutPiece is a face on its cloth.
type cutPiece struct {
	outline  []measure.Vec
	min, max measure.Vec
	ofSet    bool
}

// turnedAbout is a piece with across and along changed about, as strips along the selvages are.
func (p *cutPiece) turnedAbout(from float64) cutPiece {
	return cutPiece{min: measure.Vec{X: p.min.Y - from, Y: p.min.X}, max: measure.Vec{X: p.max.Y - from, Y: p.max.X}, ofSet: p.ofSet, outline: p.outline}
}

// besideBefore says whether one piece comes right behind another along a strip: their outlines, or the rectangles round them, lie two seam
// allowances apart.
func besideBefore(p, q *cutPiece, seam float64) bool {
	level := p.min.Y-q.max.Y < 2*seam-nearby && q.min.Y-p.max.Y < 2*seam-nearby
	return level && (math.Abs(p.min.X-q.max.X-2*seam) < nearby || math.Abs(gap(p.outline, q.outline)-2*seam) < nearby)
}

// singleHalves is how many halves of squares are cut from squares of their own, with no other half on the other side of the diagonal.
func singleHalves(pieces []cutPiece, seam float64) (count int) {
	half := func(p *cutPiece) bool {
		return len(p.outline) == 3 && !p.ofSet && math.Abs(p.max.X-p.min.X-p.max.Y+p.min.Y) < nearby
	}
	for i := range pieces {
		p := &pieces[i]
		if half(p) && !slices.ContainsFunc(pieces, func(q cutPiece) bool {
			beside := max(p.min.X-q.max.X, q.min.X-p.max.X, p.min.Y-q.max.Y, q.min.Y-p.max.Y) < 2*seam-nearby
			return half(&q) && beside && math.Abs(gap(p.outline, q.outline)-2*seam) < nearby
		}) {
			count++
		}
	}
	return count
}

// laidClose is what is wrong with how pieces lie along the strips of a fabric: any two are cut from cloth of their own, with a seam
// allowance round each; each comes right behind another or at the beginning of a strip; and strips lie one below the other.
func laidClose(pieces []cutPiece, seam, width float64) error {
	long := false
	for i := range pieces {
		p := &pieces[i]
		long = long || p.max.X-p.min.X > width-2*seam
		behind := p.ofSet || math.Abs(p.min.X-seam) < nearby
		for n := range pieces[:i] {
			if g := p.apartBy(&pieces[n]); g < 2*seam-nearby {
				return fmt.Errorf("pieces %d and %d lie %.3f seam allowances apart", n, i, g/seam)
			}
			behind = behind || besideBefore(p, &pieces[n], seam)
		}
		if !behind {
			return fmt.Errorf("piece %d comes behind nothing along its strip: %v", i, p.outline)
		}
	}
	if n := singleHalves(pieces, seam); n > 1 {
		return fmt.Errorf("%d halves of squares are cut alone", n)
	}
	slices.SortFunc(pieces, func(a, b cutPiece) int { return cmp.Compare(a.min.Y, b.min.Y) })
	end := 0.0
	for i, p := range pieces {
		if off := p.min.Y - seam - end; !long && off > nearby && math.Abs(off-math.Sqrt2*seam) > nearby { // a square of which one half is wanted
			return fmt.Errorf("between two strips, before piece %d, lie %.3f seam allowances", i, off/seam)
		}
		end = max(end, p.max.Y+seam)
	}
	return nil
}

// runs is which way a strip of a border or a sash runs: along its longer sides, from left to right or from the top down on the quilt.
func runs(outline []measure.Vec) measure.Vec {
	across, down := outline[1].Minus(outline[0]), outline[2].Minus(outline[1])
	if down.Length() > across.Length() {
		return down.Unit()
	}
	return across.Unit()
}

// alongSelvages is where strips along the selvages begin, beyond those across the cloth.
const alongSelvages = 1000 * float64(measure.Yard)

// clothTops are samples and invented layouts whose fabrics are all striped.
func clothTops(invented uint64) (list []*quilt.Top) {
	var texts []string
	for _, s := range samples.All() {
		texts = append(texts, s.Text)
	}
	for seed := range invented {
		texts = append(texts, invent.Layout(seed))
	}
	for _, text := range texts {
		if d, _, _ := layout.Read(striped(text)); d != nil {
			if top := quilt.Lay(d); len(top.Faces) <= 700 {
				list = append(list, top)
			}
		}
	}
	return list
}

// TestPiecesLieClose: pieces for which the layout names no place come off strips as they are cut, with no cloth between them but their
// seam allowances: wedges head up and head down in turn, halves two in a square, other pieces side by side.
func TestPiecesLieClose(t *testing.T) {
	across, along := 0, 0
	for n, top := range clothTops(uint64(judges.Of(40, 200))) {
		places, seam := top.ClothPlaces(), float64(top.Seam)
		if places == nil || top.CutOf != nil || seam == 0 {
			continue
		}
		strips := map[[2]int][]cutPiece{}
		for i := range top.Faces {
			f := &top.Faces[i]
			p := cutPiece{outline: onCloth(f.Outline, &places[i]), ofSet: top.Patches[f.Patch].Set >= 0}
			p.min, p.max = p.outline[0], p.outline[0]
			for _, q := range p.outline {
				p.min, p.max = measure.Vec{X: min(p.min.X, q.X), Y: min(p.min.Y, q.Y)}, measure.Vec{X: max(p.max.X, q.X), Y: max(p.max.Y, q.Y)}
			}
			key, way := [2]int{int(f.Fabric), 0}, measure.Vec{X: 1}
			if p.min.Y > alongSelvages {
				p, key[1], way = p.turnedAbout(alongSelvages), 1, measure.Vec{Y: 1}
			}
			if got := runs(p.outline); top.Patches[f.Patch].Shape.Description().Edging && got.Minus(way).Length() > 1e-6 {
				t.Errorf("layout %d: strip %d runs %v on its cloth, not %v", n, i, got, way)
			}
			strips[key] = append(strips[key], p)
		}
		for key, list := range strips {
			width := float64(top.CutFacts.Fabrics[key[0]].UsableWidth)
			if key[1] == 1 {
				along++
				width = math.Inf(1)
			} else {
				across++
			}
			if err := laidClose(list, seam, width); err != nil {
				t.Errorf("layout %d, %s, strips along the selvages %v: %v", n, top.Fabrics[key[0]].Name, key[1] == 1, err)
			}
		}
	}
	if across < 50 || along < 5 {
		t.Errorf("only %d fabrics were cut across and %d along the selvages", across, along)
	}
}

// saidWrongly is what is wrong with where a wedge lies on its cloth for which the layout says that: a motif lies in its middle, and it
// points as the motif says; stripes that cross it go on from its wide end, others run along it through its middle.
func saidWrongly(top *quilt.Top, patch int) error {
	p, c := &top.Patches[patch], top.CutOfPatch(patch)
	at, said := top.PlaceSaid(patch)
	if !said {
		return errors.New("the layout names no place for it")
	}
	o := onCloth(p.Outline, &at)
	wide := measure.Vec{X: (o[1].X + o[2].X) / 2, Y: (o[1].Y + o[2].Y) / 2}
	way := o[0].Minus(wide).Unit() // from its wide end to its tip
	if c.Motif != "" {
		sin, cos := math.Sincos(float64(c.Pointing) * math.Pi / 180)
		middle := measure.Vec{X: (o[0].X + o[1].X + o[2].X) / 3, Y: (o[0].Y + o[1].Y + o[2].Y) / 3} // of a triangle
		if off := middle.Minus(measure.Vec{X: float64(c.Place.X), Y: float64(c.Place.Y)}).Length(); off > nearby || way.Minus(measure.Vec{X: sin, Y: -cos}).Length() > 1e-3 {
			return fmt.Errorf("it lies %.3f mm from %s, and points %v on the cloth", off/1e6, c.Motif, way)
		}
		return nil
	}
	crosswise := top.Fabrics[top.Faces[p.First].Fabric].Cloth.Stripes.Crosswise // stripes that run from selvage to selvage
	where, along, cross := wide.X, measure.Vec{Y: -1}, measure.Vec{X: 1}
	if crosswise {
		where, along, cross = wide.Y, measure.Vec{X: 1}, measure.Vec{Y: 1}
	}
	want := along
	if crosswise == c.Crosswise { // strips are cut as the stripes run, and wedges stand across them
		want = cross
	}
	if math.Abs(where-float64(c.From)) > nearby || way.Minus(want).Length() > 1e-3 {
		return fmt.Errorf("its wide end lies %.3f mm within the stripes, not %.3f, and it points %v, not %v", where/1e6, float64(c.From)/1e6, way, want)
	}
	return nil
}

// TestSaidPlaces: motifs and stripes lie in their wedges as the layout says, whichever way the stripes run and the strips are cut.
func TestSaidPlaces(t *testing.T) {
	tried := map[string]int{}
	for _, stripes := range []string{"stripes navy 3/4 white 1/2 #c9503c 3/8", "stripes navy 3/4 white 1/2 #c9503c 3/8 crosswise"} {
		top := lay(t, "strip 4 1/2\nfabric cream ivory\nfabric awning "+stripes+"\nmotif star awning across 1/2 down 3/8 pointing 30\nmotif sun awning across 0 down 1\n"+
			"block A ring wedges awning lengthwise from 1/2 awning crosswise from 3/8 corners cream\nblock B ring wedges star sun corners cream\nblock C ring wedges awning crosswise from 0 star corners cream\n"+
			"grid\n A B C\n B A A\n")
		for i := range top.Patches {
			c := top.CutOfPatch(i)
			if c == nil {
				if _, said := top.PlaceSaid(i); said {
					t.Errorf("patch %d has a place that nobody named", i)
				}
				continue
			}
			if err := saidWrongly(top, i); err != nil {
				t.Errorf("%s, wedge %d, cut %+v: %v", stripes, i, *c, err)
			}
			tried[fmt.Sprintf("%+v", *c)]++
		}
		if places := top.ClothPlaces(); len(top.Cuts) != 5 || len(places) != len(top.Faces) {
			t.Errorf("%d sorts of cuts, %d places", len(top.Cuts), len(places))
		}
	}
	if len(tried) != 5 || slices.Min(slices.Collect(maps.Values(tried))) < 8 {
		t.Errorf("tried were %v", tried)
	}
}

// TestWedgesTurnAbout: along their strips wedges lie tip up and tip down in turn, the first tip up; those of a strip set tip up, or tip
// down where they are reversed.
func TestWedgesTurnAbout(t *testing.T) {
	top := lay(t, "strip 4 1/2\nfabric cream ivory\nfabric awning stripes navy 3/4 white 1/2\nfabric deck stripes white 3/4 #c9503c 1/2\nstrip-set tide awning 2 deck rest\n"+
		"block A ring wedges awning deck corners cream\nblock B ring wedges tide reversed tide corners cream\ngrid\n A B A\n B A A\n")
	places, count := top.ClothPlaces(), map[int32]int{}
	for i := range top.Patches {
		p := &top.Patches[i]
		if len(p.Outline) != 3 || p.Shape.Description().Gathers == blocks.NoCentre {
			continue
		}
		o := onCloth(p.Outline, &places[p.First])
		up, want := o[0].Y < o[1].Y, !p.Reversed
		if p.Set < 0 {
			want = count[top.Faces[p.First].Fabric]%2 == 0
			count[top.Faces[p.First].Fabric]++
		}
		if up != want {
			t.Errorf("wedge %d, of strip set %d, reversed %v: its tip is up %v", i, p.Set, p.Reversed, up)
		}
	}
	if len(count) != 2 {
		t.Errorf("wedges were tried of %v", count)
	}
}
