package pixels

import (
	"slices"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/palettes"
)

// byFabric are faces put together by their fabrics.
func byFabric(t *quilt.Top) Shades {
	s := Shades{make([]uint16, len(t.Faces)), len(t.Fabrics)}
	for i := range t.Faces {
		s.Of[i] = uint16(t.Faces[i].Fabric)
	}
	return s
}

// sameAsPainted says whether a mosaic in some colors is the very plane that the top makes in those.
func sameAsPainted(m *Mosaic, p *Plane, colour func(int) palettes.Colour) bool {
	q := m.luminance(func(f int) float64 { return colour(f).Luminance() })
	return slices.Equal(p.Luminance, q.Luminance) && slices.Equal(p.Covered, q.Covered)
}

// TestMosaicsAreThePlanes: found once, a mosaic gives in any colors what the outlines give, to the last bit, with empty places too.
func TestMosaicsAreThePlanes(t *testing.T) {
	for _, text := range []string{webs(3, 2), "side 5\nfabric red #b5532a\nfabric sky #a8cfe3\nblock P plain piece red\nblock R ring wedges red sky corners sky\ngrid\n P P R\n R P ."} {
		top := lay.Top(t, text)
		m := NewMosaic(top, sized(t, top, 300), Squint{}.Sigma(), byFabric(top))
		for _, turn := range []int{0, 1} {
			colour := func(f int) palettes.Colour { return top.Fabrics[(f+turn)%len(top.Fabrics)].Colour }
			plane := luminance(top, m.Size, colour)
			if !sameAsPainted(m, plane, colour) {
				t.Errorf("a mosaic of %d fabrics, their colors moved on by %d, is another picture", len(top.Fabrics), turn)
			}
			if sameAsPainted(m, plane, func(f int) palettes.Colour { return top.Fabrics[(f+turn+1)%len(top.Fabrics)].Colour }) {
				t.Error("other colors go unnoticed")
			}
		}
	}
}
