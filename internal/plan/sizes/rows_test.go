package sizes

import (
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// charted is the rows of a chart, by their widths, sides or lines.
func charted(name string, o Options) ([]measure.NM, error) {
	var list []measure.NM
	switch name {
	case "strip":
		c, err := Strips(o)
		if err != nil {
			return nil, err
		}
		for _, s := range c.Strips {
			list = append(list, s.StripCut)
		}
	case "side":
		c, err := Sides(o)
		if err != nil {
			return nil, err
		}
		for _, s := range c.Sides {
			list = append(list, s.SideFinished)
		}
	case "line":
		c, err := Tumblers(o)
		if err != nil {
			return nil, err
		}
		for _, p := range c.Tumblers {
			list = append(list, p.LineCut)
		}
	}
	return list, nil
}

// counted is so many rows.
func counted(from, step measure.NM, n int) (list []measure.NM) {
	for i := range n {
		list = append(list, from+measure.NM(i)*step)
	}
	return list
}

// TestRowsOfCharts: where nothing is said charts go over the sizes that quilts are made in, and what is said takes the place of that alone.
func TestRowsOfCharts(t *testing.T) {
	const half, cm = measure.Inch / 2, measure.Centimetre
	for _, c := range []struct {
		name string
		o    Options
		want []measure.NM
	}{
		{"strip", Options{}, counted(3*half, half, 14)}, // 1 1/2 to 8
		{"strip", Options{Units: measure.Centimetres}, counted(4*cm, cm, 17)},
		{"strip", Options{From: 7 * measure.Inch}, counted(7*measure.Inch, half, 3)},
		{"strip", Options{To: 2 * measure.Inch}, counted(3*half, half, 2)},
		{"strip", Options{Step: 2 * measure.Inch}, counted(3*half, 2*measure.Inch, 4)}, // 7 1/2 is the last
		{"strip", Options{From: 3 * measure.Inch, To: 3 * measure.Inch}, counted(3*measure.Inch, half, 1)},
		{"side", Options{}, counted(4*measure.Inch, half, 25)}, // 4 to 16
		{"side", Options{Units: measure.Centimetres}, counted(10*cm, cm, 31)},
		// A strip of 5 in leaves a narrow side of two allowances from 5 in + 1/4 in / tan 22.5 = 5.60 in on, one of 12 cm from 13.81 cm on.
		{"line", Options{}, counted(6*measure.Inch, half, 12)},
		{"line", Options{Units: measure.Centimetres}, counted(14*cm, cm, 12)},
		{"line", Options{StripCut: 8 * measure.Inch}, counted(9*measure.Inch, half, 12)},
		{"line", Options{From: 7 * measure.Inch}, counted(7*measure.Inch, half, 12)},
		{"line", Options{Step: measure.Inch}, counted(6*measure.Inch, measure.Inch, 12)},
		{"line", Options{Step: 1, From: 5*measure.Inch + 1}, counted(5*measure.Inch+1, 1, 12)},
		{"line", Options{From: MaxLength - measure.Inch}, counted(MaxLength-measure.Inch, half, 3)},
		{"line", Options{Step: MaxLength}, counted(6*measure.Inch, half, 1)},
	} {
		if got, err := charted(c.name, c.o); err != nil || !slices.Equal(got, c.want) {
			t.Errorf("%s, %+v: %v, want %v, %v", c.name, c.o, got, c.want, err)
		}
	}
}

// TestClothOfCharts: seams are a quarter of an inch or 7.5 mm, cloth is 40 in or 100 cm wide between its selvages, tumblers come from 5 in or 12 cm.
// Common practice, no source.
func TestClothOfCharts(t *testing.T) {
	mm := measure.Millimetre
	for units, want := range map[measure.System][3]measure.NM{measure.Inches: {measure.Inch / 4, 40 * measure.Inch, 5 * measure.Inch}, measure.Centimetres: {15 * mm / 2, 1000 * mm, 120 * mm}} {
		strips, err1 := Strips(Options{Units: units})
		sides, err2 := Sides(Options{Units: units})
		tumblers, err3 := Tumblers(Options{Units: units})
		if err1 != nil || err2 != nil || err3 != nil {
			t.Fatal(err1, err2, err3)
		}
		for _, o := range []Options{strips.Options, sides.Options, tumblers.Options} {
			if got := [3]measure.NM{o.Seam, o.UsableWidth, o.StripCut}; got != want {
				t.Errorf("%v: %v, want %v", units, got, want)
			}
		}
	}
	if c, err := Tumblers(Options{Seam: 1, UsableWidth: 2 * measure.Inch, StripCut: 3}); err != nil || c.Seam != 1 || c.UsableWidth != 2*measure.Inch || c.StripCut != 3 {
		t.Errorf("what is said is not taken: %+v, %v", c, err)
	}
}

// TestLimitsOfCharts: what is asked for is taken up to its limits, and refused beyond with its name and what would do.
func TestLimitsOfCharts(t *testing.T) {
	const long, in = MaxLength, measure.Inch
	const upTo = ", expected more than 0 and up to "
	for _, c := range []struct {
		name string
		o    Options
		want string // of the error; "" for none
	}{
		{"strip", Options{From: long, To: long}, ""}, {"strip", Options{From: long + 1, To: long}, "the first strip is " + text(long+1) + upTo + "120 in"},
		{"strip", Options{To: long + 1}, "the last strip is " + text(long+1) + upTo + "120 in"}, {"strip", Options{From: -1}, "the first strip is " + text(-1) + upTo},
		{"strip", Options{To: -1}, "the last strip is"}, {"strip", Options{Step: -1}, "the step is"}, {"strip", Options{Step: long + 1}, "the step is"}, {"strip", Options{Step: long}, ""},
		{"strip", Options{Seam: MaxSeam, From: 2*MaxSeam + 1}, ""}, {"strip", Options{Seam: MaxSeam + 1}, "the seam allowance is " + text(MaxSeam+1) + upTo + "1 in"}, {"strip", Options{Seam: -1}, "the seam allowance is"},
		{"strip", Options{UsableWidth: MaxCloth}, ""}, {"strip", Options{UsableWidth: MaxCloth + 1}, "the usable width is " + text(MaxCloth+1) + upTo + "400 in"},
		{"line", Options{StripCut: long + 1, From: long}, "the strip is"}, {"line", Options{StripCut: long - 1, From: long}, ""},
		{"strip", Options{From: in, To: in, Step: 1, Seam: 1}, ""}, {"strip", Options{From: 2 * in, To: 2*in - 1}, "the last strip, " + text(2*in-1) + ", is less than the first, 2 in"},
		{"strip", Options{From: in, To: in + 499, Step: 1, Seam: 1}, ""}, {"strip", Options{From: in, To: in + 500, Step: 1, Seam: 1}, "makes 501 rows; the limit is 500"},
		{"strip", Options{From: in / 2}, "a strip of 1/2 in is all seam allowance, expected more than 1/2 in"}, {"strip", Options{From: in/2 + 1}, ""},
		{"side", Options{From: in / 2}, ""}, {"side", Options{From: in/2 - 1}, "is less than two seam allowances, expected at least 1/2 in"},
		{"line", Options{StripCut: in / 2}, "a strip of 1/2 in is all seam allowance, expected more than 1/2 in"}, {"line", Options{StripCut: in/2 + 1}, ""},
		{"line", Options{From: 5 * in}, "line 5 in on a strip of 5 in leaves no narrow side"}, {"line", Options{From: 5*in + 1}, ""},
	} {
		if _, err := charted(c.name, c.o); (err == nil) != (c.want == "") || err != nil && !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s, %+v: %v, want %q", c.name, c.o, err, c.want)
		}
	}
}

