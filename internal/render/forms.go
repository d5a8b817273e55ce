package render

import (
	"strings"

	"eighthturn/internal/document"
	"eighthturn/layout"
)

// Form is a form of text, beside a terminal's, that every report is written in.
type Form struct {
	Name  string // of the option that asks for it
	Usage string // for help
	Write func(document.Document) (string, error)
}

// The forms that are asked for by name elsewhere.
const (
	CSVForm      = "csv"
	MarkdownForm = "markdown"
)

// Forms are all forms of text. A new one is a line here, and its writer in a file of its own.
func Forms() []Form {
	return []Form{
		{CSVForm, "the same as CSV, for a spreadsheet", func(d document.Document) (string, error) { return CSV(d), nil }},
		{MarkdownForm, "the same as Markdown, for a web page or a document", markdownAlone},
	}
}

// markdownAlone is a document as Markdown without its pictures, fit to be shown by a terminal too.
func markdownAlone(d document.Document) (string, error) {
	const name = "report"
	made, err := Markdown(d.Without(), name)
	lines := strings.Split(string(made[name+".md"]), "\n")
	for i := range lines {
		lines[i] = layout.Visible(lines[i])
	}
	return strings.Join(lines, "\n"), err
}
