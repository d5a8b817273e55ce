package measure

import (
	"errors"
	"math"
	"testing"
	"unicode"
)

// TestBlanks: what parts words is the white space of the Unicode standard (the property White_Space, as Go's own library has it) but for
// what ends a line.
func TestBlanks(t *testing.T) {
	ends := map[rune]bool{'\n': true, '\r': true, '\u0085': true, '\u2028': true, '\u2029': true}
	for r := rune(0); r <= 0x3100; r++ {
		if IsSpace(r) != (unicode.IsSpace(r) && !ends[r]) {
			t.Errorf("%U: %v", r, IsSpace(r))
		}
	}
}

// TestProblemsHaveTheirPlace: a fault is told of the words that make it, and of no more of what follows them.
func TestProblemsHaveTheirPlace(t *testing.T) {
	for _, c := range []struct {
		text       string
		start, end int
		says       string
	}{
		{"-5 navy", 0, 2, `a length cannot be below 0, found "-5"`},
		{"- 5", 0, 1, `a length cannot be below 0, found "-"`},
		{"+ 5", 0, 1, `expected a length, found "+"`},
		{"1/ 2 navy", 2, 4, `expected a length, found " 2"`},
		{"+5 navy", 0, 2, `expected a length, found "+5"`},
		{"x navy", 0, 1, `expected a length, found "x"`},
		{"5. navy", 0, 2, `expected digits after ".", found "5."`},
		{"5, navy", 0, 2, `expected digits after ",", found "5,"`},
		{"1:2 navy", 0, 3, `"1:2" is not a length`},
		{"1/x navy", 2, 3, `expected a length, found "x"`},
		{"3 1/0 navy", 2, 5, `the fraction "1/0" has 0 below its line`},
		{"3 5/4 navy", 2, 5, `the fraction "5/4" is not below one`},
		{"3 1/1001 navy", 2, 8, "the bottom number of a fraction may be at most 1000"},
		{"3 1234567 navy", 0, 0, ""},
		{"1234567 navy", 0, 7, "a number may have at most 6 digits"},
		{"1.1234567 navy", 2, 9, "a number may have at most 6 digits"},
		{"1.5.1 navy", 0, 5, `"1.5.1" is not one length`},
		{"1.5 1/2 navy", 0, 7, `"1.5 1/2" is not one length`},
		{"3½/2 navy", 0, 5, `"3½/2" is not one length`},
		{"½ ½ navy", 0, 5, `"½ ½" is not one length`},
		{"3 1/2/3 navy", 2, 7, `"1/2/3" is not one length`},
		{"5ft navy", 0, 3, `"5ft" is not a length`},
		{"3 1/2ft navy", 0, 7, `"3 1/2ft" is not a length`},
		{`5"x navy`, 0, 3, `"5\"x" is not a length`},
	} {
		_, err := Read(c.text)
		var p *Problem
		if c.says == "" {
			if err != nil {
				t.Errorf("%q: %v", c.text, err)
			}
			continue
		}
		if !errors.As(err, &p) || p.Start != c.start || p.End != c.end || p.Message != c.says || p.Error() != c.says {
			t.Errorf("%q: %+v, want %d to %d: %s", c.text, err, c.start, c.end, c.says)
		}
	}
	for _, feet := range []string{"5'", "5′", "5’", "5'x"} {
		var p *Problem
		if _, err := Read(feet); !errors.As(err, &p) || p.Hint != "feet are not used; write inches or yards" {
			t.Errorf("%q: %+v", feet, err)
		}
	}
	for _, bare := range []string{"+5", ",5", ".5"} {
		var p *Problem
		if _, err := Read(bare); !errors.As(err, &p) || p.Hint != "write a length as 3 1/2 or 0.5" || !StartsNumber(bare) {
			t.Errorf("%q: %+v", bare, err)
		}
	}
	for _, text := range []string{"1:", "1/", "12x"} {
		if n, err := ReadCount(text); err == nil {
			t.Errorf("%q counts %d", text, n)
		}
	}
}

// TestReadingOf: a length as if it had been written is that length, whatever the system.
func TestReadingOf(t *testing.T) {
	for _, s := range []System{Inches, Centimetres} {
		if r := ReadingOf(3 * Inch); !r.HasUnit() || r.In(s).NM() != 3*Inch {
			t.Errorf("under %s: %v", s, r.In(s).NM())
		}
	}
	if r, err := Read("2 m wide"); err != nil || r.Bytes != 3 || r.In(Inches).NM() != 2*Metre {
		t.Errorf("two metres: %+v, %v", r, err)
	}
}

