package main

import (
	"github.com/spf13/cobra"

	"eighthturn/internal/plan/summary"
	"eighthturn/internal/report"
)

// checkOptions is what `check` was asked for.
type checkOptions struct {
	reportForms
	strict bool
	in     variantOption
}

// checkCommand lists the faults of a layout and what was made of it.
func checkCommand(c *console) *cobra.Command {
	o := &checkOptions{}
	cmd := &cobra.Command{
		Use:     "check FILE",
		Short:   "errors in a layout; sizes, counts, fabrics",
		GroupID: toAmend,
		Long: "Lists every error with its place in the layout and what to type instead. If no error stops it, it then " +
			"shows what the layout makes: strip widths, the size of the top, borders, blocks, pieces, complete webs, " +
			"and the fabrics from dark to light. Finished sizes exclude seam allowances; cut sizes include them.",
		Example: "eighthturn check harbor.quilt\n  lists errors, then what the layout makes\n" +
			"eighthturn check harbor.quilt --strict\n  treats warnings as errors",
		SuggestFor: []string{"test", "verify", "validate", "lint", "info", "list"},
		Args:       oneLayout,
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := o.oneForm(cmd); err != nil {
				return err
			}
			return check(c, cmd, o, args[0])
		},
	}
	o.in.flags(cmd)
	cmd.Flags().BoolVar(&o.strict, strictOption, false, "treat warnings as errors: exit code 1")
	o.flags(cmd)
	return cmd
}

func check(c *console, cmd *cobra.Command, o *checkOptions, file string) error {
	s, err := c.read(file)
	if err != nil {
		return err
	}
	l := layOut(s)
	lines, list := l.lines, l.faults
	var made *summary.Summary
	if l.top != nil {
		top, err := o.in.of(cmd, l.top)
		if err != nil {
			return err
		}
		design := l.design
		if o.in.size != "" {
			design = design.InSize(o.in.size)
		}
		made = summary.Build(design, top)
	}
	if o.json {
		err = c.printJSON(checkedJSON(s.name, lines, list, made))
	} else {
		c.report(s, lines, list)
		if made != nil {
			var text string
			if text, err = o.text(report.Check(s.name+": "+counted(list), made)); err == nil {
				err = c.print(text)
			}
		}
	}
	switch {
	case err != nil:
		return err
	case !stops(list, o.strict):
		return nil
	case o.json || made != nil:
		return &reported{faulty}
	}
	return c.stopped(s, list, "sizes and counts follow once the errors are fixed")
}
