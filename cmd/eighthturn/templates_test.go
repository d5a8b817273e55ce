package main

import (
	"os"
	"strings"
	"testing"
)

// TestTemplatesFiles: what `templates` makes, and what it says.
func TestTemplatesFiles(t *testing.T) {
	for arguments, want := range map[string]string{
		"":                       "made: small-templates.pdf, 3 templates on 3 pages; print it at 100%\n",
		"-o a.pdf --foundations": "made: a.pdf, 3 templates on 5 pages, 1 foundation; print it at 100%\n",
		"-o a.pdf --paper A4":    "made: a.pdf, 3 templates on 3 pages; print it at 100%\n",
		"-o a.dxf":               "made: a.dxf, 3 templates\n",
		"-o pieces/":             "made: 3 SVG templates in pieces/\n",
	} {
		folder := t.TempDir()
		for range 2 { // the second replaces the first
			code, out, complaints := asked(t, folder, append([]string{"templates", "small.quilt"}, strings.Fields(arguments)...)...)
			if code != done || out != want {
				t.Errorf("%s: code %d, %q, %s", arguments, code, out, complaints)
			}
		}
	}
}

// TestTemplatesRefusals: each says what to type instead, and writes nothing.
func TestTemplatesRefusals(t *testing.T) {
	for arguments, hint := range map[string]string{
		"-o a.svg":                 "-o a/",
		"-o .svg":                  "-o pieces/",
		"-o a.png":                 "-o a.pdf",
		"-o a.dxf --foundations":   "name a PDF",
		"-o pieces/ --foundations": "name a PDF",
		"-o a.pdf --paper a3":      "a4",
		"-o a.pdf --mat 12x24":     "-o mats/",
		"--mat 12x24":              "-o mats/",
		"-o m/ --mat 12":           "--mat 12x24",
		"-o m/ --mat 12x":          "--mat 12x24",
		"-o m/ --mat 0x24":         "--mat 12x24",
		"-o m/ --mat 12x2400":      "--mat 12x24",
		"-o m/ --mat 12in":         "--mat 12x24",
	} {
		folder := t.TempDir()
		code, out, complaints := asked(t, folder, append([]string{"templates", "small.quilt"}, strings.Fields(arguments)...)...)
		if code != misusing || out != "" || !strings.Contains(complaints, hint) {
			t.Errorf("%s: code %d, %q, %q has no %q", arguments, code, out, complaints, hint)
		}
		if list, _ := os.ReadDir(folder); len(list) != 1 {
			t.Errorf("%s: a file was left", arguments)
		}
	}
}

// TestMats: the pieces on mats of any way to write a size; a mat smaller than a piece is refused with one that would do.
func TestMats(t *testing.T) {
	for _, size := range []string{"12x24", "12 in x 24 in", "12X24in", "30.48 x 60.96 cm", "30.48cmx60.96cm"} {
		folder := t.TempDir()
		code, out, complaints := asked(t, folder, "templates", "small.quilt", "--mat", size, "-o", "mats/")
		list, _ := os.ReadDir(folder + "/mats")
		if code != done || len(list) == 0 || !strings.HasPrefix(out, "made: ") || !strings.Contains(out, "in mats/\n") || !strings.Contains(out, "mat 1 of 1: cut 1 time, ") {
			t.Errorf("%s: code %d, %q, %s", size, code, out, complaints)
		}
	}
	folder := t.TempDir()
	code, out, complaints := asked(t, folder, "templates", "small.quilt", "--mat", "12x24", "-o", "mats.dxf")
	if drawing, _ := os.ReadFile(folder + "/mats.dxf"); code != done || !strings.HasPrefix(out, "made: mats.dxf, ") || !strings.Contains(string(drawing), "Cut it 1 time: ") {
		t.Errorf("mats.dxf: code %d, %q, %s", code, out, complaints)
	}
	for size, says := range map[string]string{"3x3": "use a larger mat, such as --mat 6x6", "3x100": "more than a mat of 3 by 100 in"} {
		folder := t.TempDir()
		code, out, complaints := asked(t, folder, "templates", "small.quilt", "--mat", size, "-o", "mats/")
		if list, _ := os.ReadDir(folder); code != faulty || out != "" || !strings.Contains(complaints, says) || len(list) != 1 {
			t.Errorf("%s: code %d, %q, %q", size, code, out, complaints)
		}
	}
}

// TestNoCommandReplacesAnothersFile: a picture, templates and a pattern are three things, and none takes another's place.
func TestNoCommandReplacesAnothersFile(t *testing.T) {
	commands := []string{"draw", "templates", "booklet"}
	for _, first := range commands {
		for _, second := range commands {
			folder := t.TempDir()
			if code, _, complaints := asked(t, folder, first, "small.quilt", "-o", "a.pdf"); code != done {
				t.Fatal(complaints)
			}
			code, _, complaints := asked(t, folder, second, "small.quilt", "-o", "a.pdf")
			if first == second && code != done || first != second && (code != faulty || !strings.Contains(complaints, "--force")) {
				t.Errorf("%s after %s: code %d, %q", second, first, code, complaints)
			}
		}
	}
}

// TestFoldersThatCannotBe: what is wrong with the name of a folder is said, and what to type.
func TestFoldersThatCannotBe(t *testing.T) {
	for _, command := range []string{"templates", "booklet"} {
		folder := t.TempDir()
		for name, says := range map[string]string{"no/such/": "there is no such folder", "small.quilt/": "this is a file, not a folder"} {
			code, _, complaints := asked(t, folder, command, "small.quilt", "-o", name)
			if code != faulty || !strings.Contains(complaints, says) || !strings.Contains(complaints, "-o") {
				t.Errorf("%s -o %s: code %d, %q", command, name, code, complaints)
			}
		}
	}
}

// TestForeignSignsAreNoted: signs that the letters lack are named, and the file is made all the same.
func TestForeignSignsAreNoted(t *testing.T) {
	folder := t.TempDir()
	text := "title \"夜\"\nstrip 4\nfabric a #204060\nfabric b #f0e8d8\nblock W web wedges a kites b\ngrid\n W\n"
	if err := os.WriteFile(folder+"/far.quilt", []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	if code, _, complaints := asked(t, folder, "templates", "far.quilt"); code != done || !strings.Contains(complaints, "夜 (U+591C)") {
		t.Errorf("code %d, %q", code, complaints)
	}
}
