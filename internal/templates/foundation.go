package templates

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"

	"eighthturn/internal/blocks"
	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// Foundation is one half of a block for sewing on paper, mirrored, as it is printed.
// Outlines are in nanometres, y downwards; the cut outline begins at 0 across and down.
type Foundation struct {
	Number   int             // from 1
	Finished []measure.Point // of the half
	Cut      []measure.Point
	Pieces   []FoundationPiece // in the order in which they are sewn on
	Count    int               // halves of the top
}

// FoundationPiece is a stretch of cloth on a foundation.
type FoundationPiece struct {
	Finished []measure.Point
	What     string // "kite", "wedge", or with its strip "wedge, strip 2"
}

// Foundations are the distinct halves of a top's blocks that have a seam in them: blocks
// which are two right triangles of several pieces each. Halves that differ by their cloth
// alone are one.
func Foundations(top *quilt.Top) []Foundation {
	kinds := blocks.Kinds()
	var list []half
	for i := range top.Cells {
		cell := &top.Cells[i]
		kind, ok := blocks.Find(kinds, cell.Kind)
		if !ok || !kind.Turning.InLattice() {
			continue
		}
		for _, patches := range halves(top, cell, top.CellRect(i)) {
			list = gatherHalf(list, newHalf(top, patches))
		}
	}
	made := make([]Foundation, len(list))
	for i := range list {
		made[i] = list[i].foundation(i+1, float64(top.Seam))
	}
	return made
}

// halves are the patches of a cell by the side of the diagonal on which they lie; nil where
// a patch lies on both sides of each.
func halves(top *quilt.Top, cell *quilt.Cell, at quilt.Rect) [][]int {
	for _, falling := range []bool{true, false} {
		var sides [2][]int
		whole := true
		for n := cell.First; n < cell.First+cell.Count; n++ {
			side := sideOf(top.Patches[n].Outline, at, falling)
			whole = whole && side >= 0
			if side >= 0 {
				sides[side] = append(sides[side], n)
			}
		}
		if whole {
			return sides[:]
		}
	}
	return nil
}

// sideOf is the side of a rectangle's diagonal on which an outline lies: 0 above, 1 below, -1
// for both.
func sideOf(outline []measure.Point, at quilt.Rect, falling bool) int {
	above, below := false, false
	for _, p := range outline {
		x, y := float64(p.X-at.Min.X)/float64(at.Width()), float64(p.Y-at.Min.Y)/float64(at.Height())
		if !falling {
			x = 1 - x
		}
		above, below = above || y-x < -1e-6, below || y-x > 1e-6
	}
	switch {
	case above && below:
		return -1
	case below:
		return 1
	}
	return 0
}

// half is a half of a block as it lies in the top: its pieces in the order of sewing.
type half struct {
	pieces [][]xy
	what   []string
	count  int
}

// ahead is how far the middle of an outline lies along a way of length 1.
func ahead(outline []xy, way xy) float64 {
	sum := 0.0
	for _, p := range outline {
		sum += (float64(p.x*way.x) + float64(p.y*way.y)) / float64(len(outline))
	}
	return sum
}

// newHalf puts a half's pieces in order: first what is no wedge, then wedge by wedge along
// the half's long side the strips from its base to its tip, so that each is sewn to what is
// there.
func newHalf(top *quilt.Top, patches []int) half {
	var h half
	var all []xy
	for _, n := range patches {
		all = append(all, floats(top.Patches[n].Outline)...)
	}
	from, _, to := corners(all)
	way := unitOf(from, to)
	order := slices.Clone(patches)
	slices.SortStableFunc(order, func(a, b int) int {
		p, q := &top.Patches[a], &top.Patches[b]
		return cmp.Or(cmp.Compare(bit(byStrip(p)), bit(byStrip(q))),
			cmp.Compare(ahead(floats(p.Outline), way), ahead(floats(q.Outline), way)))
	})
	for _, n := range order {
		p := &top.Patches[n]
		for face := range p.Count {
			h.pieces = append(h.pieces, floats(top.Faces[p.First+face].Outline))
			what := p.Shape.String()
			if p.Count > 1 {
				what += ", strip " + strconv.Itoa(int(face)+1)
			}
			h.what = append(h.what, what)
		}
	}
	h.count = 1
	return h
}

// byStrip says whether a patch is a wedge, whose wide end is sewn to what lies beside it.
func byStrip(p *quilt.Patch) bool { return p.Shape.Description().Sized == blocks.ByStrip }

// gatherHalf adds a half to those known. One of a single piece has no seam, and none is made.
func gatherHalf(list []half, h half) []half {
	if len(h.pieces) < 2 {
		return list
	}
	for i := range list {
		if list[i].like(&h) {
			list[i].count++
			return list
		}
	}
	return append(list, h)
}

// like says whether two halves are the same, turned and moved: all of their corners are as
// far apart, the first three go the same way round, and the pieces are the same.
func (h *half) like(o *half) bool {
	a, b := slices.Concat(h.pieces...), slices.Concat(o.pieces...)
	if len(a) != len(b) || !slices.Equal(h.what, o.what) {
		return false
	}
	for i := range h.pieces {
		if len(h.pieces[i]) != len(o.pieces[i]) {
			return false
		}
	}
	return congruentFrom(a, b, 0) // pieces go clockwise, so that mirror images differ
}

// wideHalf is the length, finished, from which a half's long side is not laid across the
// page: with its short sides along the edges it takes less of its width.
const wideHalf = 13 * measure.Inch / 2

