package booklet

import (
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
)

// cover is the first page.
func (b *patternBuilder) cover() *document.Cover {
	picture := document.Picture{Of: b.inColor(b.Top, pixelsAlong, maxFaces), Alternative: b.described(report.InColor)}
	c := &document.Cover{Subtitle: "Quilt pattern", Picture: &picture, Lines: report.CoverLines(b.plans)}
	for _, text := range b.notes("cover") {
		c.Lines = append(c.Lines, document.Plain(text))
	}
	return c
}

// described says what a picture of the whole top shows, for someone who cannot see it.
func (b *patternBuilder) described(shows string) string { return b.grid().Described(shows) }

// notes are the layout's notes for a place, "" for the pattern as a whole.
func (b *patternBuilder) notes(place string) []string {
	var list []string
	for _, n := range b.Top.Credits.Notes {
		if n.Place != place {
			continue
		}
		if text := own(n.Text); text != "" {
			list = append(list, text)
		}
	}
	return list
}

// addNotes puts the notes for a place into a frame.
func (b *patternBuilder) addNotes(place string) {
	var list []document.Block
	for _, text := range b.notes(place) {
		list = append(list, document.Paragraph{Text: document.Plain(text)})
	}
	if len(list) > 0 {
		b.add(document.Box{Word: "From the designer", Blocks: list})
	}
}

// backCover is the last page: the title, a block, what to buy and what to know; with less where the page has no room for all.
func (b *patternBuilder) backCover(of func(form backForm) []document.Block) {
	b.part("", false)
	b.parts[len(b.parts)-1].Back = true
	var whole []document.Block
	for _, form := range []backForm{
		{true, true, report.ShoppingTable}, {true, true, report.ShoppingPairs}, {false, true, report.ShoppingTable}, {false, true, report.ShoppingPairs},
		{false, true, report.ShoppingSentence}, {false, false, report.ShoppingTable}, {false, false, report.ShoppingPairs}, {false, false, report.ShoppingSentence}, {false, true, report.NoShopping},
	} {
		if form.shopping < report.ShoppingSentence && len(b.Cuts.Fabrics) > report.MaxShoppingRows {
			continue
		}
		whole = of(form)
		if render.OnePage(whole, render.Options{Paper: b.paper(), Large: b.Large}) {
			break
		}
	}
	b.keep(whole...)
}

// backForm is how much a back cover says.
type backForm struct {
	pictured, skills bool
	shopping         report.ShoppingForm
}

// back is what stands on the back cover.
func (b *patternBuilder) back(form backForm) []document.Block {
	s := report.BackCover(b.plans, form.shopping, form.skills)
	whole := []document.Block{heading(1, b.title()), s.Blocks[0]}
	if form.pictured {
		whole = append(whole, b.backPicture())
	}
	for _, block := range s.Blocks[1:] {
		if inner, ok := block.(document.Section); ok {
			whole = append(append(whole, heading(1, inner.Title)), inner.Blocks...)
		} else {
			whole = append(whole, block)
		}
	}
	return whole
}

// backPicture is the block with the most pieces, without a number; the whole quilt where it has no blocks.
func (b *patternBuilder) backPicture() document.Picture {
	var n, most int
	for i := range b.Sewing.Blocks {
		if k := &b.Sewing.Blocks[i]; !k.Column && len(k.Variants[0].Cells[0].Patches) > most {
			n, most = i, len(k.Variants[0].Cells[0].Patches)
		}
	}
	if most == 0 { // columns alone, which are as high as the quilt
		return document.Picture{Of: b.front.Picture.Of, Width: blockWidth, Least: measure.Inch / 2, Alternative: b.described(report.InColor)}
	}
	p := b.blockFigure(n)
	p.Least = measure.Inch
	p.Caption = document.Plain(report.BlockShown(&b.Sewing.Blocks[n], ""))
	return p
}

// notesPart is room to write.
func (b *patternBuilder) notesPart() {
	b.part("Notes", false)
	b.add(document.Ruled{})
}
