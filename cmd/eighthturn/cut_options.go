package main

import (
	"errors"
	"fmt"
	"github.com/spf13/cobra"
	"io"
	"sync"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
)

// cutOptions is how a quilt is cut, for all commands that say something of it.
type cutOptions struct {
	copies            int
	quarters          bool
	squareUp, spare   measureOption
	trimmed, exact    measureOption
	cornersByCustom   bool
	straightLongEdges bool
	leastCloth        bool
	diagonalBorders   bool
}

const quartersName = "quarters"

// addCloth adds the options that say how cloth is bought and joined.
func (o *cutOptions) addCloth(cmd *cobra.Command) {
	o.squareUp, o.spare = measureOption{most: cutting.MaxExtra, example: "1 in", orNone: true}, measureOption{most: cutting.MaxExtra, example: "1/4 yd", orNone: true}
	f := cmd.Flags()
	f.BoolVar(&o.quarters, quartersName, false, "round yardage up to quarter yards, not eighths")
	length(cmd, &o.squareUp, "square-up", "add this `LENGTH` to each fabric for squaring up, or none; if omitted, what the layout says, or 2 in or 5 cm")
	length(cmd, &o.spare, "spare", "add this `LENGTH` to each fabric as insurance against cutting errors, or none; if omitted, what the layout says, or one more of its widest strip, up to 9 in or 25 cm")
	f.BoolVar(&o.leastCloth, "least-cloth", false, "save fabric: piece borders and binding from strip ends, cut narrower strips from ends, with nothing extra to measure by")
	f.BoolVar(&o.diagonalBorders, "diagonal-borders", false, "join border strips with diagonal seams, not straight seams")
}

// addPieces adds the options that say how pieces are cut.
func (o *cutOptions) addPieces(cmd *cobra.Command) {
	o.trimmed, o.exact = measureOption{most: cutting.MaxStep, example: "1/2 in"}, measureOption{most: cutting.MaxStep, example: "1/4 in"}
	length(cmd, &o.trimmed, "trim-step", "round oversize pieces (trimmed after sewing) up to a multiple of this `LENGTH`; 1/4 in or 0.5 cm if omitted")
	length(cmd, &o.exact, "exact-step", "round triangles that are not trimmed up to a multiple of this `LENGTH`; 1/8 in or 0.1 cm if omitted")
	cmd.Flags().BoolVar(&o.cornersByCustom, "corners-by-custom", false, "cut corner triangles from generous squares (the kite squares), with more to trim")
	cmd.Flags().BoolVar(&o.straightLongEdges, "straight-long-edges", false, "cut triangles from squares cut twice on the diagonal, with the long edge on the straight grain")
}

func length(cmd *cobra.Command, to *measureOption, name, usage string) {
	to.option = name
	cmd.Flags().Var(to, name, usage)
}

// of is the options of a top's plan; bare numbers count the layout's units. What has no part in them, or is more than it may
// be, is refused.
func (o *cutOptions) of(cmd *cobra.Command, top *quilt.Top) (cutting.Options, error) {
	u := top.Units
	if o.quarters && u == measure.Centimetres {
		return cutting.Options{}, misuse(cmd.CommandPath(), "--"+quartersName+" rounds yards, but the layout is in centimeters, and fabric is bought by tenths of a meter", "leave --"+quartersName+" out")
	}
	if err := withinMost(cmd, u, &o.squareUp, &o.spare, &o.trimmed, &o.exact); err != nil {
		return cutting.Options{}, err
	}
	options := cutting.Options{
		Copies: o.copies, Quarters: o.quarters, SquareUp: o.squareUp.in(u), Spare: o.spare.in(u),
		NoSquareUp: o.squareUp.none, NoSpare: o.spare.none, LeastCloth: o.leastCloth,
		CornersByCustom: o.cornersByCustom, LongEdgesStraight: o.straightLongEdges, DiagonalBorders: o.diagonalBorders,
	}
	options.Steps.Trimmed, options.Steps.Exact = o.trimmed.in(u), o.exact.in(u)
	if err := options.Check(u); err != nil {
		return options, misuse(cmd.CommandPath(), err.Error(), seeHelp(cmd.CommandPath()))
	}
	return options, nil
}

// onPage is the options for a top that may be another at the next save: where they do not go with its units, those that do. It hands
// on what a command would refuse them for.
func (o cutOptions) onPage(cmd *cobra.Command, top *quilt.Top, dropped func(error)) cutting.Options {
	options, err := o.of(cmd, top)
	if err != nil && o.quarters && top.Units != measure.Inches {
		dropped(err)
		o.quarters = false
		options, err = o.of(cmd, top)
	}
	if err != nil {
		dropped(err)
		return cutting.Options{}
	}
	return options
}

// notesOnce writes what options of the page are dropped for, each sentence once, whoever asks for how many saves.
type notesOnce struct {
	sync.Mutex
	to   io.Writer
	said map[string]bool
}

func (n *notesOnce) say(err error) {
	n.Lock()
	defer n.Unlock()
	var p *problem
	text := err.Error()
	if errors.As(err, &p) {
		text = p.message
	}
	if n.said[text] {
		return
	}
	if n.said == nil {
		n.said = map[string]bool{}
	}
	n.said[text] = true
	fmt.Fprintf(n.to, "note: %s; the option is not used\n", text)
}
