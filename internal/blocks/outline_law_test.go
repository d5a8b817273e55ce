package blocks_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// What descriptions say of shapes, held against their outlines.

type outline = [][2]float64

// spots are where the corners of kinds lie on the unit square.
var spots = map[blocks.Coord]float64{blocks.Zero: 0, blocks.Short: 1 - math.Sqrt2/2, blocks.Mid: 0.5, blocks.Long: math.Sqrt2 / 2, blocks.Full: 1}

// scaled is a piece in a block of a side.
func scaled(p blocks.Piece, side float64) (o outline) {
	for _, c := range p.Outline {
		o = append(o, [2]float64{spots[c.X] * side, spots[c.Y] * side})
	}
	return o
}

// columnOf is the pieces of a column from the top, each clockwise from its upper left corner; mirrored is its neighbor.
func columnOf(c blocks.Column, side measure.NM, mirrored bool) (list []outline) {
	slants := c.Slants(side)
	top := [2]float64{}
	for i := 0; i <= len(slants); i++ {
		bottom := [2]float64{}
		if i < len(slants) {
			if bottom = [2]float64{float64(slants[i].Upper) / inch, float64(slants[i].Lower) / inch}; (i%2 == 0) == mirrored {
				bottom[0], bottom[1] = bottom[1], bottom[0]
			}
		} else {
			length := (float64(c.Whole)*c.Mean + 2*c.End) / inch
			bottom = [2]float64{length, length}
		}
		s := float64(side) / inch
		list = append(list, outline{{0, top[0]}, {s, top[1]}, {s, bottom[1]}, {0, bottom[0]}})
		top = bottom
	}
	return list
}

// shaped is an outline with its shape.
type shaped struct {
	blocks.Shape
	outline
	inSquare bool // of side 1
}

// everyOutline is pieces of all shapes, every way that they lie in a top.
func everyOutline() (list []shaped) {
	for _, k := range blocks.Kinds() {
		for turns := range 4 {
			for _, p := range k.Turned(turns) {
				list = append(list, shaped{p.Shape, scaled(p, 1), true})
			}
		}
	}
	for _, whole := range []int{1, 2} {
		for _, mirrored := range []bool{false, true} {
			c := blocks.Column{Mean: 5 * inch, Whole: whole, End: 3 * inch}
			pieces := columnOf(c, 7*measure.Inch, mirrored)
			for i, o := range pieces {
				list = append(list, shaped{blocks.ColumnShape(i == 0 || i == len(pieces)-1), o, false})
			}
		}
	}
	return append(list, shaped{blocks.EdgingShape(true), outline{{0, 0}, {2, 0}, {2, 2}, {0, 2}}, false}, shaped{blocks.EdgingShape(false), outline{{0, 0}, {9, 0}, {9, 2}, {0, 2}}, false})
}

// corner is a corner by its place among those of an outline, on and on.
func (o outlined) corner(i int) [2]float64 { return o[(i%len(o)+len(o))%len(o)] }

type outlined outline

// way is from one corner to another.
func (o outlined) way(from, to int) (x, y float64) {
	a, b := o.corner(from), o.corner(to)
	return b[0] - a[0], b[1] - a[1]
}

func (o outlined) length(side int) float64 { return math.Hypot(o.way(side, side+1)) }

// angle is the angle at a corner, in degrees.
func (o outlined) angle(i int) float64 {
	x, y := o.way(i, i+1)
	u, v := o.way(i, i-1)
	return math.Acos((x*u+y*v)/(math.Hypot(x, y)*math.Hypot(u, v))) * 180 / math.Pi
}

// where are the corners that have an angle.
func (o outlined) where(degrees float64) (list []int) {
	for i := range o {
		if near(o.angle(i), degrees, 1e-6) {
			list = append(list, i)
		}
	}
	return list
}

// laid is an outline turned so that the way between two corners runs to the right.
func (o outlined) laid(from, to int) (turned outlined) {
	x, y := o.way(from, to)
	l := math.Hypot(x, y)
	for _, p := range o {
		turned = append(turned, [2]float64{(p[0]*x + p[1]*y) / l, (p[1]*x - p[0]*y) / l})
	}
	return turned
}

