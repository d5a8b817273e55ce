package main

import (
	"fmt"
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sizes"
	"eighthturn/internal/render"
)

// chartPage is a chart put into lines for a terminal.
type chartPage struct {
	strings.Builder
	sizes.Options
}

func (p *chartPage) length(nm measure.NM) string { return measure.Text(nm, p.Units) }

// mark is a length that lies on the marks of a ruler, for a column.
func (p *chartPage) mark(nm measure.NM) string { return measure.Number(nm, p.Units) }

// exact is a length that lies between marks, at the right of its column: a thousandth of an inch, a tenth of a millimetre.
func (p *chartPage) exact(nm measure.NM) string {
	if p.Units == measure.Centimetres {
		return " " + measure.Decimal(nm, p.Units, 2)
	}
	return " " + measure.Decimal(nm, p.Units, 3)
}

// off is a difference with its sign.
func (p *chartPage) off(nm measure.NM) string {
	text := p.exact(nm)
	if nm > 0 {
		text = " +" + text[1:]
	}
	if strings.Trim(text, " +-0.") == "" {
		return " 0"
	}
	return text
}

func (p *chartPage) heading(what string) {
	units := "inches"
	if p.Units == measure.Centimetres {
		units = "centimetres"
	}
	p.WriteString(render.Wrapped(fmt.Sprintf("%s, in %s, for seams of %s", what, units, p.length(p.Seam)), ""))
}

// notes are what stands below a chart, one paragraph each.
func (p *chartPage) notes(list ...string) {
	p.WriteByte('\n')
	for _, text := range list {
		if text != "" {
			p.WriteString(render.Wrapped(text, ""))
		}
	}
}

// caution is what is customarily said to those who cut.
const caution = "Mind your fingers: keep them back from the ruler's edge, cut away from yourself, and close the rotary cutter after every cut."

// alsoOf says which kinds share the sides of the first, "" where it is alone.
func alsoOf(list []sizes.Height) string {
	var said []string
	for _, h := range list {
		if len(h.Kinds) > 1 {
			said = append(said, "What is said of "+h.Kinds[0]+" blocks goes for "+listed(h.Kinds[1:])+" blocks too.")
		}
	}
	return strings.Join(said, " ")
}

func stripChartText(c *sizes.StripChart) string {
	p := &chartPage{Options: c.Options}
	p.heading("What strips make")
	p.WriteByte('\n')
	p.blocks(c)
	p.WriteByte('\n')
	p.squares(c)
	eighth, rule := "1 mm", ""
	if p.Units == measure.Inches {
		eighth = "1/8 in"
	}
	if p.ruled(c) {
		rule = "Where the rule of thumb, the finished leg and 7/8, asks for more, it stands under \"rule\"."
	}
	p.notes(
		"Kites: one from a square, the right angle in its corner; there is some to trim after sewing. Stop pieces: a square, cut once on the diagonal, gives a left and a right one. Ring corners: a square, cut once on the diagonal, gives two; "+
			"cut it as it stands here, the next "+eighth+" above the exact need, or "+eighth+" larger and trim. "+rule,
		"Wedges stand side by side in the strip, every other one turned round; all are counted that fit into "+p.length(p.UsableWidth)+" of it, the ends squared off within that.",
		alsoOf(c.Heights), caution)
	return p.String()
}

// blocks is the first table of strips: what is finished, and the wedges.
func (p *chartPage) blocks(c *sizes.StripChart) {
	names, frames := []string{"strip", "wedge"}, []string{"cut", "finished"}
	for _, h := range c.Heights {
		names, frames = append(names, h.Kinds[0]+" side"), append(frames, "finished")
	}
	rows := [][]string{append(names, "wedge base", " wedges"), append(frames, "cut", " of "+p.length(p.UsableWidth))}
	for _, s := range c.Strips {
		row := []string{p.mark(s.StripCut), p.mark(s.WedgeFinished)}
		for _, side := range s.SidesFinished {
			row = append(row, p.exact(side))
		}
		rows = append(rows, append(row, p.exact(s.WedgeBaseCut), fmt.Sprintf(" %d", s.Wedges)))
	}
	p.WriteString(render.Aligned(rows, "  "))
}

