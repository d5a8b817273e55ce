package lengths

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"eighthturn/internal/measure"
)

// invented is cloth and what is wanted of it, in small whole numbers.
func invented(r *rand.Rand) (Cloth, []Want) {
	c := Cloth{Usable: measure.NM(10 + r.IntN(30)), Longest: measure.NM(20 + r.IntN(60)), Most: r.IntN(3)}
	wants := make([]Want, 1+r.IntN(4))
	for i := range wants {
		wants[i] = Want{Across: measure.NM(1 + r.IntN(9)), Along: measure.NM(1 + r.IntN(9)), Extra: measure.NM(r.IntN(3)), Count: r.IntN(40)}
		if r.IntN(3) == 0 {
			wants[i].Whole, wants[i].Along, wants[i].Count = true, measure.NM(10+r.IntN(40)), r.IntN(5)
		}
	}
	return c, wants
}

// broken says what is wrong with lengths; "" for nothing.
func broken(c Cloth, wants []Want, list []Length) string {
	given := make([]int, len(wants))
	for n, l := range list {
		at := measure.NM(0)
		for _, s := range l.Strips {
			w := &wants[s.Want]
			if s.From != at || s.Long != measure.NM(s.Pieces)*w.Along+w.Extra || s.Long > l.Long || w.Whole && s.Pieces != 1 {
				return fmt.Sprintf("length %d: %v", n, s)
			}
			at += w.Across
			given[s.Want] += s.Pieces
		}
		if l.Beside != c.Usable-at || l.Beside < 0 || len(l.Strips) == 0 {
			return fmt.Sprintf("length %d leaves %d", n, l.Beside)
		}
	}
	for i := range wants {
		if given[i] != wants[i].Count {
			return fmt.Sprintf("%d of %d pieces are given", given[i], wants[i].Count)
		}
	}
	return ""
}

// TestLengths: all pieces are given, by strips side by side within the cloth and their length.
func TestLengths(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for n := range 3000 {
		c, wants := invented(r)
		if why := broken(c, wants, Lay(c, wants)); why != "" {
			t.Fatalf("case %d, %v, %v: %s", n, c, wants, why)
		}
	}
	c, wants := Cloth{Usable: 40, Longest: 72}, []Want{{Across: 5, Along: 2, Extra: 1, Count: 90}}
	for name, harm := range map[string]func([]Length){
		"a piece fewer":     func(l []Length) { l[0].Strips[0].Pieces-- },
		"a strip elsewhere": func(l []Length) { l[0].Strips[1].From++ },
		"a shorter length":  func(l []Length) { l[0].Long-- },
		"a strip left out":  func(l []Length) { l[0].Strips = l[0].Strips[:3] },
	} {
		list := Lay(c, wants)
		if harm(list); broken(c, wants, list) == "" {
			t.Errorf("%s is not noticed", name)
		}
	}
}

// TestShortestLength: where all strips of pieces fit on one length, no shorter one holds them, whichever numbers of strips are tried.
func TestShortestLength(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 2))
	tried := 0
	for range 3000 {
		c, wants := invented(r)
		c.Longest = 1000
		wants = slices.DeleteFunc(wants, func(w Want) bool { return w.Whole || w.Count == 0 })
		list := Lay(c, wants)
		if len(list) != 1 {
			continue
		}
		tried++
		if best := shortest(wants, c.Usable); best != list[0].Long {
			t.Fatalf("%v, %v: %d long, %d would do", c, wants, list[0].Long, best)
		}
	}
	if tried < 1000 {
		t.Errorf("only %d cases", tried)
	}
}

// shortest tries every number of strips of each sort.
func shortest(wants []Want, room measure.NM) measure.NM {
	if len(wants) == 0 {
		return 0
	}
	best := measure.NM(-1)
	for strips := 1; measure.NM(strips)*wants[0].Across <= room; strips++ {
		long := measure.NM((wants[0].Count+strips-1)/strips)*wants[0].Along + wants[0].Extra
		rest := shortest(wants[1:], room-measure.NM(strips)*wants[0].Across)
		if whole := max(long, rest); rest >= 0 && (best < 0 || whole < best) {
			best = whole
		}
	}
	return best
}

// TestJudgePublished: lengthwise borders in one piece. Their fabric is as long as the longest as long as all four lie side by side on cloth
// 42 in wide, 9 1/2 in cut; of 12 in they do not, and two lengths are bought, 5 yd for 80 in and 10 in of each to be safe (quiltingboard.com,
// post 511807). Five strips of 6 1/2 by 60 in come from a length of 60 in of cloth 40 in wide (quiltingboard.com, topic 308444).
func TestJudgePublished(t *testing.T) {
	in := func(v float64) measure.NM { return measure.NM(v * float64(measure.Inch)) }
	for _, c := range []struct {
		usable, width, long float64
		count, lengths      int
	}{{42, 9.5, 80, 4, 1}, {42, 12, 80, 4, 2}, {40, 6.5, 60, 5, 1}} {
		list := Lay(Cloth{Usable: in(c.usable), Longest: in(72)}, []Want{{Across: in(c.width), Along: in(c.long), Count: c.count, Whole: true}})
		sum := measure.NM(0)
		for _, l := range list {
			sum += l.Long
		}
		if len(list) != c.lengths || sum != measure.NM(c.lengths)*in(c.long) {
			t.Errorf("%d strips of %g in: %v", c.count, c.width, list)
		}
		if c.width == 12 && sum+in(2*10) != 5*measure.Yard {
			t.Errorf("%d is bought", sum)
		}
	}
}
