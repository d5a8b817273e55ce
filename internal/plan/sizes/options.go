package sizes

import (
	"fmt"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// Options say which rows a chart has. Of the zero value every chart makes rows of its own, in inches.
type Options struct {
	Units       measure.System // how lengths are rounded, and what the defaults below are
	From        measure.NM     // the first row; default: the chart's own
	To          measure.NM     // the last row, if a step falls on it; default: the chart's own
	Step        measure.NM     // from row to row; default: the chart's own
	Seam        measure.NM     `json:"seam_allowance"`      // seam allowance; default 1/4 in, 0.75 cm
	UsableWidth measure.NM     `json:"usable_width"`        // of the cloth between its selvages; default 40 in, 100 cm
	StripCut    measure.NM     `json:"strip_cut,omitempty"` // of Tumblers alone: cut width of the strip; default 5 in, 12 cm
}

// Limits, checked before rows are made.
const (
	maxRows   = 500
	MaxSeam   = measure.Inch
	MaxLength = blocks.MaxCut // of strips, sides and lines
	MaxCloth  = 400 * measure.Inch
)

// RowsError says that no chart has the rows that From, To and Step ask for.
type RowsError struct{ error }

// rows is the rows that a chart has where the options do not say.
type rows struct{ from, to, step measure.NM }

// Near is how far a side may be off and still count as right: a sixty-fourth of an inch, finer than cloth can be cut.
const Near = measure.Inch / 64

// filled is the options with their defaults. Every length is above 0 and within its limit, and there are no more than
// MaxRows rows, else the error says what is wrong in a sentence.
func (o Options) filled(what string, own rows) (Options, error) {
	for _, d := range []struct{ to, value *measure.NM }{
		{&o.From, &own.from}, {&o.To, &own.to}, {&o.Step, &own.step},
	} {
		if *d.to == 0 {
			*d.to = *d.value
		}
	}
	for _, l := range []struct {
		name        string
		value, most measure.NM
	}{
		{"the first " + what, o.From, MaxLength}, {"the last " + what, o.To, MaxLength}, {"the step", o.Step, MaxLength},
		{"the seam allowance", o.Seam, MaxSeam}, {"the usable width", o.UsableWidth, MaxCloth}, {"the strip", o.StripCut, MaxLength},
	} {
		if l.value <= 0 || l.value > l.most {
			return o, fmt.Errorf("%s is %s, expected more than 0 and up to %s", l.name, o.text(l.value), o.text(l.most))
		}
	}
	switch {
	case o.To < o.From:
		return o, RowsError{fmt.Errorf("the last %s, %s, is less than the first, %s", what, o.text(o.To), o.text(o.From))}
	case (o.To-o.From)/o.Step >= maxRows:
		return o, RowsError{fmt.Errorf("the step from %s to %s is so small that it makes %d rows; the limit is %d", o.text(o.From), o.text(o.To), (o.To-o.From)/o.Step+1, maxRows)}
	}
	return o, nil
}

// withCloth is the options with the defaults that no chart has of its own.
func (o Options) withCloth() Options {
	seam, usable, strip := measure.Inch/4, 40*measure.Inch, 5*measure.Inch
	if o.Units == measure.Centimetres {
		seam, usable, strip = 3*measure.Centimetre/4, 100*measure.Centimetre, 12*measure.Centimetre
	}
	for _, d := range []struct {
		to    *measure.NM
		value measure.NM
	}{{&o.Seam, seam}, {&o.UsableWidth, usable}, {&o.StripCut, strip}} {
		if *d.to == 0 {
			*d.to = d.value
		}
	}
	return o
}

func (o *Options) text(nm measure.NM) string { return measure.Text(nm, o.Units) }

// over is every row's length, the first one first.
func (o *Options) over() []measure.NM {
	var list []measure.NM
	for at := o.From; at <= o.To; at += o.Step {
		list = append(list, at)
	}
	return list
}
