package layout

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
)

// TestSlips: how many letters are wrong, missing or too many, by trying all ways, and one where two neighbors alone changed places.
func TestSlips(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 4))
	var apart func(a, b string) int
	apart = func(a, b string) int {
		if a == "" || b == "" {
			return len(a) + len(b)
		}
		if a[0] == b[0] {
			return apart(a[1:], b[1:])
		}
		return 1 + min(apart(a[1:], b), apart(a, b[1:]), apart(a[1:], b[1:]))
	}
	neighbours := func(a, b string) bool {
		for i := 0; i+1 < len(a); i++ {
			if swap := a[:i] + a[i+1:i+2] + a[i:i+1] + a[i+2:]; swap == b && a != b {
				return true
			}
		}
		return false
	}
	word := func() string {
		b := make([]byte, rng.IntN(7))
		for i := range b {
			b[i] = "abc"[rng.IntN(3)]
		}
		return string(b)
	}
	for range 3000 {
		a, b := word(), word()
		want := apart(a, b)
		if neighbours(a, b) {
			want = 1
		}
		if got := slips(a, b); got != want {
			t.Errorf("%q and %q are %d slips apart, expected %d", a, b, got, want)
		}
		list := []string{word(), word(), strings.ToUpper(word()), word()}
		best, least := "", min(max(1, len(a)/3)+1, len(a)) // a third of the letters may be wrong, one at the least, and never all
		for _, w := range list {
			if d := slips(a, strings.ToLower(w)); d < least {
				best, least = w, d
			}
		}
		if got := nearest(a, list); got != best {
			t.Errorf("of %q the nearest to %q is %q, expected %q", list, a, got, best)
		}
	}
}

// TestEditsMove: what stands at a byte before edits are made stands where moved says behind them; and a line is touched by those edits alone
// that lie on it.
func TestEditsMove(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 5))
	for range 500 {
		text := "ABCDEFGHIJ\nKLMNOPQRS\nTUVWXYZ"
		var edits []Edit
		for at := rng.IntN(5); at < len(text); at += 2 + rng.IntN(12) {
			end := min(len(text), at+rng.IntN(3))
			if strings.Contains(text[at:end], "\n") {
				continue
			}
			edits = append(edits, Edit{Span{at, end}, []string{"", "x", "yyy"}[rng.IntN(3)]})
			at = end
		}
		after := Apply(text, edits)
		source, result := NewSource(text), NewSource(after)
		on := map[int]bool{}
		for _, e := range edits {
			on[source.Line(e.Span.Start)] = true
		}
		for at := range text {
			if slices.ContainsFunc(edits, func(e Edit) bool { return e.Span.Start <= at && at < e.Span.End }) {
				continue
			}
			to := moved(at, edits)
			if after[to] != text[at] {
				t.Fatalf("%q by %v: %q at %d stands at %d of %q", text, edits, text[at], at, to, after)
			}
			if got := touches(result, Span{to, to + 1}, edits); text[at] != '\n' && got != on[source.Line(at)] {
				t.Errorf("%q by %v: the line of %q is touched: %v", text, edits, text[at], got)
			}
		}
	}
}

// sessionOf is a session for one text.
func sessionOf(text string) *session { return newParser(NewSource(text)).session }

// TestLeftOut: a word goes with the blanks behind it, at the end of a line with those before it, and never with those of another line.
func TestLeftOut(t *testing.T) {
	for text, want := range map[string]string{
		"a [b] c": "a c", "a [b]   c": "a c", "[b] c": "c", "a [b]": "a", "a  \t[b]  ": "a", "[b]": "", "x\na [b]\ny": "x\na\ny", "x\n[b] \ny": "x\n\ny", "a[b]c": "ac", "a [b]c": "a c",
	} {
		at := strings.Index(text, "[")
		plain := strings.NewReplacer("[", "", "]", "").Replace(text)
		edit := sessionOf(plain).without(Span{at, at + 1})
		if got := Apply(plain, []Edit{edit}); got != want || edit.Text != "" {
			t.Errorf("without b %q is %q, expected %q", text, got, want)
		}
	}
}

