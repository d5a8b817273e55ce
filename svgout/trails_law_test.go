package svgout

import (
	"cmp"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
)

// offTrail is how far from a line a place may be that still counts as on it: a nanometer for the rounding of each of its ends.
const offTrail = 2

// lawTrails says that lines cover stretches, each once and nothing else, and that no place begins two that do not come round.
func lawTrails(seams []quilt.Seam, drawn Outlines) error {
	places := map[measure.Point]bool{}
	want := map[[2]measure.Point]int{}
	for _, s := range seams {
		places[s.From], places[s.To] = true, true
		want[eitherWay(s.From, s.To)]--
	}
	begun := map[measure.Point]bool{}
	for trail := range drawn {
		for i, to := range trail[1:] {
			stops := stopsOn(trail[i], to, places)
			for n, stop := range stops[1:] {
				want[eitherWay(stops[n], stop)]++
			}
		}
		first, last := trail[0], trail[len(trail)-1]
		if first == last {
			continue
		}
		if begun[first] || begun[last] {
			return fmt.Errorf("%v or %v begins two lines", first, last)
		}
		begun[first], begun[last] = true, true
	}
	for s, n := range want {
		if n != 0 {
			return fmt.Errorf("the stretch from %v to %v is drawn %d times too often", s[0], s[1], n)
		}
	}
	return nil
}

// eitherWay is a stretch whichever way it goes.
func eitherWay(a, b measure.Point) [2]measure.Point {
	if cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) > 0 {
		a, b = b, a
	}
	return [2]measure.Point{a, b}
}

// stopsOn are the ends of a line and the places on it, in their order.
func stopsOn(from, to measure.Point, places map[measure.Point]bool) []measure.Point {
	dx, dy := float64(to.X-from.X), float64(to.Y-from.Y)
	square := dx*dx + dy*dy
	along := func(p measure.Point) float64 { return float64(p.X-from.X)*dx + float64(p.Y-from.Y)*dy }
	list := []measure.Point{from, to}
	for p := range places {
		across := float64(p.X-from.X)*dy - float64(p.Y-from.Y)*dx
		if a := along(p); a > 0 && a < square && across*across <= offTrail*offTrail*square && p != from && p != to {
			list = append(list, p)
		}
	}
	slices.SortFunc(list, func(a, b measure.Point) int { return cmp.Compare(along(a), along(b)) })
	return list
}

// seamsByItem are the seams that each item of lines along seams stands for: those of one ink, told apart by the lighter fabric.
func seamsByItem(top *quilt.Top, o Options) map[string][]quilt.Seam {
	p, list := newPicture(top, o), map[string][]quilt.Seam{}
	for id, seams := range map[string][]quilt.Seam{"piece-seams": top.Seams, "strip-seams": top.StripSeams} {
		for _, s := range seams {
			if o.View == Line {
				list[id] = append(list[id], s)
				continue
			}
			f, other := top.Faces[s.A].Fabric, top.Faces[s.B].Fabric
			light := func(f int32) float64 { return p.scene.Paints[f].Colour.Lightness() }
			if light(other) > light(f) || light(other) == light(f) && other < f {
				f = other
			}
			key := fmt.Sprintf("%s-%d", id, f+1)
			list[key] = append(list[key], s)
		}
	}
	return list
}

// lawSeamLines tries the law on all lines along the seams of a top.
func lawSeamLines(top *quilt.Top, o Options) error {
	scene, err := NewScene(top, o)
	if err != nil {
		return err
	}
	seams, drawn := seamsByItem(top, o), 0
	for i := range scene.Layers {
		for _, item := range scene.Layers[i].Items {
			if !strings.Contains(item.ID, "-seams") {
				continue
			}
			drawn++
			if err := lawTrails(seams[item.ID], item.Outlines); err != nil {
				return fmt.Errorf("%s: %w", item.ID, err)
			}
		}
	}
	want := len(seams)
	if o.View == Line {
		want = min(1, len(top.StripSeams)) // the others are the outlines of patches
	}
	if drawn != want {
		return fmt.Errorf("%d sorts of seams are drawn, expected %d", drawn, want)
	}
	return nil
}

func TestTrailsCoverTheSeams(t *testing.T) {
	list := judges.Some(tops(t), 9)
	for seed := range uint64(judges.Of(6, 40)) {
		list = append(list, named{fmt.Sprint("seed ", seed), lay(t, invent.Layout(seed))})
	}
	list = append(list, named{"two fabrics as light as each other", lay(t, "strip 4\nfabric a #777777\nfabric b #777777\nfabric c #777777\nblock R ring wedges c a corners b\n"+grid("R R"))})
	for _, top := range list {
		for _, o := range []Options{{}, {View: Line}} {
			if err := lawSeamLines(top.Top, o); err != nil {
				t.Errorf("%s, view %d: %v", top.name, o.View, err)
			}
		}
	}
}

