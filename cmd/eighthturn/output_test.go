package main

import (
	"bytes"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
)

// TestFolderOfPicturesIsWholeOrRefused: where one picture would be refused none is drawn, and the message names the option.
func TestFolderOfPicturesIsWholeOrRefused(t *testing.T) {
	folder := t.TempDir()
	if err := os.WriteFile(filepath.Join(folder, "b.svg"), []byte("a letter"), 0o600); err != nil {
		t.Fatal(err)
	}
	d := pictureFolder{path: folder, option: "--maps", what: "map", ours: isMap}
	list := []namedFigure{{"a.svg", &diagram.Figure{}}, {"b.svg", &diagram.Figure{}}}
	err := d.draw(testConsole(), list, measure.Inches)
	if err == nil || !strings.Contains(err.(*problem).hint, "--maps") {
		t.Errorf("%v", err)
	}
	if files, _ := os.ReadDir(folder); len(files) != 1 {
		t.Errorf("%d files are there, expected the letter alone", len(files))
	}
	d.force = true
	if err := d.draw(testConsole(), list, measure.Inches); err != nil {
		t.Error(err)
	}
	if files, _ := os.ReadDir(folder); len(files) != 2 {
		t.Errorf("%d files are there, expected both pictures", len(files))
	}
}

// TestLayoutsWithPhotos: a photo that a layout names is replaced by nothing, and the layout is tidied whether it is there or not.
func TestLayoutsWithPhotos(t *testing.T) {
	folder := t.TempDir()
	photo, file := filepath.Join(folder, "sea.png"), filepath.Join(folder, "my.quilt")
	var b bytes.Buffer
	if err := png.Encode(&b, image.NewGray(image.Rect(0, 0, 40, 40))); err != nil {
		t.Fatal(err)
	}
	for name, content := range map[string][]byte{photo: b.Bytes(), file: []byte("side 6\nfabric a swatch \"sea.png\"\nblock P plain piece a\ngrid\n P P\n")} {
		if err := os.WriteFile(name, content, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if r := runIn(t, "draw", file, "-o", photo, "--force"); r.code != 1 || !strings.Contains(r.err, "a photo that the layout names") {
		t.Errorf("code %d, %s", r.code, r.err)
	}
	if now, err := os.ReadFile(photo); err != nil || !bytes.Equal(now, b.Bytes()) {
		t.Errorf("the photo was replaced: %v", err)
	}
	if r := runIn(t, "tidy", file); r.code != 0 || !strings.Contains(r.out, "tidied") {
		t.Errorf("code %d, %s", r.code, r.err)
	}
	if err := os.Remove(photo); err != nil {
		t.Fatal(err)
	}
	if r := runIn(t, "tidy", file); r.code != 0 || !strings.Contains(r.out, "tidy already") {
		t.Errorf("without its photo: code %d, %s", r.code, r.err)
	}
	if r := runIn(t, "completion", "basch"); r.code != 2 || !strings.Contains(r.err, "no shell is called") || !strings.Contains(r.err, "bash") {
		t.Errorf("code %d, %s", r.code, r.err)
	}
}
