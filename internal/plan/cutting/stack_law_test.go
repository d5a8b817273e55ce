package cutting

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/judges"
)

// Ends of strips that are cut into narrower strips, one above the other.

// stackedBest is the least cloth of all ways to put pieces into strips whose ends may be cut into narrower strips.
func stackedBest(list []demand, length measure.NM) measure.NM {
	var pieces []int
	for i := range list {
		for range list[i].count {
			pieces = append(pieces, i)
		}
	}
	known := map[string]measure.NM{}
	takes := func(some []int) measure.NM { // the strip's width, or too much
		slices.Sort(some)
		key := fmt.Sprint(some)
		if w, ok := known[key]; ok {
			return w
		}
		width := measure.NM(0)
		for _, i := range some {
			width = max(width, list[i].across)
		}
		var rest, all []demand
		counts := map[int]int{}
		for _, i := range some {
			counts[i]++
		}
		room := length
		for i := range list {
			d := list[i]
			if d.count = counts[i]; d.count > 0 {
				all = append(all, d)
			}
			switch {
			case d.count == 0:
			case d.across == width:
				room -= measure.NM(d.count)*d.along + d.extra
			default:
				rest = append(rest, d)
			}
		}
		for i := range rest {
			if rest[i].along+rest[i].extra > room {
				room = -1
			}
		}
		known[key] = width
		if !slices.ContainsFunc(all, func(d demand) bool { return d.along+d.extra > length }) {
			if cloth, _ := exhausted(&together(all, length).packing); cloth <= width { // with like ones in rows
				return width
			}
		}
		if room < 0 {
			known[key] = 1 << 50
		} else if len(rest) > 0 {
			if cloth, _ := exhausted(&together(rest, room).packing); cloth > width {
				known[key] = 1 << 50
			}
		}
		return known[key]
	}
	best := measure.NM(1 << 60)
	var strips [][]int
	var put func(n int)
	put = func(n int) {
		if n == len(pieces) {
			cloth := measure.NM(0)
			for _, s := range strips {
				if cloth += takes(slices.Clone(s)); cloth >= best {
					return
				}
			}
			best = cloth
			return
		}
		for i := range strips {
			strips[i] = append(strips[i], pieces[n])
			put(n + 1)
			strips[i] = strips[i][:len(strips[i])-1]
		}
		strips = append(strips, []int{pieces[n]})
		put(n + 1)
		strips = strips[:len(strips)-1]
	}
	put(0)
	return best
}

// TestStackedAgainstEverySearch: on thousands of small problems a plan with ends cut lengthwise takes no more cloth than one without,
// and never less than the best of all; nearly always it is the best.
func TestStackedAgainstEverySearch(t *testing.T) {
	r := rand.New(rand.NewPCG(35, 40))
	problems, best, saved := judges.Of(1500, 5000), 0, 0
	for n := range problems {
		half := func(least, most int) measure.NM { return measure.NM(least+r.IntN(most-least+1)) * measure.Inch / 2 }
		var list []demand
		for left := 2 + r.IntN(5); left > 0; {
			d := demand{item: item{across: half(4, 20), along: half(10, 60), count: 1 + r.IntN(min(left, 2)), stacks: r.IntN(2) == 0}, set: -1}
			if r.IntN(4) == 0 {
				d.extra, d.nests, d.stacks = half(1, 6), true, false
			}
			left -= d.count
			list = append(list, d)
		}
		without := &Fabric{UsableWidth: 40 * measure.Inch}
		without.lay(slices.Clone(list))
		with := &Fabric{UsableWidth: 40 * measure.Inch, stacks: true}
		with.lay(slices.Clone(list))
		least := stackedBest(list, with.UsableWidth)
		if with.LengthCut > without.LengthCut || with.LengthCut < least {
			t.Fatalf("problem %d: %v of cloth, %v without, %v at the least: %v", n, inches(with.LengthCut), inches(without.LengthCut), inches(least), list)
		}
		if err := wrongEnds(with, list); err != nil {
			t.Fatalf("problem %d: %v\n%v", n, err, list)
		}
		if with.LengthCut == least {
			best++
		}
		if with.LengthCut < without.LengthCut {
			saved++
		}
	}
	t.Logf("of %d problems %d are the best, and %d take less cloth than without", problems, best, saved)
	if best*100 < problems*95 || saved < problems/50 {
		t.Errorf("of %d problems only %d are the best, and %d take less cloth than without", problems, best, saved)
	}
}

