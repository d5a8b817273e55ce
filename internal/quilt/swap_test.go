package quilt_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/plan/fit"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/layout"
)

// ofCell are the fabrics of a cell's faces, piece by piece, with what piece each belongs to.
func ofCell(top *quilt.Top, cell int) (list []string) {
	c := top.Cells[cell]
	for _, p := range top.Patches[c.First : c.First+c.Count] {
		for _, f := range top.Faces[p.First : p.First+p.Count] {
			list = append(list, fmt.Sprint(p.Number, " ", top.Fabrics[f.Fabric].Name))
		}
	}
	return list
}

// TestSwap: two blocks trade what was dealt to them, piece by piece, however each is turned; what they share with a web stays.
func TestSwap(t *testing.T) {
	const text = `strip 4
fabric navy #1f3350
fabric rust #b5532a
fabric teal #2f7d83
fabric plum #4b2440
fabric cream #f4ead7
fabric sand #e0d0b0
scraps darks navy rust teal plum %s
scraps lights cream sand by block
block W web wedges darks kites lights
grid
  W W W W
  W W W W
  W W W W
`
	for _, by := range []string{"by piece", "by piece deal 1", "by piece deal 2", "by block", "by web"} {
		text := fmt.Sprintf(text, by)
		before, after := lay(t, text), lay(t, text+"swap row 1 column 1 with row 2 column 4\n")
		for cell := range before.Cells {
			want := ofCell(before, cell)
			if other, swapped := map[int]int{0: 7, 7: 0}[cell]; swapped {
				traded := ofCell(before, other)
				for i := range want {
					kite := strings.HasSuffix(want[i], "cream") || strings.HasSuffix(want[i], "sand")
					if by != "by web" || kite {
						want[i] = traded[i]
					}
				}
			}
			if got := ofCell(after, cell); !slices.Equal(got, want) {
				t.Errorf("%s: cell %d has %v, want %v", by, cell, got, want)
			}
		}
	}
	twice := lay(t, fmt.Sprintf(text, "by piece")+"swap row 1 column 1 with row 2 column 4\nswap row 2 column 4 with row 1 column 1\n")
	for i, f := range lay(t, fmt.Sprintf(text, "by piece")).Faces {
		if twice.Faces[i].Fabric != f.Fabric {
			t.Fatal("swapped there and back a block has other scraps")
		}
	}
}

// TestSwapsKeepTheDeal: whatever is swapped, all other blocks keep their scraps, of each fabric there are as many faces as before, and the
// seams between like fabrics are those that the pieces show.
func TestSwapsKeepTheDeal(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 41))
	made, warned := 0, 0
	for seed := range uint64(250) {
		text := invent.Layout(seed)
		before, _, _ := layout.Read(text)
		if before == nil || len(before.Pools) == 0 || len(before.Cells) < 2 {
			continue
		}
		a, b := rng.IntN(len(before.Cells)), rng.IntN(len(before.Cells))
		line := fmt.Sprintf("swap row %d column %d with row %d column %d", a/before.Columns+1, a%before.Columns+1, b/before.Columns+1, b%before.Columns+1)
		after, _, faults := layout.Read(strings.TrimRight(text, "\r\n") + "\n" + line + "\n")
		if after == nil {
			if !strings.Contains(fmt.Sprint(faults), "swap") && !strings.Contains(fmt.Sprint(faults), "no block at") {
				t.Errorf("%s is refused: %v", line, faults)
			}
			continue
		}
		made++
		one, other := quilt.Lay(before), quilt.Lay(after)
		counts := map[int32]int{}
		for i := range one.Faces {
			counts[one.Faces[i].Fabric]++
			counts[other.Faces[i].Fabric]--
			if cell := int(one.Patches[one.Faces[i].Patch].Cell); cell != a && cell != b && one.Faces[i].Fabric != other.Faces[i].Fabric {
				t.Fatalf("seed %d: %s changes cell %d", seed, line, cell)
			}
		}
		for fabric, n := range counts {
			if n != 0 {
				t.Errorf("seed %d: after %s there are %d faces less of %s", seed, line, n, one.Fabrics[fabric].Name)
			}
		}
		told := toldOfSwaps(other)
		if want := wantedOfSwap(one, other, [2]int{a, b}); !slices.Equal(told, want) {
			t.Errorf("seed %d, %s: told is %q, wanted %q", seed, line, told, want)
		}
		warned += len(told)
		for _, i := range other.Alike {
			if s := other.Seams[i]; other.Faces[s.A].Fabric != other.Faces[s.B].Fabric {
				t.Errorf("seed %d: seam %d joins two fabrics", seed, i)
			}
		}
	}
	if made < 15 || warned < 3 {
		t.Errorf("only %d swaps were made, with %d warnings", made, warned)
	}
}

