package layout

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
)

// grown is a row of letters grown by a way to a length.
func grown(letters string, w Way, count int) string {
	a := axisOf(letters)
	a.Way = w
	var b strings.Builder
	for _, p := range a.Places(count) {
		b.WriteByte(letters[p])
	}
	return b.String()
}

func axisOf(letters string) Axis {
	return newAxis(len(letters), len(letters), func(i int) string { return letters[i : i+1] })
}

func TestGrowing(t *testing.T) {
	for _, c := range []struct {
		letters string
		first   Way
		least   int
		count   int
		want    string
	}{
		{"aaaaa", Way{0, 5, 1}, 1, 8, "aaaaaaaa"},
		{"abbbba", Way{1, 5, 1}, 3, 8, "abbbbbba"},
		{"abbbba", Way{1, 5, 1}, 3, 3, "aba"},
		{"ababa", Way{0, 5, 2}, 3, 9, "ababababa"},
		{"abab", Way{0, 4, 2}, 2, 6, "ababab"},
		{"01232345", Way{2, 6, 2}, 6, 10, "0123232345"},
		{"0110220", Way{0, 7, 6}, 7, 13, "0110220110220"},
		{"abc", Way{0, 3, 3}, 3, 9, "abcabcabc"},
		{"a", Way{0, 1, 1}, 1, 4, "aaaa"},
	} {
		a := axisOf(c.letters)
		a.Way = a.ways(false)[0]
		if a.Way != c.first || a.Least() != c.least {
			t.Errorf("%s grows by %+v, at the least %d; want %+v, %d", c.letters, a.Way, a.Least(), c.first, c.least)
		}
		if got := grown(c.letters, c.first, c.count); got != c.want || !a.Allows(c.count) {
			t.Errorf("%s grows to %s, want %s", c.letters, got, c.want)
		}
	}
}

// Whatever grows: the frame stays, a stretch keeps its period, and what has the layout's own length is the layout.
func TestGrowingLaws(t *testing.T) {
	for _, letters := range []string{"a", "ab", "aba", "abba", "abcabc", "aabbaabbaa", "xababay", "xyzzyx", "abcdefgh", "aaaaaaaab"} {
		a := axisOf(letters)
		for _, w := range a.ways(false) {
			a.Way = w
			if got := grown(letters, w, len(letters)); got != letters {
				t.Errorf("%s by %+v of its own length is %s", letters, w, got)
			}
			for count := 1; count < 40; count++ {
				if !a.Allows(count) {
					continue
				}
				got := grown(letters, w, count)
				if !strings.HasPrefix(got, letters[:w.Start]) || !strings.HasSuffix(got, letters[w.End:]) {
					t.Errorf("%s by %+v: the frame of %s is another", letters, w, got)
				}
				inner := axisOf(got[w.Start : count-len(letters)+w.End])
				if !slices.Equal(inner.IDs[w.Period:], inner.IDs[:len(inner.IDs)-w.Period]) {
					t.Errorf("%s by %+v: %s has lost its period", letters, w, got)
				}
			}
		}
	}
}

// A table of webs grows by whole pairs, so that web centres stay web centres.
func TestGrowingWithTable(t *testing.T) {
	a := axisOf("abbbba")
	list := a.ways(true)
	if !slices.Contains(list, Way{1, 5, 2}) {
		t.Errorf("with a table it grows by %+v", list)
	}
	for _, w := range list {
		if w.Period%2 != 0 {
			t.Errorf("with a table it grows by %d", w.Period)
		}
	}
	for _, letters := range []string{"ab", "aab", "abc"} { // what comes back begins with the quilt's edge, where no corner has a web
		if a := axisOf(letters); len(a.ways(true)) != 0 {
			t.Errorf("%s with a table grows by %+v, but has no corner between two periods", letters, a.ways(true))
		}
	}
}

