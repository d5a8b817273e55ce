package report

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/palettes"
)

// CuttingMaps are the cutting maps: one for each fabric of the plan that something is cut from, in its order, then one for
// each strip set. Cloth lies with its selvages to the left and right; what stands for a line of the plan is marked with its
// number.
func CuttingMaps(p *Plans) []CuttingMap {
	c := newCuts(p)
	var list []CuttingMap
	for i := range c.Fabrics {
		if f := &c.Fabrics[i]; f.IsCut() {
			list = append(list, CuttingMap{f.Name, false, c.fabricMap(i)})
		}
	}
	for _, n := range c.sewn() {
		list = append(list, CuttingMap{c.SetName(n), true, c.setMap(n)})
	}
	return list
}

// CuttingMapBook is the cutting maps to be printed, with what is to be minded with a cutter.
func CuttingMapBook(p *Plans) document.Document {
	d := document.Document{Title: p.named("cutting maps")}
	for _, m := range CuttingMaps(p) {
		d.Sections = append(d.Sections, document.Section{Blocks: []document.Block{document.Figure{Of: *m.Figure}}})
	}
	cautions, _ := Cutting(p).Section(cautionsID)
	cautions.Blocks = []document.Block{document.Box{Caution: true, Blocks: cautions.Blocks}}
	d.Sections = append(d.Sections, cautions)
	return d
}

// CuttingMapTitle begins the title of every map.
const CuttingMapTitle = "Cutting map"

// CuttingMap is the map of a fabric, or of a strip set as it is sewn and cut.
type CuttingMap struct {
	Name   string
	Set    bool // of a strip set
	Figure *diagram.Figure
}

// clothMap is a map that is being drawn.
type clothMap struct {
	*cuts
	figure *diagram.Figure
	color  palettes.Colour
	cloth  clothPrint // what the fabric shows that is no plain color
	y      measure.NM // where the next strip begins
}

// Points of the words in maps.
const (
	labelPoints  = 8
	marginPoints = 8
)

// fabricMap is the map of one fabric.
func (c *cuts) fabricMap(fabric int) *diagram.Figure {
	f := &c.Fabrics[fabric]
	d := &clothMap{cuts: c, color: f.Colour, cloth: c.clothPrint(f), figure: &diagram.Figure{Title: CuttingMapTitle + ", " + c.fabricTitle(fabric), Description: c.mapWords(f)}}
	if f.From != nil {
		for n := range f.From.Sheets {
			d.sheet(f, n)
		}
	}
	for n := range f.Blocks {
		d.block(f, n)
	}
	for i := range f.Strips {
		if s := &f.Strips[i]; s.OfYardage() {
			d.strip(s, 0)
			d.end(f, s)
			d.y += s.WidthCut
		}
	}
	d.fromPrint(f)
	d.betweenPrint(f)
	d.figure.Max = measure.Point{X: f.UsableWidth, Y: d.y}
	if f.LengthCut == 0 && f.From != nil { // nothing but precuts, which are smaller
		d.figure.Max.X = f.From.Sheets[0].LengthCut
	}
	return d.figure
}

// mapWords is a map for those who cannot see it.
func (c *cuts) mapWords(f *cutting.Fabric) string {
	var parts []string
	for _, b := range f.Blocks {
		pieces := 0
		for _, column := range b.Columns {
			pieces += column.Units
		}
		length := "a length of "
		if b.Times > 1 {
			length = "each of " + number(b.Times) + " lengths of "
		}
		parts = append(parts, fmt.Sprintf("%s%s with %s cut along the length of fabric", length, c.length(b.LengthCut), measure.Count(pieces, "piece")))
	}
	for i := range f.Strips {
		s := &f.Strips[i]
		var words []string
		for n := range s.Cuts {
			words = append(words, c.cutWords(&s.Cuts[n], s))
		}
		parts = append(parts, fmt.Sprintf("%s %s wide: %s", measure.Count(s.Times, "strip")+onMap(f, s), c.length(s.WidthCut), strings.Join(words, ", ")))
	}
	return strings.Join(append(parts, c.printWords(f)...), "; ")
}

func (d *clothMap) mark(m diagram.Mark) { d.figure.Marks = append(d.figure.Marks, m) }

