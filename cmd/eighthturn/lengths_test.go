package main

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/leftovers"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/plan/summary"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/layout"
	"eighthturn/samples"
)

// The law of lengths: a length of one plan reads the same in every output. Every length in a text that lies on no mark of a
// ruler is written as measure.System writes one of the plan's lengths, and the lengths that somebody cuts by stand in every text
// that says how to cut.

// smallLayout has a strip of 5.073 in, and takes 15.146 in of one cloth.
const smallLayout = "side 7\nfabric cream #f4ead7\nfabric navy #1f3350\nfabric rust #b5532a\nblock W web wedges navy kites cream\ngrid\n W W\n W W\nborder 2 rust\nbinding 2 1/2 navy\n"

// made are the outputs of layouts, which the laws of lengths and of words read and nobody changes.
var made = map[string]map[string]string{}

// outputs are all texts of a layout, those of the page with "page" before their names, with plain fractions and one blank between
// words.
func outputs(t *testing.T, text string) map[string]string {
	t.Helper()
	if made[text] != nil {
		return made[text]
	}
	folder, file := harborIn(t, text)
	list := map[string]string{}
	made[text] = list
	alone := filepath.Join(folder, "alone.quilt") // whose pattern has one number where that of several sizes has several
	if err := os.WriteFile(alone, []byte(withoutSizes(text)), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, arguments := range [][]string{{"check"}, {"check", "--json"}, {"cuts"}, {"cuts", "--json"}, {"sew"}, {"sew", "--json"}} {
		of := file
		if arguments[0] == "cuts" && len(arguments) > 1 { // which holds the plans of all sizes, each as it is by itself
			of = alone
		}
		code, out, complaints := askedFor(t, append([]string{arguments[0], of}, arguments[1:]...)...)
		if code != done {
			t.Fatalf("%v: code %d, %s", arguments, code, complaints)
		}
		list[strings.Join(arguments, " ")] = plainText(out)
	}
	for made, arguments := range map[string][]string{"booklet": {"booklet"}, "handout": {"booklet", "--handout"}, "templates": {"templates"}} {
		if code, _, complaints := askedFor(t, append(arguments, alone, "-o", filepath.Join(folder, made)+"/")...); code != done {
			t.Fatalf("%s: code %d, %s", made, code, complaints)
		}
		files, err := os.ReadDir(filepath.Join(folder, made))
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range files {
			data, err := os.ReadFile(filepath.Join(folder, made, f.Name()))
			if err != nil {
				t.Fatal(err)
			}
			list[made] += " | " + plainText(string(data))
		}
	}
	for name, text := range served(t, file) {
		list["page "+name] = plainText(text)
	}
	return list
}

// withoutSizes is a layout without the lines of its sizes.
func withoutSizes(text string) string {
	tree, _ := layout.Parse(layout.NewSource(text))
	for _, n := range slices.Backward(tree.Sizes) {
		text = text[:n.Start] + text[n.End:]
	}
	return text
}

var (
	tags     = regexp.MustCompile(`<[^>]*>`)
	lines    = regexp.MustCompile(`\n\s*`)
	columns  = regexp.MustCompile(`[^\S\n]{2,}`)
	blanks   = regexp.MustCompile(`[\s\x{a0}]+`)
	stacked  = regexp.MustCompile(`[⁰¹²³⁴⁵⁶⁷⁸⁹]+⁄[₀-₉]+`)
	vulgar   = strings.NewReplacer("½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8")
	unraised = strings.NewReplacer("⁰", "0", "¹", "1", "²", "2", "³", "3", "⁴", "4", "⁵", "5", "⁶", "6", "⁷", "7", "⁸", "8", "⁹", "9", "⁄", "/",
		"₀", "0", "₁", "1", "₂", "2", "₃", "3", "₄", "4", "₅", "5", "₆", "6", "₇", "7", "₈", "8", "₉", "9")
)

// plainText is a text without tags and with plain fractions; texts of a picture stay apart.
func plainText(text string) string {
	text = strings.ReplaceAll(text, "</text>", " | ")
	text = stacked.ReplaceAllStringFunc(vulgar.Replace(text), func(f string) string { return " " + unraised.Replace(f) })
	text = strings.ReplaceAll(text, "bout  ", "bout ") // a fraction alone behind its word is no new column
	text = columns.ReplaceAllString(lines.ReplaceAllString(tags.ReplaceAllString(text, " "), "\n"), " | ")
	return blanks.ReplaceAllString(text, " ")
}

const writtenNumber = `[0-9]+ [0-9]+/[0-9]+|[0-9]+/[0-9]+|[0-9]+\.[0-9]+|[0-9]+`

var writtenLength = regexp.MustCompile(`(exactly |[Aa]bout |under |generous |scant )?(?:(` + writtenNumber + `) by )?(` + writtenNumber + `) (in|cm)\b`)

// misread are the lengths of a text that lie on no mark of a ruler and are no length of the plan as it is to be written. Where it
// says why, exact decimals need no word before them.
func misread(text string, lengths []measure.NM, s measure.System, why bool) []string {
	known := map[string]bool{"under " + measure.Number(s.Mark(), s): true, "under " + measure.Number(s.CutMark(), s): true}
	for _, nm := range lengths {
		known[s.Number(nm)], known[s.Number(-nm)], known["exactly "+s.ExactNumber(nm)] = true, true, true
		if said, ok := strings.CutPrefix(s.Offset(nm), "a "); ok { // "generous 3/16 in"
			known[strings.TrimSuffix(said, " in")] = true
		}
		known[s.ExactNumber(nm)] = known[s.ExactNumber(nm)] || why
	}
	var wrong []string
	for _, m := range writtenLength.FindAllStringSubmatch(text, -1) {
		word := strings.ToLower(m[1])
		for _, number := range m[2:4] {
			if number == "" {
				continue
			}
			read, err := measure.Read(number)
			if err != nil {
				wrong = append(wrong, m[0])
				continue
			}
			_, on := measure.On(read.In(s).NM(), s.Mark())
			switch {
			case known[word+number], on && word == "", m[2] != "" && word == "about " && known[number]:
			default:
				wrong = append(wrong, m[0])
			}
		}
	}
	slices.Sort(wrong)
	return slices.Compact(wrong)
}

// lengthsOf are all lengths that a plan holds.
func lengthsOf(v reflect.Value, found map[measure.NM]bool, seen map[uintptr]bool) {
	switch v.Kind() {
	case reflect.Int64:
		if v.Type() == reflect.TypeFor[measure.NM]() {
			found[max(measure.NM(v.Int()), -measure.NM(v.Int()))] = true
		}
	case reflect.Pointer:
		if !v.IsNil() && !seen[v.Pointer()] {
			seen[v.Pointer()] = true
			lengthsOf(v.Elem(), found, seen)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				lengthsOf(v.Field(i), found, seen)
			}
		}
	case reflect.Slice, reflect.Array:
		if k := v.Type().Elem().Kind(); k == reflect.Int || k == reflect.Int32 || k == reflect.Uint8 {
			return
		}
		for i := range v.Len() {
			lengthsOf(v.Index(i), found, seen)
		}
	}
}

