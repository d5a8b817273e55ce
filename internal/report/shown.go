package report

import (
	"strings"

	"eighthturn/internal/blocks"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
)

// What a pattern says of its figures, by their names, and of what is like something before it.

// See refers to figures.
func See(figures []string) string { return "See " + measure.List(figures) + "." }

// SewnLike heads the steps of a block that is sewn like one before it.
func SewnLike(label string) string {
	return "Sew it like block " + label + ", in its own fabrics:"
}

// PressedLike says that a block is pressed like one before it.
func PressedLike(label string) document.Text { return lead("Press", "as for block %s.", label) }

// TheLayout is a picture of the layout that stands in parts.
const TheLayout = "the layout"

// BlockShown is the caption of a block's picture; by a picture of the layout its arrow is explained, "" for none.
func BlockShown(b *sewing.Block, layout string) string {
	text := "Finished block " + b.Label + "."
	if layout != "" {
		text += " In " + layout + " the arrow points to this block's top edge."
	}
	if b.Column {
		text = "Finished column of block " + b.Label + "."
	}
	switch {
	case HasNumber(b):
		text += " " + b.VariantName(b.Variants[0].Number) + " is shown."
	case len(b.Variants) > 1:
		text += " One of its " + measure.Count(len(b.Variants), "fabric placement") + " is shown."
	}
	return text
}

// BlockInWords says what a block's picture shows, for someone who cannot see it.
func BlockInWords(b *sewing.Block) string {
	kind := b.Kind
	if k, ok := blocks.Find(blocks.Kinds(), kind); ok {
		kind = k.Summary
	}
	return "Block " + b.Label + ", finished, with its seams: " + kind + "."
}

// RowsDivided says what the pictures of parts of the rows, or columns, show, by the names of them all.
func RowsDivided(figures []string, line string) string {
	return through(figures) + " show the " + line + "s part by part, with the numbers of rows and columns at the edges. White triangles point to the top of each block's picture."
}

// through is the first and the last of names that follow one another.
func through(names []string) string {
	switch n := len(names); n {
	case 1, 2:
		return measure.List(names)
	default:
		return names[0] + " to " + names[n-1]
	}
}

// CutSizes is what is true of all sizes to cut.
func CutSizes(p *Plans) string {
	return "For each fabric, cut in the order listed."
}

// CutAlike names several fabrics of the cutting plan that are cut alike.
func CutAlike(p *Plans, fabrics []int) string {
	return "Fabrics " + measure.List(newCuts(p).names(fabrics))
}

// names are some fabrics of the plan.
func (c *cuts) names(fabrics []int) []string {
	names := make([]string, len(fabrics))
	for i, f := range fabrics {
		names[i] = c.name(f)
	}
	return names
}

// AlikeMap is the caption of the cutting map of several fabrics that are cut alike.
func AlikeMap(p *Plans, fabrics []int) document.Text {
	c := newCuts(p)
	return c.mapCaption(c.names(fabrics)...)
}

// ArrangedAs refers to the figure of a block's fabric placements.
func ArrangedAs(figure string) string {
	return "Arrange the pieces of each block as in " + figure + "."
}

// FabricCut is what to buy of a fabric of the cutting plan, or of each of several that are cut alike, and which figure is its
// cutting map.
func FabricCut(p *Plans, fabrics []int, figure string) string {
	var text strings.Builder
	if len(fabrics) > 1 {
		text.WriteString("These fabrics are cut alike; repeat for each of them. ")
	}
	text.WriteString("Buy " + newCuts(p).shop(&p.Cuts().Fabrics[fabrics[0]].Purchase))
	if len(fabrics) > 1 {
		text.WriteString(" of each")
	}
	text.WriteString(". See " + figure + " for the cutting map.")
	return text.String()
}

// AmountsFor says for how many quilts amounts are.
func AmountsFor(quilts int) string {
	return "All amounts are for " + measure.Count(quilts, "quilt") + "."
}

// ColoringUse says what a coloring page is for.
func ColoringUse(figure string) string {
	return "Copy " + figure + " and color it to try out your own fabrics before you cut."
}

// What pictures of the whole top show beside its colors, for Grid.Described.
const (
	InColor     = "The quilt in color"
	InLine      = "The quilt as a line drawing, without color"
	InGrayscale = "The quilt in grayscale"
)

// Titles of a book of templates by themselves.
const (
	TemplatesUse     = "How to use them"
	TemplatesPieces  = "The pieces"
	TemplatesSubject = "The pieces of a quilt at true size."
)
