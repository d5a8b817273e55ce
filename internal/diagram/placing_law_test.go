package diagram

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"eighthturn/internal/measure"
)

// near says whether two lengths on a sheet are the same but for rounding.
func near(a, b float64) bool { return math.Abs(a-b) < 1e-6 }

// placed is a sheet's size and where the subject's point (0, 0) lies on it.
func placed(s *Sheet) [4]float64 { return [4]float64{s.Width, s.Height, s.Origin.X, s.Origin.Y} }

// sheetOf is what placed gives where the subject's frame goes from (0, 0) to a place, and what is drawn from one place to another, both in
// points; 2 points stay free all round.
func sheetOf(frame, low, high measure.Vec) [4]float64 {
	left, up := min(0, low.X), min(0, low.Y)
	return [4]float64{max(frame.X, high.X) - left + 4, max(frame.Y, high.Y) - up + 4, 2 - left, 2 - up}
}

func alike(a, b [4]float64) bool {
	return near(a[0], b[0]) && near(a[1], b[1]) && near(a[2], b[2]) && near(a[3], b[3])
}

// TestSheetsAreAsLargeAsWords: a sheet at true size has just the room that its words take, however they are anchored and turned: their
// width, and for letters of 10 points 9.5 above the line that they stand on and 2.4 below it, where half a capital, 3.65, is beneath their middle; and
// 1.1 points for a rim. The label begins where the words do.
func TestSheetsAreAsLargeAsWords(t *testing.T) {
	wide := NewLettering().Width("Words", 10, false)
	begins := map[Anchor][2]float64{Middle: {-wide / 2, wide / 2}, Start: {0, wide}, End: {-wide, 0}}
	for _, frame := range []measure.Vec{{}, at(9, 18), at(72, 36)} {
		for anchor, ends := range begins {
			for quarters := -3; quarters < 5; quarters++ {
				turn := func(v measure.Vec) measure.Vec { // a quarter clockwise takes the right to below
					for range (quarters + 4) % 4 {
						v = at(-v.Y, v.X)
					}
					return v
				}
				a, z := turn(at(ends[0]-1.1, -9.5+3.65-1.1)), turn(at(ends[1]+1.1, 2.4+3.65+1.1))
				f := &Figure{TrueSize: true, Max: pt(frame.X/72, frame.Y/72), Marks: []Mark{{Words: &Words{Text: "Words", Points: 10, Anchor: anchor, Quarters: quarters}}}}
				s := Place(f, Options{})
				if got, want := placed(s), sheetOf(frame, at(min(a.X, z.X), min(a.Y, z.Y)), at(max(a.X, z.X), max(a.Y, z.Y))); !alike(got, want) {
					t.Errorf("frame %v, anchor %d, %d quarters: %.3f, expected %.3f", frame, anchor, quarters, got, want)
				}
				l, begin := s.Items[0].Label, turn(at(ends[0], 3.65))
				if got := l.At.Minus(s.Origin); !near(got.X, begin.X) || !near(got.Y, begin.Y) || l.Quarters != (quarters+4)%4 || l.Anchor != anchor || !near(l.Width, wide) {
					t.Errorf("anchor %d, %d quarters: %+v, expected to begin at %v", anchor, quarters, l, begin)
				}
			}
		}
	}
}

// TestLabelsCoverTheirCapitals: a word 10 long in letters of 10 points that begins at (20, 30) covers 7.3 points above the line that it stands on, to
// whichever side that is turned.
func TestLabelsCoverTheirCapitals(t *testing.T) {
	for quarters, want := range []box{{at(20, 22.7), at(30, 30)}, {at(20, 30), at(27.3, 40)}, {at(10, 30), at(20, 37.3)}, {at(12.7, 20), at(20, 30)}} {
		l := Label{At: at(20, 30), Size: 10, Width: 10, Quarters: quarters}
		if b := l.box(); !near(b.min.X, want.min.X) || !near(b.min.Y, want.min.Y) || !near(b.max.X, want.max.X) || !near(b.max.Y, want.max.Y) {
			t.Errorf("%d quarters: %v, expected %v", quarters, b, want)
		}
	}
}