// planned is a layout's plans: how it is cut, and all lengths that there are.
func planned(t *testing.T, text string) (*cutting.Plan, []measure.NM) {
	t.Helper()
	d, _, faults := layout.Read(text)
	if d == nil {
		t.Fatal(faults)
	}
	top := quilt.Lay(d)
	cuts := cutting.Build(nil, top, cutting.Options{})
	found, seen := map[measure.NM]bool{top.Outer.Width(): true, top.Outer.Height(): true}, map[uintptr]bool{}
	for _, plan := range []any{cuts, sewing.Build(nil, top, cuts, sewing.Options{}), summary.Build(d, top), contrast.Study(top, contrast.Options{}), &top.CutFacts, leftovers.Build(nil, top, cuts).Proposals} {
		lengthsOf(reflect.ValueOf(plan), found, seen)
	}
	middle := map[measure.System]measure.NM{measure.Inches: measure.Inch, measure.Centimetres: 3 * measure.Centimetre}[top.Units]
	found[middle+2*top.Seam], found[3*middle+2*top.Seam] = true, true // the three strips that test a seam are in no plan
	var list []measure.NM
	for nm := range found {
		list = append(list, nm)
	}
	return cuts, list
}

// unsaid are the lengths that somebody cuts or buys by and that a text does not have: what is needed is rounded up.
func unsaid(text string, cuts *cutting.Plan) []string {
	var wrong []string
	want := func(length, what string) {
		if !strings.Contains(text, length) {
			wrong = append(wrong, what+": "+length)
		}
	}
	for i := range cuts.Fabrics {
		f := &cuts.Fabrics[i]
		want(cuts.Units.AtLeast(f.Purchase.Need), f.Name+" is needed")
		for _, s := range f.Strips {
			want(cuts.Units.Number(s.WidthCut), "a strip of "+f.Name)
		}
	}
	return wrong
}

// unbought are the yardages of a plan that a text does not have, the backing's too.
func unbought(text string, cuts *cutting.Plan) []string {
	var wrong []string
	want := func(nm measure.NM, what string) {
		if length := cuts.Units.Shop(nm); nm > 0 && !strings.Contains(text, length) {
			wrong = append(wrong, what+" is bought: "+length)
		}
	}
	for i := range cuts.Fabrics {
		want(cuts.Fabrics[i].Purchase.Buy, cuts.Fabrics[i].Name)
	}
	want(cuts.BackingBuy.Buy, "the backing")
	return wrong
}

