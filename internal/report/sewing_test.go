package report

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/samples"
)

// sewnLayouts are the samples and invented layouts, by name.
func sewnLayouts() map[string]string {
	texts := map[string]string{}
	for _, s := range samples.All() {
		texts[s.Name] = s.Text
	}
	for seed := range uint64(40) {
		texts[fmt.Sprint("invented ", seed)] = invent.Layout(seed)
	}
	return texts
}

func sewerOf(t *testing.T, text string) *sewer {
	t.Helper()
	return newSewer(&Plans{Top: lay.Top(t, text)})
}

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
	for seed := range 500 {
		var cells []int
		for n, x := 0, uint32(seed*2654435761+1); n < 1+seed%20; n++ {
			x = x*1664525 + 1013904223
			cells = append(cells, int(x>>8)%520)
		}
		text := cellPlaces(append(cells, cells...), 13)
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
func turnsAmiss(s *sewer, said func(b *sewing.Block, c *sewing.FabricVariant, turns int) string) []string {
	var wrong []string
	for i := range s.Blocks {
		b := &s.Blocks[i]
		for n := range b.Variants {
			c := &b.Variants[n]
			texts := map[string]int{}
			named := map[int]bool{}
			for _, p := range s.places(b, c) {
				maps.Copy(named, setOf(p.cells))
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
				wrong = append(wrong, cornerAmiss(s, turnedBlock{b, c, at, text})...)
			}
		}
	}
	return wrong
}

// turnedBlock is a block of a variant in its place, and what is said of its turn there.
type turnedBlock struct {
	b    *sewing.Block
	c    *sewing.FabricVariant
	at   sewing.Placed
	text string
}

// cornerAmiss looks at the corner of a cell at which something is said to lie.
func cornerAmiss(s *sewer, p turnedBlock) []string {
	what, where, ok := strings.Cut(strings.TrimPrefix(p.text, "with the "), " at the ")
	corners := []string{"upper left", "upper right", "lower right", "lower left"}
	corner := slices.IndexFunc(corners, func(name string) bool { return strings.HasPrefix(where, name) })
	if !ok || corner < 0 {
		return nil
	}
	var wrong []string
	for piece, patch := range p.at.Patches {
		for _, q := range s.top.Patches[patch].Outline {
			if s.spot(p.at.Cell, q) != "the "+corners[corner]+" corner" {
				continue
			}
			if name := s.pieceName(p.b, p.c, piece); !strings.Contains(what, name) {
				wrong = append(wrong, fmt.Sprintf("%s, cell %d: %q, but a %s lies there", p.b.Label, p.at.Cell, p.text, name))
			}
		}
	}
	return wrong
}

// TestTurnsAreSeen: see turnsAmiss; turns that go the other way round are noticed.
func TestTurnsAreSeen(t *testing.T) {
	caught := 0
	for name, s := range sewers() {
		if wrong := turnsAmiss(s, s.turn); len(wrong) > 0 {
			t.Fatalf("%s: %q", name, wrong)
		}
		caught += len(turnsAmiss(s, func(b *sewing.Block, c *sewing.FabricVariant, turns int) string { return s.turn(b, c, -turns&3) }))
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
		s := sewerOf(t, text)
		if len(s.Assembly.Loose) == 0 {
			t.Fatalf("%s: no part is loose", name)
		}
		seen := map[int]bool{}
		for n := range s.Assembly.Loose {
			cells := s.LooseCells(n)
			if len(cells) == 0 || !maps.Equal(cellsIn(s.looseText(n), s.Columns), setOf(cells)) {
				t.Errorf("%s: %v: %q", name, cells, s.looseText(n))
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

// TestColumnSeams: at both ends of every slanted seam of a column the sharp corner leads the blunt one, and by as much, as is told.
func TestColumnSeams(t *testing.T) {
	s := sewerOf(t, "strip 4\nfabric a #112233\nfabric b #eeeeee\nblock T tumblers pieces a b line 6\ngrid\n T T\n T T\n T T\n")
	b := &s.Blocks[0]
	text := s.columnSeam(&b.Steps[0])[0].String()
	for _, j := range b.Steps[0].Joins {
		for _, e := range j.Ends {
			if sharp := e.Degrees[1] < e.Degrees[0]; e.LeadBlunt == 0 || sharp != (e.LeadBlunt > 0) || !strings.Contains(text, "the sharp corner of one piece extend "+s.offset(e.LeadBlunt)+" past") {
				t.Errorf("corners of %v degrees, the second leads by %d: %s", e.Degrees, e.LeadBlunt, text)
			}
		}
	}
	if !strings.Contains(text, "a generous 3/16 in") {
		t.Error(text)
	}
}
