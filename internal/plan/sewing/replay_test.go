package sewing_test

import (
	"cmp"
	"eighthturn/internal/quilttest/lay"
	"fmt"
	"math"
	"slices"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
)

// replay sews a plan seam by seam and trusts nothing but the top: units are sets of patches,
// and the top's own seams say what lies beside what.
type replay struct {
	top  *quilt.Top
	plan *sewing.Plan
	unit []int         // by patch
	of   map[int][]int // by unit: its patches
	at   [][]int       // by patch: the top's seams along it
	sewn []sewnBy      // by seam of the top
	next int           // number of the next seam that is sewn
	part map[int]int   // of the assembly: the unit that a part or seam made
}

// sewnBy is the seam of the plan that sewed a seam of the top.
type sewnBy struct {
	number   int // in the order of sewing, from 1; 0 for not yet
	cell     int // -1 for the assembly
	join     int // of the cell's block, or seam of the assembly
	a, b     map[int]bool
	from, to measure.Point // the whole seam, on the top
}

func newReplay(top *quilt.Top, plan *sewing.Plan) *replay {
	r := &replay{top: top, plan: plan, of: map[int][]int{}, sewn: make([]sewnBy, len(top.Seams)), at: make([][]int, len(top.Patches)), part: map[int]int{}}
	for i := range top.Patches {
		r.unit = append(r.unit, i)
		r.of[i] = []int{i}
	}
	for i := range top.Seams {
		a, b := r.sides(i)
		r.at[a], r.at[b] = append(r.at[a], i), append(r.at[b], i)
	}
	return r
}

// sides is the patches on the two sides of a seam of the top.
func (r *replay) sides(seam int) (a, b int) {
	s := &r.top.Seams[seam]
	return int(r.top.Faces[s.A].Patch), int(r.top.Faces[s.B].Patch)
}

// check replays the whole plan and says what is wrong first.
func (r *replay) check() error {
	for b := range r.plan.Blocks {
		for c := range r.plan.Blocks[b].Variants {
			for _, at := range r.plan.Blocks[b].Variants[c].Cells {
				if err := r.block(&r.plan.Blocks[b], at); err != nil {
					return fmt.Errorf("block %s in row %d, column %d: %w", r.plan.Blocks[b].Label, at.Row, at.Col, err)
				}
			}
		}
	}
	if err := r.assembly(); err != nil {
		return fmt.Errorf("assembly: %w", err)
	}
	for i := range r.sewn {
		if r.sewn[i].number == 0 {
			a, b := r.sides(i)
			return fmt.Errorf("patches %d and %d are never sewn together", a, b)
		}
	}
	return nil
}

// block sews one block or column.
func (r *replay) block(b *sewing.Block, at sewing.Placed) error {
	made := map[int]int{}
	for i := range b.Steps {
		for _, j := range b.Steps[i].Joins {
			one, other := r.plan.Patches(at.Cell, j.A), r.plan.Patches(at.Cell, j.B)
			if len(other) == 0 {
				continue // of a column that is shorter than the longest
			}
			for side, m := range [2]int{j.MadeA, j.MadeB} {
				if got, list := made[m], [2][]int{one, other}[side]; m >= 0 && got != r.unit[list[0]] {
					return fmt.Errorf("join %d: what join %d made is no longer by itself", j.Number, m)
				}
			}
			from, to := r.onTop(b, at, j.From), r.onTop(b, at, j.To)
			if b.Column {
				from, to = measure.Point{}, measure.Point{} // those of the longest column
			}
			unit, err := r.join(one, other, sewnBy{cell: at.Cell, join: j.Number, from: from, to: to})
			if err != nil {
				return fmt.Errorf("join %d: %w", j.Number, err)
			}
			made[j.Number] = unit
		}
	}
	return nil
}

// onTop is a point of a block's own frame as the block is turned in its place.
func (r *replay) onTop(b *sewing.Block, at sewing.Placed, p measure.Point) measure.Point {
	for range at.Turns {
		p.X, p.Y = r.top.SideFinished-p.Y, p.X
	}
	return r.top.CellRect(at.Cell).Min.Add(p)
}

