package fit

import (
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/supplies"
	"eighthturn/internal/quilttest/judges"
)

// Judges: published sizes of tops, each beside its source, and a search of everything. A slip is a published figure that is
// wrong; the test sees that it does not come out.

// quarters is so many quarter inches.
func quarters(n int64) measure.NM { return measure.NM(n) * measure.Inch / 4 }

// nearest is the first suggestion with borders as they are written.
func nearest(t *testing.T, text string, o Options) *Suggestion {
	t.Helper()
	r, err := Fit(text, o)
	if err != nil {
		t.Fatal(err)
	}
	for i := range r.Suggestions {
		if s := &r.Suggestions[i]; s.Borders == AsWritten {
			return s
		}
	}
	t.Fatal("nothing comes near")
	return nil
}

func TestPublishedTops(t *testing.T) {
	size := func(width, height measure.NM) Wanted {
		return Wanted{Finished: supplies.Size{Width: width, Height: height}}
	}
	for _, c := range []struct {
		source        string
		text          string
		size          measure.NM // strip or side
		wanted        Wanted
		columns, rows int
		width, height measure.NM
	}{
		{
			"11 in octagons from 6 in strips, http://edutach.blogspot.com/2015/03/i-didnt-think-this-through.html, set 7 by 9 = 63: https://www.rebeccagracequilting.com/2021/03/weekly-progress-kaleidoscope-on-track.html",
			"strip 6\nfabric a navy\nfabric b white\nblock R ring wedges a b corners b\ngrid\n  R R\n  R R\n", 6 * measure.Inch, inches(77, 99), 7, 9, 77 * measure.Inch, 99 * measure.Inch,
		},
		{
			"280 squares for a twin, 63 / 4.5 = 14 and 88 / 4.5 = 19.56, taken as 20: http://crazymomquilts.blogspot.com/2009/12/how-to-calculate-quilt-measurements.html?m=1",
			"side 4 1/2\nfabric a navy\nblock P plain piece a\ngrid\n  P\n", quarters(18), inches(63, 88), 14, 20, 63 * measure.Inch, 90 * measure.Inch,
		},
		{
			"20 blocks of 9 in, 4 by 5, sashes of 3 5/8 in; a slip gives 55 3/8 in across: https://sherriquiltsalot.com/2020/04/15/mathing-the-yardage-ii/",
			"side 9\nfabric a navy\nfabric b white\nblock P plain piece a\ngrid\n  P P\nsash 3 5/8 b around\n", 9 * measure.Inch, size(55*measure.Inch+measure.Inch*3/8, quarters(267)), 4, 5, 54*measure.Inch + measure.Inch/8, quarters(267),
		},
		{
			"25 blocks of 6 in with borders cut 2 1/2 in, published 35 in: http://quilterbydesign.com/lessons/kaleidoscope/kaleidoscope.html",
			"side 6\nfabric a navy\nfabric b white\nblock R ring wedges a corners b\ngrid\n  R\nrepeat across 3 down 3\nborder 2 1/2 cut b\n", 6 * measure.Inch, inches(35, 35), 5, 5, 34 * measure.Inch, 34 * measure.Inch,
		},
	} {
		s := nearest(t, c.text, Options{Wanted: c.wanted, From: c.size, To: c.size})
		if s.Columns != c.columns || s.Rows != c.rows || s.Finished != (supplies.Size{Width: c.width, Height: c.height}) {
			t.Errorf("%s: %d by %d, %s by %s", c.source, s.Columns, s.Rows, measure.Text(s.Finished.Width, measure.Inches), measure.Text(s.Finished.Height, measure.Inches))
		}
	}
}

// 35 blocks, 5 by 7, of a motif that wants groups of four: http://quilt-o-mania.blogspot.com/2006/07/how-to-square-it-off.html
func TestGroupsOfFour(t *testing.T) {
	for _, text := range []string{
		"strip 4\nfabric a navy\nfabric b white\nblock S floating-star kites a wedges b background b\ngrid\n  S S\n  S S\n",
		"strip 4\nfabric a navy\nfabric b white\nblock F floating wedges a background b\ngrid\n  F F F F\n  F F F F\n  F F F F\n  F F F F\n",
	} {
		r, err := Fit(text, Options{Wanted: inches(27, 37), From: 4 * measure.Inch, To: 4 * measure.Inch}) // 5 and 7 blocks of 5.3576 in
		if err != nil {
			t.Fatal(err)
		}
		if r.Across.Parity != Even || r.Down.Parity != Even || r.Across.Corners {
			t.Errorf("it grows by %+v and %+v", r.Across, r.Down)
		}
		if s := r.Suggestions[0]; s.Columns%2 != 0 || s.Rows%2 != 0 || s.MoreWarnings != 0 {
			t.Errorf("%d by %d blocks with %d warnings are suggested", s.Columns, s.Rows, s.MoreWarnings)
		}
	}
}

// Nothing is nearer than what is suggested: all counts that the grid can have and all borders on marks are tried.
func TestNothingIsNearer(t *testing.T) {
	for _, name := range []string{"beacon", "compass", "flotsam", "jetty", "lanterns", "shutters", "starfish", "tide", "regatta"} {
		for _, wanted := range []Wanted{inches(60, 80), inches(90, 100), inches(20, 90)} {
			text := sample(t, name)
			r, err := Fit(text, Options{Wanted: wanted})
			if err != nil {
				t.Fatal(err)
			}
			f, err := newFitting(text, nil)
			if err != nil {
				t.Fatal(err)
			}
			f.Options = r.Options
			f.plan()
			for i, size := range f.sizes() {
				if i%judges.Of(6, 3) != 0 {
					continue // a few sizes tell as much
				}
				least := f.leastOfAll(size)
				got := measure.NM(1 << 60)
				for i := range r.Suggestions {
					if s := &r.Suggestions[i]; s.Borders != LeftOut && s.SideFinished == f.side(size) {
						got = min(got, f.cost(s))
					}
				}
				if got != least {
					t.Errorf("%s for %v, %s: %s is suggested, the least is %s", name, wanted.Finished, measure.Text(size, r.Units), measure.Text(got, r.Units), measure.Text(least, r.Units))
				}
			}
		}
	}
}

// leastOfAll is the least cost of any grid with borders as written or on marks.
func (f *fitting) leastOfAll(size measure.NM) measure.NM {
	least := measure.NM(1 << 60)
	own, mark := sum(f.bordersNow()), f.mark()
	totals := []measure.NM{own}
	for total := 2 * mark * measure.NM(len(f.design.Borders)); total <= f.MaxBorder && own > 0; total += mark {
		totals = append(totals, total)
	}
	for x := 1; x < 50; x++ {
		for y := 1; y < 50; y++ {
			if !f.grows.Axes[across].Allows(x) || !f.grows.Axes[down].Allows(y) || f.parities[x%2][y%2] != f.fewest() {
				continue
			}
			c := candidate{}
			c.SideFinished, c.Columns, c.Rows = f.side(size), x, y
			for _, total := range totals {
				least = min(least, f.costWith(&c, total))
			}
		}
	}
	return least
}
