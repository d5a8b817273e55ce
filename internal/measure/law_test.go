package measure

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"
)

// TestWritten reads back what Number and Text write: the very length where sixty-fourths or
// hundredths of a millimetre show it, and within half of the fourth decimal where not.
func TestWritten(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for n := range 20_000 {
		nm := NM(rng.Int64N(int64(100 * Inch)))
		exact := n%2 == 0
		for _, s := range []System{Inches, Centimetres} {
			if exact {
				nm -= nm % smallest(s)
			}
			for _, text := range []string{Number(nm, s), Text(nm, s)} {
				if err := readsBack(text, nm, s, exact); err != nil {
					t.Fatal(err)
				}
			}
		}
	}
}

// TestWrittenToTheLastNanometer: what is written to be read again is read as just that length, in the words of Text where those are.
func TestWrittenToTheLastNanometer(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for n := range 4_000 {
		for _, s := range []System{Inches, Centimetres} {
			nm := NM(rng.Int64N(int64(100 * Inch)))
			if n%2 == 0 {
				nm -= nm % smallest(s)
			}
			text := Written(nm, s)
			if err := readsBack(text, nm, s, true); err != nil {
				t.Fatal(err)
			}
			if plain := Text(nm, s); text != plain && readsBack(plain, nm, s, true) == nil {
				t.Fatalf("%d nm is written %q, where %q would do", nm, text, plain)
			}
		}
	}
}

// smallest is what a system shows exactly.
func smallest(s System) NM {
	if s == Centimetres {
		return Centimetre / 10_000
	}
	return Inch / 64
}

func readsBack(text string, nm NM, s System, exact bool) error {
	r, err := Read(text)
	if err != nil || r.Bytes != len(text) {
		return fmt.Errorf("%d nm is written %q, which is not read: %v", nm, text, err)
	}
	slack := s.Unit() / 20_000
	if exact {
		slack = 0
	}
	if d := r.In(s).NM() - nm; d > slack || d < -slack {
		return fmt.Errorf("%d nm is written %q, which is %d nm", nm, text, r.In(s).NM())
	}
	return nil
}

// TestWrittenNotices: the law above catches a number that is off by its least step.
func TestWrittenNotices(t *testing.T) {
	if readsBack(Number(Inch/64*9, Inches), Inch/64*10, Inches, true) == nil || readsBack("1.0002 in", Inch, Inches, false) == nil {
		t.Error("a length off by a step passes")
	}
}

// TestSpellings reads every sixty-fourth up to eight inches in each of the ways to write it.
func TestSpellings(t *testing.T) {
	for n := range int64(8 * 64) {
		want := exactly(n, 64, Inch)
		whole, upper := n/64, n%64
		spellings := []string{big.NewRat(n, 64).FloatString(6), strings.Replace(big.NewRat(n, 64).FloatString(6), ".", ",", 1)}
		for _, blank := range []string{" ", "-", "\u00a0", "  "} {
			spellings = append(spellings, fmt.Sprintf("%d%s%d/64", whole, blank, upper), fmt.Sprintf("%d%s%d⁄64", whole, blank, upper))
		}
		for _, text := range spellings {
			for _, unit := range []string{"", `"`, " in", "”", " inches"} {
				r, err := Read(text + unit)
				if err != nil || r.In(Inches).Cmp(want) != 0 {
					t.Fatalf("%q is read as %v, %v; want %d sixty-fourths", text+unit, r.number, err, n)
				}
			}
		}
	}
}

// TestExact: fractions of a nanometre are kept.
func TestExact(t *testing.T) {
	third := exactly(1, 3, Inch)
	if third.Add(third).Add(third).Cmp(Of(Inch)) != 0 || third.Times(3).Sub(Of(Inch)).Sign() != 0 {
		t.Error("three thirds of an inch are no inch")
	}
	if third.Times(3).NM() != Inch || third.Half().Times(6).NM() != Inch {
		t.Error("three thirds of an inch are not 25,400,000 nm")
	}
	if (Length{}).Sign() != 0 || (Length{}).NM() != 0 || (Length{}).Add(third).Cmp(third) != 0 {
		t.Error("the zero length is not nothing")
	}
	if Yard != 36*Inch || Inch != 254*Millimetre/10 {
		t.Error("a yard is 36 inches of 25.4 mm")
	}
}

