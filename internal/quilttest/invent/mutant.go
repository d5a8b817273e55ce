package invent

import (
	"math/rand/v2"
	"strings"
)

// Mutant is an invented layout with a few words changed, moved or left out: often still
// valid, and then with sizes and mixtures that nobody would think of.
func Mutant(seed uint64) string {
	v := &inventor{Rand: rand.New(rand.NewPCG(seed, 0xbad))}
	text := strings.ReplaceAll(Layout(v.Uint64()%1000), "\r", "\n")
	lines := strings.Split(strings.ReplaceAll(text, "\n\n", "\n"), "\n")
	for range 1 + v.IntN(4) {
		v.mutate(lines)
	}
	return strings.Join(lines, "\n")
}

// mutate changes one line. Rows of a grid keep their blanks at the start.
func (v *inventor) mutate(lines []string) {
	at, from := v.IntN(len(lines)), v.IntN(len(lines))
	words, others := strings.Fields(lines[at]), strings.Fields(lines[from])
	if len(words) == 0 || len(others) == 0 {
		return
	}
	word := v.IntN(len(words))
	switch v.IntN(8) {
	case 0:
		lines[at] = ""
		return
	case 1:
		lines[at], lines[from] = lines[from], lines[at]
		return
	case 2:
		words[word] = pick(v, others)
	case 3:
		words = append(words, words[word])
	case 4:
		words = append(words[:word], words[word+1:]...)
	default:
		v.resize(words)
	}
	blank := ""
	if strings.TrimLeft(lines[at], " \t") != lines[at] {
		blank = "  "
	}
	lines[at] = blank + strings.Join(words, " ")
}

// resize gives the words that are numbers one of some extreme lengths.
func (v *inventor) resize(words []string) {
	for i, w := range words {
		if w[0] >= '0' && w[0] <= '9' && i > 0 {
			words[i] = pick(v, []string{
				"0.26", "119.999999", "1/64", "6.35 mm", "0.100001 mm", "3.048 m", "1.000001", "7", "2.54 cm", "0.000001", "33 1/3", "12-7/9", "0,333333",
			})
		}
	}
}
