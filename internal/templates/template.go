// Package templates turns the pieces of a top into templates at true size: as diagrams, as
// plates, which are pages to be printed, and as DXF and SVG for machines that cut.
package templates

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
)

// Template is one piece to be cut round, as it lies with the right side of the cloth up.
// Outlines are in nanometres, y downwards, clockwise, the first corner not repeated; those
// of the cut outline begin at 0 across and down.
type Template struct {
	Letter   string // T and a number, which two mirror images share
	Hand     string // "left" or "right" of a piece that has a mirror image, as the cutting plan says it; "" else
	Shape    blocks.Shape
	Finished []measure.Point
	Cut      []measure.Point
	Grain    [2]measure.Point // the ends of the arrow along the straight grain
	Count    int              // pieces of the top
	Print    *Print           // the print that all of them show alike; nil for none
	Cloths   []ClothCount     // what they are cut from, in the layout's order, fabrics before strip sets
}

// ClothCount is how many pieces are cut from a fabric or a strip set.
type ClothCount struct {
	Fabric int // index, -1 for a strip set
	Set    int // index, -1 for a fabric
	Count  int
}

// Name is the template's letter and hand.
func (t *Template) Name() string {
	if t.Hand == "" {
		return t.Letter
	}
	return t.Letter + " " + t.Hand
}

// Sizes are how wide and high the piece is, finished and cut, as its template lies.
func (t *Template) Sizes() (finished, cut measure.Point) {
	low, high := bounds(t.Finished)
	_, cut = bounds(t.Cut)
	return measure.Point{X: high.X - low.X, Y: high.Y - low.Y}, cut
}

// Piece is what its pieces are called.
func (t *Template) Piece() string {
	if t.Print == nil || t.Print.Motif == "" {
		return t.Shape.String()
	}
	return t.Print.Motif + " " + t.Shape.String()
}

// ByRuler says whether a template's pieces are cut with a ruler alone, from their size.
func (t *Template) ByRuler() bool { return t.Print == nil && t.Shape.Description().ByRuler }

// Build finds the templates of a top: the distinct pieces of a top that are cut by a template: all but the strips
// of borders and sashes, which a ruler cuts. Pieces of one shape and size are one, however
// they are turned; of mirror images each has its own. Those of pieces that a ruler cuts as well have the last numbers.
// Hands and grain are those of the top's cutting plan, of which the pieces alone are read.
func Build(top *quilt.Top, cuts *cutting.Plan) []Template {
	var list []gathered
	for i := range top.Patches {
		p := &top.Patches[i]
		if !p.Shape.Description().Edging {
			list = gather(list, p, clothOf(top, p), cut{&cuts.Lines[cuts.LineOf[i]].Piece, cuts.HandOf[i], cuts.Lines[cuts.LineOf[i]].PrintPlace, i})
		}
	}
	slices.SortStableFunc(list, func(a, b gathered) int {
		return cmp.Or(bit(a.byRuler())-bit(b.byRuler()), cmp.Compare(a.shape, b.shape), cmp.Compare(b.area, a.area), cmp.Compare(a.print, b.print), cmp.Compare(a.hand, b.hand))
	})
	templates := make([]Template, len(list))
	number := -1
	for i := range list {
		list[i].alongPrint(top)
		if g := &list[i]; i == 0 || g.hand == "" || g.shape != list[i-1].shape || g.print != list[i-1].print || math.Abs(g.area-list[i-1].area) > g.area/1e6 || g.hand == list[i-1].hand {
			number++
		}
		templates[i] = list[i].template("T"+strconv.Itoa(number+1), float64(top.Seam))
		if g := &list[i]; g.print >= 0 {
			t := &templates[i]
			t.Print = printOf(top, g.patch, floats(t.Finished), floats(t.Cut))
		}
	}
	return templates
}

// gathered is a shape of which pieces were found.
type gathered struct {
	shape    blocks.Shape
	print    int // the place of its print, -1 for none
	patch    int // the first of them
	hand     string
	finished []xy // turned as the template will be
	area     float64
	grain    xy // the way along the straight grain, of length 1
	cloths   []ClothCount
}

// cut is how a patch is cut.
type cut struct {
	*cutting.Piece
	hand  cutting.Hand
	print int
	patch int
}

// byRuler says whether a ruler alone cuts such pieces.
func (g *gathered) byRuler() bool { return g.print < 0 && g.shape.Description().ByRuler }

