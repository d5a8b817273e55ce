package cutting

import (
	"math/rand/v2"
	"slices"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/judges"
)

// How good plans are: against a search of everything where that can be done, against bounds where not.

// smallPacking is an invented problem of up to so many pieces.
func smallPacking(r *rand.Rand, most int) *packing {
	a := &alike{packing: packing{length: 40 * measure.Inch}}
	var list []demand
	for left := 1 + r.IntN(most); left > 0; {
		d := demand{item: item{
			across: measure.NM(4+r.IntN(20)) * measure.Inch / 2,
			along:  measure.NM(4+r.IntN(76)) * measure.Inch / 2,
			count:  1 + r.IntN(left),
		}}
		if r.IntN(4) == 0 {
			d.along = measure.NM(4+r.IntN(30)) * measure.Inch / 2
			d.extra, d.nests = measure.NM(1+r.IntN(6))*measure.Inch/2, true
		}
		if r.IntN(5) == 0 { // a third or a quarter of the strip, within a hair
			d.along = 40*measure.Inch/measure.NM(2+r.IntN(4)) + measure.NM(r.IntN(3)-1)
			d.extra, d.nests = 0, false
		}
		if d.stacks = !d.nests && r.IntN(2) == 0; d.stacks && r.IntN(2) == 0 {
			d.across = measure.NM(4+r.IntN(6)) * measure.Inch / 2
		}
		left -= d.count
		list = append(list, d)
	}
	*a = *together(list, a.length)
	return &a.packing
}

// exhausted is the least cloth, and with it the fewest strips, of all ways to put pieces into strips.
func exhausted(p *packing) (cloth measure.NM, strips int) {
	e := &exhausting{packing: p}
	for i := range p.items {
		for range p.items[i].count {
			e.pieces = append(e.pieces, i)
		}
	}
	e.cloth, e.strips = 1<<62, 1<<30
	e.put(0)
	return e.cloth, e.strips
}

type exhausting struct {
	*packing
	pieces []int   // the item of each
	bins   [][]int // the items in each strip
	cloth  measure.NM
	strips int
}

func (e *exhausting) put(n int) {
	if n == len(e.pieces) {
		var cloth measure.NM
		for _, bin := range e.bins {
			width := measure.NM(0)
			for _, i := range bin {
				width = max(width, e.items[i].across)
			}
			cloth += width
		}
		strips := 0
		for _, bin := range e.bins {
			strips += e.rowsOf(bin)
		}
		if cloth < e.cloth || cloth == e.cloth && strips < e.strips {
			e.cloth, e.strips = cloth, strips
		}
		return
	}
	for b := range e.bins {
		e.bins[b] = append(e.bins[b], e.pieces[n])
		if e.rowsOf(e.bins[b]) > 0 {
			e.put(n + 1)
		}
		e.bins[b] = e.bins[b][:len(e.bins[b])-1]
	}
	e.bins = append(e.bins, []int{e.pieces[n]})
	e.put(n + 1)
	e.bins = e.bins[:len(e.bins)-1]
}

// rowsOf is in how many rows a strip must be cut to hold what lies in it; 0 where it is too short whatever is done.
func (e *exhausting) rowsOf(bin []int) int {
	width := e.items[bin[0]].across // pieces are put down widest first
	for most := 1; most <= len(bin); most++ {
		var used measure.NM
		for at, i := range bin {
			t := &e.items[i]
			if !slices.Contains(bin[:at], i) {
				used += t.extra
			}
			above := 0 // like ones that lie before it
			for _, k := range bin[:at] {
				if k == i {
					above++
				}
			}
			if rows := min(most, int(width/t.across)); !t.stacks || rows < 2 || above%rows == 0 {
				used += t.along
			}
		}
		if used <= e.length {
			return most
		}
	}
	return 0
}