// misdescribed is what a description says of an outline that is not so.
func misdescribed(d *blocks.Description, s shaped) (list []string) {
	law := func(holds bool, text string) {
		if !holds {
			list = append(list, text)
		}
	}
	o := outlined(s.outline)
	law(angled(d, o) >= 0, "its angles are others")
	// The point is the sharp corner that a piece is the same on both sides of.
	point := -1
	for _, i := range o.where(45) {
		if near(o.angle(i-1), o.angle(i+1), 1e-6) && near(o.length(i), o.length(i-1), 1e-9) {
			point = i
		}
	}
	law(d.Point == point, "its point is another corner")
	law(d.Blunt == -1 || d.Blunt == d.Point, "another corner than its point is blunt")
	list = append(list, sidesAmiss(d, s)...)
	grain := []int{d.Grain[0], d.Grain[1]}
	slices.Sort(grain)
	law(grain[1]-grain[0] == 1 || grain[0] == 0 && grain[1] == len(o)-1, "the grain runs along no side")
	if right := o.where(90); len(right) == 1 || len(right) == 4 {
		law(slices.Equal(grain, []int{0, 1}), "the grain does not run along the first side of its square corner")
	} else if len(o) == 3 {
		law(!slices.Contains(grain, point), "the grain does not run along the wide end")
	} else {
		law(parallel(o, grain[0]), "the grain does not run along parallel sides")
	}
	return append(list, lies(d, o)...)
}

func parallel(o outlined, side int) bool {
	x, y := o.way(side, side+1)
	u, v := o.way(side+2, side+3)
	return near(x*v, y*u, 1e-6)
}

// angled is which of the angles that are said an outline has, from its first corner on, one way round or the other.
func angled(d *blocks.Description, o outlined) int {
	return slices.IndexFunc(d.Angles, func(said []float64) bool {
		on, back := len(said) == len(o), len(said) == len(o)
		for i := range said {
			on, back = on && near(o.angle(i), said[i], 1e-4), back && near(o.angle(-i), said[i], 1e-4)
		}
		return on || back
	})
}

// sidesAmiss holds the sides that are trimmed, and those by which a size is said, against where they lie: sides are trimmed where they
// lie on the block's edge.
func sidesAmiss(d *blocks.Description, s shaped) (list []string) {
	o := outlined(s.outline)
	var outer, long []int
	longest := 0.0
	for i := range o {
		longest = max(longest, o.length(i))
	}
	for i := range o {
		a, b := o.corner(i), o.corner(i+1)
		for axis := range 2 {
			if a[axis] == b[axis] && (a[axis] == 0 || a[axis] == 1) {
				outer = append(outer, i)
			}
		}
		if near(o.length(i), longest, 1e-9) {
			long = append(long, i)
		}
	}
	if d.Trimmed != nil && s.inSquare && !slices.Equal(d.Trimmed, outer) {
		list = append(list, "other sides are trimmed than those on the block's edge")
	}
	switch {
	case d.FinishedAs == "long sides" && (len(d.Edges) == 0 || !slices.Contains(long, d.Edges[0])):
		list = append(list, "its size is no long side's")
	case strings.Contains(d.FinishedAs, "square corner") && !slices.Equal(d.Edges, outer):
		list = append(list, "its size is not that of the sides of its square corner")
	}
	return list
}

// lies says how a template lies otherwise than quilters have it on the table: tips and square ends up, square corners up and to the
// left, wide sides down.
func lies(d *blocks.Description, o outlined) (list []string) {
	if d.Lies == nil {
		return nil
	}
	from, to := d.Lies(placesOf(o))
	laid := o.laid(from, to)
	top, left := 0, 0
	for i := range laid {
		if laid[i][1] < laid[top][1]-1e-9 {
			top = i
		}
		if laid[i][0] < laid[left][0]-1e-9 {
			left = i
		}
	}
	level := func(i int) bool { return near(laid[i][1], laid.corner(i + 1)[1], 1e-9) }
	up := func(i int) bool { return near(laid[i][1], laid[top][1], 1e-9) }
	right := laid.where(90)
	switch {
	case d.Point >= 0: // tip or square corner up, the axis upright
		if top != 0 || !near(laid[0][0], (laid.corner(1)[0]+laid.corner(-1)[0])/2, 1e-9) {
			list = append(list, "its first corner is not up")
		}
	case len(right) == 2:
		if !up(right[0]) || !up(right[1]) {
			list = append(list, "its square end is not up")
		}
	case len(right) > 0:
		if !up(0) || !near(laid[0][0], laid[left][0], 1e-9) {
			list = append(list, "its square corner is not in the upper left")
		}
	default:
		side := slices.IndexFunc([]int{0, 1, 2, 3}, func(i int) bool { return level(i) && !up(i) })
		if side < 0 || laid.length(side) < laid.length(side+2) {
			list = append(list, "its wide side is not down")
		}
	}
	return list
}

func placesOf(o outlined) (list []blocks.Place) {
	for _, p := range o {
		list = append(list, blocks.Place{X: measure.NM(math.Round(p[0] * 1e9)), Y: measure.NM(math.Round(p[1] * 1e9))})
	}
	return list
}