// words adds words on the fabric in the middle of a rectangle, along its longer side.
func (d *clothMap) words(text string, at measure.Point, along, across measure.NM, lit []int) {
	w := &diagram.Words{Text: text, At: measure.Point{X: at.X + along/2, Y: at.Y + across/2}, Points: labelPoints, Room: along * 9 / 10, Across: across, Optional: true, Plate: true}
	if backing := d.color; d.cloth.pieces == nil {
		w.Backing = &backing
	}
	if across > along {
		w.Quarters, w.Room, w.Across = 3, across*9/10, along
	}
	d.mark(diagram.Mark{Lit: lit, Words: w})
}

// marginal is where words in the margin stand, the height that they have there, and the lines that they are about.
type marginal struct {
	at     measure.Point
	anchor diagram.Anchor
	high   measure.NM
	lit    []int
}

// beside adds words in the margin.
func (d *clothMap) beside(text string, beside marginal) {
	d.mark(diagram.Mark{Lit: beside.lit, Words: &diagram.Words{Text: text, At: beside.at, Points: marginPoints, Anchor: beside.anchor, Across: beside.high, Optional: true}})
}

// area adds a filled outline.
func (d *clothMap) area(outline []measure.Point, lit []int) {
	d.mark(diagram.Mark{Lit: lit, Area: &diagram.Area{Outline: outline, Fill: d.color, Edge: diagram.Thin, Print: d.cloth.pieces}})
}

// edge adds the outline of cloth of which nothing need be used.
func (d *clothMap) edge(outline []measure.Point) {
	d.mark(diagram.Mark{Area: &diagram.Area{Outline: outline, Clear: true, Edge: diagram.Cut}})
}

// pieces draws what a strip is cut into.
func (d *clothMap) pieces(s *cutting.Strip, x measure.NM) {
	for i := range s.Cuts {
		if s.Cuts[i].Use != cutting.ForEnd {
			d.cut(&s.Cuts[i], x)
		}
		x += s.Cuts[i].Length()
	}
}

// end draws the narrower strips that a strip's end is cut into.
func (d *clothMap) end(f *cutting.Fabric, s *cutting.Strip) {
	if s.End < 0 {
		return
	}
	y, x := d.y, s.LengthCut-f.Ends[s.End].LengthCut
	for i := range f.Strips {
		if n := &f.Strips[i]; n.OnEnd == s.End {
			d.strip(n, x)
			d.y += n.WidthCut
		}
	}
	d.y = y
}

// strip draws a strip once, with its words, and how many there are.
func (d *clothMap) strip(s *cutting.Strip, x measure.NM) {
	var all []int
	at := x
	middle := d.y + s.WidthCut/2
	d.pieces(s, x)
	for i := range s.Cuts {
		c := &s.Cuts[i]
		if c.Use == cutting.ForEnd {
			continue
		}
		d.words(d.label(c), measure.Point{X: at, Y: d.y}, c.Length(), measure.NM(c.Rows)*c.AcrossCut, c.Lines)
		all = append(all, c.Lines...)
		at += c.Length()
	}
	d.edge(rectangle(x, d.y, s.LengthCut, s.WidthCut))
	slices.Sort(all)
	all = slices.Compact(all)
	gap := s.LengthCut / 100
	if x == 0 {
		d.beside(d.Units.Number(s.WidthCut), marginal{measure.Point{X: -gap, Y: middle}, diagram.End, s.WidthCut, all})
	}
	if s.Times > 1 {
		d.beside(fmt.Sprintf("× %d", s.Times), marginal{measure.Point{X: x + s.LengthCut + gap, Y: middle}, diagram.Start, s.WidthCut, all})
	}
}

// cut draws a stretch of strip.
func (d *clothMap) cut(c *cutting.Cut, x measure.NM) {
	for _, outline := range d.PieceOutlines(c) {
		d.area(moved(outline, x, d.y), c.Lines)
	}
}

// moved is an outline of a piece at its place in a map.
func moved(outline []measure.Point, x, y measure.NM) []measure.Point {
	list := make([]measure.Point, len(outline))
	for i, p := range outline {
		list[i] = measure.Point{X: p.X + x, Y: p.Y + y}
	}
	return list
}

