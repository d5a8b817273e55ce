package preview

import (
	"maps"
	"os"
	"slices"
	"strings"
	"testing"
)

// TestSaysWhatTheCommandSays: the report has the words and numbers of the command's own
// golden, section by section; heads of columns alone may differ.
func TestSaysWhatTheCommandSays(t *testing.T) {
	t.Parallel()
	layout, golden := scripted(t)
	top := draw(layout, drawing{}).top
	told := sectionsOf(golden)
	if len(told) < 5 {
		t.Fatalf("the golden has the sections %v", slices.Collect(maps.Keys(told)))
	}
	for _, s := range lightAndDark(top).Sections {
		var own []string
		for _, w := range s.Rows {
			own = append(own, wordsOf(strings.Join(slices.Concat(w.Cells, w.Under), " "))...)
		}
		heads := ""
		for _, h := range s.Heads {
			heads += " " + h.Head
		}
		if fault := unsaid(own, told[s.Title], wordsOf(heads)); fault != "" {
			t.Errorf("%s: %s", s.Title, fault)
		}
		delete(told, s.Title)
	}
	for title := range told {
		t.Errorf("the section %q is not in the report", title)
	}
}

// TestSaysWhatTheCommandSaysCatches: a word or number that differs is seen.
func TestSaysWhatTheCommandSaysCatches(t *testing.T) {
	t.Parallel()
	said := []string{"rust", "strong", "50.7"}
	for name, own := range map[string][]string{"another number": {"rust", "strong", "50.8"}, "too little": {"rust", "strong"}, "too much": {"rust", "strong", "50.7", "soft"}} {
		if unsaid(own, said, nil) == "" {
			t.Errorf("%s goes unnoticed", name)
		}
	}
}

// scripted is a layout of the command's script and what the command is to say of it.
func scripted(t *testing.T) (layout, golden string) {
	t.Helper()
	b, err := os.ReadFile("../../testdata/script/values.txt")
	must(t, err)
	_, rest, ok := strings.Cut(string(b), "-- nets.quilt --\n")
	_, golden, ok2 := strings.Cut(rest, "-- nets.golden --\n")
	if !ok || !ok2 {
		t.Fatal("the script has no nets.quilt with its golden")
	}
	layout, _, _ = strings.Cut(rest, "-- ")
	golden, _, _ = strings.Cut(golden, "\n-- ")
	return layout, golden
}

// sectionsOf are the words of a study by their headings, which alone begin at the margin.
func sectionsOf(text string) map[string][]string {
	list, title := map[string][]string{}, ""
	_, text, _ = strings.Cut(text, "\n")
	for line := range strings.Lines(text) {
		switch {
		case strings.TrimSpace(line) == "":
		case line[0] != ' ':
			title = strings.TrimSpace(line)
		default:
			list[title] = append(list[title], wordsOf(line)...)
		}
	}
	return list
}

func wordsOf(text string) []string {
	return slices.DeleteFunc(strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" \n:,;", r) }), func(w string) bool { return w == "-" })
}

// unsaid says which words two lists do not share, those of heads left out.
func unsaid(own, golden, heads []string) string {
	count := map[string]int{}
	for _, w := range own {
		count[w]++
	}
	for _, w := range golden {
		count[w]--
	}
	for _, w := range slices.Sorted(maps.Keys(count)) {
		switch n := count[w]; {
		case n > 0:
			return "the command does not say " + w
		case n < 0 && !slices.Contains(heads, w):
			return "the report does not say " + w
		}
	}
	return ""
}
