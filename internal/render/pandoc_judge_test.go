//go:build judges

package render

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// pandocRead is what pandoc makes of Markdown, as far as it is looked at.
type pandocRead struct {
	Blocks []struct {
		Kind    string          `json:"t"`
		Content json.RawMessage `json:"c"`
	}
}

// TestPandocMakesTables: where pandoc is installed it makes a table of every table, no picture a figure with its own caption, and a
// DOCX, an ODT and an EPUB that hold every picture.
func TestPandocMakesTables(t *testing.T) {
	pandoc, err := exec.LookPath("pandoc")
	if err != nil {
		t.Skip("pandoc is not installed: it does not judge")
	}
	d := sample()
	files, err := Markdown(d, "law", Options{})
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	for name, content := range files {
		if err := os.WriteFile(filepath.Join(folder, name), content, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	run := func(arguments ...string) []byte {
		c := exec.Command(pandoc, append([]string{"law.md"}, arguments...)...)
		c.Dir = folder
		out, err := c.Output()
		if err != nil {
			t.Fatalf("%v: %s", arguments, err)
		}
		return out
	}
	var read pandocRead
	text := run("-t", "json")
	if err := json.Unmarshal(text, &read); err != nil {
		t.Fatal(err)
	}
	for _, b := range read.Blocks {
		var inlines []struct {
			Kind string `json:"t"`
		}
		if b.Kind == "Para" && json.Unmarshal(b.Content, &inlines) == nil && len(inlines) == 1 && inlines[0].Kind == "Image" {
			t.Errorf("a picture is a figure: %s", b.Content)
		}
	}
	if tables, rules := bytes.Count(text, []byte(`"t":"Table"`)), len(regexp.MustCompile(`\n\| :?-`).FindAll(files["law.md"], -1)); tables == 0 || tables != rules {
		t.Errorf("%d tables are found, %d written", tables, rules)
	}
	for _, kind := range []string{"docx", "odt", "epub"} {
		made := filepath.Join(folder, "made."+kind)
		run("-o", made, "--metadata", "title=t")
		if pictures := picturesIn(t, made); pictures != len(files)-1 {
			t.Errorf("%s: %d pictures, expected %d", kind, pictures, len(files)-1)
		}
	}
}

// picturesIn is how many SVG pictures a document's file holds, like ones once.
func picturesIn(t *testing.T, path string) int {
	t.Helper()
	z, err := zip.OpenReader(path)
	if err != nil {
		t.Fatal(err)
	}
	defer z.Close()
	seen := map[string]bool{}
	for _, f := range z.File {
		if !strings.HasSuffix(f.Name, ".svg") {
			continue
		}
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		seen[string(text)] = true
	}
	return len(seen)
}
