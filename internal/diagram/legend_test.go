package diagram

import (
	"math"
	"testing"

	"eighthturn/internal/measure"
)

// TestLegendOfArrows: an arrow round a point has an entry of its own, beside that of straight
// arrows where there are any, and none where no arrow is bent.
func TestLegendOfArrows(t *testing.T) {
	straight := Mark{Line: &Line{Points: []measure.Point{{}, {X: 1e8}}, Stroke: Pressing, End: Arrow}}
	bent := Mark{Line: &Line{Points: []measure.Point{{}, {X: 1e8}, {X: 1e8, Y: 1e8}}, Stroke: Pressing, End: Arrow}}
	for _, c := range []struct {
		marks []Mark
		bent  []bool // by entry
	}{
		{[]Mark{straight}, []bool{false}},
		{[]Mark{bent, bent}, []bool{true}},
		{[]Mark{bent, straight}, []bool{false, true}},
	} {
		key := newLegend(nil, &Figure{Marks: c.marks})
		if len(key.entries) != len(c.bent) {
			t.Fatalf("%d entries, not %d", len(key.entries), len(c.bent))
		}
		for i, e := range key.entries {
			if e.bent != c.bent[i] {
				t.Errorf("entry %d, %q: bent %v", i, e.text, e.bent)
			}
			if line := key.arc([2]measure.Vec{{}, {X: legendSample, Y: 0}}); e.bent && headOf(reversed(line), e.end, e.stroke.Pen()).size < 0.5 {
				t.Error("the head of the bow is too small to be seen")
			}
		}
	}
}

// keyRow is a row of a legend: where its first sample begins and its last words end, and how wide the samples, gaps and words of its
// entries are.
type keyRow struct {
	y, from, to float64
	entries     []float64
}

// keyRows are the rows of a sheet's legend, read off its words: a sample of 26 points and 5 beyond it go before each.
func keyRows(s *Sheet) (rows []keyRow) {
	for _, i := range s.Items {
		l := i.Label
		if l == nil {
			continue
		}
		f, y := l.Size/8, l.At.Y-0.365*l.Size
		from := l.At.X - 31*f
		if n := len(rows); n == 0 || !near(rows[n-1].y, y) {
			rows = append(rows, keyRow{y: y, from: from})
		}
		row := &rows[len(rows)-1]
		row.to, row.entries = l.At.X+l.Width, append(row.entries, 31*f+l.Width)
	}
	return rows
}

// TestRowsOfLegends: the rows of a legend stand 13 points apart, the first of them 8 below the drawing, begin where the drawing does and are no wider than it, or than the widest
// entry; the first entry of the next would have had no room 14 points behind the last.
func TestRowsOfLegends(t *testing.T) {
	f := &Figure{TrueSize: true}
	for _, stroke := range []Stroke{Cut, Sew, Thin, Trim, Fold, Frame} {
		f.Marks = append(f.Marks, Mark{Line: &Line{Points: []measure.Point{{}}, Stroke: stroke}})
	}
	most := 0
	for points := 20; points < 700; points += 3 {
		f.Max = measure.Point{X: measure.NM(points) * measure.Inch / 72, Y: measure.Inch}
		bare, s := Place(f, Options{NoLegend: true}), Place(f, Options{})
		rows, widest, broad := keyRows(s), 0.0, 0.0
		for _, r := range rows {
			for _, wide := range r.entries {
				widest = max(widest, wide)
			}
			broad = max(broad, r.to+2)
		}
		for i, r := range rows {
			if !near(r.y, bare.Height-2+8+6.5+13*float64(i)) || !near(r.from, 2) || r.to > 2+max(widest, bare.Width-4)+1e-6 {
				t.Errorf("%d points: row %d is %+v", points, i, r)
			}
			if i > 0 && rows[i-1].to-2+14+r.entries[0] < max(widest, bare.Width-4)-1e-6 {
				t.Errorf("%d points: an entry of row %d had room before", points, i)
			}
		}
		if high := float64(13*len(rows)) + 8; !near(s.Words, high) || !near(s.Height, bare.Height+high) || !near(s.Width, max(bare.Width, broad)) {
			t.Errorf("%d points: %d rows, %g by %g, the drawing %g by %g", points, len(rows), s.Width, s.Height, bare.Width, bare.Height)
		}
		most = max(most, len(rows))
	}
	if most < 5 {
		t.Errorf("%d rows at the most", most)
	}
}

// TestNarrowLegends: where the paper is narrower than the widest entry of a legend, all are as much smaller as brings that to the paper's width; below the last line
// there is room for what ends it.
func TestNarrowLegends(t *testing.T) {
	for points := measure.NM(36); points < 107; points++ {
		wide := points * measure.Inch / 72
		f := &Figure{Max: pt(1, 1), Marks: []Mark{{Line: &Line{Points: []measure.Point{{}, pt(1, 1)}, Stroke: Thin}}, {Line: &Line{Points: []measure.Point{{}, pt(1, 1)}, Stroke: Cut, End: Bar}}}}
		s := Place(f, Options{Width: wide})
		rows, full := keyRows(s), 31+NewLettering().Width("edge, or sewn seam", 8, false)
		factor := (float64(wide)*TrueScale - 4) / full
		if len(rows) != 2 || !near(rows[1].entries[0], full*factor) || !near(rows[1].y-rows[0].y, 13*factor) || !near(s.Words, factor*(8+13+6.5)+max(6.5*factor, 3)) || !near(s.Width, float64(wide)*TrueScale) {
			t.Errorf("%v: rows %+v, %g of %g wide, %g high", wide, rows, s.Width, float64(wide)*TrueScale, s.Words)
		}
	}
}

// TestWidthsOfSigns: signs that the fonts lack are counted at 0.55 of the size for each column of a terminal, and those without a column as one; where another face may be
// had, letters are a fifth wider, bold ones a quarter, and signs of arithmetic by 0.45.
func TestWidthsOfSigns(t *testing.T) {
	l, any := NewLettering(), (&Options{AnyFace: true}).lettering()
	for text, columns := range map[string]float64{"ᚠ": 1, "赤": 2, "\u200d": 1, "赤い": 4} {
		if got := l.Width(text, 10, false); !near(got, 5.5*columns) || !near(any.Width(text, 10, false), 6.6*columns) || !near(any.Width(text, 10, true), 6.875*columns) {
			t.Errorf("%s: %g", text, got)
		}
	}
	for _, bold := range []bool{false, true} {
		if got, want := any.Width("×", 10, bold), 1.45*l.Width("×", 10, bold); !near(got, want) || math.IsNaN(got) {
			t.Errorf("a sign of arithmetic is %g wide, expected %g", got, want)
		}
	}
}
