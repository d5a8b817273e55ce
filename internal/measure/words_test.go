package measure

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
)

// Laws of the writer: each says how far what is written may lie from the length, and each has a broken text that it catches.

// misread says that a text, read back, is off by less than least or more than most.
func misread(text string, nm NM, s System, least, most NM) error {
	sign := NM(1)
	number := strings.TrimPrefix(text, "about ")
	if after, ok := strings.CutPrefix(number, "-"); ok {
		sign, number = -1, after
	}
	r, err := Read(number)
	if err != nil || r.Bytes != len(number) || !r.HasUnit() {
		return fmt.Errorf("%d nm is written %q, which is not read: %v", nm, text, err)
	}
	if off := sign*r.In(s).NM() - nm; off < least || off > most {
		return fmt.Errorf("%d nm is written %q, which is off by %d", nm, text, off)
	}
	return nil
}

// miswritten is what the writer does wrong with a length.
func miswritten(s System, nm NM, nearest, atLeast, atMost string) error {
	half := s.Mark() / 2
	if !strings.HasPrefix(nearest, "about ") {
		half = Slack
	}
	if under, ok := strings.CutPrefix(nearest, "under "); ok {
		if max(nm, -nm) > s.Mark()/2 || under != Text(s.Mark(), s) {
			return fmt.Errorf("%d nm is written %q", nm, nearest)
		}
	} else if err := misread(nearest, nm, s, -half, half); err != nil {
		return err
	}
	if err := misread(atLeast, nm, s, -Slack, s.CutMark()); err != nil {
		return fmt.Errorf("at least: %w", err)
	}
	if under, ok := strings.CutPrefix(atMost, "under "); ok {
		return misread(under, nm, s, 0, s.CutMark())
	}
	if err := misread(atMost, nm, s, -s.CutMark(), Slack); err != nil {
		return fmt.Errorf("at most: %w", err)
	}
	return nil
}

// lengths are lengths of all sizes: on marks and beside them, nothing, below nothing, and far above what a layout may hold.
func lengths() []NM {
	rng := rand.New(rand.NewPCG(8, 3))
	list := []NM{0, 1, -1, Slack, -Slack, Slack + 1, -Slack - 1, Inch / 32, Inch/32 - 1, Millimetre / 2, 500 * Yard, -500 * Yard, 300_000 * Inch}
	for i := range 4000 {
		nm := NM(rng.Int64N(int64(200 * Inch)))
		switch i % 8 {
		case 0:
			nm = Nearest(nm, Inch/16)
		case 1:
			nm = Nearest(nm, Inch/64) + NM(rng.IntN(3)) - 1
		case 2:
			nm = Nearest(nm, Millimetre)
		case 3:
			nm = Nearest(nm, Inch/100)
		case 4:
			nm = -nm
		case 5:
			nm %= Inch / 4
		}
		list = append(list, nm)
	}
	return list
}

func TestWriter(t *testing.T) {
	for _, nm := range lengths() {
		for _, s := range []System{Inches, Centimetres} {
			if err := miswritten(s, nm, s.Nearest(nm), s.AtLeast(nm), s.AtMost(nm)); err != nil {
				t.Fatal(err)
			}
			if s.downToMark(nm) > s.upToMark(nm) || s.AtLeast(s.upToMark(nm)) != s.AtLeast(nm) {
				t.Fatalf("%d nm is rounded up to %q and down to %q", nm, s.AtLeast(nm), s.AtMost(nm))
			}
			if at, on := On(nm, s.Mark()); on && (s.Nearest(nm) != s.Nearest(at) || at != 0 && s.AtLeast(nm) != s.AtMost(nm)) {
				t.Fatalf("%d nm lies on a mark and is written %q, %q and %q", nm, s.Nearest(nm), s.AtLeast(nm), s.AtMost(nm))
			}
			data, err := json.Marshal(s.JSON(nm))
			if want := fmt.Sprintf(`{"nm":%d,"text":%q}`, nm, s.Nearest(nm)); err != nil || string(data) != want {
				t.Fatalf("%s, %v; want %s", data, err, want)
			}
		}
	}
}

// TestWriterNotices: each law catches the text that breaks it.
func TestWriterNotices(t *testing.T) {
	nm := Inch * 507 / 100 // 5.07 in, shown exactly
	off := nm + 100
	for what, err := range map[string]error{
		"exact, but a hundredth off":    miswritten(Inches, nm, "5.08 in", "5 1/8 in", "5 in"),
		"about, but two marks off":      miswritten(Inches, off, "about 5 1/8 in", "5 1/8 in", "5 in"),
		"without the word about":        miswritten(Inches, off, "5 1/16 in", "5 1/8 in", "5 in"),
		"at least, but below":           miswritten(Inches, off, "about 5 1/16 in", "5 1/16 in", "5 in"),
		"at least, but a mark too many": miswritten(Inches, off, "about 5 1/16 in", "5 1/4 in", "5 in"),
		"at most, but above":            miswritten(Inches, off, "about 5 1/16 in", "5 1/8 in", "5 1/8 in"),
		"without its unit":              miswritten(Inches, off, "about 5 1/16", "5 1/8 in", "5 in"),
		"under a mark, but it is more":  miswritten(Inches, off, "under 1/16 in", "5 1/8 in", "5 in"),
	} {
		if err == nil {
			t.Errorf("%s passes", what)
		}
	}
	if err := miswritten(Inches, off, "about 5 1/16 in", "5 1/8 in", "5 in"); err != nil {
		t.Error(err)
	}
}

