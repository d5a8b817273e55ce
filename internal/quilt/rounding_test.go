package quilt

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// nearestK is the whole number nearest to side/sqrt 2, worked out with 200 bits.
func nearestK(side measure.NM) measure.NM {
	root := new(big.Float).SetPrec(200).Sqrt(new(big.Float).SetPrec(200).SetInt64(2))
	k := new(big.Float).SetPrec(200).Quo(new(big.Float).SetPrec(200).SetInt64(int64(side)), root)
	k.Add(k, big.NewFloat(0.5))
	n, _ := k.Int64() // towards zero: k is above it
	return measure.NM(n)
}

// sizes calls f with sides of blocks: all small even ones, and even ones up to what a
// layout may ask for and far beyond, whose halves are odd as often as even.
func sizes(random int, f func(side measure.NM)) {
	for side := measure.NM(2); side < 20_000; side += 2 {
		f(side)
	}
	rng := rand.New(rand.NewPCG(17, 19))
	for range random {
		f(2 * (1 + measure.NM(rng.Int64N(60*int64(measure.Inch)))))
		f(2 * (1 + measure.NM(rng.Int64N(1<<40))))
	}
}

// TestRoundedOnce: the long division point is the nearest nanometre to k times the side.
func TestRoundedOnce(t *testing.T) {
	sizes(20_000, func(side measure.NM) {
		if got, want := newScale(side)[blocks.Long], nearestK(side); got != want {
			t.Fatalf("k times %d is rounded to %d, want %d", side, got, want)
		}
	})
}

// TestNeighboursAgree: for 300,000 sizes a division point on a grid line is the same whole
// number whether it is counted from the cell before or the cell behind, from the near end of
// their common side or the far one, and the middle lies on both diagonals.
func TestNeighboursAgree(t *testing.T) {
	rng := rand.New(rand.NewPCG(23, 29))
	for n := range 300_000 {
		side := 2 * (1 + measure.NM(rng.Int64N(60*int64(measure.Inch))))
		g := newScale(side)
		line := measure.NM(n % 1000)
		at, next := line*side, (line+1)*side
		if at+g[blocks.Full] != next || at+g[blocks.Long] != next-g[blocks.Short] || at+g[blocks.Short] != next-g[blocks.Long] || at+g[blocks.Mid] != next-g[blocks.Mid] {
			t.Fatalf("side %d: %v", side, g)
		}
		if g[blocks.Zero] != 0 || g[blocks.Short] <= 0 && side > 2 || g[blocks.Long] <= g[blocks.Mid] && side > 4 {
			t.Fatalf("side %d: the division points are out of order: %v", side, g)
		}
	}
}

// TestRoundedApart shows what the rule is for. Where a side is no whole number and k s and
// (1 - k) s are rounded each for itself, neighbours differ by a nanometre in a third of all
// cases; and an odd side puts the middle off a diagonal.
func TestRoundedApart(t *testing.T) {
	rng := rand.New(rand.NewPCG(31, 37))
	const tries = 100_000
	apart := 0
	for range tries {
		s := rng.Float64() * 1e8
		line := math.Floor(rng.Float64() * 50)
		before := math.Round(line*s) + math.Round(s*math.Sqrt2/2)
		behind := math.Round((line+1)*s) - math.Round(s-s*math.Sqrt2/2)
		if before != behind {
			apart++
		}
	}
	if apart < tries*30/100 || apart > tries*37/100 {
		t.Errorf("rounded apart, %d of %d neighbours differ", apart, tries)
	}
	if odd := newScale(101); odd[blocks.Mid] == odd[blocks.Full]-odd[blocks.Mid] {
		t.Errorf("the middle of an odd side lies in its middle: %v", odd)
	}
}

// TestScaled: n times part over whole is the nearest whole number, halves away from zero,
// whatever the sizes.
func TestScaled(t *testing.T) {
	rng := rand.New(rand.NewPCG(41, 43))
	for n := range 50_000 {
		most := int64(1) << (4 + n%40)
		whole := 1 + rng.Int64N(most)
		part, a := rng.Int64N(whole+1), rng.Int64N(2*most)-most
		if n == 0 { // half of the whole carries the product over 64 bits
			a, part, whole = 1<<32-1, 1<<32, 1<<34
		}
		got := int64(scaled(measure.NM(a), measure.NM(part), measure.NM(whole)))
		exact := new(big.Int).Mul(big.NewInt(a), big.NewInt(part))
		off := new(big.Int).Sub(new(big.Int).Mul(big.NewInt(got), big.NewInt(whole)), exact)
		off.Mul(off, big.NewInt(2))
		if c := off.CmpAbs(big.NewInt(whole)); c > 0 || c == 0 && off.Sign() != exact.Sign() {
			t.Fatalf("%d * %d / %d is %d", a, part, whole, got)
		}
	}
}
