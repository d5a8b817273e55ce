package report

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
)

// SizesID is the section of all sizes side by side.
const SizesID = "sizes-side-by-side"

// sizesBeside is how many sizes a table has side by side.
const sizesBeside = 4

// Sized are the plans of each size of the quilt, the size as written first; none where the layout has no sizes. The first is of
// the top itself. A size in other units is a pattern of its own and not among them.
func (p *Plans) Sized() []*Plans {
	if len(p.Top.Sizes) == 0 {
		return nil
	}
	made := p.all().sizes.Get(p.sign, func() []*Plans {
		list := []*Plans{p}
		for i := range p.Top.Sizes {
			if p.Top.Sizes[i].Own || p.Top.Sizes[i].Units != p.Top.Units {
				continue
			}
			other := *p
			other.Top, other.made, other.Nearby = p.Top.Sizes[i].Top(p.sign), &made{}, nil
			list = append(list, &other)
		}
		return list
	})
	list := make([]*Plans, len(made))
	for i, other := range made {
		list[i] = other.Until(p.sign)
	}
	return list
}

// SizeNames are what the sizes of a top are called, in the order of Sized.
func (p *Plans) SizeNames() []string {
	var list []string
	if len(p.Top.Sizes) > 0 && !p.Top.Sizes[0].Own {
		list = append(list, strings.ToLower(AsWritten))
	}
	for i := range p.Top.Sizes {
		if p.Top.Sizes[i].Units == p.Top.Units {
			list = append(list, p.Top.Sizes[i].Name)
		}
	}
	return list
}

// sizes is what each size takes, side by side: what to buy, the strips and the pieces to cut.
func (c *cuts) sizes() document.Section {
	s := section(SizesID, "All sizes side by side, for "+c.quilts(), document.Detail)
	list := sizedCuts(c.plans)
	if len(list) == 0 {
		return s
	}
	names := c.plans.SizeNames()
	for first := 0; first < len(list); first += sizesBeside {
		end := min(first+sizesBeside, len(list))
		b := &sizesTable{names: names[first:end], sizes: list[first:end]}
		s.Blocks = append(s.Blocks, b.material(), b.strips(), b.pieces())
	}
	return with(s, bullets(c.inSizes(names, list)...)...)
}

// sizedCuts are the cutting plans of all sizes.
func sizedCuts(p *Plans) (list []*cuts) {
	for _, other := range p.Sized() {
		list = append(list, newCuts(other))
	}
	return list
}

// inSizes is what is to be known of other sizes and does not hold for the quilt as it is written.
func (c *cuts) inSizes(names []string, list []*cuts) (sentences []string) {
	known := func(message string) bool {
		return slices.ContainsFunc(slices.Concat(c.Faults, c.Warnings), func(f cutting.Fault) bool { return f.Message == message })
	}
	for i := 1; i < len(list); i++ {
		for _, f := range slices.Concat(list[i].Faults, list[i].Warnings) {
			if !known(f.Message) {
				sentences = append(sentences, capital(names[i])+": "+f.Message+".")
			}
		}
	}
	return sentences
}

// sizesTable is tables with a column for each of some sizes.
type sizesTable struct {
	names []string
	sizes []*cuts
}

// table is one whose first columns have heads.
func (b *sizesTable) table(kind document.Kind, heads ...document.Column) document.Table {
	t := document.Table{Named: true, Columns: heads}
	for _, name := range b.names {
		t.Columns = append(t.Columns, document.Column{Title: name, Kind: kind})
	}
	return t
}

// row is a row of what each size has.
func (b *sizesTable) row(head string, of func(*cuts) string) document.Row {
	r := row(head)
	for _, c := range b.sizes {
		r.Cells = append(r.Cells, cell(of(c)))
	}
	return r
}

// none is what stands where a size has no part in a row.
const none = "none"

// measurements is how large each size is.
func (b *sizesTable) measurements() document.Table {
	t := b.table(document.Words, words("size"))
	t.Rows = []document.Row{
		b.row("quilt top, finished", func(c *cuts) string { return c.size(c.plans.Top.Outer.Width(), c.plans.Top.Outer.Height()) }),
		b.row("blocks", func(c *cuts) string { return fmt.Sprintf("%d across, %d down", c.plans.Top.Columns, c.plans.Top.Rows) }),
		b.row("block, finished", func(c *cuts) string { return c.length(c.plans.Top.SideFinished) }),
		b.row("borders, finished", func(c *cuts) string {
			var list []string
			for _, e := range c.plans.Top.CutFacts.Borders {
				list = append(list, c.length(e.Width))
			}
			return cmp.Or(measure.List(list), none)
		}),
	}
	return t
}

