package report

import (
	"fmt"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
)

// why is how the plan was worked out: exact sizes, what custom says otherwise, what rows of wedges take, bounds.
func (c *cuts) why() document.Section {
	s := document.Section{ID: whyCutID, Title: "How this was worked out", Depth: document.Why}
	if len(c.Lines) > 0 {
		s.Blocks = append(s.Blocks, c.exactSizes())
	}
	s.Blocks = append(s.Blocks, bullets(c.choices()...)...)
	if len(c.Fabrics) > 0 {
		s.Blocks = append(s.Blocks, c.exactLengths())
	}
	return s
}

// exactSizes is the cut size of each piece as geometry asks for it.
func (c *cuts) exactSizes() document.Table {
	t := document.Table{Caption: document.Plain("Exact cut sizes"), Columns: []document.Column{
		{Title: "line", Kind: document.Counts}, {Title: "piece"}, {Title: "exactly", Kind: document.Lengths}, {Title: "to trim", Kind: document.Lengths}}}
	for i := range c.Lines {
		line := &c.Lines[i]
		size := line.Piece.AlongExact
		if line.Piece.Method == cutting.Nested {
			size = line.Piece.AcrossExact
		}
		trim := ""
		if line.Piece.TrimCut > 0 {
			trim = c.Units.Exact(line.Piece.TrimCut)
		}
		t.Rows = append(t.Rows, document.Row{Cells: cells(number(i+1), c.plans.pieceName(line), c.Units.Exact(size), trim), About: document.About{Patches: line.Patches}})
	}
	return t
}

// choices explains sizes that could be others.
func (c *cuts) choices() []string {
	var list []string
	for i := range c.Lines {
		piece := &c.Lines[i].Piece
		if piece.RuleCut > 0 {
			list = append(list, fmt.Sprintf("Line %d: the rule of thumb gives %s squares.", i+1, c.length(piece.RuleCut)))
		}
		if piece.KitesCut > 0 && piece.KitesCut != piece.AlongCut {
			list = append(list, fmt.Sprintf("Line %d: corners are usually cut from %s squares, as kites are, with more to trim.", i+1, c.length(piece.KitesCut)))
		}
		if d := piece.Shape.Description(); d.ByCustom != "" && piece.AlongCut > piece.AlongExact {
			list = append(list, fmt.Sprintf("Line %d: "+d.ByCustom+".", i+1, c.length(piece.AlongCut), c.Units.AtLeast(piece.AlongExact)))
		}
	}
	for _, w := range c.Wedges {
		list = append(list, fmt.Sprintf("From %s of a strip %s wide each wedge takes %s; %s is waste.", c.length(w.UsableWidth), c.length(w.StripCut), c.Units.Exact(w.PitchCut), c.Units.Exact(w.WasteCut)))
	}
	c.offMarks(func(what string, r cutting.Ruler) {
		if r.BelowSideFinished > 0 {
			list = append(list, fmt.Sprintf("%s would fall on a mark with %s or %s finished blocks.", capital(what), c.length(r.BelowSideFinished), c.length(r.AboveSideFinished)))
		}
	})
	return list
}

// exactLengths is what each fabric takes exactly, and how near that is to the best there is.
func (c *cuts) exactLengths() document.Table {
	t := document.Table{Named: true, Caption: document.Plain("Fabric needed"), Columns: []document.Column{
		{Title: "fabric"}, {Title: "exactly", Kind: document.Lengths}, {Title: "of which strips", Kind: document.Counts}, {Title: "compared with the least"}}}
	for i := range c.Fabrics {
		f := &c.Fabrics[i]
		bounds := ""
		if f.IsCut() {
			bounds = c.bounds(f)
		}
		t.Rows = append(t.Rows, document.Row{Cells: append([]document.Cell{c.fabricCell(i)}, cells(c.Units.Exact(f.Purchase.Need), number(f.StripCount), bounds)...)})
	}
	return t
}

// bounds says how near a fabric's strips are to what no plan of their kind beats, and whether all was tried.
func (c *cuts) bounds(f *cutting.Fabric) string {
	if f.SearchEnded {
		return c.proved(f) + "; there is more to try than is tried, so this is the best plan so far"
	}
	return c.proved(f)
}

// proved is what is known of all plans of a fabric's strips.
func (c *cuts) proved(f *cutting.Fabric) string {
	strips := ""
	if f.StripRows > f.StripCount {
		strips = fmt.Sprintf("%s if each row counts as one; ", measure.Count(f.StripRows, "strip"))
	}
	strips += "of plans that cut each length of strip into like pieces, "
	cloth := "none takes less than " + c.Units.Exact(f.LengthBound) + " of fabric"
	switch {
	case f.From != nil && f.From.Used > 0:
		return "beside what its precuts give, " + cloth
	case f.LengthBound == f.LengthCut && (f.StripBound == f.StripRows || len(f.Blocks) > 0):
		return strips + "none takes less fabric"
	case len(f.Blocks) > 0:
		return strips + cloth
	case f.StripBound == f.StripRows:
		return strips + "none with as little fabric takes fewer strips, and " + cloth
	}
	return strips + fmt.Sprintf("none with as little fabric takes fewer than %s, each row counted, and ", measure.Count(f.StripBound, "strip")) + cloth
}
