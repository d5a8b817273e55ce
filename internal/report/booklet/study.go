package booklet

import (
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/internal/report"
	"eighthturn/internal/templates"
)

// Study makes every report that a booklet says. The options have passed their Check.
func Study(t *quilt.Top, o cutting.Options) Reports {
	p := &report.Plans{Top: t, Cutting: o}
	r := Reports{Top: t, Plans: p, Cuts: p.Cuts(), Sewing: p.Steps(), Values: p.Values(), Templates: templates.Build(t, p.Cuts())}
	if o.Copies > 1 {
		o.Copies = 1
		r.One = cutting.Build(t, o)
	}
	return r
}

// Names of the parts that may be left out.
const (
	templatesName = "templates"
	colouring     = "colouring"
	greys         = "values"
)

// Parts are the parts that may be left out.
func Parts() []string { return []string{templatesName, colouring, greys} }
