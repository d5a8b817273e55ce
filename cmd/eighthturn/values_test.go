package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/rivo/uniseg"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/quilt"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
	"eighthturn/layout"
)

// TestStudiesFitThePage: no line of a study is wider than a terminal's 80 columns, tables of
// long names left aside, and none ends in a blank.
func TestStudiesFitThePage(t *testing.T) {
	files, _ := filepath.Glob("../../testdata/values/layouts/*.quilt")
	if len(files) == 0 {
		t.Fatal("no layouts")
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		d, _, faults := layout.Read(string(text))
		if d == nil {
			t.Fatalf("%s: %v", file, faults)
		}
		p := &report.Plans{Top: quilt.Lay(d), Name: filepath.Base(file)}
		for _, line := range strings.Split(render.Text(report.Values(p)), "\n") {
			if uniseg.StringWidth(line) > pageWidth || strings.TrimRight(line, " ") != line {
				t.Errorf("%s: %q", file, line)
			}
		}
	}
}

func TestLengthOption(t *testing.T) {
	for text, want := range map[string]measure.NM{
		"10 ft": 120 * measure.Inch, "6ft": 72 * measure.Inch, "1 1/2 feet": 18 * measure.Inch, "2 yd": 72 * measure.Inch,
		"3 m": 3000 * measure.Millimetre, "0.3 in": measure.Inch * 3 / 10,
	} {
		l := lengthOption{option: "distance"}
		if err := l.Set(text); err != nil || l.nm != want {
			t.Errorf("%q is %d, %v; expected %d", text, l.nm, err, want)
		}
	}
	for _, text := range []string{"", "10", "ft", "0 ft", "-3 ft", "10 ft 2", "9999999 yd", "ten feet"} {
		if l := (lengthOption{option: "distance"}); l.Set(text) == nil {
			t.Errorf("%q was taken as %d", text, l.nm)
		}
	}
}

func TestContrastOption(t *testing.T) {
	for _, text := range []string{"8 20", "8,20", " 8, 20 "} {
		var o contrastOption
		if err := o.Set(text); err != nil || *o.steps != (contrast.Contrast{Soft: 8, Clear: 20}) {
			t.Errorf("%q: %v", text, err)
		}
	}
	for _, text := range []string{"", "8", "20 8", "0 20", "8 20 40", "a b", "NaN 20", "8 NaN", "8 1000"} {
		if (&contrastOption{}).Set(text) == nil {
			t.Errorf("%q was taken", text)
		}
	}
}

// Whatever a palette file calls its colours, the lines made of them are lines of a layout.
func TestFabricNamesAreNames(t *testing.T) {
	for _, from := range []string{"", "Deep Sea", "7 up", "grid", "cut", "navy/blue", "赤い 布", "é", "\u202eabc", strings.Repeat("long ", 40), "--", "a\nb", `"quoted"`, "fabric"} {
		name := fabricName(from)
		text := "side 6\nfabric " + name + " #123\nblock P plain piece " + name + "\ngrid\n  P\n"
		if design, _, faults := layout.Read(text); design == nil {
			t.Errorf("%q becomes %q: %v", from, name, faults)
		}
	}
}
