package main

import (
	"io"
	"strconv"

	"github.com/spf13/cobra"

	"eighthturn/internal/files"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/orders"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
	"eighthturn/layout"
)

// cutsOptions is what `cuts` was asked for.
type cutsOptions struct {
	reportForms
	reportFile
	strict    bool
	exactly   bool
	bothUnits bool
	maps      string
	copies    copiesOption
	cut       cutOptions
	in        variantOption
}

// Options of cuts whose names are needed twice.
const (
	mapsOption = "maps"
	copiesName = "copies"
)

// cutsCommand plans what to cut and what to buy.
func cutsCommand(c *console) *cobra.Command {
	o := &cutsOptions{reportFile: reportFile{what: "plan"}}
	cmd := &cobra.Command{
		Use:     "cuts FILE",
		Short:   "what to cut and what to buy",
		GroupID: toCutSew,
		Long: "Lists the yardage to buy and whether the fabric on hand is enough; then, fabric by fabric and in cutting " +
			"order, the strips to cut across the width of fabric and what to subcut from each, with every size finished and cut. Borders and binding come from whole strips, small pieces from the ends of wider strips " +
			"where that helps; --least-cloth saves more. --why adds exact sizes and the minimum. --maps draws each fabric with its strips, to scale.",
		Example: "eighthturn cuts harbor.quilt\n" +
			"eighthturn cuts harbor.quilt --maps harbor-maps\n  draws a cutting map of each fabric into a folder\n" +
			"eighthturn cuts harbor.quilt --copies 12 --quarters\n  fabric for a class of twelve, in quarter yards\n" +
			"eighthturn cuts harbor.quilt -o harbor-plan.xlsx\n  a workbook: what to buy, what to cut, the pieces, and kits\n" +
			"eighthturn cuts harbor.quilt -o harbor-plan.csv --locale de\n  one table, for a spreadsheet with the decimal comma",
		SuggestFor: []string{"cut", "cutting", "yardage", "buy", "shopping", "strips", "fabric"},
		Args:       oneLayout,
		RunE:       func(cmd *cobra.Command, args []string) error { return cuts(c, cmd, o, args[0]) },
	}
	f := cmd.Flags()
	o.reportForms.flags(cmd)
	o.reportFile.flags(cmd)
	f.StringVar(&o.maps, mapsOption, "", "draw a cutting map of each fabric into the `FOLDER`, made if needed")
	f.Var(&o.copies, copiesName, "plan for this number of `QUILTS`, for a class; totaled first, then rounded up once")
	o.cut.addCloth(cmd)
	o.cut.addPieces(cmd)
	o.in.flags(cmd)
	addBothUnits(cmd, &o.bothUnits)
	f.BoolVar(&o.exactly, "exact", false, "say lengths exactly, with decimals where no mark of a ruler shows them")
	f.BoolVar(&o.strict, strictOption, false, "plan nothing if there are warnings")
	return cmd
}

func cuts(c *console, cmd *cobra.Command, o *cutsOptions, file string) error {
	if err := o.named(cmd, &o.reportForms); err != nil {
		return err
	}
	if err := namesFolder(cmd, mapsOption, o.maps, "harbor-maps"); err != nil {
		return err
	}
	s, top, err := o.in.top(c, cmd, file, o.strict, "nothing is planned")
	if err != nil {
		return err
	}
	o.cut.copies = o.copies.count
	options, err := o.cut.of(cmd, top)
	if err != nil {
		return err
	}
	plans := &report.Plans{Top: top, Name: s.name, Cutting: options, Exact: o.exactly, BothShop: o.bothUnits}
	plans.Nearby = orders.Nearby(s.text, files.Beside(s.path).Cloth, top)
	if err := c.cannotCut(s, plans.Cuts(), o.strict); err != nil {
		return err
	}
	return o.write(c, s, plans)
}

// cannotCut shows what the plan has to say of the layout, and stops where something cannot be cut.
func (c *console) cannotCut(s *source, plan *cutting.Plan, strict bool) error {
	list := faultsOf(plan.Faults, layout.Error)
	list = append(list, faultsOf(plan.Warnings, layout.Warning)...)
	if len(list) == 0 {
		return nil
	}
	l := layOut(s)
	c.report(s, l.lines, list)
	if stops(list, strict) {
		return c.stopped(s, list, "nothing is planned")
	}
	return nil
}

func faultsOf(list []cutting.Fault, severity layout.Severity) []layout.Fault {
	return mapped(list, func(f cutting.Fault) layout.Fault {
		return layout.Fault{Severity: severity, Span: layout.Span(f.Place), Message: f.Message, Hint: f.Hint}
	})
}

// formatCuts changes when what a name in the JSON means does.
const formatCuts = 2

// write writes the plan in the form asked for, and the maps.
func (o *cutsOptions) write(c *console, s *source, plans *report.Plans) error {
	made := ""
	if o.maps != "" {
		n, err := c.drawMaps(o.maps, plans, o.force)
		if err != nil {
			return err
		}
		made = "drawn: " + measure.Count(n, "map") + " in " + layout.Visible(o.maps) + "\n"
	}
	out := o.target(s)
	err := c.write(out, func(w io.Writer) error { return o.writeTo(w, s, plans, made) })
	if err != nil || !o.toFile() {
		return err
	}
	return c.print("made: " + layout.Visible(out.path) + "\n" + made)
}

// writeTo writes the plan; for people at a terminal with what else was made.
func (o *cutsOptions) writeTo(w io.Writer, s *source, plans *report.Plans, made string) error {
	if o.json {
		return render.JSON(w, report.CutsForPrograms(plans), render.JSONHead{Format: formatCuts, File: s.name, Units: plans.Top.Units})
	}
	of := report.Cutting
	switch {
	case o.is(render.CSVForm):
		of = report.CuttingTable
	case o.is(render.XLSXForm):
		of = report.CuttingSheets
	}
	text, err := o.text(of(plans))
	if err == nil && len(o.names()) == 0 && !o.toFile() {
		text += made
	}
	if err == nil {
		_, err = io.WriteString(w, text)
	}
	return err
}

// copiesOption is the value of an option that takes a number of quilts.
type copiesOption struct{ count int }

func (o *copiesOption) Type() string { return "number" }

func (o *copiesOption) String() string {
	if o.count == 0 {
		return ""
	}
	return strconv.Itoa(o.count)
}

func (o *copiesOption) Set(text string) error {
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > cutting.MaxCopies {
		return &problem{message: "after --copies: found " + quoted(text) + ", expected a number from 1 to " + strconv.Itoa(cutting.MaxCopies), hint: "for example --copies 12"}
	}
	o.count = n
	return nil
}
