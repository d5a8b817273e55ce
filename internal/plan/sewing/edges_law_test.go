package sewing_test

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
)

// Laws of edges and corners: the grain along blocks' edges, points near the outside, and by what one sees how a block is turned.

// boxOf is the place of a block or column.
func boxOf(top *quilt.Top, at sewing.Placed) quilt.Rect {
	box := top.CellRect(at.Cell)
	box.Max.Y += measure.NM(at.Cells-1) * top.SideFinished
	return box
}

// onSide says whether a stretch lies along a side of a rectangle: top, right, bottom, left.
func onSide(box quilt.Rect, side int, p, q measure.Point) bool {
	return [4]bool{p.Y == box.Min.Y && q.Y == box.Min.Y, p.X == box.Max.X && q.X == box.Max.X, p.Y == box.Max.Y && q.Y == box.Max.Y, p.X == box.Min.X && q.X == box.Min.X}[side]
}

// grainAlong is how a side of a block lies on the cloth, by the two corners of each piece between which the straight grain runs. A
// hundredth of a degree is straight, or true bias.
func grainAlong(top *quilt.Top, cuts *cutting.Plan, at sewing.Placed, side int) (e sewing.EdgeGrain) {
	for _, n := range at.Patches {
		o, grain := top.Patches[n].Outline, cuts.Lines[cuts.LineOf[n]].Piece.Grain
		g := minus(o[grain[1]], o[grain[0]])
		for i, p := range o {
			q := o[(i+1)%len(o)]
			if !onSide(boxOf(top, at), side, p, q) {
				continue
			}
			d := minus(q, p)
			turn := math.Abs(math.Atan2(float64(d.Y), float64(d.X))-math.Atan2(float64(g.Y), float64(g.X))) * 180 / math.Pi
			for turn > 45 {
				turn = math.Abs(turn - 90)
			}
			l := measure.NM(math.Round(math.Hypot(float64(d.X), float64(d.Y))))
			switch e.Degrees = max(e.Degrees, math.Round(turn*100)/100); {
			case turn < 0.005:
				e.Straight += l
			case turn > 44.995:
				e.Bias += l
			default:
				e.OffGrain += l
			}
		}
	}
	return e
}

// sameEdge says whether two edges lie alike on the cloth, but for the rounding of turned blocks.
func sameEdge(a, b sewing.EdgeGrain) bool {
	far := func(a, b measure.NM) bool { return a-b > 4 || b-a > 4 }
	return !far(a.Straight, b.Straight) && !far(a.OffGrain, b.OffGrain) && !far(a.Bias, b.Bias) && math.Abs(a.Degrees-b.Degrees) < 0.02
}

// outsideOf is where a side of a block lies on the outside of the field of blocks: at the field's edge, or beside a place with nothing in
// it; not where a sash lies between.
func outsideOf(top *quilt.Top, at sewing.Placed, side int) string {
	column, row := at.Col-1, at.Row-1
	next := [4][2]int{{column, row - 1}, {column + 1, row}, {column, row + at.Cells}, {column - 1, row}}[side]
	inside := next[0] >= 0 && next[0] < top.Columns && next[1] >= 0 && next[1] < top.Rows
	sash := top.CutFacts.Sash
	switch {
	case sash != nil && (sash.Around || inside):
		return ""
	case !inside:
		return [4]string{"top", "right", "bottom", "left"}[side]
	case top.Empty(next[1]*top.Columns + next[0]):
		return "inside"
	}
	return ""
}

