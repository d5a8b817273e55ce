// Package fit turns a wanted size into the layouts that come nearest: for each strip of a range, or side of a block where
// the layout gives that, how many blocks across and down, and with which borders.
//
// Every suggestion is a whole layout that was read again, so that its size and its warnings are the tool's own; the nearest
// few are laid out too. What is weighed:
//
//   - A grid grows by what it shows already. Rows that a `repeat` lays are laid more or less often. Elsewhere the longest
//     stretch of rows or columns that comes back with a period grows by whole periods, and what lies outside it stays as a
//     frame; such a stretch takes up half the grid or more. A grid without one is repeated whole, its last row shared with
//     the next first one where the two are alike.
//   - Counts that bring warnings are passed over where others bring fewer. Floating webs and stars want even counts, and
//     this is how they get them: nothing here knows a kind. In a grid of webs and stars an odd number of blocks weighs as
//     much as two inches of the size besides, since the four corners of the quilt are alike only where both counts are even.
//   - Borders are tried as written, scaled, and left out. Scaled ones are as wide together as brings the size nearest, each
//     on a quarter of an inch or half a centimetre, in proportion, the widest taking what is left over. A border that is
//     wider or narrower by an inch weighs as much as a quarter of an inch of the size.
//   - Distance is what the top is off across and down, added up, the worse of the two counted twice.
//   - With another strip, widths in strip sets, lines of a wedge rule and lengths of pieces are scaled with the block and
//     rounded to marks; in a strip set the widest strip takes what is left. Sashes stay as they are.
package fit

import (
	"errors"
	"fmt"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/supplies"
	"eighthturn/layout"
)

// Limits, checked before anything is tried.
const (
	maxSizes   = 100             // strips or sides in a range
	MaxNearest = 50              // suggestions that are laid out
	maxBlocks  = layout.MaxGrown // of a suggestion: more than a king's quilt of one-inch blocks
)

// Options say what is wanted.
type Options struct {
	Wanted    Wanted     `json:"wanted"`
	From, To  measure.NM // cut strips, or finished sides where the layout gives its side; default: round the layout's own, as far as limits let them; of a size of the layout its own
	Step      measure.NM // between two of them; default 1/4 in, 0.5 cm for strips, 1/2 in, 1 cm for sides
	MaxBorder measure.NM // of all borders along one side of the top together, where they are scaled; default 12 in, 30 cm
	Nearest   int        // how many suggestions are laid out for what only then shows; default 5
	Size      string     `json:"size,omitempty"` // of the layout, one that it has or a new one: what to write is its line; "" to change the layout itself
	// Read reads a text of the layout, as for one that names photos; default layout.Read.
	Read func(text string) (*layout.Design, *layout.Source, []layout.Fault)
}

// Wanted is a size of the finished top.
type Wanted struct {
	Finished supplies.Size `json:"finished"`
	// Least and Most are between what the size is good as well; the zero sizes if only Finished is.
	Least supplies.Size `json:"-"`
	Most  supplies.Size `json:"-"`
	// Of a size for a bed:
	Bed   string               `json:"bed,omitempty"`
	Drop  measure.NM           `json:"drop,omitempty"`  // how far it hangs over at both sides and the foot; 0 where lists of quilts say the size
	Lists []supplies.Published `json:"lists,omitempty"` // of quilts, or of mattresses where there is a drop
}

// ForBed is what lists publish for a bed, and between them the middle.
func ForBed(b *supplies.Bed) Wanted {
	w := Wanted{Finished: b.Quilt(), Bed: b.Name, Lists: b.Quilts}
	w.Least, w.Most = b.Spread()
	return w
}

// ForDrop is a bed's mattress with a drop at both sides and the foot.
func ForDrop(b *supplies.Bed, drop measure.NM) Wanted {
	return Wanted{Finished: b.Covered(drop, 0), Bed: b.Name, Drop: drop, Lists: b.Mattresses}
}

