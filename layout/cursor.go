package layout

import (
	"slices"
	"strings"
	"unicode/utf8"

	"eighthturn/internal/measure"
)

// token is a stretch of a line that belongs together, and the column of the tidy layout
// that it is part of.
type token struct {
	Span
	Field int
}

// cursor reads one line of a layout from left to right and remembers what it took.
type cursor struct {
	*session
	at, end int // end is where the line ends
	tokens  []token
	field   int
	comment Span
}

func newCursor(s *session, line Span) *cursor {
	c := &cursor{session: s, at: line.Start, end: line.End, field: -1}
	c.skip()
	return c
}

func (c *cursor) text(s Span) string { return c.src[s.Start:s.End] }

func (c *cursor) rest() string { return c.src[c.at:c.end] }

// skip moves past blanks; a comment that begins there is taken as the line's comment.
func (c *cursor) skip() {
	rest := c.rest()
	c.at += len(rest) - len(strings.TrimLeftFunc(rest, measure.IsSpace))
	if c.commentAt(c.at) {
		c.comment = Span{c.at, c.end}
		c.end = c.at
	}
}

// commentAt says whether a comment begins at a byte: # at the start of a line, or with a
// blank or the line's end behind it.
func (c *cursor) commentAt(at int) bool {
	return at < c.end && c.src[at] == '#' && isComment(c.src[at:c.end], at == 0 || lineEndBefore(c.src, at))
}

// isComment says whether text that begins with # is a comment.
func isComment(text string, atLineStart bool) bool {
	if atLineStart || len(text) == 1 {
		return true
	}
	next, _ := utf8.DecodeRuneInString(text[1:])
	return measure.IsSpace(next)
}

func lineEndBefore(src string, at int) bool {
	if src[:at] == byteOrderMark {
		return true
	}
	for _, end := range lineEnds {
		if strings.HasSuffix(src[:at], end) {
			return true
		}
	}
	return false
}

// done says whether nothing but a comment is left.
func (c *cursor) done() bool { return c.at >= c.end }

// here is the next word's span, or the place behind the last one at the line's end.
func (c *cursor) here() Span {
	if c.done() {
		at := c.end
		if len(c.tokens) > 0 {
			at = min(at, c.last().End)
		}
		return Span{at, at}
	}
	return c.wordAt(c.at)
}

// wordAt is the span of the word at a byte: up to a blank or a comment.
func (c *cursor) wordAt(at int) Span {
	end := at
	for end < c.end {
		r, size := utf8.DecodeRuneInString(c.src[end:c.end])
		if measure.IsSpace(r) || end > at && c.commentAt(end) {
			break
		}
		end += size
	}
	return Span{at, end}
}

// found describes the next word for a message.
func (c *cursor) found() string {
	switch {
	case c.done():
		return "the end of the line"
	case c.atQuote():
		return "text in quotes"
	}
	return quote(c.text(c.here()))
}

// newField starts a column of the tidy layout.
func (c *cursor) newField() { c.field++ }

func (c *cursor) take(s Span) Span {
	c.tokens = append(c.tokens, token{s, max(c.field, 0)})
	c.at = s.End
	c.skip()
	return s
}

// last is the span of the last token taken.
func (c *cursor) last() Span { return c.tokens[len(c.tokens)-1].Span }

// peek is the next word without taking it, "" at the end.
func (c *cursor) peek() string {
	if c.done() {
		return ""
	}
	return c.text(c.here())
}

// word takes the next word.
func (c *cursor) word() Span { return c.take(c.here()) }

// accept takes the next word if it is the one given, capitals or not.
func (c *cursor) accept(word string) (Span, bool) {
	if !strings.EqualFold(c.peek(), word) {
		return Span{}, false
	}
	return c.word(), true
}

// acceptNow takes the next word if it is the one given or the one that older layouts have for it.
func (c *cursor) acceptNow(word, former string) (Span, bool) {
	if at, ok := c.accept(word); ok {
		return at, true
	}
	at, ok := c.accept(former)
	if ok {
		c.former[at.Start] = word
	}
	return at, ok
}

// oneOf takes one of a few words.
func (c *cursor) oneOf(what string, words ...string) *WordNode {
	word := c.peek()
	for _, w := range words {
		if strings.EqualFold(word, w) {
			return &WordNode{c.word(), w}
		}
	}
	c.fault(c.here(), "", "expected %s, %s, found %s", what, strings.Join(words, " or "), c.found()).suggest(didYouMean(word, words))
	c.dropRest()
	return nil
}

