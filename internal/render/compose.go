package render

import (
	"fmt"
	"strings"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/render/pdf"
)

func newBuilder(l look) *builder {
	return &builder{look: l, setter: setter{letters: diagram.NewLettering()}, part: -1, most: maxPages, element: &pdf.Element{Kind: "Document"}}
}

// document turns the whole document into slices.
func (b *builder) document(d document.Document) []slice {
	c := column{0, b.text()}
	b.figures, b.pattern = map[string]bool{}, figureName()
	for _, p := range d.Sections {
		b.name(p.Blocks)
	}
	delete(b.figures, "")
	if d.Cover != nil {
		b.cover(d, c)
	} else {
		b.titles(d, "", c)
		b.space(b.body * 2)
	}
	for i, p := range d.Sections {
		b.part = i
		b.opens = b.opens || p.NewPage
		b.newPage = b.newPage || p.Alone || p.Back || i > 0 && d.Sections[i-1].Alone
		b.within("Sect", func() {
			b.partHead(p, c)
			b.blocks(p.Blocks, c)
		})
	}
	return b.list
}

// back says whether the last chapter is the back cover.
func back(d document.Document) bool { return len(d.Sections) > 0 && d.Sections[len(d.Sections)-1].Back }

// partHead sets the heading of a part with a short heavy rule below.
func (b *builder) partHead(p document.Section, c column) {
	if line(p.Title) == "" {
		b.space(b.body)
		return
	}
	size := b.headings[0]
	b.space(size * 1.5)
	b.level = 0
	b.heads(p.Title, c, typed(size, true, accent()), 0)
	b.add(slice{height: size * 0.5, marks: []mark{rule(c.x, size*0.2, size*1.8, size*0.1, accent())}})
	b.next = bound
	b.space(size * 0.1)
}

// titles sets the document's title, what stands below it and the maker.
func (b *builder) titles(d document.Document, subtitle string, c column) {
	b.heads(d.Title, c, typed(b.title, true, accent()), 0)
	if line(subtitle) != "" {
		b.space(b.title * 0.1)
		b.heads(subtitle, c, typed(b.headings[1], false, ink()), -1)
	}
	if line(d.Maker) != "" {
		b.space(b.title * 0.25)
		b.heads(d.Maker, c, typed(b.body*1.1, false, grey()), -1)
	}
}

// cover sets the first page: titles at the head, the picture as large as there is room, the
// lines and the copyright at the foot.
func (b *builder) cover(d document.Document, c column) {
	b.add(slice{height: b.small})
	b.titles(d, d.Cover.Subtitle, c)
	b.add(slice{height: b.body * 0.6, marks: []mark{rule(c.x, b.body*0.3, c.w, 1.2, accent())}})
	var foot [][]lineOf
	for _, t := range d.Cover.Lines {
		foot = append(foot, b.lines(runs(t), c.w, b.plain))
	}
	foot = append(foot, b.lines(runs(document.Plain(d.Copyright)), c.w, fixed(b.small, false, grey())))
	used := b.body
	for _, s := range b.list {
		used += s.above + s.height
	}
	for _, lines := range foot {
		for _, l := range lines {
			used += lineHeight(l)
		}
	}
	spare := b.coverPicture(d.Cover.Picture, c, b.room()-used)
	b.space(max(b.body, spare))
	for _, lines := range foot {
		b.within("P", func() {
			for _, l := range lines {
				b.add(slice{height: lineHeight(l), marks: set(l, c.x, 0)})
			}
		})
	}
	b.newPage = true
}

// coverPicture sets the cover's picture in the middle and says how much height is left below.
func (b *builder) coverPicture(p *document.Picture, c column, room float64) float64 {
	if p == nil {
		return room
	}
	s := shapeOf(*p)
	w := c.w
	if s.width > 0 {
		w = min(c.w, points(s.width))
	}
	caption := b.lines(s.caption, c.w, fixed(b.small, false, grey()))
	room -= float64(len(caption)) * b.small * leading
	placed := s.place(w, max(room-b.body*2.1, b.room()/8), b.zoom)
	spare := room - placed.height()
	b.space(max(b.body, spare/3))
	b.add(slice{height: placed.height(), marks: []mark{art{c.x + (c.w-placed.width())/2, placed, figureElement(b.element, s.alternative), ""}}})
	b.captionLines(caption, c.x)
	return spare - max(b.body, spare/3)
}

