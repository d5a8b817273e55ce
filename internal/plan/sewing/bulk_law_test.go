package sewing_test

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/quilttest/lay"
)

// The layers of cloth at points where seams meet, found backwards: of a place beside the point, from where in the unfolded pieces its
// cloth has come.

// meetArm is a seam at a point: its way, clockwise from the right, when it is sewn, and whether it is pressed to its clockwise side.
type meetArm struct {
	way       float64
	order     int
	clockwise bool
}

// meetPoint is the arms at a point, clockwise; a piece lies clockwise of each.
type meetPoint []meetArm

// angle is that of the piece clockwise of an arm.
func (m meetPoint) angle(i int) float64 {
	turn := math.Mod(m[(i+1)%len(m)].way-m[i].way+4*math.Pi, 2*math.Pi)
	if turn < 1e-9 {
		return 2 * math.Pi
	}
	return turn
}

// fold is what a sewn seam does to a piece: cloth farther than an allowance behind the line of the seam is trimmed off, and what is left
// behind the line may be folded back over it. Inward is the way from the line into the piece's side.
type fold struct {
	inward measure.Vec
	trims  bool
	back   bool
}

func wayAt(angle float64) measure.Vec { return measure.Vec{X: math.Cos(angle), Y: math.Sin(angle)} }

// piece is the ways into a piece from each of its sides, and, where its tip is cut flat, from that: wedges are cut from strips.
func (m meetPoint) piece(i int) []measure.Vec {
	from, angle := m[i].way, m.angle(i)
	ways := []measure.Vec{wayAt(from + math.Pi/2), wayAt(from + angle - math.Pi/2)}
	if angle < blocks.Tip()*math.Pi/180 {
		ways = append(ways, wayAt(from+angle/2))
	}
	return ways
}

// comes counts the places of a piece that lie at a place once it is folded.
func comes(piece []measure.Vec, at measure.Vec, folds []fold) int {
	if len(folds) == 0 {
		for _, inward := range piece {
			if at.Dot(inward) < -1 {
				return 0
			}
		}
		return 1
	}
	last, rest := folds[len(folds)-1], folds[:len(folds)-1]
	beyond, sum := at.Dot(last.inward), 0
	if last.back && beyond < 0 {
		return 0
	}
	if !last.trims || beyond >= -1 {
		sum += comes(piece, at, rest)
	}
	if last.back && (!last.trims || -beyond >= -1) {
		sum += comes(piece, at.Minus(last.inward.Times(2*beyond)), rest)
	}
	return sum
}

// sewn is what happens to each piece as the seams are sewn one after the other, each pressed to its side; the last one open, if asked.
func (m meetPoint) sewn(lastOpen bool) [][]fold {
	folds, unit := make([][]fold, len(m)), make([]int, len(m))
	var orders []int
	for i, a := range m {
		unit[i] = i
		orders = append(orders, a.order)
	}
	slices.Sort(orders)
	orders = slices.Compact(orders)
	for n, order := range orders {
		i := slices.IndexFunc(m, func(a meetArm) bool { return a.order == order })
		open := lastOpen && n == len(orders)-1
		after, before := unit[i], unit[(i+len(m)-1)%len(m)]
		if after == before {
			continue
		}
		for piece, u := range unit {
			switch u {
			case after:
				folds[piece] = append(folds[piece], fold{wayAt(m[i].way + math.Pi/2), true, open || m[i].clockwise})
			case before:
				folds[piece] = append(folds[piece], fold{wayAt(m[i].way - math.Pi/2), true, open || !m[i].clockwise})
				unit[piece] = after
			}
		}
	}
	return folds
}

// apart is each piece by itself: folded along its first side where all turn one way, along both where all seams are open.
func (m meetPoint) apart(open bool) [][]fold {
	folds := make([][]fold, len(m))
	for i := range m {
		folds[i] = []fold{{wayAt(m[i].way + math.Pi/2), false, true}}
		if open {
			folds[i] = append(folds[i], fold{wayAt(m[i].way + m.angle(i) - math.Pi/2), false, true})
		}
	}
	return folds
}

