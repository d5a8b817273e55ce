package booklet

import (
	"strconv"
	"strings"

	"eighthturn/internal/render"
)

// Signs round the key of a figure: in a caption, and where a text refers to it. Neither stands in what people write.
const (
	opens   = "\uE000"
	defines = "\uE001"
	closes  = "\uE002"
)

// own is a text that someone wrote, without the signs that stand for figures.
func own(text string) string {
	return strings.TrimSpace(strings.NewReplacer(opens, "", defines, "", closes, "").Replace(text))
}

// see is a reference to a figure.
func see(key string) string { return opens + key + closes }

// caption is the caption of the figure with a key.
func caption(key, text string) render.Text {
	return render.Text{{Text: defines + key + closes + ".", Bold: true}, {Text: " " + text}}
}

// numbered numbers the figures in their order and puts the numbers where texts refer to them.
func numbered(d render.Document) render.Document {
	numbers := map[string]string{}
	mapped(d, func(text string) string {
		for rest := text; ; {
			_, after, ok := strings.Cut(rest, defines)
			if !ok {
				return text
			}
			key, tail, _ := strings.Cut(after, closes)
			if numbers[key] == "" {
				numbers[key] = strconv.Itoa(len(numbers) + 1)
			}
			rest = tail
		}
	})
	var pairs []string
	for key, n := range numbers {
		pairs = append(pairs, defines+key+closes, "Figure "+n, opens+key+closes, "Figure "+n)
	}
	r := strings.NewReplacer(pairs...) // no key is the beginning of another with its closing sign, so their order is nothing
	return mapped(d, r.Replace)
}

// mapped is a document with every text of its parts replaced, in the order in which they are read.
func mapped(d render.Document, f func(string) string) render.Document {
	parts := make([]render.Part, len(d.Parts))
	for i, p := range d.Parts {
		p.Blocks = mappedList(p.Blocks, f)
		parts[i] = p
	}
	d.Parts = parts
	return d
}

func mappedList(list []render.Block, f func(string) string) []render.Block {
	out := make([]render.Block, len(list))
	for i, b := range list {
		out[i] = mappedBlock(b, f)
	}
	return out
}

func mappedBlock(b render.Block, f func(string) string) render.Block {
	switch v := b.(type) {
	case render.Heading:
		v.Text = f(v.Text)
		return v
	case render.Paragraph:
		v.Text = mappedText(v.Text, f)
		return v
	case render.List:
		items := make([]render.Item, len(v.Items))
		for i, it := range v.Items {
			items[i] = render.Item{Text: mappedText(it.Text, f), Blocks: mappedList(it.Blocks, f)}
		}
		v.Items = items
		return v
	case render.Table:
		return mappedTable(v, f)
	case render.Figure:
		v.Caption = mappedText(v.Caption, f)
		return v
	case render.Picture:
		v.Caption = mappedText(v.Caption, f)
		return v
	case render.Gallery:
		list := make([]render.Illustration, len(v.Pictures))
		for i, p := range v.Pictures {
			list[i] = mappedBlock(p, f).(render.Illustration)
		}
		v.Pictures = list
		return v
	case render.Box:
		v.Blocks = mappedList(v.Blocks, f)
		return v
	case render.Together:
		v.Blocks = mappedList(v.Blocks, f)
		return v
	}
	return b
}

func mappedTable(t render.Table, f func(string) string) render.Table {
	t.Caption = mappedText(t.Caption, f)
	columns := make([]render.Column, len(t.Columns))
	for i, c := range t.Columns {
		c.Title = f(c.Title)
		columns[i] = c
	}
	rows := make([]render.Row, len(t.Rows))
	for i, r := range t.Rows {
		cells := make([]render.Cell, len(r.Cells))
		for n, c := range r.Cells {
			c.Text = mappedText(c.Text, f)
			cells[n] = c
		}
		r.Cells = cells
		rows[i] = r
	}
	t.Columns, t.Rows = columns, rows
	return t
}

func mappedText(t render.Text, f func(string) string) render.Text {
	if t == nil {
		return nil
	}
	out := make(render.Text, len(t))
	for i, r := range t {
		r.Text = f(r.Text)
		out[i] = r
	}
	return out
}
