package layout

import (
	"cmp"
	"slices"
	"strings"
	"unicode/utf8"

	"eighthturn/internal/measure"
)

// Edit is a stretch of a layout and what to type in its place: an empty stretch is a place to type at, an empty text leaves
// the stretch out.
type Edit struct {
	Span Span
	Text string
}

// Apply is a text with edits made. They are in the order of their places, and none reaches into the next.
func Apply(text string, edits []Edit) string {
	var b strings.Builder
	from := 0
	for _, e := range edits {
		b.WriteString(text[from:e.Span.Start])
		b.WriteString(e.Text)
		from = e.Span.End
	}
	b.WriteString(text[from:])
	return b.String()
}

// hint is what helps with a fault: words, and what they say to type, as edits or as the text that takes the place of what the
// fault points at.
type hint struct {
	words   string
	edits   []Edit
	text    string
	typed   bool   // text is what to type
	guess   bool   // what was meant is only likely
	strict  bool   // it may not show any other error
	instead string // the words where what is to be typed turns out to be wrong
}

// advice is a hint in words alone.
func advice(words string) hint { return hint{words: words} }

// write is a hint at what to type in place of what the fault points at.
func write(text string) hint {
	return hint{words: "write " + text, text: text, typed: true, instead: "write " + text}
}

// near is a hint at a word that is near, "" for none.
func near(word string) hint {
	if word == "" {
		return hint{}
	}
	return hint{words: `did you mean "` + word + `"?`, text: word, typed: true, guess: true}
}

// leaveOut is a hint to leave out a word at a place, with the blanks behind it.
func (s *session) leaveOut(word string, at Span) hint {
	return hint{words: "leave out " + word, edits: []Edit{s.without(at)}, instead: "leave out " + word}
}

// edit is a hint whose words say what one edit does.
func edit(words string, at Span, text string) hint {
	return hint{words: words, edits: []Edit{{at, text}}, instead: words}
}

// saying is the hint in other words.
func (h hint) saying(words string) hint {
	h.words, h.instead = words, words
	return h
}

// or is the hint, or another where there is none.
func (h hint) or(other hint) hint {
	if h.words == "" {
		return other
	}
	return h
}

// backed is the hint, with other words where there is none or where it turns out wrong.
func (h hint) backed(words string) hint {
	if h.words == "" {
		return advice(words)
	}
	h.instead = words
	return h
}

// without leaves a stretch out, with the blanks that stand behind it, or, at the end of a line, before it.
func (s *session) without(at Span) Edit {
	end, line := at.End, s.source.lineSpan(s.source.Line(at.Start))
	rest := s.src[end:line.End]
	end += len(rest) - len(strings.TrimLeftFunc(rest, measure.IsSpace))
	if end == line.End {
		at.Start = line.Start + len(strings.TrimRightFunc(s.src[line.Start:at.Start], measure.IsSpace))
	}
	return Edit{Span: Span{at.Start, end}}
}

// blankBefore says whether a blank ends at a place of the text.
func (s *session) blankBefore(at int) bool {
	r, _ := utf8.DecodeLastRuneInString(s.src[:at])
	return measure.IsSpace(r)
}

// blankAt says whether a blank begins at a place of the text.
func (s *session) blankAt(at int) bool {
	r, _ := utf8.DecodeRuneInString(s.src[at:])
	return measure.IsSpace(r)
}

// suggest gives a fault its hint.
func (f *Fault) suggest(h hint) *Fault {
	f.Hint, f.Edits = h.words, h.edits
	if h.typed {
		f.Edits = []Edit{{f.Span, h.text}}
	}
	if len(f.Edits) > 0 && f.trial == nil {
		f.trial = &trial{instead: h.instead}
	}
	if f.trial != nil {
		f.trial.guess, f.trial.strict = h.guess, h.strict
	}
	return f
}

// orElse gives a fault another hint, for where what the one before says to type is wrong.
func (f *Fault) orElse(h hint) *Fault {
	if f.trial == nil {
		f.trial = &trial{}
	}
	f.trial.others = append(f.trial.others, h)
	return f
}

// alone is the hint, as one that may not show any other error.
func (h hint) alone() hint {
	h.strict = true
	return h
}

// alsoEdit adds an edit behind those that a fault has.
func (f *Fault) alsoEdit(e Edit) {
	if n := len(f.Edits); n > 0 && f.Edits[n-1].Span.End <= e.Span.Start && f.Edits[n-1].Span != e.Span {
		f.Edits = append(f.Edits, e)
	}
}