// TestMarksBetweenWords: marks that no layout has go, as blanks where they part words, and those in quotes and comments stay.
func TestMarksBetweenWords(t *testing.T) {
	for text, want := range map[string][2]string{
		"strip = 4":             {"strip 4", "leave out the equals sign"},
		"strip=4":               {"strip 4", "leave out the equals sign"},
		"strip: 4":              {"strip 4", "leave out the colon"},
		"strip 4;":              {"strip 4", "leave out the semicolon"},
		"strip 4 ;":             {"strip 4", "leave out the semicolon"},
		"a, b, c":               {"a b c", "leave out the commas"},
		"a = b, c":              {"a b c", "leave out the marks"},
		"a := b":                {"a b", "leave out the marks"},
		"a:: b":                 {"a b", "leave out the marks"},
		"; a":                   {"a", "leave out the semicolon"},
		"strip 4 ;;":            {"strip 4", "leave out the marks"},
		"strip 4::":             {"strip 4", "leave out the marks"},
		"strip 4 ; ;":           {"strip 4", "leave out the semicolons"},
		":: a :":                {"a", "leave out the marks"},
		"a, b # c, d":           {"a b # c, d", "leave out the comma"},
		"a: \"b, c\"":           {"a \"b, c\"", "leave out the colon"},
		"a b #c, d":             {"a b #c d", "leave out the comma"},
		"a  ,  b":               {"a  b", "leave out the comma"},
		"a ,":                   {"a", "leave out the comma"},
		"fabric navy,\t#1f3350": {"fabric navy\t#1f3350", "leave out the comma"},
		"strip 4":               {"strip 4", ""},
		"\"a, b\"":              {"\"a, b\"", ""},
		"# a, b":                {"# a, b", ""},
		"x=1;y=2":               {"x 1 y 2", "leave out the marks"},
	} {
		h := sessionOf(text).markHint(Span{0, len(text)})
		if got := Apply(text, h.edits); got != want[0] || h.words != want[1] {
			t.Errorf("%q becomes %q (%s), expected %q (%s)", text, got, h.words, want[0], want[1])
		}
	}
}

