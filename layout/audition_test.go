package layout_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"eighthturn/layout"
)

const auditioned = `strip 4
fabric cream #f4ead7
fabric navy #1f3350
fabric rust #b5532a  # the accent
strip-set glow navy 2 rust rest
scraps darks navy rust deal 2
block W web wedges navy kites cream
block V web wedges rust  kites cream
block F floating wedges navy background cream
grid
 W W V F
 W W V F
sash 1 navy
border 2 rust
border 3 navy
binding 2 1/2 rust
`

// TestAuditionsAreWhatTheyWrite: every trial reads without errors, and its lines are all that sets it apart from the layout.
func TestAuditionsAreWhatTheyWrite(t *testing.T) {
	reading := layout.Inspect(auditioned, nil)
	for _, c := range []struct {
		role, of, alternatives string
		lines                  string // of the first
	}{
		{"wedges", "w", "rust|glow|reversed glow|darks", "block W web wedges rust kites cream"},
		{"wedges", "", "rust|cream", "block W web wedges rust kites cream|block V web wedges rust  kites cream|block F floating wedges rust background cream"},
		{"kites", "V", "#123456|white", "fabric tone-123456 #123456|block V web wedges rust  kites tone-123456"},
		{"background", "F", "rust|navy", "block F floating wedges navy background rust"},
		{"ground", "F", "navy|rust", "block F floating wedges navy background navy"},
		{"border", "2", "cream|#abcdef", "border 3 cream"},
		{"sashes", "", "cream|rust", "sash 1 cream"},
		{"binding", "", "cream|#abcdef", "binding 2 1/2 cream"},
		{"posts", "", "cream|rust", "sash 1 navy posts cream"},
		{"deal", "darks", "1|9", "scraps darks navy rust deal 1"},
		{"deal", "", "3|4", "scraps darks navy rust deal 3"},
		{"rust", "", "navy|#112233|honey", "fabric rust #1f3350  # the accent"},
	} {
		trials, err := reading.Auditions(layout.AuditionOf{Role: c.role, Of: c.of}, strings.Split(c.alternatives, "|"))
		if err != nil {
			if c.role == "rust" { // of a palette that has no such fabric
				var u *layout.Unfit
				if errors.As(err, &u) && strings.Contains(u.Message, `"honey"`) {
					continue
				}
			}
			t.Errorf("%s: %v", c.role, err)
			continue
		}
		if got := strings.Join(trials[0].Lines, "|"); got != c.lines {
			t.Errorf("%s of %s: %q, not %q", c.role, c.of, got, c.lines)
		}
		before := map[string]bool{}
		for line := range strings.Lines(auditioned) {
			before[strings.TrimSpace(line)] = true
		}
		for _, trial := range trials {
			if _, _, faults := layout.Read(trial.Text); len(faults) > 0 {
				if n, _ := layout.Count(faults); n > 0 {
					t.Errorf("%s of %s, %s: %v", c.role, c.of, trial.Name, faults)
				}
			}
			said := map[string]bool{}
			for _, line := range trial.Lines {
				said[strings.TrimSpace(line)] = true
			}
			for line := range strings.Lines(trial.Text) {
				if line = strings.TrimSpace(line); !before[line] && !said[line] {
					t.Errorf("%s of %s, %s: %q is new and not told", c.role, c.of, trial.Name, line)
				}
			}
		}
	}
}