// bought is what each size takes of each fabric, and for its backing; the word stands before their names.
func (b *sizesTable) bought(word string) (rows []document.Row) {
	for _, f := range b.fabrics() {
		r := b.row("", func(c *cuts) string {
			if i := c.planned(f); i >= 0 {
				return c.bought(&c.Fabrics[i])
			}
			return none
		})
		r.Cells[0] = document.Cell{Text: document.Plain(word + b.sizes[0].plans.Top.Fabrics[f].Name), Swatches: b.sizes[0].plans.swatch(f)}
		rows = append(rows, r)
	}
	if b.has(func(c *cuts) bool { return c.BackingBuy.Buy > 0 }) {
		rows = append(rows, b.row(word+chosenBacking, func(c *cuts) string {
			if c.BackingBuy.Buy == 0 {
				return none
			}
			return c.shop(&c.BackingBuy)
		}))
	}
	return rows
}

// toBuy is what is bought for each size.
func (b *sizesTable) toBuy() document.Table {
	t := b.table(document.Lengths, words("fabric"))
	t.Rows = b.bought("")
	return b.withBatting(t)
}

// withBatting is a table with how large each size's batting is.
func (b *sizesTable) withBatting(t document.Table) document.Table {
	t.Rows = append(t.Rows, b.row("batting", func(c *cuts) string { return "at least " + c.Units.ByAtLeast(c.Batting.WidthCut, c.Batting.HeightCut) }))
	return t
}

// material is how large each size is and what it takes.
func (b *sizesTable) material() document.Table {
	t := b.measurements()
	t.Rows = append(t.Rows, b.bought("buy ")...)
	t.Rows = append(t.Rows,
		b.row("strips to cut", func(c *cuts) string { return number(c.stripCount()) }),
		b.row("pieces to cut", func(c *cuts) string { return number(c.pieceCount()) }))
	if b.has(func(c *cuts) bool { return c.Binding != nil }) {
		t.Rows = append(t.Rows, b.row("binding", func(c *cuts) string {
			if c.Binding == nil {
				return none
			}
			return measure.Count(c.Binding.Strips*c.Copies, "strip")
		}))
	}
	if b.has(func(c *cuts) bool { return c.Backing != nil }) {
		t.Rows = append(t.Rows, b.row("backing", func(c *cuts) string {
			if c.Backing == nil {
				return none
			}
			return "at least " + c.Units.ByAtLeast(c.Backing.WidthCut, c.Backing.HeightCut)
		}))
	}
	return b.withBatting(t)
}

func (b *sizesTable) has(what func(*cuts) bool) bool { return slices.ContainsFunc(b.sizes, what) }

// fabrics are those that some size is cut from, by the top's index.
func (b *sizesTable) fabrics() (list []int) {
	for _, c := range b.sizes {
		for i := range c.Fabrics {
			if f := c.Fabrics[i].Index; !slices.Contains(list, f) {
				list = append(list, f)
			}
		}
	}
	slices.Sort(list)
	return list
}

// planned is a fabric of the top among those of the plan, -1 if nothing is cut from it.
func (c *cuts) planned(fabric int) int {
	return slices.IndexFunc(c.Fabrics, func(f cutting.Fabric) bool { return f.Index == fabric })
}

// stripCount is how many strips are cut across all fabrics, and pieceCount how many pieces.
func (c *cuts) stripCount() (n int) {
	for i := range c.Fabrics {
		n += c.Fabrics[i].StripCount
	}
	return n
}

func (c *cuts) pieceCount() (n int) {
	for i := range c.Lines {
		n += c.Lines[i].Pieces
	}
	return n
}

// strips is how many strips of each width are cut from each fabric.
func (b *sizesTable) strips() document.Table {
	t := b.table(document.Counts, words("strips from"), lengths("cut width"))
	for _, f := range b.fabrics() {
		var widths []measure.NM
		for _, c := range b.sizes {
			if i := c.planned(f); i >= 0 {
				for j := range c.Fabrics[i].Strips {
					if s := &c.Fabrics[i].Strips[j]; s.OnSheet < 0 && s.OnEnd < 0 {
						widths = append(widths, s.WidthCut)
					}
				}
			}
		}
		slices.Sort(widths)
		slices.Reverse(widths)
		for _, width := range slices.Compact(widths) {
			r := document.Row{Cells: []document.Cell{{Text: document.Plain(b.sizes[0].plans.Top.Fabrics[f].Name), Swatches: b.sizes[0].plans.swatch(f)}, cell(b.sizes[0].length(width))}}
			for _, c := range b.sizes {
				r.Cells = append(r.Cells, cell(number(c.stripsOf(f, width))))
			}
			t.Rows = append(t.Rows, r)
		}
	}
	return t
}

