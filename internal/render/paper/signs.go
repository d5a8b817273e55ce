package paper

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"eighthturn/internal/diagram"
)

// stand is what a page shows for a sign that the fonts lack.
const stand = '\uFFFD'

// has says whether a PDF shows a sign: the fonts have it, and a font of two bytes can name it.
func has(letters *diagram.Lettering, r rune) bool {
	return r <= 0xFFFF && letters.Has(r, false) && letters.Has(r, true)
}

// shown is a text with a mark for each sign that the fonts lack.
func shown(letters *diagram.Lettering, text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case has(letters, r):
			return r
		case unseen(r):
			return -1
		}
		return stand
	}, text)
}

// unseen says whether a sign shows nothing by itself.
func unseen(r rune) bool {
	return unicode.Is(unicode.Cf, r) || unicode.Is(unicode.Variation_Selector, r)
}

// missing are the signs of texts that the fonts lack, each once, in their order of Unicode.
func missing(letters *diagram.Lettering, texts []string) []rune {
	var list []rune
	for _, text := range texts {
		for _, r := range text {
			if !has(letters, r) && !unseen(r) {
				list = append(list, r)
			}
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// mostMissing is how many signs are named one by one.
const mostMissing = 12

// signNames names signs by their places in Unicode, which the fonts can show.
func signNames(list []rune) string {
	var names []string
	for _, r := range list[:min(mostMissing, len(list))] {
		names = append(names, fmt.Sprintf("U+%04X", r))
	}
	if more := len(list) - len(names); more > 0 {
		names = append(names, fmt.Sprintf("%d more", more))
	}
	return strings.Join(names, ", ")
}
