package booklet

import (
	"strconv"
	"strings"

	"eighthturn/internal/document"
)

// Signs round the key of a figure: in a caption, and where a text refers to it. Neither stands in what people write.
const (
	opens   = "\uE000"
	defines = "\uE001"
	closes  = "\uE002"
	bare    = "\uE003" // in the place of opens where the number stands alone
)

// own is a text that someone wrote, without the signs that stand for figures.
func own(text string) string {
	if !strings.ContainsAny(text, opens+defines+closes+bare) {
		return strings.TrimSpace(text)
	}
	return strings.TrimSpace(strings.NewReplacer(opens, "", defines, "", closes, "", bare, "").Replace(text))
}

// see is a reference to a figure.
func see(key string) string { return opens + key + closes }

// caption is the caption of the figure with a key.
func caption(key, text string) document.Text {
	return document.Text{{Text: defines + key + closes + ".", Bold: true}, {Text: " " + text}}
}

// numbered numbers the figures in their order and puts the numbers where texts refer to them.
func numbered(d document.Document) document.Document {
	numbers := map[string]string{}
	mapped(d, func(text string) string {
		for rest := text; ; {
			_, after, ok := strings.Cut(rest, defines)
			if !ok {
				return text
			}
			key, tail, _ := strings.Cut(after, closes)
			if numbers[key] == "" {
				numbers[key] = strconv.Itoa(len(numbers) + 1)
			}
			rest = tail
		}
	})
	var pairs []string
	for key, n := range numbers {
		pairs = append(pairs, defines+key+closes, "Figure "+n, opens+key+closes, "Figure "+n, bare+key+closes, n)
	}
	r := strings.NewReplacer(pairs...) // no key is the beginning of another with its closing sign, so their order is nothing
	return mapped(d, r.Replace)
}

// mapped is a document with every text of its parts replaced, in the order in which they are read.
func mapped(d document.Document, f func(string) string) document.Document {
	parts := make([]document.Section, len(d.Sections))
	for i, p := range d.Sections {
		p.Blocks = document.Rewritten(p.Blocks, f)
		parts[i] = p
	}
	d.Sections = parts
	return d
}
