package report

import (
	"slices"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
)

// asShown says that blocks are rotated, where some may be.
func (s *sewer) asShown() string {
	if slices.ContainsFunc(s.Blocks, func(b sewing.Block) bool { return HasArrow(&b) }) {
		return " and rotated as shown"
	}
	return ""
}

// layout is where the blocks go before they are joined: how many there are, and how large each is.
func (s *sewer) layout() document.Section {
	g := Grid{s.top, s.Plan}
	out := document.Section{ID: SewingLayout, Title: "Laying out the " + measure.Plural(g.Noun()), Depth: document.Detail}
	text := "The quilt is " + g.Across() + "."
	if len(s.top.Cells) > 1 {
		text += " Lay out all " + measure.Plural(g.Noun()) + ", each in its place" + s.asShown() + ", and view them from a distance before you sew them together."
	}
	t := document.Table{Named: true, Columns: []document.Column{words("block"), document.Column{Title: "number", Kind: document.Counts, BySize: true}, words("finished")}}
	for i := range s.Blocks {
		b := &s.Blocks[i]
		r := row(b.Label, measure.Count(b.Count, noun(b)), s.size(b.Finished))
		r.Cells[0].Text = document.Bold(b.Label)
		r.About.Patches = s.wholeBlock(b)
		t.Rows = append(t.Rows, r)
	}
	out.Blocks = []document.Block{paragraph(text), t}
	return out
}
