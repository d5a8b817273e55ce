package render

import (
	"cmp"
	"slices"

	"eighthturn/internal/document"
	"eighthturn/internal/render/pdf"
)

// grid is a table with its columns measured.
type grid struct {
	*document.Table
	column
	size   float64   // of the type
	lefts  []float64 // of the columns
	widths []float64
	pad    float64 // above and below the text of a row
	heads  bool    // the row in hand is that of the heads
	span   int     // how many columns the cells of the row in hand go across, 0 for 1
}

// gutter is the space between columns as a multiple of the size of the type.
const gutter = 1.2

// table sets a table, in smaller type where it must and may, and row by row where even that
// is too wide.
func (b *builder) table(t document.Table, c column) {
	stacked := false
	own := b.within("Table", func() { stacked = b.tabled(t, c) })
	if stacked {
		own.Kind = "Div"
	}
}

// tabled sets a table within its element, and says whether it is set row by row.
func (b *builder) tabled(t document.Table, c column) (stacked bool) {
	b.space(b.body * 0.8)
	b.within("Caption", func() { b.heads(textLine(t.Caption), c, typed(b.body, true, ink()), -1) })
	b.space(b.body * 0.2)
	for _, size := range []float64{b.body, b.small} {
		if g, ok := b.measured(&t, c, size); ok {
			b.rows(g)
			b.space(b.body * 0.8)
			return false
		}
	}
	b.warn(Warning{Kind: StackedTable, Message: "a table of " + counted(len(t.Columns), "column") + " is too wide for the page, and is set row by row"})
	b.stacked(t, c)
	b.space(b.body * 0.8)
	return true
}

// measured gives each column its width; not ok where the longest words do not fit.
func (b *builder) measured(t *document.Table, c column, size float64) (grid, bool) {
	n := len(t.Columns)
	least, whole, beside := make([]float64, n), make([]float64, n), make([]float64, n)
	heads := make([]flow, n)
	for i, head := range t.Columns {
		heads[i] = b.widen(document.Plain(head.Title), 0, fixed(size, true, ink()), [2]*float64{&least[i], &whole[i]})
	}
	cells := [][]flow{heads}
	for _, r := range t.Rows {
		if across(r, n) {
			continue
		}
		row := make([]flow, min(n, len(r.Cells)))
		for i := range row {
			cell := r.Cells[i]
			swatches := b.swatchWidth(cell.Swatches, size)
			beside[i] = max(beside[i], swatches)
			row[i] = b.widen(cell.Text, swatches, cellStyle(size, r.Total), [2]*float64{&least[i], &whole[i]})
		}
		cells = append(cells, row)
	}
	for i := range least {
		least[i] = min(least[i], 9*size+beside[i], c.w)
	}
	room := c.w - size*gutter*float64(n-1)
	if sum(least) > room {
		return grid{}, false
	}
	g := grid{Table: t, column: c, size: size, pad: size * 0.34, widths: shared(least, whole, weights(t.Columns, whole), room, func(widths []float64) int { return linesIn(cells, widths) })}
	g.widths[n-1] += max(0, min(b.widestAcross(t, size), c.w)-sum(g.widths)-size*gutter*float64(n-1))
	x := c.x
	for _, w := range g.widths {
		g.lefts = append(g.lefts, x)
		x += w + size*gutter
	}
	g.w = x - size*gutter - c.x
	return g, true
}

// widestAcross is the width of the longest word in the headings across a table.
func (b *builder) widestAcross(t *document.Table, size float64) float64 {
	var word, whole float64
	for _, r := range t.Rows {
		if across(r, len(t.Columns)) {
			b.widen(r.Cells[0].Text, b.swatchWidth(r.Cells[0].Swatches, size), fixed(size, true, ink()), [2]*float64{&word, &whole})
		}
	}
	return word
}

// flow is the words of a cell by their widths, and what stands beside them.
type flow struct {
	words  [][2]float64 // each with the blank behind it
	beside float64
}

// lines is how many lines the words take in a column of some width.
func (f flow) lines(width float64) int {
	n, x := 1, 0.0
	for _, w := range f.words {
		if x > 0 && x+w[0] > width-f.beside+1e-6 {
			n, x = n+1, 0
		}
		x += w[0] + w[1]
	}
	return n
}

