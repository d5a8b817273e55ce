package sewing_test

import (
	"fmt"
	"maps"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
)

// cellsIn reads the places that a text names: "rows 1 and 3, columns 2 to 5; row 4, column 1".
func cellsIn(text string, columns int) map[int]bool {
	found := map[int]bool{}
	for _, m := range regexp.MustCompile(`rows? ([0-9, toand]+?), columns? ([0-9, toand]+)`).FindAllStringSubmatch(text, -1) {
		for row := range numbersIn(m[1]) {
			for column := range numbersIn(m[2]) {
				found[(row-1)*columns+column-1] = true
			}
		}
	}
	return found
}

func numbersIn(text string) map[int]bool {
	found := map[int]bool{}
	for _, m := range regexp.MustCompile(`(\d+)(?: to (\d+))?`).FindAllStringSubmatch(text, -1) {
		first, _ := strconv.Atoi(m[1])
		last, err := strconv.Atoi(m[2])
		if err != nil {
			last = first
		}
		for n := first; n <= last; n++ {
			found[n] = true
		}
	}
	return found
}

func setOf(cells []int) map[int]bool {
	set := map[int]bool{}
	for _, n := range cells {
		set[n] = true
	}
	return set
}

// TestCellsAreNamed: what is read back from the places in words is the places, each once,
// whatever their order and however often they were given.
func TestCellsAreNamed(t *testing.T) {
	w := sewing.Words{Plan: &sewing.Plan{Columns: 13, Rows: 40}}
	for seed := range 500 {
		var cells []int
		for n, x := 0, uint32(seed*2654435761+1); n < 1+seed%60; n++ {
			x = x*1664525 + 1013904223
			cells = append(cells, int(x>>8)%520)
		}
		text := w.Cells(append(cells, cells...), 0)
		if got := cellsIn(text, 13); !maps.Equal(got, setOf(cells)) {
			t.Fatalf("%v: %q", cells, text)
		}
	}
	if maps.Equal(cellsIn("rows 1 to 3, column 2", 13), setOf([]int{1, 14})) {
		t.Error("a place too many was not noticed")
	}
}

// turnsAmiss is what is wrong with what a plan says about how blocks are turned: a piece that
// is said to lie at a corner of a cell must lie there in the top, no other turn of the
// variant may be told in the same words, and every cell must be named once.
func turnsAmiss(top *quilt.Top, p *sewing.Plan, said func(b *sewing.Block, c *sewing.FabricVariant, turns int) string) []string {
	w := sewing.Words{Plan: p}
	var wrong []string
	for i := range p.Blocks {
		b := &p.Blocks[i]
		for n := range b.Variants {
			c := &b.Variants[n]
			texts := map[string]int{}
			named := map[int]bool{}
			for _, s := range w.PlaceLines(b, c, 0) {
				maps.Copy(named, setOf(s.Cells))
			}
			for _, at := range c.Cells {
				text := said(b, c, at.Turns)
				if turns, ok := texts[text]; text != "" && ok && turns != at.Turns {
					wrong = append(wrong, fmt.Sprintf("%s: two turns are both %q", b.Label, text))
				}
				texts[text] = at.Turns
				if !named[at.Cell] {
					wrong = append(wrong, fmt.Sprintf("%s: cell %d is not named", b.Label, at.Cell))
				}
				wrong = append(wrong, cornerAmiss(top, w, placed{b, c, at, text})...)
			}
		}
	}
	return wrong
}

// placed is a block of a variant in its place, and what is said of its turn there.
type placed struct {
	b    *sewing.Block
	c    *sewing.FabricVariant
	at   sewing.Placed
	text string
}

// cornerAmiss looks at the corner of a cell at which something is said to lie.
func cornerAmiss(top *quilt.Top, w sewing.Words, p placed) []string {
	what, where, ok := strings.Cut(strings.TrimPrefix(p.text, "with the "), " at the ")
	corners := []string{"upper left", "upper right", "lower right", "lower left"}
	corner := slices.IndexFunc(corners, func(name string) bool { return strings.HasPrefix(where, name) })
	if !ok || corner < 0 {
		return nil
	}
	var wrong []string
	for piece, patch := range p.at.Patches {
		for _, q := range top.Patches[patch].Outline {
			if w.Place(p.at.Cell, q) != "the "+corners[corner]+" corner" {
				continue
			}
			cloth, turned := strings.CutSuffix(p.c.Cloths[piece], ", turned")
			if turned {
				cloth = "turned " + cloth
			}
			if name := cloth + " " + w.ShapeName(p.b, piece); !strings.Contains(what, name) {
				wrong = append(wrong, fmt.Sprintf("%s, cell %d: %q, but a %s lies there", p.b.Label, p.at.Cell, p.text, name))
			}
		}
	}
	return wrong
}

