package layout_test

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"eighthturn/internal/quilttest/judges"
	"eighthturn/layout"
)

// wordsOf are the places of the words of a line.
var wordsOf = regexp.MustCompile(`[^ \t]+`)

// slip is a way in which a line goes wrong; it gives the line back where it has no place for it.
type slip struct {
	name string
	make func(r *rand.Rand, line string) string
}

// inWords is a slip in the words of a line.
func inWords(name string, least int, change func(r *rand.Rand, words []string, i int) []string) slip {
	return slip{name, func(r *rand.Rand, line string) string {
		code, comment := line, ""
		if i := strings.Index(line, " # "); i >= 0 {
			code, comment = line[:i], line[i:]
		}
		trimmed := strings.TrimLeft(code, " \t")
		words := wordsOf.FindAllString(code, -1)
		if len(words) < least {
			return line
		}
		return code[:len(code)-len(trimmed)] + strings.Join(change(r, slices.Clone(words), r.IntN(len(words)-least+1)), " ") + comment
	}}
}

// slipsInLines are the ways in which a line of a layout goes wrong most often.
func slipsInLines() []slip {
	mark := func(text string) func(*rand.Rand, []string, int) []string {
		return func(_ *rand.Rand, w []string, i int) []string { w[i] += text; return w }
	}
	letter := func(change func(r *rand.Rand, word string, at int) string) func(*rand.Rand, []string, int) []string {
		return func(r *rand.Rand, w []string, i int) []string {
			w[i] = change(r, w[i], r.IntN(len(w[i])))
			return w
		}
	}
	return []slip{
		inWords("two words swapped", 2, func(_ *rand.Rand, w []string, i int) []string { w[i], w[i+1] = w[i+1], w[i]; return w }),
		inWords("a word left out", 2, func(_ *rand.Rand, w []string, i int) []string { return slices.Delete(w, i, i+1) }),
		inWords("a word twice", 1, func(_ *rand.Rand, w []string, i int) []string { return slices.Insert(w, i, w[i]) }),
		inWords("a comma", 2, mark(",")),
		inWords("a semicolon", 1, mark(";")),
		inWords("a colon", 1, mark(":")),
		inWords("an equals sign", 2, func(_ *rand.Rand, w []string, i int) []string { return slices.Insert(w, i+1, "=") }),
		inWords("an equals sign without blanks", 2, func(_ *rand.Rand, w []string, i int) []string {
			w[i] += "=" + w[i+1]
			return slices.Delete(w, i+1, i+2)
		}),
		inWords("a word with a capital", 1, func(_ *rand.Rand, w []string, i int) []string { w[i] = strings.ToUpper(w[i]); return w }),
		inWords("a letter left out", 1, letter(func(_ *rand.Rand, w string, at int) string { return w[:at] + w[at+1:] })),
		inWords("a letter twice", 1, letter(func(_ *rand.Rand, w string, at int) string { return w[:at] + w[at:at+1] + w[at:] })),
		inWords("another letter", 1, letter(func(r *rand.Rand, w string, at int) string { return w[:at] + string(rune('a'+r.IntN(26))) + w[at+1:] })),
		inWords("a Cyrillic letter", 1, func(_ *rand.Rand, w []string, i int) []string { w[i] = strings.Replace(w[i], "e", "е", 1); return w }),
		inWords("a word too many", 1, func(_ *rand.Rand, w []string, i int) []string { return slices.Insert(w, i+1, "wide") }),
		inWords("a hyphen left out", 1, func(_ *rand.Rand, w []string, i int) []string {
			for n := range w {
				w[n] = strings.Replace(w[n], "-", " ", 1)
			}
			return w
		}),
		inWords("a comment without its blank", 1, func(_ *rand.Rand, w []string, i int) []string { return append(w, "#dark") }),
		inWords("a comment of another language", 1, func(_ *rand.Rand, w []string, i int) []string { return append(w, "//", "dark") }),
		{"indentation lost", func(_ *rand.Rand, line string) string { return strings.TrimLeft(line, " \t") }},
		{"indented", func(_ *rand.Rand, line string) string { return "  " + line }},
		{"blanks lost", func(_ *rand.Rand, line string) string {
			if !strings.HasPrefix(line, "  ") {
				return line
			}
			return "  " + strings.ReplaceAll(line, " ", "")
		}},
		{"quotes lost", func(_ *rand.Rand, line string) string { return strings.Replace(line, `"`, "", 1) }},
		{"quotes left out", func(_ *rand.Rand, line string) string { return strings.ReplaceAll(line, `"`, "") }},
		{"an invisible character", func(r *rand.Rand, line string) string { return line[:len(line)/2] + "\u200b" + line[len(line)/2:] }},
		{"another word for it", func(r *rand.Rand, line string) string {
			for _, s := range layout.Statements() {
				if rest, ok := strings.CutPrefix(line, s.Word+" "); ok && len(s.Aliases()) > 0 {
					return s.Aliases()[r.IntN(len(s.Aliases()))] + " " + rest
				}
			}
			return line
		}},
	}
}

