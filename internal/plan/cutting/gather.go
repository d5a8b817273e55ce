package cutting

import (
	"cmp"
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sizes"
	"eighthturn/internal/quilt"
)

// planning is the work on one plan.
type planning struct {
	*Plan
	top     *quilt.Top
	options Options
	sizer   sizer
	heights map[string]blocks.WedgeHeight // of wedges, by the kind's name
	columns map[int]int                   // the column that a cell belongs to
	lines   map[lineKey]int
	sets    map[string]setAt
	fabrics []int     // the plan's fabric of each of the top's, -1 for none
	keys    [2][]byte // room for setOf
}

// lineKey is what makes a piece distinct.
type lineKey struct {
	fabric, set  int
	reversed     bool
	shape        blocks.Shape
	hand         Hand
	height       blocks.WedgeHeight
	role, border int // of strips and squares alone
	across, long measure.NM
}

// filledSteps is the units' own steps where the options have none.
func filledSteps(given, own sizes.Steps) sizes.Steps {
	for _, s := range []struct {
		to   *measure.NM
		from measure.NM
	}{{&given.Trimmed, own.Trimmed}, {&given.Spare, own.Spare}, {&given.Exact, own.Exact}, {&given.Mark, own.Mark}} {
		if *s.to <= 0 {
			*s.to = s.from
		}
	}
	return given
}

// gather gives every patch its line.
func (p *planning) gather() {
	p.heights = map[string]blocks.WedgeHeight{}
	for _, k := range blocks.Kinds() {
		p.heights[k.Name] = k.Height
	}
	p.columns = map[int]int{}
	for i, c := range p.top.Cloth.Columns {
		for n := range c.Cells {
			p.columns[c.First+n*p.top.Columns] = i
		}
	}
	p.lines, p.sets = map[lineKey]int{}, map[string]setAt{}
	p.LineOf = make([]int, len(p.top.Patches))
	for i := range p.top.Patches {
		key := p.key(i)
		n, ok := p.lines[key]
		if !ok {
			n = p.newLine(key, i)
		}
		line := &p.Lines[n]
		line.Patches = append(line.Patches, i)
		line.count(p.handOf(i), p.Copies)
		p.LineOf[i] = n
	}
}

// key is what the piece for a patch is.
func (p *planning) key(patch int) lineKey {
	t := &p.top.Patches[patch]
	k := lineKey{fabric: -1, set: -1, shape: t.Shape, border: -1, role: -1}
	if t.Set >= 0 {
		k.set, k.reversed = p.setOf(patch)
	} else {
		k.fabric = p.fabric(p.top.Faces[t.First].Fabric)
	}
	switch t.Shape {
	case blocks.Wedge:
		k.height = p.heights[p.top.Cells[t.Cell].Kind]
	case blocks.Square, blocks.Strip:
		k.role, k.border = t.Role, t.Border
		k.across, k.long = p.edgingSize(t)
	case blocks.Tumbler, blocks.HalfTumbler:
		divided := &p.top.Cloth.Columns[p.columns[t.Cell]].Divided
		k.long = measure.NM(divided.Mean)
		if t.Shape == blocks.HalfTumbler {
			k.hand = p.handOf(patch)
			k.long = measure.NM(divided.End)
		}
	}
	return k
}

// edgingSize is the finished width and length of a square, or of a strip whose width its border or sash has.
func (p *planning) edgingSize(t *quilt.Patch) (across, long measure.NM) {
	if t.Cell >= 0 {
		return p.top.SideFinished, p.top.SideFinished
	}
	width, height := t.Outline[1].X-t.Outline[0].X, t.Outline[2].Y-t.Outline[1].Y
	own := width
	switch {
	case t.Border >= 0:
		own = p.top.Cloth.Borders[t.Border].Width
	case p.top.Cloth.Sash != nil:
		own = p.top.Cloth.Sash.Width
	}
	if height == own {
		width, height = height, width
	}
	return width, height
}

// handOf is the hand of a patch's piece.
func (p *planning) handOf(patch int) Hand {
	t := &p.top.Patches[patch]
	o := t.Outline
	longerLeft := false
	switch t.Shape {
	case blocks.StopGround: // from its square corner clockwise: the next corner lies to the right
		longerLeft = apart(o[0], o[1]) > apart(o[0], o[3])
	case blocks.HalfTumbler: // from its upper left corner clockwise
		left, right := o[3].Y-o[0].Y, o[2].Y-o[1].Y
		longerLeft = (left > right) == (o[0].Y == o[1].Y) // the square end away, which may be the lower one
	default:
		return Either
	}
	if longerLeft {
		return Left
	}
	return Right
}

