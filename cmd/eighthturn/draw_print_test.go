package main

import (
	"bytes"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/judges"
	"eighthturn/svgout"
)

const printedLayout = "title \"Small\"\nside 5\nfabric red #b5532a\nfabric sea #204050\nblock W web wedges red kites sea\nblock R plain piece sea\ngrid\n W R\n W W\nborder 1 red\n"

// asked runs a command in a folder with a layout, small.quilt; what it says is in the texts.
func asked(t *testing.T, folder string, arguments ...string) (code int, out, complaints string) {
	t.Helper()
	if err := os.WriteFile(filepath.Join(folder, "small.quilt"), []byte(printedLayout), 0o600); err != nil {
		t.Fatal(err)
	}
	t.Chdir(folder)
	texts := t.TempDir()
	c := &console{in: os.Stdin}
	for name, to := range map[string]**os.File{"out": &c.out, "err": &c.err} {
		f, err := os.Create(filepath.Join(texts, name))
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		*to = f
	}
	code = run(arguments, c)
	said := func(name string) string {
		text, err := os.ReadFile(filepath.Join(texts, name))
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	}
	return code, said("out"), said("err")
}

// TestDrawPrinted: what `draw` makes of names that end in .png and .pdf, in every view.
func TestDrawPrinted(t *testing.T) {
	folder := t.TempDir()
	for i, view := range svgout.Views() {
		for _, ending := range []string{pixelsEnding, pageEnding} {
			name := view + ending
			for range judges.Of(max(1, 2-i), 2) { // the second replaces the first
				if code, _, complaints := asked(t, folder, "draw", "small.quilt", "--view", view, "-o", name, "--longest", "3in", "--margin", "1/4in"); code != done {
					t.Fatalf("%s: %s", name, complaints)
				}
			}
		}
		file, err := os.ReadFile(filepath.Join(folder, view+pixelsEnding))
		if err != nil {
			t.Fatal(err)
		}
		if size, err := png.DecodeConfig(bytes.NewReader(file)); err != nil || size.Width != 1050 || size.Height != 1050 {
			t.Errorf("%s: %v, %v", view, size, err)
		}
	}
}

// TestDrawPrintedSays how large a PNG is.
func TestDrawPrintedSays(t *testing.T) {
	if _, out, _ := asked(t, t.TempDir(), "draw", "small.quilt", "-o", "a.png", "--dpi", "100"); out != "drawn: a.png, 1200 by 1200 pixels, 100 an inch\n" {
		t.Errorf("it says %q", out)
	}
	if _, out, _ := asked(t, t.TempDir(), "draw", "small.quilt", "-o", "a.png"); out != "drawn: a.png, 2100 by 2100 pixels, 175 an inch\n" {
		t.Errorf("it says %q", out)
	}
}

// TestDrawPrintedRefusals: each says what to type instead, and writes nothing.
func TestDrawPrintedRefusals(t *testing.T) {
	for arguments, hint := range map[string]string{
		"-o a.png --dpi 0":                "--dpi 300",
		"-o a.png --dpi 4800":             "--dpi 2",
		"-o a.png --longest 90000px":      "px, or less",
		"-o a.png --longest 0px":          "2100px",
		"-o a.png --longest wide":         "10in",
		"-o a.png --background puce":      "white",
		"-o a.png --margin -1":            "3.5",
		"-o a.pdf --dpi 300":              "leave out --dpi",
		"-o a.pdf --longest 2100px":       "10in",
		"-o a.pdf --longest 300in":        `--longest "200 in"`,
		"-o a.pdf --margin 300":           `--margin "94 in"`,
		"-o a.pdf --bleed 300":            "smaller --margin and --bleed",
		"-o a.svg --dpi 300":              ".png",
		"-o a.svg --bleed 1/8in":          ".pdf",
		"--margin 1in":                    ".png",
		"-o a.heic":                       "a.svg",
		"-o a.jpg --longest 20000px":      "px, or less",
		"-o a.jpg --quality 0":            "--quality 85",
		"-o a.jpg --background none":      "name a PNG",
		"-o a.png --quality 80":           "name a JPEG",
		"-o a.jpg --true-color":           "name a PNG",
		"-o a.svg --true-color":           "name a PNG",
		"-o - --quality 80":               "name a JPEG",
		"-o a.png --view squint --legend": "does nothing in the",
		"-o a.pdf --view protan --seams":  "does nothing in the",
	} {
		folder := t.TempDir()
		code, out, complaints := asked(t, folder, append([]string{"draw", "small.quilt"}, strings.Fields(arguments)...)...)
		if code != misusing || out != "" || !strings.Contains(complaints, hint) {
			t.Errorf("%s: code %d, %q, %q has no %q", arguments, code, out, complaints, hint)
		}
		if list, _ := os.ReadDir(folder); len(list) != 1 {
			t.Errorf("%s: a file was left", arguments)
		}
	}
}

// TestForeignPicturesStay: a PNG, a JPEG or a PDF of another's is not replaced.
func TestForeignPicturesStay(t *testing.T) {
	for name, head := range map[string]string{"a.png": "\x89PNG\r\n\x1a\n", "a.jpg": "\xff\xd8\xff\xe0", "a.pdf": "%PDF-1.7\n", "small-templates.pdf": "%PDF-1.7\n"} {
		folder := t.TempDir()
		if err := os.WriteFile(filepath.Join(folder, name), []byte(head), 0o600); err != nil {
			t.Fatal(err)
		}
		command := "draw"
		if name == "small-templates.pdf" {
			command = "templates"
		}
		if code, _, complaints := asked(t, folder, command, "small.quilt", "-o", name); code != faulty || !strings.Contains(complaints, "--force") {
			t.Errorf("%s: code %d, %s", name, code, complaints)
		}
	}
}
