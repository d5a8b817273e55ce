package report

import (
	"slices"

	"eighthturn/internal/document"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// ColorwaysID is the section of the fabrics of each colorway.
const ColorwaysID = "colorways"

// colorwaysBeside is how many colorways a table has side by side.
const colorwaysBeside = 3

// Colorways are the fabrics of each colorway beside those of the quilt as it is written; nothing where it has none.
func Colorways(p *Plans) document.Section {
	s := section(ColorwaysID, "Colorways", document.Detail)
	t := p.Top
	for first := 0; first < len(t.Colorways); first += colorwaysBeside {
		list := t.Colorways[first:min(first+colorwaysBeside, len(t.Colorways))]
		columns := table(words("fabric"))
		columns.Named = true
		for i := range list {
			columns.Columns = append(columns.Columns, words(list[i].Name))
		}
		for f := range t.Fabrics {
			if slices.Contains(t.CutFacts.Unused, f) {
				continue
			}
			r := document.Row{Cells: []document.Cell{{Text: document.Plain(t.Fabrics[f].Name), Swatches: p.swatch(f)}}}
			r.About.Faces = p.FacesByFabric()[f]
			for i := range list {
				r.Cells = append(r.Cells, document.Cell{
					Text:     document.Plain(inPlaceOf(&t.Fabrics[f], &list[i].Fabrics[f])),
					Swatches: []document.Swatch{{Colour: list[i].Fabrics[f].Colour}},
				})
			}
			columns.Rows = append(columns.Rows, r)
		}
		s.Blocks = append(s.Blocks, columns)
	}
	return s
}

// inPlaceOf is what a fabric is called that takes the place of another: by its name, or by its color where the name stays.
func inPlaceOf(was, is *quilt.Fabric) string {
	if is.Name == was.Name && is.Colour == was.Colour {
		return "the same"
	}
	return takesPlace(was.Name, is.Name, is.Colour)
}

// takesPlace is a fabric in the place of another by its name, or by its color where the name stays.
func takesPlace(was, name string, colour palettes.Colour) string {
	if name == was {
		return colour.Hex()
	}
	return name
}

// ColorwaysAreAlike says how a pattern is read in another colorway.
const ColorwaysAreAlike = "All colorways are cut and sewn alike. Where the pattern names a fabric, use the one that your colorway has in its place."

// InColorway says what a picture of a colorway shows.
func InColorway(name string) string { return InColor + ", in the colorway " + name }

// ColorwayShown is the caption of a picture of a colorway.
func ColorwayShown(name string) string { return capital(name) + "." }

// colorways are how the colorways read.
func (v *values) colorways() document.Section {
	s := section(ColorwaysID, "Does each colorway read?", document.Answer)
	if len(v.plans.Tries) > 0 {
		return s
	}
	t := table(words("colorway"), words(""))
	t.Named = true
	for i := range v.top.Colorways {
		other := newValues(&Plans{Top: v.top.In(i), Contrast: v.plans.Contrast, sign: v.plans.sign})
		r := row(v.top.Colorways[i].Name, other.answer()+other.losses(other.toTell()))
		if len(other.Losses) > 0 {
			r.Tone = document.Doubtful
		}
		t.Rows = append(t.Rows, r)
	}
	return with(s, t)
}

// inVariant is the name of a layout with the size and the colorway that are told of.
func inVariant(name string, t *quilt.Top) string {
	if t.Size != "" {
		name += ", " + t.Size
	}
	if t.Colorway != "" {
		name += " in " + t.Colorway
	}
	return name
}
