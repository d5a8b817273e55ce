package sewing_test

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
)

// Laws of units: the raw outlines of what the steps make, what stands out of them and is trimmed, what a ruler measures, and how corners
// match at the ends of seams. All is worked out from straight lines: the sides of the pieces, moved out by what is beyond them.

// straightLine is a line by a point of it and its way.
type straightLine struct{ at, way measure.Vec }

// crosses is where two lines cross.
func (l straightLine) crosses(m straightLine) measure.Vec {
	return l.at.Plus(l.way.Times(m.at.Minus(l.at).Cross(m.way) / l.way.Cross(m.way)))
}

func vec(p measure.Point) measure.Vec { return measure.Vec{X: float64(p.X), Y: float64(p.Y)} }

// sewnUnit is pieces of a block sewn together, none of which makes the outline hollow.
type sewnUnit struct {
	b       *sewing.Block
	pieces  []int
	shown   []sewing.ShownPiece
	cuts    []*cutting.Piece
	corners []measure.Vec // finished, clockwise
	parts   [][]unitPart  // by side, in order along it
	seam    float64
}

// unitPart is what a piece has of a unit's side, from one end to the other.
type unitPart struct {
	piece    int
	from, to measure.Vec
	out      measure.NM // by how much it stands out beyond the allowance
	most     measure.NM // the same where all of it lies on one side
}

