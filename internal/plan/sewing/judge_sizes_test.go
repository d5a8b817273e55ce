//go:build judges

package sewing_test

import (
	"math"
	"slices"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/peterstace/simplefeatures/geos"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/samples"
)

// The sizes of units, from cloth that GEOS puts together: every piece as it is cut, laid where it is sewn, without the
// allowances that its seams fold away.

// clothOf is a piece of the top as it is cut: a seam allowance round what is finished, the tips of wedges flat, kites with the
// square that they are cut from at their square corner, background pieces from half of theirs, with as much over on both legs.
func clothOf(t *testing.T, top *quilt.Top, patch int, c *cutting.Piece) geom.Geometry {
	t.Helper()
	g := grownBy(t, top, []int{patch}, inches(top.Seam))
	o := top.Patches[patch].Outline
	at := func(i int) geom.XY { return xyOf(o[i%len(o)]) }
	way := func(i int) geom.XY { return at(i + 1).Sub(at(i)).Unit() }
	switch c.Shape {
	case blocks.Wedge:
		g = both(t, g, halfPlane(at(0).Add(inward(at(0), at(1), at(2)).Scale(-inches(top.Seam))), inward(at(0), at(1), at(2))))
	case blocks.Kite, blocks.Background:
		out := inches(c.AlongCut - c.AlongExact)
		if c.Shape == blocks.Background {
			out /= 2
		}
		// The square corner comes first: the piece reaches further out along both of its sides, and no further elsewhere.
		whole, err := geos.Buffer(clothPolygon(o), inches(top.Seam)+out, geos.BufferJoinStyleMitre(10))
		if err != nil {
			t.Fatal(err)
		}
		for side := 1; side < len(o)-1; side++ {
			aside := geom.XY{X: way(side).Y, Y: -way(side).X}
			whole = both(t, whole, halfPlane(at(side).Add(aside.Scale(inches(top.Seam))), aside.Scale(-1)))
		}
		g = whole
	}
	return g
}

// inward is the way from a tip into its piece.
func inward(tip, a, b geom.XY) geom.XY { return a.Add(b).Scale(0.5).Sub(tip).Unit() }

func both(t *testing.T, a, b geom.Geometry) geom.Geometry {
	t.Helper()
	g, err := geom.Intersection(a, b)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

func clothPolygon(o []measure.Point) geom.Geometry {
	var ring []float64
	for i := range len(o) + 1 {
		p := xyOf(o[i%len(o)])
		ring = append(ring, p.X, p.Y)
	}
	return geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(ring, geom.DimXY))}).AsGeometry()
}

// sewnCloth is the cloth of a unit: the union of its pieces as they are cut, each as far as its seams with the others.
func sewnCloth(t *testing.T, top *quilt.Top, patches []int, cuts *cutting.Plan) geom.Geometry {
	t.Helper()
	var sum geom.Geometry
	for n, patch := range patches {
		g := clothOf(t, top, patch, &cuts.Lines[cuts.LineOf[patch]].Piece)
		o := top.Patches[patch].Outline
		for i := range o {
			a, b := xyOf(o[i]), xyOf(o[(i+1)%len(o)])
			if slices.ContainsFunc(patches, func(other int) bool { return other != patch && besideIn(top, other, a, b) }) {
				way := b.Sub(a).Unit()
				g = both(t, g, halfPlane(a, geom.XY{X: -way.Y, Y: way.X}))
			}
		}
		if n == 0 {
			sum = g
			continue
		}
		var err error
		if sum, err = geom.Union(sum, g); err != nil {
			t.Fatal(err)
		}
	}
	return sum
}

// besideIn says whether a side of a patch lies along the line from a to b, as a seam does.
func besideIn(top *quilt.Top, patch int, a, b geom.XY) bool {
	o := top.Patches[patch].Outline
	way := b.Sub(a).Unit()
	for i := range o {
		p, q := xyOf(o[i]), xyOf(o[(i+1)%len(o)])
		far := math.Max(math.Abs(way.Cross(p.Sub(a))), math.Abs(way.Cross(q.Sub(a))))
		from, to := q.Sub(a).Dot(way), p.Sub(a).Dot(way) // the other piece goes along it the other way
		if far < 1e-6 && to > from && math.Min(to, b.Sub(a).Dot(way))-math.Max(from, 0) > 1e-6 {
			return true
		}
	}
	return false
}

// ringOf is the corners of a unit's cloth.
func ringOf(g geom.Geometry) []geom.XY {
	seq := g.MustAsPolygon().ExteriorRing().Coordinates()
	var ring []geom.XY
	for i := range seq.Length() - 1 {
		ring = append(ring, seq.GetXY(i))
	}
	return ring
}

