package layout

import (
	"strings"

	"eighthturn/palettes"
)

func paletteStatements() []Statement {
	return []Statement{{
		Word: "palette", Form: "palette name", Summary: "brings in the fabrics of a palette", Example: "palette tidewater",
		parse: parsePalette, check: (*checker).palettes, after: []string{"fabric"},
	}}
}

// paletteNode brings in the fabrics of a palette.
type paletteNode struct {
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
	n := &paletteNode{Name: c.usedName()}
	n.Span = keyword.To(n.Name.Span)
	if _, ok := palettes.Find(strings.ToLower(n.Name.Text)); !ok {
		c.fault(n.Name.Span, "", "no palette is called %s", quote(n.Name.Text)).suggest(didYouMean(n.Name.Text, names).backed("palettes are: " + strings.Join(names, ", ")))
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

func (c *checker) paletteFabric(n *paletteNode, s palettes.Swatch) {
	name := NameNode{n.Span, s.Name}
	if e, known := c.names.find(name); known && !e.poisoned() {
		if !e.palette {
			c.warn(e.span, "", "this fabric %s replaces the one of the palette %s", quote(s.Name), quote(n.Name.Text))
		}
		return
	}
	c.names.define(name, &entry{is: aFabric, index: len(c.design.Fabrics), palette: true})
	c.design.Fabrics = append(c.design.Fabrics, Fabric{Name: s.Name, Colour: s.Colour, UsableWidth: c.design.UsableWidth, Span: n.Span})
}
