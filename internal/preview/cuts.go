package preview

import (
	"fmt"
	"slices"

	"eighthturn/internal/diagram"
	"eighthturn/internal/plan/cutting"
)

// cuttingReport turns a cutting plan into a report: what to buy, each piece, and of each
// fabric what is cut in which order. A line lights up the patches that it supplies.
func cuttingReport(p *plans) reportTab {
	plan := p.cutting()
	c := &cutRows{cutWords{plan}, p, reportTab{Name: "Cutting", Says: "finished is from seam to seam, cut is what you cut"}}
	c.litBy = func(lines []int) []int { return c.patches(lines) }
	c.add(c.faults("What cannot be cut", plan.Faults, wrong), c.faults("To know before cutting", plan.Warnings, doubtful),
		sentences("Before you cut", cutting.Advice()), c.toBuy(), c.pieces())
	maps := plan.Maps()
	for i := range plan.Sets {
		if len(plan.Sets[i].Runs) > 0 {
			c.add(c.stripSet(i, mapOf(maps, true, plan.SetName(i))))
		}
	}
	for i := range plan.Fabrics {
		if f := &plan.Fabrics[i]; f.StripCount > 0 || len(f.Blocks) > 0 {
			c.add(c.fabric(f, mapOf(maps, false, f.Name)))
		}
	}
	c.add(sentences("Sizes that no line of a ruler shows", c.words().Rulers()), sentences("Mind your fingers", cutting.Cautions()))
	return c.reportTab
}

// cutRows turns a cutting plan into rows.
type cutRows struct {
	cutWords
	*plans
	reportTab
}

// mapOf is a plan's map by what it is of, nil if there is none.
func mapOf(maps []cutting.Map, set bool, name string) *diagram.Figure {
	for _, m := range maps {
		if m.Set == set && m.Name == name {
			return m.Figure
		}
	}
	return nil
}

// patches are those that some lines supply.
func (c *cutRows) patches(lines []int) []int {
	var list []int
	for _, n := range lines {
		list = append(list, c.Lines[n].Patches...)
	}
	return list
}

// faults are sentences with their places in the layout.
func (c *cutRows) faults(title string, list []cutting.Fault, t tone) section {
	s := section{Title: title}
	for _, f := range list {
		line, _ := c.source.Position(f.Place.Start)
		w := row{Tone: t, Cells: []string{fmt.Sprintf("Line %d: %s.", line, f.Message)}}
		if f.Hint != "" {
			w.Under = []string{f.Hint}
		}
		s.Rows = append(s.Rows, w)
		c.Placed = true
	}
	return s
}

// sentences are rows of one sentence each.
func sentences(title string, list []string) section {
	s := section{Title: title}
	for _, text := range list {
		s.Rows = append(s.Rows, row{Cells: []string{text}})
	}
	return s
}

func (c *cutRows) toBuy() section {
	s := section{Title: "To buy, for one quilt", Heads: []column{{}, {"exactly", true}, {"to buy", true}}}
	for i := range c.Fabrics {
		f := &c.Fabrics[i]
		w := row{Swatches: c.swatch(f.Index), Faces: c.facesOf(f.Index), Cells: []string{f.Name, c.words().Shop(f.Purchase.Need), c.shop(f.Purchase.Buy)}}
		if f.Print != "" {
			w.Under = append(w.Under, f.Print)
		}
		w.Under = append(w.Under, "cut from it: "+c.words().AtLeast(f.Purchase.ExactCut)+" of its length")
		if instead := c.words().PrecutWords(f); instead != "" {
			w.Under = append(w.Under, "or instead "+instead)
		}
		if f.OnHand != nil {
			w.Under = append(w.Under, "on hand "+c.words().OnHand(f.OnHand))
			if !f.OnHand.Enough {
				w.Tone = doubtful
				w.Under = append(w.Under, c.words().WaysToFit(f))
			}
		}
		s.Rows = append(s.Rows, w)
	}
	notes := append([]string{c.words().RoundingNote()}, c.words().Edges()...)
	s.Rows = append(s.Rows, sentences("", notes).Rows...)
	return s
}

// pieces is every distinct piece with its sizes.
func (c *cutRows) pieces() section {
	s := section{Title: "Pieces, line by line", Heads: []column{{"line", true}, {Head: "piece"}, {Head: "finished"}, {Head: "cut"}, {"pieces", true}}}
	for i := range c.Lines {
		l := &c.Lines[i]
		s.Rows = append(s.Rows, row{Patches: l.Patches, Swatches: c.colours(l), Under: []string{c.more(l)},
			Cells: []string{fmt.Sprint(l.Number + 1), c.piece(l), unbroken(c.words().FinishedSize(&l.Piece)), c.words().CutSize(l), fmt.Sprint(l.Pieces)}})
	}
	s.Rows = append(s.Rows, sentences("", slices.Concat(c.words().ShapeNotes(), c.words().RowNotes())).Rows...)
	return s
}

