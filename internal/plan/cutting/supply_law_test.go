package cutting

import (
	"fmt"
	"slices"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/quilttest/lay"
)

// The law of supply: every patch of the top has exactly one line, and strips and strip sets give what the lines want.

// unsupplied says what of a top a plan does not supply, or supplies otherwise.
func unsupplied(top *quilt.Top, p *Plan) error {
	of := make([]int, len(top.Patches))
	for n, line := range p.Lines {
		if line.Number != n || line.Pieces != len(line.Patches)*p.Copies {
			return fmt.Errorf("line %d wants %d pieces for %d patches", n, line.Pieces, len(line.Patches))
		}
		for _, patch := range line.Patches {
			of[patch]++
			if p.LineOf[patch] != n {
				return fmt.Errorf("patch %d is of line %d and of %d", patch, n, p.LineOf[patch])
			}
			if err := unlike(top, p, &line, patch); err != nil {
				return err
			}
		}
	}
	for patch, lines := range of {
		if lines != 1 {
			return fmt.Errorf("patch %d has %d lines", patch, lines)
		}
	}
	return ungiven(p)
}

// unlike says where a line's cloth is not its patch's.
func unlike(top *quilt.Top, p *Plan, line *Line, patch int) error {
	t := &top.Patches[patch]
	if t.Shape != line.Piece.Shape {
		return fmt.Errorf("patch %d is a %s, its line has %ss", patch, t.Shape, line.Piece.Shape)
	}
	if line.Fabric >= 0 {
		if t.Count != 1 || p.Fabrics[line.Fabric].Index != int(top.Faces[t.First].Fabric) {
			return fmt.Errorf("patch %d is not of its line's fabric", patch)
		}
		return nil
	}
	bands := slices.Clone(p.Sets[line.Set].Bands)
	if line.Reversed {
		slices.Reverse(bands)
	}
	if len(bands) != int(t.Count) {
		return fmt.Errorf("patch %d has %d bands, its strip set %d", patch, t.Count, len(bands))
	}
	for i, b := range bands {
		face := &top.Faces[int(t.First)+i]
		if p.Fabrics[b.Fabric].Index != int(face.Fabric) {
			return fmt.Errorf("band %d of patch %d is not of its strip set's fabric", i, patch)
		}
		if off := bandWidth(t, face) - float64(b.WidthFinished); off > 50 || off < -50 {
			return fmt.Errorf("band %d of patch %d is %.0f nanometres wider than its strip set's", i, patch, off)
		}
	}
	return nil
}

// bandWidth is the width of a face of a wedge, measured from its outline along the wedge's middle.
func bandWidth(t *quilt.Patch, face *quilt.Face) float64 {
	tip, a, b := t.Outline[0], t.Outline[1], t.Outline[2]
	x, y := float64(a.X+b.X)/2-float64(tip.X), float64(a.Y+b.Y)/2-float64(tip.Y)
	length := hypot(x, y)
	least, most := 1e300, -1e300
	for _, p := range face.Outline {
		d := (float64(p.X-tip.X)*x + float64(p.Y-tip.Y)*y) / length
		least, most = min(least, d), max(most, d)
	}
	return most - least
}

// ungiven says which line is not given all that it wants, and which strip set not its strips.
func ungiven(p *Plan) error {
	units, joined := map[int]int{}, map[int]measure.NM{}
	setStrips := map[[3]int64]int{} // set, fabric, width
	for i := range p.Fabrics {
		f := &p.Fabrics[i]
		for _, s := range f.Strips {
			for _, c := range s.Cuts {
				switch c.Use {
				case ForPieces:
					units[c.Lines[0]] += c.Units * s.Times
				case ForJoining:
					joined[c.Lines[0]] += measure.NM(c.Units*s.Times) * c.AlongCut
				case ForSet:
					setStrips[[3]int64{int64(c.Set), int64(i), int64(c.AcrossCut)}] += c.Units * s.Times
				}
			}
		}
		for _, b := range f.Blocks {
			for _, c := range b.Columns {
				units[c.Line] += c.Units * b.Times
			}
		}
		unitsFromPrint(f, units)
	}
	for i := range p.Sets {
		if err := setUngiven(p, i, setStrips); err != nil {
			return err
		}
	}
	var long, wanted measure.NM // of pieces cut from joined strips, over all lines
	for n := range p.Lines {
		line := &p.Lines[n]
		long += joined[n]
		switch {
		case line.Set >= 0:
		case line.Piece.Method == Joined:
			wanted += measure.NM(line.Pieces) * line.Piece.AlongCut
		case units[n]*line.Piece.Method.PerUnit() < line.Pieces-line.OnHand:
			return fmt.Errorf("line %d wants %d pieces, its strips give %d", n, line.Pieces-line.OnHand, units[n]*line.Piece.Method.PerUnit())
		case units[n] != line.Units || line.Spare >= max(line.Piece.Method.PerUnit(), mostTimes(p, line)):
			return fmt.Errorf("line %d says %d units and %d to spare, strips give %d", n, line.Units, line.Spare, units[n])
		}
	}
	for _, f := range p.Fabrics { // whole pieces of joined edgings are cut from strips of their own
		for _, s := range f.Strips {
			for _, c := range s.Cuts {
				if c.Use == ForPieces && p.Lines[c.Lines[0]].Piece.Method == Joined {
					long += measure.NM(c.Units*s.Times) * c.AlongCut
				}
			}
		}
	}
	if long < wanted {
		return fmt.Errorf("joined strips are %d nanometres short", wanted-long)
	}
	return nil
}

