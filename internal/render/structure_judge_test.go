//go:build judges

package render

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/judges"
)

// heard is a part of a PDF as a reader gives it out: its kind, what is said of it, its own text, and what lies in it.
type heard struct {
	kind, attributes, text string
	within                 []*heard
}

var heardKind = regexp.MustCompile(`^[A-Z][A-Za-z0-9]*`)

// listen is a PDF's structure with its text, as Poppler tells it: a part a line, indented by two blanks.
func listen(t testing.TB, path string) *heard {
	t.Helper()
	dump := output(t, judges.Program(t, "Debian's poppler-utils", "pdfinfo"), "-struct-text", "-enc", "UTF-8", path)
	root := &heard{}
	open := []*heard{root}
	for _, line := range strings.Split(dump, "\n") {
		words := strings.TrimLeft(line, " ")
		depth := (len(line) - len(words)) / 2
		switch kind := heardKind.FindString(words); {
		case words == "":
		case words[0] == '"':
			last := open[min(depth, len(open)-1)]
			last.text += strings.TrimSuffix(words[1:], `"`)
		case words[0] == '/':
			open[len(open)-1].attributes += words + "\n"
		case kind != "" && depth < len(open):
			own := &heard{kind: kind}
			open[depth].within = append(open[depth].within, own)
			open = append(open[:depth+1], own)
		default:
			t.Fatalf("a line of the reader is not understood: %q", line)
		}
	}
	return root
}

// all are the parts of a kind, in the order in which they are read.
func (h *heard) all(kind string) []*heard {
	var list []*heard
	if h.kind == kind {
		list = append(list, h)
	}
	for _, in := range h.within {
		list = append(list, in.all(kind)...)
	}
	return list
}

// words is the text of a part and those in it, but for what stands in pictures and before items.
func (h *heard) words() string {
	if h.kind == "Figure" || h.kind == "Lbl" {
		return ""
	}
	text := h.text + "\n"
	for _, in := range h.within {
		text += in.words()
	}
	return text
}

// misheard says what is wrong with the words of a text: one broken by a blank, two without one, one missing or elsewhere.
func misheard(text, wanted string, heads map[string]bool) string {
	if a, b := len(wordShape.FindAllString(text, -1)), len(wordShape.FindAllString(blanks.ReplaceAllString(text, ""), -1)); a != b {
		return fmt.Sprintf("%d words, but %d without blanks", a, b)
	}
	for _, field := range strings.Fields(text) {
		if len(wordShape.FindAllString(field, -1)) > 1 {
			return fmt.Sprintf("no blank within %q", field)
		}
	}
	return missed(text, wanted, heads)
}

// uneven are the tables of which two rows have not as many columns.
func uneven(h *heard) []string {
	var wrong []string
	for _, table := range h.all("Table") {
		columns := 0
		for _, row := range table.all("TR") {
			n := 0
			for _, cell := range row.within {
				span := 1
				if _, after, ok := strings.Cut(cell.attributes, "/ColSpan "); ok {
					fmt.Sscan(after, &span)
				}
				n += span
			}
			if columns > 0 && n != columns {
				wrong = append(wrong, fmt.Sprintf("a row of %d columns in a table of %d", n, columns))
			}
			columns = n
		}
	}
	return wrong
}

// skipped says whether a heading lies two levels or more below the one before.
func skipped(h *heard) bool {
	last, skips := 0, false
	var walk func(*heard)
	walk = func(h *heard) {
		var level int
		if n, _ := fmt.Sscanf(h.kind, "H%d", &level); n == 1 {
			skips = skips || level > last+1
			last = level
		}
		for _, in := range h.within {
			walk(in)
		}
	}
	walk(h)
	return skips
}