// TestAsGoodAsEverySearch: on some thousands of small problems the plan takes as little cloth, and as few strips, as the
// best of all ways to put the pieces into strips; and no bound lies above that.
func TestAsGoodAsEverySearch(t *testing.T) {
	problems, sizes := judges.Of(3000, 6000), 8
	r := rand.New(rand.NewPCG(45, 45))
	onBound := 0
	for n := range problems {
		if n%40 == 0 {
			sizes = 10
		} else {
			sizes = 8
		}
		p := smallPacking(r, sizes)
		cloth, strips := exhausted(p)
		s := p.pack()
		if s.cloth != cloth || s.strips != strips {
			t.Fatalf("problem %d: %d strips of %d, the best are %d of %d: %v", n, s.strips, s.cloth, strips, cloth, p.items)
		}
		if wrong := misfilled(p, s); wrong != "" {
			t.Fatalf("problem %d: %s", n, wrong)
		}
		for _, bound := range []func() (measure.NM, int){p.bound, p.sharpBound} {
			if c, k := bound(); c > cloth || k > strips {
				t.Fatalf("problem %d: a bound of %d strips and %d, but %d and %d will do: %v", n, k, c, strips, cloth, p.items)
			}
		}
		if k := p.fewestFor(cloth, 0); k > strips {
			t.Fatalf("problem %d: a bound of %d strips for %d of cloth, but %d will do: %v", n, k, cloth, strips, p.items)
		}
		if c, _ := p.sharpBound(); c == cloth {
			onBound++
		}
	}
	if onBound*10 < problems*9 {
		t.Errorf("in %d of %d problems the bound is reached", onBound, problems)
	}
}

// misfilled says where a solution does not hold what is wanted.
func misfilled(p *packing, s *solution) string {
	given := make([]int, len(p.items))
	var cloth measure.NM
	for _, f := range s.patterns {
		var used, width measure.NM
		for i, n := range f.counts {
			given[i] += n * f.times
			if n > 0 {
				lengths := n
				if t := &p.items[i]; t.stacks && f.width >= 2*t.across {
					rows := int(f.width / t.across)
					lengths = (n + rows - 1) / rows
				}
				used += measure.NM(lengths)*p.items[i].along + p.items[i].extra
				width = max(width, p.items[i].across)
			}
		}
		if used > p.length || width != f.width {
			return "a strip holds more than it can"
		}
		cloth += measure.NM(f.times) * f.width
	}
	for i := range p.items {
		if given[i] != p.items[i].count {
			return "not what is wanted"
		}
	}
	if cloth != s.cloth {
		return "the cloth is added up wrongly"
	}
	return ""
}

// TestEverySearchCatches: the first rule alone is not as good as every search, and the comparison shows it.
func TestEverySearchCatches(t *testing.T) {
	r := rand.New(rand.NewPCG(45, 45))
	worse := 0
	for range 500 {
		p := smallPacking(r, 7)
		cloth, strips := exhausted(p)
		if s := p.greedy(p.counts(), nil); s.cloth != cloth || s.strips != strips {
			worse++
		}
	}
	if worse == 0 {
		t.Error("a rule without search is as good as every search: the problems are too easy")
	}
	p := smallPacking(r, 7)
	s := p.pack()
	s.patterns[0].times++
	if misfilled(p, s) == "" {
		t.Error("a strip too many was not noticed")
	}
}

// TestFewestSets: no smaller number of strip sets gives enough wedges of both kinds.
func TestFewestSets(t *testing.T) {
	piece := &Piece{CutSize: blocks.CutSize{WideCut: inch(3.6478), NarrowCut: inch(0.3342)}}
	for per := 1; per <= 9; per++ {
		for a := range 25 {
			for b := range 25 {
				if a+b == 0 {
					continue
				}
				s := &StripSet{PerSet: per, LengthCut: nestedLength(per, piece), Wanted: [2]int{a, b}}
				s.run(piece, 1)
				if s.Given[0] < a || s.Given[1] < b {
					t.Fatalf("%d a set, %d and %d wanted: %v", per, a, b, s.Given)
				}
				whole, last := 0, 0
				for _, r := range s.Runs {
					whole += r.Sets
					last = r.Wedges
				}
				if n, m := minSets(per, a, b); n != whole || m != last {
					t.Fatalf("%d a set, %d and %d wanted: %d sets, the last of %d; %d, the last of %d will do", per, a, b, whole, last, n, m)
				}
			}
		}
	}
}

