//go:build judges

package main

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/report"
	"eighthturn/samples"
)

// Judges from outside of what `cuts` writes for spreadsheets: openpyxl, and LibreOffice's Calc in two locales where it is installed.

// bought is what a plan says to buy, in yards, and how many strips and pieces it cuts: the sums of three columns.
func bought(p *report.Plans) map[string]float64 {
	sums := map[string]float64{}
	plan := p.Cuts()
	for i := range plan.Fabrics {
		sums["buy_yd"] += float64(plan.Fabrics[i].Purchase.Buy) / float64(measure.Yard)
		sums["new_strips"] += float64(plan.Fabrics[i].StripCount)
	}
	sums["buy_yd"] += float64(plan.BackingBuy.Buy) / float64(measure.Yard)
	for i := range plan.Lines {
		sums["pieces"] += float64(plan.Lines[i].Pieces)
	}
	return sums
}

// columnSums adds up the numbers beneath a heading, totals left out; a column with a text that should be a number adds up to NaN.
func columnSums(rows [][]any, sums map[string]float64) {
	for at := range rows[0] {
		name, _ := rows[0][at].(string)
		if name != "buy_yd" && name != "new_strips" && name != "pieces" {
			continue
		}
		for _, row := range rows[1:] {
			if at >= len(row) || row[0] == "total" {
				continue
			}
			switch v := row[at].(type) {
			case float64:
				sums[name] += v
			case string:
				if v != "" {
					sums[name] = math.NaN()
				}
			}
		}
	}
}

// totalsOf are the totals of the same columns, as the sheets have them.
func totalsOf(rows [][]any) map[string]float64 {
	totals := map[string]float64{}
	for at := range rows[0] {
		name, _ := rows[0][at].(string)
		if last := rows[len(rows)-1]; last[0] == "total" && at < len(last) {
			if v, ok := last[at].(float64); ok {
				totals[name] = v
			}
		}
	}
	return totals
}

func sameSums(a, b map[string]float64) error {
	for name, want := range a {
		if got, there := b[name]; !there || !(math.Abs(got-want) < 1e-6) {
			return fmt.Errorf("%s adds up to %g, expected %g", name, got, want)
		}
	}
	return nil
}

// TestOpenpyxlReadsThePlan: openpyxl (Debian's python3-openpyxl) finds numbers as numbers, whose sums are the plan's and the totals'.
func TestOpenpyxlReadsThePlan(t *testing.T) {
	python := judges.Program(t, "Debian's python3-openpyxl", "/usr/bin/python3", "python3")
	const reader = `import json, openpyxl, sys
print(json.dumps([[[c if isinstance(c, (int, float, str)) else None for c in row] for row in s.iter_rows(values_only=True)] for s in openpyxl.load_workbook(sys.argv[1], data_only=True)]))`
	for _, s := range []string{samples.All()[0].Text, samples.All()[1].Text} {
		plan := filepath.Join(t.TempDir(), "plan.xlsx")
		if r := runIn(t, "cuts", written(t, s), "-o", plan); r.code != done {
			t.Fatal(r.err)
		}
		out, err := exec.Command(python, "-c", reader, plan).Output()
		if err != nil {
			t.Fatalf("%v: Debian's python3-openpyxl reads the workbook", err)
		}
		var sheets [][][]any
		if err := json.Unmarshal(out, &sheets); err != nil {
			t.Fatal(err)
		}
		compareSums(t, s, sheets)
	}
}

// compareSums compares the sums of sheets with the plan's, and the totals.
func compareSums(t *testing.T, text string, sheets [][][]any) {
	t.Helper()
	want := bought(plansOf(t, text))
	sums, totals := map[string]float64{}, map[string]float64{}
	for _, rows := range sheets {
		columnSums(rows, sums)
		for name, n := range totalsOf(rows) {
			totals[name] = n
		}
	}
	if err := sameSums(want, sums); err != nil {
		t.Error(err)
	}
	if err := sameSums(want, totals); err != nil {
		t.Errorf("a total: %v", err)
	}
}

// calc is LibreOffice in a locale.
type calc struct{ program, profile string }

func newCalc(t *testing.T, locale string) *calc {
	program, err := exec.LookPath("soffice")
	if err != nil {
		t.Skip("LibreOffice is not installed: Calc does not judge")
	}
	c := &calc{program, filepath.Join(t.TempDir(), "profile")}
	if err := os.MkdirAll(filepath.Join(c.profile, "user"), 0o700); err != nil {
		t.Fatal(err)
	}
	write(t, filepath.Join(c.profile, "user", "registrymodifications.xcu"), []byte(xml.Header+
		`<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">`+
		`<item oor:path="/org.openoffice.Setup/L10N"><prop oor:name="ooSetupSystemLocale" oor:op="fuse"><value>`+locale+`</value></prop></item></oor:items>`))
	return c
}