// widen makes room for a text in its column's least and whole width.
func (b *builder) widen(t document.Text, beside float64, of func(document.Run) style, widths [2]*float64) flow {
	f := flow{beside: beside}
	var word, whole float64
	for _, w := range b.words(runs(t), of) {
		word = max(word, w.width)
		whole += w.width + w.blank.width
		f.words = append(f.words, [2]float64{w.width, w.blank.width})
	}
	*widths[0] = max(*widths[0], word+beside)
	*widths[1] = max(*widths[1], whole+beside+0.01)
	return f
}

// weights are the relative widths that were asked for, or nil.
func weights(columns []document.Column, whole []float64) []float64 {
	list, asked := make([]float64, len(columns)), 0.0
	for i, c := range columns {
		list[i] = max(0, min(c.Width, 1e6))
		asked += list[i]
	}
	if !(asked > 0) {
		return nil
	}
	all, part := sum(whole), 0.0
	for i, w := range list {
		if w > 0 {
			part += whole[i]
		}
	}
	for i, w := range list { // the others by their texts
		if w == 0 {
			list[i] = asked * whole[i] / max(part, all/100, 1)
		}
	}
	return list
}

// shared shares a width among columns, none below its least; lines is how many lines a table has whose columns have some widths.
func shared(least, whole, weight []float64, room float64, lines func([]float64) int) []float64 {
	widths := make([]float64, len(least))
	switch all := sum(whole); {
	case weight != nil:
		for i := range widths {
			widths[i] = room * weight[i] / sum(weight)
		}
	case all <= room:
		extra := min(room-all, all*0.4) / float64(len(least))
		for i := range widths {
			widths[i] = whole[i] + extra
		}
		return widths
	default:
		return eased(least, whole, room, lines)
	}
	spare, over := room-sum(least), 0.0
	for i := range widths {
		over += max(0, widths[i]-least[i])
	}
	for i := range widths {
		above := max(0, widths[i]-least[i])
		if over > 0 {
			above *= spare / over
		}
		widths[i] = least[i] + above
	}
	return widths
}

// eased gives every column its least, and of what its texts ask for beyond that the same part as all others; but columns of short
// texts are given all that they ask for first, as many of them as leave the table with the fewest high rows and broken cells.
func eased(least, whole []float64, room float64, lines func(widths []float64) int) []float64 {
	order := make([]int, len(least))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(whole[a], whole[b]) })
	var best []float64
	var fewest int
	spare, asked := room-sum(least), sum(whole)-sum(least)
	for given := range order {
		widths := slices.Clone(least)
		for n, i := range order {
			if n < given {
				widths[i] = whole[i]
			} else {
				widths[i] += (whole[i] - least[i]) * spare / asked
			}
		}
		if n := lines(widths); best == nil || n < fewest {
			best, fewest = widths, n
		}
		extra := whole[order[given]] - least[order[given]]
		if spare, asked = spare-extra, asked-extra; spare < 0 {
			break
		}
	}
	return evened(best, least, lines, fewest)
}

// maxWeighed is how many ways to share a table's width are tried at the most, to bring its rows down.
const maxWeighed = 600

// evened moves width from one column to another for as long as that brings a table's rows down; lines is how many there are.
func evened(widths, least []float64, lines func([]float64) int, fewest int) []float64 {
	tried := 0
	for better := true; better; {
		better = false
		for from := range widths {
			for to := range widths {
				for _, step := range []float64{6, 18, 36} {
					if from == to || widths[from]-step < least[from] || tried == maxWeighed {
						continue
					}
					tried++
					widths[from], widths[to] = widths[from]-step, widths[to]+step
					if n := lines(widths); n < fewest {
						fewest, better = n, true
					} else {
						widths[from], widths[to] = widths[from]+step, widths[to]-step
					}
				}
			}
		}
	}
	return widths
}