// TestAuditionsThatCannotBe say why, and what to write.
func TestAuditionsThatCannotBe(t *testing.T) {
	read := map[string]layout.Reading{
		"": layout.Inspect(auditioned, nil), "plain": layout.Inspect("strip 4\nfabric a #102030\nfabric b #f0e0d0\nblock W web kites b\nwebs a\ngrid\n W W\n W W\n", nil),
		"both": layout.Inspect(paletted, nil),
		"none": layout.Inspect("side 6\nfabric a #102030\nfabric b #f0e0d0\nblock P plain piece a\nblock Q plain piece b\ngrid\n P Q\n", nil),
	}
	const words = "; or name a fabric, or one of border, binding, sash, posts, webs, deal"
	for _, c := range []struct{ layout, role, of, alternatives, message, hint string }{
		{"", "wedges", "W", "rust", "an audition is of 2 to 9 alternatives, found 1", "name 2 to 9, each in quotes where it has a blank"},
		{"", "wedges", "W", "a|b|c|d|e|f|g|h|i|j", "an audition is of 2 to 9 alternatives, found 10", "name 2 to 9, each in quotes where it has a blank"},
		{"", "wedges", "W", "rust|", "alternative 2 is empty", "write what is tried, for example cream"},
		{"", "wedges", "W", "rust|navy|cream|rust", "alternatives 1 and 4 are the same: \"rust\"", "leave out one of them"},
		{"", "wedges", "W", "navy|rust|rust", "alternatives 2 and 3 are the same: \"rust\"", "leave out one of them"},
		{"", "wedgs", "W", "rust|navy", `nothing in this layout is called "wedgs": expected a role or a fabric`, `did you mean "wedges"?`},
		{"", "rsut", "", "cream|navy", `nothing in this layout is called "rsut": expected a role or a fabric`, `did you mean "rust"?`},
		{"", "rust", "W", "cream|navy", `nothing in this layout is called "rust": expected a role or a fabric`, `did you mean "rust"?`},
		{"", "bordr", "", "cream|navy", `nothing in this layout is called "bordr": expected a role or a fabric`, `did you mean "border"?`},
		{"", "zzzzzz", "", "rust|navy", `nothing in this layout is called "zzzzzz": expected a role or a fabric`, "roles of this layout are: wedges, kites, edge, background" + words},
		{"", "corners", "W", "rust|navy", "block W has no corners", "its roles are: wedges, kites, edge"},
		{"", "corners", "", "rust|navy", "no block of this layout says what its corners are cut from", "roles of this layout are: wedges, kites, edge, background; name the block too: corners of W"},
		{"none", "background", "", "b|a", "no block of this layout says what its background is cut from", "roles of this layout are: piece, edge; name the block too: background of P"},
		{"", "wedges", "X", "rust|navy", `no block is called "X"`, "blocks are: W, V, F"},
		{"", "wedges", "W", "rust|nayv", `no fabric and no color is called "nayv"`, `did you mean "navy"?`},
		{"", "wedges", "W", "rust|golw", `no fabric and no color is called "golw"`, `did you mean "glow"?`},
		{"", "wedges", "W", "rust|draks", `no fabric and no color is called "draks"`, `did you mean "darks"?`},
		{"", "wedges", "W", "rust|zzzzzz", `no fabric and no color is called "zzzzzz"`, "name a fabric of the layout or of a palette, or a color like #3a4f66"},
		{"", "border", "", "rust|navy", "this layout has 2 borders", "name one by its number from the inside, for example border of 1"},
		{"", "border", "3", "rust|navy", "this layout has 2 borders", "name one by its number from the inside, for example border of 1"},
		{"", "border", "0", "rust|navy", "this layout has 2 borders", "name one by its number from the inside, for example border of 1"},
		{"", "border", "one", "rust|navy", "this layout has 2 borders", "name one by its number from the inside, for example border of 1"},
		{"both", "border", "2", "rust|navy", "this layout has 1 border", "name one by its number from the inside, for example border of 1"},
		{"", "border", "1", "rust|glow", `no fabric and no color is called "glow"`, "name a fabric of the layout or of a palette, or a color like #3a4f66"},
		{"", "border", "1", "rust|navy cream", `"navy cream" is more than one fabric`, "name one fabric or color"},
		{"", "binding", "", "rust|navy cream", `"navy cream" is more than one fabric`, "name one fabric or color"},
		{"", "sash", "", "rust|reversed glow", `"reversed glow" is more than one fabric`, "name one fabric or color"},
		{"", "posts", "", "rust|darks", `no fabric and no color is called "darks"`, "name a fabric of the layout or of a palette, or a color like #3a4f66"},
		{"", "deal", "", "1|10", `"10" is no deal: expected a number from 1 to 9`, "for example deal 1 2 3"},
		{"", "deal", "", "1|0", `"0" is no deal: expected a number from 1 to 9`, "for example deal 1 2 3"},
		{"", "deal", "", "1|two", `"two" is no deal: expected a number from 1 to 9`, "for example deal 1 2 3"},
		{"", "deal", "lights", "1|2", "this layout has no pool to deal by that name: its pools are darks", "name one of its pools: deal of darks"},
		{"both", "deal", "", "1|2", "this layout has no pool to deal by that name: its pools are darks, lights", "name one of its pools: deal of darks"},
		{"", "webs", "", "navy|rust", "this layout has no webs statement with fabrics", "write one in the layout, for example webs cream"},
		{"plain", "border", "", "a|b", "this layout has no border", "write one in the layout, for example border 2 a"},
		{"plain", "binding", "", "a|b", "this layout has no binding", "write one in the layout, for example binding 2 1/2 a"},
		{"plain", "sash", "", "a|b", "this layout has no sashes", "write them in the layout, for example sash 1 a"},
		{"plain", "posts", "", "a|b", "this layout has no sashes", "write them in the layout, for example sash 1 a"},
		{"plain", "deal", "", "1|2", "this layout has no pool of scraps", "a pool is written scraps, its name, and its fabrics"},
		{"plain", "wedges", "W", "a|b", "the webs statement says what the wedges are cut from, in every block", "audition webs in its place"},
		{"plain", "wedges", "", "a|b", "the webs statement says what the wedges are cut from, in every block", "audition webs in its place"},
	} {
		reading := read[c.layout]
		_, err := reading.Auditions(layout.AuditionOf{Role: c.role, Of: c.of}, strings.Split(c.alternatives, "|"))
		var u *layout.Unfit
		if !errors.As(err, &u) {
			t.Errorf("%s of %s, %s: it can be", c.role, c.of, c.alternatives)
			continue
		}
		if u.Message != c.message || u.Hint != c.hint {
			t.Errorf("%s of %s, %s:\n%s\n%s", c.role, c.of, c.alternatives, u.Message, u.Hint)
		}
	}
	reading := read[""]
	if _, err := reading.Trial(layout.AuditionOf{Role: "wedges"}, " \t"); err == nil || err.Error() != "the alternative is empty" {
		t.Errorf("nothing is tried: %v", err)
	}
	if _, err := reading.Trial(layout.AuditionOf{Role: "wegdes"}, "rust"); err == nil {
		t.Error("what is not there is tried")
	}
}

