package main

import (
	"path/filepath"

	"github.com/spf13/cobra"

	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
	"eighthturn/layout"
)

// sewOptions is what `sew` was asked for.
type sewOptions struct {
	json, strict, force bool
	pictures            string
	cut                 cutOptions
}

// picturesOption is the name of the option for pictures of the steps.
const picturesOption = "pictures"

// formatSew changes when what a name in the JSON means does.
const formatSew = 1

// sewCommand plans how a quilt is sewn together.
func sewCommand(c *console) *cobra.Command {
	o := &sewOptions{}
	cmd := &cobra.Command{
		Use:     "sew FILE",
		Short:   "how it goes together, step by step",
		GroupID: toCutSew,
		Long: "Tells block by block which pieces are sewn first, by how much cut corners stick out so that the seam lines meet, what to " +
			"trim and check, and how large each part should be; then how the blocks go together, with their places and turns; which " +
			"way every seam is pressed so that seams that meet lie opposite ways; and where cloth stretches or grows thick. " +
			"Options that say how pieces are cut are those of cuts, and mean the same. --pictures draws each step.",
		Example: "eighthturn sew harbour.quilt\n" +
			"eighthturn sew harbour.quilt --pictures harbour-steps\n  draws each step into a folder\n" +
			"eighthturn sew harbour.quilt --json > harbour.json\n  the same for another program",
		SuggestFor: []string{"sewing", "piece", "piecing", "press", "pressing", "assemble", "steps"},
		Args:       oneLayout,
		RunE:       func(cmd *cobra.Command, args []string) error { return sew(c, cmd, o, args[0]) },
	}
	f := cmd.Flags()
	f.BoolVar(&o.json, "json", false, "the same as JSON, for other programs")
	f.StringVar(&o.pictures, picturesOption, "", "draw a picture of each step into the `FOLDER`, which is made if need be")
	f.BoolVar(&o.force, forceOption, false, "replace pictures that are there already")
	o.cut.addPieces(cmd)
	f.BoolVar(&o.strict, strictOption, false, "plan nothing if there are warnings")
	return cmd
}

func sew(c *console, cmd *cobra.Command, o *sewOptions, file string) error {
	if err := namesFolder(cmd, picturesOption, o.pictures, "harbour-steps"); err != nil {
		return err
	}
	s, top, err := c.top(file, o.strict, "nothing is planned")
	if err != nil {
		return err
	}
	options, err := o.cut.of(cmd, top)
	if err != nil {
		return err
	}
	plan := sewing.Build(top, cutting.Pieces(top, options), sewing.Options{})
	drawn := "\nTo see every step drawn, name a folder: --" + picturesOption + " " + shellWord(beside(filepath.Base(s.name), "-steps")) + "\n"
	if o.pictures != "" {
		n, err := c.drawSteps(o.pictures, plan, o.force)
		if err != nil {
			return err
		}
		drawn = "\ndrawn: " + plural(n, "picture") + " in " + layout.Visible(o.pictures) + "\n"
	}
	if o.json {
		return c.print(sewJSON(s.name, plan))
	}
	return c.print(sewText(layout.Visible(s.name), plan) + drawn)
}

// sewJSON is a plan for other programs.
func sewJSON(name string, plan *sewing.Plan) string {
	text, err := plan.JSON()
	if err != nil {
		panic(err) // nothing in a plan can fail to be written
	}
	return headed(formatSew, name, plan.Units, text)
}
