package booklet

import (
	"eighthturn/internal/document"
	"eighthturn/internal/report"
)

// assemblyPart is how the blocks become the top, as the sewing report says it, with figures, and with what is cut for each
// border.
func (b *patternBuilder) assemblyPart() {
	together := b.sewn(report.SewingTogether)
	b.part(together.Title, false)
	for _, text := range paragraphs(together.Blocks) { // of a top of one piece
		b.add(document.Paragraph{Text: text})
	}
	for _, block := range together.Blocks {
		if s, ok := block.(document.Section); ok {
			b.joined(s)
		}
	}
	for _, id := range []string{report.SewingPressing, report.SewingGrain, report.SewingBulk} {
		if s := b.sewn(id); len(s.Blocks) > 0 {
			b.add(heading(1, s.Title))
			b.add(s.Blocks...)
		}
	}
	b.assemblyPictures()
}

// joined is one part of how the top goes together, its pictures left out, which stand together behind all.
func (b *patternBuilder) joined(s document.Section) {
	var whole []document.Block
	if s.Title != "" {
		whole = append(whole, heading(1, s.Title))
	}
	for _, block := range printed(s.Blocks) {
		l, ok := block.(document.List)
		if !ok {
			whole = append(whole, block)
			continue
		}
		for i, it := range l.Items {
			if s.ID == report.SewingLines && i == 0 {
				whole = append(whole, seeing(it.Text, layoutKey))
			} else {
				whole = append(whole, document.Paragraph{Text: it.Text})
			}
		}
	}
	b.keep(whole...)
	if s.ID == report.SewingBorder(1) {
		b.addNotes("border")
	}
}

// sewnTop are the pictures of the top as it is sewn together.
func (b *patternBuilder) sewnTop() []document.Figure {
	var list []document.Figure
	for _, block := range b.sewn(report.SewingTogether).Blocks {
		if s, ok := block.(document.Section); ok {
			for _, it := range b.sewnItems(s.ID) {
				list = append(list, figures(it.Blocks)...)
			}
		}
	}
	return list
}

// topFigures are those pictures with blocks named as the layout names them.
func (b *patternBuilder) topFigures() []document.Figure {
	list := b.sewnTop()
	for i := range list {
		list[i].Of = b.plainly(list[i].Of)
	}
	return list
}

// assemblyPictures shows those pictures.
func (b *patternBuilder) assemblyPictures() {
	list := b.topFigures()
	var refs []string
	for i := range list {
		refs = append(refs, see(topKey(i)))
	}
	if len(refs) > 0 {
		b.add(paragraph(report.OrderShown(refs)))
	}
	for i, f := range list {
		f.Width = b.wholeWidth()
		if i > 0 { // frames round a center that is not shown
			f.Width = b.wholeWidth() * 3 / 5
		}
		f.Caption = caption(topKey(i), sentence(f.Of.Title))
		b.add(f)
	}
}

func topKey(n int) string { return "top " + numeral(n) }
