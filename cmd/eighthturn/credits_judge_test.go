//go:build judges

package main

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/judges"
)

// What exiftool calls title, author and rights in a file of each ending.
func creditTags(file string) []string {
	switch filepath.Ext(file) {
	case ".png":
		return []string{"PNG:Title", "PNG:Author", "PNG:Copyright"}
	case ".pdf":
		return []string{"PDF:Title", "PDF:Author", "XMP:Rights"}
	}
	return []string{"XMP:Title", "XMP:Creator", "XMP:Rights"}
}

// tagsOf are what exiftool reads in the files of a folder, by file, and by group and name.
func tagsOf(t *testing.T, exiftool, folder string) map[string]map[string]any {
	t.Helper()
	out, err := exec.Command(exiftool, "-j", "-G", "-charset", "UTF8", "-all", "-validate", folder).Output()
	if err != nil {
		t.Fatal(err)
	}
	var list []map[string]any
	if err := json.Unmarshal(out, &list); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	files := map[string]map[string]any{}
	for _, tags := range list {
		files[filepath.Base(tags["SourceFile"].(string))] = tags
	}
	return files
}

// TestCreditsByExiftool: exiftool reads the layout's title, designer and copyright in every kind of picture and in the pattern, finds
// nothing wrong with them, and says that a JPEG is in sRGB and of its size; ImageMagick reads the same pixels an inch, and tells color
// by number from full color.
func TestCreditsByExiftool(t *testing.T) {
	exiftool := judges.Program(t, "Debian's libimage-exiftool-perl", "exiftool")
	identify := judges.Program(t, "Debian's imagemagick", "identify")
	for _, want := range [][3]string{{"Läntern & <Co>", "Zoë Miller", "© 2026 Zoë; share it"}, {"風", "Jiří", "2026 by Jiří"}} {
		folder := t.TempDir()
		layout := filepath.Join(folder, "small.quilt")
		text := "title \"" + want[0] + "\"\ndesigner \"" + want[1] + "\"\ncopyright \"" + want[2] + "\"\n" + strings.SplitAfterN(printedLayout, "\n", 2)[1]
		if err := os.WriteFile(layout, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		for _, args := range []string{"draw -o x.svg", "draw -o x.png --no-seams", "draw --dpi 150 -o x.jpg", "draw -o x.pdf", "draw -o full.png --no-seams --true-color", "booklet -o pattern.pdf"} {
			words := strings.Fields(strings.Replace(args, "-o ", "-o "+folder+"/", 1))
			if r := runIn(t, append(words, layout)...); r.code != 0 {
				t.Fatalf("%v: %s", args, r.err)
			}
		}
		files := tagsOf(t, exiftool, folder)
		if len(files) < 6 {
			t.Fatalf("%d files are read", len(files))
		}
		for file, tags := range files {
			if file == "small.quilt" {
				continue
			}
			if got := tags["ExifTool:Validate"]; got != "OK" && got != "0 0 0" {
				t.Errorf("%s: %v", file, got)
			}
			for i, tag := range creditTags(file) {
				if tags[tag] != want[i] {
					t.Errorf("%s: %s is %v, not %q", file, tag, tags[tag], want[i])
				}
			}
		}
		jpg := files["x.jpg"]
		if jpg["EXIF:ColorSpace"] != "sRGB" || jpg["EXIF:ExifImageWidth"] != jpg["File:ImageWidth"] || jpg["EXIF:ExifImageHeight"] != jpg["File:ImageHeight"] {
			t.Errorf("the JPEG is %v, %v by %v", jpg["EXIF:ColorSpace"], jpg["EXIF:ExifImageWidth"], jpg["EXIF:ExifImageHeight"])
		}
		for asked, kind := range map[string]string{"x.png %[png:IHDR.color-type-orig]": "3", "full.png %[png:IHDR.color-type-orig]": "2", "x.jpg %x %y %[colorspace]": "150 150 sRGB"} {
			file, format, _ := strings.Cut(asked, " ")
			if out, err := exec.Command(identify, "-units", "PixelsPerInch", "-format", format, filepath.Join(folder, file)).CombinedOutput(); err != nil || string(out) != kind {
				t.Errorf("%s: %s, %v", file, out, err)
			}
		}
	}
}
