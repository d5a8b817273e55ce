//go:build judges

package booklet

import (
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"

	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/render"
)

var coloredWords = regexp.MustCompile(`<fill_text colorspace="(\w+)" color="([0-9. ]+)"`)

// nearlyBlack are the colors of words, as MuPDF tells what a page paints, that are dark and without color and yet not black:
// printers screen them. The number is how many stretches of words are black.
func nearlyBlack(trace string) (wrong []string, black int) {
	for _, m := range coloredWords.FindAllStringSubmatch(trace, -1) {
		least, most := 1.0, 0.0
		for _, v := range regexp.MustCompile(`[0-9.]+`).FindAllString(m[2], -1) {
			part, _ := strconv.ParseFloat(v, 64)
			least, most = min(least, part), max(most, part)
		}
		switch {
		case m[1] == "DeviceGray" && most == 0:
			black++
		case most < 0.3 && most-least < 0.1:
			wrong = append(wrong, m[1]+" "+m[2])
		}
	}
	return wrong, black
}

// TestBlackIsBlack: words of a pattern are black by black ink alone (ISO 32000-1, 8.6.4.2), but for headings and what is gray on
// purpose.
func TestBlackIsBlack(t *testing.T) {
	mutool := judges.Program(t, "Debian's mupdf-tools", "mutool")
	for _, name := range []string{"flotsam", "tide"} {
		printed, err := typeset(t, sampleText(t, name), render.Options{Paper: render.Letter()})
		if err != nil {
			t.Fatal(err)
		}
		path := filepath.Join(t.TempDir(), "pattern.pdf")
		if err := os.WriteFile(path, printed.File, 0o600); err != nil {
			t.Fatal(err)
		}
		wrong, black := nearlyBlack(output(t, mutool, "trace", path))
		if len(wrong) > 0 || black < 500 {
			t.Errorf("%s: %d stretches of words are black, %d nearly: %q", name, black, len(wrong), wrong[:min(3, len(wrong))])
		}
	}
	for _, broken := range []string{`<fill_text colorspace="DeviceRGB" color=".102 .1099 .1255"`, `<fill_text colorspace="DeviceGray" color=".0667"`, `<fill_text colorspace="DeviceRGB" color="0 0 0"`} {
		if wrong, _ := nearlyBlack(broken); len(wrong) != 1 {
			t.Errorf("%s is not noticed", broken)
		}
	}
}
