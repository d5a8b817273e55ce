package cutting

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/supplies"
	"eighthturn/internal/quilt/lengths"
	"eighthturn/internal/quilttest/judges"
)

// Laws of what the searches are made of, by their definitions and by cases worked out by hand.

// TestDualFeasible: of a function that is dual feasible, parts of a strip that go into one strip never come to more than 1. Its values,
// worked out by hand, are those of the papers that are named beside it.
func TestDualFeasible(t *testing.T) {
	third := 1.0 / 3
	for _, c := range []struct {
		name string
		f    func(float64) float64
		at   map[float64]float64
	}{
		{"halves and more as one", inSteps(1), map[float64]float64{0.3: 0, 0.5: 0.5, 0.6: 1, 1: 1}},
		{"in thirds", inSteps(2), map[float64]float64{0.3: 0, third: third, 0.4: 0.5, 2 * third: 2 * third, 0.7: 1, 1: 1}},
		{"within a grain of thirds", inSteps(2), map[float64]float64{third - 1e-13: third, third + 1e-13: third, third - 1e-9: 0, third + 1e-9: 0.5}},
		{"without what is below 0.3", withoutSmall(0.3), map[float64]float64{0: 0, 0.29: 0, 0.3: 0.3, 0.5: 0.5, 0.7: 0.7, 0.71: 1, 1: 1}},
		{"in units of 0.3", inUnits(0.3), map[float64]float64{0.2: 0, 0.3: third, 0.4: third, 0.45: third, 0.5: 0.5, 0.55: 2 * third, 0.6: 2 * third, 0.7: 2 * third, 0.75: 1, 1: 1}},
		{"in units of a fifth", inUnits(0.2), map[float64]float64{0.2: 0.2, 0.4: 0.4, 0.45: 0.4, 0.6: 0.6, 0.8: 0.8, 0.81: 1}},
		{"one behind the other", composed(inSteps(1), withoutSmall(0.4)), map[float64]float64{0.39: 0, 0.5: 0.5, 0.61: 1}},
	} {
		for x, want := range c.at {
			if got := c.f(x); math.Abs(got-want) > 1e-12 {
				t.Errorf("%s: %v of %v, want %v", c.name, got, x, want)
			}
		}
	}
	r := rand.New(rand.NewPCG(3, 9))
	for range 300 {
		var strip []part
		for room := 1.0; len(strip) < 8; {
			x := float64(1+r.IntN(60)) / 60
			if x > room+1e-9 {
				break
			}
			strip, room = append(strip, part{length: x, most: int(1/x + 1e-9)}), room-x
		}
		if len(strip) == 0 {
			continue
		}
		n := 0
		for f := range functions(strip) {
			n++
			sum := 0.0
			for _, q := range strip {
				sum += f(q.length)
			}
			if sum > 1+1e-9 {
				t.Fatalf("function %d: %v in one strip come to %v", n, strip, sum)
			}
		}
	}
	if got, want := cutsOf([]part{{length: 0.2}, {length: 0.7}, {length: 0.5}, {length: 1}, {length: 0.2}}), []float64{0.2, 0.3, 0.5}; len(got) != 3 || math.Abs(got[1]-want[1]) > 1e-12 || got[0] != 0.2 || got[2] != 0.5 {
		t.Errorf("functions jump at %v, want %v", got, want)
	}
	var many []part
	for i := range 100 {
		many = append(many, part{length: 0.004 * float64(i+1)})
	}
	if n := len(cutsOf(many)); n != maxWays {
		t.Errorf("%d places to jump at, want %d", n, maxWays)
	}
}

