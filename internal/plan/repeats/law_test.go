package repeats

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"eighthturn/internal/measure"
)

// largeCase is cloth and pieces as quilts have them, among them cloth that does not repeat one way.
func largeCase(r *rand.Rand) (Cloth, []Piece) {
	c := Cloth{Print: Print{Across: inch(float64(8+r.IntN(180)) / 8), Along: inch(float64(8+r.IntN(180)) / 8)}, UsableWidth: inch(float64(18 + r.IntN(26)))}
	if r.IntN(2) == 0 {
		c.Mark = inch(1. / 16)
	}
	switch r.IntN(6) {
	case 0:
		c.Across = 0
	case 1:
		c.Along = 0
	case 2:
		c.Along, c.Lengthwise = 0, true
	case 3:
		c.Lengthwise = true
	}
	pieces := make([]Piece, 1+r.IntN(4))
	if r.IntN(8) == 0 {
		pieces = make([]Piece, 5+r.IntN(14))
	}
	for i := range pieces {
		pieces[i] = Piece{invented(r), r.IntN(90)}
		if r.IntN(40) == 0 {
			pieces[i].Wanted *= 500
		}
	}
	return c, pieces
}

// counted is how many of a piece are cut.
func counted(f *Fitting, piece int) int {
	n := 0
	for i := range f.Strips {
		for _, p := range f.Strips[i].Pieces {
			if p.Piece == piece {
				n++
			}
		}
	}
	return n * f.Times
}

// broken says what is wrong with a fitting; "" for nothing.
func broken(c Cloth, pieces []Piece, f *Fitting) string {
	counts := make([]int, len(pieces))
	var before []*Strip
	for i := range f.Strips {
		s := &f.Strips[i]
		if s.Min.X < 0 || s.Max.X > c.UsableWidth {
			return fmt.Sprintf("strip %d leaves the cloth", i)
		}
		if s.Min.Y < f.Strips[0].Min.Y || s.Max.Y > f.Strips[0].Min.Y+f.LengthCut {
			return fmt.Sprintf("strip %d lies beyond the cloth that is reckoned", i)
		}
		for k, o := range before {
			if min(s.Max.X, o.Max.X) > max(s.Min.X, o.Min.X) && min(s.Max.Y, o.Max.Y) > max(s.Min.Y, o.Min.Y) {
				return fmt.Sprintf("strips %d and %d overlap", k, i)
			}
		}
		before = append(before, s)
		for k := range s.Pieces {
			p := &s.Pieces[k]
			counts[p.Piece]++
			if c.Across > 0 && p.By.X%c.Across != 0 || c.Along > 0 && p.By.Y%c.Along != 0 {
				return fmt.Sprintf("strip %d: a piece lies at another place of the print", i)
			}
			outline := p.Outline(pieces)
			for _, corner := range outline {
				if corner.X < s.Min.X || corner.X > s.Max.X || corner.Y < s.Min.Y || corner.Y > s.Max.Y {
					return fmt.Sprintf("strip %d: a piece leaves it", i)
				}
			}
			for n := range k {
				if q := s.Pieces[n]; p.Piece == q.Piece && max(p.By.X-q.By.X, q.By.X-p.By.X, p.By.Y-q.By.Y, q.By.Y-p.By.Y) > inch(5) {
					continue // no piece is so large
				}
				if shared(outline, s.Pieces[n].Outline(pieces)) > 1e-6 {
					return fmt.Sprintf("strip %d: pieces %d and %d overlap", i, n, k)
				}
			}
		}
	}
	large := map[int]bool{}
	for _, i := range f.TooLarge {
		large[i] = true
	}
	for i, p := range pieces {
		cut := counts[i] * f.Times
		if !large[i] && (cut < p.Wanted || cut != counted(f, i) || f.Times == 1 && cut != p.Wanted) || large[i] && cut > 0 {
			return fmt.Sprintf("%d of piece %d are cut, %d are wanted", cut, i, p.Wanted)
		}
	}
	return ""
}

