package render

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

const fractionSlash = '⁄'

// Fractions sets each fraction that is written with a slash as a true one: `3 1/2 in` as `3½
// in`, `5/16` as `⁵⁄₁₆`. It touches proper fractions in lowest terms by 2, 3, 4, 8, 16, 32 and
// 64 that stand alone, and so no dates or names of roads.
func Fractions(text string) string {
	if !strings.Contains(text, "/") {
		return text
	}
	var out []byte
	for at := 0; at < len(text); {
		if n, set := fractionAt(text, at); n != 0 {
			out = append(joined(out), set...)
			at += n
			continue
		}
		_, n := utf8.DecodeRuneInString(text[at:])
		out = append(out, text[at:at+n]...)
		at += n
	}
	return string(out)
}

// joined takes away the blank between a whole number and the fraction behind it.
func joined(out []byte) []byte {
	n := len(out)
	if n < 2 || out[n-1] != ' ' || !digit(out[n-2]) {
		return out
	}
	start := n - 2
	for start > 0 && digit(out[start-1]) {
		start--
	}
	if r, _ := utf8.DecodeLastRune(out[:start]); start > 0 && parts(r) {
		return out
	}
	return out[:n-1]
}

// parts says whether a number behind r is no number by itself.
func parts(r rune) bool {
	return unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.IsNumber(r) || strings.ContainsRune("./,⁄:#", r)
}

// fractionAt is the length in bytes of a fraction that begins at a byte of the text, 0 for
// none, and how it is set.
func fractionAt(text string, at int) (int, string) {
	over := digits(text[at:])
	if !strings.HasPrefix(text[at+len(over):], "/") {
		return 0, ""
	}
	under := digits(text[at+len(over)+1:])
	end := at + len(over) + 1 + len(under)
	if before, _ := utf8.DecodeLastRuneInString(text[:at]); at > 0 && parts(before) {
		return 0, ""
	}
	if !standsAlone(text[end:]) || !proper(over, under) {
		return 0, ""
	}
	return end - at, setFraction(over, under)
}

func standsAlone(rest string) bool {
	r, n := utf8.DecodeRuneInString(rest)
	if n == 0 || !parts(r) {
		return true
	}
	if r == '.' || r == ',' || r == ':' { // the end of a sentence, not a number that goes on
		next, n := utf8.DecodeRuneInString(rest[1:])
		return n == 0 || !unicode.IsDigit(next)
	}
	return false
}

func proper(over, under string) bool {
	a, _ := strconv.Atoi(over) // of what is no number, or too long a one, nothing is printed that reads the same
	b, _ := strconv.Atoi(under)
	if strconv.Itoa(a) != over || strconv.Itoa(b) != under { // 01/02 is a day
		return false
	}
	switch b {
	case 2, 4, 8, 16, 32, 64:
		return a < b && a%2 == 1
	case 3:
		return a == 1 || a == 2
	}
	return false
}

func setFraction(over, under string) string {
	if one, ok := map[string]string{
		"1/2": "½", "1/4": "¼", "3/4": "¾", "1/8": "⅛", "3/8": "⅜", "5/8": "⅝", "7/8": "⅞",
	}[over+"/"+under]; ok {
		return one
	}
	return lifted(over, []rune(raised)) + string(fractionSlash) + lifted(under, []rune(dropped))
}

func lifted(number string, set []rune) string {
	var s strings.Builder
	for i := range len(number) {
		s.WriteRune(set[number[i]-'0'])
	}
	return s.String()
}

func digits(text string) string {
	n := 0
	for n < len(text) && digit(text[n]) {
		n++
	}
	return text[:n]
}

func digit(b byte) bool { return '0' <= b && b <= '9' }
