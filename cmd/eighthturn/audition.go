package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"eighthturn/internal/files"
	"eighthturn/internal/plan/audition"
	"eighthturn/internal/quilt"
	"eighthturn/internal/render/picture"
	"eighthturn/internal/report"
	"eighthturn/internal/stop"
	"eighthturn/layout"
	"eighthturn/svgout"
)

// auditionOptions is what `audition` was asked for.
type auditionOptions struct {
	reportForms
	sheetOptions
	sorted bool
	in     variantOption
}

// sortOption puts those that read better first.
const sortOption = "sort"

// auditionCommand shows alternatives side by side.
func auditionCommand(c *console) *cobra.Command {
	o := &auditionOptions{}
	cmd := &cobra.Command{
		Use:     "audition FILE ROLE [of LABEL] A B ...",
		Short:   "alternatives side by side, in color and gray",
		GroupID: toSee,
		Long: "Tries two to nine alternatives in one place of the layout and says of each whether it reads and what to write for it; -o draws " +
			"them side by side, in color and in gray. ROLE is a role of the blocks, such as wedges or kites, of one block with \"of\" and its " +
			"label; border, by its number from the inside; binding, sash, posts or webs; deal, of a pool of scraps; or a fabric, in all its places. An " +
			"alternative is what the layout may have there: fabrics, colors, fabrics of a palette, pools, strip sets, reversed or not; put quotes " +
			"around one that has a blank. The layout is not changed.",
		Example: "eighthturn audition harbor.quilt rust \"#7a2f16\" \"#3f5a4c\" -o tries.png\n  two colors in place of rust\n" +
			"eighthturn audition harbor.quilt wedges of W navy rust teal --sort\n  three fabrics for the wedges of block W, the one that reads best first\n" +
			"eighthturn audition harbor.quilt border of 1 rust navy cream -o borders.pdf\n  three fabrics for the inner border",
		SuggestFor: []string{"try", "compare", "alternatives", "auditions"},
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) < 2 {
				return misuse(cmd.CommandPath(), "expected a layout, a role or a fabric, and two to nine alternatives", "for example "+cmd.CommandPath()+" harbor.quilt rust \"#7a2f16\" \"#d98b5f\"")
			}
			return oneLayout(cmd, args[:1])
		},
		RunE: func(cmd *cobra.Command, args []string) error { return auditions(c, cmd, o, args) },
	}
	f := cmd.Flags()
	o.sheetFlags(cmd, auditionNames(), "quilts", "as high as need be if omitted")
	f.BoolVar(&o.sorted, sortOption, false, "put those that read better first; without it, in the order given")
	o.in.flags(cmd)
	o.flags(cmd)
	return cmd
}

// auditionNames are the names that an audition is drawn under.
func auditionNames() outputNames {
	n := pictureNames()
	n.example = "tries"
	return n
}

func auditions(c *console, cmd *cobra.Command, o *auditionOptions, args []string) error {
	role, of, alternatives := args[1], "", args[2:]
	if len(alternatives) > 1 && strings.EqualFold(alternatives[0], "of") {
		of, alternatives = alternatives[1], alternatives[2:]
	}
	if err := o.checkSheet(cmd, auditionNames(), &o.reportForms); err != nil {
		return err
	}
	s, top, err := o.in.top(c, cmd, args[0], false, "nothing is tried")
	if err != nil {
		return err
	}
	photos := files.Beside(s.path).Cloth
	written := layout.Inspect(s.text, photos)
	trials, err := written.Auditions(layout.AuditionOf{Role: role, Of: of, Colorway: o.in.colorway}, alternatives)
	var unfit *layout.Unfit
	if errors.As(err, &unfit) {
		return misuse(cmd.CommandPath(), unfit.Message, unfit.Hint)
	}
	read := func(text string) (*layout.Design, []layout.Fault) {
		design, _, faults := layout.ReadWith(text, photos)
		return design, faults
	}
	plan, err := audition.Build(top, trials, read, audition.Options{Sorted: o.sorted, Colorway: func(_ *stop.Sign, t *quilt.Top) (*quilt.Top, error) { return o.in.of(cmd, t) }})
	var wrong *audition.Wrong
	if errors.As(err, &wrong) {
		return misuse(cmd.CommandPath(), "with "+quoted(wrong.Alternative)+": "+wrong.Fault.Message, wrong.Fault.Hint)
	}
	if err != nil {
		return misuse(cmd.CommandPath(), err.Error(), "")
	}
	plan.Role, plan.Of = role, of
	if o.output != "" {
		if err := o.draw(c, s, top, plan); err != nil || o.output == stdio {
			return err
		}
	}
	if o.json {
		return c.printJSON(planJSON(plan, formatAudition, s.name, top.Units))
	}
	text, err := o.text(report.Audition(args[0], plan))
	if err != nil {
		return err
	}
	return c.print(text)
}

// formatAudition changes when what a name in the JSON means does.
const formatAudition = 1

// draw draws the alternatives side by side.
func (o *auditionOptions) draw(c *console, s *source, top *quilt.Top, plan *audition.Plan) error {
	p := o.printing.poster(&o.canvas, top.Units)
	for i := range plan.Alternatives {
		a := &plan.Alternatives[i]
		g := picture.Group{Name: report.AuditionName(a), Says: report.AuditionSays(a)}
		for n, view := range []svgout.View{svgout.Colour, svgout.Value} {
			scene, err := svgout.NewScene(a.Top, svgout.Options{View: view, ByFabric: true, Prefix: fmt.Sprintf("p%d-", 10*i+n+1)})
			if err != nil {
				return err
			}
			g.Parts = append(g.Parts, picture.Part{Scene: scene})
		}
		p.Groups = append(p.Groups, g)
	}
	first := p.Groups[0].Parts[0].Scene
	p.Credits, p.Says, p.Description = first.Credits, first.Title, report.ShownTogether(descriptions(p))
	p.Title, p.Lines = top.Title, []string{report.AuditionHeading(plan)}
	out := target{path: o.output, what: "picture", example: "tries" + pictureEnding, options: files.Options{Force: o.force, Ours: pictureOfOurs, Never: s.madeFrom}}
	return c.drawCanvas(p, out, 0)
}
