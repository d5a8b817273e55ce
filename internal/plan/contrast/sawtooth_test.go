package contrast

import (
	"math"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// The fabrics of a hand-made eight-pointed star: the ground, the points, the square in the
// middle.
const (
	ground = iota
	points
	middle
)

// sawtooth is an eight-pointed star on a square of four units: a square of two units in the
// middle, eight half-square triangles for points, four large triangles and four corner
// squares for the ground.
func sawtooth(unit measure.NM, colours [3]palettes.Colour) *quilt.Top {
	t := &quilt.Top{Columns: 1, Rows: 1, SideFinished: 4 * unit}
	t.Outer = quilt.Rect{Max: measure.Point{X: 4 * unit, Y: 4 * unit}}
	t.Field = t.Outer
	for i, name := range []string{"ground", "points", "middle"} {
		t.Fabrics = append(t.Fabrics, quilt.Fabric{Name: name, Colour: colours[i]})
	}
	t.Roles = []quilt.Role{{Name: "piece", Letter: "P"}}
	add := func(fabric int32, corners ...[2]measure.NM) {
		var outline []measure.Point
		for _, c := range corners {
			outline = append(outline, measure.Point{X: c[0] * unit, Y: c[1] * unit})
		}
		t.Faces = append(t.Faces, quilt.Face{Outline: outline, Fabric: fabric, Patch: int32(len(t.Patches))})
		t.Patches = append(t.Patches, quilt.Patch{Outline: outline, Shape: blocks.Square, Border: -1, First: int32(len(t.Faces) - 1), Count: 1})
	}
	add(middle, [2]measure.NM{1, 1}, [2]measure.NM{3, 1}, [2]measure.NM{3, 3}, [2]measure.NM{1, 3})
	turn := func(p [2]measure.NM, n int) [2]measure.NM {
		for range n {
			p = [2]measure.NM{4 - p[1], p[0]}
		}
		return p
	}
	for n := range 4 {
		at := func(x, y measure.NM) [2]measure.NM { return turn([2]measure.NM{x, y}, n) }
		add(ground, at(0, 0), at(1, 0), at(1, 1), at(0, 1))
		add(ground, at(1, 0), at(3, 0), at(2, 1))
		add(points, at(1, 0), at(2, 1), at(1, 1))
		add(points, at(3, 0), at(3, 1), at(2, 1))
	}
	t.Cells = []quilt.Cell{{Label: "S", Count: len(t.Patches)}}
	findSeams(t)
	return t
}

// findSeams finds every stretch along which two faces of a hand-made top meet.
func findSeams(t *quilt.Top) {
	for a := range t.Faces {
		for b := a + 1; b < len(t.Faces); b++ {
			meet(t, a, b)
		}
	}
}

func meet(t *quilt.Top, a, b int) {
	for i, p := range t.Faces[a].Outline {
		q := t.Faces[a].Outline[(i+1)%len(t.Faces[a].Outline)]
		for j, r := range t.Faces[b].Outline {
			s := t.Faces[b].Outline[(j+1)%len(t.Faces[b].Outline)]
			if from, to, ok := overlap(p, q, s, r); ok {
				t.Seams = append(t.Seams, quilt.Seam{A: int32(a), B: int32(b), From: from, To: to})
			}
		}
	}
}

// overlap is what two stretches on one line, in one direction, have in common.
func overlap(p, q, r, s measure.Point) (from, to measure.Point, ok bool) {
	cross := func(a, b, c measure.Point) float64 {
		return float64(b.X-a.X)*float64(c.Y-a.Y) - float64(b.Y-a.Y)*float64(c.X-a.X)
	}
	along := func(a measure.Point) float64 {
		return float64(q.X-p.X)*float64(a.X-p.X) + float64(q.Y-p.Y)*float64(a.Y-p.Y)
	}
	if cross(p, q, r) != 0 || cross(p, q, s) != 0 || along(r) >= along(s) {
		return from, to, false
	}
	from, to = p, q
	if along(r) > along(p) {
		from = r
	}
	if along(s) < along(q) {
		to = s
	}
	return from, to, along(from) < along(to)
}

// starMember is the star as a figure: its points and its middle against the ground.
func starMember(s *study) member {
	var m member
	inside := map[int32]bool{}
	for f := range s.Faces {
		if s.Faces[f].Fabric != ground {
			m.faces = append(m.faces, int32(f))
			inside[int32(f)] = true
		}
	}
	s.surround(&m, inside)
	m.against = nil
	for f := range s.Faces {
		if !inside[int32(f)] {
			m.against = append(m.against, int32(f))
		}
	}
	return m
}

func judged(top *quilt.Top, o Options) Figure {
	s := newStudy(nil, top, o)
	return s.figure(Star, []member{starMember(s)}, s.newMasses())
}

func colour(t testing.TB, text string) palettes.Colour {
	t.Helper()
	c, err := palettes.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// Judge: four colourings of an eight-pointed star of 8 inches, pieces of 2, seen from 10
// feet, whose verdicts were worked out beforehand by another program, with edge steps and
// parts to two digits. The last colouring's own colours were not noted, only the step of
// 16.5 at its edge; any three tans with it will do for the outline, and its mass is held to
// the verdict alone.
func TestFourStars(t *testing.T) {
	for _, c := range []struct {
		name                    string
		ground, points, middle  string
		step, outline, mass     float64
		edge, massing, stepPart float64
		verdict                 Verdict
		massTolerance           float64
	}{
		{"wheat, navy, dark red", "wheat", "navy", "darkred", 76.4, 100, 100, 1, 0.995, 1, Reads, 1},
		{"sea green, crimson, dark gold", "seagreen", "crimson", "darkgoldenrod", 4.5, 0, 14, 0, 0.169, 0.12, Lost, 6},
		{"tan, cream, navy", "peru", "wheat", "navy", 27.6, 100, 3, 1, 0.004, 0.16, OutlineOnly, 8},
		{"three tans", "#e6d3b1", "#b8a681", "#a8966f", 16.5, 87, 95, 0.75, 0.993, 0.91, Reads, 6},
	} {
		top := sawtooth(2*measure.Inch, [3]palettes.Colour{colour(t, c.ground), colour(t, c.points), colour(t, c.middle)})
		f := judged(top, Options{})
		step := math.Abs(top.Fabrics[ground].Colour.Lightness() - top.Fabrics[points].Colour.Lightness())
		t.Logf("%s: step %.1f, %+v, mass %+v, %s", c.name, step, f.Outline, *f.Mass, f.Verdict)
		near(t, c.name+": step", step, c.step, 0.06)
		near(t, c.name+": outline", score(f.Outline.Edge, f.Outline.Polarity), c.outline, 1)
		near(t, c.name+": edge", f.Outline.Edge, c.edge, 0.01)
		near(t, c.name+": mass", score(f.Mass.Massing, f.Mass.Step), c.mass, c.massTolerance)
		near(t, c.name+": massing", f.Mass.Massing, c.massing, 0.03)
		near(t, c.name+": step of masses", f.Mass.Step, c.stepPart, 0.1)
		if f.Verdict != c.verdict {
			t.Errorf("%s: %s, expected %s", c.name, f.Verdict, c.verdict)
		}
		// 38.6 inches of true edge: eight legs of 2 and eight long sides of 2 sqrt 2.
		near(t, c.name+": edge in inches", float64(f.Outline.Length)/float64(measure.Inch), 16*(1+math.Sqrt2), 1e-6)
	}
}

// score is that other program's: the root of two parts' product.
func score(a, b float64) float64 { return 100 * math.Sqrt(a*b) }

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %.4g, expected %.4g to within %g", what, got, want, within)
	}
}
