package layout

import (
	"slices"
	"strings"

	"eighthturn/palettes"
)

func colorwayStatements() []Statement {
	return []Statement{{
		Word: "colorway", Form: "colorway name fabric (color | fabric) …", Summary: "the same quilt in other fabrics: each fabric, and what takes its place",
		Example: "colorway dusk cream #d9c7b0 rust navy navy rust", next: "a fabric and what takes its place", also: []string{"colourway"},
		parse: parseColorway, check: (*checker).colorways, after: []string{"grid"},
	}}
}

// colorwayNode is a colorway as written.
type colorwayNode struct {
	Span
	Name    NameNode
	Changes []changeNode
}

// changeNode is a fabric and what takes its place: another, or a color where none has that name.
type changeNode struct {
	From, To NameNode
	colour   palettes.Colour
	coloured bool // To may be read as a color
}

// Colorway is the quilt in other fabrics.
type Colorway struct {
	Name    string
	Changes []Change // each fabric once, in the order of the fabrics
	Span    Span
}

// Change is a fabric of the design, by index, and what takes its place: another fabric of the design, or a color.
type Change struct {
	Fabric int
	Takes  int             // a fabric, by index; -1 for a color
	Colour palettes.Colour // where no fabric does
}

// In is the design in a colorway. A fabric that another takes the place of is found where that one was, so that no two have
// one name; places in the text stay.
func (d *Design) In(c *Colorway) *Design {
	other := *d
	other.Fabrics = slices.Clone(d.Fabrics)
	var gone, free []int // fabrics that leave, and the places that are left
	for _, change := range c.Changes {
		if change.Takes < 0 {
			other.Fabrics[change.Fabric] = Fabric{Name: d.Fabrics[change.Fabric].Name, Colour: change.Colour, UsableWidth: d.UsableWidth}
			continue
		}
		other.Fabrics[change.Fabric] = d.Fabrics[change.Takes]
		if !slices.ContainsFunc(c.Changes, func(o Change) bool { return o.Takes == change.Fabric }) {
			gone = append(gone, change.Fabric)
		}
		if !slices.ContainsFunc(c.Changes, func(o Change) bool { return o.Fabric == change.Takes }) {
			free = append(free, change.Takes)
		}
	}
	for i, place := range free {
		other.Fabrics[place] = d.Fabrics[gone[i]]
	}
	for i := range other.Fabrics {
		f := &other.Fabrics[i]
		f.Span = d.Fabrics[i].Span
		if f.Stripes != nil {
			f.Stripes = f.Stripes.Recolored(func(of int) palettes.Colour { return other.Fabrics[of].Colour })
			f.Colour = f.Stripes.Sample().Colour
		}
	}
	return &other
}

func parseColorway(p *parser, c *cursor, keyword Span) {
	c.newField()
	name, ok := c.newName("a colorway's name", false)
	if !ok {
		c.dropRest()
		return
	}
	n := &colorwayNode{Name: name}
	p.tree.Colorways = append(p.tree.Colorways, n)
	for ok && !c.done() {
		ok = c.change(n)
	}
	if ok && len(n.Changes) == 0 {
		ok = false
		c.fault(c.here(), "", "expected a fabric and what takes its place in %s, found the end of the line", quote(name.Text))
	}
	c.dropIfFaulty(!ok)
	n.Span = keyword.To(c.last())
}

// change takes a fabric and what takes its place.
func (c *cursor) change(n *colorwayNode) bool {
	c.newField()
	from, ok := c.nameOf("a fabric's name")
	if !ok {
		return false
	}
	at := c.here()
	word := c.text(at)
	if c.done() {
		c.fault(at, "", "expected the color or the fabric that takes the place of %s, found the end of the line", quote(from.Text))
		return false
	}
	m := changeNode{From: from, To: NameNode{at, word}}
	colour, err := palettes.Parse(word)
	switch {
	case err == nil:
		m.colour, m.coloured = colour, true
		c.take(at)
	case strings.HasPrefix(word, "#"):
		c.fault(at, "", "%s", err.Error()).suggest(c.colourHint(word))
		return false
	default:
		if m.To, ok = c.nameOf("a color or a fabric"); !ok {
			return false
		}
	}
	n.Changes = append(n.Changes, m)
	return true
}

