package layout_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"eighthturn/layout"
)

// verdict is what a case is known to be.
type verdict uint8

const (
	accepted verdict = iota // no message at all
	warned                  // drawn, with warnings
	refused                 // not drawn
)

// testCase is one layout with everything that is known about it. All tests of the language
// run over the one table that allCases gives.
//
// In marked, ⟦ and ⟧ stand round the words that a message covers, in the order in which
// the places begin, and ⟨ and ⟩ round those of its notes; says are the messages in the
// order of their places.
type testCase struct {
	name   string
	marked string
	is     verdict
	says   []message
}

// message is what is expected of one message.
type message struct {
	text  string // with "warning: " before it if it is one
	hint  string
	notes []string
}

func say(text, hint string, notes ...string) message { return message{text, hint, notes} }

func says(text, hint string, notes ...string) []message {
	return []message{{text, hint, notes}}
}

// text is the layout without its marks.
func (c testCase) text() string {
	text, _, _ := unmark(c.marked)
	return text
}

// unmark takes the marks out of a text and says where they stood. Marks may stand inside
// one another.
func unmark(marked string) (text string, places, notes []layout.Span) {
	type opened struct {
		list  *[]layout.Span
		index int
	}
	var b strings.Builder
	var open []opened
	for rest := marked; rest != ""; {
		mark, found := markAt(rest)
		if !found {
			b.WriteByte(rest[0])
			rest = rest[1:]
			continue
		}
		rest = rest[len(mark):]
		switch mark {
		case "⟦", "⟨":
			list := &places
			if mark == "⟨" {
				list = &notes
			}
			open = append(open, opened{list, len(*list)})
			*list = append(*list, layout.Span{Start: b.Len(), End: b.Len()})
		default:
			last := open[len(open)-1]
			open = open[:len(open)-1]
			(*last.list)[last.index].End = b.Len()
		}
	}
	return b.String(), places, notes
}

func markAt(text string) (string, bool) {
	for _, mark := range []string{"⟦", "⟧", "⟨", "⟩"} {
		if strings.HasPrefix(text, mark) {
			return mark, true
		}
	}
	return "", false
}

// small is a layout without fault for cases to change one thing of.
const small = `strip 4
fabric cream #f4ead7
fabric navy #1f3350
block W web wedges navy kites cream
block P plain piece cream
grid
  W W P
  W P W
  W W W
`

// holed is a layout of plain blocks with another grid, and what follows it.
func holed(rest string) string {
	return swap(small, "W web wedges navy kites cream", "W plain piece navy", "  W W P\n  W P W\n  W W W\n", rest, "strip 4", "side 6")
}

// banded is a layout of webs cut from a strip set.
const banded = `strip 4
fabric cream #f4ead7
fabric navy #1f3350
fabric rust #b5532a
strip-set shore rust 1 3/4 cream 1 1/2 navy 1 3/4
block W web wedges shore kites cream
grid
  W W
  W W
border 1 rust
`

// swap is a text with one stretch put in place of another that stands in it once; pairs
// are of an old stretch and a new one.
func swap(text string, pairs ...string) string {
	for i := 0; i < len(pairs); i += 2 {
		if strings.Count(text, pairs[i]) != 1 {
			panic("a case changes what does not stand there once: " + pairs[i])
		}
		text = strings.Replace(text, pairs[i], pairs[i+1], 1)
	}
	return text
}

// allCases is the table: the cases of every file, and the samples.
func allCases(t testing.TB) []testCase {
	t.Helper()
	var all []testCase
	for _, list := range [][]testCase{
		acceptedCases(), lineCases(), lengthCases(), fabricCases(), printCases(), colorwayCases(), quiltSizeCases(), swapCases(), setCases(), dealtCases(), blockCases(),
		hintCases(), gridCases(), sizeCases(), edgingCases(), onHandCases(), poolCases(), textCases(), bytesCases(), lookAlikeCases(),
	} {
		all = append(all, list...)
	}
	all = append(all, filesAsCases(t, "../testdata/layout/*.quilt")...)
	all = append(all, filesAsCases(t, "../samples/*.quilt")...)
	return all
}

// filesAsCases is the layouts of a folder; they must be drawn.
func filesAsCases(t testing.TB, pattern string) []testCase {
	t.Helper()
	names, err := filepath.Glob(pattern)
	if err != nil {
		t.Fatal(err)
	}
	var list []testCase
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		c := testCase{name: filepath.ToSlash(name), marked: string(text)}
		_, _, faults := layout.Read(c.marked)
		for _, f := range faults {
			if f.Severity == layout.Error {
				t.Errorf("%s is not drawn: %s", name, f.Message)
			}
			c.is = warned
		}
		list = append(list, c)
	}
	return list
}

// eachCase runs a test for every case of the table that is one of the verdicts; for all of
// them if none is given.
func eachCase(t *testing.T, test func(t *testing.T, c testCase), verdicts ...verdict) {
	t.Helper()
	for _, c := range allCases(t) {
		if len(verdicts) > 0 && !slices.Contains(verdicts, c.is) {
			continue
		}
		t.Run(c.name, func(t *testing.T) { test(t, c) })
	}
}

func TestCaseNamesDiffer(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range allCases(t) {
		if seen[c.name] {
			t.Errorf("two cases are called %q", c.name)
		}
		seen[c.name] = true
	}
}

// allStatements is the hint that lists every statement.
func allStatements() string {
	var words []string
	for _, s := range layout.Statements() {
		words = append(words, s.Word)
	}
	return "statements are: " + strings.Join(words, ", ")
}
