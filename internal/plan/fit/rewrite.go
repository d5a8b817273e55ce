package fit

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/layout"
)

// Change is lines of the layout that become others.
type Change struct {
	First int    `json:"first_line"` // from 1
	Last  int    `json:"last_line"`
	Was   string `json:"was"`   // without the last line's end
	Write string `json:"write"` // the same with the change; "" where the lines are left out
}

// edit puts a text in the place of a stretch of the layout.
type edit struct {
	layout.Span
	text string
}

// edits are some that do not overlap.
type edits []edit

func (e edits) with(more edits) edits { return append(slices.Clone(e), more...) }

func (e edits) sorted() edits {
	list := slices.Clone(e)
	slices.SortStableFunc(list, func(a, b edit) int { return cmp.Compare(a.Start, b.Start) })
	return list
}

// rewritten is the layout with edits.
func (f *fitting) rewritten(e edits) string {
	return f.rewrittenFrom(f.text, e)
}

// rewrittenFrom is a text with the layout's places, with edits.
func (f *fitting) rewrittenFrom(text string, e edits) string {
	return stretch(text, layout.Span{Start: 0, End: len(text)}, e.sorted())
}

// stretch is a stretch of a text with sorted edits that lie in it.
func stretch(text string, s layout.Span, sorted edits) string {
	var b strings.Builder
	at := s.Start
	for _, one := range sorted {
		b.WriteString(text[at:one.Start])
		b.WriteString(one.text)
		at = one.End
	}
	b.WriteString(text[at:s.End])
	return b.String()
}

// changes are edits by the lines that they are in.
func (f *fitting) changes(e edits) []Change {
	var list []Change
	sorted := e.sorted()
	for len(sorted) > 0 {
		span, n := f.wholeLines(sorted[0].Span), 1
		for n < len(sorted) && f.wholeLines(sorted[n].Span).Start < span.End {
			span = span.To(f.wholeLines(sorted[n].Span))
			n++
		}
		last := f.lines.Line(max(span.Start, span.End-1))
		was := layout.Span{Start: span.Start, End: f.lines.LineSpan(last).End}
		list = append(list, Change{First: f.lines.Line(span.Start), Last: last, Was: f.source(was), Write: strings.TrimRight(stretch(f.whole, span, sorted[:n]), layout.LineEnds)})
		sorted = sorted[n:]
	}
	return list
}

// wholeLines is the lines that a stretch lies in, with the last one's end.
func (f *fitting) wholeLines(s layout.Span) layout.Span {
	last := f.lines.Line(max(s.Start, s.End-1))
	return layout.Span{Start: f.lines.LineSpan(f.lines.Line(s.Start)).Start, End: f.lines.LineSpan(last + 1).Start}
}

// newline is how the layout ends its lines.
func (f *fitting) newline() string {
	switch {
	case strings.Contains(f.text, "\r\n"):
		return "\r\n"
	case strings.Contains(f.text, "\n") || !strings.Contains(f.text, "\r"):
		return "\n"
	}
	return "\r"
}

// written is a length as the layout would write it, to the last nanometre.
func (f *fitting) written(nm measure.NM) string {
	text := measure.Number(nm, f.design.Units)
	if r, err := measure.Read(text); err == nil && r.In(f.design.Units).Cmp(measure.Of(nm)) == 0 {
		return text
	}
	return fmt.Sprintf("%d.%06d mm", nm/measure.Millimetre, nm%measure.Millimetre)
}

// withoutBorders leaves the lines of the borders out.
func (f *fitting) withoutBorders() edits {
	var e edits
	for _, b := range f.tree.Borders {
		e = append(e, edit{f.wholeLines(b.Span), ""})
	}
	return e
}

// borderEdits are the borders with other widths, as many as there are.
func (f *fitting) borderEdits(widths []measure.NM) edits {
	var e edits
	for i, b := range f.tree.Borders {
		if widths[i] != f.design.Borders[i].Width {
			e = append(e, edit{b.Width.Span, f.written(widths[i])})
		}
	}
	return e
}
