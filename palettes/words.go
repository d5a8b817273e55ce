package palettes

import (
	"fmt"
	"strings"
	"unicode"
)

// inWords returns the palette with names that a layout can use: its own and each fabric's a single word of small letters,
// digits, - and _ that begins with a letter, and no fabric's twice. A fabric without letters in its name is called after
// its place, as in colour-3.
func (p Palette) inWords() Palette {
	out := Palette{Name: word(p.Name), About: p.About, Fabrics: make([]Swatch, len(p.Fabrics))}
	if out.Name == "" {
		out.Name = "palette"
	}
	taken := make(map[string]bool, len(p.Fabrics))
	counts := make(map[string]int, len(p.Fabrics))
	for i, f := range p.Fabrics {
		base := word(f.Name)
		if base == "" {
			base = fmt.Sprintf("colour-%d", i+1)
		}
		name := base
		for taken[name] {
			counts[base]++
			name = fmt.Sprintf("%s-%d", base, counts[base]+1)
		}
		taken[name] = true
		out.Fabrics[i] = Swatch{name, f.Colour}
	}
	return out
}

// maxWordBytes leaves room in a name for a number after the word.
const maxWordBytes = maxNameBytes - 20

// word joins the letters and digits of the name with -, from its first letter on, and cuts it where it is too long; ""
// where there is none.
func word(name string) string {
	var b strings.Builder
	gap := false
	for _, r := range strings.ToLower(name) {
		inWord := r != unicode.ReplacementChar && (r == '_' || unicode.IsLetter(r) || unicode.IsDigit(r))
		switch {
		case b.Len() >= maxWordBytes:
			return b.String()
		case b.Len() == 0 && !unicode.IsLetter(r):
			continue
		case !inWord:
			gap = true
			continue
		case gap:
			b.WriteByte('-')
			gap = false
		}
		b.WriteRune(r)
	}
	return b.String()
}
