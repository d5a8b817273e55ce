package layout_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"eighthturn/internal/quilttest/judges"
	"eighthturn/layout"
)

// told is the messages about a text with their lines and columns, blanks made alike.
func told(text string) []string {
	// Package measure writes blanks other than the space as escapes.
	escaped := strings.NewReplacer(`\t`, " ", `\u00a0`, " ", `\u2007`, " ", `\u2009`, " ", `\u202f`, " ", `\u3000`, " ")
	_, source, list := layout.Read(text)
	var all []string
	for _, f := range list {
		line, column := source.Position(f.Span.Start)
		words := strings.Join(strings.Fields(escaped.Replace(severityWord(f)+f.Message+" ("+f.Hint+")")), " ")
		all = append(all, fmt.Sprintf("%d:%d: %s", line, column, words))
	}
	return all
}

// withoutColumns takes the columns out of what was told.
func withoutColumns(all []string) []string {
	list := make([]string, len(all))
	for i, s := range all {
		parts := strings.SplitN(s, ":", 3)
		list[i] = parts[0] + parts[2]
	}
	return list
}

// plainTexts runs a test for every case that is plain text with line feeds alone.
func plainTexts(t *testing.T, test func(t *testing.T, text string)) {
	eachCase(t, func(t *testing.T, c testCase) {
		text := c.text()
		if !utf8.ValidString(text) || strings.ContainsAny(text, "\r\u0085\u2028\u2029\x00") {
			t.Skip("has line ends of its own, or is no text")
		}
		test(t, text)
	})
}

// sameAs wants another spelling of a text to be told of alike, and drawn alike if it is
// drawn.
func sameAs(t *testing.T, text, other string) {
	t.Helper()
	if a, b := told(text), told(other); !slices.Equal(a, b) {
		t.Errorf("%q\n got %q\nwant %q", other, b, a)
	}
	if design, _, _ := layout.Read(text); design != nil && !sameDrawing(text, other) {
		t.Errorf("%q is drawn otherwise", other)
	}
}

// TestLineEnds holds all line ends to the same result and the same line numbers.
func TestLineEnds(t *testing.T) {
	ends := []string{"\r\n", "\r", "\u2028", "\u2029", "\u0085"}
	plainTexts(t, func(t *testing.T, text string) {
		for _, end := range judges.Some(ends, 2) {
			sameAs(t, text, strings.ReplaceAll(text, "\n", end))
		}
		mixed, n := "", 0
		for line := range strings.SplitAfterSeq(text, "\n") {
			if rest, found := strings.CutSuffix(line, "\n"); found && rest != "" {
				line = rest + ends[n%len(ends)]
				n++
			} else if found {
				line = "\u2028" // a line feed would go with a carriage return before it
			}
			mixed += line
		}
		sameAs(t, text, mixed)
	})
}

// TestByteOrderMark holds a mark in front of a text to change nothing, columns neither.
func TestByteOrderMark(t *testing.T) {
	plainTexts(t, func(t *testing.T, text string) {
		if !strings.HasPrefix(text, "\ufeff") {
			sameAs(t, text, "\ufeff"+text)
		}
	})
}

// TestBlanks holds the blanks of keyboards and web pages to part words as a space does.
func TestBlanks(t *testing.T) {
	plainTexts(t, func(t *testing.T, text string) {
		if strings.Contains(text, `"`) && strings.Contains(text, "  ") {
			t.Skip("has runs of blanks in quotes")
		}
		for _, blank := range []string{"\t", "\u00a0", "\u2007", "\u2009", "\u202f", "\u3000"} {
			other := strings.ReplaceAll(text, " ", blank)
			if a, b := told(text), told(other); !slices.Equal(a, b) {
				t.Errorf("%q\n got %q\nwant %q", other, b, a)
			}
		}
		padded := strings.ReplaceAll(text, " ", " \t ")
		if a, b := withoutColumns(told(text)), withoutColumns(told(padded)); !slices.Equal(a, b) {
			t.Errorf("%q\n got %q\nwant %q", padded, b, a)
		}
	})
}

// TestOrderIsFree moves every statement that may stand anywhere to the front of its
// layout, with its rows, and wants the same drawing.
func TestOrderIsFree(t *testing.T) {
	eachCase(t, func(t *testing.T, c testCase) {
		text := strings.TrimPrefix(c.text(), "\ufeff")
		for _, s := range statementsOf(text) {
			switch s.word {
			case "fabric", "palette", "scraps", "border", "note", "colorway", "size":
				continue // these keep their order among themselves
			}
			if moved := s.toFront(); !sameDrawing(text, moved) {
				t.Errorf("with %s in front it is drawn otherwise\n%s\n%s", s.word, moved, reported(moved))
			}
		}
	}, accepted, warned)
}

func TestOrderThatIsNotFreeIsSeen(t *testing.T) {
	text := small + "border 1 navy\nborder 2 cream\n"
	list := statementsOf(text)
	if last := list[len(list)-1]; last.word != "border" || sameDrawing(text, last.toFront()) {
		t.Error("the outer border put inside is not seen")
	}
}

// placedStatement is a statement with its rows as a stretch of a text.
type placedStatement struct {
	text       string
	word       string
	start, end int
}

// toFront is the text with the statement in front.
func (s placedStatement) toFront() string {
	return s.text[s.start:s.end] + "\n" + s.text[:s.start] + s.text[s.end:]
}

// statementsOf is a layout's statements, each up to where the next begins.
func statementsOf(text string) []placedStatement {
	tree, _ := layout.Parse(layout.NewSource(text))
	var list []placedStatement
	for _, l := range tree.Lines {
		if l.Keyword == "" {
			continue
		}
		at := l.Tokens[0].Start
		if n := len(list); n > 0 {
			list[n-1].end = at
		}
		list = append(list, placedStatement{text, l.Keyword, at, len(text)})
	}
	return list
}
