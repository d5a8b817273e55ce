package layout_test

import (
	"fmt"
	"maps"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/invent"
	"eighthturn/layout"
	"eighthturn/palettes"
	"eighthturn/samples"
)

// nowAt is what a layout has at each place, told apart by what it is of.
func nowAt(r *layout.Reading) map[layout.AuditionOf]string {
	list := map[layout.AuditionOf]string{}
	for _, p := range r.AuditionPlaces("") {
		list[p.AuditionOf] = fmt.Sprint(r.Design.Fabrics[p.Fabric].Name, " ", p.Deal, " ", p.Plain)
		if p.Recolors {
			list[p.AuditionOf] = r.Design.Fabrics[p.Fabric].Colour.Hex()
		}
	}
	return list
}

// lawTrial says that a trial's layout has, at the place it is of, what was tried, and everywhere else what it had.
func lawTrial(r *layout.Reading, p layout.AuditionPlace, trial layout.Trial, tried string) error {
	after := layout.Inspect(trial.Text, nil)
	if after.Design == nil {
		return fmt.Errorf("it has errors: %v", after.Faults)
	}
	want, got := nowAt(r), nowAt(&after)
	switch {
	case p.Recolors:
		want[p.AuditionOf] = tried
	case p.Deal > 0:
		want[p.AuditionOf] = fmt.Sprint(strings.Fields(want[p.AuditionOf])[0], " ", tried, " ", false)
	default:
		want[p.AuditionOf] = fmt.Sprint(tried, " ", 0, " ", p.Plain)
	}
	if posts := (layout.AuditionOf{Role: "posts"}); p.Role == "sash" && r.Design.Sash.Corners < 0 {
		want[posts] = want[p.AuditionOf] // which are of the sashes' fabric where nothing is said
	}
	for of := range want { // the webs give several roles, and a block that is like another takes what that has
		like := of.Role == p.Role && p.Of != "" && got[of] == want[p.AuditionOf] && strings.Contains(r.Source.Text, "like")
		if of != p.AuditionOf && (p.Role == "webs" || like) {
			delete(want, of)
			delete(got, of)
		}
	}
	if !maps.Equal(want, got) {
		for of := range want {
			if want[of] != got[of] {
				return fmt.Errorf("%s of %q has %q, expected %q", of.Role, of.Of, got[of], want[of])
			}
		}
		return fmt.Errorf("it has places that are new: %v", got)
	}
	if trial.Name != tried && !p.Recolors || trial.Bound != (p.Role == "binding") {
		return fmt.Errorf("the trial is called %q, bound %v", trial.Name, trial.Bound)
	}
	return nil
}

// TestTrialsAreAsTheyWereAsked tries every place of layouts with another fabric, deal or color.
func TestTrialsAreAsTheyWereAsked(t *testing.T) {
	texts := []string{auditioned, "units cm\r\nside 12\r\nfabric a #102030\r\nfabric b #f0e0d0\r\nscraps p a b\r\nblock R ring wedges a b corners p\r\ngrid\r\n R R\r\nsash 1 a posts b\r\nborder 2 b"}
	for _, s := range samples.All()[:3] {
		texts = append(texts, s.Text)
	}
	for seed := range uint64(6) {
		texts = append(texts, invent.Layout(seed))
	}
	for _, text := range texts {
		r := layout.Inspect(text, nil)
		for _, p := range r.AuditionPlaces("") {
			last := len(r.Design.Fabrics) - 1
			tried := r.Design.Fabrics[last-(p.Fabric+1)%2*min(1, last)].Name
			if p.Deal > 0 {
				tried = "7"
			}
			want := tried
			if p.Recolors {
				tried, want = "#0a0b0c", "#0a0b0c"
			}
			trial, err := r.Trial(p.AuditionOf, tried)
			if err == nil {
				err = lawTrial(&r, p, trial, want)
			}
			if err != nil {
				t.Errorf("%s of %q, %s: %v\n%s", p.Role, p.Of, tried, err, text)
			}
		}
	}
	r := layout.Inspect(auditioned, nil)
	p := layout.AuditionPlace{AuditionOf: layout.AuditionOf{Role: "border", Of: "2"}, Fabric: 1, Plain: true}
	trial, err := r.Trial(p.AuditionOf, "cream")
	if err != nil || lawTrial(&r, p, trial, "rust") == nil {
		t.Errorf("%v: another fabric than was tried is not noticed", err)
	}
	trial.Text = strings.Replace(trial.Text, "border 2 rust", "border 2 navy", 1)
	if lawTrial(&r, p, trial, "cream") == nil {
		t.Error("another border that is changed as well is not noticed")
	}
}

// TestTriedColorsAreDefinedOnce: a color of an alternative, or a palette's fabric, becomes a fabric before the place that uses it, once,
// and is none where the layout has it.
func TestTriedColorsAreDefinedOnce(t *testing.T) {
	tidewater, _ := palettes.Find("tidewater")
	dune := tidewater.Fabrics[6]
	r := layout.Inspect(auditioned, nil)
	for alternative, want := range map[string][]string{
		"#123456 #123456 cream":       {"fabric tone-123456 #123456"},
		"#ABC / reversed glow":        {"fabric tone-aabbcc #aabbcc"},
		"DUNE navy":                   {"fabric DUNE " + dune.Colour.Hex()},
		"#123456  teal":               {"fabric tone-123456 #123456", "fabric teal #008080"},
		"rust CREAM / reversed glow ": nil,
	} {
		trial, err := r.Trial(layout.AuditionOf{Role: "wedges", Of: "W"}, alternative)
		if err != nil {
			t.Errorf("%s: %v", alternative, err)
			continue
		}
		if trial.Name != strings.Join(strings.Fields(alternative), " ") {
			t.Errorf("%q is called %q", alternative, trial.Name)
		}
		n := len(trial.Lines) - 1
		if strings.Join(trial.Lines[:n], "|") != strings.Join(want, "|") || !strings.HasPrefix(trial.Lines[n], "block W web wedges ") || trial.Try != "" {
			t.Errorf("%s: %q, expected %q before the block", alternative, trial.Lines, want)
		}
		before, _, _ := strings.Cut(trial.Text, trial.Lines[n])
		for _, line := range want {
			if strings.Count(before, line) != 1 {
				t.Errorf("%s: %q does not stand before the block once", alternative, line)
			}
		}
	}
}

// TestRecoloredTrialsAreTold: where an alternative is a fabric in another color, and nothing else, the page may show it by that alone.
func TestRecoloredTrialsAreTold(t *testing.T) {
	for _, c := range []struct{ text, fabric, want string }{
		{auditioned, "rust", "rust=#010203"},
		{"palette tidewater\n" + strings.Replace(auditioned, "scraps darks navy rust deal 2\n", "", 1), "Dune", "dune=#010203"},
		{"palette tidewater\n" + auditioned, "dune", ""}, // a line for it comes before the palette, and scraps are dealt anew
	} {
		r := layout.Inspect(c.text, nil)
		trial, err := r.Trial(layout.AuditionOf{Role: c.fabric}, "#010203")
		if err != nil || trial.Try != c.want {
			t.Errorf("%s: %q, expected %q (%v)", c.fabric, trial.Try, c.want, err)
		}
	}
}
