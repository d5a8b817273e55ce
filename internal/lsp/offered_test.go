package lsp

import (
	"slices"
	"testing"
)

// TestWordsThatAreNoNames: where a statement takes a word of its own beside lengths and names, that word is offered.
func TestWordsThatAreNoNames(t *testing.T) {
	s := begin(t)
	for line, want := range map[string][]string{
		"square-up ^":         {"none"},
		"spare ^":             {"none"},
		"size lap border ^":   {"none"},
		"size lap ^":          {"across", "down", "strip", "side", "border", "units"},
		"units ^":             {"inches", "cm"},
		"note ^":              {"cover", "fabric", "cutting", "sewing", "grid", "border", "finishing", "W", "P"},
		"motif bud ^":         {"cream", "dusk"},
		"motif bud cream ^":   {"across", "down", "pointing", "mirrored"},
		"border 2 dusk ^":     {"corners", "lengthwise"},
		"scraps more by ^":    {"set"},
		"scraps ^":            nil,
		"note W ^":            nil,
		"motif ^":             nil,
		"contrast ^":          nil,
		"title ^":             nil,
		"on-hand ^":           {"wedges", "kites", "corners"},
		"on-hand wedges ^":    {"shore", "dusk", "reversed"},
		"strip-set tide ^":    {"dusk", "blues", "rest", "equal"},
		"colorway night ^":    {"cream", "dusk"},
		"colorway n cream ^":  {"teal", "dusk"},
		"webs shore / ^":      {"shore", "cream", "reversed"},
		"fabric sea ^":        {"teal", "swatch", "stripes"},
		"fabric sea teal ^":   {"one-way", "on-hand", "usable-width"},
		"top-left ^":          {"web", "star"},
		"swap W 1 1 ^":        nil,
		"block N ^":           {"web", "halves"},
		"block N like ^":      {"W", "P"},
		"block N web ^":       {"wedges", "kites"},
		"block N tumblers ^":  {"pieces", "line", "about"},
		"block N web kites ^": {"cream", "blues"},
	} {
		text, at := here(small + line + "\n")
		s.opens(text)
		var items []completionItem
		s.ask("textDocument/completion", at, &items)
		for _, word := range want {
			if !slices.ContainsFunc(items, func(i completionItem) bool { return i.Label == word }) {
				t.Errorf("%s: %s is not offered", line, word)
			}
		}
		if want == nil && len(items) > 0 {
			t.Errorf("%s: %+v", line, items[0])
		}
	}
}

// TestNamesOfPalettesAndParts: a palette's fabric is defined where the palette is brought in; its name cannot be given to another, nor a block
// that of a part of the pattern, since a note could mean either.
func TestNamesOfPalettesAndParts(t *testing.T) {
	s := begin(t)
	text, at := here("strip 4\npalette tidewater\nfabric cream #f4ead7\nblock W web wedges ke^lp kites cream\ngrid\n W W\n W W\n")
	s.opens(text)
	var defined location
	s.ask("textDocument/definition", at, &defined)
	if defined.Range.Start.Line != 1 {
		t.Errorf("defined at %v", defined.Range)
	}
	for what, taken := range map[string]string{"kites cr^eam": "Kelp", "block ^W": "Cutting"} {
		where := what
		text, at := here(with("strip 4\npalette tidewater\nfabric cream #f4ead7\nblock W web wedges kelp kites cream\ngrid\n W W\n W W\n", map[string]string{"kites cr^eam": "kites cream", "block ^W": "block W"}[what], where))
		s.opens(text)
		at["newName"] = taken
		if err := s.try("textDocument/rename", at, nil); err == nil {
			t.Errorf("%s: %q is taken for a name", what, taken)
		}
		if at["newName"] = taken + "x"; s.try("textDocument/rename", at, nil) != nil {
			t.Errorf("%s: %q is not taken for a name", what, taken+"x")
		}
	}
}

// TestPlacesBehindTheText: a place behind the last line is the text's end.
func TestPlacesBehindTheText(t *testing.T) {
	text := newText("side 6\nfabric a navy", false)
	for _, p := range []position{{1, 99}, {2, 0}, {9, 3}} {
		if got := text.offset(p); got != len(text.string) {
			t.Errorf("%v is byte %d of %d", p, got, len(text.string))
		}
	}
}
