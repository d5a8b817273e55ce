package main

import (
	"encoding/csv"
	"encoding/json"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/plan/fit"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/layout"
	"eighthturn/samples"
)

// titles are lines that name the quilt: a size and a colorway have their name behind it.
var titles = regexp.MustCompile(`(?im)^[ \t\x{a0}]*title\b[^\r\n]*`)

// variantOutputs is what commands make of a layout with some options: each file's bytes, and what is printed.
func variantOutputs(t *testing.T, text string, options ...string) map[string]string {
	t.Helper()
	folder, file := harborIn(t, text)
	list := map[string]string{}
	for _, arguments := range [][]string{
		{"draw", "-o", folder + "/a.svg"}, {"draw", "-o", folder + "/a.png", "--longest", "300px"}, {"draw", "--view", "value", "-o", folder + "/b.svg"},
		{"cuts", "--json"}, {"cuts", "--csv"}, {"sew", "--json"}, {"values", "--json"}, {"booklet", "-o", folder + "/pattern/"}, {"quilting", "-o", folder + "/lines.svg"},
	} {
		code, out, _ := askedFor(t, append(append([]string{arguments[0], file}, arguments[1:]...), options...)...)
		if code != done {
			return nil // such as pieces that no fabric is wide enough for
		}
		list[strings.Join(arguments, " ")] = strings.ReplaceAll(out, folder, "")
	}
	for _, name := range []string{"a.svg", "a.png", "b.svg", "lines.svg", "pattern/pattern.md", "pattern/pattern-1.svg", "pattern/pattern-5.svg"} {
		data, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil && !strings.Contains(name, "pattern-") {
			t.Fatal(err)
		}
		list[name] = string(data)
	}
	said := map[string]string{}
	for name, text := range list {
		said[strings.ReplaceAll(name, folder, "")] = text
	}
	return said
}

// unlike are the outputs of two that differ.
func unlike(a, b map[string]string) (list []string) {
	for name := range a {
		if a[name] != b[name] {
			list = append(list, name)
		}
	}
	slices.Sort(list)
	return list
}

// variantTexts are layouts without titles that are small enough to be written in every form.
func variantTexts(count int) (list []string) {
	for _, s := range judges.Some(samples.All(), 5) {
		list = append(list, titles.ReplaceAllString(s.Text, ""))
	}
	for seed := uint64(1); len(list) < count; seed++ {
		text := strings.ReplaceAll(strings.ReplaceAll(invent.Layout(seed), "\r\n", "\n"), "\r", "\n")
		if text = titles.ReplaceAllString(text, ""); len(text) < 1500 {
			list = append(list, text)
		}
	}
	return list
}

// TestSizeIsWhatIsWrittenOut: whatever is made of a size is, to the byte, what is made of the layout written out in it.
func TestSizeIsWhatIsWrittenOut(t *testing.T) {
	tried := 0
	for i, text := range variantTexts(judges.Of(2, 12)) {
		text = invent.WithSize(uint64(i), withoutColorways(text), "other")
		if text == "" {
			continue
		}
		written := fit.WrittenOut(text, "other", nil)
		if d, _, _ := layout.Read(text); d == nil || d.Columns*d.Rows > 200 || d.InSize("other").Columns*d.InSize("other").Rows > 200 {
			continue
		}
		size, alone := variantOutputs(t, text, "--size", "other"), variantOutputs(t, written)
		if size == nil || alone == nil {
			continue
		}
		tried++
		for _, name := range unlike(size, alone) {
			t.Errorf("layout %d: %s differs\n%s\n%s", i, name, text, written)
		}
		if tried == 1 {
			if len(unlike(size, variantOutputs(t, written+"\nusable-width 39 in\nspare 3 in\n"))) == 0 {
				t.Error("another spare length is not noticed")
			}
		}
	}
	if tried < judges.Of(1, 4) {
		t.Errorf("only %d layouts were tried", tried)
	}
}

// withoutColorways is a layout without colorways, whose fabrics are others when it is written out.
func withoutColorways(text string) string {
	return regexp.MustCompile(`(?im)^[ \t\x{a0}]*colou?rway\b[^\r\n]*`).ReplaceAllString(text, "")
}