// apart is the greater of two points' distances along the axes, which orders distances along them and along diagonals.
func apart(a, b quilt.Point) measure.NM {
	x, y := a.X-b.X, a.Y-b.Y
	return max(x, -x, y, -y)
}

// count adds one patch.
func (l *Line) count(hand Hand, copies int) {
	l.Pieces += copies
	switch hand {
	case Left:
		l.Left += copies
	case Right:
		l.Right += copies
	}
}

// newLine begins the line for a piece.
func (p *planning) newLine(k lineKey, patch int) int {
	t := &p.top.Patches[patch]
	n := len(p.Lines)
	p.lines[k] = n
	line := Line{Number: n, Fabric: k.fabric, Set: k.set, Reversed: k.reversed, Border: t.Border, Place: Place(t.Place)}
	line.Piece = Piece{Shape: k.shape, Hand: k.hand, Role: p.top.Roles[t.Role].Name}
	ok := p.size(&line, k, t)
	if !ok {
		p.noSize(&line)
	}
	p.Lines = append(p.Lines, line)
	switch {
	case k.fabric >= 0:
		p.Fabrics[k.fabric].Lines = append(p.Fabrics[k.fabric].Lines, n)
	default:
		p.Sets[k.set].Lines[which(k.reversed)] = n
	}
	return n
}

func which(second bool) int {
	if second {
		return 1
	}
	return 0
}

// size fills in a line's piece; false where there is none of that size.
func (p *planning) size(line *Line, k lineKey, t *quilt.Patch) bool {
	piece, z := &line.Piece, &p.sizer
	piece.SideFinished, piece.LengthFinished = k.across, 0
	switch k.shape {
	case blocks.Wedge:
		return z.wedge(piece, k.height)
	case blocks.Kite, blocks.StopGround:
		return z.beside(piece)
	case blocks.HalfSquare:
		z.triangle(piece, p.top.SideFinished)
	case blocks.RingCorner:
		return z.ringCorner(piece)
	case blocks.Square:
		var sideOf func(measure.NM) measure.NM
		if t.Cell >= 0 {
			sideOf = z.sideOfSquare
		}
		z.square(piece, sideOf)
	case blocks.Strip:
		piece.LengthFinished = k.long
		z.edging(piece, k.border >= 0)
	case blocks.Tumbler:
		return z.tumbler(piece, &p.top.Cloth.Columns[p.columns[t.Cell]].Divided) == nil
	case blocks.HalfTumbler:
		z.endPiece(piece, &p.top.Cloth.Columns[p.columns[t.Cell]].Divided)
	}
	return true
}

// fabric is the plan's fabric for one of the top's.
func (p *planning) fabric(top int) int {
	if n := p.fabrics[top]; n >= 0 {
		return n
	}
	f := &p.top.Fabrics[top]
	p.fabrics[top] = len(p.Fabrics)
	p.Fabrics = append(p.Fabrics, Fabric{
		Index: top, Name: f.Name, Print: f.Print, Colour: f.Colour, UsableWidth: p.top.Cloth.Fabrics[top].UsableWidth,
	})
	return p.fabrics[top]
}

// inOrder puts the plan's fabrics in the top's order.
func (p *planning) inOrder() {
	order := make([]int, len(p.Fabrics))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Compare(p.Fabrics[a].Index, p.Fabrics[b].Index) })
	list, to := make([]Fabric, len(order)), make([]int, len(order))
	for i, from := range order {
		list[i], to[from] = p.Fabrics[from], i
	}
	p.Fabrics = list
	for i := range p.fabrics {
		if p.fabrics[i] >= 0 {
			p.fabrics[i] = to[p.fabrics[i]]
		}
	}
	for i := range p.Lines {
		if p.Lines[i].Fabric >= 0 {
			p.Lines[i].Fabric = to[p.Lines[i].Fabric]
		}
	}
	for i := range p.Sets {
		for b := range p.Sets[i].Bands {
			p.Sets[i].Bands[b].Fabric = to[p.Sets[i].Bands[b].Fabric]
		}
	}
}
