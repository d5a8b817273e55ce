package main

import (
	"bytes"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"eighthturn/internal/files"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
	"eighthturn/svgout"
)

// Names of options that some views have no use for.
const (
	printsOption = "prints" // shows fabrics by their photos
	seamsName    = "seams"
	noSeamsName  = "no-seams"
	legendName   = "legend"
	byFabricName = "by-fabric"
)

// pictureEnding is how the names of pictures end.
const pictureEnding = ".svg"

// pictureNames are the names that `draw` writes under.
func pictureNames() outputNames {
	return outputNames{what: "picture", endings: []string{pictureEnding, pixelsEnding, jpegEnding, webpEnding, pageEnding}, example: "harbor"}
}

// drawing is what `draw` was asked for.
type drawing struct {
	output        string
	force, strict bool
	view          choice
	prefix        idPrefix
	picture       svgout.Options // but view, seams and prefix
	seams         bool
	noSeams       bool
	printing      printing
	tries         tries
	in            variantOption
	shown         shownOptions
}

// drawCommand draws a layout into a picture file.
func drawCommand(c *console) *cobra.Command {
	o := &drawing{view: choice{option: "view", words: mapped(svgout.Views(), inUSSpelling)}}
	cmd := &cobra.Command{
		Use:     "draw FILE [-o OUT]",
		Short:   "a picture of the quilt",
		GroupID: toSee,
		Long: "Draws the quilt at true size, as an SVG picture that web browsers and drawing programs open and that " +
			"stays sharp at any size. Without -o, the picture goes beside the layout and takes its name. A name " +
			"ending in .png, .jpg or .webp gives a picture in pixels that includes its printed size; .pdf gives a page as large as " +
			"the picture. Print a PDF at 100%. The layout's title, designer and copyright go into every file. For a shop, a cover or a " +
			"show, --canvas makes a picture of a fixed size, with margins and with the title, the size and the designer in type; " +
			"--beside, --enlarge and --colorways put several pictures on one canvas.",
		Example: "eighthturn draw harbor.quilt\n  makes harbor.svg\n" +
			"eighthturn draw harbor.quilt --view value -o harbor-gray.svg\n  shows each fabric in the gray of its value, to see whether the design reads\n" +
			"eighthturn draw harbor.quilt --view line --longest 10in -o coloring-page.pdf\n  draws a coloring page to print\n" +
			"eighthturn draw harbor.quilt --longest 2100px --margin 2in -o show.png\n  2100 pixels on the quilt's longer side, with a white margin\n" +
			"eighthturn draw harbor.quilt --try rust=#7a2f16 -o darker.svg\n  draws the rust fabric darker; the layout is not changed\n" +
			"eighthturn draw harbor.quilt --longest 10in --bleed 1/8in -o cover.png\n  a cover for a printer, with a bleed to trim\n" +
			"eighthturn draw harbor.quilt --canvas square --beside value -o harbor-shop.jpg\n  a square picture for a shop: the quilt in color and in gray, with its title\n" +
			"eighthturn draw harbor.quilt --colorways -o colorways.png\n  the layout as written and its colorways, each with its name\n" +
			"eighthturn draw harbor.quilt --block W -o block.png\n  block W alone",
		SuggestFor: []string{"picture", "paint", "render", "svg", "show"},
		Args:       oneLayout,
		RunE:       func(cmd *cobra.Command, args []string) error { return draw(c, cmd, o, args[0]) },
	}
	f := cmd.Flags()
	pictureNames().flag(cmd, &o.output, "the picture's `NAME`; - for standard output")
	f.Var(&o.view, o.view.option, viewHelp())
	f.BoolVar(&o.noSeams, noSeamsName, false, "leave out the thin lines along the seams")
	f.BoolVar(&o.seams, seamsName, false, "draw the seams in the value view too")
	f.BoolVar(&o.picture.Legend, legendName, false, "list the fabrics below the quilt")
	f.BoolVar(&o.picture.Prints, printsOption, false, "show prints and stripes as each piece is cut")
	f.BoolVar(&o.picture.ByFabric, byFabricName, false, "draw each fabric in one piece: a smaller file, but single pieces have no names")
	f.Var(&o.prefix, prefixOption, "begin all ids in the file with `TEXT`, for two pictures on one web page")
	o.printing.flags(cmd)
	o.shown.flags(cmd)
	o.in.flags(cmd)
	o.tries.flags(cmd)
	f.BoolVar(&o.force, forceOption, false, "replace a file that eighthturn did not draw")
	f.BoolVar(&o.strict, strictOption, false, "draw nothing if there are warnings")
	_ = cmd.RegisterFlagCompletionFunc(o.view.option, o.view.complete) // fails only for an option that is not there
	_ = cmd.RegisterFlagCompletionFunc(o.shown.beside.option, o.shown.beside.complete)
	return cmd
}