// strayMarks are edits that leave out the marks between the words of a line that no layout has: an equals sign, a colon, a
// comma, a semicolon. A comment and what stands in quotes keep theirs.
func (s *session) strayMarks(line Span) []Edit {
	var edits []Edit
	c := newCursor(s, line)
	for at := c.at; at < c.end; at++ {
		if c.quoteAt(at) > 0 || c.commentAt(at) {
			break
		}
		if !strings.ContainsRune("=:,;", rune(s.src[at])) {
			continue
		}
		mark := at
		for at+1 < c.end && strings.ContainsRune("=:,;", rune(s.src[at+1])) {
			at++
		}
		before := mark == c.at || s.blankBefore(mark)
		after := at+1 == c.end || s.blankAt(at+1)
		switch stretch := (Span{mark, at + 1}); {
		case before:
			e := s.without(stretch)
			for n := len(edits) - 1; n >= 0 && e.Span.Start < edits[n].Span.End; n-- {
				e = s.without(Span{edits[n].Span.Start, e.Span.End})
				edits = edits[:n]
			}
			edits = append(edits, e)
		case after:
			edits = append(edits, Edit{Span: stretch})
		default:
			edits = append(edits, Edit{stretch, " "})
		}
	}
	return edits
}

// markHint is a hint to leave out the stray marks of a line, none where it has none.
func (s *session) markHint(line Span) hint {
	edits := s.strayMarks(line)
	if len(edits) == 0 {
		return hint{}
	}
	var marks []string
	for _, e := range edits {
		marks = append(marks, strings.FieldsFunc(s.src[e.Span.Start:e.Span.End], measure.IsSpace)...)
	}
	words := "leave out the marks"
	named := map[string]string{"=": "equals sign", ":": "colon", ",": "comma", ";": "semicolon"}[marks[0]]
	switch count := len(marks); {
	case named == "" || len(slices.Compact(marks)) > 1:
	case count == 1:
		words = "leave out the " + named
	default:
		words = "leave out the " + named + "s"
	}
	return hint{words: words, edits: edits, instead: words}
}

// triedBytes is how much text is read again to try edits, in all; every message counts as so much text.
const (
	triedBytes = 1 << 18
	faultBytes = 1 << 11
)

// tryEdits reads the layout again with what each hint says to type, and takes back what does not help: an edit must remove its
// fault, and make none on the lines that it touches; a guess must not make more errors either. What the fault hid may show.
func (c *checker) tryEdits(list []Fault) {
	left := triedBytes
	for i := range list {
		f := &list[i]
		if len(f.Edits) == 0 {
			continue
		}
		if left -= len(c.src) + faultBytes*len(list); left < 0 {
			return
		}
		for !c.helps(list, i) {
			if len(f.trial.others) == 0 {
				f.Hint, f.Edits = cmp.Or(f.trial.instead, f.example), nil
				break
			}
			next := f.trial.others[0]
			f.trial.others = f.trial.others[1:]
			f.suggest(next)
		}
	}
}

// helps says whether the edits of a fault remove it.
func (c *checker) helps(list []Fault, i int) bool {
	f := &list[i]
	if len(f.Edits) == 0 {
		return true
	}
	text := Apply(c.src, f.Edits)
	tried := read(text, c.photos, false)
	after, now := tried.Source, tried.Faults
	known := map[faultKey]int{}
	for n := range list {
		if n != i {
			known[faultKey{list[n].Severity, list[n].Message, moved(list[n].Span.Start, f.Edits)}]++
		}
	}
	own := faultKey{f.Severity, f.Message, moved(f.Span.Start, f.Edits)}
	for n := range now {
		g := &now[n]
		key := faultKey{g.Severity, g.Message, g.Span.Start}
		switch {
		case known[key] > 0:
			known[key]--
		case key == own, f.trial.strict && g.Severity == Error, g.Severity <= f.Severity && touches(after, g.Span, f.Edits):
			return false
		}
	}
	errors, _ := Count(list)
	left, _ := Count(now)
	return !f.trial.guess || left <= errors
}

// faultKey is what a fault is known by in a text and in what becomes of it.
type faultKey struct {
	severity Severity
	message  string
	start    int
}

// moved is where a byte stands when edits are made.
func moved(at int, edits []Edit) int {
	by := 0
	for _, e := range edits {
		if e.Span.End > at {
			break
		}
		by += len(e.Text) - (e.Span.End - e.Span.Start)
	}
	return at + by
}

// touches says whether a place in the edited text is on a line that one of the edits touched.
func touches(after *Source, at Span, edits []Edit) bool {
	line := after.Line(at.Start)
	for i, e := range edits {
		start := moved(e.Span.Start, edits[:i])
		if first, last := after.Line(start), after.Line(start+len(e.Text)); first <= line && line <= last {
			return true
		}
	}
	return false
}
