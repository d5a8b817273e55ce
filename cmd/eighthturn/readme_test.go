package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"eighthturn/layout"
)

// readme is the project's first page.
func readme(t *testing.T) string {
	t.Helper()
	b, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// fenced is the text of the first fenced block that begins with the given words.
func fenced(t *testing.T, page, opening string) string {
	t.Helper()
	_, rest, found := strings.Cut(page, opening)
	text, _, closed := strings.Cut(rest, "\n```")
	if !found || !closed {
		t.Fatalf("the page has no block that begins with %q", opening)
	}
	return text + "\n"
}

// TestReadmeLayout reads the page's first layout, which must be without fault or warning.
func TestReadmeLayout(t *testing.T) {
	text := fenced(t, readme(t), "```quilt\n")
	l := layOut(&source{text: text})
	if l.top == nil || len(l.faults) > 0 {
		t.Fatalf("%v\n%s", l.faults, text)
	}
	if got := len(l.top.Patches); got != 12*4+4*6+4 {
		t.Errorf("%d patches: the page's twelve floating blocks have 4 each, its four web blocks 6, and the border 4", got)
	}
	if tidy, _ := layout.Tidy(text); tidy != text {
		t.Errorf("the page's layout is not tidy; tidied:\n%s", tidy)
	}
}

// TestReadmeFault makes the page's mistake in the page's layout and wants the page's answer.
func TestReadmeFault(t *testing.T) {
	page := readme(t)
	text := strings.Replace(fenced(t, page, "```quilt\n"), "wedges navy", "wedges nayv", 1)
	l := layOut(&source{text: text})
	var b strings.Builder
	if err := layout.Report(&b, "porch.quilt", l.lines, l.faults); err != nil {
		t.Fatal(err)
	}
	if want := fenced(t, page, "```\nporch.quilt:"); b.String() != "porch.quilt:"+want {
		t.Errorf("got\n%s\nthe page has\nporch.quilt:%s", b.String(), want)
	}
}

// TestReadmeCommands wants every command that the page names to be there, and every command
// that people see to be named.
func TestReadmeCommands(t *testing.T) {
	page := readme(t)
	have := map[string]bool{}
	for _, cmd := range append(commands(&console{}), quietCommands(&console{})...) {
		have[cmd.Name()] = true
		if !cmd.Hidden && !strings.Contains(page, "`eighthturn "+cmd.Name()) {
			t.Errorf("the page does not name %s", cmd.Name())
		}
	}
	for _, m := range regexp.MustCompile("`eighthturn ([a-z]+)[ `]").FindAllStringSubmatch(page, -1) {
		if !have[m[1]] {
			t.Errorf("the page names the command %q", m[1])
		}
	}
}

// TestReadmePattern makes the page's pattern to sell: the sizes are those that fit names, and every command does what it says.
func TestReadmePattern(t *testing.T) {
	page := readme(t)
	first := fenced(t, page, "```quilt\n")
	lines := fenced(t, page, "```quilt\nsize lap\n")
	folder := t.TempDir()
	file := filepath.Join(folder, "porch.quilt")
	for _, size := range []string{"twin", "queen"} {
		if err := os.WriteFile(file, []byte(first), 0o600); err != nil {
			t.Fatal(err)
		}
		_, said, complaints := askedFor(t, "fit", file, "--size", size)
		line := strings.Join(strings.Fields(regexp.MustCompile(`(?m)^size `+size+`.*$`).FindString(lines)), " ")
		if line == "" || !strings.Contains(said, " "+line+"\n") {
			t.Errorf("the page has %q, fit says %s%s", line, said, complaints)
		}
	}
	if err := os.WriteFile(file, []byte(first+"\nsize lap\n"+lines), 0o600); err != nil {
		t.Fatal(err)
	}
	shop := filepath.Join(folder, "shop")
	for _, arguments := range [][]string{{"booklet", file}, {"listing", file, "--pictures", shop}, {"draw", file, "--size", "queen", "--canvas", "portrait", "-o", filepath.Join(folder, "queen.jpg")}} {
		if code, _, complaints := askedFor(t, arguments...); code != done {
			t.Errorf("%q: %s", arguments, complaints)
		}
	}
	for _, name := range []string{"porch.pdf", "queen.jpg", "shop/listing.txt", "shop/square.jpg", "shop/colorways.jpg"} {
		if info, err := os.Stat(filepath.Join(folder, name)); err != nil || info.Size() == 0 {
			t.Errorf("%s: %v", name, err)
		}
	}
}
