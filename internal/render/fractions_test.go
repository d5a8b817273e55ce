package render

import (
	"testing"

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

func TestClean(t *testing.T) {
	for text, want := range map[string]string{
		"a\tb\r\nc": "a b c", "e\u0301": "é", "\xff": "\uFFFD", "a\x00\x1bb": "ab", "a\uFFFEb": "ab", " a  b ": " a b ", "5\u00a0in": "5\u00a0in", "a\u2028b": "a b",
	} {
		if got := clean(text); got != want {
			t.Errorf("clean(%q) is %q, want %q", text, got, want)
		}
	}
}
