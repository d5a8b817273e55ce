package svgout

import (
	"fmt"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// linework draws the outlines of all patches with the letter of each one's role, ready to
// be printed and coloured by hand.
func (d *document) linework() {
	d.layer("paper", "paper", `fill="#ffffff"`)
	d.onePath(`id="`+d.Prefix+`ground"`, d.appendExtent)
	d.close()
	d.layer("outlines", "outlines", `fill="none" stroke="#000000" stroke-width="`+rounded(d.stroke)+`" stroke-linejoin="round" stroke-linecap="round"`)
	d.rim()
	if d.ByFabric {
		d.path(`id="`+d.Prefix+`patches"`, len(d.Patches), func(b []byte, i int) []byte {
			return appendOutline(b, d.Patches[i].Outline)
		})
	} else {
		d.patchOutlines()
	}
	if len(d.StripSeams) > 0 {
		d.path(fmt.Sprintf(`id="%sstrip-seams" stroke-width="%s"`, d.Prefix, rounded(d.stroke*stripStroke)), len(d.StripSeams), func(b []byte, i int) []byte {
			return appendStretch(b, d.StripSeams[i].From, d.StripSeams[i].To)
		})
	}
	d.close()
	d.letters()
}

// rim draws the outside of the top just inside it, since half of a line along the edge
// would be cut off there.
func (d *document) rim() {
	if last := &d.Patches[len(d.Patches)-1]; !d.full() && last.Border < 0 {
		return
	}
	half := measure.NM(d.stroke / 2 * float64(measure.Inch) / PixelsPerInch)
	in := quilt.Rect{Min: d.Outer.Min.Add(quilt.Point{X: half, Y: half}), Max: d.Outer.Max.Add(quilt.Point{X: -half, Y: -half})}
	d.onePath(`id="`+d.Prefix+`rim"`, func(b []byte) []byte { return appendRect(b, in) })
}

// patchOutlines draws each patch as a path of its own, with a title.
func (d *document) patchOutlines() {
	names := make([]string, len(d.Fabrics))
	for f := range names {
		names[f] = escaped(d.Fabrics[f].Name)
	}
	out := d.out
	for i := range d.Patches {
		p := &d.Patches[i]
		b := append(out.bytes, `<path id="`...)
		b = d.appendPatchID(b, i)
		b = append(b, `" d="`...)
		b = appendOutline(b, p.Outline)
		b = append(b, `"><title>`...)
		for n := range p.Count {
			if n > 0 {
				b = append(b, ", "...)
			}
			b = append(b, names[d.Faces[p.First+n].Fabric]...)
		}
		b = d.appendPlace(b, p)
		out.bytes = append(b, "</title></path>\n"...)
		out.spill()
	}
}

// letters writes the letter of each patch's role where there is room for it, and in a
// wedge of a strip set each strip's number, 1 at the wide end.
func (d *document) letters() {
	d.layer("letters", "letters", `fill="#555555" `+lettering+` text-anchor="middle"`)
	roles := make([]string, len(d.Roles))
	for i, r := range d.Roles {
		roles[i] = escaped(r.Letter)
	}
	largest := min(largestInBlock*float64(d.SideFinished), largestInTop*float64(max(d.Outer.Width(), d.Outer.Height())))
	var in inset
	out := d.out
	for i := range d.Faces {
		p := &d.Patches[d.Faces[i].Patch]
		in.of(d.Faces[i].Outline)
		x, y, room := in.middle()
		size := min(room*letterInRoom, largest)
		if p.Count > 1 {
			size = min(room*pairInRoom, largest)
		}
		out.bytes = appendLetter(out.bytes, spotAt(x, y+float64(size*capitalHeight/2)), hundredths(measure.NM(size)))
		out.bytes = append(out.bytes, roles[p.Role]...)
		if p.Count > 1 {
			out.bytes = appendCount(out.bytes, "", i-p.First)
		}
		out.bytes = append(out.bytes, "</text>\n"...)
		out.spill()
	}
	d.close()
}

// Sizes of letters.
const (
	lettering      = `font-family="Helvetica, Arial, sans-serif"`
	capitalHeight  = 0.72 // of the size
	letterInRoom   = 1.1  // of the room round a letter's middle
	pairInRoom     = 0.95 // the same for a letter and a number
	largestInBlock = 0.09 // of a block's side
	largestInTop   = 0.03 // of the longer side of the top
)

// appendLetter begins a text of a size whose middle is at a place.
func appendLetter(b []byte, at spot, size int32) []byte {
	b = append(b, `<text x="`...)
	b = appendHundredths(b, at.x)
	b = append(b, `" y="`...)
	b = appendHundredths(b, at.y)
	b = append(b, `" font-size="`...)
	b = appendHundredths(b, max(1, size))
	return append(b, `">`...)
}