// layersAt is the layers at a place.
func layersAt(pieces [][]measure.Vec, at measure.Vec, folds [][]fold) (sum int) {
	for i, piece := range pieces {
		sum += comes(piece, at, folds[i])
	}
	return sum
}

// outlines is the ways into each piece.
func (m meetPoint) outlines() (pieces [][]measure.Vec) {
	for i := range m {
		pieces = append(pieces, m.piece(i))
	}
	return pieces
}

// thickest is the most layers round the point, out to a little more than an allowance, but for slivers.
func (m meetPoint) thickest(folds [][]fold) int {
	seen := [256]int{}
	pieces := m.outlines()
	for row := range 41 {
		for column := range 41 {
			at := measure.Vec{X: -1.2 + 0.0137 + 0.06*float64(column), Y: (-1.2 + 0.0137 + 0.06*float64(row)) * 1.01}
			seen[layersAt(pieces, at, folds)]++
		}
	}
	most, places := 256, 0
	for places < 4 && most > 0 {
		most--
		places += seen[most]
	}
	return most
}

// pointSeen is a point of a top where three pieces or more meet.
type pointSeen struct {
	at   measure.Point
	sort sewing.PointSort
	arms meetPoint
}

// pointsSeen are the points with cloth all round, with the seams there as the replay sewed them.
func (r *replay) pointsSeen(t *testing.T) []pointSeen {
	at := map[measure.Point][]armSeen{}
	var order []measure.Point
	for i, s := range r.top.Seams {
		for _, end := range [2][2]measure.Point{{s.From, s.To}, {s.To, s.From}} {
			if at[end[0]] == nil {
				order = append(order, end[0])
			}
			at[end[0]] = append(at[end[0]], armSeen{i, minus(end[1], end[0])})
		}
	}
	var list []pointSeen
	for _, p := range order {
		patches := map[int]bool{}
		one := pointSeen{at: p}
		for _, a := range at[p] {
			x, y := r.sides(a.seam)
			patches[x], patches[y] = true, true
			way := math.Mod(math.Atan2(float64(a.way.Y), float64(a.way.X))+2*math.Pi+1e-9, 2*math.Pi)
			one.arms = append(one.arms, meetArm{way, r.sewn[a.seam].number, r.clockwise(t, a)})
		}
		if len(patches) < 3 || len(at[p]) != len(patches) {
			continue
		}
		slices.SortFunc(one.arms, func(a, b meetArm) int { return cmp.Compare(a.way, b.way) })
		one.sort = r.sortOf(p, patches, at[p])
		list = append(list, one)
	}
	return list
}

// sortOf is where a point lies.
func (r *replay) sortOf(at measure.Point, patches map[int]bool, arms []armSeen) sewing.PointSort {
	border, sash, inside := false, false, true
	for n := range patches {
		p := &r.top.Patches[n]
		border = border || p.Border >= 0
		sash = sash || p.Border < 0 && p.Cell < 0
	}
	for _, a := range arms {
		inside = inside && r.sewn[a.seam].cell >= 0
	}
	corner := false
	for cell := range r.top.Cells {
		box := r.top.CellRect(cell)
		corner = corner || (at.X == box.Min.X || at.X == box.Max.X) && (at.Y == box.Min.Y || at.Y == box.Max.Y)
	}
	switch {
	case border:
		return sewing.AtBorders
	case sash:
		return sewing.AtSashes
	case inside:
		return sewing.InBlocks
	case corner:
		return sewing.AtCorners
	}
	return sewing.AtEdges
}