// checkGrain is the law of edges that stretch: all that lie outside and off the grain are listed, once, with their like.
func checkGrain(top *quilt.Top, p *sewing.Plan, cuts *cutting.Plan) error {
	want := map[string]int{}
	for i := range p.Blocks {
		b := &p.Blocks[i]
		for _, v := range b.Variants {
			for _, at := range v.Cells {
				for side := range 4 {
					edge := grainAlong(top, cuts, at, side)
					if own := b.Edges[(side-at.Turns+4)%4]; !b.Column && !sameEdge(own, edge) {
						return fmt.Errorf("cell %d, side %d: %+v, not %+v", at.Cell, side, own, edge)
					}
					if b.Column {
						edge = b.Edges[side] // of the longest, as all are listed
					}
					if where := outsideOf(top, at, side); where != "" && edge.OffGrain+edge.Bias > 0 && (at.Cells == 1 || side%2 == 0 || where != "inside") {
						want[fmt.Sprint(i, " ", at.Cell, " ", (side-at.Turns+4)%4, " ", where)]++
					}
				}
			}
		}
	}
	known := map[string]bool{}
	for _, o := range p.Grain.Outside {
		if len(o.Cells) == 0 {
			return fmt.Errorf("%+v is of no cell", o)
		}
		own := slices.IndexFunc([]int{0, 1, 2, 3}, func(side int) bool { // the side of the unturned block that it is
			return p.Blocks[o.Block].Edges[side] == o.Edge && !known[fmt.Sprint(o.Block, side, o.Side)] &&
				!slices.ContainsFunc(o.Cells, func(cell int) bool { return want[fmt.Sprint(o.Block, " ", cell, " ", side, " ", o.Side)] == 0 })
		})
		known[fmt.Sprint(o.Block, own, o.Side)] = true
		for _, cell := range o.Cells {
			key := fmt.Sprint(o.Block, " ", cell, " ", own, " ", o.Side)
			if want[key]--; want[key] < 0 {
				return fmt.Errorf("%+v is no such edge of cell %d", o, cell)
			}
		}
	}
	for key, n := range want {
		if n > 0 {
			return fmt.Errorf("block, cell, side %s is not listed", key)
		}
	}
	sash := top.CutFacts.Sash
	if edge := len(top.CutFacts.Borders) == 0 && (sash == nil || !sash.Around); p.Grain.AtEdge != edge {
		return fmt.Errorf("that these are the quilt's edges is %v", p.Grain.AtEdge)
	}
	if mark := p.Units.Mark(); p.Grain.Staystitch%mark != 0 || 2*p.Grain.Staystitch > p.Seam+mark || 2*p.Grain.Staystitch < p.Seam-mark {
		return fmt.Errorf("staystitched %d nm from the edge, with a seam allowance of %d", p.Grain.Staystitch, p.Seam)
	}
	return nil
}

// checkPoints is the law of points: those that lie nearer than a seam allowance to the outside of the quilt, or to a place with nothing
// in it, lose their allowance.
func checkPoints(top *quilt.Top, p *sewing.Plan) error {
	want, near := map[string]*sewing.Points{}, map[measure.NM]map[measure.Point]bool{}
	for i := range top.Patches {
		patch := &top.Patches[i]
		corner := patch.Shape.Description().Point
		if corner < 0 {
			continue
		}
		name := patch.Shape.String()
		if want[name] == nil {
			want[name] = &sewing.Points{Shape: name}
		}
		at, o := patch.Outline[corner], top.Outer
		far := min(at.X-o.Min.X, o.Max.X-at.X, at.Y-o.Min.Y, o.Max.Y-at.Y)
		for cell := range top.Cells {
			if box := top.CellRect(cell); top.Empty(cell) {
				far = min(far, max(box.Min.X-at.X, at.X-box.Max.X, box.Min.Y-at.Y, at.Y-box.Max.Y, 0))
			}
		}
		c := want[name]
		c.Count++
		if far >= top.Seam {
			c.Keep++
			continue
		}
		if far == 0 {
			c.AtEdge++
		}
		if near[far] == nil {
			near[far] = map[measure.Point]bool{}
		}
		near[far][at] = true
	}
	for _, c := range p.Bulk.Points {
		if want[c.Shape] == nil || *want[c.Shape] != c {
			return fmt.Errorf("%+v, not %+v", c, want[c.Shape])
		}
	}
	if len(want) != len(p.Bulk.Points) || len(near) != len(p.Bulk.Blunted) {
		return fmt.Errorf("%d shapes with points, at %d distances; there are %d, %d", len(p.Bulk.Points), len(p.Bulk.Blunted), len(want), len(near))
	}
	for i, n := range p.Bulk.Blunted {
		for _, at := range n.At {
			if !near[n.Distance][at] {
				return fmt.Errorf("%v does not lie %d from the outside", at, n.Distance)
			}
		}
		if n.Count != len(near[n.Distance]) || len(n.At) != min(12, n.Count) || i > 0 && p.Bulk.Blunted[i-1].Distance >= n.Distance {
			return fmt.Errorf("%+v, not %d, or out of order", n, len(near[n.Distance]))
		}
	}
	return nil
}

