package sewing_test

import (
	"eighthturn/internal/quilttest/lay"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilttest/judges"
)

// armSeen is a seam of the top that runs from a point.
type armSeen struct {
	seam int
	way  measure.Point
}

// jointSeen is a joint that the checker found by itself.
type jointSeen struct {
	at     measure.Point
	inside bool // within a block
	nests  bool
}

// jointsSeen finds every joint of a top from its seams and from the order in which a replay
// sewed them: two seams that end in a point of a later one as mirror images, from its two
// sides. How each allowance lies is read off what the plan says for whoever sews.
func (r *replay) jointsSeen(t *testing.T) []jointSeen {
	arms := map[measure.Point][]armSeen{}
	var order []measure.Point
	for i, s := range r.top.Seams {
		for _, end := range [2][2]measure.Point{{s.From, s.To}, {s.To, s.From}} {
			if len(arms[end[0]]) == 0 {
				order = append(order, end[0])
			}
			arms[end[0]] = append(arms[end[0]], armSeen{i, minus(end[1], end[0])})
		}
	}
	var list []jointSeen
	for _, at := range order {
		here := arms[at]
		for i := range here {
			for j := i + 1; j < len(here); j++ {
				if later := r.later(here, i, j); later >= 0 {
					list = append(list, jointSeen{at, r.sewn[later].cell >= 0, r.clockwise(t, here[i]) == r.clockwise(t, here[j])})
				}
			}
		}
	}
	return list
}

// later is a seam of the top in whose line two arms are mirror images and that was sewn after
// both, from whose two sides they come; -1 if there is none.
func (r *replay) later(here []armSeen, i, j int) int {
	a, b := here[i], here[j]
	for _, l := range here {
		line := &r.sewn[l.seam]
		if line.number <= r.sewn[a.seam].number || line.number <= r.sewn[b.seam].number || !mirrorImages(a.way, b.way, l.way) {
			continue
		}
		x, _ := r.sides(a.seam)
		y, _ := r.sides(b.seam)
		if line.a[x] && line.b[y] || line.a[y] && line.b[x] {
			return l.seam
		}
	}
	return -1
}

func mirrorImages(a, b, line measure.Point) bool {
	angle := func(p measure.Point) float64 { return math.Atan2(float64(p.Y), float64(p.X)) }
	sum := angle(a) + angle(b) - 2*angle(line)
	if math.Abs(math.Sin(angle(a)-angle(line))) < 1e-6 {
		return false // it runs along the line
	}
	return math.Abs(math.Sin(sum/2)) < 1e-6
}

// pressedTo is the patch onto which a seam's allowance is pressed.
func (r *replay) pressedTo(t *testing.T, seam int) int {
	by := &r.sewn[seam]
	a, b := r.sides(seam)
	if by.cell < 0 {
		if r.plan.Assembly.Seams[by.join].Press == by.b[a] {
			return a
		}
		return b
	}
	join, at, block := r.joinOf(by)
	way := r.plan.Way(by.cell, join.Choice)
	if !join.Round {
		if (way == 0) == by.b[a] {
			return a
		}
		return b
	}
	s := &r.top.Seams[seam]
	about := r.onTop(block, at, block.Rounds[0].At)
	outwards := minus(measure.Point{X: (s.From.X + s.To.X) / 2, Y: (s.From.Y + s.To.Y) / 2}, about)
	if d := off(by.from, minus(by.to, by.from), about); d > 3 {
		t.Fatalf("a seam that turns round %v passes it by", about)
	}
	clockwise := a // to the right of From to To
	if dot(outwards, minus(s.To, s.From)) < 0 {
		clockwise = b
	}
	if way == 0 {
		return clockwise
	}
	return a + b - clockwise
}

