package preview

import (
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/quilt"
	"eighthturn/internal/report"
	"eighthturn/internal/stop"
	"eighthturn/layout"
)

// plans are what several reports and files of one top read. Each is made when it is first
// asked for.
type plans struct {
	*report.Plans
	source *layout.Source // for the lines of faults
	name   string         // of the layout's file, without folder and ending
	worn   []string       // the size and the colorway that a page asked for, as addresses name them
	prints bool           // pictures show prints as they are cut
	*patterns
}

// newPlans are the plans of a top.
func newPlans(t *quilt.Top, source *layout.Source, name string) *plans {
	line := func(at int) int {
		n, _ := source.Position(at)
		return n
	}
	of := &report.Plans{Top: t, Contrast: contrast.Options{Distance: viewedFrom}, Line: line}
	if t.Title == "" {
		of.Name = name
	}
	return &plans{Plans: of.Until(nil), source: source, name: name, patterns: &patterns{}}
}

// until is the plans for one whose work ends by a sign. What it works out, the others have too.
func (p *plans) until(sign *stop.Sign) *plans {
	shared := *p
	shared.Plans = p.Plans.Until(sign)
	return &shared
}

// placed says whether the plans name places or lines of the layout, which may move.
func (p *plans) placed() bool {
	return p.Suggests() || p.Cut() && len(p.Cuts().Faults)+len(p.Cuts().Warnings) > 0
}