// TestShapesAsDescribed: angles, points, grain, what is trimmed and how a template lies are those of the pieces that are laid, and every sort
// of angles that a shape is said to have is there.
func TestShapesAsDescribed(t *testing.T) {
	seen := map[string]bool{}
	for _, s := range everyOutline() {
		d := s.Description()
		for _, amiss := range misdescribed(d, s) {
			t.Errorf("%s %v: %s", d.Name, s.outline, amiss)
		}
		seen[fmt.Sprint(d.Name, angled(d, outlined(s.outline)))] = true
	}
	for i, s := range blocks.Shapes() {
		if d := s.Description(); s != blocks.Shape(i) || s.String() != d.Name {
			t.Errorf("shape %d is %v", i, s)
		}
		for i := range s.Description().Angles {
			if !seen[fmt.Sprint(s.String(), i)] {
				t.Errorf("no %s has the angles %v", s, s.Description().Angles[i])
			}
		}
	}
}

func TestShapesAsDescribedCatches(t *testing.T) {
	kite := everyOutline()[slices.IndexFunc(everyOutline(), func(s shaped) bool { return s.Shape == blocks.Kite })]
	for name, spoil := range map[string]func(d *blocks.Description){
		"an angle":     func(d *blocks.Description) { d.Angles = [][]float64{{90, 112.5, 46, 112.5}} },
		"no point":     func(d *blocks.Description) { d.Point = -1 },
		"a blunt side": func(d *blocks.Description) { d.Blunt = 1 },
		"slanted":      func(d *blocks.Description) { d.Grain = [2]int{0, 2} },
		"a seam":       func(d *blocks.Description) { d.Trimmed = []int{0, 1} },
		"short sides":  func(d *blocks.Description) { d.Edges = []int{0} },
		"askew":        func(d *blocks.Description) { d.Lies = func([]blocks.Place) (int, int) { return 3, 2 } },
	} {
		d := *blocks.Kite.Description()
		if spoil(&d); len(misdescribed(&d, kite)) == 0 {
			t.Errorf("%s goes through", name)
		}
	}
}

// TestHands: with its square corner or square end away from you, a left piece has its blunt end or its longer edge to the left; its
// mirror image is a right one.
func TestHands(t *testing.T) {
	count := map[blocks.Hand]int{}
	for _, s := range everyOutline() {
		d := s.Description()
		if d.Hand == nil {
			continue
		}
		o := outlined(s.outline)
		want := blocks.Right
		if toTheLeft(o) {
			want = blocks.Left
		}
		var mirrored outlined
		for i := range o { // clockwise again, from the corner that then is the first
			p := o.corner(-i)
			if len(o.where(90)) == 2 {
				p = o.corner(1 - i)
			}
			mirrored = append(mirrored, [2]float64{-p[0], p[1]})
		}
		got, other := d.Hand(placesOf(o)), d.Hand(placesOf(mirrored))
		count[got]++
		if got != want || other == got || other == blocks.Either {
			t.Errorf("%s %v is %v, want %v; its mirror image is %v", d.Name, o, got, want, other)
		}
	}
	if count[blocks.Left] < 4 || count[blocks.Left] != count[blocks.Right] {
		t.Errorf("the hands of all pieces are %v", count)
	}
}

// toTheLeft looks from the middle of the square end, or from the square corner, into the piece: what lies to the left of one who faces that
// end from the other side lies to the right of that look.
func toTheLeft(o outlined) bool {
	right := o.where(90)
	if len(right) == 2 {
		first := right[0]
		if right[1]-right[0] != 1 {
			first = right[1]
		}
		o = o.laid(first, first+1) // clockwise, so that the square end is up
		return o.length(first-1) > o.length(first+1)
	}
	x, y := o.way(right[0], right[0]+1)
	u, v := o.way(right[0], right[0]-1)
	bx, by := x/math.Hypot(x, y)+u/math.Hypot(u, v), y/math.Hypot(x, y)+v/math.Hypot(u, v)
	blunt := o.where(112.5)
	ax, ay := o.way(right[0], blunt[0])
	cx, cy := o.way(right[0], blunt[1])
	return (ax+cx)*-by+(ay+cy)*bx > 0
}

// TestShapesOfPlaces: what stands at a center, in a column or in an edging is of the shape that is asked for.
func TestShapesOfPlaces(t *testing.T) {
	for _, c := range []blocks.Centre{blocks.WebCentre, blocks.StarCentre} {
		if d := blocks.Gathering(c).Description(); d.Gathers != c {
			t.Errorf("a %s does not meet its like at center %d", d.Name, c)
		}
	}
	column := blocks.Column{Mean: 2, Whole: 3, End: 1}
	if whole, end := blocks.ColumnShape(false).Description(), blocks.ColumnShape(true).Description(); whole.LengthIn(&column) != 2 || end.LengthIn(&column) != 1 {
		t.Errorf("a column is made of %s and %s", whole.Name, end.Name)
	}
	if strip, square := blocks.EdgingShape(false).Description(), blocks.EdgingShape(true).Description(); !strip.Edging || square.Edging {
		t.Errorf("an edging is made of %s and %s", strip.Name, square.Name)
	}
}
