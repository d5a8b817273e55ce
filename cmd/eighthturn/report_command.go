package main

import (
	"github.com/spf13/cobra"

	"eighthturn/internal/report"
)

// formatReport changes when what a name in the JSON of a report without options of its own means does.
const formatReport = 1

// reportCommand is the command of a report that has no options of its own.
func reportCommand(c *console, r report.Report) *cobra.Command {
	o, in := &reportForms{}, variantOption{}
	cmd := &cobra.Command{
		Use:     r.Name + " FILE",
		Short:   r.Short,
		GroupID: toCutSew,
		Long:    "Tells of a layout: " + r.Short + ".",
		Example: "eighthturn " + r.Name + " harbor.quilt",
		Args:    oneLayout,
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := o.oneForm(cmd); err != nil {
				return err
			}
			s, top, err := in.top(c, cmd, args[0], false, "nothing is told")
			if err != nil {
				return err
			}
			return c.printReport(r, o, &report.Plans{Top: top, Name: s.name})
		},
	}
	in.flags(cmd)
	o.flags(cmd)
	return cmd
}

// printReport prints a report in the form that was asked for.
func (c *console) printReport(r report.Report, o *reportForms, p *report.Plans) error {
	if o.json {
		return c.printJSON(planJSON(r.Plan(p), formatReport, p.Name, p.Top.Units))
	}
	text, err := o.text(r.Make(p))
	if err != nil {
		return err
	}
	return c.print(text)
}
