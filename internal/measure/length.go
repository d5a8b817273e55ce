// Package measure turns what quilters write for a length into an exact length, and back:
// inches with fractions, centimetres, yards.
package measure

import "math/big"

// NM is a length in whole nanometres. An inch, a sixty-fourth of one (396,875) and a
// millimetre are all whole numbers of them.
type NM int64

// Lengths in common use.
const (
	Millimetre NM = 1_000_000
	Centimetre    = 10 * Millimetre
	Metre         = 1000 * Millimetre
	Inch       NM = 25_400_000
	Yard          = 36 * Inch
)

// System is what a bare number means and how lengths are written back.
type System uint8

// The two systems of the language's `units` statement.
const (
	Inches System = iota
	Centimetres
)

// Unit is the length of one unit of the system.
func (s System) Unit() NM {
	if s == Centimetres {
		return Centimetre
	}
	return Inch
}

// String is the word that the `units` statement takes.
func (s System) String() string {
	if s == Centimetres {
		return "cm"
	}
	return "inches"
}

// Length is an exact length: a fraction of a nanometre is kept, so that a third of an inch
// three times over is an inch. The zero value is no length. Values are never changed.
type Length struct{ nm *big.Rat }

// Of is a whole number of nanometres as a Length.
func Of(nm NM) Length { return Length{new(big.Rat).SetInt64(int64(nm))} }

func (l Length) rat() *big.Rat {
	if l.nm == nil {
		return new(big.Rat)
	}
	return l.nm
}

// Add is l + m.
func (l Length) Add(m Length) Length { return Length{new(big.Rat).Add(l.rat(), m.rat())} }

// Sub is l - m.
func (l Length) Sub(m Length) Length { return Length{new(big.Rat).Sub(l.rat(), m.rat())} }

// Times is n times l.
func (l Length) Times(n int) Length {
	return Length{new(big.Rat).Mul(l.rat(), new(big.Rat).SetInt64(int64(n)))}
}

// Half is l / 2.
func (l Length) Half() Length { return l.Over(2) }

// Over is an nth of l; n must not be 0.
func (l Length) Over(n int) Length { return Length{new(big.Rat).Quo(l.rat(), big.NewRat(int64(n), 1))} }

// Cmp is -1, 0 or 1 as l is less than, equal to or more than m.
func (l Length) Cmp(m Length) int { return l.rat().Cmp(m.rat()) }

// Sign is -1, 0 or 1 as l is below, equal to or above nothing.
func (l Length) Sign() int { return l.rat().Sign() }

// NM is l in whole nanometres, the nearest, halves away from zero.
func (l Length) NM() NM { return NM(roundRat(l.rat())) }

// roundRat is the nearest whole number to r, halves away from zero.
func roundRat(r *big.Rat) int64 {
	num := new(big.Int).Lsh(r.Num(), 1)
	den := new(big.Int).Lsh(r.Denom(), 1)
	if num.Sign() < 0 {
		num.Sub(num, r.Denom())
	} else {
		num.Add(num, r.Denom())
	}
	return num.Quo(num, den).Int64()
}