// colours are those of what a line is cut from.
func (c *cutRows) colours(l *cutting.Line) []string {
	if l.Fabric >= 0 {
		return c.swatch(c.Fabrics[l.Fabric].Index)
	}
	var list []string
	for _, b := range c.Sets[l.Set].Bands {
		list = append(list, c.swatch(c.Fabrics[b.Fabric].Index)...)
	}
	if l.Reversed {
		slices.Reverse(list)
	}
	return list
}

// stripSet is one strip set: what it is sewn of, how long, and what is cut from it.
func (c *cutRows) stripSet(n int, drawn *diagram.Figure) section {
	set := &c.Sets[n]
	lines := slices.DeleteFunc(slices.Clone(set.Lines[:]), func(l int) bool { return l < 0 })
	s := section{Title: "Strip set " + c.SetName(n), Heads: []column{{Head: "strip"}, {"cut", true}, {"finished", true}}}
	s.Rows = append(s.Rows, c.drawn("the set as it is sewn and cut", drawn, c.patches(lines)))
	for _, b := range set.Bands {
		f := &c.Fabrics[b.Fabric]
		s.Rows = append(s.Rows, row{Swatches: c.swatch(f.Index), Cells: []string{f.Name, c.length(b.WidthCut), c.length(b.WidthFinished)}, Faces: c.bandFaces(lines, f.Index)})
	}
	for _, text := range c.words().SetNotes(n) {
		s.Rows = append(s.Rows, row{Cells: []string{text}, Patches: c.patches(lines)})
	}
	return s
}

// bandFaces are the faces of a fabric in what some lines supply.
func (c *cutRows) bandFaces(lines []int, fabric int) []int {
	var list []int
	for _, n := range c.patches(lines) {
		p := &c.top.Patches[n]
		for f := p.First; f < p.First+p.Count; f++ {
			if c.top.Faces[f].Fabric == fabric {
				list = append(list, f)
			}
		}
	}
	return list
}

// drawn is the row that opens a map.
func (c *cutRows) drawn(text string, f *diagram.Figure, patches []int) row {
	w := row{Cells: []string{text}, Patches: patches}
	if f != nil {
		w.Diagram = c.diagram(func() *diagram.Figure { return f })
	}
	return w
}

// fabric is one fabric in the order to cut.
func (c *cutRows) fabric(f *cutting.Fabric, drawn *diagram.Figure) section {
	s := section{Title: c.words().FabricTitle(f),
		Heads: []column{{"strips", true}, {"wide", true}, {Head: "each cut into"}, {Head: "lines"}, {"end left", true}}}
	lies := c.drawn("how it lies on the cloth", drawn, nil)
	lies.Faces, lies.Swatches = c.facesOf(f.Index), c.swatch(f.Index)
	s.Rows = append(s.Rows, lies)
	for i := range f.Blocks {
		b := &f.Blocks[i]
		var lines []int
		for _, column := range b.Columns {
			lines = append(lines, column.Line)
		}
		s.Rows = append(s.Rows, row{Cells: []string{c.words().BlockWords(f, i)}, Patches: c.patches(lines)})
	}
	for i := range f.Strips {
		s.Rows = append(s.Rows, c.strip(&f.Strips[i])...)
	}
	for i := range f.Chains {
		s.Rows = append(s.Rows, row{Cells: []string{c.words().ChainSentence(&f.Chains[i])}, Patches: c.patches(linesOf(&f.Chains[i]))})
	}
	s.Rows = append(s.Rows, sentences("", c.words().FabricNotes(f)).Rows...)
	return s
}

// linesOf are the lines that strips sewn end to end supply.
func linesOf(chain *cutting.Chain) []int {
	var lines []int
	for _, s := range chain.Pieces {
		lines = append(lines, s.Line)
	}
	return lines
}

// strip is a strip, a row for each stretch that is cut into like pieces.
func (c *cutRows) strip(s *cutting.Strip) []row {
	times, wide, left := fmt.Sprint(s.Times), c.length(s.WidthCut), ""
	if s.InBlock >= 0 {
		wide += ", " + c.length(s.LengthCut) + " long"
	}
	if s.EndLeftCut > 0 {
		left = c.words().EndLeft(s)
	}
	var list []row
	for i := range s.Cuts {
		cut := &s.Cuts[i]
		list = append(list, row{Cells: []string{times, wide, c.CutWords(cut), lineNumbers(cut.Lines), left}, Patches: c.patches(cut.Lines)})
		times, wide, left = "", "", ""
	}
	return list
}
