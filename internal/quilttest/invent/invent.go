// Package invent turns a number into the text of a layout, the same number always into the
// same text: every kind of block, size, border and spelling that the language has, for tests
// of what must hold whatever is laid out.
package invent

import (
	"math/rand/v2"
	"strings"

	"eighthturn/internal/blocks"
)

// inventor makes up one layout.
type inventor struct {
	*rand.Rand
	kinds   []*blocks.Kind // that stand in the grid
	inches  bool
	seam    ticks
	byStrip bool  // the strip is given, not the side
	strip   ticks // cut, where it is given
	wedges  ticks // finished height of the lowest wedges, rounded down; 0 without wedges
	exact   bool  // it is the height of all wedges, to the last nanometre
	fabrics []string
	pools   []string
	stacks  *rand.Rand // for what is dealt by set
	dealt   []string   // fabrics of the pool that is dealt by set; nil for none
	sets    []string
	webs    bool // give the fabric of all wedges round web centres
	blocks  []block
	cells   [][]block // the grid's rows; a block without a kind is a place with nothing
	across  int       // how often the rows are laid
	down    int
	topLeft string
}

// block is a block that the grid may name.
type block struct {
	label string
	kind  *blocks.Kind
}

// Layout is the text of a valid layout for a seed.
func Layout(seed uint64) string {
	v := &inventor{Rand: rand.New(rand.NewPCG(seed, 0x5eed)), stacks: rand.New(rand.NewPCG(seed, 0x57ac))}
	v.units()
	v.chooseKinds()
	v.chooseSize()
	groups := [][]string{{v.unitsLine()}, {v.seamLine()}, {v.sizeLine()}, v.cloth(), v.scraps(), v.stripSets(), v.chooseWebs(), v.blockLines(), v.grid()}
	groups = append(groups, v.webTable(), v.edgings(), v.words(), []string{
		v.optional(4, "usable-width", v.length(v.unit(40+v.IntN(10)))),
	})
	if v.one(2) {
		v.Shuffle(len(groups), func(i, j int) { groups[i], groups[j] = groups[j], groups[i] })
	}
	text := v.file(groups)
	return v.sized(seed, text+v.colorways(seed, text)+v.onHand(seed, text))
}

// one says yes once in so many times.
func (v *inventor) one(in int) bool { return v.IntN(in) == 0 }

// pick is one of a list.
func pick[T any](v *inventor, list []T) T { return list[v.IntN(len(list))] }

// optional is a line, or once in so many times none.
func (v *inventor) optional(in int, words ...string) string {
	if v.one(in) {
		return v.line(words...)
	}
	return ""
}

// word is a word, or once in a while none.
func (v *inventor) word(text string) string {
	if v.one(3) {
		return text
	}
	return ""
}

// line is words with blanks of some sort between them, and sometimes a comment.
func (v *inventor) line(words ...string) string {
	var b strings.Builder
	for _, w := range words {
		if w == "" {
			continue
		}
		if b.Len() > 0 {
			b.WriteString(pick(v, []string{" ", " ", " ", "  ", "     ", "\t", "\u00a0"}))
		}
		b.WriteString(w)
	}
	if v.one(6) {
		b.WriteString(pick(v, []string{"  # a word to oneself", " #", "\t# 3 1/2 \"quoted\"", "   # größer?"}))
	}
	return b.String()
}

// file joins the lines of all groups.
func (v *inventor) file(groups [][]string) string {
	end := pick(v, []string{"\n", "\n", "\n", "\r\n", "\r"})
	var b strings.Builder
	if v.one(10) {
		b.WriteRune('\ufeff')
	}
	for _, group := range groups {
		if v.one(3) {
			b.WriteString(pick(v, []string{"", "# made up", "   # set in", "#", "#f00 is a comment at the start of a line"}) + end)
		}
		for _, line := range group {
			if line != "" {
				b.WriteString(line + end)
			}
		}
	}
	return b.String()
}

// chooseKinds takes some kinds. Where a strip gives the side they all need wedges of one
// height.
func (v *inventor) chooseKinds() {
	all := blocks.Kinds()
	v.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	v.kinds = all[:1+v.IntN(min(4, len(all)))]
	height := blocks.NoWedges
	for _, k := range v.kinds {
		if height == blocks.NoWedges {
			height = k.Height
		}
	}
	if height == blocks.NoWedges || v.one(2) {
		return
	}
	var fit []*blocks.Kind
	for _, k := range v.kinds {
		if k.Height == height || k.Height == blocks.NoWedges {
			fit = append(fit, k)
		}
	}
	v.kinds, v.byStrip = fit, true
}
