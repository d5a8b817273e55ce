package quilt

import (
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/stop"
	"eighthturn/layout"
)

// builder is the work on one top.
type builder struct {
	*Top
	sign      *stop.Sign // ends the work; nil for never
	design    *layout.Design
	grade     scale
	templates [][4]*template // by block and its quarter turns
	outsides  []blocks.Sides // by cell: beyond which of its sides the quilt has nothing
	cells     []placedCell
	runs      []*column
	points    []measure.Point // what outlines are cut from
	joins     joiner
	pools     []pooledFace
	sets      map[setKey]int16
}

// placedCell is a cell's template and place; template is nil where there is nothing and in
// columns.
type placedCell struct {
	*template
	at    measure.Point
	first int   // patch
	face  int32 // its first face if each of its pieces has one, which then follow each other as the pieces do; else -1
	run   *column
	shows [4]bool // of its column: the cell that shows each side, for cells of a column
}

// Lay lays a design out. Every design that package layout gives can be laid.
func Lay(d *layout.Design) *Top { return LayUntil(nil, d) }

// LayUntil is Lay until a sign ends it.
func LayUntil(sign *stop.Sign, d *layout.Design) *Top {
	l := newBuilder(sign, d)
	l.lay()
	return l.Top
}

// newBuilder is a top of which nothing is laid yet.
func newBuilder(sign *stop.Sign, d *layout.Design) *builder {
	return &builder{sign: sign, Top: &Top{
		Title: d.Title, Units: d.Units, Seam: d.Seam, SideFinished: d.SideFinished,
		Columns: d.Columns, Rows: d.Rows,
		Credits: Credits{d.Designer, d.Level, d.Copyright, d.Number, d.Version, d.Date, d.Notes, d.Contrast, d.Pools},
	}, design: d, grade: newScale(d.SideFinished), templates: make([][4]*template, len(d.Blocks)), sets: map[setKey]int16{}}
}

// lay lays the whole top.
func (l *builder) lay() {
	l.frame()
	l.fabrics()
	l.cutFacts()
	l.findOutsides()
	l.reserve()
	for i := range l.design.Cells {
		l.sign.Step(10)
		l.cell(i)
	}
	l.seamsInBlocks()
	l.borders(l.field())
	l.fillCuts()
	l.dealSets()
	l.deal()
	l.warnBeyondPhotos()
	l.warnUnmirrored()
	l.warnOneWay()
	l.onHand()
	l.unused()
	l.colorways()
	l.Sizes = sizesOf(l.design)
}

// frame finds the rectangles of the field and of the whole top.
func (l *builder) frame() {
	edge := measure.NM(0)
	for _, b := range l.design.Borders {
		edge += b.Width
	}
	width, height := l.extent(l.Columns), l.extent(l.Rows)
	l.Field = Rect{measure.Point{X: edge, Y: edge}, measure.Point{X: edge + width, Y: edge + height}}
	l.Outer = Rect{measure.Point{}, measure.Point{X: width + 2*edge, Y: height + 2*edge}}
	l.FirstCell, l.StepFinished = l.Field.Min, l.SideFinished
	if s := l.design.Sash; s != nil {
		l.StepFinished += s.Width
		if s.Around {
			l.FirstCell = l.FirstCell.Add(measure.Point{X: s.Width, Y: s.Width})
		}
	}
}

// extent is the finished length of so many blocks in a row, with their sashes.
func (l *builder) extent(blocks int) measure.NM {
	length := measure.NM(blocks) * l.SideFinished
	if s := l.design.Sash; s != nil {
		length += measure.NM(blocks-1) * s.Width
		if s.Around {
			length += 2 * s.Width
		}
	}
	return length
}

func (l *builder) fabrics() { l.Fabrics, l.CutFacts.Fabrics = fabricsOf(l.design) }

// fabricsOf are a design's fabrics, and what there is of each.
func fabricsOf(d *layout.Design) (list []Fabric, stock []FabricStock) {
	for _, f := range d.Fabrics {
		fabric := Fabric{Name: f.Name, Print: f.Print, Colour: f.Colour, Cloth: clothOf(&f), Place: f.Span}
		list, stock = append(list, fabric), append(stock, FabricStock{f.OnHand, f.UsableWidth, f.From})
	}
	return list, stock
}

