package main

import (
	"bytes"
	"cmp"
	"slices"

	"github.com/spf13/cobra"

	"eighthturn/internal/files"
	"eighthturn/internal/render"
)

// reportFile is the file that a report goes into, and for whom.
type reportFile struct {
	what   string // it is, for messages: "plan"
	output string // "" and stdio for standard output
	force  bool
	locale localeOption
}

// Endings of a report's files, beside those of render.Forms.
const (
	textEnding = ".txt"
	jsonEnding = ".json"
)

// outputNames are the names that the report is written under.
func (o *reportFile) outputNames() outputNames {
	n := outputNames{what: o.what, endings: []string{textEnding, jsonEnding}, example: "harbor-" + o.what}
	for _, form := range render.Forms() {
		n.endings = append(n.endings, form.Ending)
	}
	slices.Reverse(n.endings)
	return n
}

const localeName = "locale"

func (o *reportFile) flags(cmd *cobra.Command) {
	f := cmd.Flags()
	o.outputNames().flag(cmd, &o.output, "the `NAME` of a file, whose ending says its form: "+oneOfThese(o.outputNames().endings))
	f.Var(&o.locale, localeName, "for a CSV file: write numbers as in this `LOCALE`, such as de or fr-CA; with a decimal comma, semicolons separate the cells")
	f.BoolVar(&o.force, forceOption, false, "replace files that eighthturn did not make")
}

// named sees that the name of the file is one for a report, and asks for the form that it means.
func (o *reportFile) named(cmd *cobra.Command, forms *reportForms) error {
	if err := cmp.Or(o.outputNames().check(cmd, o.output), forms.oneForm(cmd)); err != nil {
		return err
	}
	if o.output != "" && o.output != stdio {
		if names := forms.names(); len(names) > 0 {
			return misuse(cmd.CommandPath(), "the name after -o says which form is written, and so does "+names[0], "leave out "+names[0])
		}
		forms.json = ending(o.output) == jsonEnding
		for i, form := range render.Forms() {
			*forms.asked[i] = form.Ending == ending(o.output)
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

// target is the file of a report, of a layout's if it is one.
func (o *reportFile) target(s *source) target {
	path := o.output
	if path == "" {
		path = stdio
	}
	ours := func(head []byte) bool { return bytes.Contains(head, []byte(render.XLSXMark)) }
	t := target{path: path, what: o.what, example: o.what + ".xlsx", options: files.Options{Force: o.force, Ours: ours}}
	if s != nil {
		t.options.Never = s.madeFrom
	}
	return t
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