// assembly sews the parts together.
func (r *replay) assembly() error {
	a := &r.plan.Assembly
	patches := 0
	for i, p := range a.Parts {
		patches += p.Patches
		unit := r.unit[p.First]
		if len(r.of[unit]) != p.Patches {
			return fmt.Errorf("part %d has %d patches, but %d hang together", i, p.Patches, len(r.of[unit]))
		}
		r.part[i] = unit
	}
	if patches != len(r.top.Patches) {
		return fmt.Errorf("the parts have %d of %d patches", patches, len(r.top.Patches))
	}
	for i, s := range a.Seams {
		one, other := r.of[r.part[s.A]], r.of[r.part[s.B]]
		if len(one) == 0 || len(other) == 0 {
			return fmt.Errorf("seam %d joins what is not there", i)
		}
		unit, err := r.join(one, other, sewnBy{cell: -1, join: i, from: s.From, to: s.To})
		if err != nil {
			return fmt.Errorf("seam %d: %w", i, err)
		}
		delete(r.part, s.A)
		delete(r.part, s.B)
		r.part[len(a.Parts)+i] = unit
	}
	if len(r.part) != 1+len(a.Loose) {
		return fmt.Errorf("%d units are left, %d of them known to be loose", len(r.part), len(a.Loose))
	}
	return nil
}

// join sews two sets of patches, each a whole unit, together along their true seam.
func (r *replay) join(one, other []int, by sewnBy) (int, error) {
	a, b := r.unit[one[0]], r.unit[other[0]]
	if a == b {
		return 0, fmt.Errorf("it is sewn together already")
	}
	for n, list := range [2][]int{one, other} {
		unit := [2]int{a, b}[n]
		if len(list) != len(r.of[unit]) {
			return 0, fmt.Errorf("%d patches are sewn, but %d hang together", len(list), len(r.of[unit]))
		}
		for _, p := range list {
			if r.unit[p] != unit {
				return 0, fmt.Errorf("patch %d is not part of the unit", p)
			}
		}
	}
	r.next++
	by.number, by.a, by.b = r.next, map[int]bool{}, map[int]bool{}
	for _, p := range one {
		by.a[p] = true
	}
	for _, p := range other {
		by.b[p] = true
	}
	var seams []int
	small := one
	if len(other) < len(one) {
		small = other
	}
	for _, p := range small {
		for _, s := range r.at[p] {
			if x, y := r.sides(s); r.unit[x] != r.unit[y] && (r.unit[x] == a || r.unit[x] == b) && (r.unit[y] == a || r.unit[y] == b) {
				seams = append(seams, s)
			}
		}
	}
	if err := r.straight(seams, &by); err != nil {
		return 0, err
	}
	for _, s := range seams {
		r.sewn[s] = by
	}
	for _, p := range r.of[b] {
		r.unit[p] = a
	}
	r.of[a] = append(r.of[a], r.of[b]...)
	delete(r.of, b)
	return a, nil
}

// straight checks that seams of the top make one straight seam without a gap, but for gaps
// beside which there is no cloth, and that the plan says where it begins and ends.
func (r *replay) straight(seams []int, by *sewnBy) error {
	if len(seams) == 0 {
		return fmt.Errorf("the two do not touch")
	}
	start := r.farthest(seams, r.top.Seams[seams[0]].From)
	way := minus(r.farthest(seams, start), start) // between the two ends, as stretches may be too short to give a way
	var ends [2]float64
	ends[0], ends[1] = math.Inf(1), math.Inf(-1)
	type part struct{ from, to float64 }
	var parts []part
	place := map[float64]measure.Point{}
	for _, s := range seams {
		from, to := r.top.Seams[s].From, r.top.Seams[s].To
		var at [2]float64
		for n, p := range [2]measure.Point{from, to} {
			if off(start, way, p) > 3 {
				return fmt.Errorf("the seam has a bend at %v", p)
			}
			at[n] = along(start, way, p)
			place[at[n]] = p
			ends[0], ends[1] = min(ends[0], at[n]), max(ends[1], at[n])
		}
		parts = append(parts, part{min(at[0], at[1]), max(at[0], at[1])})
	}
	slices.SortFunc(parts, func(a, b part) int { return cmp.Compare(a.from, b.from) })
	for i := 1; i < len(parts); i++ {
		if gap := parts[i].from - parts[i-1].to; gap > 3 && by.cell >= 0 {
			return fmt.Errorf("the seam has a gap of %.0f nm", gap)
		}
	}
	if by.from == by.to {
		by.from, by.to = place[ends[0]], place[ends[1]]
		return nil
	}
	said := [2]float64{along(start, way, by.from), along(start, way, by.to)}
	slices.Sort(said[:])
	if off(start, way, by.from) > 3 || off(start, way, by.to) > 3 || math.Abs(said[0]-ends[0]) > 3 || math.Abs(said[1]-ends[1]) > 3 {
		return fmt.Errorf("the seam goes from %v to %v, not from %v to %v", place[ends[0]], place[ends[1]], by.from, by.to)
	}
	return r.onTheRight(seams[0], by)
}

