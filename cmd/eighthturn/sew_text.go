package main

import (
	"fmt"
	"strings"

	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/render"
	"eighthturn/layout"
)

// sewPage is a sewing plan put into lines for a terminal.
type sewPage struct {
	strings.Builder
	sewing.Words
}

// sewText is what `sew` says.
func sewText(name string, plan *sewing.Plan) string {
	p := &sewPage{Words: sewing.Words{Plan: plan}}
	fmt.Fprintf(p, "%s: how it goes together, with seams of %s\n", name, p.Text(plan.Seam))
	p.write("", "Sizes are unfinished, from cut edge to cut edge with the seam allowances, to the nearest "+p.Mark()+". Rows are counted from the top, columns from the left. Clockwise is as the right side shows it; on the wrong side, where you press, it looks anticlockwise.")
	for i := range plan.Blocks {
		p.block(i)
	}
	p.assembly()
	p.pressing()
	p.grain()
	p.bulk()
	p.heading("Take care")
	for _, c := range plan.Cautions {
		p.item(c)
	}
	return p.String()
}

func (p *sewPage) heading(text string) { p.WriteString("\n" + layout.Visible(text) + "\n") }

// write writes a sentence, wrapped.
func (p *sewPage) write(indent, text string) {
	p.WriteString(render.Wrapped(layout.Visible(text), indent))
}

// item writes a sentence behind a dash.
func (p *sewPage) item(text string) {
	p.WriteString("  - " + strings.TrimPrefix(render.Wrapped(layout.Visible(text), "    "), "    "))
}

// detail writes a sentence that belongs to a step.
func (p *sewPage) detail(text string) { p.write("     ", text) }
