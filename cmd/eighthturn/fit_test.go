package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/rivo/uniseg"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/fit"
	"eighthturn/internal/plan/supplies"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
	"eighthturn/samples"
)

// sized is what `fit` was asked for, with a bed.
func sized(t *testing.T, bed string) *fitOptions {
	t.Helper()
	o := newSizing()
	if err := o.bed.Set(bed); err != nil {
		t.Fatal(err)
	}
	return o
}

// Lines are no wider than a terminal, but for lines of the layout, and none ends in a blank. The JSON says
// what the text says.
func TestFitsFitThePage(t *testing.T) {
	for _, s := range judges.Some(samples.All(), 5) {
		for _, bed := range []string{"crib", "queen"} {
			o := sized(t, bed)
			r, err := fit.Fit(s.Text, fit.Options{Wanted: o.wanted(measure.Inches)})
			if err != nil {
				t.Fatalf("%s: %v", s.Name, err)
			}
			text := render.Text(report.Fit(s.Name, r, 1))
			for _, line := range strings.Split(text, "\n") {
				wide := uniseg.StringWidth(line) > pageWidth && !strings.HasPrefix(line, "    ")
				if wide || strings.TrimRight(line, " ") != line {
					t.Errorf("%s: %q", s.Name, line)
				}
			}
			least, most := o.bed.bed.Spread()
			between := fmt.Sprintf("%d published lists: a %s quilt is between %s and %s.", len(o.bed.bed.Quilts), bed, r.Units.By(least.Width, least.Height), r.Units.By(most.Width, most.Height))
			if !strings.Contains(strings.Join(strings.Fields(text), " "), between) {
				t.Errorf("%s: it is not said that %s", s.Name, between)
			}
			var j struct {
				File        string
				Wanted      struct{ Lists []any }
				Suggestions []struct {
					Top struct{ Width measure.JSONLength } `json:"top_finished"`
				}
			}
			if err := json.Unmarshal([]byte(textOf(t, planJSON(r, formatFit, s.Name, r.Units))), &j); err != nil {
				t.Fatal(err)
			}
			if len(j.Suggestions) != len(r.Suggestions) || len(j.Wanted.Lists) != len(o.bed.bed.Quilts) || j.File != s.Name || j.Suggestions[0].Top.Width.NM != r.Suggestions[0].Finished.Width {
				t.Errorf("%s: the JSON says something else", s.Name)
			}
		}
	}
}

func TestRangeOption(t *testing.T) {
	for text, want := range map[string][2]measure.NM{
		"3..6": {3 * measure.Inch, 6 * measure.Inch}, " 3 1/2 .. 4": {7 * measure.Inch / 2, 4 * measure.Inch},
		"4": {4 * measure.Inch, 4 * measure.Inch}, "9cm..12 cm": {9 * measure.Centimetre, 12 * measure.Centimetre}, "2.5..3": {5 * measure.Inch / 2, 3 * measure.Inch},
	} {
		o := rangeOption{option: stripsName}
		if err := o.Set(text); err != nil {
			t.Errorf("%q: %v", text, err)
		} else if from, to := o.in(measure.Inches); from != want[0] || to != want[1] {
			t.Errorf("%q is %s to %s", text, measure.Text(from, measure.Inches), measure.Text(to, measure.Inches))
		}
	}
	for _, text := range []string{"", "..", "3..", "..4", "3...4", "0..4", "-1..4", "a..b", "3..4..5", "3 to 4"} {
		if o := (rangeOption{option: stripsName}); o.Set(text) == nil {
			t.Errorf("%q is taken as %v", text, o)
		}
	}
}

