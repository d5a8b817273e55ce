package preview

import (
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/quilt"
	"eighthturn/internal/report"
	"eighthturn/layout"
)

// plans are what several reports and files of one top read. Each is made when it is first
// asked for.
type plans struct {
	report.Plans
	source  *layout.Source // for the lines of faults
	name    string         // of the layout's file, without folder and ending
	pattern *patternFile   // nil until asked for
}

// newPlans are the plans of a top.
func newPlans(t *quilt.Top, source *layout.Source, name string) *plans {
	line := func(at int) int {
		n, _ := source.Position(at)
		return n
	}
	of := report.Plans{Top: t, Contrast: contrast.Options{Distance: viewedFrom}, Line: line}
	if t.Title == "" {
		of.Name = name
	}
	return &plans{Plans: of, source: source, name: name}
}

// placed says whether the plans name places of the layout, which may move.
func (p *plans) placed() bool { return p.Cut() && len(p.Cuts().Faults)+len(p.Cuts().Warnings) > 0 }