// toldOfSwaps is what a top warns of its swaps.
func toldOfSwaps(top *quilt.Top) (list []string) {
	for _, w := range top.Warnings {
		if strings.HasPrefix(w.Message, "the swap puts") {
			list = append(list, w.Message)
		}
	}
	return list
}

// wantedOfSwap is what is to be told of one swap: along how many seams of its two blocks like fabrics meet that did not before, and where.
func wantedOfSwap(before, after *quilt.Top, cells [2]int) []string {
	count, first := 0, int32(-1)
	for _, i := range after.Alike {
		if slices.Contains(before.Alike, i) {
			continue
		}
		for _, face := range [2]int32{after.Seams[i].A, after.Seams[i].B} {
			if cell := int(after.Patches[after.Faces[face].Patch].Cell); cell == cells[0] || cell == cells[1] {
				if count++; count == 1 {
					first = face
				}
				break
			}
		}
	}
	if count == 0 {
		return nil
	}
	return []string{fmt.Sprintf("the swap puts two pieces of %s side by side at %s%s", after.Fabrics[after.Faces[first].Fabric].Name, placeOf(after, first), ofSeams(count))}
}

// TestSwapsBesideABorder: of several swaps each one is told of that puts like fabrics side by side, at its own place, also where it is a
// border that a block meets.
func TestSwapsBesideABorder(t *testing.T) {
	const text = "side 6\nfabric navy #1f3350\nfabric rust #b5532a\nfabric teal #2f7d83\nscraps darks navy rust teal\nblock P plain piece darks\ngrid\n  P P P\n  P P P\n  P P P\nborder 2 %s\n%s\nswap row 1 column 2 with row 2 column 2\n"
	tried := map[int]int{}
	for _, border := range []string{"navy", "teal"} {
		for _, other := range []string{"", "swap row 1 column 1 with row 3 column 3"} {
			for deal := range 4 {
				text := fmt.Sprintf(text, border, other)
				if deal > 0 {
					text = strings.Replace(text, "rust teal\n", fmt.Sprintf("rust teal deal %d\n", deal), 1)
				}
				one, after := lay(t, text[:strings.Index(text, "swap")]), lay(t, text)
				want := wantedOfSwap(one, after, [2]int{1, 4})
				if other != "" {
					want = append(wantedOfSwap(one, after, [2]int{0, 8}), want...)
				}
				if told := toldOfSwaps(after); !slices.Equal(told, want) {
					t.Errorf("border %s, deal %d, %q: told is %q, wanted %q", border, deal, other, told, want)
				}
				tried[len(want)]++
			}
		}
	}
	if tried[1] < 4 {
		t.Errorf("swaps were told of so often: %v", tried)
	}
}

// TestSwapsOfSizes: swaps are of the grid as it is written. A size with as many blocks keeps them; one with more or fewer has none, and the
// layout that is that size written out has none either.
func TestSwapsOfSizes(t *testing.T) {
	const text = `strip 4
fabric navy #1f3350
fabric rust #b5532a
fabric teal #2f7d83
fabric cream #f4ead7
scraps darks navy rust teal
block W web wedges darks kites cream
grid
  W W W W
  W W W W
border 2 navy
swap row 1 column 1 with row 2 column 4
swap row 1 column 2 with row 2 column 2
size bold border 4
size wide across 8
`
	design, _, faults := layout.Read(text)
	if design == nil {
		t.Fatal(faults)
	}
	for name, swaps := range map[string]int{"bold": 2, "wide": 0} {
		if got := len(design.InSize(name).Swaps); got != swaps {
			t.Errorf("the size %s has %d swaps, want %d", name, got, swaps)
		}
		out := fit.WrittenOut(text, name, nil)
		if got := strings.Count(out, "swap "); got != swaps {
			t.Errorf("the size %s written out has %d swaps, want %d:\n%s", name, got, swaps, out)
		}
		if written, _, faults := layout.Read(out); written == nil {
			t.Errorf("the size %s written out: %v", name, faults)
		}
	}
}
