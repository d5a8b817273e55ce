package palettes

import (
	"fmt"
	"strings"

	"github.com/lucasb-eyer/go-colorful"
)

// maxColourText is the longest text, in bytes, that a message about a colour quotes whole.
const maxColourText = 40

// Parse reads "#rgb", "#rrggbb" or one of the 148 names of CSS Color 4, in capitals or small letters
// (https://www.w3.org/TR/css-color-4/#named-colors). Alpha, "transparent" and "currentcolor" are refused.
func Parse(text string) (Colour, error) {
	if strings.HasPrefix(text, "#") {
		return parseHex(text)
	}
	if len(text) > maxColourText {
		return Colour{}, notAColour(text)
	}
	word := smallLetters(text)
	if c, ok := namedColour(word); ok {
		return c, nil
	}
	switch {
	case word == "transparent":
		return Colour{}, seeThrough(text)
	case word == "currentcolor":
		return Colour{}, fmt.Errorf("%q takes its color from a web page; %s", text, wanted)
	case isHexDigits(text) && (len(text) == 3 || len(text) == 6):
		return Colour{}, fmt.Errorf("%q has no # before it, expected #%s", text, text)
	}
	return Colour{}, notAColour(text)
}

const wanted = "expected #rgb, #rrggbb or a CSS color name, as in #1f3350 or navy"

func parseHex(text string) (Colour, error) {
	digits := text[1:]
	switch {
	case !isHexDigits(digits):
		return Colour{}, fmt.Errorf("%s is not a color: after # come only the digits 0 to 9 and a to f, 3 or 6 of them, as in #1f3350", quoted(text))
	case len(digits) == 4 || len(digits) == 8:
		return Colour{}, seeThrough(text)
	case len(digits) != 3 && len(digits) != 6:
		return Colour{}, fmt.Errorf("%s has %d digits after #, expected 3 or 6, as in #1f3350", quoted(text), len(digits))
	}
	c, _ := colorful.Hex(text) // which are digits, 3 or 6 of them
	r, g, b := c.RGB255()
	return Colour{r, g, b}, nil
}

func notAColour(text string) error {
	return fmt.Errorf("%s is not a color; %s", quoted(text), wanted)
}

func seeThrough(text string) error {
	return fmt.Errorf("%q gives a see-through color, but a fabric is not see-through; expected #rgb or #rrggbb", text)
}

// smallLetters writes A to Z small, and leaves other scripts alone.
func smallLetters(text string) string {
	return strings.Map(func(r rune) rune {
		if r >= 'A' && r <= 'Z' {
			return r + 'a' - 'A'
		}
		return r
	}, text)
}

func isHexDigits(text string) bool {
	return text != "" && strings.Trim(text, "0123456789abcdefABCDEF") == ""
}

// quoted quotes the text, cut short where it is long.
func quoted(text string) string {
	if len(text) <= maxColourText {
		return fmt.Sprintf("%q", text)
	}
	return fmt.Sprintf("%q ...", strings.ToValidUTF8(text[:maxColourText], ""))
}