// dropRest takes what is left of a line that was given up.
func (c *cursor) dropRest() {
	for !c.done() {
		c.word()
	}
}

// dropIfFaulty leaves out the rest of a line whose fault was reported.
func (c *cursor) dropIfFaulty(faulty bool) {
	if faulty {
		c.dropRest()
	}
}

// finish reports whatever is left behind a complete statement.
func (c *cursor) finish(expected string) {
	if c.done() {
		return
	}
	at := c.here()
	switch {
	case c.twice():
	case expected == "":
		c.fault(at, "", "nothing more belongs on this line, found %s", c.found()).suggest(c.leftOverHint(expected))
	default:
		c.fault(at, "", "expected %s, found %s", expected, c.found()).suggest(c.leftOverHint(expected))
	}
	c.dropRest()
}

// twice reports the next word if it is one of the language's own and stands on this line
// already.
func (c *cursor) twice() bool {
	word := c.peek()
	if !c.isReserved(word) {
		return false
	}
	for _, t := range c.tokens {
		if strings.EqualFold(c.text(t.Span), word) {
			c.fault(c.here(), "keep one of the two", "%s is already on this line", quote(word)).note(t.Span, "first given here")
			return true
		}
	}
	return false
}

// leftOverHint says what to do with the next word, which stands behind a complete statement; none if
// it does not tell.
func (c *cursor) leftOverHint(expected string) hint {
	at := c.here()
	word, more := c.text(at), wordsInQuotes(expected)
	switch {
	case strings.ContainsAny(word, "=:,;"):
		return hint{}
	case isShellComment(word):
		return edit("a comment in mid-line needs a space behind its #: # "+word[1:], Span{at.Start, at.Start + 1}, "# ")
	case isForeignComment(word):
		return edit("comments begin with # and a space", Span{at.Start, at.Start + len(word) - len(strings.TrimLeft(word, "/-;*"))}, "# ")
	case word == "x", word == "X", word == "×", word == "*", word == "by":
		return advice("one length is wanted here, not two")
	case strings.Trim(word, "-–—−") == "":
		return advice("one length is wanted here, without a dash")
	}
	if joined := c.joined(at, more); joined.words != "" {
		return joined
	}
	if last := c.text(c.last()); strings.TrimRight(last, "0123456789") != last {
		more = append(more, measure.UnitWords()...)
	}
	hint := didYouMean(word, more)
	if hint.words == "" && expected == "" {
		rest := Span{at.Start, c.end - len(c.rest()) + len(strings.TrimRightFunc(c.rest(), measure.IsSpace))}
		return c.leaveOut(shorten(c.text(rest)), rest).alone()
	}
	return hint
}

// joined is a hint to write two words as one with a hyphen, none if they are no word of the list so.
func (s *session) joined(first Span, list []string) hint {
	line := s.source.lineSpan(s.source.Line(first.Start))
	rest := strings.TrimLeftFunc(s.src[first.End:line.End], measure.IsSpace)
	second := rest
	if i := strings.IndexFunc(rest, measure.IsSpace); i >= 0 {
		second = rest[:i]
	}
	word := strings.ToLower(s.src[first.Start:first.End] + "-" + second)
	if second == "" || !slices.Contains(list, word) {
		return hint{}
	}
	return edit("write "+word, Span{first.Start, line.End - len(rest) + len(second)}, word)
}

// wordsInQuotes is the words that stand in quotes in what was expected.
func wordsInQuotes(expected string) []string {
	var words []string
	for i, part := range strings.Split(expected, `"`) {
		if i%2 == 1 && part != "/" {
			words = append(words, part)
		}
	}
	return words
}

func isShellComment(word string) bool { return len(word) > 1 && word[0] == '#' }

// isForeignComment says whether a word begins a comment in other languages.
func isForeignComment(word string) bool {
	return strings.HasPrefix(word, "//") || strings.HasPrefix(word, "--") || strings.HasPrefix(word, ";") || strings.HasPrefix(word, "/*")
}

// quote is the user's words in quotes for a message, cut where they are long.
func quote(text string) string { return `"` + shorten(text) + `"` }

// shorten is the user's words cut where they are long.
func shorten(text string) string {
	const longest = 40
	letters := 0
	for i := range text {
		if letters == longest {
			return text[:i] + "…"
		}
		letters++
	}
	return text
}