// TestWordsOfHints: small answers to words, each at its bounds.
func TestWordsOfHints(t *testing.T) {
	for n := 35; n < 60; n++ {
		word := strings.Repeat("é", n)
		want := word
		if n > 40 {
			want = strings.Repeat("é", 40) + "…"
		}
		if got := shorten(word); got != want {
			t.Errorf("%d letters are shown as %q", n, got)
		}
	}
	for text, want := range map[string]bool{"60 x 80": true, "60x80": true, "60 × 80": true, "60 by 80": true, "60*80": true, "60 X 80 in": true, "60": false, "x 80": false, "60 x": false, "a x 80": false, "60 y 80": false, "1/2 x 3,5": true, "6 by a": false} {
		if twoLengths(text) != want {
			t.Errorf("%q are two lengths: %v", text, !want)
		}
	}
	for text, want := range map[string]bool{"": false, "4": true, "1/2": true, "3,5": true, "4-5": true, "4a": false, "a": false, ".": true} {
		if isNumeric(text) != want {
			t.Errorf("%q is a number: %v", text, !want)
		}
	}
	for text, want := range map[string]string{"a:b": "a", "a=b": "a", "a,": "a", "a;b": "a", ":a": ":a", "ab": "ab", "": ""} {
		if got := bareWord(text); got != want {
			t.Errorf("%q begins with %q, expected %q", text, got, want)
		}
	}
	for text, want := range map[string]string{"#dark": "shell", "#": "", "d#": "", "// a": "foreign", "--a": "foreign", "; a": "foreign", "/* a": "foreign", "/a": "", "-a": "", "*a": "", "a//": ""} {
		got := ""
		if isShellComment(text) {
			got += "shell"
		}
		if isForeignComment(text) {
			got += "foreign"
		}
		if got != want {
			t.Errorf("%q is taken for a comment of sort %q, expected %q", text, got, want)
		}
	}
	for text, want := range map[string]string{"": "\n", "a": "\n", "a\nb\r\n": "\n", "\r\na\n": "\r\n", "a\rb": "\r", "\n\r\n": "\n"} {
		if got := sessionOf(text).lineEnd(); got != want {
			t.Errorf("lines of %q end with %q", text, got)
		}
	}
	for want, got := range map[string]error{
		"the photos down to this one have more than 300 million pixels together": tooLarge(MaxPhotosPixels+1, 0),
		"the photos down to this one have more than 250 MB together":             tooLarge(MaxPhotosPixels, MaxPhotosBytes+1),
	} {
		if got == nil || got.Error() != want {
			t.Errorf("%v, expected %s", got, want)
		}
	}
	if err := tooLarge(MaxPhotosPixels, MaxPhotosBytes); err != nil {
		t.Error(err)
	}
	if got := wordsInQuotes(`"/" and a second value, "posts" or "around"`); !slices.Equal(got, []string{"posts", "around"}) {
		t.Errorf("the words are %q", got)
	}
	for text, want := range map[string]string{
		"−4": "write 4", "-3 1/2": "write 3 1/2", "–5": "write 5", "4×5": "one length is wanted here, not two", "4*5": "one length is wanted here, not two", "4x5": "one length is wanted here, not two",
		"4by5": "one length is wanted here, not two", "4bx5": "", "٤": "write lengths with the digits 0 to 9", "3–1/2": "write 3-1/2 with a hyphen, or with a blank in its place",
		"4–5": "one length is wanted here, without a dash", "3—1/2—1": "one length is wanted here, without a dash", "3–a": "one length is wanted here, without a dash", "four": "", "4": "", "": "",
		"４": `write 4: the "４" here is a full-width character`, "3‑1/4": "write 3-1/4 with a hyphen, or with a blank in its place", "--": "",
	} {
		if got := numberHint(text); got.words != want {
			t.Errorf("of %q it is said %q, expected %q", text, got.words, want)
		}
	}
	s := sessionOf("")
	for text, want := range map[string]string{
		`"navy"`: "write navy", "navy!": "write navy", "2navy": "write navy", "navy-": "write navy", "-_navy_": "write navy", "dark.green": "write darkgreen", "na:vy": "", "navy:": "write navy", ":navy": "write navy", "123": "", "cut!": "", "n_1-a": "write n_1-a",
		"é" + strings.Repeat("a", MaxNameChars-1) + "!": "write é" + strings.Repeat("a", MaxNameChars-1), "é" + strings.Repeat("a", MaxNameChars) + "!": "",
	} {
		if got := s.nameHint(text); got.words != want {
			t.Errorf("of the name %q it is said %q, expected %q", text, got.words, want)
		}
	}
	for text, want := range map[string]string{"strip set": "write strip-set", "Strip  SET x": "write strip-set", "top left": "write top-left", "strip": "", "strip x": "", "usable\twidth 4": "write usable-width"} {
		s := sessionOf(text)
		first, _, _ := strings.Cut(strings.ReplaceAll(text, "\t", " "), " ")
		h := s.joined(Span{0, len(first)}, s.words)
		if h.words != want {
			t.Errorf("%q: %q, expected %q", text, h.words, want)
		}
		if want != "" && !strings.HasPrefix(Apply(text, h.edits), strings.TrimPrefix(want, "write ")) {
			t.Errorf("%q becomes %q", text, Apply(text, h.edits))
		}
	}
	for text, want := range map[string]string{"Navy": "navy", "NAVY-1": "navy-1", "navy": "navy", "É": "é", "e\u0301": "é", "Z": "z", "@[`{": "@[`{", "A": "a"} {
		if got := foldName(text); got != want {
			t.Errorf("%q is compared as %q", text, got)
		}
	}
	for text, want := range map[string]bool{"a": true, "a1": true, "1a": false, "a-b_c": true, "-a": false, "_a": false, "": false, "é": true, "a\u0301": true, "\u0301a": false, "a b": false, "a.b": false, "\xff": false, "a\xff": false, "赤": true} {
		if isName(text) != want {
			t.Errorf("%q is a name: %v", text, !want)
		}
	}
	for n := MaxNameChars - 1; n < MaxNameChars+2; n++ {
		word := strings.Repeat("é", n)
		if good := n <= MaxNameChars; IsName(word) != good || IsFree(word, Cloths) != good || IsFree(word, Labels) != good {
			t.Errorf("a name of %d letters is one: %v", n, IsName(word))
		}
	}
	for word, want := range map[string][2]bool{"navy": {true, true}, "cut": {false, true}, "strip": {false, false}, "12": {false, true}, "1a": {false, false}, "wedges": {false, true}, "": {false, false}} {
		if got := [2]bool{IsFree(word, Cloths), IsFree(word, Labels)}; got != want {
			t.Errorf("%q may be a name and a label: %v", word, got)
		}
	}
}

// TestLabelsApart: a word that is labels without blanks is taken apart, unless it is one label, too long or has another letter.
func TestLabelsApart(t *testing.T) {
	c := &checker{session: sessionOf("")}
	for _, label := range []string{"W", "P", "é"} {
		c.labels.define(NameNode{Text: label}, &entry{is: aBlock})
	}
	c.labels.poison("x")
	for word, want := range map[string]int{"WW": 2, "WP.": 3, "wpé": 3, "W": 0, "": 0, "WQ": 0, "Wx": 0, "..": 2, strings.Repeat("W", MaxNameChars): MaxNameChars, strings.Repeat("W", MaxNameChars+1): 0} {
		if got := c.splitLabels(word); len(got) != want || want > 0 && strings.Join(got, "") != word {
			t.Errorf("%q is taken apart as %q", word, got)
		}
	}
}

