package booklet

import (
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/internal/report"
	"eighthturn/internal/templates"
)

// Study makes every report that a booklet says. The options have passed their Check.
func Study(t *quilt.Top, o cutting.Options) Reports { return Of(&report.Plans{Top: t, Cutting: o}) }

// Of is the same of plans of a top; the booklet gives letters to the fabrics in them.
func Of(p *report.Plans) Reports {
	return Reports{Top: p.Top, Plans: p, Cuts: p.Cuts(), Sewing: p.Steps(), Templates: templates.Build(p.Top, p.Cuts())}
}

// Names of the parts that may be left out.
const (
	templatesName = "templates"
	colouring     = "colouring"
)

// Parts are the parts that may be left out.
func Parts() []string { return []string{templatesName, colouring} }
