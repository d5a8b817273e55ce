package booklet

import (
	"slices"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/report"
)

// maxToColour is how many pieces and strips a page can have that pencils are to colour.
const maxToColour = 30_000

// colouringPart is a page of the top in line.
func (b *patternBuilder) colouringPart() {
	if b.left(colouring) || len(b.Top.Patches)+len(b.Top.StripSeams) > maxToColour {
		return
	}
	b.part("Coloring page", true)
	b.parts[len(b.parts)-1].Alone = true
	b.add(paragraph(report.ColoringUse(see("colouring"))))
	b.add(document.Picture{Of: b.lineDrawing(), Caption: caption("colouring", "Coloring page."), Alternative: b.described(report.InLine), Width: b.wholeWidth(), Least: minOf(b.Top.Outer.Width(), b.Top.Outer.Height())})
}

// left says whether a part is left out.
func (b *patternBuilder) left(part string) bool { return slices.Contains(b.Without, part) }

// wholeWidth is the width between the margins.
func (b *patternBuilder) wholeWidth() measure.NM { return b.paper().Width - 2*b.paper().Margin }

// valuePart is the study of light and dark with the top in grays: the designer's, and printed where it is asked for.
func (b *patternBuilder) valuePart() {
	if !b.ValueStudy {
		return
	}
	study := report.Values(b.plans)
	b.part("Value study", true)
	b.add(document.Picture{Of: b.inGrays(), Caption: document.Plain(report.InGrayscale + "."), Alternative: b.described(report.InGrayscale), Width: b.wholeWidth(), Least: minOf(b.Top.Outer.Width(), b.Top.Outer.Height())})
	for _, s := range study.Down(document.Answer).Print().Sections {
		if s.Title != "" {
			b.titled(document.Section{Title: s.Title, Blocks: printed(s.Blocks)})
		}
	}
}