// linesIn weighs the lines of a table's rows, those of high rows more; among as many lines, more cells that are broken weigh more.
func linesIn(cells [][]flow, widths []float64) int {
	const line = 10000
	all := 0
	for _, row := range cells {
		most := 1
		for i, f := range row {
			n := f.lines(widths[i])
			if n > 1 {
				all++
			}
			most = max(most, n)
		}
		all += line * most * most
	}
	return all
}

func sum(list []float64) float64 {
	all := 0.0
	for _, v := range list {
		all += v
	}
	return all
}

func cellStyle(size float64, bold bool) func(document.Run) style {
	return func(r document.Run) style { return typed(size, r.Bold || bold, ink()) }
}

// across says whether a row is a heading across a table of n columns.
func across(r document.Row, n int) bool { return len(r.Cells) == 1 && n > 1 }

// shortTable is how many rows a table has at the most that is wanted whole.
const shortTable = 8

// rows adds the slices of a table.
func (b *builder) rows(g grid) {
	heads := b.headRow(g)
	for i := range heads {
		b.add(heads[i])
		b.next = bound
	}
	again := b.list[len(b.list)-len(heads):]
	again = append([]slice(nil), again...)
	for i := range again {
		again[i].above, again[i].mark, again[i].frames = 0, nil, nil
	}
	for i, r := range g.Rows {
		if i > 0 && (i == len(g.Rows)-1 || len(g.Rows) <= shortTable) {
			b.next = max(b.next, kept)
		}
		b.row(g, r, again)
	}
}

// headRow are the lines of the heads with the rule below; none where no column has one.
func (b *builder) headRow(g grid) []slice {
	cells, any := make([]document.Cell, len(g.Columns)), false
	for i, c := range g.Columns {
		cells[i].Text = document.Bold(c.Title)
		any = any || line(c.Title) != ""
	}
	if !any {
		return nil
	}
	g.heads = true
	list := b.rowLines(g, cells, fixed(g.size, true, accent()))
	last := &list[len(list)-1]
	last.height += g.pad
	last.marks = append(last.marks, rule(g.x, last.height-0.5, g.w, 1, accent()))
	return list
}

func (b *builder) row(g grid, r document.Row, heads []slice) {
	var list []slice
	if across(r, len(g.Columns)) {
		one := g
		one.Table = &document.Table{Columns: []document.Column{{}}}
		one.span = len(g.Columns)
		one.lefts, one.widths = []float64{g.x}, []float64{g.w}
		list = b.rowLines(one, r.Cells, fixed(g.size, true, ink()))
		if b.next != bound {
			b.space(g.size * 0.5)
		}
	} else {
		list = b.rowLines(g, r.Cells, cellStyle(g.size, r.Total))
	}
	first, last := &list[0], &list[len(list)-1]
	first.height += g.pad
	for _, marks := range first.cells {
		for i, m := range marks {
			marks[i] = lowered(m, g.pad)
		}
	}
	last.height += g.pad
	last.marks = append(last.marks, rule(g.x, last.height-0.25, g.w, 0.5, hair()))
	if r.Total {
		first.marks = append(first.marks, rule(g.x, 0.5, g.w, 1, ink()))
	}
	for i := range list {
		list[i].heads = heads
		if i > 0 {
			list[i].tie = lineTie(i, len(list))
		}
		b.add(list[i])
	}
	if across(r, len(g.Columns)) {
		b.next = bound
	}
}

// lineTie is how strongly a line of a row is held to the one above it: a row of many lines may be parted where it would leave a
// page nearly empty, but for its first and last two lines.
func lineTie(i, lines int) tie {
	const many = 6
	if lines >= many && i >= 2 && i <= lines-2 {
		return kept
	}
	return bound
}

// lowered is a mark further down.
func lowered(m mark, by float64) mark {
	switch v := m.(type) {
	case text:
		v.base += by
		return v
	case panel:
		v.y += by
		return v
	}
	return m
}

