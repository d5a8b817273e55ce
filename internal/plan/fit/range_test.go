package fit

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/supplies"
	"eighthturn/layout"
)

// Layouts that are read in no time.
const (
	plainRest = "fabric a navy\nfabric b white\nblock P plain piece a\nblock Q plain piece b\ngrid\n  P Q\n  Q P\n"
	ringRest  = "fabric a navy\nfabric b white\nblock R ring wedges a b corners b\ngrid\n  R\nrepeat across 3 down 4\nborder 1 finished a\nborder 3 finished b\n"
	webRest   = "fabric a navy\nfabric b white\nblock W web wedges a kites b\ngrid\n  W W\n  W W\n"
)

// fittingOf is a layout that is fitted, as far as its growth.
func fittingOf(t *testing.T, text string, o Options) *fitting {
	t.Helper()
	f, err := newFitting(text, nil)
	if err != nil {
		t.Fatalf("%v in\n%s", err, text)
	}
	o.Read = layout.Read
	if f.Options = o; o.Wanted.Finished.Width == 0 {
		f.Options.Wanted = inches(60, 80)
	}
	if err := f.fill(&f.Options); err != nil {
		t.Fatal(err)
	}
	f.plan()
	return f
}

// steps are lengths from one to another.
func steps(from, to, step measure.NM) (list []measure.NM) {
	for at := from; at <= to; at += step {
		list = append(list, at)
	}
	return list
}

// TestSizesTried: where nothing is said, strips up to an inch or 2 cm on either side are tried by quarters or half centimeters, and sides by twice
// as much; the layout's own is always among what lies round it, and alone where a size of the pattern is named.
func TestSizesTried(t *testing.T) {
	const in, cm = measure.Inch, measure.Centimetre
	own := func(nm measure.NM, list []measure.NM) []measure.NM {
		list = append(list, nm)
		slices.Sort(list)
		return list
	}
	for _, c := range []struct {
		text   string
		o      Options
		want   []measure.NM
		border measure.NM
	}{
		{"strip 4\n" + ringRest, Options{}, steps(3*in, 5*in, in/4), 12 * in},
		{"strip 4 1/8\n" + ringRest, Options{}, own(4*in+in/8, steps(13*in/4, 5*in, in/4)), 12 * in},
		{"strip 1 1/8\n" + ringRest, Options{}, own(9*in/8, steps(in, 2*in, in/4)), 12 * in}, // four seam allowances are the least
		{"side 9\n" + plainRest, Options{}, steps(7*in, 11*in, in/2), 12 * in},
		{"side 1\n" + plainRest, Options{}, steps(in/2, 3*in, in/2), 12 * in},
		{"units cm\nstrip 10\n" + ringRest, Options{}, steps(8*cm, 12*cm, cm/2), 30 * cm},
		{"units cm\nstrip 10.2\n" + ringRest, Options{}, own(102*cm/10, steps(17*cm/2, 12*cm, cm/2)), 30 * cm},
		{"units cm\nside 20\n" + plainRest, Options{}, steps(16*cm, 24*cm, cm), 30 * cm},
		{"strip 4\n" + ringRest, Options{Size: "other"}, []measure.NM{4 * in}, 12 * in},
		{"strip 4\n" + ringRest, Options{Step: in / 2, MaxBorder: 7 * in}, steps(3*in, 5*in, in/2), 7 * in},
		{"strip 4 1/8\n" + ringRest, Options{From: 3 * in, To: 5 * in, Step: in / 2}, own(4*in+in/8, steps(3*in, 5*in, in/2)), 12 * in},
		{"strip 4 1/8\n" + ringRest, Options{From: 3 * in, To: 4*in + in/8, Step: in / 2}, own(4*in+in/8, steps(3*in, 4*in, in/2)), 12 * in},
		{"strip 4 1/8\n" + ringRest, Options{From: 3 * in, To: 4*in + in/8 - 1, Step: in / 2}, steps(3*in, 4*in, in/2), 12 * in},
		{"strip 4 1/8\n" + ringRest, Options{From: 5 * in, To: 6 * in, Step: in / 2}, steps(5*in, 6*in, in/2), 12 * in},
		{"strip 4\n" + ringRest, Options{From: 4 * in, To: 4 * in}, []measure.NM{4 * in}, 12 * in},
		{"strip 4\n" + ringRest, Options{From: 1, To: 1}, []measure.NM{1}, 12 * in},
	} {
		f := fittingOf(t, c.text, c.o)
		if got := f.sizes(); !slices.Equal(got, c.want) {
			t.Errorf("%.20q, %+v: %v, want %v", c.text, c.o, got, c.want)
		}
		if f.MaxBorder != c.border || f.Nearest != 5 {
			t.Errorf("%.20q: borders of up to %d, %d are laid out", c.text, f.MaxBorder, f.Nearest)
		}
	}
	if f := fittingOf(t, "strip 4\n"+ringRest, Options{Nearest: 1}); f.Nearest != 1 {
		t.Errorf("%d are laid out in place of one", f.Nearest)
	}
}

