package main

import (
	"fmt"
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

// spoken are the folders whose texts keep to the glossary. The list grows as folders are reworded.
func spoken() []string {
	return []string{"internal/report", "internal/report/booklet", "internal/blocks", "internal/diagram", "internal/templates"}
}

// glossaryTerms are words that are not printed, each with the word of the trade that is. Common practice, no source.
func glossaryTerms() map[string]string {
	return map[string]string{
		`wedge rules?\b`: "wedge ruler", `cut edges?\b`: "raw edge", `selvage to selvage`: "width of fabric (WOF)", `cut into\b`: "subcut",
		`on the slant`: "diagonal seam, at an angle", `turned round`: "rotated 180 degrees, reversed", `half round`: "rotate 180 degrees", `sewn in part`: "partial seam", `one way round`: "spin the seams",
		`stands? out by`: "trim, extend", `sticks? out`: "extend", `cut off what`: "trim even", `worth keeping`: "usable leftovers", `left over\b`: "leftover", `edges that stretch`: "bias edges",
		`thick places`: "bulk", `cupboard`: "stash", `draughtboard`: "checkerboard", `what shops sell`: "precuts, yardage", `in the shop`: "yardage", `patient beginner`: "skill level", `mind your fingers`: "rotary-cutting safety",
		`pull the plug`: "unplug", `not to be had`: "not possible", `for slips`: "insurance against cutting mistakes", `of cloth`: "of fabric", `the cloth`: "the fabric", `plain ground`: "background",
		`rule of 45 degrees`: "wedge ruler (a 45-degree ruler)", `by custom`: "usually", `left out`: "omitted", `faults?`: "error",
	}
}

// british are spellings that are not printed, each with the one of the United States.
func british() map[string]string {
	return map[string]string{
		`colour\w*`: "color", `grey\w*`: "gray", `\w*metres?`: "meter", `centre\w*`: "center", `neighbour\w*`: "neighbor", `\w+wards`: "toward, outward, down, up",
		`anticlockwise`: "counterclockwise", `mitred`: "mitered", `favourite\w*`: "favorite", `labelled`: "labeled", `grey-?scale`: "grayscale", `metre\w*`: "meter", `ploughs?`: "plow", `whilst`: "while",
	}
}

// untold are literals of those folders that are keys or names and are never printed as sentences, by folder and text.
func untold() []string {
	return []string{
		"colouring", // the key of a part of the pattern, as --without names it
	}
}

// badWords are the words of texts of the named folders that the glossary or the spelling has otherwise.
func badWords(t *testing.T, source fs.FS) (list []string, read int) {
	bad := map[*regexp.Regexp]string{}
	for _, words := range []map[string]string{glossaryTerms(), british()} {
		for pattern, say := range words {
			bad[regexp.MustCompile(`(?i)\b`+pattern)] = say
		}
	}
	for _, f := range goFiles(t, source) {
		if !slices.Contains(spoken(), f.folder) {
			continue
		}
		ast.Inspect(f.File, func(n ast.Node) bool {
			switch v := n.(type) {
			case *ast.ImportSpec:
				return false
			case *ast.Field: // a tag is no text
				return v.Tag == nil
			case *ast.BasicLit:
				text, err := strconv.Unquote(v.Value)
				if v.Kind != token.STRING || err != nil || slices.Contains(untold(), text) {
					return true
				}
				read++
				for pattern, say := range bad {
					if word := pattern.FindString(text); word != "" {
						list = append(list, fmt.Sprintf("%s says %q in %q: say %s", f.path, word, text, say))
					}
				}
			}
			return true
		})
	}
	slices.Sort(list)
	return list, read
}

// TestWording: texts say the words of the trade, and spell them as the United States do.
func TestWording(t *testing.T) {
	list, read := badWords(t, project())
	for _, wrong := range list {
		t.Error(wrong)
	}
	if read < 1000 {
		t.Errorf("only %d texts were read", read)
	}
	for text, want := range map[string]string{
		"Lay a wedge rule on the strip":   "wedge ruler",
		"From cut edge to cut edge":       "raw edge",
		"Joined on the slant":             "diagonal",
		"Press its seams anticlockwise":   "counterclockwise",
		"the quilt in its colours":        "color",
		"Press towards the sashes":        "toward",
		"each neighbour, in the centre":   "center",
		"Ends worth keeping":              "usable leftovers",
		"For: a patient beginner":         "skill level",
		"a width from selvage to selvage": "WOF",
	} {
		tree := fstest.MapFS{"internal/report/x.go": {Data: []byte("package report\n\nconst text = " + strconv.Quote(text) + "\n")}}
		if list, _ := badWords(t, tree); !strings.Contains(strings.Join(list, "\n"), want) {
			t.Errorf("%q passes: %q", text, list)
		}
	}
	quiet := fstest.MapFS{"internal/report/x.go": {Data: []byte("package report\n\n// A wedge rule of any colour.\ntype t struct {\n\tx int `json:\"colour\"`\n}\n\nconst text = \"the wedge ruler, raw edges, centers, gray, afterward\"\n")}}
	if list, _ := badWords(t, quiet); len(list) > 0 {
		t.Errorf("comments, tags and good words are refused: %q", list)
	}
}
