package measure

import (
	"errors"
	"math/big"
	"strings"
	"testing"
)

// TestFractions reads the ways in which lengths are written. Programs that read numbers
// with less care are known to take 2½ for 21/2, 1_000 for a thousand and 4⅑ for 4/9.
func TestFractions(t *testing.T) {
	for _, c := range []struct {
		text     string
		num, den int64
		unit     NM // 0 for a bare number
	}{
		{"0", 0, 1, 0}, {"7", 7, 1, 0}, {"007", 7, 1, 0}, {"999999", 999999, 1, 0},
		{"3 1/2", 7, 2, 0}, {"3-1/2", 7, 2, 0}, {"3½", 7, 2, 0}, {"3 ½", 7, 2, 0}, {"3-½", 7, 2, 0}, {"3.5", 7, 2, 0}, {"3,5", 7, 2, 0},
		{"2½", 5, 2, 0}, {"½", 1, 2, 0}, {"1 ½", 3, 2, 0}, {"1-½", 3, 2, 0}, {"2 1⁄2", 5, 2, 0}, {"1⁄2", 1, 2, 0}, {"1 1/2", 3, 2, 0}, {"1-1/2", 3, 2, 0},
		{"⅓", 1, 3, 0}, {"⅔", 2, 3, 0}, {"⅛", 1, 8, 0}, {"⅜", 3, 8, 0}, {"⅝", 5, 8, 0}, {"⅞", 7, 8, 0}, {"⅒", 1, 10, 0}, {"4⅑", 37, 9, 0},
		{"¼", 1, 4, 0}, {"¾", 3, 4, 0}, {"⅕", 1, 5, 0}, {"⅖", 2, 5, 0}, {"⅗", 3, 5, 0}, {"⅘", 4, 5, 0}, {"⅙", 1, 6, 0}, {"⅚", 5, 6, 0}, {"⅐", 1, 7, 0},
		{"1/3", 1, 3, 0}, {"999/1000", 999, 1000, 0}, {"0/7", 0, 1, 0}, {"12 3/16", 195, 16, 0},
		{"0.000001", 1, 1000000, 0}, {"0,015625", 1, 64, 0}, {"1.50", 3, 2, 0},
		{"3\u00a01/2", 7, 2, 0}, {"3\u20091/2", 7, 2, 0}, {"3\u202f½", 7, 2, 0}, {"3\t1/2", 7, 2, 0}, {"3   1/2", 7, 2, 0},
		{`6 1/2"`, 13, 2, Inch}, {"2½″", 5, 2, Inch}, {"2½”", 5, 2, Inch}, {"2''", 2, 1, Inch}, {"2′′", 2, 1, Inch}, {"2’’", 2, 1, Inch},
		{"2 in", 2, 1, Inch}, {"2in", 2, 1, Inch}, {"2 in.", 2, 1, Inch}, {"2 inch", 2, 1, Inch}, {"2 INCHES", 2, 1, Inch},
		{"2.5 cm", 5, 2, Centimetre}, {"2,5cm", 5, 2, Centimetre}, {"6 mm", 6, 1, Millimetre}, {"1,2 m", 6, 5, Metre},
		{"1/4 yd", 1, 4, Yard}, {"1 1/2 yards", 3, 2, Yard}, {"2 yd.", 2, 1, Yard}, {"1 yard", 1, 1, Yard},
	} {
		r, err := Read(c.text)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		if r.number.Cmp(big.NewRat(c.num, c.den)) != 0 || r.unit != c.unit || r.Bytes != len(c.text) {
			t.Errorf("%q is read as %v of %d nm in %d bytes, want %d/%d of %d nm in %d", c.text, r.number, r.unit, r.Bytes, c.num, c.den, c.unit, len(c.text))
		}
		for _, s := range []System{Inches, Centimetres} {
			unit := c.unit
			if unit == 0 {
				unit = s.Unit()
			}
			if r.In(s).Cmp(exactly(c.num, c.den, unit)) != 0 {
				t.Errorf("%q under units %s is %v", c.text, s, r.In(s))
			}
		}
	}
}

