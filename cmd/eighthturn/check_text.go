package main

import (
	"fmt"
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/summary"
	"eighthturn/internal/render"
	"eighthturn/layout"
)

// sheet is a summary put into lines for a terminal.
type sheet struct {
	strings.Builder
	*summary.Summary
}

// checkText is what `check` says of a layout that can be drawn.
func checkText(name string, list []layout.Fault, s *summary.Summary) string {
	p := &sheet{Summary: s}
	fmt.Fprintf(p, "%s: %s\n", layout.Visible(name), counted(list))
	if s.Title != "" {
		p.heading(layout.Visible(s.Title))
	} else {
		p.heading("The quilt")
	}
	p.sizes()
	p.strips()
	p.stripSets()
	p.edgings()
	p.blocks()
	p.pieces()
	p.centres()
	p.fabrics()
	p.hints()
	return p.String()
}

func (p *sheet) heading(text string) { fmt.Fprintf(p, "\n%s\n", text) }

// rows writes rows in columns below a heading.
func (p *sheet) rows(rows [][]string) { p.WriteString(render.Aligned(rows, "  ")) }

func (p *sheet) text(nm measure.NM) string { return p.Units.Nearest(nm) }

// size writes both measures of a size, the unit once.
func (p *sheet) size(s summary.Size) string {
	return p.Units.By(s.Width, s.Height)
}

func (p *sheet) sizes() {
	p.rows([][]string{
		{"grid", fmt.Sprintf("%s across, %d down", plural(p.Across, "block"), p.Down)},
		{"block", p.text(p.SideFinished) + " finished"},
		{"field", p.size(p.FieldFinished) + " finished, without borders"},
		{"top", p.size(p.TopFinished) + " finished"},
		{"", p.size(p.TopUnfinished) + " unfinished, a seam of " + p.text(p.SeamAllowance) + " more on each side"},
	})
}

func (p *sheet) strips() {
	if len(p.Strips) == 0 {
		return
	}
	p.heading("Strips")
	var rows [][2]string
	for _, s := range p.Strips {
		text := fmt.Sprintf("%s cut, %s finished", p.text(s.WidthCut), p.text(s.WidthFinished))
		rows = append(rows, [2]string{strings.Join(s.Kinds, ", "), text})
		if n := s.Nearest; n != nil && n.WidthCut != s.WidthCut {
			text = fmt.Sprintf("to the nearest %s: %s cut; a row of %s then finishes %s", p.text(n.Mark), p.text(n.WidthCut), plural(p.Across, "block"), unbroken(p.off(n.RowErrorFinished)))
			rows = append(rows, [2]string{"", text})
		}
	}
	p.WriteString(render.Labeled(rows, "  "))
}

// off is an error of a length in words.
func (p *sheet) off(error measure.NM) string {
	way := "longer"
	if error < 0 {
		way, error = "shorter", -error
	}
	return p.text(error) + " " + way
}

func (p *sheet) stripSets() {
	if len(p.StripSets) == 0 {
		return
	}
	p.heading("Strip sets, from the wide end of the wedge to its tip")
	var rows [][]string
	for _, set := range p.StripSets {
		for _, use := range set.Uses {
			name := set.Name
			if len(set.Uses) > 1 {
				name += " for " + strings.Join(use.Kinds, ", ")
			}
			for _, b := range use.Bands {
				row := []string{name, b.Fabric, p.text(b.WidthCut) + " cut", p.text(b.WidthFinished) + " finished"}
				if b.Rest {
					row = append(row, "the rest")
				}
				rows = append(rows, row)
				name = ""
			}
		}
	}
	p.rows(rows)
}

func (p *sheet) edgings() {
	if e := p.Sash; e != nil {
		p.heading("Sashes")
		row := []string{e.Fabric, p.text(e.WidthFinished) + " finished", p.text(e.WidthCut) + " cut"}
		if e.Posts != "" {
			row = append(row, "posts "+e.Posts)
		}
		if e.Around {
			row = append(row, "around the outside too")
		}
		p.rows([][]string{row})
	}
	if len(p.Borders) > 0 {
		p.heading("Borders, from the inside out")
		var rows [][]string
		for _, b := range p.Borders {
			row := []string{b.Fabric, p.text(b.WidthFinished) + " finished", p.text(b.WidthCut) + " cut"}
			if b.Corners != "" {
				row = append(row, "corners "+b.Corners)
			}
			rows = append(rows, row)
		}
		p.rows(rows)
	}
	if p.Binding != nil {
		p.heading("Binding")
		p.rows([][]string{{p.Binding.Fabric, p.text(p.Binding.WidthCut) + " cut"}})
	}
	if p.Backing != "" {
		p.heading("Backing")
		p.rows([][]string{{p.Backing}})
	}
}

