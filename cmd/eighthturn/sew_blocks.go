package main

import (
	"fmt"
	"strings"

	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/render"
)

// block writes how the blocks of one label are made.
func (p *sewPage) block(n int) {
	b := &p.Blocks[n]
	p.heading(p.BlockHead(b))
	if len(b.Steps) == 0 {
		p.detail(fmt.Sprintf("A piece of cloth, %s unfinished; nothing is sewn.", p.Size(b.Unfinished)))
	}
	for i := range b.Steps {
		p.WriteString(render.Wrapped(p.StepHead(b, i), "  "))
		for _, line := range p.StepLines(b, &b.Steps[i]) {
			p.detail(line)
		}
	}
	if b.Column {
		p.item(p.LongestLine(b))
	}
	for i := range b.Rounds {
		p.item(p.RoundLine(&b.Rounds[i]))
	}
	for group := range b.Ways {
		for _, s := range p.PressLines(b, group) {
			p.item(s.Text)
		}
	}
	p.colourings(b)
}

// mostColourings is how many ways of colouring a text lists one by one.
const mostColourings = 12

// colourings writes what each block is sewn of, and where it goes.
func (p *sewPage) colourings(b *sewing.Block) {
	if len(b.Variants) > mostColourings {
		p.item(fmt.Sprintf("%d of them differ in cloth; the first of them follow, and --json lists them all:", len(b.Variants)))
	}
	for i := range b.Variants[:min(len(b.Variants), mostColourings)] {
		p.colouring(b, &b.Variants[i])
	}
}

func (p *sewPage) colouring(b *sewing.Block, c *sewing.FabricVariant) {
	places := p.PlaceLines(b, c, 0)
	if len(places) == 1 {
		p.item(p.VariantLine(b, c) + "; " + places[0].Text)
	} else {
		p.item(p.VariantLine(b, c))
		for _, s := range places {
			p.detail(s.Text)
		}
	}
	for _, m := range c.Makes {
		if m.Mirror {
			p.detail(fmt.Sprintf("%s: make %d in this order: %s", b.Steps[m.Step].Name, m.Count, strings.Join(m.Cloths, "; ")))
		}
	}
}