// TestLimitsFromBothSides: what is asked for is taken up to its limits and refused beyond, with what would do.
func TestLimitsFromBothSides(t *testing.T) {
	const in = measure.Inch
	wanted := func(width, height measure.NM) Wanted {
		return Wanted{Finished: supplies.Size{Width: width, Height: height}}
	}
	good := wanted(60*in, 80*in)
	for _, c := range []struct {
		o    Options
		want string
	}{
		{Options{Wanted: wanted(in, in)}, ""}, {Options{Wanted: wanted(in-1, in)}, "a side must be 1 in or more"}, {Options{Wanted: wanted(in, in-1)}, "a side must be 1 in or more"},
		{Options{Wanted: wanted(layout.MaxTop, layout.MaxTop)}, ""}, {Options{Wanted: wanted(layout.MaxTop+1, in)}, "a side must be 10000 in or less"}, {Options{Wanted: wanted(in, layout.MaxTop+1)}, "a side must be 10000 in or less"},
		{Options{Wanted: good, From: 1, To: 1}, ""}, {Options{Wanted: good, From: 0, To: 1}, "are none"}, {Options{Wanted: good, From: 2, To: 1}, "are none"}, {Options{Wanted: good, From: -1, To: 1}, "are none"}, {Options{Wanted: good, From: 1}, "are none"},
		{Options{Wanted: good, From: layout.MaxStrip, To: layout.MaxStrip}, ""}, {Options{Wanted: good, From: layout.MaxStrip, To: layout.MaxStrip + 1}, "the limit is 120 in"},
		{Options{Wanted: good, From: in, To: in + 99, Step: 1}, ""}, {Options{Wanted: good, From: in, To: in + 100, Step: 1}, "more than 100 sizes"}, {Options{Wanted: good, Step: -1}, "more than 100 sizes"},
		{Options{Wanted: good, MaxBorder: layout.MaxSide}, ""}, {Options{Wanted: good, MaxBorder: layout.MaxSide + 1}, "the limit is 120 in"}, {Options{Wanted: good, MaxBorder: -1}, "the limit is 120 in"}, {Options{Wanted: good, MaxBorder: 1}, ""},
		{Options{Wanted: good, Nearest: MaxNearest}, ""}, {Options{Wanted: good, Nearest: MaxNearest + 1}, "the limit is 50"}, {Options{Wanted: good, Nearest: -1}, "the limit is 50"},
	} {
		f, err := newFitting("strip 4\n"+ringRest, nil)
		if err != nil {
			t.Fatal(err)
		}
		if err := f.fill(&c.o); (err == nil) != (c.want == "") || err != nil && !strings.Contains(err.Error(), c.want) {
			t.Errorf("%+v: %v, want %q", c.o, err, c.want)
		}
	}
}

// TestWithinLists: a size is within the lists from their least to their most, each way; that for a bed is what the lists say, and with a drop the
// mattress and the drop on three sides.
func TestWithinLists(t *testing.T) {
	bed, ok := supplies.FindBed("queen")
	if !ok {
		t.Fatal("no list has a queen's bed")
	}
	w := ForBed(bed)
	least, most := bed.Spread()
	for _, c := range []struct {
		width, height measure.NM
		want          bool
	}{
		{least.Width, least.Height, true}, {most.Width, most.Height, true}, {least.Width - 1, least.Height, false}, {least.Width, least.Height - 1, false}, {most.Width + 1, most.Height, false}, {most.Width, most.Height + 1, false},
	} {
		if got := w.holds(supplies.Size{Width: c.width, Height: c.height}); got != c.want || w.Finished != bed.Quilt() || len(w.Lists) != len(bed.Quilts) {
			t.Errorf("%d by %d within the lists: %v", c.width, c.height, got)
		}
	}
	d, m := ForDrop(bed, 12*measure.Inch), bed.Mattress()
	if want := (supplies.Size{Width: m.Width + 24*measure.Inch, Height: m.Height + 12*measure.Inch}); d.Finished != want || d.Drop != 12*measure.Inch || len(d.Lists) != len(bed.Mattresses) {
		t.Errorf("with a drop of 12 in: %+v, want %v", d, want)
	}
}

