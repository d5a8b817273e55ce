package cutting

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"eighthturn/internal/measure"
)

// Laws of words: a length rounded up is no shorter than it is and a step longer at the most, one rounded down no longer, and
// one that is neither is as long as it says or within half a hundredth.

// misread is a length written by what, and how far off it may be.
func misread(text string, nm measure.NM, units measure.System, least, most measure.NM) error {
	r, err := measure.Read(strings.TrimPrefix(text, "about "))
	if err != nil {
		return err
	}
	if off := r.In(units).NM() - nm; off < least || off > most {
		return fmt.Errorf("%q for %d is off by %d", text, nm, off)
	}
	return nil
}

func TestWordsOfLengths(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 3))
	for i := range 4000 {
		nm := measure.NM(rng.Int64N(int64(200 * measure.Inch)))
		if i%4 == 0 {
			nm = measure.Nearest(nm, measure.Inch/16)
		}
		for _, w := range []Words{{&Plan{Units: measure.Inches}}, {&Plan{Units: measure.Centimetres}}} {
			step, half := measure.Inch/8, measure.Inch/200
			if w.Units == measure.Centimetres {
				step, half = measure.Centimetre/10, measure.Centimetre/200
			}
			for _, err := range []error{
				misread(w.AtLeast(nm), nm, w.Units, -nearMark, step), misread(w.AtMost(nm), nm, w.Units, -step, nearMark),
				misread(w.Length(nm), nm, w.Units, -half, half),
			} {
				if err != nil {
					t.Fatal(err)
				}
			}
			if strings.Contains(w.AtLeast(nm), "about") || strings.HasPrefix(w.Length(nm), "about") == w.plain(nm) {
				t.Fatalf("%q and %q", w.AtLeast(nm), w.Length(nm))
			}
		}
	}
	w := Words{&Plan{Units: measure.Inches}}
	if misread(w.AtMost(inch(5.3)), inch(5.3), w.Units, 0, measure.Inch/8) == nil {
		t.Error("a length rounded down passes for one rounded up")
	}
}

// likeNames says which strip sets cannot be told apart by their names, or have a number that they do not need.
func likeNames(p *Plan, name func(int) string) error {
	seen := map[string]bool{}
	of := map[string]int{}
	for i := range p.Sets {
		of[p.Sets[i].Name]++
	}
	for i := range p.Sets {
		n := name(i)
		if seen[n] || of[p.Sets[i].Name] == 1 && n != p.Sets[i].Name {
			return fmt.Errorf("strip set %d is called %q", i, n)
		}
		seen[n] = true
	}
	for i := range p.Lines {
		if l := &p.Lines[i]; l.Set >= 0 && l.Reversed && (Words{p}).Cloth(l) != "strip set "+name(l.Set)+", turned" {
			return fmt.Errorf("line %d is cut from %q", i, Words{p}.Cloth(l))
		}
	}
	return nil
}

func TestSetNames(t *testing.T) {
	numbered, turned := 0, 0
	for _, n := range everyTop(150) {
		p := usual(n)
		if err := likeNames(p, p.SetName); err != nil {
			t.Errorf("%s: %v", n.name, err)
		}
		for i := range p.Sets {
			if p.SetName(i) == p.Sets[i].Name {
				continue
			}
			numbered++
			if likeNames(p, func(i int) string { return p.Sets[i].Name }) == nil {
				t.Errorf("%s: two sets of one name are not noticed", n.name)
			}
		}
		for i := range p.Lines {
			if p.Lines[i].Reversed {
				turned++
			}
		}
	}
	if numbered == 0 || turned == 0 {
		t.Errorf("%d sets with numbers, %d lines of turned wedges", numbered, turned)
	}
}