// TestManyMessagesGuessNoMore: up to so many messages come with a guess at what was meant, and none behind them.
func TestManyMessagesGuessNoMore(t *testing.T) {
	for _, count := range []int{maxGuesses - 1, maxGuesses, maxGuesses + 1} {
		text := "strip 4\nfabric navy #1f3350\nblock W web wedges navy kites navy\ngrid\n  W W\n  W W\n"
		var lines strings.Builder
		for i := range count {
			fmt.Fprintf(&lines, "scraps p nvy%d\n", i)
		}
		_, _, list := Read(text + lines.String() + "scraps p nvay\n")
		last := list[len(list)-1]
		if guessed := last.Hint != ""; len(list) != count+1 || guessed != (count < maxGuesses) {
			t.Errorf("behind %d messages the hint is %q", count, last.Hint)
		}
	}
}

// TestLongNamesEndBeforeColors: of a name of several words the color is the last one that stands before the print's name, whatever color
// words that name has.
func TestLongNamesEndBeforeColors(t *testing.T) {
	for _, mark := range []string{"\"", "“"} {
		_, _, list := Read("strip 4\nfabric deep sea #123456 " + mark + "a red b\"\nblock W web wedges deep-sea kites deep-sea\ngrid\n  W W\n  W W\n")
		if len(list) == 0 || list[0].Message != `a fabric's name is one word, found "deep sea" before the color #123456` || list[0].Hint != "write deep-sea #123456" {
			t.Errorf("%s: %v", mark, list)
		}
	}
}

// TestCommentsAtWords: a comment begins at a # with a blank or the line's end behind it, right behind a word as well; any other # is the word's.
func TestCommentsAtWords(t *testing.T) {
	for line, want := range map[string]string{
		"fabric sea navy# dark": "# dark", "fabric sea navy#": "#", "fabric sea #123456#": "#", "fabric sea navy # dark": "# dark", "fabric sea #123456": "", "fabric sea# navy": "# navy", "side 6# finished": "# finished", "# side 6": "# side 6", "#side 6": "#side 6",
	} {
		source := NewSource(line + "\n")
		tree, _ := Parse(source)
		if c := tree.Lines[0].Comment; source.Text[c.Start:c.End] != want {
			t.Errorf("%s: the comment is %q", line, source.Text[c.Start:c.End])
		}
	}
}

// TestManyMessagesAdviseNoMore: what is advised behind so many messages, and behind one more, of labels, models, roles and names.
func TestManyMessagesAdviseNoMore(t *testing.T) {
	for line, want := range map[string][2]string{
		"block Z like Q\n":                      {"blocks are: W, P", ""},
		"block Z like Wq\n":                     {`did you mean "W"?`, ""},
		"backing nvay\n":                        {`did you mean "navy"?`, ""},
		"backing x!y\n":                         {"names are: navy", ""},
		"fabric sea rebecapurple\n":             {`did you mean "rebeccapurple"?`, `for example fabric navy #1f3350 "night sky" on-hand 1 1/2 yd`},
		"block Z ring wedges navy edges navy\n": {`did you mean "corners"?`, ""},
		"grid\n  W Q\n":                         {"blocks are: W, P", ""},
		"grid\n  W Wq\n":                        {`did you mean "W"?`, ""},
	} {
		for i, count := range []int{maxGuesses - 1, maxGuesses} {
			if strings.HasPrefix(line, "block Z like") || strings.HasPrefix(line, "fabric") || strings.HasPrefix(line, "grid") {
				count-- // the message itself is counted
			}
			text := "strip 4\nfabric navy #1f3350\nblock W web wedges navy kites navy\nblock P plain piece navy\n"
			if !strings.HasPrefix(line, "grid") {
				text += "grid\n  W P\n  W W\n"
			}
			_, source, list := Read(text + strings.Repeat("wibble 4\n", count) + line)
			last := list[len(list)-1]
			if source.Line(last.Span.Start) < count || last.Hint != want[i] {
				t.Errorf("%q behind %d messages: %s (%s), expected %q", line, count, last.Message, last.Hint, want[i])
			}
		}
	}
}
