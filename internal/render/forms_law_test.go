package render

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

type tagged struct {
	Text string `json:"text"`
}

func (tagged) MarshalText() ([]byte, error) { return []byte("own <text>"), nil }

type faulty struct{}

func (faulty) MarshalText() ([]byte, error) { return nil, fmt.Errorf("no text") }

// everyKind is a plan with every kind of value that one may hold.
type everyKind struct {
	*inner
	Map     map[string]int     `json:"map"`
	Nested  map[string][]inner `json:"nested"`
	Empty   map[string]int     `json:"empty"`
	Float   float64            `json:"float"`
	Floats  [3]float64         `json:"floats"`
	Bool    bool               `json:"bool"`
	Int32   int32              `json:"int32"`
	Int64   int64              `json:"int64"`
	Any     any                `json:"any"`
	Nothing any                `json:"nothing"`
	To      *inner             `json:"to"`
	Text    tagged             `json:"own"`
	Texts   []*tagged          `json:"owns"`
	Escapes string             `json:"escapes"`
	Struct  struct{}           `json:"struct"`
	Zero    int                `json:"zero,omitempty"`
	One     int                `json:"one,omitempty"`
	Long    measure.NM         `json:"long" length:"atmost"`
	After   measure.NM         `json:"after"`
	hidden  int
}

// TestJSONOfEveryKind: as much of a plan as the standard library would write it gives the same values in the same order, indented as that does it.
func TestJSONOfEveryKind(t *testing.T) {
	plan := everyKind{Map: map[string]int{"b": 2, "a": -1}, Nested: map[string][]inner{"x": {{measure.Inch}, {}}}, Float: 1.23456, Floats: [3]float64{1, -0.00004, 2.5e6}, Bool: true, Int32: -7, Int64: math.MaxInt64,
		Any: []string{"x"}, To: &inner{}, Texts: []*tagged{nil, {}}, Escapes: "\"\\<>&\n ~é\u007f", One: 1, Long: measure.Inch / 3, After: measure.Inch / 3, hidden: 1}
	got, err := jsonText(plan, JSONHead{3, "", measure.Centimetres})
	if err != nil {
		t.Fatal(err)
	}
	length := func(nm int, text string) string { return fmt.Sprintf(`{"nm":%d,"text":%q}`, nm, text) }
	want := `{"format":3,"units":"centimetres","map":{"a":-1,"b":2},"nested":{"x":[{"wide_cut":` + length(25400000, "2.54 cm") + `},{"wide_cut":` + length(0, "0 cm") + `}]},"empty":{},"float":1.2346,"floats":[1,-0,2500000],"bool":true,"int32":-7,"int64":9223372036854775807,` +
		`"any":["x"],"nothing":null,"to":{"wide_cut":` + length(0, "0 cm") + `},"own":"own \u003ctext\u003e","owns":[null,"own \u003ctext\u003e"],"escapes":"\"\\\u003c\u003e\u0026\n ~é\u007f","struct":{},"one":1,"long":` + length(8466666, "8 mm") + `,"after":` + length(8466666, "8.5 mm") + `}`
	var compact, pretty bytes.Buffer
	if err := json.Compact(&compact, []byte(got)); err != nil {
		t.Fatal(err)
	}
	loose := func(s string) string {
		return regexp.MustCompile(`"units":"[^"]*"|"text":"[^"]*"`).ReplaceAllString(s, "")
	} // those words have laws of their own
	if loose(compact.String()) != loose(want) {
		t.Errorf("%s\nexpected\n%s", compact.String(), want)
	}
	if err := json.Indent(&pretty, compact.Bytes(), "", "  "); err != nil || pretty.String()+"\n" != got {
		t.Errorf("it is not indented: %s", got)
	}
	for name, plan := range map[string]any{
		"a map of numbers": struct {
			M map[int]int `json:"m"`
		}{}, "a channel": struct {
			C chan int `json:"c"`
		}{}, "no struct": 7, "a text that fails": struct {
			T faulty `json:"t"`
		}{}, "a byte": struct {
			B uint8 `json:"b"`
		}{},
	} {
		if _, err := jsonText(plan, JSONHead{}); err == nil {
			t.Errorf("%s is written", name)
		}
	}
}