// TestBoundsHoldWhereverTheyEnd: a bound never lies above the best of all ways, with however few steps it is found.
func TestBoundsHoldWhereverTheyEnd(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 4))
	for n := range judges.Of(60, 600) {
		p := smallPacking(r, 7)
		cloth, strips := exhausted(p)
		for _, steps := range []int{0, 1, 3, 10, 20, 30, 50, 80, 120, 200, 400, 1000} {
			p.budget = newBudget(steps, nil)
			c, k := p.sharpBound()
			if c > cloth || k > strips {
				t.Fatalf("problem %d, %d steps: a bound of %d strips and %d, but %d and %d will do: %v", n, steps, k, c, strips, cloth, p.items)
			}
			p.budget = newBudget(steps, nil)
			if k := p.fewestFor(cloth, 0); k > strips {
				t.Fatalf("problem %d, %d steps: a bound of %d strips for %d, but %d will do: %v", n, steps, k, cloth, strips, p.items)
			}
			p.budget = newBudget(steps, nil)
			if s := p.pack(); misfilled(p, s) != "" || s.cloth < cloth || s.cloth == cloth && s.strips < strips {
				t.Fatalf("problem %d, %d steps: %+v, the best takes %d in %d", n, steps, s, cloth, strips)
			}
			b := newBudget(steps, nil)
			if p.budget = b; steps == 0 && b.spent() {
				t.Error("a budget of nothing is spent before anything is")
			}
		}
	}
	// More ways to fill a strip than are weighed: bounds still hold, and plans come near them.
	for n := range judges.Of(2, 12) {
		p := &packing{length: 100 * measure.Inch}
		for i := range 28 {
			p.items = append(p.items, item{across: measure.NM(40-i) * measure.Inch / 4, along: measure.NM(17+r.IntN(60)) * measure.Inch / 8, count: 1 + r.IntN(12)})
		}
		s := p.pack()
		cloth, strips := p.sharpBound()
		least, widest := 0.0, p.items[0].across
		for _, t := range p.items {
			least += float64(t.across) * float64(t.along) * float64(t.count) / float64(p.length)
		}
		if misfilled(p, s) != "" || cloth > s.cloth || strips > s.strips || float64(cloth) < least-1 || float64(s.cloth) > 1.06*float64(cloth)+float64(widest) {
			t.Errorf("large problem %d: %d in %d strips, bounds %d and %d, %.0f by their area", n, s.cloth, s.strips, cloth, strips, least)
		}
	}
}

// TestOrderOfChains: of all places for the one shorter strip, and all pieces that can be cut first, a chain has the one that keeps the
// shortest piece of a strip longest; of equals it stays as it is.
func TestOrderOfChains(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	short, joined := 0, 0
	for n := range 400 {
		p := &planning{Plan: &Plan{Units: measure.Inches, Longer: measure.NM(r.IntN(2)*2) * measure.Inch}, trials: newBudget(1<<40, nil)}
		p.Steps.Trimmed = measure.Inch / 4
		loss := measure.NM(1+r.IntN(8)) * measure.Inch / 2
		var group []long
		total := measure.NM(0)
		for line := range 1 + r.IntN(3) {
			along := measure.NM(44+r.IntN(90)) * measure.Inch / 2
			p.Lines = append(p.Lines, Line{Number: line})
			p.Lines[line].Piece.AlongCut = along
			for range 1 + r.IntN(2) {
				group = append(group, long{line, along})
				total += along + p.Longer
			}
		}
		usable := 40 * measure.Inch
		whole := int((total - loss) / (usable - loss))
		strips := []demand{{item: item{along: usable, count: max(whole, 1)}}}
		if last := total - loss - measure.NM(whole)*(usable-loss) + loss; last > 0 && r.IntN(3) > 0 {
			strips = append(strips, demand{item: item{along: last, count: 1}})
		}
		if r.IntN(2) == 0 {
			slices.Reverse(strips)
		}
		c := p.chainOf(slices.Clone(group), strips, loss)
		var lengths []measure.NM // the whole ones first
		for _, d := range strips {
			for range d.count {
				lengths = append(lengths, d.along)
			}
		}
		slices.SortFunc(lengths, func(a, b measure.NM) int { return int((b - a) / measure.Inch * 100) })
		var pieces []Share
		spare := loss
		for _, l := range lengths {
			spare += l - loss
		}
		for _, l := range group {
			spare -= l.length
			if len(pieces) == 0 || pieces[len(pieces)-1].Line != l.line {
				pieces = append(pieces, Share{Line: l.line})
			}
			pieces[len(pieces)-1].Count++
		}
		best := measure.NM(-1)
		for place := range lengths {
			order := slices.Clone(lengths[:len(lengths)-1])
			order = slices.Insert(order, place, lengths[len(lengths)-1])
			if lengths[0] == lengths[len(lengths)-1] || len(strips) == 1 {
				order = lengths
			}
			for turn := range pieces {
				try := &Chain{LossCut: loss, Pieces: slices.Concat(pieces[turn:], pieces[:turn])}
				for _, l := range order {
					try.Strips = append(try.Strips, Stretch{1, l})
				}
				best = max(best, shortestIn(p.Plan, try))
			}
		}
		if c.LeastCut != best || c.LeastCut != shortestIn(p.Plan, &c) || c.SpareCut != spare || c.LossCut != loss || c.Times != 1 || c.Scant != (spare < measure.Inch/4) || c.Short != (best > 0 && best < 4*measure.Inch) {
			t.Fatalf("chain %d: %+v, the shortest can be %d, %d to spare", n, c, best, spare)
		}
		short, joined = short+boolInt(c.Short), joined+boolInt(best > 0)
	}
	if short < 20 || joined < 200 {
		t.Errorf("%d chains hold a short piece, %d a join", short, joined)
	}
	in := measure.Inch
	ways := placings([]Stretch{{2, 40 * in}, {1, 13 * in}})
	if want := [][]Stretch{{{2, 40 * in}, {1, 13 * in}}, {{1, 40 * in}, {1, 13 * in}, {1, 40 * in}}, {{1, 13 * in}, {2, 40 * in}}}; fmt.Sprint(ways) != fmt.Sprint(want) {
		t.Errorf("one shorter strip may stand at %v, want %v", ways, want)
	}
	for _, strips := range [][]Stretch{{{3, 40 * in}}, {{1, 40 * in}, {2, 13 * in}}} {
		if ways := placings(strips); len(ways) != 1 || !slices.Equal(ways[0], strips) {
			t.Errorf("%v may stand as %v", strips, ways)
		}
	}
	for nm, want := range map[measure.System]measure.NM{measure.Inches: 4 * in, measure.Centimetres: 10 * measure.Centimetre} {
		if got := minInJoin(nm); got != want {
			t.Errorf("%v: a piece of %d is too short", nm, got)
		}
	}
}

