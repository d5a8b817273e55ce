package main

import (
	"fmt"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/fit"
	"eighthturn/internal/render"
	"eighthturn/layout"
)

// fitPage is what comes near a size, put into lines for a terminal.
type fitPage struct {
	strings.Builder
	*fit.Report
	*sizing
}

// drawsIn is what sizes of tops leave out: tops that were measured before quilting and after it lost 2.2 to 3.6 in a hundred,
// https://melgeecrafts.com/needlework/your-question-how-much-does-fabric-shrink-when-you-quilt-it.html
const drawsIn = "Sizes are those of the finished top. Quilting draws it in, often by 2 to 4 in a hundred, and the first wash by more."

// fitText is what `fit` says.
func fitText(name string, r *fit.Report, o *sizing) string {
	p := &fitPage{Report: r, sizing: o}
	p.WriteString(render.Wrapped(name+": "+p.wish(), ""))
	p.bedLists()
	p.WriteString(render.Wrapped(p.asItIs(), ""))
	for _, text := range p.growing() {
		p.WriteString(render.Wrapped(text, ""))
	}
	if len(r.Suggestions) == 0 {
		p.WriteString("\nNothing fits.\n")
	} else {
		p.nearest()
		p.bySize()
		p.marks()
		p.toWrite()
	}
	p.refused()
	p.WriteString("\n" + render.Wrapped(drawsIn, ""))
	return p.String()
}

func (p *fitPage) text(nm measure.NM) string { return p.Units.Nearest(nm) }

// hundredths is a length as a quilt is measured, to a hundredth of an inch or a millimetre.
func (p *fitPage) hundredths(nm measure.NM) string {
	if p.Units == measure.Centimetres {
		return measure.Decimal(nm, p.Units, 1)
	}
	return measure.Decimal(nm, p.Units, 2)
}

// side is a block's side: as people read it where a short number says it, and else to hundredths, as the top is.
func (p *fitPage) side(nm measure.NM) string {
	if text := p.Units.Number(nm); !strings.HasPrefix(text, "about ") {
		return text
	}
	return p.hundredths(nm)
}

// signed is a difference with its sign.
func (p *fitPage) signed(nm measure.NM) string {
	text := p.hundredths(nm)
	switch {
	case strings.Trim(text, "-0.") == "":
		return " 0"
	case nm > 0:
		return " +" + text
	}
	return " " + text
}

// size is a width by a height in marks.
func (p *fitPage) size(width, height measure.NM) string {
	return p.Units.By(width, height)
}

// wish is the size that is wanted.
func (p *fitPage) wish() string {
	w := p.Wanted.Finished
	text := "the finished top is to be " + p.size(w.Width, w.Height)
	switch {
	case p.bed.bed == nil:
		return text
	case p.drop.text != "":
		return text + fmt.Sprintf(": a %s mattress with a drop of %s at both sides and the foot", p.bed.bed.Name, p.text(p.drop.in(p.Units)))
	}
	return text + ", between what lists of quilt sizes say for " + p.bed.bed.Name
}

// bedLists are the lists that a bed's size comes from.
func (p *fitPage) bedLists() {
	if p.bed.bed == nil {
		return
	}
	list := p.bed.bed.Quilts
	if p.drop.text != "" {
		list = p.bed.bed.Mattresses
	}
	var rows [][]string
	for _, l := range list {
		text := p.size(l.Least.Width, l.Least.Height)
		if l.Most != l.Least {
			text += " to " + p.size(l.Most.Width, l.Most.Height)
		}
		rows = append(rows, []string{text, site(l.Source)})
	}
	p.WriteString(render.Aligned(rows, "  "))
	p.WriteString("  (whole addresses stand in --json)\n")
}

// site is the name of the site that an address leads to.
func site(address string) string {
	u, err := url.Parse(address)
	if err != nil || u.Host == "" {
		return address
	}
	return strings.TrimPrefix(u.Hostname(), "www.")
}

// asItIs is the layout's own size.
func (p *fitPage) asItIs() string {
	n := &p.Now
	count := fmt.Sprintf("%d by %d blocks", n.Columns, n.Rows)
	if n.Columns*n.Rows == 1 {
		count = "1 block"
	}
	text := fmt.Sprintf("The layout now: %s of %s finished", count, p.text(n.SideFinished))
	if len(n.BordersFinished) > 0 {
		text += ", borders of " + listed(mapped(n.BordersFinished, p.text))
	}
	return text + "; the top finishes " + p.size(n.Finished.Width, n.Finished.Height)
}

// borders are the finished widths of a suggestion's borders.
func (p *fitPage) borders(s *fit.Suggestion) string {
	switch {
	case s.Borders == fit.LeftOut:
		return "left out"
	case len(s.BordersFinished) == 0:
		return "none"
	}
	return strings.Join(mapped(s.BordersFinished, p.Units.Number), ", ")
}

// growing says how the grid grows, and which counts are better.
func (p *fitPage) growing() []string {
	list := []string{p.steps()}
	even := func(g fit.Growth) bool { return g.Parity == fit.Even }
	switch {
	case even(p.Across) && !p.Across.Corners || even(p.Down) && !p.Down.Corners:
		list = append(list, "Even numbers of blocks are preferred, since odd ones bring warnings here: webs or stars that cannot close.")
	case p.Across.Parity == fit.Odd || p.Down.Parity == fit.Odd:
		list = append(list, "Odd numbers of blocks are preferred, since even ones bring warnings here.")
	case p.Across.Corners || p.Down.Corners:
		list = append(list, "Even numbers of blocks are preferred, since they keep the four corners of the quilt alike.")
	}
	return list
}

