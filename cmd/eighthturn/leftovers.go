package main

import (
	"cmp"
	"fmt"

	"github.com/spf13/cobra"

	"eighthturn/internal/files"
	"eighthturn/internal/plan/leftovers"
	"eighthturn/internal/report"
	"eighthturn/layout"
)

// leftoversOptions is what `leftovers` was asked for.
type leftoversOptions struct {
	reportForms
	output string
	force  bool
	number numberOption
	copies copiesOption
	in     variantOption
}

// leftoversCommand lays out what the leftovers make.
func leftoversCommand(c *console) *cobra.Command {
	o := &leftoversOptions{number: numberOption{option: numberName, least: 1, most: leftovers.MostProposals, example: 2}}
	cmd := &cobra.Command{
		Use:     "leftovers FILE",
		Short:   "what the leftover wedges make",
		GroupID: toCutSew,
		Long: "Lays out what the pieces make that the cutting plan leaves: runners, placemats, pillows, wall hangings and throws of whole rings, " +
			"webs and stars, those that use most pieces first. Says of each its finished size, what it uses, what is still left and what must be " +
			"cut besides. -o writes one of them as a layout, the first if --number does not say another, with the pieces on hand, so that its own plan cuts only the rest.",
		Example: "eighthturn leftovers harbor.quilt\n" +
			"eighthturn leftovers harbor.quilt --number 2 -o harbor-runner.quilt\n  writes the second as a layout of its own",
		SuggestFor: []string{"leftover", "scraps", "rest", "remains"},
		Args:       oneLayout,
		RunE:       func(cmd *cobra.Command, args []string) error { return leftoversOf(c, cmd, o, args[0]) },
	}
	f := cmd.Flags()
	layoutNames().flag(cmd, &o.output, "write one of them as a layout, under this `NAME`; - shows it here")
	f.Var(&o.number, numberName, "with -o, the `NUMBER` of the one to write; the first if omitted")
	f.BoolVar(&o.force, forceOption, false, "replace another file of that name")
	f.Var(&o.copies, copiesName, "the leftovers of this number of `QUILTS`")
	o.in.flags(cmd)
	o.flags(cmd)
	return cmd
}

func leftoversOf(c *console, cmd *cobra.Command, o *leftoversOptions, file string) error {
	if err := cmp.Or(layoutNames().check(cmd, o.output), o.oneForm(cmd)); err != nil {
		return err
	}
	if o.number.n > 0 && o.output == "" {
		return misuse(cmd.CommandPath(), "--"+numberName+" says which one is written, and no file is named", "name one with -o, for example -o harbor-runner"+layoutEnding)
	}
	s, top, err := o.in.top(c, cmd, file, false, "nothing is laid out")
	if err != nil {
		return err
	}
	p := &report.Plans{Top: top, Name: s.name}
	p.Cutting.Copies = o.copies.count
	if err := c.cannotCut(s, p.Cuts(), false); err != nil {
		return err
	}
	if o.output != "" {
		return o.write(c, cmd, s, p.Leftovers())
	}
	if o.json {
		return c.printJSON(planJSON(p.Leftovers(), formatLeftovers, s.name, top.Units))
	}
	text, err := o.text(report.Leftovers(p))
	if err != nil {
		return err
	}
	return c.print(text)
}

// formatLeftovers changes when what a name in the JSON means does.
const formatLeftovers = 1

// write writes one proposal as a layout.
func (o *leftoversOptions) write(c *console, cmd *cobra.Command, s *source, p *leftovers.Plan) error {
	n, most := max(1, o.number.n), len(p.Proposals)
	switch {
	case most == 0:
		return &problem{faulty, s.name, "the leftovers make nothing whole, and nothing is written", "eighthturn leftovers " + shellWord(layout.Visible(s.name)) + " says what is left"}
	case n > most:
		return misuse(cmd.CommandPath(), fmt.Sprintf("no leftovers are laid out under number %d", n), fmt.Sprintf("write a number from 1 to %d", most))
	}
	out := target{path: o.output, what: "layout", example: "harbor-runner" + layoutEnding, options: files.Options{Force: o.force, Never: s.madeFrom}}
	if err := c.write(out, writer(report.LeftoversLayout(p, n))); err != nil || o.output == stdio {
		return err
	}
	return c.print("written: " + layout.Visible(o.output) + "\n")
}