// What is wrong with the options is told before a file is read, and what is wrong with the layout ends in another code.
func TestFitExitCodes(t *testing.T) {
	folder := t.TempDir()
	write := func(name, text string) string {
		path := filepath.Join(folder, name)
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	good := write("good.quilt", "strip 4\nfabric a navy\nfabric b white\nblock R ring wedges a corners b\ngrid\n  R R\n  R R\n")
	bad := write("bad.quilt", "strip 4\n")
	quiet, err := os.Create(filepath.Join(folder, "out"))
	if err != nil {
		t.Fatal(err)
	}
	defer quiet.Close()
	for args, want := range map[string]int{
		good + " --bed twin":                                done,
		good + " --bed Twin-XL --drop 12 --json":            done,
		good + " --width 30 --height 40 --strips 3..5":      done,
		bad + " --bed twin":                                 faulty,
		filepath.Join(folder, "none.quilt") + " --bed twin": faulty,
		good:                            misusing,
		good + " --bed emperor":         misusing,
		good + " --bed throw --drop 12": misusing,
		good + " --drop 12":             misusing,
		good + " --width 30":            misusing,
		good + " --bed twin --width 30 --height 40":     misusing,
		good + " --bed twin --sides 5..8":               misusing,
		good + " --bed twin --strips 3..5 --sides 5..8": misusing,
		good + " --bed twin --strips 5..3":              misusing,
		good + " --bed twin --step 0.001":               misusing,
		good + " --bed twin --number 0":                 misusing,
		good + " --bed twin --strips 3..200":            misusing,
		good + " --bed twin --drop 200":                 misusing,
		good + " --width 20000 --height 40":             misusing,
		good + " --width 0.5 --height 40":               misusing,
	} {
		c := &console{in: os.Stdin, out: quiet, err: quiet}
		if code := run(append([]string{"fit"}, strings.Fields(args)...), c); code != want {
			t.Errorf("fit %s ends with %d, want %d", args, code, want)
		}
	}
}

// What is out of range is answered with something to type, and with that it runs.
func TestFitHints(t *testing.T) {
	strips, sides := written(t, "strip 4\nfabric a navy\nblock R ring wedges a corners a\ngrid\n  R R\n"), written(t, "units cm\nside 15\nfabric a navy\nblock P plain piece a\ngrid\n  P\n")
	for _, layout := range []string{strips, sides} {
		sizes := "--strips"
		if layout == sides {
			sizes = "--sides"
		}
		for _, args := range []string{
			"--bed twin --step 0.001", "--bed twin " + sizes + " 3..20 --step 0.01", "--bed twin " + sizes + " 3..400", "--bed twin --drop 255", "--bed twin --max-border 310", "--width 0.3 --height 40",
			"--width 30000 --height 40", "--bed twin --step 310", "--bed twin --number 51",
		} {
			wrong := runIn(t, append([]string{"fit", layout}, strings.Fields(args)...)...)
			_, hint, ok := strings.Cut(wrong.err, "for example ")
			hint, _, _ = strings.Cut(hint, " or ")
			if wrong.code != misusing || !ok {
				t.Errorf("fit %s: code %d, %s", args, wrong.code, wrong.err)
				continue
			}
			if right := runIn(t, append([]string{"fit", layout}, amended(args, hint)...)...); right.code != done {
				t.Errorf("fit %s: %q does not help: %s", args, hint, right.err)
			}
		}
	}
}

// One block is not said as 1 by 1.
func TestFitOneBlock(t *testing.T) {
	one := runIn(t, "fit", written(t, "side 6\nfabric a navy\nblock P plain piece a\ngrid\n  P\n"), "--bed", "crib")
	if !strings.Contains(one.out, "Current layout: 1 block (6 in finished)") || strings.Contains(one.out, "1 by 1 ") {
		t.Errorf("%s", one.out)
	}
	row := runIn(t, "fit", written(t, "side 6\nfabric a navy\nblock P plain piece a\ngrid\n  P P\n"), "--bed", "crib")
	if !strings.Contains(row.out, "Current layout: 2 by 1 blocks (6 in finished)") {
		t.Errorf("%s", row.out)
	}
}

// An unknown bed gives the list of those that are known.
func TestUnknownBed(t *testing.T) {
	var o bedOption
	err := o.Set("emperor")
	p, ok := err.(*problem)
	if !ok {
		t.Fatalf("%v", err)
	}
	for _, b := range supplies.Beds() {
		if !strings.Contains(p.hint, b.Name) {
			t.Errorf("%s is not named in %q", b.Name, p.hint)
		}
	}
}
