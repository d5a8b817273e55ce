package booklet

import (
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/document"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/report"
)

// cuttingTools are what the quilt's pieces are cut and trimmed with, and nothing that it does not need.
func (b *patternBuilder) cuttingTools() []string {
	list := []string{"rotary cutter with a sharp blade and a safety guard", "cutting mat", "acrylic ruler, as long as the folded fabric is wide"}
	square := slices.ContainsFunc(b.Sewing.Blocks, func(k sewing.Block) bool {
		return slices.ContainsFunc(k.Steps, func(s sewing.Step) bool { return slices.Contains(s.Tools, blocks.SquareRuler) })
	})
	switch {
	case square && b.cutBy(func(p *cutting.Piece) bool { return p.Method == cutting.OnceOnDiagonal }):
		list = append(list, "square ruler with a 45-degree line from corner to corner")
	case square:
		list = append(list, "square ruler")
	}
	if len(b.shapesWith(blocks.WedgeRule)) > 0 {
		list = append(list, "wedge ruler (a 45-degree ruler), or the templates in the pattern")
	}
	for _, s := range b.shapesWith(blocks.OwnTemplate) {
		list = append(list, "the templates of the "+plural(s.String()))
	}
	if _, off := b.cut.Section(report.BetweenMarksID); off {
		list = append(list, "tape to mark sizes on the ruler")
	}
	return list
}

// sewingTools are what the quilt is sewn and pressed with.
func sewingTools() []string {
	return []string{"pins", "iron and ironing board"}
}

// cutBy says whether any piece is cut in a way.
func (b *patternBuilder) cutBy(is func(*cutting.Piece) bool) bool {
	return slices.ContainsFunc(b.Cuts.Lines, func(l cutting.Line) bool { return is(&l.Piece) })
}

// shapesWith is the shapes of the quilt that are cut with a tool.
func (b *patternBuilder) shapesWith(tool blocks.Tool) []blocks.Shape {
	return slices.DeleteFunc(blocks.Shapes(), func(s blocks.Shape) bool {
		return !slices.Contains(s.Description().Tools, tool) || !b.Cuts.Cuts(s)
	})
}

// tools is the list of tools.
func (b *patternBuilder) tools() {
	var items []document.Item
	for _, text := range slices.Concat(b.cuttingTools(), []string{"sewing machine with a presser foot for a seam allowance of " + b.length(b.Top.Seam)}, sewingTools()) {
		items = append(items, item(document.Plain(text)))
	}
	b.add(heading(1, "Tools"), document.List{Items: items})
}
