//go:build judges

package main

import (
	"fmt"
	"image"
	_ "image/png"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/judges"
	"eighthturn/samples"
)

// onDark is what Chromium shows of files on a black page, each 80 pixels wide, side by side.
func onDark(t *testing.T, files []string) image.Image {
	t.Helper()
	chromium := judges.Program(t, "Debian's chromium", "chromium", "chromium-browser", "google-chrome")
	dir := t.TempDir()
	page := "<!doctype html><style>body{margin:0;background:#000}img{display:block;float:left;width:80px}</style>"
	for _, f := range files {
		page += "<img src='file://" + f + "'>"
	}
	in, out := filepath.Join(dir, "page.html"), filepath.Join(dir, "page.png")
	if err := os.WriteFile(in, []byte(page), 0o600); err != nil {
		t.Fatal(err)
	}
	c := exec.Command(chromium, "--headless=new", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", "--user-data-dir="+filepath.Join(dir, "profile"),
		fmt.Sprintf("--window-size=%d,600", max(800, 80*len(files))), "--screenshot="+out, in)
	if said, err := c.CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, said)
	}
	f, err := os.Open(out)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = f.Close() }()
	picture, _, err := image.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	return picture
}

// TestPicturesAreReadOnDarkPages: cutting maps, step pictures, templates, mats and lines for quilting stand on white where Chromium shows them on a black page: in their corners, where nothing is drawn. Without their ground they do not.
func TestPicturesAreReadOnDarkPages(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "lanterns.quilt")
	for _, s := range samples.All() {
		if s.Name == "lanterns" {
			if err := os.WriteFile(file, []byte(s.Text), 0o600); err != nil {
				t.Fatal(err)
			}
		}
	}
	var files []string
	var tall []float64
	for _, args := range []string{"cuts --maps maps/", "sew --pictures steps/", "templates -o pieces/", "templates --mat 12x24 -o mats/", "quilting -o lines/lines.svg"} {
		words := strings.Fields(args)
		last := len(words) - 1
		folder := filepath.Join(dir, strings.SplitN(words[last], "/", 2)[0])
		if !strings.HasSuffix(args, "/") && os.Mkdir(folder, 0o700) != nil {
			t.Fatal(folder)
		}
		words[last] = dir + "/" + words[last]
		if r := runIn(t, append(words, file)...); r.code != 0 {
			t.Fatalf("%s: %s", args, r.err)
		}
		list, err := filepath.Glob(folder + "/*.svg")
		if err != nil || len(list) == 0 {
			t.Fatalf("%s: %d files, %v", args, len(list), err)
		}
		written, err := os.ReadFile(list[0])
		if err != nil {
			t.Fatal(err)
		}
		bare := filepath.Join(t.TempDir(), "bare.svg")
		text := regexp.MustCompile(` ?style="background:#ffffff"|<rect width="100%" height="100%" fill="#ffffff"/>`).ReplaceAll(written, nil)
		if err := os.WriteFile(bare, text, 0o600); err != nil {
			t.Fatal(err)
		}
		files = append(files, list[0], bare)
		tall = append(tall, tallOf(t, written))
	}
	picture := onDark(t, files)
	for i, file := range files { // the lower right corner, within a line along the edge
		at := image.Pt(80*i+78, int(80*tall[i/2])-2)
		if r, g, b, _ := picture.At(at.X, at.Y).RGBA(); (min(r, g, b) > 0xf000) != (i%2 == 0) {
			t.Errorf("the corner of picture %d, %s, has the color %x %x %x", i, file, r>>8, g>>8, b>>8)
		}
	}
}

// tallOf is how many times as tall as wide a picture is.
func tallOf(t *testing.T, svg []byte) float64 {
	t.Helper()
	box := regexp.MustCompile(`viewBox="0 0 ([\d.]+) ([\d.]+)"`).FindSubmatch(svg)
	if box == nil {
		t.Fatal("no view box")
	}
	wide, err := strconv.ParseFloat(string(box[1]), 64)
	tall, err2 := strconv.ParseFloat(string(box[2]), 64)
	if err != nil || err2 != nil {
		t.Fatal(err, err2)
	}
	return tall / wide
}
