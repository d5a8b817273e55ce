// Package audition turns alternatives for one place of a layout into a plan of how each of them reads, laid out as far as need be.
package audition

import (
	"slices"

	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/quilt"
	"eighthturn/internal/stop"
	"eighthturn/layout"
)

// Plan is the alternatives, in the order in which they are shown.
type Plan struct {
	Title        string        `json:"title"`
	Role         string        `json:"role"`         // as asked for
	Of           string        `json:"of,omitempty"` // the block, the pool or the border's number
	Sorted       bool          `json:"sorted"`       // those that read better come first
	Alternatives []Alternative `json:"alternatives"`
}

// Alternative is one of them.
type Alternative struct {
	Name    string            `json:"name"`
	Number  int               `json:"number"` // as asked for, from 1
	Lines   []string          `json:"lines"`  // to write into the layout
	Figures []contrast.Figure `json:"figures"`
	Losses  []contrast.Loss   `json:"losses"`
	Bound   bool              `json:"-"` // the last border of the top is its binding
	Study   *contrast.Report  `json:"-"` // without pairs, marks and changes
	Top     *quilt.Top        `json:"-"`
}

// Options of a plan; the zero value keeps the order and studies as usual.
type Options struct {
	Sorted   bool
	Contrast contrast.Options
	Sign     *stop.Sign                                       // ends the work; nil for never
	Colorway func(*stop.Sign, *quilt.Top) (*quilt.Top, error) // that the top is in, for trials that are laid out anew; nil for the quilt as it is written
}

// Wrong is an alternative with which the layout has errors.
type Wrong struct {
	Alternative string
	Fault       layout.Fault
}

func (w *Wrong) Error() string { return w.Fault.Message }

// Build lays out and studies every trial. A trial that differs from the layout only in a fabric's color is the top in other fabrics. The error is a *Wrong, or one of Options.Colorway.
func Build(top *quilt.Top, trials []layout.Trial, read func(text string) (*layout.Design, []layout.Fault), o Options) (*Plan, error) {
	p := &Plan{Title: top.Title, Sorted: o.Sorted}
	p.Alternatives = make([]Alternative, len(trials))
	errs := make([]error, len(trials))
	again := &contrast.Again{Options: o.Contrast}
	one := func(i int, sign *stop.Sign) *contrast.Again {
		trial, own, with := &trials[i], *again, o
		own.Sign, with.Sign = sign, sign
		t, err := Laid(top, trial, read, with)
		if err != nil {
			errs[i] = err
			return &own
		}
		study := own.Of(t)
		p.Alternatives[i] = Alternative{
			Name: trial.Name, Number: i + 1, Lines: trial.Lines, Figures: study.Figures, Losses: study.Losses, Bound: trial.Bound, Study: study, Top: t,
		}
		return &own
	}
	if len(trials) > 0 {
		again.First(one(0, o.Sign)) // others in other colors begin with what it found
		o.Sign.Beside(len(trials)-1, func(i int, sign *stop.Sign) { one(i+1, sign) })
	}
	if i := slices.IndexFunc(errs, func(err error) bool { return err != nil }); i >= 0 {
		return nil, errs[i]
	}
	if o.Sorted {
		slices.SortStableFunc(p.Alternatives, better)
	}
	return p, nil
}

func better(a, b Alternative) int { return contrast.Better(a.Study, b.Study) }

// Ranks are the places that the alternatives have when those that read better come first, from 0.
func (p *Plan) Ranks() []int {
	sorted := slices.Clone(p.Alternatives)
	slices.SortStableFunc(sorted, better)
	ranks := make([]int, len(sorted))
	for i := range p.Alternatives {
		ranks[i] = slices.IndexFunc(sorted, func(a Alternative) bool { return a.Number == p.Alternatives[i].Number })
	}
	return ranks
}

// Laid is the top of a trial: where that is no more than a fabric in another color, the top in that. The errors are those of Build.
func Laid(top *quilt.Top, trial *layout.Trial, read func(text string) (*layout.Design, []layout.Fault), o Options) (*quilt.Top, error) {
	if trial.Try != "" {
		try, err := contrast.ParseTry(top, trial.Try)
		return contrast.Tried(top, []contrast.Try{try}), err
	}
	design, faults := read(trial.Text)
	if design == nil {
		for _, f := range faults {
			if f.Severity == layout.Error {
				return nil, &Wrong{trial.Name, f}
			}
		}
	}
	if trial.Bound {
		design = bound(design)
	}
	t := quilt.LayUntil(o.Sign, design)
	if o.Colorway == nil {
		return t, nil
	}
	return o.Colorway(o.Sign, t)
}

// bound is a design with its binding as one more border, as wide as it is seen: it covers the seam allowance of the top. Common practice.
func bound(d *layout.Design) *layout.Design {
	made := *d
	made.Borders = append(slices.Clone(d.Borders), layout.Edging{Width: d.Seam, Fabric: d.Binding.Fabric, Corners: -1, Span: d.Binding.Span})
	made.Sizes = slices.Clone(d.Sizes)
	for i := range made.Sizes {
		made.Sizes[i].Design = bound(made.Sizes[i].Design)
	}
	return &made
}
