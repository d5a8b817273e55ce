package layout_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"eighthturn/layout"

	"github.com/rivo/uniseg"
)

// TestReport holds reports to what a person reads, line by line.
func TestReport(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"a word", swap(small, "wedges navy", "wedges nvy"), `
a.quilt:4:20: error: no fabric, pool or strip set is called "nvy"
    4 | block W web wedges nvy kites cream
      |                    ^^^ did you mean "navy"?
`},
		{"a note", swap(small, "navy #1f3350", "navy #1f3350\nfabric navy #b5532a"), `
a.quilt:4:8: error: fabric "navy" is already defined
    4 | fabric navy #b5532a
      |        ^^^^ give this one another name
a.quilt:3:8: note: first defined here
    3 | fabric navy #1f3350
      |        ^^^^
`},
		{"the end of a line", swap(small, "strip 4", "strip  # four"), `
a.quilt:1:6: error: expected the width of the cut strip, found the end of the line
    1 | strip  # four
      |      ^ for example strip 4
`},
		{"no line", "", `
a.quilt:1:1: error: this layout is empty
       a layout needs a strip or a side, fabrics, blocks and a grid
`},
		{"tabs", swap(small, "block W web wedges navy", "\tblock\tW\tweb\twedges\tnvy"), `
a.quilt:4:21: error: no fabric, pool or strip set is called "nvy"
    4 |  block W web wedges nvy kites cream
      |                     ^^^ did you mean "navy"?
`},
		{"wide letters", swap(small, "fabric navy #1f3350", "fabric 赤い #12"), `
a.quilt:3:11: error: "#12" has 2 digits after #, expected 3 or 6, as in #1f3350
    3 | fabric 赤い #12
      |             ^^^ write # and six digits, or a name such as navy
a.quilt:4:20: error: no fabric, pool or strip set is called "navy"
    4 | block W web wedges navy kites cream
      |                    ^^^^ define it: fabric navy navy
`},
		{"wide letters at fault", swap(small, "wedges navy", "wedges 赤い"), `
a.quilt:4:20: error: no fabric, pool or strip set is called "赤い"
    4 | block W web wedges 赤い kites cream
      |                    ^^^^ define it: fabric 赤い and its color
`},
		{"an accent apart", swap(small, "wedges navy", "wedges cafe\u0301"), "\na.quilt:4:20: error: no fabric, pool or strip set is called \"cafe\u0301\"\n" +
			"    4 | block W web wedges cafe\u0301 kites cream\n" +
			"      |                    ^^^^ define it: fabric cafe\u0301 and its color\n"},
		{"an accent apart before it", swap(small, "navy #1f3350", "cafe\u0301 #12", "wedges navy", "wedges cream"), "\na.quilt:3:13: error: \"#12\" has 2 digits after #, expected 3 or 6, as in #1f3350\n" +
			"    3 | fabric cafe\u0301 #12\n" +
			"      |             ^^^ write # and six digits, or a name such as navy\n"},
		{"a family before it", swap(small, "strip 4", "title \"👩\u200d👩\u200d👧\" 4\nstrip 4"), "\na.quilt:1:11: error: nothing more belongs on this line, found \"4\"\n" +
			"    1 | title \"👩<U+200D>👩<U+200D>👧\" 4\n" +
			"      |                                ^ leave out 4\n"},
		{"a control character", swap(small, "strip 4", "title \"a\x1b[2J\x07\"\nstrip 4"), `
a.quilt:1:7: error: this text holds a control character: a<U+001B>[2J<U+0007>
    1 | title "a<U+001B>[2J<U+0007>"
      |       ^^^^^^^^^^^^^^^^^^^^^^ type the text anew
`},
		{"a mark of direction", swap(small, "fabric navy", "fabric \u202enavy"), `
a.quilt:3:8: error: there is an invisible character here: U+202E
    3 | fabric <U+202E>navy #1f3350
      |        ^^^^^^^^ delete it, or type the line anew
`},
		{"a byte that is no text", swap(small, "strip 4", "strip 3\xbd"), `
a.quilt:1:8: error: this file is not a text in UTF-8: it may be in Windows-1252, where this byte is "½"
    1 | strip 3\xbd
      |        ^^^^ save it as UTF-8
`},
		{"a carriage return", strings.ReplaceAll(swap(small, "wedges navy", "wedges nvy"), "\n", "\r"), `
a.quilt:4:20: error: no fabric, pool or strip set is called "nvy"
    4 | block W web wedges nvy kites cream
      |                    ^^^ did you mean "navy"?
`},
		{"a byte order mark", "\ufeff" + swap(small, "strip 4", "strip 4 x"), `
a.quilt:1:9: error: nothing more belongs on this line, found "x"
    1 | <U+FEFF>strip 4 x
      |                 ^ one length is wanted here, not two
`},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := "\n" + reported(c.text); got != c.want {
				t.Errorf("got%swant%s", got, c.want)
			}
		})
	}
}