// TestBlocksIn: so many blocks fit into a length with their sashes as can be laid one by one.
func TestBlocksIn(t *testing.T) {
	for _, sash := range []string{"", "sash 1 1/2 b\n", "sash 1 1/2 b around\n"} {
		f := fittingOf(t, "side 4\n"+plainRest+sash, Options{})
		sash := f.field(2, 0) // between two blocks, and round them
		for side := measure.Inch; side < 7*measure.Inch; side += measure.Inch / 3 {
			for _, blocks := range []int{1, 2, 7} {
				want := measure.NM(blocks) * side
				if s := f.design.Sash; s != nil {
					want += measure.NM(blocks-1) * s.Width
					if s.Around {
						want += 2 * s.Width
					}
				}
				if got := f.field(blocks, side); got != want {
					t.Errorf("%d blocks of %d with sashes of %d come to %d, want %d", blocks, side, sash, got, want)
				}
				for over := measure.NM(-1); over <= 1; over++ {
					n := 0
					for f.field(n+1, side) <= want+over {
						n++
					}
					if got := f.blocksIn(want+over, side); got != n {
						t.Errorf("%d blocks of %d fit into %d, want %d", got, side, want+over, n)
					}
				}
			}
			if n := f.blocksIn(-side, side); n != 0 {
				t.Errorf("%d blocks fit into less than nothing", n)
			}
		}
	}
}

// TestBordersInProportion: scaled borders come to what is asked for, each on a mark and two marks wide at the least, in proportion but for the widest, of
// several the outermost, which takes what is over.
func TestBordersInProportion(t *testing.T) {
	for units, mark := range map[measure.System]measure.NM{measure.Inches: measure.Inch / 4, measure.Centimetres: measure.Centimetre / 2} {
		for _, own := range [][]measure.NM{{8}, {4, 12}, {12, 4}, {8, 8}, {2, 24}, {9, 5, 9}, {3, 40, 3, 7}, {1, 1, 1}} {
			f := &fitting{design: &layout.Design{}}
			f.design.Units = units
			var whole, most measure.NM
			widest := 0
			for i, n := range own {
				f.design.Borders = append(f.design.Borders, layout.Edging{Width: n * mark / 2})
				if whole += n; n >= most {
					most, widest = n, i
				}
			}
			for marks := measure.NM(1); marks < 60; marks++ {
				got := f.scaledBorders(marks * mark)
				left := marks
				want := make([]measure.NM, len(own))
				for i, n := range own {
					if i != widest {
						share := (2*marks*n + whole) / (2 * whole) // of marks, halves up
						want[i] = max(2, share)
						left -= want[i]
					}
				}
				want[widest] = left
				for i := range want {
					want[i] *= mark
				}
				if left < 2 {
					want = nil
				}
				if !slices.Equal(got, want) {
					t.Errorf("%v marks of %v in %v: %v, want %v", marks, own, units, got, want)
				}
			}
		}
	}
	if got := (&fitting{design: &layout.Design{}}).scaledBorders(measure.Inch); got != nil {
		t.Errorf("of no borders %v are made", got)
	}
}

