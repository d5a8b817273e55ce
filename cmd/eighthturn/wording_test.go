package main

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/judges"
	"eighthturn/samples"
)

// The law of words: whatever is printed says the words of published patterns, spelled as the United States do. This is the one
// list of the words that are not said; what is read for them is gathered in printed_test.go.

// unsaidWords are patterns of words that are not printed, each with what is said instead. Common practice, no source.
func unsaidWords() map[string]string {
	return map[string]string{
		`wedge rules?`: "wedge ruler", `rule of 45 degrees`: "wedge ruler (a 45-degree ruler)", `cut edges?`: "raw edge", `selvage to selvage`: "width of fabric (WOF)", `cut into`: "subcut",
		`on the slant`: "diagonal seam, at an angle", `turned round`: "rotated 180 degrees, reversed", `(turned? )?half round`: "rotate 180 degrees", `sewn in part`: "partial seam", `one way round`: "spin the seams",
		`stands? out by`: "trim, extend", `sticks? out`: "extend", `cut off what`: "trim even", `worth keeping`: "usable leftovers", `left over`: "leftover", `edges that stretch`: "bias edges",
		`thick places`: "bulk", `cupboard`: "stash", `draughtboard`: "checkerboard", `what shops sell`: "precuts, yardage", `in the shop`: "yardage", `patient beginner`: "skill level", `mind your fingers`: "rotary-cutting safety",
		`pull the plug`: "unplug", `not to be had`: "not possible", `for slips`: "insurance against cutting mistakes", `cloths?`: "fabric", `plain ground`: "background", `stop pieces?`: "background piece",
		`by custom`: "usually", `left out`: "omitted", `if need be`: "if needed", `faults?`: "error", `mistakes?`: "error",

		`(un)?colou?rings`: "fabric placements", `colour\w*`: "color", `grey\w*`: "gray", `\w*metres?`: "meter", `centre\w*`: "center", `neighbour\w*`: "neighbor", `harbour\w*`: "harbor", `\w+wards`: "toward, outward, down, up",
		`anticlockwise`: "counterclockwise", `mitred`: "mitered", `favourite\w*`: "favorite", `labelled`: "labeled", `ploughs?`: "plow", `whilst`: "while", `spelt`: "spelled", `licence`: "license",
	}
}

// notSaid finds any of them.
var notSaid = regexp.MustCompile(`(?i)\b(` + strings.Join(slices.Sorted(maps.Keys(unsaidWords())), "|") + `)\b`)

// ill are the words of a text that are not said, with what is said instead.
func ill(text string) (list []string) {
	text = strings.NewReplacer("--least-cloth", "", `\-\-least\-cloth`, "", `\\-\\-least\\-cloth`, "").Replace(text) // the option's name
	for _, word := range notSaid.FindAllString(text, -1) {
		for pattern, say := range unsaidWords() {
			if regexp.MustCompile(`(?i)^(` + pattern + `)$`).MatchString(word) {
				list = append(list, fmt.Sprintf("%q: say %s", word, say))
			}
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// TestWording: the texts of the program, the page, the documents and the samples.
func TestWording(t *testing.T) {
	read := 0
	for _, p := range readTexts(t, project()) {
		read++
		for _, wrong := range ill(p.text) {
			t.Errorf("%s says %s, in %.200q", p.where, wrong, p.text)
		}
	}
	if read < 4000 {
		t.Errorf("only %d texts were read", read)
	}
}

// TestWordingOfOutputs: what is put together of those texts, of the samples, on paper, in the terminal and on the page.
func TestWordingOfOutputs(t *testing.T) {
	for _, s := range judges.Some(samples.All(), 3) {
		for output, said := range outputs(t, s.Text) {
			if strings.HasSuffix(output, "--json") {
				continue
			}
			for _, wrong := range ill(said) {
				t.Errorf("%s, %s says %s, in %s", s.Name, output, wrong, around(said, wrong))
			}
		}
	}
}

// TestWordingNotices: each kind of text is read, every sort of word is found, and what is no text is passed by.
func TestWordingNotices(t *testing.T) {
	goText := func(text string) string { return "package x\n\nconst text = " + strconv.Quote(text) + "\n" }
	for name, text := range map[string]string{
		"layout/a.go":                      goText("write a colour here"),
		"cmd/eighthturn/a.go":              "package main\nconst a = `16 in if left out`\n",
		"internal/report/a.go":             goText("Lay a wedge rule on the strip"),
		"internal/report/b.go":             goText("colour"),
		"internal/report/booklet/a.go":     goText("Ends worth keeping"),
		"internal/diagram/a.go":            goText("turned half round"),
		"internal/plan/cutting/a.go":       goText("from cut edge to cut edge"),
		"svgout/a.go":                      goText("Towards the sashes"),
		"internal/preview/page/a.js":       "// The colour of a thing.\nsay('Point at a neighbour.');\n",
		"internal/preview/page/b.js":       "const a = `${n} colours`; // the colour\n",
		"internal/preview/page/index.html": "<p title=\"in its colours\">color</p>\n",
		"README.md":                        "Four webs and one mistake.\n",
		"CHANGELOG.md":                     "For a patient beginner.\n",
		"layout/LANGUAGE.md":               "from selvage to selvage\n",
		"samples/README.md":                "joined on the slant\n",
		"samples/a.quilt":                  "# a table of greys\n",
		"samples/starters/a.quilt":         "note \"each neighbour\"\n",
	} {
		list := readTexts(t, tree(map[string]string{name: text}))
		found := 0
		for _, p := range list {
			found += len(ill(p.text))
		}
		if found != 1 {
			t.Errorf("%s: %d words are found in %q", name, found, list)
		}
	}
	for name, text := range map[string]string{
		"layout/a.go":                      "package layout\n\n// A colour.\nconst a = \"colour\"\n\ntype t struct {\n\tx int `json:\"the colour\"`\n}\n",
		"layout/a_test.go":                 "package layout\n\nconst a = \"a colour\"\n",
		"internal/report/a.go":             goText("the wedge ruler, raw edges, centers, gray, afterward, diagonal"),
		"internal/preview/page/a.js":       "// Its colour isn't known.\nif (a === 'colour') f(`${colour}`); // a 'colour of it'\n",
		"internal/preview/page/index.html": "<button data-action=\"colour\">color</button>\n",
		"README.md":                        "Write `--view colour`.\n```\nthe colour\n```\n",
	} {
		for _, p := range readTexts(t, tree(map[string]string{name: text})) {
			if wrong := ill(p.text); len(wrong) > 0 {
				t.Errorf("%s: found %q", name, wrong)
			}
		}
	}
}

// around is what stands about a word of a text.
func around(text, found string) string {
	word, _, _ := strings.Cut(strings.TrimPrefix(found, `"`), `"`)
	at := strings.Index(text, word)
	return text[max(0, at-80):min(len(text), at+80)]
}
