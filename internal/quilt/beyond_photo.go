package quilt

import (
	"fmt"

	"eighthturn/layout"
)

// warnBeyondPhotos warns of each motif on a photo without a repeat whose pieces, with their seam allowances, reach beyond what the photo
// shows: what they show there nobody knows.
func (l *builder) warnBeyondPhotos() {
	if l.Cuts == nil {
		return
	}
	places, said := l.ClothPlaces(), map[string]bool{}
	for i := range l.Patches {
		c, p := l.CutOfPatch(i), &l.Patches[i]
		if c == nil || c.Motif == "" || said[c.Motif] || !l.beyondPhoto(p, places) {
			continue
		}
		said[c.Motif] = true
		for _, m := range l.design.Motifs {
			if m.Name == c.Motif {
				l.Warnings = append(l.Warnings, layout.Fault{
					Severity: layout.Warning, Span: m.Span,
					Message: fmt.Sprintf("pieces of %q reach beyond what the photo of %s shows", m.Name, l.Fabrics[m.Fabric].Name),
					Hint:    "move the motif away from the photo's edges, or say with repeat after how much fabric the print comes again",
				})
			}
		}
	}
}

// beyondPhoto says whether a piece reaches beyond what a photo of its fabric shows.
func (l *builder) beyondPhoto(p *Patch, places []ClothPlace) bool {
	cloth := l.Fabrics[l.Faces[p.First].Fabric].Cloth
	if cloth == nil || cloth.Repeats || cloth.Width == 0 {
		return false
	}
	across, down := cloth.photo.Shows()
	for _, q := range p.Outline {
		x, y := places[p.First].OnCloth(float64(q.X), float64(q.Y))
		if seam := float64(l.Seam); x < seam || y < seam || x > float64(across)-seam || y > float64(down)-seam {
			return true
		}
	}
	return false
}
