package lsp

import (
	"sort"
	"strings"
	"unicode/utf8"
)

// text is a document as the editor has it, with its lines found. Lines end as the protocol has it: with \n, \r\n or \r.
type text struct {
	string
	starts []int // of lines, in bytes
	bytes  bool  // positions count bytes; else UTF-16 code units
}

func newText(s string, bytes bool) text {
	t := text{s, []int{0}, bytes}
	for i := 0; i < len(s); i++ {
		if s[i] == '\n' || s[i] == '\r' && (i+1 == len(s) || s[i+1] != '\n') {
			t.starts = append(t.starts, i+1)
		}
	}
	return t
}

// line is the bytes of a line without its end; lines past the last are empty.
func (t *text) line(number int) (start, end int) {
	if number >= len(t.starts) {
		return len(t.string), len(t.string)
	}
	start, end = t.starts[number], len(t.string)
	if number+1 < len(t.starts) {
		end = t.starts[number+1]
	}
	return start, start + len(strings.TrimRight(t.string[start:end], "\r\n"))
}

// lineOf is the number of the line that holds a byte.
func (t *text) lineOf(offset int) int {
	return max(0, sort.SearchInts(t.starts, offset+1)-1)
}

// offset is the byte of a position. One past a line's end is the end of the line, one within a character its start.
func (t *text) offset(p position) int {
	if p.Line >= len(t.starts) {
		return len(t.string)
	}
	start, end := t.line(max(p.Line, 0))
	if t.bytes {
		at := min(start+max(p.Character, 0), end)
		for at > start && at < end && !utf8.RuneStart(t.string[at]) {
			at--
		}
		return at
	}
	left, at := p.Character, start
	for left > 0 && at < end {
		r, size := utf8.DecodeRuneInString(t.string[at:end])
		if left -= units(r); left < 0 {
			break
		}
		at += size
	}
	return at
}

// units is how many UTF-16 code units a character has.
func units(r rune) int {
	if r > 0xffff {
		return 2
	}
	return 1
}

// position is where a byte stands; within the end of a line it is where that begins.
func (t *text) position(offset int) position {
	offset = min(max(offset, 0), len(t.string))
	line := t.lineOf(offset)
	start, end := t.line(line)
	return position{line, t.length(t.string[start:min(offset, end)])}
}

// after is the position of a byte at or behind another one, whose position is known. Words of long lines are found so, one after the
// other.
func (t *text) after(known position, byteOfKnown, offset int) position {
	if known.Line+1 < len(t.starts) && t.starts[known.Line+1] <= offset || offset < byteOfKnown {
		return t.position(offset)
	}
	return position{known.Line, known.Character + t.length(t.string[byteOfKnown:offset])}
}

// length is how long a stretch is in what positions count.
func (t *text) length(s string) int {
	if t.bytes {
		return len(s)
	}
	n := 0
	for _, r := range s {
		n += units(r)
	}
	return n
}

// span is a stretch of bytes as a range.
func (t *text) span(start, end int) lspRange {
	return lspRange{t.position(start), t.position(end)}
}

// changed is the text with one change made; without a range it is all new.
func (t *text) changed(c contentChange) (text, bool) {
	if c.Range == nil {
		return newText(c.Text, t.bytes), true
	}
	start, end := t.offset(c.Range.Start), t.offset(c.Range.End)
	if end < start {
		return *t, false
	}
	return newText(t.string[:start]+c.Text+t.string[end:], t.bytes), true
}
