package main

import (
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"eighthturn/internal/quilt"
)

// colorwayName is the name of the option that chooses a colorway.
const colorwayName = "colorway"

// colorwayOption is the colorway of a layout that a command is for, as written.
type colorwayOption struct{ name string }

// flags adds the option to a command; it takes the British spelling too.
func (o *colorwayOption) flags(cmd *cobra.Command) {
	cmd.Flags().StringVar(&o.name, colorwayName, "", "use the colorway of this `NAME`; without it, the fabrics as the layout has them")
	cmd.Flags().SetNormalizeFunc(func(_ *pflag.FlagSet, name string) pflag.NormalizedName {
		if name == "colourway" {
			name = colorwayName
		}
		return pflag.NormalizedName(name)
	})
}

// of is a top in the colorway that was asked for.
func (o *colorwayOption) of(cmd *cobra.Command, top *quilt.Top) (*quilt.Top, error) {
	if o.name == "" {
		return top, nil
	}
	chosen, err := top.InNamed(o.name)
	if err == nil {
		return chosen, nil
	}
	names := mapped(top.Colorways, func(c quilt.Colorway) string { return c.Name })
	hint := "write one in the layout, for example colorway dusk " + top.Fabrics[0].Name + " #3a4f66"
	if near := nearest(o.name, names); near != "" {
		hint = didYouMean(near)
	} else if len(names) > 0 {
		hint = "colorways are: " + strings.Join(names, ", ")
	}
	return nil, misuse(cmd.CommandPath(), err.Error(), hint)
}

// top is console.top in the colorway.
func (o *colorwayOption) top(c *console, cmd *cobra.Command, file string, strict bool, not string) (*source, *quilt.Top, error) {
	s, top, err := c.top(file, strict, not)
	if err == nil {
		top, err = o.of(cmd, top)
	}
	return s, top, err
}

// beside names a file beside the layout by its name, the colorway and an ending.
func (o *colorwayOption) beside(path, ending string) string {
	if o.name != "" {
		ending = "-" + o.name + ending
	}
	return beside(path, ending)
}
