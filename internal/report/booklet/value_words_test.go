package booklet

import (
	"os"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/plan/cutting"
)

// TestValueStudiesExplainTheirAbbreviations: a pattern with a study of light and dark that names lightness explains it, and one
// without such a study does not.
func TestValueStudiesExplainTheirAbbreviations(t *testing.T) {
	for _, name := range []string{"b5", "m12"} {
		text, err := os.ReadFile("../../../testdata/values/judged/" + name + ".quilt")
		if err != nil {
			t.Fatal(err)
		}
		r := study(t, string(text), cutting.Options{})
		explains := func(d document.Document) bool {
			for _, table := range tables(d, "Before you begin", "Abbreviation") {
				if slices.ContainsFunc(table.Rows, func(row document.Row) bool { return row.Cells[0].Text.String() == "L*" }) {
					return true
				}
			}
			return false
		}
		with, without := Pattern(r, Options{ValueStudy: true}), Pattern(r, Options{})
		says := strings.Contains(strings.Join(textsOf(with), "\n"), "L* ")
		if !says || !explains(with) || explains(without) {
			t.Errorf("%s: L* is said: %v, explained: %v; without a study: %v", name, says, explains(with), explains(without))
		}
		if wrong := wrongAbbreviations(with, r); len(wrong) > 0 {
			t.Errorf("%s: %q", name, wrong)
		}
	}
}
