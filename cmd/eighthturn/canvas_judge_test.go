//go:build judges

package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/judges"
	"eighthturn/samples"
)

// TestPublishedSizes: pictures of the sizes that shops, covers and shows ask for, as exiftool reads them: pixels, pixels an inch, sRGB,
// credits, and nothing wrong with the file. The sizes are common practice but for the longest side of 2,100 to 4,200 pixels (SAQA,
// digital submission guidelines).
func TestPublishedSizes(t *testing.T) {
	exiftool := judges.Program(t, "Debian's libimage-exiftool-perl", "exiftool")
	folder := t.TempDir()
	layout := filepath.Join(folder, "lanterns.quilt")
	for _, s := range samples.All() {
		if s.Name == "lanterns" {
			if err := os.WriteFile(layout, []byte("designer \"Mara Ellery\"\n"+s.Text), 0o600); err != nil {
				t.Fatal(err)
			}
		}
	}
	pictures := t.TempDir()
	const perInch = 200
	for i, size := range []string{"1080x1080", "1080x1350", "2048x2048", "1000x1500", "2100x1680", "4200x2800"} {
		for _, ending := range []string{pixelsEnding, jpegEnding, webpEnding} {
			if ending != jpegEnding && i > 1 {
				continue
			}
			if r := runIn(t, "draw", layout, "--canvas", size, "--dpi", fmt.Sprint(perInch), "--beside", "value", "-o", filepath.Join(pictures, size+ending)); r.code != 0 {
				t.Fatal(r.err)
			}
		}
	}
	for name, tags := range tagsOf(t, exiftool, pictures) {
		size := strings.TrimSuffix(name, filepath.Ext(name))
		if got := strings.ReplaceAll(fmt.Sprint(tags["Composite:ImageSize"]), " ", "x"); got != size {
			t.Errorf("%s has %v pixels", name, got)
		}
		if tags["ExifTool:Warning"] != nil || tags["ExifTool:Error"] != nil {
			t.Errorf("%s: %v %v", name, tags["ExifTool:Warning"], tags["ExifTool:Error"])
		}
		want := map[string]string{"EXIF:XResolution": "200", "EXIF:YResolution": "200", "EXIF:ColorSpace": "sRGB", "XMP:Title": "Lanterns along the quay", "XMP:Creator": "Mara Ellery"}
		if filepath.Ext(name) == pixelsEnding { // in pixels a meter
			want = map[string]string{"PNG:PixelsPerUnitX": "7874", "PNG:PixelUnits": "meters", "PNG:SRGBRendering": "Perceptual", "PNG:Title": "Lanterns along the quay", "PNG:Author": "Mara Ellery"}
		}
		for tag, is := range want {
			if got := fmt.Sprint(tags[tag]); got != is {
				t.Errorf("%s: %s is %q, not %q", name, tag, got, is)
			}
		}
	}
}

// TestShopPictures: pictures of the named sizes and those of a listing, as exiftool reads them: their pixels, 300 an inch, sRGB, and no more
// bytes than a page of a shop loads at once (1 MB a picture is common practice, and story and portrait are what phones show).
func TestShopPictures(t *testing.T) {
	exiftool := judges.Program(t, "Debian's libimage-exiftool-perl", "exiftool")
	layout := filepath.Join(t.TempDir(), "flotsam.quilt")
	if err := os.WriteFile(layout, []byte(sampleCalled("flotsam")), 0o600); err != nil {
		t.Fatal(err)
	}
	pictures := t.TempDir()
	want := map[string]string{"square.jpg": "2048 2048", "upright.jpg": "1000 1500", "gray.jpg": "2048 2048", "block.jpg": "2048 2048", "portrait.jpg": "1080 1350", "story.jpg": "1080 1920", "own.jpg": "2048 2048"}
	for name, size := range map[string]string{"portrait.jpg": "portrait", "story.jpg": "story", "own.jpg": "square"} {
		if r := runIn(t, "draw", layout, "--canvas", size, "--legend", "-o", filepath.Join(pictures, name)); r.code != 0 {
			t.Fatal(r.err)
		}
	}
	if r := runIn(t, "listing", layout, "--pictures", pictures); r.code != 0 {
		t.Fatal(r.err)
	}
	seen := tagsOf(t, exiftool, pictures)
	for name, size := range want {
		tags := seen[name]
		for tag, is := range map[string]string{"Composite:ImageSize": size, "EXIF:XResolution": "300", "EXIF:YResolution": "300", "EXIF:ColorSpace": "sRGB"} {
			if got := fmt.Sprint(tags[tag]); strings.ReplaceAll(got, "x", " ") != is {
				t.Errorf("%s: %s is %q, not %q", name, tag, got, is)
			}
		}
		info, err := os.Stat(filepath.Join(pictures, name))
		if err != nil || info.Size() > 1_000_000 || info.Size() < 20_000 {
			t.Errorf("%s has %d bytes, %v", name, info.Size(), err)
		}
	}
}
