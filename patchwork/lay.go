package patchwork

import (
	"eighthturn/blocks"
	"eighthturn/layout"
	"eighthturn/measure"
)

// laying is the work on one top.
type laying struct {
	*Top
	design    *layout.Design
	grade     grade
	templates map[templateKey]*template
	cells     []placed
	points    []Point // what outlines are cut from
	joins     joiner
}

type templateKey struct {
	block int
	turns uint8
}

// placed is a cell's template and place; template is nil where there is nothing.
type placed struct {
	*template
	at    Point
	first int // patch
}

// Lay lays a design out. Every design that package layout gives can be laid.
func Lay(d *layout.Design) *Top {
	l := &laying{Top: &Top{
		Title: d.Title, Units: d.Units, Seam: d.Seam, SideFinished: d.SideFinished,
		Columns: d.Columns, Rows: d.Rows,
	}, design: d, grade: newGrade(d.SideFinished), templates: map[templateKey]*template{}}
	l.frame()
	l.fabrics()
	l.reserve()
	for i := range d.Cells {
		l.cell(i)
	}
	l.seamsInBlocks()
	l.seamsBetweenBlocks()
	l.borders()
	return l.Top
}

// frame finds the rectangles of the field and of the whole top.
func (l *laying) frame() {
	edge := measure.NM(0)
	for _, b := range l.design.Borders {
		edge += b.Width
	}
	width, height := measure.NM(l.Columns)*l.SideFinished, measure.NM(l.Rows)*l.SideFinished
	l.Field = Rect{Point{edge, edge}, Point{edge + width, edge + height}}
	l.Outer = Rect{Point{}, Point{width + 2*edge, height + 2*edge}}
}

func (l *laying) fabrics() {
	for _, f := range l.design.Fabrics {
		l.Fabrics = append(l.Fabrics, Fabric{Name: f.Name, Print: f.Print, Colour: f.Colour, Place: f.Span})
	}
}

// reserve makes room for all patches and faces at once.
func (l *laying) reserve() {
	patches, faces, points := 0, 0, 0
	for i := range l.design.Cells {
		t := l.template(i)
		if t == nil {
			continue
		}
		patches += len(t.pieces)
		for p := range t.pieces {
			n := len(t.pieces[p].outline)
			points += n
			faces++
			if f := l.fill(i, &t.pieces[p]); f.Set >= 0 {
				bands := len(l.design.StripSets[f.Set].Bands)
				faces += bands - 1
				points += 4*bands - 1
			}
		}
	}
	edgings := 4 * len(l.design.Borders)
	l.Patches = make([]Patch, 0, patches+edgings)
	l.Faces = make([]Face, 0, faces+edgings)
	l.points = make([]Point, 0, points+4*edgings)
	l.Seams = make([]Seam, 0, 2*faces)
	l.Cells = make([]Cell, 0, len(l.design.Cells))
	l.cells = make([]placed, 0, len(l.design.Cells))
}

// template is the template for a cell, nil where there is nothing.
func (l *laying) template(cell int) *template {
	c := l.design.Cells[cell]
	if c.Block < 0 {
		return nil
	}
	key := templateKey{c.Block, c.Turns}
	t, ok := l.templates[key]
	if !ok {
		t = newTemplate(l.design.Blocks[c.Block].Kind, int(c.Turns), l.grade)
		l.templates[key] = t
	}
	return t
}

// outline is a block's outline moved to its place.
func (l *laying) outline(block []Point, at Point) []Point {
	start := len(l.points)
	for _, p := range block {
		l.points = append(l.points, p.Add(at))
	}
	return l.points[start:len(l.points):len(l.points)]
}

// cell lays the patches of one cell.
func (l *laying) cell(i int) {
	x, y := i%l.Columns, i/l.Columns
	at := l.Field.Min.Add(Point{measure.NM(x) * l.SideFinished, measure.NM(y) * l.SideFinished})
	c := l.design.Cells[i]
	t := l.template(i)
	l.cells = append(l.cells, placed{t, at, len(l.Patches)})
	if t == nil {
		l.Cells = append(l.Cells, Cell{Place: c.Span, First: len(l.Patches)})
		return
	}
	b := &l.design.Blocks[c.Block]
	l.Cells = append(l.Cells, Cell{Label: b.Label, Kind: b.Kind.Name, Turns: int(c.Turns), Place: c.Span, First: len(l.Patches), Count: len(t.pieces)})
	for p := range t.pieces {
		piece := &t.pieces[p]
		role := &b.Kind.Roles[piece.Role]
		l.patch(Patch{
			Outline: l.outline(piece.outline, at), Shape: piece.Shape, Role: l.role(role.Name, role.Letter), Cell: i, Border: -1,
		}, l.fill(i, piece), piece, at)
	}
}

// role is the index of a role of the top.
func (l *laying) role(name, letter string) int {
	for i, r := range l.Roles {
		if r.Name == name {
			return i
		}
	}
	l.Roles = append(l.Roles, Role{name, letter})
	return len(l.Roles) - 1
}

// fill is what a piece of a cell is cut from.
func (l *laying) fill(cell int, p *pieceTemplate) layout.Fill {
	b := &l.design.Blocks[l.design.Cells[cell].Block]
	role := &b.Kind.Roles[p.Role]
	if role.OfWebs && len(l.design.Webs) > 0 {
		return l.webFill(cell, p)
	}
	fills := b.Fills[p.Role]
	return fills[role.Value(p.number, p.of, len(fills))]
}

// webFill is the fabric of the web that a wedge's tip belongs to: the two sorts alternate
// from one web centre to the next, across and down.
func (l *laying) webFill(cell int, p *pieceTemplate) layout.Fill {
	y := cell / l.Columns
	if p.Piece.Outline[0].Y == blocks.Full {
		y++
	}
	return l.design.Webs[WebSort(y)%len(l.design.Webs)]
}

// WebSort is which of two sorts, set like a draughtboard, the web centre at a grid corner
// belongs to. Every other corner is a web centre, so the nearest ones lie a row up or down
// and the sorts alternate by rows; the first row inside the quilt is of the first sort.
func WebSort(y int) int { return 1 - y&1 }

// patch adds a patch and its faces.
func (l *laying) patch(p Patch, f layout.Fill, piece *pieceTemplate, at Point) {
	p.Place = f.Span
	p.First, p.Count = len(l.Faces), 1
	n := len(l.Patches)
	if f.Set < 0 {
		l.Faces = append(l.Faces, Face{p.Outline, f.Fabric, n})
		l.Patches = append(l.Patches, p)
		return
	}
	kind := l.design.Blocks[l.design.Cells[p.Cell].Block].Kind
	b := piece.bandsOf(l.design, f, kind.Height)
	p.Count = len(b.outlines)
	for i, o := range b.outlines {
		l.Faces = append(l.Faces, Face{l.outline(o, at), b.fabrics[i], n})
	}
	l.Patches = append(l.Patches, p)
}
