package quilt_test

import (
	"math"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/quilt"
)

// beyond is how far a piece's raw corner reaches past the end of a seam line, along that
// line: the seam runs from corner i to corner j, which are neighbours, and ends at j.
func beyond(o []place, i, j int) float64 {
	raw := grown(o, 0.25)
	way := o[j].minus(o[i])
	reach := raw[j].minus(o[j])
	return (reach.x*way.x + reach.y*way.y) / way.length()
}

// blunt is beyond at a tip that is cut off flat a seam allowance beyond the finished one.
func blunt(o []place, i, j int) float64 {
	raw := grown(o, 0.25)
	over := raw[j].minus(o[j])
	way := o[j].minus(o[i])
	// The raw edge that lies along the seam, cut off where it is a seam allowance beyond the
	// tip, counted along the tip's middle line.
	cos := (over.x*way.x + over.y*way.y) / (over.length() * way.length())
	return (0.25 - 0.25*math.Sqrt(1-cos*cos)) / cos
}

// TestJudgeOffsets measures how far raw edges reach past the end of the seam line, by the
// corner's angle, for seams of a quarter inch (all derived): 67.5 degrees 0.3742; 112.5, and
// a blunt tip of 45, 0.1670; a sharp one 0.6036; 90 degrees 0.25. A right angle reaches a
// seam allowance, as any quilter sees.
func TestJudgeOffsets(t *testing.T) {
	web := turningTop(t, "strip 4", blocks.OnWebCentres, " A")
	wedge := finished(ofShape(t, web, blocks.Wedge)[0])
	kite := finished(ofShape(t, web, blocks.Kite)[0])
	corner := finished(ofShape(t, octagonTop(t, "strip 4"), blocks.RingCorner)[0])
	about(t, "67.5 degrees", beyond(wedge, 1, 2), 0.3742, 5e-5)
	about(t, "112.5 degrees", beyond(kite, 0, 1), 0.1670, 5e-5)
	about(t, "45 degrees, sharp", beyond(wedge, 1, 0), 0.6036, 5e-5)
	about(t, "45 degrees, blunt", blunt(wedge, 1, 0), 0.1670, 5e-5)
	about(t, "90 degrees", beyond(corner, 1, 0), 0.25, 1e-6)
}

// TestJudgeLeads measures which piece leads by how much where two are sewn together
// (derived): a wedge's base leads a kite or a ground by 0.2071 at both ends, legs of a ring
// lead each other by nothing, and a ring's corner leads the assembled octagon by 0.5.
func TestJudgeLeads(t *testing.T) {
	for _, c := range []struct {
		how   blocks.Turning
		other blocks.Shape
	}{{blocks.OnWebCentres, blocks.Kite}, {blocks.ToWebCentre, blocks.Background}} {
		top := turningTop(t, "strip 4", c.how, " A")
		for _, pair := range alongBases(t, top, c.other) {
			w, o := pair.wedge, pair.other
			about(t, "lead at one end", beyond(w, 1, 2)-pair.reach(o, w[2]), 0.2071, 5e-5)
			about(t, "lead at the other end", beyond(w, 2, 1)-pair.reach(o, w[1]), 0.2071, 5e-5)
		}
	}
	ring := octagonTop(t, "strip 4")
	one, two := finished(ofShape(t, ring, blocks.Wedge)[0]), finished(ofShape(t, ring, blocks.Wedge)[1])
	about(t, "legs at the perimeter", beyond(one, 0, 2)-beyond(two, 0, 1), 0, 1e-6)
	about(t, "legs at the middle", beyond(one, 2, 0)-beyond(two, 1, 0), 0, 1e-6)
	corner := finished(ofShape(t, ring, blocks.RingCorner)[0])
	about(t, "corner on an octagon", beyond(corner, 1, 2)-beyond(octagonOf(t, ring), 0, 1), 0.5, 1e-6)
}

// seamed is a wedge and the piece that lies along its base, in inches.
type seamed struct{ wedge, other []place }

// reach is how far the other piece's raw edge goes past the end of the base at a corner of
// both; a corner of 45 degrees is a tip, which is blunt.
func (s seamed) reach(o []place, at place) float64 {
	for j, p := range o {
		if apart(p, at) > 1e-9 {
			continue
		}
		for _, i := range []int{(j + len(o) - 1) % len(o), (j + 1) % len(o)} {
			if apart(o[i], s.wedge[1]) > 1e-9 && apart(o[i], s.wedge[2]) > 1e-9 {
				continue
			}
			if beyond(o, i, j) > 0.5 {
				return blunt(o, i, j)
			}
			return beyond(o, i, j)
		}
	}
	return math.NaN()
}

// alongBases is the wedges of a top with the pieces of a shape along their bases.
func alongBases(t *testing.T, top *quilt.Top, s blocks.Shape) []seamed {
	t.Helper()
	var list []seamed
	for _, seam := range top.Seams {
		a, b := top.Patches[top.Faces[seam.A].Patch], top.Patches[top.Faces[seam.B].Patch]
		if b.Shape == blocks.Wedge {
			a, b = b, a
		}
		if a.Shape == blocks.Wedge && b.Shape == s && seam.From != a.Outline[0] && seam.To != a.Outline[0] {
			list = append(list, seamed{finished(a.Outline), finished(b.Outline)})
		}
	}
	if len(list) == 0 {
		t.Fatalf("no %s lies along a base", s)
	}
	return list
}
