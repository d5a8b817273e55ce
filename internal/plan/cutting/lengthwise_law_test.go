package cutting

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
)

// alongLayout has pieces and borders that are cut along the selvages of striped cloth.
func alongLayout(side, count int, stripes string) string {
	return fmt.Sprintf("units inches\nside %d\nfabric navy #1f3350\nfabric cream #f4ead5\nfabric awning stripes navy 3/4 cream 1/2 %s\n"+
		"block A ring wedges awning lengthwise corners cream\nblock B ring wedges awning corners navy\nblock C plain piece awning lengthwise\ngrid\n%s"+
		"border 3 awning lengthwise\nborder 2 awning\n", side, stripes, strings.Repeat(" A B A C B A\n", count))
}

// centers are where a plan has the middles of a line's pieces on its cloth, in the order in which they are cut.
func centers(p *Plan, line int) []measure.Vec {
	var list []measure.Vec
	down := measure.NM(0)
	for _, b := range p.Fabrics[p.Lines[line].Fabric].Blocks {
		for range b.Times {
			across := measure.NM(0)
			for i := range b.Columns {
				c := &b.Columns[i]
				cut := p.CutOf(c)
				for n := range c.Units * boolInt(c.Line == line) {
					middle := float64(cut.AlongCut) * (float64(n) + .5)
					if piece := &p.Lines[line].Piece; cut.Nests {
						middle = float64(n)*float64(piece.PitchCut()) + float64(piece.WideCut)/2
					}
					list = append(list, measure.Vec{X: float64(across) + float64(c.WidthCut)/2, Y: float64(down) + middle})
				}
				across += c.WidthCut
			}
			down += b.LengthCut
		}
	}
	return list
}

func boolInt(yes bool) int { return int(boolNM(yes)) }

// asLaidFirst says whether a plan has as many whole strips side by side as there is room for, as pictures have: where other strips take
// less cloth beside fewer, it has fewer.
func asLaidFirst(f *Fabric) bool {
	other := *f
	other.layBlocks(0)
	return slices.EqualFunc(f.Blocks, other.Blocks, func(a, b Block) bool { return a.Times == b.Times && slices.Equal(a.Columns, b.Columns) })
}

// drawnElsewhere says which piece along the selvages is drawn from another place of its cloth than the plan cuts it from: across in every
// piece, along in those of blocks, since strips of a border are trimmed.
func drawnElsewhere(top *quilt.Top, p *Plan) (err error, pieces int) {
	const slack = float64(measure.Inch) / 64
	places := top.ClothPlaces()
	for n := range p.Lines {
		line := &p.Lines[n]
		if !line.AlongSelvage && line.Piece.Method != Lengthwise {
			continue
		}
		if !asLaidFirst(&p.Fabrics[line.Fabric]) {
			continue
		}
		cut := centers(p, n)
		for i, patch := range line.Patches {
			at := places[top.Patches[patch].First].Cloth
			along := float64(at.Y - 1000*measure.Yard) // where pictures have such lengths begin
			if d := math.Abs(float64(at.X) - cut[i].X); d > slack {
				return fmt.Errorf("piece %d of line %d is drawn %.3f in aside", i, n, d/float64(measure.Inch)), pieces
			}
			if d := math.Abs(along - cut[i].Y); d > slack*float64(i+1) && line.AlongSelvage {
				return fmt.Errorf("piece %d of line %d is drawn %.3f in further along", i, n, d/float64(measure.Inch)), pieces
			}
			pieces++
		}
	}
	return nil, pieces
}

// TestDrawnAsCut: pieces and borders from strips along the selvages show the place of their cloth that the plan cuts them from.
func TestDrawnAsCut(t *testing.T) {
	pieces := 0
	for n := range 16 {
		top := lay.Top(t, alongLayout(4+n%6, 1+n/2, []string{"", "crosswise"}[n%2]))
		p := Build(nil, top, Options{})
		if len(p.Faults) > 0 {
			t.Fatal(p.Faults)
		}
		err, count := drawnElsewhere(top, p)
		if err != nil {
			t.Errorf("layout %d: %v", n, err)
		}
		pieces += count
		for i := range p.Fabrics {
			for _, b := range p.Fabrics[i].Blocks {
				if long := 72 * measure.Inch; b.wholes() == 0 && b.LengthCut > long {
					t.Errorf("layout %d: a length of %.1f in", n, inches(b.LengthCut))
				}
			}
		}
	}
	if pieces < 900 {
		t.Errorf("only %d pieces", pieces)
	}
	top := lay.Top(t, alongLayout(6, 3, ""))
	p := Build(nil, top, Options{})
	for i := range p.Fabrics {
		for n := range p.Fabrics[i].along {
			p.Fabrics[i].along[n].Across += inch(0.25)
		}
		p.Fabrics[i].layBlocks(0)
	}
	if err, _ := drawnElsewhere(top, p); err == nil {
		t.Error("a wider strip is not noticed")
	}
}

// TestLengthwiseYardage: 48 wedges 4 1/2 in high that are 4 7/16 in wide over two, along the selvages of cloth 40 in wide: 8 strips of
// 6 wedges, so that the length of a strip is the yardage. Worked by hand: a strip of 4 1/2 in and its wedges as in the trade's tables.
func TestLengthwiseYardage(t *testing.T) {
	top := lay.Top(t, "units inches\nstrip 4 1/2\nfabric cream #f4ead5\nfabric awning stripes navy 3/4 cream 1/2\nblock A ring wedges awning lengthwise corners cream\ngrid\n A A A\n A A A\n")
	p := Build(nil, top, Options{})
	f := &p.Fabrics[len(p.Fabrics)-1]
	piece := &p.Lines[f.Lines[0]].Piece
	if want := 5*piece.PitchCut() + piece.WideCut; len(f.Blocks) != 1 || len(f.Blocks[0].Columns) != 8 || f.LengthCut != want || f.LengthBound > want {
		t.Errorf("%+v, %d; expected %d", f.Blocks, f.LengthCut, want)
	}
}