// shapeOf is the angles round a point, wherever they begin and whichever way round.
func (m meetPoint) shapeOf() string {
	var angles []int
	for i := range m {
		angles = append(angles, int(math.Round(m.angle(i)*1e3)))
	}
	best := ""
	for range 2 {
		for i := range angles {
			if text := fmt.Sprint(slices.Concat(angles[i:], angles[:i])); best == "" || text < best {
				best = text
			}
		}
		slices.Reverse(angles)
	}
	return best
}

// key is what folds alike.
func (m meetPoint) key() string {
	text := ""
	for _, a := range m {
		rank := 0
		for _, b := range m {
			rank += map[bool]int{true: 1}[b.order < a.order]
		}
		text += fmt.Sprintf("%.4f %d %v,", a.way, rank, a.clockwise)
	}
	return text
}

// folded remembers layers of points that fold alike: pressed, and with the last seam open.
var folded = map[string][2]int{}

// pressed is the layers at a point as the plan presses, and with the last seam open.
func (m meetPoint) pressed() [2]int {
	key := m.key()
	if _, ok := folded[key]; !ok {
		folded[key] = [2]int{m.thickest(m.sewn(false)), m.thickest(m.sewn(true))}
	}
	return folded[key]
}

// alike is points alike but for their pressing.
type alike struct {
	count, pressed, open int
	at                   []measure.Point
}

// checkBulk is the law of layers: points by where they lie, by pieces, and the layers at those that may be thick.
func checkBulk(t *testing.T, r *replay) error {
	b := &r.plan.Bulk
	meeting, points := map[sewing.MeetingPoints]int{}, map[string]*alike{}
	thick := map[[2]int]*alike{}
	var keys []string
	pieces := map[string][2]int{}
	for _, p := range r.pointsSeen(t) {
		meeting[sewing.MeetingPoints{Sort: p.sort, Pieces: len(p.arms)}]++
		if p.sort == sewing.InBlocks {
			continue // which come from the blocks' own rounds
		}
		key := fmt.Sprint(p.sort, len(p.arms), p.arms.shapeOf())
		if points[key] == nil {
			points[key], keys, pieces[key] = &alike{}, append(keys, key), [2]int{len(p.arms), 0}
		}
		a, layers := points[key], p.arms.pressed()
		a.count, a.pressed, a.at = a.count+1, max(a.pressed, layers[0]), append(a.at, p.at)
		if layers[0] > 8 {
			a.open = max(a.open, layers[1])
		}
	}
	inBlocks(r, points, &keys, pieces)
	most := 0
	for _, key := range keys {
		a := points[key]
		if most = max(most, a.pressed); a.pressed <= 8 {
			continue
		}
		sum := thick[pieces[key]]
		if sum == nil {
			sum = &alike{}
			thick[pieces[key]] = sum
		}
		sum.count, sum.pressed, sum.open, sum.at = sum.count+a.count, max(sum.pressed, a.pressed), max(sum.open, a.open), append(sum.at, a.at...)
	}
	order := []sewing.PointSort{sewing.AtCorners, sewing.AtEdges, sewing.AtSashes, sewing.AtBorders, sewing.InBlocks}
	if !slices.IsSortedFunc(b.Meeting, func(a, b sewing.MeetingPoints) int {
		return cmp.Or(slices.Index(order, a.Sort)-slices.Index(order, b.Sort), b.Pieces-a.Pieces)
	}) || !slices.IsSortedFunc(b.Thick, func(a, b sewing.ThickPoint) int { return b.Pieces - a.Pieces }) {
		return fmt.Errorf("points are out of order: %+v, %+v", b.Meeting, b.Thick)
	}
	for _, m := range b.Meeting {
		if n := m.Count; meeting[sewing.MeetingPoints{Sort: m.Sort, Pieces: m.Pieces}] != n {
			return fmt.Errorf("%+v are said, %d are there", m, meeting[sewing.MeetingPoints{Sort: m.Sort, Pieces: m.Pieces}])
		}
	}
	if len(meeting) != len(b.Meeting) || most != b.Most || b.Limit != 8 || len(thick) != len(b.Thick) {
		return fmt.Errorf("%d sorts of points, %d layers, %d thick sorts are said; %d, %d, %d are there", len(b.Meeting), b.Most, len(b.Thick), len(meeting), most, len(thick))
	}
	for _, p := range b.Thick {
		a := thick[[2]int{p.Pieces, map[bool]int{true: 1}[p.Inside]}]
		if a == nil || a.count != p.Count || a.pressed != p.Layers || a.open != p.Open || len(p.At) != min(12, p.Count) {
			return fmt.Errorf("%+v is said, %+v is there", p, a)
		}
		for _, at := range p.At {
			if !slices.Contains(a.at, at) {
				return fmt.Errorf("%v is no such point", at)
			}
		}
	}
	return nil
}

