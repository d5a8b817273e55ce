package lsp

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"unicode/utf16"

	"eighthturn/layout"
	"eighthturn/samples"
)

// TestWordsOfLayoutsAreOffered: wherever a layout says a word of the language, a fabric or a block, that word is offered to one who
// has typed all that stands before it. The samples use nearly the whole language.
func TestWordsOfLayoutsAreOffered(t *testing.T) {
	missed := map[string]int{}
	rest := samples.Sample{Name: "what the samples have no need of", Text: small + "note W \"Take your time.\"\nnote cutting \"Cut the borders first.\"\nsquare-up none\nspare none\nmotif bud cream across 1 down 1 pointing 45 mirrored\n"}
	for _, sample := range append(samples.All(), rest) {
		s := begin(t)
		s.opens(sample.Text)
		reading := layout.Inspect(sample.Text, nil)
		used, defined := map[int]layout.Mention{}, map[int]bool{}
		for _, m := range reading.Tree.Mentions() {
			if m.Defines == "" {
				used[m.Span.Start] = m
			} else {
				defined[m.Span.Start] = true
			}
		}
		asked := map[string]bool{}
		for number, l := range reading.Tree.Lines {
			for _, token := range l.Tokens {
				word := sample.Text[token.Start:token.End]
				m, name := used[token.Start]
				switch {
				case name:
					word = m.Name()
				case defined[token.Start] || !layout.IsOwn(word) && !isKind(word):
					continue
				}
				if asked[word] && l.Row {
					continue
				}
				asked[word] = true
				start := strings.LastIndexByte(sample.Text[:token.Start], '\n') + 1
				at := object{"textDocument": object{"uri": uri}, "position": position{number, len(utf16.Encode([]rune(sample.Text[start:token.Start])))}}
				var items []completionItem
				s.ask("textDocument/completion", at, &items)
				if !slices.ContainsFunc(items, func(i completionItem) bool { return strings.EqualFold(i.Label, word) }) {
					missed[fmt.Sprintf("%s: %s in %q", sample.Name, word, strings.TrimSpace(sample.Text[start:token.End]))]++
				}
			}
		}
	}
	for where := range missed {
		t.Error("not offered:", where)
	}
}