// hull is the corners of the smallest convex outline round points, clockwise on screen, but for those on straight lines.
func hull(points []measure.Vec) []measure.Vec {
	slices.SortFunc(points, func(a, b measure.Vec) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	points = slices.CompactFunc(points, func(a, b measure.Vec) bool { return a.Minus(b).Length() < 3 })
	half := func() (list []measure.Vec) {
		for _, p := range points {
			for n := len(list); n > 1 && list[n-1].Minus(list[n-2]).Unit().Cross(p.Minus(list[n-2])) < 3; n = len(list) {
				list = list[:n-1]
			}
			list = append(list, p)
		}
		return list[:len(list)-1]
	}
	upper := half()
	slices.Reverse(points)
	return append(upper, half()...)
}

// unitOf puts pieces of a block together; exact says of which of them nothing stands out any more.
func unitOf(p *sewing.Plan, block int, pieces []int, cuts *cutting.Plan, exact map[int]bool) *sewnUnit {
	u := &sewnUnit{b: &p.Blocks[block], pieces: pieces, shown: p.Shown(block).Pieces, seam: float64(p.Seam)}
	var all []measure.Vec
	for _, piece := range u.shown {
		u.cuts = append(u.cuts, &cuts.Lines[cuts.LineOf[piece.Patch]].Piece)
	}
	for _, n := range pieces {
		for _, q := range u.shown[n].Outline {
			all = append(all, vec(q))
		}
	}
	u.corners = hull(all)
	for i, a := range u.corners {
		b := u.corners[(i+1)%len(u.corners)]
		way := b.Minus(a).Unit()
		var parts []unitPart
		for _, n := range pieces {
			o, cut := u.shown[n].Outline, u.cuts[n]
			for k := range o {
				s, t := vec(o[k]), vec(o[(k+1)%len(o)])
				if max(math.Abs(way.Cross(s.Minus(a))), math.Abs(way.Cross(t.Minus(a)))) > 3 {
					continue
				}
				part := unitPart{piece: n, from: s, to: t}
				if slices.Contains(cut.Shape.Description().Trimmed, k) && !exact[n] {
					part.out, part.most = cut.OutEach(), cut.StandsOut
				}
				parts = append(parts, part)
			}
		}
		slices.SortFunc(parts, func(x, y unitPart) int { return cmp.Compare(x.from.Dot(way), y.from.Dot(way)) })
		u.parts = append(u.parts, parts)
	}
	return u
}

// side is a side of a unit moved out by its allowance and more.
func (u *sewnUnit) side(i int, more measure.NM) straightLine {
	n := len(u.corners)
	way := u.corners[(i+1)%n].Minus(u.corners[i%n]).Unit()
	return straightLine{u.corners[i%n].Minus(way.Quarter().Times(u.seam + float64(more))), way}
}

// flats is the lines along which the tips at a corner are cut flat, that on the side before the corner first, and whether the corner is
// made of them alone.
func (u *sewnUnit) flats(corner int) (list []straightLine, alone bool) {
	type tip struct {
		into measure.Vec
		line straightLine
	}
	var tips []tip
	at, pieces := u.corners[corner], 0
	for _, n := range u.pieces {
		o := u.shown[n].Outline
		for k := range o {
			if vec(o[k]).Minus(at).Length() > 3 {
				continue
			}
			pieces++
			a, b := vec(o[(k+1)%len(o)]).Minus(at).Unit(), vec(o[(k+len(o)-1)%len(o)]).Minus(at).Unit()
			if into := a.Plus(b).Unit(); u.cuts[n].Shape == blocks.Wedge && k == 0 {
				tips = append(tips, tip{into, straightLine{at.Minus(into.Times(u.seam)), into.Quarter()}})
			}
		}
	}
	back := u.side(corner+len(u.corners)-1, 0).way.Times(-1)
	slices.SortFunc(tips, func(x, y tip) int { return cmp.Compare(y.into.Dot(back), x.into.Dot(back)) })
	for _, t := range tips {
		list = append(list, t.line)
	}
	return list, pieces == len(tips)
}

// raw is the raw outline once all is trimmed.
func (u *sewnUnit) raw() (list []measure.Vec) {
	for i := range u.corners {
		before, behind := u.side(i+len(u.corners)-1, 0), u.side(i, 0)
		flats, alone := u.flats(i)
		if len(flats) == 0 || !alone {
			list = append(list, before.crosses(behind))
			continue
		}
		list = append(list, before.crosses(flats[0]))
		for k := 1; k < len(flats); k++ {
			list = append(list, flats[k-1].crosses(flats[k]))
		}
		list = append(list, flats[len(flats)-1].crosses(behind))
	}
	return list
}

// untrimmed is the raw outline with all that stands out of it.
func (u *sewnUnit) untrimmed() (list []measure.Vec) {
	for i, parts := range u.parts {
		last := u.parts[(i+len(u.parts)-1)%len(u.parts)]
		before, behind := u.side(i+len(u.corners)-1, last[len(last)-1].out), u.side(i, parts[0].out)
		if flats, alone := u.flats(i); len(flats) == 1 && alone {
			list = append(list, before.crosses(flats[0]), flats[0].crosses(behind))
		} else {
			list = append(list, before.crosses(behind))
		}
		for k := 1; k < len(parts); k++ {
			if parts[k].out != parts[k-1].out {
				list = append(list, u.beyond(i, parts[k].from, parts[k-1].out), u.beyond(i, parts[k].from, parts[k].out))
			}
		}
	}
	return list
}

// beyond is a point of a side moved square out to the raw edge and more.
func (u *sewnUnit) beyond(side int, at measure.Vec, more measure.NM) measure.Vec {
	return at.Minus(u.side(side, 0).way.Quarter().Times(u.seam + float64(more)))
}

// trims is the lines along which the unit is trimmed, and where the cloth ends before.
func (u *sewnUnit) trims() (list [][2][2]measure.Vec) {
	n := len(u.corners)
	for i, parts := range u.parts {
		for k, part := range parts {
			if part.out == 0 {
				continue
			}
			line := [2][2]measure.Vec{{u.beyond(i, part.from, 0), u.beyond(i, part.to, 0)}, {u.beyond(i, part.from, part.out), u.beyond(i, part.to, part.out)}}
			last, next := u.parts[(i+n-1)%n], u.parts[(i+1)%n]
			if k == 0 {
				line[0][0] = u.side(i, 0).crosses(u.side(i+n-1, 0))
				line[1][0] = u.side(i, part.out).crosses(u.side(i+n-1, last[len(last)-1].out))
			}
			if k == len(parts)-1 {
				line[0][1] = u.side(i, 0).crosses(u.side(i+1, 0))
				line[1][1] = u.side(i, part.out).crosses(u.side(i+1, next[0].out))
			}
			list = append(list, line)
		}
	}
	return list
}

// sameOutline says whether two outlines have the same corners in the same order, wherever they begin.
func sameOutline(a, b []measure.Vec) bool {
	for first := range a {
		same := len(a) == len(b)
		for i := 0; same && i < len(a); i++ {
			same = a[(first+i)%len(a)].Minus(b[i]).Length() < 0.5
		}
		if same {
			return true
		}
	}
	return false
}

// extents is how far points reach along a way and across it, the longer first.
func extents(points []measure.Vec, way measure.Vec) sewing.Size {
	size := [2]float64{}
	for i, w := range [2]measure.Vec{way, way.Quarter()} {
		least, most := math.Inf(1), math.Inf(-1)
		for _, p := range points {
			least, most = min(least, p.Dot(w)), max(most, p.Dot(w))
		}
		size[i] = most - least
	}
	return sewing.Size{Across: measure.NM(math.Round(max(size[0], size[1]))), Down: measure.NM(math.Round(min(size[0], size[1])))}
}

// along is the way along which a unit lies on a ruler: a side of its square corner, or else its longest side.
func (u *sewnUnit) along() measure.Vec {
	n, best := len(u.corners), 0
	for i := range u.corners {
		if math.Abs(u.side(i, 0).way.Dot(u.side(i+n-1, 0).way)) < 1e-4 {
			return u.side(i, 0).way
		}
		length := func(i int) float64 { return u.corners[(i+1)%n].Minus(u.corners[i]).Length() }
		if length(i) > length(best)+3 {
			best = i
		}
	}
	return u.side(best, 0).way
}

// measured is what a ruler measures of a raw outline along a way: from edge to opposite edge, or else the longest edge.
func measured(raw []measure.Vec, way measure.Vec) (c sewing.CheckSize) {
	flat := map[bool]bool{}
	size := extents(raw, way)
	across := way.Quarter()
	longest, least, most := 0.0, math.Inf(1), math.Inf(-1)
	for _, p := range raw {
		least, most = min(least, p.Dot(way)), max(most, p.Dot(way))
	}
	for i, p := range raw {
		d := raw[(i+1)%len(raw)].Minus(p)
		if math.Abs(d.Dot(across)) < 3 {
			longest = max(longest, d.Length())
		}
		if math.Abs(d.Dot(way)) < 3 {
			flat[p.Dot(way) > (least+most)/2] = flat[p.Dot(way) > (least+most)/2] || min(p.Dot(way)-least, most-p.Dot(way)) < 3
		}
	}
	c.Length = measure.NM(math.Round(longest))
	if flat[false] && flat[true] {
		c.Opposite = true
		if c.Length = size.Across; math.Abs(float64(size.Down)-(most-least)) < 1 {
			c.Length = size.Down
		}
	}
	return c
}

// exactSide is the longest side that nothing stands out along or at the ends of, with the piece that has all of it.
func (u *sewnUnit) exactSide() (raw measure.Vec, of []int) {
	n, most := len(u.corners), 0.0
	for i, parts := range u.parts {
		last, next := u.parts[(i+n-1)%n], u.parts[(i+1)%n]
		out := last[len(last)-1].out + next[0].out
		for _, part := range parts {
			out += part.out
		}
		if l := u.corners[(i+1)%n].Minus(u.corners[i]).Length(); out == 0 && l > most {
			raw, most, of = u.side(i, 0).way, l, nil
			if len(parts) == 1 {
				of = []int{parts[0].piece}
			}
		}
	}
	return raw, of
}

// form is what a unit looks like: by how many corners it has, and how many of them are square.
func (u *sewnUnit) form() sewing.Form {
	n, square := len(u.corners), 0
	for i := range n {
		square += map[bool]int{true: 1}[math.Abs(u.side(i, 0).way.Dot(u.side(i+1, 0).way)) < 1e-4]
	}
	switch [2]int{n, square} {
	case [2]int{4, 4}:
		return sewing.Rectangle
	case [2]int{3, 1}:
		return sewing.Triangle
	}
	return sewing.Slanted
}

// standsOut is the most that stands out.
func (u *sewnUnit) standsOut() (most measure.NM) {
	for _, parts := range u.parts {
		for _, part := range parts {
			most = max(most, part.most)
		}
	}
	return most
}

// made is a join of a block, and where it stands.
type made struct {
	step  int
	join  *sewing.Join
	final bool // its unit is not sewn on to in the same step
}

// joinsOf is the joins of a block by their numbers.
func joinsOf(b *sewing.Block) (list []made) {
	for i := range b.Steps {
		joins := b.Steps[i].Joins
		for k := range joins {
			taken := slices.ContainsFunc(joins, func(j sewing.Join) bool { return j.MadeA == joins[k].Number || j.MadeB == joins[k].Number })
			list = append(list, made{i, &joins[k], !taken})
		}
	}
	return list
}

// trimmedIn is the pieces that are exact in what a join made, or, before the unit itself is trimmed, in its parts.
func trimmedIn(b *sewing.Block, joins []made, number int, before bool) map[int]bool {
	exact := map[int]bool{}
	if number < 0 {
		return exact
	}
	m := joins[number]
	if !before && m.final && b.Steps[m.step].Trim != "" {
		for _, n := range slices.Concat(m.join.A, m.join.B) {
			exact[n] = true
		}
	}
	for _, part := range [2]int{m.join.MadeA, m.join.MadeB} {
		for n := range trimmedIn(b, joins, part, false) {
			exact[n] = true
		}
	}
	return exact
}

// checkUnits is the law of what the steps of a block make.
func checkUnits(p *sewing.Plan, block int, cuts *cutting.Plan) error {
	b := &p.Blocks[block]
	joins := joinsOf(b)
	shown := p.Shown(block)
	for i, m := range joins {
		if m.join.Number != i {
			return fmt.Errorf("join %d has number %d", i, m.join.Number)
		}
		if !m.final {
			continue
		}
		s, pieces := &b.Steps[m.step], slices.Concat(m.join.A, m.join.B)
		if !slices.Equal(pieces, shown.Unit(i)) {
			return fmt.Errorf("join %d makes %v, not %v", i, shown.Unit(i), pieces)
		}
		before := unitOf(p, block, pieces, cuts, trimmedIn(b, joins, i, true))
		if got, want := shown.Raw(pieces, true), before.raw(); !sameOutline(got, want) {
			return fmt.Errorf("%s, trimmed: %v, not %v", s.Name, got, want)
		}
		if s.Trim != "" {
			if got, want := shown.Raw(pieces, false), before.untrimmed(); !sameOutline(got, want) {
				return fmt.Errorf("%s, before it is trimmed: %v, not %v", s.Name, got, want)
			}
			if err := sameTrims(shown.Trims(pieces), before.trims()); err != nil {
				return fmt.Errorf("%s: %w", s.Name, err)
			}
		}
		if err := checkStepSizes(s, before, joins[slices.IndexFunc(joins, func(n made) bool { return n.join == &s.Joins[len(s.Joins)-1] })] == m); err != nil {
			return fmt.Errorf("block %s, %s: %w", b.Label, s.Name, err)
		}
	}
	return nil
}

func sameTrims(got, want [][2][2]measure.Vec) error {
	same := func(a, b [2][2]measure.Vec) bool {
		far := 0.0
		for i := range a {
			for k := range a[i] {
				far = max(far, a[i][k].Minus(b[i][k]).Length())
			}
		}
		return far < 0.5
	}
	for _, line := range want {
		if !slices.ContainsFunc(got, func(l [2][2]measure.Vec) bool { return same(l, line) }) {
			return fmt.Errorf("trimmed along %v, not along %v", got, line)
		}
	}
	if len(got) != len(want) {
		return fmt.Errorf("trimmed along %d lines, not %d", len(got), len(want))
	}
	return nil
}

// checkStepSizes is the law of the sizes of a step's unit, here its last.
func checkStepSizes(s *sewing.Step, u *sewnUnit, last bool) error {
	if !last {
		return nil
	}
	near := func(a, b measure.NM) bool { return a-b <= 1 && b-a <= 1 }
	same := func(a, b sewing.Size) bool { return near(a.Across, b.Across) && near(a.Down, b.Down) }
	way, raw := u.along(), u.raw()
	if want := extents(u.corners, way); !same(s.Finished, want) {
		return fmt.Errorf("finished %v, not %v", s.Finished, want)
	}
	if want := extents(raw, way); !same(s.Unfinished, want) {
		return fmt.Errorf("unfinished %v, not %v", s.Unfinished, want)
	}
	if form := u.form(); s.Form != form {
		return fmt.Errorf("it is said to be a %s, not %s", s.Form, form)
	}
	sizes := [2]sewing.CheckSize{measured(raw, way), measured(raw, way.Quarter())}
	if sizes[0].Length < sizes[1].Length {
		sizes[0], sizes[1] = sizes[1], sizes[0]
	}
	if u.standsOut() > 0 && s.Trim == "" {
		side, of := u.exactSide()
		sizes = [2]sewing.CheckSize{measured(raw, side)}
		sizes[0].Of = of
	}
	for i, c := range s.CheckSizes {
		if !near(c.Length, sizes[i].Length) || c.Opposite != sizes[i].Opposite || !slices.Equal(c.Of, sizes[i].Of) {
			return fmt.Errorf("a ruler measures %+v, not %+v", s.CheckSizes, sizes)
		}
	}
	if s.Trim == "" {
		if s.Before != nil || s.CheckBefore != 0 || s.StandsOut != 0 {
			return fmt.Errorf("before trimming %v, %d, %d, but nothing is trimmed", s.Before, s.CheckBefore, s.StandsOut)
		}
		return nil
	}
	before := extents(u.untrimmed(), way)
	if s.Before == nil || !same(*s.Before, before) || s.StandsOut != u.standsOut() || !near(s.CheckBefore, sizes[0].Length+before.Across-s.Unfinished.Across) {
		return fmt.Errorf("before trimming %v, %d, %d, not %v, %d", s.Before, s.CheckBefore, s.StandsOut, before, u.standsOut())
	}
	return nil
}

// checkColumnRaw is the law of the pieces of a column that are sewn together: a seam allowance all round, with sharp corners.
func checkColumnRaw(p *sewing.Plan, block int, cuts *cutting.Plan) error {
	shown := p.Shown(block)
	for first := range shown.Pieces {
		pieces := []int{first}
		if first+1 < len(shown.Pieces) {
			pieces = append(pieces, first+1)
		}
		if got, want := shown.Raw(pieces, true), unitOf(p, block, pieces, cuts, nil).raw(); !sameOutline(got, want) {
			return fmt.Errorf("pieces %v of a column: %v, not %v", pieces, got, want)
		}
	}
	return nil
}

// checkJoins is the law of joins: each sews what earlier ones made, or pieces, in the kind's order; a step makes as many units as are not
// sewn on to in it; of a column each piece is sewn to all those above it.
func checkJoins(p *sewing.Plan, block int) error {
	b := &p.Blocks[block]
	k, _ := blocks.Find(blocks.Kinds(), b.Kind)
	if len(b.Steps) != len(k.Recipe.Steps) {
		return fmt.Errorf("block %s has %d steps", b.Label, len(b.Steps))
	}
	joins := joinsOf(b)
	finals := make([]int, len(b.Steps))
	for i, m := range joins {
		if m.final {
			finals[m.step]++
		}
		for part, pieces := range [2][]int{m.join.A, m.join.B} {
			n := [2]int{m.join.MadeA, m.join.MadeB}[part]
			switch {
			case n >= i || n < 0 && len(pieces) != 1:
				return fmt.Errorf("join %d sews %v, made by join %d", i, pieces, n)
			case n >= 0 && !slices.Equal(pieces, slices.Concat(joins[n].join.A, joins[n].join.B)):
				return fmt.Errorf("join %d sews %v, not what join %d made", i, pieces, n)
			}
		}
		if m.join.Round != b.Pressings[m.join.Choice].Round {
			return fmt.Errorf("join %d turns round a point is %v", i, m.join.Round)
		}
		if err := checkTurns(p, block, m.join); err != nil {
			return err
		}
		if b.Column && (m.join.MadeB != -1 || !slices.Equal(m.join.B, []int{i + 1}) || len(m.join.A) != i+1) {
			return fmt.Errorf("join %d of a column: %+v", i, m.join)
		}
	}
	for i, s := range b.Steps {
		if b.Column {
			finals[i] = 1
		}
		if s.PerBlock != finals[i] || s.Make != finals[i]*b.Count || s.Name != k.Recipe.Steps[i].Name {
			return fmt.Errorf("step %s: %d in a block, %d in all", s.Name, s.PerBlock, s.Make)
		}
	}
	return nil
}

// checkTurns is the law of pictures of a join: which piece lies where its seam begins, which way it is pressed in the cell that is shown,
// and round which point its allowances turn: the middle of the block.
func checkTurns(p *sewing.Plan, block int, j *sewing.Join) error {
	shown, side := p.Shown(block), p.Blocks[block].Finished.Across
	if j.Round && shown.About(j) != (measure.Point{X: side / 2, Y: side / 2}) {
		return fmt.Errorf("join %d turns round %v", j.Number, shown.About(j))
	}
	if way := p.Way(shown.Cell, j.Choice); shown.ToB(j) != (way == 0) || way != p.Pressing.Choices[p.Pressing.Cells[shown.Cell][j.Choice]].Way {
		return fmt.Errorf("join %d is pressed by way %d", j.Number, way)
	}
	for _, pieces := range [2][]int{j.A, j.B} {
		want := startsBeside(shown.Pieces, pieces, j.From, j.To)
		if p.Blocks[block].Column { // of all pieces above it the last alone lies at the seam
			want = slices.Max(pieces)
		}
		if got := shown.At(pieces, j); got != want {
			return fmt.Errorf("join %d begins beside piece %d of %v, not %d", j.Number, got, pieces, want)
		}
	}
	return nil
}
