package report

import (
	"fmt"
	"strings"

	"eighthturn/internal/document"
)

// Short ways to the parts of a document.

func para(format string, args ...any) document.Paragraph {
	return document.Paragraph{Text: document.Plain(fmt.Sprintf(format, args...))}
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

// capital begins a text with a capital letter.
func capital(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToUpper(text[:1]) + text[1:]
}
