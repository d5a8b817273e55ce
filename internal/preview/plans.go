package preview

import (
	"slices"

	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/internal/report"
	"eighthturn/layout"
)

// plans are what several reports and files of one top read. Each is made when it is first
// asked for.
type plans struct {
	report.Plans
	top     *quilt.Top
	source  *layout.Source // for the lines of faults
	name    string         // of the layout's file, without folder and ending
	faces   [][]int        // by fabric
	pattern *patternFile   // nil until asked for
}

// newPlans are the plans of a top.
func newPlans(t *quilt.Top, source *layout.Source, name string) *plans {
	line := func(at int) int {
		n, _ := source.Position(at)
		return n
	}
	return &plans{Plans: report.Plans{Top: t, Contrast: contrast.Options{Distance: viewedFrom}, Line: line}, top: t, source: source, name: name}
}

// cuttingTab is what to cut and what to buy.
func cuttingTab(p *plans) reportTab { return documentTab("Cutting", report.Cutting(&p.Plans)) }

// cutting is how the top is cut.
func (p *plans) cutting() *cutting.Plan { return p.Cuts() }

// placed says whether the plans name places of the layout, which may move.
func (p *plans) placed() bool { return p.Cut() && len(p.Cuts().Faults)+len(p.Cuts().Warnings) > 0 }

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