// inBlocks adds the points within blocks, which have as many layers in each of a kind: turned one way where they can be, else with each
// seam towards the piece that is sewn on.
func inBlocks(r *replay, points map[string]*alike, keys *[]string, pieces map[string][2]int) {
	for i := range r.plan.Blocks {
		b := &r.plan.Blocks[i]
		for _, round := range b.Rounds {
			key := fmt.Sprint("inside ", len(round.Pieces))
			if points[key] == nil {
				points[key], *keys, pieces[key] = &alike{}, append(*keys, key), [2]int{len(round.Pieces), 1}
			}
			layers := round.Layers
			if !round.Turns {
				layers = round.Without
			}
			a := points[key]
			a.count, a.pressed, a.open = a.count+b.Count, max(a.pressed, layers), max(a.open, min(layers, round.Last))
			for _, v := range b.Variants {
				for _, c := range v.Cells {
					a.at = append(a.at, r.onTop(b, c, round.At))
				}
			}
		}
	}
}

// inRound remembers layers of points within blocks: in all ways of pressing.
var inRound = map[string][4]int{}

// inAllWays is the layers at a point within blocks: as sewn, with the last seam open, all of them open, and turned round.
func (m meetPoint) inAllWays() [4]int {
	key := m.key()
	if _, ok := inRound[key]; !ok {
		inRound[key] = [4]int{m.thickest(m.sewn(false)), m.thickest(m.sewn(true)), m.thickest(m.apart(true)), m.thickest(m.apart(false))}
	}
	return inRound[key]
}

// checkRounds is the law of points within blocks: who meets there, and the layers in each way of pressing.
func checkRounds(p *sewing.Plan, block int) error {
	b := &p.Blocks[block]
	shown := p.Shown(block)
	var joins []sewing.Join
	for _, s := range b.Steps {
		joins = append(joins, s.Joins...)
	}
	for _, round := range b.Rounds {
		m := meetPoint{}
		var orders []int
		for i, piece := range round.Pieces {
			before := round.Pieces[(i+len(round.Pieces)-1)%len(round.Pieces)]
			n := slices.IndexFunc(joins, func(j sewing.Join) bool {
				return slices.Contains(j.A, piece) && slices.Contains(j.B, before) || slices.Contains(j.B, piece) && slices.Contains(j.A, before)
			})
			way, ok := sideFrom(shown.Pieces[piece].Outline, round.At)
			if !ok || n < 0 {
				return fmt.Errorf("piece %d does not meet the others at %v", piece, round.At)
			}
			m, orders = append(m, meetArm{way, n, slices.Contains(joins[n].B, piece)}), append(orders, n)
		}
		for i := range m {
			if turn := m[(i+1)%len(m)].way - m[i].way; i+1 < len(m) && turn < 0 {
				return fmt.Errorf("the pieces at %v do not go clockwise", round.At)
			}
		}
		layers := m.inAllWays()
		want := sewing.Round{At: round.At, Seams: len(m), Through: -1, Without: layers[0], Last: layers[1], Opened: layers[2]}
		want.Turns = true
		for i, n := range orders {
			if !joins[n].Round && want.Turns {
				want.Turns, want.WhyNot = false, sewing.PressedOtherwise
			}
			if m.angle(i) > math.Pi-1e-6 && want.Through < 0 {
				want.Turns, want.WhyNot, want.Through = false, sewing.RunsThrough, round.Pieces[i]
			}
		}
		if want.Through >= 0 {
			want.WhyNot = sewing.RunsThrough
		}
		if want.Turns {
			want.Layers = layers[3]
			for _, j := range joins {
				if j.From == round.At || j.To == round.At {
					want.Partial = append(want.Partial, j.Number)
				}
			}
		}
		got := round
		got.Pieces = nil
		slices.Sort(got.Partial)
		slices.Sort(want.Partial)
		if fmt.Sprint(got) != fmt.Sprint(want) {
			return fmt.Errorf("%+v, not %+v", got, want)
		}
	}
	return nil
}