// joinOf is the join that sewed a seam.
func (r *replay) joinOf(by *sewnBy) (*sewing.Join, sewing.Placed, *sewing.Block) {
	for i := range r.plan.Blocks {
		b := &r.plan.Blocks[i]
		for _, c := range b.Variants {
			for _, at := range c.Cells {
				if at.Cell != by.cell {
					continue
				}
				for s := range b.Steps {
					for j := range b.Steps[s].Joins {
						if b.Steps[s].Joins[j].Number == by.join {
							return &b.Steps[s].Joins[j], at, b
						}
					}
				}
			}
		}
	}
	panic("no such join")
}

// clockwise says whether an arm's allowance lies on the clockwise side of it.
func (r *replay) clockwise(t *testing.T, a armSeen) bool {
	s := &r.top.Seams[a.seam]
	right, left := r.sides(a.seam)
	if dot(minus(s.To, s.From), a.way) < 0 {
		right, left = left, right
	}
	return r.pressedTo(t, a.seam) == right
}

// checkPressing compares what the plan says of joints with what the checker finds.
func checkPressing(t *testing.T, r *replay) error {
	type key struct {
		at    measure.Point
		nests bool
	}
	counts := map[key]int{}
	inside, nests := 0, 0
	known := map[key]int{}
	for _, j := range r.plan.Pressing.Joints {
		known[key{j.At, j.Nests}]++
	}
	for _, j := range r.jointsSeen(t) {
		if j.inside {
			if inside++; !j.nests {
				return fmt.Errorf("the seams at %v within a block do not nest", j.at)
			}
			continue
		}
		counts[key{j.at, j.nests}]++
		if j.nests {
			nests++
		}
		if counts[key{j.at, j.nests}] > known[key{j.at, j.nests}] {
			return fmt.Errorf("at %v a joint is found (nesting: %v) that the plan does not know", j.at, j.nests)
		}
	}
	g := &r.plan.Pressing
	if inside != g.Inside || nests != g.Nests {
		return fmt.Errorf("%d joints inside and %d that nest are said, %d and %d are found", g.Inside, g.Nests, inside, nests)
	}
	for _, j := range g.Joints {
		counts[key{j.At, j.Nests}]--
	}
	for k, n := range counts {
		if n != 0 {
			return fmt.Errorf("at %v %+d joints (nesting: %v) more are found than said", k.at, n, k.nests)
		}
	}
	return checkOddCycles(r.plan)
}

// checkOddCycles checks the proofs: each cycle begins with its joint, each joint of it shares a
// choice with the next all the way round, and the cycle asks for an odd number of changes.
func checkOddCycles(p *sewing.Plan) error {
	g := &p.Pressing
	if len(g.Joints)-g.Nests != len(g.Cannot) || g.AtMost < g.Nests || g.Proved != (g.AtMost == g.Nests) {
		return fmt.Errorf("%d of %d joints nest, at most %d, but %d are listed", g.Nests, len(g.Joints), g.AtMost, len(g.Cannot))
	}
	for _, c := range g.Cannot {
		if len(c.OddCycle) == 0 {
			continue
		}
		if c.OddCycle[0] != c.Joint || g.Joints[c.Joint].Nests {
			return fmt.Errorf("the ring of joint %d does not begin with it", c.Joint)
		}
		at, odd := g.Joints[c.Joint].A.Choice, false
		for _, n := range append(c.OddCycle[1:len(c.OddCycle):len(c.OddCycle)], c.OddCycle[0]) {
			j := &g.Joints[n]
			if j.B.Choice == at {
				at = j.A.Choice
			} else if j.A.Choice == at {
				at = j.B.Choice
			} else {
				return fmt.Errorf("the ring of joint %d is broken at joint %d", c.Joint, n)
			}
			odd = odd != (j.A.Turned != j.B.Turned)
		}
		if at != g.Joints[c.Joint].A.Choice || !odd {
			return fmt.Errorf("the ring of joint %d proves nothing", c.Joint)
		}
	}
	return nil
}

