package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/rivo/uniseg"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
	"eighthturn/layout"
	"eighthturn/samples"
)

// sewingTexts is the samples, invented layouts and layouts at the limits, by name.
func sewingTexts() map[string]string {
	texts := map[string]string{
		"one square": "side 6\nfabric a #112233\nblock P plain piece a\ngrid\n P\n",
		"an island":  "side 6\nfabric a #112233\nblock P plain piece a\ngrid\n P . P\n",
		"a hole":     "strip 4\nfabric a #112233\nfabric b #eeeeee\nblock W web wedges a kites b\ngrid\n W W W\n W . W\n W W W\nborder 1/8 a\n",
		"large":      "side 6\nfabric a #112233\nblock P plain piece a\ngrid\n P\nrepeat across 40 down 40\n",
	}
	for _, s := range samples.All() {
		texts[s.Name] = s.Text
	}
	for seed := range uint64(40) {
		texts["invented "+string(rune('a'+seed%26))+string(rune('a'+seed/26))] = invent.Layout(seed)
	}
	return texts
}

// TestSewingFitsThePage: no line is wider than a terminal but for words that cannot be parted, none
// ends in a blank, every block and every caution is there, and nothing is left unsaid where a
// number belongs.
func TestSewingFitsThePage(t *testing.T) {
	for name, text := range sewingTexts() {
		d, _, _ := layout.Read(text)
		p := &report.Plans{Top: quilt.Lay(d), Name: name}
		said := render.Text(report.Sewing(p))
		for _, line := range strings.Split(said, "\n") {
			if uniseg.StringWidth(line) > pageWidth && strings.Contains(strings.TrimLeft(line, " -"), " ") || strings.TrimRight(line, " ") != line {
				t.Errorf("%s: %q", name, line)
			}
			if strings.Contains(line, "%!") || strings.Contains(line, " .") {
				t.Errorf("%s: %q", name, line)
			}
		}
		whole := strings.Join(strings.Fields(said), " ")
		for _, c := range report.SewingCautions() {
			if !strings.Contains(whole, c) {
				t.Errorf("%s: the caution %q is not there", name, c)
			}
		}
		for _, b := range p.Steps().Blocks {
			if !strings.Contains(said, "\nBlock "+layout.Visible(b.Label)+": "+strings.ReplaceAll(b.Kind, "-", " ")+"\n") {
				t.Errorf("%s: block %s is not there", name, b.Label)
			}
		}
	}
}

// TestSewingJSON: the JSON can be read and has the numbers of the plan.
func TestSewingJSON(t *testing.T) {
	for name, text := range sewingTexts() {
		d, _, _ := layout.Read(text)
		p := &report.Plans{Top: quilt.Lay(d), Name: name}
		plan := p.Steps()
		var j struct {
			Format int
			File   string
			Units  string
			Seam   measure.JSONLength `json:"seam_allowance"`
			Blocks []struct {
				Label string
				Steps []struct{ Name, Do, Check string }
			}
			Pressing struct{ Joints []struct{ Nests bool } }
			Cautions []string
		}
		if err := json.Unmarshal([]byte(textOf(t, sewJSON(name, p))), &j); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if j.Format != formatSew || j.File != name || j.Units != plan.Units.String() || j.Seam.NM != plan.Seam || j.Seam.Text == "" || len(j.Blocks) != len(plan.Blocks) || len(j.Pressing.Joints) != len(plan.Pressing.Joints) || len(j.Cautions) == 0 {
			t.Errorf("%s: the JSON says something else: %+v", name, j)
		}
		for _, b := range j.Blocks {
			for _, step := range b.Steps {
				if step.Name == "" || step.Do == "" || step.Check == "" {
					t.Errorf("%s: a step of %s does not say what to do", name, b.Label)
				}
			}
		}
	}
}

// sewn runs `sew` and gives its exit code and what it wrote.
func sewn(t *testing.T, args ...string) (code int, out, errors string) {
	t.Helper()
	folder := t.TempDir()
	var files [2]*os.File
	for i, name := range [2]string{"out", "err"} {
		f, err := os.Create(filepath.Join(folder, name))
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		files[i] = f
	}
	code = run(append([]string{"sew"}, args...), &console{in: os.Stdin, out: files[0], err: files[1]})
	var texts [2]string
	for i, f := range files {
		b, err := os.ReadFile(f.Name())
		if err != nil {
			t.Fatal(err)
		}
		texts[i] = string(b)
	}
	return code, texts[0], texts[1]
}

// TestSew: exit codes, and pictures that are drawn, replaced where they are ours, and not where
// they are somebody else's.
func TestSew(t *testing.T) {
	folder := t.TempDir()
	file := filepath.Join(folder, "regatta.quilt")
	for _, s := range samples.All() {
		if s.Name == "regatta" {
			if err := os.WriteFile(file, []byte(s.Text), 0o666); err != nil {
				t.Fatal(err)
			}
		}
	}
	steps := filepath.Join(folder, "steps")
	for range 2 { // the second time pictures of ours are replaced
		code, out, errors := sewn(t, file, "--pictures", steps)
		if code != done || !strings.Contains(out, "Safety") || !strings.Contains(out, "pictures in ") {
			t.Fatalf("code %d\n%s\n%s", code, out, errors)
		}
	}
	entries, err := os.ReadDir(steps)
	if err != nil || len(entries) < 8 {
		t.Fatalf("%v, %v", entries, err)
	}
	first := filepath.Join(steps, entries[0].Name())
	if err := os.WriteFile(first, []byte("mine"), 0o666); err != nil {
		t.Fatal(err)
	}
	if code, _, errors := sewn(t, file, "--pictures", steps); code != faulty || !strings.Contains(errors, "a file of this name already exists") {
		t.Errorf("a file of somebody else's: code %d\n%s", code, errors)
	}
	if code, _, _ := sewn(t, file, "--pictures", steps, "--force"); code != done {
		t.Errorf("replaced by force: code %d", code)
	}
	for _, c := range []struct {
		code int
		args []string
	}{
		{faulty, []string{filepath.Join(folder, "none.quilt")}},
		{faulty, []string{file, "--pictures", file}},
		{misusing, []string{file, "--pictures", ""}},
		{misusing, []string{file, "--nothing"}},
		{misusing, nil},
	} {
		if code, _, errors := sewn(t, c.args...); code != c.code || errors == "" {
			t.Errorf("%v: code %d, %q", c.args, code, errors)
		}
	}
	if code, out, _ := sewn(t, file, "--json"); code != done || !json.Valid([]byte(out)) {
		t.Error("the JSON is none")
	}
}
