package layout

import (
	"fmt"
	"strings"
	"unicode"
)

// Letters of other scripts that look like Latin ones, small or capital, each above its
// likeness; chosen by eye. Capitals come here as small letters.
const (
	cyrillic     = "авекмнорстухіјѕһԁԛԝ"
	cyrillicLike = "abekmhopctyxijshdqw"
	greek        = "αβεζηικμνορτυχ"
	greekLike    = "abezhikmvoptux"
)

// likeness is the Latin letter, digit or mark that r looks like, and what r is.
func likeness(r rune) (like rune, kind string) {
	r = unicode.ToLower(r)
	for _, script := range [][3]string{{cyrillic, cyrillicLike, "Cyrillic"}, {greek, greekLike, "Greek"}} {
		if i := strings.IndexRune(script[0], r); i >= 0 {
			at := len([]rune(script[0][:i]))
			return rune(script[1][at]), script[2]
		}
	}
	if r >= '！' && r <= '～' {
		return unicode.ToLower(r - '！' + '!'), "full-width"
	}
	return r, ""
}

// plainLike is text with what looks like Latin letters made so, and a description of the
// first character that was not; "" if there was none.
func plainLike(text string) (plain, odd string) {
	plain = strings.Map(func(r rune) rune {
		like, kind := likeness(r)
		if kind != "" && odd == "" {
			odd = fmt.Sprintf("the %q here is a %s character", string(r), kind)
		}
		return like
	}, text)
	return plain, odd
}

// lookAlike is a hint where text is a word of the list but for characters that only look
// like its letters, "" if it is not.
func lookAlike(text string, list []string) hint {
	plain, odd := plainLike(text)
	if odd == "" {
		return hint{}
	}
	for _, w := range list {
		if foldName(plain) == foldName(w) {
			return write(w).saying(fmt.Sprintf("type %s anew: %s", w, odd))
		}
	}
	return hint{}
}

// numberHint says what to type for a word that was meant as a length, none if nothing in it
// tells what is wrong.
func numberHint(word string) hint {
	if plain, odd := plainLike(word); odd != "" && isNumeric(plain) {
		return write(plain).saying("write " + plain + ": " + odd)
	}
	if rest := strings.TrimLeft(word, "-−–—"); rest != word && isLength(rest) {
		return write(rest)
	}
	switch {
	case strings.ContainsFunc(word, func(r rune) bool { return unicode.IsDigit(r) && r > unicode.MaxASCII }):
		return advice("write lengths with the digits 0 to 9")
	case strings.ContainsAny(word, "×*") || isPair(word, "x") || isPair(word, "by"):
		return advice("one length is wanted here, not two")
	case strings.ContainsAny(word, "–—−‒‐‑"):
		plain := strings.TrimLeft(strings.Map(plainDash, word), "-")
		if isNumeric(plain) && strings.Count(plain, "-") == 1 && strings.Contains(plain, "/") {
			return write(plain).saying("write " + plain + " with a hyphen, or with a blank in its place")
		}
		return advice("one length is wanted here, without a dash")
	}
	return hint{}
}

func plainDash(r rune) rune {
	if strings.ContainsRune("–—−‒‐‑", r) {
		return '-'
	}
	return r
}

func isNumeric(text string) bool { return text != "" && strings.Trim(text, "0123456789/.,-") == "" }

// isPair says whether text is two numbers with a word between them.
func isPair(text, between string) bool {
	first, second, found := strings.Cut(strings.ToLower(text), between)
	return found && isNumeric(first) && isNumeric(second)
}
