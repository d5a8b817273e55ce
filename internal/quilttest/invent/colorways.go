package invent

import (
	"math/rand/v2"
	"strings"
)

// colorways are lines at the end of one layout in five. They are drawn from numbers of their own, so that all else of a seed
// stays as it was before there were any.
func (v *inventor) colorways(seed uint64, text string) string {
	v.Rand = rand.New(rand.NewPCG(seed, 0xc0104))
	if !v.one(5) {
		return ""
	}
	end := lineEnd(text)
	var lines strings.Builder
	for _, name := range []string{"way-1", "Ночь", "way_3"}[:1+v.IntN(3)] {
		words := []string{pick(v, []string{"colorway", "colourway", "Colorway"}), name}
		order := v.Perm(len(v.fabrics))
		if len(order) > 2 && v.one(2) {
			a, b := v.fabrics[order[0]], v.fabrics[order[1]]
			words, order = append(words, a, b, b, a), order[2:]
		}
		for _, f := range order[:1+v.IntN(len(order))] {
			words = append(words, v.fabrics[f], pick(v, []string{"#102030", "#fde", "Tomato", "#7a8B9c", "ivory"}))
		}
		lines.WriteString(v.line(words...) + end)
	}
	return lines.String()
}
