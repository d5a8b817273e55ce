package sewing_test

import (
	"fmt"
	"iter"

	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/samples"
)

// layouts is the samples and many invented layouts, by name.
func layouts() iter.Seq2[string, string] {
	return func(yield func(string, string) bool) {
		for _, s := range samples.All() {
			if !yield(s.Name, s.Text) {
				return
			}
		}
		for seed := range uint64(judges.Of(60, 300)) {
			if !yield(fmt.Sprint("invented ", seed), invent.Layout(seed)) {
				return
			}
		}
	}
}