// setUngiven cuts a strip set wedge by wedge and counts, and counts its strips.
func setUngiven(p *Plan, n int, strips map[[3]int64]int) error {
	s := &p.Sets[n]
	given, sets := cutFromSets(p, n), 0
	for _, r := range s.Runs {
		sets += r.Sets
	}
	wanted := [2]int{}
	for way, line := range s.Lines {
		if line >= 0 {
			wanted[way] = p.Lines[line].Pieces - p.Lines[line].OnHand
		}
	}
	if given[0] < wanted[0] || given[1] < wanted[1] || given != s.Given || wanted != s.toCut() {
		return fmt.Errorf("strip set %d gives %v of %v, and says %v of %v", n, given, wanted, s.Given, s.toCut())
	}
	want := map[[2]int64]int{}
	for _, b := range s.Bands {
		want[[2]int64{int64(b.Fabric), int64(b.WidthCut)}] += sets
	}
	for key, count := range want {
		if got := strips[[3]int64{int64(n), key[0], key[1]}]; got != count {
			return fmt.Errorf("strip set %d takes %d strips of fabric %d, %d are cut", n, count, key[0], got)
		}
	}
	return nil
}

func TestSupply(t *testing.T) {
	shapes := map[blocks.Shape]bool{}
	count := 0
	for _, n := range everyTop(150) {
		for _, o := range n.variants {
			p := planned(n.Top, o)
			if len(p.Faults) > 0 {
				continue
			}
			count++
			if err := unsupplied(n.Top, p); err != nil {
				t.Fatalf("%s: %v", n.name, err)
			}
			for _, line := range p.Lines {
				shapes[line.Piece.Shape] = true
			}
		}
	}
	if len(shapes) != int(blocks.Strip)+1 || count < judges.Of(110, 480) {
		t.Errorf("%d plans with shapes %v", count, shapes)
	}
}

// TestSupplyCatches: plans that lack something are found out.
func TestSupplyCatches(t *testing.T) {
	for _, c := range []struct {
		name, sample string
		harm         func(p *Plan)
	}{
		{"a patch in two lines", "lanterns", func(p *Plan) { p.Lines[1].Patches[0] = p.Lines[0].Patches[0] }},
		{"a patch in none", "lanterns", func(p *Plan) { p.Lines[0].Patches = p.Lines[0].Patches[1:] }},
		{"a strip too few", "compass", func(p *Plan) { p.Fabrics[0].Strips[0].Times-- }},
		{"a square too few", "flotsam", func(p *Plan) { c := &p.Fabrics[8].Strips[0].Cuts[0]; c.Units-- }},
		{"a strip for a set too few", "lanterns", func(p *Plan) {
			for i := range p.Fabrics[2].Strips {
				p.Fabrics[2].Strips[i].Times--
			}
		}},
		{"wedges cut from one side only", "lanterns", func(p *Plan) { p.Sets[0].Runs[0].FirstReversed += 3 }},
		{"a set turned round", "starfish", func(p *Plan) { slices.Reverse(p.Sets[0].Bands) }},
		{"a lengthwise border forgotten", "shutters", func(p *Plan) { p.Fabrics[1].Blocks[0].Columns = p.Fabrics[1].Blocks[0].Columns[1:] }},
		{"borders joined too short", "flotsam", func(p *Plan) {
			for i := range p.Lines {
				if p.Lines[i].Piece.Method == Joined {
					p.Lines[i].Piece.AlongCut += 40 * measure.Inch
				}
			}
		}},
	} {
		for _, n := range sampleTops() {
			if n.name != c.sample {
				continue
			}
			p := Build(nil, n.Top, Options{})
			c.harm(p)
			if unsupplied(n.Top, p) == nil {
				t.Errorf("%s was not noticed", c.name)
			}
		}
	}
}

// TestBackingIsAsWideAsFabrics: a backing of your choice is as wide as the layout says of fabrics, one of its fabrics as wide as that.
func TestBackingIsAsWideAsFabrics(t *testing.T) {
	t.Parallel()
	const grid = "fabric b #888\nblock A plain piece a\ngrid\n A\nrepeat across 10 down 10\n"
	for _, c := range []struct {
		text string
		want measure.NM
	}{
		{"side 6\nfabric a #111\n" + grid, 40 * measure.Inch},
		{"side 6\nusable-width 42\nfabric a #111\n" + grid, 42 * measure.Inch},
		{"side 6\nusable-width 42\nfabric a #111 usable-width 60\n" + grid + "backing a\n", 60 * measure.Inch},
		{"units cm\nside 15\nfabric a #111\n" + grid, 100 * measure.Centimetre},
		{"units cm\nside 15\nusable-width 110\nfabric a #111\n" + grid, 110 * measure.Centimetre},
	} {
		if got := Build(nil, lay.Top(t, c.text), Options{}).Backing.UsableWidth; got != c.want {
			t.Errorf("%q: a backing %s wide, expected %s", c.text, measure.Text(got, measure.Inches), measure.Text(c.want, measure.Inches))
		}
	}
}
