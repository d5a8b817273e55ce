package report

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
)

// maxSets is how many strip sets are told one by one; more stand in a table.
const maxSets = 8

// setName is a strip set, or those of its wedges that are cut with the tip on the other edge.
func (c *cuts) setName(set int, turned bool) string { return "strip set " + c.wedgesName(set, turned) }

// wedgesName is the name of a strip set's wedges: the set's, and "reversed" for those cut with the tip on the other edge.
func (c *cuts) wedgesName(set int, turned bool) string {
	if turned {
		return c.SetName(set) + " reversed"
	}
	return c.SetName(set)
}

// sewn are the strip sets of which something is sewn.
func (c *cuts) sewn() []int {
	var list []int
	for i := range c.Sets {
		if len(c.Sets[i].Runs) > 0 {
			list = append(list, i)
		}
	}
	return list
}

// stripSets are how strips are sewn together before wedges are cut from them.
func (c *cuts) stripSets() []document.Section {
	sets := c.sewn()
	if len(sets) == 0 {
		return nil
	}
	alternately := ""
	if slices.ContainsFunc(sets, func(n int) bool { return len(c.Sets[n].Bands) > 2 }) {
		alternately = " Sew alternate seams in opposite directions to prevent bowing."
	}
	s := document.Section{ID: StripSetsID, Title: "Strip sets", Depth: document.Detail, Blocks: []document.Block{para(
		"Sew the strips of each set together along their long edges, in the order of its table, with a %s seam allowance.%s Press each set as directed, so that the seams nest where wedges meet. "+
			"Measure the set before you cut it: wedges from a set that is too narrow or too wide will not fit.%s", c.length(c.Seam), alternately, c.reversedWedges(sets))}}
	press := c.pressSets()
	if len(sets) > maxSets {
		s.Blocks = append(s.Blocks, c.manySets(press, sets)...)
		return []document.Section{s}
	}
	list := []document.Section{s}
	for _, n := range sets {
		list = append(list, c.oneSet(press, n))
	}
	return list
}

// noneReversed says whether strip sets give reversed wedges and the quilt uses none of them.
func (c *cuts) noneReversed(sets []int) bool {
	return !slices.ContainsFunc(sets, func(n int) bool { return c.Sets[n].Alike || c.Sets[n].Wanted[0] == 0 || c.Sets[n].Wanted[1] > 0 })
}

// reversedWedges says how wedges alternate along a set, where that is true of all sets that are told one by one.
func (c *cuts) reversedWedges(sets []int) string {
	if len(sets) > maxSets || !c.noneReversed(sets) {
		return ""
	}
	return " Alternate wedges of a set are reversed. This quilt uses no reversed wedges; set them aside."
}

// setLines are the lines that a strip set supplies.
func (c *cuts) setLines(n int) []int {
	return slices.DeleteFunc(slices.Clone(c.Sets[n].Lines[:]), func(l int) bool { return l < 0 })
}

// oneSet is one strip set: what it is sewn of, how long, and what is cut from it.
func (c *cuts) oneSet(press *sewing.StripSets, n int) document.Section {
	set := &c.Sets[n]
	about := c.patches(c.setLines(n))
	f := c.setFigure(n)
	f.Caption, f.About = document.Plain(capital(c.setName(n, false))+" with the wedges cut from one set."), about
	t := document.Table{Columns: []document.Column{{Title: "from the wide end"}, {Title: "cut", Kind: document.Lengths}, {Title: "finished", Kind: document.Lengths}}}
	for _, b := range set.Bands {
		t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{c.fabricCell(b.Fabric), cell(c.length(b.WidthCut)), cell(c.length(b.WidthFinished))},
			About: document.About{Faces: c.bandFaces(about.Patches, c.Fabrics[b.Fabric].Index)}})
	}
	var l document.List
	for _, text := range c.setNotes(press, n) {
		i := item(text)
		i.About = about
		l.Items = append(l.Items, i)
	}
	return document.Section{ID: StripSetID + number(n+1), Title: capital(c.setName(n, false)), Depth: document.Detail, Blocks: []document.Block{f, t, l}}
}

// setFigure is the map of a strip set.
func (c *cuts) setFigure(n int) document.Figure {
	return document.Figure{Draw: func() *diagram.Figure { return c.setMap(n) }, Marks: c.supplied()}
}

// bandFaces are the faces of a fabric in some patches.
func (c *cuts) bandFaces(patches []int, fabric int) []int {
	top := c.plans.Top
	var list []int
	for _, n := range patches {
		p := &top.Patches[n]
		for f := p.First; f < p.First+p.Count; f++ {
			if int(top.Faces[f].Fabric) == fabric {
				list = append(list, int(f))
			}
		}
	}
	return list
}