// minSets tries numbers of sets, and of wedges in the last, until every choice of the kinds cut first gives enough.
func minSets(per, a, b int) (sets, last int) {
	for sets := 1; ; sets++ {
		for last := 1; last <= per; last++ {
			for first := 0; first <= sets; first++ { // sets that begin with the first kind; in the last one either
				for lastFirst := range 2 {
					given := [2]int{}
					for set := range sets {
						n, way := per, which(set >= first)
						if set == sets-1 {
							n, way = last, lastFirst
						}
						given[way] += (n + 1) / 2
						given[1-way] += n / 2
					}
					if given[0] >= a && given[1] >= b {
						return sets, last
					}
				}
			}
		}
	}
}

// TestDistanceToBounds measures the plans of the samples and of the hundred layouts that were written down before the
// planner was. Where nothing is cut lengthwise, nine of ten fabrics are at the bound of strips and none more than one
// strip above it, but for one narrow cloth whose lengths do not go together. Where pieces lie in rows the plan takes less cloth
// than the best without rows, and no more strips than every plan without rows takes at the least.
func TestDistanceToBounds(t *testing.T) {
	for _, set := range []struct {
		name              string
		tops              []named
		cloth, lengthwise float64 // of what the bound says, per cent: no fabric takes more above it
	}{{"samples", sampleTops(), 3.8, 0}, {"the hundred", tops().hundred, 18, 20.3}} {
		var strips, cloth, lengthwise, oneRow []float64
		at, inRows := 0, 0
		for _, n := range set.tops {
			for _, f := range least(n).Fabrics {
				if f.LengthCut == 0 {
					continue
				}
				above := 100 * (float64(f.LengthCut)/float64(f.LengthBound) - 1)
				if len(f.Blocks) > 0 {
					lengthwise = append(lengthwise, above)
					continue
				}
				oneRow = append(oneRow, overInOneRow(f.laid.inOneRow()))
				over := f.StripRows - f.StripBound
				if f.StripRows > f.StripCount {
					inRows++
					flat := f.laid.inOneRow()
					_, fewest := flat.sharpBound()
					over = max(0, f.StripCount-fewest)
					if without := flat.pack().cloth; f.LengthCut >= without {
						t.Errorf("%s, %s: %d nm of cloth in rows, %d without", n.name, f.Name, f.LengthCut, without)
					}
				}
				strips = append(strips, float64(over))
				cloth = append(cloth, above)
				if over == 0 {
					at++
				}
			}
		}
		median := func(list []float64) float64 {
			if len(list) == 0 {
				return 0
			}
			slices.Sort(list)
			return list[len(list)/2]
		}
		if len(strips) < 3*len(set.tops) || inRows < 3 || len(lengthwise) == 0 {
			t.Errorf("%s: %d fabrics, %d of them with rows, %d with lengthwise borders: too few to judge by", set.name, len(strips), inRows, len(lengthwise))
		}
		if m, worst := median(cloth), slices.Max(cloth); m > 0 || worst > set.cloth {
			t.Errorf("%s: cloth above the bound: median %.1f %%, worst %.1f %%; expected 0 and %.1f at the most", set.name, m, worst, set.cloth)
		}
		if m, worst := median(lengthwise), slices.Max(append(lengthwise, 0)); m > 0 || worst > set.lengthwise {
			t.Errorf("%s, with lengthwise borders: cloth above the bound: median %.1f %%, worst %.1f %%; expected 0 and %.1f at the most", set.name, m, worst, set.lengthwise)
		}
		slices.Sort(strips)
		if over := slices.IndexFunc(strips, func(n float64) bool { return n > 1 }); at*10 < len(strips)*9 || over >= 0 && len(strips)-over > 1 {
			t.Errorf("%s: %d of %d fabrics are at the bound; %v", set.name, at, len(strips), strips[max(0, over):])
		}
		// Without rows every fabric, also those that the plan cuts in rows, is held to the same.
		slices.Sort(oneRow)
		if n := len(oneRow); oneRow[n*9/10] > 0 || n > 1 && oneRow[n-2] > 1 {
			t.Errorf("%s, without rows: %v", set.name, oneRow[n*9/10:])
		}
	}
}

// overInOneRow is how many strips a plan with nothing in rows takes above its bound.
func overInOneRow(flat *packing) float64 {
	s := flat.pack()
	_, strips := flat.sharpBound()
	return float64(s.strips - min(s.strips, flat.fewestFor(s.cloth, strips)))
}
