package booklet

import (
	"fmt"
	"strings"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
)

// blocksPart is how each block is sewn.
func (b *book) blocksPart() {
	b.part("The blocks", true)
	b.add(para("Sew with a seam allowance of %s throughout. Unfinished sizes are from cut edge to cut edge, with the seam allowances; sizes are to the nearest %s. "+
		"After each step measure one unit before you sew the others.", b.length(b.Sewing.Seam), b.words().Mark()))
	b.addNotes("sewing")
	if list := b.sewingCautions(); len(list) > 0 {
		b.add(document.Box{Caution: true, Blocks: list})
	}
	for i := range b.Sewing.Blocks {
		b.oneBlock(i)
	}
}

func (b *book) sewingCautions() []document.Block {
	var items []document.Item
	for _, c := range b.Sewing.Cautions {
		items = append(items, item(document.Plain(sentence(c))))
	}
	if len(items) == 0 {
		return nil
	}
	return []document.Block{document.List{Items: items}}
}

// oneBlock is the block of one label.
func (b *book) oneBlock(n int) {
	k := &b.Sewing.Blocks[n]
	head := heading(1, "Block "+k.Label+": "+k.Kind)
	text := "Make " + count(k.Count, k.Noun()) + b.forCopies() + "."
	if k.Column {
		text += " The longest finishes at " + b.unitSize(k.Finished) + "; unfinished it is " + b.unitSize(k.Unfinished) + "."
	} else {
		text += " A block finishes at " + b.unitSize(k.Finished) + "; unfinished, with its seam allowances, it is " + b.unitSize(k.Unfinished) + "."
	}
	whole := []document.Block{head, para("%s See %s.", text, see(blockKey(n))), b.blockFigure(n)}
	if len(k.Steps) == 0 {
		whole = append(whole, para("This block is one piece: there is nothing to sew."))
	}
	cloth := b.colourings(k)
	if !k.Column { // the orders of columns may be longer than a page
		whole, cloth = append(whole, cloth...), nil
	}
	b.keep(whole...)
	b.add(cloth...)
	b.addNotes(k.Label)
	if len(k.Steps) == 0 {
		return
	}
	if like := b.sewnLike(n); like >= 0 {
		b.likeSteps(n, like)
	} else {
		for i := range k.Steps {
			b.oneStep(n, i)
		}
	}
	b.pressing(n)
}

// sewnLike is the first block of the same kind, -1 for none before this one. Blocks of a grid have one size, so their steps
// differ in nothing but how many units they make. Columns may differ in their pieces.
func (b *book) sewnLike(n int) int {
	k := &b.Sewing.Blocks[n]
	for i := range n {
		if other := &b.Sewing.Blocks[i]; other.Kind == k.Kind && !k.Column && len(other.Steps) == len(k.Steps) {
			return i
		}
	}
	return -1
}

// likeSteps is the steps of a block that is sewn like one before it.
func (b *book) likeSteps(n, like int) {
	k := &b.Sewing.Blocks[n]
	var items []document.Item
	for i := range k.Steps {
		s := &k.Steps[i]
		text := b.makes(k, s)
		for n := range b.stepPictures(like, i) {
			text += " See " + see(stepKey(like, i, n)) + "."
		}
		items = append(items, item(lead("Step "+numeral(i+1)+", "+s.Name+".", "%s", text)))
	}
	if b.pressedLike(n, like) {
		items = append(items, item(lead("Press", "it like block %s.", b.Sewing.Blocks[like].Label)))
	}
	b.keep(para("It is sewn like block %s, with its own cloth:", b.Sewing.Blocks[like].Label), document.List{Items: items})
}

func stepKey(block, step, n int) string {
	return "step " + numeral(block) + " " + numeral(step) + " " + numeral(n)
}

func blockKey(n int) string { return "block " + numeral(n) }

// forCopies says that numbers in the sewing plan are for one quilt of several.
func (b *book) forCopies() string {
	if b.Cuts.Copies > 1 {
		return " for each quilt"
	}
	return ""
}

// mostColourings is how many ways to colour a block are listed; more are told as a scrap block.
const mostColourings = 12

// colourings lists in which cloth a block is sewn.
func (b *book) colourings(k *sewing.Block) []document.Block {
	switch {
	case len(k.Variants) > mostColourings:
		return []document.Block{para("These %s are sewn in %s. Lay the pieces out by the picture of the quilt, or as they come to hand: what matters is that neighbours differ.",
			plural(k.Noun()), count(len(k.Variants), "colouring"))}
	case k.Column:
		return []document.Block{b.columnOrders(k)}
	case len(k.Variants) > 1:
		return []document.Block{b.colouringTable(k)}
	}
	c := &k.Variants[0]
	list := []document.Block{para("Pieces for one block: %s.", sewing.ClothCounts(c.Cloths))}
	if units := orders(k, c); len(units) > 0 {
		list = append(list, document.List{Items: units})
	}
	return list
}

