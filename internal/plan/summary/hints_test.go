package summary

import (
	"fmt"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/quilt/orient"
	"eighthturn/layout"
)

func hasHint(s *Summary, about About) bool {
	for _, h := range s.Hints {
		if h.About == about {
			return true
		}
	}
	return false
}

// unclosable says whether a block of the design has both its centres on the quilt's edge, as the lattice finds it.
func unclosable(d *layout.Design) bool {
	g := orient.Grid{Columns: d.Columns, Rows: d.Rows, Cells: make([]orient.Cell, len(d.Cells))}
	for i, c := range d.Cells {
		g.Cells[i] = orient.Cell{Kind: d.Blocks[c.Block].Kind}
	}
	return len(orient.Lay(g).Unclosable) > 0
}

// Whether frames of blocks that point inwards close is judged by turning them; the hint must come just where they do not.
func TestEvenClosesEdges(t *testing.T) {
	for across := 2; across <= 7; across++ {
		for down := 2; down <= 7; down++ {
			d, top := laid(t, "strip 4", frame("F", across, down))
			if got, want := hasHint(Build(d, top), EvenClosesEdges), unclosable(d); got != want {
				t.Errorf("%d by %d: hint %v, blocks that cannot close %v", across, down, got, want)
			}
		}
	}
}

// Where a star centre is wanted and a web centre stands in the corner, even numbers do not help, so nothing is said.
func TestNoHintThatDoesNotHelp(t *testing.T) {
	for _, size := range [][2]int{{4, 4}, {5, 4}, {5, 5}} {
		d, top := laid(t, "strip 4", frame("S", size[0], size[1]))
		if !unclosable(d) {
			t.Errorf("%v: every block closes; this is no example", size)
		}
		if hasHint(Build(d, top), EvenClosesEdges) {
			t.Errorf("%v: even numbers are advised and do not help", size)
		}
	}
}

// Corners by sight: on a draughtboard they are alike just where both numbers are odd.
func TestOddMatchesCorners(t *testing.T) {
	for across := 2; across <= 5; across++ {
		for down := 2; down <= 5; down++ {
			rows := board("R", "Q", across, down)
			corners := map[byte]bool{}
			for _, row := range []string{rows[0], rows[down-1]} {
				corners[row[0]], corners[row[len(row)-1]] = true, true
			}
			if got, want := hasHint(of(t, "strip 4", rows), OddMatchesCorners), len(corners) == 2; got != want {
				t.Errorf("%d by %d: hint %v, corners differ %v", across, down, got, want)
			}
		}
	}
}

func TestNoHintWhereItDoesNotApply(t *testing.T) {
	for name, rows := range map[string][]string{
		"one ring":           {"R R", "R R"},
		"no draughtboard":    {"R R", "Q Q"},
		"a gap":              {"R Q", "Q ."},
		"one row":            {"R Q"},
		"webs alone":         {"W W W", "W W W", "W W W"},
		"floats not outside": {"W W W W W", "W W F W W", "W W W W W"},
		"even floats":        {"F F", "F F"},
	} {
		if s := of(t, "strip 4", rows); len(s.Hints) > 0 {
			t.Errorf("%s: %v", name, s.Hints)
		}
	}
}

func TestHintsNameTheirBlocks(t *testing.T) {
	s := of(t, "strip 4", board("R", "Q", 4, 3))
	if got, want := fmt.Sprint(s.Hints), "[{odd-matches-corners ring [R Q]}]"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	if _, known := blocks.Find(blocks.Kinds(), s.Hints[0].Kind); !known {
		t.Errorf("%q is no kind", s.Hints[0].Kind)
	}
}
