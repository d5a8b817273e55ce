package main

import (
	"cmp"

	"github.com/spf13/cobra"
)

// sheetOptions are what a report's drawing on a sheet is asked for: its name, its size and the color around what it shows.
type sheetOptions struct {
	output   string
	force    bool
	printing printing
	canvas   canvasValue
}

// sheetFlags adds the options to a command; around is what the sheet shows, and size says how large it is where none is asked for.
func (o *sheetOptions) sheetFlags(cmd *cobra.Command, names outputNames, around, size string) {
	f := cmd.Flags()
	names.flag(cmd, &o.output, "draw them, under this `NAME`")
	f.Var(&o.canvas, canvasOption, "the drawing's `SIZE` in pixels: "+canvasSizes()+", or a width and a height like 1000x1500; "+size)
	f.Var(&o.printing.background, backgroundOption, "the `COLOR` of the drawing around the "+around+"; white if omitted")
	f.BoolVar(&o.force, forceOption, false, "replace a file that eighthturn did not draw")
}

// checkSheet refuses what a sheet cannot be, beside the forms of its report.
func (o *sheetOptions) checkSheet(cmd *cobra.Command, names outputNames, forms *reportForms) error {
	if err := cmp.Or(names.check(cmd, o.output), forms.oneForm(cmd)); err != nil {
		return err
	}
	if o.printing.background.none {
		return misuse(cmd.CommandPath(), "a canvas has a color everywhere, and no use for --"+backgroundOption+" none", "leave it out, or name a color")
	}
	if o.output == stdio && len(forms.names()) > 0 {
		return misuse(cmd.CommandPath(), "standard output takes one thing at a time, a drawing or "+forms.names()[0], "name the drawing's file, or leave out "+forms.names()[0])
	}
	return nil
}