// seenAt is what lies at the corners, or along the sides, of the unturned block of a variant: the pieces, and what they look like.
func seenAt(p *sewing.Plan, b *sewing.Block, v *sewing.FabricVariant, corners bool) (pieces [4][]int, looks [4]string) {
	shown := p.ShownAs(slices.IndexFunc(p.Blocks, func(c sewing.Block) bool { return c.Label == b.Label }), v.Number-1)
	side := b.Finished.Across
	box := quilt.Rect{Max: measure.Point{X: side, Y: side}}
	at := [4]measure.Point{{}, {X: side}, {X: side, Y: side}, {Y: side}}
	for n := range 4 {
		var list []string
		for i, piece := range shown.Pieces {
			lies := corners && slices.Contains(piece.Outline, at[n])
			for k, q := range piece.Outline {
				lies = lies || !corners && onSide(box, n, q, piece.Outline[(k+1)%len(piece.Outline)])
			}
			if lies {
				pieces[n] = append(pieces[n], i)
				list = append(list, fmt.Sprint(v.Cloths[i], " ", p.Shape(b, i)))
			}
		}
		slices.Sort(list)
		looks[n] = fmt.Sprint(list)
	}
	return pieces, looks
}

// looksAlike says whether a block looks the same after so many quarter turns.
func looksAlike(p *sewing.Plan, block int, v *sewing.FabricVariant, turns int) bool {
	return lookOf(p, block, v.Number-1, 0) == lookOf(p, block, v.Number-1, turns)
}

// checkLandmark is the law of turns that are seen: a block that looks the same in every turn has no landmark; else the fewest pieces at a
// corner, or along a side, that lie at no other; or at two that follow each other; or of a block that half a turn leaves alike at two that
// face each other. Corners go before sides.
func checkLandmark(p *sewing.Plan, block int, v *sewing.FabricVariant) error {
	b := &p.Blocks[block]
	got := p.Landmark(b, v)
	if b.Column || len(v.Cloths) < 2 || looksAlike(p, block, v, 1) {
		if got.Sort != sewing.NoLandmark {
			return fmt.Errorf("%+v of a block that looks alike in every turn", got)
		}
		return nil
	}
	want := sewing.Landmark{Sort: sewing.ByPicture}
	for _, corners := range [2]bool{true, false} {
		pieces, looks := seenAt(p, b, v, corners)
		best := sewing.Landmark{}
		count := func(n int) (same int) {
			for _, l := range looks {
				same += map[bool]int{true: 1}[l == looks[n]]
			}
			return same
		}
		for n := range 4 {
			if count(n) == 1 && len(pieces[n]) > 0 && (best.At == nil || len(pieces[n]) < len(best.Pieces)) {
				best = sewing.Landmark{Pieces: pieces[n], At: []int{n}}
			}
		}
		for n := range 4 {
			if best.At == nil && len(pieces[n]) > 0 && looks[n] == looks[(n+1)%4] && count(n) == 2 {
				best = sewing.Landmark{Pieces: pieces[n], At: []int{n, n + 1}}
			}
		}
		if best.At == nil && looksAlike(p, block, v, 2) && looks[0] != looks[1] {
			n := map[bool]int{true: 1}[len(pieces[1]) < len(pieces[0])]
			best = sewing.Landmark{Pieces: pieces[n], At: []int{n, n + 2}}
		}
		if best.At != nil {
			want = best
			want.Sort = map[bool]sewing.LandmarkSort{true: sewing.AtCorner, false: sewing.AtSide}[corners]
			break
		}
	}
	if fmt.Sprint(got) != fmt.Sprint(want) {
		return fmt.Errorf("block %s, variant %d: %+v, not %+v", b.Label, v.Number, got, want)
	}
	return nil
}

// checkMakesByCloth is the law of units: those of a step that are alike in cloth, with the first of them, and as many as there are in all
// blocks of a variant.
func checkMakesByCloth(b *sewing.Block) error {
	for _, v := range b.Variants {
		var want []sewing.Make
		for n, s := range b.Steps {
			first := len(want)
			for _, j := range s.Joins {
				taken := slices.ContainsFunc(s.Joins, func(k sewing.Join) bool { return k.MadeA == j.Number || k.MadeB == j.Number })
				if taken || b.Column {
					continue
				}
				m := sewing.Make{Step: n, Join: j.Number, Count: len(v.Cells), Pieces: slices.Concat(j.A, j.B)}
				for _, piece := range m.Pieces {
					m.Cloths = append(m.Cloths, v.Cloths[piece])
				}
				if i := slices.IndexFunc(want[first:], func(k sewing.Make) bool { return slices.Equal(k.Cloths, m.Cloths) }); i >= 0 {
					want[first+i].Count += m.Count
				} else {
					want = append(want, m)
				}
			}
		}
		if fmt.Sprint(want) != fmt.Sprint(v.Makes) {
			return fmt.Errorf("block %s, variant %d: %v, not %v", b.Label, v.Number, v.Makes, want)
		}
	}
	return nil
}