func TestPressingCatches(t *testing.T) {
	top := lay.Top(t, hardText(t))
	for name, broken := range map[string]func(p *sewing.Plan){
		"a block that turns the other way": func(p *sewing.Plan) { p.Pressing.Choices[blockChoice(p)].Way ^= 1 },
		"a row that is pressed the other way": func(p *sewing.Plan) {
			for i := range p.Assembly.Seams[:3] {
				p.Assembly.Seams[i].Press = !p.Assembly.Seams[i].Press
			}
		},
		"a joint that is left out":         func(p *sewing.Plan) { p.Pressing.Joints = p.Pressing.Joints[1:] },
		"a joint that is said to nest":     func(p *sewing.Plan) { j := &p.Pressing.Joints[0]; j.Nests = !j.Nests },
		"a count that is too large":        func(p *sewing.Plan) { p.Pressing.Nests++ },
		"a bound that is too low":          func(p *sewing.Plan) { p.Pressing.AtMost = p.Pressing.Nests - 1 },
		"a joint inside that is forgotten": func(p *sewing.Plan) { p.Pressing.Inside-- },
		"a ring that is broken":            func(p *sewing.Plan) { c := &p.Pressing.Cannot[0]; c.OddCycle = c.OddCycle[:len(c.OddCycle)-1] },
		"a ring that proves nothing": func(p *sewing.Plan) {
			j := &p.Pressing.Joints[p.Pressing.Cannot[0].OddCycle[1]]
			j.A.Turned = !j.A.Turned
		},
	} {
		r := newReplay(top, planOf(top, sewing.Options{}))
		if err := r.check(); err != nil {
			t.Fatal(err)
		}
		if err := checkPressing(t, r); err != nil {
			t.Fatalf("before: %v", err)
		}
		if len(r.plan.Pressing.Cannot) == 0 {
			t.Fatal("everything nests: nothing can be broken")
		}
		broken(r.plan)
		if checkPressing(t, r) == nil {
			t.Errorf("%s is not caught", name)
		}
	}
}

// blockChoice is a choice of a block that a joint depends on.
func blockChoice(p *sewing.Plan) int32 {
	for _, j := range p.Pressing.Joints {
		if p.Pressing.Choices[j.A.Choice].Sort == sewing.BlockChoice && j.A.Choice != j.B.Choice {
			return j.A.Choice
		}
	}
	return 0
}

// hardText is a layout of 4 by 4 with joints that cannot nest.
func hardText(t *testing.T) string {
	t.Helper()
	for seed := range uint64(200) {
		text := mixedText(seed, 4, 4)
		if p := planOf(lay.Top(t, text), sewing.Options{}); len(p.Pressing.Cannot) > 0 {
			return text
		}
	}
	t.Fatal("everything nests: nothing can be broken")
	return ""
}

// mixedText is a layout of all kinds that are no columns, mixed and turned at random.
func mixedText(seed uint64, columns, rows int) string {
	v := rand.New(rand.NewPCG(seed, 1))
	text := "side 6\nfabric a #112233\nfabric b #eeeeee\nfabric c #a04030\n"
	var labels []string
	for i, k := range blocks.Kinds() {
		if k.Column {
			continue
		}
		label := string(rune('A' + i))
		text += "block " + label + " " + k.Name
		for n, role := range k.Roles {
			if !role.Outer {
				text += " " + role.Name + " " + string(rune('a'+n%3))
			}
		}
		text += "\n"
		labels = append(labels, label)
	}
	text += "grid\n"
	for range rows {
		for range columns {
			label := labels[v.IntN(len(labels))]
			k := blocks.Kinds()[label[0]-'A']
			if k.Turning != blocks.Fixed && v.IntN(2) == 0 {
				label += ":" + blocks.CornerNames()[v.IntN(4)]
			}
			text += " " + label
		}
		text += "\n"
	}
	return text
}

