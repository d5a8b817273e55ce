package main

import (
	"regexp"
	"strings"
	"testing"

	"github.com/spf13/pflag"

	"eighthturn/internal/measure"
)

// hinted are the values that a hint says to write behind an option.
var hinted = regexp.MustCompile(`--[a-z-]+ ("[^"]*"|\S+)`)

// wrongHint says which value of a hint its option does not take, in one system of measures or the other.
func wrongHint(v pflag.Value, hint string) string {
	list := hinted.FindAllStringSubmatch(hint, -1)
	if len(list) == 0 {
		return "nothing to type"
	}
	for _, h := range list {
		text := strings.Trim(strings.TrimSuffix(h[1], ","), `"`)
		if err := v.Set(text); err != nil {
			return text
		}
		limited, ok := v.(interface{ withinMost(measure.System) error })
		for _, s := range []measure.System{measure.Inches, measure.Centimetres} {
			if ok && limited.withinMost(s) != nil {
				return text + " in " + s.String()
			}
		}
	}
	return ""
}

// TestHintsAreTaken: what an option says to type where something else stood is something that it takes, and what it says
// to be the most is taken too.
func TestHintsAreTaken(t *testing.T) {
	seen := 0
	for _, cmd := range rootCommand(testConsole(), nil).Commands() {
		cmd.Flags().VisitAll(func(f *pflag.Flag) {
			switch f.Value.(type) {
			case *measureOption, *rangeOption, *numberOption, *copiesOption:
			default:
				return
			}
			seen++
			for _, text := range []string{"", "nonsense", "0", "9999999 yd", "9999999"} {
				p, ok := f.Value.Set(text).(*problem)
				if !ok || !strings.Contains(p.message, quoted(text)) || !strings.Contains(p.message, "expected") {
					t.Errorf("%s --%s %q: %v", cmd.Name(), f.Name, text, p)
					continue
				}
				if wrong := wrongHint(f.Value, p.hint); wrong != "" {
					t.Errorf("%s --%s: %q says to type what it does not take: %s", cmd.Name(), f.Name, p.hint, wrong)
				}
			}
		})
	}
	if seen < 20 {
		t.Errorf("only %d options", seen)
	}
	step := &measureOption{option: "trim-step", most: 2 * measure.Inch}
	if wrongHint(step, step.hint()) == "" {
		t.Error("a hint of 3 1/2 inches passes where 2 is the most")
	}
}

// TestMostOfLengths: the most is taken and more is not, whatever a bare number counts.
func TestMostOfLengths(t *testing.T) {
	for text, want := range map[string][2]bool{ // in inches, in centimetres
		"2": {true, true}, "2 in": {true, true}, "5.08 cm": {true, true}, "2.01": {false, true}, "5.08": {false, true}, "5.09": {false, false}, "2 1/64 in": {false, false}, "6 cm": {false, false},
	} {
		for i, s := range []measure.System{measure.Inches, measure.Centimetres} {
			m := &measureOption{option: "trim-step", most: 2 * measure.Inch, example: "1/2 in"}
			if got := m.Set(text) == nil && m.withinMost(s) == nil; got != want[i] {
				t.Errorf("%q in %s: %v", text, s, got)
			}
		}
	}
	m := &measureOption{option: "trim-step", most: 2 * measure.Inch, example: "1/2 in"}
	if err := m.Set("9999999 yd"); err == nil || !strings.Contains(err.Error(), "above 0 and up to 2 in (5.08 cm)") {
		t.Errorf("%v", err)
	}
	if err := (&measureOption{option: "margin"}).Set("9999999 yd"); err == nil || !strings.Contains(err.Error(), "up to 1000 yards") {
		t.Errorf("%v", err)
	}
}

// TestChartHints: where no chart can be made, the hint is one with which it can, beside what else was asked for.
func TestChartHints(t *testing.T) {
	for _, args := range []string{
		"--from 1/2", "--from 5 --to 3", "--step 0.001", "--seam 2", "--usable-width 500", "--from 200", "--from 100", "--units cm --from 1", "--units cm --step 0.001",
		"sides --from 1/4", "sides --seam 2", "tumblers --from 4", "tumblers --strip 60 --to 119 --step 0.01", "tumblers --strip 200", "tumblers --units cm --strip 1", "tumblers --strip 10 --from 9",
	} {
		wrong := runIn(t, append([]string{"chart"}, strings.Fields(args)...)...)
		_, hint, ok := strings.Cut(wrong.err, "for example ")
		if wrong.code != misusing || !ok {
			t.Errorf("chart %s: code %d, %s", args, wrong.code, wrong.err)
			continue
		}
		if right := runIn(t, append([]string{"chart"}, amended(args, hint)...)...); right.code != done {
			t.Errorf("chart %s: %q does not help: %s", args, hint, right.err)
		}
	}
}

// amended is arguments without the options that a hint names, and the hint's instead.
func amended(args, hint string) []string {
	var list []string
	words := strings.Fields(args)
	for i := 0; i < len(words); i++ {
		if strings.HasPrefix(words[i], "--") && strings.Contains(hint+" ", words[i]+" ") {
			i++ // its value too
			continue
		}
		list = append(list, words[i])
	}
	for _, word := range regexp.MustCompile(`"[^"]*"|\S+`).FindAllString(hint, -1) {
		list = append(list, strings.Trim(word, `"`))
	}
	return list
}
