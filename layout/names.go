package layout

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// NameNode is a name as written.
type NameNode struct {
	Span
	Text string
}

// key is what names are compared by: capitals and small letters are the same, and so are
// letters written in one piece or with their accents apart.
func (n NameNode) key() string { return foldName(n.Text) }

func foldName(text string) string {
	for i := range len(text) {
		if text[i] >= utf8.RuneSelf || 'A' <= text[i] && text[i] <= 'Z' {
			return norm.NFC.String(strings.ToLower(text))
		}
	}
	return text
}

// IsName says whether a text can name a fabric, a colorway or a size.
func IsName(text string) bool {
	return isName(text) && utf8.RuneCountInString(text) <= MaxNameChars
}

// isName says whether text begins with a letter and goes on with letters, digits, - and _.
func isName(text string) bool {
	for i, r := range text {
		switch {
		case unicode.IsLetter(r):
		case i > 0 && (r == '-' || r == '_' || unicode.IsDigit(r) || unicode.Is(unicode.M, r)):
		default:
			return false
		}
	}
	return text != "" && utf8.ValidString(text)
}

// isDigits says whether text is a number that may label a block.
func isDigits(text string) bool {
	return text != "" && strings.Trim(text, "0123456789") == ""
}

// newName takes a name that is being defined. What is a stand-in for the hint.
func (c *cursor) newName(what string, digits bool) (NameNode, bool) {
	if c.done() {
		c.fault(c.here(), "", "expected %s, found the end of the line", what)
		c.lacksName(digits)
		return NameNode{}, false
	}
	n := NameNode{c.word(), ""}
	n.Text = c.text(n.Span)
	chars := utf8.RuneCountInString(n.Text)
	switch {
	case isShellComment(n.Text):
		c.fault(n.Span, "write the name in front of it", "expected %s, found %s", what, quote(n.Text))
		c.lacksName(digits)
	case c.quoteAt(n.Start) > 0:
		c.fault(n.Span, "", "%s takes no quotes, found %s", what, foundQuotes(n.Text)).suggest(c.nameHint(n.Text))
	case !isName(n.Text) && !(digits && isDigits(n.Text)):
		c.fault(n.Span, "", "%s is not %s: names begin with a letter and continue with letters, digits, - and _", quote(n.Text), what).suggest(c.nameHint(n.Text))
	case chars > MaxNameChars:
		c.fault(n.Span, "", "this name has %d characters; the limit is %d", chars, MaxNameChars)
	case !digits && c.isReserved(n.Text), digits && c.statement(n.Text) != nil: // labels stand in rows, where only a statement could be meant
		c.fault(n.Span, "", "%s is one of the language's own words and cannot be a name", quote(n.Text)).suggest(write(freeName(n.Text)).saying("call it " + freeName(n.Text)).alone())
	default:
		return n, true
	}
	return n, false
}

// foundQuotes is a word that begins with a quotation mark; of one that another does not end it is the mark alone that is told.
func foundQuotes(word string) string {
	_, first := utf8.DecodeRuneInString(word)
	if last, _ := utf8.DecodeLastRuneInString(word[first:]); slices.Contains(quoteMarks, string(last)) {
		return shorten(word)
	}
	return "a quotation mark"
}

// usedName takes a name that is defined elsewhere.
func (c *cursor) usedName() NameNode {
	at := c.word()
	return NameNode{at, c.text(at)}
}

// nameOf takes a name that is defined elsewhere; what cannot be one is reported.
func (c *cursor) nameOf(what string) (NameNode, bool) {
	word := c.peek()
	switch {
	case c.atQuote():
		c.fault(c.here(), "", "expected %s, found text in quotes", what).suggest(c.nameHint(word))
	case c.done(), c.atNumber(), c.isReserved(word), word == "/":
		c.fault(c.here(), "", "expected %s, found %s", what, c.found())
	default:
		return c.usedName(), true
	}
	return NameNode{}, false
}

// lacksName remembers that something is defined without a name, or without a label.
func (s *session) lacksName(label bool) {
	if label {
		s.labels.unnamed++
	} else {
		s.names.unnamed++
	}
}

// freeName is a name near a reserved word that may be used.
func freeName(word string) string { return "my-" + word }

// nameHint makes a name of what was written, if letters are in it.
func (s *session) nameHint(text string) hint {
	made := strings.TrimLeftFunc(strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || r == '-' || r == '_' {
			return r
		}
		return -1
	}, text), func(r rune) bool { return !unicode.IsLetter(r) })
	made = strings.TrimRight(made, "-_")
	if made == "" || s.isReserved(made) || utf8.RuneCountInString(made) > MaxNameChars {
		return hint{}
	}
	if i := strings.IndexAny(text, "=:,;"); i > 0 && i < len(text)-1 {
		return hint{}
	}
	return write(made).alone()
}
