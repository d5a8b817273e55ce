package invent

import (
	"slices"
	"strings"

	"eighthturn/internal/blocks"
)

// chooseWebs gives the webs their fabric, one or two, where a kind lets it. A table of webs
// comes when the grid is there.
func (v *inventor) chooseWebs() []string {
	may := slices.ContainsFunc(v.kinds, func(k *blocks.Kind) bool {
		return slices.ContainsFunc(k.Roles, func(r blocks.Role) bool { return r.OfWebs })
	})
	if !may || v.one(2) {
		return nil
	}
	v.webs = true
	words := []string{"webs", v.value(true)}
	if v.one(2) {
		words = append(words, "/", v.value(true))
	}
	return []string{v.line(words...)}
}

// blockLines is one or two blocks of each kind; the second may be like the first.
func (v *inventor) blockLines() []string {
	labels := []string{"A", "b", "W", "F", "1", "27", "Ö", "網", "lamp", "R2", "x_y", "d-1"}
	v.Shuffle(len(labels), func(i, j int) { labels[i], labels[j] = labels[j], labels[i] })
	var lines []string
	for _, k := range v.kinds {
		first := labels[len(v.blocks)]
		v.blocks = append(v.blocks, block{first, k})
		lines = append(lines, v.line(append([]string{"block", first, v.written(k.Name)}, v.roles(k, 0)...)...))
		if v.one(2) {
			continue
		}
		second := labels[len(v.blocks)]
		v.blocks = append(v.blocks, block{second, k})
		if v.one(2) {
			lines = append(lines, v.line(append([]string{"block", second, "like", v.written(first)}, v.roles(k, 2)...)...))
		} else {
			lines = append(lines, v.line(append([]string{"block", second, k.Name}, v.roles(k, 0)...)...))
		}
	}
	v.Shuffle(len(lines), func(i, j int) { lines[i], lines[j] = lines[j], lines[i] })
	return lines
}

// roles gives every role that needs it as many values as it may take, in any order; and
// leaves one out, once in so many times, where another block has it.
func (v *inventor) roles(k *blocks.Kind, leave int) []string {
	var roles []string
	for _, r := range k.Roles {
		if leave > 0 && v.one(leave) || r.OfWebs && v.webs && !v.one(8) || r.Outer && v.one(2) {
			continue
		}
		n := 1 + v.IntN(5)
		if r.Counts != nil {
			n = pick(v, r.Counts)
		}
		words := []string{v.written(r.Name)}
		for range n {
			words = append(words, v.value(r.Banded))
		}
		roles = append(roles, strings.Join(words, " "))
	}
	if k.Column && (leave == 0 || v.one(leave)) {
		roles = append(roles, v.division())
	}
	v.Shuffle(len(roles), func(i, j int) { roles[i], roles[j] = roles[j], roles[i] })
	return roles
}