// paletted is a layout in which all that an audition may be of is written once, with a palette on its first line.
var paletted = "\ufeff" + strings.ReplaceAll(`palette tidewater
strip 4
fabric cream #f4ead7
fabric navy #1f3350
fabric rust #b5532a
strip-set glow navy 2 rust rest
scraps darks navy rust
scraps lights cream dune deal 3
block F floating background lights edge cream
block W web kites darks
webs glow / navy
grid
  W F
  F W
sash 1 cream posts rust
border 2 navy
colorway dusk navy #223344 cream rust rust cream
`, "\n", "\r\n")

// TestPlacesAreTold: all places of a layout in their order, each with a fabric that is there, whether one fabric alone may stand there, and
// the number of a deal; in a colorway the fabrics go by the names that they have in it.
func TestPlacesAreTold(t *testing.T) {
	r := layout.Inspect(paletted, nil)
	tell := func(colorway string) string {
		var list []string
		for _, p := range r.AuditionPlaces(colorway) {
			if p.Colorway != colorway {
				t.Errorf("%v is not in the colorway %q", p, colorway)
			}
			list = append(list, strings.TrimSpace(fmt.Sprint(p.Role, " ", p.Of))+" "+fmt.Sprint(p.Fabric, p.Plain, p.Recolors, p.Deal))
		}
		return strings.Join(list, "\n")
	}
	const places = `background F 0 false false 0
edge F 0 false false 0
kites W 1 false false 0
webs 1 false false 0
sash 0 true false 0
posts 2 true false 0
border 1 1 true false 0
deal darks 1 false false 1
deal lights 0 false false 3
`
	const ofPalette = "\nundertow 3 true true 0\nslate 4 true true 0\nkelp 5 true true 0\nshoal 6 true true 0\nrope 7 true true 0\nlagoon 8 true true 0\ndune 9 true true 0\nfoam 10 true true 0"
	if got, want := tell(""), places+"cream 0 true true 0\nnavy 1 true true 0\nrust 2 true true 0"+ofPalette; got != want {
		t.Errorf("the places are\n%s", got)
	}
	if got, want := tell("dusk"), places+"rust 0 true true 0\nnavy 1 true true 0\ncream 2 true true 0"+ofPalette; got != want {
		t.Errorf("the places in the colorway are\n%s", got)
	}
	for i, f := range r.Design.Fabrics {
		if r.OfPalette(i) != (i > 2) {
			t.Errorf("%s is of the palette: %v", f.Name, r.OfPalette(i))
		}
	}
	unsaid := layout.Inspect(strings.ReplaceAll(paletted, " posts rust", ""), nil)
	for _, p := range unsaid.AuditionPlaces("") {
		if (p.Role == "sash" || p.Role == "posts") && p.Fabric != 0 {
			t.Errorf("the %s, of which nothing is said, are of fabric %d", p.Role, p.Fabric)
		}
	}
	first := layout.Inspect(strings.ReplaceAll(paletted, "cream posts rust", "rust posts cream"), nil)
	for _, p := range first.AuditionPlaces("") {
		if p.Role == "posts" && p.Fabric != 0 {
			t.Errorf("the posts are of fabric %d", p.Fabric)
		}
	}
}