// TestLongestStretch: of all stretches that come back with a period the longest is found, the first of those as long; tried one by one.
func TestLongestStretch(t *testing.T) {
	rng := rand.New(rand.NewPCG(31, 33))
	for range 400 {
		letters := make([]byte, 1+rng.IntN(11))
		for i := range letters {
			letters[i] = "abc"[rng.IntN(1+rng.IntN(3))]
		}
		a := axisOf(string(letters))
		for period := 1; period <= len(letters); period++ {
			want := Way{Period: period}
			for start := range letters {
				for end := start + period; end <= len(letters); end++ {
					if string(letters[start:end-period]) == string(letters[start+period:end]) && end-start > want.End-want.Start {
						want.Start, want.End = start, end
					}
				}
			}
			if got := a.longest(period); got != want {
				t.Errorf("%s has the stretch %+v, expected %+v", letters, got, want)
			}
		}
		if err := lawWays(&a, letters); err != nil {
			t.Errorf("%s: %v", letters, err)
		}
	}
}

// lawWays says that an axis has one to three ways, shorter periods first, none of which is another's with a longer period, each of a
// stretch that comes back at least once and takes half of the axis, or of all of it but its last, or of all of it.
func lawWays(a *Axis, letters []byte) error {
	n := len(letters)
	list := a.ways(false)
	if len(list) < 1 || len(list) > 3 {
		return fmt.Errorf("%d ways", len(list))
	}
	var all []Way
	for period := 1; period <= n/2; period++ {
		if w := a.longest(period); 2*(w.End-w.Start) >= n && w.End-w.Start >= 2*period {
			all = append(all, w)
		}
	}
	if n > 2 && letters[0] == letters[n-1] {
		all = append(all, Way{0, n, n - 1})
	}
	var want []Way
	for _, w := range append(all, Way{0, n, n}) {
		covered := false
		for _, k := range want {
			covered = covered || w.Period%k.Period == 0 && k.Start <= w.Start && w.End <= k.End
		}
		if !covered && len(want) < 3 {
			want = append(want, w)
		}
	}
	if !slices.Equal(list, want) {
		return fmt.Errorf("the ways are %+v, expected %+v", list, want)
	}
	for _, w := range list {
		a.Way = w
		if err := lawCounts(a); err != nil {
			return fmt.Errorf("%+v: %w", w, err)
		}
	}
	return nil
}

// lawCounts says that an axis may have as many blocks as it has, and whole periods more or less, as long as one is left; and that of
// another count the nearest ones on both sides are told.
func lawCounts(a *Axis) error {
	n, w := len(a.IDs), a.Way
	may := map[int]bool{}
	for count := n; count <= 4*n+50; count += w.Period {
		may[count] = true
	}
	for count := n; n-count <= w.End-w.Start-w.Period; count -= w.Period {
		may[count] = true
	}
	least := n
	for count := range may {
		least = min(least, count)
	}
	if a.Least() != least {
		return fmt.Errorf("at least %d, expected %d", a.Least(), least)
	}
	for count := range 3*n + 2 {
		if a.Allows(count) != may[count] {
			return fmt.Errorf("%d blocks are allowed: %v", count, a.Allows(count))
		}
		if may[count] {
			continue
		}
		var want []int
		for below := count; below >= least; below-- {
			if may[below] {
				want = append(want, below)
				break
			}
		}
		above := count
		for !may[above] {
			above++
		}
		if got := a.Nearest(count); !slices.Equal(got, append(want, above)) {
			return fmt.Errorf("nearest to %d are %v, expected %v", count, got, append(want, above))
		}
	}
	return nil
}

// TestWhatCannotGrow has the count that it has.
func TestWhatCannotGrow(t *testing.T) {
	a := axisOf("abc")
	if !a.Way.Fixed() || !a.Allows(3) || a.Allows(2) || a.Allows(4) || a.Least() != 3 || !slices.Equal(a.Nearest(7), []int{3}) {
		t.Errorf("three blocks without a way: at least %d, near 7 %v", a.Least(), a.Nearest(7))
	}
}
