package invent

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"eighthturn/palettes"
)

// cloth is the fabrics, with colours and options in all their spellings.
func (v *inventor) cloth() []string {
	names := []string{
		"fog", "ember", "quarry", "Crème", "nächte", "ярь", "赤い", "ぶどう", "moss-2", "dusk_1", "ÅS", "e\u0301te\u0301", "plum", "ξύλο", "x",
	}
	v.Shuffle(len(names), func(i, j int) { names[i], names[j] = names[j], names[i] })
	v.fabrics = names[:1+v.IntN(8)]
	lines := []string{v.optional(8, "palette", pick(v, palettes.All()).Name)}
	for _, name := range v.fabrics {
		words := []string{"fabric", name, v.colour()}
		options := [][]string{{pick(v, []string{`"print of 2" dots"`, "“ein Druck”", `""`})}, {"on-hand", v.length(v.unit(18))}, {"usable-width", v.length(v.unit(42))}}
		v.Shuffle(len(options), func(i, j int) { options[i], options[j] = options[j], options[i] })
		for _, o := range options {
			if v.one(4) {
				words = append(words, o...)
			}
		}
		lines = append(lines, v.line(words...))
	}
	return lines
}

func (v *inventor) colour() string {
	switch v.IntN(4) {
	case 0:
		return fmt.Sprintf("#%03x", v.IntN(1<<12))
	case 1:
		return fmt.Sprintf("#%06X", v.IntN(1<<24))
	case 2:
		return pick(v, palettes.Names())
	}
	return fmt.Sprintf("#%06x", v.IntN(1<<24))
}

// stripSets is up to three strip sets that suit all wedges, with a rest or without.
func (v *inventor) stripSets() []string {
	var lines []string
	if v.wedges < 2 {
		return nil
	}
	for _, name := range []string{"shore", "größe", "Bands-3"}[:v.IntN(4)] {
		v.sets = append(v.sets, name)
		lines = append(lines, v.stripSet(name))
	}
	return lines
}

// stripSet cuts the wedges' height in bands of a tick or more.
func (v *inventor) stripSet(name string) string {
	bands := 1 + v.IntN(min(5, int(v.wedges)))
	rest := -1
	if !v.exact || v.one(2) {
		rest = v.IntN(bands)
	}
	words := []string{"strip-set", name}
	left := v.wedges
	cloths := v.bandCloths(bands)
	for i := range bands {
		share := max(1, left/ticks(bands-i))
		if i < bands-1 && share > 1 && v.one(2) {
			share = 1 + ticks(v.IntN(int(share)))
		}
		left -= share
		width := v.length(share + 2*v.seam)
		switch {
		case rest >= 0 && name == "Bands-3":
			width = "equal"
		case i == rest:
			width = "rest"
		}
		cloth := pick(v, v.cloths())
		if cloths[i] != "" {
			cloth = cloths[i]
		}
		words = append(words, cloth, width)
	}
	if slices.Contains(cloths, setPool) && v.stacks.IntN(3) == 0 {
		words = append(words, "sets", strconv.Itoa(1+v.stacks.IntN(9)))
	}
	return v.line(words...)
}

// scraps is up to two pools of fabrics, dealt in one of the ways there are. Now and then one
// is added to by a second line.
func (v *inventor) scraps() []string {
	var lines []string
	for _, name := range []string{"Reste", "лоскуты"}[:max(0, v.IntN(4)-1)] {
		v.pools = append(v.pools, name)
		for range 1 + v.IntN(2) {
			words := []string{"scraps", v.written(name)}
			for _, at := range v.Perm(len(v.fabrics))[:1+v.IntN(len(v.fabrics))] {
				words = append(words, v.fabrics[at])
			}
			options := []string{v.word("by " + pick(v, []string{"piece", "block", "web"})), v.word(fmt.Sprintf("deal %d", v.IntN(9)))}
			v.Shuffle(2, func(i, j int) { options[i], options[j] = options[j], options[i] })
			lines = append(lines, v.line(append(words, options...)...))
		}
	}
	return append(lines, v.dealtBySet()...)
}

// setPool is the pool that is dealt by set.
const setPool = "Stapel"

// bandCloths is what the strips of a set are cut from: fabrics and pools, or fabrics and the pool that is dealt by set.
func (v *inventor) bandCloths(bands int) []string {
	list := make([]string, bands)
	if v.dealt == nil || v.stacks.IntN(3) == 0 {
		return list
	}
	var others []string
	for _, f := range v.fabrics {
		if !slices.Contains(v.dealt, f) {
			others = append(others, f)
		}
	}
	for i, at := range v.stacks.Perm(bands) {
		if list[at] = others[v.stacks.IntN(len(others))]; i == 0 || i < len(v.dealt) && v.stacks.IntN(3) > 0 {
			list[at] = setPool
		}
	}
	return list
}

// dealtBySet is the pool that is dealt by set, of some of the fabrics, in every fourth layout; what is invented without it stays as it is.
func (v *inventor) dealtBySet() []string {
	if len(v.fabrics) < 3 || v.stacks.IntN(4) > 0 {
		return nil
	}
	v.dealt = v.fabrics[:2+v.stacks.IntN(len(v.fabrics)-2)]
	return []string{fmt.Sprintf("scraps %s %s by set deal %d", setPool, strings.Join(v.dealt, " "), v.stacks.IntN(4))}
}

// cloths is what a piece or a band may be cut from: fabrics and pools.
func (v *inventor) cloths() []string {
	return append(v.fabrics[:len(v.fabrics):len(v.fabrics)], v.pools...)
}

// value is a fabric or a pool, or where bands may be a strip set one way or the other.
func (v *inventor) value(banded bool) string {
	if !banded || len(v.sets) == 0 || v.one(3) {
		return v.written(pick(v, v.cloths()))
	}
	return strings.TrimSpace(v.word("turned ") + v.written(pick(v, v.sets)))
}

// written is a name as it may be written: capitals and small letters count as the same.
func (v *inventor) written(name string) string {
	if v.one(8) {
		return strings.ToUpper(name)
	}
	return name
}
