package main

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"github.com/spf13/cobra"

	"eighthturn/internal/files"
	"eighthturn/internal/plan/motifs"
	"eighthturn/internal/quilt"
	"eighthturn/internal/render/picture"
	"eighthturn/internal/report"
	"eighthturn/layout"
	"eighthturn/svgout"
)

// motifsOptions is what `motifs` was asked for.
type motifsOptions struct {
	reportForms
	sheetOptions
	count    numberOption
	mirrored bool
	in       variantOption
}

// countName says how many centers.
const countName = "count"

// motifsCommand shows the centers that a print gives.
func motifsCommand(c *console) *cobra.Command {
	o := &motifsOptions{count: numberOption{option: countName, least: 1, most: motifs.Most, example: 20, counts: "centers"}}
	cmd := &cobra.Command{
		Use:     "motifs FILE FABRIC",
		Short:   "the centers that a print can give",
		GroupID: toSee,
		Long: "Chooses places of a print from which eight like wedges make the most different centers, spread over one repeat, at the size of the " +
			"layout's own wedges. Says of each what it looks like and the line to write; -o draws them on a sheet. The fabric has a photo with " +
			"its repeat, or stripes. The layout is not changed.",
		Example: "eighthturn motifs garden.quilt garden -o centers.png\n  twelve centers from the fabric garden\n" +
			"eighthturn motifs garden.quilt garden --count 24 -o centers.pdf\n  twice as many\n" +
			"eighthturn motifs awning.quilt awning --mirrored -o pairs.png\n  neighbors in mirror image, as in a kaleidoscope",
		SuggestFor: []string{"motif", "centers", "fussy", "fussy-cut", "kaleidoscope"},
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) != 2 {
				return misuse(cmd.CommandPath(), "expected a layout and one of its fabrics", "for example "+cmd.CommandPath()+" garden"+layoutEnding+" garden")
			}
			return oneLayout(cmd, args[:1])
		},
		RunE: func(cmd *cobra.Command, args []string) error { return motifsOf(c, cmd, o, args[0], args[1]) },
	}
	f := cmd.Flags()
	o.sheetFlags(cmd, motifsNames(), "centers", "a page for twelve centers if omitted, larger for more")
	f.Var(&o.count, countName, fmt.Sprintf("choose this `NUMBER` of centers, up to %d; %d if omitted", motifs.Most, motifs.Usual))
	f.BoolVar(&o.mirrored, "mirrored", false, "cut every other wedge from the place mirrored at a line of the print")
	o.in.flags(cmd)
	o.flags(cmd)
	return cmd
}

// motifsNames are the names that centers are drawn under.
func motifsNames() outputNames {
	n := pictureNames()
	n.example = "centers"
	return n
}

func motifsOf(c *console, cmd *cobra.Command, o *motifsOptions, file, fabric string) error {
	if err := o.checkSheet(cmd, motifsNames(), &o.reportForms); err != nil {
		return err
	}
	s, top, err := o.in.top(c, cmd, file, false, "nothing is chosen")
	if err != nil {
		return err
	}
	plan, err := o.plan(cmd, s, top, fabric)
	if err != nil {
		return err
	}
	if o.output != "" {
		if err := o.draw(c, s, top, plan); err != nil || o.output == stdio {
			return err
		}
	}
	if o.json {
		return c.printJSON(planJSON(plan, formatMotifs, s.name, top.Units))
	}
	text, err := o.text(report.Motifs(file, top.Units, plan))
	if err != nil {
		return err
	}
	return c.print(text)
}

// plan chooses the centers, with names that the layout has nowhere.
func (o *motifsOptions) plan(cmd *cobra.Command, s *source, top *quilt.Top, name string) (*motifs.Plan, error) {
	fabric, err := fabricNamed(cmd, top, name)
	if err != nil {
		return nil, err
	}
	written := layout.FoldName(s.text)
	plan, err := motifs.Build(top, fabric, motifs.Options{Count: o.count.n, Mirrored: o.mirrored, Taken: func(name string) bool { return strings.Contains(written, layout.FoldName(name)) }})
	var unfit *motifs.Unfit
	if errors.As(err, &unfit) {
		why, hint := report.NoMotifs(layout.Visible(top.Fabrics[fabric].Name), unfit)
		return nil, misuse(cmd.CommandPath(), why, hint)
	}
	return plan, err
}

// formatMotifs changes when what a name in the JSON means does.
const formatMotifs = 1

// fabricNamed is a fabric of a top by its name, which is compared as the language compares names.
func fabricNamed(cmd *cobra.Command, top *quilt.Top, name string) (int, error) {
	var prints, all []string
	for f := range top.Fabrics {
		if layout.FoldName(top.Fabrics[f].Name) == layout.FoldName(name) {
			return f, nil
		}
		all = append(all, top.Fabrics[f].Name)
		if top.Fabrics[f].Cloth != nil {
			prints = append(prints, top.Fabrics[f].Name)
		}
	}
	hint := "this layout has no print: " + report.PrintExample("garden")
	if near := nearest(name, all); near != "" {
		hint = didYouMean(near)
	} else if len(prints) > 0 {
		hint = "prints are: " + strings.Join(prints, ", ")
	}
	return 0, misuse(cmd.CommandPath(), "no fabric is called "+quoted(name), hint)
}

// A sheet of as many centers as is usual, in pixels: at 300 an inch it lies on a page of Letter and of A4 paper. More centers take a larger
// one, with letters of the same size.
const (
	sheetWidth, sheetHeight = 2100, 2700
	sheetLetters            = 0.82 // of those of other canvases
)

// draw draws the centers on a sheet.
func (o *motifsOptions) draw(c *console, s *source, top *quilt.Top, plan *motifs.Plan) error {
	grown := max(1, math.Sqrt(float64(len(plan.Motifs))/motifs.Usual))
	if o.canvas.width == 0 {
		o.canvas = canvasValue{width: int(sheetWidth * grown), height: int(sheetHeight * grown)}
	}
	p := o.printing.poster(&o.canvas, top.Units)
	p.Letters = sheetLetters / grown
	for i := range plan.Motifs {
		m := &plan.Motifs[i]
		scene, err := svgout.NewScene(m.Top, svgout.Options{Prints: true, SeamLines: svgout.SeamsLeftOut, ByFabric: true, Prefix: fmt.Sprintf("p%d-", i+1)})
		if err != nil {
			return err
		}
		p.Groups = append(p.Groups, picture.Group{Name: report.MotifName(i+1, m), Says: report.MotifSays(m), Parts: []picture.Part{{Scene: scene}}})
	}
	first := p.Groups[0].Parts[0].Scene
	p.Credits, p.Says, p.Description = first.Credits, first.Title, report.MotifsHeading(plan)
	p.Title, p.Lines = top.Title, []string{report.MotifsHeading(plan)}
	out := target{path: o.output, what: "picture", example: "centers" + pictureEnding, options: files.Options{Force: o.force, Ours: pictureOfOurs, Never: s.madeFrom}}
	return c.drawCanvas(p, out, 0)
}
