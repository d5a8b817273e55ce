package cutting

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/golden"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/internal/stop"
)

// planText is a plan's fabrics, a line each: what is bought, its bounds, its strips with what is cut off them and what is left.
func planText(p *Plan) string {
	var b strings.Builder
	for i := range p.Fabrics {
		b.WriteString(fabricText(&p.Fabrics[i], p.Units))
	}
	for _, s := range p.Sets {
		fmt.Fprintf(&b, "  %s: %v, given %v\n", s.Name, s.Runs, s.Given)
	}
	return b.String()
}

// fabricText is the line of one fabric.
func fabricText(f *Fabric, units measure.System) string {
	var b strings.Builder
	text := func(nm measure.NM) string { return measure.Number(nm, units) }
	fmt.Fprintf(&b, "  %s: buy %s for %s in %d strips, %d rows; at least %s, %d", f.Name, text(f.Purchase.Buy), text(f.LengthCut), f.StripCount, f.StripRows, text(f.LengthBound), f.StripBound)
	for _, block := range f.Blocks {
		fmt.Fprintf(&b, "; lengthwise %s beside %s:", text(block.LengthCut), text(block.LeftWidthCut))
		for _, c := range block.Columns {
			fmt.Fprintf(&b, " %d", c.Line)
		}
	}
	for _, s := range f.Strips {
		fmt.Fprintf(&b, "; %d x %s by %s", s.Times, text(s.WidthCut), text(s.LengthCut))
		if s.InBlock >= 0 || s.OnSheet >= 0 || s.OnEnd >= 0 || s.End >= 0 {
			fmt.Fprintf(&b, " (%d %d %d %d)", s.InBlock, s.OnSheet, s.OnEnd, s.End)
		}
		for _, c := range s.Cuts {
			fmt.Fprintf(&b, ", %d of %v", c.Units, c.Lines)
			if c.Rows > 1 {
				fmt.Fprintf(&b, " in %d rows", c.Rows)
			}
		}
		fmt.Fprintf(&b, ", left %s", text(s.EndLeftCut))
	}
	for _, c := range f.Chains {
		fmt.Fprintf(&b, "; %d x joined %v into %v, left %s, shortest %s", c.Times, c.Strips, c.Pieces, text(c.SpareCut), text(c.LeastCut))
	}
	for _, c := range f.Precuts {
		fmt.Fprintf(&b, "; or %d %s", c.Count, c.Name)
	}
	b.WriteString("\n")
	return b.String()
}

// TestPlansStay: plans of layouts that were written down once, as they were when somebody looked at them last: a line that changes is
// looked at, and one that takes more cloth or more strips than before is a fault, whatever else got better. The steps say what a plan
// costs.
func TestPlansStay(t *testing.T) {
	var b bytes.Buffer
	for i, top := range lay.Hundred() {
		if i%4 > 0 {
			continue
		}
		n := i / 4 % len(variants())
		var p *Plan
		steps := stop.Count(func(sign *stop.Sign) { p = Build(sign, top.Top, variants()[n]) })
		fmt.Fprintf(&b, "%s, variant %d, %d steps\n%s", top.Name, n, steps, planText(p))
	}
	golden.Text(t, "testdata/plans.txt", b.Bytes())
}
