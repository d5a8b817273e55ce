package report

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
)

// dealtSets are how strips are stacked, dealt and sewn into sets, and which webs each set makes.
func (c *cuts) dealtSets() []document.Section {
	var list []document.Section
	for i := range c.Dealt {
		d := &c.Dealt[i]
		list = append(list, document.Section{
			ID: DealtSetsID + number(i+1), Title: "Deal the strips of " + d.Name, Depth: document.Detail,
			Blocks: append(append(bullets(c.dealing(d)...), c.dealtTable(d)), bullets(c.asDealt(d)...)...),
		})
	}
	return list
}

// dealing says how strips are stacked, dealt and sewn.
func (c *cuts) dealing(d *cutting.Dealing) []string {
	list := []string{"Stack the cut strips: one stack for each strip of the set, its fabrics from the top in the order of the table."}
	if text := c.restacked(d); text != "" {
		list = append(list, text)
	}
	return append(list, "Sew the top strips of all stacks together for the first set, the next ones for the second, and so on. Pin a label with its name to each set, and to the wedges that you cut from it.")
}

// restacked says how one stack is made from another, where that is by moving strips from its top to its bottom.
func (c *cuts) restacked(d *cutting.Dealing) string {
	first := stack(d, 0)
	round := len(distinct(first))
	var moves []string
	for strip := 1; strip < len(d.Sets[0].Fabrics); strip++ {
		if n := toBottom(first[:round], stack(d, strip)[:round]); n > 0 {
			moves = append(moves, fmt.Sprintf("%s of stack %d", topStrips(n), strip+1))
		}
	}
	if len(moves) == 0 || round < 2 {
		return ""
	}
	text := fmt.Sprintf("For sets %d to %d, stack all strips in the order of strip 1. Then move to the bottom %s.", d.Sets[0].Number, d.Sets[round-1].Number, measure.List(moves))
	if round < len(d.Sets) {
		text += " Stack the strips for the other sets as the table says."
	}
	return text
}

func topStrips(n int) string {
	if n == 1 {
		return "the top strip"
	}
	return fmt.Sprintf("the top %d strips", n)
}

// stack is the fabrics of one strip, set by set.
func stack(d *cutting.Dealing, strip int) []int {
	list := make([]int, len(d.Sets))
	for i := range d.Sets {
		list[i] = d.Sets[i].Fabrics[strip]
	}
	return list
}

// distinct is numbers, each once.
func distinct(list []int) []int { return slices.Compact(slices.Sorted(slices.Values(list))) }

// toBottom is how many of the first of a stack go to its bottom to make another; 0 where that does not make it.
func toBottom(from, to []int) int {
	for n := 1; n < len(from); n++ {
		if slices.Equal(slices.Concat(from[n:], from[:n]), to) {
			return n
		}
	}
	return 0
}

// mostStrips is how many strips a set has to have a column each in a table.
const mostStrips = 5

// dealtTable is the sets one by one: their fabrics, and the webs that are cut from them.
func (c *cuts) dealtTable(d *cutting.Dealing) document.Table {
	t := document.Table{Named: true, Columns: []document.Column{{Title: "set"}}}
	bands := c.Sets[d.Sets[0].Set].Bands
	if len(bands) > mostStrips {
		t.Columns = append(t.Columns, document.Column{Title: "strips from the wide end"})
	} else {
		for i, b := range bands {
			title := fmt.Sprintf("strip %d, %s", i+1, c.length(b.WidthCut))
			if i == 0 {
				title += " (wide end)"
			}
			t.Columns = append(t.Columns, document.Column{Title: title})
		}
	}
	t.Columns = append(t.Columns, document.Column{Title: "webs, by their blocks"})
	for i := range d.Sets {
		s := &d.Sets[i]
		row := document.Row{Cells: []document.Cell{cell(c.SetName(s.Set))}, About: c.patches(c.setLines(s.Set))}
		if len(bands) > mostStrips {
			row.Cells = append(row.Cells, cell(c.fabricNames(s.Fabrics)))
		} else {
			for _, f := range s.Fabrics {
				row.Cells = append(row.Cells, c.fabricCell(f))
			}
		}
		row.Cells = append(row.Cells, cell(strings.Join(c.websOf(s), "; ")))
		t.Rows = append(t.Rows, row)
	}
	return t
}

func (c *cuts) fabricNames(list []int) string {
	var names []string
	for _, f := range list {
		names = append(names, c.name(f))
	}
	return strings.Join(names, ", ")
}

// websOf are the webs of a set: how many wedges each takes, and where it is.
func (c *cuts) websOf(s *cutting.DealtSet) []string {
	var list []string
	for i := range s.Webs {
		w := &s.Webs[i]
		var cells []int
		for _, b := range w.Blocks {
			cells = append(cells, (b.Row-1)*c.plans.Top.Columns+b.Column-1)
		}
		list = append(list, c.wedgesOf(w)+" at "+cellPlaces(cells, c.plans.Top.Columns))
	}
	return list
}

// wedgesOf is how many wedges of a set a web takes.
func (c *cuts) wedgesOf(w *cutting.DealtWeb) string {
	var text string
	switch n := w.Wedges; {
	case n[1] == 0:
		text = number(n[0])
	case n[0] == 0:
		text = number(n[1]) + " reversed"
	default:
		text = fmt.Sprintf("%d and %d reversed", n[0], n[1])
	}
	if w.Mixed {
		text += " of a mixed web"
	}
	return text
}

// asDealt says how evenly the fabrics are dealt, and how far the webs are from being of one set each.
func (c *cuts) asDealt(d *cutting.Dealing) []string {
	list := []string{strings.TrimSpace("No set holds a fabric twice. " + c.evenness(d))}
	text := "All wedges of a web come from one set"
	if d.Mixed > 0 {
		text = fmt.Sprintf("In %s a web takes wedges from more than one set; %s would keep all webs whole", measure.Count(d.Mixed, "place"), measure.Count(d.Whole, "set"))
	}
	apart := "neighboring webs come from different sets"
	if d.Neighbors > 0 {
		apart = "in " + measure.Count(d.Neighbors, "place") + " neighboring webs come from the same set"
	}
	return append(list, text+"; "+apart+".")
}

// evenness says how often each fabric is used in each place.
func (c *cuts) evenness(d *cutting.Dealing) string {
	least, most := len(d.Sets), 0
	for strip := range d.Sets[0].Fabrics {
		list := stack(d, strip)
		fabrics := c.dealtFrom(d, list)
		if len(fabrics) == 1 {
			continue // one fabric for all sets
		}
		for _, f := range fabrics {
			n := 0
			for _, g := range list {
				if f == g {
					n++
				}
			}
			least, most = min(least, n), max(most, n)
		}
	}
	switch {
	case most == 0:
		return ""
	case least == most:
		return "In each place every fabric is used " + times(most) + "."
	case least == 0:
		return "In each place every fabric is used " + times(most) + " at most."
	}
	return fmt.Sprintf("In each place every fabric is used %s or %s.", times(least), times(most))
}

// dealtFrom is the fabrics that are dealt to the strips that share one with a stack.
func (c *cuts) dealtFrom(d *cutting.Dealing, list []int) []int {
	fabrics := distinct(list)
	for strip := range d.Sets[0].Fabrics {
		other := stack(d, strip)
		if slices.ContainsFunc(other, func(f int) bool { return slices.Contains(fabrics, f) }) {
			fabrics = distinct(slices.Concat(fabrics, other))
		}
	}
	return fabrics
}

// times is a number of times in words.
func times(n int) string {
	switch n {
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return number(n) + " times"
}
