package render

import (
	"fmt"
	"math/rand/v2"
	"strings"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// invention makes documents by seed. Each of its words is used once and told apart from all
// else: q, a number, letters from a to p, z.
type invention struct {
	*rand.Rand
	words, figures int
	heads          map[string]bool // words of heads of tables
}

func invent(seed uint64) (document.Document, *invention) {
	v := &invention{Rand: rand.New(rand.NewPCG(seed, 7)), heads: map[string]bool{}}
	d := document.Document{Title: v.say(1 + v.IntN(6)), Maker: v.maybe(3), Copyright: v.maybe(8), Subject: "a law's document"}
	if v.IntN(2) == 0 {
		d.Cover = &document.Cover{Subtitle: v.maybe(6)}
		if v.IntN(3) > 0 {
			p := v.picture()
			d.Cover.Picture = &p
		}
		for range v.IntN(5) {
			d.Cover.Lines = append(d.Cover.Lines, v.text())
		}
	}
	for range 1 + v.IntN(4) {
		p := document.Section{NewPage: v.IntN(3) == 0, Title: v.maybe(5)}
		p.Blocks = v.blocks(1+v.IntN(12), 0)
		d.Sections = append(d.Sections, p)
	}
	return d, v
}

func (v *invention) word() string {
	v.words++
	n := v.IntN(8)
	if v.IntN(40) == 0 {
		n = 30 + v.IntN(200)
	}
	var b strings.Builder
	fmt.Fprintf(&b, "q%d", v.words)
	for range n {
		b.WriteByte(byte('a' + v.IntN(16)))
	}
	return b.String() + "z"
}

// say is words with what else text may hold between them.
func (v *invention) say(n int) string {
	others := []string{"3 1/2 in", "5/16", "赤い", "é", "<b>&amp;</b>", "| *_` |", "→", "מים", "\t\n", "👩‍🎨", "a\u00adb", "“”", "()\\", "# 1."}
	var list []string
	for range n {
		list = append(list, v.word())
		if v.IntN(12) == 0 {
			list = append(list, others[v.IntN(len(others))])
		}
	}
	return strings.Join(list, " ")
}

func (v *invention) maybe(n int) string {
	if v.IntN(3) == 0 {
		return ""
	}
	return v.say(1 + v.IntN(n))
}

func (v *invention) text() document.Text {
	var t document.Text
	for range v.IntN(4) {
		t = append(t, document.Run{Text: v.say(1+v.IntN(15)) + " ", Bold: v.IntN(4) == 0, Small: v.IntN(6) == 0})
	}
	return t
}

func (v *invention) blocks(n, depth int) []document.Block {
	var list []document.Block
	for range n {
		list = append(list, v.block(depth))
	}
	return list
}

func (v *invention) block(depth int) document.Block {
	most := 11
	if depth > 2 {
		most = 6
	}
	switch v.IntN(most) {
	case 0:
		return document.Heading{Level: v.IntN(5), Text: v.say(1 + v.IntN(6))}
	case 1, 2:
		return document.Paragraph{Text: v.text()}
	case 3:
		return v.table()
	case 4:
		return v.figure()
	case 5:
		return v.picture()
	case 6:
		return v.list(depth)
	case 7:
		return document.Box{Caution: v.IntN(2) == 0, Word: v.maybe(2), Blocks: v.blocks(1+v.IntN(3), depth+1)}
	case 8:
		return document.Together{Blocks: v.blocks(1+v.IntN(4), depth+1)}
	case 9:
		g := document.Gallery{Across: v.IntN(5)}
		for range 1 + v.IntN(5) {
			g.Pictures = append(g.Pictures, v.picture())
		}
		return g
	}
	return document.PageBreak{}
}

func (v *invention) list(depth int) document.List {
	l := document.List{Marker: document.Marker(v.IntN(3)), First: v.IntN(12)}
	for range 1 + v.IntN(5) {
		item := document.Item{Text: v.text()}
		if v.IntN(4) == 0 {
			item.Blocks = v.blocks(1+v.IntN(2), depth+1)
		}
		l.Items = append(l.Items, item)
	}
	return l
}

func (v *invention) table() document.Table {
	t := document.Table{Named: v.IntN(2) == 0}
	if v.IntN(3) == 0 {
		t.Caption = v.text()
	}
	for range 1 + v.IntN(7) {
		c := document.Column{Title: v.maybe(2), Kind: document.Kind(v.IntN(3))}
		for _, w := range strings.Fields(c.Title) {
			v.heads[w] = true
		}
		if v.IntN(3) == 0 {
			c.Width = v.Float64() * 5
		}
		t.Columns = append(t.Columns, c)
	}
	rows := v.IntN(6)
	if v.IntN(8) == 0 {
		rows = 120
	}
	for range rows {
		t.Rows = append(t.Rows, v.row(len(t.Columns)))
	}
	return t
}

func (v *invention) row(columns int) document.Row {
	r := document.Row{Total: v.IntN(10) == 0}
	for range v.IntN(columns + 1) {
		c := document.Cell{}
		if v.IntN(3) == 0 {
			c.Swatches = []document.Swatch{{Letter: string(rune('A' + v.IntN(16))), Colour: palettes.Colour{R: uint8(v.IntN(256)), G: uint8(v.IntN(256)), B: 200}}}
		}
		if v.IntN(5) > 0 {
			c.Text = document.Plain(v.say(1 + v.IntN(3)))
		}
		if v.IntN(60) == 0 {
			c.Text = document.Plain(v.say(150))
		}
		r.Cells = append(r.Cells, c)
	}
	return r
}

// corners are the colours of the four corners of the n-th illustration.
func corners(n int) [4]palettes.Colour {
	var list [4]palettes.Colour
	for i := range list {
		list[i] = palettes.Colour{R: uint8(255 - 3*(n%64)), G: uint8(20 + 3*(n/64)), B: uint8(10 + 60*i)}
	}
	return list
}

// quarters are four outlines that fill a frame.
func quarters(w, h measure.NM) [4][]measure.Point {
	var list [4][]measure.Point
	for i := range list {
		x, y := w/2*measure.NM(i%2), h/2*measure.NM(i/2)
		list[i] = []measure.Point{{X: x, Y: y}, {X: x + w/2, Y: y}, {X: x + w/2, Y: y + h/2}, {X: x, Y: y + h/2}}
	}
	return list
}

func (v *invention) size() (measure.NM, measure.NM) {
	return measure.Inch * measure.NM(1+v.IntN(60)), measure.Inch * measure.NM(1+v.IntN(60))
}

func (v *invention) wanted() measure.NM { return measure.Inch * measure.NM(v.IntN(9)) }

func (v *invention) picture() document.Picture {
	w, h := v.size()
	p := document.Picture{Of: document.Drawing{Max: measure.Point{X: w, Y: h}}, Width: v.wanted(), Alternative: "a picture", Caption: v.text()}
	for i, outline := range quarters(w, h) {
		fill := corners(v.figures)[i]
		p.Of.Layers = append(p.Of.Layers, document.Layer{Fill: &fill, Paths: [][]measure.Point{outline}})
	}
	v.figures++
	return p
}

func (v *invention) figure() document.Figure {
	w, h := v.size()
	f := document.Figure{Width: v.wanted(), Caption: v.text(), Of: diagram.Figure{Title: v.word(), Description: "a diagram", Max: measure.Point{X: w, Y: h}}}
	if len(runs(f.Caption)) > 0 {
		f.Of.Title = "a title"
	}
	for i, outline := range quarters(w, h) {
		f.Of.Marks = append(f.Of.Marks, diagram.Mark{Area: &diagram.Area{Outline: outline, Fill: corners(v.figures)[i]}})
	}
	v.figures++
	return f
}

// paperFor is a size of page by seed, tiny ones among them.
func (v *invention) paperFor() Options {
	papers := Papers()
	o := Options{Large: v.IntN(3) == 0}
	if n := v.IntN(len(papers) + 2); n < len(papers) {
		o.Paper = papers[n]
	} else {
		o.Paper = Paper{"small", measure.Inch * measure.NM(3+v.IntN(4)), measure.Inch * measure.NM(3+v.IntN(4)), measure.Inch / 4, false}
	}
	return o
}
