package quilt_test

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/quilt"
)

// octagonTop is one block of eight wedges, so many inches wide.
func octagonTop(t *testing.T, size string) *quilt.Top {
	t.Helper()
	return lay(t, plainBlocks(size, byHeight(blocks.ToMiddle), " A"))
}

// octagonOf is the octagon that eight wedges make, finished, in inches.
func octagonOf(t *testing.T, top *quilt.Top) []place {
	t.Helper()
	var list []place
	for _, w := range ofShape(t, top, blocks.Wedge) {
		list = append(list, finished(w)[1])
	}
	if len(list) != 8 {
		t.Fatalf("%d wedges", len(list))
	}
	return list
}

// TestJudgeOctagonTable measures laid blocks against the table in testdata/geometry.
func TestJudgeOctagonTable(t *testing.T) {
	text, err := os.ReadFile("../../testdata/geometry/octagons.tsv")
	if err != nil {
		t.Fatal(err)
	}
	rows := 0
	for _, line := range strings.Split(string(text), "\n") {
		if line == "" || line[0] == '#' {
			continue
		}
		rows++
		var width, octagon, leg, exact, strip, base float64
		var in40, in42 int
		if n, err := fmt.Sscan(line, &width, &octagon, &leg, &exact, &strip, &base, &in40, &in42); n != 8 {
			t.Fatalf("%q: %v", line, err)
		}
		top := octagonTop(t, fmt.Sprintf("side %g", width))
		w := measureWedge(ofShape(t, top, blocks.Wedge)[0], 0.25)
		corner := finished(ofShape(t, top, blocks.RingCorner)[0])
		name := fmt.Sprintf("%g in wide: ", width)
		about(t, name+"octagon side", side(w.finished, 1), octagon, 5e-4)
		about(t, name+"corner leg", side(corner, 0), leg, 5e-4)
		about(t, name+"corner square", side(grown(corner, 0.25), 0), exact, 5e-4)
		about(t, name+"strip", w.strip, strip, 1e-7)
		about(t, name+"cut base", w.base, base, 5e-4)
		about(t, name+"cut tip", w.tip, 0.334, 5e-4)
		if w.fromStrip(40) != in40 || w.fromStrip(42) != in42 {
			t.Errorf("%s%d wedges in 40 in, %d in 42, want %d, %d", name, w.fromStrip(40), w.fromStrip(42), in40, in42)
		}
	}
	if rows != 9 {
		t.Errorf("the table has %d rows", rows)
	}
}

// TestJudgeElevenInch: octagons of 11 in come from strips of 6, the octagon's side finishes
// 4.556, the square between four of them is cut 5 1/16 (a maker's figures,
// http://edutach.blogspot.com/2015/03/i-didnt-think-this-through.html), the wide end is
// 5.305, and 13 wedges come from 40 in, 14 from 42 (worked out, since the maker got 12).
func TestJudgeElevenInch(t *testing.T) {
	top := octagonTop(t, "strip 6")
	if top.SideFinished != 11*25_400_000 {
		t.Errorf("strips of 6 in finish %v in", inInches(top.SideFinished))
	}
	o := octagonOf(t, top)
	about(t, "across the flats", math.Abs(middle(o[0], o[1]).y-middle(o[4], o[5]).y), 11, 1e-7)
	about(t, "across the slanted flats", apart(middle(o[1], o[2]), middle(o[5], o[6])), 11, 1e-7)
	about(t, "octagon side", side(o, 0), 4.556, 5e-4)
	about(t, "square between octagons, cut", side(o, 0)+0.5, 5+1.0/16, 0.007)
	w := measureWedge(ofShape(t, top, blocks.Wedge)[0], 0.25)
	about(t, "cut base", w.base, 5.305, 5e-4)
	if w.fromStrip(40) != 13 || w.fromStrip(42) != 14 {
		t.Errorf("%d and %d wedges", w.fromStrip(40), w.fromStrip(42))
	}
}

// TestJudgeSevenByNine: blocks of 11 in set 7 by 9 finish 77 by 99
// (https://www.rebeccagracequilting.com/2021/03/weekly-progress-kaleidoscope-on-track.html).
func TestJudgeSevenByNine(t *testing.T) {
	top := lay(t, plainBlocks("strip 6", byHeight(blocks.ToMiddle), strings.Repeat(" A A A A A A A\n", 9)))
	about(t, "width", inInches(top.Outer.Width()), 77, 0)
	about(t, "height", inInches(top.Outer.Height()), 99, 0)
}