// TestParityOfGrids: a parity is wanted where grids of it alone bring the fewest warnings, and grids of both can be had.
func TestParityOfGrids(t *testing.T) {
	numbers := []int{0, 1, 2, noWay}
	for n := range 256 {
		f := &fitting{parities: [2][2]int{{numbers[n&3], numbers[n>>2&3]}, {numbers[n>>4&3], numbers[n>>6&3]}}}
		p := f.parities
		least := min(p[0][0], p[0][1], p[1][0], p[1][1])
		if f.fewest() != least {
			t.Errorf("%v: %d are fewest", p, f.fewest())
		}
		for which, pair := range [2][2]int{{min(p[0][0], p[0][1]), min(p[1][0], p[1][1])}, {min(p[0][0], p[1][0]), min(p[0][1], p[1][1])}} {
			want := Any
			switch {
			case pair[0] == noWay || pair[1] == noWay || pair[0] == pair[1]:
			case pair[0] < pair[1]:
				want = Even
			default:
				want = Odd
			}
			if got := f.parity(which); got != want {
				t.Errorf("%v, axis %d: %s, want %s", p, which, got, want)
			}
		}
	}
}

// TestGrowthSaid: what is said of how a grid grows is how it is written: by what comes back, between what stays.
func TestGrowthSaid(t *testing.T) {
	framed := "side 4\nfabric a navy\nfabric b white\nblock P plain piece a\nblock Q plain piece b\ngrid\n  P P P P P P P\n  P Q Q Q Q Q P\n  P Q Q Q Q Q P\n  P Q Q Q Q Q P\n  P P P P P P P\n  P P P P P P P\n"
	for _, c := range []struct {
		text         string
		across, down Growth
	}{
		{framed, Growth{Step: 1, Least: 3, Before: 1, Behind: 1, Parity: Any}, Growth{Step: 1, Least: 4, Before: 1, Behind: 2, Parity: Any}},
		{"side 4\n" + plainRest, Growth{Step: 2, Least: 2, Parity: Any}, Growth{Step: 2, Least: 2, Parity: Any}},
		{"strip 4\n" + ringRest, Growth{Step: 1, Least: 1, Repeats: true, Parity: Any}, Growth{Step: 1, Least: 1, Repeats: true, Parity: Any}},
		{"strip 4\n" + webRest, Growth{Step: 1, Least: 1, Parity: Even, Corners: true}, Growth{Step: 1, Least: 1, Parity: Even, Corners: true}},
		{"strip 4\nfabric a navy\nfabric b white\nblock W web wedges a kites b\nblock V web wedges b kites a\ngrid\n  W V V W V V\n  W V V W V V\n", Growth{Step: 3, Least: 3, Parity: Even, Corners: true}, Growth{Step: 1, Least: 1, Parity: Even, Corners: true}},
		{"strip 4\nfabric a navy\nfabric b white\nblock W web wedges a kites b\nblock V web wedges b kites a\ngrid\n  W V V V W V V V\n  W V V V W V V V\n", Growth{Step: 4, Least: 4, Parity: Any}, Growth{Step: 1, Least: 1, Parity: Even, Corners: true}},
		{"strip 4\n" + webRest + "sash 1 b\n", Growth{Step: 1, Least: 1, Parity: Any}, Growth{Step: 1, Least: 1, Parity: Any}},
	} {
		f := fittingOf(t, c.text, Options{})
		if a, d := f.growth(across), f.growth(down); a != c.across || d != c.down {
			t.Errorf("%s\ngrows by\n%+v\n%+v", c.text, a, d)
		}
	}
}

// TestNearestOfAll: of every grid that can be had and every width of border on a mark, the first candidates cost least.
func TestNearestOfAll(t *testing.T) {
	for i, text := range []string{"strip 3\n" + ringRest, "side 4\n" + plainRest, "strip 4\n" + webRest + "border 1 finished a\n", "side 4\n" + plainRest + "sash 1 b\nborder 2 finished a\n", "units cm\nside 12\n" + plainRest + "border 3 finished b\n",
		"side 1 1/4\n" + plainRest + "border 5 finished a\n", "side 1\n" + plainRest + "border 11 finished a\n", "side 4\nfabric a navy\nfabric b white\nblock P plain piece a\nblock Q plain piece b\ngrid\n  P P P P\n  P Q Q P\n  P Q Q P\n  P P P P\n"} {
		for n := range 12 {
			wanted := inches(int64(5+(n*17+i*5)%50), int64(5+(n*23+i*3)%60))
			wanted.Finished.Width += measure.NM(n) * measure.Inch / 7
			f := fittingOf(t, text, Options{Wanted: wanted})
			f.MaxBorder = 3 * measure.Inch
			weighed := weighing(&Report{Options: f.Options, Now: Suggestion{Text: text}})
			size := f.ownSize() + measure.NM(n%3)*f.Step
			got := measure.NM(1 << 60)
			for _, b := range []Borders{AsWritten, Scaled} {
				for _, c := range f.candidates(size, b) {
					if want := weighed(&c.Suggestion); c.cost != want {
						t.Fatalf("%+v is weighed %d, want %d", c, c.cost, want)
					}
					if c.warnings == f.fewest() {
						got = min(got, c.cost)
					}
				}
			}
			if least := f.leastOfAll(size); got != least {
				t.Errorf("%s for %v: %s, the least is %s", text, wanted.Finished, measure.Text(got, measure.Inches), measure.Text(least, measure.Inches))
			}
		}
	}
}

