package main

import (
	"encoding/csv"
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
	"eighthturn/layout"
	"eighthturn/samples"

	"github.com/spf13/cobra"
)

// ran is what a run of the program said.
type ran struct {
	code     int
	out, err string
}

// runIn runs the program as a person would, but within the test.
func runIn(t *testing.T, args ...string) ran {
	t.Helper()
	dir := t.TempDir()
	var files [2]*os.File
	for i, name := range []string{"out", "err"} {
		f, err := os.Create(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		files[i] = f
	}
	r := ran{code: run(args, &console{in: os.Stdin, out: files[0], err: files[1]})}
	for i, to := range []*string{&r.out, &r.err} {
		b, err := os.ReadFile(files[i].Name())
		if err != nil {
			t.Fatal(err)
		}
		*to = string(b)
	}
	return r
}

// written is a layout in a file.
func written(t *testing.T, text string) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "my.quilt")
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return file
}

func plansOf(t *testing.T, text string) *report.Plans {
	t.Helper()
	d, _, faults := layout.Read(text)
	if d == nil {
		t.Fatal(faults)
	}
	return &report.Plans{Top: quilt.Lay(d), Name: "x"}
}

// cutsText is a cutting report as it is asked for.
// inForm asks for a form of text.
func inForm(name string) reportForms {
	o := reportForms{}
	o.flags(&cobra.Command{})
	for i, form := range render.Forms() {
		*o.asked[i] = form.Name == name
	}
	return o
}

func cutsText(t *testing.T, p *report.Plans, forms reportForms) string {
	t.Helper()
	text, err := forms.text(report.Cutting(p))
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// TestCutsSaysAll: of every sample the text names each fabric with what to buy, says finished and cut, gives the advice and
// the cautions, and ends no line in a blank; how it was worked out is said when asked for.
func TestCutsSaysAll(t *testing.T) {
	for _, s := range samples.All() {
		p := plansOf(t, s.Text)
		text := cutsText(t, p, reportForms{})
		wants := []string{"finished", "cut", "Finished size excludes seam allowances", "Cut, sew and measure", "Rotary cutter: close the guard", "Iron: ", "Square up the fabric"}
		for i := range p.Cuts().Fabrics {
			wants = append(wants, p.Cuts().Fabrics[i].Name, p.Top.Units.Shop(p.Cuts().Fabrics[i].Purchase.Buy))
		}
		for _, want := range wants {
			if !strings.Contains(text, want) {
				t.Errorf("%s: %q is not said", s.Name, want)
			}
		}
		const bound = "none takes less"
		why := strings.Join(strings.Fields(cutsText(t, p, reportForms{why: true})), " ")
		if strings.Contains(strings.Join(strings.Fields(text), " "), bound) || !strings.Contains(why, bound) {
			t.Errorf("%s: bounds are not said by --why alone", s.Name)
		}
		for _, line := range strings.Split(text, "\n") {
			if strings.TrimRight(line, " ") != line {
				t.Errorf("%s: %q ends in a blank", s.Name, line)
			}
			if prose := strings.HasPrefix(line, "  - ") || strings.HasPrefix(line, "    "); prose && render.Columns(line) > pageWidth && !strings.Contains(line, "   ") {
				t.Errorf("%s: %q is too long", s.Name, line)
			}
		}
	}
}

// TestCutsTables: every row of the CSV and of the Markdown's tables has as many cells as the headings, and no cell of the
// CSV is one that a spreadsheet would reckon with.
func TestCutsTables(t *testing.T) {
	for _, s := range samples.All() {
		p := plansOf(t, s.Text)
		rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(render.CSV(report.CuttingTable(p)), "\ufeff"))).ReadAll()
		if err != nil || len(rows) < 5 {
			t.Fatalf("%s: %d rows, %v", s.Name, len(rows), err)
		}
		for _, row := range rows {
			for _, cell := range row {
				if strings.IndexAny(cell, "=+@") == 0 {
					t.Errorf("%s: a cell %q", s.Name, cell)
				}
			}
		}
		cells := 0
		for _, line := range strings.Split(cutsText(t, p, inForm(render.MarkdownForm)), "\n") {
			if n := strings.Count(line, "|"); strings.HasPrefix(line, "|") {
				if cells != 0 && n != cells {
					t.Errorf("%s: %q has another number of cells", s.Name, line)
				}
				cells = n
			} else {
				cells = 0
			}
		}
	}
}

