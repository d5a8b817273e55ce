package report

import (
	"fmt"
	"strings"
	"testing"

	"eighthturn/internal/measure"
)

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

// likeNames says which strip sets cannot be told apart by their names, or have a number that they do not need.
func likeNames(p *cuts, name func(int) string) error {
	seen := map[string]bool{}
	of := map[string]int{}
	for i := range p.Sets {
		of[p.Sets[i].Name]++
	}
	for i := range p.plans.Top.Dealt { // its sets have the numbers of the table that says how they are dealt
		of[p.plans.Top.CutFacts.Sets[p.plans.Top.Dealt[i].Set].Name] = 2
	}
	for i := range p.Sets {
		n := name(i)
		if seen[n] || of[p.Sets[i].Name] == 1 && n != p.Sets[i].Name {
			return fmt.Errorf("strip set %d is called %q", i, n)
		}
		seen[n] = true
	}
	for i := range p.Lines {
		if l := &p.Lines[i]; l.Set >= 0 && l.Reversed && p.cloth(l) != "strip set "+name(l.Set)+" reversed" {
			return fmt.Errorf("line %d is cut from %q", i, p.cloth(l))
		}
	}
	return nil
}

// alone says whether one strip set alone has a name.
func alone(p *cuts, name string) bool {
	n := 0
	for i := range p.Sets {
		if p.Sets[i].Name == name {
			n++
		}
	}
	return n == 1
}

func TestSetNames(t *testing.T) {
	numbered, turned := 0, 0
	for _, n := range usualPlans() {
		p := newCuts(n.Plans)
		if err := likeNames(p, p.SetName); err != nil {
			t.Errorf("%s: %v", n.name, err)
		}
		for i := range p.Sets {
			if p.SetName(i) == p.Sets[i].Name || alone(p, p.Sets[i].Name) {
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

// TestScantChains: the words of a chain say that next to nothing is left where that is so, and nowhere else.
func TestScantChains(t *testing.T) {
	scant, spare := 0, 0
	for _, n := range everyPlan() {
		c := newCuts(n.Plans)
		for i := range c.Fabrics {
			for k := range c.Fabrics[i].Chains {
				chain := &c.Fabrics[i].Chains[k]
				if said := strings.Contains(c.chainWords(chain), ": sew accurately, and measure"); said != chain.Scant {
					t.Errorf("%s: %s", n.name, c.chainWords(chain))
				}
				if chain.Scant {
					scant++
				} else {
					spare++
				}
			}
		}
	}
	if scant == 0 || spare == 0 {
		t.Errorf("%d chains with nothing to spare, %d with", scant, spare)
	}
}
