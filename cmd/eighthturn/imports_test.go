package main

import (
	"fmt"
	"io/fs"
	"maps"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// mayImport says which packages of the project each one imports, in the order of the stream. It is granted exactly: an import
// that is not here fails, and so does a grant that nobody uses. A package that is not here fails too: where it stands in the
// house is to be said first.
func mayImport() map[string][]string {
	return map[string][]string{
		"internal/credits":           {},
		"internal/stop":              {},
		"layout/grammar":             {},
		"internal/measure":           {},
		"internal/dxf":               {"internal/measure"},
		"palettes":                   {"internal/stop"},
		"internal/blocks":            {"internal/measure"},
		"internal/files":             {"internal/stop", "palettes"},
		"internal/quilt/orient":      {"internal/blocks"},
		"layout":                     {"internal/blocks", "internal/measure", "internal/quilt/orient", "palettes"},
		"internal/quilt/scraps":      {"internal/stop"},
		"internal/quilt/lengths":     {"internal/measure"},
		"internal/quilt":             {"internal/blocks", "internal/measure", "internal/quilt/lengths", "internal/quilt/scraps", "internal/stop", "layout", "palettes"},
		"internal/longarm":           {"internal/dxf", "internal/measure", "internal/quilt"},
		"svgout":                     {"internal/credits", "internal/measure", "internal/plan/contrast", "internal/quilt", "internal/render/pixels", "palettes"},
		"internal/diagram":           {"internal/measure", "palettes"},
		"internal/document":          {"internal/diagram", "internal/measure", "palettes"},
		"internal/document/bysize":   {"internal/document"},
		"internal/plan/sizes":        {"internal/blocks", "internal/measure"},
		"internal/plan/supplies":     {"internal/measure"},
		"internal/plan/repeats":      {"internal/measure"},
		"internal/plan/summary":      {"internal/blocks", "internal/measure", "internal/quilt", "internal/quilt/orient", "layout", "palettes"},
		"internal/plan/cutting":      {"internal/blocks", "internal/measure", "internal/plan/repeats", "internal/plan/sizes", "internal/plan/supplies", "internal/quilt", "internal/quilt/lengths", "internal/stop", "palettes"},
		"internal/plan/sewing":       {"internal/blocks", "internal/measure", "internal/plan/cutting", "internal/quilt", "internal/stop"},
		"internal/plan/contrast":     {"internal/blocks", "internal/measure", "internal/quilt", "internal/render/pixels", "internal/stop", "layout", "palettes"},
		"internal/plan/orders":       {"internal/plan/cutting", "internal/plan/supplies", "internal/quilt", "internal/stop", "layout", "palettes"},
		"internal/plan/leftovers":    {"internal/blocks", "internal/measure", "internal/plan/cutting", "internal/quilt", "internal/stop", "layout"},
		"internal/plan/motifs":       {"internal/measure", "internal/quilt", "internal/stop", "layout", "palettes"},
		"internal/plan/audition":     {"internal/plan/contrast", "internal/quilt", "internal/stop", "layout"},
		"internal/quilttest/corpus":  {},
		"internal/quilttest/costs":   {"internal/plan/contrast", "internal/plan/cutting", "internal/plan/sewing", "internal/quilt", "internal/stop", "layout"},
		"internal/report":            {"internal/blocks", "internal/diagram", "internal/document", "internal/longarm", "internal/measure", "internal/plan/audition", "internal/plan/contrast", "internal/plan/cutting", "internal/plan/fit", "internal/plan/leftovers", "internal/plan/motifs", "internal/plan/orders", "internal/plan/sewing", "internal/plan/sizes", "internal/plan/summary", "internal/plan/supplies", "internal/quilt", "internal/stop", "internal/templates", "layout", "palettes"},
		"internal/plan/fit":          {"internal/measure", "internal/plan/supplies", "internal/quilt", "layout"},
		"internal/render/pdf":        {"internal/credits", "internal/diagram", "internal/measure", "palettes"},
		"internal/render/picture":    {"internal/credits", "internal/diagram", "internal/measure", "internal/render/pdf", "internal/render/pixels", "palettes", "svgout"},
		"internal/render/pixels":     {"internal/credits", "internal/measure", "internal/quilt", "palettes"},
		"internal/render":            {"internal/diagram", "internal/document", "internal/measure", "internal/render/pdf", "internal/stop", "layout", "palettes"},
		"internal/templates":         {"internal/blocks", "internal/diagram", "internal/dxf", "internal/measure", "internal/plan/cutting", "internal/quilt", "palettes"},
		"internal/report/booklet":    {"internal/diagram", "internal/document", "internal/document/bysize", "internal/measure", "internal/plan/cutting", "internal/plan/sewing", "internal/quilt", "internal/render", "internal/render/picture", "internal/render/pixels", "internal/report", "internal/stop", "internal/templates", "palettes", "svgout"},
		"internal/preview":           {"internal/diagram", "internal/document", "internal/files", "internal/lsp", "internal/measure", "internal/plan/audition", "internal/plan/contrast", "internal/plan/cutting", "internal/plan/motifs", "internal/plan/orders", "internal/quilt", "internal/render", "internal/render/picture", "internal/render/pixels", "internal/report", "internal/report/booklet", "internal/stop", "internal/templates", "layout", "palettes", "svgout"},
		"internal/lsp":               {"internal/blocks", "internal/files", "internal/measure", "internal/quilt", "internal/report", "layout", "palettes"},
		"internal/engine":            {"internal/files", "internal/preview", "layout", "palettes"},
		"cmd/engine":                 {"internal/engine", "internal/preview", "samples", "samples/starters"},
		"samples":                    {},
		"samples/starters":           {},
		"internal/quilttest/alone":   {},
		"internal/quilttest/golden":  {},
		"internal/quilttest/readpdf": {},
		"internal/quilttest/spelled": {"internal/diagram", "internal/document", "internal/measure"},
		"internal/quilttest/invent":  {"internal/blocks", "internal/measure", "layout", "palettes"},
		"internal/quilttest/lay":     {"internal/quilt", "internal/quilttest/invent", "layout", "samples"},
		"internal/quilttest/judges":  {},
		"internal/quilttest/judged":  {},
		"internal/quilttest/mutants": {},
		"internal/quilttest/laws":    {"internal/blocks", "internal/measure", "internal/quilt"},
		"cmd/eighthturn":             {"internal/blocks", "internal/diagram", "internal/document", "internal/files", "internal/longarm", "internal/lsp", "internal/measure", "internal/plan/audition", "internal/plan/contrast", "internal/plan/cutting", "internal/plan/fit", "internal/plan/leftovers", "internal/plan/motifs", "internal/plan/orders", "internal/plan/sewing", "internal/plan/sizes", "internal/plan/summary", "internal/plan/supplies", "internal/preview", "internal/quilt", "internal/render", "internal/render/pdf", "internal/render/picture", "internal/report", "internal/report/booklet", "internal/stop", "internal/templates", "layout", "palettes", "samples/starters", "svgout"},
	}
}

// forbidden are the imports in a tree that the table does not have, and the packages that it does not know.
func forbidden(t *testing.T, source fs.FS, table map[string][]string) (list []string, used map[string]bool) {
	unknown := map[string]bool{}
	used = map[string]bool{}
	for _, f := range goFiles(t, source) {
		allowed, known := table[f.folder]
		if !known && !unknown[f.folder] {
			unknown[f.folder] = true
			list = append(list, f.folder+" is not in the table")
		}
		for _, i := range f.Imports {
			name, _ := strconv.Unquote(i.Path.Value) // the parser has read it
			inner, own := strings.CutPrefix(name, module+"/")
			used[f.folder+" "+inner] = own
			if known && own && !slices.Contains(allowed, inner) {
				list = append(list, fmt.Sprintf("%s imports %s", f.path, inner))
			}
		}
	}
	return list, used
}

// idle are the grants of a table that no import uses.
func idle(used map[string]bool, table map[string][]string) []string {
	var list []string
	for _, name := range slices.Sorted(maps.Keys(table)) {
		for _, inner := range table[name] {
			if !used[name+" "+inner] {
				list = append(list, fmt.Sprintf("%s does not import %s any more: take the grant out", name, inner))
			}
		}
	}
	return list
}

func TestImports(t *testing.T) {
	list, used := forbidden(t, project(), mayImport())
	for _, wrong := range append(list, idle(used, mayImport())...) {
		t.Error(wrong)
	}
	if files := goFiles(t, project()); len(files) < 50 {
		t.Errorf("only %d files were found", len(files))
	}
}

func TestImportsCatches(t *testing.T) {
	for name, files := range map[string]map[string]string{
		"an import sideways":           {"svgout/a.go": "package svgout\nimport _ \"eighthturn/layout\"\n"},
		"an import of the command":     {"internal/preview/a.go": "package preview\nimport _ \"eighthturn/cmd/eighthturn\"\n"},
		"one behind another":           {"internal/blocks/a.go": "package blocks\nimport (\n\t\"fmt\"\n\t_ \"eighthturn/internal/measure\"\n\tx \"eighthturn/internal/quilt/orient\"\n)\n"},
		"a package that nobody placed": {"helpers/a.go": "package helpers\n"},
		"a package inside another":     {"layout/inner/a.go": "package inner\n"},
	} {
		if list, _ := forbidden(t, tree(files), mayImport()); len(list) != 1 {
			t.Errorf("%s: found %q, want one thing", name, list)
		}
	}
	fine := map[string]string{
		"layout/a.go":      "package layout\nimport (\n\t\"fmt\"\n\t_ \"eighthturn/internal/measure\"\n\t_ \"example.com/eighthturn/cmd\"\n)\n",
		"layout/a_test.go": "package layout\nimport _ \"eighthturn/internal/preview\"\n",
		"testdata/a.go":    "package a\nimport _ \"eighthturn/internal/preview\"\n",
	}
	if list, _ := forbidden(t, tree(fine), mayImport()); len(list) != 0 {
		t.Errorf("found %q, want nothing", list)
	}
}

func TestIdleGrantsAreFound(t *testing.T) {
	table := map[string][]string{"svgout": {"internal/measure", "palettes"}}
	_, used := forbidden(t, tree(map[string]string{"svgout/a.go": "package svgout\nimport _ \"eighthturn/palettes\"\n"}), table)
	if list := idle(used, table); len(list) != 1 || !strings.Contains(list[0], "internal/measure") {
		t.Errorf("found %q, want the one grant that nobody uses", list)
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