// farthest is the end of some seams that lies farthest from a point.
func (r *replay) farthest(seams []int, from measure.Point) measure.Point {
	best := from
	for _, s := range seams {
		for _, p := range [2]measure.Point{r.top.Seams[s].From, r.top.Seams[s].To} {
			if d, e := minus(p, from), minus(best, from); dot(d, d) > dot(e, e) {
				best = p
			}
		}
	}
	return best
}

// onTheRight checks that B lies to the right of the seam's way.
func (r *replay) onTheRight(seam int, by *sewnBy) error {
	s := &r.top.Seams[seam]
	right, _ := r.sides(seam) // A of the top lies to the right of From to To
	if dot(minus(s.To, s.From), minus(by.to, by.from)) < 0 {
		_, right = r.sides(seam)
	}
	if !by.b[right] {
		return fmt.Errorf("B does not lie to the right of the seam")
	}
	return nil
}

func minus(p, q measure.Point) measure.Point { return measure.Point{X: p.X - q.X, Y: p.Y - q.Y} }

func dot(p, q measure.Point) float64 {
	return float64(p.X)*float64(q.X) + float64(p.Y)*float64(q.Y)
}

func off(from, way, p measure.Point) float64 {
	d := minus(p, from)
	return math.Abs(float64(way.X)*float64(d.Y)-float64(way.Y)*float64(d.X)) / math.Hypot(float64(way.X), float64(way.Y))
}

func along(from, way, p measure.Point) float64 {
	return dot(way, minus(p, from)) / math.Hypot(float64(way.X), float64(way.Y))
}

// TestReplayCatches breaks plans, each in one way that the replay must notice.
func TestReplayCatches(t *testing.T) {
	text := "strip 4\nfabric a #112233\nfabric b #eeeeee\nblock A web kites b wedges a\nblock R plain piece a\ngrid\n  A A A\n  A R A\nborder 2 a corners b\n"
	top := lay.Top(t, text)
	for name, broken := range map[string]func(p *sewing.Plan){
		"a join that is left out":              func(p *sewing.Plan) { p.Blocks[0].Steps[0].Joins = p.Blocks[0].Steps[0].Joins[1:] },
		"a join that comes twice":              func(p *sewing.Plan) { s := &p.Blocks[0].Steps[0]; s.Joins = append(s.Joins, s.Joins[0]) },
		"steps in the wrong order":             func(p *sewing.Plan) { s := p.Blocks[0].Steps; s[0], s[1] = s[1], s[0] },
		"a wrong piece":                        func(p *sewing.Plan) { p.Blocks[0].Steps[0].Joins[0].B = []int{0} },
		"a seam that begins elsewhere":         func(p *sewing.Plan) { p.Blocks[0].Steps[2].Joins[0].From.X += measure.Millimetre },
		"sides that are swapped":               func(p *sewing.Plan) { j := &p.Blocks[0].Steps[0].Joins[0]; j.A, j.B = j.B, j.A },
		"a block that is turned the other way": func(p *sewing.Plan) { p.Blocks[0].Variants[0].Cells[0].Turns += 1 },
		"a block that is left out": func(p *sewing.Plan) {
			c := &p.Blocks[0].Variants[0]
			c.Cells = c.Cells[1:]
		},
		"a long seam that is left out":   func(p *sewing.Plan) { p.Assembly.Seams = p.Assembly.Seams[:len(p.Assembly.Seams)-1] },
		"long seams in the wrong order":  func(p *sewing.Plan) { s := p.Assembly.Seams; s[0], s[len(s)-1] = s[len(s)-1], s[0] },
		"a border sewn before the rows":  func(p *sewing.Plan) { s := p.Assembly.Seams; s[3].A, s[4].A = s[4].A, s[3].A },
		"a long seam that is cut short":  func(p *sewing.Plan) { p.Assembly.Seams[4].To.X -= measure.Millimetre },
		"a part that is counted wrongly": func(p *sewing.Plan) { p.Assembly.Parts[0].Patches-- },
	} {
		plan := planOf(top, sewing.Options{})
		if err := newReplay(top, plan).check(); err != nil {
			t.Fatalf("before: %v", err)
		}
		broken(plan)
		if newReplay(top, plan).check() == nil {
			t.Errorf("%s is not caught", name)
		}
	}
}
