package layout_test

import (
	"strings"
	"testing"
	"unicode"

	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/unicode/norm"

	"eighthturn/internal/blocks"
	"eighthturn/layout"
)

// TestExamplesCanBeTyped puts every example that hints show into a layout and wants it read.
func TestExamplesCanBeTyped(t *testing.T) {
	const fabrics = "fabric cream #f4ead7\nfabric rust #b5532a\nfabric teal #2f7d83\nfabric sky #8ab\n"
	const rest = "block V web wedges cream kites sky\nblock P plain piece cream\ngrid\n  V P\n"
	for _, s := range layout.Statements() {
		example := layout.Example(s.Word)
		if !strings.HasPrefix(example, s.Word) {
			t.Errorf("the example of %q is %q", s.Word, example)
		}
		text := fabrics
		switch s.Word {
		case "grid":
			continue // its hint is in words of its own
		case "strip":
		case "side":
		default:
			text += "strip 4\n"
		}
		if s.Word != "fabric" {
			text += "fabric navy #1f3350\n"
		}
		if example != "block W web wedges navy kites cream" {
			text += "block W web wedges navy kites cream\n"
		}
		text += example + "\n" + rest
		design, source, list := layout.Read(text)
		if design == nil {
			var report strings.Builder
			t.Errorf("%q is not read: %v\n%s", example, layout.Report(&report, "a.quilt", source, list), report.String())
		}
	}
}

// TestEveryStatementAlone wants an answer with a hint to each statement's word with nothing
// behind it, and with nonsense behind it.
func TestEveryStatementAlone(t *testing.T) {
	for _, s := range layout.Statements() {
		for _, line := range []string{s.Word, s.Word + " ???", s.Word + ` "???" ???`, s.Word + " 4 4 4"} {
			if line == "batting" {
				continue // needs nothing
			}
			_, _, list := layout.Read(swap(small, "strip 4\n", "strip 4\n"+line+"\n"))
			found := false
			for _, f := range list {
				found = found || f.Severity == layout.Error && f.Hint != ""
			}
			if !found {
				t.Errorf("%q gets no hint: %v", line, list)
			}
		}
	}
}

// TestOtherWords wants every word that goes by another here to lead to a statement.
func TestOtherWords(t *testing.T) {
	for word, statement := range map[string]string{
		"colour": "fabric", "Color": "fabric", "cloth": "fabric", "material": "fabric", "size": "side", "block-size": "side",
		"sashing": "sash", "rows": "grid", "name": "title", "author": "designer", "allowance": "seam", "wadding": "batting",
		"back": "backing", "WOF": "usable-width",
	} {
		if got := layout.OtherWord(word); got != statement || !isStatement(got) {
			t.Errorf("%q leads to %q", word, got)
		}
	}
	for _, s := range layout.Statements() {
		if got := layout.OtherWord(s.Word); got != "" {
			t.Errorf("the statement %q leads to %q", s.Word, got)
		}
	}
}

// TestNearest holds guesses to one slip in short words and more in long ones.
func TestNearest(t *testing.T) {
	list := []string{"navy", "cream", "rust", "light-blue", "W", "A2"}
	for text, want := range map[string]string{
		"nayv": "navy", "navvy": "navy", "nvy": "navy", "NAVI": "navy", "vany": "", "creme": "", "craem": "cream",
		"ligth-bleu": "", "light-bleu": "light-blue", "light-green": "", "Q": "", "A3": "A2", "B3": "", "": "", "teal": "", strings.Repeat("navy", 1000): "",
	} {
		if got := layout.NearestWord(text, list); got != want {
			t.Errorf("%.20q is taken for %q, want %q", text, got, want)
		}
	}
}

// TestWindows1252 checks the reading of bytes that are no UTF-8 against the table in package
// charmap, which is made from the WHATWG's Encoding Standard.
func TestWindows1252(t *testing.T) {
	for b := 0x80; b <= 0xff; b++ {
		want := charmap.Windows1252.DecodeByte(byte(b))
		got := layout.Windows1252(byte(b))
		if got != want && !(got == 0 && (unicode.IsControl(want) || want == unicode.ReplacementChar)) {
			t.Errorf("byte %#x is %q, want %q", b, got, want)
		}
	}
}

// TestLikeness checks letters that look like Latin ones against Unicode's scripts, and
// full-width ones against its compatibility mappings.
func TestLikeness(t *testing.T) {
	scripts := map[string]*unicode.RangeTable{"Cyrillic": unicode.Cyrillic, "Greek": unicode.Greek}
	found := map[string]int{}
	for r := rune(0x21); r < 0x10000; r++ {
		like, kind := layout.Likeness(r)
		if kind == "" {
			if like != unicode.ToLower(r) {
				t.Errorf("%q becomes %q without a reason", r, like)
			}
			continue
		}
		found[kind]++
		if like > unicode.MaxASCII || like <= ' ' {
			t.Errorf("%q looks like %q, which is no plain character", r, like)
		}
		if kind == "full-width" {
			if want := strings.ToLower(norm.NFKC.String(string(r))); string(like) != want {
				t.Errorf("%q looks like %q, want %q", r, like, want)
			}
		} else if !unicode.Is(scripts[kind], r) {
			t.Errorf("%q is not %s", r, kind)
		}
	}
	if found["Cyrillic"] != 2*19 || found["Greek"] != 2*14 || found["full-width"] != 94 {
		t.Errorf("found %v", found)
	}
}

// TestOwnWordsAreNotNames tries every word of the language as a fabric's name and wants it
// refused with another offered, and the one offered taken.
func TestOwnWordsAreNotNames(t *testing.T) {
	for word := range layout.OwnWords(blocks.Kinds()) {
		_, _, list := layout.Read("side 6\nfabric " + word + " #123\nblock P plain piece " + word + "\ngrid\n  P\n")
		if len(list) == 0 || !strings.Contains(list[0].Message, "own words") {
			t.Errorf("%q may be a name: %v", word, list)
			continue
		}
		name := strings.TrimPrefix(list[0].Hint, "call it ")
		design, _, list := layout.Read("side 6\nfabric " + name + " #123\nblock P plain piece " + name + "\ngrid\n  P\n")
		if design == nil || len(list) > 0 {
			t.Errorf("%q is offered and refused: %v", name, list)
		}
	}
}

// TestLabelsMayBeAnyOtherWord tries every word of the language as a block's label: only the
// statements are refused, since a row could not begin with them.
func TestLabelsMayBeAnyOtherWord(t *testing.T) {
	for word := range layout.OwnWords(blocks.Kinds()) {
		design, _, list := layout.Read("side 6\nfabric navy #123\nblock " + word + " plain piece navy\ngrid\n  " + word + " " + word + "\n")
		if isStatement(word) == (design != nil) {
			t.Errorf("%q as a label: %v", word, list)
		}
	}
}
