package render

import (
	"strings"

	"eighthturn/internal/document"
	"eighthturn/layout"
)

// Form is a form of text, beside a terminal's, that every report is written in.
type Form struct {
	Name   string // of the option that asks for it
	Ending string // of the names of its files
	Usage  string // for help
	File   bool   // no text: it is written into files alone, and there is no such option
	Write  func(document.Document, Locale) (string, error)
}

// The forms that are asked for by name elsewhere.
const (
	CSVForm      = "csv"
	XLSXForm     = "xlsx"
	MarkdownForm = "markdown"
)

// Forms are all forms of text. A new one is a line here, and its writer in a file of its own.
func Forms() []Form {
	return []Form{
		{CSVForm, ".csv", "the same as CSV, for a spreadsheet", false, func(d document.Document, l Locale) (string, error) { return CSVFor(d, l), nil }},
		{MarkdownForm, ".md", "the same as Markdown, for a web page or a document", false, markdownAlone},
		{XLSXForm, ".xlsx", "a workbook, a sheet for each table", true, func(d document.Document, _ Locale) (string, error) {
			made, err := XLSX(d)
			return string(made), err
		}},
	}
}

// markdownAlone is a document as Markdown without its pictures, fit to be shown by a terminal too.
func markdownAlone(d document.Document, _ Locale) (string, error) {
	const name = "report"
	made, err := markdown(d.Without(), name, false, Options{})
	lines := strings.Split(string(made[name+".md"]), "\n")
	for i := range lines {
		lines[i] = layout.Visible(lines[i])
	}
	return strings.Join(lines, "\n"), err
}
