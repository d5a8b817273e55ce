package layout_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"eighthturn/layout"
)

// unheard are messages that no case of the table gives, each with the reason.
func unheard() map[string]string {
	return map[string]string{
		"%s": "hands on what package measure or palettes says; their formats are looked for themselves",

		"this file has %d bytes, a layout may have at most %d":                                                      "see TestLimitOfBytes",
		"this line has %d bytes; the limit is %d":                                                                   "see TestLimits",
		"a layout may have at most %d lines":                                                                        "see TestLimits",
		"a layout may define at most %d names":                                                                      "see TestLimits",
		"a layout may define at most %d blocks":                                                                     "see TestLimits",
		"the pools of a layout may have at most %d fabrics in all":                                                  "see TestLimits",
		"the strip sets of a layout may have at most %d strips in all":                                              "see TestLimits",
		"a fabric may have at most %d stripes":                                                                      "see TestLimits",
		"the photo shows %s across and %s down, less than one repeat":                                               "see TestPrintsOfPhotos",
		"the photo shows %s %s, and the motif lies at %s":                                                           "see TestPrintsOfPhotos",
		"the print of %s has no mirror line, so no two places of it are each other's mirror image":                  "see TestMirroredMotifs",
		"the layout does not say after how much fabric the print of %s comes again, so no mirror line can be found": "see TestMirroredMotifs",
		"a strip set may have at most %d strips":                                                                    "see TestLimits",
		"a layout may have at most %d borders":                                                                      "see TestLimits",
		"a layout may have at most %d colorways":                                                                    "see TestLimits",
		"a layout may have at most %d sizes":                                                                        "see TestLimits",
		"a layout may have at most %d lines of pieces on hand":                                                      "see TestLimits",
		"a fabric may be cut from at most %d precuts, found %d":                                                     "see TestLimits",
		"this column has %d pieces; the limit is %d":                                                                "see TestLimits",
		"this quilt has up to %d pieces; the limit is %d":                                                           "see TestLimits",
		"write %d":       "a hint, not a message",
		"write %d %d/%d": "a hint, not a message",

		"expected a whole number":           "package measure's own words, which the language puts in its own",
		"expected a whole number, found %q": "package measure's own words, which the language puts in its own",
	}
}

// format is the format of a message in the source of a package.
type format struct {
	text  string
	where string
}

// formatsIn is the formats of messages in the files: of what the named functions are
// called with, each at the argument of the given number.
func formatsIn(t *testing.T, files []string, calls map[string]int) []format {
	t.Helper()
	var list []format
	set := token.NewFileSet()
	for _, name := range files {
		file, err := parser.ParseFile(set, name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok {
				return true
			}
			selector, ok := call.Fun.(*ast.SelectorExpr)
			if !ok {
				return true
			}
			at, ok := calls[selector.Sel.Name]
			if !ok || at >= len(call.Args) {
				return true
			}
			if literal, ok := call.Args[at].(*ast.BasicLit); ok {
				text, err := strconv.Unquote(literal.Value)
				if err != nil {
					t.Fatal(err)
				}
				list = append(list, format{text, set.Position(call.Pos()).String()})
			} else if name, ok := call.Args[at].(*ast.Ident); !ok || name.Name != "format" {
				t.Errorf("%s: the format of a message is no plain string", set.Position(call.Pos()))
			}
			return true
		})
	}
	return list
}

// pattern matches what a format may become.
func (f format) pattern() *regexp.Regexp {
	text := regexp.QuoteMeta(f.text)
	for verb, match := range map[string]string{"%s": ".*", "%d": "-?[0-9]+", `%\.0f`: "[0-9]+", "%q": `".*"`, `%04X`: "[0-9A-F]+"} {
		text = strings.ReplaceAll(text, verb, match)
	}
	return regexp.MustCompile("^(?s:" + text + ")$")
}

// plain is how many characters of a format are words of its own.
func (f format) plain() int {
	return len(regexp.MustCompile(`%(04X|\.0f|.)`).ReplaceAllString(f.text, ""))
}

// TestEveryMessageHasACase finds the formats of all messages in the package's source, and
// of those that it hands on, and wants a case for each. A message counts for the format
// that says most of it in its own words.
func TestEveryMessageHasACase(t *testing.T) {
	var own []string
	names, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		if !strings.HasSuffix(name, "_test.go") {
			own = append(own, name)
		}
	}
	formats := formatsIn(t, own, map[string]int{"fault": 2, "warn": 2, "note": 1})
	formats = append(formats, formatsIn(t, []string{"../internal/measure/read.go"}, map[string]int{"fault": 2, "Sprintf": 0, "Errorf": 0})...)
	formats = append(formats, formatsIn(t, []string{"../palettes/parse.go"}, map[string]int{"Errorf": 0})...)
	if len(formats) < 100 {
		t.Fatalf("only %d messages found in the source", len(formats))
	}
	heard := heardFormats(t, formats)
	reasons := unheard()
	for _, f := range formats {
		reason, excused := reasons[f.text]
		switch {
		case heard[f.text] && excused:
			t.Errorf("%s: a case gives %q, so it needs no excuse", f.where, f.text)
		case !heard[f.text] && !excused:
			t.Errorf("%s: no case gives %q", f.where, f.text)
		case excused && reason == "":
			t.Errorf("no reason is given for leaving out %q", f.text)
		}
	}
}

// heardFormats is the formats that the messages and notes of all cases come from.
func heardFormats(t *testing.T, formats []format) map[string]bool {
	t.Helper()
	patterns := make([]*regexp.Regexp, len(formats))
	for i, f := range formats {
		patterns[i] = f.pattern()
	}
	heard := map[string]bool{}
	hear := func(message string) {
		most := -1
		var best []string
		for i, f := range formats {
			if n := f.plain(); n >= most && patterns[i].MatchString(message) {
				if n > most {
					best = best[:0]
				}
				best, most = append(best, f.text), n
			}
		}
		for _, f := range best {
			heard[f] = true
		}
	}
	for _, c := range allCases(t) {
		_, _, list := layout.Read(c.text())
		for _, f := range list {
			hear(f.Message)
			for _, n := range f.Notes {
				hear(n.Message)
			}
		}
	}
	return heard
}

// TestFormatsAreFound proves that the search finds a message that no case gives.
func TestFormatsAreFound(t *testing.T) {
	dir := t.TempDir()
	name := filepath.Join(dir, "a.go")
	source := "package a\nfunc f() { c.fault(at, \"\", \"no %s is called %s\", a, b); c.warn(at, hint, \"%d of %q\", 1, x) }\n"
	if err := os.WriteFile(name, []byte(source), 0o600); err != nil {
		t.Fatal(err)
	}
	list := formatsIn(t, []string{name}, map[string]int{"fault": 2, "warn": 2})
	if len(list) != 2 || list[0].text != "no %s is called %s" || list[1].text != "%d of %q" {
		t.Fatalf("found %v", list)
	}
	if p := list[0].pattern(); !p.MatchString(`no block is called "Q"`) || p.MatchString(`no block is named "Q"`) {
		t.Errorf("%s matches wrongly", p)
	}
	if p := list[1].pattern(); !p.MatchString(`12 of "a (b)"`) || p.MatchString(`x of "a"`) {
		t.Errorf("%s matches wrongly", p)
	}
}
