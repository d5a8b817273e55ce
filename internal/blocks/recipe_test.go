package blocks

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
)

// dot is a corner of the unit square as numbers.
type dot struct{ x, y float64 }

func dotOf(p Point) dot {
	k := 1 / math.Sqrt2
	at := [5]float64{0, 1 - k, 0.5, k, 1}
	return dot{at[p.X], at[p.Y]}
}

// bit is a straight part of an edge that two pieces share.
type bit struct{ from, to dot }

// sharedBits is where edges of one piece lie on edges of another.
func sharedBits(a, b Piece) []bit {
	var list []bit
	for i := range a.Outline {
		for j := range b.Outline {
			p, q := dotOf(a.Outline[i]), dotOf(a.Outline[(i+1)%len(a.Outline)])
			r, s := dotOf(b.Outline[(j+1)%len(b.Outline)]), dotOf(b.Outline[j])
			length := math.Hypot(q.x-p.x, q.y-p.y)
			ux, uy := (q.x-p.x)/length, (q.y-p.y)/length
			off := func(d dot) float64 { return math.Abs(ux*(d.y-p.y) - uy*(d.x-p.x)) }
			along := func(d dot) float64 { return ux*(d.x-p.x) + uy*(d.y-p.y) }
			from, to := max(0, along(r)), min(length, along(s))
			if off(r) < 1e-9 && off(s) < 1e-9 && along(s) > along(r) && to-from > 1e-9 {
				list = append(list, bit{dot{p.x + ux*from, p.y + uy*from}, dot{p.x + ux*to, p.y + uy*to}})
			}
		}
	}
	return list
}

// checkRecipe is the law of recipes: every piece is joined, and once; each seam is one
// straight stretch without a gap; the last join has every piece; each names a way to press.
func checkRecipe(k *Kind) error {
	joins, steps := k.Recipe.Joins()
	used := map[Part]bool{}
	for n, j := range joins {
		for _, part := range []Part{j.A, j.B} {
			if used[part] {
				return fmt.Errorf("join %d: part %d is joined twice", n, part)
			}
			used[part] = true
			if p, piece := part.Piece(); piece && p >= len(k.Pieces) || !piece && part.Join() >= n {
				return fmt.Errorf("join %d: there is no part %d yet", n, part)
			}
		}
		if j.Press < 0 || j.Press >= len(k.Recipe.Pressing) {
			return fmt.Errorf("join %d: no way to press", n)
		}
		if err := straight(k, j); err != nil {
			return fmt.Errorf("join %d of step %q: %w", n, k.Recipe.Steps[steps[n]].Name, err)
		}
	}
	if len(k.Pieces) < 2 {
		return nil
	}
	if len(joins) != len(k.Pieces)-1 {
		return fmt.Errorf("%d joins for %d pieces", len(joins), len(k.Pieces))
	}
	all := k.Recipe.PiecesOf(Made(len(joins) - 1))
	slices.Sort(all)
	if len(slices.Compact(all)) != len(k.Pieces) {
		return fmt.Errorf("the last join has not every piece")
	}
	return nil
}

// straight says what is wrong with a join's seam: it must lie on one line, without gaps.
func straight(k *Kind, j Join) error {
	var bits []bit
	for _, a := range k.Recipe.PiecesOf(j.A) {
		for _, b := range k.Recipe.PiecesOf(j.B) {
			bits = append(bits, sharedBits(k.Pieces[a], k.Pieces[b])...)
		}
	}
	if len(bits) == 0 {
		return fmt.Errorf("the parts do not touch")
	}
	first := bits[0]
	length := math.Hypot(first.to.x-first.from.x, first.to.y-first.from.y)
	ux, uy := (first.to.x-first.from.x)/length, (first.to.y-first.from.y)/length
	sum, least, most := 0.0, math.Inf(1), math.Inf(-1)
	for _, b := range bits {
		for _, d := range []dot{b.from, b.to} {
			if math.Abs(ux*(d.y-first.from.y)-uy*(d.x-first.from.x)) > 1e-9 {
				return fmt.Errorf("the seam has a bend")
			}
			at := ux*(d.x-first.from.x) + uy*(d.y-first.from.y)
			least, most = min(least, at), max(most, at)
		}
		sum += math.Hypot(b.to.x-b.from.x, b.to.y-b.from.y)
	}
	if math.Abs(most-least-sum) > 1e-9 {
		return fmt.Errorf("the seam has a gap")
	}
	return nil
}