func text(nm measure.NM) string { return measure.Text(nm, measure.Inches) }

// TestHeightsOfCharts: the columns are the ways in which wedges fit into blocks, each once, with every kind that has wedges.
func TestHeightsOfCharts(t *testing.T) {
	c, err := Strips(Options{})
	if err != nil {
		t.Fatal(err)
	}
	named := map[string]blocks.WedgeHeight{}
	for _, h := range c.Heights {
		for _, name := range h.Kinds {
			named[name] = h.WedgeHeight
		}
	}
	with := 0
	for _, k := range blocks.Kinds() {
		wedges := slices.ContainsFunc(k.Pieces, func(p blocks.Piece) bool { return p.Shape == blocks.Wedge })
		if h, ok := named[k.Name]; ok != wedges || ok && h != k.Height {
			t.Errorf("%s is charted: %v", k.Name, ok)
		}
		if wedges {
			with++
		}
	}
	if len(named) != with || len(c.Heights) != 2 || len(c.Shapes) != 3 {
		t.Errorf("%d kinds, %d heights, squares for %v", len(named), len(c.Heights), c.Shapes)
	}
	for i, s := range []blocks.Shape{blocks.Kite, blocks.Background, blocks.RingCorner} {
		if c.Shapes[i] != s.String() {
			t.Errorf("square %d is for a %s", i, c.Shapes[i])
		}
	}
}

// TestBoundsOfCharts: what lies just on a bound: a side that is off by just what is near, cloth that just holds one piece, a narrow side of just two
// allowances.
func TestBoundsOfCharts(t *testing.T) {
	c, err := Sides(Options{})
	if err != nil {
		t.Fatal(err)
	}
	c.Heights = slices.DeleteFunc(c.Heights, func(h Height) bool { return h.WedgeHeight != blocks.ToMiddle })
	for off, want := range map[measure.NM]bool{Near: true, Near + 1: false, -Near: true, -Near - 1: false} {
		if s := c.side(8*measure.Inch - off); s.Near != want || s.Strips[0].SideErrorFinished != off {
			t.Errorf("off by %d, near: %v, %+v", off, s.Near, s.Strips)
		}
	}
	wide := stripOf(t, Options{}, 4*measure.Inch).WedgeBaseCut
	line := Options{From: 10 * measure.Inch, To: 10 * measure.Inch}
	tumblers := func(usable measure.NM) Tumbler {
		line.UsableWidth = usable
		made, err := Tumblers(line)
		if err != nil {
			t.Fatal(err)
		}
		return made.Tumblers[0]
	}
	tumbler := tumblers(0).WideCut
	for less, want := range map[measure.NM]int{0: 1, 1: 0} {
		if n := stripOf(t, Options{UsableWidth: wide - less}, 4*measure.Inch).Wedges; n != want {
			t.Errorf("%d wedges of cloth %d nm narrower than one", n, less)
		}
		if n := tumblers(tumbler - less).Pieces; n != want {
			t.Errorf("%d tumblers of cloth %d nm narrower than one", n, less)
		}
	}
	seen := map[measure.NM]bool{}
	for at := measure.NM(-9); at <= 9; at++ {
		line.From = 5*measure.Inch + nearest(float64(measure.Inch/4)/tan22) + at
		line.To = line.From
		p := tumblers(0)
		if over := p.NarrowFinished - measure.Inch/2; p.Slim != (over < 0) {
			t.Errorf("a narrow side of %d nm over two allowances is slim: %v", over, p.Slim)
		} else {
			seen[over] = true
		}
	}
	if !seen[0] || !seen[-1] {
		t.Errorf("only these were seen: %v", seen)
	}
}
