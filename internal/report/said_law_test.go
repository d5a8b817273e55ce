package report

import (
	"fmt"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/fit"
	"eighthturn/internal/plan/summary"
	"eighthturn/internal/plan/supplies"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/layout"
	"eighthturn/samples"
)

// unsaid are the facts of a plan that a text does not have: its names, its counts beyond 1, and its lengths as people read them. What is not
// for people, or is told by other words, is passed over by the names of its fields.
func unsaid(plan any, units measure.System, text string, over ...string) (list []string) {
	words := " " + strings.Join(strings.Fields(strings.ReplaceAll(text, "\u00a0", " ")), " ") + " "
	miss := func(at, fact string) {
		either := regexp.QuoteMeta(fact) + "|" + regexp.QuoteMeta(measure.Plural(fact))
		if !regexp.MustCompile(`(^|[^0-9A-Za-z/.])(` + either + `)($|[^0-9A-Za-z/])`).MatchString(words) {
			list = append(list, at+": "+fact)
		}
	}
	var walk func(at string, v reflect.Value)
	walk = func(at string, v reflect.Value) {
		switch v.Kind() {
		case reflect.Pointer:
			if !v.IsNil() {
				walk(at, v.Elem())
			}
		case reflect.Slice:
			for i := range v.Len() {
				walk(at, v.Index(i))
			}
		case reflect.Struct:
			for i := range v.NumField() {
				if f := v.Type().Field(i); f.IsExported() && !slices.Contains(over, f.Name) {
					walk(at+"."+f.Name, v.Field(i))
				}
			}
		case reflect.String:
			if s := strings.Join(strings.Fields(v.String()), " "); s != "" {
				miss(at, s)
			}
		case reflect.Int64:
			if nm, is := v.Interface().(measure.NM); is && nm > 0 {
				number := strings.TrimPrefix(units.Nearest(nm), "about ")
				miss(at, number[:strings.LastIndex(number, " ")])
			}
		case reflect.Int:
			if n := v.Int(); n > 1 {
				miss(at, strconv.FormatInt(n, 10))
			}
		}
	}
	walk("", reflect.ValueOf(plan))
	return list
}

// wrongCheck is what a check says otherwise than the summary: facts that are left out, counts that do not add up, swatches of another color.
func wrongCheck(s *summary.Summary, d document.Document) (wrong []string) {
	wrong = unsaid(s, s.Units, allText(d), "Units", "Webs", "Stars", "Hints", "Sizes", "Colorways", "OnHand", "Nearest", "Lightness", "Share", "Used", "Colour", "Title", "Open", "FromSets", "System")
	for _, section := range d.Sections {
		for _, b := range section.Blocks {
			t, is := b.(document.Table)
			switch {
			case is && section.ID == "blocks":
				sum := 0
				for _, r := range t.Rows {
					n, _ := strconv.Atoi(plainCell(r.Cells[2]))
					sum += n
				}
				if sum != s.Across*s.Down {
					wrong = append(wrong, fmt.Sprintf("blocks add up to %d of %d", sum, s.Across*s.Down))
				}
			case is && section.ID == "fabrics":
				if len(t.Rows) != len(s.Fabrics) {
					wrong = append(wrong, fmt.Sprintf("%d fabrics of %d", len(t.Rows), len(s.Fabrics)))
				}
				share := 0.0
				for i, r := range t.Rows {
					if len(r.Cells[0].Swatches) != 1 || r.Cells[0].Swatches[0].Colour != s.Fabrics[i].Colour {
						wrong = append(wrong, "the color of "+s.Fabrics[i].Name)
					}
					if part, ok := strings.CutSuffix(plainCell(r.Cells[2]), "%"); ok {
						n, _ := strconv.ParseFloat(strings.TrimPrefix(part, "under "), 64)
						share += n
					}
				}
				if share < 100-float64(len(s.Fabrics)) || share > 100+float64(len(s.Fabrics)) {
					wrong = append(wrong, fmt.Sprintf("fabrics make %.0f%% of the top", share))
				}
			}
		}
	}
	wrong = append(wrong, wrongCounts(s, d)...)
	for _, c := range []struct {
		what string
		*summary.Centres
	}{{"webs", &s.Webs}, {"stars", &s.Stars}} {
		if c.Inside() > 0 && !strings.Contains(allText(d), c.what+"\n"+fmt.Sprintf("%d complete", c.Closed)) {
			wrong = append(wrong, "how many "+c.what+" are complete")
		}
	}
	return wrong
}

// wrongCounts is which part of a check has more or fewer rows than the summary has things.
func wrongCounts(s *summary.Summary, d document.Document) (wrong []string) {
	want := map[string]int{"strips": len(s.Strips), "blocks": len(s.Blocks) + min(s.EmptyPlaces, 1), "borders": len(s.Borders), "fabrics": len(s.Fabrics), UseFirstID: len(s.OnHand), ColorwaysID: len(s.Colorways), "hints": len(s.Hints)}
	for _, set := range s.StripSets {
		for _, use := range set.Uses {
			want["strip-sets"] += len(use.Bands)
		}
	}
	if s.Sash != nil {
		want["sashes"] = 1
	}
	if s.Binding != nil {
		want["binding"]++
	}
	if s.Backing != "" {
		want["binding"]++
	}
	got := map[string]int{}
	for _, section := range d.Sections {
		for _, b := range section.Blocks {
			switch v := b.(type) {
			case document.Table:
				got[section.ID] += len(v.Rows)
			case document.List:
				got[section.ID] += len(v.Items)
			}
		}
	}
	for id, n := range want {
		if got[id] != n {
			wrong = append(wrong, fmt.Sprintf("%s: %d rows, %d are there", id, got[id], n))
		}
	}
	return wrong
}

