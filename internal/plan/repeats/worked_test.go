package repeats

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/golden"
)

// worked are cloths and pieces: small ones, many sorts of pieces, stripes, strips along the selvages, marks of a ruler, pieces that are too
// large, few steps.
func worked() (list []fittingCase) {
	r := rand.New(rand.NewPCG(12, 21))
	for n := range 24 {
		c, pieces := smallCase(r)
		switch n % 6 {
		case 1:
			c.Mark = measure.Inch / 8
		case 2:
			c.Print.Across = 0
		case 3:
			c.Print.Along = 0
		case 4:
			c.Lengthwise = true
		case 5:
			pieces = append(pieces, Piece{shaped(0, 0, 30, 0, 30, 2, 0, 2), 2})
		}
		list = append(list, fittingCase{c, pieces, 20_000 / (1 + 19*(n/6%2))})
	}
	many := Cloth{Print: Print{Across: inch(6), Along: inch(4)}, UsableWidth: inch(40), Mark: measure.Inch / 8}
	var pieces []Piece
	for range 9 {
		pieces = append(pieces, Piece{invented(r), 3 + r.IntN(20)})
	}
	for _, steps := range []int{300, 3_000, 60_000} {
		list = append(list, fittingCase{many, pieces, steps})
	}
	long := Cloth{Print: Print{Across: inch(5), Along: inch(7)}, UsableWidth: inch(40)}
	return append(list, fittingCase{long, []Piece{{shaped(0, 0, 3, 0, 3, 3, 0, 3), 6000}, {shaped(1, 1, 3, 1, 3, 2), 4000}}, 50_000}, fittingCase{long, []Piece{{shaped(0, 0, 40, 0, 40, 1, 0, 1), 2}, {shaped(0, 0, 40.1, 0, 40.1, 1, 0, 1), 2}}, 500})
}

type fittingCase struct {
	Cloth
	pieces []Piece
	steps  int
}

// TestWorkedFittings: where pieces are cut, with the steps that were taken, of many small cases and a few large ones. A strip is told by where it
// lies and by its pieces with how far they are moved, in hundredths of an inch. Somebody has looked at it; each keeps the laws.
func TestWorkedFittings(t *testing.T) {
	var b bytes.Buffer
	in := func(nm measure.NM) measure.NM { return nm * 100 / measure.Inch }
	for n, c := range worked() {
		f := Fit(c.Cloth, c.pieces, c.steps)
		if why := broken(c.Cloth, c.pieces, f); why != "" {
			t.Errorf("case %d: %s", n, why)
		}
		fmt.Fprintf(&b, "%d: %d long, %d times, too large %v, %d steps, ended %v\n", n, in(f.LengthCut), f.Times, f.TooLarge, f.Steps, f.Ended)
		for i, s := range f.Strips {
			if i == 12 {
				fmt.Fprintf(&b, "  and so on, %d in all\n", len(f.Strips))
				break
			}
			fmt.Fprintf(&b, "  %d %d to %d %d:", in(s.Min.X), in(s.Min.Y), in(s.Max.X), in(s.Max.Y))
			for _, p := range s.Pieces {
				fmt.Fprintf(&b, " %d+%d,%d", p.Piece, in(p.By.X), in(p.By.Y))
			}
			fmt.Fprintln(&b)
		}
	}
	golden.Text(t, "testdata/worked.txt", b.Bytes())
}
