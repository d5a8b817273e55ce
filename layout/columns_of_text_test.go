package layout

import (
	"testing"

	"github.com/rivo/uniseg"
)

// TestTextIsCutToColumns: of a text that is wider than a terminal has room its first, or its last, characters as a reader sees them are shown,
// as many as fit, beside an ellipsis; each is as wide as the Unicode Standard says (annex 11).
func TestTextIsCutToColumns(t *testing.T) {
	for _, text := range []string{"", "navy", "e\u0301é", "赤い布", "a赤b", "👩‍👩‍👧", "👩‍👩‍👧ab", "x👩‍👩‍👧", "🇦🇹🇩🇪", "\u0301a", "❤️", "\r\na", "한국"} {
		var seen []string
		for clusters := uniseg.NewGraphemes(text); clusters.Next(); {
			seen = append(seen, clusters.Str())
		}
		for columns := range uniseg.StringWidth(text) + 2 {
			first, last, width := "", "", 0
			for i, one := range seen {
				if width += uniseg.StringWidth(one); width > columns {
					first += "…"
					break
				}
				first += seen[i]
			}
			width = 0
			for i := len(seen) - 1; i >= 0; i-- {
				if width += uniseg.StringWidth(seen[i]); width > columns {
					last = "…" + last
					break
				}
				last = seen[i] + last
			}
			if got := firstColumns(text, columns); got != first {
				t.Errorf("the first %d columns of %q are %q, expected %q", columns, text, got, first)
			}
			if got := lastColumns(text, columns); got != last {
				t.Errorf("the last %d columns of %q are %q, expected %q", columns, text, got, last)
			}
		}
	}
}
