package fit

import (
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/supplies"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// fitting is a layout that is fitted to a size.
type fitting struct {
	Options
	whole    string         // the layout
	text     string         // the same with blanks in the place of its sizes
	lines    *layout.Source // of the layout
	tree     *layout.Tree
	design   *layout.Design
	warned   [2][]string // what the layout warns of now, with its borders and without
	grows    *layout.Growth
	parities [2][2]int // by parity of the columns and of the rows, how many warnings such grids bring; noWay where they cannot be read
}

// Axes.
const (
	across = layout.Across
	down   = layout.Down
)

// noWay is more warnings than any layout has.
const noWay = 1 << 30

// newFitting reads a layout.
func newFitting(text string, read func(string) (*layout.Design, *layout.Source, []layout.Fault)) (*fitting, error) {
	if read == nil {
		read = layout.Read
	}
	design, source, faults := read(text)
	if design == nil {
		return nil, errFaulty
	}
	tree, _ := layout.Parse(source)
	f := &fitting{whole: text, text: blanked(text, tree), lines: source, tree: tree, design: design}
	f.Read = read
	if len(tree.Sizes) > 0 {
		_, _, faults = f.Read(f.text)
	}
	f.warned[0] = messages(faults)
	if len(design.Borders) > 0 {
		_, _, faults = f.Read(f.rewritten(edits{}.with(f.withoutBorders())))
		f.warned[1] = messages(faults)
	}
	return f, nil
}

func messages(list []layout.Fault) []string {
	var texts []string
	for i := range list {
		texts = append(texts, list[i].Message)
	}
	return texts
}

// warnedNow is what the layout warns of by itself, with the same sort of borders.
func (f *fitting) warnedNow(b Borders) []string {
	if b == LeftOut {
		return f.warned[1]
	}
	return f.warned[0]
}

// ownSize is the strip or the side that the layout gives.
func (f *fitting) ownSize() measure.NM { return f.design.OwnSize() }

// side is the finished side of a block for a strip or a side.
func (f *fitting) side(size measure.NM) measure.NM { return f.design.SideOf(size) }

// field is what so many blocks measure, with the sashes.
func (f *fitting) field(blocks int, side measure.NM) measure.NM {
	length := measure.NM(blocks) * side
	if s := f.design.Sash; s != nil {
		sashes := blocks - 1
		if s.Around {
			sashes += 2
		}
		length += measure.NM(sashes) * s.Width
	}
	return length
}

// bordersNow are the widths of the borders as they are written.
func (f *fitting) bordersNow() []measure.NM {
	var list []measure.NM
	for _, b := range f.design.Borders {
		list = append(list, b.Width)
	}
	return list
}

func sum(list []measure.NM) measure.NM {
	var total measure.NM
	for _, nm := range list {
		total += nm
	}
	return total
}

// now is the layout as a suggestion that changes nothing.
func (f *fitting) now() Suggestion {
	if f.Size != "" {
		if size := f.design.InSize(f.Size); size != nil {
			return f.sizeNow(size)
		}
	}
	s := Suggestion{SideFinished: f.design.SideFinished, Columns: f.design.Columns, Rows: f.design.Rows, BordersFinished: f.bordersNow(), Text: f.whole}
	if f.design.StripGiven {
		s.StripCut = f.ownSize()
	}
	f.measureUp(&s)
	return s
}

// sizeNow is a size of the layout as a suggestion that changes nothing.
func (f *fitting) sizeNow(d *layout.Design) Suggestion {
	s := Suggestion{SideFinished: d.SideFinished, Columns: d.Columns, Rows: d.Rows, Text: f.whole}
	for _, b := range d.Borders {
		s.BordersFinished = append(s.BordersFinished, b.Width)
	}
	if d.StripGiven {
		s.StripCut = d.OwnSize()
	}
	f.measureUp(&s)
	return s
}

// measureUp sets the size of a suggestion and how far it is off.
func (f *fitting) measureUp(s *Suggestion) {
	edge := 2 * sum(s.BordersFinished)
	s.Finished = supplies.Size{Width: f.field(s.Columns, s.SideFinished) + edge, Height: f.field(s.Rows, s.SideFinished) + edge}
	w := f.Wanted.Finished
	s.Over = supplies.Size{Width: s.Finished.Width - w.Width, Height: s.Finished.Height - w.Height}
	s.Within = f.Wanted.holds(s.Finished)
}

// layOut lays suggestions out, for the warnings that only then show.
func (f *fitting) layOut(list []Suggestion) {
	before := messages(quilt.Lay(f.design).Warnings)
	for i := range list {
		s := &list[i]
		design, _, _ := f.Read(s.Text) // as every suggestion was before
		if f.Size != "" {
			design = design.InSize(f.Size)
		}
		warnings := messages(quilt.Lay(design).Warnings)
		s.MoreWarnings += len(warnings) - len(before)
		s.Warnings = append(s.Warnings, added(warnings, before)...)
	}
}

// added are the texts that were not there before.
func added(texts, before []string) []string {
	return slices.DeleteFunc(slices.Clone(texts), func(t string) bool { return slices.Contains(before, t) })
}