// cutsRead is what the test reads of a plan's JSON.
type cutsRead struct {
	Format int
	Lines  []struct {
		Line    int
		Patches []int
	}
	StripSets []struct{} `json:"strip_sets"`
	Fabrics   []struct {
		Name     string
		Purchase struct{ Buy measure.JSONLength }
		Joined   []struct {
			Times  int
			Strips []struct{ Strips int }
			Pieces []struct{ Pieces int }
			Spare  measure.JSONLength
		}
	}
}

// wrongCutsJSON says what JSON tells otherwise than the plan.
func wrongCutsJSON(j *cutsRead, p *cutting.Plan) string {
	patches := 0
	for _, l := range j.Lines {
		patches += len(l.Patches)
	}
	if len(j.Fabrics) != len(p.Fabrics) || patches != len(p.LineOf) || len(j.StripSets) != len(p.Sets) || j.Format != formatCuts {
		return "another number of things"
	}
	for i, f := range p.Fabrics {
		if len(j.Fabrics[i].Joined) != len(f.Chains) || j.Fabrics[i].Name != f.Name || j.Fabrics[i].Purchase.Buy.NM != f.Purchase.Buy {
			return f.Name + ": another fabric"
		}
		for n, c := range f.Chains {
			off := 0
			got := j.Fabrics[i].Joined[n]
			for k, s := range c.Strips {
				off += got.Strips[k].Strips - s.Count
			}
			for k, s := range c.Pieces {
				off += got.Pieces[k].Pieces - s.Count
			}
			if off != 0 || got.Times != c.Times || got.Spare.NM != c.SpareCut {
				return f.Name + ": other strips"
			}
		}
	}
	return ""
}

func TestCutsJSON(t *testing.T) {
	joined := 0
	for _, s := range samples.All() {
		p := plansOf(t, s.Text)
		var j cutsRead
		if err := json.Unmarshal([]byte(textOf(t, planJSON(p.Cuts(), formatCuts, "x", p.Top.Units))), &j); err != nil {
			t.Fatal(err)
		}
		if wrong := wrongCutsJSON(&j, p.Cuts()); wrong != "" {
			t.Errorf("%s: %s", s.Name, wrong)
		}
		for i := range j.Fabrics {
			if len(j.Fabrics[i].Joined) > 0 {
				joined++
				j.Fabrics[i].Joined[0].Strips[0].Strips++
				if wrongCutsJSON(&j, p.Cuts()) == "" {
					t.Errorf("%s: a strip too many is not noticed", s.Name)
				}
			}
		}
	}
	if joined == 0 {
		t.Error("no sample has strips that are joined")
	}
}

// unmeasurable is a length that nobody can cut or buy by.
var unmeasurable = regexp.MustCompile(`\d\.\d{4}|\d\.\d{3} (in|cm) (long|of cloth|of strip|in,)`)

// TestCutsMeasurable: no length is written to more than three decimals, and those that are cut or bought to no more than two.
func TestCutsMeasurable(t *testing.T) {
	texts := mapped(samples.All(), func(s samples.Sample) string { return s.Text })
	for seed := range uint64(30) {
		texts = append(texts, invent.Layout(7000+seed))
	}
	metric := 0
	for i, text := range texts {
		p := plansOf(t, text)
		if p.Top.Units == measure.Centimetres {
			metric++
		}
		if found := unmeasurable.FindString(cutsText(t, p, reportForms{})); found != "" {
			t.Errorf("layout %d: %q", i, found)
		}
		for _, m := range report.CuttingMaps(p) {
			if found := unmeasurable.FindString(m.Figure.Title + m.Figure.Description); found != "" {
				t.Errorf("layout %d, %s: %q", i, m.Name, found)
			}
		}
	}
	if metric == 0 || metric == len(texts) {
		t.Errorf("%d of %d layouts are metric", metric, len(texts))
	}
	if unmeasurable.FindString("joined to at least 111.7211 in") == "" || unmeasurable.FindString("12.125 in of cloth") == "" {
		t.Error("it lets lengths pass that nobody can measure")
	}
}

