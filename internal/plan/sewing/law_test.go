package sewing_test

import (
	"bytes"
	"eighthturn/internal/quilttest/lay"
	"encoding/json"
	"fmt"
	"slices"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
)

// checkCounts is the law of numbers: variants have every block once, a step makes so many
// units for each block, and what is listed by cloth comes to that.
func checkCounts(top *quilt.Top, p *sewing.Plan) error {
	seen := map[int]bool{}
	for i := range p.Blocks {
		b := &p.Blocks[i]
		count := 0
		for _, c := range b.Variants {
			count += len(c.Cells)
			for _, at := range c.Cells {
				for n := range at.Cells {
					if cell := at.Cell + n*p.Columns; seen[cell] || top.Cells[cell].Label != b.Label {
						return fmt.Errorf("cell %d is listed twice, or is no %s", cell, b.Label)
					}
					seen[at.Cell+n*p.Columns] = true
				}
			}
		}
		if count != b.Count {
			return fmt.Errorf("block %s: %d are listed of %d", b.Label, count, b.Count)
		}
		if err := checkMakes(b); err != nil {
			return fmt.Errorf("block %s: %w", b.Label, err)
		}
	}
	for cell := range top.Cells {
		if seen[cell] == top.Empty(cell) {
			return fmt.Errorf("cell %d: listed is %v, empty is %v", cell, seen[cell], top.Empty(cell))
		}
	}
	return nil
}

func checkMakes(b *sewing.Block) error {
	sums := make([]int, len(b.Steps))
	for _, c := range b.Variants {
		for _, m := range c.Makes {
			sums[m.Step] += m.Count
		}
	}
	for i, s := range b.Steps {
		if s.Make != s.PerBlock*b.Count {
			return fmt.Errorf("step %s: %d in a block, %d in all", s.Name, s.PerBlock, s.Make)
		}
		if !b.Column && sums[i] != s.Make {
			return fmt.Errorf("step %s: %d by cloth, %d in all", s.Name, sums[i], s.Make)
		}
	}
	return nil
}

// checkCloths is the law of turns: a block's pieces, taken in its own order, are cut from the
// cloths of its variant, and lie where its kind puts them once it is turned as it says.
func checkCloths(top *quilt.Top, p *sewing.Plan) error {
	for i := range p.Blocks {
		b := &p.Blocks[i]
		k, _ := blocks.Find(blocks.Kinds(), b.Kind)
		for _, c := range b.Variants {
			for _, at := range c.Cells {
				for piece, n := range c.Cloths {
					cloth := p.Cloths[n]
					patch := &top.Patches[p.Patches(at.Cell, []int{piece})[0]]
					fabric := top.Fabrics[top.Faces[patch.First].Fabric].Name
					if cut := top.CutOfPatch(p.Patches(at.Cell, []int{piece})[0]); cut != nil {
						fabric += map[bool]string{true: " crosswise", false: " lengthwise"}[cut.Crosswise]
						if cut.Motif != "" {
							fabric = cut.Name()
						}
					}
					if patch.Set < 0 && cloth.Name != fabric || patch.Set >= 0 && (cloth.Name != top.CutFacts.Sets[patch.Set].Name || cloth.Reversed != patch.Reversed) {
						return fmt.Errorf("cell %d, piece %d: %v is said, %s is there", at.Cell, piece, cloth, fabric)
					}
					if !k.Column && !liesAt(top, at, patch, k.Pieces[piece]) {
						return fmt.Errorf("cell %d, piece %d does not lie there when the block is turned %d quarters", at.Cell, piece, at.Turns)
					}
				}
			}
		}
	}
	return nil
}

// liesAt says whether a patch points where its piece does in a block that is turned, and has
// its shape.
func liesAt(top *quilt.Top, at sewing.Placed, patch *quilt.Patch, piece blocks.Piece) bool {
	r := top.CellRect(at.Cell)
	mid := func(a, b measure.NM) measure.NM { return (a + b) / 2 }
	q := piece.Outline[0].Turned(at.Turns)
	x := [5]measure.NM{blocks.Zero: r.Min.X, blocks.Mid: mid(r.Min.X, r.Max.X), blocks.Full: r.Max.X}
	y := [5]measure.NM{blocks.Zero: r.Min.Y, blocks.Mid: mid(r.Min.Y, r.Max.Y), blocks.Full: r.Max.Y}
	return patch.Shape == piece.Shape && patch.Outline[0] == measure.Point{X: x[q.X], Y: y[q.Y]}
}

// TestLaws holds every law on the samples and on hundreds of invented layouts.
func TestLaws(t *testing.T) {
	stubborn := 0
	for _, n := range everyPlan() {
		name, top, p := n.name, n.Top, n.plan
		for _, law := range []func(*quilt.Top, *sewing.Plan) error{checkCounts, checkCloths, checkTrimmed} {
			if err := law(top, p); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		}
		r := newReplay(top, p)
		if err := r.check(); err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if len(top.Seams) > 6000 {
			continue // the checker of joints is slow
		}
		if err := checkPressing(t, r); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		stubborn += len(p.Pressing.Cannot)
	}
	if stubborn == 0 {
		t.Error("in no layout was there a joint that cannot nest")
	}
}