// TestHowLengthsRead is how the writer's lengths look.
func TestHowLengthsRead(t *testing.T) {
	strip := NM(128_854_200) // of wedges in blocks of 7 in: 5.073 in
	for _, c := range []struct{ got, want string }{
		{Inches.Nearest(strip), "about 5 1/16 in"}, {Inches.AtLeast(strip), "5 1/8 in"}, {Inches.AtMost(strip), "5 in"}, {Inches.Exact(strip), "5.073 in"},
		{Centimetres.Nearest(strip), "about 12.9 cm"}, {Centimetres.AtLeast(strip), "12.9 cm"}, {Centimetres.AtMost(strip), "12.8 cm"}, {Centimetres.Exact(strip), "12.885 cm"},
		{Inches.Number(strip), "about 5 1/16"}, {Inches.ExactNumber(strip), "5.073"},
		{Inches.AtLeast(448_208_400), "17 3/4 in"}, // cloth needed, 17.646 in
		{Inches.Nearest(Inch / 64 * 5), "5/64 in"}, {Inches.Nearest(5 * Inch / 16), "5/16 in"}, {Centimetres.Nearest(7 * Inch / 2), "8.89 cm"}, {Inches.Nearest(Inch * 31 / 10), "3.1 in"},
		{Inches.Nearest(Inch / 50), "0.02 in"}, {Inches.Nearest(Inch / 51), "under 1/16 in"}, {Inches.Nearest(-Inch / 51), "about 0 in"}, {Inches.AtMost(Inch / 51), "under 1/8 in"},
		{Inches.AtLeast(0), "0 in"}, {Inches.AtMost(0), "0 in"}, {Inches.Nearest(-strip), "about -5 1/16 in"}, {Inches.AtLeast(-strip), "-5 in"},
		{Inches.By(2*Inch, 14*Inch), "2 by 14 in"}, {Inches.By(strip, 14*Inch), "about 5 1/16 by 14 in"}, {Inches.Size(strip, strip+1), "about 5 1/16 in square"}, {Centimetres.Size(9*Centimetre, 8*Centimetre), "9 by 8 cm"},
		{Inches.ByAtLeast(strip, 14*Inch), "5 1/8 by 14 in"}, {Inches.ByAtMost(strip, 14*Inch), "5 by 14 in"},
		{Inches.Shop(3 * Yard / 8), "3/8 yd"}, {Inches.Shop(2 * Yard), "2 yd"}, {Inches.Shop(30 * Inch), "0.83 yd"}, {Centimetres.Shop(12 * Metre / 10), "1.2 m"}, {Centimetres.Shop(125 * Centimetre), "1.25 m"}, {Centimetres.Shop(Yard / 8), "0.11 m"},
		{Inches.Offset(5_257_800), "a generous 3/16 in"}, {Inches.Offset(Inch/4 - Inch/50), "0.23 in"}, {Inches.Offset(Inch/4 - Inch/53), "a scant 1/4 in"}, {Inches.Offset(Inch / 4), "1/4 in"}, {Centimetres.Offset(5_257_800), "about 0.5 cm"},
		{Inches.Offset(Inch/4 + Inch/130), "about 1/4 in"}, {Inches.Offset(Inch/4 + Inch/126), "a generous 1/4 in"},
		{Inches.Distance(6 * 12 * Inch), "6 ft"}, {Inches.Distance(79 * Inch), "6.6 ft"}, {Centimetres.Distance(2 * Metre), "2.00 m"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}

func TestCountsAndLists(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{Count(0, "block"), "no blocks"}, {Count(1, "block"), "1 block"}, {Count(3, "block"), "3 blocks"}, {Count(2, "copy"), "2 copies"}, {Count(2, "patch"), "2 patches"},
		{Count(2, "sash"), "2 sashes"}, {Count(2, "kite half"), "2 kite halves"}, {Count(2, "key"), "2 keys"}, {Count(2, "inch"), "2 inches"},
		{List(nil), ""}, {List([]string{"a"}), "a"}, {List([]string{"a", "b"}), "a and b"}, {List([]string{"a", "b", "c"}), "a, b and c"}, {List([]string{"a, x", "b", "c"}), "a, x; b; and c"},
		{WithArticle("wedge"), "a wedge"}, {WithArticle("end piece"), "an end piece"}, {WithArticle("Iris wedge"), "an Iris wedge"}, {WithArticle("8 in square"), "an 8 in square"}, {WithArticle("80 in square"), "an 80 in square"},
		{WithArticle("18 in square"), "an 18 in square"}, {WithArticle("11 in square"), "an 11 in square"}, {WithArticle("10 in square"), "a 10 in square"}, {WithArticle(""), "a "},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}