// holds says whether a size lies between the least and the most.
func (w *Wanted) holds(s supplies.Size) bool {
	return s.Width >= w.Least.Width && s.Height >= w.Least.Height && s.Width <= w.Most.Width && s.Height <= w.Most.Height
}

// Report is what comes near.
type Report struct {
	Options                    // as they were filled in
	Units       measure.System // the layout's
	ByStrip     bool           // strips were tried, not sides
	Now         Suggestion     `json:"now"` // the layout as it is, with nothing to change
	Across      Growth         `json:"across"`
	Down        Growth         `json:"down"`
	Suggestions []Suggestion   `json:"suggestions"` // the best first; for a strip or a side one for each sort of borders at the most
	SizeKnown   bool           // the layout has the size that was named
	LaidOut     int            // so many of the first were laid out
	Refused     []Refusal      `json:"refused"` // strips or sides for which nothing reads without a fault, in their order
}

// Suggestion is a layout that comes near.
type Suggestion struct {
	StripCut        measure.NM    `json:"strip_cut,omitempty"` // 0 where the layout gives the side
	SideFinished    measure.NM    `json:"side_finished"`       // of a block
	Columns         int           `json:"blocks_across"`
	Rows            int           `json:"blocks_down"`
	Borders         Borders       `json:"borders"`
	BordersFinished []measure.NM  `json:"borders_finished"` // from the inside out
	Finished        supplies.Size `json:"top_finished"`
	Over            supplies.Size `json:"over"`          // how much more than wanted; below 0, less
	Within          bool          `json:"within_lists"`  // between the least and the most that were wanted
	Warnings        []string      `json:"new_warnings"`  // those that the layout does not have now
	MoreWarnings    int           `json:"more_warnings"` // than the layout has now; below 0, fewer
	Changes         []Change      `json:"changes"`       // what to write, in the order of the layout
	SizeLine        string        `json:"size_line"`     // what to write for it as a size of the layout, beside what it is
	Text            string        // the whole layout with the changes
}

// Refusal is a strip or a side that the layout does not take.
type Refusal struct {
	Size    measure.NM `json:"size"`    // cut strip or finished side
	Message string     `json:"message"` // the first fault
}

// Borders is what a suggestion does with the borders.
type Borders string

const (
	AsWritten Borders = "as written" // kept, or there are none
	Scaled    Borders = "scaled"
	LeftOut   Borders = "omitted"
)

// errFaulty says that the layout itself cannot be read.
var errFaulty = errors.New("the layout has errors")

// SizesError says that From, To and Step ask for no sizes, or for some that cannot be.
type SizesError struct{ error }

func sizesError(format string, args ...any) error { return SizesError{fmt.Errorf(format, args...)} }

// Fit finds the layouts that come nearest. Of a layout with errors the error is errFaulty; every other error is about the
// options, and the report is nil.
func Fit(text string, o Options) (*Report, error) {
	f, err := newFitting(text, o.Read)
	if err != nil {
		return nil, err
	}
	for _, n := range f.tree.Sizes {
		if n.Units != nil && layout.FoldName(n.Name.Text) == layout.FoldName(o.Size) {
			return nil, fmt.Errorf("the size %s is in units of its own; sizes in the layout's units are fitted", n.Name.Text)
		}
	}
	if err := f.fill(&o); err != nil {
		return nil, err
	}
	o.Read = f.Read
	f.Options = o
	f.plan()
	r := &Report{SizeKnown: o.Size != "" && f.design.InSize(o.Size) != nil, Options: o, Units: f.design.Units, ByStrip: f.design.StripGiven, Now: f.now(), Across: f.growth(across), Down: f.growth(down)}
	for _, size := range f.sizes() {
		list, refused := f.suggest(size)
		r.Suggestions = append(r.Suggestions, list...)
		if len(list) == 0 {
			r.Refused = append(r.Refused, Refusal{size, refused})
		}
	}
	f.rank(r.Suggestions)
	r.LaidOut = min(o.Nearest, len(r.Suggestions))
	f.layOut(r.Suggestions[:r.LaidOut])
	f.rank(r.Suggestions[:r.LaidOut])
	return r, nil
}

