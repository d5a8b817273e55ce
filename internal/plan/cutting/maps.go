package cutting

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// Maps are the cutting maps: one for each fabric of the plan that something is cut from, in its order, then one for each
// strip set. Cloth lies with its
// selvages to the left and right; what lights up with a line of the plan is marked with its number.
func (p *Plan) Maps() []Map {
	var list []Map
	for i := range p.Fabrics {
		f := &p.Fabrics[i]
		if f.StripCount > 0 || len(f.Blocks) > 0 {
			list = append(list, Map{f.Name, false, p.fabricMap(f)})
		}
	}
	for i := range p.Sets {
		if len(p.Sets[i].Runs) > 0 {
			list = append(list, Map{p.SetName(i), true, p.setMap(i)})
		}
	}
	return list
}

// MapTitle begins the title of every map.
const MapTitle = "Cutting map"

// Map is the map of a fabric, or of a strip set as it is sewn and cut.
type Map struct {
	Name   string
	Set    bool // of a strip set
	Figure *diagram.Figure
}

// drawing is a map that is being drawn.
type drawing struct {
	*Plan
	figure *diagram.Figure
	colour palettes.Colour
	y      measure.NM // where the next strip begins
}

// Points of the words in maps.
const (
	labelPoints  = 7.5
	marginPoints = 8
)

// fabricMap is the map of one fabric.
func (p *Plan) fabricMap(f *Fabric) *diagram.Figure {
	d := &drawing{Plan: p, colour: f.Colour, figure: &diagram.Figure{
		Title:       MapTitle + ", " + Words{p}.FabricTitle(f),
		Description: p.mapWords(f),
	}}
	for n := range f.Blocks {
		d.block(f, n)
	}
	for i := range f.Strips {
		if s := &f.Strips[i]; s.InBlock < 0 {
			d.strip(s, 0)
			d.y += s.WidthCut
		}
	}
	d.figure.Max = diagram.Point{X: f.UsableWidth, Y: d.y}
	return d.figure
}

// mapWords is a map for those who cannot see it.
func (p *Plan) mapWords(f *Fabric) string {
	var parts []string
	for _, b := range f.Blocks {
		parts = append(parts, fmt.Sprintf("a block %s long with %s cut lengthwise", p.text(b.LengthCut), plural(len(b.Columns), "piece")))
	}
	for i := range f.Strips {
		s := &f.Strips[i]
		parts = append(parts, fmt.Sprintf("%s %s wide: %s", plural(s.Times, "strip"), p.text(s.WidthCut), p.StripWords(s)))
	}
	return strings.Join(parts, "; ")
}

// StripWords says what a strip is cut into, in a few words.
func (p *Plan) StripWords(s *Strip) string {
	var parts []string
	for i := range s.Cuts {
		parts = append(parts, p.CutWords(&s.Cuts[i]))
	}
	return strings.Join(parts, ", ")
}

func (d *drawing) mark(m diagram.Mark) { d.figure.Marks = append(d.figure.Marks, m) }

// words adds words on the fabric in the middle of a rectangle, along its longer side.
func (d *drawing) words(text string, at diagram.Point, along, across measure.NM, lit []int) {
	backing := d.colour
	w := &diagram.Words{Text: text, At: diagram.Point{X: at.X + along/2, Y: at.Y + across/2}, Points: labelPoints, Room: along * 9 / 10, Backing: &backing, Halo: true}
	if across > along {
		w.Quarters, w.Room = 3, across*9/10
	}
	d.mark(diagram.Mark{Lit: lit, Words: w})
}

// beside adds words in the margin.
func (d *drawing) beside(text string, at diagram.Point, anchor diagram.Anchor, lit []int) {
	d.mark(diagram.Mark{Lit: lit, Words: &diagram.Words{Text: text, At: at, Points: marginPoints, Anchor: anchor}})
}

// area adds a filled outline.
func (d *drawing) area(outline []diagram.Point, lit []int) {
	d.mark(diagram.Mark{Lit: lit, Area: &diagram.Area{Outline: outline, Fill: d.colour, Edge: diagram.Thin}})
}

// edge adds the outline of cloth of which nothing need be used.
func (d *drawing) edge(outline []diagram.Point) {
	d.mark(diagram.Mark{Area: &diagram.Area{Outline: outline, Clear: true, Edge: diagram.Cut}})
}

