package booklet

import (
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/report"
	"eighthturn/svgout"
)

// sizeWidth is that of a picture of a size: three stand beside each other.
const sizeWidth = 2 * measure.Inch

// sizesPart is the pictures of all sizes, and what each takes.
func (b *patternBuilder) sizesPart() {
	sizes, names := b.plans.Sized(), b.plans.SizeNames()
	if len(sizes) == 0 {
		return
	}
	b.part("Sizes", true)
	g := document.Gallery{}
	for i, p := range sizes {
		g.Pictures = append(g.Pictures, document.Picture{
			Of:          b.pictureOf(p.Top, colorwayPixels, maxFaces/len(sizes), asItIs, svgout.SeamsByView),
			Caption:     document.Plain(report.SizeShown(names[i], p.Top)),
			Alternative: report.InSize(names[i], p.Top),
			Width:       sizeWidth, Least: measure.Inch,
		})
	}
	b.add(g)
	b.add(printed(report.SizesInPattern(b.plans))...)
}