// steps says by how many columns and rows the grid grows.
func (p *fitPage) steps() string {
	text := "It grows by " + plural(p.Across.Step, "column") + " and " + plural(p.Down.Step, "row") + " at a time"
	switch across, down := p.Across.Repeats, p.Down.Repeats; {
	case across && down:
		text += ", written with repeat"
	case across:
		text += ", the columns with repeat"
	case down:
		text += ", the rows with repeat"
	}
	if p.Across.Before+p.Across.Behind+p.Down.Before+p.Down.Behind > 0 {
		text += "; the outer ones stay as a frame"
	}
	return text + "."
}

// heads are the headings of the tables.
func (p *fitPage) heads() [][]string {
	first := []string{"", "strip", "block", "blocks", "borders", "top", " off", ""}
	second := []string{"", "cut", "finished", "", "finished", "finished", " across", " down"}
	if !p.ByStrip {
		first, second = append(first[:1], first[2:]...), append(second[:1], second[2:]...)
	}
	return [][]string{first, second}
}

// row is a suggestion in a table.
func (p *fitPage) row(label string, s *fit.Suggestion) []string {
	mark := ""
	if s.Within {
		mark = " *"
	}
	if s.MoreWarnings > 0 {
		mark += " !"
	}
	row := []string{" " + label, p.Units.Number(s.StripCut), p.side(s.SideFinished), fmt.Sprintf("%d x %d", s.Columns, s.Rows), p.borders(s),
		p.hundredths(s.Finished.Width) + " x " + p.hundredths(s.Finished.Height) + mark, p.signed(s.Over.Width), p.signed(s.Over.Height)}
	if !p.ByStrip {
		row = append(row[:1], row[2:]...)
	}
	return row
}

func (p *fitPage) nearest() {
	fmt.Fprintf(p, "\nThe nearest, in %s\n", unitWord(p.Units))
	rows := p.heads()
	for i := range p.Suggestions[:p.LaidOut] {
		rows = append(rows, p.row(strconv.Itoa(i+1), &p.Suggestions[i]))
	}
	p.WriteString(render.Aligned(rows, ""))
}

// unitWord is the unit in words.
func unitWord(s measure.System) string {
	if s == measure.Centimetres {
		return "centimetres"
	}
	return "inches"
}

// bySize is the best for each strip or side, where there are several.
func (p *fitPage) bySize() {
	best := map[measure.NM]int{}
	var order []measure.NM
	for i := range p.Suggestions {
		side := p.Suggestions[i].SideFinished
		if _, seen := best[side]; !seen {
			best[side] = i
			order = append(order, side)
		}
	}
	if len(order) < 2 || !slices.ContainsFunc(order, func(side measure.NM) bool { return best[side] >= p.LaidOut }) {
		return
	}
	what := "side"
	if p.ByStrip {
		what = "strip"
	}
	fmt.Fprintf(p, "\nThe best for each %s\n", what)
	rows := p.heads()
	slices.Sort(order)
	for _, side := range order {
		label := ""
		if i := best[side]; i < p.LaidOut {
			label = strconv.Itoa(i + 1)
		}
		rows = append(rows, p.row(label, &p.Suggestions[best[side]]))
	}
	p.WriteString(render.Aligned(rows, ""))
}

// marks explains what stands beside sizes, if anything does.
func (p *fitPage) marks() {
	within, warned := false, false
	for i := range p.Suggestions {
		within, warned = within || p.Suggestions[i].Within, warned || p.Suggestions[i].MoreWarnings > 0
	}
	if within {
		p.WriteString("\n* lies between the sizes that the lists give\n")
	}
	if warned {
		p.WriteString("\n! brings more warnings than the layout has now\n")
	}
}

// toWrite says what to write for one of the nearest.
func (p *fitPage) toWrite() {
	at := max(p.number.n, 1)
	if at > len(p.Suggestions) {
		fmt.Fprintf(p, "\nThere is no number %d.\n", at)
		return
	}
	s := &p.Suggestions[at-1]
	fmt.Fprintf(p, "\nTo write for number %d, the lines as they are numbered now\n", at)
	if len(s.Changes) == 0 {
		p.WriteString("  nothing: the layout is so already\n")
	}
	for _, c := range s.Changes {
		p.change(c)
	}
	for _, w := range s.Warnings {
		p.WriteString(render.Wrapped("warning: "+layout.Visible(w), "  "))
	}
}

// change is lines that become others.
func (p *fitPage) change(c fit.Change) {
	where := fmt.Sprintf("line %d", c.First)
	if c.Last > c.First {
		where = fmt.Sprintf("lines %d to %d", c.First, c.Last)
	}
	if c.Write == "" {
		fmt.Fprintf(p, "  %s: leave out %s\n", where, layout.Visible(strings.TrimSpace(c.Was)))
		return
	}
	fmt.Fprintf(p, "  %s:\n", where)
	for _, line := range strings.FieldsFunc(c.Write, func(r rune) bool { return r == '\n' || r == '\r' }) {
		p.WriteString(strings.TrimRight("    "+layout.Visible(line), " ") + "\n")
	}
}

// refused lists the sizes that the layout does not take.
func (p *fitPage) refused() {
	for i, r := range p.Refused {
		if i == 0 {
			p.WriteString("\nNot to be had\n")
		}
		p.WriteString(render.Wrapped(p.text(r.Size)+": "+layout.Visible(r.Message), "  "))
	}
}
