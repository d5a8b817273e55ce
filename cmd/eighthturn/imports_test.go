package main

import (
	"fmt"
	"io/fs"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// mayImport says which packages of the project each one may import. A package that is not here fails the test: where it
// stands in the house is to be said first. Whoever reads a top may import measure, in whose lengths a top is given.
func mayImport() map[string][]string {
	drawn := []string{"measure", "palettes", "blocks", "layout", "patchwork"}
	planned := append(slices.Clone(drawn), "figure", "finishing", "chart", "svgout", "pixels", "values", "cutting", "sewing")
	all := append(slices.Clone(planned), "lattice", "paper", "fit", "summary", "outfile", "photos", "pages", "booklet", "samples")
	return map[string][]string{
		"measure":        {},
		"palettes":       {},
		"blocks":         {"measure"},
		"photos":         {"palettes"},
		"lattice":        {"blocks"},
		"layout":         {"measure", "palettes", "blocks", "lattice"},
		"layout/grammar": {"measure", "palettes", "blocks", "layout"},
		"deal":           {},
		"chart":          {"measure", "blocks"},
		"patchwork":      {"measure", "palettes", "blocks", "layout", "deal"},
		"svgout":         {"measure", "palettes", "patchwork"},
		"pixels":         {"measure", "palettes", "patchwork"},
		"values":         {"measure", "palettes", "blocks", "patchwork", "pixels"},
		"figure":         {"measure", "palettes"},
		"finishing":      {"measure"},
		"cutting":        {"measure", "palettes", "blocks", "patchwork", "chart", "finishing", "figure"},
		"sewing":         {"measure", "palettes", "blocks", "patchwork", "figure"},
		"paper":          planned,
		"pages":          {"measure", "palettes", "figure"},
		"booklet":        append(slices.Clone(planned), "paper", "pages"),
		"fit":            {"measure", "blocks", "layout", "patchwork", "finishing", "cutting"},
		"summary":        append(slices.Clone(drawn), "lattice"),
		"outfile":        {},
		"samples":        {},
		"samples/invent": all,
		"samples/laws":   append(slices.Clone(all), "samples/invent"),
		"preview":        all,
		"cmd/eighthturn": append(slices.Clone(all), "preview"),
	}
}

// forbidden are the imports in a tree that the table does not have, and the packages that it does not know.
func forbidden(t *testing.T, source fs.FS, table map[string][]string) []string {
	var list []string
	unknown := map[string]bool{}
	for _, f := range goFiles(t, source) {
		allowed, known := table[f.folder]
		if !known && !unknown[f.folder] {
			unknown[f.folder] = true
			list = append(list, f.folder+" is not in the table")
		}
		for _, i := range f.Imports {
			name, _ := strconv.Unquote(i.Path.Value) // the parser has read it
			inner, own := strings.CutPrefix(name, module+"/")
			if known && own && !slices.Contains(allowed, inner) {
				list = append(list, fmt.Sprintf("%s imports %s", f.path, inner))
			}
		}
	}
	return list
}

func TestImports(t *testing.T) {
	for _, wrong := range forbidden(t, project(), mayImport()) {
		t.Error(wrong)
	}
	if files := goFiles(t, project()); len(files) < 50 {
		t.Errorf("only %d files were found", len(files))
	}
}

func TestImportsCatches(t *testing.T) {
	for name, files := range map[string]map[string]string{
		"an import sideways":           {"svgout/a.go": "package svgout\nimport _ \"eighthturn/layout\"\n"},
		"an import of the command":     {"preview/a.go": "package preview\nimport _ \"eighthturn/cmd/eighthturn\"\n"},
		"one behind another":           {"blocks/a.go": "package blocks\nimport (\n\t\"fmt\"\n\t_ \"eighthturn/measure\"\n\tx \"eighthturn/lattice\"\n)\n"},
		"a package that nobody placed": {"helpers/a.go": "package helpers\n"},
		"a package inside another":     {"layout/inner/a.go": "package inner\n"},
	} {
		if list := forbidden(t, tree(files), mayImport()); len(list) != 1 {
			t.Errorf("%s: found %q, want one thing", name, list)
		}
	}
	fine := map[string]string{
		"layout/a.go":      "package layout\nimport (\n\t\"fmt\"\n\t_ \"eighthturn/measure\"\n\t_ \"example.com/eighthturn/cmd\"\n)\n",
		"layout/a_test.go": "package layout\nimport _ \"eighthturn/preview\"\n",
		"testdata/a.go":    "package a\nimport _ \"eighthturn/preview\"\n",
	}
	if list := forbidden(t, tree(fine), mayImport()); len(list) != 0 {
		t.Errorf("found %q, want nothing", list)
	}
}

// The table has no ring: whatever may be imported may not import back, however long the way.
func TestTableHasNoRing(t *testing.T) {
	table := mayImport()
	var walk func(name string, way []string)
	walk = func(name string, way []string) {
		if slices.Contains(way, name) {
			t.Fatalf("a ring: %s", strings.Join(append(way, name), " → "))
		}
		for _, next := range table[name] {
			walk(next, append(way, name))
		}
	}
	for name := range table {
		walk(name, nil)
	}
}