// pieces draws what a strip is cut into.
func (d *drawing) pieces(s *Strip, x measure.NM) {
	for i := range s.Cuts {
		d.cut(&s.Cuts[i], x)
		x += s.Cuts[i].Length()
	}
}

// strip draws a strip once, with its words, and how many there are.
func (d *drawing) strip(s *Strip, x measure.NM) {
	var all []int
	at := x
	middle := d.y + s.WidthCut/2
	d.pieces(s, x)
	for i := range s.Cuts {
		c := &s.Cuts[i]
		d.words(d.shortWords(c), diagram.Point{X: at, Y: d.y}, c.Length(), measure.NM(c.Rows)*c.AcrossCut, c.Lines)
		all = append(all, c.Lines...)
		at += c.Length()
	}
	d.edge(rectangle(x, d.y, s.LengthCut, s.WidthCut))
	slices.Sort(all)
	all = slices.Compact(all)
	gap := s.LengthCut / 100
	if x == 0 {
		d.beside(Words{d.Plan}.Number(s.WidthCut), diagram.Point{X: -gap, Y: middle}, diagram.End, all)
	}
	if s.Times > 1 {
		d.beside(fmt.Sprintf("× %d", s.Times), diagram.Point{X: x + s.LengthCut + gap, Y: middle}, diagram.Start, all)
	}
}

// Length is how much of a strip a stretch takes.
func (c *Cut) Length() measure.NM {
	if c.Nests {
		return c.AlongCut
	}
	return measure.NM(up(c.Units, c.Rows)) * c.AlongCut
}

// cut draws a stretch of strip.
func (d *drawing) cut(c *Cut, x measure.NM) {
	for _, outline := range d.PieceOutlines(c) {
		for i := range outline {
			outline[i] = diagram.Point{X: outline[i].X + x, Y: outline[i].Y + d.y}
		}
		d.area(outline, c.Lines)
	}
}

