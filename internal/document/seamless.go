package document

// under is the width of the lines beneath seams, in points.
const under = 0.6

// Seamless is the drawing with each filled layer drawn twice: first, beneath all, with a line of
// its own colour round each outline, then as it is. Where viewers soften two edges that meet,
// what shows between them is then of one of their colours, and not of the page. Outlines stay
// where they are.
func (d Drawing) Seamless() Drawing {
	var beneath []Layer
	for _, l := range d.Layers {
		if l.Fill != nil && !l.Open {
			l.Line, l.Ink = under, *l.Fill
			beneath = append(beneath, l)
		}
	}
	d.Layers = append(beneath, d.Layers...)
	return d
}
