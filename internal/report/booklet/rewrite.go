package booklet

import (
	"strconv"
	"strings"

	"eighthturn/internal/document"
)

// Signs round the key of a figure: in a caption, and where a text refers to it. Neither stands in what people write.
const (
	opens   = "\uE000"
	defines = "\uE001"
	closes  = "\uE002"
)

// own is a text that someone wrote, without the signs that stand for figures.
func own(text string) string {
	if !strings.ContainsAny(text, opens+defines+closes) {
		return strings.TrimSpace(text)
	}
	return strings.TrimSpace(strings.NewReplacer(opens, "", defines, "", closes, "").Replace(text))
}

// see is a reference to a figure.
func see(key string) string { return opens + key + closes }

// caption is the caption of the figure with a key.
func caption(key, text string) document.Text {
	return document.Text{{Text: defines + key + closes + ".", Bold: true}, {Text: " " + text}}
}

// numbered numbers the figures in their order and puts the numbers where texts refer to them.
func numbered(d document.Document) document.Document {
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
func mapped(d document.Document, f func(string) string) document.Document {
	parts := make([]document.Section, len(d.Sections))
	for i, p := range d.Sections {
		p.Blocks = mappedList(p.Blocks, f)
		parts[i] = p
	}
	d.Sections = parts
	return d
}

func mappedList(list []document.Block, f func(string) string) []document.Block {
	out := make([]document.Block, len(list))
	for i, b := range list {
		out[i] = mappedBlock(b, f)
	}
	return out
}

func mappedBlock(b document.Block, f func(string) string) document.Block {
	switch v := b.(type) {
	case document.Heading:
		v.Text = f(v.Text)
		return v
	case document.Paragraph:
		v.Text = mappedText(v.Text, f)
		return v
	case document.List:
		items := make([]document.Item, len(v.Items))
		for i, it := range v.Items {
			items[i] = document.Item{Text: mappedText(it.Text, f), Blocks: mappedList(it.Blocks, f)}
		}
		v.Items = items
		return v
	case document.Table:
		return mappedTable(v, f)
	case document.Figure:
		v.Caption = mappedText(v.Caption, f)
		return v
	case document.Picture:
		v.Caption = mappedText(v.Caption, f)
		return v
	case document.Gallery:
		list := make([]document.Illustration, len(v.Pictures))
		for i, p := range v.Pictures {
			list[i] = mappedBlock(p, f).(document.Illustration)
		}
		v.Pictures = list
		return v
	case document.Box:
		v.Blocks = mappedList(v.Blocks, f)
		return v
	case document.Together:
		v.Blocks = mappedList(v.Blocks, f)
		return v
	}
	return b
}

func mappedTable(t document.Table, f func(string) string) document.Table {
	t.Caption = mappedText(t.Caption, f)
	columns := make([]document.Column, len(t.Columns))
	for i, c := range t.Columns {
		c.Title = f(c.Title)
		columns[i] = c
	}
	rows := make([]document.Row, len(t.Rows))
	for i, r := range t.Rows {
		cells := make([]document.Cell, len(r.Cells))
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

func mappedText(t document.Text, f func(string) string) document.Text {
	if t == nil {
		return nil
	}
	out := make(document.Text, len(t))
	for i, r := range t {
		r.Text = f(r.Text)
		out[i] = r
	}
	return out
}