func TestLawsCatch(t *testing.T) {
	text := "strip 4\nfabric a #112233\nfabric b #eeeeee\nfabric c #a04030\nblock A web kites b wedges a c\nblock H halves pieces a b\ngrid\n  A A H\n  A H:ne A\n"
	for name, broken := range map[string]func(p *sewing.Plan){
		"a block that is left out":         func(p *sewing.Plan) { c := &p.Blocks[0].Variants[0]; c.Cells = c.Cells[1:] },
		"a block that is listed twice":     func(p *sewing.Plan) { c := p.Blocks[0].Variants[0].Cells; c[0] = c[1] },
		"a number of units that is wrong":  func(p *sewing.Plan) { p.Blocks[0].Steps[0].Make++ },
		"units by cloth that are too many": func(p *sewing.Plan) { p.Blocks[0].Variants[0].Makes[0].Count++ },
		"a block that is turned":           func(p *sewing.Plan) { c := p.Blocks[1].Variants[0].Cells; c[0].Turns = c[0].Turns + 1 },
		"cloths that are swapped":          func(p *sewing.Plan) { c := p.Blocks[1].Variants[0].Cloths; c[0], c[1] = c[1], c[0] },
	} {
		top := lay.Top(t, text)
		p := planOf(top, sewing.Options{})
		if checkCounts(top, p) != nil || checkCloths(top, p) != nil {
			t.Fatal("broken before")
		}
		broken(p)
		if checkCounts(top, p) == nil && checkCloths(top, p) == nil {
			t.Errorf("%s is not caught", name)
		}
	}
}

// checkTrimmed is the law of trimming: what stands out of a unit is what the cutting plan
// makes its pieces larger than they need to be; the unit is as much larger before it is
// trimmed, and is trimmed to its exact size.
func checkTrimmed(top *quilt.Top, p *sewing.Plan) error {
	spare := map[blocks.Shape]measure.NM{}
	for _, l := range cutting.Build(nil, top, cutting.Options{}).Lines {
		spare[l.Piece.Shape] = l.Piece.AcrossCut - l.Piece.AcrossExact
	}
	for i := range p.Blocks {
		k, _ := blocks.Find(blocks.Kinds(), p.Blocks[i].Kind)
		trimmed := map[int]bool{}
		for _, s := range p.Blocks[i].Steps {
			if (s.Trim == "") != (s.Before == nil) || s.Trim == "" && s.StandsOut != 0 {
				return fmt.Errorf("step %s: trimmed or not?", s.Name)
			}
			if s.Trim == "" {
				continue
			}
			if err := trimmedBy(k, &s, spare, trimmed); err != nil {
				return fmt.Errorf("block %s, step %s: %w", p.Blocks[i].Label, s.Name, err)
			}
		}
	}
	return nil
}

// trimmedBy checks one step: of pieces that keep one corner in place all of the spare stands
// out on either side, of those that are centred half of it; what a step trimmed is exact from then on.
func trimmedBy(k *blocks.Kind, s *sewing.Step, spare map[blocks.Shape]measure.NM, trimmed map[int]bool) error {
	last := s.Joins[len(s.Joins)-1]
	want := measure.NM(0)
	shared := false // the longer side has it all
	for _, piece := range slices.Concat(last.A, last.B) {
		if trimmed[piece] {
			continue
		}
		trimmed[piece] = true
		shared = shared || k.Pieces[piece].Shape == blocks.Background
		switch shape := k.Pieces[piece].Shape; shape {
		case blocks.Kite, blocks.Background:
			want = max(want, spare[shape])
		case blocks.HalfSquare, blocks.RingCorner:
			want = max(want, spare[shape]/2)
		}
	}
	if d := s.StandsOut - want; d < -4 || d > 4 {
		return fmt.Errorf("%d nm are said to stand out, the cutting plan leaves %d", s.StandsOut, want)
	}
	if s.StandsOut > 4 && (s.Before.Across < s.Unfinished.Across+s.StandsOut-4 || !shared && s.Before.Down < s.Unfinished.Down+s.StandsOut-4) {
		return fmt.Errorf("the unit is not as much larger before it is trimmed")
	}
	return nil
}

func TestTrimmingCatches(t *testing.T) {
	text := "strip 4\nfabric a #112233\nfabric b #eeeeee\nblock A web kites b wedges a\ngrid\n  A A\n"
	for name, broken := range map[string]func(s *sewing.Step){
		"too much":           func(s *sewing.Step) { s.StandsOut += 10 },
		"nothing":            func(s *sewing.Step) { s.StandsOut = 0 },
		"no size before":     func(s *sewing.Step) { s.Before = nil },
		"the same size then": func(s *sewing.Step) { s.Before = &s.Unfinished },
	} {
		top := lay.Top(t, text)
		p := planOf(top, sewing.Options{})
		if err := checkTrimmed(top, p); err != nil {
			t.Fatal(err)
		}
		broken(&p.Blocks[0].Steps[1])
		if checkTrimmed(top, p) == nil {
			t.Errorf("%s is not caught", name)
		}
	}
}

// TestSameBytes: the same top gives the same plan.
func TestSameBytes(t *testing.T) {
	for _, n := range everyPlan()[:30] {
		first, err := json.Marshal(n.plan)
		if err != nil {
			t.Fatal(err)
		}
		second, _ := json.Marshal(planOf(n.Top, planOptions))
		if !bytes.Equal(first, second) {
			t.Errorf("%s: two plans differ", n.name)
		}
	}
}