// TestYardageIsNoticed: another yardage than the plan's is seen in each output, the backing's too.
func TestYardageIsNoticed(t *testing.T) {
	cuts, _ := planned(t, smallLayout)
	for _, output := range []string{"cuts", "cuts --json", "booklet", "page Cutting"} {
		said := outputs(t, smallLayout)[output]
		if wrong := unbought(said, cuts); len(wrong) > 0 {
			t.Errorf("%s: %v", output, wrong)
		}
		for name, length := range map[string]measure.NM{"navy": cuts.Fabrics[1].Purchase.Buy, "the backing": cuts.BackingBuy.Buy} {
			if len(unbought(strings.ReplaceAll(said, cuts.Units.Shop(length), "9 yd"), cuts)) == 0 {
				t.Errorf("%s: %s bought otherwise passes", output, name)
			}
		}
	}
}

// TestLengthsReadTheSame: on samples and invented layouts in both units.
func TestLengthsReadTheSame(t *testing.T) {
	layouts := map[string]string{"small": smallLayout}
	for _, s := range judges.Some(samples.All(), 3) {
		layouts[s.Name] = s.Text
	}
	for seed := range uint64(judges.Of(2, 12)) {
		layouts[fmt.Sprint("invented ", seed)] = invent.Layout(seed)
	}
	checked := map[measure.System]int{}
	for name, text := range layouts {
		cuts, lengths := planned(t, text)
		if len(cuts.Faults) > 0 {
			continue
		}
		for output, said := range outputs(t, text) {
			for _, w := range cuts.Warnings { // what is said of the layout has lengths that no plan has
				said = strings.ReplaceAll(said, plainText(w.Message), "")
			}
			for _, wrong := range misread(said, lengths, cuts.Units, strings.HasSuffix(output, ", why")) {
				t.Errorf("%s, %s: %q is no length as it is written", name, output, wrong)
			}
			if output == "cuts" || output == "booklet" || output == "page Cutting" {
				for _, wrong := range unsaid(said, cuts) {
					t.Errorf("%s, %s: %s", name, output, wrong)
				}
			}
			if output == "cuts" || output == "cuts --json" || output == "booklet" || output == "page Cutting" {
				for _, wrong := range unbought(said, cuts) {
					t.Errorf("%s, %s: %s", name, output, wrong)
				}
			}
			checked[cuts.Units]++
		}
	}
	if checked[measure.Inches] == 0 || checked[measure.Centimetres] == 0 {
		t.Errorf("outputs by units: %v", checked)
	}
}

// TestLengthsNotices: one length in the four ways in which it was once written, and cloth that is rounded down.
func TestLengthsNotices(t *testing.T) {
	cuts, lengths := planned(t, smallLayout)
	right := "strips of about 5 1/16 in, exactly 5.073 in; 24 3/4 in of cloth, 11 in, 9 1/2 in, 4 1/2 in, 5 in, 2 1/2 in"
	if wrong := append(misread(right, lengths, cuts.Units, false), unsaid(right, cuts)...); len(wrong) > 0 {
		t.Errorf("what is right is refused: %q", wrong)
	}
	for _, broken := range []string{"5.073 in", "about 5.07 in", "about 5 5/64 in", "about 5 1/8 in", "exactly 5.07 in", "about 2 by 5.073 in", "a scant 5 1/16 in"} {
		if len(misread(broken, lengths, cuts.Units, false)) == 0 {
			t.Errorf("%q passes", broken)
		}
	}
	for name, read := range map[string]func(length string) string{
		"a cell of a tab": func(length string) string {
			return tabTexts(t, []byte(`{"report": {"name": "Cutting", "sections": [{"rows": [{"cells": ["rust", "`+length+`"]}]}]}}`))["Cutting"]
		},
		"a line beneath a row": func(length string) string {
			return tabTexts(t, []byte(`{"report": {"name": "Cutting", "sections": [{"rows": [{"cells": ["rust"], "under": ["strips of `+length+`"]}]}]}}`))["Cutting"]
		},
		"the patch that is pointed at": func(length string) string {
			return hoverText(t, []byte(`{"templates": [{"patches": [{"cut": "`+length+` by 5 in"}]}]}`))
		},
	} {
		if len(misread(plainText(read("about 5 1/16 in")), lengths, cuts.Units, false)) > 0 || len(misread(plainText(read("5.073 in")), lengths, cuts.Units, false)) != 1 {
			t.Errorf("a length in %s is not read", name)
		}
	}
	if len(unsaid(strings.Replace(right, "24 3/4", "24 5/8", 1), cuts)) == 0 {
		t.Error("cloth that is rounded down passes")
	}
}

// TestOneLengthOneText: the strip of 5.073 in, and the cloth that is needed, as all that write them do.
func TestOneLengthOneText(t *testing.T) {
	said := outputs(t, smallLayout)
	for _, output := range []string{"check", "check --json", "cuts", "cuts --json", "booklet", "page Cutting"} {
		if !strings.Contains(said[output], "about 5 1/16") {
			t.Errorf("%s does not say about 5 1/16", output)
		}
	}
	for _, output := range []string{"cuts", "booklet", "page Cutting"} {
		if !strings.Contains(said[output], "24 3/4 in") || strings.Contains(said[output], "24 5/8 in") {
			t.Errorf("%s does not say that 24 3/4 in of navy are needed", output)
		}
	}
}
