package render

import (
	"strings"
	"unicode/utf8"
)

// tall says how much larger a fraction is set. The Go fonts' fractions are as high as their
// figures, and so too small to cut by.
type tall uint8

const (
	even     tall = iota
	single        // a sign of its own, such as ⅜
	composed      // of small figures and a slash, such as ⁵⁄₁₆
)

// set is the size of the letters, and how far they stand to the right and lower, in points.
func (st style) set() (size, right, lower float64) {
	switch st.tall {
	case single:
		return st.size * 1.3, st.size * 0.05, st.size * 0.1
	case composed:
		return st.size * 1.18, st.size * 0.05, 0
	}
	return st.size, 0, 0
}

const (
	vulgar  = "½¼¾⅛⅜⅝⅞"
	raised  = "⁰¹²³⁴⁵⁶⁷⁸⁹"
	dropped = "₀₁₂₃₄₅₆₇₈₉"
)

// pieces parts a text into fractions and what is between.
func (s *setter) pieces(text string, st style) []piece {
	var list []piece
	for text != "" {
		from, to, kind := fractionIn(text)
		if from > 0 {
			list = append(list, s.piece(text[:from], st))
		}
		if to > from {
			tall := st
			tall.tall = kind
			list = append(list, s.piece(text[from:to], tall))
		}
		text = text[to:]
	}
	return list
}

// fractionIn is where the first true fraction in a text stands, its end if there is none.
func fractionIn(text string) (from, to int, kind tall) {
	for at := 0; at < len(text); {
		n := strings.IndexAny(text[at:], vulgar+string(fractionSlash))
		if n < 0 {
			break
		}
		at += n
		r, size := utf8.DecodeRuneInString(text[at:])
		if r != fractionSlash {
			return at, at + size, single
		}
		from := len(strings.TrimRight(text[:at], raised))
		to := len(text) - len(strings.TrimLeft(text[at+size:], dropped))
		if from < at && to > at+size {
			return from, to, composed
		}
		at += size
	}
	return len(text), len(text), even
}
