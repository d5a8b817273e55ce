package templates

import (
	"math"
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// AtMotif is a piece that is cut from a motif of a print, as it lies there at 0 degrees: its outlines in nanometers from its middle, its
// center of gravity, y downwards.
type AtMotif struct {
	Shape    blocks.Shape
	Finished []measure.Point
	Cut      []measure.Point
	Round    int // how many of its like fill the turn round its first corner; 1 where they leave a gap
	Count    int // pieces of the top
}

// CutAt are the pieces of a top that are cut from a motif by its name, most of them first: of each shape and size one.
func CutAt(top *quilt.Top, motif string) (list []AtMotif) {
	for i := range top.Patches {
		c := top.CutOfPatch(i)
		if c == nil || c.Motif != motif {
			continue
		}
		made := atMotif(top, i, c)
		like := func(a AtMotif) bool {
			_, same := congruent(floats(a.Finished), floats(made.Finished))
			return a.Shape == made.Shape && same
		}
		if n := slices.IndexFunc(list, like); n >= 0 {
			list[n].Count++
		} else {
			list = append(list, made)
		}
	}
	slices.SortStableFunc(list, func(a, b AtMotif) int { return b.Count - a.Count })
	return list
}

// atMotif is a patch that is cut from a motif.
func atMotif(top *quilt.Top, patch int, c *quilt.Cut) AtMotif {
	p := &top.Patches[patch]
	place, _ := top.PlaceSaid(patch)
	upright := quilt.ClothPlace{Turn: float64(c.Pointing)}
	finished := make([]xy, len(p.Outline))
	for i, q := range p.Outline {
		across, down := place.OnCloth(float64(q.X), float64(q.Y))
		finished[i].x, finished[i].y = upright.OnCloth(across-float64(c.Place.X), down-float64(c.Place.Y))
	}
	return AtMotif{Shape: p.Shape, Finished: rounded(finished), Cut: rounded(cutOutline(finished, float64(top.Seam))), Round: roundOf(finished), Count: 1}
}

// roundOf is how many of a piece fill the turn round its first corner.
func roundOf(outline []xy) int {
	before, after := unitOf(outline[0], outline[len(outline)-1]), unitOf(outline[0], outline[1])
	angle := math.Acos(min(1, max(-1, float64(before.x*after.x)+float64(before.y*after.y))))
	n := int(math.Round(2 * math.Pi / angle))
	if math.Abs(float64(n)*angle-2*math.Pi) > 1e-3 {
		return 1
	}
	return n
}