// A program that reads aloud finds every word with its blanks, in the order of the document whatever page it stands on, every
// cell in its row, and every illustration; headings go down step by step (ISO 14289-1, 7.1 to 7.5).
func TestPDFIsReadAloud(t *testing.T) {
	mutool := judges.Program(t, "Debian's mupdf-tools", "mutool")
	judged := 0
	for seed := range uint64(8) {
		d, v := invent(seed)
		d.Copyright = "All rights with the maker"
		printed, err := PDF(d, v.paperFor())
		if err != nil {
			t.Fatal(err)
		}
		if printed.Pages > 60 {
			continue
		}
		judged++
		path := written(t, printed.File)
		h := listen(t, path)
		if wrong := misheard(h.words(), said(d), v.heads); wrong != "" && !slices.ContainsFunc(printed.Warnings, func(w Warning) bool { return w.Kind == StackedTable }) {
			t.Errorf("seed %d: %s", seed, wrong)
		}
		for _, wrong := range uneven(h) {
			t.Errorf("seed %d: %s", seed, wrong)
		}
		if skipped(h) {
			t.Errorf("seed %d: a level of headings is left out", seed)
		}
		if n := len(h.all("Figure")); n != v.figures {
			t.Errorf("seed %d: %d illustrations, want %d", seed, n, v.figures)
		}
		for _, object := range strings.Split(output(t, mutool, "show", path, "grep"), "\n") {
			if strings.Contains(object, "/S/Figure") && !regexp.MustCompile(`/Alt\((a picture|a diagram)\)`).MatchString(object) {
				t.Errorf("seed %d: an illustration has no words: %s", seed, object)
			}
		}
	}
	if judged < 6 {
		t.Errorf("only %d documents were judged", judged)
	}
}

func TestMisheardCatches(t *testing.T) {
	d, v := invent(4)
	printed, err := PDF(d, Options{})
	if err != nil {
		t.Fatal(err)
	}
	h := listen(t, written(t, printed.File))
	text := h.words()
	list := wordShape.FindAllString(text, 3)
	for what, broken := range map[string]string{
		"no blanks":   strings.Join(strings.Fields(text), ""),
		"a blank":     strings.Replace(text, list[1], list[1][:1]+" "+list[1][1:], 1),
		"another row": strings.Replace(text, list[0], list[2]+" "+list[0], 1),
		"one less":    strings.Replace(text, list[1], "", -1),
	} {
		if misheard(broken, said(d), v.heads) == "" {
			t.Errorf("%s: not noticed", what)
		}
	}
	row := &heard{kind: "TR", within: []*heard{{kind: "TD"}}}
	if uneven(&heard{kind: "Table", within: []*heard{row, {kind: "TR", within: []*heard{{kind: "TD"}, {kind: "TD"}}}}}) == nil {
		t.Error("a row with a cell too many is not noticed")
	}
	if !skipped(&heard{within: []*heard{{kind: "H1"}, {kind: "H3"}}}) {
		t.Error("a level that is left out is not noticed")
	}
}

// A text leads to each figure that it names and that is there; the name at the head of a caption does not.
func TestTextsLeadToFigures(t *testing.T) {
	figure := func(n int) document.Figure {
		return document.Figure{Of: diagram.Figure{Title: "one", Description: "a square", Max: measure.Point{X: measure.Inch, Y: measure.Inch}},
			Caption: document.Plain(fmt.Sprintf("Figure %d. A square beside Figure 1.", n))}
	}
	d := document.Document{Title: "t", Sections: []document.Section{{Title: "one", Blocks: []document.Block{
		document.Paragraph{Text: document.Plain("See Figure 1, Figure 12 and Figure 9.")}, figure(1), document.PageBreak{}, figure(12),
		document.Table{Columns: []document.Column{{Title: "Where"}}, Rows: []document.Row{{Cells: []document.Cell{{Text: document.Plain("Figure 12")}}}}},
	}}}}
	printed, err := PDF(d, Options{})
	if err != nil {
		t.Fatal(err)
	}
	path := written(t, printed.File)
	var said []string
	for _, link := range listen(t, path).all("Link") {
		said = append(said, link.text)
	}
	if want := []string{"Figure 1", "Figure 12", "Figure 1", "Figure 1", "Figure 12"}; !slices.Equal(said, want) {
		t.Errorf("links read %q, want %q", said, want)
	}
	objects := output(t, judges.Program(t, "Debian's mupdf-tools", "mutool"), "show", path, "grep")
	places := map[string]map[string]bool{}
	for _, found := range regexp.MustCompile(`/Contents\((Figure [0-9]+)\)/Dest\[([0-9]+) 0 R/XYZ`).FindAllStringSubmatch(objects, -1) {
		if places[found[1]] == nil {
			places[found[1]] = map[string]bool{}
		}
		places[found[1]][found[2]] = true
	}
	if len(places) != 2 || len(places["Figure 1"]) != 1 || len(places["Figure 12"]) != 1 {
		t.Errorf("links lead to %v", places)
	}
	for page := range places["Figure 1"] {
		if places["Figure 12"][page] {
			t.Error("figures of two pages are led to on one")
		}
	}
	if out := output(t, judges.Program(t, "Debian's qpdf", "qpdf"), "--check", path); !strings.Contains(out, "No syntax or stream encoding errors") {
		t.Error(out)
	}
}