func draw(c *console, cmd *cobra.Command, o *drawing, file string) error {
	if err := o.check(cmd, file); err != nil {
		return err
	}
	s, top, err := o.in.top(c, cmd, file, o.strict, "no picture is drawn")
	if err != nil {
		return err
	}
	tried, err := o.tries.on(cmd, top)
	if err != nil {
		return err
	}
	top = contrast.Tried(top, tried)
	out := target{path: o.output, what: "picture", example: "quilt" + pictureEnding, options: files.Options{Force: o.force, Ours: pictureOfOurs, Never: s.madeFrom}}
	if out.path == "" {
		if s.info == nil || !s.info.Mode().IsRegular() {
			return misuse(cmd.CommandPath(), "a layout from a pipe gives the picture no name", "name it with -o, or write -o - for standard output")
		}
		out.path = o.in.beside(s.path, o.shown.nameEnding())
	}
	o.picture.Prefix = o.prefix.text
	if o.shown.onCanvas() {
		return o.poster(c, cmd, top, out)
	}
	if top, err = o.shown.part(cmd, top, o.shown.block, blockOption); err != nil {
		return err
	}
	if printed(out.path) != "" {
		return o.print(c, top, out)
	}
	if note := o.sizeNote(top); note != "" {
		c.complain(s.name, note)
	}
	if err := c.write(out, o.drawer(top)); err != nil || out.path == stdio {
		return err
	}
	return c.print("drawn: " + layout.Visible(out.path) + "\n")
}

// A picture of more megabytes than this is said to be large before it is written; a piece, or a band of a strip set, takes so many bytes.
const (
	largePicture  = 15
	bytesForPiece = 340
)

// sizeNote says how large a large picture will be, and what makes it smaller; "" for others.
func (o *drawing) sizeNote(top *quilt.Top) string {
	size := len(top.Faces) * bytesForPiece / 1_000_000
	if size < largePicture || o.picture.ByFabric {
		return ""
	}
	return fmt.Sprintf("note: a picture of %s takes about %d MB; --%s makes it smaller, and a name ending in .png draws it in pixels\n",
		measure.Count(len(top.Faces), "piece"), size, byFabricName)
}

// drawer is what writes the picture of a top.
func (o *drawing) drawer(top *quilt.Top) func(io.Writer) error {
	return func(w io.Writer) error { return svgout.Draw(w, top, o.options()) }
}

// options are those of the picture, its view among them.
func (o *drawing) options() svgout.Options {
	options := o.picture
	options.View, options.OnePaint = svgout.View(o.view.index), true
	switch {
	case o.noSeams:
		options.SeamLines = svgout.SeamsLeftOut
	case o.seams:
		options.SeamLines = svgout.SeamsDrawn
	}
	return options
}

// drawnHere says whether a file is a picture of ours.
func drawnHere(head []byte) bool { return bytes.Contains(head, []byte(svgout.Marker)) }

// without is an option that was given and that the view has no use for, "" for none.
func (o *drawing) without() string {
	view := svgout.View(o.view.index)
	squint := view == svgout.Squint
	switch {
	case o.picture.Prints && (squint || view == svgout.Line):
		return printsOption
	case view > svgout.Line && o.seams:
		return seamsName
	case view != svgout.Colour && o.noSeams:
		return noSeamsName
	case squint && o.picture.Legend:
		return legendName
	case squint && o.picture.ByFabric:
		return byFabricName
	}
	return ""
}

// check sees that the names of files make sense before anything is read.
func (o *drawing) check(cmd *cobra.Command, file string) error {
	o.shown.isBeside = cmd.Flags().Changed(besideOption)
	if err := pictureNames().check(cmd, o.output); err != nil {
		return err
	}
	if file == stdio && o.output == "" {
		return misuse(cmd.CommandPath(), "a layout from standard input gives the picture no name", "name it with -o, or write -o - for standard output")
	}
	if name := o.without(); name != "" {
		return misuse(cmd.CommandPath(), "--"+name+" does nothing in the "+o.view.words[o.view.index]+" view", "leave it out, or choose another --view")
	}
	if o.seams && o.noSeams {
		return misuse(cmd.CommandPath(), "--"+seamsName+" and --"+noSeamsName+" contradict each other", "leave out one of them")
	}
	if o.shown.onCanvas() {
		return o.checkCanvas(cmd)
	}
	return o.printing.check(cmd, printed(o.output))
}
