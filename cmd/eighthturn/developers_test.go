package main

import (
	"io/fs"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// placesIn are the folders and files of the project that a text names between back-ticks.
func placesIn(text string) []string {
	var list []string
	for _, m := range regexp.MustCompile("`((?:cmd|internal|layout|palettes|samples|svgout|testdata)(?:/[\\w.-]+)*)`").FindAllStringSubmatch(text, -1) {
		list = append(list, m[1])
	}
	return list
}

// rowsOf are the first cells of a text's table of folders.
func rowsOf(text string) []string {
	var list []string
	for _, m := range regexp.MustCompile("(?m)^\\| `([^`]+)` \\|").FindAllStringSubmatch(text, -1) {
		list = append(list, m[1])
	}
	return list
}

// unfounded is what a text says of the project's folders that is not so.
func unfounded(t *testing.T, text string, source fs.FS) []string {
	var wrong []string
	rows := rowsOf(text)
	for _, f := range goFiles(t, source) {
		if !slices.Contains(rows, f.folder) {
			rows = append(rows, f.folder)
			wrong = append(wrong, f.folder+" is not in the table")
		}
	}
	for _, place := range placesIn(text) {
		if _, err := fs.Stat(source, place); err != nil {
			wrong = append(wrong, place+" is named and not there")
		}
	}
	return wrong
}

// TestDevelopers: the guide for those who carry the work on has every folder in its table, and every place that it names is there.
func TestDevelopers(t *testing.T) {
	b, err := fs.ReadFile(project(), "DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, wrong := range unfounded(t, string(b), project()) {
		t.Error(wrong)
	}
	if n := len(rowsOf(string(b))); n < 20 {
		t.Errorf("only %d rows were found", n)
	}
}

func TestDevelopersCatches(t *testing.T) {
	source := tree(map[string]string{"layout/a.go": "package layout\n", "svgout/a.go": "package svgout\n"})
	wrong := unfounded(t, "| `layout` | the language |\n\n`layout/b.go` has it.\n", source)
	if text := strings.Join(wrong, "; "); text != "svgout is not in the table; layout/b.go is named and not there" {
		t.Errorf("found %q", text)
	}
}

// TestTopFolders: at the top lie these folders and no others.
func TestTopFolders(t *testing.T) {
	wanted := []string{"cmd", "internal", "layout", "palettes", "samples", "svgout", "testdata"}
	entries, err := fs.ReadDir(project(), ".")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if e.IsDir() && !strings.HasPrefix(e.Name(), ".") && !slices.Contains(wanted, e.Name()) {
			t.Errorf("the folder %s lies at the top", e.Name())
		}
	}
}
