// Package bysize turns documents that say the same of a quilt in several sizes into one that says it once: what is alike in all
// sizes stands as it is, numbers that differ stand behind one another as "6 (8, 12)", and what differs in more than numbers is said
// for each size under its name.
//
// Nothing is reckoned: every number of the one document stands in one of the others, and the numbers in a place are those of its size.
package bysize

import (
	"strings"

	"eighthturn/internal/document"
)

// Options say how documents are merged.
type Options struct {
	Names []string // of the sizes, in the order of the documents
	// Figures tells the keys of figures from texts.
	Figures Keys
	// Every says whether a figure that differs is shown in every size; others are shown in the first alone.
	Every func(key string) bool
	// Only words that a title holds for some sizes, as in "Border 2 (twin and queen)".
	Only func(title string, sizes []string) string
}

// Keys are the signs round the key of a figure in texts: where a text refers to it, where it gives the number alone, and in its
// caption.
type Keys struct{ Opens, Bare, Defines, Closes string }

// merger merges what documents of some sizes say.
type merger struct {
	Options
	sizes []int // that it is about, by index; the places of what it is given are theirs
}

func (m *merger) all() int { return len(m.sizes) }

// Documents is one document of several, which are those of one quilt in several sizes. What a document has but once is the first's.
func Documents(list []document.Document, o Options) document.Document {
	m := newMerger(o)
	sections := make([][]document.Section, len(list))
	for i, d := range list {
		sections[i] = d.Sections
	}
	merged := list[0]
	merged.Sections = m.sections(m.shown(sections))
	if merged.Cover != nil {
		cover := *merged.Cover
		cover.Lines = nil
		of := make([][]document.Item, len(list))
		for i, d := range list {
			if d.Cover == nil {
				continue
			}
			for _, line := range d.Cover.Lines {
				of[i] = append(of[i], document.Item{Text: line})
			}
		}
		for _, it := range m.items(of) {
			cover.Lines = append(cover.Lines, it.Text)
		}
		merged.Cover = &cover
	}
	return merged
}

// Sections is one list of chapters of those of several sizes.
func Sections(list [][]document.Section, o Options) []document.Section {
	m := newMerger(o)
	return m.sections(m.shown(list))
}

func newMerger(o Options) *merger {
	m := &merger{Options: o}
	for i := range o.Names {
		m.sizes = append(m.sizes, i)
	}
	return m
}

// of is a merger of some of the sizes, by place.
func (m *merger) of(places []int) *merger {
	other := &merger{Options: m.Options}
	for _, i := range places {
		other.sizes = append(other.sizes, m.sizes[i])
	}
	return other
}

// label names some of the sizes, by place, in the way in which their numbers stand.
func (m *merger) label(places []int) string {
	var names []string
	for _, i := range places {
		names = append(names, m.Names[m.sizes[i]])
	}
	text := names[0]
	if len(names) > 1 {
		text += " (" + strings.Join(names[1:], ", ") + ")"
	}
	return strings.ToUpper(text[:1]) + text[1:]
}

// led is a text that begins with the names of the sizes that it is for, where these are not all.
func (m *merger) led(places []int, text document.Text) document.Text {
	if len(places) == m.all() {
		return text
	}
	return append(document.Text{{Text: m.label(places) + ":", Bold: true}, {Text: " "}}, text...)
}

// sections merges chapters.
func (m *merger) sections(list [][]document.Section) []document.Section {
	var merged []document.Section
	for _, e := range aligned(list, func(a, b *document.Section) int {
		return score(skeleton(document.Plain(a.Title)) == skeleton(document.Plain(b.Title)), false)
	}) {
		merged = append(merged, m.section(e))
	}
	return merged
}

// section merges one chapter of the sizes that have it.
func (m *merger) section(e entry[document.Section]) document.Section {
	s := *e.first()
	blocks := make([][]document.Block, len(e.at))
	titles := make([]document.Text, len(e.at))
	for i, p := range e.at {
		blocks[i], titles[i] = p.Blocks, document.Plain(p.Title)
	}
	inner := m.of(e.places)
	if s.Title != "" {
		s.Title = m.only(e.places, inner.texts(titles)[0].text.String())
	}
	s.Blocks = inner.blocks(blocks)
	return s
}

// only is a title of some sizes.
func (m *merger) only(places []int, title string) string {
	if len(places) == m.all() {
		return title
	}
	var names []string
	for _, i := range places {
		names = append(names, m.Names[m.sizes[i]])
	}
	return m.Only(title, names)
}
