package booklet

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/plan/sewing"
)

// wrongSewing is what the sewing plan's own words say and the pattern does not as often: the ends of seams, trimming, sizes,
// pressing, and the order of columns.
func wrongSewing(d document.Document, r Reports) []string {
	said := ownTexts(d)
	var wrong []string
	wanted := sewingWords(r)
	for _, text := range slices.Compact(slices.Sorted(slices.Values(wanted))) {
		there, want := 0, 0
		for _, s := range said {
			there += strings.Count(s, text)
		}
		for _, s := range wanted {
			want += strings.Count(s, text)
		}
		if there < want {
			wrong = append(wrong, fmt.Sprintf("the pattern says %d times and not %d: %s", there, want, text))
		}
	}
	return wrong
}

// sewingWords are the sentences that a pattern has from the sewing plan. Blocks that are sewn like one before have its steps.
func sewingWords(r Reports) []string {
	w, b := sewing.Words{Plan: r.Sewing}, newBook(r, Options{})
	var list []string
	for i := range w.Blocks {
		k := &w.Blocks[i]
		for n := range k.Steps {
			if b.sewnLike(i) < 0 {
				list = append(list, w.StepLines(k, &k.Steps[n])[1:]...)
			}
		}
		for group := range k.Ways {
			for _, way := range w.PressLines(k, group) {
				if b.sewnLike(i) < 0 || !slices.Contains(list, way.Text) {
					list = append(list, way.Text)
				}
			}
		}
		for n := range k.Variants {
			if _, order, column := strings.Cut(w.VariantLine(k, &k.Variants[n]), "From the top: "); column && len(k.Variants) <= mostColourings {
				list = append(list, order)
			}
		}
	}
	for _, way := range w.LineWays() {
		list = append(list, way.Text)
	}
	if text := w.JointsLine(); text != "" {
		list = append(list, text)
	}
	return list
}