// best is the most joints that nest, by trying every way of every choice, component by
// component; -1 where a component has more choices than can be tried.
func best(p *sewing.Plan, most int) int {
	g := &p.Pressing
	next := make([][]int, len(g.Choices))
	for i, j := range g.Joints {
		next[j.A.Choice] = append(next[j.A.Choice], i)
		if j.B.Choice != j.A.Choice {
			next[j.B.Choice] = append(next[j.B.Choice], i)
		}
	}
	seen := make([]bool, len(g.Choices))
	sum := 0
	for start := range seen {
		if seen[start] {
			continue
		}
		list := []int{start}
		seen[start] = true
		for i := 0; i < len(list); i++ {
			for _, n := range next[list[i]] {
				for _, c := range []int32{g.Joints[n].A.Choice, g.Joints[n].B.Choice} {
					if !seen[c] {
						seen[c] = true
						list = append(list, int(c))
					}
				}
			}
		}
		if len(list) > most {
			return -1
		}
		sum += bestOf(g, list, next)
	}
	return sum
}

// bestOf tries every way of the choices of one component, turning one round at a time.
func bestOf(g *sewing.Pressing, list []int, next [][]int) int {
	ways := make([]bool, len(g.Choices))
	nests := func(n int) bool {
		j := &g.Joints[n]
		return (ways[j.A.Choice] != ways[j.B.Choice]) == (j.A.Turned != j.B.Turned)
	}
	count := 0
	known := map[int]bool{}
	for _, c := range list {
		for _, n := range next[c] {
			if !known[n] && nests(n) {
				count++
			}
			known[n] = true
		}
	}
	most := count
	for i := 1; i < 1<<(len(list)-1); i++ { // the last may stay, since all turned round is the same
		bit := 0
		for i>>bit&1 == 0 {
			bit++
		}
		c := list[bit]
		for _, n := range next[c] {
			if nests(n) {
				count--
			}
		}
		ways[c] = !ways[c]
		for _, n := range next[c] {
			if nests(n) {
				count++
			}
		}
		most = max(most, count)
	}
	return most
}

// TestBestOfAll tries every way on tops up to 4 by 4, mixed and turned at random, and on two by
// two of the kinds.
func TestBestOfAll(t *testing.T) {
	tried, stubborn := 0, 0
	try := func(text string) {
		p := planOf(lay.Top(t, text), sewing.Options{})
		want := best(p, 20)
		if want < 0 {
			return
		}
		tried++
		if p.Pressing.Nests != want || !p.Pressing.Proved {
			t.Errorf("%d of %d joints nest (proved: %v), but %d can\n%s", p.Pressing.Nests, len(p.Pressing.Joints), p.Pressing.Proved, want, text)
		}
		if want < len(p.Pressing.Joints) {
			stubborn++
		}
	}
	count := judges.Of(80, 300)
	for seed := range uint64(count) {
		columns, rows := 1+int(seed%4), 1+int(seed/4%4)
		try(mixedText(seed, columns, rows))
	}
	for _, text := range fours() {
		try(text)
	}
	t.Logf("%d tops tried, %d of them with joints that cannot nest", tried, stubborn)
	if tried < count/2 || stubborn < judges.Of(4, 10) {
		t.Errorf("only %d tops were tried, and only %d of them were hard", tried, stubborn)
	}
}

// fours is two by two of the kinds, unturned by force.
func fours() []string {
	head, _, _ := strings.Cut(mixedText(0, 1, 1), "grid\n")
	var labels []string
	for i, k := range blocks.Kinds() {
		if !k.Column {
			labels = append(labels, string(rune('A'+i)))
		}
	}
	var list []string
	for n := range len(labels) * len(labels) * len(labels) * len(labels) {
		if n%7 > 0 {
			continue // one in seven
		}
		a, b, c, d := n%len(labels), n/len(labels)%len(labels), n/len(labels)/len(labels)%len(labels), n/len(labels)/len(labels)/len(labels)
		list = append(list, fmt.Sprintf("%sgrid\n %s %s\n %s %s\n", head, labels[a], labels[b], labels[c], labels[d]))
	}
	return list
}
