package report

import (
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/samples"
)

// TestBothUnits: what is said to be bought in the other unit is the least that a shop sells by it and holds what is needed: an eighth of
// a yard is 0.1143 m, and neither is the other converted.
func TestBothUnits(t *testing.T) {
	for _, s := range samples.All() {
		c := newCuts(&Plans{Top: lay.Top(t, s.Text), BothShop: true})
		for i := range c.Fabrics {
			p := &c.Fabrics[i].Purchase
			said := c.shop(p)
			own, other, ok := strings.Cut(said, " or ")
			r, err := measure.Read(other)
			if !ok || own != c.Units.Shop(p.Buy) || err != nil {
				t.Fatalf("%s: %q, %v", s.Name, said, err)
			}
			step := measure.Centimetres.ShopStep()
			if c.Units == measure.Centimetres {
				step = measure.Inches.ShopStep()
			}
			if nm := r.In(c.Units).NM(); nm < p.Need || nm-step >= p.Need || nm%step != 0 {
				t.Errorf("%s: %s where %s are needed", s.Name, other, c.Units.Exact(p.Need))
			}
			if (&cuts{Plan: c.Plan, plans: &Plans{Top: c.plans.Top}}).shop(p) != own {
				t.Errorf("%s: both units where one is asked for", s.Name)
			}
		}
	}
}