func TestRecipes(t *testing.T) {
	for _, k := range Kinds() {
		if err := checkRecipe(k); err != nil {
			t.Errorf("%s: %v", k.Name, err)
		}
		for _, s := range k.Recipe.Steps {
			if s.Name == "" || !strings.HasSuffix(s.Do, ".") || s.Check == "" || strings.HasSuffix(s.Check, ".") {
				t.Errorf("%s: step %q wants a name, what to do as sentences, and a check without a full stop", k.Name, s.Name)
			}
		}
		if k.Column && len(k.Recipe.Steps) == 0 {
			t.Errorf("%s: a column is sewn too", k.Name)
		}
	}
}

// Where allowances are said to turn round a point, each seam of that pressing has the point
// for an end or runs through it.
func TestRoundsAreMet(t *testing.T) {
	for _, k := range Kinds() {
		joins, _ := k.Recipe.Joins()
		for n, j := range joins {
			p := k.Recipe.Pressing[j.Press]
			if !p.Round {
				continue
			}
			meets := false
			for _, a := range k.Recipe.PiecesOf(j.A) {
				for _, b := range k.Recipe.PiecesOf(j.B) {
					for _, s := range sharedBits(k.Pieces[a], k.Pieces[b]) {
						meets = meets || s.from == dotOf(p.About) || s.to == dotOf(p.About)
					}
				}
			}
			if !meets {
				t.Errorf("%s: join %d does not meet the point that it turns round", k.Name, n)
			}
		}
	}
}

func TestRecipesCatches(t *testing.T) {
	one := func(k *Kind, joins ...Join) *Kind {
		k.Recipe.Steps = []Step{{Name: "all", Do: "Sew.", Check: "it", Joins: joins}}
		return k
	}
	around := []Join{{A: 1, B: 2}}
	for n := 3; n < 8; n++ {
		around = append(around, Join{A: Made(n - 3), B: Part(n)})
	}
	for name, k := range map[string]*Kind{
		"a piece that is left out":    one(halves()),
		"a piece that is sewn twice":  one(floating(), Join{A: 2, B: 0}, Join{A: 0, B: 1}, Join{A: Made(1), B: 3}),
		"a part that is not made yet": one(floating(), Join{A: Made(1), B: 0}, Join{A: 3, B: 1}, Join{A: Made(0), B: 2}),
		"parts that do not touch":     one(floating(), Join{A: 0, B: 3}, Join{A: 1, B: 2}, Join{A: Made(0), B: Made(1)}),
		"a bend":                      one(ring(), append(around, Join{A: Made(5), B: 0})...),
		"no way to press":             one(halves(), Join{A: 0, B: 1, Press: 3}),
	} {
		if checkRecipe(k) == nil {
			t.Errorf("%s is not caught", name)
		}
	}
}

// misnamed is what a step says of pieces by name that is not so: they are all those that its seams take of their role, and the others are
// the rest of it.
func misnamed(k *Kind) error {
	for _, s := range k.Recipe.Steps {
		sewn := map[int]bool{}
		for _, j := range s.Joins {
			for _, a := range k.Recipe.PiecesOf(j.A) {
				for _, b := range k.Recipe.PiecesOf(j.B) {
					if len(sharedBits(k.Pieces[a], k.Pieces[b])) > 0 {
						sewn[a], sewn[b] = true, true
					}
				}
			}
		}
		for _, n := range s.Named {
			var all, role []int
			all = append(append(all, n.Pieces...), n.Others...)
			slices.Sort(all)
			for i, p := range k.Pieces {
				if p.Role == k.Pieces[all[0]].Role {
					role = append(role, i)
				}
			}
			if !slices.Equal(all, role) {
				return fmt.Errorf("%q is said of the pieces %v, and not of %v", n.Words, n.Pieces, n.Others)
			}
			for _, i := range n.Pieces {
				if !sewn[i] {
					return fmt.Errorf("%q is said of piece %d, which the step does not sew", n.Words, i)
				}
			}
			if !strings.Contains(s.Do, n.Words) || strings.Count(n.By, "%s") != 1 {
				return fmt.Errorf("%q is not in the step, or %q has no place for a fabric", n.Words, n.By)
			}
		}
	}
	return nil
}

func TestNamedAreSewn(t *testing.T) {
	for _, k := range Kinds() {
		if err := misnamed(k); err != nil {
			t.Errorf("%s: %v", k.Name, err)
		}
	}
	for name, spoil := range map[string]func(n *Named){
		"a piece of another role": func(n *Named) { n.Pieces[0] = 5 },
		"one that is not sewn":    func(n *Named) { n.Pieces, n.Others = n.Others, n.Pieces },
		"one that is left out":    func(n *Named) { n.Others = n.Others[1:] },
		"words of another step":   func(n *Named) { n.Words = "the second wedge" },
	} {
		k := web()
		if spoil(&k.Recipe.Steps[0].Named[0]); misnamed(k) == nil {
			t.Errorf("%s goes through", name)
		}
	}
}
