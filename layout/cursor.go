package layout

import (
	"cmp"
	"strings"
	"unicode"
	"unicode/utf8"

	"eighthturn/internal/measure"
)

// Token is a stretch of a line that belongs together, and the column of the tidy layout
// that it is part of.
type Token struct {
	Span
	Field int
}

// cursor reads one line of a layout from left to right and remembers what it took.
type cursor struct {
	*session
	at, end int // end is where the line ends
	tokens  []Token
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
	c.tokens = append(c.tokens, Token{s, max(c.field, 0)})
	c.at = s.End
	c.skip()
	return s
}

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

// LengthNode is a length as written, with the word `cut` or `finished` if it followed.
type LengthNode struct {
	Span
	reading  measure.Reading
	Cut      bool
	Finished bool
}

// In is the length with a bare number in the given units.
func (l *LengthNode) In(s measure.System) measure.Length { return l.reading.In(s) }

// atNumber says whether a length could begin here.
func (c *cursor) atNumber() bool { return !c.done() && measure.StartsNumber(c.rest()) }

// length takes a length; what is wrong with it is reported.
func (c *cursor) length(what string) (LengthNode, bool) {
	if !c.atNumber() {
		c.fault(c.here(), numberHint(c.peek()), "expected %s, found %s", what, c.found())
		return LengthNode{}, false
	}
	start := c.at
	reading, err := measure.Read(c.uncommented())
	if err != nil {
		p := err.(*measure.Problem)
		at := Span{start + p.Start, start + p.End}
		c.fault(at, cmp.Or(numberHint(c.text(at)), p.Hint, "write a length as 3 1/2 or 3.5"), "%s", p.Message)
		c.take(Span{start, max(start+p.End, c.wordAt(start).End)})
		c.skipNumbers()
		return LengthNode{}, false
	}
	node := LengthNode{Span: c.take(Span{start, start + reading.Bytes}), reading: reading}
	if c.twoNumbers(node) {
		return node, false
	}
	if at, ok := c.accept("cut"); ok {
		node.Cut, node.Span = true, node.To(at)
	} else if at, ok := c.accept("finished"); ok {
		node.Finished, node.Span = true, node.To(at)
	}
	return node, true
}

// noFrame refuses the words cut and finished where they say nothing.
func (s *session) noFrame(n *LengthNode, what string) bool {
	switch {
	case n.Cut:
		s.fault(n.Span, "leave out cut", "%s is neither cut nor finished", what)
	case n.Finished:
		s.fault(n.Span, "leave out finished", "%s is neither cut nor finished", what)
	}
	return !n.Cut && !n.Finished
}

// uncommented is the rest of the line without a comment that begins in the next words.
func (c *cursor) uncommented() string {
	for at := c.at; at < c.end; at++ {
		if c.commentAt(at) {
			return c.src[c.at:at]
		}
		if c.quoteAt(at) > 0 && at > c.at && measure.IsSpace(rune(c.src[at-1])) {
			break
		}
	}
	return c.rest()
}

// twoNumbers reports a number behind a number, which is no length.
func (c *cursor) twoNumbers(first LengthNode) bool {
	if !c.atNumber() || first.reading.HasUnit() {
		return false
	}
	second := c.here()
	both := first.Span.To(second)
	hint := "a length is a number, or a number and a fraction: 3 1/2"
	if fraction := c.text(first.Span) + "/" + c.text(second); isLength(fraction) {
		hint = "did you mean " + fraction + "?"
	}
	c.fault(both, hint, "%s is not one length", quote(c.text(both)))
	c.take(second)
	c.skipNumbers()
	return true
}

// isLength says whether text is one length and nothing else.
func isLength(text string) bool {
	r, err := measure.Read(text)
	return err == nil && r.Bytes == len(text)
}

func (c *cursor) skipNumbers() {
	for c.atNumber() {
		c.word()
	}
}

// dropRest takes what is left of a line that was given up.
func (c *cursor) dropRest() {
	for !c.done() {
		c.word()
	}
}

// finish reports whatever is left behind a complete statement.
func (c *cursor) finish(expected string) {
	if c.done() {
		return
	}
	at := c.here()
	hint := leftOverHint(c.text(at), expected)
	switch {
	case c.twice():
	case expected == "":
		c.fault(at, hint, "nothing more belongs on this line, found %s", c.found())
	default:
		c.fault(at, hint, "expected %s, found %s", expected, c.found())
	}
	c.dropRest()
}

// twice reports the next word if it is one of the language's own and stands on this line
// already.
func (c *cursor) twice() bool {
	word := c.peek()
	if !c.reserved(word) {
		return false
	}
	for _, t := range c.tokens {
		if strings.EqualFold(c.text(t.Span), word) {
			c.fault(c.here(), "keep one of the two", "%s stands on this line already", quote(word)).note(t.Span, "first given here")
			return true
		}
	}
	return false
}

