package report

import (
	"math/rand/v2"
	"strings"
	"testing"
)

// Looking at the places of a word's stem alone finds the same words as looking at the whole text.
func TestWordsAreFoundByTheirStems(t *testing.T) {
	parts := []string{"finish", "finished", "finishes", "un", "cut", "ting", "wedges", "wedge ruler", "s", "kite", "ed", "3 in", "3 inch", "3", " ", " ", " ", "m", "cm", "WOF", "L* 4", "L*", "ß", "日本", "\n", "-", "end piece", "piece", "dog ear", "half-square triangles", "nest", "post", "bias"}
	dice := rand.New(rand.NewPCG(1, 2))
	found := map[string]int{}
	for range 3000 {
		var text strings.Builder
		for range 1 + dice.IntN(7) {
			text.WriteString(parts[dice.IntN(len(parts))])
		}
		for _, w := range append(tradeWords(), shortForms()...) {
			if got, want := w.in(text.String()), w.used.MatchString(text.String()); got != want {
				t.Fatalf("%q: %s is found: %v, in the whole text: %v", text.String(), w.word, got, want)
			} else if got {
				found[w.word]++
			}
		}
	}
	if len(found) < 15 {
		t.Errorf("only %d words were found: %v", len(found), found)
	}
}
