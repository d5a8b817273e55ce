package main

import (
	"eighthturn/internal/measure"
	"eighthturn/internal/render"
	"fmt"
	"path/filepath"
	"strings"
	"testing"
)

func TestNearest(t *testing.T) {
	names := []string{"draw", "check", "tidy"}
	for word, want := range map[string]string{
		"drw": "draw", "DRAW": "draw", "drawn": "draw", "chekc": "", "chec": "check", "checks": "check", "tdy": "tidy", "tydi": "",
		"": "", "x": "", "preview": "", "dr": "", "raw": "draw",
	} {
		if got := nearest(word, names); got != want {
			t.Errorf("%q: %q, want %q", word, got, want)
		}
	}
}

func TestBeside(t *testing.T) {
	for name, want := range map[string]string{
		"harbor.quilt": "harbor.svg", "harbor": "harbor.svg", "a.b.quilt": "a.b.svg", ".quilt": ".quilt.svg",
		filepath.Join("sub", ".quilt"): filepath.Join("sub", ".quilt.svg"), filepath.Join("a.b", "c"): filepath.Join("a.b", "c.svg"),
	} {
		if got := beside(name, ".svg"); got != want {
			t.Errorf("%q: %q, want %q", name, got, want)
		}
	}
}

// Wrapping keeps every word in its order, and no line that could be broken is too wide.
func TestWrapped(t *testing.T) {
	for _, text := range []string{
		"", "one", strings.Repeat("word ", 60), strings.Repeat("x", 200) + " y " + strings.Repeat("z", 90),
		strings.Repeat("赤い ", 50), strings.Repeat("1 in, ", 5) + unbroken("12 half-square triangles and more of them still"),
	} {
		for _, indent := range []string{"", "    ", strings.Repeat(" ", 60)} {
			out := render.Wrapped(text, indent)
			if got, want := strings.Fields(out), strings.Fields(text); fmt.Sprint(got) != fmt.Sprint(want) {
				t.Errorf("%.30q: words are lost or moved", text)
			}
			for _, line := range strings.Split(strings.TrimSuffix(out, "\n"), "\n") {
				if render.Columns(line) > pageWidth && strings.Contains(strings.TrimSpace(line), " ") && !strings.Contains(text, "\u00a0") {
					t.Errorf("%.30q: a line of %d columns", text, render.Columns(line))
				}
				if !strings.HasPrefix(line, indent) {
					t.Errorf("%.30q: a line without its indent", text)
				}
			}
		}
	}
	if got := render.Wrapped(strings.Repeat("y", 70)+" "+unbroken("3 kites and"), ""); !strings.Contains(got, "\n3 kites and\n") {
		t.Errorf("unbroken words were broken: %q", got)
	}
}

func TestAligned(t *testing.T) {
	got := render.Aligned([][]string{{"a", " 9", "x"}, {"赤い", " 10"}, {"e\u0301", " 100", "y"}, {"only"}}, "  ")
	want := "  a        9   x\n  赤い    10\n  e\u0301      100   y\n  only\n"
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestPlural(t *testing.T) {
	for n, want := range map[int]string{0: "no kites", 1: "1 kite", 2: "2 kites"} {
		if got := measure.Count(n, "kite"); got != want {
			t.Errorf("%d: %q", n, got)
		}
	}
	if got := measure.List([]string{"A"}) + "; " + measure.List([]string{"A", "B"}) + "; " + measure.List([]string{"A", "B", "C"}) + measure.List(nil); got != "A; A and B; A, B and C" {
		t.Errorf("got %q", got)
	}
}

// Only the word for the severity at the head of a message stands out, and the text is otherwise the same.
func TestEmphasised(t *testing.T) {
	text := "a:b.quilt:4:20: error: note: warning: x\n    4 | a:b.quilt:1:1: error: y\n      | ^ error: z\na:b.quilt:5:1: note: there\na:b.quilt: error: q\nerror: elsewhere\n"
	got := emphasised("a:b.quilt", text)
	want := strings.NewReplacer("20: error:", "20: \x1b[1merror:\x1b[0m", "5:1: note:", "5:1: \x1b[1mnote:\x1b[0m", "quilt: error:", "quilt: \x1b[1merror:\x1b[0m").Replace(text)
	if got != want {
		t.Errorf("got\n%q\nwant\n%q", got, want)
	}
}

// unbroken is text that wrapped keeps on one line.
func unbroken(text string) string { return strings.ReplaceAll(text, " ", "\u00a0") }
