package sewing

import (
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// cellSewn is what a cell takes. Of a column only its upper cell takes something.
type cellSewn struct {
	block   int32 // index, -1 for nothing, and for the other cells of a column
	turns   uint8 // as the cell lies, from the kind's own way
	first   int32 // into Plan.index
	count   int32 // pieces
	down    int32 // cells that it takes
	columns bool

	variant int32 // of its block's, by index
}

// patch is the index of the patch that a piece of a cell is.
func (p *Plan) patch(cell, piece int) int { return int(p.index[int(p.cells[cell].first)+piece]) }

// sorting is the work of finding the distinct blocks of a top.
type sorting struct {
	*Plan
	kinds   map[string]*blocks.Kind
	labels  map[string]int // block, by index
	orders  map[orderKey][]int
	cloths  map[string]int      // by what a patch is cut from: its number
	first   map[clothKey]cloths // how the first block of each variant lies
	variant []map[string]int    // by block: index by the cloths of the pieces
	pooled  []bool              // by strip set: its bands differ from wedge to wedge
	longest map[int]columnAt    // by block: the first of its columns with the most pieces
	key     []byte
}

type orderKey struct {
	kind  *blocks.Kind
	turns int
}

// sort finds the distinct blocks.
func (p *Plan) sort() {
	s := &sorting{Plan: p, kinds: map[string]*blocks.Kind{}, labels: map[string]int{}, orders: map[orderKey][]int{}, cloths: map[string]int{}, first: map[clothKey]cloths{}, longest: map[int]columnAt{}}
	for _, k := range blocks.Kinds() {
		s.kinds[k.Name] = k
	}
	s.findPooled()
	p.cells = make([]cellSewn, len(p.top.Cells))
	p.index = make([]int32, 0, len(p.top.Patches))
	for i := range p.cells {
		p.cells[i].block = -1
	}
	columns := s.columns()
	for cell := range p.top.Cells {
		c := &p.top.Cells[cell]
		p.sign.Step(c.Count)
		switch {
		case p.top.Empty(cell):
		case !s.kinds[c.Kind].Column:
			s.block(cell)
		case columns[cell].down > 0:
			s.column(cell, columns[cell])
		}
	}
	for i, c := range s.longest {
		s.Plan.kinds[i] = s.newColumn(c.cell, c.found)
	}
	for i := range p.Blocks {
		p.sign.Look()
		s.finish(i)
	}
}

// columnFound is a column's patches and how many cells it has.
type columnFound struct{ first, count, down int }

// columnAt is a column and its upper cell.
type columnAt struct {
	cell  int
	found columnFound
}

// columns is the columns of a top by their upper cell. The pieces of one follow each other in
// the list of patches, whichever cell each of them is counted in.
func (s *sorting) columns() map[int]columnFound {
	found := map[int]columnFound{}
	of := map[int]int{} // by cell: its column's upper cell
	for _, c := range s.top.CutFacts.Columns {
		for n := range c.Cells {
			of[c.First+n*s.Columns] = c.First
		}
		found[c.First] = columnFound{first: -1, down: c.Cells}
	}
	for i := range s.top.Patches {
		upper, ok := of[int(s.top.Patches[i].Cell)]
		if !ok {
			continue
		}
		c := found[upper]
		if c.first < 0 {
			c.first = i
		}
		c.count++
		found[upper] = c
	}
	return found
}

// findPooled finds the strip sets of which not all wedges show the same bands.
func (s *sorting) findPooled() {
	shown := make([][]int, len(s.top.CutFacts.Sets))
	s.pooled = make([]bool, len(shown))
	for i := range s.top.Patches {
		p := &s.top.Patches[i]
		if p.Set < 0 {
			continue
		}
		if shown[p.Set] == nil {
			shown[p.Set] = s.bands(p)
		} else if !s.pooled[p.Set] {
			s.pooled[p.Set] = !slices.Equal(shown[p.Set], s.bands(p))
		}
	}
}

// bands is the fabrics of a patch from a strip set, in the set's own order.
func (s *sorting) bands(p *quilt.Patch) []int {
	list := make([]int, p.Count)
	for n := range list {
		at := n
		if p.Reversed {
			at = int(p.Count) - 1 - n
		}
		list[at] = int(s.top.Faces[int(p.First)+n].Fabric)
	}
	return list
}

// blockOf is the index of a cell's block among the plan's.
func (s *sorting) blockOf(cell int) int {
	c := &s.top.Cells[cell]
	n, ok := s.labels[c.Label]
	if !ok {
		n = len(s.Blocks)
		s.labels[c.Label] = n
		s.Blocks = append(s.Blocks, Block{Label: c.Label, Kind: c.Kind})
		s.variant = append(s.variant, map[string]int{})
		s.Plan.kinds = append(s.Plan.kinds, nil)
	}
	return n
}

// block sorts a cell's block in.
func (s *sorting) block(cell int) {
	n := s.blockOf(cell)
	c := &s.top.Cells[cell]
	kind := s.kinds[c.Kind]
	order := s.order(kind, c.Turns)
	first := len(s.index)
	for _, at := range order {
		s.index = append(s.index, int32(c.First+at))
	}
	if s.Plan.kinds[n] == nil {
		s.Plan.kinds[n] = s.newSewn(kind, s.unturned(cell, first, len(order)), s.index[first:])
	}
	s.cells[cell] = cellSewn{block: int32(n), first: int32(first), count: int32(len(order)), down: 1}
	s.cells[cell].turns = uint8(s.knownTurn(n, cell, c.Turns))
	s.add(n, cell)
}

// order is where the pieces of a kind stand among the patches of a cell that is turned.
func (s *sorting) order(kind *blocks.Kind, turns int) []int {
	key := orderKey{kind, turns}
	if order, ok := s.orders[key]; ok {
		return order
	}
	laid := kind.Turned(turns)
	order := make([]int, len(kind.Pieces))
	for i, piece := range kind.Pieces {
		order[i] = slices.IndexFunc(laid, func(q blocks.Piece) bool { return sameCorners(q.Outline, piece.Outline, turns) })
	}
	s.orders[key] = order
	return order
}

// unturned is the outlines of a cell's pieces in the block's own frame.
func (s *sorting) unturned(cell, first, count int) []outline {
	at, back := s.top.CellRect(cell).Min, 4-s.top.Cells[cell].Turns
	list := make([]outline, count)
	for i := range list {
		for _, q := range s.top.Patches[s.index[first+i]].Outline {
			list[i] = append(list[i], turned(minus(q, at), s.SideFinished, back))
		}
	}
	return list
}

// cloth is the number of what a patch is cut from.
func (s *sorting) cloth(patch int32) int {
	p := &s.top.Patches[patch]
	s.key = appendNumber(s.key[:0], int(p.Set))
	if p.Reversed {
		s.key = append(s.key, "reversed"...)
	}
	for n := range p.Count {
		s.key = appendNumber(s.key, int(s.top.Faces[p.First+n].Fabric))
	}
	if s.top.CutOf != nil {
		s.key = appendNumber(s.key, int(s.top.CutOf[patch]))
	}
	n, ok := s.cloths[string(s.key)]
	if !ok {
		n = len(s.Cloths)
		s.cloths[string(s.key)] = n
		s.Cloths = append(s.Cloths, s.clothOf(int(patch)))
	}
	return n
}

func appendNumber(b []byte, n int) []byte {
	return append(b, byte(n), byte(n>>8), byte(n>>16), byte(n>>24))
}

// clothOf is what a patch is cut from.
func (s *sorting) clothOf(patch int) Cloth {
	p := &s.top.Patches[patch]
	if p.Set < 0 {
		return Cloth{Name: s.top.CutOfPatch(patch).NameOf(s.top.Fabrics[s.top.Faces[p.First].Fabric].Name)}
	}
	c := Cloth{Name: s.top.CutFacts.Sets[p.Set].Name, Reversed: p.Reversed}
	if s.pooled[p.Set] {
		for _, fabric := range s.bands(p) {
			c.Bands = append(c.Bands, s.top.Fabrics[fabric].Name)
		}
	}
	return c
}

// maxPieces is how many pieces a block may have.
const maxPieces = 16

// cloths is what the pieces of a block are cut from, by number.
type cloths [maxPieces]int

// knownTurn turns a block of a kind that looks alike when it is turned so that it is the same
// as the first one of the same cloth, puts its pieces in that order and gives the turn.
func (s *sorting) knownTurn(n, cell, turns int) int {
	c := &s.cells[cell]
	index := s.index[c.first : c.first+c.count]
	ways := s.turnedCloths(n, index)
	least := ways[0].cloths
	for _, w := range ways {
		if slices.Compare(w.cloths[:], least[:]) < 0 {
			least = w.cloths
		}
	}
	first, ok := s.first[clothKey{n, least}]
	if !ok {
		first = ways[0].cloths
		s.first[clothKey{n, least}] = first
	}
	at := slices.IndexFunc(ways, func(w turnedWay) bool { return w.cloths == first })
	quarters := ways[at].quarters
	was := slices.Clone(index)
	for i, to := range s.Plan.kinds[n].symmetric[quarters] {
		index[to] = was[i]
	}
	return (turns - quarters) & 3
}

// clothKey is the cloths of a block of one label, turned in the way that comes first.
type clothKey struct {
	block int
	cloths
}

// turnedWay is the cloths of a block that is turned by some quarters and looks as before.
type turnedWay struct {
	quarters int
	cloths
}

// turnedCloths is the cloths of a block in every turn in which its kind looks alike, unturned
// first.
func (s *sorting) turnedCloths(n int, index []int32) []turnedWay {
	var own cloths
	for i, patch := range index {
		own[i] = s.cloth(patch)
	}
	var list []turnedWay
	for quarters, symmetric := range s.Plan.kinds[n].symmetric {
		if symmetric == nil {
			continue
		}
		w := turnedWay{quarters: quarters}
		for i, to := range symmetric {
			w.cloths[to] = own[i]
		}
		list = append(list, w)
	}
	return list
}

// add counts a cell's block and puts it with those of the same cloth.
func (s *sorting) add(n, cell int) {
	c := &s.cells[cell]
	b := &s.Blocks[n]
	b.Count++
	numbers := make([]int, c.count)
	var key []byte
	leans := ""
	if c.columns {
		leans = s.leans(c)
		key = appendNumber(append(key, leans...), int(c.down))
	}
	for i := range numbers {
		numbers[i] = s.cloth(s.index[int(c.first)+i])
		key = appendNumber(key, numbers[i])
	}
	at, ok := s.variant[n][string(key)]
	if !ok {
		at = len(b.Variants)
		s.variant[n][string(key)] = at
		made := FabricVariant{Number: at + 1, Leans: leans, Cloths: numbers}
		if c.columns {
			made.Longer = s.longer(c)
			first, last := s.index[c.first], s.index[c.first+c.count-1]
			made.Hands = []string{s.cuts.HandOf[first].String(), s.cuts.HandOf[last].String()}
		}
		b.Variants = append(b.Variants, made)
	}
	c.variant = int32(at)
	col := &b.Variants[at]
	col.Cells = append(col.Cells, Placed{cell, cell/s.Columns + 1, cell%s.Columns + 1, int(c.turns), int(c.down), s.index[c.first : c.first+c.count : c.first+c.count]})
}

// column sorts a column in.
func (s *sorting) column(cell int, found columnFound) {
	n := s.blockOf(cell)
	s.Blocks[n].Column = true
	first := len(s.index)
	for i := range found.count {
		s.index = append(s.index, int32(found.first+i))
	}
	if found.count > s.longest[n].found.count {
		s.longest[n] = columnAt{cell, found}
	}
	s.cells[cell] = cellSewn{block: int32(n), first: int32(first), count: int32(found.count), down: int32(found.down), columns: true}
	s.add(n, cell)
}

// finish measures a block and lists its steps.
func (s *sorting) finish(n int) {
	b := &s.Blocks[n]
	kind := s.Plan.kinds[n]
	down := measure.NM(1)
	for _, c := range b.Variants {
		for _, at := range c.Cells {
			down = max(down, measure.NM(at.Cells))
		}
	}
	b.Finished = sizeOf(float64(s.SideFinished), float64(down*s.SideFinished))
	b.Unfinished = sizeOf(float64(s.SideFinished+2*s.Seam), float64(down*s.SideFinished+2*s.Seam))
	b.FromCenter = b.Unfinished.Across / 2
	b.Pressings = kind.kind.Recipe.Pressing
	b.Steps = s.stepsOf(kind, b.Count)
	if b.Column {
		s.columnSteps(kind, &b.Steps[0], b.Count)
	}
	b.Unturned = true
	for i := range b.Variants {
		s.makes(n, &b.Variants[i])
		b.Unturned = b.Unturned && s.Landmark(b, &b.Variants[i]).Sort == NoLandmark
	}
}
