package layout

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"eighthturn/internal/measure"
)

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

// onlyText takes the one text of a statement; nil if there is none.
func (c *cursor) onlyText(what string) *TextNode {
	c.newField()
	t, ok := c.quoted(what)
	c.dropIfFaulty(!ok)
	if !ok {
		return nil
	}
	return &t
}

// text is what stands between the quotes, "" for no node.
func (t *TextNode) text() string {
	if t == nil {
		return ""
	}
	return t.Text
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
		c.fault(c.here(), "", "expected %s in quotes, found %s", what, c.found()).suggest(c.quotesHint())
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
		end := c.at + len(strings.TrimRightFunc(c.rest(), measure.IsSpace))
		c.fault(Span{c.at, c.end}, "", "the text that begins here has no quotation mark at its end").suggest(edit(`end it with "`, Span{end, end}, `"`))
		c.take(Span{c.at, c.end})
		return TextNode{}, false
	}
	node := TextNode{Text: c.src[c.at+open : last]}
	node.Span = c.take(Span{c.at, last + c.quoteAt(last)})
	return node, c.checkText(node)
}

// quotesHint is the rest of the line in quotes.
func (c *cursor) quotesHint() hint {
	rest, _, _ := strings.Cut(c.rest(), " #")
	if text := strings.Trim(rest, " \t'‘’`"); text != "" && !strings.ContainsAny(text, `"“”„`) {
		at := Span{c.at, c.at + len(strings.TrimRightFunc(rest, measure.IsSpace))}
		return edit(`write "`+shorten(text)+`"`, at, `"`+text+`"`)
	}
	return advice(`put the text in quotes: "…"`)
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
		c.fault(t.Span, "", "this text has %d characters; the limit is %d", n, MaxTextChars)
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
