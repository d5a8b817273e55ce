package main

import (
	"path/filepath"

	"github.com/spf13/cobra"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/report"
	"eighthturn/layout"
)

// sewOptions is what `sew` was asked for.
type sewOptions struct {
	reportForms
	strict, force bool
	pictures      string
	cut           cutOptions
	in            variantOption
}

// picturesOption is the name of the option for pictures of the steps.
const picturesOption = "pictures"

// formatSew changes when what a name in the JSON means does.
const formatSew = 2

// sewCommand plans how a quilt is sewn together.
func sewCommand(c *console) *cobra.Command {
	o := &sewOptions{}
	cmd := &cobra.Command{
		Use:     "sew FILE",
		Short:   "sewing instructions, step by step",
		GroupID: toCutSew,
		Long: "Shows block by block which pieces to sew first, how far to offset corners so that the seam lines meet, " +
			"what to trim and check, and how large each unit should be; then how to join the blocks, where " +
			"each goes and how it is rotated; which way to press every seam so that the seams nest; and where to watch for bias " +
			"edges and bulk. Options for cutting are the same as for cuts. --pictures draws each step.",
		Example: "eighthturn sew harbor.quilt\n" +
			"eighthturn sew harbor.quilt --pictures harbor-steps\n  draws each step into a folder\n" +
			"eighthturn sew harbor.quilt --json > harbor.json\n  the same for another program",
		SuggestFor: []string{"sewing", "piece", "piecing", "press", "pressing", "assemble", "steps"},
		Args:       oneLayout,
		RunE:       func(cmd *cobra.Command, args []string) error { return sew(c, cmd, o, args[0]) },
	}
	f := cmd.Flags()
	o.flags(cmd)
	f.StringVar(&o.pictures, picturesOption, "", "draw a picture of each step into the `FOLDER`, made if needed")
	f.BoolVar(&o.force, forceOption, false, "replace existing pictures")
	o.cut.addCloth(cmd)
	o.cut.addPieces(cmd)
	o.in.flags(cmd)
	f.BoolVar(&o.strict, strictOption, false, "plan nothing if there are warnings")
	return cmd
}

func sew(c *console, cmd *cobra.Command, o *sewOptions, file string) error {
	if err := namesFolder(cmd, picturesOption, o.pictures, "harbor-steps"); err != nil {
		return err
	}
	if err := o.oneForm(cmd); err != nil {
		return err
	}
	s, top, err := o.in.top(c, cmd, file, o.strict, "nothing is planned")
	if err != nil {
		return err
	}
	options, err := o.cut.of(cmd, top)
	if err != nil {
		return err
	}
	p := &report.Plans{Top: top, Name: s.name, Cutting: options}
	drawn := "\nTo see every step drawn, name a folder: --" + picturesOption + " " + shellWord(beside(filepath.Base(s.name), "-steps")) + "\n"
	if o.pictures != "" {
		n, err := c.drawSteps(o.pictures, p, o.force)
		if err != nil {
			return err
		}
		drawn = "\ndrawn: " + measure.Count(n, "picture") + " in " + layout.Visible(o.pictures) + "\n"
	}
	if o.json {
		return c.printJSON(sewJSON(s.name, p))
	}
	text, err := o.text(report.Sewing(p))
	if err != nil {
		return err
	}
	if len(o.names()) > 0 {
		drawn = ""
	}
	return c.print(text + drawn)
}

// sewJSON is a plan for other programs, with the cautions that belong to it.
func sewJSON(name string, p *report.Plans) jsonPlan {
	plan := p.Steps()
	return planJSON(struct {
		*sewing.Plan
		Cautions []string `json:"cautions"`
	}{plan, report.SewingCautions()}, formatSew, name, plan.Units)
}
