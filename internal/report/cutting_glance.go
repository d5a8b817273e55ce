package report

import (
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
)

// ToCutID is the id of the section that tells at a glance what is cut.
const ToCutID = "to-cut"

// toCut is the strips of each fabric, widest first, without what becomes of them.
func (c *cuts) toCut() document.Section {
	t := document.Table{Named: true, Columns: []document.Column{{Title: "fabric"}, {Title: "cut across the width of fabric (WOF)"}}}
	for i := range c.Fabrics {
		if words := c.stripsAtOnce(i); words != "" {
			r := document.Row{Cells: []document.Cell{c.fabricCell(i), cell(words)}}
			r.About.Faces = c.plans.FacesByFabric()[c.Fabrics[i].Index]
			t.Rows = append(t.Rows, r)
		}
	}
	return with(section(ToCutID, "Strips to cut", document.Answer), t)
}

// stripsAtOnce is a fabric's strips, those of one width together: "7 strips 7 in, 6 strips 3 1/2 in".
func (c *cuts) stripsAtOnce(fabric int) string {
	f := &c.Fabrics[fabric]
	list := c.sheetsAtOnce(f)
	for i := range f.Blocks {
		list = append(list, together(c.blockLength(&f.Blocks[i])+" for lengthwise pieces"))
	}
	for _, s := range stripsByWidth(f, (*cutting.Strip).OfYardage) {
		list = append(list, together(measure.Count(s.count, "strip")+" "+c.length(s.width)))
	}
	var onPrint []measure.NM
	of := map[measure.NM]int{}
	for i := range f.FromPrint {
		p := &f.FromPrint[i]
		for n := range p.Strips {
			w := p.Strips[n].WidthCut
			if of[w] == 0 {
				onPrint = append(onPrint, w)
			}
			of[w] += p.Times
		}
	}
	for _, w := range onPrint {
		list = append(list, together(measure.Count(of[w], "strip")+" "+c.length(w))+" lined up on the print")
	}
	for _, s := range stripsByWidth(f, func(s *cutting.Strip) bool { return s.OnPrint }) {
		list = append(list, together(measure.Count(s.count, "strip")+" "+c.length(s.width))+" between those")
	}
	return strings.Join(list, ", ")
}

// blockLength is how long a length of fabric is cut, or as many like ones.
func (c *cuts) blockLength(b *cutting.Block) string {
	if b.Times > 1 {
		return number(b.Times) + " lengths of " + c.Units.AtLeast(b.LengthCut)
	}
	return c.Units.AtLeast(b.LengthCut)
}
