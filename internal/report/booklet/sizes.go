package booklet

import (
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/document/bysize"
	"eighthturn/internal/measure"
	"eighthturn/internal/report"
	"eighthturn/internal/templates"
)

// sizeWidth is that of a picture of a size: three stand beside each other.
const sizeWidth = 2 * measure.Inch

// patternOfSizes is the pattern of all sizes of a quilt: what differs stands size by size, all else once.
func patternOfSizes(r Reports, o Options, sizes []*report.Plans) document.Document {
	var books []*patternBuilder
	var bodies [][]document.Section
	var known []templates.Template
	for i, p := range sizes {
		of := r
		if i > 0 {
			of = Of(p)
			if r.Foundations != nil {
				of.Foundations = templates.Foundations(p.Top)
			}
		}
		b := lettered(of, o, fabricLetters(r))
		b.sized = true
		if i > 0 {
			b.name = books[0].title()
		}
		b.nameTemplates(known)
		known = append(known, b.Templates...)
		books, bodies = append(books, b), append(bodies, b.body())
	}
	b := books[0]
	merge := bysize.Options{
		Names:   b.plans.SizeNames(),
		Figures: bysize.Keys{Opens: opens, Bare: bare, Defines: defines, Closes: closes},
		Every:   inEverySize,
		Only:    report.OnlyInSizes,
	}
	parts := bysize.Sections(bodies, merge)
	begin := &parts[0]
	begin.Blocks = append([]document.Block{document.Paragraph{Text: report.HowSizesRead(merge.Names)}}, begin.Blocks...)
	b.parts = nil
	b.sizesPart(sizes)
	parts = append(append(parts[:1:1], b.parts...), parts[1:]...)
	b.parts = nil
	b.backCover(func(form backForm) []document.Block {
		var backs [][]document.Section
		for _, other := range books {
			backs = append(backs, []document.Section{{Blocks: other.back(form)}})
		}
		return bysize.Sections(backs, merge)[0].Blocks
	})
	covers := make([]document.Document, len(books))
	for i, other := range books {
		covers[i].Cover = other.front
	}
	b.front = bysize.Documents(covers, merge).Cover
	return b.whole(append(parts, b.parts...))
}

// inEverySize says whether a figure that differs is shown in every size: where each block goes, what is cut round, and the fabrics of
// blocks. Of maps of fabric, steps and borders one shows how it is done, and the numbers of the others stand in the text.
func inEverySize(key string) bool {
	for _, what := range []string{layoutKey, templateKey, foundationKey, "placements "} {
		if strings.HasPrefix(key, what) {
			return true
		}
	}
	return false
}

// sizesPart is the pictures of all sizes, and how large each is.
func (b *patternBuilder) sizesPart(sizes []*report.Plans) {
	b.part("Sizes", false)
	names := b.plans.SizeNames()
	g := document.Gallery{Across: 3}
	for i, p := range sizes {
		g.Pictures = append(g.Pictures, document.Picture{
			Of:          b.inColor(p.Top, colorwayPixels, maxFaces/len(sizes)),
			Caption:     document.Plain(report.SizeShown(names[i], p.Top)),
			Alternative: report.InSize(names[i], p.Top),
			Width:       sizeWidth, Least: measure.Inch,
		})
	}
	b.add(g)
	b.add(printed(report.SizesInPattern(b.plans))...)
}
