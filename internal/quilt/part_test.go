package quilt_test

import (
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
