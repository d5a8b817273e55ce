package layout

import (
	"fmt"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/rivo/uniseg"
)

// MaxShown is how many messages a report shows before it only counts.
const MaxShown = 20

// widest is how many columns of a source line a report shows.
const widest = 100

// Report writes messages as a person reads them: file:line:column, what is wrong, the line,
// carets and the hint. Name is what the file is called.
func Report(w io.Writer, name string, s *Source, list []Fault) error {
	var b strings.Builder
	for _, f := range maxTelling(list) {
		writeOne(&b, name, s, f)
	}
	if left := len(list) - MaxShown; left > 0 {
		fmt.Fprintf(&b, "and %s: %s\n", plural(left, "more message"), leftOut(list))
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// maxTelling is the messages that a report shows: all of them, or of too many the first
// errors, and warnings only where errors leave room.
func maxTelling(list []Fault) []Fault {
	if len(list) <= MaxShown {
		return list
	}
	errors, _ := Count(list)
	warnings := MaxShown - errors
	shown := make([]Fault, 0, MaxShown)
	for _, f := range list {
		if len(shown) == MaxShown {
			break
		}
		if f.Severity == Warning {
			warnings--
		}
		if f.Severity == Error || warnings >= 0 {
			shown = append(shown, f)
		}
	}
	return shown
}

// leftOut counts the errors and the warnings that a report leaves out.
func leftOut(list []Fault) string {
	errors, warnings := Count(list)
	shownErrors, shownWarnings := Count(maxTelling(list))
	errors, warnings = errors-shownErrors, warnings-shownWarnings
	switch {
	case errors == 0:
		return plural(warnings, "warning")
	case warnings == 0:
		return plural(errors, "error")
	}
	return plural(errors, "error") + ", " + plural(warnings, "warning")
}

func writeOne(b *strings.Builder, name string, s *Source, f Fault) {
	line, column := s.Position(f.Span.Start)
	fmt.Fprintf(b, "%s:%d:%d: %s: %s\n", Visible(name), line, column, f.Severity, Visible(f.Message))
	writeExcerpt(b, s, f.Span, f.Hint)
	for _, n := range f.Notes {
		line, column := s.Position(n.Span.Start)
		fmt.Fprintf(b, "%s:%d:%d: note: %s\n", Visible(name), line, column, Visible(n.Message))
		writeExcerpt(b, s, n.Span, "")
	}
}

// writeExcerpt writes the source line of a span with carets beneath it and the hint behind.
func writeExcerpt(b *strings.Builder, s *Source, at Span, hint string) {
	e := Excerpt(s, at)
	if e.Text == "" {
		if hint != "" {
			fmt.Fprintf(b, "       %s\n", Visible(hint))
		}
		return
	}
	fmt.Fprintf(b, "%5d | %s\n", e.Line, e.Text)
	fmt.Fprintf(b, "      | %s%s", strings.Repeat(" ", e.Indent), strings.Repeat("^", e.Width))
	if hint != "" {
		fmt.Fprintf(b, " %s", Visible(hint))
	}
	b.WriteByte('\n')
}

// excerpted is a source line as a report shows it: control characters made visible, long
// lines cut round the place, tabs as blanks. Indent and Width are terminal columns.
type excerpted struct {
	Line          int
	Text          string
	Indent, Width int
}

// Excerpt is the line of a span's start, with the place of the span on it.
func Excerpt(s *Source, at Span) excerpted {
	number := s.Line(at.Start)
	line := s.lineSpan(number)
	start := min(max(at.Start, line.Start), line.End)
	end := min(max(at.End, start), line.End)
	before, there, after := Visible(s.Text[line.Start:start]), Visible(s.Text[start:end]), Visible(s.Text[end:line.End])
	before = lastColumns(before, widest/2)
	there = firstColumns(there, widest/2)
	after = firstColumns(after, widest-uniseg.StringWidth(before)-uniseg.StringWidth(there))
	return excerpted{
		Line: number, Text: strings.TrimRightFunc(before+there+after, unicode.IsSpace),
		Indent: uniseg.StringWidth(before), Width: max(1, uniseg.StringWidth(there)),
	}
}

// firstColumns is as much of text as so many terminal columns hold.
func firstColumns(text string, columns int) string {
	width, rest, state := 0, text, -1
	for rest != "" {
		var cluster string
		var w int
		cluster, rest, w, state = uniseg.FirstGraphemeClusterInString(rest, state)
		if width += w; width > columns {
			return text[:len(text)-len(cluster)-len(rest)] + "…"
		}
	}
	return text
}

// lastColumns is as much of the end of text as so many terminal columns hold.
func lastColumns(text string, columns int) string {
	width := uniseg.StringWidth(text)
	if width <= columns {
		return text
	}
	rest, state := text, -1
	for width > columns && rest != "" {
		var w int
		_, rest, w, state = uniseg.FirstGraphemeClusterInString(rest, state)
		width -= w
	}
	return "…" + rest
}

// Visible is text that cannot steer a terminal or change its reading order: control
// characters, marks of direction and what is not UTF-8 are written out; tabs become blanks.
func Visible(text string) string {
	if !strings.ContainsFunc(text, func(r rune) bool { return hidden(r) || r == '\t' || r == utf8.RuneError }) {
		return text
	}
	var b strings.Builder
	for i := 0; i < len(text); {
		r, size := utf8.DecodeRuneInString(text[i:])
		switch {
		case r == utf8.RuneError && size == 1:
			fmt.Fprintf(&b, `\x%02x`, text[i])
		case r == '\t':
			b.WriteByte(' ')
		case hidden(r):
			fmt.Fprintf(&b, "<U+%04X>", r)
		default:
			b.WriteString(text[i : i+size])
		}
		i += size
	}
	return b.String()
}

// hidden says whether r shows nothing of its own or changes how its neighbours show.
func hidden(r rune) bool {
	switch {
	case r == '\t' || r == '\u00a0':
		return false
	case unicode.IsControl(r), isDirection(r), isInvisible(r), r >= 0xfff0 && r <= 0xfffb, r&0xfffe == 0xfffe:
		return true
	}
	return false
}

// isDirection says whether r overrules the direction of text.
func isDirection(r rune) bool {
	return r >= '\u202a' && r <= '\u202e' || r >= '\u2066' && r <= '\u2069' || r == '\u200e' || r == '\u200f' || r == '\u061c'
}

// isInvisible says whether r takes no room.
func isInvisible(r rune) bool {
	switch r {
	case '\u200b', '\u200c', '\u200d', '\u2060', '\ufeff', '\u00ad', '\u180e':
		return true
	}
	return false
}
