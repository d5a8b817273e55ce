package svgout

import (
	"fmt"
	"slices"

	"eighthturn/internal/quilt"
)

// cloth paints the fabrics so that nothing shows between them. Beneath lies one shape of
// the whole top; on it, along every seam of two fabrics, the colour of the one that is
// painted first afterwards. A renderer that covers the pixels of a seam in part twice over
// then mixes just the two colours of the seam.
func (d *document) cloth() {
	shown := d.shown()
	if len(shown) == 0 {
		return
	}
	d.prints(shown)
	d.beneath(shown)
	for _, f := range slices.Backward(shown) {
		d.layer(fmt.Sprintf("fabric-%d", f+1), d.Fabrics[f].Name, `fill="`+d.cover(f)+`"`)
		if d.ByFabric {
			d.wholeFabric(f)
		} else {
			d.patches(f)
		}
		d.close()
	}
}

// wholeFabric draws all of a fabric as one path.
func (d *document) wholeFabric(f int) {
	list := d.faces[f]
	d.path(fmt.Sprintf(`id="%scloth-%d"`, d.Prefix, f+1), len(list), func(b []byte, i int) []byte {
		return appendOutline(b, d.Faces[list[i]].Outline)
	})
}

// patches draws every face of a fabric as a path of its own, with its id and a title.
func (d *document) patches(f int) {
	name := escaped(d.Fabrics[f].Name)
	out := d.out
	for _, i := range d.faces[f] {
		b := append(out.bytes, `<path id="`...)
		b = d.appendFaceID(b, int(i))
		b = append(b, `" d="`...)
		b = appendOutline(b, d.Faces[i].Outline)
		b = append(b, `"><title>`...)
		b = append(b, name...)
		b = d.appendFaceTitle(b, int(i))
		out.bytes = append(b, "</title></path>\n"...)
		out.spill()
	}
}

// Seam lines are black, but white where the cloth on both sides is darker than this.
const darkCloth = 32 // CIE L*

// stripStroke is the width of the lines within a strip set, as part of that of the others.
const stripStroke = 0.6

// seamLines draws every seam as a thin line.
func (d *document) seamLines() {
	d.layer("seams", "seam lines", `fill="none" stroke-opacity="0.55" stroke-linecap="round"`)
	d.seamsOf("piece-seams", d.Seams, d.stroke)
	d.seamsOf("strip-seams", d.StripSeams, d.stroke*stripStroke)
	d.close()
}

// seamsOf draws seams as one path of dark and one of light lines.
func (d *document) seamsOf(id string, seams []quilt.Seam, width float64) {
	dark := make([]bool, len(d.Fabrics))
	for f := range d.Fabrics {
		dark[f] = d.Fabrics[f].Colour.Lightness() < darkCloth
	}
	byCloth := sorted(2, len(seams), func(i int) int {
		if dark[d.Faces[seams[i].A].Fabric] && dark[d.Faces[seams[i].B].Fabric] {
			return 1
		}
		return 0
	})
	for i, ink := range []string{"#000000", "#ffffff"} {
		if list := byCloth[i]; len(list) > 0 {
			attributes := fmt.Sprintf(`id="%s%s-%d" stroke="%s" stroke-width="%s"`, d.Prefix, id, i+1, ink, rounded(width))
			d.path(attributes, len(list), func(b []byte, n int) []byte {
				return appendStretch(b, seams[list[n]].From, seams[list[n]].To)
			})
		}
	}
}
