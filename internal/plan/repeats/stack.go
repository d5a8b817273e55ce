package repeats

import "eighthturn/internal/measure"

// Stacked is pieces cut through several layers of cloth at once, which lie on each other place for place of the print: what is
// cut once comes as often as there are layers, all alike.
type Stacked struct {
	Layers    int
	Layer     *Fitting   // of one layer
	LayerCut  measure.NM // of cloth: whole repeats
	LengthCut measure.NM // of all layers, cut one behind the other
}

// Stack fits pieces into so many layers, each as long as whole repeats hold what is cut from it.
func Stack(cloth Cloth, pieces []Piece, layers, steps int) *Stacked {
	fewer := make([]Piece, len(pieces))
	for i, p := range pieces {
		fewer[i] = Piece{p.Outline, int(up(measure.NM(p.Wanted), measure.NM(layers)))}
	}
	s := &Stacked{Layers: layers, Layer: Fit(cloth, fewer, steps)}
	s.LayerCut = upTo(s.Layer.TotalCut(cloth.Along), cloth.Along)
	s.LengthCut = measure.NM(layers) * s.LayerCut
	return s
}

// Sets is how many sets of like pieces come from layers that are cut into strips of a width, the pieces side by side in each
// strip wherever they come to lie on the print: so many whole repeats of cloth for so many sets.
type Sets struct {
	Strips    int        // cut through all layers
	Repeats   int        // of each layer
	LengthCut measure.NM // of all layers, cut one behind the other
}

// SetsOf is what so many sets take, from strips that give so many each.
func SetsOf(sets, perStrip, layers int, stripCut, along measure.NM) Sets {
	s := Sets{Strips: int(up(measure.NM(sets), measure.NM(perStrip)))}
	s.Repeats = Whole(measure.NM(s.Strips)*stripCut, along)
	s.LengthCut = measure.NM(layers*s.Repeats) * along
	return s
}