// TestGridsTried: of a grid that grows all counts are tried that come within two periods of what fits into the wanted size, and within what
// scaled borders make up for; where the fewest that there can be are about as many or more, these and a period more. Others stay as they are.
func TestGridsTried(t *testing.T) {
	const in = measure.Inch
	head := "side 4\nfabric a navy\nfabric b white\nblock P plain piece a\nblock Q plain piece b\ngrid\n"
	for _, c := range []struct {
		rows          string
		period, least int // across
	}{{"  P\n", 1, 1}, {"  P Q\n", 2, 2}, {"  P Q P Q P Q\n", 2, 2}, {"  P Q Q Q P\n", 1, 3}, {"  P P Q P P Q\n", 3, 3}, {"  P Q P P P Q Q P P\n", 8, 9}, {"  P Q P\n", 0, 3}} {
		for _, border := range []measure.NM{0, 1, 11} {
			text := head + c.rows
			if border > 0 {
				text += fmt.Sprintf("border %d finished b\n", border)
			}
			f := fittingOf(t, text, Options{MaxBorder: 6 * in})
			a := &f.grows.Axes[across]
			if c.period == 0 {
				a.Way = layout.Way{}
			}
			if a.Way.Period != c.period || a.Least() != c.least {
				t.Fatalf("%q grows by %d, from %d", c.rows, a.Way.Period, a.Least())
			}
			for wanted := int64(1); wanted < 90; wanted += 3 {
				f.Wanted = inches(wanted, 40)
				for b, within := range map[Borders][2]measure.NM{
					AsWritten: {inches(wanted, 1).Finished.Width - 2*border*in, inches(wanted, 1).Finished.Width - 2*border*in}, LeftOut: {inches(wanted, 1).Finished.Width, inches(wanted, 1).Finished.Width},
					Scaled: {inches(wanted, 1).Finished.Width - 12*in, inches(wanted, 1).Finished.Width},
				} {
					fits := func(length measure.NM) int { return int(max(0, length) / (4 * in)) }
					first, last := fits(within[0])-2*c.period, fits(within[1])+1+2*c.period
					var want []int
					for n := 1; n < 99; n++ {
						can := n == len(a.IDs) || c.period > 0 && n >= c.least && (n-len(a.IDs))%c.period == 0
						few := c.least > last-2*c.period && (n == c.least || n == c.least+c.period)
						if can && (c.period == 0 || n >= first && n <= last || few) {
							want = append(want, n)
						}
					}
					if got := f.counts(across, 4*in, b); !slices.Equal(got, want) {
						t.Errorf("%q for %d in, borders %s of %d in: %v blocks are tried, not %v", c.rows, wanted, b, border, got, want)
					}
				}
			}
		}
	}
	f := fittingOf(t, head+"  P\n", Options{})
	for blocks, want := range map[int64]int{maxBlocks - 3: 6, maxBlocks: 3, maxBlocks + 2: 1, maxBlocks + 3: 0} { // no more are tried than a layout may have
		f.Wanted.Finished.Width = measure.NM(blocks) * layout.MinSide
		if got := f.counts(across, layout.MinSide, LeftOut); len(got) != want || want > 0 && got[want-1] > maxBlocks {
			t.Errorf("for %d blocks %v are tried", blocks, got)
		}
	}
}

