package main

import (
	"slices"

	"github.com/spf13/cobra"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/render"
)

// reportForms are the forms that a report is asked for in, and how deep it goes.
type reportForms struct {
	json, why bool
	asked     []*bool // by render.Forms; nil where no flags were offered
	locale    render.Locale
}

// flags adds the options that every report has.
func (o *reportForms) flags(cmd *cobra.Command) {
	f := cmd.Flags()
	f.BoolVar(&o.json, "json", false, "the same as JSON, for other programs")
	for _, form := range render.Forms() {
		asked := new(bool)
		if !form.File {
			f.BoolVar(asked, form.Name, false, form.Usage)
		}
		o.asked = append(o.asked, asked)
	}
	f.BoolVar(&o.why, "why", false, "also say how it was worked out: bounds, exact decimals, how it was judged")
}

// names are the options of forms that are given.
func (o *reportForms) names() []string {
	var list []string
	if o.json {
		list = append(list, "--json")
	}
	for i, form := range render.Forms() {
		if i < len(o.asked) && *o.asked[i] {
			list = append(list, "--"+form.Name)
		}
	}
	return list
}

// is says whether a form is asked for.
func (o *reportForms) is(name string) bool { return slices.Contains(o.names(), "--"+name) }

// oneForm refuses more than one form at a time.
func (o *reportForms) oneForm(cmd *cobra.Command) error {
	if names := o.names(); len(names) > 1 {
		return misuse(cmd.CommandPath(), "a plan is written in one form at a time, found "+measure.List(names), "leave all but one of them out")
	}
	return nil
}

// text is a report for a terminal, or in the form that was asked for.
func (o *reportForms) text(d document.Document) (string, error) {
	depth := document.Detail
	if o.why {
		depth = document.Why
	}
	d = d.Down(depth)
	for i, form := range render.Forms() {
		if i < len(o.asked) && *o.asked[i] {
			return form.Write(d, o.locale)
		}
	}
	return render.Text(d), nil
}

// jsonPlan is a plan for other programs.
type jsonPlan struct {
	plan any
	head render.JSONHead
}

func planJSON(plan any, format int, file string, units measure.System) jsonPlan {
	return jsonPlan{plan, render.JSONHead{Format: format, File: file, Units: units}}
}

// printJSON writes a plan to standard output as it is gone through.
func (c *console) printJSON(p jsonPlan) error {
	return standardOutput(render.JSON(c.out, p.plan, p.head))
}