// TestTrialsAreWrittenLineByLine: each line that a trial changes, and nothing else, whatever it is of.
func TestTrialsAreWrittenLineByLine(t *testing.T) {
	r := layout.Inspect(paletted, nil)
	for _, c := range []struct {
		of            layout.AuditionOf
		tried         string
		before, after string // lines of the layout, and what they become
		recolors      string
		stays         bool // the last line is none of the trial's
	}{
		{layout.AuditionOf{Role: "background", Of: "F"}, "reversed  glow", "block F floating background lights edge cream", "block F floating background reversed glow edge cream", "", false},
		{layout.AuditionOf{Role: "web"}, "rust / #abc", "webs glow / navy", "fabric tone-aabbcc #aabbcc\nwebs rust / tone-aabbcc", "", false},
		{layout.AuditionOf{Role: "sashing"}, "navy", "sash 1 cream posts rust", "sash 1 navy posts rust", "", false},
		{layout.AuditionOf{Role: "Posts"}, "NAVY", "sash 1 cream posts rust", "sash 1 cream posts NAVY", "", false},
		{layout.AuditionOf{Role: "borders"}, "dune", "border 2 navy", "border 2 dune", "", false},
		{layout.AuditionOf{Role: "border", Of: "1"}, "white", "border 2 navy", "fabric white #ffffff\nborder 2 white", "", false},
		{layout.AuditionOf{Role: "deals", Of: "Lights"}, "9", "scraps lights cream dune deal 3", "scraps lights cream dune deal 9", "", false},
		{layout.AuditionOf{Role: "deal", Of: "darks"}, "1", "scraps darks navy rust", "scraps darks navy rust  deal 1", "", false},
		{layout.AuditionOf{Role: "navy"}, "dune", "fabric navy #1f3350", "fabric navy #ded1b1", "navy=#ded1b1", false},
		{layout.AuditionOf{Role: "navy"}, "rust", "fabric navy #1f3350", "fabric navy #b5532a", "navy=#b5532a", false},
		{layout.AuditionOf{Role: "navy", Colorway: "Dusk"}, "rust", "navy #223344", "navy #b5532a", "navy=#b5532a", false},
		{layout.AuditionOf{Role: "dune", Colorway: "dusk"}, "#010203", "rust rust cream", "rust rust cream dune #010203", "dune=#010203", false},
		{layout.AuditionOf{Role: "Dune"}, "#010203", "palette tidewater", "fabric dune #010203\npalette tidewater", "", true},
	} {
		trial, err := r.Trial(c.of, c.tried)
		if err != nil {
			t.Errorf("%v: %v", c.of, err)
			continue
		}
		if want := strings.Replace(paletted, c.before, strings.ReplaceAll(c.after, "\n", "\r\n"), 1); trial.Text != want || want == paletted {
			t.Errorf("%v: the layout is\n%s", c.of, trial.Text)
		}
		lines := strings.Split(c.after, "\n")
		if c.stays {
			lines = lines[:len(lines)-1]
		}
		if c.of.Colorway != "" {
			lines = []string{strings.Replace("colorway dusk navy #223344 cream rust rust cream", c.before, c.after, 1)}
		}
		if !slices.Equal(trial.Lines, lines) || trial.Try != c.recolors || trial.Bound || trial.Name != strings.Join(strings.Fields(c.tried), " ") {
			t.Errorf("%v: %+v", c.of, trial)
		}
	}
}

// TestLinesOfTrialsOfEverySort: whatever ends the lines of a layout, what is tried writes the same lines.
func TestLinesOfTrialsOfEverySort(t *testing.T) {
	for _, end := range []string{"\n", "\r\n", "\r", "\u2028", "\u2029", "\u0085"} {
		reading := layout.Inspect(strings.ReplaceAll(auditioned, "\n", end), nil)
		trials, err := reading.Auditions(layout.AuditionOf{Role: "kites", Of: "V"}, []string{"#123456", "white"})
		if err != nil {
			t.Fatalf("%q: %v", end, err)
		}
		if got := strings.Join(trials[0].Lines, "|"); got != "fabric tone-123456 #123456|block V web wedges rust  kites tone-123456" {
			t.Errorf("lines that end with %q: %q", end, got)
		}
	}
}

// TestTextLines: the lines of a text, whatever ends them, as its source finds them.
func TestTextLines(t *testing.T) {
	for text, want := range map[string]string{"": "", "a": "a", "a\n": "a", "a\nb": "a|b", "\n\na\r\n\r": "||a|", "a\u2028b\u2029c\u0085d\re": "a|b|c|d|e", "\n": "", "\n\n": "|"} {
		if got := strings.Join(layout.TextLines(text), "|"); got != want {
			t.Errorf("%q: %q", text, got)
		}
	}
}
