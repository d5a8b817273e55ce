package render

import (
	"fmt"
	"strings"
	"testing"

	"golang.org/x/text/unicode/norm"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
)

func TestFractions(t *testing.T) {
	for text, want := range map[string]string{
		"3 1/2 in":          "3½ in",
		"1/4":               "¼",
		"(1/8)":             "(⅛)",
		"cut 12 7/8 x 3/4.": "cut 12⅞ x ¾.",
		"5/16 and 2 11/16":  "⁵⁄₁₆ and 2¹¹⁄₁₆",
		"31/32 in, 63/64":   "³¹⁄₃₂ in, ⁶³⁄₆₄",
		"2/3 yd":            "²⁄₃ yd",
		"1/2-inch":          "½-inch",
		"-1/2":              "-½",
		"7/7/2026":          "7/7/2026",
		"1/2/2026":          "1/2/2026",
		"2026/1/2":          "2026/1/2",
		"24/7":              "24/7",
		"01/02 and 1/02":    "01/02 and 1/02",
		"01/2 1/016":        "01/2 1/016",
		"2/4":               "2/4",
		"9/8":               "9/8",
		"1/20":              "1/20",
		"1/2a":              "1/2a",
		"A1/2":              "A1/2",
		"0.1/2":             "0.1/2",
		"1/2.5":             "1/2.5",
		"B2 1/2":            "B2 ½",
		"1/":                "1/",
		"/2":                "/2",
		"3  1/2":            "3  ½",
		"":                  "",
	} {
		if got := Fractions(text); got != want {
			t.Errorf("Fractions(%q) is %q, want %q", text, got, want)
		}
	}
}

// TestFractionsReadBack: of all fractions of two numbers those are set that a ruler or a shop has, in lowest terms, and by the tables of Unicode
// (NFKC, Standard Annex 15) they are the same fractions still; whatever stands before or behind that makes it another number or a name keeps it
// as it was.
func TestFractionsReadBack(t *testing.T) {
	sixteenths := map[int]bool{2: true, 3: true, 4: true, 8: true, 16: true, 32: true, 64: true}
	common := func(a, b int) int {
		for b > 0 {
			a, b = b, a%b
		}
		return a
	}
	for under := range 130 {
		for over := range under + 3 {
			text := fmt.Sprintf("cut %d/%d in", over, under)
			want := text
			if sixteenths[under] && over > 0 && over < under && common(over, under) == 1 {
				want = strings.ReplaceAll(text, "/", "\u2044")
			}
			if got := norm.NFKC.String(Fractions(text)); got != want || want != text && strings.ContainsAny(Fractions(text), "/0123456789") {
				t.Errorf("%s: %s", text, Fractions(text))
			}
		}
	}
	for _, before := range []string{"", " ", "(", "-", "x ", "7  ", "é ", "\"", "+", "½ "} {
		for _, behind := range []string{"", " in", ".", ". ", ", ", ":", ") ", "-", ".a", "!", "”"} {
			if got, want := Fractions(before+"3/4"+behind), before+"¾"+behind; got != want {
				t.Errorf("%q: %q, expected %q", before+"3/4"+behind, got, want)
			}
			for _, whole := range []string{"1", "12", "(7", "x 120"} { // a whole number before it keeps no blank
				if got, want := Fractions(whole+" 3/4"+behind), whole+"¾"+behind; got != want {
					t.Errorf("%q: %q, expected %q", whole+" 3/4"+behind, got, want)
				}
			}
		}
	}
	for _, other := range []string{"a3/4", "é3/4", "½3/4", ".3/4", "1.3/4", "/3/4", ",3/4", "⁄3/4", ":3/4", "#3/4", "3/4a", "3/4/5", "3/4.5", "3/4,5", "3/4:5", "3/4#", "3/4⁄", "3/4½", "3 / 4", "3/ 4", "33/4", "3/44"} {
		if got := Fractions(other); got != other {
			t.Errorf("%q: %q", other, got)
		}
	}
	for whole, want := range map[string]string{"a1 3/4": "a1 ¾", "1.5 3/4": "1.5 ¾", "#1 3/4": "#1 ¾", "1/5 3/4": "1/5 ¾", "7 1 3/4": "7 1¾", "1\u00a03/4": "1\u00a0¾"} {
		if got := Fractions(whole); got != want {
			t.Errorf("%q: %q, expected %q", whole, got, want)
		}
	}
}

