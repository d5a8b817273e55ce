package main

import (
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"eighthturn/internal/quilt"
)

// The options that choose a colorway and a size.
const (
	colorwayName = "colorway"
	sizeName     = "size"
)

// variantOption is the colorway and the size of a layout that a command is for, as written.
type variantOption struct{ colorway, size string }

// flags adds the options to a command; the British spelling is taken too.
func (o *variantOption) flags(cmd *cobra.Command) {
	cmd.Flags().StringVar(&o.colorway, colorwayName, "", "use the colorway of this `NAME`; without it, the fabrics as the layout has them")
	cmd.Flags().StringVar(&o.size, sizeName, "", "make the size of this `NAME`; without it, the size as the layout has it")
	cmd.Flags().SetNormalizeFunc(func(_ *pflag.FlagSet, name string) pflag.NormalizedName {
		if name == "colourway" {
			name = colorwayName
		}
		return pflag.NormalizedName(name)
	})
}

// of is a top in the size and the colorway that were asked for.
func (o *variantOption) of(cmd *cobra.Command, top *quilt.Top) (*quilt.Top, error) {
	if o.size != "" {
		size, err := top.SizeNamed(o.size)
		if err != nil {
			names := mapped(top.Sizes, func(s quilt.Size) string { return s.Name })
			return nil, misuse(cmd.CommandPath(), err.Error(), oneThere(o.size, names, "sizes", "size queen across 14 down 16"))
		}
		top = size.Top(nil)
	}
	if o.colorway == "" {
		return top, nil
	}
	chosen, err := top.InNamed(o.colorway)
	if err != nil {
		names := mapped(top.Colorways, func(c quilt.Colorway) string { return c.Name })
		return nil, misuse(cmd.CommandPath(), err.Error(), oneThere(o.colorway, names, "colorways", "colorway dusk "+top.Fabrics[0].Name+" #3a4f66"))
	}
	return chosen, nil
}

// oneThere is a hint for a name that a layout does not have: one that is near, those that there are, or a line to write.
func oneThere(name string, names []string, what, line string) string {
	if near := nearest(name, names); near != "" {
		return didYouMean(near)
	} else if len(names) > 0 {
		return what + " are: " + strings.Join(names, ", ")
	}
	return "write one in the layout, for example " + line
}

// top is console.top in the size and the colorway.
func (o *variantOption) top(c *console, cmd *cobra.Command, file string, strict bool, not string) (*source, *quilt.Top, error) {
	s, top, err := c.top(file, strict, not)
	if err == nil {
		top, err = o.of(cmd, top)
	}
	return s, top, err
}

// beside names a file beside the layout by its name, the size, the colorway and an ending.
func (o *variantOption) beside(path, ending string) string {
	for _, name := range []string{o.colorway, o.size} {
		if name != "" {
			ending = "-" + name + ending
		}
	}
	return beside(path, ending)
}

// bothUnitsOption has what to buy said in yards and in meters.
const bothUnitsOption = "both-units"

// addBothUnits adds that option to a command.
func addBothUnits(cmd *cobra.Command, to *bool) {
	cmd.Flags().BoolVar(to, bothUnitsOption, false, "say what to buy in yards and in meters")
}
