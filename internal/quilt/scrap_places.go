package quilt

import (
	"fmt"
	"math"
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt/scraps"
	"eighthturn/layout"
)

// pooledFace is a face that gets its fabric from a pool. It lies in a block: borders and sashes are of one fabric.
type pooledFace struct{ face, pool int32 }

// pooled notes for the plans which faces were dealt.
func (l *builder) pooled() {
	for _, p := range l.pools {
		l.CutFacts.Pooled = append(l.CutFacts.Pooled, Pooled{Face: p.face, Pool: p.pool})
	}
}

// dealer deals the pools of one top.
type dealer struct {
	*builder
	places []scraps.Place
	of     []int32 // by face: its place, -1 if it has its fabric

	centers map[measure.Point]int32 // the lines that pieces around a center make
}

// deal gives the faces that come from pools their fabrics.
func (l *builder) deal() {
	if len(l.pools) == 0 {
		return
	}
	d := l.newDealer()
	number := 0
	for _, p := range l.design.Pools {
		number = number*31 + p.Deal
	}
	l.pooled()
	dealt := scraps.Deal(l.sign, d.places, number)
	for _, p := range l.pools {
		l.Faces[p.face].Fabric = int32(dealt.Fabrics[d.of[p.face]])
	}
	before := d.alike(l.Seams)
	d.swap()
	d.findAlike(dealt.Proven, before)
}

// newDealer is the places that get one fabric each, with what lies beside them.
func (l *builder) newDealer() *dealer {
	d := &dealer{builder: l, of: make([]int32, len(l.Faces)), centers: map[measure.Point]int32{}}
	for i := range d.of {
		d.of[i] = -1
	}
	d.makePlaces()
	d.meet(l.Seams)
	d.meet(l.StripSeams)
	return d
}

// swap has blocks trade what was dealt to each by itself, in the order of the layout's swaps.
func (d *dealer) swap() {
	for _, s := range d.design.Swaps {
		a, b := d.Cells[s.Cells[0]], d.Cells[s.Cells[1]]
		for i := range min(a.Count, b.Count) {
			p, q := &d.Patches[a.First+i], &d.Patches[b.First+i]
			for band := range min(p.Count, q.Count) {
				one, other := p.First+band, q.First+band
				if d.trades(one, other) {
					d.Faces[one].Fabric, d.Faces[other].Fabric = d.Faces[other].Fabric, d.Faces[one].Fabric
				}
			}
		}
	}
}

// trades says whether two faces come from one pool and share their fabric with no other block.
func (d *dealer) trades(one, other int32) bool {
	if d.of[one] < 0 || d.of[other] < 0 {
		return false
	}
	pool := int32(d.places[d.of[one]].Pool)
	return pool == int32(d.places[d.of[other]].Pool) && d.key(pooledFace{one, pool}).own()
}

// placeKey is what gets one fabric: a face, or the faces of one role and band in a block,
// or round a web or star centre.
type placeKey struct {
	pool, band, face, cell int32
	role                   int16
	at                     measure.Point
}

// own says whether what shares a fabric lies in one block.
func (k placeKey) own() bool { return k.face >= 0 || k.cell >= 0 }

// makePlaces finds what gets one fabric each.
func (d *dealer) makePlaces() {
	known := map[placeKey]int32{}
	for _, p := range d.pools {
		d.sign.Step(1)
		key := d.key(p)
		place, ok := known[key]
		if !ok {
			place = int32(len(d.places))
			known[key] = place
			d.places = append(d.places, scraps.Place{Choices: d.design.Pools[p.pool].Fabrics, Pool: int(p.pool), Line: d.line(p.face), Lines: d.linesOf(p.face, key)})
		}
		d.of[p.face] = place
	}
}

// line is the column of cells that a face belongs to, from 1; 0 where its block is no column.
func (d *dealer) line(face int32) int { return d.design.Cells[d.cellOf(face)].Run + 1 }

