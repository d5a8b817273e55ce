package main

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"eighthturn/internal/blocks"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sizes"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
	"eighthturn/layout"
)

// chartOptions is what `chart` was asked for.
type chartOptions struct {
	reportForms
	reportFile
	units                                  choice
	from, to, step, seam, usableWidth, cut measureOption
}

// chartKind is one sort of chart.
type chartKind struct {
	name, about string
	without     []string // options that have no part in it
	make        func(sizes.Options) (chartForms, error)
}

// chartForms is a chart in the forms that it is written in: for people, for a spreadsheet, as data.
type chartForms struct {
	text, table func() document.Document
	data        any
}

// charts is every sort of chart, the one that needs no name first.
func charts() []chartKind {
	return []chartKind{
		{"strips", "what strips of several widths make", []string{stripOption}, func(o sizes.Options) (chartForms, error) {
			c, err := sizes.Strips(o)
			return chartForms{func() document.Document { return report.StripChart(c) }, func() document.Document { return report.StripTable(c) }, c}, err
		}},
		{"sides", "which strips blocks of several sides need", []string{stripOption, usableWidthOption}, func(o sizes.Options) (chartForms, error) {
			c, err := sizes.Sides(o)
			return chartForms{func() document.Document { return report.SideChart(c) }, func() document.Document { return report.SideTable(c) }, c}, err
		}},
		{columnKind(), "which tumblers the lines of a wedge ruler give", nil, func(o sizes.Options) (chartForms, error) {
			c, err := sizes.Tumblers(o)
			return chartForms{func() document.Document { return report.TumblerChart(c) }, func() document.Document { return report.TumblerTable(c) }, c}, err
		}},
	}
}

// columnKind is the name of the kind that stands in columns.
func columnKind() string {
	kinds := blocks.Kinds()
	return kinds[slices.IndexFunc(kinds, func(k *blocks.Kind) bool { return k.Column })].Name
}

func chartNames() []string {
	return mapped(charts(), func(s chartKind) string { return s.name })
}

// Options of chart whose names are needed twice.
const (
	stripOption       = "strip"
	usableWidthOption = "usable-width"
)

// chartCommand tells what strips make, without a layout.
func chartCommand(c *console) *cobra.Command {
	o := &chartOptions{reportFile: reportFile{what: "chart"}, units: choice{option: "units", words: []string{measure.Inches.String(), measure.Centimetres.String()}}}
	cmd := &cobra.Command{
		Use:     "chart [" + strings.Join(chartNames(), "|") + "]",
		Short:   "what strips make: block sizes, squares, wedges",
		GroupID: toCutSew,
		Long: "Lists, for strips of several widths, how large the blocks finish, which squares to cut for kites, " +
			"background pieces and ring corners, and how many wedges a strip yields. chart sides goes from block size " +
			"to strip width, and shows which sizes suit both rings and webs. chart " +
			columnKind() +
			" lists the pieces that each line of a wedge ruler gives. No layout is needed. Write lengths as in a " +
			"layout; if one has a blank, put quotes around it.",
		Example: "eighthturn chart\n  strips of 1 1/2 to 8 inches\n" +
			"eighthturn chart --from 3 --to 5 --step 1/8 --usable-width 42\n  a closer look, for fabric 42 inches wide\n" +
			"eighthturn chart sides --units cm -o chart.xlsx\n  blocks of 10 to 40 centimeters, for a spreadsheet\n" +
			"eighthturn chart " + columnKind() + " --strip 7-1/2\n  pieces from strips of 7 1/2 inches",
		SuggestFor: []string{"table", "size", "sizes", "strips", "cutting-chart"},
		Args:       oneOf("chart", chartNames()),

		ValidArgsFunction: offerOne(chartNames),
		RunE:              func(cmd *cobra.Command, args []string) error { return showChart(c, cmd, o, args) },
	}
	o.takes()
	f := cmd.Flags()
	o.length(cmd, &o.from, "from", "start at this `LENGTH`: a strip, a side or a line")
	o.length(cmd, &o.to, "to", "end at this `LENGTH`")
	o.length(cmd, &o.step, "step", "increase by this `LENGTH`")
	o.length(cmd, &o.seam, "seam", "seam allowance, a `LENGTH`; 1/4 in or 0.75 cm if omitted")
	o.length(cmd, &o.usableWidth, usableWidthOption, "usable width of fabric, a `LENGTH`; 40 in or 100 cm if omitted")
	o.length(cmd, &o.cut, stripOption, "the strip that "+columnKind()+" are cut from, a `LENGTH`; 5 in or 12 cm if omitted")
	f.Var(&o.units, o.units.option, "`UNITS`: inches or cm")
	o.reportForms.flags(cmd)
	o.reportFile.flags(cmd)
	return cmd
}

