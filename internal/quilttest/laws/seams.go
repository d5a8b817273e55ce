package laws

import (
	"cmp"
	"fmt"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// stretch is a part of a face's outline that a seam takes, clockwise.
type stretch struct{ from, to measure.Point }

// Seams: each stretch of each face's outline is the edge of the quilt, or lies beside a
// place where nothing is, or has one seam. Seams begin and end at a corner of one of their
// faces; they join faces of two patches, strip seams two faces of one patch.
func Seams(t *quilt.Top) error {
	taken := make([][]stretch, len(t.Faces))
	for i, s := range t.Seams {
		if err := takeSeam(t, taken, s, false); err != nil {
			return fmt.Errorf("seam %d, %v: %w", i, s, err)
		}
	}
	for i, s := range t.StripSeams {
		if err := takeSeam(t, taken, s, true); err != nil {
			return fmt.Errorf("strip seam %d, %v: %w", i, s, err)
		}
	}
	for i := range t.Faces {
		if err := sewn(t, t.Faces[i].Outline, taken[i]); err != nil {
			return fmt.Errorf("face %d of patch %d: %w", i, t.Faces[i].Patch, err)
		}
	}
	return nil
}

// takeSeam gives a seam to both its faces.
func takeSeam(t *quilt.Top, taken [][]stretch, s quilt.Seam, strip bool) error {
	a, b := int(s.A), int(s.B)
	if a < 0 || b < 0 || a >= len(t.Faces) || b >= len(t.Faces) {
		return fmt.Errorf("there are %d faces", len(t.Faces))
	}
	if t.Faces[a].Patch == t.Faces[b].Patch != strip {
		return fmt.Errorf("it joins patches %d and %d", t.Faces[a].Patch, t.Faces[b].Patch)
	}
	for _, p := range [2]measure.Point{s.From, s.To} {
		if !slices.Contains(t.Faces[a].Outline, p) && !slices.Contains(t.Faces[b].Outline, p) {
			return fmt.Errorf("neither face has a corner at %v", p)
		}
	}
	taken[a] = append(taken[a], stretch{s.From, s.To})
	taken[b] = append(taken[b], stretch{s.To, s.From})
	return nil
}

// sewn sees that the stretches lie on the outline and leave nothing out that is not open.
func sewn(t *quilt.Top, o Outline, taken []stretch) error {
	sides := make([][]stretch, len(o))
	for _, s := range taken {
		side := sideOf(o, s)
		if side < 0 {
			return fmt.Errorf("the seam from %v to %v does not lie on its outline: %v", s.from, s.to, o)
		}
		sides[side] = append(sides[side], s)
	}
	for i := range o {
		if err := sideSewn(t, o[i], o[(i+1)%len(o)], sides[i]); err != nil {
			return fmt.Errorf("side %d of %v: %w", i, o, err)
		}
	}
	return nil
}

// sideOf is the side of the outline that a stretch lies on and runs along, -1 if none.
func sideOf(o Outline, s stretch) int {
	for i, a := range o {
		b := o[(i+1)%len(o)]
		if dotSign(minus(b, a), minus(s.to, s.from)) > 0 && nearSide(a, b, s.from) && nearSide(a, b, s.to) {
			return i
		}
	}
	return -1
}

// nearSide is onSide, but that a point may lie Tolerance beyond the end of a slanted side.
func nearSide(a, b, p measure.Point) bool {
	return onSide(a, b, p) || meant(a, b, p, a) || meant(a, b, p, b)
}

// meant says whether p and q are one point of the side from a to b: exactly, but for
// rounding along a slanted one.
func meant(a, b, p, q measure.Point) bool {
	d := minus(p, q)
	return p == q || !straight(a, b) && max(d.X, -d.X) <= Tolerance && max(d.Y, -d.Y) <= Tolerance
}

// sideSewn sees that the stretches on the side from a to b follow one another, with gaps
// only where no cloth lies on its other hand.
func sideSewn(t *quilt.Top, a, b measure.Point, list []stretch) error {
	way := minus(b, a)
	slices.SortFunc(list, func(s, u stretch) int {
		return cmp.Compare(project(way, minus(s.from, a)), project(way, minus(u.from, a)))
	})
	at := a
	for _, s := range list {
		if err := follows(t, [2]measure.Point{a, b}, at, s.from); err != nil {
			return err
		}
		at = s.to
	}
	return follows(t, [2]measure.Point{a, b}, at, b)
}

// project is how far p lies along a way, in no unit.
func project(way, p measure.Point) float64 {
	return float64(way.X)*float64(p.X) + float64(way.Y)*float64(p.Y)
}

// follows sees that one stretch of a side may end and the next begin at the given points.
func follows(t *quilt.Top, side [2]measure.Point, end, begin measure.Point) error {
	switch {
	case meant(side[0], side[1], end, begin):
		return nil
	case dotSign(minus(side[1], side[0]), minus(begin, end)) < 0:
		return fmt.Errorf("two seams lie between %v and %v", begin, end)
	case !open(t, end, begin):
		return fmt.Errorf("no seam lies between %v and %v", end, begin)
	}
	return nil
}

// open says whether nothing lies on the left hand of the way from a to b, which must run
// along the grid.
func open(t *quilt.Top, a, b measure.Point) bool {
	d := minus(b, a)
	if d.X != 0 && d.Y != 0 {
		return false
	}
	out := measure.Point{X: sign(d.Y), Y: -sign(d.X)}
	if !inside(t.Outer, a.Add(out)) {
		return true
	}
	return emptyBetween(t, a.Add(out), b.Add(out))
}

func sign(n measure.NM) measure.NM { return measure.NM(cmp.Compare(n, 0)) }

func inside(r quilt.Rect, p measure.Point) bool {
	return p.X > r.Min.X && p.Y > r.Min.Y && p.X < r.Max.X && p.Y < r.Max.Y
}

// emptyBetween says whether the stretch from a to b, which runs along the grid a nanometre
// off one of its lines, passes through empty cells alone.
func emptyBetween(t *quilt.Top, a, b measure.Point) bool {
	way := measure.Point{X: sign(b.X - a.X), Y: sign(b.Y - a.Y)}
	for at := a; at != b; {
		cell := cellAt(t, at.Add(way))
		if cell < 0 || t.Cells[cell].Label != "" {
			return false
		}
		r := CellRect(t, cell)
		at.X = min(max(b.X, r.Min.X), r.Max.X)
		at.Y = min(max(b.Y, r.Min.Y), r.Max.Y)
	}
	return true
}

// cellAt is the cell that holds a point inside it, -1 where none does.
func cellAt(t *quilt.Top, p measure.Point) int {
	d := minus(p, t.FirstCell)
	x, y := int(d.X/t.StepFinished), int(d.Y/t.StepFinished)
	if d.X < 0 || d.Y < 0 || x >= t.Columns || y >= t.Rows || !inside(CellRect(t, y*t.Columns+x), p) {
		return -1
	}
	return y*t.Columns + x
}
