package layout_test

import (
	"slices"
	"strings"
	"testing"
	"unicode"

	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/unicode/norm"

	"eighthturn/layout"
)

// TestExamplesCanBeTyped puts every example that hints show into a layout and wants it read.
func TestExamplesCanBeTyped(t *testing.T) {
	const fabrics = "fabric cream #f4ead7\nfabric rust #b5532a\nfabric teal #2f7d83\nfabric sky #8ab\n"
	const rest = "block V web wedges cream kites sky\nblock P plain piece cream\ngrid\n  V P\n"
	for _, s := range layout.Statements() {
		example := s.Example
		if !strings.HasPrefix(example, s.Word) {
			t.Errorf("the example of %q is %q", s.Word, example)
		}
		text, rest := fabrics, rest
		switch s.Word {
		case "grid":
			continue // its hint is in words of its own
		case "swap":
			text += "strip 4\nscraps bits cream sky rust\nblock S web wedges bits kites sky\n"
			rest += strings.Repeat("  S S S\n", 5)
			rest = strings.Replace(rest, "  V P\n", "", 1)
		case "strip":
		case "side":
		case "motif":
			text += "strip 4\nfabric garden stripes navy 2 cream 3\n"
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

// TestOtherWords wants every word that goes by another here to lead to its statement,
// capitals or not, and none to be a statement's own or another's.
func TestOtherWords(t *testing.T) {
	seen := map[string]string{}
	for _, s := range layout.Statements() {
		if got := layout.OtherWord(s.Word); got != "" {
			t.Errorf("the statement %q leads to %q", s.Word, got)
		}
		for _, word := range s.Aliases() {
			if got := layout.OtherWord(strings.ToUpper(word)); got != s.Word || seen[word] != "" || word != strings.ToLower(word) {
				t.Errorf("%q leads to %q, and is a word for %s%s", word, got, s.Word, seen[word])
			}
			seen[word] = " and " + s.Word
		}
	}
	for word, statement := range map[string]string{"colour": "fabric", "block-size": "side", "sashing": "sash", "rows": "grid", "author": "designer", "wadding": "batting", "WOF": "usable-width"} {
		if got := layout.OtherWord(word); got != statement {
			t.Errorf("%q leads to %q", word, got)
		}
	}
}

// TestEntries holds each statement's entry together: it says all that help and hints need,
// its form shows its options, what may follow it are options, and what it builds on is there
// and does not build on it.
func TestEntries(t *testing.T) {
	for _, wrong := range entryFaults(layout.Statements()) {
		t.Error(wrong)
	}
}

func entryFaults(list []layout.Statement) []string {
	var wrong []string
	byWord := map[string]layout.Statement{}
	for _, s := range list {
		byWord[s.Word] = s
	}
	for _, s := range list {
		words := strings.FieldsFunc(s.Form+" "+s.Summary, func(r rune) bool { return strings.ContainsRune(" []|/,()", r) })
		options := map[string]bool{"/": true}
		for _, o := range s.Options {
			options[o.Word] = true
			if !slices.Contains(words, o.Word) && !strings.Contains(layoutForms[s.Word], o.Word) {
				wrong = append(wrong, s.Word+" does not show its option "+o.Word)
			}
			if !strings.HasPrefix(o.Example, o.Word) && o.Example != "" {
				wrong = append(wrong, s.Word+" has another example for "+o.Word)
			}
		}
		for i, part := range strings.Split(s.Next(), `"`) {
			if i%2 == 1 && !options[part] {
				wrong = append(wrong, s.Word+" may go on with "+part+", which is no option")
			}
		}
		if s.Summary == "" || !strings.HasPrefix(s.Form, s.Word) || !strings.HasPrefix(s.Example, s.Word) {
			wrong = append(wrong, s.Word+" lacks its form, example or summary")
		}
		if comesBack(byWord, s.Word, s.Word, len(list)) {
			wrong = append(wrong, s.Word+" builds on itself, or on what is not there")
		}
	}
	return wrong
}

// layoutForms is the options of statements that their forms leave to the reference.
var layoutForms = map[string]string{"block": "line about"}

// comesBack says whether what a statement builds on leads to a word again, or to none.
func comesBack(byWord map[string]layout.Statement, from, word string, deep int) bool {
	s, known := byWord[from]
	if !known || deep < 0 {
		return true
	}
	return slices.ContainsFunc(s.After(), func(w string) bool { return w == word || comesBack(byWord, w, word, deep-1) })
}

// TestEntriesNotice spoils an entry in each way.
func TestEntriesNotice(t *testing.T) {
	good := layout.Statement{Word: "a", Form: "a [b]", Summary: "c", Example: "a b", Options: []layout.Option{{Word: "b"}}}
	if wrong := entryFaults([]layout.Statement{good}); len(wrong) > 0 {
		t.Fatal(wrong)
	}
	for name, spoil := range map[string]func(*layout.Statement){
		"form": func(s *layout.Statement) { s.Form = "x [b]" }, "example": func(s *layout.Statement) { s.Example = "" },
		"summary": func(s *layout.Statement) { s.Summary = "" }, "option": func(s *layout.Statement) { s.Form = "a" },
		"option's example": func(s *layout.Statement) { s.Options[0].Example = "c 4" },
		"next":             func(s *layout.Statement) { s.SetNext(`"d"`) },
		"builds on itself": func(s *layout.Statement) { s.SetAfter("a") },
		"builds on none":   func(s *layout.Statement) { s.SetAfter("z") },
	} {
		bad := good
		bad.Options = slices.Clone(good.Options)
		spoil(&bad)
		if len(entryFaults([]layout.Statement{bad})) == 0 {
			t.Errorf("an entry with another %s passes", name)
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
	for word := range layout.OwnWords() {
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
	for word := range layout.OwnWords() {
		design, _, list := layout.Read("side 6\nfabric navy #123\nblock " + word + " plain piece navy\ngrid\n  " + word + " " + word + "\n")
		if isStatement(word) == (design != nil) {
			t.Errorf("%q as a label: %v", word, list)
		}
	}
}
