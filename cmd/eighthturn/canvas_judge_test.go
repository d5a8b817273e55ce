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
