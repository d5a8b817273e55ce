package main

import (
	"os"
	"strings"
	"testing"
)

// TestTemplatesFiles: what `templates` makes, and what it says.
func TestTemplatesFiles(t *testing.T) {
	for arguments, want := range map[string]string{
		"":                       "made: small-templates.pdf, 3 templates on 3 pages; print it at 100 %\n",
		"-o a.pdf --foundations": "made: a.pdf, 3 templates on 4 pages, 1 foundation; print it at 100 %\n",
		"-o a.pdf --paper A4":    "made: a.pdf, 3 templates on 3 pages; print it at 100 %\n",
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
		"-o a.png":                 "-o a.pdf",
		"-o a.dxf --foundations":   "name a PDF",
		"-o pieces/ --foundations": "name a PDF",
		"-o a.pdf --paper a3":      "a4",
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
