package layout_test

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// TestSameTwice holds reading to the same result for the same text.
func TestSameTwice(t *testing.T) {
	eachCase(t, func(t *testing.T, c testCase) {
		if reported(c.text()) != reported(c.text()) {
			t.Error("two reports of one layout differ")
		}
	})
}

// TestPlacesOfFaults holds every message and note to a place inside the file.
func TestPlacesOfFaults(t *testing.T) {
	eachCase(t, func(t *testing.T, c testCase) {
		_, source, list := layout.Read(c.text())
		for _, wrong := range strayPlaces(source, list) {
			t.Error(wrong)
		}
	})
}

// strayPlaces says which messages lie outside the text, or run on into another line.
func strayPlaces(s *layout.Source, list []layout.Fault) []string {
	var wrong []string
	check := func(at layout.Span, message string) {
		switch {
		case at.Start < 0 || at.End < at.Start || at.End > len(s.Text):
			wrong = append(wrong, fmt.Sprintf("%v of %d bytes: %s", at, len(s.Text), message))
		case s.Line(at.Start) != s.Line(max(at.Start, at.End-1)):
			wrong = append(wrong, fmt.Sprintf("%v is in two lines: %s", at, message))
		}
	}
	for i, f := range list {
		check(f.Span, f.Message)
		for _, n := range f.Notes {
			check(n.Span, n.Message)
		}
		if i > 0 && f.Span.Start < list[i-1].Span.Start {
			wrong = append(wrong, "out of order: "+f.Message)
		}
	}
	return wrong
}

func TestStrayPlacesAreSeen(t *testing.T) {
	s := layout.NewSource("strip 4\nside 7\n")
	for _, list := range [][]layout.Fault{
		{{Span: layout.Span{Start: -1}}},
		{{Span: layout.Span{Start: 3, End: 99}}},
		{{Span: layout.Span{Start: 5, End: 3}}},
		{{Span: layout.Span{Start: 3, End: 12}}},
		{{Span: layout.Span{Start: 5, End: 6}}, {Span: layout.Span{Start: 2, End: 3}}},
		{{Notes: []layout.Note{{Span: layout.Span{Start: 20, End: 20}}}}},
	} {
		if len(strayPlaces(s, list)) == 0 {
			t.Errorf("%v is not seen", list)
		}
	}
}

// TestPlacesOfNodes proves by a walk over the tree that every node lies in the source and
// that names, words, texts and lengths are what stands at their places, or what older layouts have for it.
func TestPlacesOfNodes(t *testing.T) {
	eachCase(t, func(t *testing.T, c testCase) {
		source := layout.NewSource(c.text())
		tree, _ := layout.Parse(source)
		for _, wrong := range strayNodes(source.Text, tree) {
			t.Error(wrong)
		}
	})
}

var spanType = reflect.TypeFor[layout.Span]()

// strayNodes says which nodes of a tree are not at their places.
func strayNodes(text string, tree *layout.Tree) []string {
	w := treeWalk{text: text}
	w.walk(reflect.ValueOf(tree), "tree", layout.Span{Start: 0, End: len(text)})
	return w.wrong
}

type treeWalk struct {
	text  string
	wrong []string
}

func (w *treeWalk) fault(path, format string, args ...any) {
	w.wrong = append(w.wrong, path+": "+fmt.Sprintf(format, args...))
}

// walk checks a value and all that hangs on it; within is the span of the node above.
func (w *treeWalk) walk(v reflect.Value, path string, within layout.Span) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			w.walk(v.Elem(), path, within)
		}
	case reflect.Slice:
		for i := range v.Len() {
			w.walk(v.Index(i), fmt.Sprintf("%s[%d]", path, i), within)
		}
	case reflect.Struct:
		if v.Type() == spanType {
			w.span(v.Interface().(layout.Span), path, within)
			return
		}
		w.node(v, path, within)
	}
}

// node checks a struct: its own span first, then its fields within that.
func (w *treeWalk) node(v reflect.Value, path string, within layout.Span) {
	if f := v.FieldByName("Span"); f.IsValid() && f.Type() == spanType {
		at := f.Interface().(layout.Span)
		if !w.span(at, path, within) {
			return
		}
		w.words(v.Interface(), at, path)
		if !at.Empty() {
			within = at
		}
	}
	for i := range v.NumField() {
		field := v.Type().Field(i)
		if (field.IsExported() || field.Anonymous) && field.Type.PkgPath() != "eighthturn/blocks" && field.Name != "Kind" {
			w.walk(v.Field(i), path+"."+field.Name, within)
		}
	}
}

// span checks that a span lies in the one above it; an empty one at 0 is one that is not
// there.
func (w *treeWalk) span(at layout.Span, path string, within layout.Span) bool {
	if at == (layout.Span{}) {
		return true
	}
	if at.Start < within.Start || at.End > within.End || at.End < at.Start {
		w.fault(path, "%v lies outside %v", at, within)
		return false
	}
	return true
}