// TestSheetsAreAsLargeAsLines: a sheet has the room that lines and what ends them take: half a pen, with a rim of 1.1 points where lines of
// that style have one, of an arrow 2.6 to each side, of a dot 2, of a bar 4, and 1.1 for their rim; and of an area's edge a pen.
func TestSheetsAreAsLargeAsLines(t *testing.T) {
	pens := map[Stroke]float64{Thin: 0.3, Cut: 0.7, Sew: 0.45 + 1.1, Partial: 0.55 + 1.1, Trim: 0.45 + 1.1, Fold: 0.5 + 1.1, Grain: 0.45 + 1.1, Dimension: 0.25, Pressing: 0.8 + 1.1,
		Frame: 0.25, Window: 0.25, PartFrame: 0.25, NextFrame: 0.5 + 1.1, Repeat: 0.45, Gauge: 0.25}
	ends := map[Ending]float64{Plain: 0, Arrow: 3.7, Dot: 3.1, Bar: 5.1}
	for stroke, by := range pens {
		for start, left := range ends {
			for end, right := range ends {
				left, right := max(by, left), max(by, right)
				f := &Figure{TrueSize: true, Max: pt(1, 0), Marks: []Mark{{Line: &Line{Points: []measure.Point{{}, pt(0.5, 0), pt(1, 0)}, Stroke: stroke, Start: start, End: end}}}}
				high := max(left, right)
				if got, want := placed(Place(f, Options{NoLegend: true})), sheetOf(at(72, 0), at(-left, -high), at(72+right, high)); !alike(got, want) {
					t.Errorf("stroke %d from %d to %d: %.3f, expected %.3f", stroke, start, end, got, want)
				}
			}
		}
		f := &Figure{TrueSize: true, Max: pt(1, 1), Marks: []Mark{{Area: &Area{Outline: boxed(0, 0, 1, 1), Edge: stroke}}}}
		pen := stroke.Pen().Width
		if got, want := placed(Place(f, Options{NoLegend: true})), sheetOf(at(72, 72), at(-pen, -pen), at(72+pen, 72+pen)); !alike(got, want) {
			t.Errorf("area with edge %d: %.3f, expected %.3f", stroke, got, want)
		}
	}
}

// TestWordsLeaveRoomForWhatIsDrawn: words that would take more than two thirds of the paper's width or height are made smaller by fifths, all
// alike, until they do not, and no smaller; the drawing fills what is left.
func TestWordsLeaveRoomForWhatIsDrawn(t *testing.T) {
	letters := NewLettering()
	for _, most := range []measure.Vec{at(300, 300), at(300, 90), at(120, 300)} {
		o := Options{Width: measure.NM(most.X / TrueScale), Height: measure.NM(most.Y / TrueScale)}
		for letter := 1; letter < 60; letter += 2 {
			for quarters := range 2 {
				text := strings.Repeat("n", letter)
				f := &Figure{Max: pt(3, 3), Marks: []Mark{{Words: &Words{Text: text, Points: 9, At: pt(1, 1), Quarters: quarters}}, {Words: &Words{Text: "n", Points: 6, At: pt(2, 2)}}}}
				s := Place(f, o)
				long, high, factor := letters.Width(text, 9, false)+2.2, 9*(0.95+0.24)+2.2, 1.0
				wide, tall := max(long, letters.Width("n", 6, false)+2.2), high
				if quarters == 1 {
					wide, tall = max(high, letters.Width("n", 6, false)+2.2), long
				}
				for wide*factor > (most.X-4)*2/3 || tall*factor > (most.Y-4)*2/3 {
					factor *= 0.8
				}
				if a, b := s.Items[0].Label, s.Items[1].Label; !near(a.Size, 9*factor) || !near(b.Size, 6*factor) || !near(a.Width, (long-2.2)*factor) {
					t.Errorf("%v, %d letters, %d quarters: sizes %g and %g, expected %g", most, letter, quarters, a.Size, b.Size, 9*factor)
				}
				if math.Abs(s.Width-most.X) > 1e-4 && math.Abs(s.Height-most.Y) > 1e-4 {
					t.Errorf("%v, %d letters, %d quarters: the sheet is %g by %g", most, letter, quarters, s.Width, s.Height)
				}
			}
		}
	}
}

