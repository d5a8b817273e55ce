package render

import (
	"encoding/json"
	"strings"
	"testing"

	"eighthturn/internal/measure"
)

type inner struct {
	Wide measure.NM `json:"wide_cut"`
}

type hand uint8

func (h hand) String() string { return []string{"left", "right"}[h] }

func jsonText(plan any, head JSONHead) (string, error) {
	var b strings.Builder
	err := JSON(&b, plan, head)
	return b.String(), err
}

// TestJSON: tagged fields are written in their order, lengths in the one dialect, empty lists as [], and nothing steers a
// terminal.
func TestJSON(t *testing.T) {
	plan := &struct {
		inner
		Inner  inner        `json:"inner"`
		List   []inner      `json:"list"`
		None   []int        `json:"none"`
		Maybe  *inner       `json:"maybe"`
		Least  measure.NM   `json:"least,omitempty"`
		Pair   [2]int       `json:"pair"`
		Hand   hand         `json:"hand"`
		Name   string       `json:"name"`
		Secret string       `json:"-"`
		Bare   func() error // without a tag: not written
	}{Inner: inner{measure.Inch / 2}, List: []inner{{measure.Inch}}, Hand: 1, Name: "a\x1b[2J\u202e", Secret: "x"}
	text, err := jsonText(plan, JSONHead{2, "f", measure.Inches})
	if err != nil {
		t.Fatal(err)
	}
	want := `{"format":2,"file":"f","units":"inches","wide_cut":{"nm":0,"text":"0 in"},"inner":{"wide_cut":{"nm":12700000,"text":"1/2 in"}},"list":[{"wide_cut":{"nm":25400000,"text":"1 in"}}],"none":[],"maybe":null,"pair":[0,0],"hand":"right","name":"a\u001b[2J\u202e"}`
	if got := strings.Join(strings.Fields(strings.ReplaceAll(text, "1/2 in", "1/2_in")), ""); got != strings.ReplaceAll(strings.ReplaceAll(strings.ReplaceAll(want, "1/2 in", "1/2_in"), " in", "in"), " ", "") {
		t.Errorf("%s", got)
	}
	if strings.ContainsAny(text, "\x1b\u202e") || !json.Valid([]byte(text)) {
		t.Errorf("%q", text)
	}
	if _, err := jsonText(struct {
		F func() `json:"f"`
	}{}, JSONHead{}); err == nil {
		t.Error("a function is written")
	}
}

// TestJSONRules: the text of a length goes up, down or to a shop's step where its tag says so, its nanometres never.
func TestJSONRules(t *testing.T) {
	text, err := jsonText(struct {
		Up   [1]measure.NM `json:"up" length:"atleast"`
		Down measure.NM    `json:"down" length:"atmost"`
		Buy  measure.NM    `json:"buy" length:"shop"`
	}{[1]measure.NM{measure.Inch / 3}, measure.Inch / 3, measure.Yard / 2}, JSONHead{})
	for _, want := range []string{`"text": "3/8 in"`, `"text": "1/4 in"`, `"text": "1/2 yd"`} {
		if err != nil || !strings.Contains(text, want) || strings.Count(text, `"nm": 8466`) != 2 {
			t.Errorf("%v: no %s in %s", err, want, text)
		}
	}
}

// What harmless writes is the same JSON, without a character that shows nothing or turns the reading round.
func TestHarmless(t *testing.T) {
	for _, text := range []string{"plain", "½ é 赤い", "\u202eevil\u2066", "\u009b2J\u0085", "\u200b\ufeff\u00ad", "\U0001fffe\U0001f9f5", "\x7f\x1b\t"} {
		b, err := json.Marshal(text)
		if err != nil {
			t.Fatal(err)
		}
		out := Harmless(string(b))
		var back string
		if err := json.Unmarshal([]byte(out), &back); err != nil || back != text {
			t.Errorf("%q: read back as %q, %v", text, back, err)
		}
		if again := Harmless(out); again != out {
			t.Errorf("%q: something is left in %q", text, out)
		}
	}
	if Harmless("\"\u202e\"") == "\"\u202e\"" {
		t.Error("a mark of direction went through")
	}
}
