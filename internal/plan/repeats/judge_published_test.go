package repeats

import (
	"testing"

	"eighthturn/internal/measure"
)

// TestJudgeCurtainRule: cut lengths are rounded up to whole repeats, and one more is bought for where the bolt begins.
func TestJudgeCurtainRule(t *testing.T) {
	for _, c := range []struct {
		source         string
		length, repeat float64
		repeats        int
		cut            float64
	}{
		{"diyideas.com, Figuring Pattern Repeats: 96 by 27, 4 repeats, 108 in, and one more to buy", 96, 27, 4, 108},
		{"Workroom Threads, August 2011: 116 by 25, 5 repeats, 125 in", 116, 25, 5, 125},
		{"fayefortune.blogspot.com, 2012-03, How to figure fabric repeat: 114 by 4 1/2, 26 repeats; one more is added", 114, 4.5, 26, 117},
		{"drpinc.net, Measuring for draperies: 114 by 11, 11 repeats", 114, 11, 11, 121},
		{"patemeadows.com, Matching Repeats/Patterned Fabric: 90 by 27, 4 repeats, 108 in", 90, 27, 4, 108},
		{"freelivecalculators.com, How to Calculate Curtain Fabric for a Pattern Repeat: 100 by 8, 13 repeats, 104 in", 100, 8, 13, 104},
		{"common practice: whole repeats stay as they are", 108, 27, 4, 108},
	} {
		if n := Whole(inch(c.length), inch(c.repeat)); n != c.repeats || measure.NM(n)*inch(c.repeat) != inch(c.cut) {
			t.Errorf("%s: %d repeats", c.source, n)
		}
		if buy := ToBuy(inch(c.length), inch(c.repeat)); buy != inch(c.cut+c.repeat) {
			t.Errorf("%s: buy %.2f in", c.source, inches(buy))
		}
	}
}

// TestJudgeStackedStrips: 11 in octagons from strips of 6 in, the repeat 12 1/2 in, cut through 8 layers: her 12 sets of each
// strip make 24 blocks of about 3 yd, and 2 blocks more would have taken another 3 yd (edutach.blogspot.com, 2015-03, I didn't think this
// through).
func TestJudgeStackedStrips(t *testing.T) {
	got := SetsOf(24, 12, 8, inch(6), inch(12.5))
	if got.Strips != 2 || got.Repeats != 1 || got.LengthCut != inch(100) || got.LengthCut > 3*measure.Yard {
		t.Errorf("24 sets: %+v", got)
	}
	if more := SetsOf(26, 12, 8, inch(6), inch(12.5)); more.LengthCut != 2*got.LengthCut {
		t.Errorf("26 sets: %+v", more)
	}
}

// TestJudgeSixRepeats: six like pieces of cloth of a repeat of 21 in are 3 1/2 yd (quiltingboard.com, post 2385823), of 24 in 4 yd
// (ifthesethreadscouldtalk.com, tag repeats).
func TestJudgeSixRepeats(t *testing.T) {
	for repeat, yards := range map[float64]float64{21: 3.5, 24: 4} {
		piece := Piece{shaped(5, 5, 6, 5, 6, 6, 5, 6), 6} // one place of the print, which comes once across the cloth
		s := Stack(Cloth{Print{inch(30), inch(repeat)}, inch(40), false, 0}, []Piece{piece}, 6, 1000)
		if s.LengthCut != inch(36*yards) || counted(s.Layer, 0) != 1 {
			t.Errorf("repeat %g: %.2f in, %d in a layer", repeat, inches(s.LengthCut), counted(s.Layer, 0))
		}
	}
}

// TestJudgeFussyCutRectangles: 9 sets of 8 like rectangles of 4 by 5 in and 16 wedges more from 1 5/8 yd of cloth 44 to 45 in wide, of
// which this takes 42 to be usable (All People Quilt, Christmas Candy, 2014-10-06). The page does not give the repeat: 8 of them and the
// strip for the 16 must fit, and so they do up to a repeat of 6 3/4 in, which holds the 5 in strip and its 9 places.
func TestJudgeFussyCutRectangles(t *testing.T) {
	yardage := inch(36 * 1.625)
	var pieces []Piece
	for n := range 9 {
		x := float64(4 * n)
		pieces = append(pieces, Piece{shaped(x, 0, x+4, 0, x+4, 5, x, 5), 8})
	}
	for repeat, fits := range map[float64]bool{5: true, 6: true, 6.75: true, 7.5: false} {
		s := Stack(Cloth{Print{inch(42), inch(repeat)}, inch(42), false, 0}, pieces, 8, 100_000)
		for i := range pieces {
			if counted(s.Layer, i) != 1 {
				t.Errorf("repeat %g: %d of a sort in a layer", repeat, counted(s.Layer, i))
			}
		}
		if took := s.LengthCut + inch(4); (took <= yardage) != fits {
			t.Errorf("repeat %g: %.2f in of %.2f", repeat, inches(took), inches(yardage))
		}
	}
}