// squares is the second table of strips: squares to cut.
func (p *chartPage) squares(c *sizes.StripChart) {
	rule := ""
	if p.ruled(c) {
		rule = "rule"
	}
	rows := [][]string{{"strip", "kite", "", "stop", "", "corner", "", ""}, {"cut", "need", "cut", "need", "cut", "need", "cut", rule}}
	for _, s := range c.Strips {
		row := []string{p.mark(s.StripCut), p.exact(s.Kite.Need), p.mark(s.Kite.Cut), p.exact(s.Stop.Need), p.mark(s.Stop.Cut), p.exact(s.Corner.Need), p.mark(s.Corner.Cut)}
		if s.Corner.RuleCut > s.Corner.Cut {
			row = append(row, p.mark(s.Corner.RuleCut))
		}
		rows = append(rows, row)
	}
	p.WriteString(render.Aligned(rows, "  "))
}

// ruled says whether the rule of thumb asks for more than the exact need in some row.
func (p *chartPage) ruled(c *sizes.StripChart) bool {
	for _, s := range c.Strips {
		if s.Corner.RuleCut > s.Corner.Cut {
			return true
		}
	}
	return false
}

func sideChartText(c *sizes.SideChart) string {
	p := &chartPage{Options: c.Options}
	p.heading("Which strips blocks need")
	p.WriteByte('\n')
	first, second := []string{"block"}, []string{"finished"}
	for _, h := range c.Heights {
		first, second = append(first, h.Kinds[0]+" strip", "", ""), append(second, "exact", "mark", "off by")
	}
	rows := [][]string{append(first, ""), append(second, "")}
	for _, s := range c.Sides {
		row := []string{p.mark(s.SideFinished)}
		for _, strip := range s.Strips {
			row = append(row, p.exact(strip.StripCut), p.mark(strip.MarkCut), p.off(strip.SideErrorFinished))
		}
		if s.Near {
			row = append(row, "*")
		}
		rows = append(rows, row)
	}
	p.WriteString(render.Aligned(rows, "  "))
	p.notes("Strips are cut. Mark is the nearest mark of a ruler, and beside it stands how much larger or smaller a block finishes when its strip is cut there; over a row of blocks that adds up.",
		"* suits all of them: no side is off by more than "+p.length(nearText(p.Units))+".", alsoOf(c.Heights), caution)
	return p.String()
}

// nearText is chart.Near as a length that reads well.
func nearText(s measure.System) measure.NM {
	if s == measure.Centimetres {
		return measure.Nearest(sizes.Near, measure.Millimetre/10)
	}
	return sizes.Near
}

func tumblerChartText(c *sizes.TumblerChart) string {
	p := &chartPage{Options: c.Options}
	p.heading(fmt.Sprintf("Pieces from strips of %s by the line of a wedge rule", p.length(p.StripCut)))
	p.WriteByte('\n')
	rows := [][]string{{"line", "wide side", "", "narrow side", "", "mean", " pieces", ""}, {"", "cut", "finished", "cut", "finished", "finished", " of " + p.length(p.UsableWidth), ""}}
	slim := ""
	for _, t := range c.Tumblers {
		row := []string{p.mark(t.LineCut), p.exact(t.WideCut), p.exact(t.WideFinished), p.exact(t.NarrowCut), p.exact(t.NarrowFinished), p.exact(t.MeanFinished), fmt.Sprintf(" %d", t.Pieces)}
		if t.Slim {
			row, slim = append(row, "slim"), "Slim: the narrow side finishes below two seam allowances, and the seams lie on top of each other."
		}
		rows = append(rows, row)
	}
	p.WriteString(render.Aligned(rows, "  "))
	p.notes("Line: the line of the rule that lies on the strip's edge, marked with the width of the strip that it measures. Mean: what a piece adds to its column. Pieces stand side by side in the strip, every other one turned round.",
		slim, caution)
	return p.String()
}
