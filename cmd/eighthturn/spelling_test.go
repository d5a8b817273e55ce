package main

import (
	"go/ast"
	"go/token"
	"io/fs"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"
)

// Commands, messages, documents, the page and the samples are written in US spelling and in the words of published patterns.

// helpFolders hold what commands, layouts and the page say.
func helpFolders() []string {
	return []string{"cmd/eighthturn", "layout", "palettes", "internal/preview"}
}

// helpTexts are documents and the page's own text.
func helpTexts() []string {
	return []string{"README.md", "CHANGELOG.md", "layout/LANGUAGE.md", "samples/README.md", "internal/preview/page/index.html"}
}

// notSaid are words in British spelling, and words for which patterns have better ones.
var notSaid = regexp.MustCompile(`(?i)\b(un)?(colou?rings|colour\w*|grey\w*|centre\w*|neighbour\w*|centimetre\w*|millimetre\w*|metres?|harbour\w*|labelled|spelt|towards|licence|` +
	`anticlockwise|mistakes?|draughtboard|cupboard|cloths?|wedge rules?|cut edges?|stop pieces?|on the slant|left out,|if left out|if need be|turned? half round|selvage to selvage)\b`)

// code is what documents show as code, pages as tags, and messages put between quotes.
var code = regexp.MustCompile("(?s)```.*?```|`[^`\n]*`|<[^>]*>")

// wronglySaid are the words of a text that should be others.
func wronglySaid(text string) []string {
	return notSaid.FindAllString(code.ReplaceAllString(text, " "), -1)
}

// misspelled are the words in the literals of the folders, and in the texts, that should be others, with their places.
func misspelled(t *testing.T, tree fs.FS) []string {
	t.Helper()
	var list []string
	for _, f := range goFiles(t, tree) {
		if !slices.Contains(helpFolders(), f.folder) {
			continue
		}
		ast.Inspect(f.File, func(n ast.Node) bool {
			lit, ok := n.(*ast.BasicLit)
			if !ok || lit.Kind != token.STRING {
				return true
			}
			if said, err := strconv.Unquote(lit.Value); err == nil && strings.Contains(said, " ") {
				for _, w := range wronglySaid(said) {
					list = append(list, f.path+": "+w)
				}
			}
			return true
		})
	}
	names, err := fs.Glob(tree, "samples/*.quilt")
	if err != nil {
		t.Fatal(err)
	}
	starters, err := fs.Glob(tree, "samples/starters/*.quilt")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range slices.Concat(helpTexts(), names, starters) {
		text, err := fs.ReadFile(tree, name)
		if err != nil {
			continue // a small tree has few of them
		}
		for _, w := range wronglySaid(string(text)) {
			list = append(list, name+": "+w)
		}
	}
	return list
}

func TestSpelling(t *testing.T) {
	tree := project()
	for _, name := range helpTexts() {
		if _, err := fs.Stat(tree, name); err != nil {
			t.Error(err)
		}
	}
	for _, wrong := range misspelled(t, tree) {
		t.Error(wrong)
	}
}

// TestSpellingNotices: each kind of text is read, and what stands as code is not.
func TestSpellingNotices(t *testing.T) {
	file := func(text string) *fstest.MapFile { return &fstest.MapFile{Data: []byte(text)} }
	for name, text := range map[string]string{
		"layout/a.go":         "package layout\nconst a = \"write a colour here\"\n",
		"cmd/eighthturn/a.go": "package main\nconst a = `16 in if left out`\n",
		"README.md":           "Four webs and one mistake.\n",
		"samples/a.quilt":     "# a table of greys\n",
	} {
		if wrong := misspelled(t, fstest.MapFS{name: file(text)}); len(wrong) != 1 {
			t.Errorf("%s: found %q", name, wrong)
		}
	}
	for name, text := range map[string]string{
		"layout/a.go": "package layout\n\n// a colour\nconst a = \"colour\"\n",
		"README.md":   "Write `--view colour`.\n```\ncolour\n```\n",
	} {
		if wrong := misspelled(t, fstest.MapFS{name: file(text)}); len(wrong) > 0 {
			t.Errorf("%s: found %q", name, wrong)
		}
	}
}
