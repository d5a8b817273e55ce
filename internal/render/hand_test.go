package render

import (
	"bufio"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
)

// Small cases worked out by hand.

// TestBlanksAndNoncharacters: lines are broken at what Unicode calls white space (Unicode Character Database 15.0, PropList.txt, White_Space), but
// for the two blanks that hold words together; and the 66 noncharacters (The Unicode Standard 15.0, section 23.7) are left out, no other sign.
func TestBlanksAndNoncharacters(t *testing.T) {
	blanks := []rune{0x09, 0x0a, 0x0b, 0x0c, 0x0d, 0x20, 0x85, 0x1680, 0x2028, 0x2029, 0x205f, 0x3000}
	for r := rune(0x2000); r <= 0x200a; r++ {
		blanks = append(blanks, r)
	}
	count := 0
	for r := range rune(0x110000) {
		if breaksLine(r) != slices.Contains(blanks, r) {
			t.Errorf("lines are broken at U+%04X: %v", r, breaksLine(r))
		}
		ends := r%0x10000 == 0xfffe || r%0x10000 == 0xffff
		if r >= 0xfdc0 && r < 0xfe00 {
			ends = r/16 == 0xfdd || r/16 == 0xfde
		}
		if noncharacter(r) != ends {
			t.Errorf("U+%04X is a noncharacter: %v", r, noncharacter(r))
		}
		if ends {
			count++
		}
	}
	if count != 66 {
		t.Errorf("%d noncharacters", count)
	}
	for text, want := range map[string]string{
		"a\u2028\u2029b": "a b", "a\u00a0b": "a\u00a0b", "a\ufdd0b\ufdefc\ufffed": "abcd", "a\ufdcfb\ufdf0": "a\ufdcfb\ufdf0", "é\tx\n": "é x ", "a\x00b\x7f": "ab", "~ a": "~ a", " a": " a", "a  b": "a b", "a\x7fb": "ab",
	} {
		if got := clean(text); got != want {
			t.Errorf("%q is printed as %q, expected %q", text, got, want)
		}
	}
}

// TestBeyondTheMargins: what reaches a twentieth of a point beyond a margin is told, on any of the four sides, with its page; less is what
// rounding does.
func TestBeyondTheMargins(t *testing.T) {
	l := look{wide: 600, high: 800, margin: 50}
	at := func(x, y, w, h float64) spot { return spot{panel{rect: rect{10, 20, w, h}}, x - 10, y - 20} }
	inside := at(50, 50, 500, 700)
	for _, c := range []struct {
		spot spot
		want bool
	}{
		{inside, false}, {at(49.96, 49.96, 500.08, 700.08), false},
		{at(49.94, 60, 1, 1), true}, {at(60, 49.94, 1, 1), true}, {at(60, 60, 490.06, 1), true}, {at(60, 60, 1, 690.06), true},
		{at(49.96, 60, 1, 1), false}, {at(60, 49.96, 1, 1), false}, {at(60, 60, 490.04, 1), false}, {at(60, 60, 1, 690.04), false},
		{at(-60, 60, 1, 1), true}, {at(60, -60, 1, 1), true},
	} {
		got := overflows([]sheetOfPaper{{inside}, {inside, c.spot, c.spot}, {}}, l)
		var want []Warning
		if c.want {
			want = []Warning{{Overflow, 2, "a frame or rule reaches beyond the margins"}}
		}
		if !slices.Equal(got, want) {
			t.Errorf("at %v: %v, expected %v", c.spot.extent(), got, want)
		}
	}
	said := named(text{piece: piece{shown: "two words"}})
	if said != "the text "+quoted("two words") {
		t.Errorf("a text is %s", said)
	}
}

// TestPagesToWriteOnHaveAName: pages that are added stand under the chapter to write on, also where that is the first one; without such a
// chapter they stand under the one before them.
func TestPagesToWriteOnHaveAName(t *testing.T) {
	b := newBuilder(Options{Paper: A5()}.look())
	for _, c := range []struct {
		ruled int // the chapter to write on, -1 for none
		pages []int
		back  bool
		want  []int
	}{
		{0, []int{0, 1, 2}, false, []int{0, 1, 2, 0}},
		{2, []int{0, 1, 2}, false, []int{0, 1, 2, 2}},
		{-1, []int{0, 1}, false, []int{0, 1, 1, 1}},
		{-1, []int{0, 1, 2}, true, []int{0, 1, 1, 2}},
		{-1, []int{2, 2, 2}, true, []int{-1, 2, 2, 2}},
		{0, []int{0, 1, 2, 2}, true, []int{0, 1, 2, 2}},
	} {
		d := document.Document{Sections: make([]document.Section, 3)}
		d.Sections[2].Back = c.back
		if c.ruled >= 0 {
			d.Sections[c.ruled].Blocks = []document.Block{document.Ruled{}}
		}
		var pages []page
		for _, part := range c.pages {
			pages = append(pages, page{part: part})
		}
		var got []int
		for _, p := range b.fours(pages, d) {
			got = append(got, p.part)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("chapters %v, %d to write on: pages of chapters %v, expected %v", c.pages, c.ruled, got, c.want)
		}
	}
}