// checkSizes is the law of blocks: as wide as a side, as long as the cells that the longest takes, and larger by two allowances unfinished.
func checkSizes(top *quilt.Top, p *sewing.Plan, b *sewing.Block) error {
	cells := 1
	unturned := true
	for i := range b.Variants {
		v := &b.Variants[i]
		unturned = unturned && p.Landmark(b, v).Sort == sewing.NoLandmark
		if v.Number != i+1 {
			return fmt.Errorf("variant %d has number %d", i, v.Number)
		}
		for _, at := range v.Cells {
			cells = max(cells, at.Cells)
			if at.Row != at.Cell/top.Columns+1 || at.Col != at.Cell%top.Columns+1 || p.Turns(at.Cell) != at.Turns || p.Blocks[p.BlockAt(at.Cell)].Label != b.Label {
				return fmt.Errorf("%+v does not lie there", at)
			}
			if name := b.VariantName(v.Number); p.CellName(at.Cell) != name {
				return fmt.Errorf("cell %d is called %s and %s", at.Cell, p.CellName(at.Cell), name)
			}
		}
	}
	down, more := measure.NM(cells)*top.SideFinished, 2*top.Seam
	want := sewing.Block{Finished: sewing.Size{Across: top.SideFinished, Down: down}, Unfinished: sewing.Size{Across: top.SideFinished + more, Down: down + more}}
	if b.Finished != want.Finished || b.Unfinished != want.Unfinished || b.FromCenter != want.Unfinished.Across/2 || b.Unturned != unturned {
		return fmt.Errorf("block %s: %+v %+v %d, unturned %v", b.Label, b.Finished, b.Unfinished, b.FromCenter, b.Unturned)
	}
	return nil
}

// checkColumn is the law of columns: to which side the first slanted seam falls, on which the end pieces are longer, and their hands.
func checkColumn(top *quilt.Top, cuts *cutting.Plan, v *sewing.FabricVariant) error {
	for _, at := range v.Cells {
		ends := []int32{at.Patches[0], at.Patches[len(at.Patches)-1]}
		var longer, hands []string
		for _, n := range ends {
			o := top.Patches[n].Outline
			length := func(x measure.NM) measure.NM {
				least, most := measure.NM(math.MaxInt64), measure.NM(math.MinInt64)
				for _, q := range o {
					if q.X == x {
						least, most = min(least, q.Y), max(most, q.Y)
					}
				}
				return most - least
			}
			box := boxOf(top, at)
			longer = append(longer, map[bool]string{true: "right", false: "left"}[length(box.Max.X) > length(box.Min.X)])
			hands = append(hands, cuts.HandOf[n].String())
		}
		if len(at.Patches) < 2 {
			longer, hands = nil, nil
		}
		falls := ""
		for _, s := range top.Seams {
			a, b := top.Faces[s.A].Patch, top.Faces[s.B].Patch
			if len(at.Patches) > 1 && min(a, b) == at.Patches[0] && max(a, b) == at.Patches[1] {
				low := s.From
				if s.To.Y > s.From.Y {
					low = s.To
				}
				falls = map[bool]string{true: "right", false: "left"}[low.X == boxOf(top, at).Max.X]
			}
		}
		if len(at.Patches) > 1 && v.Leans != falls || !slices.Equal(v.Longer, longer) || !slices.Equal(v.Hands, hands) {
			return fmt.Errorf("cell %d: leans %s, longer %v, hands %v; not %s, %v, %v", at.Cell, v.Leans, v.Longer, v.Hands, falls, longer, hands)
		}
	}
	return nil
}