// sheets are a file's sheets as Calc reads it.
func (c *calc) sheets(t *testing.T, file string, options ...string) [][][]any {
	t.Helper()
	arguments := append([]string{"-env:UserInstallation=file://" + c.profile, "--headless"}, options...)
	cmd := exec.Command(c.program, append(arguments, "--convert-to", "fods", "--outdir", filepath.Dir(file), file)...)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	var book struct {
		Tables []struct {
			Rows []struct {
				Repeated int `xml:"number-rows-repeated,attr"`
				Cells    []struct {
					Repeated int    `xml:"number-columns-repeated,attr"`
					Kind     string `xml:"value-type,attr"`
					Value    string `xml:"value,attr"`
					Text     string `xml:"p"`
				} `xml:"table-cell"`
			} `xml:"table-row"`
		} `xml:"body>spreadsheet>table"`
	}
	flat := strings.NewReplacer("<table:table-header-rows>", "", "</table:table-header-rows>", "")
	if err := xml.Unmarshal([]byte(flat.Replace(string(read(t, strings.TrimSuffix(file, filepath.Ext(file))+".fods")))), &book); err != nil {
		t.Fatal(err)
	}
	var sheets [][][]any
	for _, table := range book.Tables {
		var rows [][]any
		for _, r := range table.Rows {
			var row []any
			for _, cell := range r.Cells {
				var v any = cell.Text
				if cell.Kind == "float" {
					v, _ = strconv.ParseFloat(cell.Value, 64)
				}
				for range max(1, min(cell.Repeated, 100)) {
					row = append(row, v)
				}
			}
			if r.Repeated < 1000 {
				rows = append(rows, row)
			}
		}
		sheets = append(sheets, rows)
	}
	return sheets
}

func read0(t *testing.T, path string) []byte { return read(t, path) }

// TestCalcAddsUp: Calc in an English and in a German locale reckons the workbook's formulas to the plan's sums by itself, and reads the
// CSV of that locale as numbers that add up; the other locale's CSV it does not.
func TestCalcAddsUp(t *testing.T) {
	text := samples.All()[0].Text
	file, want := written(t, text), bought(plansOf(t, text))
	for locale, semicolon := range map[string]bool{"en-US": false, "de-DE": true} {
		c := newCalc(t, locale)
		folder := t.TempDir()
		workbook, table := filepath.Join(folder, "plan.xlsx"), filepath.Join(folder, "table.csv")
		if r := runIn(t, "cuts", file, "-o", workbook); r.code != done {
			t.Fatal(r.err)
		}
		if r := runIn(t, "cuts", file, "-o", table, "--locale", locale); r.code != done {
			t.Fatal(r.err)
		}
		unreckoned(t, workbook)
		sheets := c.sheets(t, workbook)
		compareSums(t, text, sheets)
		comma := "44"
		if semicolon {
			comma = "59"
		}
		filter := "--infilter=CSV:" + comma + ",34,76,1,,0,false,false"
		sums := map[string]float64{}
		columnSums(c.sheets(t, table, filter)[0], sums)
		if err := sameSums(want, sums); err != nil {
			t.Errorf("%s: %v", locale, err)
		}
		if !semicolon {
			continue
		}
		wrong := strings.ReplaceAll(string(read(t, table)), ",", ".")
		write(t, table, []byte(wrong))
		sums = map[string]float64{}
		if columnSums(c.sheets(t, table, filter)[0], sums); sameSums(want, sums) == nil {
			t.Errorf("%s: numbers with a decimal point pass", locale)
		}
	}
}

// unreckoned takes the values from a workbook's formulas, so that who opens it has to reckon.
func unreckoned(t *testing.T, path string) {
	t.Helper()
	made := read(t, path)
	z, err := zip.NewReader(bytes.NewReader(made), int64(len(made)))
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	again := zip.NewWriter(&b)
	for _, f := range z.File {
		part, err := z.Open(f.Name)
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(part)
		if err != nil {
			t.Fatal(err)
		}
		w, err := again.Create(f.Name)
		if err == nil {
			_, err = w.Write(regexp.MustCompile(`</f><v>[^<]*</v>`).ReplaceAll(text, []byte("</f>")))
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := again.Close(); err != nil {
		t.Fatal(err)
	}
	write(t, path, b.Bytes())
}
