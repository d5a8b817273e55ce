package booklet

import (
	"slices"

	"eighthturn/figure"
	"eighthturn/measure"
	"eighthturn/pages"
	"eighthturn/sewing"
)

// blocksPart is how each block is sewn.
func (b *book) blocksPart() {
	b.part("The blocks", true)
	b.add(para("Sew with a seam allowance of %s throughout. Sizes are unfinished where they still have their outer seam allowances. "+
		"After each step measure one unit before you sew the others.", b.length(b.Sewing.Seam)))
	b.addNotes("sewing")
	if list := b.sewingCautions(); len(list) > 0 {
		b.add(pages.Box{Caution: true, Blocks: list})
	}
	for i := range b.Sewing.Blocks {
		b.oneBlock(i)
	}
}

func (b *book) sewingCautions() []pages.Block {
	var items []pages.Item
	for _, c := range b.Sewing.Cautions {
		items = append(items, item(pages.Plain(sentence(c))))
	}
	if len(items) == 0 {
		return nil
	}
	return []pages.Block{pages.List{Items: items}}
}

// oneBlock is the block of one label.
func (b *book) oneBlock(n int) {
	k := &b.Sewing.Blocks[n]
	noun := "block"
	if k.Column {
		noun = "column"
	}
	head := heading(1, "Block "+k.Label+": "+k.Kind)
	text := "Make " + count(k.Count, noun) + b.forCopies() + "."
	if k.Column {
		text += " The longest finishes at " + b.markSize(k.Finished) + "; unfinished it is " + b.markSize(k.Unfinished) + "."
	} else {
		text += " A block finishes at " + b.markSize(k.Finished) + "; unfinished, with its seam allowances, it is " + b.markSize(k.Unfinished) + "."
	}
	b.keep(head, para("%s See %s.", text, see(blockKey(n))), b.blockFigure(n))
	b.addNotes(k.Label)
	b.colourings(k)
	if len(k.Steps) == 0 {
		b.add(para("This block is one piece: there is nothing to sew."))
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
	var items []pages.Item
	for i := range k.Steps {
		s := &k.Steps[i]
		text := b.makes(k, s)
		for n := range b.stepPictures(like, i) {
			text += " See " + see(stepKey(like, i, n)) + "."
		}
		items = append(items, item(lead("Step "+numeral(i+1)+", "+s.Name+".", "%s", text)))
	}
	b.add(para("It is sewn like block %s, with these fabrics in its places:", b.Sewing.Blocks[like].Label), pages.List{Items: items})
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
func (b *book) colourings(k *sewing.Block) {
	switch {
	case len(k.Colourings) == 1:
		b.add(para("Fabrics: %s.", sewing.Listed(unique(k.Colourings[0].Cloths))))
		return
	case len(k.Colourings) > mostColourings:
		b.add(para("These blocks are sewn in %s. Lay the pieces out by the picture of the quilt, or as they come to hand: what matters is that neighbours differ.",
			count(len(k.Colourings), "colouring")))
		return
	}
	t := pages.Table{Named: true, Columns: []pages.Column{{Title: "Colouring"}, {Title: "Make", Align: pages.Right}, {Title: "Cloth"}}}
	for _, c := range k.Colourings {
		t.Rows = append(t.Rows, pages.Row{Cells: []pages.Cell{cell(k.Label + numeral(c.Number)), cell(numeral(len(c.Cells))), cell(sewing.Listed(unique(c.Cloths)))}})
	}
	b.add(t)
}

func unique(list []string) []string {
	var out []string
	for _, s := range list {
		if !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	return out
}

// oneStep is a step of a block.
func (b *book) oneStep(block, n int) {
	k := &b.Sewing.Blocks[block]
	s := &k.Steps[n]
	b.add(heading(2, "Step "+numeral(n+1)+": "+s.Name))
	var pictures []pages.Illustration
	var refs []string
	for i, p := range b.stepPictures(block, n) {
		key := stepKey(block, n, i)
		pictures = append(pictures, pages.Figure{Of: *p, Width: b.stepWidth(), Caption: caption(key, sentence(p.Title))})
		refs = append(refs, see(key))
	}
	text := sentence(s.Do)
	if s.Make > 0 {
		text = b.makes(k, s) + " " + text
	}
	if len(refs) > 0 {
		text += " See " + listed(refs) + "."
	}
	b.add(para("%s", text))
	items := b.stepItems(k, s)
	b.add(pages.List{Items: items})
	switch len(pictures) {
	case 0:
	case 1:
		b.add(pictures[0])
	default:
		b.add(pages.Gallery{Pictures: pictures})
	}
}

func (b *book) stepPictures(block, step int) []*figure.Figure {
	var list []*figure.Figure
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
		noun = "column"
	}
	text := "Make " + count(s.Make, noun) + b.forCopies()
	if s.PerBlock > 1 {
		text += ", " + numeral(s.PerBlock) + " for each block"
	}
	return text + "."
}

// stepItems is what belongs to a step: offsets, trimming, size, check.
func (b *book) stepItems(k *sewing.Block, s *sewing.Step) []pages.Item {
	items := b.offsets(k, s)
	if s.Trim != "" {
		text := sentence(s.Trim)
		if s.StandsOut.Nearest > 0 {
			text += " At the most " + b.mark(s.StandsOut) + " stands out."
		}
		items = append(items, item(lead("Trim.", "%s", text)))
	}
	if s.Finished.Across.NM > 0 { // a column's is its own and not its step's
		items = append(items, item(lead("Size:", "%s.", b.sizes(k, s))))
	}
	if s.Check != "" {
		items = append(items, item(lead("Check:", "%s", sentence(s.Check))))
	}
	return items
}

// offsets says by how much corners stick out, each way of it once.
func (b *book) offsets(k *sewing.Block, s *sewing.Step) []pages.Item {
	var said []string
	for i := range s.Joins {
		if text := b.offset(k, &s.Joins[i]); !slices.Contains(said, text) {
			said = append(said, text)
		}
	}
	var items []pages.Item
	for _, text := range said {
		items = append(items, item(lead("Corners:", "%s", text)))
	}
	return items
}
