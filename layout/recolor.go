package layout

import (
	"strings"

	"eighthturn/palettes"
)

// Recolored is what to type so that a fabric has another color: its color is written anew, a photo makes way for it, and a
// fabric of a palette gets a statement of its own before the palette. All else stays as it is written. It is nil where no
// fabric is called so.
func (r *Reading) Recolored(name string, colour palettes.Colour) []Edit {
	for _, f := range r.Tree.Fabrics {
		if f.Name.key() == foldName(name) {
			return r.withColour(f, colour)
		}
	}
	for _, n := range r.Tree.Palettes {
		p, _ := palettes.Find(strings.ToLower(n.Name.Text))
		for _, s := range p.Fabrics {
			if foldName(s.Name) == foldName(name) {
				return []Edit{r.lineBefore(n.Start, "fabric "+s.Name+" "+colour.Hex())}
			}
		}
	}
	return nil
}

// withColour is what to type in a fabric's statement.
func (r *Reading) withColour(f *fabricNode, colour palettes.Colour) []Edit {
	if f.Swatch == nil {
		if f.PlaceOfColor().Empty() {
			return nil
		}
		return []Edit{{f.PlaceOfColor(), colour.Hex()}}
	}
	photo := Edit{Span{f.colourAt.Start, f.Swatch.End}, colour.Hex()}
	if f.Across == nil {
		return []Edit{photo}
	}
	text := r.Source.Text
	word := photo.Span.End + strings.LastIndex(strings.ToLower(text[photo.Span.End:f.Across.Start]), "across")
	before := strings.TrimRight(text[:word], " \t")
	return []Edit{photo, {Span: Span{len(before), f.Across.End}}}
}

// lineBefore is what to type for a new line before that of a place, which ends as that one does.
func (r *Reading) lineBefore(place int, line string) Edit {
	there := r.Source.LineSpan(r.Source.Line(place))
	at := there.Start
	if at == 0 && strings.HasPrefix(r.Source.Text, byteOrderMark) {
		at = len(byteOrderMark)
	}
	end := "\n"
	switch rest := r.Source.Text[there.End:]; {
	case strings.HasPrefix(rest, "\r\n"):
		end = "\r\n"
	case strings.HasPrefix(rest, "\r"):
		end = "\r"
	}
	return Edit{Span{at, at}, line + end}
}