// TestMarkdownEscapes: signs of Markdown in a text stay what they are (CommonMark 0.31, 2.4, 4.2, 5.2), wherever a line begins.
func TestMarkdownEscapes(t *testing.T) {
	for text, want := range map[string]string{
		"1. a": `1\. a`, "12) b": `12\) b`, "1": "1", "1a": "1a", "1 .": "1 .", "-a": `\-a`, "+ b": `\+ b`, "= c": `\= c`, ": d": `\: d`, "a - b": "a - b", "": "", ".": ".", "12": "12", "1.": `1\.`,
	} {
		if got := started(text); got != want {
			t.Errorf("%q: %q, expected %q", text, got, want)
		}
	}
	for _, sign := range "\\`*_{}[]<>#|~&" {
		if got, want := spelled("a"+string(sign)+"b"), "a\\"+string(sign)+"b"; got != want {
			t.Errorf("%q, expected %q", got, want)
		}
	}
	for _, sign := range "abc()!.,:;-+=\"'$%/?@^é½" {
		if got := spelled("a" + string(sign) + "b"); got != "a"+string(sign)+"b" {
			t.Errorf("%q", got)
		}
	}
	for _, c := range []struct {
		text document.Text
		want string
	}{
		{document.Text{{Text: "a "}, {Text: " b* ", Bold: true}, {Text: "c"}}, `a **b\*** c`}, {document.Text{{Text: "a", Bold: true}, {Text: "b", Bold: true, Small: true}}, "**ab**"}, {document.Text{{Text: "a"}, {Text: " ", Bold: true}, {Text: "b"}}, "a b"},
		{document.Text{{Text: "x_"}, {Text: " y"}}, `x\_ y`}, {nil, ""}, {document.Bold("  "), ""}, {document.Text{{Text: "a", Bold: true}, {Text: " "}, {Text: "b", Bold: true}}, "**a** **b**"},
	} {
		if got := styled(c.text); got != c.want {
			t.Errorf("%q: %q, expected %q", c.text, got, c.want)
		}
	}
	sentence := strings.Repeat("a", 196) + ". "
	for n, want := range map[int]int{maxAlternative: 0, maxAlternative + 1: 2} {
		text := (sentence + sentence + strings.Repeat("b", 10))[:n-1] + "."
		if len(text) != n {
			t.Fatal(len(text))
		}
		if first, more := inShort(text); len(more) != want || (want == 0) != (first == text) || strings.Join(append([]string{first}, more...), " ") != text {
			t.Errorf("%d bytes: %d more sentences", n, len(more))
		}
	}
}

// TestColumnsOfMadeDocuments: small cases, reckoned by hand, of how wide columns become beside each other: the longest word with 3 for its margin and 1
// more where all have room, and the rest of 72 by what cells lack.
func TestColumnsOfMadeDocuments(t *testing.T) {
	swatched := func(letters int, text string) document.Cell {
		return document.Cell{Swatches: make([]document.Swatch, letters), Text: document.Plain(text)}
	}
	for name, c := range map[string]struct {
		kinds []document.Kind
		rows  [][]document.Cell
		want  string
	}{
		"words": {[]document.Kind{0, 0}, [][]document.Cell{cells("abcd", "ab")}, "[8 6]"}, "more words": {[]document.Kind{0, 0}, [][]document.Cell{cells("ab cd ef", "ab")}, "[12 6]"}, // 8 - 2 letters are lacking, and there is room
		"little room":   {[]document.Kind{0, 0}, [][]document.Cell{cells(strings.Repeat("w ", 40), strings.Repeat("w ", 20))}, "[45 26]"}, // 62 of the 71 and 38 that are lacking, by their parts
		"no room":       {[]document.Kind{0, 0}, [][]document.Cell{cells(strings.Repeat("w", 40), strings.Repeat("w", 30))}, "[43 33]"},
		"a long word":   {[]document.Kind{0}, [][]document.Cell{cells(strings.Repeat("w", 50))}, "[54]"}, // 40 of it, and the rest as a cell's
		"a number":      {[]document.Kind{document.Counts, 0}, [][]document.Cell{cells("4 7/8 in", "x")}, "[9 5]"},
		"a long number": {[]document.Kind{document.Counts, 0}, [][]document.Cell{cells("12345678 in", strings.Repeat("w", 60))}, "[14 57]"}, "a number of eight": {[]document.Kind{document.Counts, 0}, [][]document.Cell{cells("34567 in", "x")}, "[12 5]"},
		"slashes":        {[]document.Kind{0, 0}, [][]document.Cell{cells("ab/cdef", strings.Repeat("w", 62))}, "[10 61]"},
		"a swatch":       {[]document.Kind{0, 0}, [][]document.Cell{{swatched(1, "tenletters"), {}}, {swatched(2, ""), {}}, {swatched(1, ""), swatched(0, "")}}, "[21 4]"},
		"a longer name":  {[]document.Kind{0, 0}, [][]document.Cell{{swatched(1, "nine times"), {}}, {swatched(1, "ten eleven x"), {}}}, "[23 4]"},
		"many swatches":  {[]document.Kind{0, 0}, [][]document.Cell{{swatched(3, "a"), {}}}, "[26 4]"},
		"rows across":    {[]document.Kind{0, 0}, [][]document.Cell{cells(strings.Repeat("w", 39)), cells("a", "b")}, "[5 5]"},
		"a head":         {[]document.Kind{0, 0}, nil, "[4 4]"},
		"full to a hair": {[]document.Kind{0, 0}, [][]document.Cell{cells(strings.Repeat("w", 32), strings.Repeat("w", 32))}, "[36 36]"},
		"one too few":    {[]document.Kind{0, 0}, [][]document.Cell{cells(strings.Repeat("w", 33), strings.Repeat("w", 32))}, "[36 35]"},
	} {
		table := document.Table{}
		for _, k := range c.kinds {
			table.Columns = append(table.Columns, document.Column{Kind: k})
		}
		for _, r := range c.rows {
			table.Rows = append(table.Rows, document.Row{Cells: r})
		}
		if got := fmt.Sprint(columnShares(&table)); got != c.want {
			t.Errorf("%s: %s, expected %s", name, got, c.want)
		}
	}
}