// sizedAlong is how far a unit's cloth reaches along the axes, the longer first: its blocks stand unturned.
func sizedAlong(ring []geom.XY) (longer, shorter float64) {
	least, most := ring[0], ring[0]
	for _, p := range ring {
		least, most = geom.XY{X: math.Min(least.X, p.X), Y: math.Min(least.Y, p.Y)}, geom.XY{X: math.Max(most.X, p.X), Y: math.Max(most.Y, p.Y)}
	}
	size := most.Sub(least)
	return math.Max(size.X, size.Y), math.Min(size.X, size.Y)
}

// TestJudgeGeosCloth: before it is trimmed a unit is as large as the cloth that is there, and half of a 7 in square is 7 in.
func TestJudgeGeosCloth(t *testing.T) {
	trimmed := 0
	for _, text := range []string{"web wedges a kites b", "floating wedges a background b"} {
		for _, size := range []string{"strip 4", "strip 3 1/4", "strip 5"} {
			top := lay.Top(t, size+"\nfabric a #112233\nfabric b #eeeeee\nblock A "+text+"\ngrid\n A\n")
			p := planOf(top, sewing.Options{})
			cuts := cutting.Pieces(top, cutting.Options{})
			cell := p.Blocks[0].Variants[0].Cells[0].Cell
			for _, s := range p.Blocks[0].Steps {
				if s.Before == nil {
					continue
				}
				trimmed++
				j := s.Joins[len(s.Joins)-1]
				longer, shorter := sizedAlong(ringOf(sewnCloth(t, top, p.Patches(cell, slices.Concat(j.A, j.B)), cuts)))
				what := text + ", " + size + ", " + s.Name
				about(t, what+" across", inches(s.Before.Across), longer, 1e-6)
				about(t, what+" down", inches(s.Before.Down), shorter, 1e-6)
				if size == "strip 4" && text[0] == 'f' {
					about(t, what, inches(s.Before.Across), 7, 1e-6)
				}
			}
		}
	}
	if trimmed < 9 {
		t.Errorf("%d steps trim something", trimmed)
	}
}

// beforeLayouts are the samples, and layouts with odd seams and sizes.
func beforeLayouts() map[string]string {
	fabrics := "fabric a #112233\nfabric b #eeeeee\n"
	list := map[string]string{
		"wide seams":   "seam 3/8 in\nstrip 4 1/8\n" + fabrics + "block A web wedges a kites b\nblock F floating wedges a background b\ngrid\n A A\n F F\n",
		"centimeters":  "units cm\nstrip 9.5\n" + fabrics + "block A web wedges a kites b\nblock F floating wedges a background b\ngrid\n A F\n",
		"narrow seams": "seam 1/8 in\nside 4 3/16\n" + fabrics + "block A ring wedges a b corners b\nblock F star wedges a kites b\ngrid\n A F\n",
	}
	for _, s := range samples.All() {
		list[s.Name] = s.Text
	}
	return list
}

// TestJudgeGeosCloths: so it is in all samples and in odd layouts, and where triangles from squares cut once on the diagonal are sewn on
// to make whole blocks.
func TestJudgeGeosCloths(t *testing.T) {
	halves, wholes := 0, 0
	for name, text := range beforeLayouts() {
		top := lay.Top(t, text)
		p := planOf(top, sewing.Options{})
		cuts := cutting.Pieces(top, cutting.Options{})
		for _, b := range p.Blocks {
			cell := b.Variants[0].Cells[0].Cell
			for _, s := range b.Steps {
				if b.Column || s.Before == nil {
					continue
				}
				j := s.Joins[len(s.Joins)-1]
				patches := p.Patches(cell, slices.Concat(j.A, j.B))
				var cloth geom.Geometry
				if s.Name == "block" {
					wholes++
					cloth = wholeCloth(t, top, cuts, patches)
				} else {
					halves++
					cloth = sewnCloth(t, top, patches, cuts)
				}
				longer, shorter := sizedAlong(ringOf(cloth))
				what := name + ", " + b.Kind + ", " + s.Name
				about(t, what+" across", inches(s.Before.Across), longer, 1e-6)
				about(t, what+" down", inches(s.Before.Down), shorter, 1e-6)
			}
		}
	}
	if halves < 15 || wholes < 7 {
		t.Errorf("%d halves and %d blocks are trimmed", halves, wholes)
	}
}

