package render

import (
	"eighthturn/internal/document"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// clean is text as it is printed everywhere: composed, with blanks drawn together, true
// fractions, and nothing that a file could not hold. A blank at either end stays.
func clean(text string) string {
	if plainASCII(text) {
		return Fractions(text)
	}
	text = norm.NFC.String(strings.ToValidUTF8(text, "\uFFFD"))
	var b strings.Builder
	b.Grow(len(text))
	blank := false
	for _, r := range text {
		switch {
		case breaksLine(r):
			if !blank {
				b.WriteByte(' ')
			}
			blank = true
			continue
		case unicode.IsControl(r), noncharacter(r):
			continue
		}
		b.WriteRune(r)
		blank = false
	}
	return Fractions(b.String())
}

// plainASCII says whether there is nothing to clean but fractions.
func plainASCII(text string) bool {
	for i := range len(text) {
		if c := text[i]; c < ' ' || c > '~' || c == ' ' && i > 0 && text[i-1] == ' ' {
			return false
		}
	}
	return true
}

// breaksLine says whether r is a blank at which a line may be broken; the blanks that hold
// words together stay as they are.
func breaksLine(r rune) bool {
	return unicode.IsSpace(r) && r != '\u00a0' && r != '\u202f'
}

func noncharacter(r rune) bool {
	return r&0xFFFE == 0xFFFE || 0xFDD0 <= r && r <= 0xFDEF
}

// line is text on one line without blanks at its ends.
func line(text string) string { return strings.TrimSpace(clean(text)) }

// runs is a text cleaned, without blanks at its ends and without empty runs.
func runs(t document.Text) document.Text {
	var list document.Text
	blank := true
	for _, r := range t {
		r.Text = clean(r.Text)
		if blank {
			r.Text = strings.TrimLeft(r.Text, " ")
		}
		if r.Text == "" {
			continue
		}
		blank = strings.HasSuffix(r.Text, " ")
		list = append(list, r)
	}
	for n := len(list); n > 0; n = len(list) {
		list[n-1].Text = strings.TrimRight(list[n-1].Text, " ")
		if list[n-1].Text != "" {
			break
		}
		list = list[:n-1]
	}
	return list
}

// textLine is a text without its styles, on one line.
func textLine(t document.Text) string { return strings.TrimSpace(runs(t).String()) }
