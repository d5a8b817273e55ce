package svgout

import (
	"fmt"
	"math"

	"eighthturn/patchwork"
)

// linework draws the outlines of all patches with the letter of each one's role, ready to
// be printed and coloured by hand.
func (d *document) linework() {
	d.layer("paper", "paper", `fill="#ffffff"`)
	d.path(d.whole(), `id="`+d.Prefix+`ground"`)
	d.close()
	d.layer("outlines", "outlines", fmt.Sprintf(`fill="none" stroke="#000000" stroke-width="%.2f" stroke-linejoin="round" stroke-linecap="round"`, d.stroke))
	if d.ByFabric {
		d.path(d.allOutlines(), `id="`+d.Prefix+`patches"`)
	} else {
		d.patchOutlines()
	}
	if len(d.StripSeams) > 0 {
		d.path(d.seamPath(d.StripSeams), fmt.Sprintf(`id="%sstrip-seams" stroke-width="%.2f"`, d.Prefix, d.stroke*0.6))
	}
	d.close()
	d.letters()
}

func (d *document) allOutlines() []byte {
	var path []byte
	for i := range d.Patches {
		path = appendOutline(path, d.Patches[i].Outline)
	}
	return path
}

// patchOutlines draws each patch as a path of its own, with a title.
func (d *document) patchOutlines() {
	for i := range d.Patches {
		p := &d.Patches[i]
		b := append(d.scratch[:0], `<path id="`...)
		b = d.appendID(b, p.First)
		b = append(b, `" d="`...)
		b = appendOutline(b, p.Outline)
		b = append(b, `"><title>`...)
		b = append(b, escaped(d.Fabrics[d.Faces[p.First].Fabric].Name)...)
		for n := 1; n < p.Count; n++ {
			b = append(b, ", "...)
			b = append(b, escaped(d.Fabrics[d.Faces[p.First+n].Fabric].Name)...)
		}
		b = d.appendPlace(b, p)
		b = append(b, "</title></path>\n"...)
		_, _ = d.out.Write(b) // the writer keeps the error
		d.scratch = b
	}
}

// appendPlace writes what a patch is and where.
func (d *document) appendPlace(b []byte, p *patchwork.Patch) []byte {
	if p.Cell < 0 {
		return fmt.Appendf(b, ", border %d", p.Border+1)
	}
	return fmt.Appendf(b, ", %s, row %d, column %d", d.Roles[p.Role].Name, p.Cell/d.Columns+1, p.Cell%d.Columns+1)
}

// letters writes each patch's letter where there is most room for it.
func (d *document) letters() {
	d.layer("letters", "letters", `fill="#000000" font-family="Helvetica, Arial, sans-serif" text-anchor="middle"`)
	for i := range d.Patches {
		p := &d.Patches[i]
		x, y, room := roomiest(p.Outline)
		size := min(room*0.9, d.font)
		d.text(x, y+size*0.36, d.Roles[p.Role].Letter, fmt.Sprintf(`font-size="%.2f"`, size))
	}
	d.close()
}

// roomiest is a place well inside a convex outline, in user units, and its distance to the
// nearest side. It starts in the middle and gives way to the nearest side in steps that
// grow smaller.
func roomiest(outline []patchwork.Point) (x, y, room float64) {
	x, y = centreOf(outline)
	room, nx, ny := nearestSide(outline, x, y)
	for step := room; step > room/64; step *= 0.7 {
		tx, ty := x+nx*step, y+ny*step
		if r, mx, my := nearestSide(outline, tx, ty); r > room {
			x, y, room, nx, ny = tx, ty, r, mx, my
		}
	}
	return x, y, room
}

// nearestSide is the distance of a place to the nearest side of a clockwise outline, below
// 0 outside, and the direction straight away from that side.
func nearestSide(outline []patchwork.Point, x, y float64) (distance, nx, ny float64) {
	distance = math.Inf(1)
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		px, py := pixels(p.X), pixels(p.Y)
		dx, dy := pixels(q.X)-px, pixels(q.Y)-py
		length := math.Hypot(dx, dy)
		if away := (dx*(y-py) - dy*(x-px)) / length; away < distance {
			distance, nx, ny = away, -dy/length, dx/length
		}
	}
	return distance, nx, ny
}
