package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"eighthturn/internal/files"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/templates"
	"eighthturn/layout"
)

const matName = "mat"

// maxMat is the longest side of a mat.
const maxMat = 100 * measure.Inch

// matOption is the value of an option that takes the size of a mat, across by down.
type matOption struct {
	text   string
	across measureOption
	down   measureOption
}

func (o *matOption) String() string { return o.text }
func (o *matOption) Type() string   { return "size" }

func (o *matOption) Set(text string) error {
	o.across, o.down = measureOption{option: matName, most: maxMat}, measureOption{option: matName, most: maxMat}
	across, down, ok := strings.Cut(strings.ToLower(text), "x")
	if !ok || o.across.Set(across) != nil || o.down.Set(down) != nil {
		return o.wrong(text)
	}
	o.text = text
	return nil
}

func (o *matOption) wrong(text string) *problem {
	return &problem{message: fmt.Sprintf("after --%s: found %s, expected a width and a height up to %s", matName, quoted(text), o.across.limit()), hint: "for example --" + matName + " 12x24"}
}

// in is the mat's size; a number without a unit counts in the layout's. Where only the height has a unit the width has the same.
func (o *matOption) in(units measure.System) (measure.Point, error) {
	if o.down.reading.HasUnit() && !o.across.reading.HasUnit() {
		text := strings.TrimSpace(o.down.text)
		unit := text[strings.LastIndexAny(text, "0123456789")+1:]
		if err := o.across.Set(o.across.text + unit); err != nil {
			return measure.Point{}, o.wrong(o.text)
		}
	}
	if o.across.withinMost(units) != nil || o.down.withinMost(units) != nil {
		return measure.Point{}, o.wrong(o.text)
	}
	return measure.Point{X: o.across.in(units), Y: o.down.in(units)}, nil
}

// mats writes the pieces of each fabric on mats into a folder, or as one drawing.
func (o *templating) mats(c *console, cmd *cobra.Command, top *quilt.Top, out target) error {
	size, err := o.mat.in(top.Units)
	if err != nil {
		return misuse(cmd.CommandPath(), err.Error(), "for example --"+matName+" 12x24")
	}
	list := templates.Build(top, o.cuts)
	mats, err := templates.Mats(top, list, size)
	var large *templates.TooLarge
	switch {
	case errors.As(err, &large):
		return &problem{faulty, out.path, fmt.Sprintf("template %s, a %s, takes %s with room around it: more than a mat of %s", large.Template.Name(), large.Template.Shape,
			top.Units.ByAtLeast(large.Size.X, large.Size.Y), top.Units.By(size.X, size.Y)), "use a larger mat, such as --" + matName + " " + larger(large.Enough, top.Units)}
	case err == nil && len(mats) == 0:
		return &problem{faulty, out.path, "every piece is cut from a strip set or from its place on a print, and neither is cut on a mat", "leave out --" + matName + " for the templates"}
	case err != nil:
		return err
	}
	said := ""
	for i := range mats {
		said += fmt.Sprintf("%s: cut %s, %s\n", layout.Visible(mats[i].Name(top)), measure.Count(mats[i].Times, "time"), mats[i].Holds())
	}
	for i := range list {
		if list[i].Print != nil {
			said += list[i].Name() + ": on no mat, since each piece is lined up on the print\n"
		}
	}
	if ending(out.path) == drawingEnding {
		if err := c.write(out, func(w io.Writer) error { return templates.MatsDXF(w, top, mats) }); err != nil {
			return err
		}
		return c.print(fmt.Sprintf("made: %s, %s\n", layout.Visible(out.path), measure.Count(len(mats), "mat")) + said)
	}
	set := make([]files.File, len(mats))
	for i := range mats {
		m := &mats[i]
		set[i] = files.File{Name: mapName(i, top.Fabrics[m.Fabric].Name), Write: func(w io.Writer) error { return m.SVG(w, top) }}
	}
	if err := c.writeSet(out, "-o", set); err != nil {
		return err
	}
	return c.print(fmt.Sprintf("made: %s in %s\n", measure.Count(len(mats), "SVG mat"), layout.Visible(out.path)) + said + templates.LayersNote + "\n")
}

// larger is the size of a mat in whole units, as the option takes it.
func larger(size measure.Point, units measure.System) string {
	whole := func(nm measure.NM) string { return measure.Number(measure.RoundUp(nm, units.Unit()), units) }
	return whole(size.X) + "x" + whole(size.Y)
}
