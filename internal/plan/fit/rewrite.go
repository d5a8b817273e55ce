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
		was, write := f.source(span), stretch(f.whole, span, sorted[:n])
		c := Change{First: 1 + f.lineEnds(f.text[:span.Start]), Was: strings.TrimRight(was, "\r\n"), Write: strings.TrimRight(write, "\r\n")}
		c.Last = c.First + f.lineEnds(c.Was)
		list = append(list, c)
		sorted = sorted[n:]
	}
	return list
}

// wholeLines is the lines that a stretch lies in, with the last one's end.
func (f *fitting) wholeLines(s layout.Span) layout.Span {
	start := strings.LastIndexAny(f.text[:s.Start], "\r\n") + 1
	end := max(s.End, start)
	if end > s.Start && strings.ContainsAny(f.text[end-1:end], "\r\n") {
		return layout.Span{Start: start, End: end} // whole lines already
	}
	i := strings.IndexAny(f.text[end:], "\r\n")
	if i < 0 {
		return layout.Span{Start: start, End: len(f.text)}
	}
	end += i + 1
	if strings.HasPrefix(f.text[end-1:], "\r\n") {
		end++
	}
	return layout.Span{Start: start, End: end}
}

// lineEnds counts the line ends of a text.
func (f *fitting) lineEnds(text string) int {
	return strings.Count(text, "\n") + strings.Count(text, "\r") - strings.Count(text, "\r\n")
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