// block draws lengthwise pieces side by side with the strips beside them.
func (d *clothMap) block(f *cutting.Fabric, n int) {
	b := &f.Blocks[n]
	top, x := d.y, measure.NM(0)
	for i := range b.Columns {
		d.column(&b.Columns[i], x, top)
		x += b.Columns[i].WidthCut
	}
	for i := range f.Strips {
		s := &f.Strips[i]
		if s.InBlock != n {
			continue
		}
		d.strip(s, x)
		for n := range s.Times {
			if n > 0 {
				d.pieces(s, x)
				d.edge(rectangle(x, d.y, s.LengthCut, s.WidthCut))
			}
			d.y += s.WidthCut
		}
	}
	d.y = top + b.LengthCut
	d.edge(rectangle(0, top, f.UsableWidth, b.LengthCut))
	d.beside(d.Units.Number(measure.RoundUp(b.LengthCut, d.Units.CutMark())), marginal{measure.Point{X: -f.UsableWidth / 100, Y: top + b.LengthCut/2}, diagram.End, b.LengthCut, nil})
	if b.Times > 1 {
		d.beside(fmt.Sprintf("× %d", b.Times), marginal{measure.Point{X: f.UsableWidth + f.UsableWidth/100, Y: top + b.LengthCut/2}, diagram.Start, b.LengthCut, nil})
	}
}

// column draws a strip along the selvages with its pieces, from its upper end down.
func (d *clothMap) column(c *cutting.Column, x, top measure.NM) {
	lit := []int{c.Line}
	words := d.Units.Number(c.WidthCut) + " by " + d.Units.Number(c.LengthCut)
	if !d.Lines[c.Line].AlongSelvage {
		d.area(rectangle(x, top, c.WidthCut, c.LengthCut), lit)
	} else {
		cut := d.CutOf(c)
		for _, outline := range d.PieceOutlines(&cut) {
			d.area(quarterTurned(outline, x+c.WidthCut, top), lit)
		}
		words = d.label(&cut)
		d.edge(rectangle(x, top, c.WidthCut, c.LengthCut))
	}
	d.words(words, measure.Point{X: x, Y: top}, c.WidthCut, c.LengthCut, lit)
}

// quarterTurned is the outline of a piece of a strip that runs down, its upper side at a place across.
func quarterTurned(outline []measure.Point, right, top measure.NM) []measure.Point {
	list := make([]measure.Point, len(outline))
	for i, p := range outline {
		list[i] = measure.Point{X: right - p.Y, Y: top + p.X}
	}
	return list
}

func rectangle(x, y, width, height measure.NM) []measure.Point {
	return []measure.Point{{X: x, Y: y}, {X: x + width, Y: y}, {X: x + width, Y: y + height}, {X: x, Y: y + height}}
}

// label is a stretch of strip in the fewest words.
func (c *cuts) label(cut *cutting.Cut) string {
	size := c.Units.Number(cut.AlongCut)
	switch cut.Use {
	case cutting.ForSet:
		return c.setName(cut.Set, false) + ", " + size
	case cutting.ForBinding:
		return "binding, " + size
	case cutting.ForEnd:
		return "" // its narrower strips say what they are
	case cutting.ForJoining:
		return c.plans.edgingName(&c.Lines[cut.Lines[0]]) + ", to be joined, " + size
	}
	line := &c.Lines[cut.Lines[0]]
	switch {
	case line.Piece.Method == cutting.Nested:
		return c.plans.countedPieces(cut.Units, line)
	case cut.AcrossCut != cut.AlongCut:
		size = c.Units.Number(cut.AcrossCut) + " by " + size
	}
	if cut.Units == 1 {
		return size
	}
	return measure.Count(cut.Units, unitName(line)) + ", " + size + rowWords(cut)
}

// unitName is what is cut off a strip for a line, one of it.
func unitName(line *cutting.Line) string {
	switch {
	case line.Piece.Method == cutting.EndPairs:
		return "rectangle"
	case line.Piece.AcrossCut != line.Piece.AlongCut:
		return "strip"
	}
	return "square"
}
