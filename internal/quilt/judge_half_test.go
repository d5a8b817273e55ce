package quilt_test

import (
	"fmt"
	"math"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// turningTop is a grid of the first kind that turns so.
func turningTop(t *testing.T, size string, how blocks.Turning, grid string) *quilt.Top {
	t.Helper()
	for _, k := range blocks.Kinds() {
		if k.Turning == how {
			return lay(t, plainBlocks(size, k.Name, grid))
		}
	}
	t.Fatalf("no kind turns so: %d", how)
	return nil
}

// squareFor is the side of the square that holds a cut piece with its right angle, at
// corner 0, in the square's corner.
func squareFor(raw []place) float64 {
	reach := 0.0
	for _, p := range raw {
		reach = max(reach, math.Abs(p.x-raw[0].x), math.Abs(p.y-raw[0].y))
	}
	return reach
}

// triangleFor is the leg of the right triangle with equal legs that holds a cut piece with
// its right angle, at corner 0, in the triangle's.
func triangleFor(raw []place) float64 {
	reach := 0.0
	for _, p := range raw {
		reach = max(reach, math.Abs(p.x-raw[0].x)+math.Abs(p.y-raw[0].y))
	}
	return reach
}

// bluntedKite is squareFor of a kite whose sharp tip, corner 2, is cut off flat a seam
// allowance beyond the finished tip.
func bluntedKite(kite []place, q float64) float64 {
	raw := grown(kite, q)
	tip, sharp := kite[2], raw[2]
	over := apart(tip, sharp)
	half := (over - q) * math.Tan(math.Pi/8)
	way := place{(sharp.x - tip.x) / over, (sharp.y - tip.y) / over}
	cut := place{tip.x + way.x*q, tip.y + way.y*q}
	return squareFor([]place{raw[0], raw[1], raw[3], {cut.x - way.y*half, cut.y + way.x*half}, {cut.x + way.y*half, cut.y - way.x*half}})
}

// TestJudgeKite: from strips of 4 in, kites need 3.3907, cut 3 1/2; from 5 1/2, 4.5388, cut
// 4 3/4, and the ring's corners for that strip 3.7825 (squares of 3 1/2 and 4 3/4: common
// practice, no source; the exact needs are derived). Blunted, a tip needs 0.1670 less.
func TestJudgeKite(t *testing.T) {
	for strip, want := range map[string]float64{"strip 4": 3.3907, "strip 5 1/2": 4.5388} {
		top := turningTop(t, strip, blocks.OnWebCentres, " A")
		for _, o := range ofShape(t, top, blocks.Kite) {
			kite := finished(o)
			about(t, strip+": kite", squareFor(grown(kite, 0.25)), want, 5e-5)
			about(t, strip+": kite by the side", squareFor(grown(kite, 0.25)), 0.25+inInches(top.SideFinished)/2+0.25*math.Sqrt2/2/math.Sin(math.Pi/8), 1e-7)
			about(t, strip+": blunted", squareFor(grown(kite, 0.25))-bluntedKite(kite, 0.25), 0.1670, 5e-5)
		}
	}
	corner := finished(ofShape(t, octagonTop(t, "strip 5 1/2"), blocks.RingCorner)[0])
	about(t, "corner for 5 1/2", squareFor(grown(corner, 0.25)), 3.7825, 5e-5)
}

// TestJudgeBackgroundPiece: beside kites from squares of 3 1/2, background pieces come from a square
// of 7 cut once on the diagonal (common practice, no source); the exact need is 6.2111. With
// kites cut to the next quarter that leaves a sixteenth, the custom leaves 0.69 to 1.20 to
// spare for strips of 1 1/2 to 10, and the kite's square is never too small for the ring's
// corner from the same strip, with up to 1.87 to trim (both derived: twice the kite's need is
// 0.5703 more than the ground's, and twice 1/16 to 5/16 comes to that).
func TestJudgeBackgroundPiece(t *testing.T) {
	top := turningTop(t, "strip 4", blocks.ToWebCentre, " A")
	for _, o := range ofShape(t, top, blocks.Background) {
		about(t, "ground", triangleFor(grown(finished(o), 0.25)), 6.2111, 5e-5)
	}
	for sixteenths := 24; sixteenths <= 160; sixteenths++ {
		strip := fmt.Sprintf("strip %g", float64(sixteenths)/16)
		kite := squareFor(grown(finished(ofShape(t, turningTop(t, strip, blocks.OnWebCentres, " A"), blocks.Kite)[0]), 0.25))
		need := triangleFor(grown(finished(ofShape(t, turningTop(t, strip, blocks.ToWebCentre, " A"), blocks.Background)[0]), 0.25))
		cut := math.Ceil((kite+1.0/16)*4) / 4
		if spare := 2*cut - need; spare < 0.69 || spare > 1.20 {
			t.Errorf("%s: %.4f to spare", strip, spare)
		}
		corner := squareFor(grown(finished(ofShape(t, octagonTop(t, strip), blocks.RingCorner)[0]), 0.25))
		if trim := cut - corner; trim < 0 || trim > 1.87 {
			t.Errorf("%s: a ring's corner from the kite's square leaves %.4f to trim", strip, trim)
		}
	}
}

// TestJudgeWedges: strips of 4 in give wedges with a cut base of 3.6478 and a cut tip of
// 0.3341, 1.9909 apart (derived); 40 in of strips of 2, 3, 4, 5, 6, 8 in give 33, 24, 19, 15,
// 13, 10 of them (derived); and the tip does not depend on the strip.
func TestJudgeWedges(t *testing.T) {
	for _, how := range []blocks.Turning{blocks.OnWebCentres, blocks.OnStarCentres, blocks.ToWebCentre, blocks.ToStarCentre} {
		w := measureWedge(ofShape(t, turningTop(t, "strip 4", how, " A"), blocks.Wedge)[0], 0.25)
		about(t, "height", w.height, 3.5, 1e-7)
		about(t, "cut base", w.base, 3.6478, 5e-5)
		about(t, "cut tip", w.tip, 0.3341, 5e-5)
		about(t, "pitch", (w.base+w.tip)/2, 1.9909, 5e-5)
	}
	for strip, want := range map[int]int{2: 33, 3: 24, 4: 19, 5: 15, 6: 13, 8: 10} {
		for _, top := range []*quilt.Top{octagonTop(t, fmt.Sprintf("strip %d", strip)), turningTop(t, fmt.Sprintf("strip %d", strip), blocks.OnWebCentres, " A")} {
			w := measureWedge(ofShape(t, top, blocks.Wedge)[0], 0.25)
			if got := w.fromStrip(40); got != want {
				t.Errorf("%d wedges from 40 in of strip %d, want %d", got, strip, want)
			}
			about(t, "tip", w.tip, 0.3341, 5e-5)
		}
	}
}

// TestJudgeSides: strips of 4 in finish rings of 7 (common practice, no source) and webs of
// 5.3576 (derived).
func TestJudgeSides(t *testing.T) {
	about(t, "ring", inInches(octagonTop(t, "strip 4").SideFinished), 7, 0)
	about(t, "ring of 3 1/2", inInches(octagonTop(t, "strip 3 1/2").SideFinished), 6, 0)
	about(t, "web", inInches(turningTop(t, "strip 4", blocks.OnWebCentres, " A").SideFinished), 5.3576, 5e-5)
}

// TestJudgeQuarter: a kite has 90, 112.5, 45 and 112.5 degrees, and two wedges and a kite
// fill half a block: their areas come to half its square (derived; the law of angles holds
// the degrees).
func TestJudgeQuarter(t *testing.T) {
	for _, size := range []string{"side 4", "side 7.3", "strip 4", "strip 5 3/4"} {
		top := turningTop(t, size, blocks.OnStarCentres, " A")
		half := areaOf(finished(ofShape(t, top, blocks.Kite)[0])) + 2*areaOf(finished(ofShape(t, top, blocks.Wedge)[0]))
		s := inInches(top.SideFinished)
		about(t, size+": half a block", half, s*s/2, 1e-6)
	}
}

// TestJudgeSpider: four triangles from squares of 8 1/2 cut once, each with two wedges and a
// kite, finish a square of 10.78 ((8.5 - 0.875) x 1.4142;
// https://ottawamodernquiltguild.blogspot.com/2020/11/): the four halves round a star of
// four blocks.
func TestJudgeSpider(t *testing.T) {
	top := turningTop(t, "side 7.625", blocks.OnStarCentres, " A A\n A A")
	field := inInches(top.Field.Width())
	corners := map[place]int{}
	for _, o := range ofShape(t, top, blocks.Wedge) {
		corners[finished(o)[0]]++
	}
	up, right := place{field / 2, 0}, place{field, field / 2}
	if corners[up] != 4 || corners[right] != 4 {
		t.Errorf("wedge tips stand at %v", corners)
	}
	about(t, "the square's side", apart(up, right), 10.78, 5e-3)
	// The triangle with its seams needs legs just below 8 1/2 and a long side below the 12.02 that those of 8 1/2 have.
	raw := grown([]place{up, right, {field / 2, field / 2}}, 0.25)
	for what, d := range map[string][2]float64{"a leg": {8.5 - side(raw, 1), 0.125}, "the long side before sewing": {12.02 - side(raw, 0), 0.125 * math.Sqrt2}} {
		if d[0] < 0 || d[0] > d[1] {
			t.Errorf("%s is %.4f below the published one", what, d[0])
		}
	}
}

// TestJudgeHalfSquares: half-square triangles of 2, 3, 6 and 1 1/2 in are cut from squares
// of 2 7/8, 3 7/8, 6 7/8 and 2 3/8
// (https://grannymaudsgirl.wordpress.com/2018/06/11/how-to-measure-and-cut-triangles/,
// http://zubeneschamali.livejournal.com/90307.html), which is the exact 0.8536 more
// (https://karencombs.com/page.php?ID=31 for the rule) and up to an eighth.
func TestJudgeHalfSquares(t *testing.T) {
	for size, published := range map[string]float64{"side 2": 2.875, "side 3": 3.875, "side 6": 6.875, "side 1 1/2": 2.375} {
		top := turningTop(t, size, blocks.ToStarCentre, " A")
		for _, o := range ofShape(t, top, blocks.HalfSquare) {
			raw := grown(finished(o), 0.25)
			about(t, size, squareFor(raw)-inInches(top.SideFinished), 0.8536, 5e-5)
			about(t, size+": triangle", triangleFor(raw), squareFor(raw), 1e-7)
			if d := published - squareFor(raw); d < 0 || d > 0.125 {
				t.Errorf("%s: cut %.4f, published %.4f", size, squareFor(raw), published)
			}
		}
	}
}

// bandsOf is the finished widths of the bands of a top's first wedge, from its wide end.
func bandsOf(t *testing.T, top *quilt.Top) []float64 {
	t.Helper()
	for i := range top.Patches {
		p := &top.Patches[i]
		if p.Shape != blocks.Wedge {
			continue
		}
		var widths []float64
		for _, f := range top.Faces[p.First : p.First+p.Count] {
			o := finished(f.Outline)
			if len(o) == 3 {
				widths = append(widths, apart(o[0], middle(o[1], o[2])))
			} else {
				widths = append(widths, apart(middle(o[0], o[3]), middle(o[1], o[2])))
			}
		}
		return widths
	}
	t.Fatal("the top has no wedge")
	return nil
}

// stripSetTop is a block whose wedges come from a strip set, or nil with the reason why it
// cannot be laid.
func stripSetTop(strip, bands string, h blocks.WedgeHeight) (*quilt.Top, string) {
	k, _ := blocks.Find(blocks.Kinds(), byHeight(h))
	text := "strip " + strip + "\nfabric a #123\nstrip-set s " + bands + "\nblock A " + k.Name
	for _, r := range k.Roles {
		value := " a"
		if r.Banded {
			value = " s"
		}
		text += " " + r.Name + value
	}
	d, _, faults := layout.Read(text + "\ngrid\n A\n")
	if d == nil {
		return nil, fmt.Sprint(faults)
	}
	return quilt.Lay(d), ""
}

// TestJudgeStripSets: a strip set is the sum of its cut widths less half an inch a seam:
// 5 of 2 in make 8
// (https://www.thesprucecrafts.com/strip-piecing-tips-and-techniques-2821620), not the 7 1/2
// of a maker whose seams were too wide; 4 of 2 1/2 make 8 1/2
// (https://www.generations-quilt-patterns.com/cutting-squares-from-strip-sets.html); 3 of
// 1 1/2 make 3 1/2 with 1 in for the middle one
// (http://www.quiltcentric.com/2012/09/16/testing-your-scant-quarter-inch-seam/); 3 of 2 make
// 5 with 1 1/2 for it (http://quilting.about.com/od/machinepiecingyourquilts/ss/seam_allowance_2.htm).
func TestJudgeStripSets(t *testing.T) {
	for _, c := range []struct {
		strip, bands string
		middle       float64
	}{
		{"8", "a 2 a 2 a 2 a 2 a 2", 1.5}, {"8 1/2", "a 2 1/2 a 2 1/2 a 2 1/2 a 2 1/2", 2}, {"3 1/2", "a 1 1/2 a 1 1/2 a 1 1/2", 1}, {"5", "a 2 a 2 a 2", 1.5},
	} {
		for _, h := range []blocks.WedgeHeight{blocks.AlongDiagonal, blocks.ToMiddle} {
			top, why := stripSetTop(c.strip, c.bands, h)
			if top == nil {
				t.Errorf("strip %s: %s", c.strip, why)
				continue
			}
			sum := 0.0
			for _, width := range bandsOf(t, top) {
				about(t, "strip "+c.strip+": band", width, c.middle, 1e-6)
				sum += width
			}
			about(t, "strip "+c.strip+": bands together", sum, measureWedge(ofShape(t, top, blocks.Wedge)[0], 0.25).height, 1e-6)
		}
	}
	if top, _ := stripSetTop("7 1/2", "a 2 a 2 a 2 a 2 a 2", blocks.AlongDiagonal); top != nil {
		t.Error("five strips of 2 in pass for a strip of 7 1/2")
	}
}