// columnOrders is the order of the pieces in each colouring of a column.
func (b *book) columnOrders(k *sewing.Block) document.List {
	var list document.List
	for i := range k.Variants {
		v := &k.Variants[i]
		list.Items = append(list.Items, item(lead(k.VariantName(v)+":", "%s", sentence(b.words().VariantText(k, v)))))
	}
	return list
}

func (b *book) colouringTable(k *sewing.Block) document.Table {
	t := document.Table{Named: true, Columns: []document.Column{{Title: "Colouring"}, {Title: "Make", Kind: document.Counts}, {Title: "Pieces for one block"}}}
	for i := range k.Variants {
		c := &k.Variants[i]
		text := sewing.ClothCounts(c.Cloths)
		for _, order := range orders(k, c) {
			text += ". " + strings.TrimSuffix(order.Text.String(), ".")
		}
		t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{cell(k.VariantName(c)), cell(numeral(len(c.Cells))), cell(text)}})
	}
	return t
}

// orders says of units that are made of the same cloths in several orders how many there are of each.
func orders(k *sewing.Block, c *sewing.FabricVariant) []document.Item {
	var list []document.Item
	for _, m := range c.Makes {
		if m.Mirror {
			list = append(list, item(lead(fmt.Sprintf("Step %d, %s:", m.Step+1, k.Steps[m.Step].Name), "make %d, in this order: %s.", m.Count, strings.Join(m.Cloths, "; "))))
		}
	}
	return list
}

// words says what the sewing plan holds.
func (b *book) words() sewing.Words { return sewing.Words{Plan: b.Sewing} }

// oneStep is a step of a block.
func (b *book) oneStep(block, n int) {
	k := &b.Sewing.Blocks[block]
	s := &k.Steps[n]
	var pictures []document.Illustration
	var refs []string
	for i, p := range b.stepPictures(block, n) {
		key := stepKey(block, n, i)
		pictures = append(pictures, document.Figure{Of: *p, Width: b.stepWidth(), Caption: caption(key, sentence(p.Title))})
		refs = append(refs, see(key))
	}
	text := sentence(s.Do)
	if s.Make > 0 {
		text = b.makes(k, s) + " " + text
	}
	if len(refs) > 0 {
		text += " See " + listed(refs) + "."
	}
	items := b.stepItems(k, s)
	if press := b.pressItems(block); pressedAtOnce(k, press) {
		items = append(items, press...)
	}
	whole := []document.Block{heading(2, "Step "+numeral(n+1)+": "+s.Name), para("%s", text), document.List{Items: items}}
	switch len(pictures) {
	case 0:
	case 1:
		whole = append(whole, pictures[0])
	default:
		whole = append(whole, document.Gallery{Pictures: pictures})
	}
	b.keep(whole...)
}

func (b *book) stepPictures(block, step int) []*diagram.Figure {
	var list []*diagram.Figure
	for i := range b.steps {
		if p := &b.steps[i]; p.Block == block && (block < 0 || p.Step == step) && p.Figure != nil {
			list = append(list, p.Figure)
		}
	}
	return list
}

// stepWidth is how wide pictures of steps are wanted: on small pages and beside large letters as wide as the page.
func (b *book) stepWidth() measure.NM {
	if b.Large || b.paper().Width < 6*measure.Inch {
		return b.wholeWidth()
	}
	return 0
}

// makes says how many units a step makes.
func (b *book) makes(k *sewing.Block, s *sewing.Step) string {
	noun := "unit"
	if k.Column {
		noun = k.Noun()
	}
	text := "Make " + count(s.Make, noun) + b.forCopies()
	if s.PerBlock > 1 {
		text += ", " + numeral(s.PerBlock) + " for each block"
	}
	return text + "."
}

// stepItems is what belongs to a step: offsets, trimming, size, check.
func (b *book) stepItems(k *sewing.Block, s *sewing.Step) []document.Item {
	var items []document.Item
	for _, text := range b.words().StepLines(k, s)[1:] { // the first is what to do
		at := strings.IndexAny(text, ",:") + 1
		items = append(items, item(lead(text[:at], "%s", text[min(at+1, len(text)):])))
		if strings.HasPrefix(text, "Size unfinished:") {
			items = append(items, item(lead("Size finished:", "%s.", b.words().UnitSize(s.Form, s.Finished))))
		}
	}
	return items
}