// wrongEnds says where a fabric's ends hold more than they can, cloth is added up wrongly, or pieces are not given.
func wrongEnds(f *Fabric, list []demand) error {
	across := make([]measure.NM, len(f.Ends))
	ends := make([]int, len(f.Ends))
	cloth := measure.NM(0)
	given, wanted := map[[3]measure.NM]int{}, map[[3]measure.NM]int{}
	for _, d := range list {
		wanted[[3]measure.NM{d.across, d.along, d.extra}] += d.count
	}
	for _, s := range f.Strips {
		if s.InBlock != -1 || s.OnSheet != -1 || s.OnPrint {
			return fmt.Errorf("a strip lies elsewhere than on yardage: %+v", s)
		}
		used := s.EndLeftCut
		for _, c := range s.Cuts {
			used += c.Length()
			if c.Use == ForEnd {
				if e := &f.Ends[s.End]; e.LengthCut != c.AlongCut || e.WidthCut != s.WidthCut {
					return fmt.Errorf("an end of %v by %v is %v", inches(c.AlongCut), inches(s.WidthCut), *e)
				}
				ends[s.End] += s.Times
				continue
			}
			key := [3]measure.NM{c.AcrossCut, c.AlongCut, 0}
			if c.Nests {
				for k := range wanted {
					if k[2] > 0 && k[0] == c.AcrossCut && measure.NM(c.Units)*k[1]+k[2] == c.AlongCut {
						key = k
					}
				}
			}
			given[key] += c.Units * s.Times
		}
		if used != s.LengthCut || s.EndLeftCut < 0 {
			return fmt.Errorf("a strip of %v is cut into %v", inches(s.LengthCut), inches(used))
		}
		if s.OnEnd >= 0 {
			if across[s.OnEnd] += s.WidthCut; s.LengthCut != f.Ends[s.OnEnd].LengthCut || s.Times != f.Ends[s.OnEnd].Times {
				return fmt.Errorf("a strip of %v on an end of %v", inches(s.LengthCut), inches(f.Ends[s.OnEnd].LengthCut))
			}
			continue
		}
		cloth += measure.NM(s.Times) * s.WidthCut
	}
	for i, e := range f.Ends {
		if across[i] == 0 {
			return fmt.Errorf("nothing lies on end %d", i)
		}
		if across[i]+e.LeftWidthCut != e.WidthCut || e.LeftWidthCut < 0 || ends[i] != e.Times {
			return fmt.Errorf("end %d: strips of %v in %v, %d of %d", i, inches(across[i]), inches(e.WidthCut), ends[i], e.Times)
		}
	}
	if cloth != f.LengthCut {
		return fmt.Errorf("%v of cloth is %v", inches(cloth), inches(f.LengthCut))
	}
	for key, n := range wanted {
		if given[key] != n {
			return fmt.Errorf("%d of %v are wanted, %d given", n, key, given[key])
		}
	}
	return nil
}

// Two heights that lie one above the other behind a third: 35 inches, and 40 where every length of strip is cut into like pieces.
func TestTwoHeightsInOneStrip(t *testing.T) {
	piece := func(across, along float64, count int) demand {
		return demand{item: item{across: inch(across), along: inch(along), count: count}, set: -1}
	}
	list := []demand{piece(7, 25, 5), piece(4.5, 15, 5), piece(2.5, 15, 4)}
	for stacks, want := range map[bool]measure.NM{false: inch(40), true: inch(35)} {
		f := &Fabric{UsableWidth: inch(40), stacks: stacks}
		f.lay(slices.Clone(list))
		if err := wrongEnds(f, list); f.LengthCut != want || err != nil {
			t.Errorf("one above the other %v: %v in, want %v; %v", stacks, inches(f.LengthCut), inches(want), err)
		}
	}
}

// TestOpenedByHand: of two strips whose ends are opened for what one end holds, the other is whole again; and the ends, areas and free parts of
// strips are as counted: 25 in of a strip of 40 leave an end of 15.
func TestOpenedByHand(t *testing.T) {
	made := func() *stack {
		return &stack{
			packing:  &packing{items: []item{{across: inch(7), along: inch(25), count: 2}, {across: inch(3), along: inch(10), extra: inch(1), count: 2}}, length: inch(40)},
			patterns: []pattern{{inch(7), []int{1, 0}, 1}, {inch(7), []int{1, 0}, 2}, {inch(3), []int{0, 2}, 1}},
		}
	}
	k := made()
	for i, want := range []struct {
		end  float64
		free float64
	}{{15, 7 * 15}, {15, 7 * 15}, {19, 3 * 20}} {
		if end, free := k.endOf(i), k.free(i)/float64(measure.Inch)/float64(measure.Inch); end != inch(want.end) || free < want.free-1e-6 || free > want.free+1e-6 {
			t.Errorf("strip %d has an end of %v and %v free, expected %v", i, inches(end), free, want)
		}
	}
	if k.shortest() != inch(11) {
		t.Errorf("the shortest piece takes %v", inches(k.shortest()))
	}
	if !k.into(2, []int{0, 1}) {
		t.Fatal("two pieces of 3 by 10 in do not go into an end of 7 by 15 in")
	}
	got := fmt.Sprint(k.patterns, k.opened)
	want := fmt.Sprint([]pattern{{inch(7), []int{1, 0}, 0}, {inch(7), []int{1, 0}, 1}, {inch(3), []int{0, 2}, 0}, {inch(7), []int{1, 0}, 1}},
		[]opened{{inch(7), []int{1, 0}, inch(15), []pattern{{inch(3), []int{0, 1}, 1}, {inch(3), []int{0, 1}, 1}}}})
	if got != want {
		t.Errorf("opened: %s, expected %s", got, want)
	}
	k = made()
	before := fmt.Sprint(k.patterns, k.opened)
	k.items[1].along = inch(14.5) // with what an end takes more than it is
	if k.into(2, []int{0, 1}) || fmt.Sprint(k.patterns, k.opened) != before {
		t.Errorf("opened for what is too long: %v", k)
	}
}
