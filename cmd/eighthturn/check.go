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
}

// checkCommand lists the faults of a layout and what was made of it.
func checkCommand(c *console) *cobra.Command {
	o := &checkOptions{}
	cmd := &cobra.Command{
		Use:     "check FILE",
		Short:   "mistakes in a layout; sizes, counts, fabrics",
		GroupID: toAmend,
		Long: "Lists every mistake with its place in the layout and what to type instead. If there is none that stops it, it " +
			"goes on to what the layout makes: the strips that wedges are cut from, the size of the top, borders, blocks, " +
			"pieces, which webs close, and the fabrics from dark to light. Finished is from seam to seam; cut is with the " +
			"seam allowances.",
		Example: "eighthturn check harbour.quilt\n  lists mistakes, then what the layout makes\n" +
			"eighthturn check harbour.quilt --strict\n  counts warnings as mistakes too",
		SuggestFor: []string{"test", "verify", "validate", "lint", "info", "list"},
		Args:       oneLayout,
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := o.oneForm(cmd); err != nil {
				return err
			}
			return check(c, o, args[0])
		},
	}
	cmd.Flags().BoolVar(&o.strict, strictOption, false, "take warnings for mistakes: exit code 1")
	o.flags(cmd)
	return cmd
}

func check(c *console, o *checkOptions, file string) error {
	s, err := c.read(file)
	if err != nil {
		return err
	}
	l := layOut(s)
	lines, list := l.lines, l.faults
	var made *summary.Summary
	if l.top != nil {
		made = summary.Build(l.design, l.top)
	}
	if o.json {
		err = c.print(checkedJSON(s.name, lines, list, made))
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
	return c.stopped(s, list, "sizes and counts follow once the errors are mended")
}