// setNotes says of a strip set, a sentence each, how long it is sewn and what is cut from it.
func (c *cuts) setNotes(press *sewing.StripSets, n int) []string {
	set := &c.Sets[n]
	list := []string{"Make " + c.runs(set) + ". The strip set should measure " + c.length(set.WidthCut) + ", raw edge to raw edge."}
	if text := c.setPressed(press, n); text != "" {
		list = append(list, text)
	}
	if set.Alike {
		list = append(list, "The strip set is the same from both edges, so all its wedges are alike.")
	} else {
		list = append(list, c.endsOf(n))
	}
	for _, r := range set.Runs {
		text := fmt.Sprintf("Cut %s from %s %s long", measure.Count(r.Wedges, "wedge"), singular(r.Sets, "the set", "each set"), c.Units.AtLeast(r.LengthCut))
		if !set.Alike {
			text += " " + c.bothKinds(n, r)
		}
		list = append(list, text+".")
	}
	if text := c.handSet(n); text != "" {
		list = append(list, text)
	}
	return list
}

// endsOf says which fabric is at the wide end of each kind of wedge, and which kind is not used.
func (c *cuts) endsOf(n int) string {
	set := &c.Sets[n]
	first, last := c.name(set.Bands[0].Fabric), c.name(set.Bands[len(set.Bands)-1].Fabric)
	if first == last { // at both ends, in different widths or with other fabrics between
		first, last = "the first of these strips", "the last"
	}
	text := "Each " + c.wedgesName(n, false) + " wedge has " + first + " at its wide end; each " + c.wedgesName(n, true) + " wedge has " + last + " there."
	if c.noneReversed(c.sewn()) {
		return text
	}
	text += " They alternate along the set."
	for i, wanted := range set.Wanted {
		if wanted == 0 {
			text += " This quilt uses no " + measure.Plural(c.wedgesName(n, i > 0)+" wedge") + "; set them aside."
		}
	}
	return text
}

// runs says how many sets are sewn and how long.
func (c *cuts) runs(s *cutting.StripSet) string {
	var list []string
	for _, r := range s.Runs {
		list = append(list, measure.Count(r.Sets, "set")+" "+c.Units.AtLeast(r.LengthCut)+" long")
	}
	return measure.List(list)
}

// bothKinds says how many wedges of each kind a set gives, and which is cut first where it gives one more of that kind.
func (c *cuts) bothKinds(n int, r cutting.SetRun) string {
	more, less := (r.Wedges+1)/2, r.Wedges/2
	wedge, reversed := c.wedgesName(n, false), c.wedgesName(n, true)
	switch {
	case more == less:
		return fmt.Sprintf("(%d %s, %d %s)", more, wedge, less, reversed)
	case r.FirstReversed == 0:
		return fmt.Sprintf("(%d %s, %d %s), starting with %s", more, wedge, less, reversed, measure.WithArticle(wedge+" wedge"))
	case r.FirstReversed == r.Sets:
		return fmt.Sprintf("(%d %s, %d %s), starting with %s", less, wedge, more, reversed, measure.WithArticle(reversed+" wedge"))
	}
	return fmt.Sprintf("(%d of one kind, %d of the other), starting %d of the sets with %s and the others with %s", more, less, r.FirstReversed, measure.WithArticle(reversed+" wedge"), measure.WithArticle(wedge+" wedge"))
}

// manySets is strip sets in a table, as pools of scraps make them.
func (c *cuts) manySets(press *sewing.StripSets, sets []int) []document.Block {
	t := document.Table{Named: true, Columns: []document.Column{{Title: "set"}, {Title: "strips from the wide end, cut"}, {Title: "sew"}, {Title: "press toward"}, {Title: "wedges", Kind: document.Counts}, {Title: "reversed wedges", Kind: document.Counts}}}
	for _, n := range sets {
		s := &c.Sets[n]
		var bands []string
		for _, b := range s.Bands {
			bands = append(bands, c.name(b.Fabric)+" "+c.length(b.WidthCut))
		}
		f := c.setFigure(n)
		t.Rows = append(t.Rows, document.Row{Cells: cells(c.SetName(n), strings.Join(bands, ", "), c.runs(s), c.setPressedShort(press, n), number(s.Wanted[0]), number(s.Wanted[1])), Figure: &f, About: c.patches(c.setLines(n))})
	}
	return []document.Block{para("Reversed wedges have their tip on the other edge of the set; alternate wedges of a set are reversed."), t}
}

// singular is the form of a word for one thing or for several.
func singular(n int, one, several string) string {
	if n == 1 {
		return one
	}
	return several
}
