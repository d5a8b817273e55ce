package sizes

import (
	"math"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// The columns of Strip.Squares.
const (
	kite = iota
	stop
	corner
)

// Laws, for any strip, seam and width of cloth.

func TestStripLaws(t *testing.T) {
	rows := 0
	for _, units := range []measure.System{measure.Inches, measure.Centimetres} {
		for seam := measure.Inch / 16; seam <= MaxSeam; seam += 3 * measure.Inch / 16 {
			for _, usable := range []measure.NM{10 * measure.Inch, 40 * measure.Inch, 108 * measure.Inch} {
				c, err := Strips(Options{Units: units, Seam: seam, UsableWidth: usable, From: 2*seam + measure.Inch/2, To: 30 * measure.Inch, Step: 17 * measure.Inch / 32})
				if err != nil {
					t.Fatal(err)
				}
				rows += len(c.Strips)
				for i := range c.Strips {
					for _, broken := range stripBreaks(c, &c.Strips[i]) {
						t.Errorf("%s, seam %s, cloth %s: %s", c.text(c.Strips[i].StripCut), c.text(seam), c.text(usable), broken)
					}
				}
			}
		}
	}
	if rows < 500 {
		t.Errorf("only %d strips were held to the laws", rows)
	}
}

// stripBreaks are the laws that a strip breaks.
func stripBreaks(c *StripChart, s *Strip) []string {
	steps := blocks.StepsOf(c.Units)
	var list []string
	law := func(holds bool, text string) {
		if !holds {
			list = append(list, text)
		}
	}
	law(s.WedgeFinished+2*c.Seam == s.StripCut, "cut is finished and two seams")
	for i, h := range c.Heights {
		law(diff(h.Finished(s.SidesFinished[i]), s.WedgeFinished) <= 2, "a block's side gives its wedge back")
	}
	law(s.Squares[kite].Cut >= s.Squares[kite].Need+steps.Spare && s.Squares[kite].Cut < s.Squares[kite].Need+steps.Spare+steps.Trimmed && s.Squares[kite].Cut%steps.Trimmed == 0, "a kite's square is the next step that leaves something to trim")
	law(s.Squares[stop].Cut >= s.Squares[stop].Need && s.Squares[stop].Cut == 2*s.Squares[kite].Cut, "two background pieces fit a square of twice the kite's")
	law(s.Squares[corner].Cut >= s.Squares[corner].Need && s.Squares[corner].Cut < s.Squares[corner].Need+steps.Exact && s.Squares[corner].Cut%steps.Exact == 0, "a corner's square is the next step")
	law(s.Squares[corner].KitesCut == 0 || s.Squares[corner].KitesCut >= s.Squares[corner].Need, "a kite's square serves only where it is large enough")
	law(s.Squares[corner].RuleCut == 0 || s.Squares[corner].RuleCut >= s.Squares[corner].Cut, "the rule of thumb never asks for less")
	law(diff(2*s.PitchCut, s.WedgeBaseCut+s.WedgeTipCut) <= 2, "two wedges take a base and a tip of strip")
	law(s.Wedges == laidDown(s.WedgeBaseCut, s.WedgeTipCut, c.UsableWidth), "as many wedges as can be laid down")
	return list
}

func diff(a, b measure.NM) measure.NM { return max(a-b, b-a) }

// laidDown counts pieces laid side by side, wide and narrow ends in turn, until the cloth ends. Upper and lower edges grow
// apart; the longer one counts.
func laidDown(wide, narrow, cloth measure.NM) int {
	upper, lower := measure.NM(0), measure.NM(0)
	for n := 0; ; n++ {
		if n%2 == 0 {
			lower, upper = lower+wide, upper+narrow
		} else {
			lower, upper = lower+narrow, upper+wide
		}
		slanted := (wide - narrow) / 2 // from the first piece's squared end
		if max(lower, upper+slanted) > cloth || max(lower, upper+slanted) < 0 {
			return n
		}
	}
}

func TestStripLawsCatch(t *testing.T) {
	c, err := Strips(Options{From: 6 * measure.Inch, To: 6 * measure.Inch})
	if err != nil {
		t.Fatal(err)
	}
	for what, spoil := range map[string]func(*Strip){
		"a wedge that keeps a seam":              func(s *Strip) { s.WedgeFinished += c.Seam },
		"sides in the wrong columns":             func(s *Strip) { s.SidesFinished = []measure.NM{s.SidesFinished[1], s.SidesFinished[0]} },
		"a kite's square rounded down":           func(s *Strip) { s.Squares[kite].Cut -= measure.Inch / 4 },
		"a kite's square a step too large":       func(s *Strip) { s.Squares[kite].Cut += measure.Inch / 4 },
		"a background square of the kite's size": func(s *Strip) { s.Squares[stop].Cut = s.Squares[kite].Cut },
		"a corner's square rounded down":         func(s *Strip) { s.Squares[corner].Cut -= measure.Inch / 8 },
		"a kite's square that is too small":      func(s *Strip) { s.Squares[corner].KitesCut = s.Squares[corner].Need - 1 },
		"a rule below the need":                  func(s *Strip) { s.Squares[corner].RuleCut = s.Squares[corner].Cut - measure.Inch/8 },
		"a finished base for the cut one":        func(s *Strip) { s.WedgeBaseCut = s.WedgeBaseFinished },
		"one wedge too many":                     func(s *Strip) { s.Wedges++ },
		"one wedge too few":                      func(s *Strip) { s.Wedges-- },
		"no wedges":                              func(s *Strip) { s.Wedges = 0 },
	} {
		s := c.Strips[0]
		s.Squares = slices.Clone(s.Squares)
		spoil(&s)
		if len(stripBreaks(c, &s)) == 0 {
			t.Errorf("%s goes unseen", what)
		}
	}
}

func TestSideLaws(t *testing.T) {
	for _, units := range []measure.System{measure.Inches, measure.Centimetres} {
		c, err := Sides(Options{Units: units, From: 2 * measure.Inch, To: 40 * measure.Inch, Step: measure.Inch / 7})
		if err != nil {
			t.Fatal(err)
		}
		mark := blocks.StepsOf(units).Mark
		if len(c.Sides) < 100 || len(c.Heights) < 2 {
			t.Errorf("only %d sides for %d heights", len(c.Sides), len(c.Heights))
		}
		for _, s := range c.Sides {
			near := true
			for _, strip := range s.Strips {
				near = near && diff(0, strip.SideErrorFinished) <= Near
			}
			if s.Near != near {
				t.Errorf("%s: said to be near: %v", c.text(s.SideFinished), s.Near)
			}
			for i, h := range c.Heights {
				strip := s.Strips[i]
				if back := h.Side(measure.Of(strip.StripCut - 2*c.Seam)); diff(back, s.SideFinished) > 3 {
					t.Errorf("%s: its strip makes %s", c.text(s.SideFinished), c.text(back))
				}
				if strip.MarkCut%mark != 0 || 2*diff(strip.MarkCut, strip.StripCut) > mark {
					t.Errorf("%s: %s is not the mark nearest to %s", c.text(s.SideFinished), c.text(strip.MarkCut), c.text(strip.StripCut))
				}
				if (strip.MarkCut > strip.StripCut+2) != (strip.SideErrorFinished > 4) {
					t.Errorf("%s: a strip that is too wide makes a side that is too large, not %d nm", c.text(s.SideFinished), strip.SideErrorFinished)
				}
			}
		}
	}
}

// Tumblers: cut is finished with a seam on every side, neighbours in a strip share their slanted edges, and the lean is an
// eighth of a turn's half.
func TestTumblerLaws(t *testing.T) {
	for _, units := range []measure.System{measure.Inches, measure.Centimetres} {
		for strip := measure.Inch; strip < 12*measure.Inch; strip += 5 * measure.Inch / 8 {
			c, err := Tumblers(Options{Units: units, StripCut: strip, From: strip + measure.Inch/8, To: strip + 9*measure.Inch})
			if err != nil {
				t.Fatal(err)
			}
			if len(c.Tumblers) < 8 {
				t.Errorf("strip %s: only %d lines", c.text(strip), len(c.Tumblers))
			}
			for _, p := range c.Tumblers {
				lean := math.Atan(float64(p.WideCut-p.NarrowCut)/2/float64(strip)) * 180 / math.Pi
				grow := float64(c.Seam) * (1/math.Cos(math.Pi/8) + math.Tan(math.Pi/8))
				switch {
				case math.Abs(lean-22.5) > 1e-5:
					t.Errorf("strip %s, line %s: it leans %g", c.text(strip), c.text(p.LineCut), lean)
				case diff(p.WideFinished+p.NarrowFinished, 2*p.MeanFinished) > 2:
					t.Errorf("strip %s, line %s: the mean is not half-way", c.text(strip), c.text(p.LineCut))
				case math.Abs(float64(p.NarrowCut-p.NarrowFinished)-2*(grow-2*float64(c.Seam)*math.Tan(math.Pi/8))) > 2:
					t.Errorf("strip %s, line %s: narrow is %s cut, %s finished", c.text(strip), c.text(p.LineCut), c.text(p.NarrowCut), c.text(p.NarrowFinished))
				case p.Pieces != laidDown(p.WideCut, p.NarrowCut, c.UsableWidth):
					t.Errorf("strip %s, line %s: %d pieces", c.text(strip), c.text(p.LineCut), p.Pieces)
				case p.Slim != (p.NarrowFinished < 2*c.Seam):
					t.Errorf("strip %s, line %s: slim %v", c.text(strip), c.text(p.LineCut), p.Slim)
				}
			}
		}
	}
}

func TestRefusals(t *testing.T) {
	for _, o := range []Options{
		{From: 9 * measure.Inch}, {From: measure.Inch / 2}, {Step: 1}, {Seam: 2 * measure.Inch}, {Seam: -1}, {Step: -measure.Inch},
		{From: -measure.Inch}, {To: 121 * measure.Inch}, {UsableWidth: 401 * measure.Inch}, {From: math.MinInt64}, {To: math.MaxInt64},
	} {
		if c, err := Strips(o); err == nil || c != nil {
			t.Errorf("strips: %v is not refused", o)
		}
	}
	for _, o := range []Options{{From: measure.Inch / 8}, {To: measure.Inch}, {Step: 1000}, {StripCut: 200 * measure.Inch}} {
		if _, err := Sides(o); err == nil {
			t.Errorf("sides: %v is not refused", o)
		}
	}
	for _, o := range []Options{
		{From: 5 * measure.Inch}, {StripCut: measure.Inch / 2}, {StripCut: math.MaxInt64}, {StripCut: -1}, {Step: math.MaxInt64, To: -4},
		{StripCut: 120 * measure.Inch}, {From: math.MaxInt64}, {Step: 1, To: 9 * measure.Inch},
	} {
		if _, err := Tumblers(o); err == nil {
			t.Errorf("tumblers: %v is not refused", o)
		} else if text := err.Error(); strings.HasSuffix(text, ".") || text[:1] != strings.ToLower(text[:1]) {
			t.Errorf("%q", text)
		}
	}
}