// linesOf are the lines that a place lies in: those of its block, or of the center that it lies around; none where its block is a column.
func (d *dealer) linesOf(face int32, key placeKey) scraps.Lines {
	cell := d.cellOf(face)
	switch {
	case d.design.Cells[cell].Run >= 0:
		return scraps.Lines{}
	case !key.own():
		return d.lines(d.halves(key.at))
	}
	lines := d.lines(int32(2*(cell%d.Columns)+1), int32(2*(cell/d.Columns)+1))
	if key.face >= 0 {
		lines[4] = d.gathered(face)
	}
	return lines
}

// gathered is the number of the web or star that a piece is a part of, or of its block where it is a part of neither, as one more line.
func (d *dealer) gathered(face int32) int32 {
	patch := &d.Patches[d.Faces[face].Patch]
	at := d.CellRect(int(patch.Cell)).Min.Add(measure.Point{X: 1, Y: 1}) // where nothing gathers
	if patch.Shape.Description().Gathers != blocks.NoCentre {
		at = patch.Outline[0]
	}
	n, known := d.centers[at]
	if !known {
		last := d.lines(int32(2*d.Columns), int32(2*d.Rows))
		n = last[3] + 1 + int32(len(d.centers))
		d.centers[at] = n
	}
	return n
}

// halves is a corner, the middle of a side or the middle of a block, in halves of blocks from the upper left corner of the first; what
// lies between blocks counts for nothing.
func (l *builder) halves(at measure.Point) (x, y int32) {
	half := func(from measure.NM) int32 {
		return int32(2*(from/l.StepFinished)) + int32(math.Round(2*float64(from%l.StepFinished)/float64(l.SideFinished)))
	}
	return half(at.X - l.FirstCell.X), half(at.Y - l.FirstCell.Y)
}

// key tells which faces share a fabric.
func (d *dealer) key(p pooledFace) placeKey {
	patch := &d.Patches[d.Faces[p.face].Patch]
	band := p.face - patch.First
	switch by := d.design.Pools[p.pool].By; {
	case by == layout.ByWeb && patch.Shape.Description().Gathers != blocks.NoCentre:
		return placeKey{pool: p.pool, band: band, role: patch.Role, face: -1, cell: -1, at: patch.Outline[0]}
	case by != layout.ByPiece:
		return placeKey{pool: p.pool, band: band, role: patch.Role, face: -1, cell: patch.Cell}
	}
	return placeKey{pool: p.pool, face: p.face, cell: -1}
}

// meet notes which places lie along a seam, and which fabrics lie beside a place already.
func (d *dealer) meet(seams []Seam) {
	for i := range seams {
		a, b := d.of[seams[i].A], d.of[seams[i].B]
		switch {
		case a == b:
		case a >= 0 && b >= 0:
			if !slices.Contains(d.places[a].Neighbours, b) {
				d.places[a].Neighbours = append(d.places[a].Neighbours, b)
				d.places[b].Neighbours = append(d.places[b].Neighbours, a)
			}
		case a >= 0:
			d.bar(a, seams[i].B)
		case b >= 0:
			d.bar(b, seams[i].A)
		}
	}
}

func (d *dealer) bar(place, beside int32) {
	fabric, p := int(d.Faces[beside].Fabric), &d.places[place]
	if !slices.Contains(p.Barred, fabric) {
		p.Barred = append(p.Barred, fabric)
	}
}

// findAlike lists the seams between faces that have the same fabric though they need not share one, and warns of them: of those
// that the deal left, and of those that are alike since blocks were swapped.
func (d *dealer) findAlike(proven bool, dealt []int) {
	alike := d.alike(d.Seams)
	d.Alike = append(d.Alike, alike...)
	slices.Sort(d.Alike)
	var left, made []Seam
	for _, i := range alike {
		if _, found := slices.BinarySearch(dealt, i); found {
			left = append(left, d.Seams[i])
		} else {
			made = append(made, d.Seams[i])
		}
	}
	for _, i := range d.alike(d.StripSeams) {
		left = append(left, d.StripSeams[i])
	}
	if len(left) > 0 {
		d.warnAlike(left[0], len(left), proven)
	}
	if len(made) > 0 {
		d.warnSwapped(made)
	}
}

