package cutting

import (
	"cmp"
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/stop"
)

// planning is the work on one plan.
type planning struct {
	*Plan
	top          *quilt.Top
	sign         *stop.Sign // ends the work; nil for never
	options      Options
	sizing       blocks.Sizing
	heights      map[string]blocks.WedgeHeight // of wedges, by the kind's name
	columns      map[int]int                   // the column that a cell belongs to
	lines        map[lineKey]int
	sets         map[string]setAt
	stripsOfSets int       // in all strip sets together
	fabrics      []int     // the plan's fabric of each of the top's, -1 for none
	keys         [2][]byte // room for setOf
	trials       *budget   // of what is laid to see how long strip sets and their strips are best
	fits         *budget   // of what is fitted into prints
}

// lineKey is what makes a piece distinct.
type lineKey struct {
	fabric, set  int
	print        int  // the place of its print, -1 for none
	along        bool // from strips along the selvages
	reversed     bool
	shape        blocks.Shape
	hand         Hand
	height       blocks.WedgeHeight
	role, border int // of strips and squares alone
	across, long measure.NM
}

// gather gives every patch its line.
func (p *planning) gather() {
	p.heights = map[string]blocks.WedgeHeight{}
	for _, k := range blocks.Kinds() {
		p.heights[k.Name] = k.Height
	}
	p.columns = map[int]int{}
	for i, c := range p.top.CutFacts.Columns {
		for n := range c.Cells {
			p.columns[c.First+n*p.top.Columns] = i
		}
	}
	p.lines, p.sets = map[lineKey]int{}, map[string]setAt{}
	p.LineOf, p.HandOf = make([]int, len(p.top.Patches)), make([]Hand, len(p.top.Patches))
	p.setsAsDealt()
	for i := range p.top.Patches {
		p.sign.Step(1)
		p.HandOf[i] = handOf(&p.top.Patches[i])
		key := p.key(i)
		n, ok := p.lines[key]
		if !ok {
			n = p.newLine(key, i)
		}
		line := &p.Lines[n]
		line.Patches = append(line.Patches, i)
		line.count(p.HandOf[i], p.Copies)
		p.LineOf[i] = n
	}
}

// key is what the piece for a patch is.
func (p *planning) key(patch int) lineKey {
	t := &p.top.Patches[patch]
	k := lineKey{fabric: -1, set: -1, print: -1, shape: t.Shape, border: -1, role: -1}
	if t.Set >= 0 {
		k.set, k.reversed = p.setOf(patch)
	} else {
		k.fabric = p.fabric(int(p.top.Faces[t.First].Fabric))
		k.print, k.hand = p.printPlace(patch)
		k.along = p.top.AlongSelvage(patch)
	}
	switch d := t.Shape.Description(); d.Sized {
	case blocks.ByStrip:
		k.height = p.heights[p.top.Cells[t.Cell].Kind]
	case blocks.ByOutline:
		if t.Cell < 0 { // a block's squares are of one size whatever they are called
			k.role = int(t.Role)
		}
		k.border = int(t.Border)
		k.across, k.long = p.edgingSize(t)
	case blocks.ByColumn:
		k.long = measure.NM(d.LengthIn(&p.top.CutFacts.Columns[p.columns[int(t.Cell)]].Divided))
		if d.OneHanded {
			k.hand = p.HandOf[patch]
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
		own = p.top.CutFacts.Borders[t.Border].Width
	case p.top.CutFacts.Sash != nil:
		own = p.top.CutFacts.Sash.Width
	}
	if height == own {
		width, height = height, width
	}
	return width, height
}

// handOf is the hand of a patch's piece.
func handOf(t *quilt.Patch) Hand {
	hand := t.Shape.Description().Hand
	if hand == nil {
		return Either
	}
	places := make([]blocks.Place, len(t.Outline))
	for i, p := range t.Outline {
		places[i] = blocks.Place(p)
	}
	return hand(places)
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
	line := Line{Number: n, Fabric: k.fabric, Set: k.set, Reversed: k.reversed, AlongSelvage: k.along, Border: int(t.Border), Place: Place(t.Place.Span())}
	line.Piece = Piece{Shape: k.shape, Hand: k.hand, Role: p.top.Roles[t.Role].Name}
	ok := p.size(&line, k, t)
	if !ok {
		p.noSize(&line)
	}
	if line.PrintPlace = k.print; k.print >= 0 {
		line.Piece.fussyCut()
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

// fabric is the plan's fabric for one of the top's.
func (p *planning) fabric(top int) int {
	if n := p.fabrics[top]; n >= 0 {
		return n
	}
	f := &p.top.Fabrics[top]
	p.fabrics[top] = len(p.Fabrics)
	p.Fabrics = append(p.Fabrics, Fabric{
		Index: top, Name: f.Name, Print: f.Print, Colour: f.Colour, UsableWidth: p.top.CutFacts.Fabrics[top].UsableWidth, From: p.fromPrecuts(top), stacks: p.options.LeastCloth,
	})
	return p.fabrics[top]
}

// inOrder puts the plan's fabrics in the top's order, and the lines in that of the fabrics.
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
	p.gatherDealt()
	p.numberSets()
	p.linesInOrder()
}

// linesInOrder puts the lines of each fabric together, in the order of the fabrics, and those of the strip sets behind them.
func (p *planning) linesInOrder() {
	order := make([]int, len(p.Lines))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		l, m := &p.Lines[a], &p.Lines[b]
		return cmp.Or(cmp.Compare(which(l.Set >= 0), which(m.Set >= 0)), cmp.Compare(l.Fabric, m.Fabric), cmp.Compare(l.Set, m.Set), cmp.Compare(which(l.Reversed), which(m.Reversed)))
	})
	list, to := make([]Line, len(order)), make([]int, len(order))
	for i, from := range order {
		list[i], to[from] = p.Lines[from], i
		list[i].Number = i
	}
	p.Lines = list
	for i := range p.LineOf {
		p.LineOf[i] = to[p.LineOf[i]]
	}
	for i := range p.Fabrics {
		for n := range p.Fabrics[i].Lines {
			p.Fabrics[i].Lines[n] = to[p.Fabrics[i].Lines[n]]
		}
	}
	for i := range p.Sets {
		for way, n := range p.Sets[i].Lines {
			if n >= 0 {
				p.Sets[i].Lines[way] = to[n]
			}
		}
	}
}