// TestOptionalWordsNeedRoom: words that may be left out are, where they would be set under 8 points or have less across than their capitals at that size
// (0.73 of 8 points; on a plate 1.2 of them), and no sooner; others stand there in any case.
func TestOptionalWordsNeedRoom(t *testing.T) {
	nm := func(points float64) measure.NM { return measure.NM(points / TrueScale) } // downwards
	wide := NewLettering().Width("Optional", 10, false)
	for _, c := range []struct {
		w    Words
		want bool
	}{
		{Words{}, true}, {Words{Points: 8}, true}, {Words{Points: 7.99}, false}, {Words{Room: nm(0.8*wide) + 1}, true}, {Words{Room: nm(0.8 * wide)}, false}, {Words{Room: 1}, false},
		{Words{Across: nm(0.73*8) + 1}, true}, {Words{Across: nm(0.73 * 8)}, false}, {Words{Across: 1}, false}, {Words{Across: nm(1.2*8) + 1, Plate: true}, true}, {Words{Across: nm(1.2 * 8), Plate: true}, false}, {Words{Plate: true}, true},
	} {
		c.w.Text = "Optional"
		if c.w.Points == 0 {
			c.w.Points = 10
		}
		for _, optional := range []bool{true, false} {
			c.w.Optional = optional
			items := Place(&Figure{TrueSize: true, Max: pt(5, 5), Marks: []Mark{{Words: &c.w}}}, Options{}).Items
			if got := len(items) > 0; got != (c.want || !optional) {
				t.Errorf("%+v: shown %v", c.w, got)
			}
			if c.w.Plate && len(items) == 1 || !c.w.Plate && len(items) == 2 {
				t.Errorf("%+v: %d items", c.w, len(items))
			}
		}
	}
}

// TestPlatesReachBeyondTheirWords: by 1.6 points all round, across the words by half of the room that they leave there where that is less, whichever way they are
// turned.
func TestPlatesReachBeyondTheirWords(t *testing.T) {
	for _, c := range []struct{ room, want float64 }{{0, 1.6}, {40, 1.6}, {7.3 + 3.3, 1.6}, {7.3 + 3.1, 1.55}, {7.3 + 1, 0.5}, {7.3, 0}, {5, 0}} {
		for quarters := range 4 {
			w := &Words{Text: "Plate", Points: 10, At: pt(1, 1), Plate: true, Quarters: quarters, Across: measure.NM(math.Round(c.room / TrueScale))}
			items := Place(&Figure{TrueSize: true, Max: pt(2, 2), Marks: []Mark{{Words: w, Lit: []int{3}}}}, Options{}).Items
			b, plate := items[1].Label.box(), items[0].Shape.Points
			by := at(1.6, c.want)
			if quarters%2 == 1 {
				by = at(c.want, 1.6)
			}
			want := []measure.Vec{at(b.min.X-by.X, b.min.Y-by.Y), at(b.max.X+by.X, b.min.Y-by.Y), at(b.max.X+by.X, b.max.Y+by.Y), at(b.min.X-by.X, b.max.Y+by.Y)}
			for i, p := range plate {
				if math.Abs(p.X-want[i].X) > 1e-5 || math.Abs(p.Y-want[i].Y) > 1e-5 {
					t.Errorf("%g across, %d quarters: %v, expected %v", c.room, quarters, plate, want)
					break
				}
			}
			if fmt.Sprint(items[0].Lit, items[1].Lit) != "[3] [3]" {
				t.Errorf("plate and words light up as %v and %v", items[0].Lit, items[1].Lit)
			}
		}
	}
}

