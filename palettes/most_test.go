package palettes

import (
	"slices"
	"strings"
	"testing"
)

// TestNeverMoreThanThreeFamilies: fabrics in four groups of values are sorted into three, so that the two groups that lie nearest are one.
func TestNeverMoreThanThreeFamilies(t *testing.T) {
	var areas []Area
	for _, lightness := range []float64{10, 22, 60, 90} {
		areas = append(areas, Area{Lightness: lightness, Size: 1})
	}
	if got := RelativeFamilies(areas); !slices.Equal(got, []Family{Dark, Dark, Medium, Light}) {
		t.Errorf("they are %v", got)
	}
}

// TestLongestWord: a name of as many letters as a word may have stays whole, and one letter more is cut.
func TestLongestWord(t *testing.T) {
	for n, want := range map[int]int{maxWordBytes - 1: maxWordBytes - 1, maxWordBytes: maxWordBytes, maxWordBytes + 1: maxWordBytes, maxWordBytes + 9: maxWordBytes} {
		if got := word(strings.Repeat("a", n)); len(got) != want {
			t.Errorf("of %d letters %d are left, wanted %d", n, len(got), want)
		}
	}
}
