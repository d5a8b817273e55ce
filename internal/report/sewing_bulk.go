package report

import (
	"fmt"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
)

// bulk is where fabric grows thick, and what becomes of points: what asks for something.
func (s *sewer) bulk() document.Section {
	b := &s.Bulk
	var list sentences
	if len(b.Thick) > 0 {
		list.add("Seams are bulky at the points below: trim the dog ears there and sew slowly.", document.About{})
	}
	for i := range b.Thick {
		list.add(s.thick(&b.Thick[i]), document.About{Patches: s.patchesAt(b.Thick[i].At)})
	}
	for i := range b.Points {
		if p := &b.Points[i]; p.Keep < p.Count {
			list.add(points(p), document.About{})
		}
	}
	for i := range b.Blunted {
		list.add(s.blunted(&b.Blunted[i]), document.About{Patches: s.patchesAt(b.Blunted[i].At)})
	}
	return document.Section{ID: SewingBulk, Title: "Bulk and points", Depth: document.Detail, Blocks: list.blocks()}
}

// flatter is how many layers less make it worth while to press a seam open: layers are counted to within one.
const flatter = 2

// thick is the points at which so many pieces meet, and what makes them flatter.
func (s *sewer) thick(t *sewing.ThickPoint) string {
	text := fmt.Sprintf("Where %d pieces meet: %s", t.Pieces, s.pointPlaces(t))
	if !t.Inside && t.Layers-t.Open >= flatter {
		text += "; press the last seam open there to reduce bulk"
	}
	return text + "."
}

// pointPlaces is where points lie, and how many.
func (s *sewer) pointPlaces(t *sewing.ThickPoint) string {
	border := "the border"
	if len(s.top.CutFacts.Borders) > 1 {
		border = "the borders"
	}
	blocks := Grid{s.top, s.Plan}.Noun() + "s"
	var list []string
	for _, m := range t.Sorts {
		switch points := measure.Count(m.Count, "point"); m.Sort {
		case sewing.AtCorners:
			list = append(list, points+" at block corners")
		case sewing.AtEdges:
			list = append(list, points+" on the edges between "+blocks)
		case sewing.AtSashes:
			list = append(list, points+" along the sashes")
		case sewing.AtBorders:
			list = append(list, points+" along "+border)
		case sewing.InBlocks:
			list = append(list, "the center of "+measure.Count(m.Count, "block"))
		}
	}
	return measure.List(list)
}

// thickLayers is how many layers lie at one sort of thick points.
func (s *sewer) thickLayers(t *sewing.ThickPoint) string {
	text := fmt.Sprintf("%d layers where %d pieces meet, first at %s", t.Layers, t.Pieces, s.where(t.At[0]))
	if !t.Inside && t.Open < t.Layers {
		text += fmt.Sprintf("; %d with the last seam pressed open", t.Open)
	}
	return text + "."
}

// points says how many points of one shape keep their seam allowance.
func points(p *sewing.Points) string {
	text := fmt.Sprintf("Points of %s: %d of %d keep a seam allowance all around", measure.Plural(p.Shape), p.Keep, p.Count)
	if p.AtEdge > 0 {
		text += fmt.Sprintf("; %d %s on the quilt's finished edge, right in the binding seam", p.AtEdge, singular(p.AtEdge, "lies", "lie"))
	}
	return text + "."
}

// blunted is points that the binding may blunt; "" for those on the outside itself.
func (s *sewer) blunted(n *sewing.NearPoint) string {
	if n.Distance == 0 {
		return ""
	}
	lie, first := "lie", "them, first"
	if n.Count == 1 {
		lie, first = "lies", "it,"
	}
	return fmt.Sprintf("%s %s only %s from the quilt's finished edge, less than a seam allowance: the binding may blunt %s at %s.", measure.Count(n.Count, "point"), lie, s.units.Nearest(n.Distance), first, s.where(n.At[0]))
}
