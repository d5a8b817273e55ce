package booklet

import (
	"slices"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/report"
)

// blocksPart is how each block is sewn, as the sewing report says it, with figures, and the notes of the layout.
func (b *patternBuilder) blocksPart() {
	b.part("The blocks", true)
	b.add(b.sewn(report.SewingSizes).Blocks...)
	b.addNotes("sewing")
	for i := range b.Sewing.Blocks {
		b.oneBlock(i)
	}
}

// sewn is a section of the sewing report; an empty one where there is no such section.
func (b *patternBuilder) sewn(id string) document.Section {
	s, _ := b.sewing.Section(id)
	return s
}

// sewnItems are the items of a section of the sewing report.
func (b *patternBuilder) sewnItems(id string) []document.Item {
	for _, block := range b.sewn(id).Blocks {
		if list, ok := block.(document.List); ok {
			return list.Items
		}
	}
	return nil
}

// paragraphs are the texts of the paragraphs among blocks.
func paragraphs(list []document.Block) []document.Text {
	var texts []document.Text
	for _, block := range list {
		if p, ok := block.(document.Paragraph); ok {
			texts = append(texts, p.Text)
		}
	}
	return texts
}

// figures are the figures among blocks.
func figures(list []document.Block) []document.Figure {
	var found []document.Figure
	for _, block := range list {
		if f, ok := block.(document.Figure); ok {
			found = append(found, document.Figure{Of: *f.Diagram()})
		}
	}
	return found
}

// seeing is a text that refers to figures; to none, it is as it is.
func seeing(text document.Text, keys ...string) document.Paragraph {
	refs := make([]string, len(keys))
	for i, key := range keys {
		refs[i] = see(key)
	}
	if len(keys) > 0 {
		text = append(slices.Clone(text), document.Run{Text: " " + report.See(refs)})
	}
	return document.Paragraph{Text: text}
}

// oneBlock is the block of one label.
func (b *patternBuilder) oneBlock(n int) {
	k := &b.Sewing.Blocks[n]
	s := b.sewn(report.SewingBlock(n, ""))
	texts := paragraphs(s.Blocks)
	whole := []document.Block{heading(1, s.Title), seeing(texts[0], blockKey(n)), b.blockFigure(n)}
	for _, text := range texts[1:] {
		whole = append(whole, document.Paragraph{Text: text})
	}
	cloth := report.WithoutPlaces(b.sewn(report.SewingBlock(n, "fabrics"))).Blocks
	if len(k.Variants) > report.MaxPlacements {
		cloth = cloth[:1] // neither the layout nor a list tells so many apart
	}
	cloth, placements := b.placements(n, cloth)
	if !k.Column { // the orders of columns may be longer than a page
		whole, cloth = append(whole, cloth...), nil
	}
	b.keep(whole...)
	b.add(cloth...)
	b.add(placements...)
	b.addNotes(k.Label)
	if len(k.Steps) > 0 {
		b.steps(n)
	}
}

// placements takes the pictures of a block's fabric placements out of what is said of them; the pictures stand behind it.
func (b *patternBuilder) placements(n int, cloth []document.Block) (texts, pictures []document.Block) {
	key := "placements " + numeral(n)
	for _, f := range figures(cloth) {
		f.Caption = caption(key, sentence(f.Of.Title))
		pictures = append(pictures, f)
	}
	for _, block := range cloth {
		if _, ok := block.(document.Figure); !ok {
			texts = append(texts, block)
		}
	}
	if len(pictures) > 0 {
		texts = append(texts, paragraph(report.ArrangedAs(see(key))))
	}
	return texts, pictures
}

// steps is how a block is sewn and pressed.
func (b *patternBuilder) steps(n int) {
	k := &b.Sewing.Blocks[n]
	press := b.sewnItems(report.SewingBlock(n, "pressing"))
	like := b.sewnLike(n)
	switch {
	case like >= 0 && b.pressedLike(n, like):
		b.likeSteps(n, like)
		return
	case like >= 0:
		b.likeSteps(n, like)
	case len(k.Steps) == 1 && len(press) == 1:
		b.oneStep(n, 0, press)
		return
	default:
		units, key := b.sewn(report.SewingBlock(n, "units")).Blocks, "units "+numeral(n)
		for _, f := range figures(units) {
			f.Caption = caption(key, sentence(f.Of.Title))
			b.add(seeing(paragraphs(units)[0], key), f)
		}
		for i := range k.Steps {
			b.oneStep(n, i, nil)
		}
	}
	if len(press) > 0 {
		b.keep(heading(2, "Pressing"), document.List{Items: press})
	}
}

// sewnLike is the first block of the same kind, -1 for none before this one. Blocks of a grid have one size, so their steps
// differ in nothing but how many units they make. Columns may differ in their pieces.
func (b *patternBuilder) sewnLike(n int) int {
	k := &b.Sewing.Blocks[n]
	for i := range n {
		if other := &b.Sewing.Blocks[i]; other.Kind == k.Kind && !k.Column && len(other.Steps) == len(k.Steps) {
			return i
		}
	}
	return -1
}

// pressedLike says whether a block is pressed as another is, with the same words.
func (b *patternBuilder) pressedLike(n, like int) bool {
	return slices.EqualFunc(b.sewnItems(report.SewingBlock(n, "pressing")), b.sewnItems(report.SewingBlock(like, "pressing")),
		func(a, b document.Item) bool { return a.Text.String() == b.Text.String() })
}

// likeSteps is the steps of a block that is sewn like one before it.
func (b *patternBuilder) likeSteps(n, like int) {
	label := b.Sewing.Blocks[like].Label
	var items []document.Item
	for i, step := range b.sewnItems(report.SewingBlock(n, "steps")) {
		text := append(stepHead(i, step), document.Run{Text: "."})
		items = append(items, item(seeing(text, stepKey(like, i)).Text))
	}
	if b.pressedLike(n, like) {
		items = append(items, item(report.PressedLike(label)))
	}
	b.keep(paragraph(report.SewnLike(label)), document.List{Items: items})
}

// stepHead names a step by its number and what it makes.
func stepHead(n int, step document.Item) document.Text {
	return append(document.Bold("Step "+numeral(n+1)+", "), step.Text...)
}

func stepKey(block, step int) string { return "step " + numeral(block) + " " + numeral(step) }

func blockKey(n int) string { return "block " + numeral(n) }

// oneStep is a step of a block, with what else there is to know.
func (b *patternBuilder) oneStep(block, n int, more []document.Item) {
	step := b.sewnItems(report.SewingBlock(block, "steps"))[n]
	texts := paragraphs(step.Blocks)
	var items []document.Item
	for _, text := range texts[1:] {
		items = append(items, item(text))
	}
	key := stepKey(block, n)
	whole := []document.Block{heading(2, stepHead(n, step).String()), seeing(texts[0], key), document.List{Items: append(items, more...)}}
	for _, f := range figures(step.Blocks) {
		f.Width, f.Caption = b.stepWidth(), caption(key, sentence(f.Of.Title))
		whole = append(whole, f)
	}
	b.keep(whole...)
}

// stepWidth is how wide pictures of steps are wanted: on small pages and beside large letters as wide as the page.
func (b *patternBuilder) stepWidth() measure.NM {
	if b.Large || b.paper().Width < 6*measure.Inch {
		return b.wholeWidth()
	}
	return 0
}
