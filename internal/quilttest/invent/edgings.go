package invent

import "strings"

// edgings is sashes or none, no border, one or two, and the binding.
func (v *inventor) edgings() []string {
	var lines []string
	for range v.IntN(3) {
		words := []string{"border", v.edgingWidth(), pick(v, v.fabrics), v.word("corners " + pick(v, v.fabrics)), v.word("lengthwise")}
		if v.one(2) {
			words[3], words[4] = words[4], words[3]
		}
		lines = append(lines, v.line(words...))
	}
	if v.one(5) {
		lines = append(lines, v.line("sash", v.edgingWidth(), pick(v, v.fabrics), v.word("posts "+pick(v, v.fabrics)), v.word("around")))
	}
	binding := v.optional(4, "binding", v.length(2*v.seam+v.unit(1)), v.word("cut"), pick(v, v.fabrics))
	return append(lines, binding)
}

// edgingWidth is the width of a border or a sash, finished or cut, wide enough for either.
func (v *inventor) edgingWidth() string {
	frame := pick(v, []string{"", "", " cut", " finished"})
	return v.length(2*v.seam+v.unit(1)/8*ticks(1+v.IntN(40))) + frame
}

// words is what the printed pattern says, and what the reports are asked for.
func (v *inventor) words() []string {
	title := pick(v, []string{`"Nothing in particular"`, `“Zum Üben”`, `"108" wide, or so"`, `"赤い蜘蛛の巣"`, `"a # b"`})
	places := append([]string{"", "cutting", "sewing"}, v.blocks[0].label)
	return []string{
		v.optional(2, "title", title), v.optional(6, "designer", `"N. N."`), v.optional(6, "level", `"for a wet week"`), v.optional(6, "copyright", `"© nobody"`),
		strings.TrimRight(v.optional(6, "note", pick(v, places), `"press, then look"`), " "),
		v.optional(6, "backing", pick(v, v.fabrics)), v.optional(6, "batting"), v.optional(6, "contrast", "8", "21"),
	}
}