// TestParitiesTried: grids as they are and a period longer, each way, are read for their warnings, and a parity that cannot be read is not
// suggested.
func TestParitiesTried(t *testing.T) {
	f := fittingOf(t, "strip 4\n"+webRest, Options{})
	read, texts := f.Read, map[string]bool{}
	n := 0
	f.Read = func(text string) (*layout.Design, *layout.Source, []layout.Fault) {
		n++
		texts[text] = true
		return read(text)
	}
	f.parities = [2][2]int{{-5, -5}, {-5, -5}} // what was found before counts for nothing
	if f.probeParities(); n != 3 || len(texts) != 3 || f.parities != [2][2]int{} {
		t.Errorf("%d grids are read, %d unlike; their warnings %v", n, len(texts), f.parities)
	}
	f.parities = [2][2]int{{0, noWay}, {noWay, noWay}}
	for _, c := range f.candidates(f.ownSize(), AsWritten) {
		if c.Columns%2+c.Rows%2 > 0 {
			t.Errorf("%d by %d blocks are suggested", c.Columns, c.Rows)
		}
	}
}

// TestRefusedSaysWhy: a size for which nothing can be had is told with the first fault, or with the number of blocks that it would take.
func TestRefusedSaysWhy(t *testing.T) {
	for want, o := range map[string]Options{
		"takes more blocks of 4 in than the 20000": {Wanted: inches(9000, 9000), From: 4 * measure.Inch, To: 4 * measure.Inch},
		"between": {Wanted: inches(10, 10), From: measure.Inch / 8, To: measure.Inch / 8},
	} {
		r, err := Fit("side 4\n"+plainRest, o)
		if err != nil || len(r.Suggestions) != 0 || len(r.Refused) != 1 || r.Refused[0].Size != o.From || want != "between" && !strings.Contains(r.Refused[0].Message, want) || r.Refused[0].Message == "" {
			t.Errorf("%s: %+v, %v", want, r.Refused, err)
		}
	}
}

// TestSizeLines: the line for a suggestion says what differs from the layout and nothing else; widths of borders stand apart.
func TestSizeLines(t *testing.T) {
	const in = measure.Inch
	strip := "strip 4\n" + ringRest + "size twin-XL across 5\nsize fitted across 6\nsize fitted-2 across 7\n"
	for _, c := range []struct {
		text string
		o    Options
		s    Suggestion
		want string
	}{
		{strip, Options{Size: "Ö"}, Suggestion{StripCut: 4 * in, Columns: 3, Rows: 4, BordersFinished: []measure.NM{in, 3 * in}}, "size Ö"},
		{strip, Options{}, Suggestion{StripCut: 4 * in, Columns: 4, Rows: 5, BordersFinished: []measure.NM{in, 3 * in}}, "size fitted-3 across 4 down 5"},
		{strip, Options{Wanted: Wanted{Finished: inches(9, 9).Finished, Bed: "twin XL"}}, Suggestion{StripCut: 4*in + in/4, Columns: 3, Rows: 5, BordersFinished: []measure.NM{in, 3 * in}}, "size twin-XL-2 down 5 strip 4 1/4"},
		{strip, Options{Wanted: Wanted{Finished: inches(9, 9).Finished, Bed: "queen"}}, Suggestion{StripCut: 4 * in, Columns: 3, Rows: 4}, "size queen border none"},
		{strip, Options{Size: "a"}, Suggestion{StripCut: 4 * in, Columns: 3, Rows: 4, BordersFinished: []measure.NM{in, 6*in + in/2}}, "size a border 1 6 1/2"},
		{strip, Options{Size: "a"}, Suggestion{StripCut: 4 * in, Columns: 3, Rows: 4, BordersFinished: []measure.NM{in / 2, 6 * in}}, "size a border 1/2 in 6 in"},
		{"side 4\n" + plainRest, Options{Size: "a"}, Suggestion{SideFinished: 9 * in / 2, Columns: 2, Rows: 2}, "size a side 4 1/2"},
		{"side 4\n" + plainRest, Options{Size: "a"}, Suggestion{SideFinished: 4 * in, Columns: 2, Rows: 2}, "size a"},
	} {
		f := fittingOf(t, c.text, c.o)
		if got := f.sizeLine(&c.s); got != c.want {
			t.Errorf("%+v: %q, want %q", c.s, got, c.want)
		}
	}
}

