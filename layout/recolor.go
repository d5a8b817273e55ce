package layout

import (
	"slices"
	"strings"

	"eighthturn/internal/measure"
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

// RecoloredIn is what to type so that a fabric has another color in a colorway, and as it is written stays as it was: its name is
// the one that it has in the colorway, whose statement gets the color in its place, or the pair at its end. It is nil where there
// is no such colorway or fabric, or the layout has errors.
func (r *Reading) RecoloredIn(colorway, name string, colour palettes.Colour) []Edit {
	if r.Design == nil {
		return nil
	}
	for i := range r.Design.Colorways {
		c := &r.Design.Colorways[i]
		if FoldName(c.Name) != FoldName(colorway) {
			continue
		}
		for f, shown := range r.Design.In(c).Fabrics {
			if foldName(shown.Name) == foldName(name) {
				return r.withChange(r.Tree.Colorways[i], f, colour)
			}
		}
	}
	return nil
}

// withChange is what to type in a colorway's statement for a fabric of the design to have a color. Where the fabric itself takes the
// place of another there, that one gets its color: it cannot stand in two.
func (r *Reading) withChange(n *colorwayNode, fabric int, colour palettes.Colour) []Edit {
	is := func(name NameNode) bool { return name.key() == foldName(r.Design.Fabrics[fabric].Name) }
	var edits []Edit
	written := false
	for _, m := range n.Changes {
		switch {
		case is(m.From):
			edits, written = append(edits, Edit{m.To.Span, colour.Hex()}), true
		case is(m.To):
			edits = append(edits, Edit{m.To.Span, r.Design.Fabrics[fabric].Colour.Hex()})
		}
	}
	if !written {
		edits = append(edits, Edit{Span{n.End, n.End}, " " + r.Design.Fabrics[fabric].Name + " " + colour.Hex()})
	}
	return edits
}

// withColour is what to type in a fabric's statement: in place of a color, a photo or stripes, and of all that says more of those. It
// is nil where the layout names places of the fabric, which one color has not.
func (r *Reading) withColour(f *fabricNode, colour palettes.Colour) []Edit {
	var edits []Edit
	switch {
	case r.placed(f):
		return nil
	case f.Swatch != nil:
		edits = append(edits, Edit{Span{f.colourAt.Start, f.Swatch.End}, colour.Hex()})
	case f.Stripes != nil:
		edits = append(edits, Edit{f.Stripes.Span, colour.Hex()})
	case f.PlaceOfColor().Empty():
		return nil
	default:
		return []Edit{{f.PlaceOfColor(), colour.Hex()}}
	}
	for _, at := range f.morePhoto() {
		before := strings.TrimRightFunc(r.Source.Text[:at.Start], measure.IsSpace)
		edits = append(edits, Edit{Span: Span{len(before), at.End}})
	}
	return edits
}

// placed says whether pieces are cut from places of a fabric that the layout names.
func (r *Reading) placed(f *fabricNode) bool {
	of := func(n NameNode) bool { return n.key() == f.Name.key() }
	return slices.ContainsFunc(r.Tree.Motifs, func(m *motifNode) bool { return of(m.Fabric) }) ||
		slices.ContainsFunc(r.Tree.values(), func(v *valueNode) bool { return of(v.Name) && (v.Strips != nil || v.From != nil) })
}

// morePhoto is where a fabric says more of its photo or its stripes, in the order of the places.
func (f *fabricNode) morePhoto() []Span {
	var list []Span
	if f.Across != nil {
		list = append(list, f.acrossAt.To(f.Across.Span))
	}
	if f.Repeat != nil {
		list = append(list, f.Repeat.Span)
	}
	if f.Stripes != nil && !f.Stripes.Crosswise.Empty() {
		list = append(list, f.Stripes.Crosswise)
	}
	slices.SortFunc(list, func(a, b Span) int { return a.Start - b.Start })
	return list
}

// lineBefore is what to type for new lines before that of a place, which end as that one does.
func (r *Reading) lineBefore(place int, lines ...string) Edit {
	there := r.Source.LineSpan(r.Source.Line(place))
	at := there.Start
	if at == 0 && strings.HasPrefix(r.Source.Text, byteOrderMark) {
		at = len(byteOrderMark)
	}
	end := r.Source.endOf(there)
	return Edit{Span{at, at}, strings.Join(lines, end) + end}
}

// endOf is how a line ends.
func (s *Source) endOf(line Span) string {
	switch rest := s.Text[line.End:]; {
	case strings.HasPrefix(rest, "\r\n"):
		return "\r\n"
	case strings.HasPrefix(rest, "\r"):
		return "\r"
	}
	return "\n"
}
