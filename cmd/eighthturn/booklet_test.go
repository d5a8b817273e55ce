package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"eighthturn/samples"
)

// askedFor runs the program and gives its exit code and what it says on standard output and standard error.
func askedFor(t *testing.T, arguments ...string) (code int, out, complaints string) {
	t.Helper()
	files := [2]*os.File{}
	for i := range files {
		f, err := os.Create(filepath.Join(t.TempDir(), "said"))
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		files[i] = f
	}
	code = run(arguments, &console{in: os.Stdin, out: files[0], err: files[1]})
	said := func(f *os.File) string {
		text, err := os.ReadFile(f.Name())
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	}
	return code, said(files[0]), said(files[1])
}

// harborIn is a folder with a layout in it.
func harborIn(t *testing.T, text string) (folder, file string) {
	t.Helper()
	folder = t.TempDir()
	file = filepath.Join(folder, "harbor.quilt")
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return folder, file
}

func sampleCalled(name string) string {
	for _, s := range samples.All() {
		if s.Name == name {
			return s.Text
		}
	}
	return ""
}

func TestBookletForms(t *testing.T) {
	folder, file := harborIn(t, sampleCalled("nets"))
	for _, c := range []struct{ name, made, begins string }{
		{"", "harbor.pdf", "%PDF-"}, {"page.html", "page.html", "<!DOCTYPE html>"}, {"words/", "words/pattern.md", madeFront},
	} {
		arguments := []string{"booklet", file}
		if c.name != "" {
			arguments = append(arguments, "-o", filepath.Join(folder, c.name))
			if strings.HasSuffix(c.name, "/") {
				arguments[3] += "/"
			}
		}
		for range 2 { // what was made here is replaced without asking
			if code, out, complaints := askedFor(t, arguments...); code != done || !strings.HasPrefix(out, "made: ") {
				t.Fatalf("%q: code %d, %q, %q", c.name, code, out, complaints)
			}
		}
		if file, err := os.ReadFile(filepath.Join(folder, c.made)); err != nil || !bytes.HasPrefix(file, []byte(c.begins)) {
			t.Errorf("%q: %v, %.30q", c.name, err, file)
		}
	}
}

func TestBookletReplacesNothingElse(t *testing.T) {
	folder, file := harborIn(t, sampleCalled("nets"))
	for name, content := range map[string]string{"theirs.pdf": "%PDF-1.7\nsomeone's own\n", "theirs.html": "<!DOCTYPE html>\n<p>someone's own"} {
		path := filepath.Join(folder, name)
		if err := os.WriteFile(path, []byte(content), 0o600); err != nil {
			t.Fatal(err)
		}
		if code, _, complaints := askedFor(t, "booklet", file, "-o", path); code != faulty || !strings.Contains(complaints, "no pattern of eighthturn's") {
			t.Errorf("%s: code %d, %q", name, code, complaints)
		}
		if now, _ := os.ReadFile(path); string(now) != content {
			t.Errorf("%s was replaced", name)
		}
		if code, _, complaints := askedFor(t, "booklet", file, "-o", path, "--force"); code != done {
			t.Errorf("%s: code %d, %q", name, code, complaints)
		}
	}
}

