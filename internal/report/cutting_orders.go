package report

import (
	"fmt"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/orders"
)

// fewerSets says what to write so that no strip sets are sewn for half of their wedges alone.
func (c *cuts) fewerSets() document.Section {
	s := section("fewer-sets", "Fewer strip sets", document.Answer)
	list := c.plans.bothWays()
	if len(list) == 0 {
		return s
	}
	write := "write this line"
	if len(list) > 1 {
		write = "write one of these lines"
	}
	s = with(s, para("Every other wedge of a strip set is reversed, which makes %s. To use both kinds, %s:", measure.Count(list[0].LeftOver[0], "leftover wedge"), write))
	for i := range list {
		s = with(s, document.Source{Lines: trimmed(list[i].Lines)}, paragraph(c.saves(&list[i])))
	}
	return s
}

// saves says how a layout differs that uses strip sets both ways round, and what it saves.
func (c *cuts) saves(b *orders.Better) string {
	text := "The wedges of each block differ"
	if b.ByWebs {
		text = "Neighboring webs differ"
	}
	text += fmt.Sprintf(": %s instead of %d", measure.Count(b.Sets[1], "strip set"), b.Sets[0])
	var less []string
	for i := range b.Saved {
		f := &b.Saved[i]
		less = append(less, fmt.Sprintf("%s of %s instead of %s", c.shop(&f.Then), c.plans.called(f.Fabric), c.shop(&f.Now)))
	}
	if len(less) > 0 {
		text += "; buy " + measure.List(less)
	}
	return text + "."
}
