package quilt_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/quilttest/laws"
	"eighthturn/layout"
)

// lay lays out a layout that must be valid.
func lay(t testing.TB, text string) *quilt.Top {
	t.Helper()
	d, _, faults := layout.Read(text)
	if d == nil {
		t.Fatalf("%+v in\n%s", faults, text)
	}
	return quilt.Lay(d)
}

// hold tells which law a layout's top breaks.
func hold(t *testing.T, name, text string) {
	t.Helper()
	d, _, _ := layout.Read(text)
	if d == nil {
		return
	}
	if err := laws.Check(quilt.Lay(d)); err != nil {
		t.Errorf("%s: %v\n%s", name, err, text)
	}
}

// TestLawsOfInvented holds all laws on invented layouts.
func TestLawsOfInvented(t *testing.T) {
	for seed := range uint64(judges.Of(120, 400)) {
		hold(t, fmt.Sprintf("seed %d", seed), invent.Layout(seed))
	}
}

// TestLawsOfMutants holds all laws on what remains valid of layouts with words changed.
func TestLawsOfMutants(t *testing.T) {
	valid := 0
	for seed := range uint64(judges.Of(240, 900)) {
		text := invent.Mutant(seed)
		d, _, _ := layout.Read(text)
		if d == nil {
			continue
		}
		valid++
		if err := laws.Check(quilt.Lay(d)); err != nil {
			t.Errorf("seed %d: %v\n%s", seed, err, text)
		}
	}
	if valid < judges.Of(50, 200) {
		t.Errorf("only %d layouts with words changed are valid", valid)
	}
}

// TestLawsOfSamples holds all laws on the layouts that come with the project.
func TestLawsOfSamples(t *testing.T) {
	files, err := filepath.Glob("../../samples/*.quilt")
	if err != nil {
		t.Fatal(err)
	}
	if len(files) == 0 {
		t.Fatal("there are no samples")
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if err := laws.Check(lay(t, string(text))); err != nil {
			t.Errorf("%s: %v", file, err)
		}
	}
}

// TestLawsOfAnySide holds all laws on one quilt of all kinds in sides of any number of
// nanometres, even halves of which are odd.
func TestLawsOfAnySide(t *testing.T) {
	rng := rand.New(rand.NewPCG(47, 53))
	for range 80 {
		side := 7 + rng.IntN(900)
		hold(t, "any side", fmt.Sprintf(`side %d.%06d mm
seam 0.5 mm
fabric a #123
fabric b #dde
strip-set s a 1.3 mm b rest a 1.6 mm b 1.2 mm
block W web wedges s turned s kites b
block S star wedges a b kites b
block F floating wedges s background b
block T floating-star wedges reversed s kites a background b
block R ring wedges s turned s corners a
block P plain piece b
block H halves pieces a b
block C tumblers pieces a b about %d.%06d mm
grid
  W R W F C
  R T P W C
  S W R S C
  F R W T H:se
border %d.%06d mm a
`, side, rng.IntN(1_000_000), side/2+rng.IntN(side)+1, rng.IntN(1_000_000), 1+rng.IntN(80), rng.IntN(1_000_000)))
	}
}

// TestColumnsOfTwoLengths: pieces of twice the lean, in columns of two lengths side by side
// that end in the same middle, meet corner to corner, to the nanometre.
func TestColumnsOfTwoLengths(t *testing.T) {
	for _, side := range []string{"4 3/4", "5.123457", "3", "9.999999"} {
		hold(t, side, `seam 3/16
side `+side+`
fabric a #123
block T tumblers pieces a line 7.5
grid
 T .
 T T
 T T
 T .
`)
	}
	hold(t, "two lengths", `seam 3/16
side 4 3/4
fabric plum #393253
fabric ink #9C1581
block d-1 tumblers pieces plum line 7 1/2
grid
 d-1 d-1 d-1 d-1
 d-1 d-1 .   d-1
 .   d-1 d-1 d-1
 d-1 d-1 d-1 d-1
 d-1 d-1 .   d-1
 d-1 d-1 d-1 .
 .   .   d-1 d-1
 d-1 d-1 d-1 d-1
 d-1 d-1 d-1 .
border 1 1/2 ink
border 3 1/2 ink corners plum
`)
}

// TestColumnsLieInTheirCells: a piece of a column is counted to the cell that its middle lies in, however long pieces are.
func TestColumnsLieInTheirCells(t *testing.T) {
	for _, length := range []string{"2 1/2", "3", "4", "5 1/2", "7", "11"} {
		top := lay(t, "side 4\nfabric a #123\nfabric b #dde\nblock C tumblers pieces a b about "+length+"\nblock P plain piece a\ngrid\n C P C C\n C P C C\n C C C C\n C C C C\n C C P C\n P C P C\n")
		for i := range top.Patches {
			p := &top.Patches[i]
			if top.Cells[p.Cell].Kind != "tumblers" {
				continue
			}
			middle := (p.Outline[0].Y + p.Outline[1].Y + p.Outline[2].Y + p.Outline[3].Y) / 4
			if r := top.CellRect(int(p.Cell)); middle < r.Min.Y || middle >= r.Max.Y || p.Outline[0].X != r.Min.X {
				t.Errorf("about %s: the middle of piece %d lies at %d, its cell from %d to %d", length, i, middle, r.Min.Y, r.Max.Y)
			}
		}
	}
}

// TestSameTwice: a layout gives the same top each time.
func TestSameTwice(t *testing.T) {
	for seed := range uint64(40) {
		d, _, _ := layout.Read(invent.Layout(seed))
		if d == nil {
			continue
		}
		if one, two := wholly(quilt.Lay(d)), wholly(quilt.Lay(d)); one != two {
			t.Errorf("seed %d gives two tops", seed)
		}
	}
}

// wholly is all that a top and those of its sizes hold.
func wholly(top *quilt.Top) string {
	var text string
	for i := range top.Sizes {
		text += top.Sizes[i].Name + wholly(top.Sizes[i].Top(nil))
	}
	top.Sizes = nil
	return text + fmt.Sprint(*top)
}

// TestTurnedTop: a quilt whose every part is the same upside down and left to right has a
// top that is the same upside down: each patch turned by half a turn is a patch.
func TestTurnedTop(t *testing.T) {
	top := lay(t, `side 6 1/8
fabric a #123
fabric b #dde
strip-set s a 1 b rest a 1
block R ring wedges s corners a
block W web wedges s kites b
grid
  R W
  W R
border 2 b
`)
	seen := map[string]bool{}
	for _, p := range top.Patches {
		seen[fmt.Sprint(p.Shape, p.Outline)] = true
	}
	for i, p := range top.Patches {
		turned := make([]measure.Point, len(p.Outline))
		for j, at := range p.Outline {
			turned[j] = measure.Point{X: top.Outer.Max.X - at.X, Y: top.Outer.Max.Y - at.Y}
		}
		found := false
		for first := range turned { // a strip or a square may begin with any corner
			found = found || seen[fmt.Sprint(p.Shape, append(append([]measure.Point{}, turned[first:]...), turned[:first]...))]
		}
		if !found {
			t.Errorf("patch %d, a %s, has no fellow across the middle: %v", i, p.Shape, p.Outline)
		}
	}
}
