package cutting

import (
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
)

// roses is a layout whose wedges and corners are cut from places of a print, in some more words.
func roses(t *testing.T, more string, cloth quilt.Cloth) *quilt.Top {
	t.Helper()
	top := lay.Top(t, "side 6\nfabric navy #1f3350\nfabric cream #f4ead5\nfabric garden stripes navy 1 cream 1\nmotif rose garden across 5 down 5\n"+more+"grid\n R R\n R R\n")
	for i := range top.Fabrics {
		if top.Fabrics[i].Cloth != nil {
			top.Fabrics[i].Cloth = &cloth
		}
	}
	return top
}

// TestPrintWarnings: what a print cannot give without more ado is said, and nothing where it can.
func TestPrintWarnings(t *testing.T) {
	ring := "block R ring wedges rose corners navy\n"
	inches := func(across, down float64, repeats bool) quilt.Cloth {
		return quilt.Cloth{Across: inch(across), Down: inch(down), Repeats: repeats}
	}
	for _, c := range []struct {
		name, more string
		cloth      quilt.Cloth
		says       []string
	}{
		{"a repeat that is large enough", ring, inches(10, 10, true), nil},
		{"a repeat narrower than a wedge", ring, inches(3, 10, true), []string{"a rose wedge takes about 3 1/4 by 3 1/2 in of the print, more than a repeat of garden, 3 by 10 in"}},
		{"a repeat lower than a wedge", ring, inches(10, 3, true), []string{"more than a repeat of garden, 10 by 3 in"}},
		{"a photo of one place", ring, inches(10, 10, false), []string{"32 pieces are cut from places of garden, which has no repeat"}},
		{"left and right pieces", "block R floating wedges navy background rose\n", inches(12, 12, true), []string{"left and right rose background pieces are cut from one place of garden"}},
	} {
		p := Build(nil, roses(t, c.more, c.cloth), Options{})
		var said []string
		for _, w := range p.Warnings {
			said = append(said, w.Message)
		}
		text := strings.Join(said, "; ")
		for _, want := range c.says {
			if !strings.Contains(text, want) {
				t.Errorf("%s: %q does not say %q", c.name, text, want)
			}
		}
		if len(said) != len(c.says) || len(p.Faults) > 0 {
			t.Errorf("%s: %d warnings, wanted %d: %s; %v", c.name, len(said), len(c.says), text, p.Faults)
		}
	}
}

// TestPrintTooNarrow: a piece that leaves the cloth wherever the print comes again is a fault, and nothing of it is cut.
func TestPrintTooNarrow(t *testing.T) {
	top := roses(t, "block R ring wedges rose corners navy\n", quilt.Cloth{Across: inch(30), Down: inch(10), Repeats: true})
	for i := range top.CutFacts.Fabrics {
		top.CutFacts.Fabrics[i].UsableWidth = inch(6)
	}
	p := Build(nil, top, Options{})
	if len(p.Faults) != 1 || !strings.Contains(p.Faults[0].Message, "leaves the fabric, which is 6 in between its selvages") {
		t.Errorf("%v", p.Faults)
	}
}

// TestPrintOnHand: too few repeats on hand are short of what is needed, whole repeats and one to begin with; smaller blocks that the
// repeat gives more of are found by laying the pieces out anew.
func TestPrintOnHand(t *testing.T) {
	top := roses(t, "block R ring wedges rose corners navy\n", quilt.Cloth{Across: inch(3), Down: inch(6), Repeats: true})
	for i := range top.Fabrics {
		if top.Fabrics[i].Cloth != nil {
			top.CutFacts.Fabrics[i].OnHand = inch(27)
		}
	}
	p := Build(nil, top, Options{})
	f := &p.Fabrics[1]
	if f.Name != "garden" {
		f = &p.Fabrics[0]
	}
	// A wedge 3 1/4 in wide comes every 6 in across, 7 times in 40 in: 32 of them from 5 strips, one to a repeat, and a sixth repeat. One of 3 in would come 13 times.
	if got := &f.FromPrint[0]; got.Repeats != 6 || f.OnHand == nil || f.OnHand.Enough || f.OnHand.NeedCut != 6*inch(6)+2*measure.Inch {
		t.Fatalf("%d repeats, %+v", got.Repeats, f.OnHand)
	}
	if len(f.OnHand.WaysToFit) != 1 || f.OnHand.WaysToFit[0].SideFinished >= inch(6) || f.OnHand.WaysToFit[0].NeedCut > inch(27) {
		t.Errorf("ways: %+v", f.OnHand.WaysToFit)
	}
}