// withoutOnHand is a layout without pieces on hand, which keep their own color in a colorway.
func withoutOnHand(text string) string {
	return regexp.MustCompile(`(?im)^on-hand\b[^\r\n]*`).ReplaceAllString(text, "")
}

// plainFabric is a fabric's line with a color that can be exchanged.
var plainFabric = regexp.MustCompile(`(?m)^(fabric +)(\w+)( +)(#[0-9a-f]{6})\b`)

// TestColorwayIsWhatIsWrittenOut: whatever is made in a colorway is, to the byte, what is made of the layout with its colors in the
// fabrics' lines.
func TestColorwayIsWhatIsWrittenOut(t *testing.T) {
	tried := 0
	for i, s := range judges.Some(samples.All(), 7) {
		text := withoutOnHand(withoutColorways(titles.ReplaceAllString(s.Text, "")))
		found := plainFabric.FindAllStringSubmatchIndex(text, -1)
		if len(found) < 2 || len(text) > 6000 {
			continue
		}
		tree, _ := layout.Parse(layout.NewSource(text))
		if len(tree.Sizes) > 0 {
			text = withoutSizes(text)
			found = plainFabric.FindAllStringSubmatchIndex(text, -1)
		}
		written, line := text, "colorway dusk"
		for n, color := range []string{"#7a4a2b", "#c8d8b0"} {
			m := found[n]
			line += " " + text[m[4]:m[5]] + " " + color
			written = written[:m[8]] + color + written[m[9]:]
		}
		way, alone := variantOutputs(t, text+"\n"+line+"\n", "--colorway", "dusk"), variantOutputs(t, written+"\n\n")
		if way == nil || alone == nil {
			t.Errorf("sample %d cannot be made", i)
			continue
		}
		tried++
		for _, name := range unlike(way, alone) {
			t.Errorf("%s: %s differs", s.Name, name)
		}
		if len(unlike(way, variantOutputs(t, text))) < 5 {
			t.Errorf("%s: the fabrics as written are not noticed", s.Name)
		}
	}
	if tried == 0 {
		t.Error("no layout was tried")
	}
}

// cutsBreaks are the sizes whose rows, or whose plan as JSON, are not what that size by itself gives.
func cutsBreaks(t *testing.T, table, plans string, file string) (list []string) {
	rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(table, "\ufeff"))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var all struct {
		Sizes []struct {
			Name string
			Plan map[string]any
		}
	}
	if err := json.Unmarshal([]byte(plans), &all); err != nil {
		t.Fatal(err)
	}
	for _, s := range all.Sizes {
		var own [][]string
		for _, r := range rows[1:] {
			if r[0] == s.Name {
				own = append(own, r[1:])
			}
		}
		_, out, _ := askedFor(t, "cuts", file, "--csv", "--size", s.Name)
		alone, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(out, "\ufeff"))).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		if !slices.EqualFunc(own, alone[1:], slices.Equal) || !slices.Equal(rows[0][1:], alone[0]) {
			list = append(list, s.Name+" as CSV")
		}
		_, out, _ = askedFor(t, "cuts", file, "--json", "--size", s.Name)
		var plan map[string]any
		if err := json.Unmarshal([]byte(out), &plan); err != nil {
			t.Fatal(err)
		}
		for _, head := range []string{"format", "file", "units", "both_ways"} { // what stands beside the plan
			delete(plan, head)
		}
		if !reflect.DeepEqual(plan, s.Plan) {
			list = append(list, s.Name+" as JSON")
		}
	}
	return list
}

// TestCutsOfSizes: rows with a size's name, and the plan under it, are those of the size by itself; so sums of its columns are the
// plan's.
func TestCutsOfSizes(t *testing.T) {
	text := sampleCalled("beacon")
	_, file := harborIn(t, text)
	_, table, _ := askedFor(t, "cuts", file, "--csv")
	_, plans, _ := askedFor(t, "cuts", file, "--json")
	for _, wrong := range cutsBreaks(t, table, plans, file) {
		t.Error(wrong)
	}
	if found := cutsBreaks(t, strings.Replace(table, ",192,192,", ",192,168,", 1), strings.Replace(plans, `"copies": 1`, `"copies": 2`, 2), file); len(found) != 2 {
		t.Errorf("of two wrong numbers these are noticed: %q", found)
	}
	if list := strays(plans); len(list) > 0 {
		t.Errorf("JSON of sizes has %q", list)
	}
}