// TestBoundsOfMarks: each bound within which a length counts as lying on a mark is met from both sides.
func TestBoundsOfMarks(t *testing.T) {
	for off := -Slack - 1; off <= Slack+1; off++ {
		at, on := On(3*Inch+off, Inch/16)
		if at != 48*Inch/16 || on != (off >= -Slack && off <= Slack) {
			t.Errorf("%d beside the mark: %d, %v", off, at, on)
		}
		square := off >= -Slack && off <= Slack
		if got := Inches.Size(7*Inch+off, 7*Inch); (got == Inches.Nearest(7*Inch+off)+" square") != square {
			t.Errorf("a side %d longer: %s", off, got)
		}
	}
	mark := 3 * Inch / 16
	for _, c := range []struct {
		off  NM
		want string
	}{
		{Inch / 128, "about 3/16 in"}, {Inch/128 + 1, "a generous 3/16 in"}, {-Inch / 128, "about 3/16 in"}, {-Inch/128 - 1, "a scant 3/16 in"}, {0, "3/16 in"},
	} {
		if got := Inches.Offset(mark + c.off); got != c.want {
			t.Errorf("%d beside the mark is %q, want %q", c.off, got, c.want)
		}
	}
	for nm, want := range map[NM]string{0: "0 in", Slack: "0 in", Slack + 1: "under 1/8 in", Inch / 8: "1/8 in"} {
		if got := Inches.AtMost(nm); got != want {
			t.Errorf("at most %d nm is %q, want %q", nm, got, want)
		}
	}
	// A place on a slanted cut is a whole number of these, half of what rulers show in inches, and is written without "about".
	for s, want := range map[System]string{Inches: "5/32 in", Centimetres: "0.5 cm"} {
		if got := s.Nearest(5 * s.SlantMark()); got != want {
			t.Errorf("five marks of a slanted cut are %q, want %q", got, want)
		}
	}
}

// TestRounds: a length is rounded to its nearest nanometre, halves away from nothing.
func TestRounds(t *testing.T) {
	third := exactly(1, 3, 1)
	for _, c := range []struct {
		l    Length
		want NM
	}{
		{Of(7).Half(), 4}, {Of(-7).Half(), -4}, {third, 0}, {Of(0), 0}, {Of(-1).Add(third), -1}, {Of(1).Sub(third), 1}, {Of(0).Sub(third), 0}, {Length{}, 0},
	} {
		if got := c.l.NM(); got != c.want {
			t.Errorf("%v is %d nm, want %d", c.l.nm, got, c.want)
		}
	}
	if Inches.String() != "inches" || Centimetres.String() != "cm" {
		t.Error("a system is not called as the language calls it")
	}
	for nm, want := range map[NM]string{Inch / 3: "0.3333", Inch / 30: "0.0333", 1234: "0"} {
		if got := Number(nm, Inches); got != want {
			t.Errorf("%d nm is written %q, want %q", nm, got, want)
		}
	}
}

// TestVectors: sums, products and turns as school has them.
func TestVectors(t *testing.T) {
	a, b := Vec{3, 4}, Vec{-2, 5}
	for what, is := range map[string]bool{
		"plus": a.Plus(b) == Vec{1, 9}, "minus": a.Minus(b) == Vec{5, -1}, "times": a.Times(2.5) == Vec{7.5, 10},
		"dot": a.Dot(b) == 14, "cross": a.Cross(b) == 23, "clockwise": Vec{1, 0}.Cross(Vec{0, 1}) == 1,
		"length": a.Length() == 5, "unit": math.Abs(a.Unit().X-0.6)+math.Abs(a.Unit().Y-0.8) < 1e-15, "quarter": Vec{1, 0}.Quarter() == Vec{0, 1} && a.Quarter() == Vec{-4, 3},
		"reflected": a.Reflected(Vec{1, 0}) == Vec{3, -4} && a.Reflected(Vec{0, 1}) == Vec{-3, 4},
		"points":    Point{1, 2}.Add(Point{30, 40}) == Point{31, 42},
	} {
		if !is {
			t.Errorf("%s is wrong", what)
		}
	}
}

// TestClipped: of a square, what lies along a way; a corner on the line stays, and is not there twice.
func TestClipped(t *testing.T) {
	square := []Vec{{0, 0}, {4, 0}, {4, 4}, {0, 4}}
	for _, c := range []struct {
		way   Vec
		least float64
		want  []Vec
	}{
		{Vec{1, 0}, 1, []Vec{{1, 0}, {4, 0}, {4, 4}, {1, 4}}},
		{Vec{0, 1}, 3, []Vec{{4, 3}, {4, 4}, {0, 4}, {0, 3}}},
		{Vec{1, 1}, 4, []Vec{{4, 0}, {4, 4}, {0, 4}}},
		{Vec{1, 0}, -1, square},
		{Vec{1, 0}, 0, square},
		{Vec{1, 0}, 5, nil},
	} {
		got := Clipped(square, c.way, c.least)
		var without []Vec // corners that are given twice in a row say nothing new
		for i, p := range got {
			if p != got[(i+1)%len(got)] || len(got) == 1 {
				without = append(without, p)
			}
		}
		if !sameRound(without, c.want) {
			t.Errorf("along %v from %v: %v, want %v", c.way, c.least, got, c.want)
		}
		if len(got) != len(without) {
			t.Errorf("along %v from %v a corner is there twice: %v", c.way, c.least, got)
		}
	}
}

// sameRound says whether two outlines are the same, wherever they begin.
func sameRound(a, b []Vec) bool {
	if len(a) != len(b) {
		return false
	}
	for shift := range max(1, len(a)) {
		same := true
		for i := range a {
			same = same && a[i] == b[(i+shift)%len(b)]
		}
		if same {
			return true
		}
	}
	return false
}
