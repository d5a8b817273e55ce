package main

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/render"
	"eighthturn/layout"
)

// leaf is a study put into lines for a terminal.
type leaf struct {
	strings.Builder
	contrast.Words
	before *contrast.Report // without the colours that are tried; nil if none are
}

// valuesText is what `values` says.
func valuesText(name string, r, before *contrast.Report) string {
	p := &leaf{Words: contrast.Words{Report: r}, before: before}
	fmt.Fprintf(p, "%s: light and dark, seen from %s\n", name, p.Away())
	if len(r.Tried) > 0 {
		p.WriteString(render.Wrapped("tried, and not written into the layout: "+strings.Join(r.Tried, ", "), ""))
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

func (p *leaf) figures() {
	if len(p.Figures) == 0 {
		return
	}
	p.heading("Does it read?")
	for i := range p.Figures {
		f := &p.Figures[i]
		text := p.Figure(f) + ": " + string(f.Verdict)
		if p.before != nil && i < len(p.before.Figures) && p.before.Figures[i].Verdict != f.Verdict {
			text += " (as it was: " + string(p.before.Figures[i].Verdict) + ")"
		}
		p.WriteString(render.Wrapped(layout.Visible(text), "  "))
		for _, part := range p.Parts(f) {
			p.WriteString(render.Wrapped(layout.Visible(part), "    "))
		}
	}
}

func (p *leaf) fabrics() {
	p.heading("Fabrics from dark to light")
	rows := [][]string{{"", " L*", " Munsell", "by itself", "here", " of the top", ""}}
	for _, f := range p.Fabrics {
		rows = append(rows, []string{f.Name, fmt.Sprintf(" %.0f", f.Lightness), fmt.Sprintf(" %.1f", f.Munsell), f.Family, f.Here, fmt.Sprintf(" %.1f %%", 100*f.Share), f.Note()})
	}
	p.WriteString(render.Aligned(rows, "  "))
}

func (p *leaf) seams() {
	p.heading(fmt.Sprintf("Seams, %s in all", p.Length(p.Seams.Length)))
	var rows [][]string
	for _, b := range contrast.Bands() {
		l := p.Seams.ByBand[b.String()]
		rows = append(rows, []string{b.String(), " " + p.Length(l), " " + contrast.Percent(l, p.Seams.Length), fmt.Sprintf(" %d", p.Seams.CountBand[b.String()])})
	}
	rows = append(rows, []string{"one fabric", " " + p.Length(p.Seams.OneFabric), " " + contrast.Percent(p.Seams.OneFabric, p.Seams.Length), ""})
	p.WriteString(render.Aligned(rows, "  "))
}

// mostLines is how many lines a list takes before it is cut.
const mostLines = 12

func (p *leaf) pairs() {
	p.heading("Fabrics that meet, what asks for a look first")
	rows := [][]string{{"", "", " step L*", " colour", " length", ""}}
	for _, pair := range p.Pairs[:min(mostLines, len(p.Pairs))] {
		rows = append(rows, []string{
			pair.Names[0] + ", " + pair.Names[1], pair.Band.String(),
			fmt.Sprintf(" %.1f", pair.Step), fmt.Sprintf(" %.0f", pair.Colour), " " + p.Length(pair.Length), pair.Note(),
		})
	}
	p.WriteString(render.Aligned(rows, "  "))
	p.more(len(p.Pairs))
}

func (p *leaf) more(n int) {
	if n > mostLines {
		fmt.Fprintf(p, "  and %d more; --json lists them all\n", n-mostLines)
	}
}

// vanishing lists where seams vanish, the longest first.
func (p *leaf) vanishing() {
	var gone []*contrast.Pair
	for i := range p.Pairs {
		if p.Pairs[i].Gone() > 0 {
			gone = append(gone, &p.Pairs[i])
		}
	}
	slices.SortStableFunc(gone, func(a, b *contrast.Pair) int {
		return -cmp.Compare(a.Gone(), b.Gone())
	})
	var rows [][2]string
	for _, pair := range gone[:min(mostLines, len(gone))] {
		rows = append(rows, [2]string{pair.Names[0] + ", " + pair.Names[1], p.Length(pair.Gone()) + ": " + p.Cells(pair.Cells)})
	}
	inside := p.GoneInside()
	if len(rows) > 0 || inside != "" {
		p.heading("Seams that vanish")
		p.WriteString(render.Labeled(rows, "  "))
		p.more(len(gone))
	}
	if inside != "" {
		p.WriteString(render.Wrapped(inside, "  "))
	}
}

// eyes lists what other sight for colours takes away.
func (p *leaf) eyes() {
	var rows [][2]string
	for i := range p.Pairs {
		pair := &p.Pairs[i]
		for _, s := range pair.Sight {
			if s.Band < pair.Band && s.Band < contrast.Clear {
				rows = append(rows, [2]string{pair.Names[0] + ", " + pair.Names[1], fmt.Sprintf("%s where it is %s, for %s sight: step %.0f", s.Band, pair.Band, s.Deficiency, s.Step)})
			}
		}
	}
	if len(rows) > 0 {
		p.heading("For eyes that see colours otherwise")
		p.WriteString(render.Labeled(rows[:min(mostLines, len(rows))], "  "))
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
		p.WriteString(render.Wrapped(layout.Visible(p.WayOut(w)), "    "))
	}
}

// grounds says what the study rests on.
func (p *leaf) grounds() {
	p.heading("What this rests on")
	for _, line := range p.Grounds() {
		p.WriteString("  - " + strings.TrimPrefix(render.Wrapped(line, "    "), "    "))
	}
}
