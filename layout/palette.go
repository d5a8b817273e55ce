package layout

import (
	"strings"

	"eighthturn/palettes"
)

// PaletteNode brings in the fabrics of a palette.
type PaletteNode struct {
	Span
	Name NameNode
}

func parsePalette(p *parser, c *cursor, keyword Span) {
	c.newField()
	var names []string
	for _, known := range palettes.All() {
		names = append(names, known.Name)
	}
	if c.done() {
		c.fault(c.here(), "palettes are: "+strings.Join(names, ", "), "expected the name of a palette, found the end of the line")
		return
	}
	n := &PaletteNode{Name: c.usedName()}
	n.Span = keyword.To(n.Name.Span)
	if _, ok := palettes.Find(strings.ToLower(n.Name.Text)); !ok {
		hint := didYouMean(n.Name.Text, names)
		if hint == "" {
			hint = "palettes are: " + strings.Join(names, ", ")
		}
		c.fault(n.Name.Span, hint, "no palette is called %s", quote(n.Name.Text))
		p.tree.paletteReported = true
		c.dropRest()
		return
	}
	p.tree.Palettes = append(p.tree.Palettes, n)
}

// palettes brings in the fabrics of palettes behind the layout's own.
func (c *checker) palettes() {
	for _, n := range c.tree.Palettes {
		p, _ := palettes.Find(strings.ToLower(n.Name.Text))
		for _, s := range p.Fabrics {
			c.paletteFabric(n, s)
		}
	}
}

func (c *checker) paletteFabric(n *PaletteNode, s palettes.Swatch) {
	key := foldName(s.Name)
	if e, ok := c.names[key]; ok {
		if !e.palette {
			c.warn(e.span, "", "this fabric %s stands for the one of the palette %s", quote(s.Name), quote(n.Name.Text))
		}
		return
	}
	c.names[key] = entry{fabric: len(c.design.Fabrics), set: -1, pool: -1, span: n.Span, palette: true}
	c.order = append(c.order, s.Name)
	c.design.Fabrics = append(c.design.Fabrics, Fabric{Name: s.Name, Colour: s.Colour, UsableWidth: c.design.UsableWidth, Span: n.Span})
}
