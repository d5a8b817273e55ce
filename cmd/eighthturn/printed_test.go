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
	"unicode"
)

// printedText is a text that somebody reads, and where it stands.
type printedText struct{ where, text string }

// readFolders hold texts in which words stand for themselves too; elsewhere a word alone is a key or an option.
func readFolders() []string {
	return []string{"internal/report", "internal/report/booklet", "internal/blocks", "internal/diagram", "internal/templates"}
}

// keys are words alone in those folders that are never printed.
func keys() []string {
	return []string{
		"colouring", // the part of the pattern that --without names
	}
}

// documents are files that people read.
func documents() []string {
	return []string{"README.md", "CHANGELOG.md", "layout/LANGUAGE.md", "samples/README.md", "cmd/eighthturn/eighthturn.1"}
}

// readTexts are all texts of a tree that are printed somewhere: strings of the program and of the page, documents and layouts.
func readTexts(t *testing.T, tree fs.FS) []printedText {
	t.Helper()
	list := printedLiterals(t, tree)
	for _, pattern := range append(documents(), "samples/*.quilt", "samples/starters/*.quilt", "internal/preview/page/*.html", "internal/preview/page/*.js") {
		names, err := fs.Glob(tree, pattern)
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range names {
			text, err := fs.ReadFile(tree, name)
			if err != nil {
				t.Fatal(err)
			}
			for _, part := range partsOf(name, string(text)) {
				list = append(list, printedText{name, part})
			}
		}
	}
	return list
}

// printedLiterals are the strings of the program; imports, tags of fields and the helpers of tests are none.
func printedLiterals(t *testing.T, tree fs.FS) (list []printedText) {
	t.Helper()
	for _, f := range goFiles(t, tree) {
		if strings.HasPrefix(f.folder, "internal/quilttest") {
			continue
		}
		alone := slices.Contains(readFolders(), f.folder)
		ast.Inspect(f.File, func(n ast.Node) bool {
			switch v := n.(type) {
			case *ast.ImportSpec:
				return false
			case *ast.Field:
				return v.Tag == nil
			case *ast.BasicLit:
				text, err := strconv.Unquote(v.Value)
				text = tag.ReplaceAllString(text, "")
				if v.Kind == token.STRING && err == nil && (alone && !slices.Contains(keys(), text) || isSaid(text)) {
					list = append(list, printedText{f.path, text})
				}
			}
			return true
		})
	}
	return list
}

// isSaid says whether a string is words and no key: it has several, or begins with a capital letter.
func isSaid(text string) bool {
	return strings.Contains(text, " ") || text != "" && unicode.IsUpper([]rune(text)[0])
}

var (
	shownCode  = regexp.MustCompile("(?s)```.*?```|`[^`\n]*`")
	tag        = regexp.MustCompile(`(?s)<[a-zA-Z/!?][^<>]*(?:>|$)`)
	attribute  = regexp.MustCompile(`(?:title|alt|aria-label|placeholder)="([^"]*)"`)
	comment    = regexp.MustCompile(`(?m)(^|\s)//.*$`)
	scriptText = regexp.MustCompile("'((?:[^'\\\\\n]|\\\\.)*)'|`((?:[^`\\\\]|\\\\.)*)`")
	filledIn   = regexp.MustCompile(`\$\{[^{}]*\}|\{\{[^{}]*\}\}`)
	selector   = regexp.MustCompile(`#[a-z]`)
)

// partsOf are the texts of a file, by its name's ending.
func partsOf(name, text string) (list []string) {
	switch {
	case strings.HasSuffix(name, ".js"):
		for _, m := range scriptText.FindAllStringSubmatch(comment.ReplaceAllString(text, ""), -1) {
			if said := filledIn.ReplaceAllString(m[1]+m[2], "…"); isSaid(said) && !selector.MatchString(said) {
				list = append(list, said)
			}
		}
	case strings.HasSuffix(name, ".html"):
		for _, m := range attribute.FindAllStringSubmatch(text, -1) {
			list = append(list, m[1])
		}
		list = append(list, filledIn.ReplaceAllString(tag.ReplaceAllString(text, " "), "…"))
	default:
		list = append(list, tag.ReplaceAllString(shownCode.ReplaceAllString(text, " "), " "))
	}
	return list
}

// TestDocumentsStandThere: a document that is renamed is read no more.
func TestDocumentsStandThere(t *testing.T) {
	for _, name := range documents() {
		if _, err := fs.Stat(project(), name); err != nil {
			t.Error(err)
		}
	}
}