// moving is a figure of all sorts of marks, at a place of its subject and so many times as large; NoLegend.
func moving(x, y, times float64) *Figure {
	in := func(a, b float64) measure.Point { return pt(x+a*times, y+b*times) }
	return &Figure{Min: in(0, 0), Max: in(8, 3), NoLegend: true, Marks: []Mark{
		{Area: &Area{Outline: []measure.Point{in(0, 0), in(4, 1), in(1, 3)}, Edge: Cut}},
		{Line: &Line{Points: []measure.Point{in(5, 3), in(8, 1)}, Stroke: Sew, Start: Arrow, End: Bar}},
		{Words: &Words{Text: "a name that is longer than its room", At: in(6, 2), Points: 9, Room: measure.NM(2 * times * float64(measure.Inch))}},
		{Words: &Words{Text: "upright", At: in(2, 1), Points: 9, Quarters: 1}},
	}}
}

// TestDrawingsDoNotDependOnWhereTheyLie: a figure is drawn alike wherever in its subject it lies and however large the subject is, as wide or as high as the
// paper.
func TestDrawingsDoNotDependOnWhereTheyLie(t *testing.T) {
	for _, o := range []Options{{}, {Height: 2 * measure.Inch}, {Width: measure.Inch}} {
		want := Place(moving(0, 0, 1), o)
		if limit := o.limit(); math.Abs(want.Width-limit.X) > 1e-4 && math.Abs(want.Height-limit.Y) > 1e-4 {
			t.Errorf("%+v: %g by %g", o, want.Width, want.Height)
		}
		for _, c := range []struct{ x, y, times float64 }{{100, 0, 1}, {-100, 0, 1}, {0, 100, 1}, {0, -100, 1}, {-4, -1.5, 1}, {0, 0, 10}, {7, -900, 0.25}} {
			got := Place(moving(c.x, c.y, c.times), o)
			if math.Abs(got.Width-want.Width)+math.Abs(got.Height-want.Height)+math.Abs(got.Scale*c.times-want.Scale)/want.Scale > 1e-5 || len(got.Items) != len(want.Items) {
				t.Errorf("%+v at %+v: %g by %g, scale %g", o, c, got.Width, got.Height, got.Scale/TrueScale)
				continue
			}
			for i := range got.Items {
				if a, b := got.Items[i].places(), want.Items[i].places(); !together(a, b) {
					t.Errorf("%+v at %+v: item %d at %v, expected %v", o, c, i, a, b)
				}
			}
		}
	}
}

// places are an item's points.
func (i Item) places() []measure.Vec {
	if i.Label != nil {
		return []measure.Vec{i.Label.At, {X: i.Label.Size, Y: i.Label.Width}}
	}
	return i.Shape.Points
}

func together(a, b []measure.Vec) bool {
	for i := range a {
		if len(a) != len(b) || math.Abs(a[i].X-b[i].X)+math.Abs(a[i].Y-b[i].Y) > 1e-4 {
			return false
		}
	}
	return len(a) == len(b)
}

// TestUpright: a line across, one down and a point are put on paper, too: as wide as the paper, as high as it, at true size.
func TestUpright(t *testing.T) {
	line := func(to measure.Point) *Figure {
		return &Figure{Max: to, NoLegend: true, Marks: []Mark{{Line: &Line{Points: []measure.Point{{}, to}, Stroke: Thin}}}}
	}
	for _, c := range []struct {
		to   measure.Point
		o    Options
		want [2]float64
	}{
		{pt(3, 0), Options{}, [2]float64{468, 4.6}}, {pt(0, 3), Options{Height: 3 * measure.Inch}, [2]float64{4.6, 216}}, {pt(0, 3), Options{}, [2]float64{4.6, 216 + 4.6}}, {pt(0, 0), Options{}, [2]float64{4.6, 4.6}},
	} {
		if s := Place(line(c.to), c.o); math.Abs(s.Width-c.want[0]) > 1e-4 || math.Abs(s.Height-c.want[1]) > 1e-4 {
			t.Errorf("%v: %g by %g, expected %g", c.to, s.Width, s.Height, c.want)
		}
	}
}
