package render

import (
	"fmt"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/render/pdf"
	"eighthturn/internal/stop"
	"eighthturn/palettes"
)

// builder turns blocks into slices.
type builder struct {
	sign *stop.Sign // ends the work; nil for never
	look
	setter
	list     []slice
	gap      float64 // above the next slice
	next     tie     // of the next slice to the last
	hold     int     // depth of blocks that are to be kept together
	fresh    bool    // the next slice is the first of what is kept together
	newPage  bool
	opens    bool
	frames   []*frame
	part     int
	level    int          // of the last bookmark
	element  *pdf.Element // that what is built is in
	headed   int          // the level of the last heading in the structure
	rowsSet  int          // of tables, so far
	filled   float64      // height of all slices, at their smallest
	most     int          // pages
	warnings []Warning
	err      error // once it is set nothing more is built
}

// column is where blocks are set: from a place right of the margin, and how wide.
type column struct{ x, w float64 }

func (c column) inset(left, right float64) column {
	return column{c.x + left, max(1, c.w-left-right)}
}

func (b *builder) warn(w Warning) { b.warnings = append(b.warnings, w) }

func (b *builder) fail(format string, values ...any) {
	if b.err == nil {
		b.err = fmt.Errorf(format, values...)
	}
}

// space asks for at least so much space above the next slice.
func (b *builder) space(points float64) { b.gap = max(b.gap, points) }

// add puts a slice below the others.
func (b *builder) add(s slice) {
	s.above, s.tie, s.newPage, s.part = b.gap, max(s.tie, b.next), b.newPage, b.part
	s.opens, s.order = b.opens, len(b.list)
	if b.hold > 0 && !b.fresh {
		s.tie = max(s.tie, kept)
	}
	if s.newPage || s.opens {
		s.tie = free
	}
	s.frames = append([]*frame(nil), b.frames...)
	s.marks = owned(s.marks, b.element)
	b.list = append(b.list, s)
	b.fill(s)
	b.gap, b.next, b.newPage, b.opens, b.fresh = 0, free, false, false, false
}

// fill adds to what is filled, and ends the building of what will not fit on as many pages as a document may have.
func (b *builder) fill(s slice) {
	if s.flex != nil {
		b.filled += s.flex.least * tight
	} else {
		b.filled += s.height
	}
	if b.err == nil && b.filled > float64(b.most)*(b.bottom-b.top) {
		b.err = &TooLong{b.most}
	}
}

// together keeps what is built on one page where it fits.
func (b *builder) together(build func()) {
	if b.hold == 0 {
		b.fresh = true
	}
	b.hold++
	build()
	b.hold--
}

func (b *builder) blocks(list []document.Block, c column) {
	for _, block := range list {
		b.block(block, c)
	}
}

func (b *builder) block(block document.Block, c column) {
	b.sign.Look()
	if b.err != nil {
		return
	}
	switch v := block.(type) {
	case document.Heading:
		b.heading(v, c)
	case document.Paragraph:
		b.space(b.body * 0.55)
		b.paragraph(v.Text, c)
		if strings.HasSuffix(v.Text.String(), ":") {
			b.next = bound // to what it announces
		}
	case document.List:
		b.bullets(v, c)
	case document.Source:
		for _, line := range v.Lines {
			b.paragraph(document.Plain(line), c)
		}
	case document.Table:
		b.table(v, c)
	case document.Figure:
		b.illustration(v, c)
	case document.Picture:
		b.illustration(v, c)
	case document.Gallery:
		b.gallery(v, c)
	case document.Box:
		b.box(v, c)
	case document.Ruled:
		b.ruled(c)
	case document.PageBreak:
		b.newPage = b.next != bound // a heading stays with what follows
	case document.Together:
		b.together(func() { b.blocks(v.Blocks, c) })
	}
}

// plain are the styles of running text.
func (b *builder) plain(r document.Run) style {
	if r.Small {
		return typed(b.small, r.Bold, grey())
	}
	return typed(b.body, r.Bold, ink())
}

// fixed is one style for every run.
func fixed(size float64, bold bool, colour palettes.Colour) func(document.Run) style {
	return func(document.Run) style { return typed(size, bold, colour) }
}

// lineHeight is the height of a line by its largest type.
func lineHeight(l lineOf) float64 {
	var size float64
	for _, p := range l.pieces {
		size = max(size, p.size)
	}
	return size * leading
}

// set are the marks of a line of text whose upper edge is at y.
func set(l lineOf, x, y float64) []mark {
	height := lineHeight(l)
	base := y + height*0.5 + height/leading*0.36
	var list []mark
	for _, p := range l.pieces {
		list = append(list, text{x: x, base: base, piece: p})
		x += p.width
	}
	return list
}

func (b *builder) paragraph(t document.Text, c column) {
	b.flowing(t, min(c.w, b.measure), c.x, b.plain)
}

// flowing sets lines of text; neither the first nor the last of three or more stands alone.
func (b *builder) flowing(t document.Text, width, x float64, of func(document.Run) style) {
	b.within("P", func() { b.stack(b.lines(runs(t), width, of), x) })
}

// stack sets lines of text in the element that is open.
func (b *builder) stack(lines []lineOf, x float64) {
	for i, l := range lines {
		s := slice{height: lineHeight(l), marks: set(l, x, 0)}
		if i > 0 && (i == 1 || i == len(lines)-1) {
			s.tie = bound
		}
		b.add(s)
	}
}

