package svgout

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"eighthturn/internal/measure"
)

// drawnIn is a clockwise outline drawn inwards, worked out by the corners' angles: each corner goes along the line that halves its angle,
// until the first side is gone. Deep is how far the sides move.
func drawnIn(outline []measure.Point) (corners [][2]float64, deep float64) {
	n := len(outline)
	way := func(a, b measure.Point) (x, y, long float64) {
		x, y = float64(b.X-a.X), float64(b.Y-a.Y)
		long = math.Hypot(x, y)
		return x / long, y / long, long
	}
	halves := make([]float64, n) // of the angle at each corner
	for i, p := range outline {
		ax, ay, _ := way(p, outline[(i+n-1)%n])
		bx, by, _ := way(p, outline[(i+1)%n])
		halves[i] = math.Acos(ax*bx+ay*by) / 2
	}
	deep = math.MaxFloat64
	for i, p := range outline {
		_, _, long := way(p, outline[(i+1)%n])
		deep = min(deep, long/(1/math.Tan(halves[i])+1/math.Tan(halves[(i+1)%n])))
	}
	for i, p := range outline {
		ax, ay, _ := way(p, outline[(i+n-1)%n])
		bx, by, _ := way(p, outline[(i+1)%n])
		x, y := ax+bx, ay+by
		far := deep / math.Sin(halves[i]) / math.Hypot(x, y)
		corners = append(corners, [2]float64{float64(p.X) + x*far, float64(p.Y) + y*far})
	}
	return corners, deep
}

// convexOutlines are pieces of every form: triangles, kites, strips and bands, and any others without a corner that points in.
func convexOutlines() (list [][]measure.Point) {
	rng := rand.New(rand.NewPCG(17, 19))
	inch := func(x, y float64) measure.Point {
		return measure.Point{X: measure.NM(x * float64(measure.Inch)), Y: measure.NM(y * float64(measure.Inch))}
	}
	list = append(list, []measure.Point{inch(20, 30), inch(23, 30), inch(23, 34), inch(20, 34)}, []measure.Point{inch(50, 8), inch(61, 8), inch(61, 9), inch(50, 9)},
		[]measure.Point{inch(9, 40), inch(12, 40), inch(9, 44)}, []measure.Point{inch(30, 9), inch(34, 9), inch(33, 12), inch(31, 12)})
	for range 60 {
		angles := make([]float64, 3+rng.IntN(3))
		for i := range angles {
			angles[i] = (float64(i) + 0.8*rng.Float64()) * 2 * math.Pi / float64(len(angles))
		}
		wide, turn := 1+4*rng.Float64(), rng.Float64()*math.Pi
		x, y := 10+60*rng.Float64(), 10+60*rng.Float64()
		var outline []measure.Point
		for _, a := range angles {
			u, v := wide*math.Cos(a), 2*math.Sin(a)
			outline = append(outline, inch(x+u*math.Cos(turn)-v*math.Sin(turn), y+u*math.Sin(turn)+v*math.Cos(turn)))
		}
		list = append(list, outline)
	}
	return list
}

// TestTheInsideOfAPiece: a letter's middle is the mean of the corners of the outline drawn in, and has as much room as there is to the
// nearest side; of a triangle both are those of the circle that touches its sides, twice its area by its sides (Euclid, Elements IV 4).
func TestTheInsideOfAPiece(t *testing.T) {
	var in inset
	for _, outline := range convexOutlines() {
		in.of(outline)
		corners, deep := drawnIn(outline)
		var x, y, round, twice float64
		for _, c := range corners {
			x, y = x+c[0]/float64(len(corners)), y+c[1]/float64(len(corners))
		}
		room := math.MaxFloat64
		for i, p := range outline {
			q := outline[(i+1)%len(outline)]
			long := math.Hypot(float64(q.X-p.X), float64(q.Y-p.Y))
			round += long
			twice += (float64(p.X)-x)*(float64(q.Y)-y) - (float64(q.X)-x)*(float64(p.Y)-y)
			room = min(room, (float64(q.X-p.X)*(y-float64(p.Y))-float64(q.Y-p.Y)*(x-float64(p.X)))/long)
		}
		if len(outline) == 3 {
			room, deep = twice/round, twice/round
		}
		gotX, gotY, got := in.middle()
		if math.Hypot(gotX-x, gotY-y) > 20 || math.Abs(got-room) > 20 || math.Abs(in.depth-deep) > 20 {
			t.Fatalf("%v has its middle at %g, %g with %g room, drawn in by %g; expected %g, %g, %g and %g", outline, gotX, gotY, got, in.depth, x, y, room, deep)
		}
	}
}

