package layout_test

import (
	"fmt"
	"strings"
	"testing"

	"eighthturn/layout"
)

// TestMessages holds every case to its messages: their number, their words, their places,
// their hints and their notes.
func TestMessages(t *testing.T) {
	eachCase(t, func(t *testing.T, c testCase) {
		for _, wrong := range c.differences() {
			t.Error(wrong)
		}
		if t.Failed() {
			t.Logf("as reported:\n%s", reported(c.text()))
		}
	})
}

// reported is what a person reads about a layout.
func reported(text string) string {
	_, source, list := layout.Read(text)
	var b strings.Builder
	if err := layout.Report(&b, "a.quilt", source, list); err != nil {
		return err.Error()
	}
	return b.String()
}

// differences says where the messages about a case are not as its entry says.
func (c testCase) differences() []string {
	text, places, notes := unmark(c.marked)
	design, source, list := layout.Read(text)
	var wrong []string
	if c.is != refused && design == nil || c.is == refused && design != nil {
		wrong = append(wrong, fmt.Sprintf("drawn: %v, want %v", design != nil, c.is != refused))
	}
	if strings.HasSuffix(c.name, ".quilt") {
		return wrong
	}
	if len(list) != len(c.says) || len(places) != len(c.says) {
		return append(wrong, fmt.Sprintf("%d messages, want %d, at %d marked places", len(list), len(c.says), len(places)))
	}
	for i, f := range list {
		wrong = append(wrong, c.says[i].differs(source, f, places[i], &notes)...)
	}
	if len(notes) > 0 {
		wrong = append(wrong, fmt.Sprintf("%d more places of notes are marked", len(notes)))
	}
	return wrong
}

// differs compares one message with what is expected; it takes its notes' places from the
// front of notes.
func (m message) differs(source *layout.Source, f layout.Fault, at layout.Span, notes *[]layout.Span) []string {
	var wrong []string
	is := func(what, got, want string) {
		if got != want {
			wrong = append(wrong, fmt.Sprintf("%s\n got: %s\nwant: %s", what, got, want))
		}
	}
	is("message", severityWord(f)+f.Message, m.text)
	is("hint", f.Hint, m.hint)
	is("place", where(source, f.Span), where(source, at))
	is("number of notes", fmt.Sprint(len(f.Notes)), fmt.Sprint(len(m.notes)))
	for i, n := range f.Notes {
		if i >= len(m.notes) || len(*notes) == 0 {
			wrong = append(wrong, "a note without a marked place: "+n.Message)
			continue
		}
		is("note", n.Message, m.notes[i])
		is("note's place", where(source, n.Span), where(source, (*notes)[0]))
		*notes = (*notes)[1:]
	}
	return wrong
}

func severityWord(f layout.Fault) string {
	if f.Severity == layout.Warning {
		return "warning: "
	}
	return ""
}

// where writes a span with its line, column and words.
func where(s *layout.Source, at layout.Span) string {
	line, column := s.Position(at.Start)
	return fmt.Sprintf("line %d, column %d, %q", line, column, s.Text[at.Start:max(at.Start, at.End)])
}

// TestMessagesAreHeldTo proves that a case whose entry is wrong in one way fails.
func TestMessagesAreHeldTo(t *testing.T) {
	good := testCase{
		"good", swap(small, "fabric navy #1f3350", "fabric ⟨navy⟩ #1f3350\nfabric ⟦navy⟧ #b5532a"), refused,
		says(`fabric "navy" is already defined`, "give this one another name", "first defined here"),
	}
	if wrong := good.differences(); len(wrong) > 0 {
		t.Fatal(wrong)
	}
	for name, change := range map[string]func(*testCase){
		"verdict":   func(c *testCase) { c.is = warned },
		"message":   func(c *testCase) { c.says[0].text += "!" },
		"severity":  func(c *testCase) { c.says[0].text = "warning: " + c.says[0].text },
		"hint":      func(c *testCase) { c.says[0].hint = "" },
		"note":      func(c *testCase) { c.says[0].notes[0] = "here" },
		"no note":   func(c *testCase) { c.says[0].notes = nil },
		"place":     func(c *testCase) { c.marked = swap(c.marked, "⟦navy⟧", "⟦nav⟧y") },
		"noteplace": func(c *testCase) { c.marked = swap(c.marked, "⟨navy⟩", "⟨nav⟩y") },
		"one more":  func(c *testCase) { c.says = append(c.says, c.says[0]) },
		"none":      func(c *testCase) { c.says = nil },
	} {
		bad := good
		bad.says = says(good.says[0].text, good.says[0].hint, good.says[0].notes...)
		change(&bad)
		if len(bad.differences()) == 0 {
			t.Errorf("a wrong %s is not noticed", name)
		}
	}
}
