package layout

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/agnivade/levenshtein"
	"golang.org/x/text/unicode/norm"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
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
		c.fault(n.Span, c.nameHint(n.Text), "%s stands without quotes, found %s", what, shorten(n.Text))
	case !isName(n.Text) && !(digits && isDigits(n.Text)):
		c.fault(n.Span, c.nameHint(n.Text), "%s is not %s: names begin with a letter and go on with letters, digits, - and _", quote(n.Text), what)
	case chars > MaxNameChars:
		c.fault(n.Span, "", "this name has %d characters, %d is the most", chars, MaxNameChars)
	case !digits && c.reserved(n.Text), digits && c.isStatement(n.Text):
		c.fault(n.Span, "call it "+freeName(n.Text), "%s is one of the language's own words and cannot be a name", quote(n.Text))
	default:
		return n, true
	}
	return n, false
}

// lacksName remembers that something is defined without a name, or without a label.
func (s *session) lacksName(label bool) {
	if label {
		s.unlabelled++
	} else {
		s.nameless++
	}
}

// freeName is a name near a reserved word that may be used.
func freeName(word string) string { return "my-" + word }

// nameHint makes a name of what was written, if letters are in it.
func (s *session) nameHint(text string) string {
	made := strings.TrimLeftFunc(strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || r == '-' || r == '_' {
			return r
		}
		return -1
	}, text), func(r rune) bool { return !unicode.IsLetter(r) })
	made = strings.TrimRight(made, "-_")
	if made == "" || s.reserved(made) || utf8.RuneCountInString(made) > MaxNameChars {
		return ""
	}
	return "write " + made
}

// reserved says whether a word is one of the language's own.
func (s *session) reserved(word string) bool { return s.own[strings.ToLower(word)] }

// isStatement says whether a statement begins with a word. Labels may be any other word of
// the language: they stand in rows, where only a statement could be meant.
func (s *session) isStatement(word string) bool {
	return slices.Contains(statementWords(), strings.ToLower(word))
}

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

// nearest is the word of the list that is most like text, "" if none is near. One that
// shares no letter with it is not.
func nearest(text string, list []string) string {
	folded := foldName(text)
	letters := utf8.RuneCountInString(folded)
	best, bestAt := "", min(max(1, letters/3)+1, letters)
	for _, w := range list {
		other := foldName(w)
		if apart := utf8.RuneCountInString(other) - letters; apart >= bestAt || -apart >= bestAt {
			continue
		}
		if d := slips(folded, other); d < bestAt {
			best, bestAt = w, d
		}
	}
	return best
}

// slips counts the letters that are wrong, missing or too many; two neighbours that changed
// places are one slip.
func slips(a, b string) int {
	d := levenshtein.ComputeDistance(a, b)
	if d == 2 && swapped([]rune(a), []rune(b)) {
		return 1
	}
	return d
}

// swapped says whether one word becomes the other when two neighbours change places.
func swapped(a, b []rune) bool {
	if len(a) != len(b) {
		return false
	}
	i := 0
	for i < len(a) && a[i] == b[i] {
		i++
	}
	return i+1 < len(a) && a[i] == b[i+1] && a[i+1] == b[i] && slices.Equal(a[i+2:], b[i+2:])
}

// mostGuesses is how many messages may come with a guess at what was meant: each guess goes
// through all names, and nobody reads so many messages.
const mostGuesses = 200

// guessable is the blocks to guess from, none once there were guesses enough.
func (s *session) guessable(list []*BlockNode) []*BlockNode {
	if len(s.list) >= mostGuesses {
		return nil
	}
	return list[:min(len(list), MaxDefined)]
}

// guess is didYouMean for lists that may be long.
func (s *session) guess(text string, list []string) string {
	if len(s.list) >= mostGuesses {
		return ""
	}
	return didYouMean(text, list)
}

// didYouMean is a hint at the nearest word, "" if none is near.
func didYouMean(text string, list []string) string {
	if hint := lookAlike(text, list); hint != "" {
		return hint
	}
	if near := nearest(text, list); near != "" {
		return `did you mean "` + near + `"?`
	}
	return ""
}