// TestTrailsOnALattice: few stretches between the corners of a small lattice, at which many meet, straight on or not, in every order.
func TestTrailsOnALattice(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 13))
	for range 3000 {
		var seams []quilt.Seam
		taken := map[[2]measure.Point]bool{}
		for range 1 + rng.IntN(9) {
			at := measure.Point{X: measure.NM(rng.IntN(3)), Y: measure.NM(rng.IntN(3))}
			to := measure.Point{X: at.X + measure.NM(rng.IntN(3)-1), Y: at.Y + measure.NM(rng.IntN(3)-1)}
			s := quilt.Seam{From: measure.Point{X: at.X * measure.Inch, Y: at.Y * measure.Inch}, To: measure.Point{X: to.X * measure.Inch, Y: to.Y * measure.Inch}}
			if way := eitherWay(s.From, s.To); s.From != s.To && !taken[way] {
				taken[way] = true
				seams = append(seams, s)
			}
		}
		drawn := trails(len(seams), func(i int) *quilt.Seam { return &seams[i] })
		err := lawTrails(seams, drawn)
		if err == nil {
			err = cmp.Or(lawStraight(collected(drawn)), lawPassing(seams, collected(drawn)))
		}
		if err != nil {
			t.Fatalf("%v: %v", seams, err)
		}
	}
}

// lawPassing says that of the stretches that meet at a place all that go straight on from one another are one line there.
func lawPassing(seams []quilt.Seam, lines [][]measure.Point) error {
	ways, passing := map[[2]measure.Point]bool{}, map[measure.Point]int{} // by place and whole inches from it
	for _, s := range seams {
		way := measure.Point{X: s.To.X - s.From.X, Y: s.To.Y - s.From.Y}
		back := measure.Point{X: -way.X, Y: -way.Y}
		for _, from := range [2][2]measure.Point{{s.From, way}, {s.To, back}} {
			ways[from] = true
			if ways[[2]measure.Point{from[0], {X: -from[1].X, Y: -from[1].Y}}] {
				passing[from[0]]++
			}
		}
	}
	places := map[measure.Point]bool{}
	for p := range passing {
		places[p] = true
	}
	for _, l := range lines {
		for i, to := range l[1:] {
			stops := stopsOn(l[i], to, places)
			for _, p := range stops[1 : len(stops)-1] {
				passing[p]--
			}
		}
		n := len(l) - 1
		if a, b := l[n-1], l[1]; l[0] == l[n] && (l[0].X-a.X)*(b.Y-l[0].Y) == (l[0].Y-a.Y)*(b.X-l[0].X) && (l[0].X-a.X)*(b.X-l[0].X)+(l[0].Y-a.Y)*(b.Y-l[0].Y) > 0 {
			passing[l[0]]-- // one that comes round there
		}
	}
	for p, n := range passing {
		if n != 0 {
			return fmt.Errorf("%d more lines go straight on at %v than are drawn so", n, p)
		}
	}
	return nil
}

// lawStraight says that no line has a corner where it goes straight on, or ends where another goes straight on.
func lawStraight(lines [][]measure.Point) error {
	ahead := func(a, b, c measure.Point) bool {
		return (b.X-a.X)*(c.Y-b.Y) == (b.Y-a.Y)*(c.X-b.X) && (b.X-a.X)*(c.X-b.X)+(b.Y-a.Y)*(c.Y-b.Y) > 0
	}
	for i, l := range lines {
		for n := 2; n < len(l); n++ {
			if ahead(l[n-2], l[n-1], l[n]) {
				return fmt.Errorf("%v has a corner where it goes straight on", l)
			}
		}
		first, last := l[0], l[len(l)-1]
		for _, o := range lines[i+1:] {
			if first == last || o[0] == o[len(o)-1] {
				continue
			}
			for _, a := range [2][2]measure.Point{{l[1], first}, {l[len(l)-2], last}} {
				for _, b := range [2][2]measure.Point{{o[1], o[0]}, {o[len(o)-2], o[len(o)-1]}} {
					if a[1] == b[1] && ahead(a[0], a[1], b[0]) {
						return fmt.Errorf("%v ends where %v goes straight on", l, o)
					}
				}
			}
		}
	}
	return nil
}

func TestTheLawOfTrailsCatches(t *testing.T) {
	seams := lapTop(t).Seams
	good := collected(trails(len(seams), func(i int) *quilt.Seam { return &seams[i] }))
	long := slices.IndexFunc(good, func(l []measure.Point) bool { return len(l) > 3 })
	for name, spoil := range map[string]func(lines [][]measure.Point) [][]measure.Point{
		"nothing":            func(lines [][]measure.Point) [][]measure.Point { return lines },
		"a line left out":    func(lines [][]measure.Point) [][]measure.Point { return lines[1:] },
		"a line drawn twice": func(lines [][]measure.Point) [][]measure.Point { return append(lines, lines[0]) },
		"a corner left out": func(lines [][]measure.Point) [][]measure.Point {
			lines[long] = slices.Delete(lines[long], 1, 2)
			return lines
		},
		"a corner beside its place": func(lines [][]measure.Point) [][]measure.Point {
			lines[long][1].X += offTrail + 1
			return lines
		},
		"a line that is too long": func(lines [][]measure.Point) [][]measure.Point {
			lines[0][0].X -= measure.Inch
			return lines
		},
		"a line that comes in two": func(lines [][]measure.Point) [][]measure.Point {
			return append(lines, lines[long][:2], lines[long][1:])[1:]
		},
	} {
		var copied [][]measure.Point
		for _, l := range good {
			copied = append(copied, slices.Clone(l))
		}
		err := lawTrails(seams, func(yield func([]measure.Point) bool) {
			for _, l := range spoil(copied) {
				if !yield(l) {
					return
				}
			}
		})
		if (err == nil) != (name == "nothing") {
			t.Errorf("%s: %v", name, err)
		}
	}
}
