package lengths

import (
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"eighthturn/internal/measure"
)

// layAnew lays strips by trying: strip after strip as the package says, and for each new length every one from the shortest on.
func layAnew(c Cloth, wants []Want) (list []Length) {
	var whole, others []int
	for i, w := range wants {
		if w.Whole {
			whole = append(whole, i)
		} else {
			others = append(others, i)
		}
	}
	slices.SortStableFunc(whole, func(a, b int) int { // the longest first, of those as long the widest
		if v, w := wants[a], wants[b]; v.Along+v.Extra != w.Along+w.Extra {
			return int(w.Along + w.Extra - v.Along - v.Extra)
		}
		return int(wants[b].Across - wants[a].Across)
	})
	slices.SortStableFunc(others, func(a, b int) int { return int(wants[b].Across - wants[a].Across) })
	put := func(n, want, pieces int) {
		w, at := wants[want], measure.NM(0)
		for _, s := range list[n].Strips {
			at += wants[s.Want].Across
		}
		list[n].Strips = append(list[n].Strips, Strip{Want: want, From: at, Long: measure.NM(pieces)*w.Along + w.Extra, Pieces: pieces})
		list[n].Beside = c.Usable - at - w.Across
	}
	for _, i := range whole {
		for range wants[i].Count {
			n := 0
			for n < len(list) && (list[n].Beside < wants[i].Across || c.Most > 0 && len(list[n].Strips) == c.Most) {
				n++
			}
			if n == len(list) {
				list = append(list, Length{Long: wants[i].Along + wants[i].Extra, Beside: c.Usable})
			}
			put(n, i, 1)
		}
	}
	left := map[int]int{}
	for _, i := range others {
		left[i] = wants[i].Count
	}
	fill := func(n int) {
		for _, i := range others {
			for left[i] > 0 && list[n].Beside >= wants[i].Across {
				pieces := 0
				for pieces < left[i] && measure.NM(pieces+1)*wants[i].Along+wants[i].Extra <= list[n].Long {
					pieces++
				}
				if pieces == 0 {
					break
				}
				put(n, i, pieces)
				left[i] -= pieces
			}
		}
	}
	for n := range list {
		fill(n)
	}
	for {
		least, most := measure.NM(0), measure.NM(0)
		for i, n := range left {
			if n > 0 {
				least, most = max(least, wants[i].Along+wants[i].Extra), max(most, measure.NM(n)*wants[i].Along+wants[i].Extra)
			}
		}
		if most == 0 {
			return list
		}
		long := least
		for long < most && !enough(c, wants, left, long) {
			long++
		}
		list = append(list, Length{Long: min(long, max(least, c.Longest)), Beside: c.Usable})
		last := len(list) - 1
		fill(last)
		list[last].Long = 0
		for _, s := range list[last].Strips {
			list[last].Long = max(list[last].Long, s.Long)
		}
	}
}

// enough says whether strips of a length give all that is left, side by side.
func enough(c Cloth, wants []Want, left map[int]int, long measure.NM) bool {
	across := measure.NM(0)
	for i, n := range left {
		for n > 0 {
			across += wants[i].Across
			n -= int((long - wants[i].Extra) / wants[i].Along)
		}
	}
	return across <= c.Usable
}

// TestLaidAsSaid: strips lie where laying them by the package's words puts them: whole ones by their length, each in the first length that
// has room; others beside them, the widest first; and on lengths that are no longer than they need be.
func TestLaidAsSaid(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 3))
	for n := range 600 {
		c, wants := invented(r)
		if n%3 == 0 { // of one width or length, so that the order of the layout tells
			for i := range wants {
				wants[i].Across, wants[i].Along = wants[0].Across, wants[0].Along
			}
		}
		if got, want := Lay(c, wants), layAnew(c, wants); !reflect.DeepEqual(got, want) {
			t.Fatalf("case %d, %+v, %+v:\n%+v, expected\n%+v", n, c, wants, got, want)
		}
	}
}

// TestUsualLengths: strips of several pieces are cut from 2 yards or 1.8 meters, and those of a border 2 in or 5 cm longer.
func TestUsualLengths(t *testing.T) {
	for units, want := range map[measure.System][2]measure.NM{measure.Inches: {2 * measure.Yard, 2 * measure.Inch}, measure.Centimetres: {1800 * measure.Millimetre, 50 * measure.Millimetre}} {
		if got := [2]measure.NM{Longest(units), Longer(units)}; got != want {
			t.Errorf("%v, expected %v", got, want)
		}
	}
}
