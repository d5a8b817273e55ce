package booklet

import (
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
	"eighthturn/internal/templates"
)

// Study makes every report that a booklet says. The options have passed their Check.
func Study(t *quilt.Top, o cutting.Options) Reports {
	cuts := cutting.Build(t, o)
	r := Reports{Top: t, Cuts: cuts, Sewing: sewing.Build(t, cuts, sewing.Options{}), Values: contrast.Study(t, contrast.Options{}), Templates: templates.Build(t, cuts)}
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
