package main

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/fit"
	"eighthturn/internal/plan/sizes"
	"eighthturn/internal/plan/summary"
	"eighthturn/internal/plan/supplies"
	"eighthturn/internal/quilt"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
	"eighthturn/layout"
	"eighthturn/samples"
)

// strays says where JSON leaves the one dialect: every plan has a format number first, a length is an object of a whole number of
// nanometers and its text, and no name says a unit of length.
func strays(text string) []string {
	var wrong []string
	if !strings.HasPrefix(text, "{\n  \"format\": ") {
		wrong = append(wrong, "no format number stands first")
	}
	var value any
	if err := json.Unmarshal([]byte(text), &value); err != nil {
		return append(wrong, err.Error())
	}
	var walk func(at string, v any)
	walk = func(at string, v any) {
		switch v := v.(type) {
		case map[string]any:
			_, nm := v["nm"]
			_, words := v["text"]
			if nm && (!words || len(v) != 2) {
				wrong = append(wrong, at+" is no length of the dialect")
			}
			for name, inner := range v {
				for _, unit := range []string{"_nm", "_mm", "_cm", "_in", "_inches"} {
					if strings.HasSuffix(name, unit) {
						wrong = append(wrong, at+"."+name+" has a unit in its name")
					}
				}
				walk(at+"."+name, inner)
			}
		case []any:
			for i, inner := range v {
				walk(fmt.Sprintf("%s[%d]", at, i), inner)
			}
		}
	}
	walk("", value)
	return wrong
}

// textOf is a plan's JSON.
func textOf(t *testing.T, p jsonPlan) string {
	t.Helper()
	var b strings.Builder
	if err := render.JSON(&b, p.plan, p.head); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// TestOneDialect: the JSON of every plan is of one dialect.
func TestOneDialect(t *testing.T) {
	check := func(name string, p jsonPlan) {
		text := textOf(t, p)
		if list := strays(text); len(list) > 0 {
			t.Errorf("%s: %d strays, the first: %s", name, len(list), list[0])
		}
	}
	for _, s := range samples.All() {
		d, lines, faults := layout.Read(s.Text)
		if d == nil {
			t.Fatalf("%s: %v", s.Name, faults)
		}
		p := &report.Plans{Top: quilt.Lay(d), Name: s.Name}
		for _, r := range report.Reports() {
			check(s.Name+" "+r.Name, planJSON(r.Plan(p), 1, s.Name, p.Top.Units))
		}
		check(s.Name+" listing", planJSON(report.ListingData(p, 1), formatListing, s.Name, p.Top.Units))
		check(s.Name+" check", checkedJSON(s.Name, lines, faults, summary.Build(d, p.Top)))
	}
	bed, _ := supplies.FindBed("queen")
	made, err := fit.Fit(samples.All()[0].Text, fit.Options{Wanted: fit.ForBed(bed)})
	if err != nil {
		t.Fatal(err)
	}
	check("fit", planJSON(made, formatFit, "", made.Units))
	for _, c := range charts() {
		for _, units := range []measure.System{measure.Inches, measure.Centimetres} {
			made, err := c.make(sizes.Options{Units: units})
			if err != nil {
				t.Fatal(err)
			}
			check(c.name, planJSON(made.data, formatChart, "", units))
		}
	}
}

func TestOneDialectCatches(t *testing.T) {
	for name, text := range map[string]string{
		"no format":           `{"units": "inches"}`,
		"a unit in a name":    "{\n  \"format\": 1,\n  \"seam_nm\": 5\n}",
		"a length in figures": "{\n  \"format\": 1,\n  \"seam\": {\"nm\": 5}\n}",
		"no JSON":             "{\n  \"format\": 1,\n",
	} {
		if len(strays(text)) == 0 {
			t.Errorf("%s goes unnoticed", name)
		}
	}
}
