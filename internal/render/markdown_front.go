package render

import (
	"slices"
	"strconv"
	"strings"

	"eighthturn/internal/document"
)

// front writes what is to be known of the whole first, as programs that make books and pages of Markdown ask for it: a block of YAML whose
// texts are Markdown again (Pandoc User's Guide, "Extension: yaml_metadata_block" and "EPUB Metadata").
func (m *marked) front(d document.Document) {
	m.line("---")
	say := func(word, text string) {
		if line(text) != "" {
			m.line(word + ": " + strconv.Quote(spelled(text)))
		}
	}
	say("title", d.Title)
	if d.Cover != nil {
		say("subtitle", d.Cover.Subtitle)
	}
	say("author", d.Author)
	say("rights", d.Copyright)
	say("description", d.Subject)
	say("lang", languageOf(d))
	m.line("---")
	m.line("")
}

// pictureFirst is blocks with the first picture before the paragraphs that lead to it: programs keep a heading with what comes next, and
// nothing else together.
func pictureFirst(list []document.Block) []document.Block {
	list = slices.Clone(list)
	lead := 0
	for i, b := range list {
		switch v := b.(type) {
		case document.Together:
			list[i] = document.Together{Blocks: pictureFirst(v.Blocks)}
		case document.Paragraph:
			continue
		case document.Picture:
			copy(list[lead+1:i+1], list[lead:i])
			list[lead] = v
			return list
		}
		lead = i + 1
	}
	return list
}

// besideTitle is blocks in which the title has the subtitle with it, where it is a heading: books put the title over their first page, and a
// list of contents leads to only one of two headings that are alike.
func besideTitle(list []document.Block, d document.Document) []document.Block {
	list = slices.Clone(list)
	for i, b := range list {
		switch v := b.(type) {
		case document.Together:
			list[i] = document.Together{Blocks: besideTitle(v.Blocks, d)}
		case document.Heading:
			if v.Text == d.Title && d.Cover != nil && line(d.Cover.Subtitle) != "" {
				v.Text += ": " + d.Cover.Subtitle
				list[i] = v
			}
		}
	}
	return list
}

// saidAtTheBack says whether the back cover holds a line.
func saidAtTheBack(d document.Document, text string) bool {
	n := len(d.Sections)
	return n > 0 && d.Sections[n-1].Back && saidIn(d.Sections[n-1].Blocks, line(text))
}

// saidIn says whether a paragraph holds a line.
func saidIn(list []document.Block, text string) bool {
	return slices.ContainsFunc(list, func(b document.Block) bool {
		switch v := b.(type) {
		case document.Together:
			return saidIn(v.Blocks, text)
		case document.Paragraph:
			return strings.Contains(textLine(v.Text), text)
		}
		return false
	})
}
