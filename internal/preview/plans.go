package preview

import (
	"slices"

	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// plans are what several reports and files of one top read. Each is made when it is first
// asked for.
type plans struct {
	top     *quilt.Top
	source  *layout.Source // for the lines of faults
	name    string         // of the layout's file, without folder and ending
	cuts    *cutting.Plan
	sews    *sewing.Plan
	faces   [][]int      // by fabric
	pattern *patternFile // nil until asked for
}

// cutting is how the top is cut.
func (p *plans) cutting() *cutting.Plan {
	if p.cuts == nil {
		p.cuts = cutting.Build(p.top, cutting.Options{})
	}
	return p.cuts
}

// placed says whether the plans name places of the layout, which may move.
func (p *plans) placed() bool { return p.cuts != nil && len(p.cuts.Faults)+len(p.cuts.Warnings) > 0 }

// sewing is how the top is sewn.
func (p *plans) sewing() *sewing.Plan {
	if p.sews == nil {
		p.sews = sewing.Build(p.top, sewing.Options{})
	}
	return p.sews
}

// facesOf are the faces of a fabric.
func (p *plans) facesOf(fabric int) []int {
	if p.faces == nil {
		p.faces = make([][]int, len(p.top.Fabrics))
		for i := range p.top.Faces {
			f := p.top.Faces[i].Fabric
			p.faces[f] = append(p.faces[f], i)
		}
	}
	return p.faces[fabric]
}

// patchesAt are the patches that have a corner at one of some points.
func (p *plans) patchesAt(points []quilt.Point) []int {
	var list []int
	for i := range p.top.Patches {
		if slices.ContainsFunc(p.top.Patches[i].Outline, func(q quilt.Point) bool { return slices.Contains(points, q) }) {
			list = append(list, i)
		}
	}
	return list
}

// swatch is a fabric's colour.
func (p *plans) swatch(fabric int) []string { return []string{p.top.Fabrics[fabric].Colour.Hex()} }
