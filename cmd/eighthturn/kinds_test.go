package main

import (
	"fmt"
	"go/ast"
	"go/token"
	"io/fs"
	"strconv"
	"testing"

	"eighthturn/internal/blocks"
)

// A block kind is one file in blocks and one line in its list; nothing else names a kind.

// exception is a literal outside blocks that is a kind's name and has another reason to be there.
type exception struct{ folder, text, reason string }

func exceptions() []exception {
	return []exception{
		{"layout", "web", "a word of the statement top-left, and of messages about web centres, which are no kind"},
		{"layout", "star", "a word of the statement top-left, and of messages about star centres, which are no kind"},
		{"internal/quilttest/invent", "web", "a word of the statement top-left"},
		{"internal/quilttest/invent", "star", "a word of the statement top-left"},
		{"internal/plan/contrast", "web", "a sort of figure: the wedges round a web centre, whatever kinds they belong to"},
		{"internal/plan/contrast", "star", "a sort of figure: the kites round a star centre, whatever kinds they belong to"},
		{"internal/report", "ring", "a sort of figure: wedges round the middle of a block"},
		{"internal/quilttest/spelled", "plain", "a line that ends without a sign"},
	}
}

// kindsNamed are the literals outside blocks that are a kind's name and no exception, and which exceptions there were.
func kindsNamed(t *testing.T, source fs.FS) (list []string, excused map[int]bool) {
	kinds := blocks.Kinds()
	excused = map[int]bool{}
	for _, f := range goFiles(t, source) {
		if f.folder == "internal/blocks" {
			continue
		}
		ast.Inspect(f.File, func(n ast.Node) bool {
			lit, ok := n.(*ast.BasicLit)
			if !ok || lit.Kind != token.STRING {
				return true
			}
			text, err := strconv.Unquote(lit.Value)
			if _, named := blocks.Find(kinds, text); err == nil && named {
				if i := excuse(f.folder, text); i >= 0 {
					excused[i] = true
				} else {
					list = append(list, fmt.Sprintf("%s names the kind %q", f.path, text))
				}
			}
			return true
		})
	}
	return list, excused
}

// excuse is the number of the exception for a literal, -1 if there is none.
func excuse(folder, text string) int {
	for i, e := range exceptions() {
		if e.folder == folder && e.text == text {
			return i
		}
	}
	return -1
}

func TestNothingElseNamesAKind(t *testing.T) {
	list, excused := kindsNamed(t, project())
	for _, line := range list {
		t.Error(line)
	}
	for i, e := range exceptions() {
		if !excused[i] {
			t.Errorf("%s does not have %q any more: take the exception out", e.folder, e.text)
		}
	}
}

func TestNothingElseNamesAKindCatches(t *testing.T) {
	for _, k := range blocks.Kinds() {
		for _, quote := range []string{`"`, "`"} {
			source := tree(map[string]string{
				"sewing/a.go":          "package sewing\n\nfunc f(kind string) bool { return kind == " + quote + k.Name + quote + " }\n",
				"internal/blocks/a.go": "package blocks\n\nconst name = \"" + k.Name + "\"\n",
				"sewing/a_test.go":     "package sewing\n\nconst name = \"" + k.Name + "\"\n",
			})
			if list, _ := kindsNamed(t, source); len(list) != 1 {
				t.Errorf("%s: found %q, want one thing", k.Name, list)
			}
		}
	}
}
