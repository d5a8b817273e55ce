package supplies

import (
	"strings"
	"testing"

	"eighthturn/internal/measure"
)

// asked is what a backing, a batting, a binding and long pieces are asked with.
type asked struct {
	backing BackingOptions
	batting BattingOptions
	binding BindingOptions
	strips  StripOptions
	length  measure.NM
}

// plain is something that all of them can make: wide cloth, so that each length alone can go to its limits.
func plain() *asked {
	side := 30 * measure.Inch
	return &asked{
		BackingOptions{WidthFinished: side, HeightFinished: side, UsableWidth: maxCloth, Overhang: 1, Seam: 1}, BattingOptions{WidthFinished: side, HeightFinished: side},
		BindingOptions{WidthFinished: side, HeightFinished: side, UsableWidth: maxCloth, StripCut: measure.Inch / 4}, StripOptions{StripCut: measure.Inch / 4, UsableWidth: maxCloth, Seam: 1}, side,
	}
}

// made is the first error of all that is made.
func (a *asked) made() error {
	for _, err := range []error{second(MakeBacking(a.backing)), second(MakeBatting(a.batting)), second(MakeBinding(a.binding)), second(Crosswise(a.strips, a.length))} {
		if err != nil {
			return err
		}
	}
	return nil
}

func second[T any](_ T, err error) error { return err }

// Every length is taken up to its limits and refused a nanometre beyond, with its name and with what would do.
func TestLimitsFromBothSides(t *testing.T) {
	const above, notBelow = "must be above 0", "must not be below 0"
	const tenThousand, hundred = "must be 10000 in or less", "must be 100 in or less"
	for _, c := range []struct {
		what        string
		of          func(a *asked) *measure.NM
		least, most measure.NM
		low, high   string
	}{
		{"the width of the top", func(a *asked) *measure.NM { return &a.backing.WidthFinished }, 1, 10_000 * measure.Inch, above, tenThousand},
		{"the height of the top", func(a *asked) *measure.NM { return &a.backing.HeightFinished }, 1, 10_000 * measure.Inch, above, tenThousand},
		{"the usable width", func(a *asked) *measure.NM { return &a.backing.UsableWidth }, measure.Inch, 400 * measure.Inch, "must be 1 in or more", "must be 400 in or less"},
		{"the overhang", func(a *asked) *measure.NM { return &a.backing.Overhang }, 0, 100 * measure.Inch, notBelow, hundred},
		{"the seam allowance of the backing", func(a *asked) *measure.NM { return &a.backing.Seam }, 0, 2 * measure.Inch, above, "must be 2 in or less"},
		{"the width of the top", func(a *asked) *measure.NM { return &a.batting.WidthFinished }, 1, 10_000 * measure.Inch, above, tenThousand},
		{"the height of the top", func(a *asked) *measure.NM { return &a.batting.HeightFinished }, 1, 10_000 * measure.Inch, above, tenThousand},
		{"the overhang", func(a *asked) *measure.NM { return &a.batting.Overhang }, 0, 100 * measure.Inch, notBelow, hundred},
		{"the width of the quilt", func(a *asked) *measure.NM { return &a.binding.WidthFinished }, 1, 10_000 * measure.Inch, above, tenThousand},
		{"the height of the quilt", func(a *asked) *measure.NM { return &a.binding.HeightFinished }, 1, 10_000 * measure.Inch, above, tenThousand},
		{"the cut width of the binding", func(a *asked) *measure.NM { return &a.binding.StripCut }, measure.Inch / 4, 100 * measure.Inch, "must be 1/4 in or more", hundred},
		{"the usable width", func(a *asked) *measure.NM { return &a.binding.UsableWidth }, measure.Inch, 400 * measure.Inch, "must be 1 in or more", "must be 400 in or less"},
		{"the seam allowance", func(a *asked) *measure.NM { return &a.binding.Seam }, 0, 2 * measure.Inch, above, "must be 2 in or less"},
		{"the allowance", func(a *asked) *measure.NM { return &a.binding.Allowance }, 0, 100 * measure.Inch, notBelow, hundred},
		{"the cut width of the strips", func(a *asked) *measure.NM { return &a.strips.StripCut }, 1, 100 * measure.Inch, above, hundred},
		{"the usable width", func(a *asked) *measure.NM { return &a.strips.UsableWidth }, measure.Inch, 400 * measure.Inch, "must be 1 in or more", "must be 400 in or less"},
		{"the seam allowance", func(a *asked) *measure.NM { return &a.strips.Seam }, 1, 2 * measure.Inch, above, "must be 2 in or less"},
		{"the cut length of a piece", func(a *asked) *measure.NM { return &a.length }, 1, 10_100 * measure.Inch, above, "must be 10100 in or less"},
	} {
		ask := func(nm measure.NM, says string) {
			a := plain()
			*c.of(a) = nm
			switch err := a.made(); {
			case says == "" && err != nil:
				t.Errorf("%s of %s is refused: %v", c.what, text(nm), err)
			case says != "" && (err == nil || err.Error() != c.what+" is "+text(nm)+", but "+says):
				t.Errorf("%s of %s: %v; want that it %s", c.what, text(nm), err, says)
			}
		}
		ask(c.least, "")
		ask(c.most, "")
		for _, below := range []measure.NM{c.least - 1, -1, -1 << 60} {
			ask(below, c.low)
		}
		for _, beyond := range []measure.NM{c.most + 1, 1 << 60} {
			ask(beyond, c.high)
		}
	}
}

