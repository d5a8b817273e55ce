package main

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"eighthturn/layout"
	"eighthturn/measure"
	"eighthturn/values"
)

// leaf is a study put into lines for a terminal.
type leaf struct {
	strings.Builder
	*values.Report
	before *values.Report // without the colours that are tried; nil if none are
}

// valuesText is what `values` says.
func valuesText(name string, r, before *values.Report) string {
	p := &leaf{Report: r, before: before}
	fmt.Fprintf(p, "%s: light and dark, seen from %s\n", name, p.away())
	if len(r.Tried) > 0 {
		p.WriteString(wrapped("tried, and not written into the layout: "+strings.Join(r.Tried, ", "), ""))
	}
	p.figures()
	p.fabrics()
	p.seams()
	p.pairs()
	p.vanishing()
	p.eyes()
	p.waysOut()
	p.grounds()
	return p.String()
}

func (p *leaf) heading(text string) { fmt.Fprintf(p, "\n%s\n", text) }

// away is the distance in words.
func (p *leaf) away() string {
	if p.Units == measure.Centimetres {
		return measure.Decimal(p.Thresholds.Distance/100, measure.Centimetres, 2) + " m"
	}
	return strings.TrimSuffix(measure.Decimal(p.Thresholds.Distance/12, measure.Inches, 1), ".0") + " ft"
}

// length is a length to a tenth of the unit: seams are added up, not cut by it.
func (p *leaf) length(nm measure.NM) string {
	unit := "in"
	if p.Units == measure.Centimetres {
		unit = "cm"
	}
	return measure.Decimal(nm, p.Units, 1) + " " + unit
}

func percent(part, whole measure.NM) string {
	if whole == 0 {
		return "0 %"
	}
	return fmt.Sprintf("%.0f %%", 100*float64(part)/float64(whole))
}

func (p *leaf) figures() {
	if len(p.Figures) == 0 {
		return
	}
	p.heading("Does it read?")
	for i := range p.Figures {
		f := &p.Figures[i]
		text := figureName(f) + ": " + string(f.Verdict)
		if p.before != nil && i < len(p.before.Figures) && p.before.Figures[i].Verdict != f.Verdict {
			text += " (as it was: " + string(p.before.Figures[i].Verdict) + ")"
		}
		p.WriteString(wrapped(layout.Visible(text), "  "))
		for _, part := range p.parts(f) {
			p.WriteString(wrapped(layout.Visible(part), "    "))
		}
	}
}

// figureName is what a figure is, in words.
func figureName(f *values.Figure) string {
	of, against := listed(f.Of), listed(f.Against)
	switch f.Sort {
	case values.Border:
		return fmt.Sprintf("border %d of %s against %s", f.Border, of, against)
	case values.Sashes:
		return "sashes of " + of + " against " + against
	case values.Alternation:
		return plural(f.Count, "ring") + ", " + of + " by turns with " + against
	case values.Strips:
		return "strips of " + of + ", one against the next"
	case values.Wheel:
		return plural(f.Count, "ring") + " of " + of + " against " + against
	}
	name := plural(f.Count, string(f.Sort)) + " of " + of
	if len(f.Edge) > 0 && len(f.Edge) < len(f.Of) {
		name += ", " + listed(f.Edge) + " at the rim,"
	}
	return name + " against " + against
}

// parts are the lines that a verdict rests on.
func (p *leaf) parts(f *values.Figure) []string {
	if f.Verdict == values.RunsOn {
		return []string{"sewn to its own cloth all round"}
	}
	o := &f.Outline
	outline := fmt.Sprintf("outline %.0f of 100: edge %.2f", o.Score, o.Edge)
	if f.Sort != values.Border && f.Sort != values.Sashes && f.Sort != values.Strips {
		outline += fmt.Sprintf(", one side the lighter %.2f", o.Polarity)
	}
	if o.Broken > 0 {
		outline += fmt.Sprintf("; %s of it vanishes, %s at a stretch", percent(o.Broken, o.Length), p.length(o.LongestGap))
	}
	lines := []string{outline}
	if m := f.Mass; m != nil {
		mass := fmt.Sprintf("mass %.0f of 100: parts from its ground %.2f, step %.2f", m.Score, m.Massing, m.Step)
		if m.Figure != 0 || m.AgainstMid != 0 {
			mass += fmt.Sprintf(" (middle L* %.0f against %.0f)", m.Figure, m.AgainstMid)
		}
		lines = append(lines, mass)
	}
	if f.Lost > 0 && f.Lost < f.Count {
		lines = append(lines, fmt.Sprintf("by themselves %d of %d do not hold; the weakest lies in %s", f.Lost, f.Count, placeText(f.Weakest)))
	}
	if f.Doubtful {
		lines = append(lines, "most of its edge lies close to a threshold: lay the cloths side by side before you trust this")
	}
	return lines
}