// TestNearestNM: halves go away from zero, and nothing else moves by more than a half.
func TestNearestNM(t *testing.T) {
	for n := int64(-40); n <= 40; n++ {
		got := exactly(n, 8, 1).NM()
		want := NM(n / 8)
		switch r := n % 8; {
		case r >= 4:
			want++
		case r <= -4:
			want--
		}
		if got != want {
			t.Errorf("%d/8 nm is rounded to %d, want %d", n, got, want)
		}
	}
}

// TestSteps: RoundUp never goes below and Nearest never further than half a step, halves up.
func TestSteps(t *testing.T) {
	for step := NM(1); step <= 9; step++ {
		for nm := NM(0); nm <= 60; nm++ {
			if up := RoundUp(nm, step); up%step != 0 || up < nm || up-nm >= step {
				t.Errorf("RoundUp(%d, %d) = %d", nm, step, up)
			}
			if near := Nearest(nm, step); near%step != 0 || 2*(near-nm) > step || 2*(nm-near) >= step {
				t.Errorf("Nearest(%d, %d) = %d", nm, step, near)
			}
		}
	}
	eighth := Inch / 8
	for _, n := range []NM{36, 63, 18} {
		if RoundUp(n*eighth, eighth) != n*eighth {
			t.Errorf("%d eighths are moved by rounding up", n)
		}
	}
}

// TestForms is how lengths look.
func TestForms(t *testing.T) {
	for _, c := range []struct {
		nm           NM
		inches, cent string
	}{
		{0, "0", "0"}, {Inch, "1", "2.54"}, {7 * Inch / 2, "3 1/2", "8.89"}, {Inch / 64, "1/64", "0.0397"}, {-7 * Inch / 2, "-3 1/2", "-8.89"},
		{Centimetre, "0.3937", "1"}, {1, "0", "0"}, {-1, "0", "0"}, {Inch + 2540, "1.0001", "2.5403"}, {12 * Inch, "12", "30.48"},
	} {
		if got := Number(c.nm, Inches); got != c.inches {
			t.Errorf("%d nm is written %q, want %q", c.nm, got, c.inches)
		}
		if got := Number(c.nm, Centimetres); got != c.cent {
			t.Errorf("%d nm is written %q cm, want %q", c.nm, got, c.cent)
		}
	}
	if Text(Inch/2, Inches) != "1/2 in" || Text(Inch/2, Centimetres) != "1.27 cm" || Of(Inch/2).Text(Inches) != "1/2 in" {
		t.Error("the unit does not stand behind the number")
	}
	if got := Decimal(Inch/8, Inches, 2) + " " + Decimal(-Inch/8, Inches, 2) + " " + Decimal(Inch, Centimetres, 0); got != "0.13 -0.13 3" {
		t.Errorf("decimals: %s", got)
	}
}

// FuzzRead: whatever the text, Read takes no more than there is, says where a fault lies,
// and reads the same again without what follows.
func FuzzRead(f *testing.F) {
	for _, text := range []string{"3 1/2", "3½\" cut", "1/0", "½½", "5'6\"", "1,5 cm x", "\xff3", "0.000001 yd", "3 -1/2", "−1"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		StartsNumber(text)
		r, err := Read(text)
		if err != nil {
			p := err.(*Problem)
			if p.Start < 0 || p.End < p.Start || p.End > len(text) || p.Message == "" {
				t.Fatalf("%q: %+v", text, p)
			}
			return
		}
		if r.Bytes < 1 || r.Bytes > len(text) || r.In(Inches).Sign() < 0 {
			t.Fatalf("%q: %d bytes, %v", text, r.Bytes, r.number)
		}
		again, err := Read(text[:r.Bytes])
		if err != nil || again.number.Cmp(r.number) != 0 || again.unit != r.unit || again.Bytes != r.Bytes {
			t.Fatalf("%q is %v, but %q alone is %v, %v", text, r.number, text[:r.Bytes], again.number, err)
		}
	})
}

// exactly is num/den of unit; den must not be zero.
func exactly(num, den int64, unit NM) Length {
	r := big.NewRat(num, den)
	return Length{r.Mul(r, new(big.Rat).SetInt64(int64(unit)))}
}