// wholeCloth is the cloth of a block before it is trimmed: what was trimmed before with its seam allowance, and the triangles that are
// sewn on as they are cut: half of a square, centered on the seam, with the tips cut off square as far beyond the seam as it is wide.
func wholeCloth(t *testing.T, top *quilt.Top, cuts *cutting.Plan, patches []int) geom.Geometry {
	t.Helper()
	seam := inches(top.Seam)
	var triangles []geom.Geometry
	var seams [][2]geom.XY // with the triangle on the right
	var others []int
	for _, patch := range patches {
		piece := &cuts.Lines[cuts.LineOf[patch]].Piece
		if piece.Method != cutting.OnceOnDiagonal {
			others = append(others, patch)
			continue
		}
		o := top.Patches[patch].Outline
		from := 0 // of its longest side
		long := func(i int) float64 { return xyOf(o[(i+1)%len(o)]).Sub(xyOf(o[i%len(o)])).Length() }
		for i := range o {
			if long(i) > long(from) {
				from = i
			}
		}
		a, b := xyOf(o[from]), xyOf(o[(from+1)%len(o)])
		way := b.Sub(a).Unit()
		into := geom.XY{X: -way.Y, Y: way.X}
		half := inches(piece.AlongCut) / math.Sqrt2
		middle := a.Add(b).Scale(0.5).Sub(into.Scale(seam))
		p, q, tip := middle.Sub(way.Scale(half)), middle.Add(way.Scale(half)), middle.Add(into.Scale(half))
		ring := []float64{p.X, p.Y, q.X, q.Y, tip.X, tip.Y, p.X, p.Y}
		g := geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(ring, geom.DimXY))}).AsGeometry()
		for _, flat := range []geom.Geometry{halfPlane(a.Sub(way.Scale(seam)), way), halfPlane(b.Add(way.Scale(seam)), way.Scale(-1)), halfPlane(a, into)} {
			g = both(t, g, flat)
		}
		triangles, seams = append(triangles, g), append(seams, [2]geom.XY{a, b})
	}
	whole := triangles[0]
	if len(others) > 0 {
		g := grownBy(t, top, others, seam)
		for _, s := range seams {
			way := s[1].Sub(s[0]).Unit()
			g = both(t, g, halfPlane(s[0], geom.XY{X: way.Y, Y: -way.X}))
		}
		triangles = append(triangles, g)
	}
	for _, g := range triangles[1:] {
		var err error
		if whole, err = geom.Union(whole, g); err != nil {
			t.Fatal(err)
		}
	}
	return whole
}

// TestJudgeGeosRawEdges: the half of a web block from 4 in strips measures 5.775 in along its raw edges, not the 5.902 in that
// it reaches to its blunt tips.
func TestJudgeGeosRawEdges(t *testing.T) {
	top := lay.Top(t, oneBlock("web", "strip 4", ""))
	p := planOf(top, sewing.Options{})
	cell, s := p.Blocks[0].Variants[0].Cells[0].Cell, p.Blocks[0].Steps[1]
	j := s.Joins[len(s.Joins)-1]
	patches := p.Patches(cell, slices.Concat(j.A, j.B))
	g := grownBy(t, top, patches, inches(top.Seam))
	for _, patch := range patches {
		if o := top.Patches[patch].Outline; top.Patches[patch].Shape == blocks.Wedge {
			tip := xyOf(o[0])
			in := inward(tip, xyOf(o[1]), xyOf(o[2]))
			g = both(t, g, halfPlane(tip.Add(in.Scale(-inches(top.Seam))), in))
		}
	}
	longest, ring := 0.0, ringOf(g)
	for i, a := range ring {
		if d := ring[(i+1)%len(ring)].Sub(a); math.Abs(d.X) < 1e-6 || math.Abs(d.Y) < 1e-6 {
			longest = math.Max(longest, d.Length())
		}
	}
	reach, _ := sizedAlong(ring)
	about(t, "raw edge", inches(s.CheckSizes[0].Length), longest, 1e-6)
	about(t, "raw edge, worked out", longest, 5.775, 5e-4)
	about(t, "reach", inches(s.Unfinished.Across), reach, 1e-6)
	if math.Abs(reach-longest) < 0.1 {
		t.Error("the two cannot be told apart")
	}
}

// TestJudgeGeosPair: a pair of wedges is measured along the raw edges that are there, as long as the strip over the cosine of half
// a wedge, not to the corner that the two flat tips leave out.
func TestJudgeGeosPair(t *testing.T) {
	top := lay.Top(t, oneBlock("ring", "strip 4", ""))
	p := planOf(top, sewing.Options{})
	cuts := cutting.Pieces(top, cutting.Options{})
	cell, s := p.Blocks[0].Variants[0].Cells[0].Cell, p.Blocks[0].Steps[0]
	ring := ringOf(sewnCloth(t, top, p.Patches(cell, slices.Concat(s.Joins[0].A, s.Joins[0].B)), cuts))
	var edges []float64
	for i, a := range ring {
		edges = append(edges, ring[(i+1)%len(ring)].Sub(a).Length())
	}
	slices.Sort(edges)
	for i, size := range s.CheckSizes {
		about(t, "raw edge", inches(size.Length), edges[len(edges)-1-i], 1e-6)
	}
	about(t, "raw edge, worked out", edges[len(edges)-1], 4/math.Cos(math.Pi/8), 1e-6)
}