// TestKeptStrips: where a solution has more strips than a search begins with, a few of each sort are laid anew, the others stay.
func TestKeptStrips(t *testing.T) {
	for _, c := range []struct{ sorts, times, strips, free int }{{1, 24, 24, 24}, {1, 25, 25, 24}, {1, 30, 30, 24}, {3, 20, 60, 8}, {5, 9, 45, 4}, {13, 5, 65, 2}, {30, 1, 30, 2}, {4, 6, 24, 24}} {
		p := &packing{items: make([]item, c.sorts)}
		s := &solution{strips: c.strips}
		for i := range c.sorts {
			counts := make([]int, c.sorts)
			counts[i] = 3
			s.patterns = append(s.patterns, pattern{width: measure.NM(i + 1), counts: counts, times: c.times})
		}
		kept, left := p.keep(s)
		for i := range c.sorts {
			if want := 3 * min(c.times, c.free); left[i] != want {
				t.Errorf("%+v: %d pieces are laid anew, want %d", c, left[i], want)
			}
			if c.times > c.free && (len(kept) != c.sorts || kept[i].times != c.times-c.free || kept[i].counts[i] != 3 || kept[i].width != measure.NM(i+1)) || c.times <= c.free && len(kept) > 0 {
				t.Errorf("%+v: kept are %v", c, kept)
			}
		}
	}
}

// TestMixedUpTo: every way to share the pieces is tried of up to 64 ways to take some of them.
func TestMixedUpTo(t *testing.T) {
	for counts, want := range map[[2]int]bool{{7, 7}: true, {63, 0}: true, {64, 0}: false, {4, 12}: false, {12, 4}: false, {8, 7}: false, {31, 1}: true} {
		f := &Fabric{UsableWidth: inch(40), From: &FromPrecuts{Have: 1}}
		f.From.Usable = supplies.Size{Width: inch(20), Height: inch(18)}
		var list []demand
		for i, n := range counts {
			if n > 0 {
				list = append(list, demand{item: item{across: inch(float64(3 + i)), along: inch(3), count: n}, set: -1})
			}
		}
		if got := f.newMixing(list, f.From.sizes()) != nil; got != want {
			t.Errorf("%v pieces: every way is tried %v", counts, got)
		}
	}
}

