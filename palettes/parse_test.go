package palettes

import (
	"strings"
	"testing"
)

func TestParse(t *testing.T) {
	for _, row := range []struct{ text, want string }{
		{"#1f3350", "#1f3350"}, {"#1F3350", "#1f3350"}, {"#abc", "#aabbcc"}, {"#FfF", "#ffffff"},
		{"navy", "#000080"}, {"DarkSlateGrey", "#2f4f4f"}, {"darkslategray", "#2f4f4f"}, {"rebeccapurple", "#663399"},
	} {
		if c, err := Parse(row.text); err != nil || c.Hex() != row.want {
			t.Errorf("%q is %s (%v), expected %s", row.text, c.Hex(), err, row.want)
		}
	}
}

func TestParseRefuses(t *testing.T) {
	for _, row := range []struct{ text, want string }{
		{"", `"" is not a color; expected #rgb, #rrggbb or a CSS color name, as in #1f3350 or navy`},
		{"#", "only the digits 0 to 9 and a to f"},
		{"#12", `"#12" has 2 digits after #, expected 3 or 6`},
		{"#12345", "has 5 digits"},
		{"#1234567890", "has 10 digits"},
		{"#fffg", "only the digits"},
		{"#1f3350 ", "only the digits"},
		{" #fff", "is not a color"},
		{"#fff8", "a fabric is not see-through"},
		{"#1f3350ff", "a fabric is not see-through"},
		{"Transparent", "a fabric is not see-through"},
		{"currentColor", "takes its color from a web page"},
		{"1f3350", "has no # before it, expected #1f3350"},
		{"fab", "has no # before it, expected #fab"},
		{"fabb", "is not a color"},
		{"fabrics", "is not a color"},
		{"nayv", "is not a color"},
		{"blac\u212a", "is not a color"}, // the Kelvin sign is no k
		{strings.Repeat("é", 1000), `" ... is not a color`},
		{"#" + strings.Repeat("f", 1000), "has 1000 digits"},
	} {
		_, err := Parse(row.text)
		if err == nil || !strings.Contains(err.Error(), row.want) || len(err.Error()) > 250 {
			t.Errorf("%.20q gives %v, expected %s", row.text, err, row.want)
		}
	}
}

func TestNamesAreFound(t *testing.T) {
	for _, name := range Names() {
		if _, err := Parse(name); err != nil {
			t.Error(err)
		}
	}
}