// foundation is the half mirrored and turned, its long side down, or if that is too wide
// its square corner in a corner of the page.
func (h *half) foundation(number int, seam float64) Foundation {
	all := slices.Concat(h.pieces...)
	a, b, c := corners(all)
	from, to := a, c
	if distance(a, c) > float64(wideHalf) {
		from, to = b, c
	}
	turned := mirrored(turnedTo(append(slices.Clone(all), a, b, c), from, to))
	n := len(all)
	finished := []xy{turned[n+2], turned[n+1], turned[n]}
	cut := cutOutline(finished, seam)
	low := cut[0]
	for _, p := range cut {
		low = xy{min(low.x, p.x), min(low.y, p.y)}
	}
	shift := func(list []xy) []measure.Point {
		moved := make([]xy, len(list))
		for i, p := range list {
			moved[i] = xy{p.x - low.x, p.y - low.y}
		}
		return rounded(moved)
	}
	f := Foundation{Number: number, Finished: shift(finished), Cut: shift(cut), Count: h.count}
	at := 0
	for i, piece := range h.pieces {
		outline := slices.Clone(turned[at : at+len(piece)])
		slices.Reverse(outline)
		f.Pieces = append(f.Pieces, FoundationPiece{shift(outline), h.what[i]})
		at += len(piece)
	}
	return f
}

// corners are the three corners of the right triangle that points fill: the ends of its long
// side and its square corner between them, clockwise: end, square corner, end.
func corners(all []xy) (a, b, c xy) {
	for i, p := range all {
		for _, q := range all[:i] {
			if distance(p, q) > distance(a, c) || a == c {
				a, c = p, q
			}
		}
	}
	side := func(p xy) float64 { return float64((c.x-a.x)*(p.y-a.y)) - float64((c.y-a.y)*(p.x-a.x)) }
	b = all[0]
	for _, p := range all {
		if math.Abs(side(p)) > math.Abs(side(b)) {
			b = p
		}
	}
	if side(b) > 0 {
		a, c = c, a
	}
	return a, b, c
}

// mirrored is left for right.
func mirrored(list []xy) []xy {
	most := 0.0
	for _, p := range list {
		most = max(most, p.x)
	}
	for i := range list {
		list[i].x = most - list[i].x
	}
	return list
}

// Figure is the foundation as a diagram of true size.
func (f *Foundation) Figure(top *quilt.Top) *diagram.Figure {
	low, high := bounds(f.Cut)
	drawn := &diagram.Figure{
		Title: fmt.Sprintf("Foundation %d", f.Number), TrueSize: true, Min: low, Max: high,
		Description: "Half a block at true size and mirrored, to be sewn on paper along its lines in the order of its numbers.",
	}
	add := func(m diagram.Mark) { drawn.Marks = append(drawn.Marks, m) }
	add(diagram.Mark{Area: &diagram.Area{Outline: f.Cut, Clear: true, Edge: diagram.Cut}})
	add(diagram.Mark{Line: &diagram.Line{Points: append(slices.Clone(f.Finished), f.Finished[0]), Stroke: diagram.Sew}})
	for i := range f.Pieces {
		p := &f.Pieces[i]
		for _, s := range f.seamsOf(i) { // to what is there already
			add(diagram.Mark{Line: &diagram.Line{Points: s[:], Stroke: diagram.Sew}})
		}
		at, room := inside(p.Finished)
		add(diagram.Mark{Words: &diagram.Words{Text: strconv.Itoa(i + 1), At: at, Points: min(20, room*diagram.TrueScale), Bold: true, Room: measure.NM(max(1, room*1.6)), Halo: true}})
	}
	return drawn
}

// seamsOf are the sides of a piece that lie on sides of pieces before it.
func (f *Foundation) seamsOf(i int) [][2]measure.Point {
	var list [][2]measure.Point
	outline := f.Pieces[i].Finished
	for n, p := range outline {
		q := outline[(n+1)%len(outline)]
		for _, before := range f.Pieces[:i] {
			if borders(before.Finished, p, q) {
				list = append(list, [2]measure.Point{p, q})
				break
			}
		}
	}
	return list
}

// borders says whether a stretch lies along the edge of an outline, in part at least.
func borders(outline []measure.Point, p, q measure.Point) bool {
	d := unitOf(xy{float64(p.X), float64(p.Y)}, xy{float64(q.X), float64(q.Y)})
	for n, a := range outline {
		b := outline[(n+1)%len(outline)]
		place := func(c measure.Point) (along, aside float64) {
			x, y := float64(c.X-p.X), float64(c.Y-p.Y)
			return float64(x*d.x) + float64(y*d.y), float64(x*d.y) - float64(y*d.x)
		}
		from, away := place(a)
		to, far := place(b)
		long := math.Hypot(float64(q.X-p.X), float64(q.Y-p.Y))
		if math.Abs(away) < 10*sameSize && math.Abs(far) < 10*sameSize && min(max(from, to), long)-max(min(from, to), 0) > 10*sameSize {
			return true
		}
	}
	return false
}

// inside is the middle of an outline and the room round it, in nanometres.
func inside(outline []measure.Point) (measure.Point, float64) {
	var middle xy
	list := make([]xy, len(outline))
	for i, p := range outline {
		list[i] = xy{float64(p.X), float64(p.Y)}
		middle = xy{middle.x + list[i].x/float64(len(outline)), middle.y + list[i].y/float64(len(outline))}
	}
	return measure.Point{X: measure.NM(math.Round(middle.x)), Y: measure.NM(math.Round(middle.y))}, roomAt(list, middle, endless)
}