// TestWhatGoesOnBeneathASide: to a stretch of a side belongs the part of the inset's side that lies opposite it, and where there is none the
// inset's nearest corner, to the nearest hundredth of a unit.
func TestWhatGoesOnBeneathASide(t *testing.T) {
	var in inset
	for _, outline := range convexOutlines() {
		in.of(outline)
		corners, _ := drawnIn(outline)
		for i, p := range outline {
			q := outline[(i+1)%len(outline)]
			from, to := corners[i], corners[(i+1)%len(corners)]
			dx, dy := float64(q.X-p.X), float64(q.Y-p.Y)
			long := math.Hypot(dx, dy)
			inner := ((to[0]-from[0])*dx + (to[1]-from[1])*dy) / long
			for _, part := range [][2]float64{{0, 1}, {0, 0.1}, {0.2, 0.7}, {0.45, 0.55}, {0.9, 1}} {
				var ends, want [2]measure.Point
				for n, along := range part {
					ends[n] = measure.Point{X: p.X + measure.NM(math.Round(along*dx)), Y: p.Y + measure.NM(math.Round(along*dy))}
					at := ((float64(ends[n].X)-from[0])*dx + (float64(ends[n].Y)-from[1])*dy) / long
					at = max(0, min(inner, at)) / long
					want[n] = measure.Point{X: measure.NM(from[0] + at*dx), Y: measure.NM(from[1] + at*dy)}
				}
				a, b := in.stretch(ends[0], ends[1])
				for n, got := range [2]measure.Point{a, b} {
					if off := max(math.Abs(userUnits(got.X-want[n].X)), math.Abs(userUnits(got.Y-want[n].Y))); off > 0.00501 {
						t.Fatalf("to the stretch %v of %v belongs %v, expected about %v", ends, outline, got, want[n])
					}
				}
			}
		}
	}
}

// TestLettersStandInTheMiddle: a letter's capitals have the middle of their height in the middle of the piece; they take as much of the room
// there as a letter or a letter with a number may, and are no larger than blocks and top allow.
func TestLettersStandInTheMiddle(t *testing.T) {
	for _, name := range []string{"lap", "sashed", "mixed", "wide"} {
		top := lay(t, layouts()[name])
		s, err := NewScene(top, Options{View: Line})
		if err != nil {
			t.Fatal(err)
		}
		largest := min(largestInBlock*userUnits(top.SideFinished), largestInTop*userUnits(max(top.Outer.Width(), top.Outer.Height())))
		letters := slices.Collect(s.Layers[len(s.Layers)-1].Items[0].Texts)
		for i, f := range top.Faces {
			corners, _ := drawnIn(f.Outline)
			var x, y float64
			for _, c := range corners {
				x, y = x+c[0]/float64(len(corners)), y+c[1]/float64(len(corners))
			}
			room := math.MaxFloat64
			for i, p := range f.Outline {
				q := f.Outline[(i+1)%len(f.Outline)]
				dx, dy := float64(q.X-p.X), float64(q.Y-p.Y)
				room = min(room, (dx*(y-float64(p.Y))-dy*(x-float64(p.X)))/math.Hypot(dx, dy))
			}
			part := letterInRoom
			if top.Patches[f.Patch].Count > 1 {
				part = pairInRoom
			}
			const units = 96 / 25_400_000.0
			size := min(part*room*units, largest)
			if got := letters[i]; math.Abs(got.Size-size) > 0.00501 || math.Abs(got.X-x*units) > 0.00501 || math.Abs(got.Y-y*units-capitalHeight/2*size) > 0.00501 {
				t.Fatalf("%s: the letter of face %d is %+v, expected at %g, %g, %g high", name, i, got, x*units, y*units+capitalHeight/2*size, size)
			}
		}
	}
}