// What would take more panels or strips than anybody lays is refused by its number, and so is cloth that seams use up.
func TestLimitsOfCounts(t *testing.T) {
	// Cloth of 2 in with seams of 1/2 in: two inches, and one more for each further panel.
	panels := func(wide, high measure.NM) error {
		return second(MakeBacking(BackingOptions{WidthFinished: wide, HeightFinished: high, UsableWidth: in(2, 0), Seam: in(0, 32), Overhang: in(4, 0)}))
	}
	// Strips of 1 in joined diagonally, 3/4 in wide: an inch, and a quarter of one for each further strip.
	strips := func(more measure.NM) error {
		return second(MakeBinding(BindingOptions{WidthFinished: in(10_000, 0), HeightFinished: in(2_495, 24) + more, StripCut: in(0, 48), UsableWidth: in(1, 0)}))
	}
	used := func(seam measure.NM) error {
		return second(MakeBacking(BackingOptions{WidthFinished: in(1, 0) - 2, HeightFinished: 1, UsableWidth: in(1, 0), Seam: seam, Overhang: 1}))
	}
	joins := func(cut measure.NM) error {
		return second(Crosswise(StripOptions{StripCut: cut, UsableWidth: in(40, 0), Seam: 1}, in(1, 0)))
	}
	for _, c := range []struct {
		what string
		err  error
		want string
	}{
		{"1000 panels across", panels(in(993, 0), in(10, 0)), ""},
		{"1000 panels down", panels(in(10, 0), in(993, 0)), ""},
		{"a panel more across", panels(in(993, 0)+1, in(10, 0)), "takes 1001 panels; the limit is 1000"},
		{"a panel more down", panels(in(10, 0), in(993, 0)+1), "takes 1001 panels; the limit is 1000"},
		{"100000 strips", strips(0), ""},
		{"a strip more", strips(1), "100001 strips are wanted; the limit is 100000"},
		{"allowances that leave a thread", used(in(0, 32) - 1), ""},
		{"allowances that leave nothing", used(in(0, 32)), "leaves nothing between two seam allowances of 1/2 in"},
		{"joins that leave a thread", joins(in(40, 0) - 1), ""},
		{"joins that leave nothing", joins(in(40, 0)), "fabric of 40 in is used up by the joins, which take 40 in each"},
	} {
		if (c.err == nil) != (c.want == "") || c.err != nil && !strings.Contains(c.err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.what, c.err, c.want)
		}
	}
}

// What is not said is what quilters mostly take. Overhangs of 4 in and 3 in: http://loghousequilting.com/preparation/ ; seams of 1/2 in in a
// backing: http://happy-stitches.com/backingnborders.html ; 10 in for the corners and ends of a binding, as in the rule of perimeter + 10.
// The metric lengths are those rounded, and cloth of 40 in or 100 cm between its selvages, binding of 2 1/2 in or 6.5 cm and seams of 1/4 in
// or 7.5 mm are common practice.
func TestUsualLengths(t *testing.T) {
	side := 30 * measure.Inch
	mm := measure.Millimetre
	for units, want := range map[measure.System][8]measure.NM{
		measure.Inches:      {in(40, 0), in(4, 0), in(0, 32), in(3, 0), in(2, 32), in(40, 0), in(0, 16), in(10, 0)},
		measure.Centimetres: {1000 * mm, 100 * mm, 15 * mm, 75 * mm, 65 * mm, 1000 * mm, 7*mm + mm/2, 250 * mm},
	} {
		a := backing(t, BackingOptions{Units: units, WidthFinished: side, HeightFinished: side})
		b, err := MakeBatting(BattingOptions{Units: units, WidthFinished: side, HeightFinished: side})
		if err != nil {
			t.Fatal(err)
		}
		c := binding(t, BindingOptions{Units: units, WidthFinished: side, HeightFinished: side})
		if got := [8]measure.NM{a.UsableWidth, a.Overhang, a.Seam, b.Overhang, c.StripCut, c.UsableWidth, c.Seam, c.Allowance}; got != want {
			t.Errorf("%v: %v, want %v", units, got, want)
		}
		same(t, "across", b.WidthCut, side+2*want[3])
		if c := binding(t, BindingOptions{Units: units, WidthFinished: side, HeightFinished: side, NoAllowance: true}); c.Need != 4*side {
			t.Errorf("%v: without an allowance %s are needed", units, text(c.Need))
		}
	}
}