// warnSwapped says at each swap where it has put like fabrics side by side.
func (d *dealer) warnSwapped(seams []Seam) {
	for _, s := range d.design.Swaps {
		var here []int32
		for _, seam := range seams {
			if slices.Contains(s.Cells[:], d.cellOf(seam.A)) {
				here = append(here, seam.A)
			} else if slices.Contains(s.Cells[:], d.cellOf(seam.B)) {
				here = append(here, seam.B)
			}
		}
		if len(here) == 0 {
			continue
		}
		d.Warnings = append(d.Warnings, layout.Fault{
			Severity: layout.Warning, Span: s.Span,
			Message: fmt.Sprintf("the swap puts two pieces of %s side by side at %s%s", d.Fabrics[d.Faces[here[0]].Fabric].Name, d.where(here[0]), moreSeams(len(here))),
			Hint:    "swap it with another block",
		})
	}
}

// cellOf is the cell that a face lies in, -1 for none.
func (d *dealer) cellOf(face int32) int { return int(d.Patches[d.Faces[face].Patch].Cell) }

// moreSeams says along how many more seams it is so.
func moreSeams(count int) string {
	switch {
	case count < 2:
		return ""
	case count == 2:
		return "; so it is along 1 more seam"
	}
	return fmt.Sprintf("; so it is along %d more seams", count-1)
}

// alike is the seams of a list, by index, whose two faces got one fabric.
func (d *dealer) alike(seams []Seam) []int {
	var list []int
	for i, s := range seams {
		a, b := d.of[s.A], d.of[s.B]
		if a != b && (a >= 0 || b >= 0) && d.Faces[s.A].Fabric == d.Faces[s.B].Fabric {
			list = append(list, i)
		}
	}
	return list
}

// warnAlike says where a pool could not do better, and why.
func (d *dealer) warnAlike(s Seam, count int, proven bool) {
	face := s.A
	if d.of[face] < 0 {
		face = s.B
	}
	pool := &d.design.Pools[d.places[d.of[face]].Pool]
	why := fmt.Sprintf("the pool %q has too few fabrics for the pieces that lie side by side", pool.Name)
	if len(pool.Fabrics) == 1 {
		why = fmt.Sprintf("the pool %q has only this fabric", pool.Name)
	} else if !proven {
		why = fmt.Sprintf("no better deal of the pool %q was found", pool.Name)
	}
	d.Warnings = append(d.Warnings, layout.Fault{
		Severity: layout.Warning, Span: pool.Span,
		Message: fmt.Sprintf("two pieces of %s lie side by side at %s, since %s%s", d.Fabrics[d.Faces[face].Fabric].Name, d.where(face), why, moreSeams(count)),
		Hint:    "add a fabric to the pool",
	})
}

// where names the place of a face of a block.
func (d *builder) where(face int32) string {
	p := &d.Patches[d.Faces[face].Patch]
	return fmt.Sprintf("row %d, column %d", int(p.Cell)/d.Columns+1, int(p.Cell)%d.Columns+1)
}

// lines are the row, the column and the diagonals of a place in halves of blocks from the upper left corner, numbered together.
func (l *builder) lines(x, y int32) scraps.Lines {
	across, down := int32(2*l.Columns+1), int32(2*l.Rows+1)
	row := 1 + y
	column := 1 + down + x
	falling := 1 + down + across + x - y + down - 1
	rising := 1 + 2*(down+across) + x + y
	return scraps.Lines{row, column, falling, rising, 0}
}