// TestReportIsShort holds a report of many messages to 20 and a count, errors first.
func TestReportIsShort(t *testing.T) {
	const warnings, faults = 30, 40
	pool := swap(small, "piece cream", "piece p") + "scraps p navy\n" + strings.Repeat("scraps p navy\n", warnings) // in the pool already
	text := pool
	report := reported(text)
	if got := strings.Count(report, ": warning: "); got != layout.MaxShown {
		t.Errorf("%d warnings are shown of %d", got, warnings)
	}
	if want := "and 10 more messages: 10 warnings\n"; !strings.HasSuffix(report, want) {
		t.Errorf("the report ends\n%s", lastLine(report))
	}
	text += numbered(faults, "border 1 f%d\n")
	report = reported(text)
	if got := strings.Count(report, ": error: "); got != layout.MaxShown {
		t.Errorf("%d errors are shown of %d", got, faults)
	}
	if want := "and 50 more messages: 20 errors, 30 warnings\n"; !strings.HasSuffix(report, want) {
		t.Errorf("the report ends\n%s", lastLine(report))
	}
	if report = reported(small + numbered(faults, "border 1 f%d\n")); !strings.HasSuffix(report, "and 20 more messages: 20 errors\n") {
		t.Errorf("errors alone end\n%s", lastLine(report))
	}
	one := swap(small, "piece cream", "piece p") + "scraps p navy\nscraps p navy\n"
	if report = reported(one + numbered(layout.MaxShown, "border 1 f%d\n")); !strings.HasSuffix(report, "and 1 more message: 1 warning\n") {
		t.Errorf("errors and a warning end\n%s", lastLine(report))
	}
	if report = reported(one + numbered(faults, "border 1 f%d\n")); !strings.HasSuffix(report, "and 21 more messages: 20 errors, 1 warning\n") {
		t.Errorf("more errors and a warning end\n%s", lastLine(report))
	}
	report = reported(pool + "border 1 nvy\n")
	if strings.Count(report, ": error: ") != 1 || !strings.HasSuffix(report, "and 11 more messages: 11 warnings\n") {
		t.Errorf("warnings crowd out the error\n%s", report)
	}
}

func lastLine(text string) string {
	lines := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	return lines[len(lines)-1]
}

// TestReportOfTwentyIsWhole wants no count where all messages are shown.
func TestReportOfTwentyIsWhole(t *testing.T) {
	report := reported(small + numbered(layout.MaxShown, "border 1 f%d\n"))
	if strings.Count(report, ": error: ") != layout.MaxShown || strings.Contains(report, "more message") {
		t.Error(report)
	}
}

// TestLongLines cuts long lines round the place, whatever their letters, and keeps the carets
// under the words.
func TestLongLines(t *testing.T) {
	for _, filler := range []string{"navy ", "赤い ", "e\u0301te\u0301 ", "\t", "a\u00a0", "👶 "} {
		for _, count := range []int{0, 1, 10, 50, 1000, 5000} {
			before := "block W web wedges " + strings.Repeat(filler, count)
			text := before + "§§§§ " + strings.Repeat(filler, count)
			at := layout.Span{Start: len(before), End: len(before) + len("§§§§")}
			e := layout.Excerpt(layout.NewSource("\n"+text), layout.Span{Start: at.Start + 1, End: at.End + 1})
			if width := uniseg.StringWidth(e.Text); width > 103 {
				t.Errorf("%q %d times: %d columns are shown", filler, count, width)
			}
			if e.Line != 2 || e.Width != 4 || columnsFrom(e.Text, e.Indent, e.Width) != "§§§§" {
				t.Errorf("%q %d times: the carets stand under %q in\n%s", filler, count, columnsFrom(e.Text, e.Indent, e.Width), e.Text)
			}
		}
	}
}