func placeText(place values.Place) string {
	switch {
	case place.Border > 0:
		return fmt.Sprintf("border %d", place.Border)
	case place.Row > 0:
		return fmt.Sprintf("row %d, column %d", place.Row, place.Column)
	}
	return "the sashes"
}

func (p *leaf) fabrics() {
	p.heading("Fabrics from dark to light")
	rows := [][]string{{"", " L*", " Munsell", "by itself", "here", " of the top", ""}}
	for _, f := range p.Fabrics {
		note := ""
		switch {
		case f.Spread > 0:
			note = fmt.Sprintf("print, values spread by %.0f", f.Spread)
		case f.Vivid:
			note = "vivid"
		}
		rows = append(rows, []string{f.Name, fmt.Sprintf(" %.0f", f.Lightness), fmt.Sprintf(" %.1f", f.Munsell), f.Family, f.Here, fmt.Sprintf(" %.1f %%", 100*f.Share), note})
	}
	p.WriteString(aligned(rows, "  "))
}

func (p *leaf) seams() {
	p.heading(fmt.Sprintf("Seams, %s in all", p.length(p.Seams.Length)))
	var rows [][]string
	for _, b := range values.Bands() {
		l := p.Seams.ByBand[b.String()]
		rows = append(rows, []string{b.String(), " " + p.length(l), " " + percent(l, p.Seams.Length), fmt.Sprintf(" %d", p.Seams.CountBand[b.String()])})
	}
	rows = append(rows, []string{"one fabric", " " + p.length(p.Seams.OneFabric), " " + percent(p.Seams.OneFabric, p.Seams.Length), ""})
	p.WriteString(aligned(rows, "  "))
}

// mostLines is how many lines a list takes before it is cut.
const mostLines = 12

func (p *leaf) pairs() {
	p.heading("Fabrics that meet, what asks for a look first")
	rows := [][]string{{"", "", " step L*", " colour", " length", ""}}
	for _, pair := range p.Pairs[:min(mostLines, len(p.Pairs))] {
		rows = append(rows, []string{
			pair.Names[0] + ", " + pair.Names[1], pair.Band.String(),
			fmt.Sprintf(" %.1f", pair.Step), fmt.Sprintf(" %.0f", pair.Colour), " " + p.length(pair.Length), pairNote(&pair),
		})
	}
	p.WriteString(aligned(rows, "  "))
	p.more(len(p.Pairs))
}

func pairNote(pair *values.Pair) string {
	switch {
	case pair.ColourOnly:
		return "held by colour only"
	case pair.BreaksUp:
		return "the prints overlap"
	case pair.Doubtful:
		return "close to a threshold"
	}
	return ""
}

func (p *leaf) more(n int) {
	if n > mostLines {
		fmt.Fprintf(p, "  and %d more; --json lists them all\n", n-mostLines)
	}
}

// vanishing lists where seams vanish, the longest first.
func (p *leaf) vanishing() {
	var gone []*values.Pair
	for i := range p.Pairs {
		if p.Pairs[i].ByBand[values.Vanishes.String()] > 0 {
			gone = append(gone, &p.Pairs[i])
		}
	}
	slices.SortStableFunc(gone, func(a, b *values.Pair) int {
		return -cmp.Compare(a.ByBand[values.Vanishes.String()], b.ByBand[values.Vanishes.String()])
	})
	var rows [][2]string
	for _, pair := range gone[:min(mostLines, len(gone))] {
		rows = append(rows, [2]string{pair.Names[0] + ", " + pair.Names[1], p.length(pair.ByBand[values.Vanishes.String()]) + ": " + cellsText(pair.Cells)})
	}
	if len(rows) > 0 {
		p.heading("Seams that vanish")
		p.WriteString(labelled(rows, "  "))
		p.more(len(gone))
	}
}

// mostRuns is how many groups of cells are named.
const mostRuns = 6

// cellsText names cells, as "rows 1-4: columns 1-4; row 5: columns 2, 4; border 1". They
// stand in order, borders last.
func cellsText(cells []values.Place) string {
	var runs, edges []string
	var first, last int // rows of the run that is being made
	columns := ""
	finish := func() {
		if columns != "" {
			var rows []int
			for r := first; r <= last; r++ {
				rows = append(rows, r)
			}
			runs = append(runs, counting("row", rows)+": "+columns)
		}
	}
	for i := 0; i < len(cells); {
		row, n := cells[i].Row, i
		var list []int
		for ; n < len(cells) && row > 0 && cells[n].Row == row; n++ {
			list = append(list, cells[n].Column)
		}
		if row == 0 {
			edges = append(edges, placeText(cells[i]))
			i++
			continue
		}
		if text := counting("column", list); text != columns || row != last+1 {
			finish()
			first, columns = row, text
		}
		last, i = row, n
	}
	finish()
	if more := len(runs) - mostRuns; more > 0 {
		runs = append(runs[:mostRuns], fmt.Sprintf("%d more groups of cells", more))
	}
	return strings.Join(append(runs, edges...), "; ")
}