// TestTurnsAreSeen: see turnsAmiss; turns that go the other way round are noticed.
func TestTurnsAreSeen(t *testing.T) {
	caught := 0
	for name, text := range layouts() {
		top := topOf(t, text)
		p := planOf(top, sewing.Options{})
		w := sewing.Words{Plan: p}
		if wrong := turnsAmiss(top, p, w.TurnText); len(wrong) > 0 {
			t.Fatalf("%s: %q", name, wrong)
		}
		caught += len(turnsAmiss(top, p, func(b *sewing.Block, c *sewing.FabricVariant, turns int) string { return w.TurnText(b, c, -turns&3) }))
	}
	if caught == 0 {
		t.Error("turns that go the other way round were not noticed")
	}
}

// TestLooseParts: each part that hangs together with nothing else is named by its cells, once.
func TestLooseParts(t *testing.T) {
	for name, text := range map[string]string{
		"four parts": "side 6\nfabric a #112233\nblock P plain piece a\ngrid\n P . P .\n . . . .\n P . P P\n",
		"columns":    "side 6\nfabric a #112233\nfabric b #eeeeee\nblock T tumblers pieces a b about 4\ngrid\n T . T\n T . T\n",
	} {
		p := planOf(topOf(t, text), sewing.Options{})
		w := sewing.Words{Plan: p}
		if len(p.Assembly.Loose) == 0 {
			t.Fatalf("%s: no part is loose", name)
		}
		seen := map[int]bool{}
		for n := range p.Assembly.Loose {
			cells := w.LooseCells(n)
			if len(cells) == 0 || !maps.Equal(cellsIn(w.LooseLine(n), p.Columns), setOf(cells)) {
				t.Errorf("%s: %v: %q", name, cells, w.LooseLine(n))
			}
			for _, cell := range cells {
				if seen[cell] {
					t.Errorf("%s: cell %d is named twice", name, cell)
				}
				seen[cell] = true
			}
		}
	}
}

// TestTurnedWedges: a wedge whose tip lies on the other edge of its strip set is named by the
// set and ", turned", and nothing else names it.
func TestTurnedWedges(t *testing.T) {
	p := planOf(topOf(t, "strip 4\nfabric a #112233\nfabric b #eeeeee\nstrip-set shore a 1 3/4 b rest\nblock W web wedges turned shore kites b\nwebs shore / turned shore\ngrid\n W W\n W W\n"), sewing.Options{})
	names := map[string]bool{}
	for _, c := range p.Blocks[0].Variants {
		maps.Copy(names, func() map[string]bool {
			set := map[string]bool{}
			for _, name := range c.Cloths {
				set[name] = true
			}
			return set
		}())
	}
	if want := map[string]bool{"shore": true, "shore, turned": true, "b": true}; !maps.Equal(names, want) {
		t.Errorf("%v", names)
	}
	if got := sewing.ClothCounts([]string{"shore", "shore, turned", "b", "b"}); got != "1 shore; 1 shore, turned; and 2 b" {
		t.Errorf("%q", got)
	}
}

// TestJudgeForms: a rectangle's area is across by down, a triangle's half the square of its
// short sides, and every other unit is smaller than the rectangle into which it fits, as the
// library measures areas.
func TestJudgeForms(t *testing.T) {
	seen := map[sewing.Form]int{}
	for name, text := range layouts() {
		top := topOf(t, text)
		p := planOf(top, sewing.Options{})
		for _, b := range p.Blocks {
			for _, s := range b.Steps {
				if b.Column || len(s.Joins) == 0 {
					continue
				}
				j := s.Joins[len(s.Joins)-1]
				_, g := unionOf(t, top, p.Patches(b.Variants[0].Cells[0].Cell, slices.Concat(j.A, j.B)))
				part := g.Area() / (inches(s.Finished.Across.NM) * inches(s.Finished.Down.NM))
				seen[s.Form]++
				right := map[sewing.Form]bool{sewing.Rectangle: math.Abs(part-1) < 1e-6, sewing.Triangle: math.Abs(part-0.5) < 1e-6 && s.Finished.Across == s.Finished.Down, sewing.Slanted: part < 0.999}
				if !right[s.Form] {
					t.Fatalf("%s: %s of %s is no %s: it fills %.6f of its size", name, s.Name, b.Kind, s.Form, part)
				}
			}
		}
	}
	if len(seen) != 3 {
		t.Errorf("not every form was seen: %v", seen)
	}
}
