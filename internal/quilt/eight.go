package quilt

import (
	"maps"
	"math"
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// WedgeFinished is the height of the wedges of a top that show a fabric, of most of them where they differ; where none shows it that of
// most wedges; 0 where the top has none.
func (t *Top) WedgeFinished(fabric int) measure.NM {
	wedge := blocks.Gathering(blocks.WebCentre)
	own, all := map[measure.NM]int{}, map[measure.NM]int{}
	for i := range t.Patches {
		p := &t.Patches[i]
		if p.Shape != wedge {
			continue
		}
		f := p.upright()
		height := nearly(f.lower - f.upper)
		all[height]++
		if int(t.Faces[p.First].Fabric) == fabric {
			own[height]++
		}
	}
	if len(own) > 0 {
		all = own
	}
	var height measure.NM
	for _, h := range slices.Sorted(maps.Keys(all)) {
		if all[h] >= all[height] {
			height = h
		}
	}
	return height
}

// EightOf is eight wedges of a height round their tips, each cut from one place of a fabric, or from two by turns, as a top of their own,
// with the first one on top. Its fabrics are those of the whole, by index; beyond the wedges nothing is there.
func (t *Top) EightOf(fabric int, height measure.NM, cuts ...Cut) *Top {
	half := measure.NM(math.Round(float64(height) * (math.Sqrt2 - 1))) // of a wedge's wide end: tan 22.5 degrees
	other := *t
	side := 2 * height
	other.Outer = Rect{Max: measure.Point{X: side, Y: side}}
	other.Field, other.FirstCell, other.Columns, other.Rows = other.Outer, measure.Point{}, 1, 1
	other.SideFinished, other.StepFinished = side, side
	other.Cells = []Cell{{}}
	other.Patches, other.Faces, other.Cuts, other.CutOf = nil, nil, cuts, make([]int16, wedgesRound)
	other.Seams, other.StripSeams, other.Alike, other.Colorways, other.Sizes, other.Warnings, other.Dealt = nil, nil, nil, nil, nil, nil, nil
	other.CutFacts = CutFacts{Fabrics: t.CutFacts.Fabrics, StripsCut: t.CutFacts.StripsCut, StripGiven: t.CutFacts.StripGiven, Backing: -1}
	from, to := height-half, height+half
	tip := measure.Point{X: height, Y: height}
	rim := [wedgesRound]measure.Point{{X: from}, {X: to}, {X: side, Y: from}, {X: side, Y: to}, {X: to, Y: side}, {X: from, Y: side}, {Y: to}, {Y: from}}
	for i := range rim {
		other.CutOf[i] = int16(i % len(cuts))
		next := rim[(i+1)%wedgesRound]
		outline := []measure.Point{tip, rim[i], next}
		other.Patches = append(other.Patches, Patch{Outline: outline, First: int32(i), Count: 1, Cell: -1, Number: int32(i + 1), Border: -1, Set: -1, Shape: blocks.Gathering(blocks.WebCentre)})
		other.Faces = append(other.Faces, Face{Outline: outline, Fabric: int32(fabric), Patch: int32(i)})
		other.Seams = append(other.Seams, Seam{A: int32(i), B: int32((i + 1) % wedgesRound), From: next, To: tip})
	}
	return &other
}
