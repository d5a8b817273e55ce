package main

import (
	"cmp"
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"eighthturn/internal/files"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/fit"
	"eighthturn/internal/plan/supplies"
	"eighthturn/internal/report"
	"eighthturn/layout"
)

// fitOptions is what `fit` was asked for.
type fitOptions struct {
	reportForms
	bed                                   bedOption
	width, height, drop, step, mostBorder measureOption
	strips, sides                         rangeOption
	number                                numberOption
	size                                  string
}

// newSizing is options that know what they may be.
func newSizing() *fitOptions {
	return &fitOptions{
		width: measureOption{most: layout.MaxTop, example: "60 in"}, height: measureOption{most: layout.MaxTop, example: "80 in"},
		drop: measureOption{most: supplies.MaxExtra, example: "12 in"}, step: measureOption{most: layout.MaxStrip, example: "1/2 in"},
		mostBorder: measureOption{most: layout.MaxSide, example: "12 in"},
		strips:     rangeOption{option: stripsName}, sides: rangeOption{option: sidesName},
		number: numberOption{option: "number", least: 1, most: fit.MaxNearest, example: 2},
	}
}

// Options of fit whose names are needed twice.
const (
	bedName    = "bed"
	widthName  = "width"
	heightName = "height"
	dropName   = "drop"
	stripsName = "strips"
	sidesName  = "sides"
	// sizeExample is a size that can be fitted, in inches or in centimetres.
	sizeExample = "for example --width 60 --height 80"
)

// fitCommand finds how large a layout may become.
func fitCommand(c *console) *cobra.Command {
	o := newSizing()
	cmd := &cobra.Command{
		Use:     "fit FILE",
		Short:   "how many blocks fit a bed or a size",
		GroupID: toAmend,
		Long: "Tries the layout with other strip widths, numbers of blocks and borders, and lists what comes nearest to " +
			"a bed size or to a width and a height, as finished sizes. Every suggestion is read and checked as a " +
			"layout; those with warnings, such as incomplete webs, come after those with fewer. It says what to " +
			"write, and changes nothing. Write lengths as in a layout; if one has a blank, put quotes around it.",
		Example: "eighthturn fit harbor.quilt --bed queen\n  sizes published for queen quilts\n" +
			"eighthturn fit harbor.quilt --bed twin --drop 12\n  covers the mattress, with a 12-inch drop on three sides\n" +
			"eighthturn fit harbor.quilt --size queen\n  the line that makes the layout a queen, beside what it is\n" +
			"eighthturn fit harbor.quilt --width 60 --height 80 --strips 3..5\n  60 by 80, from strips of 3 to 5 inches",
		SuggestFor: []string{"resize", "enlarge", "scale", "grow", "beds", "bed"},
		Args:       oneLayout,
		RunE:       func(cmd *cobra.Command, args []string) error { return fitLayout(c, cmd, o, args[0]) },
	}
	f := cmd.Flags()
	f.Var(&o.bed, bedName, "the `BED`: "+strings.Join(bedNames(), ", "))
	o.length(cmd, &o.drop, dropName, "with --bed: the drop at both sides and the foot, a `LENGTH`; if omitted, published quilt sizes are used")
	o.length(cmd, &o.width, widthName, "the target width, a `LENGTH`")
	o.length(cmd, &o.height, heightName, "the target height, a `LENGTH`")
	f.Var(&o.strips, stripsName, "the cut strip widths to try, a `RANGE` such as 3..6; if omitted, widths near the layout's")
	f.Var(&o.sides, sidesName, "if the layout gives the side of its blocks: the sides to try, a `RANGE`")
	o.length(cmd, &o.step, "step", "the step from one strip or side to the next, a `LENGTH`; if omitted, 1/4 in or 0.5 cm for strips, twice that for sides")
	o.length(cmd, &o.mostBorder, "max-border", "the maximum total width of the borders on one side, a `LENGTH`; 12 in or 30 cm if omitted")
	f.StringVar(&o.size, sizeName, "", "say the line of the size of this `NAME`, new or one that the layout has; the name of a bed needs no --bed")
	f.Var(&o.number, "number", "say what to write for this `NUMBER` of the list; 1 if omitted")
	o.flags(cmd)
	_ = cmd.RegisterFlagCompletionFunc(bedName, func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return bedNames(), cobra.ShellCompDirectiveNoFileComp
	})
	return cmd
}