// A fabric's name that Markdown or a spreadsheet would take for its own stays a name.
func TestCutsOddNames(t *testing.T) {
	p := plansOf(t, "side 6\nfabric a #111 \"=1+1 | <b>*bold*\"\nblock A plain piece a\ngrid\n A\n")
	if text := cutsText(t, p, inForm(render.MarkdownForm)); !strings.Contains(text, `=1+1 \| \<b\>\*bold\*`) {
		t.Errorf("%s", text)
	}
	p.Cuts().Fabrics[0].Name = "=1+1"
	if text := render.CSV(report.CuttingTable(p)); !strings.Contains(text, "'=1+1") || strings.Contains(text, ",=1+1") {
		t.Errorf("%s", text)
	}
}

func TestCutsRuns(t *testing.T) {
	good := written(t, samples.All()[0].Text)
	metric := written(t, "units cm\nside 10\nfabric a #111\nblock A plain piece a\ngrid\n A\n")
	maps, plan := filepath.Join(t.TempDir(), "maps"), filepath.Join(t.TempDir(), "plan")
	for _, c := range []struct {
		args     []string
		code     int
		out, err string
	}{
		{[]string{good}, 0, "what to cut and what to buy, for one quilt", ""},
		{[]string{good, "--copies", "12"}, 0, "for 12 quilts", ""},
		{[]string{good, "--json"}, 0, `"strip_bound"`, ""},
		{[]string{good, "--csv"}, 0, "row,fabric,lines", ""},
		{[]string{good, "--csv", "--locale", "de_AT"}, 0, "row;fabric;lines", ""},
		{[]string{good, "-o", "-", "--csv"}, 0, "row,fabric,lines", ""},
		{[]string{good, "-o", plan + ".xlsx"}, 0, "made: " + plan + ".xlsx", ""},
		{[]string{good, "-o", plan + ".xlsx", "--maps", maps}, 0, "drawn: 5 maps", ""}, // a workbook of ours is replaced
		{[]string{good, "-o", plan + ".CSV", "--locale", "fr-CA"}, 0, "made: ", ""},
		{[]string{good, "-o", plan + ".CSV"}, 1, "", "add --force to replace it"},
		{[]string{good, "-o", plan + ".json"}, 0, "made: ", ""},
		{[]string{good, "-o", plan + ".md"}, 0, "made: ", ""},
		{[]string{good, "-o", plan + ".txt"}, 0, "made: ", ""},
		{[]string{good, "-o", plan + ".doc"}, 2, "", "names end in .xlsx, .md, .csv, .json or .txt"},
		{[]string{good, "-o", plan}, 2, "", ".xlsx"},
		{[]string{good, "-o", plan + ".csv", "--csv"}, 2, "", "leave out --csv"},
		{[]string{good, "-o", ""}, 2, "", "for example -o harbor-plan.xlsx"},
		{[]string{good, "-o", plan + "2.xlsx", "--locale", "de"}, 2, "", "only CSV is written as in a locale"},
		{[]string{good, "--csv", "--locale", "de-XX"}, 2, "", "de, fr-CA, en-US"},
		{[]string{good, "--markdown"}, 0, "## To buy", ""},
		{[]string{good, "--quarters", "--spare", "1/4 yd", "--square-up", "1"}, 0, "1/4 yd", ""},
		{[]string{good, "--straight-long-edges"}, 0, "cut twice", ""},
		{[]string{good, "--trim-step", "1/2"}, 0, "squares of 4 in", ""},
		{[]string{good, "--maps", maps}, 0, "drawn: 5 maps", ""},
		{[]string{good, "--maps", maps}, 0, "drawn: 5 maps", ""}, // maps of ours are replaced
		{[]string{good, "--json", "--csv"}, 2, "", "one form at a time"},
		{[]string{good, "--copies", "0"}, 2, "", "expected a number from 1 to 1000"},
		{[]string{good, "--copies", "many"}, 2, "", "--copies 12"},
		{[]string{good, "--trim-step", "3"}, 2, "", `after --trim-step: found "3", expected a length above 0 and up to 2 in (5.08 cm)`},
		{[]string{good, "--trim-step", ""}, 2, "", `for example --trim-step "1/2 in"`},
		{[]string{good, "--exact-step", "3"}, 2, "", `for example --exact-step "1/4 in"`},
		{[]string{good, "--spare", "500 yd"}, 2, "", `after --spare: found "500 yd", expected a length above 0 and up to 100 in (254 cm)`},
		{[]string{good, "--square-up", "101"}, 2, "", `for example --square-up "1 in"`},
		{[]string{metric, "--spare", "254"}, 0, "254 cm as insurance against cutting errors", ""},
		{[]string{metric, "--spare", "255"}, 2, "", `for example --spare "1/4 yd"`},
		{[]string{metric, "--quarters"}, 2, "", "leave --quarters out"},
		{[]string{good, "--maps", ""}, 2, "", "is empty"},
		{[]string{good, "--maps", filepath.Join(maps, "none", "more")}, 1, "", "after --maps"},
		{[]string{good, "--maps", "-"}, 2, "", "not to standard output"},
		{[]string{}, 2, "", "no layout is named"},
		{[]string{written(t, "side 40\nfabric a #111\nblock A plain piece a\ngrid\n A\n")}, 1, "", "my.quilt:3:21: error: a square is cut 40 1/2 in long, but a is 40 in between its selvages"},
		{[]string{written(t, "side 4\n")}, 1, "", "nothing is planned"},
	} {
		r := runIn(t, append([]string{"cuts"}, c.args...)...)
		if r.code != c.code || !strings.Contains(strings.Join(strings.Fields(r.out), " "), c.out) || !strings.Contains(r.err, c.err) || c.code != 0 && r.out != "" {
			t.Errorf("%v: code %d\n%.300s\n%s", c.args, r.code, r.out, r.err)
		}
	}
}

