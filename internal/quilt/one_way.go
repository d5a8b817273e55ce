package quilt

import (
	"fmt"
	"math"

	"eighthturn/internal/measure"
)

// warnOneWay warns of each fabric whose print has a head and a foot, as its layout says, and stands on its head in some pieces that the
// layout cuts as they come along strips. Nothing on a photo tells which way up a print is, so it must be said, of stripes too.
func (l *builder) warnOneWay() {
	var places []ClothPlace
	for f := range l.design.Fabrics {
		if !l.design.Fabrics[f].OneWay || l.Fabrics[f].Cloth == nil {
			continue
		}
		if places == nil {
			places = l.ClothPlaces()
		}
		list, heads, all := []string{}, map[string]int{}, 0
		for i := range l.Faces {
			if int(l.Faces[i].Fabric) != f {
				continue
			}
			p := &l.Patches[l.Faces[i].Patch]
			_, said := l.PlaceSaid(int(l.Faces[i].Patch))
			if all++; said || !onItsHead(p, &places[i]) {
				continue
			}
			shape := p.Shape.String()
			if heads[shape]++; heads[shape] == 1 {
				list = append(list, shape)
			}
		}
		count := 0
		for i, shape := range list {
			count += heads[shape]
			list[i] = measure.Count(heads[shape], shape)
		}
		if count > 0 {
			l.warn(l.Fabrics[f].Place, fmt.Sprintf("the print of %q stands on its head in %d of %d pieces: %s", l.Fabrics[f].Name, count, all, measure.List(list)),
				"cut these pieces from a motif: they all point one way then, which takes more fabric than cutting them head up and head down by turns; cuts says how much")
		}
	}
}

// onItsHead says whether a print stands on its head in a piece: of those that meet round a point, where its head is not at the upper end
// of the piece as its template lies; of others, in the quilt.
func onItsHead(p *Patch, at *ClothPlace) bool {
	turn := at.Turn
	if p.Shape.Description().Round > 0 {
		f := p.upright()
		turn -= f.turn
	}
	const slack = 1e-6 // on its side is not on its head
	return math.Cos(turn*math.Pi/180) < -slack
}