// colorways are the fabrics of each colorway, once it is known what is used.
func (l *builder) colorways() { l.Colorways = colorwaysOf(l.design, l.CutFacts.Unused) }

// colorwaysOf are the fabrics of each colorway of a design; some fabrics are shown by nothing.
func colorwaysOf(d *layout.Design, unused []int) (list []Colorway) {
	for i := range d.Colorways {
		c := &d.Colorways[i]
		w := Colorway{Name: c.Name, Place: c.Span}
		w.Fabrics, w.Stock = fabricsOf(d.In(c))
		for _, change := range c.Changes {
			if !slices.Contains(unused, change.Fabric) {
				w.Changed = append(w.Changed, change.Fabric)
			}
		}
		list = append(list, w)
	}
	return list
}

// Recolored is a top in the fabrics of a design that is otherwise the one it was laid from; it shares all that fabrics do not
// change.
func (t *Top) Recolored(d *layout.Design) *Top {
	other := *t
	other.Fabrics, other.CutFacts.Fabrics = fabricsOf(d)
	other.Colorways, other.Sizes = colorwaysOf(d, t.CutFacts.Unused), sizesOf(d)
	return &other
}

// reserve makes room for all patches and faces at once.
func (l *builder) reserve() {
	patches, faces, points, strips := 0, 0, 0, 0
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
			if len(l.design.StripSets) == 0 {
				continue
			}
			if f, _ := l.fill(i, &t.pieces[p]); f.Set >= 0 {
				bands := len(l.design.StripSets[f.Set].Bands)
				faces += bands - 1
				strips += bands - 1
				points += 4*bands - 1
			}
		}
	}
	edgings := 4 * len(l.design.Borders)
	l.Patches = make([]Patch, 0, patches+edgings)
	l.Faces = make([]Face, 0, faces+edgings)
	l.points = make([]measure.Point, 0, points+4*edgings)
	l.Seams = make([]Seam, 0, 2*faces)
	l.StripSeams = make([]Seam, 0, strips)
	l.Cells = make([]Cell, 0, len(l.design.Cells))
	l.cells = make([]placedCell, 0, len(l.design.Cells))
	l.runs = make([]*column, len(l.design.Runs))
}

// template is the template for a cell, nil where there is nothing.
func (l *builder) template(cell int) *template {
	c := l.design.Cells[cell]
	if c.Block < 0 || c.Run >= 0 {
		return nil
	}
	t := &l.templates[c.Block][c.Turns]
	if *t == nil {
		*t = newTemplate(l.design.Blocks[c.Block].Kind, int(c.Turns), l.grade)
	}
	return *t
}

// outline is a block's outline moved to its place.
func (l *builder) outline(block []measure.Point, at measure.Point) []measure.Point {
	start := len(l.points)
	for _, p := range block {
		l.points = append(l.points, p.Add(at))
	}
	return l.points[start:len(l.points):len(l.points)]
}

// cell lays the patches of one cell.
func (l *builder) cell(i int) {
	at := l.CellRect(i).Min
	c := l.design.Cells[i]
	if c.Run >= 0 {
		l.columnCell(i, at)
		return
	}
	t := l.template(i)
	l.cells = append(l.cells, placedCell{template: t, at: at, first: len(l.Patches), face: -1})
	if t == nil {
		l.Cells = append(l.Cells, Cell{Place: c.Span, First: len(l.Patches)})
		return
	}
	faces := len(l.Faces)
	b := &l.design.Blocks[c.Block]
	l.Cells = append(l.Cells, Cell{Label: b.Label, Kind: b.Kind.Name, Turns: int(c.Turns), Place: c.Span, First: len(l.Patches), Count: len(t.pieces)})
	for p := range t.pieces {
		piece := &t.pieces[p]
		f, role := l.fill(i, piece)
		l.patch(Patch{
			Outline: l.outline(piece.outline, at), Shape: piece.Shape, Role: l.role(role.Shown(), role.Letter), Cell: int32(i), Border: -1, Number: int32(p + 1),
		}, f, piece, at)
	}
	if len(l.Faces)-faces == len(t.pieces) {
		l.cells[len(l.cells)-1].face = int32(faces)
	}
}

