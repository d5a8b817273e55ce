package layout_test

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/golden"
	"eighthturn/layout"
)

// TestWhatHintsType: what an editor types where a hint is taken, of every message of the table; "-" for a hint that is advice alone.
func TestWhatHintsType(t *testing.T) {
	var all strings.Builder
	for _, c := range allCases(t) {
		text := c.text()
		_, _, list := layout.Read(text)
		for _, f := range list {
			if f.Hint == "" {
				continue
			}
			fmt.Fprintf(&all, "%s: %s:", c.name, f.Hint)
			for _, e := range f.Edits {
				fmt.Fprintf(&all, " type %q for %q", e.Text, text[e.Span.Start:e.Span.End])
			}
			if len(f.Edits) == 0 {
				all.WriteString(" -")
			}
			all.WriteByte('\n')
		}
	}
	golden.Text(t, filepath.Join("testdata", "typed.txt"), []byte(all.String()))
}