func TestBookletRefusals(t *testing.T) {
	_, file := harborIn(t, sampleCalled("nets"))
	_, large := harborIn(t, "side 60\nfabric a #204060\nblock A plain piece a\ngrid\n A\n")
	for _, c := range []struct {
		arguments []string
		code      int
		says      string
	}{
		{[]string{file, "-o", "pattern.doc"}, misusing, "not a name for a pattern"},
		{[]string{file, "-o", "-"}, misusing, "into a file"},
		{[]string{file, "-o", ""}, misusing, "empty"},
		{[]string{"-"}, misusing, "no name"},
		{[]string{file, "--copies", "0"}, misusing, "expected a number from 1 to"},
		{[]string{file, "--paper", "legal"}, misusing, "letter, a4, half or a5"},
		{[]string{file, "--without", "cover"}, misusing, "templates or coloring"},
		{[]string{file, "--handout", "--without", "templates"}, misusing, "a handout has none"},
		{[]string{file, "--handout", "--value-study"}, misusing, "a handout has no value study"},
		{[]string{file, "--time", "unit=6"}, misusing, "works only with a class handout"},
		{[]string{file, "--session", "90"}, misusing, "works only with a class handout"},
		{[]string{file, "--handout", "--time", "lunch=60"}, misusing, "expected one of welcome, cutting"},
		{[]string{file, "--handout", "--time", "unit=0"}, misusing, "1 to 600"},
		{[]string{file, "--handout", "--session", "10"}, misusing, "minutes from 30 to 600"},
		{[]string{large}, faulty, "nothing is planned"},
	} {
		code, _, complaints := askedFor(t, append([]string{"booklet"}, c.arguments...)...)
		if code != c.code || !strings.Contains(complaints, c.says) {
			t.Errorf("%q: code %d, %q", c.arguments[1:], code, complaints)
		}
	}
}

// TestBookletNamesWhatIsMissing: a layout that lacks something the pattern needs is printed, and what is to be filled in is named
// once.
func TestBookletNamesWhatIsMissing(t *testing.T) {
	blocks := "side 4\nfabric a #204060\nblock A plain piece a\ngrid\n A A\n"
	for text, want := range map[string]string{
		blocks:                                 "no designer and no binding; the pattern leaves a place to fill in",
		"designer \"Lotte Ambros\"\n" + blocks: "no binding; the pattern leaves a place to fill in",
		"designer \"Lotte Ambros\"\n" + blocks + "binding 2 1/2 cut a\n": "",
	} {
		folder, file := harborIn(t, text)
		out := filepath.Join(folder, "words") + "/"
		code, _, complaints := askedFor(t, "booklet", file, "-o", out)
		if code != done || want == "" && complaints != "" || strings.Count(complaints, want) != 1 && want != "" {
			t.Errorf("code %d, %q, want %q", code, complaints, want)
		}
		printed, err := os.ReadFile(filepath.Join(out, "pattern.md"))
		if err != nil {
			t.Fatal(err)
		}
		if room := strings.Count(strings.ReplaceAll(string(printed), `\`, ""), "________"); (room > 0) != (want != "") {
			t.Errorf("%d places to fill in, and %q is said", room, want)
		}
		if code, _, complaints := askedFor(t, "booklet", file, "--handout", "-o", filepath.Join(folder, "class.pdf")); code != done || complaints != "" {
			t.Errorf("the handout: code %d, %q", code, complaints)
		}
	}
}

// A handout stands beside the pattern, not in its place.
func TestAHandoutLeavesThePattern(t *testing.T) {
	folder, file := harborIn(t, sampleCalled("nets"))
	for _, options := range [][]string{nil, {"--handout"}} {
		if code, _, complaints := askedFor(t, append([]string{"booklet", file}, options...)...); code != done {
			t.Fatalf("%v: code %d, %s", options, code, complaints)
		}
	}
	for _, name := range []string{"harbor.pdf", "harbor-handout.pdf"} {
		if _, err := os.Stat(filepath.Join(folder, name)); err != nil {
			t.Error(err)
		}
	}
}

// TestTheMarkIsFound: Markdown, pages and pictures keep how they begin, and have the mark among what is looked at of a file that is there.
func TestTheMarkIsFound(t *testing.T) {
	for _, begins := range []string{"---\n", "<!DOCTYPE html>\n", "<?xml version=\"1.0\"?>\n"} {
		made := marked([]byte(begins + "title: \"" + strings.Repeat("x", 4000) + "\"\n"))
		if !patternOfOurs(made[:1000]) { // as much as internal/files looks at
			t.Errorf("%q: no mark", begins)
		}
		if !strings.HasPrefix(string(made), begins) {
			t.Errorf("%q: begins %.40s", begins, made)
		}
	}
	for _, text := range []string{"# a text of somebody else's\n", "---\ntitle: \"a text of somebody else's\"\n---\n"} {
		if patternOfOurs([]byte(text)) {
			t.Errorf("any text is ours: %s", text)
		}
	}
}
