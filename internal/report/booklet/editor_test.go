package booklet

import (
	"slices"

	"eighthturn/internal/render"
)

// edited is all that an editor finds wrong with a pattern.
func edited(d render.Document, r Reports) []string {
	var wrong []string
	for _, check := range []func(render.Document, Reports) []string{
		unknownLengths, missingCuts, wrongShopping, wrongPieces, wrongStrips, wrongSums, wrongAbbreviations, wrongFigures, wrongPlurals, wrongAlternatives, wrongWords, wrongBorders, wrongForms, wrongSewing,
	} {
		wrong = append(wrong, check(d, r)...)
	}
	return wrong
}

// ownTexts are the texts of a document that are no note of the designer's and no words in pictures.
func ownTexts(d render.Document) []string {
	var list []string
	if d.Cover != nil {
		for _, t := range d.Cover.Lines {
			list = append(list, t.String())
		}
	}
	parts := slices.Clone(d.Parts)
	for i := range parts {
		parts[i].Blocks = slices.DeleteFunc(slices.Clone(parts[i].Blocks), isNote)
	}
	for _, p := range parts {
		for _, b := range p.Blocks {
			list = append(list, joinedRuns(b)...)
		}
	}
	return list
}

func isNote(b render.Block) bool {
	box, ok := b.(render.Box)
	return ok && box.Word == "From the designer"
}

// joinedRuns are the texts of a block, the runs of each put together.
func joinedRuns(b render.Block) []string {
	var list []string
	text := func(t render.Text) { list = append(list, t.String()) }
	switch v := b.(type) {
	case render.Heading:
		list = append(list, v.Text)
	case render.Paragraph:
		text(v.Text)
	case render.List:
		for _, it := range v.Items {
			text(it.Text)
			for _, inner := range it.Blocks {
				list = append(list, joinedRuns(inner)...)
			}
		}
	case render.Table:
		text(v.Caption)
		for _, c := range v.Columns {
			list = append(list, c.Title)
		}
		for _, r := range v.Rows {
			for _, c := range r.Cells {
				text(c.Text)
			}
		}
	case render.Figure:
		text(v.Caption)
	case render.Picture:
		text(v.Caption)
	case render.Gallery:
		for _, p := range v.Pictures {
			list = append(list, joinedRuns(p)...)
		}
	case render.Box:
		for _, inner := range v.Blocks {
			list = append(list, joinedRuns(inner)...)
		}
	case render.Together:
		for _, inner := range v.Blocks {
			list = append(list, joinedRuns(inner)...)
		}
	}
	return list
}