// TestJudgeCornersGuessed: strips of 5 3/4 in with blunt tips finish 10 1/2, and corner
// squares of 4 in suit them; the maker who used them took the wedges for sharp
// (https://quilterb-bethsblog.blogspot.com/2018/12/first-20-blocks-completed.html). Sharp
// wedges of 5.75 would finish 9.693, whose corners need 3.693.
func TestJudgeCornersGuessed(t *testing.T) {
	top := octagonTop(t, "strip 5 3/4")
	about(t, "side", inInches(top.SideFinished), 10.5, 0)
	blunt := side(grown(finished(ofShape(t, top, blocks.RingCorner)[0]), 0.25), 0)
	about(t, "corner square", blunt, 3.929, 5e-4)
	if blunt > 4 {
		t.Errorf("a square of 4 in is too small for %.4f", blunt)
	}
	top = octagonTop(t, "side 9.6934")
	w := measureWedge(ofShape(t, top, blocks.Wedge)[0], 0.25)
	about(t, "sharp wedge", apart(w.raw[0], middle(w.raw[1], w.raw[2])), 5.75, 5e-4)
	about(t, "corner square, sharp", side(grown(finished(ofShape(t, top, blocks.RingCorner)[0]), 0.25), 0), 3.693, 5e-4)
}

// TestJudgeWideStrips: a strip set 9 1/2 in wide gives 8 wedges and usually a ninth is left
// (https://elaineadairpieces.blogspot.com/2011/03/surprise-another-kaleidoscope.html): blunt
// ones 8 from 40 or 42 in, 9 from 44.
func TestJudgeWideStrips(t *testing.T) {
	w := measureWedge(ofShape(t, octagonTop(t, "strip 9 1/2"), blocks.Wedge)[0], 0.25)
	for length, want := range map[float64]int{40: 8, 42: 8, 44: 9} {
		if got := w.fromStrip(length); got != want {
			t.Errorf("%d wedges from %g in, want %d", got, length, want)
		}
	}
}

// TestJudgeOctagon holds a laid octagon against the regular one of the handbooks: inradius
// (1 + sqrt 2) a / 2, circumradius sqrt(4 + 2 sqrt 2) a / 2, area 2 (1 + sqrt 2) a^2 (E.
// Weisstein's encyclopedia, http://drhuang.com/science/mathematics/math%20word/math/o/o016.htm);
// a square of 2.25 holds one of side 0.93198
// (https://mathhomeworkanswers.org/30631/how-do-find-the-size-of-sides-in-an-octogon-when-nothing-given).
func TestJudgeOctagon(t *testing.T) {
	top := octagonTop(t, "side 2.25")
	o := octagonOf(t, top)
	centre := finished(ofShape(t, top, blocks.Wedge)[0])[0]
	about(t, "worked side", side(o, 0), 0.93198, 5e-6)
	a := side(o, 0)
	for i := range o {
		about(t, "side", side(o, i), a, 1e-7)
		about(t, "inradius", apart(centre, middle(o[i], o[(i+1)%8])), (1+math.Sqrt2)*a/2, 1e-7)
		about(t, "circumradius", apart(centre, o[i]), math.Sqrt(4+2*math.Sqrt2)*a/2, 1e-7)
	}
	about(t, "area", areaOf(o), 2*(1+math.Sqrt2)*a*a, 1e-6)
}

// TestJudgeMarks: for wedges of 45 degrees a square of 10 in is marked 2.929 from each
// corner, not 3 as published (https://touchogrey.com/2016/04/10/kaleidoscope/); one of 9 in
// 2.636, not at thirds, where the slanted sides are 1.414 times the straight ones
// (https://catbirdquilts.wordpress.com/tag/tutorial/).
func TestJudgeMarks(t *testing.T) {
	for size, want := range map[string]float64{"side 10": 2.929, "side 9": 2.636} {
		top := octagonTop(t, size)
		about(t, size, side(finished(ofShape(t, top, blocks.RingCorner)[0]), 0), want, 5e-4)
	}
}

// TestJudgeSymmetry: a wedge is the same on both sides of its middle line, and one of 6 1/2
// in height with a blunt tip makes blocks of 12
// (http://sewmeblog.blogspot.com/2011/07: halves that would not join). All eight are alike.
func TestJudgeSymmetry(t *testing.T) {
	top := octagonTop(t, "strip 6 1/2")
	about(t, "side", inInches(top.SideFinished), 12, 0)
	for _, o := range ofShape(t, top, blocks.Wedge) {
		w := finished(o)
		about(t, "legs", side(w, 0), side(w, 2), 1e-7)
		about(t, "height", apart(w[0], middle(w[1], w[2])), 6, 1e-7)
	}
}

// TestJudgeOverhang: for every width the cut corner triangle reaches two seam allowances
// beyond the raw octagon's side at each end, the raw octagon is W + 1/2 across and its side
// is tan 22.5 of that, and an octagon's side and two corner legs make W (derived).
func TestJudgeOverhang(t *testing.T) {
	for _, width := range []float64{3, 4.5, 7, 11, 16.25, 30} {
		top := octagonTop(t, fmt.Sprintf("side %g", width))
		o := octagonOf(t, top)
		raw := grown(o, 0.25)
		corner := finished(ofShape(t, top, blocks.RingCorner)[0])
		about(t, "overhang at both ends", side(grown(corner, 0.25), 1)-side(raw, 1), 1, 1e-6)
		about(t, "raw side", side(raw, 0), (math.Sqrt2-1)*(width+0.5), 1e-6)
		about(t, "side and two legs", side(o, 0)+2*side(corner, 0), width, 1e-7)
	}
}