// TestWrittenOutInItsSize: a layout written out in one of its sizes is as large as that size and has none any more.
func TestWrittenOutInItsSize(t *testing.T) {
	strip := "strip 4\n" + ringRest
	side := "units inches\nside 4\n" + plainRest + "border 1 finished a\n"
	sets := "strip 4\nfabric a navy\nfabric b white\nstrip-set s a 2 1/4 b 2 1/4\nblock R ring wedges s corners b\ngrid\n  R R\nborder 2 finished a\n"
	columns := "side 6\nfabric a navy\nfabric b white\nblock T tumblers pieces a b about 4\ngrid\n  T T\n  T T\nborder 2 finished a\n"
	lengths := "side 4\nfabric a navy\nfabric b white\nstrip-set s a 1 b rest\nblock R ring wedges s corners b\nblock T tumblers pieces a b about 2 3/4 cut\nblock U tumblers pieces a b line 5 1/4\ngrid\n  T R U R\nrepeat down 8\n"
	for base, lines := range map[string][]string{
		strip:   {"across 5", "down 7", "across 1 down 1", "strip 4 1/2", "border 2 5", "border 2", "border none", "across 6 strip 3 border 1/2 in 1 in", "strip 10 units cm", "across 2 strip 10 border 2 5 units cm", "strip 10 border none units cm"},
		side:    {"across 4 down 6", "side 5", "border none", "side 13 units cm", "side 13 border 3 units cm"},
		sets:    {"across 4", "strip 5", "strip 12 units cm"},
		columns: {"down 3", "side 8", "side 20 units cm"},
		lengths: {"side 8", "side 8 1/2 cut", "side 5 3/4 cut", "side 20 units cm", "side 21.5 cut units cm"},
	} {
		for _, line := range lines {
			text := base + "size named " + line + "\nsize last across 8 down 8\n"
			d, source, faults := layout.Read(text)
			if d == nil {
				var b strings.Builder
				_ = layout.Report(&b, "sizes", source, faults)
				t.Fatal(b.String())
			}
			out := WrittenOut(text, "Named", nil)
			if strings.Contains(out, " mm") {
				t.Errorf("size %s: a length lies on no mark in\n%s", line, out)
			}
			alone, _, _ := layout.Read(out)
			if alone == nil || len(alone.Sizes) != 0 {
				t.Errorf("size %s:\n%s", line, out)
				continue
			}
			if got, want := measured(alone), measured(d.InSize("named")); got != want {
				t.Errorf("size %s:\n%sis %s, want %s", line, out, got, want)
			}
			if WrittenOut(text, "none such", nil) != text || WrittenOut(text+"border", "named", nil) != text+"border" {
				t.Errorf("size %s: a layout that has errors, or not the size, is changed", line)
			}
		}
	}
}

// TestOnlyNewWarnings: what a layout warns of already is not told of a suggestion, be it of its fabrics, of what only its borders take, or of
// its sizes.
func TestOnlyNewWarnings(t *testing.T) {
	for name, text := range map[string]string{
		"a fabric that is not used":     "side 4\nfabric c #123\n" + plainRest,
		"one that the border alone has": "side 4\nfabric c #123\n" + plainRest + "border 2 finished c\n",
		"both":                          "side 4\nfabric c #123\nfabric d #234\n" + plainRest + "border 2 finished c\n",
		"a size that warns":             "strip 4\nfabric a navy\nfabric b white\nblock F floating wedges a background b\ngrid\n  F F F F\n  F F F F\n  F F F F\n  F F F F\nsize odd across 3 down 3\n",
		"a size as what is suggested":   "side 4\n" + plainRest + "size known across 4 down 6\n",
	} {
		r, err := Fit(text, Options{Wanted: inches(16, 24)})
		if err != nil || len(r.Suggestions) == 0 {
			t.Fatalf("%s: %v", name, err)
		}
		for _, b := range reportBreaks(r) {
			t.Errorf("%s: %s", name, b)
		}
		for i := range r.Suggestions {
			if s := &r.Suggestions[i]; s.MoreWarnings != 0 || len(s.Warnings) != 0 {
				t.Errorf("%s: %d by %d, borders %s: %d more warnings, %q", name, s.Columns, s.Rows, s.Borders, s.MoreWarnings, s.Warnings)
			}
		}
	}
	// An odd number of floating blocks cuts a web in two; nothing else can be had where the rows are repeated three by three.
	r, err := Fit("strip 4\nfabric a navy\nfabric b white\nblock F floating wedges a background b\nblock W web wedges a kites b\ngrid\n  F F\n  F F\n", Options{Wanted: inches(16, 16)})
	if err != nil {
		t.Fatal(err)
	}
	if s := &r.Suggestions[0]; s.Columns%2 != 0 || s.Rows%2 != 0 {
		t.Errorf("%d by %d floating blocks come first", s.Columns, s.Rows)
	}
}

