package main

import (
	"bytes"
	"cmp"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"eighthturn/internal/files"
	"eighthturn/internal/render"
)

// reportFile is the file that a report goes into, and for whom.
type reportFile struct {
	output string // "" and stdio for standard output
	force  bool
	locale localeOption
}

// Endings of a report's files, beside those of render.Forms.
const (
	textEnding = ".txt"
	jsonEnding = ".json"
)

func reportEndings() []string {
	list := []string{textEnding, jsonEnding}
	for _, form := range render.Forms() {
		list = append(list, form.Ending)
	}
	slices.Sort(list)
	return list
}

const localeName = "locale"

func (o *reportFile) flags(cmd *cobra.Command) {
	f := cmd.Flags()
	f.StringVarP(&o.output, outputOption, "o", "", "the `NAME` of a file, whose ending says its form: "+strings.Join(reportEndings(), ", "))
	f.Var(&o.locale, localeName, "for a CSV file: write numbers as in this `LOCALE`, such as de or fr-CA; with a decimal comma, semicolons part the cells")
	f.BoolVar(&o.force, forceOption, false, "replace files that eighthturn did not make")
}

// named sees that the name of the file is one for a report, and asks for the form that it means.
func (o *reportFile) named(cmd *cobra.Command, forms *reportForms) error {
	if err := cmp.Or(wantsName(cmd, o.output, "harbor-plan.xlsx"), forms.oneForm(cmd)); err != nil {
		return err
	}
	if o.output != "" && o.output != stdio {
		if names := forms.names(); len(names) > 0 {
			return misuse(cmd.CommandPath(), "the name after -o says which form is written, and so does "+names[0], "leave out "+names[0])
		}
		ending := strings.ToLower(filepath.Ext(o.output))
		if !slices.Contains(reportEndings(), ending) {
			return misuse(cmd.CommandPath(), quoted(o.output)+" is not a name for a plan: it can end in "+choices(reportEndings()), "for example -o "+shellWord(beside(o.output, ".xlsx")))
		}
		forms.json = ending == jsonEnding
		for i, form := range render.Forms() {
			*forms.asked[i] = form.Ending == ending
		}
	}
	if o.locale.name != "" && !forms.is(render.CSVForm) {
		return misuse(cmd.CommandPath(), "only CSV is written as in a locale", "leave --"+localeName+" out, or write CSV: -o harbor.csv")
	}
	forms.locale = o.locale.locale
	return nil
}

// toFile says whether a file is named.
func (o *reportFile) toFile() bool { return o.output != "" && o.output != stdio }

// target is the file of a layout's report.
func (o *reportFile) target(s *source) target {
	path := o.output
	if path == "" {
		path = stdio
	}
	ours := func(head []byte) bool { return bytes.Contains(head, []byte(render.XLSXMark)) }
	return target{path: path, what: "plan", example: "plan.xlsx", options: files.Options{Force: o.force, Ours: ours, Never: s.madeFrom}}
}

// localeOption is the value of an option that takes the name of a locale.
type localeOption struct {
	name   string
	locale render.Locale
}

func (l *localeOption) String() string { return l.name }
func (l *localeOption) Type() string   { return localeName }

func (l *localeOption) Set(text string) error {
	locale, err := render.ReadLocale(text)
	if err != nil {
		return &problem{message: "after --" + localeName + ": " + err.Error(), hint: "write a language, and a country where it matters: de, fr-CA, en-US"}
	}
	l.name, l.locale = text, locale
	return nil
}
