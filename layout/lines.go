package layout

import (
	"sort"
	"strings"
	"unicode/utf8"

	"github.com/rivo/uniseg"
)

// LineEnds are the characters that end a line: the usual two, and the separators that some programs put in their place.
const LineEnds = "\n\r\u2028\u2029\u0085"

// lineEnds are what ends a line.
var lineEnds = append([]string{"\r\n"}, strings.Split(LineEnds, "")...)

// lineEnd is how many bytes of line end stand at the start of text.
func lineEnd(text string) int {
	switch text[0] {
	case '\r', '\n', 0xe2, 0xc2:
		for _, end := range lineEnds {
			if strings.HasPrefix(text, end) {
				return len(end)
			}
		}
	}
	return 0
}

// splitLines is the span of each line without its end, up to so many lines. A last line
// that is empty is not one.
func splitLines(text string, most int) []Span {
	var lines []Span
	start := 0
	for i := 0; i < len(text) && len(lines) < most; {
		n := lineEnd(text[i:])
		if n == 0 {
			i++
			continue
		}
		lines = append(lines, Span{start, i})
		i += n
		start = i
	}
	if start < len(text) && len(lines) < most {
		lines = append(lines, Span{start, len(text)})
	}
	return lines
}

// TextLines are the lines of a text, without what ends them.
func TextLines(text string) []string {
	var list []string
	for _, at := range splitLines(text, len(text)) {
		list = append(list, text[at.Start:at.End])
	}
	return list
}

// byteOrderMark is what some editors put in front of a text; it is no part of its first
// line.
const byteOrderMark = "\ufeff"

// Source is a layout's text with its lines found.
type Source struct {
	Text  string
	lines []Span
}

// NewSource finds the lines of a text: those that a layout may have, one more that is too
// many, and none in a text that is longer than a layout may be.
func NewSource(text string) *Source {
	if len(text) > MaxBytes {
		return &Source{Text: text}
	}
	return &Source{text, splitLines(text, MaxLines+1)}
}

// Line is the number, from 1, of the line that holds the byte at offset.
func (s *Source) Line(offset int) int {
	return max(1, sort.Search(len(s.lines), func(i int) bool { return s.lines[i].Start > offset }))
}

// LineSpan is the span of a line by its number from 1, without its end; empty for one that is not there.
func (s *Source) LineSpan(number int) Span { return s.lineSpan(number) }

// lineSpan is the span of a line by its number, empty for one that is not there.
func (s *Source) lineSpan(number int) Span {
	if number < 1 || number > len(s.lines) {
		return Span{len(s.Text), len(s.Text)}
	}
	return s.lines[number-1]
}

// Position is the line and the column, from 1, of a byte; columns count characters as a
// reader sees them.
func (s *Source) Position(offset int) (line, column int) {
	line = s.Line(offset)
	at := s.lineSpan(line)
	upTo := min(max(offset, at.Start), at.End)
	before := s.Text[at.Start:upTo]
	if at.Start == 0 {
		before = strings.TrimPrefix(before, byteOrderMark)
	}
	if !utf8.ValidString(before) {
		before = strings.ToValidUTF8(before, "?")
	}
	return line, uniseg.GraphemeClusterCount(before) + 1
}