// columnsFrom is what stands in so many terminal columns of a text from one on.
func columnsFrom(text string, from, columns int) string {
	var b strings.Builder
	at := 0
	for g := uniseg.NewGraphemes(text); g.Next(); at += g.Width() {
		if at >= from && at < from+columns {
			b.WriteString(g.Str())
		}
	}
	return b.String()
}

// TestLongPlaces wants the carets of a long place to end with the line that is shown.
func TestLongPlaces(t *testing.T) {
	text := "strip " + strings.Repeat("a", 5000)
	e := layout.Excerpt(layout.NewSource(text), layout.Span{Start: 6, End: len(text)})
	if e.Indent != 6 || e.Indent+e.Width > uniseg.StringWidth(e.Text) || e.Width < 40 {
		t.Errorf("%d carets from %d under %d columns", e.Width, e.Indent, uniseg.StringWidth(e.Text))
	}
}

// TestReportsSteerNothing wants every report of every case free of what could steer a
// terminal, with no line too long to be read.
func TestReportsSteerNothing(t *testing.T) {
	hostile := []testCase{
		{name: "sequences in a text", marked: "title \"\x1b]8;;x\x07\u009b2J\x90\u202e\x00\"\n"},
		{name: "sequences in a name", marked: "fabric \x1b[2J #123\n"},
		{name: "sequences in a comment", marked: "strip # \x1b[2J \u009b \u202e\n"},
		{name: "sequences behind a mistake", marked: "strip x \"\x7f\x9b\"\n"},
	}
	for _, c := range append(allCases(t), hostile...) {
		for _, wrong := range unsafeIn(reported(c.text())) {
			t.Errorf("%s: %s", c.name, wrong)
		}
	}
}

// unsafeIn says what in a report could steer a terminal or change the order of reading.
func unsafeIn(report string) []string {
	var wrong []string
	if !utf8.ValidString(report) {
		wrong = append(wrong, "it is no UTF-8")
	}
	for line := range strings.SplitSeq(report, "\n") {
		for _, r := range line {
			if unicode.IsControl(r) || r >= '\u202a' && r <= '\u202e' || r >= '\u2066' && r <= '\u2069' || r == '\ufeff' || r == '\u200b' {
				wrong = append(wrong, fmt.Sprintf("%U is in %q", r, line))
			}
		}
		if width := uniseg.StringWidth(line); width > 420 {
			wrong = append(wrong, fmt.Sprintf("a line has %d columns", width))
		}
	}
	return wrong
}

func TestUnsafeReportsAreSeen(t *testing.T) {
	for _, report := range []string{"a\x1b[2J", "a\rb", "a\tb", "\u009b", "\u202e", "\xff", "a\u200b", strings.Repeat("a", 421)} {
		if len(unsafeIn(report)) == 0 {
			t.Errorf("%q is not seen", report)
		}
	}
}

// full is a writer that takes nothing.
type full struct{}

var errFull = errors.New("full")

func (full) Write([]byte) (int, error) { return 0, errFull }

func TestReportGivesTheWritersError(t *testing.T) {
	_, source, list := layout.Read("")
	if err := layout.Report(full{}, "a.quilt", source, list); !errors.Is(err, errFull) {
		t.Errorf("got %v", err)
	}
}

// TestReportShowsTheFilesName wants a file's name that could steer a terminal written out.
func TestReportShowsTheFilesName(t *testing.T) {
	_, source, list := layout.Read("")
	var b strings.Builder
	if err := layout.Report(&b, "a\x1b[2J\n.quilt", source, list); err != nil {
		t.Fatal(err)
	}
	if want := "a<U+001B>[2J<U+000A>.quilt:1:1: "; !strings.HasPrefix(b.String(), want) {
		t.Errorf("got %q", b.String())
	}
}
