package bysize

import (
	"slices"
	"strings"

	"eighthturn/internal/document"
)

// plate is a figure on a page of its own.
type plate struct {
	document.PageBreak
	figure document.Figure
}

// units are blocks with figures on pages of their own as one.
func units(list []document.Block) (out []document.Block) {
	for i := 0; i < len(list); i++ {
		if _, ok := list[i].(document.PageBreak); ok && i+1 < len(list) {
			if f, ok := list[i+1].(document.Figure); ok {
				out = append(out, plate{figure: f})
				i++
				continue
			}
		}
		out = append(out, list[i])
	}
	return out
}

// blocks merges blocks.
func (m *merger) blocks(list [][]document.Block) []document.Block {
	of := make([][]document.Block, len(list))
	for i := range list {
		of[i] = units(list[i])
	}
	var out []document.Block
	for _, e := range aligned(of, m.matchBlocks) {
		list := m.block(e)
		if len(out) > 0 && len(list) > 1 && announced(out[len(out)-1], list[0]) {
			list = list[1:]
		}
		out = append(out, list...)
	}
	return out
}

// announced says whether a paragraph ends with a colon and begins with the names that stand above a list.
func announced(paragraph, names document.Block) bool {
	p, ok := paragraph.(document.Paragraph)
	n, named := names.(document.Paragraph)
	return ok && named && len(p.Text) > 1 && strings.HasSuffix(p.Text.String(), ":") && p.Text[0] == n.Text[0]
}

// matchBlocks says how well two blocks match.
func (m *merger) matchBlocks(a, b *document.Block) int {
	switch v := (*a).(type) {
	case document.Heading:
		w, ok := (*b).(document.Heading)
		return score(ok && skeleton(document.Plain(v.Text)) == skeleton(document.Plain(w.Text)), false)
	case document.Paragraph:
		w, ok := (*b).(document.Paragraph)
		return score(ok && skeleton(v.Text) == skeleton(w.Text), ok && opening(v.Text) == opening(w.Text))
	case document.List:
		w, ok := (*b).(document.List)
		return score(false, ok && v.Marker == w.Marker)
	case document.Table:
		w, ok := (*b).(document.Table)
		return score(ok && v.Columns[0].Title == w.Columns[0].Title && skeleton(v.Caption) == skeleton(w.Caption), false)
	case document.Figure:
		w, ok := (*b).(document.Figure)
		return score(ok && m.key(v.Caption) == m.key(w.Caption), false)
	case plate:
		w, ok := (*b).(plate)
		return score(ok && m.key(v.figure.Caption) == m.key(w.figure.Caption), false)
	case document.Source:
		w, ok := (*b).(document.Source)
		return score(ok && slices.Equal(v.Lines, w.Lines), false)
	case document.Picture:
		w, ok := (*b).(document.Picture)
		return score(ok && m.key(v.Caption) == m.key(w.Caption), false)
	case document.Gallery:
		_, ok := (*b).(document.Gallery)
		return score(ok, false)
	case document.Box:
		w, ok := (*b).(document.Box)
		return score(ok && v.Head() == w.Head(), false)
	case document.Together:
		w, ok := (*b).(document.Together)
		return score(ok && titled(v.Blocks) == titled(w.Blocks), false)
	case document.Ruled:
		_, ok := (*b).(document.Ruled)
		return score(ok, false)
	case document.PageBreak:
		_, ok := (*b).(document.PageBreak)
		return score(ok, false)
	}
	return apart
}

// opening is the first word of a text.
func opening(t document.Text) string {
	word, _, _ := strings.Cut(t.String(), " ")
	return word
}

// titled is the heading that blocks begin with, "" for none.
func titled(list []document.Block) string {
	if len(list) > 0 {
		if h, ok := list[0].(document.Heading); ok {
			return skeleton(document.Plain(h.Text))
		}
	}
	return ""
}

// block merges one block of the sizes that have it.
func (m *merger) block(e entry[document.Block]) []document.Block {
	switch v := (*e.first()).(type) {
	case document.Heading:
		v.Text = m.only(e.places, m.of(e.places).texts(each(e, func(h document.Heading) document.Text { return document.Plain(h.Text) }))[0].text.String())
		return []document.Block{v}
	case document.Paragraph:
		return m.paragraphs(e)
	case document.List:
		return m.list(e)
	case document.Table:
		return m.tables(e)
	case document.Figure:
		v.Caption = m.caption(e.places, v.Caption, each(e, func(f document.Figure) document.Text { return f.Caption }))
		return []document.Block{v}
	case plate:
		v.figure.Caption = m.caption(e.places, v.figure.Caption, each(e, func(p plate) document.Text { return p.figure.Caption }))
		return []document.Block{document.PageBreak{}, v.figure}
	case document.Picture:
		v.Caption = m.caption(e.places, v.Caption, each(e, func(p document.Picture) document.Text { return p.Caption }))
		return []document.Block{v}
	case document.Box:
		v.Blocks = m.within(e, each(e, func(b document.Box) []document.Block { return b.Blocks }))
		return []document.Block{v}
	case document.Together:
		v.Blocks = m.within(e, each(e, func(b document.Together) []document.Block { return b.Blocks }))
		return []document.Block{v}
	}
	return []document.Block{*e.first()}
}

// each is something of every block of an entry.
func each[B document.Block, T any](e entry[document.Block], of func(B) T) (list []T) {
	for _, b := range e.at {
		list = append(list, of((*b).(B)))
	}
	return list
}

