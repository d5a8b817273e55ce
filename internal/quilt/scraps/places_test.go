package scraps_test

import (
	"slices"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilt/scraps"
	"eighthturn/layout"
)

// shared is what the faces of one place have in common, written from the language's promise:
// by piece nothing but themselves, by block the cell, by web the centre that wedges and
// kites point at; and the pool, the role and the strip of the set.
type shared struct {
	pool, role, band int
	face, cell       int
	centre           measure.Point
}

// solver is the places of a top, and the place of each of its faces.
type table struct {
	top    *quilt.Top
	places []scraps.Place
	of     []int // by face, -1 where no pool is dealt
}

// placesOf is the places of a design, made anew from its top: from what each patch was
// given in the layout, which its place in the source tells.
func placesOf(t testing.TB, d *layout.Design) []scraps.Place {
	t.Helper()
	return tableOf(t, d).places
}

func tableOf(t testing.TB, d *layout.Design) table {
	t.Helper()
	tb := table{top: quilt.Lay(d)}
	given := poolsAt(d)
	known := map[shared]int{}
	for i, f := range tb.top.Faces {
		p := &tb.top.Patches[f.Patch]
		bands, ok := given[p.Place.Span()]
		if !ok || bands[(i-int(p.First))%len(bands)] < 0 {
			tb.of = append(tb.of, -1)
			continue
		}
		pool := bands[(i-int(p.First))%len(bands)]
		key := sharedBy(d, p, pool, i)
		if _, ok := known[key]; !ok {
			known[key] = len(tb.places)
			tb.places = append(tb.places, scraps.Place{Choices: d.Pools[pool].Fabrics, Pool: pool})
		}
		tb.of = append(tb.of, known[key])
	}
	tb.meet(tb.top.Seams)
	tb.meet(tb.top.StripSeams)
	return tb
}

// poolsAt is, for every value written in a layout, the pools of its strips: -1 where a strip
// is a fabric.
func poolsAt(d *layout.Design) map[layout.Span][]int {
	at := map[layout.Span][]int{}
	note := func(f layout.Fill) {
		switch {
		case f.Pool >= 0:
			at[f.Span] = []int{f.Pool}
		case f.Set >= 0:
			var pools []int
			for _, b := range d.StripSets[f.Set].Bands {
				pools = append(pools, b.Pool)
			}
			if f.Reversed {
				slices.Reverse(pools)
			}
			at[f.Span] = pools
		}
	}
	for _, b := range d.Blocks {
		for _, fills := range b.Fills {
			for _, f := range fills {
				note(f)
			}
		}
	}
	for _, f := range slices.Concat(d.Webs, d.WebTable) {
		note(f)
	}
	return at
}

func sharedBy(d *layout.Design, p *quilt.Patch, pool, face int) shared {
	s := shared{pool: pool, role: int(p.Role), band: face - int(p.First), face: -1, cell: -1}
	pointed := p.Shape == blocks.Wedge || p.Shape == blocks.Kite
	switch by := d.Pools[pool].By; {
	case by == layout.ByPiece:
		return shared{pool: pool, face: face, cell: -1}
	case by == layout.ByWeb && pointed:
		s.centre = p.Outline[0]
	default:
		s.cell = int(p.Cell)
	}
	return s
}

// meet notes neighbours and barred fabrics along seams.
func (tb *table) meet(seams []quilt.Seam) {
	for _, s := range seams {
		a, b := tb.of[s.A], tb.of[s.B]
		switch {
		case a == b:
		case a < 0:
			tb.bar(b, int(tb.top.Faces[s.A].Fabric))
		case b < 0:
			tb.bar(a, int(tb.top.Faces[s.B].Fabric))
		case !slices.Contains(tb.places[a].Neighbours, int32(b)):
			tb.places[a].Neighbours = append(tb.places[a].Neighbours, int32(b))
			tb.places[b].Neighbours = append(tb.places[b].Neighbours, int32(a))
		}
	}
}

func (tb *table) bar(place, fabric int) {
	if p := &tb.places[place]; !slices.Contains(p.Barred, fabric) {
		p.Barred = append(p.Barred, fabric)
	}
}