// block draws lengthwise pieces side by side with the strips beside them.
func (d *drawing) block(f *Fabric, n int) {
	b := &f.Blocks[n]
	top, x := d.y, measure.NM(0)
	for _, c := range b.Columns {
		lit := []int{c.Line}
		d.area(rectangle(x, top, c.WidthCut, c.LengthCut), lit)
		d.words(Words{d.Plan}.Number(c.WidthCut)+" by "+Words{d.Plan}.Number(c.LengthCut), diagram.Point{X: x, Y: top}, c.WidthCut, c.LengthCut, lit)
		x += c.WidthCut
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
	d.beside(Words{d.Plan}.Number(b.LengthCut), diagram.Point{X: -f.UsableWidth / 100, Y: top + b.LengthCut/2}, diagram.End, nil)
}

// setMap is a strip set with the wedges that are cut from it.
func (p *Plan) setMap(n int) *diagram.Figure {
	s := &p.Sets[n]
	run := s.Runs[0]
	var lines []int
	for _, l := range s.Lines {
		if l >= 0 {
			lines = append(lines, l)
		}
	}
	f := &diagram.Figure{
		Title:       fmt.Sprintf("%s, strip set %s: %s wide once it is sewn", MapTitle, p.SetName(n), p.text(s.WidthCut)),
		Description: fmt.Sprintf("%d wedges side by side, every other one turned round, from a strip set of %d strips", run.Wedges, len(s.Bands)),
		Max:         diagram.Point{X: run.LengthCut, Y: s.WidthCut},
	}
	f.Marks = append(f.Marks, diagram.Mark{Area: &diagram.Area{Outline: rectangle(0, 0, run.LengthCut, s.WidthCut), Clear: true, Edge: diagram.Cut}})
	piece := &p.Lines[lines[0]].Piece
	low := s.WidthCut // the first band is at the wide ends of the wedges that stand upright
	for i, b := range s.Bands {
		high := low - b.WidthFinished
		if i == 0 {
			high -= p.Seam
		}
		if high = max(0, high); i == len(s.Bands)-1 {
			high = 0
		}
		fabric := &p.Fabrics[b.Fabric]
		f.Marks = append(f.Marks, diagram.Mark{Words: &diagram.Words{
			Text: fabric.Name + " " + Words{p}.Number(b.WidthCut), At: diagram.Point{X: -run.LengthCut / 100, Y: (high + low) / 2}, Points: labelPoints, Anchor: diagram.End,
		}})
		for n := range run.Wedges {
			f.Marks = append(f.Marks, diagram.Mark{Lit: lines, Area: &diagram.Area{Outline: slice(nestedOutline(piece, n), high, low), Fill: fabric.Colour, Edge: diagram.Thin}})
		}
		low = high
	}
	return f
}

// slice is what lies between two heights of a wedge's outline.
func slice(o []diagram.Point, high, low measure.NM) []diagram.Point {
	on := func(a, b diagram.Point, y measure.NM) diagram.Point {
		return diagram.Point{X: a.X + times(b.X-a.X, float64(y-a.Y)/float64(b.Y-a.Y)), Y: y}
	}
	return []diagram.Point{on(o[0], o[3], high), on(o[1], o[2], high), on(o[1], o[2], low), on(o[0], o[3], low)}
}

// SetName is a strip set's name, with a number where several fabrics make sets of one name.
func (p *Plan) SetName(n int) string {
	same, at := 0, 0
	for i := range p.Sets {
		if p.Sets[i].Name == p.Sets[n].Name {
			same++
			if i <= n {
				at++
			}
		}
	}
	if same == 1 {
		return p.Sets[n].Name
	}
	return fmt.Sprintf("%s %d", p.Sets[n].Name, at)
}

// plural writes "1 square", "3 squares".
func plural(n int, what string) string {
	switch {
	case n == 1:
		return "1 " + what
	case strings.HasSuffix(what, "sh"):
		return fmt.Sprintf("%d %ses", n, what)
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// shortWords is a stretch of strip in the fewest words.
func (p *Plan) shortWords(c *Cut) string {
	size := Words{p}.Number(c.AlongCut)
	switch {
	case c.Use == ForSet:
		return "strip set " + p.SetName(c.Set) + ", " + size
	case c.Use == ForBinding:
		return "binding, " + size
	case c.Use == ForJoining:
		return p.EdgingName(&p.Lines[c.Lines[0]]) + ", to be joined, " + size
	}
	piece := &p.Lines[c.Lines[0]].Piece
	what := p.UnitName(&p.Lines[c.Lines[0]])
	switch {
	case piece.Method == Nested:
		return plural(c.Units, what)
	case c.AcrossCut != c.AlongCut:
		size = Words{p}.Number(c.AcrossCut) + " by " + size
	}
	if c.Units == 1 {
		return size
	}
	return plural(c.Units, what) + ", " + size + c.rowWords()
}

// rowWords says that a stretch of strip is cut in several rows.
func (c *Cut) rowWords() string {
	if c.Rows < 2 {
		return ""
	}
	return fmt.Sprintf(", in %d rows", c.Rows)
}

// CutWords says what a stretch of strip is cut into.
func (p *Plan) CutWords(c *Cut) string {
	switch c.Use {
	case ForSet:
		return fmt.Sprintf("%s for strip set %s, %s long", plural(c.Units, "strip"), p.SetName(c.Set), p.text(c.AlongCut))
	case ForBinding:
		return fmt.Sprintf("%s for the binding, %s long", plural(c.Units, "strip"), p.text(c.AlongCut))
	case ForJoining:
		return fmt.Sprintf("%s for %s, %s long, to be joined", plural(c.Units, "strip"), p.EdgingName(&p.Lines[c.Lines[0]]), p.text(c.AlongCut))
	}
	line := &p.Lines[c.Lines[0]]
	units := plural(c.Units, p.UnitName(line))
	if line.Piece.Method == Nested {
		return fmt.Sprintf("%s (%s of strip)", units, Words{p}.AtLeast(c.AlongCut))
	}
	if c.AcrossCut == c.AlongCut {
		return fmt.Sprintf("%s of %s%s", units, p.text(c.AlongCut), c.rowWords())
	}
	return fmt.Sprintf("%s of %s%s", units, Words{p}.By(c.AcrossCut, c.AlongCut), c.rowWords())
}

// UnitName is what is cut off a strip for a line, one of it.
func (p *Plan) UnitName(line *Line) string {
	switch line.Piece.Method {
	case Nested:
		return line.Piece.Shape.String()
	case EndPairs:
		return "rectangle"
	case Whole, Lengthwise, Joined:
		if line.edging() {
			return "strip"
		}
	}
	return "square"
}

// EdgingName is what a strip is for: "border 2", "sashes".
func (p *Plan) EdgingName(line *Line) string {
	if line.Border >= 0 {
		return fmt.Sprintf("border %d", line.Border+1)
	}
	return "sashes"
}
