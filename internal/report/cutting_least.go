package report

import (
	"fmt"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
)

// LeastID is the id of the section that tells a plan of the fewest strips apart from one of the least fabric.
const LeastID = "least-fabric"

// leastFabric says what would be bought less if every strip were used up; nothing where that is not less.
func (c *cuts) leastFabric() document.Section {
	s := section(LeastID, "Fewest strips or least fabric", document.Detail)
	least := c.plans.least()
	if least == nil || len(c.Faults) > 0 {
		return s
	}
	other := newCuts(c.plans.as(least))
	var less []string
	for i := range c.Fabrics {
		if now, then := &c.Fabrics[i], &least.Fabrics[i]; then.Purchase.Buy < now.Purchase.Buy {
			less = append(less, fmt.Sprintf("%s of %s instead of %s", other.shop(&then.Purchase), c.name(i), c.shop(&now.Purchase)))
		}
	}
	switch {
	case len(less) == 0:
		return s
	case len(less) > maxNamed:
		less = append(less[:maxNamed:maxNamed], "less of "+measure.Count(len(less)-maxNamed, "other fabric"))
	}
	return with(s, paragraph("These lists use whole strips for borders and binding, and few cuts. With --least-cloth you cut more, and buy "+measure.List(less)+
		": borders and binding are pieced from strip ends, and ends are subcut into narrower strips."))
}

// least is how the top is cut with the least fabric; nil where that is asked for already.
func (p *Plans) least() *cutting.Plan {
	if p.Cutting.LeastCloth {
		return nil
	}
	return p.all().least.Get(p.sign, func() *cutting.Plan {
		o := p.Cutting
		o.LeastCloth = true
		return cutting.Build(p.sign, p.Top, o)
	})
}
