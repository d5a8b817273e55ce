package cutting

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// The law of prints: pieces that are cut alike lie at like places of the print, within the cloth and in strips that do not overlap, as
// many as are wanted, and what is bought holds them wherever the bolt begins.

// unitsFromPrint adds the pieces of each line that are cut from places of a fabric's print.
func unitsFromPrint(f *Fabric, units map[int]int) {
	for i := range f.FromPrint {
		for _, n := range f.FromPrint[i].Lines {
			units[n] += f.FromPrint[i].Count(n) * f.FromPrint[i].Times
		}
	}
}

// mostTimes is how many times over the strips of a line's print are cut, 1 elsewhere.
func mostTimes(p *Plan, line *Line) int {
	if line.Fabric < 0 {
		return 1
	}
	for i := range p.Fabrics[line.Fabric].FromPrint {
		if f := &p.Fabrics[line.Fabric].FromPrint[i]; slices.Contains(f.Lines, line.Number) {
			return f.Times
		}
	}
	return 1
}

// illFussy says how a piece cut from its place of a print does not give a patch's finished outline, every side a seam allowance
// within the cut one and no more.
func illFussy(top *quilt.Top, p *Plan, line *Line, patch int) error {
	at := top.ClothPlaces()[top.Patches[patch].First]
	turn := -at.Turn * math.Pi / 180
	var on []xy
	for _, c := range top.Patches[patch].Outline {
		x, y := float64(c.X-at.Top.X), float64(c.Y-at.Top.Y)
		on = append(on, xy{float64(at.Cloth.X) + x*math.Cos(turn) - y*math.Sin(turn), float64(at.Cloth.Y) + x*math.Sin(turn) + y*math.Cos(turn)})
	}
	for i := range p.Fabrics[line.Fabric].FromPrint {
		f := &p.Fabrics[line.Fabric].FromPrint[i]
		if !slices.Contains(f.Lines, line.Number) {
			continue
		}
		cut, seam := drawn(f.Outline(line.Number)), float64(p.Seam)
		for n, c := range on {
			if out := beyond(cut, c) + seam; out > 10*tolerance {
				return fmt.Errorf("corner %d of a %s lies %.0f nanometres too near the edge of what is cut", n, line.Piece.Shape, out)
			}
		}
		if slack := slackOf(cut, on, seam); slack > 10*tolerance {
			return fmt.Errorf("a %s is cut %.0f nanometres too large", line.Piece.Shape, slack)
		}
		return nil
	}
	return fmt.Errorf("a %s is cut from no print", line.Piece.Shape)
}

// badlyPlaced says what is wrong with where a plan's pieces lie on their prints.
func badlyPlaced(top *quilt.Top, p *Plan) error {
	units := map[int]int{}
	for i := range p.Fabrics {
		f := &p.Fabrics[i]
		held := measure.NM(0)
		for n := range f.FromPrint {
			c := &f.FromPrint[n]
			if err := c.misplaced(f.UsableWidth); err != nil {
				return fmt.Errorf("%s: %v", f.Name, err)
			}
			if c.AlongCut > 0 && (c.LengthCut < c.FittedCut+c.AlongCut || c.LengthCut >= c.FittedCut+2*c.AlongCut || c.LengthCut%c.AlongCut != 0 || measure.NM(c.Repeats)*c.AlongCut != c.LengthCut) {
				return fmt.Errorf("%s: %d repeats and %d of cloth for %d", f.Name, c.Repeats, c.LengthCut, c.FittedCut)
			}
			held += c.LengthCut
		}
		if err := badGaps(f); err != nil {
			return fmt.Errorf("%s: %v", f.Name, err)
		}
		if f.Purchase.Buy < held {
			return fmt.Errorf("%s: %d is bought, and the print takes %d", f.Name, f.Purchase.Buy, held)
		}
		unitsFromPrint(f, units)
	}
	for n := range p.Lines {
		line := &p.Lines[n]
		if c := top.CutOfPatch(line.Patches[0]); c != nil && (c.Motif != "" || c.Alike) && units[n] < line.Pieces-line.OnHand {
			return fmt.Errorf("line %d wants %d alike, %d are cut", n, line.Pieces, units[n])
		}
	}
	return nil
}

// misplaced says which strip or piece does not lie where it should.
func (f *FromPrint) misplaced(usable measure.NM) error {
	for i, s := range f.Strips {
		if s.Min.X < 0 || s.Max.X > usable || s.Min.X >= s.Max.X || s.Min.Y >= s.Max.Y {
			return fmt.Errorf("strip %d leaves the cloth", i)
		}
		if s.Max.Y-f.Strips[0].Min.Y > f.FittedCut {
			return fmt.Errorf("strip %d lies behind what is reckoned", i)
		}
		for k, o := range f.Strips[:i] {
			if min(s.Max.X, o.Max.X) > max(s.Min.X, o.Min.X) && min(s.Max.Y, o.Max.Y) > max(s.Min.Y, o.Min.Y) {
				return fmt.Errorf("strips %d and %d overlap", k, i)
			}
		}
		for _, q := range s.Pieces {
			if f.AcrossCut > 0 && q.By.X%f.AcrossCut != 0 || f.AlongCut > 0 && q.By.Y%f.AlongCut != 0 {
				return fmt.Errorf("strip %d: a piece of line %d shows another place of the print", i, q.Line)
			}
			for _, c := range f.CutOutline(q) {
				if c.X < s.Min.X || c.X > s.Max.X || c.Y < s.Min.Y || c.Y > s.Max.Y {
					return fmt.Errorf("strip %d: a piece of line %d leaves it", i, q.Line)
				}
			}
		}
	}
	return nil
}

