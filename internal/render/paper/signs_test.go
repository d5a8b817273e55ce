package paper

import (
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/diagram"
)

// foreign is a layout with names that the fonts lack in part, one of them beyond the signs of two bytes.
const foreign = "title \"夜\"\nstrip 4\nfabric rouge #802020\nfabric أزرق #204060\nfabric bee𠮷 #f0e8d8\nblock W web wedges rouge bee𠮷 kites أزرق\ngrid\n W\n"

// TestMissingSigns: a file of templates says which signs its letters lack, and is sound by another program all the same.
func TestMissingSigns(t *testing.T) {
	pdftotext, qpdf := program(t, "pdftotext", "Debian's poppler-utils"), program(t, "qpdf", "Debian's qpdf")
	file, made := templatesOf(t, laid(t, foreign), TemplateOptions{Foundations: true})
	if want := []rune("أرزق夜𠮷"); !slices.Equal(made.Missing, want) {
		t.Errorf("missing are %q, expected %q", made.Missing, want)
	}
	path := saved(t, "foreign.pdf", file)
	text := strings.Join(strings.Fields(output(t, pdftotext, "-enc", "UTF-8", path, "-")), " ")
	for _, want := range []string{"U+20BB7", "U+591C", "\uFFFD stands in their place", "bee\uFFFD"} {
		if !strings.Contains(text, want) {
			t.Errorf("the file does not say %q", want)
		}
	}
	output(t, qpdf, "--check", path)
}

// TestNothingMissing: what the fonts have is not said to be missing.
func TestNothingMissing(t *testing.T) {
	letters := diagram.NewLettering()
	if list := missing(letters, []string{"Žluťoučký kůň, Ελλάδα, Москва ⅜ ½ \u200d\ufe0f"}); len(list) > 0 {
		t.Errorf("%q are said to be missing", list)
	}
	if got := shown(letters, "a\u200dż夜𠮷"); got != "aż\uFFFD\uFFFD" {
		t.Errorf("shown is %q", got)
	}
}