func (o *fitOptions) length(cmd *cobra.Command, to *measureOption, name, usage string) {
	to.option = name
	cmd.Flags().Var(to, name, usage)
}

func bedNames() []string {
	return mapped(supplies.Beds(), func(b supplies.Bed) string { return b.Name })
}

// check refuses options that do not go together, before a file is read.
func (o *fitOptions) check(cmd *cobra.Command) error {
	const example = "for example --bed queen, or --width 60 --height 80"
	sized := o.width.text != "" || o.height.text != ""
	if bed, ok := supplies.FindBed(o.size); ok && o.bed.bed == nil && !sized {
		o.bed.bed = bed
	}
	switch {
	case o.size != "" && !layout.IsName(o.size):
		return misuse(cmd.CommandPath(), quoted(o.size)+" cannot name a size: names begin with a letter and continue with letters, digits, - and _", "for example --size queen")
	case o.size != "" && o.bed.bed == nil && !sized:
		return misuse(cmd.CommandPath(), "no bed is called "+quoted(o.size)+", and no size is given", "for example --size "+o.size+" --bed queen, or --size "+o.size+" --width 60 --height 80")
	case o.bed.bed == nil && !sized:
		return misuse(cmd.CommandPath(), "no bed and no size is given", example)
	case o.bed.bed != nil && sized:
		return misuse(cmd.CommandPath(), "a bed and a size are given; use only one", example)
	case sized && (o.width.text == "" || o.height.text == ""):
		return misuse(cmd.CommandPath(), "both the width and the height are needed", sizeExample)
	case o.drop.text != "" && o.bed.bed == nil:
		return misuse(cmd.CommandPath(), "--drop hangs over a bed, and none is named", "for example --bed queen --drop 12")
	case o.drop.text != "" && o.bed.bed.Mattress() == supplies.Size{}:
		return misuse(cmd.CommandPath(), o.bed.bed.Name+" has no mattress that a drop could hang over", "leave --drop out")
	case o.strips.given && o.sides.given:
		return misuse(cmd.CommandPath(), "use --strips or --sides, not both: each follows from the other", "leave out --strips or --sides")
	}
	return nil
}

func fitLayout(c *console, cmd *cobra.Command, o *fitOptions, file string) error {
	if err := cmp.Or(o.oneForm(cmd), o.check(cmd)); err != nil {
		return err
	}
	s, err := c.read(file)
	if err != nil {
		return err
	}
	l := layOut(s)
	c.report(s, l.lines, l.faults)
	if stops(l.faults, false) {
		return c.stopped(s, l.faults, "nothing is fitted")
	}
	options, err := o.options(cmd, l.design)
	if err != nil {
		return err
	}
	album := files.Beside(s.path)
	options.Read = func(text string) (*layout.Design, *layout.Source, []layout.Fault) {
		return layout.ReadWith(text, album.Cloth)
	}
	r, err := fit.Fit(s.text, options)
	if err != nil {
		return misuse(cmd.CommandPath(), err.Error(), o.hint(err, l.design))
	}
	if o.json {
		return c.printJSON(planJSON(r, formatFit, s.name, r.Units))
	}
	text, err := o.text(report.Fit(s.name, r, max(o.number.n, 1)))
	if err != nil {
		return err
	}
	return c.print(text)
}

// formatFit changes when what a name in the JSON means does.
const formatFit = 2

// options are what was asked for, in the layout's units.
func (o *fitOptions) options(cmd *cobra.Command, d *layout.Design) (fit.Options, error) {
	sizes, other := &o.strips, &o.sides
	wrong, right := "the layout gives the strip, not the side of its blocks", "for example --strips 3..6"
	if !d.StripGiven {
		sizes, other = other, sizes
		wrong, right = "the layout gives the side of its blocks, not the strip", "for example --sides 6..9"
	}
	if other.given {
		return fit.Options{}, misuse(cmd.CommandPath(), wrong, right)
	}
	if err := o.withinMost(cmd, sizes, d.Units); err != nil {
		return fit.Options{}, err
	}
	if from, to := sizes.in(d.Units); sizes.given && from > to {
		return fit.Options{}, misuse(cmd.CommandPath(), fmt.Sprintf("the range after --%s ends before it begins", sizes.option), right)
	}
	f := fit.Options{Wanted: o.wanted(d.Units), Step: o.step.in(d.Units), MaxBorder: o.mostBorder.in(d.Units)}
	f.From, f.To = sizes.in(d.Units)
	f.Nearest, f.Size = max(o.number.n, 5), o.size
	return f, nil
}

