package fit

import (
	"slices"
	"strconv"
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/layout"
)

// WrittenOut is a layout written out in one of its sizes, by name, without its sizes: what it lays is what the size lays.
// It is the layout as it is where that has errors, or no size of that name. Read reads a text of the layout; nil for
// layout.Read.
func WrittenOut(text, size string, read func(text string) (*layout.Design, *layout.Source, []layout.Fault)) string {
	f, err := newFitting(text, read)
	if err != nil {
		return text
	}
	for _, n := range f.tree.Sizes {
		if layout.FoldName(n.Name.Text) != layout.FoldName(size) {
			continue
		}
		var e edits
		counts := [2]int{f.design.Columns, f.design.Rows}
		for which, said := range [2]layout.Span{n.Across.Span, n.Down.Span} {
			if !said.Empty() {
				counts[which] = [2]int{n.Across.Count, n.Down.Count}[which]
			}
		}
		if counts != [2]int{f.design.Columns, f.design.Rows} {
			f.grows = f.tree.Growth(f.design, f.warningsBy)
			e = f.gridEdits(counts)
		}
		if n.Units != nil {
			e = e.with(f.redrafted([]*layout.LengthNode{n.Strip, n.Side}, n.Units.Word, len(n.Borders), !n.BordersAt.Empty()))
		}
		for i, length := range []*layout.LengthNode{n.Strip, n.Side} {
			if n.Units != nil {
				break
			}
			if length == nil {
				continue
			}
			own := []*layout.LengthNode{f.tree.Strip, f.tree.Side}[i]
			e = append(e, edit{own.Span, f.source(length.Span)})
			for _, r := range f.tree.Rescale(f.design, f.design.SizeOf(length)) {
				e = append(e, edit{r.Span, f.written(r.To) + r.Frame()})
			}
		}
		if n.Units != nil || n.Strip != nil || n.Side != nil {
			e = e.with(f.withoutOnHand())
		}
		if !n.BordersAt.Empty() {
			for i, b := range f.tree.Borders {
				if i < len(n.Borders) {
					e = append(e, edit{b.Width.Span, f.source(n.Borders[i].Span)})
				} else {
					e = append(e, edit{f.wholeLines(b.Span), ""})
				}
			}
		}
		return f.rewrittenFrom(f.whole, e.with(f.withoutSizes()))
	}
	return text
}

// redrafted are the lengths of the layout in other units, behind them the units, without those of borders that a size gives itself or
// leaves out.
func (f *fitting) redrafted(given []*layout.LengthNode, word string, borders int, said bool) (e edits) {
	to := measure.Inches
	if word == "cm" {
		to = measure.Centimetres
	}
	own, size := f.tree.Strip, given[0]
	if size == nil {
		own, size = f.tree.Side, given[1]
	}
	for _, r := range f.tree.Redraft(f.design, to, size) {
		border := slices.ContainsFunc(f.borderPlaces(), func(at layout.Span) bool { return at == r.Span })
		if !said || !border {
			e = append(e, edit{r.Span, measure.Written(r.To, to) + r.Frame()})
		}
	}
	e = append(e, edit{own.Span, f.source(size.Span) + f.newline() + "units " + word})
	if f.tree.Units != nil {
		e = append(e, edit{f.wholeLines(f.tree.Units.Span), ""})
	}
	return e
}

// borderPlaces are where the widths of borders are written.
func (f *fitting) borderPlaces() (list []layout.Span) {
	for _, b := range f.tree.Borders {
		list = append(list, b.Width.Span)
	}
	return list
}

// source is a stretch of the layout with its sizes.
func (f *fitting) source(at layout.Span) string { return f.whole[at.Start:at.End] }

// withoutSizes leaves the lines of the sizes out.
func (f *fitting) withoutSizes() edits {
	var e edits
	for _, n := range f.tree.Sizes {
		e = append(e, edit{f.wholeLines(n.Span), ""})
	}
	return e
}

// withoutOnHand leaves the lines of pieces on hand out, which are of the size that is written.
func (f *fitting) withoutOnHand() edits {
	var e edits
	for _, n := range f.tree.OnHand {
		e = append(e, edit{f.wholeLines(n.Span), ""})
	}
	return e
}

// blanked is a layout with blanks in the place of its sizes, which are for the layout as it is written.
func blanked(text string, tree *layout.Tree) string {
	b := []byte(text)
	for _, n := range tree.Sizes {
		for i := n.Start; i < n.End; i++ {
			b[i] = ' '
		}
	}
	return string(b)
}

// finished is the whole layout with edits. Sizes stay where they can be had from it, and are left out where not.
func (f *fitting) finished(e edits) (string, edits) {
	text := f.rewrittenFrom(f.whole, e)
	if len(f.tree.Sizes) == 0 {
		return text, e
	}
	if design, _, _ := f.Read(text); design != nil {
		return text, e
	}
	e = e.with(f.withoutSizes())
	return f.rewrittenFrom(f.whole, e), e
}

// sizeLine is a suggestion as a size of the layout.
func (f *fitting) sizeLine(s *Suggestion) string {
	words := []string{"size", f.sizeName()}
	if s.Columns != f.design.Columns {
		words = append(words, "across", strconv.Itoa(s.Columns))
	}
	if s.Rows != f.design.Rows {
		words = append(words, "down", strconv.Itoa(s.Rows))
	}
	if f.design.StripGiven && s.StripCut != f.ownSize() {
		words = append(words, "strip", f.written(s.StripCut))
	} else if !f.design.StripGiven && s.SideFinished != f.ownSize() {
		words = append(words, "side", f.written(s.SideFinished))
	}
	if !slices.Equal(s.BordersFinished, f.bordersNow()) {
		words = append(words, "border")
		units := slices.ContainsFunc(s.BordersFinished, func(nm measure.NM) bool { return nm < f.design.Units.Unit() }) // 1 1/2 is one width
		for _, width := range s.BordersFinished {
			text := f.written(width)
			if units && text == measure.Number(width, f.design.Units) {
				text = measure.Text(width, f.design.Units)
			}
			words = append(words, text)
		}
		if len(s.BordersFinished) == 0 {
			words = append(words, "none")
		}
	}
	return strings.Join(words, " ")
}

// sizeEdit puts a line in the place of the size that it is for, or behind all lines.
func (f *fitting) sizeEdit(line string) edits {
	for _, n := range f.tree.Sizes {
		if layout.FoldName(n.Name.Text) == layout.FoldName(f.Size) {
			return edits{{n.Span, line}}
		}
	}
	end := len(strings.TrimRight(f.whole, " \t\r\n"))
	return edits{{layout.Span{Start: end, End: end}, f.newline() + line}}
}

// sizeName is a name for another size: the bed's, if it has none of that name yet.
func (f *fitting) sizeName() string {
	if f.Size != "" {
		return f.Size
	}
	name := strings.ReplaceAll(f.Wanted.Bed, " ", "-")
	if name == "" {
		name = "fitted"
	}
	known := func(name string) bool { return f.design.InSize(name) != nil }
	numbered := name
	for i := 2; known(numbered); i++ {
		numbered = name + "-" + strconv.Itoa(i)
	}
	return numbered
}