// sideFrom is the way of the side of a piece that is the first clockwise at one of its points.
func sideFrom(o []measure.Point, at measure.Point) (float64, bool) {
	for i, p := range o {
		q := o[(i+1)%len(o)]
		if d := minus(at, p); off(p, minus(q, p), at) <= 2 && dot(d, minus(q, p)) >= 0 && dot(minus(at, q), minus(p, q)) > 0 {
			way := minus(q, at)
			return math.Mod(math.Atan2(float64(way.Y), float64(way.X))+2*math.Pi+1e-9, 2*math.Pi), true
		}
	}
	return 0, false
}

// TestLayers at the points of small tops of all sorts.
func TestLayers(t *testing.T) {
	thick, tried := 0, 0
	for _, n := range everyPlan() {
		if len(n.Seams) > judges.Of(350, 900) {
			continue
		}
		r := newReplay(n.Top, n.plan)
		if err := r.check(); err != nil {
			t.Fatal(err)
		}
		tried++
		if err := checkBulk(t, r); err != nil {
			t.Errorf("%s: %v", n.name, err)
		}
		thick += len(n.plan.Bulk.Thick)
		for b := range n.plan.Blocks {
			if err := checkRounds(n.plan, b); err != nil && !n.plan.Blocks[b].Column {
				t.Errorf("%s, block %s: %v", n.name, n.plan.Blocks[b].Label, err)
			}
		}
	}
	if tried < 20 || thick < 10 {
		t.Errorf("%d tops were tried, with %d thick sorts of points", tried, thick)
	}
}

// TestLayersCatch: of a plan that is spoilt in one place the law tells.
func TestLayersCatch(t *testing.T) {
	top := lay.Top(t, webs("border 2 a\n"))
	for name, broken := range map[string]func(b *sewing.Bulk){
		"a layer too many":               func(b *sewing.Bulk) { b.Most++ },
		"a thick point that is left out": func(b *sewing.Bulk) { b.Thick = b.Thick[1:] },
		"other layers":                   func(b *sewing.Bulk) { b.Thick[0].Layers++ },
		"other layers, open":             func(b *sewing.Bulk) { b.Thick[0].Open-- },
		"another place":                  func(b *sewing.Bulk) { b.Thick[0].At[0].X++ },
		"another sort":                   func(b *sewing.Bulk) { b.Meeting[0].Sort = sewing.AtSashes },
	} {
		r := newReplay(top, planOf(top, sewing.Options{}))
		if err := r.check(); err != nil {
			t.Fatal(err)
		}
		if err := checkBulk(t, r); err != nil {
			t.Fatal(err)
		}
		broken(&r.plan.Bulk)
		if checkBulk(t, r) == nil {
			t.Errorf("%s is not caught", name)
		}
	}
	p := planOf(top, sewing.Options{})
	p.Blocks[0].Rounds[0].Last++
	if checkRounds(p, 0) == nil {
		t.Error("other layers within blocks are not caught")
	}
}
