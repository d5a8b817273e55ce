package sizes

import (
	"math"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// Judges: figures from outside, each with its source, and pieces built of points.

// inches is a length in inches.
func inches(nm measure.NM) float64 { return float64(nm) / float64(measure.Inch) }

// inch is a length of so many inches.
func inch(n float64) measure.NM { return measure.NM(math.Round(n * float64(measure.Inch))) }

// near fails unless two figures agree to within half a digit of the last of so many decimals.
func near(t *testing.T, what string, got, want float64, decimals int) {
	t.Helper()
	if math.Abs(got-want) > 0.5000001*math.Pow10(-decimals) {
		t.Errorf("%s: got %.6f, want %g", what, got, want)
	}
}

func stripOf(t *testing.T, o Options, cut measure.NM) Strip {
	t.Helper()
	o.From, o.To = cut, cut
	c, err := Strips(o)
	if err != nil {
		t.Fatal(err)
	}
	return c.Strips[0]
}

// side is the side of blocks of a kind, which the test may name.
func (c *StripChart) sideOf(s Strip, kind string) measure.NM {
	for i, h := range c.Heights {
		for _, name := range h.Kinds {
			if name == kind {
				return s.SidesFinished[i]
			}
		}
	}
	return 0
}

// Strips of 3 1/2, 4 and 5 1/2 inches. Rings, kite squares and background squares: common practice, no source. Webs, the wedge's
// base, its tip and pitch: worked out from the outlines, grown with mitred corners.
func TestKnownStrips(t *testing.T) {
	c, err := Strips(Options{From: inch(3.5), To: inch(5.5), Step: inch(0.5)})
	if err != nil {
		t.Fatal(err)
	}
	of := map[measure.NM]Strip{}
	for _, s := range c.Strips {
		of[s.StripCut] = s
	}
	near(t, "3 1/2, ring", inches(c.sideOf(of[inch(3.5)], "ring")), 6, 6)
	four := of[inch(4)]
	near(t, "4, ring", inches(c.sideOf(four, "ring")), 7, 6)
	near(t, "4, web", inches(c.sideOf(four, "web")), 5.3576, 4)
	near(t, "4, star", inches(c.sideOf(four, "star")), 5.3576, 4)
	near(t, "4, kite", inches(four.Squares[kite].Need), 3.3907, 4)
	near(t, "4, kite to cut", inches(four.Squares[kite].Cut), 3.5, 6)
	near(t, "4, stop", inches(four.Squares[stop].Need), 6.2111, 4)
	near(t, "4, stop to cut", inches(four.Squares[stop].Cut), 7, 6)
	near(t, "4, base", inches(four.WedgeBaseCut), 3.6478, 4)
	near(t, "4, tip", inches(four.WedgeTipCut), 0.3341, 4)
	near(t, "4, pitch", inches(four.PitchCut), 1.9909, 4)
	wide := of[inch(5.5)]
	near(t, "5 1/2, kite", inches(wide.Squares[kite].Need), 4.5388, 4)
	near(t, "5 1/2, kite to cut", inches(wide.Squares[kite].Cut), 4.75, 6)
	near(t, "5 1/2, corner", inches(wide.Squares[corner].Need), 3.7825, 4)
	near(t, "5 1/2, corner from the kite's square", inches(wide.Squares[corner].KitesCut), 4.75, 6)
}

// Wedges from 40 inches: counted by laying them down one by one.
func TestWedgesOfForty(t *testing.T) {
	for cut, want := range map[float64]int{2: 33, 3: 24, 4: 19, 5: 15, 6: 13, 8: 10} {
		if got := stripOf(t, Options{}, inch(cut)).Wedges; got != want {
			t.Errorf("strip %g: %d wedges, want %d", cut, got, want)
		}
	}
}

// Rings of eight blunt wedges. Strip, octagon side, corner leg, corner square and wedges of 40 and 42 inches: worked out
// apart from this program; confirmed where they are published: finished 11 from 6 inch strips (edutach.blogspot.com,
// March 2015), an octagon's side in a square (mathhomeworkanswers.org 30631: 2.25 gives 0.93198).
// Rule is the cut by the rule of thumb, leg + 7/8 (karencombs.com, page 31). In the rows marked trap the rule lies just
// over an eighth, so that it asks for an eighth more than the exact need does.
func TestRings(t *testing.T) {
	for _, row := range []struct {
		side, strip, octagon, need, cut, rule, base float64
		forty, fortyTwo                             int
		trap                                        bool
	}{
		{4, 2.5, 1.657, 2.025, 2.125, 2.125, 2.405, 28, 29, false},
		{6, 3.5, 2.485, 2.611, 2.625, 2.75, 3.234, 21, 22, true},
		{8, 4.5, 3.314, 3.197, 3.25, 3.25, 4.062, 17, 18, false},
		{9, 5, 3.728, 3.490, 3.5, 3.625, 4.476, 15, 16, true},
		{10, 5.5, 4.142, 3.782, 3.875, 3.875, 4.890, 14, 15, false},
		{11, 6, 4.556, 4.075, 4.125, 4.125, 5.305, 13, 14, false},
		{12, 6.5, 4.971, 4.368, 4.375, 4.5, 5.719, 12, 12, true},
		{14, 7.5, 5.799, 4.954, 5, 5, 6.547, 10, 11, false},
		{16, 8.5, 6.627, 5.540, 5.625, 5.625, 7.376, 9, 9, false},
	} {
		s := stripOf(t, Options{}, inch(row.strip))
		near(t, "octagon's side", inches(s.WedgeBaseFinished), row.octagon, 3)
		near(t, "corner's need", inches(s.Squares[corner].Need), row.need, 3)
		near(t, "corner's cut", inches(s.Squares[corner].Cut), row.cut, 6)
		near(t, "corner's rule", inches(s.Squares[corner].RuleCut), row.rule, 6)
		near(t, "base", inches(s.WedgeBaseCut), row.base, 3)
		if s.Wedges != row.forty {
			t.Errorf("strip %g: %d wedges of 40, want %d", row.strip, s.Wedges, row.forty)
		}
		if n := stripOf(t, Options{UsableWidth: inch(42)}, inch(row.strip)).Wedges; n != row.fortyTwo {
			t.Errorf("strip %g: %d wedges of 42, want %d", row.strip, n, row.fortyTwo)
		}
		if trap := s.Squares[corner].RuleCut != s.Squares[corner].Cut; trap != row.trap {
			t.Errorf("side %g: the rule differs: %v", row.side, trap)
		}
		if more := s.Squares[corner].RuleCut - s.Squares[corner].Cut; more != 0 && more != measure.Inch/8 {
			t.Errorf("side %g: the rule differs by %g, which is not an eighth", row.side, inches(more))
		}
	}
	near(t, "octagon in 2.25", inches(stripOf(t, Options{}, inch(2.25/2+0.5)).WedgeBaseFinished), 0.93198, 5)
}

// A strip set 9 1/2 wide gives 8 wedges of 40 and 42 inches, a ninth of 44 (elaineadairpieces.blogspot.com, March 2011:
// eight, and usually a ninth left).
func TestWideStrips(t *testing.T) {
	for usable, want := range map[float64]int{40: 8, 42: 8, 44: 9} {
		if n := stripOf(t, Options{UsableWidth: inch(usable)}, inch(9.5)).Wedges; n != want {
			t.Errorf("%d wedges of %g, want %d", n, usable, want)
		}
	}
}

// What seams add to the leg of a half-square triangle in centimetres: 2.05, 2.17 and 2.56 for seams of 6, 6.35 and 7.5 mm,
// by (2 + sqrt 2) seam. A shop's conversion table (pandqmagazine.com, forum thread 13) gives 2.5 for 7.5 mm: 0.6 mm short,
// so that a corner cut by it can be too small, and no cut of ours is.
func TestMetricCorners(t *testing.T) {
	for mm, adds := range map[float64]float64{6: 2.05, 6.35: 2.17, 7.5: 2.56} {
		near(t, "adds", float64(blocks.HalfSquareExact(0, measure.NM(mm*float64(measure.Millimetre))))/float64(measure.Centimetre), adds, 2)
	}
	c, err := Strips(Options{Units: measure.Centimetres})
	if err != nil {
		t.Fatal(err)
	}
	short := 0
	for _, s := range c.Strips {
		leg := s.Squares[corner].Need - blocks.HalfSquareExact(0, c.Seam)
		if published := measure.RoundUp(leg+5*measure.Centimetre/2, measure.Millimetre); published < s.Squares[corner].Need {
			short++
		}
		if s.Squares[corner].Cut < s.Squares[corner].Need || s.Squares[corner].Cut%measure.Millimetre != 0 || s.Squares[corner].RuleCut != 0 {
			t.Errorf("strip %s: corner %v", measure.Text(s.StripCut, c.Units), s.Squares[corner])
		}
		if s.Squares[kite].Cut%(measure.Centimetre/2) != 0 || s.Squares[kite].Cut-s.Squares[kite].Need < 3*measure.Millimetre/2 {
			t.Errorf("strip %s: kite %v", measure.Text(s.StripCut, c.Units), s.Squares[kite])
		}
	}
	if len(c.Strips) != 17 || short == 0 {
		t.Errorf("%d strips; the published figure is short for %d of them, expected some", len(c.Strips), short)
	}
}

// A metric strip of 11 cm with seams of 0.75 cm: worked out by hand from h = 9.5 cm. Ring 2 h = 19; web h / (cos 22.5 / sqrt 2)
// = 14.5420; kite 0.75 + 14.5420 / 2 + 0.75 / (sqrt 2 sin 22.5) = 9.4068, cut 10; stop 14.5420 + 2.5607 = 17.1026, cut 20;
// corner 0.292893 x 19 + 2.5607 = 8.1256, cut 8.2.
func TestMetricStrip(t *testing.T) {
	o := Options{Units: measure.Centimetres}
	s := stripOf(t, o, 11*measure.Centimetre)
	c, _ := Strips(o)
	for what, pair := range map[string][2]float64{
		"ring": {float64(c.sideOf(s, "ring")), 19}, "web": {float64(c.sideOf(s, "web")), 14.5420},
		"kite": {float64(s.Squares[kite].Need), 9.4068}, "kite's cut": {float64(s.Squares[kite].Cut), 10},
		"stop": {float64(s.Squares[stop].Need), 17.1026}, "stop's cut": {float64(s.Squares[stop].Cut), 20},
		"corner": {float64(s.Squares[corner].Need), 8.1256}, "corner's cut": {float64(s.Squares[corner].Cut), 8.2},
	} {
		near(t, what, pair[0]/float64(measure.Centimetre), pair[1], 4)
	}
}

// Sides that nearly suit both strips, and by how much the web's side is off: worked out apart from this program.
func TestSidesForBoth(t *testing.T) {
	for _, row := range []struct{ side, ring, web, off float64 }{
		{6.5, 3.75, 4.75, 0.006}, {9, 5, 6.375, -0.007}, {12.25, 6.625, 8.5, -0.004}, {13, 7, 9, 0.011},
	} {
		c, err := Sides(Options{From: inch(row.side), To: inch(row.side)})
		if err != nil {
			t.Fatal(err)
		}
		s := c.Sides[0]
		for i, h := range c.Heights {
			want, off := row.web, row.off
			if h.Kinds[0] == "ring" {
				want, off = row.ring, 0
			}
			near(t, "mark", inches(s.Strips[i].MarkCut), want, 6)
			near(t, "error", inches(s.Strips[i].SideErrorFinished), off, 3)
		}
		if !s.Near {
			t.Errorf("%g is not said to suit both", row.side)
		}
	}
	c, err := Sides(Options{From: inch(7), To: inch(7)})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "7, web's strip", inches(c.Sides[0].Strips[0].StripCut), 5.0730, 4)
	near(t, "7, ring's strip", inches(c.Sides[0].Strips[1].StripCut), 4, 6)
}

// Line 10 on a strip of 7 1/2: worked out from the outline.
func TestTumblerOfLineTen(t *testing.T) {
	c, err := Tumblers(Options{StripCut: inch(7.5), From: inch(10), To: inch(10)})
	if err != nil {
		t.Fatal(err)
	}
	p := c.Tumblers[0]
	near(t, "wide", inches(p.WideCut), 8.6184, 4)
	near(t, "narrow", inches(p.NarrowCut), 2.4052, 4)
	near(t, "mean", inches(p.MeanFinished), 4.9706, 4)
	if p.Slim {
		t.Error("it is said to be slim")
	}
}