// rowLines are the lines of a row, at least one.
func (b *builder) rowLines(g grid, cells []document.Cell, of func(document.Run) style) []slice {
	b.rowsSet++
	list := []slice{b.rowLine(g)}
	list[0].height = g.size * leading
	row := b.element.Add("TR")
	for i := range g.widths {
		own := g.cell(row, i)
		if i >= len(cells) {
			continue
		}
		beside := b.swatchWidth(cells[i].Swatches, g.size)
		lines := b.lines(runs(cells[i].Text), g.widths[i]-beside, of)
		list[0].cells[i] = owned(b.swatches(cells[i].Swatches, g.lefts[i], g.size), own)
		for k, l := range lines {
			if k == len(list) {
				list = append(list, b.rowLine(g))
			}
			list[k].height = max(list[k].height, lineHeight(l))
			spare := g.widths[i] - beside - l.width
			list[k].cells[i] = append(list[k].cells[i], owned(set(l, g.lefts[i]+beside+spare*before(g.Columns[i].Kind), 0), own)...)
		}
	}
	return list
}

// cell is the i-th cell of a row in the structure: the head of its column, that of its row, of the rows that follow, or neither.
func (g *grid) cell(row *pdf.Element, i int) *pdf.Element {
	kind, scope := "TD", ""
	switch {
	case g.heads || g.span != 0:
		kind, scope = "TH", "Column"
	case g.Named && i == 0:
		kind, scope = "TH", "Row"
	}
	e := row.Add(kind)
	e.Scope, e.Span = scope, g.span
	return e
}

func (b *builder) rowLine(g grid) slice {
	return slice{row: b.rowsSet, cells: make([][]mark, len(g.widths))}
}

// stacked sets a table row by row: each cell behind its head.
func (b *builder) stacked(t document.Table, c column) {
	normal := false
	for _, r := range t.Rows {
		normal = normal || !across(r, len(t.Columns))
	}
	if !normal {
		for i := range t.Columns {
			b.stackedCell(t, document.Row{Cells: make([]document.Cell, len(t.Columns))}, i, c)
		}
	}
	for _, r := range t.Rows {
		cells := len(t.Columns)
		if across(r, cells) {
			cells = 1
		}
		b.space(b.body * 0.5)
		b.together(func() {
			b.stackedCells(t, r, cells, c)
		})
		b.add(slice{height: b.body * 0.4, tie: bound, marks: []mark{rule(c.x, b.body*0.4-0.25, min(c.w, b.measure), 0.5, hair())}})
		if cells == 1 {
			b.next = bound
		}
	}
}

// stackedCells sets the cells of a row: those beside swatches on lines of their own, others behind each other. Empty ones are
// left out.
func (b *builder) stackedCells(t document.Table, r document.Row, cells int, c column) {
	var flow document.Text
	end := func() {
		b.paragraph(flow, c)
		flow = nil
	}
	for i := range min(cells, len(r.Cells)) {
		switch cell := &r.Cells[i]; {
		case len(cell.Swatches) > 0:
			end()
			b.stackedCell(t, r, i, c)
		case line(cell.Text.String()) != "":
			if len(flow) > 0 {
				flow = append(flow, document.Run{Text: ";  "})
			}
			flow = append(flow, stackedText(t, r, i)...)
		}
	}
	end()
}

// stackedText is a cell behind its head.
func stackedText(t document.Table, r document.Row, i int) document.Text {
	var said document.Text
	if title := line(t.Columns[i].Title); title != "" && !across(r, len(t.Columns)) {
		said = document.Bold(title + ": ")
	}
	for _, run := range r.Cells[i].Text {
		run.Bold = run.Bold || r.Total || across(r, len(t.Columns))
		said = append(said, run)
	}
	return said
}

func (b *builder) stackedCell(t document.Table, r document.Row, i int, c column) {
	cell := r.Cells[i]
	said := stackedText(t, r, i)
	beside := b.swatchWidth(cell.Swatches, b.body)
	at := len(b.list)
	b.paragraph(said, c.inset(beside, 0))
	if len(cell.Swatches) == 0 {
		return
	}
	if at == len(b.list) {
		b.add(slice{height: b.body * leading})
	}
	b.list[at].marks = append(b.swatches(cell.Swatches, c.x, b.body), b.list[at].marks...)
}

// before is which part of the spare room stands before a cell's text.
func before(k document.Kind) float64 {
	if k.Right() {
		return 1
	}
	return 0
}