// within merges what stands in a frame: under a heading that names the sizes it is for, these are all that there are.
func (m *merger) within(e entry[document.Block], inner [][]document.Block) []document.Block {
	if len(e.places) == m.all() {
		return m.blocks(inner)
	}
	if titled(inner[0]) == "" {
		spread := make([][]document.Block, m.all())
		for i, place := range e.places {
			spread[place] = inner[i]
		}
		return m.blocks(spread)
	}
	list := m.of(e.places).blocks(inner)
	if h, ok := list[0].(document.Heading); ok {
		h.Text = m.only(e.places, h.Text)
		list[0] = h
	}
	return list
}

// paragraphs merges a paragraph.
func (m *merger) paragraphs(e entry[document.Block]) (out []document.Block) {
	for _, w := range m.of(e.places).phrases(each(e, func(p document.Paragraph) document.Text { return p.Text })) {
		p := (*e.at[w.places[0]]).(document.Paragraph)
		p.Text = m.led(outer(e.places, w.places), w.text)
		out = append(out, p)
	}
	return out
}

// phrases merges texts: one, or where some sentences differ one for all that stands alike before them, one for each size that says
// something else, and one for what follows.
func (m *merger) phrases(list []document.Text) (out []wording) {
	if said := m.texts(list); len(said) == 1 {
		return said
	}
	var common []document.Text
	own := make([]document.Text, len(list))
	flush := func() {
		if len(common) > 0 {
			out = append(out, wording{m.every(), joinedTexts(common)})
		}
		out = append(out, m.texts(own)...)
		common, own = nil, make([]document.Text, len(list))
	}
	differ := false
	for _, s := range aligned(sentencesOf(list), func(a, b *document.Text) int { return score(skeleton(*a) == skeleton(*b), false) }) {
		if len(s.places) < len(list) {
			differ = true
			for i, place := range s.places {
				own[place] = joinedTexts([]document.Text{own[place], *s.at[i]})
			}
			continue
		}
		if differ {
			flush()
			differ = false
		}
		var same []document.Text
		for _, text := range s.at {
			same = append(same, *text)
		}
		common = append(common, m.texts(same)[0].text)
	}
	flush()
	return out
}

// every is the places of all sizes.
func (m *merger) every() (places []int) {
	for i := range m.sizes {
		places = append(places, i)
	}
	return places
}

// outer are places of an entry as places of the merger.
func outer(of, places []int) (list []int) {
	for _, i := range places {
		list = append(list, of[i])
	}
	return list
}

// list merges a list: item by item, or where that would tear it apart one for each size that has another.
func (m *merger) list(e entry[document.Block]) []document.Block {
	v := (*e.first()).(document.List)
	spread := make([][]document.Item, m.all())
	for i, b := range e.at {
		spread[e.places[i]] = (*b).(document.List).Items
	}
	if len(e.places) == m.all() && !m.torn(spread, v.Marker) {
		v.Items = m.items(spread)
		return []document.Block{v}
	}
	var out []document.Block
	for _, places := range m.sameLists(spread, e.places) {
		l := (*e.at[slices.Index(e.places, places[0])]).(document.List)
		l.Items = m.of(places).items(picked(spread, places))
		if len(places) < m.all() {
			out = append(out, document.Paragraph{Text: document.Bold(m.label(places) + ":")})
		}
		out = append(out, l)
	}
	return out
}

// mostItems is how many items a list of which none is alike in all sizes may have to be merged all the same.
const mostItems = 3

// torn says whether lists are better left whole: steps that are not the same in all sizes, and many items of which none is.
func (m *merger) torn(list [][]document.Item, marker document.Marker) bool {
	same, all := 0, 0
	for _, e := range aligned(list, matchItems) {
		all++
		if len(e.places) == m.all() && len(m.texts(itemTexts(e))) == 1 {
			same++
		}
	}
	return marker == document.Numbered && same < all || same == 0 && all > mostItems
}

// sameLists puts sizes together whose lists differ in nothing but numbers.
func (m *merger) sameLists(list [][]document.Item, places []int) (groups [][]int) {
	var kinds []string
	for _, place := range places {
		var b strings.Builder
		for _, it := range list[place] {
			b.WriteString(skeleton(it.Text) + "\n")
		}
		at := -1
		for i, kind := range kinds {
			if kind == b.String() {
				at = i
			}
		}
		if at < 0 {
			at = len(kinds)
			kinds, groups = append(kinds, b.String()), append(groups, nil)
		}
		groups[at] = append(groups[at], place)
	}
	return groups
}

// matchItems says how well two items match.
func matchItems(a, b *document.Item) int {
	return score(skeleton(a.Text) == skeleton(b.Text), opening(a.Text) == opening(b.Text))
}

func itemTexts(e entry[document.Item]) (list []document.Text) {
	for _, it := range e.at {
		list = append(list, it.Text)
	}
	return list
}

// items merges the items of lists.
func (m *merger) items(list [][]document.Item) (out []document.Item) {
	for _, e := range aligned(list, matchItems) {
		inner := m.of(e.places)
		for n, w := range inner.phrases(itemTexts(e)) {
			it := *e.at[w.places[0]]
			it.Text = m.led(outer(e.places, w.places), w.text)
			var blocks [][]document.Block
			for _, i := range w.places {
				blocks = append(blocks, e.at[i].Blocks)
			}
			if it.Blocks = nil; n == 0 || len(w.places) < inner.all() { // what belongs to an item stands with its first words
				it.Blocks = inner.of(w.places).blocks(blocks)
			}
			out = append(out, it)
		}
	}
	return out
}
