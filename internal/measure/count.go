package measure

import (
	"strconv"
	"strings"
)

// Count writes a number with its noun: "1 block", "3 blocks", "no blocks".
func Count(n int, noun string) string {
	switch n {
	case 0:
		return "no " + Plural(noun)
	case 1:
		return "1 " + noun
	}
	return strconv.Itoa(n) + " " + Plural(noun)
}

// Plural is the plural of a noun, or of several words whose last is the noun.
func Plural(noun string) string {
	if first, ok := strings.CutSuffix(noun, "lf"); ok {
		return first + "lves"
	}
	if first, ok := strings.CutSuffix(noun, "y"); ok && first != "" && !strings.ContainsAny(first[len(first)-1:], "aeiou") {
		return first + "ies"
	}
	for _, hiss := range []string{"s", "x", "sh", "ch"} {
		if strings.HasSuffix(noun, hiss) {
			return noun + "es"
		}
	}
	return noun + "s"
}

// List joins words as a sentence does: "a", "a and b", "a, b and c"; words that hold a comma are parted by semicolons.
func List(words []string) string {
	last := len(words) - 1
	if last < 1 {
		return strings.Join(words, "")
	}
	for _, word := range words {
		if strings.Contains(word, ",") {
			return strings.Join(words[:last], "; ") + "; and " + words[last]
		}
	}
	return strings.Join(words[:last], ", ") + " and " + words[last]
}

// WithArticle is a noun, or a number and a noun, with a or an before it, by how it is said.
func WithArticle(noun string) string {
	for _, start := range []string{"a", "e", "i", "o", "u", "8", "11 ", "18 "} {
		if strings.HasPrefix(strings.ToLower(noun), start) {
			return "an " + noun
		}
	}
	return "a " + noun
}
