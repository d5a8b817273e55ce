package layout_test

import (
	"regexp"
	"testing"

	"eighthturn/layout"
)

// slipsOf are the ways in which one word of a layout goes wrong most often.
func slipsOf(word string) map[string]string {
	slips := map[string]string{
		"left out":                  "",
		"twice":                     word + " " + word,
		"a letter too many":         word + "x",
		"the first letter left out": word[1:],
	}
	if n := len(word); n > 2 {
		slips["letters swapped"] = word[:n-2] + word[n-1:] + word[n-2:n-1]
	}
	return slips
}

// TestOneSlipOneMessage makes one slip in one word after the other and holds the answers to
// one error, but for a few slips in a thousand that really are two mistakes.
func TestOneSlipOneMessage(t *testing.T) {
	const stride, fewInThousand = 4, 6
	word := regexp.MustCompile(`[!-~]+`)
	slips, twofold := 0, 0
	for _, c := range append(filesAsCases(t, "../testdata/layout/*.quilt"), filesAsCases(t, "../samples/*.quilt")...) {
		text := c.text()
		for i, at := range word.FindAllStringIndex(text, -1) {
			if i%stride != 0 {
				continue
			}
			for name, slip := range slipsOf(text[at[0]:at[1]]) {
				slips++
				_, _, list := layout.Read(text[:at[0]] + slip + text[at[1]:])
				if errors, _ := layout.Count(list); errors > 1 {
					twofold++
					t.Logf("%s: %q %s: %d errors", c.name, text[at[0]:at[1]], name, errors)
				}
			}
		}
	}
	if slips < 1000 || twofold*1000 > fewInThousand*slips {
		t.Errorf("%d of %d slips give more than one error", twofold, slips)
	}
}

// mistakes are what goes wrong most often when a layout is written, each with the case that
// shows the answer.
func mistakes() map[string]string {
	return map[string]string{
		"a fabric of two words":                              "a name of two words",
		"a fabric of a colour of two words":                  "a colour of two words",
		"a value misspelt":                                   "a fabric misspelt",
		"a row too short":                                    "a row too short",
		"labels without blanks":                              "glued labels",
		"an unknown label":                                   "a label unknown",
		"a strip set that is too wide":                       "a set that comes to more",
		"a strip set that is too narrow":                     "a set that comes to less",
		"a strip for kinds of two sides":                     "two sides",
		"strip and side":                                     "strip and side",
		"width and fabric in the wrong order":                "a border before its width",
		"a width cut where finished is meant":                "a border cut away",
		"a width finished where cut is meant":                "a strip finished",
		"a role missing":                                     "a role missing",
		"a role of another kind":                             "a role of another kind",
		"a fraction above one":                               "a fraction above one",
		"a fraction without its line":                        "two numbers that may be a fraction",
		"a seam in millimetres under centimetres":            "a seam in whole centimetres",
		"a comment without its blank":                        "comment without a blank in mid-line",
		"inch marks inside quotes":                           "title with inch marks",
		"a reserved word as a name":                          "a reserved word as a name",
		"a row that lost its indentation":                    "a row without indentation",
		"a statement misspelt":                               "a statement misspelt",
		"a turn of one letter":                               "a turn of one letter",
		"nine wedges":                                        "nine wedges",
		"a web that cannot close":                            "one web that cannot close",
		"a web of two kinds of block":                        "a web of two blocks",
		"sashes between webs":                                "sashes part webs",
		"a fabric never used":                                "a fabric never used",
		"an empty file":                                      "empty",
		"a photo in place of a layout":                       "a photo in PNG",
		"no grid":                                            "no grid",
		"a name used twice":                                  "a fabric twice",
		"a letter of another script":                         "a Cyrillic letter in a statement",
		"a file from an editor that does not write in UTF-8": "a half in Windows-1252",
	}
}

// TestMistakesHaveCases wants a case for each, with a message that has a hint, or none where
// the language takes what was written.
func TestMistakesHaveCases(t *testing.T) {
	byName := map[string]testCase{}
	for _, c := range allCases(t) {
		byName[c.name] = c
	}
	for mistake, name := range mistakes() {
		c, ok := byName[name]
		switch {
		case !ok:
			t.Errorf("%s: there is no case %q", mistake, name)
		case len(c.says) > 1:
			t.Errorf("%s: gets %d messages", mistake, len(c.says))
		case len(c.says) == 1 && c.says[0].hint == "" && mistake != "a fabric never used":
			t.Errorf("%s: gets no hint", mistake)
		}
	}
}
