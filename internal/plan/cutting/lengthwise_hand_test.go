package cutting

import (
	"reflect"
	"testing"

	"eighthturn/internal/quilttest/lay"
)

// TestCutOfAStrip: a strip along the selvages is one row of its pieces, each as long as its share; wedges nest in the whole of it.
func TestCutOfAStrip(t *testing.T) {
	p := &Plan{Lines: make([]Line, 2)}
	p.Lines[1].Piece.Method = Nested
	for line, want := range []Cut{
		{Lines: []int{0}, Set: -1, Units: 3, Rows: 1, AcrossCut: 5, AlongCut: 4},
		{Lines: []int{1}, Set: -1, Units: 3, Rows: 1, AcrossCut: 5, AlongCut: 12, Nests: true},
	} {
		if got := p.CutOf(&Column{Line: line, Units: 3, WidthCut: 5, LengthCut: 12}); !reflect.DeepEqual(got, want) {
			t.Errorf("%+v, wanted %+v", got, want)
		}
	}
}

// TestStripsInPieces: the widest strips are cut first, whichever is named first, so that the narrow ones find room beside them.
func TestStripsInPieces(t *testing.T) {
	narrow, half, wide := item{across: 1, along: 3, count: 1}, item{across: 1, along: 5, count: 2}, item{across: 1, along: 7, count: 1}
	for _, list := range [][]item{{narrow, half, wide}, {wide, narrow, half}, {half, wide, narrow}} {
		if got := inPieces(list, 10); got != 2 {
			t.Errorf("%v: %d pieces of cloth, wanted 2", list, got)
		}
	}
}

// TestTooWideBorderTakesNoCloth: a lengthwise border that is wider than the cloth is told, and no cloth is laid out for it.
func TestTooWideBorderTakesNoCloth(t *testing.T) {
	for width, faults := range map[string]int{"8": 0, "40": 1} {
		top := lay.Top(t, "side 6\nfabric navy #1f3350\nfabric cream #f4ead5 usable-width 20\nblock P plain piece navy\ngrid\n P P\nborder "+width+" cream lengthwise\n")
		p := Build(nil, top, Options{})
		laid := 0
		for i := range p.Fabrics {
			laid += len(p.Fabrics[i].Blocks)
		}
		if (laid > 0) != (faults == 0) || len(p.Faults) != faults {
			t.Errorf("%s wide: %d blocks of strips are laid out, %d faults", width, laid, len(p.Faults))
		}
	}
}
