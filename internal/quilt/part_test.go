package quilt_test

import (
	"fmt"
	"slices"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/quilttest/laws"
	layouts "eighthturn/internal/quilttest/lay"
	"eighthturn/layout"
)

// partLaws: what is taken out of a top keeps the laws of a top, and every face is of the fabric that the whole shows there.
func partLaws(t *testing.T, name string, whole, part *quilt.Top) {
	t.Helper()
	if err := laws.Check(part); err != nil {
		t.Errorf("%s: %v", name, err)
	}
	if len(part.Dealt)+len(part.Sizes)+len(part.Colorways)+len(part.Warnings)+len(part.Alike) > 0 {
		t.Errorf("%s: it names what the whole has: %v %v", name, part.Dealt, part.Alike)
	}
	if part.CutOf != nil && len(part.CutOf) != len(part.Patches) || whole.CutOf != nil && len(whole.CutOf) != len(whole.Patches) {
		t.Errorf("%s: %d places of cloth for %d pieces, %d for %d of the whole", name, len(part.CutOf), len(part.Patches), len(whole.CutOf), len(whole.Patches))
	}
	cuts := func(top *quilt.Top, cell int) (list []string) {
		for i := range top.Cells[cell].Count {
			list = append(list, fmt.Sprint(top.CutOfPatch(top.Cells[cell].First+i)))
		}
		return list
	}
	if at := cellsOfPart(whole, part); whole.CutOf != nil && !slices.ContainsFunc(at, func(first int) bool {
		for cell := range part.Cells {
			if !slices.Equal(cuts(part, cell), cuts(whole, first+cell%part.Columns+cell/part.Columns*whole.Columns)) {
				return false
			}
		}
		return true
	}) {
		t.Errorf("%s: its pieces are cut from other places than those of %v", name, at)
	}
	type look struct {
		fabric int32
		area   float64
	}
	shown := map[look]int{}
	for i := range whole.Faces {
		shown[look{whole.Faces[i].Fabric, quilt.Area(whole.Faces[i].Outline)}]++
	}
	for i := range part.Faces {
		if l := (look{part.Faces[i].Fabric, quilt.Area(part.Faces[i].Outline)}); shown[l] == 0 {
			t.Errorf("%s: face %d is none of the whole", name, i)
		} else {
			shown[l]--
		}
	}
}

// cellsOfPart are the cells of a whole at which a part may have been taken out: those with the same blocks.
func cellsOfPart(whole, part *quilt.Top) (list []int) {
	for first := range whole.Cells {
		same := first%whole.Columns+part.Columns <= whole.Columns && first/whole.Columns+part.Rows <= whole.Rows
		for cell := 0; same && cell < len(part.Cells); cell++ {
			a, b := whole.Cells[first+cell%part.Columns+cell/part.Columns*whole.Columns], part.Cells[cell]
			same = a.Label == b.Label && a.Turns == b.Turns && a.Place == b.Place
		}
		if same {
			list = append(list, first)
		}
	}
	return list
}

// TestPartsKeepTheirCuts: pieces of a part are cut from the places of their cloths that those of the whole are.
func TestPartsKeepTheirCuts(t *testing.T) {
	top := layouts.Top(t, "side 8\nfabric sand #e8d9b0\nfabric awning stripes navy 3/4 #c9503c 1/2\nmotif rose awning across 3/8 down 0 pointing 30 mirrored\nmotif bud awning across 1/4 down 1\n"+
		"block R ring wedges rose bud corners sand\nblock W web wedges rose kites bud\nblock P plain piece bud\ngrid\n  R P R\n  P W W\n  R W W\n")
	for _, label := range []string{"R", "W", "P"} {
		part, err := top.Block(label)
		if err != nil {
			t.Fatal(err)
		}
		partLaws(t, label, top, part)
	}
	part, err := top.Center("web")
	if err != nil {
		t.Fatal(err)
	}
	partLaws(t, "web", top, part)
}

// TestPartsKeepTheLaws on every label and figure of samples and of invented layouts.
func TestPartsKeepTheLaws(t *testing.T) {
	webs, stars := 0, 0
	for _, top := range append(layouts.Samples(), layouts.Invented(700, judges.Of(12, 150), 3000)...) {
		known := map[string]bool{}
		for i := range top.Cells {
			label := top.Cells[i].Label
			if label == "" || known[label] {
				continue
			}
			known[label] = true
			part, err := top.Block(label)
			if err != nil {
				t.Fatal(err)
			}
			partLaws(t, top.Name+" "+label, top.Top, part)
		}
		for n, figure := range layout.Centers() {
			part, err := top.Center(figure)
			if err != nil {
				continue
			}
			partLaws(t, top.Name+" "+figure, top.Top, part)
			if part.Columns != 2 || part.Rows != 2 {
				t.Errorf("%s: a %s of %d by %d blocks", top.Name, figure, part.Columns, part.Rows)
			}
			webs, stars = webs+1-n, stars+n
		}
		if _, err := top.Block("no-such"); err == nil {
			t.Error("a block that is not there is found")
		}
	}
	if webs < 3 || stars < 3 {
		t.Errorf("only %d webs and %d stars were found", webs, stars)
	}
}

// TestCentersAreThoseThatTheDesignKnows: where the design counts a whole center, one is found, and else none.
func TestCentersAreThoseThatTheDesignKnows(t *testing.T) {
	for _, c := range []struct {
		grid      string
		web, star bool
	}{
		{"grid\n W W\n W W\n", true, false},
		{"top-left star\ngrid\n W W W\n W W W\n W W W\n", true, true},
		{"grid\n W\n", false, false},
		{"grid\n W W\n W W\nsash 1 red\n", false, false},
	} {
		top := layouts.Top(t, "side 5\nfabric red #b5532a\nfabric sea #204050\nblock W web wedges red kites sea\n"+c.grid)
		for figure, want := range map[string]bool{"web": c.web, "star": c.star} {
			if _, err := top.Center(figure); (err == nil) != want {
				t.Errorf("%q: %s: %v", c.grid, figure, err)
			}
		}
	}
}