func (o *chartOptions) length(cmd *cobra.Command, to *measureOption, name, usage string) {
	to.option = name
	cmd.Flags().Var(to, name, usage)
}

// takes sets what each length may be.
func (o *chartOptions) takes() {
	o.from, o.to = measureOption{most: sizes.MaxLength, example: "6 in"}, measureOption{most: sizes.MaxLength, example: "12 in"}
	o.step, o.seam = measureOption{most: sizes.MaxLength, example: "1/2 in"}, measureOption{most: sizes.MaxSeam, example: "1/4 in"}
	o.usableWidth, o.cut = measureOption{most: sizes.MaxCloth, example: "42 in"}, measureOption{most: sizes.MaxLength, example: "5 in"}
}

func showChart(c *console, cmd *cobra.Command, o *chartOptions, args []string) error {
	sheet := charts()[0]
	if len(args) == 1 {
		sheet = charts()[slices.IndexFunc(charts(), func(s chartKind) bool { return strings.EqualFold(s.name, args[0]) })]
	}
	if err := o.named(cmd, &o.reportForms); err != nil {
		return err
	}
	for _, name := range sheet.without {
		if cmd.Flags().Changed(name) {
			return misuse(cmd.CommandPath(), fmt.Sprintf("--%s does nothing in the chart of %s", name, sheet.name), "leave it out")
		}
	}
	made, err := sheet.make(o.options())
	if err != nil {
		return misuse(cmd.CommandPath(), err.Error(), o.hint(&sheet, err))
	}
	out := o.target(nil)
	err = c.write(out, func(w io.Writer) error { return o.writeTo(w, &made) })
	if err != nil || !o.toFile() {
		return err
	}
	return c.print("made: " + layout.Visible(out.path) + "\n")
}

// writeTo writes a chart in the form asked for.
func (o *chartOptions) writeTo(w io.Writer, made *chartForms) error {
	if o.json {
		return render.JSON(w, made.data, render.JSONHead{Format: formatChart, Units: measure.System(o.units.index)})
	}
	of := made.text
	if o.is(render.CSVForm) || o.is(render.XLSXForm) {
		of = made.table
	}
	text, err := o.text(of())
	if err == nil {
		_, err = io.WriteString(w, text)
	}
	return err
}

// formatChart changes when what a name in the JSON means does.
const formatChart = 2

// hint says what to type: another length in place of one that is too long, or else options with which the chart can be made,
// those for its rows, and where seams leave nothing of them for seam and strip too.
func (o *chartOptions) hint(s *chartKind, err error) string {
	units := measure.System(o.units.index)
	for _, m := range []*measureOption{&o.from, &o.to, &o.step, &o.seam, &o.usableWidth, &o.cut} {
		if m.withinMost(units) != nil {
			return m.hint()
		}
	}
	rows, seam, strip := "--from 6 --to 12 --step 1/2", " --seam 1/4", " --strip 5"
	if units == measure.Centimetres {
		rows, seam, strip = "--from 15 --to 30 --step 1", " --seam 0.75", " --strip 12"
	}
	if errors.As(err, new(sizes.RowsError)) {
		seam = ""
	}
	if slices.Contains(s.without, stripOption) {
		strip = ""
	}
	return "for example " + rows + seam + strip
}

func (o *chartOptions) options() sizes.Options {
	s := measure.System(o.units.index)
	return sizes.Options{
		Units: s, From: o.from.in(s), To: o.to.in(s), Step: o.step.in(s),
		Seam: o.seam.in(s), UsableWidth: o.usableWidth.in(s), StripCut: o.cut.in(s),
	}
}

// oneOf is the check of arguments for a command that takes one word of a list, or none.
func oneOf(what string, list []string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		switch {
		case len(args) > 1:
			return misuse(cmd.CommandPath(), fmt.Sprintf("expected one word, found %d: %s", len(args), quoted(strings.Join(args, " "))), "run it once for each")
		case len(args) == 0 || slices.ContainsFunc(list, func(w string) bool { return strings.EqualFold(w, args[0]) }):
			return nil
		}
		hint := "there are: " + strings.Join(list, ", ")
		if near := nearest(args[0], list); near != "" {
			hint = didYouMean(near)
		}
		return misuse(cmd.CommandPath(), "no "+what+" is called "+quoted(args[0]), hint)
	}
}