// role is the index of a role of the top.
func (l *builder) role(name, letter string) int16 {
	for i, r := range l.Roles {
		if r.Name == name && r.Letter == letter {
			return int16(i)
		}
	}
	l.Roles = append(l.Roles, Role{name, letter})
	return int16(len(l.Roles) - 1)
}

// fill is what a piece of a cell is cut from, and the role that says it: the piece's own, or the one that takes its place in
// the pieces that face the outside of the quilt.
func (l *builder) fill(cell int, p *pieceTemplate) (*layout.Fill, *blocks.Role) {
	b := &l.design.Blocks[l.design.Cells[cell].Block]
	n := l.roleFacing(cell, p.Role, p.Piece.Facing)
	role := &b.Kind.Roles[n]
	if role.OfWebs {
		if f := l.design.Web(cell, &p.Piece); f != nil {
			return f, role
		}
	}
	fills := b.Fills[n]
	return &fills[role.Value(p.number, p.of, len(fills))], role
}

// roleFacing is the role that gives a piece of a cell its fabric, by the sides of the quilt that it faces.
func (l *builder) roleFacing(cell, role int, facing func(outside blocks.Sides) blocks.Sides) int {
	outside := l.outsides[cell]
	if outside == 0 { // as most cells of a large quilt
		return role
	}
	b := &l.design.Blocks[l.design.Cells[cell].Block]
	return b.Kind.RoleFacing(role, facing(outside), func(i int) bool { return len(b.Fills[i]) > 0 })
}

// findOutsides finds the sides of each cell beyond which the quilt has nothing.
func (l *builder) findOutsides() {
	l.outsides = make([]blocks.Sides, len(l.design.Cells))
	for i := range l.outsides {
		x, y := i%l.Columns, i/l.Columns
		for _, next := range [4]struct {
			side blocks.Sides
			x, y int
		}{{blocks.TopSide, x, y - 1}, {blocks.RightSide, x + 1, y}, {blocks.BottomSide, x, y + 1}, {blocks.LeftSide, x - 1, y}} {
			if l.outside(next.x, next.y) {
				l.outsides[i] |= next.side
			}
		}
	}
}

// outside says whether the quilt has nothing at a place.
func (l *builder) outside(x, y int) bool {
	return x < 0 || x >= l.Columns || y < 0 || y >= l.Rows || l.design.Cells[y*l.Columns+x].Block < 0
}

// patch adds a patch and its faces.
func (l *builder) patch(p Patch, f *layout.Fill, piece *pieceTemplate, at measure.Point) {
	p.Place = placeOf(f.Span)
	p.First, p.Count, p.Set = int32(len(l.Faces)), 1, -1
	n := len(l.Patches)
	l.cutOf(&p, f.Cut)
	if f.Set < 0 {
		l.face(p.Outline, n, f.Fabric, f.Pool)
		l.Patches = append(l.Patches, p)
		return
	}
	kind := l.design.Blocks[l.design.Cells[p.Cell].Block].Kind
	b := piece.bandsOf(l.design, f, kind.Height)
	if b.set < 0 {
		b.set = l.set(f.Set, kind.Height)
	}
	p.Count, p.Set, p.Reversed = int32(len(b.outlines)), b.set, f.Reversed
	for i, o := range b.outlines {
		l.face(l.outline(o, at), n, b.fabrics[i], b.pools[i])
	}
	l.Patches = append(l.Patches, p)
}

// face adds a face; one that is to be dealt from a pool is noted.
func (l *builder) face(outline []measure.Point, patch, fabric, pool int) {
	if pool >= 0 {
		l.pools = append(l.pools, pooledFace{int32(len(l.Faces)), int32(pool)})
	}
	l.Faces = append(l.Faces, Face{outline, int32(fabric), int32(patch)})
}
