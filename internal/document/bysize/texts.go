package bysize

import (
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"eighthturn/internal/document"
)

// token is a number, or a list of numbers, or a reference to a figure; or what stands between two of them, word by word.
type token struct {
	text   string
	number bool
	style  document.Run // without its text
}

// numbers is a number as texts have it, or several in a list.
var numbers = func() *regexp.Regexp {
	const one = `(?:about )?(?:[0-9]+(?:,[0-9]{3})*(?: [0-9]+/[0-9]+|\.[0-9]+|/[0-9]+)?)`
	return regexp.MustCompile(`^` + one + `(?:(?:, ` + one + `)*,? and ` + one + `|(?:, ` + one + `)+)?`)
}()

// reference is where a text refers to a figure: the signs stand in no text that people write.
var reference = regexp.MustCompile("^\uE000[^\uE002]*\uE002")

// tokens are the tokens of a text.
func tokens(t document.Text) (list []token) {
	for _, r := range t {
		style := r
		style.Text = ""
		list = append(list, runTokens(r.Text, style)...)
	}
	return list
}

// runTokens are the tokens of a stretch in one style.
func runTokens(text string, style document.Run) (list []token) {
	before, word := ' ', 0
	flush := func(to int) {
		if to > word {
			list = append(list, token{text[word:to], false, style})
		}
	}
	for i := 0; i < len(text); {
		r, size := utf8.DecodeRuneInString(text[i:])
		length := 0
		if !joined(before) && r == 'a' || unicode.IsDigit(r) && !joined(before) {
			length = len(numbers.FindString(text[i:]))
			if next, _ := utf8.DecodeRuneInString(text[i+length:]); unicode.IsLetter(next) || next == '_' {
				length = 0
			}
		} else if r == '\uE000' {
			length = len(reference.FindString(text[i:]))
		}
		switch {
		case length > 0:
			flush(i)
			list = append(list, token{text[i : i+length], true, style})
			i += length
			before, word = '0', i
		case r == ' ':
			flush(i)
			list = append(list, token{" ", false, style})
			i += size
			before, word = r, i
		default:
			i += size
			before = r
		}
	}
	flush(len(text))
	return list
}

// joined says whether what follows a sign belongs to the same word.
func joined(r rune) bool {
	return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '_' || r == '-' || r == '.' || r == '/' || r == '#'
}

// singular is a word as it is compared: 1 strip and 4 strips are the same words.
func singular(word string) string {
	bare := strings.TrimRight(word, ".,;:)")
	if len(bare) > 3 && strings.HasSuffix(bare, "s") {
		return bare[:len(bare)-1] + word[len(bare):]
	}
	return word
}

// skeleton is what a text says but for its numbers.
func skeleton(t document.Text) string {
	var b strings.Builder
	for _, k := range tokens(t) {
		if k.style.Bold {
			b.WriteByte(1)
		}
		if k.number {
			b.WriteByte(0)
		} else {
			b.WriteString(singular(k.text))
		}
	}
	return b.String()
}

// wording is a text of some sizes, by place.
type wording struct {
	places []int
	text   document.Text
}

// texts merges the texts of all sizes: one where they differ in nothing but numbers, else one for each that says something else.
// A size without a text has nil.
func (m *merger) texts(list []document.Text) []wording {
	var said []wording
	var kinds []string
	for place, text := range list {
		if text == nil {
			continue
		}
		kind := skeleton(text)
		at := slices.Index(kinds, kind)
		if at < 0 {
			at = len(kinds)
			kinds, said = append(kinds, kind), append(said, wording{})
		}
		said[at].places = append(said[at].places, place)
	}
	for i := range said {
		var same [][]token
		for _, place := range said[i].places {
			same = append(same, tokens(list[place]))
		}
		said[i].text = m.merged(same)
	}
	return said
}

// merged is one text of several with one skeleton; a size without one has nil.
func (m *merger) merged(list [][]token) (text document.Text) {
	depth := 0 // of parentheses that are open
	first := slices.IndexFunc(list, func(t []token) bool { return t != nil })
	if first < 0 {
		return nil
	}
	for n, k := range list[first] {
		var of, has []string
		for _, tokens := range list {
			if tokens == nil {
				of = append(of, missing)
				continue
			}
			of, has = append(of, tokens[n].text), append(has, tokens[n].text)
		}
		written := slices.MaxFunc(has, func(a, b string) int { return len(a) - len(b) }) // strips, not strip
		if k.number {
			if written = has[0]; slices.ContainsFunc(has, func(text string) bool { return text != has[0] }) {
				written = m.Figures.behind(of, depth > 0)
			}
		}
		depth += strings.Count(k.text, "(") - strings.Count(k.text, ")")
		run := k.style
		run.Text = written
		if last := len(text) - 1; last >= 0 && text[last].Bold == run.Bold && text[last].Small == run.Small {
			text[last].Text += written
			continue
		}
		text = append(text, run)
	}
	return text
}

// about is what stands before a number that is rounded.
const about = "about "

// missing stands in the place of a size that has no such number.
const missing = "–"

// behind is numbers behind one another: the first, and the others in parentheses, or in brackets within parentheses.
func (signs *Keys) behind(of []string, inside bool) string {
	before := ""
	if slices.ContainsFunc(of, func(text string) bool { return strings.HasPrefix(text, about) }) {
		before = about // for all of them, since it would be read so
	}
	between, opens, closes := ", ", " (", ")"
	var rest []string
	for i, text := range of {
		if i > 0 && strings.HasPrefix(text, signs.Opens) {
			text = signs.Bare + strings.TrimPrefix(text, signs.Opens)
		}
		rest = append(rest, strings.ReplaceAll(text, about, ""))
		if strings.Contains(text, ", ") || strings.Contains(text, " and ") {
			between = "; "
		}
	}
	if inside {
		opens, closes = " [", "]"
	}
	return before + rest[0] + opens + strings.Join(rest[1:], between) + closes
}

// sentencesOf are the sentences of texts.
func sentencesOf(list []document.Text) [][]document.Text {
	all := make([][]document.Text, len(list))
	for i, t := range list {
		all[i] = sentences(t)
	}
	return all
}

// sentences are those of a text, each without the blank behind it.
func sentences(t document.Text) (list []document.Text) {
	var one document.Text
	for _, r := range t {
		for {
			at := sentenceEnd(r.Text)
			if at < 0 {
				break
			}
			whole := r
			whole.Text = r.Text[:at]
			list = append(list, append(one, whole))
			one, r.Text = nil, r.Text[at+1:]
		}
		if r.Text != "" {
			one = append(one, r)
		}
	}
	if len(one) > 0 {
		list = append(list, one)
	}
	return list
}

// sentenceEnd is where the blank behind the first sentence of a text stands, -1 for none.
func sentenceEnd(text string) int {
	for from := 0; ; {
		at := strings.Index(text[from:], ". ")
		if at < 0 {
			return -1
		}
		at += from + 1
		if next, _ := utf8.DecodeRuneInString(text[at+1:]); unicode.IsUpper(next) {
			return at
		}
		from = at
	}
}

// joinedTexts is texts behind one another, with blanks between them.
func joinedTexts(list []document.Text) (text document.Text) {
	for _, t := range list {
		if len(t) == 0 {
			continue
		}
		if len(text) > 0 {
			text = append(text, document.Run{Text: " "})
		}
		text = append(text, t...)
	}
	return text
}