// heads sets a heading whose lines stay together, and with what follows.
func (b *builder) heads(t string, c column, st style, level int) {
	lines := b.lines(runs(document.Plain(t)), c.w, fixed(st.size, st.bold, st.ink))
	kind := "P"
	if level >= 0 {
		kind = b.headingKind(level)
	}
	b.within(kind, func() {
		for i, l := range lines {
			s := slice{height: lineHeight(l) * 0.92, marks: set(l, c.x, -lineHeight(l)*0.04)}
			if i == 0 && level >= 0 {
				s.mark = &bookmark{line(t), level}
			} else if i > 0 {
				s.tie = bound
			}
			b.add(s)
		}
	})
	if len(lines) > 0 {
		b.next = bound
	}
}

// longHeading is how many lines a heading has at the most before it is set in the size of the least.
const longHeading = 3

func (b *builder) heading(h document.Heading, c column) {
	size := b.headings[min(max(h.Level, 1), 3)]
	b.space(size * 1.15)
	st := typed(size, true, ink())
	if h.Level <= 1 {
		st.ink = accent()
	}
	b.level = min(min(max(h.Level, 1), 3), b.level+1)
	if len(b.lines(runs(document.Plain(h.Text)), c.w, fixed(st.size, true, st.ink))) > longHeading {
		st.size = b.headings[3]
	}
	b.heads(h.Text, c, st, b.level)
	b.space(size * 0.18)
}

// bullets sets a list, its markers hanging at the left. The last item is held to the one above it.
func (b *builder) bullets(l document.List, c column) {
	list := b.within("L", func() { b.items(l, c) })
	list.Numbering = numbering(l.Marker)
}

func (b *builder) items(l document.List, c column) {
	hang := b.hang(l)
	for i := range l.Items {
		gap := 0.22
		if i == 0 || l.Marker == document.Numbered {
			gap = 0.5
		}
		b.space(b.body * gap)
		if i > 0 && i == len(l.Items)-1 {
			b.next = max(b.next, kept)
		}
		b.within("LI", func() { b.item(l, i, column{c.x, hang}, c.inset(hang, 0)) })
	}
}

// item sets an item, its marker in a column of its own.
func (b *builder) item(l document.List, i int, left, inner column) {
	item, at := l.Items[i], len(b.list)
	sign := b.within("Lbl", func() {})
	b.within("LBody", func() {
		switch {
		case len(runs(item.Text)) == 0:
			b.add(slice{height: b.body * leading})
		case len(item.Blocks) == 0: // an item that is one paragraph is none within it (ISO 32000-1, 14.8.4.3.3)
			b.stack(b.lines(runs(item.Text), min(inner.w, b.measure), b.plain), inner.x)
		default:
			b.paragraph(item.Text, inner)
		}
		b.list[at].marks = append(owned(b.marker(l, i, left.x), sign), b.list[at].marks...)
		if len(item.Blocks) > 0 {
			b.next = kept
			b.blocks(item.Blocks, inner)
		}
	})
}

// hang is how far the texts of a list stand in.
func (b *builder) hang(l document.List) float64 {
	if l.Marker != document.Numbered {
		return b.body * 1.35
	}
	last := fmt.Sprintf("%d.", max(l.First, 1)+len(l.Items)-1)
	return b.width(last, typed(b.body, true, accent())) + b.body*0.5
}

func (b *builder) marker(l document.List, i int, x float64) []mark {
	st := typed(b.body, true, accent())
	sign := itemSign(l, i)
	if l.Marker == document.Tick {
		side := b.body * 0.72
		return []mark{panel{rect: rect{x + 1, b.body*leading*0.5 - side*0.5, side, side}, line: 0.8, ink: grey()}}
	}
	line := lineOf{}
	line.add(b.piece(sign, st))
	return set(line, x, 0)
}

// itemSign is what stands before an item; "" for a square.
func itemSign(l document.List, i int) string {
	switch l.Marker {
	case document.Numbered:
		return fmt.Sprintf("%d.", max(l.First, 1)+i)
	case document.Tick:
		return ""
	}
	return "•"
}

// box sets blocks within a frame.
func (b *builder) box(v document.Box, c column) {
	f := &frame{x: c.x, w: min(c.w, b.measure+2*b.body), fill: palettes.Colour{R: 0xf4, G: 0xf6, B: 0xf9}, line: 0.6, ink: hair(), bar: 2.4}
	if v.Caution {
		f.fill, f.line, f.ink, f.bar = palettes.Colour{R: 0xff, G: 0xf7, B: 0xea}, 1.2, ink(), 6
	}
	pad := b.body * 0.6
	inner := column{f.x, f.w}.inset(pad+f.bar, pad)
	b.space(b.body)
	b.together(func() {
		b.frames = append(b.frames, f)
		b.add(slice{height: pad})
		b.next = bound
		b.within("Div", func() {
			b.heads(v.Head(), inner, typed(b.body, true, ink()), -1)
			b.blocks(v.Blocks, inner)
		})
		b.gap, b.next, b.newPage = 0, bound, false
		b.add(slice{height: pad})
		b.frames = b.frames[:len(b.frames)-1]
	})
	b.space(b.body)
}