// hintsThatFail says which hints of a layout say something wrong to type: typed, it leaves the fault or makes another error.
func hintsThatFail(text string, before []layout.Fault) (bad []string) {
	type key struct {
		severity layout.Severity
		message  string
		start    int
	}
	for i, f := range before {
		if len(f.Edits) == 0 {
			continue
		}
		fixed := layout.Apply(text, f.Edits)
		moved := func(at int) int {
			by := 0
			for _, e := range f.Edits {
				if e.Span.End <= at {
					by += len(e.Text) - (e.Span.End - e.Span.Start)
				}
			}
			return at + by
		}
		known := map[key]bool{}
		errors := 0
		for n, g := range before {
			if n != i {
				known[key{g.Severity, g.Message, moved(g.Span.Start)}] = true
			}
			if g.Severity == layout.Error {
				errors++
			}
		}
		_, source, after := layout.Read(fixed)
		for _, g := range after {
			same := g.Severity == f.Severity && g.Message == f.Message && g.Span.Start == moved(f.Span.Start)
			if same || g.Severity == layout.Error && !known[key{g.Severity, g.Message, g.Span.Start}] {
				line, column := source.Position(g.Span.Start)
				bad = append(bad, fmt.Sprintf("%q, typed for %q, gives in line %d, column %d: %s", f.Hint, f.Message, line, column, g.Message))
			}
		}
	}
	return bad
}

// TestHintsAreRight makes one slip in one line of a layout after the other, and types what the hints say.
func TestHintsAreRight(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	cases := append(filesAsCases(t, "../testdata/layout/*.quilt"), filesAsCases(t, "../samples/*.quilt")...)
	cases = append(cases, filesAsCases(t, "../samples/starters/*.quilt")...)
	tries := 600
	if judges.On {
		tries = 20_000
	}
	slips, typed, failing := slipsInLines(), 0, 0
	for n := range tries {
		text := cases[n%len(cases)].text()
		if len(text) > 4000 {
			continue
		}
		lines := strings.Split(text, "\n")
		i := r.IntN(len(lines))
		s := slips[r.IntN(len(slips))]
		if lines[i] == "" || lines[i][0] == '#' {
			continue
		}
		before := lines[i]
		lines[i] = s.make(r, lines[i])
		if lines[i] == before {
			continue
		}
		wrong := strings.Join(lines, "\n")
		_, _, list := layout.Read(wrong)
		for _, f := range list {
			if len(f.Edits) > 0 {
				typed++
			}
		}
		for _, bad := range hintsThatFail(wrong, list) {
			failing++
			t.Errorf("%s, %s: %q: %s", cases[n%len(cases)].name, s.name, lines[i], bad)
		}
	}
	if typed < tries/5 {
		t.Errorf("only %d hints of %d slips say what to type", typed, tries)
	}
	t.Logf("%d slips, %d hints typed, %d wrong", tries, typed, failing)
}

