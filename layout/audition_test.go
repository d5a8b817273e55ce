package layout_test

import (
	"errors"
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
	}
	for _, c := range []struct{ layout, role, of, alternatives, message, hint string }{
		{"", "wedges", "W", "rust", "2 to 9 alternatives, found 1", "name 2 to 9"},
		{"", "wedges", "W", "a|b|c|d|e|f|g|h|i|j", "found 10", "name 2 to 9"},
		{"", "wedges", "W", "rust|", "alternative 2 is empty", "for example cream"},
		{"", "wedges", "W", "rust|rust", "are the same", "leave out"},
		{"", "wedgs", "W", "rust|navy", `nothing in this layout is called "wedgs"`, `did you mean "wedges"?`},
		{"", "corners", "W", "rust|navy", "block W has no corners", "its roles are: wedges, kites"},
		{"", "corners", "", "rust|navy", "no block of this layout says what its corners are cut from", "corners of W"},
		{"", "wedges", "X", "rust|navy", `no block is called "X"`, "blocks are: W, V, F"},
		{"", "wedges", "W", "rust|nayv", `no fabric and no color is called "nayv"`, `did you mean "navy"?`},
		{"", "border", "", "rust|navy", "this layout has 2 borders", "border of 1"},
		{"", "border", "3", "rust|navy", "this layout has 2 borders", "border of 1"},
		{"", "border", "1", "rust|glow", `no fabric and no color is called "glow"`, "#3a4f66"},
		{"", "border", "1", "rust|navy cream", "more than one fabric", "one fabric"},
		{"", "deal", "", "1|10", `"10" is no deal`, "deal 1 2 3"},
		{"", "deal", "lights", "1|2", "no pool to deal", "deal of darks"},
		{"", "webs", "", "navy|rust", "no webs statement", "webs cream"},
		{"plain", "border", "", "a|b", "has no border", "border 2 a"},
		{"plain", "binding", "", "a|b", "has no binding", "binding 2 1/2 a"},
		{"plain", "sash", "", "a|b", "has no sashes", "sash 1 a"},
		{"plain", "deal", "", "1|2", "has no pool", "scraps"},
		{"plain", "wedges", "W", "a|b", "the webs statement says", "audition webs"},
	} {
		reading := read[c.layout]
		_, err := reading.Auditions(layout.AuditionOf{Role: c.role, Of: c.of}, strings.Split(c.alternatives, "|"))
		var u *layout.Unfit
		if !errors.As(err, &u) || !strings.Contains(u.Message, c.message) || !strings.Contains(u.Hint, c.hint) {
			t.Errorf("%s of %s, %s: %v", c.role, c.of, c.alternatives, u)
		}
	}
}
