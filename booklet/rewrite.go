package booklet

import (
	"strconv"
	"strings"

	"eighthturn/pages"
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
func caption(key, text string) pages.Text {
	return pages.Text{{Text: defines + key + closes + ".", Bold: true}, {Text: " " + text}}
}

// numbered numbers the figures in their order and puts the numbers where texts refer to them.
func numbered(d pages.Document) pages.Document {
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
func mapped(d pages.Document, f func(string) string) pages.Document {
	parts := make([]pages.Part, len(d.Parts))
	for i, p := range d.Parts {
		p.Blocks = mappedList(p.Blocks, f)
		parts[i] = p
	}
	d.Parts = parts
	return d
}

func mappedList(list []pages.Block, f func(string) string) []pages.Block {
	out := make([]pages.Block, len(list))
	for i, b := range list {
		out[i] = mappedBlock(b, f)
	}
	return out
}

func mappedBlock(b pages.Block, f func(string) string) pages.Block {
	switch v := b.(type) {
	case pages.Heading:
		v.Text = f(v.Text)
		return v
	case pages.Paragraph:
		v.Text = mappedText(v.Text, f)
		return v
	case pages.List:
		items := make([]pages.Item, len(v.Items))
		for i, it := range v.Items {
			items[i] = pages.Item{Text: mappedText(it.Text, f), Blocks: mappedList(it.Blocks, f)}
		}
		v.Items = items
		return v
	case pages.Table:
		return mappedTable(v, f)
	case pages.Figure:
		v.Caption = mappedText(v.Caption, f)
		return v
	case pages.Picture:
		v.Caption = mappedText(v.Caption, f)
		return v
	case pages.Gallery:
		list := make([]pages.Illustration, len(v.Pictures))
		for i, p := range v.Pictures {
			list[i] = mappedBlock(p, f).(pages.Illustration)
		}
		v.Pictures = list
		return v
	case pages.Box:
		v.Blocks = mappedList(v.Blocks, f)
		return v
	case pages.Together:
		v.Blocks = mappedList(v.Blocks, f)
		return v
	}
	return b
}

func mappedTable(t pages.Table, f func(string) string) pages.Table {
	t.Caption = mappedText(t.Caption, f)
	columns := make([]pages.Column, len(t.Columns))
	for i, c := range t.Columns {
		c.Title = f(c.Title)
		columns[i] = c
	}
	rows := make([]pages.Row, len(t.Rows))
	for i, r := range t.Rows {
		cells := make([]pages.Cell, len(r.Cells))
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

func mappedText(t pages.Text, f func(string) string) pages.Text {
	if t == nil {
		return nil
	}
	out := make(pages.Text, len(t))
	for i, r := range t {
		r.Text = f(r.Text)
		out[i] = r
	}
	return out
}