// withinMost refuses what is more than it may be in the layout's units.
func (o *fitOptions) withinMost(cmd *cobra.Command, sizes *rangeOption, s measure.System) error {
	if err := sizes.withinMost(s); err != nil {
		return misuse(cmd.CommandPath(), err.Error(), sizes.wrong("").hint)
	}
	return withinMost(cmd, s, &o.width, &o.height, &o.drop, &o.step, &o.mostBorder)
}

// hint says what to type in place of options with which nothing can be fitted.
func (o *fitOptions) hint(err error, d *layout.Design) string {
	sizes, step := []string{"--strips 3..6", "--sides 6..9"}, " --step 1/2"
	if d.Units == measure.Centimetres {
		sizes, step = []string{"--strips 8..12", "--sides 15..20"}, " --step 1"
	}
	switch {
	case !errors.As(err, new(fit.SizesError)):
		return sizeExample
	case d.StripGiven:
		return "for example " + sizes[0] + step
	}
	return "for example " + sizes[1] + step
}

// wanted is the size that is wanted; a bare number counts units of the layout.
func (o *fitOptions) wanted(s measure.System) fit.Wanted {
	switch b := o.bed.bed; {
	case b == nil:
		return fit.Wanted{Finished: supplies.Size{Width: o.width.in(s), Height: o.height.in(s)}}
	case o.drop.text != "":
		return fit.ForDrop(b, o.drop.in(s))
	default:
		return fit.ForBed(b)
	}
}

// bedOption is the value of an option that takes the name of a bed.
type bedOption struct{ bed *supplies.Bed }

func (o *bedOption) Type() string { return "bed" }

func (o *bedOption) String() string {
	if o.bed == nil {
		return ""
	}
	return o.bed.Name
}

func (o *bedOption) Set(text string) error {
	bed, ok := supplies.FindBed(text)
	if !ok {
		hint := "beds are: " + strings.Join(bedNames(), ", ")
		if near := nearest(text, bedNames()); near != "" {
			hint = didYouMean(near) + " " + hint
		}
		return &problem{message: "no bed is called " + quoted(text), hint: hint}
	}
	o.bed = bed
	return nil
}

// rangeOption is the value of an option that takes two lengths with two full stops between them, or one length; a bare
// number is in the layout's units.
type rangeOption struct {
	option   string
	given    bool
	from, to measureOption
}

func (o *rangeOption) Type() string { return "range" }

func (o *rangeOption) String() string {
	if !o.given {
		return ""
	}
	return o.from.text + ".." + o.to.text
}

func (o *rangeOption) Set(text string) error {
	first, last, two := strings.Cut(text, "..")
	if !two {
		last = first
	}
	o.from = measureOption{option: o.option, most: layout.MaxStrip}
	o.to = o.from
	if err := errors.Join(o.from.Set(first), o.to.Set(last)); err != nil {
		return o.wrong(text)
	}
	o.from.text, o.to.text, o.given = strings.TrimSpace(first), strings.TrimSpace(last), true
	return nil
}

func (o *rangeOption) wrong(text string) *problem {
	return &problem{
		message: fmt.Sprintf("after --%s: found %s, expected two lengths above 0 and up to %s with two full stops between them", o.option, quoted(text), o.from.limit()),
		hint:    fmt.Sprintf(`for example --%s 3..6 or --%s "2 1/2 in..4 in"`, o.option, o.option),
	}
}

// withinMost refuses lengths that are more than they may be, where a bare number counts units of the system.
func (o *rangeOption) withinMost(s measure.System) error {
	if o.given && (o.from.withinMost(s) != nil || o.to.withinMost(s) != nil) {
		return o.wrong(o.String())
	}
	return nil
}

// in is both lengths; 0 if the option was not given.
func (o *rangeOption) in(s measure.System) (from, to measure.NM) {
	if !o.given {
		return 0, 0
	}
	return o.from.in(s), o.to.in(s)
}
