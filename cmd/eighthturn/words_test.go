package main

import (
	"strings"
	"testing"

	"eighthturn/internal/render"
	"eighthturn/internal/report"
)

// Every word leads to something, in text and for other programs alike, and the text fits a terminal.
func TestEveryWordIsExplained(t *testing.T) {
	v := language()
	if len(v.names()) < 40 {
		t.Errorf("only %d words", len(v.names()))
	}
	for _, word := range append(topics(), v.names()...) {
		about := v.about(word)
		if about.empty() || !strings.Contains(render.Text(report.Words(about.Vocabulary)), "\n") {
			t.Errorf("%q leads to nothing", word)
		}
		for _, line := range strings.Split(render.Text(report.Words(about.Vocabulary)), "\n") {
			if render.Columns(line) > pageWidth {
				t.Errorf("%q: %d columns: %s", word, render.Columns(line), line)
			}
		}
	}
	for _, nothing := range []string{"", " ", "…", "[", "nonsense"} {
		if !v.about(nothing).empty() {
			t.Errorf("%q leads to something", nothing)
		}
	}
}