// TestMapsReplaceNoOthers: a file that is no map of ours stays.
func TestMapsReplaceNoOthers(t *testing.T) {
	good, maps := written(t, samples.All()[0].Text), t.TempDir()
	letter := filepath.Join(maps, mapName(0, report.CuttingMaps(plansOf(t, samples.All()[0].Text))[0].Name))
	if err := os.WriteFile(letter, []byte("<svg>a letter</svg>"), 0o600); err != nil {
		t.Fatal(err)
	}
	if r := runIn(t, "cuts", good, "--maps", maps); r.code != faulty || !strings.Contains(r.err, "--force") {
		t.Errorf("code %d, %s", r.code, r.err)
	}
	if b, _ := os.ReadFile(letter); string(b) != "<svg>a letter</svg>" {
		t.Error("it was replaced")
	}
	if r := runIn(t, "cuts", good, "--maps", maps, "--force"); r.code != done {
		t.Errorf("with --force: code %d, %s", r.code, r.err)
	}
}

func TestMapName(t *testing.T) {
	for name, want := range map[string]string{"navy": "01-navy.svg", "a/b\\c:d": "01-a-b-c-d.svg", "赤い": "01-赤い.svg", "glow 2": "01-glow-2.svg", "..": "01---.svg"} {
		if got := mapName(0, name); got != want {
			t.Errorf("%q: %q, want %q", name, got, want)
		}
	}
}
