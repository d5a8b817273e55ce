package laws

import (
	"fmt"
	"math"
	"math/big"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// FacesCoverPatches: a patch of one face has that face's outline; the faces of another
// overlap nowhere, have each corner in the patch or within Tolerance of its side, and come
// to its area but for what corners within Tolerance of slanted sides can make.
func FacesCoverPatches(t *quilt.Top) error {
	for i := range t.Patches {
		p := &t.Patches[i]
		faces := t.Faces[p.First : p.First+p.Count]
		if err := facesCover(p.Outline, faces); err != nil {
			return fmt.Errorf("patch %d: %w", i, err)
		}
	}
	return nil
}

func facesCover(patch Outline, faces []quilt.Face) error {
	if len(faces) == 1 {
		if !same(patch, faces[0].Outline) {
			return fmt.Errorf("its outline is %v, its only face's %v", patch, faces[0].Outline)
		}
		return nil
	}
	sum := new(big.Int)
	for i := range faces {
		o := faces[i].Outline
		sum.Add(sum, doubleArea(o))
		for _, p := range o {
			if !inOrOn(patch, p) {
				return fmt.Errorf("corner %v of its face %d lies outside: %v", p, i, patch)
			}
		}
		for j := range i {
			if overlap(convexParts(o), convexParts(faces[j].Outline)) {
				return fmt.Errorf("its faces %d and %d overlap: %v, %v", j, i, faces[j].Outline, o)
			}
		}
	}
	return nearArea(patch, sum)
}

func same(a, b Outline) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

// inOrOn says whether p lies inside a convex outline, on it, or within Tolerance of it.
func inOrOn(o Outline, p measure.Point) bool {
	inside := true
	for i := range o {
		a, b := o[i], o[(i+1)%len(o)]
		if onSide(a, b, p) {
			return true
		}
		inside = inside && hand(a, b, p) > 0
	}
	return inside
}

// nearArea compares the double area of faces with their patch's: exactly but for its
// slanted sides.
func nearArea(patch Outline, faces *big.Int) error {
	slack := slantedSlack(patch)
	difference := new(big.Int).Sub(faces, doubleArea(patch))
	if most, _ := big.NewFloat(slack).Int(nil); difference.CmpAbs(most) > 0 {
		return fmt.Errorf("its faces cover %v halves of a square nanometre more, %v is the most", difference, most)
	}
	return nil
}

// slantedSlack is how much corners within Tolerance of an outline's slanted sides can change
// its double area.
func slantedSlack(o Outline) float64 {
	slack := 0.0
	for i := range o {
		if a, b := o[i], o[(i+1)%len(o)]; !straight(a, b) {
			slack += 2 * float64(Tolerance) * length(minus(b, a))
		}
	}
	return slack
}

// Shares: each fabric's share of the top is its faces' part of all faces, to a thousand
// millionth; all faces come to what the patches cover, but for slanted sides; and all shares
// come to 1.
func Shares(t *quilt.Top) error {
	areas, err := fabricAreas(t)
	if err != nil {
		return err
	}
	shares := t.Share()
	if len(shares) != len(areas) {
		return fmt.Errorf("%d shares of %d fabrics", len(shares), len(areas))
	}
	all := new(big.Int)
	for _, a := range areas {
		all.Add(all, a)
	}
	sum := 0.0
	for i, share := range shares {
		sum += share
		want, _ := new(big.Rat).SetFrac(areas[i], all).Float64()
		if !close(share, want) {
			return fmt.Errorf("fabric %d has a share of %v, its faces cover %v of all", i, share, want)
		}
	}
	if !close(sum, 1) {
		return fmt.Errorf("the shares come to %v", sum)
	}
	return nil
}

func close(a, b float64) bool { return math.Abs(a-b) < 1e-9 }

// fabricAreas is twice the area of each fabric's faces, which come to what the patches cover.
func fabricAreas(t *quilt.Top) ([]*big.Int, error) {
	areas := make([]*big.Int, len(t.Fabrics))
	for i := range areas {
		areas[i] = new(big.Int)
	}
	more, slack := new(big.Int), 0.0
	for i := range t.Patches {
		p := &t.Patches[i]
		more.Sub(more, doubleArea(p.Outline))
		if p.Count > 1 {
			slack += slantedSlack(p.Outline)
		}
	}
	for i := range t.Faces {
		a := doubleArea(t.Faces[i].Outline)
		more.Add(more, a)
		areas[t.Faces[i].Fabric].Add(areas[t.Faces[i].Fabric], a)
	}
	if most, _ := big.NewFloat(slack).Int(nil); more.CmpAbs(most) > 0 {
		return nil, fmt.Errorf("the faces cover %v halves of a square nanometre more than the patches, %v is the most", more, most)
	}
	return areas, nil
}
