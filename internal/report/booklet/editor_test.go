package booklet

import (
	"slices"

	"eighthturn/internal/document"
)

// edited is all that an editor finds wrong with a pattern.
func edited(d document.Document, r Reports) []string {
	var wrong []string
	for _, check := range []func(document.Document, Reports) []string{
		unknownLengths, missingCuts, wrongShopping, wrongPieces, emptyColumns, wrongStrips, wrongSums, wrongAbbreviations, wrongFigures, wrongPlurals, wrongAlternatives, wrongWords, wrongBorders, wrongForms, wrongSewing,
	} {
		wrong = append(wrong, check(d, r)...)
	}
	return wrong
}

// ownTexts are the texts of a document that are no note of the designer's and no words in pictures.
func ownTexts(d document.Document) []string {
	var list []string
	if d.Cover != nil {
		for _, t := range d.Cover.Lines {
			list = append(list, t.String())
		}
	}
	parts := slices.Clone(d.Sections)
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

func isNote(b document.Block) bool {
	box, ok := b.(document.Box)
	return ok && box.Word == "From the designer"
}

// roundedIn is how sentences begin that round lengths as a column does, "" for one that does not.
func roundedIn(column string) string {
	return map[string]string{"Length used": "at least ", "With allowance": "at least ", "Leftover": "Leftover "}[column]
}

// joinedRuns are the texts of a block, the runs of each put together.
func joinedRuns(b document.Block) []string {
	var list []string
	text := func(t document.Text) { list = append(list, t.String()) }
	switch v := b.(type) {
	case document.Heading:
		list = append(list, v.Text)
	case document.Paragraph:
		text(v.Text)
	case document.List:
		for _, it := range v.Items {
			text(it.Text)
			for _, inner := range it.Blocks {
				list = append(list, joinedRuns(inner)...)
			}
		}
	case document.Table:
		text(v.Caption)
		for _, c := range v.Columns {
			list = append(list, c.Title)
		}
		for _, r := range v.Rows {
			for i, c := range r.Cells {
				list = append(list, roundedIn(v.Columns[i].Title)+c.Text.String())
			}
		}
	case document.Figure:
		text(v.Caption)
	case document.Picture:
		text(v.Caption)
	case document.Gallery:
		for _, p := range v.Pictures {
			list = append(list, joinedRuns(p)...)
		}
	case document.Box:
		for _, inner := range v.Blocks {
			list = append(list, joinedRuns(inner)...)
		}
	case document.Together:
		for _, inner := range v.Blocks {
			list = append(list, joinedRuns(inner)...)
		}
	}
	return list
}
