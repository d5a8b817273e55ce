package main

import (
	"strconv"

	"github.com/spf13/cobra"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
	"eighthturn/layout"
)

// cutsOptions is what `cuts` was asked for.
type cutsOptions struct {
	reportForms
	strict, force bool
	exactly       bool
	maps          string
	copies        copiesOption
	cut           cutOptions
}

// Options of cuts whose names are needed twice.
const (
	mapsOption = "maps"
	copiesName = "copies"
)

// cutsCommand plans what to cut and what to buy.
func cutsCommand(c *console) *cobra.Command {
	o := &cutsOptions{}
	cmd := &cobra.Command{
		Use:     "cuts FILE",
		Short:   "what to cut and what to buy",
		GroupID: toCutSew,
		Long: "Lists, fabric by fabric and in the order to cut, the strips across the cloth and what each is cut into, with every " +
			"size finished and cut; then how much cloth to buy, and whether what is on hand is enough. Strips are chosen to take " +
			"little cloth: small pieces lie in rows in the ends of wider strips where that saves some. --why adds exact sizes and the least " +
			"that could do. --maps draws each fabric with its strips, to scale.",
		Example: "eighthturn cuts harbour.quilt\n" +
			"eighthturn cuts harbour.quilt --maps harbour-maps\n  draws a cutting map of each fabric into a folder\n" +
			"eighthturn cuts harbour.quilt --copies 12 --quarters\n  cloth for a class of twelve, bought by quarters of a yard\n" +
			"eighthturn cuts harbour.quilt --csv > harbour.csv\n  the same for a spreadsheet",
		SuggestFor: []string{"cut", "cutting", "yardage", "buy", "shopping", "strips", "fabric"},
		Args:       oneLayout,
		RunE:       func(cmd *cobra.Command, args []string) error { return cuts(c, cmd, o, args[0]) },
	}
	f := cmd.Flags()
	o.flags(cmd)
	f.StringVar(&o.maps, mapsOption, "", "draw a cutting map of each fabric into the `FOLDER`, which is made if need be")
	f.BoolVar(&o.force, forceOption, false, "replace maps that are there already")
	f.Var(&o.copies, copiesName, "plan for so many `QUILTS`, for a class; added up first, rounded once")
	o.cut.addCloth(cmd)
	o.cut.addPieces(cmd)
	f.BoolVar(&o.exactly, "exact", false, "say lengths exactly, with decimals where no mark of a ruler shows them")
	f.BoolVar(&o.strict, strictOption, false, "plan nothing if there are warnings")
	return cmd
}

func cuts(c *console, cmd *cobra.Command, o *cutsOptions, file string) error {
	if err := o.oneForm(cmd); err != nil {
		return err
	}
	if err := namesFolder(cmd, mapsOption, o.maps, "harbour-maps"); err != nil {
		return err
	}
	s, top, err := c.top(file, o.strict, "nothing is planned")
	if err != nil {
		return err
	}
	o.cut.copies = o.copies.count
	options, err := o.cut.of(cmd, top)
	if err != nil {
		return err
	}
	plans := &report.Plans{Top: top, Name: s.name, Cutting: options, Exact: o.exactly}
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
	drawn := ""
	if o.maps != "" {
		n, err := c.drawMaps(o.maps, plans, o.force)
		if err != nil {
			return err
		}
		drawn = "drawn: " + measure.Count(n, "map") + " in " + layout.Visible(o.maps) + "\n"
	}
	switch {
	case o.json:
		return c.print(planJSON(plans.Cuts(), formatCuts, s.name, plans.Top.Units))
	case o.is(render.CSVForm):
		return c.print(render.CSV(report.CuttingTable(plans)))
	}
	text, err := o.text(report.Cutting(plans))
	if err != nil {
		return err
	}
	if len(o.names()) > 0 {
		drawn = ""
	}
	return c.print(text + drawn)
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
		return &problem{message: "behind --copies stands " + quoted(text) + ", expected a number from 1 to " + strconv.Itoa(cutting.MaxCopies), hint: "for example --copies 12"}
	}
	o.count = n
	return nil
}
