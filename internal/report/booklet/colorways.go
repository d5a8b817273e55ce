package booklet

import (
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/report"
)

// Pictures of colorways are smaller than the cover's: all of them together have no more outlines, and each in pixels has about
// 250 of them an inch.
const (
	colorwayWidth  = 3 * measure.Inch
	colorwayPixels = 900
)

// colorwaysPart is the pictures of all colorways, and the fabrics of each.
func (b *patternBuilder) colorwaysPart() {
	ways := b.Top.Colorways
	if len(ways) == 0 {
		return
	}
	b.part("Colorways", true)
	b.add(paragraph(report.ColorwaysAreAlike))
	g := document.Gallery{}
	for i := range ways {
		g.Pictures = append(g.Pictures, document.Picture{
			Of:          b.inColor(b.Top.In(i), colorwayPixels, maxFaces/len(ways)),
			Caption:     document.Plain(report.ColorwayShown(ways[i].Name)),
			Alternative: b.described(report.InColorway(ways[i].Name)),
			Width:       colorwayWidth, Least: measure.Inch,
		})
	}
	b.add(g)
	b.add(printed(report.Colorways(b.plans).Blocks)...)
}