// stripsOf counts the strips of a width from a fabric of the top.
func (c *cuts) stripsOf(fabric int, width measure.NM) (n int) {
	if i := c.planned(fabric); i >= 0 {
		for j := range c.Fabrics[i].Strips {
			if s := &c.Fabrics[i].Strips[j]; s.WidthCut == width && s.OnSheet < 0 && s.OnEnd < 0 {
				n += s.Times
			}
		}
	}
	return n
}

// pieces is how many pieces of each sort are cut.
func (b *sizesTable) pieces() document.Table {
	t := b.table(document.Counts, words("piece"), words(ClothHead), words("cut"))
	type sort struct{ name, cloth, cut string }
	var order, edgings []sort // borders and sashes stand behind the pieces of blocks
	counts, colors := map[sort][]int{}, map[sort][]document.Swatch{}
	for n, c := range b.sizes {
		for i := range c.Lines {
			line := &c.Lines[i]
			of := sort{c.plans.pieceName(line), c.cloth(line), c.cutSize(&line.Piece)}
			if line.Fabric >= 0 {
				of.cloth = c.Fabrics[line.Fabric].Name // its letter stands in its color
			}
			if counts[of] == nil {
				if line.Border >= 0 || line.Piece.Shape.Description().Edging {
					edgings = append(edgings, of)
				} else {
					order = append(order, of)
				}
				counts[of], colors[of] = make([]int, len(b.sizes)), c.colors(line)
			}
			counts[of][n] += line.Pieces
		}
	}
	for _, of := range slices.Concat(order, edgings) {
		r := row(of.name, of.cloth, of.cut)
		r.Cells[1].Swatches = colors[of]
		for _, n := range counts[of] {
			r.Cells = append(r.Cells, cell(number(n)))
		}
		t.Rows = append(t.Rows, r)
	}
	return t
}

// withSizeSheets is a workbook with a sheet for what each size takes, one for its strips and one for its pieces, where there are
// several.
func (c *cuts) withSizeSheets(d document.Document) document.Document {
	list := sizedCuts(c.plans)
	if len(list) == 0 {
		return d
	}
	b := &sizesTable{names: c.plans.SizeNames(), sizes: list}
	for i, table := range []document.Table{b.material(), b.strips(), b.pieces()} {
		d.Sections = append(d.Sections, document.Section{Title: sizeSheets()[i], Blocks: []document.Block{table}})
	}
	return d
}

// sizeSheets are the titles of the sheets of all sizes.
func sizeSheets() []string { return []string{"Sizes", "Strips by size", "Pieces by size"} }

// HowSizesRead says how the numbers of a pattern in several sizes are read.
func HowSizesRead(names []string) document.Text {
	first := names[0]
	if first == strings.ToLower(AsWritten) {
		first = "the quilt " + first
	}
	return lead("Sizes:", "%s (%s). Where sizes differ, the first number is for %s, and those in parentheses are for %s, in that order; inside parentheses they are in brackets. "+
		"A single number is for every size. Cutting maps and the coloring page are for %s.", names[0], strings.Join(names[1:], ", "), first, measure.List(names[1:]), first)
}

// OnlyInSizes is the title of a part that only some sizes have.
func OnlyInSizes(title string, sizes []string) string {
	return title + " (" + measure.List(sizes) + " only)"
}

// SizesInPattern is how large each size is, for the printed pattern.
func SizesInPattern(p *Plans) []document.Block {
	list := sizedCuts(p)
	names := p.SizeNames()
	var blocks []document.Block
	for first := 0; first < len(list); first += sizesBeside {
		end := min(first+sizesBeside, len(list))
		b := &sizesTable{names: names[first:end], sizes: list[first:end]}
		t := b.measurements()
		blocks = append(blocks, t)
	}
	return append(blocks, bullets(list[0].inSizes(names, list)...)...)
}

// SizeShown is the caption of a picture of a size.
func SizeShown(name string, t *quilt.Top) string {
	return capital(name) + ": " + t.Units.By(t.Outer.Width(), t.Outer.Height()) + "."
}

// InSize says what a picture of a size shows.
func InSize(name string, t *quilt.Top) string {
	return fmt.Sprintf("%s, in the size %s: %s across and %d down, %s finished.", InColor, name, measure.Count(t.Columns, "block"), t.Rows, t.Units.Size(t.Outer.Width(), t.Outer.Height()))
}
