package report

import (
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
)

// Tools are what the quilt is cut, sewn and pressed with, and nothing that it does not need.
func Tools(p *Plans) []string {
	return slices.Concat(CuttingTools(p), []string{"sewing machine with a " + p.Top.Units.Nearest(p.Top.Seam) + " presser foot", "thread, scissors and a seam ripper", "pins", "hand-sewing needle", "iron and ironing board"})
}

// CuttingTools are what the quilt's pieces are cut and trimmed with.
func CuttingTools(p *Plans) []string { return newCuts(p).tools(true) }

// tools are what units are trimmed with and wedges cut from strip sets, and what all other pieces are cut with if they are not cut yet.
func (c *cuts) tools(toCut bool) []string {
	list := []string{"rotary cutter with a sharp blade and a safety guard", "cutting mat", longRuler(c)}
	square := slices.ContainsFunc(c.plans.Steps().Blocks, func(k sewing.Block) bool {
		return slices.ContainsFunc(k.Steps, func(s sewing.Step) bool { return slices.Contains(s.Tools, blocks.SquareRuler) })
	})
	switch {
	case square && c.cutBy(func(p *cutting.Piece) bool { return p.Method == cutting.OnceOnDiagonal }):
		list = append(list, "square ruler with a 45-degree line from corner to corner")
	case square:
		list = append(list, "square ruler")
	}
	if toCut && len(c.shapesWith(blocks.WedgeRule)) > 0 || len(c.sewn()) > 0 {
		list = append(list, "wedge ruler (a 45-degree ruler), or the templates in the pattern")
	}
	if !toCut {
		return list
	}
	if c.cutBy(func(p *cutting.Piece) bool { return p.Shape.Description().Marked }) {
		list = append(list, "pencil or fabric marker")
	}
	for _, s := range c.shapesWith(blocks.OwnTemplate) {
		list = append(list, "the templates for the "+measure.Plural(s.String()))
	}
	if len(c.betweenMarks().Blocks) > 0 {
		list = append(list, "tape to mark sizes on the ruler")
	}
	return list
}

// longRuler is the ruler that strips are cut with: 24 in long, over fabric of the usual width that is folded once. Common practice, no
// source.
func longRuler(c *cuts) string {
	if c.Units == measure.Centimetres {
		return "acrylic ruler, 15 by 60 cm"
	}
	return "acrylic ruler, 6 by 24 in"
}

// cutBy says whether any piece is cut in a way.
func (c *cuts) cutBy(is func(*cutting.Piece) bool) bool {
	return slices.ContainsFunc(c.Lines, func(l cutting.Line) bool { return is(&l.Piece) })
}

// shapesWith is the shapes of the quilt that are cut with a tool.
func (c *cuts) shapesWith(tool blocks.Tool) []blocks.Shape {
	return slices.DeleteFunc(blocks.Shapes(), func(s blocks.Shape) bool {
		return !slices.Contains(s.Description().Tools, tool) || !c.Cuts(s)
	})
}
