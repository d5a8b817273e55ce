package main

import (
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"eighthturn/internal/document"
	"eighthturn/internal/files"
	"eighthturn/internal/longarm"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/render"
	"eighthturn/internal/render/pdf"
	"eighthturn/internal/report"
	"eighthturn/layout"
)

// quilting is what `quilting` was asked for.
type quilting struct {
	output        string
	force, strict bool
	paper         choice
	in            variantOption
}

// quiltingNames are the names that `quilting` writes under.
func quiltingNames() outputNames {
	return outputNames{what: "page or drawing for the quilter", endings: []string{pageEnding, pictureEnding, drawingEnding}, example: "harbor-quilting"}
}

// quiltingCommand makes what goes to the long-arm quilter with the quilt top.
func quiltingCommand(c *console) *cobra.Command {
	o := &quilting{paper: choice{option: "paper", words: []string{"letter", "a4"}}}
	cmd := &cobra.Command{
		Use:     "quilting FILE [-o OUT]",
		Short:   "a page and drawings for the long-arm quilter",
		GroupID: toCutSew,
		Long: "Tells the long-arm quilter the sizes of quilt top, backing and batting, the borders, which edges are bias edges, and " +
			"leaves room for notes: one page. A name ending in .svg or .dxf gives the lines of the whole top at true size, in " +
			"layers: outline, borders, blocks, seams.",
		Example: "eighthturn quilting harbor.quilt\n" +
			"eighthturn quilting harbor.quilt -o harbor-quilting.pdf\n  the page to print and hand on with the quilt top\n" +
			"eighthturn quilting harbor.quilt -o harbor-quilting.dxf\n  the lines for the quilting machine's program",
		SuggestFor: []string{"longarm", "quilt", "quilter", "pantograph"},
		Args:       oneLayout,
		RunE:       func(cmd *cobra.Command, args []string) error { return makeQuilting(c, cmd, o, args[0]) },
	}
	f := cmd.Flags()
	quiltingNames().flag(cmd, &o.output, "the `NAME` of a PDF, SVG or DXF file; if omitted, the page is printed as text")
	f.Var(&o.paper, o.paper.option, "the `PAPER` of a PDF: letter or a4; if omitted, letter for layouts in inches and a4 for layouts in centimeters")
	o.in.flags(cmd)
	f.BoolVar(&o.force, forceOption, false, "replace files that eighthturn did not make")
	f.BoolVar(&o.strict, strictOption, false, "make nothing if there are warnings")
	_ = cmd.RegisterFlagCompletionFunc(o.paper.option, o.paper.complete) // fails only for an option that is not there
	return cmd
}

// quiltingMarker stands near the beginning of every PDF for the quilter.
const quiltingMarker = "eighthturn quilting"

func quiltingOfOurs(head []byte) bool {
	return longarm.IsOurs(head) || pdf.Marked(head, quiltingMarker)
}

func makeQuilting(c *console, cmd *cobra.Command, o *quilting, file string) error {
	if err := quiltingNames().check(cmd, o.output); err != nil {
		return err
	}
	form := ending(o.output)
	if cmd.Flags().Changed(o.paper.option) && form != pageEnding {
		return misuse(cmd.CommandPath(), "--"+o.paper.option+" works only with a PDF", "leave it out, or name a PDF with -o")
	}
	s, top, err := o.in.top(c, cmd, file, o.strict, "nothing is made")
	if err != nil {
		return err
	}
	plans := &report.Plans{Top: top, Name: s.name}
	if o.output == "" || o.output == stdio {
		return c.print(render.Text(report.Quilting(plans)))
	}
	out := target{path: o.output, what: quiltingNames().what, example: "quilting" + pageEnding, options: files.Options{Force: o.force, Ours: quiltingOfOurs, Never: s.madeFrom}}
	write := map[string]func(io.Writer, *quilt.Top) error{drawingEnding: longarm.DXF, pictureEnding: longarm.SVG}[form]
	if write == nil {
		if !cmd.Flags().Changed(o.paper.option) && top.Units == measure.Centimetres {
			o.paper.index = 1
		}
		if top.Title != "" {
			plans.Name = "" // a page has the quilt's title
		}
		return o.page(c, out, report.Quilting(plans))
	}
	if err := c.write(out, func(w io.Writer) error { return write(w, top) }); err != nil {
		return err
	}
	return c.print("made: " + layout.Visible(out.path) + "\n")
}

// page writes the page as PDF.
func (o *quilting) page(c *console, out target, d document.Document) error {
	page := render.Letter()
	if o.paper.index == 1 {
		page = render.A4()
	}
	printed, err := render.PDF(d.Print(), render.Options{Paper: page, Marker: quiltingMarker})
	if err != nil {
		return &problem{faulty, out.path, err.Error(), ""}
	}
	if err := c.write(out, bytesOf(printed.File)); err != nil {
		return err
	}
	c.complainOf(printed.Warnings)
	return c.print(fmt.Sprintf("made: %s, %s\n", layout.Visible(out.path), measure.Count(printed.Pages, "page")))
}
