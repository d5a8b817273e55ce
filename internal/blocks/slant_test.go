package blocks

import (
	"fmt"
	"testing"

	"eighthturn/internal/measure"
)

// unsafeSlant says which of the two halves of a rectangle is less than an end piece needs.
func unsafeSlant(c *CutSize, seam measure.NM) error {
	wide, narrow := c.WideCut-c.TrimCut, c.NarrowCut-c.TrimCut // what it needs
	byRuler := halfWidth(c.Slanted.RulerLine, seam)
	for name, mark := range map[string]measure.NM{"marks": c.Slanted.WideMark, "ruler": byRuler} {
		other := c.AlongCut - mark
		if mark < wide-1 || other < narrow-1 || c.AlongCut-other < wide-1 || c.AlongCut-mark < narrow-1 {
			return fmt.Errorf("%s: %d and %d, needs %d and %d", name, mark, other, wide, narrow)
		}
	}
	if c.Slanted.WideMark+c.Slanted.NarrowMark != c.AlongCut {
		return fmt.Errorf("the marks do not halve the rectangle")
	}
	return nil
}

// TestSlantedCuts: between the marks, and by the ruler's line, both halves are end pieces, in inches and centimeters.
func TestSlantedCuts(t *testing.T) {
	onMarks, onLines := 0, 0
	for _, u := range []measure.System{measure.Inches, measure.Centimetres} {
		for side := 2 * measure.Inch; side < 9*measure.Inch; side += 7 * measure.Inch / 32 {
			for _, part := range []float64{0.5, 0.61, 0.8} {
				z := Sizing{Units: u, Seam: measure.Inch / 4, SideFinished: side, Steps: Steps{}.Filled(u), Divided: &Column{Mean: 2 * part * float64(side), End: part * float64(side)}}
				c, _, ok := cutHalfTumbler(&z)
				if !ok {
					t.Fatal("no end piece")
				}
				if err := unsafeSlant(&c, z.Seam); err != nil {
					t.Errorf("side %d, %v: %v", side, u, err)
				}
				if _, on := measure.On(c.Slanted.WideMark, u.SlantMark()); on {
					onMarks++
				}
				if _, on := measure.On(c.Slanted.RulerLine, u.Mark()); on {
					onLines++
				}
				broken := c
				moved := *c.Slanted
				moved.WideMark += c.TrimCut + measure.Millimetre
				moved.NarrowMark -= c.TrimCut + measure.Millimetre
				broken.Slanted = &moved
				if unsafeSlant(&broken, z.Seam) == nil {
					t.Fatal("a cut beyond what is to spare passes")
				}
			}
		}
	}
	if onMarks < 100 || onLines < 100 {
		t.Errorf("%d cuts lie on marks, %d on lines of the ruler", onMarks, onLines)
	}
}

// TestSlantsJustEnough: a mark that leaves one of the two pieces just what it needs, and no thread more, is taken.
func TestSlantsJustEnough(t *testing.T) {
	met := [2]int{}
	for _, u := range []measure.System{measure.Inches, measure.Centimetres} {
		mark := u.SlantMark()
		for n := measure.NM(20); n < 80; n++ {
			z := Sizing{Units: u, Seam: measure.Inch / 4, SideFinished: 3 * measure.Inch, Steps: Steps{}.Filled(u)}
			lean := nearest(times(z.SideFinished+2*z.Seam, tan22/2))
			for end, middle := range []measure.NM{n*mark - lean, n*mark + lean} { // the wide edge that is needed on a mark, or the narrow one
				z.Divided = &Column{Mean: 1, End: float64(middle-z.Seam) - float64(z.Seam)/cos22}
				c, _, _ := cutHalfTumbler(&z)
				just := []measure.NM{c.WideCut - c.TrimCut, c.WideCut + c.TrimCut}[end]
				if c.TrimCut == 0 || 2*c.TrimCut >= mark || just%mark != 0 {
					continue
				}
				if met[end]++; c.Slanted.WideMark != just {
					t.Errorf("%v, mark %d: the cut goes to %d in place of %d", u, n, c.Slanted.WideMark, just)
				}
			}
		}
	}
	if met[0] < 5 || met[1] < 5 {
		t.Errorf("only %v marks were met", met)
	}
}
