package palettes

import (
	"fmt"
	"strconv"
	"strings"
)

// cssColour reads a value of a style sheet; ok is false where it is no colour at all.
func cssColour(value string) (c Colour, ok bool, err error) {
	lower := smallLetters(value)
	name, inside, isCall := strings.Cut(lower, "(")
	switch {
	case strings.HasPrefix(lower, "#"), lower == "transparent", lower == "currentcolor":
		c, err = Parse(value)
	case isCall && (name == "rgb" || name == "rgba"):
		c, err = parseRGB(value, inside)
	case isCall && isColourFunction(name):
		err = fmt.Errorf("%s is not read, expected #rgb, #rrggbb, a CSS color name or rgb()", quoted(value))
	case isCall:
		return Colour{}, false, nil
	default:
		c, ok = namedColour(lower)
		return c, ok, nil
	}
	return c, err == nil, err
}

func isColourFunction(name string) bool {
	switch name {
	case "hsl", "hsla", "hwb", "lab", "lch", "oklab", "oklch", "color", "color-mix", "light-dark":
		return true
	}
	return false
}

// parseRGB reads what stands inside rgb(, up to and with the closing bracket: three channels with commas or blanks
// between them, and an alpha of 1 at most.
func parseRGB(value, inside string) (Colour, error) {
	list, closed := strings.CutSuffix(inside, ")")
	parts := splitChannels(list)
	if !closed || len(parts) < 3 || len(parts) > 4 {
		return Colour{}, fmt.Errorf("%s, expected three channels as in rgb(31 51 80)", quoted(value))
	}
	if len(parts) == 4 {
		if err := wantOpaque(value, parts[3]); err != nil {
			return Colour{}, err
		}
	}
	var channels [3]uint8
	for i := range channels {
		v, ok := channel(parts[i])
		if !ok {
			return Colour{}, fmt.Errorf("%s in %s, expected a number from 0 to 255 or 0%% to 100%%", quoted(parts[i]), quoted(value))
		}
		channels[i] = v
	}
	return Colour{channels[0], channels[1], channels[2]}, nil
}

// splitChannels splits at commas, or where there is none at blanks and the stroke before alpha.
func splitChannels(list string) []string {
	if !strings.Contains(list, ",") {
		return strings.Fields(strings.Replace(list, "/", " ", 1))
	}
	parts := strings.Split(list, ",")
	for i := range parts {
		parts[i] = strings.TrimSpace(parts[i])
	}
	return parts
}

func wantOpaque(value, alpha string) error {
	number, percent := strings.CutSuffix(alpha, "%")
	v, ok := plainNumber(number)
	switch {
	case !ok:
		return fmt.Errorf("alpha %s in %s, expected 1 or none", quoted(alpha), quoted(value))
	case percent && v < 100, !percent && v < 1:
		return fmt.Errorf("%s gives a see-through color, but a fabric is not see-through; expected alpha 1 or none", quoted(value))
	}
	return nil
}

// channel reads a number of 0 to 255 or a percentage, rounded to the nearest step.
func channel(text string) (uint8, bool) {
	number, percent := strings.CutSuffix(text, "%")
	v, ok := plainNumber(number)
	if percent {
		v = v * 255 / 100
	}
	if !ok || v < 0 || v > 255 {
		return 0, false
	}
	return uint8(v + 0.5), true
}

// plainNumber reads digits with an optional sign, point and fraction.
func plainNumber(text string) (float64, bool) {
	if strings.Trim(text, "0123456789.+-") != "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(text, 64)
	return v, err == nil
}