// colorways looks up what colorways change, once all else is known.
func (c *checker) colorways() {
	if len(c.tree.Colorways) == 0 {
		return
	}
	inQuilt := make([]bool, len(c.design.Fabrics))
	for _, e := range c.names.entries {
		if e.is == aFabric {
			inQuilt[e.index] = e.used
		}
	}
	named := map[string]Span{}
	for i, n := range c.tree.Colorways {
		if i == MaxColorways {
			c.fault(n.Name.Span, "", "a layout may have at most %d colorways", MaxColorways)
			return
		}
		if first, twice := named[n.Name.key()]; twice {
			c.fault(n.Name.Span, "give this one another name", "the colorway %s is already defined", quote(n.Name.Text)).note(first, "first defined here")
			continue
		}
		named[n.Name.key()] = n.Name.Span
		c.colorway(n, inQuilt)
	}
}

// colorway makes one colorway; inQuilt says which fabrics the quilt itself uses.
func (c *checker) colorway(n *colorwayNode, inQuilt []bool) {
	w := Colorway{Name: n.Name.Text, Span: n.Span}
	from := map[int]NameNode{}   // the fabrics that are changed
	leaves := map[int]bool{}     // those that another fabric takes the place of
	taking := map[int]NameNode{} // by the fabric that takes a place, whose it is
	for _, m := range n.Changes {
		e, known := c.names.find(m.From)
		waits := known && e.is == aFabric && !e.used
		f, ok := c.fabric(m.From, "a colorway changes fabrics")
		if !ok {
			continue
		}
		if first, twice := from[f]; twice {
			c.fault(m.From.Span, "", "%s has another fabric in its place already", quote(m.From.Text)).
				suggest(c.leaveOut(m.From.Text+" "+m.To.Text, m.From.To(m.To.Span))).note(first.Span, "first changed here")
			continue
		}
		from[f] = m.From
		if waits {
			c.warn(m.From.Span, "", "%s is changed and is not in the quilt", quote(m.From.Text))
		}
		change := Change{Fabric: f, Takes: -1, Colour: m.colour}
		if _, known := c.names.find(m.To); known || !m.coloured {
			t, ok := c.inPlace(m, f, taking)
			if !ok {
				continue
			}
			taking[t], leaves[f] = m.From, true
			change.Takes = t
		}
		w.Changes = append(w.Changes, change)
	}
	for _, m := range n.Changes {
		if e, known := c.names.find(m.To); known && e.is == aFabric && taking[e.index].Span == m.From.Span && !leaves[e.index] {
			c.stays(n, m, inQuilt[e.index] || from[e.index].Text != "")
		}
	}
	slices.SortFunc(w.Changes, func(a, b Change) int { return a.Fabric - b.Fabric })
	c.design.Colorways = append(c.design.Colorways, w)
}

// inPlace is the fabric, by index, that takes the place of another.
func (c *checker) inPlace(m changeNode, of int, taking map[int]NameNode) (int, bool) {
	if _, known := c.names.find(m.To); !known && c.misnamed(m.To.Span) {
		if p := paletteWith(m.To.Text); p != "" {
			line := c.source.lineSpan(c.source.Line(m.To.Start)).Start
			c.fault(m.To.Span, "", "no color and no fabric of this layout is called %s", quote(m.To.Text)).
				suggest(edit("bring in its palette: write palette "+p, Span{line, line}, "palette "+p+"\n"))
			return 0, false
		}
	}
	t, ok := c.fabric(m.To, "a fabric takes the place of a fabric")
	switch {
	case !ok:
	case t == of:
		c.fault(m.From.To(m.To.Span), "", "%s takes its own place", quote(m.To.Text)).suggest(c.leaveOut(m.From.Text+" "+m.To.Text, m.From.To(m.To.Span)))
	default:
		first, twice := taking[t]
		if !twice {
			return t, true
		}
		c.fault(m.To.Span, "write a color, as in "+m.From.Text+" "+c.design.Fabrics[t].Colour.Hex(), "%s takes the place of %s already", quote(m.To.Text), quote(first.Text))
	}
	return 0, false
}

// stays reports a fabric that takes a place and stays where it is too: two fabrics of the quilt would be one.
func (c *checker) stays(n *colorwayNode, m changeNode, inQuilt bool) {
	if !inQuilt {
		return
	}
	swap := " " + m.To.Text + " " + m.From.Text
	c.fault(m.To.Span, "", "%s takes the place of %s and keeps its own", quote(m.To.Text), quote(m.From.Text)).
		suggest(edit("to swap the two, write"+swap+" behind them", Span{n.End, n.End}, swap).backed("write the fabric that takes the place of " + m.To.Text))
}

// paletteWith is the palette that has a fabric, "" if none has.
func paletteWith(fabric string) string {
	for _, p := range palettes.All() {
		for _, s := range p.Fabrics {
			if foldName(s.Name) == foldName(fabric) {
				return p.Name
			}
		}
	}
	return ""
}
