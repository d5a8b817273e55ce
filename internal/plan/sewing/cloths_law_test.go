package sewing_test

import (
	"fmt"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
)

// Laws of what pieces are cut from, and of blocks that are alike.

// bandsOf is the fabrics of a wedge from the first strip of its set to the last.
func bandsOf(top *quilt.Top, patch int32) (names []string) {
	p := &top.Patches[patch]
	for n := range p.Count {
		names = append(names, top.Fabrics[top.Faces[p.First+n].Fabric].Name)
	}
	if p.Reversed {
		slices.Reverse(names)
	}
	return names
}

// checkClothsOf is the law of cloths: pieces of the same cloth, cut the same way, have one entry, no others have it, and the entries stand in
// the order in which blocks need them. Of a strip set whose wedges differ it says the fabrics.
func checkClothsOf(top *quilt.Top, p *sewing.Plan) error {
	pooled := map[int32]bool{}
	bands := map[int32][]string{}
	for i := range top.Patches {
		if set := int32(top.Patches[i].Set); set >= 0 {
			if bands[set] == nil {
				bands[set] = bandsOf(top, int32(i))
			}
			pooled[set] = pooled[set] || !slices.Equal(bands[set], bandsOf(top, int32(i)))
		}
	}
	known, numbers := map[string]int{}, map[int]string{}
	for i := range p.Blocks {
		for _, v := range p.Blocks[i].Variants {
			for _, at := range v.Cells {
				for piece, patch := range at.Patches {
					q := &top.Patches[patch]
					key, n := fmt.Sprint(q.Set, q.Reversed, bandsOf(top, patch)), v.Cloths[piece]
					if top.CutOf != nil {
						key += fmt.Sprint(top.CutOf[patch])
					}
					if old, ok := known[key]; ok && old != n || numbers[n] != "" && numbers[n] != key {
						return fmt.Errorf("patch %d is of cloth %d, as %s is", patch, n, numbers[n])
					}
					known[key], numbers[n] = n, key
					var want []string
					if pooled[int32(q.Set)] && q.Set >= 0 {
						want = bandsOf(top, patch)
					}
					if got := p.Cloths[n].Bands; !slices.Equal(got, want) {
						return fmt.Errorf("patch %d is of %v, not %v", patch, got, want)
					}
				}
			}
		}
	}
	if len(known) != len(p.Cloths) {
		return fmt.Errorf("%d cloths, not %d", len(p.Cloths), len(known))
	}
	return nil
}

// checkLabels is the law of labels: each has one entry, in the order in which they first appear.
func checkLabels(top *quilt.Top, p *sewing.Plan) error {
	var want, got []string
	for cell := range top.Cells {
		if label := top.Cells[cell].Label; !top.Empty(cell) && !slices.Contains(want, label) {
			want = append(want, label)
		}
	}
	for i := range p.Blocks {
		got = append(got, p.Blocks[i].Label)
	}
	if !slices.Equal(got, want) {
		return fmt.Errorf("blocks %v, not %v", got, want)
	}
	return nil
}

// checkVariants is the law of blocks that are alike: no block of one variant looks as one of another does, however it is turned; columns
// differ in their pieces, in how many cells they take or in the side to which they lean. Of a column the first of the longest is shown.
func checkVariants(p *sewing.Plan, block int) error {
	b := &p.Blocks[block]
	seen, longest := map[string]int{}, b.Variants[0].Cells[0]
	for n := range b.Variants {
		v := &b.Variants[n]
		if b.Column {
			key := fmt.Sprint(v.Cloths, v.Leans, v.Cells[0].Cells)
			if other, ok := seen[key]; ok {
				return fmt.Errorf("variants %d and %d of block %s are the same", other+1, n+1, b.Label)
			}
			seen[key] = n
			for _, at := range v.Cells {
				if more := len(at.Patches) - len(longest.Patches); more > 0 || more == 0 && at.Cell < longest.Cell {
					longest = at
				}
			}
			continue
		}
		for turns := range 4 {
			key := lookOf(p, block, n, turns)
			if other, ok := seen[key]; ok && other != n {
				return fmt.Errorf("variants %d and %d of block %s are the same, turned %d quarters", other+1, n+1, b.Label, turns)
			}
			seen[key] = n
		}
	}
	if cell := p.Shown(block).Cell; cell != longest.Cell && b.Column {
		return fmt.Errorf("of columns %s that in cell %d is shown, not that in %d", b.Label, cell, longest.Cell)
	}
	return nil
}

// lookOf is what a variant looks like after so many quarter turns: of each piece its cloth and where its corners lie.
func lookOf(p *sewing.Plan, block, variant, turns int) string {
	side := p.Blocks[block].Finished.Across
	var list []string
	for i, piece := range p.ShownAs(block, variant).Pieces {
		var corners []string
		for _, q := range piece.Outline {
			for range turns {
				q = measure.Point{X: side - q.Y, Y: q.X}
			}
			corners = append(corners, fmt.Sprint((q.X+50)/100, (q.Y+50)/100)) // turned, corners may be a nanometer off
		}
		slices.Sort(corners)
		list = append(list, fmt.Sprint(p.Blocks[block].Variants[variant].Cloths[i], corners))
	}
	slices.Sort(list)
	return fmt.Sprint(list)
}
