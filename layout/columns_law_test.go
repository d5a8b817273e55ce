package layout_test

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/invent"
	"eighthturn/layout"
	"eighthturn/samples"
)

// beginColumns are words with which statements go on that begin a column of the tidy layout: two blanks stand before them, or more. The
// others, such as cut and rest, belong to what stands before them.
func beginColumns() map[string][]string {
	return map[string][]string{
		"block": {"about", "corners", "like", "line", "piece", "wedges", "kites", "background"}, "border": {"corners"}, "fabric": {"on-hand", "usable-width", "stripes", "swatch"},
		"motif": {"across", "down", "mirrored", "pointing"}, "sash": {"around", "posts"}, "scraps": {"by", "deal"}, "size": {"across", "border", "down", "side", "strip", "units"},
		"strip-set": {"sets"}, "swap": {"with"}, "on-hand": {"corners", "wedges"},
	}
}

// lawColumns says that in a tidy layout these words begin columns, and cut, finished, rest, equal and reversed do not.
func lawColumns(tidy string) error {
	quoted, words := regexp.MustCompile(`"[^"]*"`), regexp.MustCompile(`( +)(\S+)`)
	for line := range strings.Lines(tidy) {
		line, _, _ = strings.Cut(quoted.ReplaceAllString(line, `""`), "#")
		statement, _, _ := strings.Cut(line, " ")
		for n, m := range words.FindAllStringSubmatch(line, -1) {
			word := strings.ToLower(m[2])
			if n > 0 && slices.Contains(beginColumns()[statement], word) && len(m[1]) < 2 {
				return fmt.Errorf("%q begins no column in %q", word, line)
			}
			if statement != "" && slices.Contains([]string{"cut", "finished", "rest", "equal"}, word) && len(m[1]) != 1 {
				return fmt.Errorf("%q is parted from what it belongs to in %q", word, line)
			}
		}
	}
	return nil
}

// TestOptionsBeginColumns tries the law on what there is and on invented layouts.
func TestOptionsBeginColumns(t *testing.T) {
	var texts []string
	for _, s := range samples.All() {
		texts = append(texts, s.Text)
	}
	for seed := range uint64(40) {
		texts = append(texts, invent.Layout(seed))
	}
	for _, text := range texts {
		tidy, _ := layout.Tidy(text)
		if err := lawColumns(tidy); err != nil {
			t.Errorf("%v in\n%s", err, tidy)
		}
	}
	for good, bad := range map[string]string{"block W  web  wedges glow  kites cream\n": "block W  web  wedges glow kites cream\n", "border 2 cut  navy\n": "border 2  cut  navy\n"} {
		if lawColumns(good) != nil || lawColumns(bad) == nil {
			t.Errorf("%q: %v, %q: %v", good, lawColumns(good), bad, lawColumns(bad))
		}
	}
}
