package summary

import (
	"math"
	"testing"

	"eighthturn/internal/measure"
)

// inches is a length in inches.
func inches(nm measure.NM) float64 { return float64(nm) / float64(measure.Inch) }

// Sides that nearly suit strips of both sorts, with the error in the web's side. The figures were worked out apart from
// this program, from the outlines of the pieces grown by a quarter inch.
func TestSidesForTwoStrips(t *testing.T) {
	for _, c := range []struct {
		side         string
		ring, web    string
		errorInInch  float64
		exactWebNear float64
	}{
		{"6 1/2", "3 3/4 in", "4 3/4 in", 0.006, 4.7463},
		{"9", "5 in", "6 3/8 in", -0.007, 6.3795},
		{"12 1/4", "6 5/8 in", "8 1/2 in", -0.004, 8.5027},
		{"13", "7 in", "9 in", 0.011, 8.9927},
	} {
		s := of(t, "side "+c.side, []string{"W R", "R W"})
		if len(s.Strips) != 2 {
			t.Fatalf("side %s: %d strips, want one for webs and one for rings", c.side, len(s.Strips))
		}
		web, ring := s.Strips[0], s.Strips[1]
		if got := measure.Text(ring.WidthCut, measure.Inches); got != c.ring || ring.Nearest.WidthCut != ring.WidthCut || ring.Nearest.RowErrorFinished != 0 {
			t.Errorf("side %s: ring strips of %s, want %s exactly", c.side, got, c.ring)
		}
		if got := measure.Text(web.Nearest.WidthCut, measure.Inches); got != c.web {
			t.Errorf("side %s: web strips of %s, want %s", c.side, got, c.web)
		}
		if got := inches(web.Nearest.SideFinished - s.SideFinished); math.Abs(got-c.errorInInch) > 0.0006 {
			t.Errorf("side %s: the web's side is off by %.4f in, want %.3f", c.side, got, c.errorInInch)
		}
		if got := inches(web.Nearest.RowErrorFinished); math.Abs(got-2*c.errorInInch) > 0.0012 {
			t.Errorf("side %s: a row of two is off by %.4f in, want %.3f", c.side, got, 2*c.errorInInch)
		}
		if got := inches(web.WidthCut); math.Abs(got-c.exactWebNear) > 0.0001 {
			t.Errorf("side %s: web strips of %.4f in, want %.4f", c.side, got, c.exactWebNear)
		}
	}
}

// A strip of 4 inches finishes 3 1/2 and makes rings of 7 and webs of 5.3576 inches: the first is common practice, the
// second was worked out apart from this program.
func TestSideFromStrip(t *testing.T) {
	for rows, want := range map[string]string{"R R": "7.0000", "W W": "5.3576"} {
		s := of(t, "strip 4", []string{rows, rows})
		if got := measure.Decimal(s.SideFinished, measure.Inches, 4); got != want {
			t.Errorf("%s: side %s in, want %s", rows, got, want)
		}
		if got := measure.Text(s.Strips[0].WidthFinished, measure.Inches); got != "3 1/2 in" {
			t.Errorf("%s: strips finish %s, want 3 1/2 in", rows, got)
		}
	}
}

func TestMillimetreMarks(t *testing.T) {
	s := of(t, "units cm\nside 18", []string{"W W W W"})
	n := s.Strips[0].Nearest
	if n.Mark != measure.Millimetre || n.WidthCut != 133*measure.Millimetre {
		t.Errorf("18 cm: marks of %d nm, strips of %d nm, want millimetres and 13.3 cm", n.Mark, n.WidthCut)
	}
	// 13.3 cm less two seams of 0.75 cm, by k cos 22.5 = 0.6532815, is 18.0627 cm; four of them are 0.251 cm too long.
	if got := float64(n.RowErrorFinished) / float64(measure.Centimetre); math.Abs(got-0.251) > 0.001 {
		t.Errorf("18 cm: a row of four is %.4f cm too long, want 0.251", got)
	}
}
