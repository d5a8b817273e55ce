package quilt

import (
	"fmt"
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt/scraps"
	"eighthturn/layout"
)

// pooledFace is a face that gets its fabric from a pool.
type pooledFace struct{ face, pool int32 }

// dealer deals the pools of one top.
type dealer struct {
	*builder
	places []scraps.Place
	of     []int32 // by face: its place, -1 if it has its fabric
}

// deal gives the faces that come from pools their fabrics.
func (l *builder) deal() {
	if len(l.pools) == 0 {
		return
	}
	d := &dealer{builder: l, of: make([]int32, len(l.Faces))}
	for i := range d.of {
		d.of[i] = -1
	}
	d.makePlaces()
	d.meet(l.Seams)
	d.meet(l.StripSeams)
	number := 0
	for _, p := range l.design.Pools {
		number = number*31 + p.Deal
	}
	dealt := scraps.Deal(l.sign, d.places, number)
	for _, p := range l.pools {
		l.Faces[p.face].Fabric = int32(dealt.Fabrics[d.of[p.face]])
	}
	d.findAlike(dealt.Proven)
}

// placeKey is what gets one fabric: a face, or the faces of one role and band in a block,
// or round a web or star centre.
type placeKey struct {
	pool, band, face, cell int32
	role                   int16
	at                     measure.Point
}

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
			d.places = append(d.places, scraps.Place{Choices: d.design.Pools[p.pool].Fabrics, Pool: int(p.pool), Line: d.line(p.face)})
		}
		d.of[p.face] = place
	}
}

// line is the column of cells that a face belongs to, from 1; 0 where its block is no column.
func (d *dealer) line(face int32) int {
	patch := &d.Patches[d.Faces[face].Patch]
	if patch.Cell < 0 {
		return 0
	}
	return d.design.Cells[patch.Cell].Run + 1
}

// key tells which faces share a fabric.
func (d *dealer) key(p pooledFace) placeKey {
	patch := &d.Patches[d.Faces[p.face].Patch]
	band := p.face - patch.First
	switch by := d.design.Pools[p.pool].By; {
	case by == layout.ByWeb && patch.Shape.Description().Gathers != blocks.NoCentre:
		return placeKey{pool: p.pool, band: band, role: patch.Role, face: -1, cell: -1, at: patch.Outline[0]}
	case by != layout.ByPiece && patch.Cell >= 0:
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

// findAlike lists the seams between faces that got the same fabric though they need not
// share one, and warns of them.
func (d *dealer) findAlike(proven bool) {
	d.Alike = d.alike(d.Seams)
	strips := d.alike(d.StripSeams)
	if count := len(d.Alike) + len(strips); count > 0 {
		first := d.StripSeams
		at := strips
		if len(d.Alike) > 0 {
			first, at = d.Seams, d.Alike
		}
		d.warnAlike(first[at[0]], count, proven)
	}
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
	more := ""
	if count == 2 {
		more = "; so it is along 1 more seam"
	} else if count > 2 {
		more = fmt.Sprintf("; so it is along %d more seams", count-1)
	}
	d.Warnings = append(d.Warnings, layout.Fault{
		Severity: layout.Warning, Span: pool.Span,
		Message: fmt.Sprintf("two pieces of %s lie side by side at %s, since %s%s", d.Fabrics[d.Faces[face].Fabric].Name, d.where(face), why, more),
		Hint:    "add a fabric to the pool",
	})
}

// where names a face's place in the quilt.
func (d *dealer) where(face int32) string {
	p := &d.Patches[d.Faces[face].Patch]
	if p.Cell < 0 {
		return "the border"
	}
	return fmt.Sprintf("row %d, column %d", int(p.Cell)/d.Columns+1, int(p.Cell)%d.Columns+1)
}