// words checks that a node says what stands at its span.
func (w *treeWalk) words(node any, at layout.Span, path string) {
	if at == (layout.Span{}) {
		return
	}
	there := w.text[at.Start:at.End]
	switch n := node.(type) {
	case layout.NameNode:
		if n.Text != there && !isFormerRole(there, n.Text) {
			w.fault(path, "the name %q stands at %q", n.Text, there)
		}
	case layout.WordNode:
		if !strings.EqualFold(n.Word, there) {
			w.fault(path, "the word %q stands at %q", n.Word, there)
		}
	case layout.TextNode:
		if inside, ok := unquote(there); !ok || n.Text != inside {
			w.fault(path, "the text %q stands at %q", n.Text, there)
		}
	case layout.LengthNode:
		w.length(n, there, path)
	}
}

// isFormerRole says whether older layouts have a word for what is called something else today.
func isFormerRole(word, today string) bool {
	return slices.ContainsFunc(blocks.Kinds(), func(k *blocks.Kind) bool {
		return slices.ContainsFunc(k.Roles, func(r blocks.Role) bool {
			return r.Former != "" && strings.EqualFold(r.Former, word) && r.Name == today
		})
	})
}

// unquote takes one quotation mark off either end.
func unquote(text string) (string, bool) {
	const marks = `"“”„«»`
	first, size := utf8.DecodeRuneInString(text)
	last, lastSize := utf8.DecodeLastRuneInString(text)
	if len(text) < size+lastSize || !strings.ContainsRune(marks, first) || !strings.ContainsRune(marks, last) {
		return "", false
	}
	return text[size : len(text)-lastSize], true
}

// length reads a length again from its place.
func (w *treeWalk) length(n layout.LengthNode, there, path string) {
	r, err := measure.Read(there)
	switch {
	case err != nil:
		w.fault(path, "a length stands at %q: %v", there, err)
	case r.In(measure.Inches).Cmp(n.In(measure.Inches)) != 0 || r.In(measure.Centimetres).Cmp(n.In(measure.Centimetres)) != 0:
		w.fault(path, "%s stands at %q", n.In(measure.Inches).Text(measure.Inches), there)
	case n.Cut != strings.HasSuffix(strings.ToLower(there), "cut"):
		w.fault(path, "cut is %v at %q", n.Cut, there)
	}
}

// TestStrayNodesAreSeen moves places in a tree, one at a time, and wants each noticed.
func TestStrayNodesAreSeen(t *testing.T) {
	text := "title \"108\" wide\"\nunits cm\nstrip 10 1/2\nfabric navy #1f3350 on-hand 1 1/2 yd\nborder 2 cut navy\nborder 3 navy\nblock W web wedges reversed navy\ngrid\n  W W:nw\n"
	parse := func() *layout.Tree {
		tree, _ := layout.Parse(layout.NewSource(text))
		return tree
	}
	if wrong := strayNodes(text, parse()); len(wrong) > 0 {
		t.Fatal(wrong)
	}
	for name, move := range map[string]func(*layout.Tree){
		"name":        func(r *layout.Tree) { r.Fabrics[0].Name.End-- },
		"name's text": func(r *layout.Tree) { r.Fabrics[0].Name.Text = "cream" },
		"title":       func(r *layout.Tree) { r.Title.Start++ },
		"title's end": func(r *layout.Tree) { r.Title.End-- },
		"word":        func(r *layout.Tree) { r.Units.Start-- },
		"length":      func(r *layout.Tree) { r.Strip.End -= 4 },
		"option":      func(r *layout.Tree) { r.Fabrics[0].OnHand.Start += 2 },
		"cut":         func(r *layout.Tree) { r.Borders[0].Width.Cut = false },
		"not cut":     func(r *layout.Tree) { r.Borders[1].Width.Cut = true },
		"statement":   func(r *layout.Tree) { r.Borders[0].End-- },
		"beyond":      func(r *layout.Tree) { r.Grid.End = len(text) + 1 },
		"cell":        func(r *layout.Tree) { r.Grid.Rows[0].Cells[1].Label.Start++ },
		"turn":        func(r *layout.Tree) { r.Grid.Rows[0].Cells[1].Turn.End++ },
		"row":         func(r *layout.Tree) { r.Grid.Rows[0].End-- },
		"comment":     func(r *layout.Tree) { r.Lines[0].Comment = layout.Span{Start: 4, End: 2} },
	} {
		tree := parse()
		move(tree)
		if len(strayNodes(text, tree)) == 0 {
			t.Errorf("a moved %s is not seen", name)
		}
	}
}

// TestTidy holds tidying to what it promises for layouts that are drawn.
func TestTidy(t *testing.T) {
	eachCase(t, func(t *testing.T, c testCase) {
		tidy, _ := layout.Tidy(c.text())
		for _, wrong := range untidy(c.text(), tidy) {
			t.Errorf("%s\n%s", wrong, tidy)
		}
	}, accepted, warned)
}

