package main

import (
	"strings"

	"github.com/spf13/cobra"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/render"
	"eighthturn/layout"
)

// Forms of a report whose options are named in several places.
const (
	asJSON     = "json"
	asCSV      = "csv"
	asMarkdown = "markdown"
)

// reportForms are the forms that a report is asked for in, and how deep it goes.
type reportForms struct {
	json, csv, markdown, why bool
}

// flags adds the options that every report has, and of the forms those that are named.
func (o *reportForms) flags(cmd *cobra.Command, forms ...string) {
	f := cmd.Flags()
	for _, form := range forms {
		switch form {
		case asJSON:
			f.BoolVar(&o.json, asJSON, false, "the same as JSON, for other programs")
		case asCSV:
			f.BoolVar(&o.csv, asCSV, false, "the same as CSV, for a spreadsheet")
		case asMarkdown:
			f.BoolVar(&o.markdown, asMarkdown, false, "the same as Markdown, for a web page or a document")
		}
	}
	f.BoolVar(&o.why, "why", false, "say as well how it was worked out: bounds, exact decimals, how it was judged")
}

// check refuses more than one form at a time.
func (o *reportForms) check(cmd *cobra.Command) error {
	if o.json && o.csv || o.csv && o.markdown || o.json && o.markdown {
		return misuse(cmd.CommandPath(), "a plan is written in one form at a time", "leave all but one of --json, --csv and --markdown out")
	}
	return nil
}

// text is a report for a terminal, or in the form that was asked for: as CSV all of its tables.
func (o *reportForms) text(d document.Document) (string, error) {
	depth := document.Detail
	if o.why {
		depth = document.Why
	}
	d = d.Down(depth)
	if o.csv {
		return render.CSV(d), nil
	}
	if !o.markdown {
		return render.Text(d), nil
	}
	const name = "report"
	made, err := render.Markdown(d.Without(), name)
	lines := strings.Split(string(made[name+".md"]), "\n")
	for i := range lines {
		lines[i] = layout.Visible(lines[i])
	}
	return strings.Join(lines, "\n"), err
}

// planJSON is a plan for other programs. Its fields are known to be ones that can be written.
func planJSON(plan any, format int, file string, units measure.System) string {
	text, err := render.JSON(plan, render.JSONHead{Format: format, File: file, Units: units})
	if err != nil {
		panic(err)
	}
	return text
}
