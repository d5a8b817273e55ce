package laws

import (
	"fmt"
	"math/big"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// CellRect is the place of a cell on the top.
func CellRect(t *quilt.Top, cell int) quilt.Rect {
	at := t.FirstCell.Add(measure.Point{X: measure.NM(cell%t.Columns) * t.StepFinished, Y: measure.NM(cell/t.Columns) * t.StepFinished})
	return quilt.Rect{Min: at, Max: at.Add(measure.Point{X: t.SideFinished, Y: t.SideFinished})}
}

// emptyCells is the places where the layout says that nothing is there.
func emptyCells(t *quilt.Top) []Outline {
	var list []Outline
	for i := range t.Cells {
		if t.Cells[i].Label == "" {
			list = append(list, outlineOf(CellRect(t, i)))
		}
	}
	return list
}

// CoverOnce: the patches' areas come to that of the top less its empty cells, to the last
// square nanometre; none leaves the top; and no two have a point inside in common.
func CoverOnce(t *quilt.Top) error {
	outlines := emptyCells(t)
	empty := len(outlines)
	for i := range t.Patches {
		outlines = append(outlines, t.Patches[i].Outline)
	}
	if err := areasAddUp(t, outlines, empty); err != nil {
		return err
	}
	parts := make([][]Outline, len(outlines))
	boxes := make([]quilt.Rect, len(outlines))
	for i, o := range outlines {
		if boxes[i] = boxOf(o, 0); !holds(t.Outer, boxes[i]) {
			return fmt.Errorf("patch %d leaves the top: %v", i-empty, o)
		}
		if parts[i] = convexParts(o); parts[i] == nil {
			return fmt.Errorf("patch %d is not simple: %v", i-empty, o)
		}
	}
	return newBuckets(boxes).pairs(func(i, j int) error {
		if !overlap(parts[i], parts[j]) {
			return nil
		}
		if i < empty {
			return fmt.Errorf("patch %d covers a place where nothing should be: %v", j-empty, outlines[j])
		}
		return fmt.Errorf("patches %d and %d overlap: %v, %v", i-empty, j-empty, outlines[i], outlines[j])
	})
}

func holds(outer, r quilt.Rect) bool {
	return r.Min.X >= outer.Min.X && r.Min.Y >= outer.Min.Y && r.Max.X <= outer.Max.X && r.Max.Y <= outer.Max.Y
}

// areasAddUp compares the outlines' areas, empty cells included, with the top's.
func areasAddUp(t *quilt.Top, outlines []Outline, empty int) error {
	sum := new(big.Int)
	for _, o := range outlines {
		sum.Add(sum, doubleArea(o))
	}
	want := doubleArea(outlineOf(t.Outer))
	if sum.Cmp(want) != 0 {
		return fmt.Errorf("patches and %d empty cells cover %v halves of a square nanometre, the top has %v: %v too many",
			empty, sum, want, new(big.Int).Sub(sum, want))
	}
	return nil
}

// overlap says whether any of one's convex parts has a point inside in common with any of
// the other's.
func overlap(one, other []Outline) bool {
	for _, a := range one {
		for _, b := range other {
			if !parted(a, b) && !parted(b, a) {
				return true
			}
		}
	}
	return false
}

// parted says whether a side of the convex outline a has all of b on its outer side.
func parted(a, b Outline) bool {
	for i := range a {
		if outside(a[i], a[(i+1)%len(a)], b) {
			return true
		}
	}
	return false
}

// outside says whether no corner of o lies to the right of the way from a to b.
func outside(a, b measure.Point, o Outline) bool {
	for _, p := range o {
		if hand(a, b, p) > 0 {
			return false
		}
	}
	return true
}

func convex(o Outline) bool {
	for i := range o {
		if hand(o[i], o[(i+1)%len(o)], o[(i+2)%len(o)]) < 0 {
			return false
		}
	}
	return true
}

// convexParts is the outline itself if it is convex, or triangles that fill it; nil if it
// crosses itself or goes the wrong way.
func convexParts(o Outline) []Outline {
	if convex(o) {
		return []Outline{o}
	}
	var parts []Outline
	rest := append(Outline{}, o...)
	for len(rest) > 3 {
		ear := findEar(rest)
		if ear < 0 {
			return nil
		}
		n := len(rest)
		parts = append(parts, Outline{rest[(ear+n-1)%n], rest[ear], rest[(ear+1)%n]})
		rest = append(rest[:ear], rest[ear+1:]...)
	}
	return append(parts, rest)
}

// findEar is a corner whose triangle with its neighbours lies inside the outline and holds
// no other corner; -1 where there is none.
func findEar(o Outline) int {
	n := len(o)
	for i := range o {
		triangle := Outline{o[(i+n-1)%n], o[i], o[(i+1)%n]}
		if hand(triangle[0], triangle[1], triangle[2]) > 0 && holdsNone(triangle, o) {
			return i
		}
	}
	return -1
}

// holdsNone says whether no corner of o but the triangle's own lies in or on the triangle.
func holdsNone(triangle, o Outline) bool {
	for _, p := range o {
		if p == triangle[0] || p == triangle[1] || p == triangle[2] {
			continue
		}
		if hand(triangle[0], triangle[1], p) >= 0 && hand(triangle[1], triangle[2], p) >= 0 && hand(triangle[2], triangle[0], p) >= 0 {
			return false
		}
	}
	return true
}