// decorated puts head and foot round what is on each page, and frames below it.
func (b *builder) decorated(d document.Document, pages []page) []sheetOfPaper {
	list := make([]sheetOfPaper, len(pages))
	for i, p := range pages {
		list[i] = p.framed(b.margin)
		for k, s := range p.placed {
			for _, m := range s.marks {
				list[i] = append(list[i], spot{m, b.margin, s.y})
			}
			if s.mark != nil {
				list[i] = append(list[i], spot{outline{*s.mark}, b.margin, s.y})
			}
			if k == 0 || p.placed[k-1].row != s.row {
				list[i] = append(list[i], p.rowFrom(k, b.margin)...)
			}
		}
		if d.Cover != nil && i == 0 || back(d) && i == len(pages)-1 {
			continue
		}
		for _, m := range b.running(d, p, [2]int{i + 1, len(pages)}) {
			list[i] = append(list[i], spot{m, b.margin, 0})
		}
	}
	return list
}

// rowFrom is the row of a table that begins with the k-th slice of a page, cell by cell, so that
// its text is found and copied as it reads.
func (p page) rowFrom(k int, left float64) sheetOfPaper {
	var list sheetOfPaper
	for column := range p.placed[k].cells {
		for n := k; n < len(p.placed) && p.placed[n].row == p.placed[k].row; n++ {
			cell := p.placed[n].cells[column]
			if p.placed[n].again {
				cell = unread(cell)
			}
			for _, m := range cell {
				list = append(list, spot{m, left, p.placed[n].y})
			}
		}
	}
	return list
}

// framed are the frames on a page, the outer ones first.
func (p page) framed(left float64) sheetOfPaper {
	var list sheetOfPaper
	var order []*frame
	span := map[*frame]*rect{}
	for _, s := range p.placed {
		for _, f := range s.frames {
			if span[f] == nil {
				order = append(order, f)
				span[f] = &rect{x: f.x, y: s.y, w: f.w}
			}
			span[f].h = s.y + s.height - span[f].y
		}
	}
	for _, f := range order {
		r := *span[f]
		list = append(list, spot{panel{rect{r.x + f.line/2, r.y + f.line/2, r.w - f.line, r.h - f.line}, &f.fill, f.line, f.ink}, left, 0})
		list = append(list, spot{panel{rect: rect{r.x, r.y, f.bar, r.h}, fill: &f.ink}, left, 0})
	}
	return list
}

// running are the head and foot of a page: title and part, copyright and page number.
func (b *builder) running(d document.Document, p page, number [2]int) []mark {
	part := ""
	if p.part >= 0 {
		part = d.Sections[p.part].Title
	}
	top, foot := b.margin, b.high-b.margin-b.small*leading
	list := b.pair(d.Title, part, top)
	list = append(list, rule(0, b.margin+b.small*(leading+0.15), b.text(), 0.5, hair()))
	return append(list, b.pair(d.Copyright, fmt.Sprintf("Page %d of %d", number[0], number[1]), foot)...)
}

// pair sets one text at the left and one at the right; what has no room is cut off, the left
// one first.
func (b *builder) pair(left, right string, y float64) []mark {
	st := typed(b.small, false, grey())
	last := b.cut(line(right), b.text(), st)
	first := b.cut(line(left), b.text()-last.width-2*b.small, st)
	var list []mark
	for i, l := range []lineOf{first, last} {
		x := 0.0
		if i == 1 {
			x = b.text() - l.width
		}
		list = append(list, set(l, x, y)...)
	}
	return list
}

// cut is as much of a text as fits into a width, with dots where it is cut off.
func (b *builder) cut(t string, width float64, st style) lineOf {
	const most = 250 // letters, more than fit between any margins
	short := []rune(t)
	short = short[:min(len(short), most)]
	whole := b.piece(string(short), st)
	var l lineOf
	if whole.width <= width && len(short) < most {
		l.add(whole)
		return l
	}
	dots := b.piece("…", st)
	parts := b.fitting(word{pieces: []piece{whole}, width: whole.width}, width-dots.width)
	if parts[0].width+dots.width > width {
		return l
	}
	for _, p := range parts[0].pieces {
		l.add(p)
	}
	if n := len(l.pieces) - 1; n >= 0 && l.pieces[n].meant == "" {
		trimmed := strings.TrimRight(l.pieces[n].shown, " .,;:")
		l.width -= b.width(l.pieces[n].shown[len(trimmed):], st)
		l.pieces[n] = b.piece(trimmed, st)
	}
	l.add(dots)
	return l
}