// checkShown is the law of pictures: a block in its own frame, turned back as it says, is the block on the top.
func checkShown(top *quilt.Top, p *sewing.Plan, block int) error {
	b := &p.Blocks[block]
	most := 0
	for n, v := range b.Variants {
		shown := p.ShownAs(block, n)
		if shown.Cell != v.Cells[0].Cell {
			return fmt.Errorf("variant %d is shown by cell %d", n, shown.Cell)
		}
		for i, piece := range shown.Pieces {
			if int32(piece.Patch) != v.Cells[0].Patches[i] {
				return fmt.Errorf("piece %d is shown by patch %d", i, piece.Patch)
			}
			patch := &top.Patches[piece.Patch]
			for k, q := range piece.Outline {
				if at := p.InBlock(shown.Cell, q); at != patch.Outline[k] {
					return fmt.Errorf("piece %d lies at %v, not %v", i, at, patch.Outline[k])
				}
			}
			for k, face := range piece.Faces {
				if f := &top.Faces[int(patch.First)+k]; int32(face.Fabric) != f.Fabric || p.InBlock(shown.Cell, face.Outline[0]) != f.Outline[0] {
					return fmt.Errorf("piece %d shows other fabrics", i)
				}
			}
			if len(piece.Faces) != int(patch.Count) {
				return fmt.Errorf("piece %d shows %d faces", i, len(piece.Faces))
			}
		}
		for _, at := range v.Cells {
			most = max(most, len(at.Patches))
		}
	}
	if first := p.Shown(block); len(first.Pieces) != most || !b.Column && first.Cell != b.Variants[0].Cells[0].Cell {
		return fmt.Errorf("block %s is shown by cell %d, with %d of %d pieces", b.Label, first.Cell, len(first.Pieces), most)
	}
	return nil
}

// checkCustom is the law of custom: joints nest as well with all choices that hang together turned round, and then fewer allowances
// would lie towards the darker cloth, or as the seams of rows and long seams usually lie. By how much a choice wants its first way is
// how much darker the pieces are to which it presses there, over all its seams, and 1 more.
func checkCustom(top *quilt.Top, p *sewing.Plan) error {
	g := &p.Pressing
	wants := make([]float64, len(g.Choices))
	light := func(patch int32) float64 {
		return top.Fabrics[top.Faces[top.Patches[patch].First].Fabric].Colour.Lightness()
	}
	for i := range wants {
		wants[i] = 1
	}
	for bi := range p.Blocks {
		b := &p.Blocks[bi]
		outlines := p.Shown(bi).Pieces
		for _, s := range b.Steps {
			for _, j := range s.Joins {
				if b.Column || b.Pressings[j.Choice].Round {
					continue
				}
				x, y := startsBeside(outlines, j.A, j.From, j.To), startsBeside(outlines, j.B, j.From, j.To)
				for _, v := range b.Variants {
					for _, at := range v.Cells {
						wants[g.Cells[at.Cell][j.Choice]] += light(at.Patches[x]) - light(at.Patches[y])
					}
				}
			}
		}
	}
	near := make([][]int32, len(wants))
	for _, j := range g.Joints {
		near[j.A.Choice], near[j.B.Choice] = append(near[j.A.Choice], j.B.Choice), append(near[j.B.Choice], j.A.Choice)
	}
	seen := make([]bool, len(wants))
	for i := range wants {
		if seen[i] {
			continue
		}
		seen[i] = true
		sum := 0.0
		for part := []int32{int32(i)}; len(part) > 0; part = part[1:] {
			if sum += wants[part[0]]; g.Choices[part[0]].Way == 1 {
				sum -= 2 * wants[part[0]]
			}
			for _, n := range near[part[0]] {
				if !seen[n] {
					seen[n] = true
					part = append(part, n)
				}
			}
		}
		if sum < -1e-6 {
			return fmt.Errorf("turned round, what hangs together with choice %d would lie by %.2f more as custom has it", i, -sum)
		}
	}
	return nil
}

// startsBeside is which of some pieces has a side along the beginning of a seam.
func startsBeside(shown []sewing.ShownPiece, of []int, from, to measure.Point) int {
	best, least := of[0], math.Inf(1)
	for _, n := range of {
		o := shown[n].Outline
		for i, p := range o {
			q := o[(i+1)%len(o)]
			if off(from, minus(to, from), p) > 3 || off(from, minus(to, from), q) > 3 {
				continue
			}
			if a, b := along(from, minus(to, from), p), along(from, minus(to, from), q); max(a, b) > 3 && min(a, b) < least {
				best, least = n, min(a, b)
			}
		}
	}
	return best
}