// leftOverHint says what to do with a word that stands behind a complete statement, "" if
// it does not tell.
func leftOverHint(word, expected string) string {
	switch {
	case isShellComment(word):
		return "a comment in mid-line needs a space behind its #: # " + word[1:]
	case isForeignComment(word):
		return "comments begin with # and a space"
	case word == "x", word == "X", word == "×", word == "*", word == "by":
		return "one length is wanted here, not two"
	case strings.Trim(word, "-–—−") == "":
		return "one length is wanted here, without a dash"
	}
	return didYouMean(word, append(wordsInQuotes(expected), measure.UnitWords()...))
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

var quoteMarks = []string{`"`, "“", "”", "„", "«", "»"}

// quoteAt is how many bytes of a quotation mark stand at a byte.
func (c *cursor) quoteAt(at int) int {
	for _, q := range quoteMarks {
		if strings.HasPrefix(c.src[at:c.end], q) {
			return len(q)
		}
	}
	return 0
}

// atQuote says whether text in quotes begins here.
func (c *cursor) atQuote() bool { return !c.done() && c.quoteAt(c.at) > 0 }

// TextNode is text in quotes; Text is what stands between them.
type TextNode struct {
	Span
	Text string
}

// quoted takes text in quotes. It ends at the first quotation mark behind which the line
// can go on as it should: with nothing, with a comment, or with one of the words given; so
// inch marks inside it do no harm.
func (c *cursor) quoted(what string, next ...string) (TextNode, bool) {
	return c.quotedUntil(what, func(after int) bool { return c.goesOn(after, next) })
}

// quotedUntil takes text in quotes. It ends at the first quotation mark for which ends, given
// the byte after it, says so, or at the last.
func (c *cursor) quotedUntil(what string, ends func(after int) bool) (TextNode, bool) {
	if !c.atQuote() {
		c.fault(c.here(), c.quotesHint(), "expected %s in quotes, found %s", what, c.found())
		return TextNode{}, false
	}
	open := c.quoteAt(c.at)
	last := -1
	for at := c.at + open; at < c.end; at++ {
		n := c.quoteAt(at)
		if n == 0 {
			continue
		}
		last = at
		if ends(at + n) {
			break
		}
	}
	if last < 0 {
		c.fault(Span{c.at, c.end}, `end it with "`, "the text that begins here has no quotation mark at its end")
		c.take(Span{c.at, c.end})
		return TextNode{}, false
	}
	node := TextNode{Text: c.src[c.at+open : last]}
	node.Span = c.take(Span{c.at, last + c.quoteAt(last)})
	return node, c.checkText(node)
}

// quotesHint is the rest of the line in quotes.
func (c *cursor) quotesHint() string {
	rest, _, _ := strings.Cut(c.rest(), " #")
	if text := strings.Trim(rest, " \t'‘’`"); text != "" && !strings.ContainsAny(text, `"“”„`) {
		return `write "` + shorten(text) + `"`
	}
	return `put the text in quotes: "…"`
}

// goesOn says whether what follows a quotation mark at a byte may follow the text.
func (c *cursor) goesOn(at int, next []string) bool {
	rest := c.src[at:c.end]
	trimmed := strings.TrimLeftFunc(rest, measure.IsSpace)
	if trimmed == "" || c.commentAt(c.end-len(trimmed)) {
		return true
	}
	for _, n := range next {
		if len(trimmed) < len(rest) && beginsWithWord(trimmed, n) {
			return true
		}
	}
	return false
}

// beginsWithWord says whether text begins with a word, capitals or not. Only so much of the
// text is looked at.
func beginsWithWord(text, word string) bool {
	if len(text) < len(word) || !strings.EqualFold(text[:len(word)], word) {
		return false
	}
	next, _ := utf8.DecodeRuneInString(text[len(word):])
	return len(text) == len(word) || measure.IsSpace(next)
}

// checkText refuses text that is too long and warns of marks that change reading order.
func (c *cursor) checkText(t TextNode) bool {
	if n := utf8.RuneCountInString(t.Text); n > MaxTextChars {
		c.fault(t.Span, "", "this text has %d characters, %d is the most", n, MaxTextChars)
		return false
	}
	if i := strings.IndexFunc(t.Text, func(r rune) bool { return r != '\t' && unicode.IsControl(r) }); i >= 0 {
		c.fault(t.Span, "type the text anew", "this text holds a control character: %s", Visible(t.Text))
		return false
	}
	if strings.ContainsFunc(t.Text, isDirection) {
		c.warn(t.Span, "type the text anew if they are not meant", "this text holds marks that change the order in which it is read: %s", Visible(t.Text))
	}
	return true
}