// TestCheckSaysTheSummary: whatever is known of a quilt is said, with its numbers.
func TestCheckSaysTheSummary(t *testing.T) {
	list := []string{}
	for _, s := range samples.All() {
		list = append(list, s.Text)
	}
	for seed := range uint64(judges.Of(20, 100)) {
		list = append(list, invent.Layout(seed))
	}
	for i, text := range list {
		design, _, _ := layout.Read(text)
		if design == nil {
			continue
		}
		s := summary.Build(design, quilt.Lay(design))
		d := Check("title", s)
		for _, wrong := range wrongCheck(s, d) {
			t.Errorf("layout %d: %s", i, wrong)
		}
		if about := strings.Contains(allText(d), "about "); about != slices.ContainsFunc(d.Sections, func(s document.Section) bool { return s.ID == "about" }) {
			t.Errorf("layout %d: it is explained what about means, or is not, against the text", i)
		}
		for n := range d.Sections[:len(d.Sections)*max(0, 1-i/3)] { // of the first ones
			short := d
			short.Sections = slices.Delete(slices.Clone(d.Sections), n, n+1)
			if id := d.Sections[n].ID; id != "about" && id != SizesID && id != "ruler-marks" && len(wrongCheck(s, short)) == 0 {
				t.Errorf("layout %d: that nothing is said of %s is not noticed", i, id)
			}
		}
	}
}

// wrongFit is what a list of sizes says otherwise than the plan.
func wrongFit(r *fit.Report, d document.Document) (wrong []string) {
	cells := func(s *fit.Suggestion) (list []string) {
		f := &fitted{r}
		if r.ByStrip {
			list = append(list, f.mark(s.StripCut))
		}
		return append(list, f.mark(s.SideFinished), fmt.Sprintf("%d x %d", s.Columns, s.Rows))
	}
	text := allText(d)
	starred, warned := false, false
	for _, section := range d.Sections {
		for _, b := range section.Blocks {
			table, is := b.(document.Table)
			if !is {
				continue
			}
			if section.ID == "nearest" && len(table.Rows) != r.LaidOut {
				wrong = append(wrong, fmt.Sprintf("%d suggestions of %d", len(table.Rows), r.LaidOut))
			}
			for i, row := range table.Rows {
				if len(row.Cells) != len(table.Columns) {
					wrong = append(wrong, fmt.Sprintf("row %d has %d cells in %d columns", i, len(row.Cells), len(table.Columns)))
				}
				top := plainCell(row.Cells[len(row.Cells)-4])
				starred, warned = starred || strings.Contains(top, "*"), warned || strings.Contains(top, "!")
				if section.ID != "nearest" {
					continue
				}
				s := &r.Suggestions[i]
				for n, want := range cells(s) {
					if got := plainCell(row.Cells[n+1]); got != want || plainCell(row.Cells[0]) != strconv.Itoa(i+1) {
						wrong = append(wrong, fmt.Sprintf("row %d says %q for %q", i+1, got, want))
					}
				}
				if strings.Contains(top, "*") != s.Within || strings.Contains(top, "!") != (s.MoreWarnings > 0) {
					wrong = append(wrong, fmt.Sprintf("row %d is marked %q", i+1, top))
				}
				if sign := plainCell(row.Cells[len(row.Cells)-3]); (s.Over.Width < -measure.Inch/8) != strings.HasPrefix(sign, "-") || (s.Over.Width > measure.Inch/8) != strings.HasPrefix(sign, "+") && s.Over.Width > measure.Inch/8 {
					wrong = append(wrong, fmt.Sprintf("row %d is off by %q", i+1, sign))
				}
			}
		}
	}
	if starred != strings.Contains(text, "\n* within") || warned != strings.Contains(text, "\n! more warnings") {
		wrong = append(wrong, "a sign is not explained, or one that is not there is")
	}
	return append(wrong, unsaid(r.Now, r.Units, text, "StripCut", "Warnings", "Changes", "SizeLine", "Text", "Over", "Borders", "MoreWarnings")...)
}

// TestFitSaysThePlan: the nearest sizes stand in their order with their numbers, the signs beside them are explained, and what to write is said
// as the plan has it.
func TestFitSaysThePlan(t *testing.T) {
	tables, bySize := 0, 0
	for _, s := range judges.Some(samples.All(), 2) {
		bed, _ := supplies.FindBed("queen")
		for _, wanted := range []fit.Wanted{{Finished: supplies.Size{Width: 60 * measure.Inch, Height: 80 * measure.Inch}}, fit.ForBed(bed)} {
			r, err := fit.Fit(s.Text, fit.Options{Wanted: wanted})
			if err != nil {
				t.Fatal(err)
			}
			tables++
			d := Fit("quilt", r, 2)
			for _, wrong := range wrongFit(r, d) {
				t.Errorf("%s: %s", s.Name, wrong)
			}
			if slices.ContainsFunc(d.Sections, func(s document.Section) bool { return s.ID == "by-size" }) {
				bySize++
			}
			if len(r.Suggestions) > 0 {
				r.Suggestions[0].Columns++
				if len(wrongFit(r, d)) == 0 {
					t.Errorf("%s: another count of blocks is not noticed", s.Name)
				}
			}
		}
	}
	if tables == 0 || bySize == 0 {
		t.Errorf("%d lists, %d by size", tables, bySize)
	}
}