// TestFittingsAreSound: whatever is fitted lies within the cloth and its strip, nothing over anything else, each piece at its
// place of the print, and as many as are wanted; with many steps or none.
func TestFittingsAreSound(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	ended := 0
	for n := range 400 {
		c, pieces := largeCase(r)
		steps := []int{0, 300, 20_000}[n%3]
		f := Fit(c, pieces, steps)
		if why := broken(c, pieces, f); why != "" {
			t.Fatalf("case %d, %v, %v: %s", n, c, pieces, why)
		}
		if f.Ended {
			ended++
		}
	}
	if ended < 100 {
		t.Errorf("only %d fittings used their steps up", ended)
	}
}

// TestBrokenFittingsAreCaught: the law above finds what is wrong.
func TestBrokenFittingsAreCaught(t *testing.T) {
	c := Cloth{Print: Print{inch(4), inch(6)}, UsableWidth: inch(40)}
	pieces := []Piece{{shaped(1, 1, 4, 1, 4, 5, 1, 5), 30}}
	for name, breaks := range map[string]func(f *Fitting){
		"a piece moved by half a repeat":  func(f *Fitting) { f.Strips[1].Pieces[0].By.X += inch(2) },
		"a piece on top of the next":      func(f *Fitting) { f.Strips[1].Pieces[0].By.X += inch(4) },
		"a piece left out":                func(f *Fitting) { f.Strips[0].Pieces = f.Strips[0].Pieces[1:] },
		"a piece in the next repeat":      func(f *Fitting) { f.Strips[0].Pieces[2].By.Y += inch(6) },
		"a strip in the place of another": func(f *Fitting) { f.Strips[1] = f.Strips[0] },
		"too little cloth":                func(f *Fitting) { f.LengthCut -= inch(1) },
	} {
		f := Fit(c, pieces, 1000)
		if why := broken(c, pieces, f); why != "" {
			t.Fatal(why)
		}
		if breaks(f); broken(c, pieces, f) == "" {
			t.Errorf("%s is not noticed", name)
		}
	}
}

// TestStepsAreKept: a fitting takes no more steps than it is given, but for what finishing takes.
func TestStepsAreKept(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 1))
	for range 300 {
		c, pieces := largeCase(r)
		f := &fitting{cloth: c, pieces: pieces, left: 2000, Fitting: &Fitting{Times: 1}}
		f.prepare()
		f.scale()
		if len(f.sorts) == 0 {
			continue
		}
		f.rows()
		f.search()
		if most := 6000 + 60*max(1, len(f.sorts)/4)*len(f.patterns); 2000-f.left > most {
			t.Fatalf("%v, %v: %d steps", c, pieces, 2000-f.left)
		}
	}
}

// TestTimesOver: what is cut several times over begins on whole repeats each time, and its cloth is counted so.
func TestTimesOver(t *testing.T) {
	c := Cloth{Print: Print{inch(10), inch(12)}, UsableWidth: inch(40)}
	f := Fit(c, []Piece{{shaped(1, 1, 4, 1, 4, 5, 1, 5), 6000}}, 1000)
	if f.Times < 2 || counted(f, 0) < 6000 || counted(f, 0) >= 6000+4*f.Times {
		t.Errorf("%d times, %d in all", f.Times, counted(f, 0))
	}
	if total := f.TotalCut(c.Along); total != measure.NM(f.Times*len(f.Strips)-1)*inch(12)+inch(4) {
		t.Errorf("%d strips %d times take %.2f in", len(f.Strips), f.Times, inches(total))
	}
}

// TestStripesAlongTheCloth: strips that are cut along a stripe lie side by side on like places of it.
func TestStripesAlongTheCloth(t *testing.T) {
	c := Cloth{Print: Print{Across: inch(3)}, UsableWidth: inch(40), Lengthwise: true}
	wedge := shaped(1, 0, 5, 1.6, 5, 2, 1, 3.6) // its wide end to the left
	f := Fit(c, []Piece{{wedge, 50}}, 0)
	if why := broken(c, []Piece{{wedge, 50}}, f); why != "" {
		t.Fatal(why)
	}
	// Strips 4 in wide begin at 1, 7, 13, 19, 25 and 31 in, the next would begin at 37; 50 wedges are 9 to a strip.
	if want := inch(9 * 3.6); len(f.Strips) != 6 || f.LengthCut != want {
		t.Errorf("%d strips, %.3f in", len(f.Strips), inches(f.LengthCut))
	}
}
