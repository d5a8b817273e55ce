package report

import (
	"fmt"

	"eighthturn/internal/document"
	"eighthturn/internal/longarm"
	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// Quilting is one page for the long-arm quilter: the sizes of the three layers, the borders, the edges that stretch, room for
// what was agreed, and last a picture to draw it into, as large as there is room for.
func Quilting(p *Plans) document.Document {
	s := newSewer(p)
	f := &finishing{p.Cuts(), p.Top, p.Top.Units}
	d := document.Document{Title: p.named("for the long-arm quilter"), Author: p.Top.Credits.Designer, Copyright: p.Top.Credits.Copyright}
	page := document.Section{ID: "quilting", Blocks: []document.Block{document.Section{ID: "layers", Title: "Sizes", Blocks: []document.Block{f.layers()}}}}
	if borders := p.borderList(); len(borders) > 0 {
		page.Blocks = append(page.Blocks, document.Section{ID: "borders", Title: "Borders, from the inside out", Blocks: borders})
	}
	page.Blocks = append(page.Blocks, document.Section{ID: "edges", Title: "Bias edges", Blocks: s.outerEdges()},
		document.Section{ID: "notes", Title: "Notes", Blocks: []document.Block{quiltingNotes(), p.quiltingMap()}})
	d.Sections = []document.Section{page}
	return d
}

// layers are the sizes of top, backing and batting.
func (f *finishing) layers() document.Table {
	t := table(words("layer"), lengths("width"), lengths("length"), words(""))
	t.Named = true
	o := f.top.Outer
	seams := 2 * f.top.Seam
	t.Rows = append(t.Rows,
		row("Quilt top, raw edge to raw edge", f.units.Nearest(o.Width()+seams), f.units.Nearest(o.Height()+seams), ""),
		row("Quilt, finished", f.units.Nearest(o.Width()), f.units.Nearest(o.Height()), ""))
	if k := f.Backing; k != nil {
		seam := "no seam"
		if way := &k.Ways[k.Less]; way.Panels > 1 {
			seam = measure.Count(way.Panels, "panel") + ", " + DirectionWord(k.Less) + " seams"
		}
		t.Rows = append(t.Rows, row("Backing, at least", f.units.AtLeast(k.WidthCut), f.units.AtLeast(k.HeightCut), seam))
	}
	if k := f.Batting; k != nil {
		t.Rows = append(t.Rows, row("Batting, at least", f.units.AtLeast(k.WidthCut), f.units.AtLeast(k.HeightCut), ""))
	}
	return t
}

// The greatest size of the picture; it is made smaller where the page has less room.
const (
	quiltingMapWidth  = 4 * measure.Inch
	quiltingMapHeight = 3 * measure.Inch
)

// quiltingMap is the top in lines, with the edge that is up.
func (p *Plans) quiltingMap() document.Picture {
	o := p.Top.Outer
	d := document.Drawing{Min: measure.Point(o.Min), Max: measure.Point(o.Max)}
	for _, l := range longarm.Layers(p.Top) {
		if l.Name == "seams" {
			continue
		}
		layer := document.Layer{Name: l.Name, Open: true, Line: 0.5, Ink: palettes.Colour{}}
		for _, line := range l.Lines {
			layer.Paths = append(layer.Paths, line[:])
		}
		d.Layers = append(d.Layers, layer)
	}
	scale := min(float64(quiltingMapWidth)/float64(o.Width()), float64(quiltingMapHeight)/float64(o.Height()))
	width := measure.NM(scale * float64(o.Width()))
	return document.Picture{Of: d, Width: width, Least: width / 4, Caption: document.Plain("The quilt top, right side up, its top edge up."), Alternative: "The blocks and borders of the quilt top in lines."}
}

// maxBordersListed is how many borders the page has room for.
const maxBordersListed = 3

// borderList is each border's width and fabric.
func (p *Plans) borderList() []document.Block {
	var list []string
	for i, b := range p.Top.CutFacts.Borders {
		if i == maxBordersListed {
			list = append(list, "And "+measure.Count(len(p.Top.CutFacts.Borders)-i, "more border")+".")
			break
		}
		list = append(list, fmt.Sprintf("%s: finishes %s wide.", capital(p.Top.Fabrics[b.Fabric].Name), p.Top.Units.Nearest(b.Width)))
	}
	return bullets(list...)
}

// outerEdges are the sentences on edges that stretch; where there are none, or borders hold them, that is said.
func (s *sewer) outerEdges() []document.Block {
	var list []string
	for _, side := range s.outside() {
		list = append(list, side.text)
	}
	switch {
	case len(list) == 0:
		list = append(list, "All outer edges are on the straight grain.")
	case len(s.top.CutFacts.Borders) > 0:
		list = append(list, "The borders are cut on the straight grain and hold those edges.")
	}
	return bullets(list...)
}

// quiltingNotes are places to fill in by hand.
func quiltingNotes() document.List {
	l := document.List{Marker: document.Tick}
	for _, what := range []string{"Quilting design", "Thread and batting", "Trim, or leave untrimmed", "Needed by"} {
		l.Items = append(l.Items, item(what+": "+blank))
	}
	return l
}
