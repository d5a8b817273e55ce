package layout_test

import (
	"strings"
	"testing"

	"eighthturn/layout"
)

// TestEveryWordIsAToken: whatever is said of a line, each of its letters belongs to one word or to the comment at its end, words stand in
// their order, and blanks part them. A line that is refused for a character of it has none.
func TestEveryWordIsAToken(t *testing.T) {
	seen := 0
	for _, c := range allCases(t) {
		text := c.text()
		source := layout.NewSource(text)
		tree, _ := layout.Parse(source)
		for i, l := range tree.Lines {
			if len(l.Tokens) == 0 && l.Comment.Empty() {
				continue
			}
			seen++
			at := source.LineSpan(i + 1)
			if strings.HasPrefix(text[at.Start:], "\ufeff") && i == 0 { // which says that it is UTF-8
				at.Start += len("\ufeff")
			}
			rest := at.Start
			var words []layout.Span
			for _, token := range l.Tokens {
				words = append(words, token.Span)
			}
			if !l.Comment.Empty() {
				words = append(words, l.Comment)
			}
			for _, s := range words {
				if s.Start < rest || strings.TrimSpace(text[rest:s.Start]) != "" {
					t.Errorf("%s: %q stands before %q in %q", c.name, text[min(rest, s.Start):s.Start], text[s.Start:s.End], text[at.Start:at.End])
				}
				rest = s.End
			}
			if left := strings.TrimSpace(text[rest:at.End]); left != "" {
				t.Errorf("%s: %q belongs to no word of %q", c.name, left, text[at.Start:at.End])
			}
		}
	}
	if seen < 3000 {
		t.Errorf("only %d lines", seen)
	}
}

// TestOutlineIsTheTree: the outline of a text is its tree, as reading it whole finds it, with nothing checked.
func TestOutlineIsTheTree(t *testing.T) {
	for _, c := range allCases(t) {
		outline := layout.Outline(c.text())
		want, _ := layout.Parse(layout.NewSource(c.text()))
		if len(outline.Tree.Lines) != len(want.Lines) || len(outline.Tree.Mentions()) != len(want.Mentions()) || outline.Design != nil || outline.Faults != nil {
			t.Errorf("%s: %d lines, %d names, expected %d and %d", c.name, len(outline.Tree.Lines), len(outline.Tree.Mentions()), len(want.Lines), len(want.Mentions()))
		}
	}
}