// TestTextsAreJSON: every text is written as the standard library writes it (RFC 8259, section 7, says what has to be escaped), whatever stands
// at its beginning, within it and at its end, and is the same when it is read.
func TestTextsAreJSON(t *testing.T) {
	var list []string
	for r := range rune(0x300) {
		list = append(list, string(r), "a"+string(r)+"b")
	}
	for b := range 0x100 {
		list = append(list, string([]byte{'a', byte(b)}), string([]byte{byte(b), '"'}))
	}
	for _, text := range append(list, "", "plain", "\u2028\u2029", "½ in", "\U0001f9f5", "~ ]}[{^_`") {
		var written strings.Builder
		w := &jsonWriter{out: bufio.NewWriter(&written)}
		w.text(text)
		w.out.Flush()
		want, err := json.Marshal(text)
		if got := written.String(); err != nil || w.err != nil || got != Harmless(string(want)) {
			t.Errorf("%q is written %s, expected %s", text, got, want)
		}
		var back string
		if err := json.Unmarshal([]byte(written.String()), &back); err != nil || back != text && utf8.ValidString(text) {
			t.Errorf("%q is read as %q, %v", text, back, err)
		}
	}
}

// TestPagesAtTrueSize: of what belongs to pages at true size all stays but the illustrations that may be scaled, also where they are held
// together with others; chapters without a figure at true size are left out, but for the one that tells of them.
func TestPagesAtTrueSize(t *testing.T) {
	scaled, exact := document.Figure{}, document.Figure{Of: diagram.Figure{TrueSize: true}}
	text := document.Paragraph{Text: document.Plain("text")}
	together := func(list ...document.Block) document.Block { return document.Together{Blocks: list} }
	for name, c := range map[string]struct {
		given, kept []document.Block
		found       bool
	}{
		"alone":            {[]document.Block{exact}, []document.Block{exact}, true},
		"none":             {[]document.Block{text, scaled, document.Picture{}, document.Gallery{}}, []document.Block{text}, false},
		"among others":     {[]document.Block{scaled, text, exact, document.Picture{}, text}, []document.Block{text, exact, text}, true},
		"held together":    {[]document.Block{together(scaled, exact, text, document.Picture{}), text}, []document.Block{together(exact, text), text}, true},
		"twice held":       {[]document.Block{together(together(exact, document.Gallery{})), together(scaled)}, []document.Block{together(together(exact)), together()}, true},
		"held, then not":   {[]document.Block{exact, together(text, scaled)}, []document.Block{exact, together(text)}, true},
		"held, but scaled": {[]document.Block{together(scaled, text)}, []document.Block{together(text)}, false},
	} {
		kept, found := trueBlocks(c.given)
		if found != c.found || fmt.Sprint(kept) != fmt.Sprint(c.kept) {
			t.Errorf("%s: %v are kept, expected %v, found %v", name, kept, c.kept, found)
		}
	}
	d := document.Document{Cover: &document.Cover{}, Sections: []document.Section{{Title: "a", Blocks: []document.Block{text}, NewPage: true}, {Title: "b", ID: document.AboutTrueSize, NewPage: true, Blocks: []document.Block{text, scaled}}, {Title: "c", NewPage: true, Blocks: []document.Block{scaled, exact}}}}
	kept, any := trueSize(d)
	if want := (document.Document{Sections: []document.Section{{Title: "b", ID: document.AboutTrueSize, Blocks: []document.Block{text}}, {Title: "c", Blocks: []document.Block{exact}}}}); !any || fmt.Sprint(kept) != fmt.Sprint(want) {
		t.Errorf("%v are kept, expected %v", kept, want)
	}
	d.Sections = d.Sections[:2]
	if kept, any := trueSize(d); any || len(kept.Sections) != 1 {
		t.Errorf("without figures at true size there are %v, %v", any, kept)
	}
}