// TestIsCut: something is cut from a fabric where there are strips, lengthwise pieces, pieces of a print or precuts that are used.
func TestIsCut(t *testing.T) {
	for _, c := range []struct {
		f    Fabric
		want bool
	}{
		{Fabric{}, false}, {Fabric{StripCount: 1}, true}, {Fabric{Blocks: make([]Block, 1)}, true}, {Fabric{FromPrint: make([]FromPrint, 1)}, true},
		{Fabric{From: &FromPrecuts{Have: 3}}, false}, {Fabric{From: &FromPrecuts{Have: 3, Used: 1}}, true},
	} {
		if got := c.f.IsCut(); got != c.want {
			t.Errorf("%+v: %v", c.f, got)
		}
	}
}

// TestGaps: what lies between strips that are lined up on a print, worked out by hand: 2 in are worth keeping, the widest come first, and
// between two times over the gap is what is left of whole repeats.
func TestGaps(t *testing.T) {
	in := measure.Inch
	strips := func(at ...measure.NM) (list []FussyStrip) {
		for i := 0; i < len(at); i += 2 {
			list = append(list, FussyStrip{Min: measure.Point{Y: at[i]}, Max: measure.Point{Y: at[i+1]}})
		}
		return list
	}
	for _, c := range []struct {
		name string
		from FromPrint
		want []gap
	}{
		{"none", FromPrint{Times: 1, AlongCut: 20 * in}, nil},
		{"one strip, once", FromPrint{Times: 1, AlongCut: 20 * in, Strips: strips(0, 3*in)}, nil},
		{"one strip, three times", FromPrint{Times: 3, AlongCut: 20 * in, Strips: strips(5*in, 8*in)}, []gap{{17 * in, 2}}},
		{"of any length", FromPrint{Times: 3, Strips: strips(5*in, 8*in, 12*in, 13*in)}, []gap{{4 * in, 3}}},
		{"several", FromPrint{Times: 2, AlongCut: 20 * in, Strips: strips(in, 3*in, 5*in, 8*in, 10*in-1, 11*in, 14*in, 16*in, 16*in, 18*in)}, []gap{{3 * in, 3}, {2 * in, 2}}},
		{"along the selvages", FromPrint{Times: 2, AlongCut: 20 * in, Lengthwise: true, Strips: strips(0, 3*in, 9*in, 12*in)}, nil},
	} {
		if got := c.from.gaps(); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// TestLengthsToJoin: strips that lengthwise pieces leave are joined where they are longer than a quarter of the cloth's width, and than what
// a join takes.
func TestLengthsToJoin(t *testing.T) {
	for _, c := range [][3]measure.NM{{inch(10), 0, inch(40)}, {inch(10) + 1, 0, inch(10) + 1}, {inch(25), inch(24), inch(25)}, {inch(25), inch(25), inch(40)}} {
		beside, loss, want := c[0], c[1], c[2]
		p := &planning{Plan: &Plan{Fabrics: []Fabric{{UsableWidth: inch(40), Blocks: []Block{{LeftWidthCut: beside}}}, {UsableWidth: inch(40)}}}}
		for m := range lastManner {
			which := m == besideBlock || m == nothingOver+besideBlock
			if got := p.lengthFor(0, m, loss); got != map[bool]measure.NM{true: want, false: inch(40)}[which] {
				t.Errorf("manner %d: strips of %v are joined, %v beside", m, inches(got), inches(beside))
			}
			if got := p.lengthFor(1, m, loss); got != inch(40) {
				t.Errorf("manner %d: strips of %v are joined, nothing lengthwise", m, inches(got))
			}
		}
	}
}

// TestEither: of manners that ask for the same strips the one with fewer tight chains stands, in the place of the first.
func TestEither(t *testing.T) {
	strips := func(along measure.NM, lines ...int) []demand {
		return []demand{{item: item{across: inch(3), along: along, count: 2}, lines: lines, set: -1, use: ForJoining}}
	}
	loose, scant, short := []Chain{{Times: 2}}, []Chain{{Times: 2, Scant: true}, {Times: 3}}, []Chain{{Times: 3, Short: true}}
	list := either(nil, joining{list: strips(inch(40), 1), chains: scant})
	for _, c := range []struct {
		now   joining
		want  int // how many stand then
		tight int // of the first
	}{
		{joining{list: strips(inch(40), 1), chains: short}, 1, 2}, {joining{list: strips(inch(40), 1, 2), chains: loose}, 2, 2}, {joining{list: strips(inch(39), 1), chains: loose}, 3, 2},
		{joining{list: strips(inch(40), 1), chains: scant[:1]}, 3, 2}, {joining{list: strips(inch(40), 1), chains: loose}, 3, 0}, {joining{list: strips(inch(40), 1), chains: scant}, 3, 0},
	} {
		if list = either(list, c.now); len(list) != c.want || list[0].tight() != c.tight {
			t.Errorf("%+v: %d stand, the first with %d tight chains", c.now, len(list), list[0].tight())
		}
	}
	if got := (&joining{chains: slices.Concat(scant, short, []Chain{{Times: 4, Scant: true, Short: true}})}).tight(); got != 9 {
		t.Errorf("%d chains are tight", got)
	}
	other := strips(inch(40), 1)
	other[0].use = ForBinding
	if sameDemand(other[0], strips(inch(40), 1)[0]) {
		t.Error("strips for another use are the same")
	}
}

// TestAlongBound: no length of fabric is shorter than its longest strip, with what a strip of wedges takes at its ends.
func TestAlongBound(t *testing.T) {
	f := &Fabric{along: []lengths.Want{{Along: inch(9), Extra: inch(3), Count: 1}, {Along: inch(11), Count: 2}, {Along: inch(50), Count: 0}}}
	if got := f.alongBound(); got != inch(12) {
		t.Errorf("%v, want 12", inches(got))
	}
	if got := (&Fabric{}).alongBound(); got != 0 {
		t.Errorf("%v of nothing", got)
	}
}

// TestPivotWithoutGain: a way that takes nothing of what the basis gives does not enter it.
func TestPivotWithoutGain(t *testing.T) {
	p := &packing{length: inch(40), items: []item{{across: inch(3), along: inch(5), count: 4}, {across: inch(2), along: inch(7), count: 9}}}
	r, _ := p.relaxed(p.needs(), byCloth)
	before := fmt.Sprint(r.ways, r.often)
	if r.pivot(way{inch(3), 1, []int{0, 0}}) || fmt.Sprint(r.ways, r.often) != before {
		t.Error("an empty way enters the basis")
	}
}

// TestLeastOfWhatIsLeft: of the items that are left those as wide as any of them, laid end to end, take whole strips of that width at the least:
// each width is counted by itself here, all items that are as wide anew.
func TestLeastOfWhatIsLeft(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 21))
	for n := range 400 {
		p := smallPacking(r, 7)
		f := &searching{packing: p, left: make([]int, len(p.items))}
		for i := range f.left {
			f.left[i] = r.IntN(p.items[i].count + 2)
		}
		lead := 0
		for lead < len(f.left)-1 && f.left[lead] == 0 {
			lead++
		}
		cloth, strips := measure.NM(0), 0
		for i := lead; i < len(f.left); i++ {
			wide := p.items[i].across
			if i > lead && p.items[i-1].across == wide {
				continue
			}
			narrower := measure.NM(0)
			for _, other := range p.items {
				if other.across < wide {
					narrower = max(narrower, other.across)
				}
			}
			whole := 0
			for as := lead; as <= i || as < len(f.left) && p.items[as].across == wide; as++ { // what is wider needs its strips whatever is narrower
				length, inRows := measure.NM(0), measure.NM(0)
				for k := lead; k < len(f.left) && p.items[k].across >= p.items[as].across; k++ {
					one := measure.NM(f.left[k]) * p.items[k].along
					for cut := 0; cut < f.left[k]; cut += f.most(k, f.length, 1) {
						one += p.items[k].extra
					}
					length, inRows = length+one, inRows+one/measure.NM(f.rows(k, p.items[lead].across))
				}
				for whole*int(f.length) < int(inRows) {
					whole++
				}
				for strips*int(f.length) < int(length) {
					strips++
				}
			}
			cloth += measure.NM(whole) * (wide - narrower)
		}
		if c, s := f.least(lead); c != cloth || s != strips {
			t.Fatalf("problem %d: %v of %v take %d and %d strips at the least, expected %d and %d", n, f.left, p.items, c, s, cloth, strips)
		}
	}
}