// badGaps says where strips do not lie between those that are lined up on a print: of no width do they take more than there is between
// strips so far apart, and with what is left of it they come to all of it.
func badGaps(f *Fabric) error {
	var gaps, strips, left measure.NM
	between := map[measure.NM]measure.NM{}
	for i := range f.FromPrint {
		c := &f.FromPrint[i]
		if c.Lengthwise || len(c.Strips) == 0 {
			continue
		}
		for n, s := range c.Strips {
			gap, times := measure.NM(0), c.Times
			if n > 0 {
				gap = s.Min.Y - c.Strips[n-1].Max.Y
			} else if reach := c.Strips[len(c.Strips)-1].Max.Y - s.Min.Y; c.AlongCut > 0 { // from the last to the first of the next time
				gap, times = (c.AlongCut-reach%c.AlongCut)%c.AlongCut, c.Times-1
			}
			if gap >= 2*measure.Inch {
				between[gap] += measure.NM(times) * gap
				gaps += measure.NM(times) * gap
			}
		}
	}
	widest := map[measure.NM]measure.NM{}
	for i := range f.Strips {
		if s := &f.Strips[i]; s.OnPrint {
			if s.LengthCut != f.UsableWidth || s.OfYardage() {
				return fmt.Errorf("a strip between others is %d long", s.LengthCut)
			}
			strips += measure.NM(s.Times) * s.WidthCut
			widest[s.WidthCut] += measure.NM(s.Times) * s.WidthCut
		}
	}
	for _, g := range f.gapsLeft {
		left += g.widthCut * measure.NM(g.times)
	}
	if strips+left != gaps {
		return fmt.Errorf("%d lies between strips, %d of it is cut and %d left", gaps, strips, left)
	}
	for width := range widest {
		wanted, held := measure.NM(0), measure.NM(0)
		for w, sum := range widest {
			wanted += sum * boolNM(w >= width)
		}
		for w, sum := range between {
			held += sum * boolNM(w >= width)
		}
		if wanted > held {
			return fmt.Errorf("%d is cut from gaps of %d", wanted, held)
		}
	}
	return nil
}

// TestPrints: the law of prints holds.
func TestPrints(t *testing.T) {
	fitted, between := 0, 0
	for _, n := range tops().prints {
		for _, o := range n.variants {
			p := planned(n.Top, o)
			if err := badlyPlaced(n.Top, p); err != nil {
				t.Fatalf("%s: %v", n.name, err)
			}
			for i := range p.Fabrics {
				fitted += len(p.Fabrics[i].FromPrint)
				for _, s := range p.Fabrics[i].Strips {
					between += s.Times * boolInt(s.OnPrint)
				}
			}
		}
	}
	if fitted < len(tops().prints) || between < 3 {
		t.Errorf("only %d prints, %d strips between those lined up", fitted, between)
	}
}

// TestPrintsCatch: the law finds what is wrong.
func TestPrintsCatch(t *testing.T) {
	for _, harm := range []func(*Strip){func(s *Strip) { s.Times++ }, func(s *Strip) { s.WidthCut += inch(0.5) }} {
		tried := 0
		for seed := uint64(1); seed < 40; seed += 2 {
			top, err := printTop(seed)
			if err != nil {
				t.Fatal(err)
			}
			p := Build(nil, top, Options{})
			for i := range p.Fabrics {
				f := &p.Fabrics[i]
				if n := slices.IndexFunc(f.Strips, func(s Strip) bool { return s.OnPrint }); n >= 0 {
					tried++
					if harm(&f.Strips[n]); badGaps(f) == nil {
						t.Errorf("print %d: a strip that does not fit between others is not noticed", seed)
					}
				}
			}
		}
		if tried == 0 {
			t.Error("no strips between others")
		}
	}
	for name, harm := range map[string]func(*FromPrint){
		"a piece a little aside":  func(f *FromPrint) { f.Strips[0].Pieces[0].By.X += inch(0.25) },
		"a piece a repeat on":     func(f *FromPrint) { f.Strips[0].Pieces[0].By.Y += f.AlongCut },
		"a piece fewer":           func(f *FromPrint) { f.Strips[0].Pieces = f.Strips[0].Pieces[1:] },
		"no repeat to begin with": func(f *FromPrint) { f.LengthCut -= f.AlongCut; f.Repeats-- },
		"a strip twice":           func(f *FromPrint) { f.Strips = append(f.Strips, f.Strips[0]) },
		"a strip off the cloth":   func(f *FromPrint) { f.Strips[0].Min.X = -1 },
	} {
		noticed, tried := 0, 0
		for seed := uint64(1); seed < 20; seed += 2 {
			top, err := printTop(seed)
			if err != nil {
				t.Fatal(err)
			}
			p := Build(nil, top, Options{})
			for i := range p.Fabrics {
				if list := p.Fabrics[i].FromPrint; len(list) > 0 && len(list[0].Strips) > 0 {
					tried++
					if harm(&list[0]); badlyPlaced(top, p) != nil {
						noticed++
					}
				}
			}
		}
		if noticed < tried || tried == 0 {
			t.Errorf("%s: noticed %d times of %d", name, noticed, tried)
		}
	}
}
