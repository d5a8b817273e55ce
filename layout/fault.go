package layout

import (
	"cmp"
	"fmt"
	"slices"
)

// Span is a stretch of the source in bytes, the end not included.
type Span struct{ Start, End int }

// To is the span from the start of s to the end of t.
func (s Span) To(t Span) Span { return Span{s.Start, t.End} }

// holds says whether t lies within s.
func (s Span) holds(t Span) bool { return s.Start <= t.Start && t.End <= s.End }

// Empty says whether the span holds nothing.
func (s Span) Empty() bool { return s.End <= s.Start }

// Severity tells what stops a drawing from what does not.
type Severity uint8

const (
	Error Severity = iota
	Warning
)

// String is the word in front of a message.
func (s Severity) String() string {
	if s == Warning {
		return "warning"
	}
	return "error"
}

// Fault is one message about a layout. The message says what is there and what was wanted;
// the hint says what to type, and the edits do so as data. None holds the place, which is the span.
type Fault struct {
	Severity Severity
	Span     Span
	Message  string
	Hint     string
	Edits    []Edit // what the hint says to type, in the order of the places; none where it says nothing to type
	Notes    []Note

	trial   *trial // of the edits, nil where there are none
	example string // a statement of its sort, as one could type it
}

// trial says how the edits of a fault are tried.
type trial struct {
	guess   bool   // what was meant is only likely
	strict  bool   // they may not show any other error
	instead string // the hint where they are wrong
	others  []hint // to be tried then
}

// Note is a second place that a fault speaks of.
type Note struct {
	Span    Span
	Message string
}

// faults collects messages; the zero value is empty.
type faults struct{ list []Fault }

func (f *faults) add(s Severity, at Span, hint, format string, args ...any) *Fault {
	f.list = append(f.list, Fault{Severity: s, Span: at, Message: fmt.Sprintf(format, args...), Hint: hint})
	return &f.list[len(f.list)-1]
}

func (f *faults) fault(at Span, hint, format string, args ...any) *Fault {
	return f.add(Error, at, hint, format, args...)
}

func (f *faults) warn(at Span, hint, format string, args ...any) *Fault {
	return f.add(Warning, at, hint, format, args...)
}

// note adds a second place to a fault.
func (f *Fault) note(at Span, format string, args ...any) {
	f.Notes = append(f.Notes, Note{at, fmt.Sprintf(format, args...)})
}

// sorted is the messages by their place, each once: blocks that are like others, and grids
// that are laid more than once, come to the same words again.
func (f *faults) sorted() []Fault {
	slices.SortStableFunc(f.list, func(a, b Fault) int {
		return cmp.Or(cmp.Compare(a.Span.Start, b.Span.Start), cmp.Compare(a.Severity, b.Severity),
			cmp.Compare(a.Span.End, b.Span.End), cmp.Compare(a.Message, b.Message))
	})
	f.list = slices.CompactFunc(f.list, func(a, b Fault) bool {
		return a.Span == b.Span && a.Severity == b.Severity && a.Message == b.Message
	})
	return f.list
}

// Count is how many of the messages are errors and how many are warnings.
func Count(list []Fault) (errors, warnings int) {
	for _, f := range list {
		if f.Severity == Error {
			errors++
		} else {
			warnings++
		}
	}
	return errors, warnings
}
