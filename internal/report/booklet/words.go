package booklet

import (
	"fmt"
	"strconv"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
)

// count writes a number with its noun: "1 wedge", "2 wedges".
func count(n int, noun string) string { return measure.Count(n, noun) }

// plural is the plural of a noun.
func plural(noun string) string { return measure.Plural(noun) }

// verb is the form of a verb for a number of things: "is" for one, "are" for several.
func verb(n int, one, several string) string {
	if n == 1 {
		return one
	}
	return several
}

// listed joins words as a sentence does: "a", "a and b", "a, b and c".
func listed(words []string) string { return measure.List(words) }

// capital is a text with its first letter a capital; small letters of ASCII alone begin our sentences.
func capital(text string) string {
	if text == "" || text[0] < 'a' || text[0] > 'z' {
		return text
	}
	return string(text[0]-'a'+'A') + text[1:]
}

// sentence is a text with a capital and a full stop.
func sentence(text string) string {
	text = capital(strings.TrimSpace(text))
	if text == "" || strings.HasSuffix(text, ".") {
		return text
	}
	return text + "."
}

func para(format string, args ...any) document.Paragraph {
	return document.Paragraph{Text: document.Plain(fmt.Sprintf(format, args...))}
}

func paragraph(text string) document.Paragraph { return document.Paragraph{Text: document.Plain(text)} }

func item(text document.Text) document.Item { return document.Item{Text: text} }

func cell(text string) document.Cell { return document.Cell{Text: document.Plain(text)} }

func heading(level int, text string) document.Heading {
	return document.Heading{Level: level, Text: text}
}

// numeral is a number in digits.
func numeral(n int) string { return strconv.Itoa(n) }
