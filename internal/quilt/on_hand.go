package quilt

import (
	"fmt"
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/layout"
)

// OnHand is pieces that are cut already.
type OnHand struct {
	Role     string
	Shape    blocks.Shape
	Cloth    string // the fabric or the strip set that they are cut from, by name
	Reversed bool   // wedges of a strip set, cut with the tip on the other edge
	Count    int
	Patch    int // the first patch that they fit, by index; -1 where they fit none
	Place    layout.Span
	Fabrics  []int              // that they show, from the wide end to the tip; -1 for one that is not in this colorway
	BandsCut []measure.NM       // widths of their strips in that order; nil where they are of one fabric
	Height   blocks.WedgeHeight // of wedges
	Cut      *Cut               // from which place of their print they are; nil as they come across it
}

// onHand finds what the pieces on hand fit.
func (l *builder) onHand() {
	for _, h := range l.design.OnHand {
		o := l.pieceOnHand(h)
		if o.Patch = l.fitting(&o); o.Patch < 0 {
			l.Warnings = append(l.Warnings, layout.Fault{
				Severity: layout.Warning, Span: h.Span, Hint: l.onHandHint(&o),
				Message: fmt.Sprintf("the quilt has no use for the %s on hand", o.Role),
			})
		}
		l.CutFacts.OnHand = append(l.CutFacts.OnHand, o)
	}
}

// pieceOnHand is what the design says to be on hand.
func (l *builder) pieceOnHand(h layout.OnHand) OnHand {
	o := OnHand{Role: h.Role, Count: h.Count, Reversed: h.Fill.Reversed, Place: h.Span, Height: h.Height}
	for _, k := range blocks.KeptRoles(blocks.Kinds()) {
		if k.Role == h.Role {
			o.Shape = k.Shape
		}
	}
	if h.Fill.Set < 0 {
		o.Cloth, o.Fabrics = l.design.Fabrics[h.Fill.Fabric].Name, []int{h.Fill.Fabric}
		if h.Fill.Cut != nil {
			cut := l.cut(h.Fill.Cut)
			o.Cut, o.Cloth = &cut, cut.NameOf(o.Cloth)
		}
		return o
	}
	s := &l.design.StripSets[h.Fill.Set]
	o.Cloth = s.Name
	for _, b := range s.Bands {
		o.Fabrics, o.BandsCut = append(o.Fabrics, b.Fabric), append(o.BandsCut, b.Cut[h.Height])
	}
	if o.Reversed {
		slices.Reverse(o.Fabrics)
		slices.Reverse(o.BandsCut)
	}
	return o
}

// fitting is the first patch that pieces on hand fit, -1 for none.
func (t *Top) fitting(o *OnHand) int {
	for i := range t.Patches {
		if t.fits(o, &t.Patches[i]) && sameCut(o.Cut, t.CutOfPatch(i)) {
			return i
		}
	}
	return -1
}

// fits says whether pieces on hand are of the shape, the fabrics and the size of a patch.
func (t *Top) fits(o *OnHand, p *Patch) bool {
	if p.Shape != o.Shape || p.Cell < 0 || (p.Set < 0) != (o.BandsCut == nil) || int(p.Count) != len(o.Fabrics) {
		return false
	}
	for i, f := range o.Fabrics {
		if int(t.Faces[int(p.First)+i].Fabric) != f {
			return false
		}
	}
	if d := p.Shape.Description(); d.Sized == blocks.ByStrip {
		kind, ok := blocks.Find(blocks.Kinds(), t.Cells[p.Cell].Kind)
		return ok && kind.Height == o.Height && t.banded(p, o.BandsCut)
	}
	return true
}

// sameCut says whether pieces are cut alike from their cloth: from one place of it, or as they come along strips that run one way.
func sameCut(a, b *Cut) bool {
	across := func(c *Cut) bool { return c == nil || c.Motif == "" && !c.Alike && c.Crosswise }
	return across(a) && across(b) || a != nil && b != nil && *a == *b
}

// onHandHint says what to write where the quilt has no use for pieces on hand.
func (l *builder) onHandHint(o *OnHand) string {
	for i := range l.Patches {
		if cut := l.CutOfPatch(i); l.fits(o, &l.Patches[i]) && (cut == nil || !cut.Alike) { // what has a place of its stripes has no name
			fabric := l.Fabrics[o.Fabrics[0]].Name
			return fmt.Sprintf("the quilt takes them cut another way: write %s in place of %s if they are", cut.NameOf(fabric), o.Cloth)
		}
	}
	return "leave the line out, or see that its name and its strip are right"
}

// banded says whether the strips of a patch have widths, from its wide end to its tip.
func (t *Top) banded(p *Patch, cut []measure.NM) bool {
	if cut == nil {
		return true
	}
	own := t.CutFacts.Sets[p.Set].BandsCut
	if p.Reversed {
		own = slices.Clone(own)
		slices.Reverse(own)
	}
	return slices.Equal(own, cut)
}

// onHandIn is what the pieces on hand fit where the top is in other fabrics: pieces keep the fabrics that they are cut from.
func (t *Top) onHandIn(fabrics []Fabric) []OnHand {
	list := slices.Clone(t.CutFacts.OnHand)
	for i := range list {
		o := &list[i]
		o.Fabrics = slices.Clone(o.Fabrics)
		for n, f := range o.Fabrics {
			o.Fabrics[n] = slices.IndexFunc(fabrics, func(g Fabric) bool { return g.Name == t.Fabrics[f].Name && g.Colour == t.Fabrics[f].Colour })
		}
		o.Patch = t.fitting(o)
	}
	return list
}