// TestWrongHintsAreSeen gives hints that say something wrong to type, each wrong in one way.
func TestWrongHintsAreSeen(t *testing.T) {
	text := swap(small, "wedges navy", "wedges nvay")
	_, _, list := layout.Read(text)
	if len(list) != 1 || len(list[0].Edits) != 1 || len(hintsThatFail(text, list)) > 0 {
		t.Fatalf("%+v", list)
	}
	for name, change := range map[string]func(*layout.Edit){
		"another name":         func(e *layout.Edit) { e.Text = "nvy" },
		"the same name":        func(e *layout.Edit) { e.Text = "nvay" },
		"a word of its own":    func(e *layout.Edit) { e.Text = "border" },
		"too little of it":     func(e *layout.Edit) { e.Span.End-- },
		"too much of it":       func(e *layout.Edit) { e.Span.End += len(" kites") },
		"another place":        func(e *layout.Edit) { e.Span = layout.Span{} },
		"nothing in its place": func(e *layout.Edit) { e.Text = "" },
	} {
		bad := list[0]
		bad.Edits = []layout.Edit{list[0].Edits[0]}
		change(&bad.Edits[0])
		if len(hintsThatFail(text, []layout.Fault{bad})) == 0 {
			t.Errorf("%s: not seen", name)
		}
	}
}

// TestEditsKeepTheirPlaces: marks in any gaps of a line, with any blanks around them and behind a letter of two bytes, are left out by edits that
// stand one behind the other and leave whole letters. Two marks with a blank at the end of a line had edits that reached into each other, and
// their layout ended the program.
func TestEditsKeepTheirPlaces(t *testing.T) {
	marks := []string{"", " =", " = :", ":", " ; ; ", ";;\t;", "\u00a0=\u0085:", " =\u00a0"}
	helped := 0
	for _, line := range []string{"fabric%s navy%s #1f3350%s", "voil\u00e0%s navy\u00c5%s x\u00a0%s", "seam%s 1/4%s in%s", "block A%s web%s%s"} {
		for i := range len(marks) * len(marks) * len(marks) {
			text := fmt.Sprintf(line, marks[i%len(marks)], marks[i/len(marks)%len(marks)], marks[i/len(marks)/len(marks)])
			source, list := layout.Inspect(text, nil).Source, layout.Inspect(text, nil).Faults
			for _, f := range list {
				end := 0
				for _, e := range f.Edits {
					if e.Span.Start < end || e.Span.End < e.Span.Start || e.Span.End > len(source.Text) {
						t.Fatalf("%q: %s: edits %v", text, f.Message, f.Edits)
					}
					end = e.Span.End
				}
				if len(f.Edits) > 0 {
					helped++
					if after := layout.Apply(source.Text, f.Edits); utf8.ValidString(text) && !utf8.ValidString(after) {
						t.Errorf("%q: %s: becomes %q", text, f.Message, after)
					}
				}
			}
		}
	}
	if helped < 100 {
		t.Errorf("just %d faults have edits", helped)
	}
}

// TestApply makes edits of every sort.
func TestApply(t *testing.T) {
	at := func(start, end int, text string) layout.Edit {
		return layout.Edit{Span: layout.Span{Start: start, End: end}, Text: text}
	}
	for _, c := range []struct {
		edits []layout.Edit
		want  string
	}{
		{nil, "strip 4"},
		{[]layout.Edit{at(0, 5, "side"), at(6, 7, "7")}, "side 7"},
		{[]layout.Edit{at(0, 0, "# "), at(7, 7, " in")}, "# strip 4 in"},
		{[]layout.Edit{at(0, 7, "")}, ""},
	} {
		if got := layout.Apply("strip 4", c.edits); got != c.want {
			t.Errorf("%v: %q, want %q", c.edits, got, c.want)
		}
	}
}
