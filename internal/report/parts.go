package report

import (
	"fmt"
	"strconv"

	"eighthturn/internal/document"
)

// Short ways to the parts of a document.

func section(id, title string, depth document.Depth) document.Section {
	return document.Section{ID: id, Title: title, Depth: depth}
}

// with is a section with blocks added to it; tables without rows and lists without items are left out.
func with(s document.Section, blocks ...document.Block) document.Section {
	for _, b := range blocks {
		switch v := b.(type) {
		case document.Table:
			if len(v.Rows) == 0 {
				continue
			}
		case document.List:
			if len(v.Items) == 0 {
				continue
			}
		}
		s.Blocks = append(s.Blocks, b)
	}
	return s
}

func para(format string, args ...any) document.Paragraph {
	return paragraph(fmt.Sprintf(format, args...))
}

func paragraph(text string) document.Paragraph {
	return document.Paragraph{Text: document.Plain(text)}
}

func item(text string) document.Item { return document.Item{Text: document.Plain(text)} }

// bullets is sentences as a list, nothing for none.
func bullets(sentences ...string) []document.Block {
	if len(sentences) == 0 {
		return nil
	}
	var l document.List
	for _, s := range sentences {
		l.Items = append(l.Items, item(s))
	}
	return []document.Block{l}
}

func cell(text string) document.Cell { return document.Cell{Text: document.Plain(text)} }

func cells(texts ...string) []document.Cell {
	list := make([]document.Cell, len(texts))
	for i, text := range texts {
		list[i] = cell(text)
	}
	return list
}

func table(columns ...document.Column) document.Table { return document.Table{Columns: columns} }

func words(title string) document.Column { return document.Column{Title: title} }

func lengths(title string) document.Column {
	return document.Column{Title: title, Kind: document.Lengths}
}

func counts(title string) document.Column {
	return document.Column{Title: title, Kind: document.Counts}
}

// row is a row of plain cells.
func row(texts ...string) document.Row { return document.Row{Cells: cells(texts...)} }

// capital begins a text with a capital letter; small letters of ASCII alone begin our sentences, names of the layout stay as they are.
func capital(text string) string {
	if text == "" || text[0] < 'a' || text[0] > 'z' {
		return text
	}
	return string(text[0]-'a'+'A') + text[1:]
}

func number(n int) string { return strconv.Itoa(n) }
