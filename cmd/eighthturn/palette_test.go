package main

import (
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"eighthturn/samples"
)

// twoColours is a photo of two cloths.
func twoColours(t testing.TB) string {
	t.Helper()
	m := image.NewRGBA(image.Rect(0, 0, 200, 100))
	for x := range 200 {
		for y := range 100 {
			m.Set(x, y, color.RGBA{uint8(150 - x/100*120), 60, uint8(50 + x/100*100), 255})
		}
	}
	name := filepath.Join(t.TempDir(), "stash.png")
	f, err := os.Create(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := png.Encode(f, m); err != nil {
		t.Fatal(err)
	}
	return name
}

// TestPaletteNumber: a number of fabrics that has no effect is refused, or it is said how many there are instead.
func TestPaletteNumber(t *testing.T) {
	photo, layout := twoColours(t), written(t, samples.All()[0].Text)
	for _, c := range []struct {
		args      []string
		code      int
		lines     int
		err, hint string
	}{
		{[]string{"--hue", "teal", "--number", "3"}, done, 3, "", ""},
		{[]string{"--hue", "teal"}, done, 7, "", ""},
		{[]string{"--hue", "teal", "--number", "1"}, misusing, 0, `after --number: found "1", expected 2 to 24 fabrics`, "for example --number 9"},
		{[]string{"--hue", "teal", "--number", "many"}, misusing, 0, `after --number: found "many"`, "for example --number 9"},
		{[]string{"tidewater"}, done, 8, "", ""},
		{[]string{"tidewater", "--number", "3"}, misusing, 0, `"tidewater" has fabrics of its own`, "leave --number out"},
		{[]string{layout, "--number", "3"}, misusing, 0, "has fabrics of its own", "leave --number out"},
		{[]string{photo, "--number", "2"}, done, 2, "", ""},
		{[]string{photo}, done, 2, "", ""},
		{[]string{photo, "--number", "5"}, done, 2, "note: no more than 2 colors can be told apart in this photo, 5 were asked for", ""},
	} {
		r := runIn(t, append([]string{"palette"}, c.args...)...)
		if r.code != c.code || strings.Count(r.out, "\n") != c.lines || !strings.Contains(r.err, c.err) || !strings.Contains(r.err, c.hint) || c.err == "" && r.err != "" {
			t.Errorf("%v: code %d\n%s%s", c.args, r.code, r.out, r.err)
		}
	}
}
