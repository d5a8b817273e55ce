package booklet

import (
	"eighthturn/internal/document"
	"eighthturn/internal/report"
)

// cover is the first page.
func (b *patternBuilder) cover() *document.Cover {
	t := b.Top
	picture := document.Picture{Of: b.picture(asItIs), Alternative: b.described(report.InColor)}
	c := &document.Cover{Subtitle: "Quilt pattern", Picture: &picture}
	c.Lines = append(c.Lines, lead("Finished size:", "%s", b.size(t.Outer.Width(), t.Outer.Height())))
	if level := own(t.Credits.Level); level != "" {
		c.Lines = append(c.Lines, lead("Skill level:", "%s", level))
	}
	c.Lines = append(c.Lines, lead("Pieces:", "%d", len(t.Patches)))
	for _, text := range b.notes("cover") {
		c.Lines = append(c.Lines, document.Plain(text))
	}
	return c
}

// described says what a picture of the whole top shows, for someone who cannot see it.
func (b *patternBuilder) described(shows string) string { return b.grid().Described(shows) }

// notes are the layout's notes for a place, "" for the pattern as a whole.
func (b *patternBuilder) notes(place string) []string {
	var list []string
	for _, n := range b.Top.Credits.Notes {
		if text := own(n.Text); n.Place == place && text != "" {
			list = append(list, text)
		}
	}
	return list
}

// addNotes puts the notes for a place into a frame.
func (b *patternBuilder) addNotes(place string) {
	var list []document.Block
	for _, text := range b.notes(place) {
		list = append(list, document.Paragraph{Text: document.Plain(text)})
	}
	if len(list) > 0 {
		b.add(document.Box{Word: "From the designer", Blocks: list})
	}
}