// TestEdgesAndCorners holds these laws on all plans.
func TestEdgesAndCorners(t *testing.T) {
	landmarks := map[sewing.LandmarkSort]int{}
	for _, n := range everyPlan() {
		cuts := cutting.Pieces(n.Top, cutting.Options{})
		errs := []error{checkGrain(n.Top, n.plan, cuts), checkPoints(n.Top, n.plan), checkCustom(n.Top, n.plan)}
		for i := range n.plan.Blocks {
			b := &n.plan.Blocks[i]
			errs = append(errs, checkMakesByCloth(b), checkSizes(n.Top, n.plan, b), checkShown(n.Top, n.plan, i))
			for k := range b.Variants {
				landmarks[n.plan.Landmark(b, &b.Variants[k]).Sort]++
				errs = append(errs, checkLandmark(n.plan, i, &b.Variants[k]))
				if b.Column {
					errs = append(errs, checkColumn(n.Top, cuts, &b.Variants[k]))
				}
			}
		}
		for _, err := range errs {
			if err != nil {
				t.Errorf("%s: %v", n.name, err)
			}
		}
	}
	if len(landmarks) < 4 {
		t.Errorf("not every sort of landmark was seen: %v", landmarks)
	}
}

// TestEdgesAndCornersCatch: of a plan that is spoilt in one place these laws tell.
func TestEdgesAndCornersCatch(t *testing.T) {
	text := "strip 4\nfabric a #112233\nfabric b #eeeeee\nfabric c #a04030\nblock A web kites b wedges a c\nblock H halves pieces a b\ngrid\n A A H\n A H:ne .\n"
	for name, broken := range map[string]func(p *sewing.Plan){
		"an edge":               func(p *sewing.Plan) { p.Blocks[0].Edges[1].Straight += 10 },
		"a cell's edge":         func(p *sewing.Plan) { p.Grain.Outside[0].Cells = p.Grain.Outside[0].Cells[1:] },
		"the quilt's edge":      func(p *sewing.Plan) { p.Grain.AtEdge = !p.Grain.AtEdge },
		"a point":               func(p *sewing.Plan) { p.Bulk.Points[0].Keep++ },
		"a point near the edge": func(p *sewing.Plan) { p.Bulk.Blunted[0].Distance++ },
		"a unit":                func(p *sewing.Plan) { p.Blocks[0].Variants[0].Makes[0].Cloths[0]++ },
		"a size":                func(p *sewing.Plan) { p.Blocks[1].FromCenter++ },
		"a choice":              func(p *sewing.Plan) { p.Pressing.Choices[0].Way ^= 1; p.Pressing.Joints = nil },
		"another cloth":         func(p *sewing.Plan) { v := &p.Blocks[1].Variants[0]; v.Cloths = []int{v.Cloths[1], v.Cloths[1]} },
	} {
		top := lay.Top(t, text)
		cuts := cutting.Pieces(top, cutting.Options{})
		check := func(p *sewing.Plan) error {
			errs := []error{checkGrain(top, p, cuts), checkPoints(top, p), checkCustom(top, p)}
			for i := range p.Blocks {
				errs = append(errs, checkMakesByCloth(&p.Blocks[i]), checkSizes(top, p, &p.Blocks[i]), checkShown(top, p, i), checkLandmark(p, i, &p.Blocks[i].Variants[0]))
			}
			return cmp.Or(errs...)
		}
		p := planOf(top, sewing.Options{})
		if err := check(p); err != nil {
			t.Fatal(err)
		}
		broken(p)
		if check(p) == nil {
			t.Errorf("%s is not caught", name)
		}
	}
}

// TestNamesOfCells: a variant's number is set off from a label that ends in a digit, and left out where there is one variant.
func TestNamesOfCells(t *testing.T) {
	for _, c := range []struct {
		label    string
		variants int
		want     string
	}{{"W", 1, "W"}, {"W", 2, "W2"}, {"W9", 2, "W9-2"}, {"W0", 2, "W0-2"}, {"W:", 2, "W:2"}, {"W/", 2, "W/2"}} {
		b := sewing.Block{Label: c.label, Variants: make([]sewing.FabricVariant, c.variants)}
		if got := b.VariantName(2); c.variants > 1 && got != c.want || c.variants == 1 && b.VariantName(1) != c.want {
			t.Errorf("%s, %d variants: %s", c.label, c.variants, got)
		}
	}
	if (&sewing.Block{}).Spins() || (&sewing.Block{Rounds: []sewing.Round{{Turns: true}, {}}}).Spins() || !(&sewing.Block{Rounds: []sewing.Round{{Turns: true}}}).Spins() {
		t.Error("a block spins where all its points turn, and only there")
	}
}