// usual is a length, or where it is 0 the usual one of the layout's units.
func (f *fitting) usual(nm, inches, metric measure.NM) measure.NM {
	switch {
	case nm != 0:
		return nm
	case f.design.Units == measure.Centimetres:
		return metric
	}
	return inches
}

// fill puts in what was left out and refuses what cannot be.
func (f *fitting) fill(o *Options) error {
	step, reach := f.usual(0, measure.Inch/4, measure.Centimetre/2), f.usual(0, measure.Inch, 2*measure.Centimetre)
	if !f.design.StripGiven {
		step, reach = 2*step, 2*reach
	}
	if o.Step == 0 {
		o.Step = step
	}
	switch {
	case o.From != 0 || o.To != 0:
	case o.Size != "": // sizes of a pattern have one block, and so the same templates
		o.From, o.To = f.ownSize(), f.ownSize()
	default:
		o.From = min(max(measure.RoundUp(f.ownSize()-reach, step), f.leastSize(step)), f.ownSize())
		o.To = min(measure.RoundUp(f.ownSize()+reach-step+1, step), layout.MaxStrip)
	}
	o.MaxBorder = f.usual(o.MaxBorder, 12*measure.Inch, 30*measure.Centimetre)
	if o.Nearest == 0 {
		o.Nearest = 5
	}
	return f.check(o)
}

// leastSize is the least strip or side that leaves something between its seams, on a step.
func (f *fitting) leastSize(step measure.NM) measure.NM {
	if f.design.StripGiven {
		return measure.RoundUp(4*f.design.Seam, step)
	}
	return measure.RoundUp(layout.MinSide, step)
}

// check refuses what cannot be.
func (f *fitting) check(o *Options) error {
	text := func(nm measure.NM) string { return measure.Text(nm, f.design.Units) }
	w := o.Wanted.Finished
	switch {
	case w.Width < measure.Inch || w.Height < measure.Inch:
		return fmt.Errorf("a top of %s by %s is wanted, but a side must be %s or more", text(w.Width), text(w.Height), text(measure.Inch))
	case w.Width > layout.MaxTop || w.Height > layout.MaxTop:
		return fmt.Errorf("a top of %s by %s is wanted, but a side must be %s or less", text(w.Width), text(w.Height), text(layout.MaxTop))
	case o.From <= 0 || o.To < o.From:
		return sizesError("sizes from %s to %s are none", text(o.From), text(o.To))
	case o.To > layout.MaxStrip:
		return sizesError("sizes up to %s are asked for; the limit is %s", text(o.To), text(layout.MaxStrip))
	case o.Step <= 0 || (o.To-o.From)/o.Step >= maxSizes:
		return sizesError("from %s to %s by %s are more than %d sizes", text(o.From), text(o.To), text(o.Step), maxSizes)
	case o.MaxBorder < 0 || o.MaxBorder > layout.MaxSide:
		return fmt.Errorf("borders of up to %s are asked for; the limit is %s", text(o.MaxBorder), text(layout.MaxSide))
	case o.Nearest < 0 || o.Nearest > MaxNearest:
		return fmt.Errorf("%d suggestions are to be laid out; the limit is %d", o.Nearest, MaxNearest)
	}
	return nil
}

// sizes are the strips or sides that are tried, the layout's own among them where it lies between the ends.
func (f *fitting) sizes() []measure.NM {
	var list []measure.NM
	own := f.ownSize()
	for size := f.From; size <= f.To; size += f.Step {
		list = append(list, size)
		if size < own && own < min(size+f.Step, f.To+1) {
			list = append(list, own)
		}
	}
	return list
}
