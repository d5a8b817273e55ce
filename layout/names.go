package layout

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/agnivade/levenshtein"
	"golang.org/x/text/unicode/norm"

	"eighthturn/blocks"
	"eighthturn/measure"
)

// NameNode is a name as written.
type NameNode struct {
	Span
	Text string
}

// key is what names are compared by: capitals and small letters are the same, and so are
// letters written in one piece or with their accents apart.
func (n NameNode) key() string { return foldName(n.Text) }

func foldName(text string) string { return norm.NFC.String(strings.ToLower(text)) }

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
		return NameNode{}, false
	}
	n := NameNode{c.word(), ""}
	n.Text = c.text(n.Span)
	switch {
	case digits && isDigits(n.Text):
	case c.reserved(n.Text):
		c.fault(n.Span, "call it "+freeName(n.Text), "%s is one of the language's own words and cannot be a name", quote(n.Text))
	case !isName(n.Text):
		c.fault(n.Span, c.nameHint(n.Text), "%s is not %s: names begin with a letter and go on with letters, digits, - and _", quote(n.Text), what)
	case utf8.RuneCountInString(n.Text) > MaxNameChars:
		c.fault(n.Span, "", "this name has %d characters, %d is the most", utf8.RuneCountInString(n.Text), MaxNameChars)
	default:
		if digits || !isDigits(n.Text) {
			return n, true
		}
	}
	return n, digits && isDigits(n.Text) && utf8.RuneCountInString(n.Text) <= MaxNameChars
}

// freeName is a name near a reserved word that may be used.
func freeName(word string) string { return word + "-1" }

// nameHint makes a name of what was written, if letters are in it.
func (s *session) nameHint(text string) string {
	if r, _ := utf8.DecodeRuneInString(text); strings.ContainsRune(`"“”„«»`, r) {
		return "names stand without quotes"
	}
	made := strings.TrimLeftFunc(strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || r == '-' || r == '_' {
			return r
		}
		return -1
	}, text), func(r rune) bool { return !unicode.IsLetter(r) })
	if made == "" || s.reserved(made) || utf8.RuneCountInString(made) > MaxNameChars {
		return ""
	}
	return "for example " + made
}

// reserved says whether a word is one of the language's own.
func (s *session) reserved(word string) bool { return s.own[strings.ToLower(word)] }

// ownWords are the words that options of statements are written with.
func ownWords() []string {
	return []string{
		"cut", "finished", "rest", "turned", "on-hand", "usable-width", "like", "across", "down", "posts", "around",
		"corners", "lengthwise", "by", "piece", "deal", "line", "about", "swatch", "cm", "inches",
	}
}

// reservedWords is the set of statements, roles, options and units.
func reservedWords(kinds []*blocks.Kind) map[string]bool {
	words := map[string]bool{}
	for _, list := range [][]string{ownWords(), measure.UnitWords(), statementWords(), roleWords(kinds)} {
		for _, w := range list {
			words[w] = true
		}
	}
	return words
}

// nearest is the word of the list that is most like text, "" if none is near.
func nearest(text string, list []string) string {
	best, bestAt := "", max(1, utf8.RuneCountInString(text)/3)+1
	for _, w := range list {
		if d := levenshtein.ComputeDistance(foldName(text), foldName(w)); d < bestAt {
			best, bestAt = w, d
		}
	}
	return best
}

// didYouMean is a hint at the nearest word, "" if none is near.
func didYouMean(text string, list []string) string {
	if near := nearest(text, list); near != "" {
		return `did you mean "` + near + `"?`
	}
	return ""
}
