package blocks

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"eighthturn/internal/measure"
)

const tan22h = 0.41421356237309504880

// TestJudgeLine: a strip of 7 1/2 cut by line 10 of a wedge rule gives pieces of a mean
// length of 4.9706, which finish 2.0711 at their narrow and 7.8701 at their wide end
// (derived: m = T(2n - w - 2q), narrow = 2T(n - w), wide = 2T(n - 2q)).
func TestJudgeLine(t *testing.T) {
	const strip, q = 15 * measure.Inch / 2, measure.Inch / 4
	mean := MeanByLine(10*measure.Inch, strip, q) / float64(measure.Inch)
	lean := tan22h * 7
	for _, c := range []struct{ got, want float64 }{{mean, 4.9706}, {mean - lean, 2.0711}, {mean + lean, 7.8701}, {mean - lean, 2 * tan22h * 2.5}, {mean + lean, 2 * tan22h * 9.5}} {
		if math.Abs(c.got-c.want) > 5e-5 {
			t.Errorf("%.4f, want %.4f", c.got, c.want)
		}
	}
	if got := LineFor(MeanByLine(10*measure.Inch, strip, q), strip, q); got != 10*measure.Inch {
		t.Errorf("the line for that length is %d", got)
	}
}

// columns calls f with columns of all sorts: their length, side and pieces.
func columns(f func(length, side measure.NM, c Column, err error, byLine bool)) {
	rng := rand.New(rand.NewPCG(61, 67))
	for range 20_000 {
		side := 2 * (measure.Inch/8 + measure.NM(rng.Int64N(10*int64(measure.Inch))))
		length := side * measure.NM(1+rng.IntN(12))
		mean := float64(side) * (0.3 + 3*rng.Float64())
		c, err := ByLine(length, side, mean)
		f(length, side, c, err, true)
		c, err = ByLength(length, side, measure.NM(mean))
		f(length, side, c, err, false)
	}
}

// TestColumns: whole pieces and ends come to the length; every piece keeps a narrow side;
// slants stand in order, a mean length apart, and far enough from both ends.
func TestColumns(t *testing.T) {
	divided, refused := 0, 0
	columns(func(length, side measure.NM, c Column, err error, byLine bool) {
		lean := tan22h * float64(side)
		if err != nil {
			refused++
			return
		}
		divided++
		if d := float64(c.Whole)*c.Mean + 2*c.End - float64(length); math.Abs(d) > 1 {
			t.Fatalf("pieces and ends of %+v miss %d by %v", c, length, d)
		}
		if c.Mean <= lean || c.End <= lean/2 || c.Whole < 0 {
			t.Fatalf("%+v leaves no narrow side in columns %d wide", c, side)
		}
		if byLine && c.End > (c.Mean+lean)/2+c.Mean {
			t.Fatalf("the ends of %+v hold another piece", c)
		}
		if !byLine && math.Abs(c.End-c.Mean/2) > 1 {
			t.Fatalf("the ends of %+v are no half pieces", c)
		}
		slants := c.Slants(side)
		if len(slants) != c.Whole+1 {
			t.Fatalf("%+v has %d slants", c, len(slants))
		}
		for i, at := range slants {
			middle := c.End + float64(i)*c.Mean
			if math.Abs(float64(at.Upper)-middle+lean/2) > 0.5001 || math.Abs(float64(at.Lower)-middle-lean/2) > 0.5001 {
				t.Fatalf("slant %d of %+v is %+v, its middle lies at %v", i, c, at, middle)
			}
			mirrored := slants[len(slants)-1-i]
			if d := length - mirrored.Lower - at.Upper; d > 1 || d < -1 {
				t.Fatalf("slant %d of %+v begins at %d, counted from the other end at %d", i, c, at.Upper, length-mirrored.Lower)
			}
			if at.Upper < 0 || at.Lower > length || i > 0 && at.Lower-slants[i-1].Lower < 1 {
				t.Fatalf("slants of %+v are out of order: %+v", c, slants)
			}
		}
	})
	if divided < 20_000 || refused < 1000 {
		t.Errorf("%d columns divided, %d refused", divided, refused)
	}
}

// TestColumnNearest: no other number of pieces comes nearer to the length asked for.
func TestColumnNearest(t *testing.T) {
	rng := rand.New(rand.NewPCG(71, 73))
	for range 5000 {
		side, length := measure.NM(2*measure.Inch), measure.NM(1+rng.IntN(40))*measure.Inch*2
		about := measure.Inch + measure.NM(rng.Int64N(5*int64(measure.Inch)))
		c, err := ByLength(length, side, about)
		if err != nil {
			continue
		}
		off := math.Abs(float64(length)/float64(about) - float64(c.Whole+1))
		if off > 0.5 && c.Whole > 0 {
			t.Fatalf("a column of %d in pieces of about %d has %d whole ones", length, about, c.Whole)
		}
	}
}

// TestColumnErrors: what cannot be divided says which length pieces need.
func TestColumnErrors(t *testing.T) {
	side := 7 * measure.Inch
	for _, f := range []func() (Column, error){
		func() (Column, error) { return ByLine(side, side, 0) },
		func() (Column, error) { return ByLine(side, side, tan22h*float64(side)) },
		func() (Column, error) { return ByLength(side, side, measure.Inch) },
	} {
		_, err := f()
		var e *ColumnError
		if !errors.As(err, &e) || e.Needed < measure.NM(tan22h*float64(side)) || e.Needed > measure.NM(tan22h*float64(side))+1 {
			t.Errorf("%v: %+v", err, e)
		}
	}
}