// TestNowIsTheLayout: what a layout has now is told as it is written, or as the size that is named has it.
func TestNowIsTheLayout(t *testing.T) {
	text := "strip 4\n" + ringRest + "size big across 5 down 6 border 2 4\nsize bare across 2 strip 5 border none\n"
	side := "side 4\n" + plainRest + "size big across 6\n"
	for _, c := range []struct{ text, size string }{{text, ""}, {text, "big"}, {text, "BARE"}, {text, "new"}, {side, ""}, {side, "big"}} {
		r, err := Fit(c.text, Options{Wanted: inches(40, 50), Size: c.size})
		if err != nil {
			t.Fatal(err)
		}
		d, _, _ := layout.Read(c.text)
		known := d.InSize(c.size)
		if c.size != "" && known != nil {
			d = known
		}
		var edge measure.NM
		var borders []measure.NM
		for _, b := range d.Borders {
			edge, borders = edge+2*b.Width, append(borders, b.Width)
		}
		strip := measure.NM(0)
		if strings.HasPrefix(c.text, "strip") {
			strip = d.StripsCut[d.Blocks[0].Kind.Height]
		}
		want := supplies.Size{Width: measure.NM(d.Columns)*d.SideFinished + edge, Height: measure.NM(d.Rows)*d.SideFinished + edge}
		over := supplies.Size{Width: want.Width - 40*measure.Inch, Height: want.Height - 50*measure.Inch}
		if n := &r.Now; n.Finished != want || n.Over != over || n.Columns != d.Columns || n.Rows != d.Rows || n.SideFinished != d.SideFinished || n.StripCut != strip || !slices.Equal(n.BordersFinished, borders) || n.Text != c.text {
			t.Errorf("size %q: %+v, want %v", c.size, n, want)
		}
		if r.SizeKnown != (known != nil && c.size != "") || r.ByStrip != (strip > 0) || c.size != "" && r.From != f0(c.text) {
			t.Errorf("size %q: known %v, by strip %v, from %d", c.size, r.SizeKnown, r.ByStrip, r.From)
		}
	}
	metric := text + "size metric strip 10 units cm\n"
	if _, err := Fit(metric, Options{Wanted: inches(40, 50), Size: "Metric"}); err == nil || !strings.Contains(err.Error(), "the size metric is in units of its own") {
		t.Errorf("a size in other units: %v", err)
	}
	if _, err := Fit(metric, Options{Wanted: inches(40, 50), Size: "big"}); err != nil {
		t.Errorf("a size beside one in other units: %v", err)
	}
}

// f0 is a layout's own strip or side.
func f0(text string) measure.NM {
	d, _, _ := layout.Read(text)
	return d.OwnSize()
}

// TestSmallestAndLargestBlocks: blocks of the least and of the greatest side that a layout may have are suggested as others are.
func TestSmallestAndLargestBlocks(t *testing.T) {
	for _, size := range []measure.NM{layout.MinSide, layout.MaxSide} {
		r, err := Fit("side 4\n"+plainRest, Options{Wanted: Wanted{Finished: supplies.Size{Width: 8 * size, Height: 6 * size}}, From: size, To: size})
		if size == layout.MinSide {
			r, err = Fit("side 4\nseam 1/16\n"+plainRest, Options{Wanted: Wanted{Finished: supplies.Size{Width: 8 * size, Height: 6 * size}}, From: size, To: size})
		}
		if err != nil || len(r.Suggestions) != 1 || r.Suggestions[0].Columns != 8 || r.Suggestions[0].Rows != 6 {
			t.Errorf("sides of %d: %+v, %v", size, r, err)
			continue
		}
		for _, b := range reportBreaks(r) {
			t.Errorf("sides of %d: %s", size, b)
		}
	}
}
