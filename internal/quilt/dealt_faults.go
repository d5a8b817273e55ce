package quilt

import (
	"fmt"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt/scraps"
	"eighthturn/layout"
)

// warnOf says where the deal could not be what it should be, and how far it is off.
func (d *setDealer) warnOf(g *setGroup, dealt *scraps.Dealt) {
	name, made := g.of.Name, len(dealt.Sets)
	sets := measure.Count(made, "set")
	switch asked := g.of.Sets; {
	case asked > made && made == len(g.Webs):
		d.fault(g, fmt.Sprintf("write sets %d", made), "%q is dealt as %s, not %d, since that is one for every web", name, sets, asked)
	case asked > made:
		d.fault(g, "add a fabric to its pools", "%q is dealt as %s, not %d, since its pools make no more that differ", name, sets, asked)
	}
	if dealt.Mixed > 0 {
		d.fault(g, fmt.Sprintf("write sets %d", dealt.Whole), "wedges of one web come from more than one set in %s of %q, since it is dealt as %s", measure.Count(dealt.Mixed, "place"), name, sets)
	}
	if dealt.Beside > 0 {
		d.fault(g, "add a fabric to its pools, or write a larger number of sets", "neighboring webs of %q come from the same set in %s, since it is dealt as %s", name, measure.Count(dealt.Beside, "place"), sets)
	}
}

// findAlike lists the seams along which what a set was dealt meets its own fabric in another web or in a piece that is cut from a fabric by
// its name, and warns of them.
func (d *setDealer) findAlike() {
	for i, s := range d.Seams {
		w, v := d.web[d.Faces[s.A].Patch], d.web[d.Faces[s.B].Patch]
		if w != v && d.Faces[s.A].Fabric == d.Faces[s.B].Fabric && (d.fromPool(s.A) || d.fromPool(s.B)) {
			d.Alike = append(d.Alike, i)
		}
	}
	if len(d.Alike) == 0 {
		return
	}
	face := d.Seams[d.Alike[0]].A
	if !d.fromPool(face) {
		face = d.Seams[d.Alike[0]].B
	}
	g := &d.groups[d.webs[d.web[d.Faces[face].Patch]].group]
	d.fault(g, "add a fabric to its pools", "two pieces of %s lie side by side at %s, since no better deal of %q was found%s", d.Fabrics[d.Faces[face].Fabric].Name, d.where(face), g.of.Name, moreSeams(len(d.Alike)))
}

// fromPool says whether a face is of a strip that sets are dealt, and not of one that all of them share.
func (d *setDealer) fromPool(face int32) bool {
	w := d.web[d.Faces[face].Patch]
	return w >= 0 && d.groups[d.webs[w].group].of.Bands[d.strip(face)].Pool >= 0
}

// fault warns of a group, at its strip set.
func (d *setDealer) fault(g *setGroup, hint, format string, args ...any) {
	d.Warnings = append(d.Warnings, layout.Fault{Severity: layout.Warning, Span: g.of.Span, Message: fmt.Sprintf(format, args...), Hint: hint})
}