func (p *sheet) blocks() {
	p.heading("Blocks")
	var rows [][]string
	for _, b := range p.Blocks {
		rows = append(rows, []string{b.Label, b.Kind, fmt.Sprint(" ", b.Count)})
	}
	if p.EmptyPlaces > 0 {
		rows = append(rows, []string{".", "nothing", fmt.Sprint(" ", p.EmptyPlaces)})
	}
	p.rows(rows)
}

func (p *sheet) pieces() {
	total := 0
	var list []string
	for _, s := range p.Pieces {
		total += s.Count
		text := unbroken(plural(s.Count, s.Shape.String()))
		switch {
		case s.FromSets > 0 && s.FromSets == s.Count:
			text += " (cut from strip sets)"
		case s.FromSets > 0:
			text += fmt.Sprintf(" (%d cut from strip sets)", s.FromSets)
		}
		list = append(list, text)
	}
	p.heading(fmt.Sprintf("Pieces, %d in all", total))
	p.WriteString(render.Wrapped(strings.Join(list, ", "), "  "))
}

func (p *sheet) centres() {
	var rows [][]string
	for _, c := range []struct {
		name string
		of   *summary.Centres
	}{{"webs, %d of %d wedges", &p.Webs}, {"stars, %d of %d kites", &p.Stars}} {
		if c.of.Inside() == 0 {
			continue
		}
		row := []string{fmt.Sprintf(c.name, c.of.Whole, c.of.Whole), fmt.Sprintf(" %d closed", c.of.Closed)}
		if open := len(c.of.Open); open > 0 {
			row = append(row, fmt.Sprintf(" %d not closed", open))
		}
		rows = append(rows, row)
	}
	if len(rows) > 0 {
		p.heading("Centres inside the quilt")
		p.rows(rows)
		p.openWebs()
	}
}

// mostOpen is how many open webs are named with their places.
const mostOpen = 4

// openWebs names the webs that do not close; stars are often meant to stay open.
func (p *sheet) openWebs() {
	if len(p.Webs.Open) == 0 {
		return
	}
	p.WriteString("  webs not closed\n")
	var rows [][]string
	for _, o := range p.Webs.Open[:min(mostOpen, len(p.Webs.Open))] {
		rows = append(rows, []string{fmt.Sprintf("rows %d and %d", o.Row, o.Row+1), fmt.Sprintf("columns %d and %d", o.Column, o.Column+1), " " + plural(o.Has, "wedge")})
	}
	if more := len(p.Webs.Open) - mostOpen; more > 0 {
		rows = append(rows, []string{fmt.Sprintf("and %d more", more)})
	}
	p.WriteString(render.Aligned(rows, "    "))
}

func (p *sheet) fabrics() {
	p.heading("Fabrics from dark to light")
	rows := [][]string{{"", " value L*", " of the top", ""}}
	for _, f := range p.Fabrics {
		rows = append(rows, []string{f.Name, fmt.Sprintf(" %.0f", f.Lightness), " " + part(f), f.Print})
	}
	p.rows(rows)
}

// part is how much of the top a fabric makes, or what else it is for.
func part(f summary.Fabric) string {
	switch {
	case f.Share > 0:
		return fmt.Sprintf("%.1f %%", 100*f.Share)
	case f.Binds && f.Backs:
		return "binding, backing"
	case f.Binds:
		return "binding"
	case f.Backs:
		return "backing"
	}
	return "none"
}

func (p *sheet) hints() {
	for _, h := range p.Hints {
		p.heading(strings.TrimSuffix(render.Wrapped("Hint: "+layout.Visible(p.hint(h)), ""), "\n"))
	}
}

// hint puts a hint into words.
func (p *sheet) hint(h summary.Hint) string {
	here := fmt.Sprintf("here they are %d and %d", p.Across, p.Down)
	switch h.About {
	case summary.OddMatchesCorners:
		return fmt.Sprintf("the %s blocks %s take turns, and the quilt's corners are not all alike; odd numbers of blocks across and down make them so (%s).", h.Kind, listed(h.Labels), here)
	default:
		return fmt.Sprintf("%s blocks turn inwards from the quilt's edge; even numbers of blocks across and down let those in all four corners close too (%s).", h.Kind, here)
	}
}