// TestNoLengths refuses what is no length, and says so in words that name it.
func TestNoLengths(t *testing.T) {
	for _, c := range []struct{ text, says string }{
		{"NaN", `expected a length, found "NaN"`}, {"inf", "expected a length"}, {"Infinity", "expected a length"}, {"", "expected a length"},
		{"0x1p-2", `"0x1p-2" is not a length`}, {"1_000", `"1_000" is not a length`}, {"1e308", `"1e308" is not a length`},
		{"+5", "expected a length"}, {".5", "expected a length"}, {",5", "expected a length"}, {"5.", `expected digits after "."`}, {"5,", `expected digits after ","`},
		{"1/0", "has 0 below its line"}, {"0/0", "has 0 below its line"}, {"-1/2", "cannot be below 0"}, {"−3", "cannot be below 0"}, {"-½", "cannot be below 0"},
		{"1/2/3", "is not one length"}, {"999999999999/7", "at most 6 digits"}, {"1000000", "at most 6 digits"}, {"0.1234567", "at most 6 digits"},
		{"1.5 1/2", "is not one length"}, {"1.5½", "is not one length"}, {"½½", "is not one length"}, {"½ ½", "is not one length"}, {"½ 1/2", "is not one length"},
		{"½1", "is not one length"}, {"1½/2", "is not one length"}, {"1/2.5", "is not one length"}, {"3.5.1", "is not one length"}, {"3,5,1", "is not one length"},
		{"3 5/4", `the fraction "5/4" is not below one`}, {"4/4", "is not below one"}, {"1/1001", "may be at most 1000"},
		{"1/", "expected a length"}, {"1//2", "expected a length"}, {"3 1/x", "expected a length"},
		{"5'", "is not a length"}, {"5′", "is not a length"}, {"5’", "is not a length"}, {`5'6"`, "is not a length"}, {`5"x`, "is not a length"},
		{"5ft", "is not a length"}, {"5px", "is not a length"}, {"↉", "expected a length"}, {"3↉", "is not a length"},
		{"٣", "expected a length"}, {"３", "expected a length"}, {"3３", "is not a length"}, {"x", "expected a length"},
	} {
		r, err := Read(c.text)
		var p *Problem
		if !errors.As(err, &p) {
			t.Errorf("%q is read as %v", c.text, r.number)
			continue
		}
		if !strings.Contains(p.Message, c.says) {
			t.Errorf("%q gives %q, nothing says %q", c.text, p.Message, c.says)
		}
		if p.Start < 0 || p.End < p.Start || p.End > len(c.text) {
			t.Errorf("%q: the fault lies at %d to %d", c.text, p.Start, p.End)
		}
	}
}

// TestHints spells what was meant.
func TestHints(t *testing.T) {
	for text, hint := range map[string]string{
		"3 5/4": "write 4 1/4", "5/4": "write 1 1/4", "8/4": "write 2", "2-7/3": "write 4 1/3", "5'": "feet are not used; write inches or yards", ".5": "write a length as 3 1/2 or 0.5",
	} {
		_, err := Read(text)
		var p *Problem
		if !errors.As(err, &p) || p.Hint != hint {
			t.Errorf("%q: %v, want the hint %q", text, err, hint)
		}
	}
}

// TestLeavesTheRest reads no further than the length goes.
func TestLeavesTheRest(t *testing.T) {
	for text, bytes := range map[string]int{
		"4 navy": 1, "1 1/2 rust": 5, "2 cut": 1, "3 5": 1, `2" cut`: 2, "2 inky": 1, "3½ m8": 3, "1 yd x": 4, "2 in ": 4, "5 mmm": 1, "3 x": 1,
	} {
		r, err := Read(text)
		if err != nil || r.Bytes != bytes {
			t.Errorf("%q: %d bytes, %v; want %d", text, r.Bytes, err, bytes)
		}
	}
}

func TestUnitWords(t *testing.T) {
	for _, word := range UnitWords() {
		if r, err := Read("1 " + word); err != nil || !r.HasUnit() {
			t.Errorf("%q is not read as a unit: %v", word, err)
		}
	}
}

func TestReadCount(t *testing.T) {
	for text, want := range map[string]int{"0": 0, "12": 12, "999999": 999999, "": -1, "-1": -1, "1.5": -1, "1234567": -1, "½": -1, "x": -1} {
		got, err := ReadCount(text)
		if err != nil {
			got = -1
		}
		if got != want {
			t.Errorf("%q is read as %d, %v", text, got, err)
		}
	}
}

func TestStartsNumber(t *testing.T) {
	for text, want := range map[string]bool{"3": true, "½": true, "-3": true, "−½": true, ".5": true, "": false, "navy": false, "-x": false, "#3": false, "٣": true} {
		if StartsNumber(text) != want {
			t.Errorf("StartsNumber(%q) = %v", text, !want)
		}
	}
}