// counting names numbers that rise: "row 1", "columns 1-3, 5".
func counting(what string, list []int) string {
	var parts []string
	for i := 0; i < len(list); {
		n := i
		for n+1 < len(list) && list[n+1] == list[n]+1 {
			n++
		}
		if list[n] == list[i] {
			parts = append(parts, strconv.Itoa(list[i]))
		} else {
			parts = append(parts, fmt.Sprintf("%d-%d", list[i], list[n]))
		}
		i = n + 1
	}
	if len(parts) > 1 || strings.Contains(parts[0], "-") {
		what += "s"
	}
	return what + " " + strings.Join(parts, ", ")
}

// eyes lists what other sight for colours takes away.
func (p *leaf) eyes() {
	var rows [][2]string
	for i := range p.Pairs {
		pair := &p.Pairs[i]
		for _, s := range pair.Sight {
			if s.Band < pair.Band && s.Band < values.Clear {
				rows = append(rows, [2]string{pair.Names[0] + ", " + pair.Names[1], fmt.Sprintf("%s where it is %s, for %s sight: step %.0f", s.Band, pair.Band, s.Deficiency, s.Step)})
			}
		}
	}
	if len(rows) > 0 {
		p.heading("For eyes that see colours otherwise")
		p.WriteString(labelled(rows[:min(mostLines, len(rows))], "  "))
		p.more(len(rows))
	}
}

func (p *leaf) waysOut() {
	if len(p.WaysOut) == 0 {
		return
	}
	p.heading("Ways out, for pairs that vanish or lose a figure")
	pair := [2]string{}
	for i := range p.WaysOut {
		w := &p.WaysOut[i]
		if w.Pair != pair {
			pair = w.Pair
			fmt.Fprintf(p, "  %s\n", layout.Visible(listed(pair[:])))
		}
		p.WriteString(wrapped(layout.Visible(wayText(w)), "    "))
	}
}

// wayText is one way out in words.
func wayText(w *values.WayOut) string {
	way := "darker"
	if w.Lighter {
		way = "lighter"
	}
	text := fmt.Sprintf("a %s %s: %s (L* %.0f)%s", way, w.Change, w.Colour, w.Lightness, breaksText(w.Breaks))
	if o := w.Other; o != nil {
		from := "of this layout"
		if o.Palette != "" {
			from = "of the palette " + o.Palette
		}
		text += fmt.Sprintf("; or %s %s (L* %.0f)%s", o.Name, from, o.Lightness, breaksText(o.Breaks))
	}
	if w.Best {
		text = "the least change: " + text
	}
	return text
}

func breaksText(list []values.Break) string {
	if len(list) == 0 {
		return ", and nothing else suffers"
	}
	var parts []string
	for _, b := range list {
		parts = append(parts, fmt.Sprintf("%s (%s, was %s)", b.Meets, b.To, b.From))
	}
	return ", at the cost of its seams with " + listed(parts)
}

// grounds says what the study rests on.
func (p *leaf) grounds() {
	t := &p.Thresholds
	p.heading("What this rests on")
	soft := fmt.Sprintf("a seam vanishes below a step of %s L*, what half of all viewers notice between patches of that size from there (published), more for prints", span(t.SoftLeast, t.SoftMost))
	clear := fmt.Sprintf("it is clear from %g, about where lettering is just legible (published for lettering, our choice for seams)", t.Clear)
	if t.Own {
		soft = fmt.Sprintf("a seam vanishes below a step of %g L*, as it was set", t.SoftLeast)
		clear = fmt.Sprintf("it is clear from %g, as it was set", t.Clear)
	}
	for _, line := range []string{
		soft,
		clear + fmt.Sprintf(", and strong from %g, three times the light (derived)", t.Strong),
		fmt.Sprintf("medium begins at L* %g and light at %g (published limits, drawn together to three by us)", t.MediumFrom, t.LightFrom),
		"outline: edge is how much of it shows, 1 where every seam round the figure is clear; \"one side the lighter\" is 1 where the figure is darker all along, or lighter",
		"mass: the figure and its ground as half-shut eyes see them; the first number is how surely a spot of one is darker than a spot of the other, step how much of a clear step lies between their middles",
		fmt.Sprintf("an outline or a mass holds from %g of 100; the squint blurs by %s (our choices)", t.Reads, measure.Decimal(t.Blur, p.Units, 2)+map[measure.System]string{measure.Inches: " in", measure.Centimetres: " cm"}[p.Units]),
		"neighbours, sheen and the light in the room shift how light cloth looks, and a screen is not cloth: within 3 L* of a threshold look at the cloth itself; vivid colours look lighter than their L*",
	} {
		p.WriteString("  - " + strings.TrimPrefix(wrapped(line, "    "), "    "))
	}
}

// span is two numbers, or one where they look the same.
func span(least, most float64) string {
	a, b := fmt.Sprintf("%.1f", least), fmt.Sprintf("%.1f", most)
	if a == b {
		return a
	}
	return a + " to " + b
}
