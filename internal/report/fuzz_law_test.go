package report

import (
	"slices"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilttest/lay"
)

// TestPlanLawsCatch: what the laws of every accepted text must notice is noticed.
func TestPlanLawsCatch(t *testing.T) {
	const text = "side 6\nfabric a #204060\nfabric b #f0e8d8\nblock W web wedges a kites b\ngrid\n W W\nborder 2 a\n"
	for name, broken := range map[string]func(p *cutting.Plan){
		"a patch that nothing is cut for": func(p *cutting.Plan) {
			p.Lines[0].Patches, p.Lines[0].Pieces = p.Lines[0].Patches[1:], p.Lines[0].Pieces-1
		},
		"a patch that is cut twice":         func(p *cutting.Plan) { p.Lines[0].Patches[0] = p.Lines[1].Patches[0] },
		"a piece too few":                   func(p *cutting.Plan) { p.Lines[0].Pieces-- },
		"a unit too few":                    func(p *cutting.Plan) { p.Lines[0].Units = (p.Lines[0].Pieces - 1) / fromUnit(p.Lines[0].Piece.Method) },
		"a fabric that is bought short":     func(p *cutting.Plan) { p.Fabrics[0].Purchase.Buy = p.Fabrics[0].Purchase.Need - 1 },
		"a fabric of which more is cut":     func(p *cutting.Plan) { p.Fabrics[0].LengthCut = p.Fabrics[0].Purchase.Need + 1 },
		"more on hand than there are of it": func(p *cutting.Plan) { p.Lines[0].OnHand = p.Lines[0].Pieces + 1 },
	} {
		top := lay.Top(t, text)
		p := cutting.Build(nil, top, cutting.Options{})
		if err := uncovered(top, p); err != nil {
			t.Fatal(err)
		}
		if broken(p); uncovered(top, p) == nil {
			t.Errorf("%s is not noticed", name)
		}
	}
	if slices.Equal(lengthsIn("cut 3 1/2 in"), lengthsIn("cut 3⅝ in")) || !slices.Equal(lengthsIn("cut 3 1/2 in"), lengthsIn("cut 3½\n  in, 3½ in")) || !slices.Equal(lengthsIn("1²³⁄₃₂ in"), []string{"1 23/32 in"}) {
		t.Error("lengths are not told apart, or not read")
	}
	for said, nm := range map[string]measure.NM{"3 1/2 in": 3 * measure.Inch, "1 1/8 yd": 3 * measure.Yard / 2, "2.5 cm": 4 * measure.Centimetre, "much": measure.Inch} {
		if farOff(said, nm) == nil {
			t.Errorf("%q for %d is not noticed", said, nm)
		}
	}
	if err := farOff("3 9/16 in", 7*measure.Inch/2+measure.Inch/32); err != nil {
		t.Error(err)
	}
}

// TestOtherLengthsAreNoticed: a length that a form lacks, and one that only it has; a cell of a table that goes on in the next line is no
// other length.
func TestOtherLengthsAreNoticed(t *testing.T) {
	want := []string{"1 1/2 in", "35/64 in"}
	for _, good := range []string{"cut 1\n  1/2 in and 35/64 in", "strip  trimmed to   14  1 1/2 in\n       35/64 in wide", "10  wide 1 1/2\n      in\nand 35/64 in"} {
		if wrong := otherLengths("text", good, want); wrong != "" {
			t.Errorf("%q: %s", good, wrong)
		}
	}
	for _, bad := range []string{"cut 1 1/2 in", "cut 1 1/2 in and 35/64 in and 3/4 in", "cut 1 1/2 in and 1 35/64 in"} {
		if otherLengths("text", bad, want) == "" || otherLengths("markdown", bad, want) == "" {
			t.Errorf("%q goes through", bad)
		}
	}
}