// everyPhoto is an album in which every photo is there: what is tidied is not looked at.
func everyPhoto(string) (palettes.PhotoSample, error) { return palettes.PhotoSample{}, nil }

// TestTidyLeavesFaultyLayouts wants a layout with errors back byte for byte. A photo that is not there is no error of the text:
// such a layout is tidied.
func TestTidyLeavesFaultyLayouts(t *testing.T) {
	eachCase(t, func(t *testing.T, c testCase) {
		tidy, list := layout.Tidy(c.text())
		if design, _, _ := layout.ReadWith(c.text(), everyPhoto); design != nil {
			if tidy == c.text() || len(list) > 0 {
				t.Errorf("not tidied: %v", list)
			}
			return
		}
		if tidy != c.text() {
			t.Errorf("changed to\n%s", tidy)
		}
		if errors, _ := layout.Count(list); errors == 0 {
			t.Error("its faults are not given")
		}
	}, refused)
}

// untidy says what is wrong with a tidy form of a text: it must stay as it is when tidied
// again, and keep the drawing, the comments and every word as the writer spelt it.
func untidy(text, tidy string) []string {
	var wrong []string
	if again, _ := layout.Tidy(tidy); again != tidy {
		wrong = append(wrong, "tidied again it changes")
	}
	if !sameDrawing(text, tidy) {
		wrong = append(wrong, "the drawing changes")
	}
	if a, b := comments(text), comments(tidy); !slices.Equal(a, b) {
		wrong = append(wrong, fmt.Sprintf("comments change from %q to %q", a, b))
	}
	if a, b := words(text), words(tidy); !slices.EqualFunc(a, b, sameWord) {
		wrong = append(wrong, "words change")
	}
	if a, b := textsOf(text), textsOf(tidy); !slices.Equal(a, b) {
		wrong = append(wrong, fmt.Sprintf("texts change from %q to %q", a, b))
	}
	return wrong
}

// comments is the comments of a layout, sorted, without the blanks at their ends.
func comments(text string) []string {
	source := layout.NewSource(text)
	tree, _ := layout.Parse(source)
	var list []string
	for _, l := range tree.Lines {
		if comment := text[l.Comment.Start:l.Comment.End]; comment != "" {
			list = append(list, strings.TrimFunc(strings.TrimPrefix(comment, "#"), measure.IsSpace))
		}
	}
	slices.Sort(list)
	return list
}

// words is everything in a text that is not blank, the # of comments and colours left out:
// a comment among rows needs a blank behind it.
func words(text string) []string {
	return strings.FieldsFunc(strings.TrimPrefix(text, "\ufeff"), func(r rune) bool {
		return measure.IsSpace(r) || unicode.IsSpace(r) || r == '\u2028' || r == '\u2029' || r == '#'
	})
}

// sameWord allows for what tidy may change: capitals in a statement's word.
func sameWord(a, b string) bool {
	return a == b || strings.EqualFold(a, b) && isStatement(b)
}

func isStatement(word string) bool {
	for _, s := range layout.Statements() {
		if slices.Contains(s.Words(), word) {
			return true
		}
	}
	return false
}

// textsOf is the texts in quotes that a layout's tree holds.
func textsOf(text string) []string {
	tree, _ := layout.Parse(layout.NewSource(text))
	var list []string
	if tree.Title != nil {
		list = append(list, tree.Title.Text)
	}
	for _, f := range tree.Fabrics {
		if f.Print != nil {
			list = append(list, f.Print.Text)
		}
	}
	return list
}

// TestUntidyIsSeen gives tidy forms that are each wrong in one way.
func TestUntidyIsSeen(t *testing.T) {
	text := "title \"a  b\"\n# first\nstrip 3 1/2 # second\nfabric navy #123\nblock W web wedges navy kites navy\ngrid\n W W\n"
	good, _ := layout.Tidy(text)
	if wrong := untidy(text, good); len(wrong) > 0 {
		t.Fatal(wrong)
	}
	for name, bad := range map[string]string{
		"blanks":        swap(good, "navy  #123", "navy     #123"),
		"colour":        swap(good, "#123", "#124"),
		"another strip": swap(good, "3 1/2", "3 1/4"),
		"spelling":      swap(good, "3 1/2", "3.5"),
		"comment":       swap(good, "# first\n", ""),
		"comment twice": swap(good, "# first", "# first\n# first"),
		"text":          swap(good, "a  b", "a b"),
		"row":           good + "  W W\n",
		"not drawn":     swap(good, "strip", "stripp"),
		"capitals":      swap(good, "wedges navy", "wedges Navy"),
	} {
		if len(untidy(text, bad)) == 0 {
			t.Errorf("%s: not seen", name)
		}
	}
}