// gather adds a patch to the shapes found.
func gather(list []gathered, p *quilt.Patch, cloth ClothCount, c cut) []gathered {
	outline := floats(p.Outline)
	at := slices.IndexFunc(list, func(g gathered) bool {
		if g.shape != p.Shape || g.print != c.print {
			return false
		}
		_, same := congruent(g.finished, outline)
		return same
	})
	if at < 0 {
		at = len(list)
		list = append(list, newGathered(p, c))
	}
	g := &list[at]
	n := slices.IndexFunc(g.cloths, func(c ClothCount) bool { return c.Fabric == cloth.Fabric && c.Set == cloth.Set })
	if n < 0 {
		n = len(g.cloths)
		g.cloths = append(g.cloths, cloth)
	}
	g.cloths[n].Count++
	return list
}

func clothOf(top *quilt.Top, p *quilt.Patch) ClothCount {
	if p.Set >= 0 {
		return ClothCount{Fabric: -1, Set: int(p.Set)}
	}
	return ClothCount{Fabric: int(top.Faces[p.First].Fabric), Set: -1}
}

// newGathered turns a piece to lie as its template will, and finds its grain: that of how the pieces are cut by ruler, across
// the strip that they are cut from, which is along the cloth.
func newGathered(p *quilt.Patch, c cut) gathered {
	outline := floats(p.Outline)
	places := make([]blocks.Place, len(outline))
	for i, q := range p.Outline {
		places[i] = blocks.Place(q)
	}
	from, to := p.Shape.Description().Lies(places)
	g := gathered{shape: p.Shape, print: c.print, patch: c.patch, finished: turnedTo(outline, outline[from], outline[to])}
	along := unitOf(g.finished[c.Grain[0]], g.finished[c.Grain[1]])
	g.grain = xy{along.y, -along.x}
	switch { // level to the right, upright up
	case math.Abs(g.grain.y) < 1e-6 && g.grain.x < 0, math.Abs(g.grain.x) < 1e-6 && g.grain.y > 0:
		g.grain = xy{-g.grain.x, -g.grain.y}
	}
	g.area = areaOf(g.finished)
	if c.hand != cutting.Either {
		g.hand = c.hand.String()
	}
	return g
}

func areaOf(outline []xy) float64 {
	double := 0.0
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		double += float64(p.x*q.y) - float64(q.x*p.y)
	}
	return double / 2
}

// template is the finished template.
func (g *gathered) template(letter string, seam float64) Template {
	cut := cutOutline(g.finished, seam)
	low := cut[0]
	for _, p := range cut {
		low = xy{min(low.x, p.x), min(low.y, p.y)}
	}
	finished := slices.Clone(g.finished)
	for _, list := range [][]xy{cut, finished} {
		for i := range list {
			list[i] = xy{list[i].x - low.x, list[i].y - low.y}
		}
	}
	t := Template{Letter: letter, Hand: g.hand, Shape: g.shape, Finished: rounded(finished), Cut: rounded(cut), Cloths: g.cloths}
	t.Grain = g.arrow(finished)
	slices.SortStableFunc(t.Cloths, func(a, b ClothCount) int {
		return cmp.Or(cmp.Compare(a.Set, b.Set), cmp.Compare(a.Fabric, b.Fabric))
	})
	for _, c := range t.Cloths {
		t.Count += c.Count
	}
	return t
}

// arrow is the grain's arrow through the middle of a finished outline, two thirds as long
// as the way through it.
func (g *gathered) arrow(finished []xy) [2]measure.Point {
	var middle xy
	for _, p := range finished {
		middle = xy{middle.x + p.x/float64(len(finished)), middle.y + p.y/float64(len(finished))}
	}
	back, ahead := endless, endless
	for i, p := range finished {
		q := finished[(i+1)%len(finished)]
		side := xy{q.x - p.x, q.y - p.y}
		cross := float64(g.grain.x*side.y) - float64(g.grain.y*side.x)
		if math.Abs(cross) < 1e-9 {
			continue
		}
		t := (float64((p.x-middle.x)*side.y) - float64((p.y-middle.y)*side.x)) / cross
		if t > 0 {
			ahead = min(ahead, t)
		} else {
			back = min(back, -t)
		}
	}
	end := func(by float64) measure.Point {
		return measure.Point{X: measure.NM(math.Round(middle.x + by*g.grain.x)), Y: measure.NM(math.Round(middle.y + by*g.grain.y))}
	}
	return [2]measure.Point{end(-back * 2 / 3), end(ahead * 2 / 3)}
}

func bit(b bool) int {
	if b {
		return 1
	}
	return 0
}
