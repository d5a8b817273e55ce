package layout_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// example is a fenced block of the reference.
type example struct {
	line int
	sort string // what stands behind the fence: "quilt", "quilt fragment", "quilt fault", "text"
	text string
}

func reference(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile("LANGUAGE.md")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// examples is the fenced blocks of a text, in order.
func examples(text string) []example {
	var list []example
	var open *example
	for i, line := range strings.Split(text, "\n") {
		sort, fence := strings.CutPrefix(line, "```")
		switch {
		case fence && open == nil:
			open = &example{line: i + 1, sort: sort}
		case fence:
			list, open = append(list, *open), nil
		case open != nil:
			open.text += line + "\n"
		}
	}
	return list
}

// completed is a fragment with what it lacks for a whole layout behind it: a strip, the
// fabrics that the reference speaks of, a block and a grid of its blocks, three rows down.
func completed(fragment string) string {
	var firsts, labels, fabrics []string
	for _, line := range strings.Split(fragment, "\n") {
		if words := strings.Fields(line); len(words) > 0 {
			firsts = append(firsts, words[0])
			switch {
			case words[0] == "block" && len(words) > 1:
				labels = append(labels, words[1])
			case words[0] == "fabric" && len(words) > 1:
				fabrics = append(fabrics, words[1])
			}
		}
	}
	var b strings.Builder
	b.WriteString(fragment)
	if !slices.Contains(firsts, "strip") && !slices.Contains(firsts, "side") {
		b.WriteString("strip 4\n")
	}
	for _, f := range [][2]string{{"cream", "#f4ead7"}, {"navy", "#1f3350"}, {"rust", "#b5532a"}, {"teal", "#2f7d83"}} {
		if !slices.Contains(fabrics, f[0]) {
			b.WriteString("fabric " + f[0] + " " + f[1] + "\n")
		}
	}
	if len(labels) == 0 {
		labels = []string{"W", "W"}
		b.WriteString("block W web wedges navy kites cream\n")
	}
	if !slices.Contains(firsts, "grid") {
		b.WriteString("grid\n" + strings.Repeat("  "+strings.Join(labels, " ")+"\n", 3))
	}
	return b.String()
}

// troubles is what is wrong with an example: messages where there should be none, or other
// messages than those printed below it. Fragments may leave things unused, nothing else.
func troubles(e, next example) string {
	text := e.text
	if e.sort != "quilt" {
		text = completed(text)
	}
	_, source, list := layout.Read(text)
	if e.sort == "quilt fragment" || e.sort == "quilt fault" {
		list = slices.DeleteFunc(list, func(f layout.Fault) bool {
			return f.Severity == layout.Warning && (strings.Contains(f.Message, "never used") || strings.Contains(f.Message, "stands nowhere"))
		})
	}
	var b strings.Builder
	if err := layout.Report(&b, "my.quilt", source, list); err != nil {
		return err.Error()
	}
	want := ""
	if e.sort == "quilt fault" {
		if next.sort != "text" || next.text == "" {
			return "no message is printed below it"
		}
		want = next.text
	}
	if got := b.String(); len(list) > 0 != (e.sort == "quilt fault") || len(list) > 0 && got != want {
		return "it gives\n" + got
	}
	return ""
}

// TestReferenceExamples reads every example of the language's reference.
func TestReferenceExamples(t *testing.T) {
	list := examples(reference(t))
	count := map[string]int{}
	for i, e := range list {
		var next example
		if i+1 < len(list) {
			next = list[i+1]
		}
		if count[e.sort]++; e.sort == "text" {
			continue
		}
		if wrong := troubles(e, next); wrong != "" {
			t.Errorf("LANGUAGE.md:%d: %s", e.line, wrong)
		}
	}
	if count["quilt"] < 2 || count["quilt fragment"] < 25 || count["quilt fault"] < 4 || len(count) != 4 {
		t.Errorf("the reference has %v", count)
	}
}

// TestReferenceExamplesNotice: an example that would not be read, and one that gives
// another message than it says, are found.
func TestReferenceExamplesNotice(t *testing.T) {
	for _, pair := range [][2]example{
		{{sort: "quilt", text: small + "stripe 4\n"}, {}},
		{{sort: "quilt", text: swap(small, "wedges navy", "wedges cream")}, {}},
		{{sort: "quilt fragment", text: "border 4 purple\n"}, {}},
		{{sort: "quilt fault", text: "border 4 navy\n"}, {sort: "text", text: "my.quilt:1:1: error"}},
		{{sort: "quilt fault", text: "border 4 purple\n"}, {sort: "text", text: "my.quilt:1:1: error"}},
		{{sort: "quilt fault", text: "border 4 purple\n"}, {}},
		{{sort: "quilt fault", text: "border 4 purple\n"}, {sort: "text"}},
	} {
		if troubles(pair[0], pair[1]) == "" {
			t.Errorf("%q passes as a %s", pair[0].text, pair[0].sort)
		}
	}
}

// named is every word of the language, with where it comes from: the reference must show
// each as code.
func named(t *testing.T) map[string]string {
	words := map[string]string{}
	for _, s := range layout.Statements() {
		words[s.Word] = "statement"
	}
	for _, k := range blocks.Kinds() {
		words[k.Name] = "kind"
		for _, r := range k.Roles {
			words[r.Name] = "role of " + k.Name
		}
	}
	for _, w := range append(layout.OptionWords(), "block", "web", "star") {
		words[w] = "option"
	}
	for _, w := range layout.NoteParts() {
		words[w] = "part of the pattern"
	}
	for _, w := range measure.UnitWords() {
		words[w] = "unit"
	}
	for _, w := range blocks.CornerNames() {
		words[":"+w] = "turn"
	}
	for _, p := range palettes.All() {
		words[p.Name] = "palette"
	}
	return words
}

// shown says whether a text shows a word as code: between backticks, by itself or among
// others.
func shown(text, word string) bool {
	code := false
	for _, part := range strings.Split(text, "`") {
		if code && slices.Contains(strings.FieldsFunc(part, func(r rune) bool { return strings.ContainsRune(" \n,[]|…", r) }), word) {
			return true
		}
		code = !code
	}
	return false
}

// TestReferenceIsComplete: the reference shows every word of the language, every statement
// under a heading of its own, and every kind too.
func TestReferenceIsComplete(t *testing.T) {
	text := reference(t)
	for word, sort := range named(t) {
		if !shown(text, word) {
			t.Errorf("the reference does not show the %s %s", sort, word)
		}
	}
	for _, s := range layout.Statements() {
		if !strings.Contains(text, "\n### `"+s.Word+"`") && !strings.Contains(text, ", `"+s.Word+"`") {
			t.Errorf("no heading names the statement %s", s.Word)
		}
	}
	for _, k := range blocks.Kinds() {
		if !strings.Contains(text, "\n### `"+k.Name+"`: ") {
			t.Errorf("no heading names the kind %s", k.Name)
		}
	}
	if shown("a `strip 4` and\n`b`", "four") || !shown("a `strip 4`", "strip") {
		t.Error("words are not found where they stand, or found where they do not")
	}
}

// limits is how the reference writes each limit, by the name of its constant.
func limits() map[string]string {
	inches := func(nm measure.NM) string { return measure.Text(nm, measure.Inches) }
	return map[string]string{
		"MaxBytes": thousands(layout.MaxBytes), "MaxLineBytes": thousands(layout.MaxLineBytes), "MaxLines": thousands(layout.MaxLines),
		"MaxCells": thousands(layout.MaxCells), "MaxPatches": thousands(layout.MaxPatches), "MaxNameChars": thousands(layout.MaxNameChars),
		"MaxTextChars": thousands(layout.MaxTextChars), "MaxBands": thousands(layout.MaxBands), "MaxStripes": thousands(layout.MaxStripes), "MaxDealt": thousands(layout.MaxDealt), "MaxPooled": thousands(layout.MaxPooled), "MaxSetStrips": thousands(layout.MaxSetStrips), "MaxDefined": thousands(layout.MaxDefined),
		"MaxBlocks": thousands(layout.MaxBlocks), "MaxPhotosPixels": thousands(layout.MaxPhotosPixels), "MaxPhotosBytes": thousands(layout.MaxPhotosBytes),
		"MaxColumn": thousands(layout.MaxColumn), "MaxBorders": thousands(layout.MaxBorders), "MaxColorways": thousands(layout.MaxColorways), "MaxSizes": thousands(layout.MaxSizes), "MaxOnHand": thousands(layout.MaxOnHand), "MaxPrecuts": thousands(layout.MaxPrecuts),
		"MaxSeam": inches(layout.MaxSeam), "MinSide": inches(layout.MinSide), "MinFinished": measure.Text(layout.MinFinished, measure.Centimetres),
		"MaxSide": inches(layout.MaxSide), "MaxStrip": inches(layout.MaxStrip), "MaxCloth": inches(layout.MaxCloth), "MaxExtraCloth": inches(layout.MaxExtraCloth), "MaxTop": thousands(int(layout.MaxTop/measure.Inch)) + " in",
	}
}

// thousands writes 100000 as 100,000.
func thousands(n int) string {
	if n < 1000 {
		return strconv.Itoa(n)
	}
	return fmt.Sprintf("%s,%03d", thousands(n/1000), n%1000)
}

// TestReferenceLimits: the table of limits has a row for every one, with its number.
func TestReferenceLimits(t *testing.T) {
	_, table, found := strings.Cut(reference(t), "## Limits")
	if !found {
		t.Fatal("the reference has no limits")
	}
	parsed, err := parser.ParseFile(token.NewFileSet(), "limits.go", nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	count, want := 0, limits()
	for _, d := range parsed.Decls {
		g, ok := d.(*ast.GenDecl)
		if !ok || g.Tok != token.CONST {
			continue
		}
		for _, spec := range g.Specs {
			name := spec.(*ast.ValueSpec).Names[0].Name
			if count++; want[name] == "" || !strings.Contains(table, "| "+want[name]+" |") {
				t.Errorf("the table of limits does not say %s, %q", name, want[name])
			}
		}
	}
	if count != len(want) {
		t.Errorf("limits.go has %d limits, %d are looked for", count, len(want))
	}
}