// TestSignsThatLackAreNamed: twelve signs at the most, and how many more there are.
func TestSignsThatLackAreNamed(t *testing.T) {
	signs := []rune("赤い風車と星夜明海山川雨")
	for n, want := range map[int]string{1: "赤 (U+8D64), and", 2: "赤 (U+8D64), い (U+3044), and", 12: "雨 (U+96E8), and", 13: "雨 (U+96E8), 1 more, and", 14: "雨 (U+96E8), 2 more, and"} {
		if n > len(signs) {
			signs = append(signs, '空')
		}
		if got := LackingSigns(signs[:n]); !strings.Contains(got, want) || strings.Count(got, "U+") != min(n, 12) {
			t.Errorf("%d: %s, expected %s", n, got, want)
		}
	}
}

// TestLettersOnCloth: letters on a swatch are white or the ink, whichever stands out more (WCAG 2.1, contrast ratio).
func TestLettersOnCloth(t *testing.T) {
	white := palettes.Colour{R: 255, G: 255, B: 255}
	for v := range 256 {
		c := palettes.Colour{R: uint8(v), G: uint8(255 - v), B: uint8(v / 2)}
		got := onCloth(c)
		if other := map[bool]palettes.Colour{true: ink(), false: white}[got == white]; got != white && got != ink() || palettes.ContrastRatio(c, got) < palettes.ContrastRatio(c, other) {
			t.Errorf("on %s: %s", c.Hex(), got.Hex())
		}
	}
}

// TestBackCoversFitOnOnePage: blocks fit on a page by themselves, up to the last line that there is room for.
func TestBackCoversFitOnOnePage(t *testing.T) {
	o := Options{Paper: HalfLetter()}
	lines := func(n int) (list []document.Block) {
		for range n {
			list = append(list, document.Paragraph{Text: document.Plain("a line")})
		}
		return list
	}
	most := 0
	for OnePage(lines(most+1), o) && most < 200 {
		most++
	}
	l := o.look()
	if each := l.body * (leading + 0.55); math.Abs(float64(most)*each-l.room()) > 4*each {
		t.Errorf("%d lines of %.1f fit on a page of %.1f", most, each, l.room())
	}
	if OnePage(lines(most+3), o) || OnePage([]document.Block{crowded(24)}, o) || !OnePage(nil, o) {
		t.Error("what does not fit, or is set row by row, is taken for one page; or nothing is not")
	}
}

// TestWhatIsShortIsHeld: tables and lists of eight rows are held together with their heading in print, longer ones, those with more in them and
// figures of true size are not.
func TestWhatIsShortIsHeld(t *testing.T) {
	list := func(n int, blocks ...document.Block) document.List {
		l := document.List{Items: make([]document.Item, n)}
		l.Items[n-1].Blocks = blocks
		return l
	}
	for _, c := range []struct {
		b    document.Block
		want bool
	}{
		{rowsOf(shortRows), true}, {rowsOf(shortRows + 1), false}, {list(shortRows), true}, {list(shortRows + 1), false}, {list(2, document.PageBreak{}), false}, {document.Figure{Of: strip(1)}, true}, {document.Figure{Of: gauge()}, false},
		{document.Picture{}, true}, {document.Together{}, true}, {document.Box{}, false}, {document.Gallery{}, false}, {document.Source{}, false},
	} {
		if isShort(c.b) != c.want {
			t.Errorf("%T: %v", c.b, !c.want)
		}
	}
	for letters, want := range map[int]bool{short: true, short + 1: false} { // beside a swatch on one line
		w := &web{}
		w.cell(document.Cell{Swatches: []document.Swatch{{Letter: "A"}}, Text: document.Plain(strings.Repeat("é", letters))})
		if got := strings.Contains(w.page.String(), `class="swatched short"`); got != want {
			t.Errorf("%d letters: short is %v", letters, got)
		}
	}
}

// TestContentsAreListed: a page lists its chapters where there are two or more with a title.
func TestContentsAreListed(t *testing.T) {
	for n, want := range map[int]int{0: 0, 1: 0, 2: 2, 3: 3} {
		d := document.Document{Title: "t", Sections: []document.Section{{}}}
		for i := range n {
			d.Sections = append(d.Sections, document.Section{Title: fmt.Sprint("Chapter ", i)})
		}
		page, err := HTML(d)
		if got := strings.Count(string(page), `<li><a href="#part-`); err != nil || got != want || want > 0 && !strings.Contains(string(page), `<li><a href="#part-2">Chapter 0</a></li>`) {
			t.Errorf("%d chapters: %d are listed, %v", n, got, err)
		}
	}
}
