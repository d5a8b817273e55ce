package paper

import (
	"testing"

	"eighthturn/internal/diagram"
)

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
