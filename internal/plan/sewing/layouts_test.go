package sewing_test

import (
	"fmt"
	"iter"
	"testing"

	"eighthturn/internal/quilttest/invent"
	"eighthturn/samples"
)

// layouts is the samples and, but in short tests, hundreds of invented layouts, by name.
func layouts() iter.Seq2[string, string] {
	return func(yield func(string, string) bool) {
		for _, s := range samples.All() {
			if !yield(s.Name, s.Text) {
				return
			}
		}
		count := uint64(300)
		if testing.Short() {
			count = 40
		}
		for seed := range count {
			if !yield(fmt.Sprint("invented ", seed), invent.Layout(seed)) {
				return
			}
		}
	}
}