// Every length that the rest of the program writes in fractions is set without a slash of a
// keyboard, and reads back as the same length.
func TestFractionsOfLengths(t *testing.T) {
	for n := range measure.NM(64 * 3) {
		length := n * measure.Inch / 64
		set := Fractions(measure.Text(length, measure.Inches))
		for _, r := range set {
			if r == '/' {
				t.Errorf("%q is not set as a fraction", set)
			}
		}
		if n%8 != 0 || n == 0 {
			continue
		}
		back, err := measure.Read(set)
		if err != nil || back.In(measure.Inches).NM() != length {
			t.Errorf("%q reads back as %v, %v", set, back, err)
		}
	}
}

func TestNumbersKeepTheirUnits(t *testing.T) {
	s := newBuilder(Options{}.look()).setter
	for text, want := range map[string]int{
		"cut 3 1/2 in wide": 3, "4 1/2 x 8 1/2 in": 1, "60 by 80 in": 1, "5 mm.": 1, "in the middle": 3, "12 strips": 2, "a x b": 3,
	} {
		if got := len(s.words(runs(document.Plain(text)), fixed(10, false, ink()))); got != want {
			t.Errorf("%q has %d words, want %d", text, got, want)
		}
	}
}

// TestBlanksBetweenRunsAreKept: a number in bold keeps its unit in plain and the blank between them, as wide as in one style.
func TestBlanksBetweenRunsAreKept(t *testing.T) {
	s := newBuilder(Options{}.look()).setter
	st := fixed(10, false, ink())
	parted := document.Text{{Text: "cut "}, {Text: "3 ", Bold: true}, {Text: "in", Bold: false}, {Text: " wide"}}
	list := s.words(runs(parted), st)
	if len(list) != 3 || len(list[1].pieces) != 3 {
		t.Fatalf("%d words, %v", len(list), list)
	}
	said, width := "", 0.0
	for _, p := range list[1].pieces {
		said += p.shown
		width += p.width
	}
	if said != "3 in" || width != list[1].width {
		t.Errorf("it reads %q, %.2f points wide of %.2f", said, list[1].width, width)
	}
}

func TestClean(t *testing.T) {
	for text, want := range map[string]string{
		"a\tb\r\nc": "a b c", "e\u0301": "é", "\xff": "\uFFFD", "a\x00\x1bb": "ab", "a\uFFFEb": "ab", " a  b ": " a b ", "5\u00a0in": "5\u00a0in", "a\u2028b": "a b",
	} {
		if got := clean(text); got != want {
			t.Errorf("clean(%q) is %q, want %q", text, got, want)
		}
	}
}

// TestFractionsInATextAreFound: a fraction of a sign of its own, or of raised figures, a slash and lowered ones; a slash that lacks either is none.
func TestFractionsInATextAreFound(t *testing.T) {
	for text, want := range map[string]string{
		"½": "½ 1", "a⅜ in": "⅜ 1", "¹⁄₂": "¹⁄₂ 2", "3⁵⁄₁₆ in": "⁵⁄₁₆ 2", "⁄₂": "", "¹⁄": "", "⁄": "", "1⁄2": "", "": "", "none": "", "⁄ ½": "½ 1", "¹⁄ ³⁄₄": "³⁄₄ 2", "⅞½": "⅞ 1",
	} {
		from, to, kind := fractionIn(text)
		got := ""
		if from < to {
			got = fmt.Sprint(text[from:to], " ", kind)
		}
		if got != want || want == "" && (from != len(text) || to != len(text) || kind != even) {
			t.Errorf("%q: %q from %d to %d, expected %q", text, got, from, to, want)
		}
	}
}
