package report

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/palettes"
	"eighthturn/samples"
)

// wrongMap is what a fabric's map shows otherwise than its plan: how long it is, what stands in the margins, what is written on the cloth, and
// how much cloth the pieces of each line take.
func wrongMap(c *cuts, f *cutting.Fabric, figure *diagram.Figure) error {
	high, margins, times := measure.NM(0), 0, map[string]int{}
	labels := 0
	note := func(s *cutting.Strip) {
		if s.Times > 1 {
			times[fmt.Sprintf("× %d", s.Times)]++
		}
		for i := range s.Cuts {
			if s.Cuts[i].Use != cutting.ForEnd {
				labels++
			}
		}
	}
	for i := range f.Strips {
		s := &f.Strips[i]
		if s.OfYardage() {
			high += s.WidthCut
			margins++
		}
		note(s)
	}
	for i := range f.Blocks {
		b := &f.Blocks[i]
		high += b.LengthCut
		margins++
		labels += len(b.Columns)
		if len(b.Columns) == 0 {
			return fmt.Errorf("a length of cloth has no pieces")
		}
	}
	if figure.Max != (measure.Point{X: f.UsableWidth, Y: high}) || figure.Min != (measure.Point{}) {
		return fmt.Errorf("it is %v large, the cloth %d by %d", figure.Max, f.UsableWidth, high)
	}
	for _, m := range figure.Marks {
		w := m.Words
		switch {
		case w == nil:
		case strings.HasPrefix(w.Text, "× "):
			times[w.Text]--
		case w.At.X < 0:
			margins--
		case w.Text != "" && w.At.X < f.UsableWidth && w.At.Y > 0 && w.At.Y < high:
			labels--
		default:
			return fmt.Errorf("%q stands at %v", w.Text, w.At)
		}
	}
	for text, n := range times {
		if n != 0 {
			return fmt.Errorf("%q stands %d times too few", text, n)
		}
	}
	if margins != 0 || labels != 0 {
		return fmt.Errorf("%d widths in the margin and %d labels are missing", margins, labels)
	}
	return nil
}

// TestMapsAreThePlans: what a map says and how large it is, is the plan's.
func TestMapsAreThePlans(t *testing.T) {
	maps, beside := 0, 0
	for _, n := range everyPlan() {
		c := newCuts(n.Plans)
		for i := range c.Fabrics {
			f := &c.Fabrics[i]
			if !f.IsCut() || f.From != nil || len(f.FromPrint) > 0 {
				continue
			}
			maps++
			beside += len(f.Blocks)
			figure := c.fabricMap(i)
			if err := wrongMap(c, f, figure); err != nil {
				t.Errorf("%s, %s: %v", n.name, f.Name, err)
			}
			figure.Marks = slices.DeleteFunc(figure.Marks, func(m diagram.Mark) bool { return m.Words != nil && m.Words.At.X < 0 })
			if wrongMap(c, f, figure) == nil {
				t.Fatalf("%s, %s: widths that are missing are not noticed", n.name, f.Name)
			}
		}
	}
	if maps < 100 || beside < 2 {
		t.Errorf("only %d maps, %d with lengths", maps, beside)
	}
}

// printed are layouts with pieces from places of stripes that run either way.
func printed(t *testing.T) (list []string) {
	for _, s := range samples.All() {
		if strings.Contains(s.Text, "stripes") {
			list = append(list, s.Text, strings.Replace(s.Text, ` "awning stripe"`, ` crosswise "awning stripe"`, 1))
		}
	}
	if len(list) < 2 || list[0] == list[1] {
		t.Fatal("no sample has stripes")
	}
	return list
}

// wrongStripes is what a map of a striped print has otherwise than the cloth: a piece that its stripes do not fill, or a stripe of a color that
// does not lie there.
func wrongStripes(c *cuts, f *cutting.Fabric, figure *diagram.Figure) error {
	stripes := c.print(f).Stripes
	repeat := stripes.Repeat()
	colourAt := func(p measure.Vec) palettes.Colour {
		at := p.X
		if stripes.Crosswise {
			at = p.Y
		}
		left := math.Mod(math.Mod(at, float64(repeat))+float64(repeat), float64(repeat))
		for _, s := range stripes.List {
			if left -= float64(s.Width); left < 0 {
				return s.Colour
			}
		}
		return palettes.Colour{}
	}
	var filled, drawn float64
	for _, m := range figure.Marks {
		if m.Area == nil || len(m.Lit) == 0 || !m.Area.Clear && m.Area.Fill == f.Colour { // pieces from anywhere
			continue
		}
		if m.Area.Clear {
			drawn += math.Abs(around2(m.Area.Outline))
			continue
		}
		filled += math.Abs(around2(m.Area.Outline))
		if middle := centroid(m.Area.Outline); !stripes.Crosswise && colourAt(middle) != m.Area.Fill {
			return fmt.Errorf("%s lies where the cloth is %s", m.Area.Fill.Hex(), colourAt(middle).Hex())
		}
	}
	if drawn == 0 || math.Abs(filled/drawn-1) > 1e-6 {
		return fmt.Errorf("stripes fill %.6f of the pieces", filled/drawn)
	}
	return nil
}

// centroid is the mean of an outline's corners, which lies inside of it where it is convex.
func centroid(o []measure.Point) (mean measure.Vec) {
	for _, p := range o {
		mean = mean.Plus(vecOf(p).Times(1 / float64(len(o))))
	}
	return mean
}

// TestMapsOfPrints: on a map each piece of a striped print is filled with the stripes that lie there, strips stand one below the other with
// their widths, and the map ends where the last does.
func TestMapsOfPrints(t *testing.T) {
	for i, text := range printed(t) {
		c := newCuts(&Plans{Top: lay.Top(t, text)})
		striped := 0
		for n := range c.Fabrics {
			f := &c.Fabrics[n]
			if len(f.FromPrint) == 0 {
				continue
			}
			striped++
			figure := c.fabricMap(n)
			if err := wrongStripes(c, f, figure); err != nil {
				t.Errorf("layout %d, %s: %v", i, f.Name, err)
			}
			least, most, sums := measure.NM(math.MaxInt64), measure.NM(0), 0
			for _, m := range figure.Marks {
				if m.Area != nil {
					low, high := extent(m.Area.Outline)
					least, most = min(least, low.Y), max(most, high.Y)
				}
				if m.Words != nil && m.Words.At.X < 0 {
					sums++
				}
			}
			if figure.Max != (measure.Point{X: f.UsableWidth, Y: most}) || least != 0 {
				t.Errorf("layout %d, %s: the map goes to %v, what is drawn from %d to %d", i, f.Name, figure.Max, least, most)
			}
			want := 0
			for k := range f.FromPrint {
				if f.FromPrint[k].Lengthwise {
					want++
				} else {
					want += len(likes(&f.FromPrint[k]))
				}
			}
			if sums < want {
				t.Errorf("layout %d, %s: %d sorts of strips have %d widths", i, f.Name, want, sums)
			}
		}
		if striped == 0 {
			t.Errorf("layout %d has no pieces from places of a print", i)
		}
	}
}
