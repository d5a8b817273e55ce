package blocks_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// Cut sizes, measured again on finished outlines with their seam allowances round them.

// slack is a few nanometres, in inches.
const slack = 1e-6

func nm(inches float64) measure.NM { return measure.NM(math.Round(inches * inch)) }
func in(nm measure.NM) float64     { return float64(nm) / inch }

// sizing is what pieces of a block follow from, of a side that is even.
func sizing(side, seam measure.NM, units measure.System) *blocks.Sizing {
	z := &blocks.Sizing{Units: units, Seam: seam, SideFinished: side, Steps: blocks.Steps{}.Filled(units)}
	for h := blocks.AlongDiagonal; int(h) < blocks.Heights; h++ {
		z.StripsCut[h] = h.Finished(side) + 2*seam
	}
	return z
}

// box is how wide and how high an outline is.
func box(o outline) (wide, high float64) {
	x, y := []float64{}, []float64{}
	for _, p := range o {
		x, y = append(x, p[0]), append(y, p[1])
	}
	return slices.Max(x) - slices.Min(x), slices.Max(y) - slices.Min(y)
}

// upTo says whether a size is the next whole number of steps from another one on.
func upTo(size, from, step measure.NM) bool {
	return size%step == 0 && size >= from && size-from < step
}

// squareAmiss holds a square that triangles, kites and background pieces are cut from against the piece with its allowances.
func squareAmiss(z *blocks.Sizing, d *blocks.Description, c *blocks.CutSize, finished outline) (list []string) {
	law := func(holds bool, text string) {
		if !holds {
			list = append(list, text)
		}
	}
	o, f := outlined(grown(finished, in(z.Seam))), outlined(finished)
	wide, high := box(outline(o))
	least := max(wide, high)
	quarter := c.Method == blocks.TwiceOnDiagonal
	if quarter {
		least = o.length(1)
	}
	law(near(in(c.AcrossExact), least, slack), "the least square is another")
	law(c.AcrossExact == c.AlongExact && c.AcrossCut == c.AlongCut && c.TrimCut == c.AlongCut-c.AlongExact && c.TrimCut >= 0, "it is no square, or less than it must be")
	edge := map[bool][]int{false: {0, 1}, true: {1, 2}}[quarter] // of the square: from its corner, or where it was cut twice the long one
	law(slices.Equal(slices.Sorted(slices.Values(c.Grain[:])), edge), "the grain does not run along the edge of the square")
	switch out := in(c.StandsOut); {
	case len(o) == 3: // sewn by the middle of its long edge: how much further from that the short edges lie
		leg := func(square measure.NM) float64 {
			if quarter {
				return in(square) / math.Sqrt2
			}
			return in(square)
		}
		law(near(out, (leg(c.AlongCut)-leg(c.AlongExact))/2, slack) && !c.OutShared && c.OutEach() == c.StandsOut, "its short edges stand out by another amount")
	case d.Hand != nil: // one long side is exact, so that what one short side has more the other has less
		law(c.StandsOut == c.TrimCut && c.OutShared && c.OutEach() == c.TrimCut/2, "its short sides stand out by another amount")
	default:
		law(c.StandsOut == c.TrimCut && !c.OutShared && c.OutEach() == c.TrimCut, "it stands out by another amount")
	}
	law(c.Method.PerUnit() == map[blocks.Method]int{blocks.Whole: 1, blocks.OnceOnDiagonal: 2, blocks.TwiceOnDiagonal: 4}[c.Method], "another number of pieces comes of a square")
	law(near(in(c.SideFinished), map[bool]float64{true: f.length(0), false: in(z.SideFinished)}[len(o) == 3], slack), "its finished size is another")
	return list
}

// thumb is the square by the rules of thumb for a seam of 1/4 in: 7/8 in more than the short edge for two triangles of a square, 1 1/4 in more
// than the long edge for four (common practice, no source); 0 where they do not serve.
func thumb(z *blocks.Sizing, c *blocks.CutSize) measure.NM {
	size := float64(c.SideFinished) + 0.875*inch
	if c.Method == blocks.TwiceOnDiagonal {
		size = math.Round(float64(c.SideFinished)*math.Sqrt2) + 1.25*inch
	}
	if z.Units != measure.Inches || z.Seam != measure.Inch/4 {
		return 0
	}
	return measure.RoundUp(measure.NM(size), z.Steps.Exact)
}

// each calls for every sort of piece of the kinds, in blocks of many sides.
func each(rounds int, f func(z *blocks.Sizing, k *blocks.Kind, p blocks.Piece, finished outline)) {
	rng := rand.New(rand.NewPCG(5, 8))
	for range rounds {
		units := measure.System(rng.IntN(2))
		seam := []measure.NM{measure.Inch / 4, measure.Inch / 4, 6 * measure.Millimetre, measure.Inch/5 + 1}[rng.IntN(4)]
		z := sizing(2*(measure.Inch+measure.NM(rng.Int64N(int64(8*measure.Inch)))), seam, units)
		z.LongEdgesStraight, z.CornersByCustom = rng.IntN(2) == 0, rng.IntN(2) == 0
		for _, k := range blocks.Kinds() {
			seen := map[blocks.Shape]bool{}
			for _, p := range k.Pieces {
				if seen[p.Shape] {
					continue
				}
				seen[p.Shape] = true
				z.Height = k.Height
				z.AcrossFinished, z.AlongFinished = z.SideFinished, z.SideFinished
				f(z, k, p, scaled(p, in(z.SideFinished)))
			}
		}
	}
}

// TestSquaresOfPieces: kites, background pieces and triangles, with their allowances, just fit into the squares that they are said to need at
// least, and are cut on the next step that leaves what is to trim.
func TestSquaresOfPieces(t *testing.T) {
	each(200, func(z *blocks.Sizing, k *blocks.Kind, p blocks.Piece, finished outline) {
		d := p.Shape.Description()
		if d.Point == 0 || d.Sized == blocks.ByOutline {
			return
		}
		c, exact, ok := d.Cut(z)
		if !ok || exact != nil {
			t.Fatalf("%+v: no %s, or one that must be exact", z, d.Name)
		}
		for _, amiss := range squareAmiss(z, d, &c, finished) {
			t.Errorf("%+v: %s of a %s, %+v: %s", z, d.Name, k.Name, c, amiss)
		}
		strip := z.StripsCut[k.Height]
		kite, _, _ := blocks.Kite.Description().Cut(&blocks.Sizing{Units: z.Units, Seam: z.Seam, StripsCut: [blocks.Heights]measure.NM{blocks.AlongDiagonal: strip}, Steps: z.Steps})
		byKite := p.Shape == blocks.RingCorner && !z.LongEdgesStraight && kite.AlongCut >= c.AlongExact
		switch {
		case p.Shape == blocks.Kite:
			if left := c.AlongCut - c.AlongExact - z.Steps.Spare; c.AlongCut%z.Steps.Trimmed != 0 || left < 0 || left >= z.Steps.Trimmed {
				t.Errorf("%+v: a kite's square is %d, need %d", z, c.AlongCut, c.AlongExact)
			}
		case d.Hand != nil: // by custom
			if c.AlongCut != 2*kite.AlongCut {
				t.Errorf("%+v: the square of background pieces is %d, a kite's %d", z, c.AlongCut, kite.AlongCut)
			}
		case byKite && z.CornersByCustom:
			if c.AlongCut != kite.AlongCut {
				t.Errorf("%+v: by custom it is cut from %d, a kite's square is %d", z, c.AlongCut, kite.AlongCut)
			}
		case !upTo(c.AlongCut, c.AlongExact, z.Steps.Exact):
			t.Errorf("%+v: a square of %d for a %s is not the next step from %d", z, c.AlongCut, d.Name, c.AlongExact)
		default:
			if rule := thumb(z, &c); len(finished) == 3 && c.RuleCut != rule && !(c.RuleCut == 0 && rule == c.AlongCut) {
				t.Errorf("%+v: by the rule of thumb it is %d, want %d", z, c.RuleCut, rule)
			}
		}
		if want := map[bool]measure.NM{true: kite.AlongCut}[byKite]; c.KitesCut != want {
			t.Errorf("%+v: from the kite's square of %d, want %d", z, c.KitesCut, want)
		}
		tabled(t, z, d, &c, strip)
	})
}

// tabled holds the table of squares for a strip, without a layout, against the plan of a layout.
func tabled(t *testing.T, z *blocks.Sizing, d *blocks.Description, c *blocks.CutSize, strip measure.NM) {
	t.Helper()
	if d.Square == nil || z.LongEdgesStraight || z.CornersByCustom {
		return
	}
	s := d.Square(strip, z.Seam, z.Units)
	want := blocks.StripSquare{Need: c.AlongExact, Cut: c.AlongCut, KitesCut: c.KitesCut}
	if len(d.Angles[0]) == 3 {
		want.RuleCut = thumb(z, c)
	}
	if s != want {
		t.Errorf("%+v: the table has %+v for a %s, the plan %+v", z, s, d.Name, want)
	}
}

func TestSquaresOfPiecesCatches(t *testing.T) {
	each(1, func(z *blocks.Sizing, k *blocks.Kind, p blocks.Piece, finished outline) {
		d := p.Shape.Description()
		c, _, _ := d.Cut(z)
		if d.Point == 0 || d.Sized == blocks.ByOutline {
			return
		}
		for name, spoil := range map[string]func(c *blocks.CutSize){
			"a thread less": func(c *blocks.CutSize) { c.AcrossExact -= 100; c.AlongExact -= 100; c.TrimCut += 100 },
			"no square":     func(c *blocks.CutSize) { c.AlongCut++ },
			"other grain":   func(c *blocks.CutSize) { c.Grain = [2]int{0, 2} },
			"stands out":    func(c *blocks.CutSize) { c.StandsOut += 100 },
			"shared":        func(c *blocks.CutSize) { c.OutShared = !c.OutShared },
			"another size":  func(c *blocks.CutSize) { c.SideFinished += 100 },
		} {
			broken := c
			if spoil(&broken); len(squareAmiss(z, d, &broken, finished)) == 0 {
				t.Errorf("a %s: %s goes through", d.Name, name)
			}
		}
	})
}

// TestWedgesOfStrips: a wedge with its allowances, its tip cut off by the edge of the strip, has the wide end and the tip that are said, and two
// neighbors take twice the pitch of the strip.
func TestWedgesOfStrips(t *testing.T) {
	each(100, func(z *blocks.Sizing, k *blocks.Kind, p blocks.Piece, finished outline) {
		d := p.Shape.Description()
		if d.Point != 0 {
			return
		}
		c, exact, ok := d.Cut(z)
		o := outlined(grown(finished, in(z.Seam))).laid(2, 1)
		wide, high := box(outline(o))
		strip := in(z.StripsCut[k.Height])
		if !ok || !near(in(c.WideCut), wide, slack) || !near(in(c.NarrowCut), wide*(high-strip)/high, slack) || !near(in(c.AcrossCut), strip, slack) || !near(in(c.SideFinished), strip-2*in(z.Seam), slack) {
			t.Errorf("%+v: a wedge of a %s is %+v, want %.4f by %.4f", z, k.Name, c, wide, high)
		}
		if c.AcrossExact != c.AcrossCut || c.AlongExact != c.WideCut || c.AlongCut != c.WideCut || c.Grain != d.Grain || c.Method != blocks.Nested || c.Method.PerUnit() != 1 || c.TrimCut != 0 {
			t.Errorf("%+v: a wedge is %+v", z, c)
		}
		if pair := c.WideCut + c.NarrowCut; pair-2*c.PitchCut() > 1 || pair < 2*c.PitchCut() {
			t.Errorf("two wedges of %d and %d take %d each", c.WideCut, c.NarrowCut, c.PitchCut())
		}
		if len(exact) != 1 || exact[0].Cut != c.AcrossCut {
			t.Fatalf("what must be exact of a wedge: %+v", exact)
		}
		if side := exact[0].SideOf(c.AcrossCut); side-z.SideFinished > 2 || z.SideFinished-side > 2 {
			t.Errorf("strips of %d give blocks of %d, want %d", c.AcrossCut, side, z.SideFinished)
		}
	})
}

// TestWhatStripsGive: nothing is cut from a strip that its seams use up, nor from one beyond the limit.
func TestWhatStripsGive(t *testing.T) {
	for _, s := range []blocks.Shape{blocks.Wedge, blocks.Kite, blocks.Background, blocks.RingCorner} {
		for strip, want := range map[measure.NM]bool{measure.Inch / 2: false, measure.Inch/2 + 1: true, blocks.MaxCut: true, blocks.MaxCut + 1: false} {
			z := sizing(6*measure.Inch, measure.Inch/4, measure.Inches)
			z.StripsCut = [blocks.Heights]measure.NM{blocks.AlongDiagonal: strip, blocks.ToMiddle: strip}
			if z.Height = blocks.AlongDiagonal; s == blocks.RingCorner {
				z.Height = blocks.ToMiddle
			}
			if _, _, ok := s.Description().Cut(z); ok != want {
				t.Errorf("a %s from a strip of %d: %v", s, strip, ok)
			}
		}
	}
}

// TestRectanglesWithAllowances: squares, strips and sashes are cut a seam allowance larger on every side; border strips are as long as the next step,
// and a side that another size of block would give is told.
func TestRectanglesWithAllowances(t *testing.T) {
	z := sizing(6*measure.Inch, measure.Inch/4, measure.Inches)
	z.AcrossFinished, z.AlongFinished = 2*measure.Inch+1, 9*measure.Inch+1
	q := 2 * z.Seam
	for _, c := range []struct {
		shape             blocks.Shape
		inBlock, inBorder bool
		long              measure.NM // finished
		exact             int        // sizes
		of                int        // which of them follows from the block's side, -1 for none
	}{
		{blocks.Square, false, false, z.AcrossFinished, 1, -1}, {blocks.Square, true, false, z.AcrossFinished, 1, 0}, {blocks.Strip, false, true, z.AlongFinished, 1, -1},
		{blocks.Strip, false, false, z.AlongFinished, 2, -1}, {blocks.Strip, false, false, z.SideFinished, 2, 1},
	} {
		y := *z
		y.InBlock, y.InBorder, y.AlongFinished = c.inBlock, c.inBorder, c.long
		got, exact, ok := c.shape.Description().Cut(&y)
		if !ok || got.AcrossExact != y.AcrossFinished+q || got.AcrossCut != y.AcrossFinished+q || got.AlongExact != c.long+q || got.Method != blocks.Whole || got.Grain != c.shape.Description().Grain {
			t.Errorf("a %s is %+v", c.shape, got)
		}
		if got.SideFinished != y.AcrossFinished || got.LengthFinished != 0 && got.LengthFinished != c.long || got.LengthFinished == 0 && c.shape == blocks.Strip {
			t.Errorf("a %s finishes at %d by %d", c.shape, got.SideFinished, got.LengthFinished)
		}
		if got.TrimCut != got.AlongCut-got.AlongExact || c.inBorder && !upTo(got.AlongCut, got.AlongExact, z.Steps.Exact) || !c.inBorder && got.TrimCut != 0 {
			t.Errorf("a %s of %d is cut %d", c.shape, got.AlongExact, got.AlongCut)
		}
		if len(exact) != c.exact {
			t.Fatalf("of a %s these must be exact: %+v", c.shape, exact)
		}
		for i, e := range exact {
			if want := []measure.NM{got.AcrossCut, got.AlongCut}[i]; e.Cut != want || (e.SideOf != nil) != (i == c.of) || e.SideOf != nil && e.SideOf(7*measure.Inch+q) != 7*measure.Inch {
				t.Errorf("a %s must have %s of %d, want %d", c.shape, e.What, e.Cut, want)
			}
		}
	}
}

// TestPiecesOfColumns: tumblers and end pieces with their allowances have the edges that are said, and the strip is a block's side with two.
func TestPiecesOfColumns(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 5))
	for range 300 {
		units := measure.System(rng.IntN(2))
		z := sizing(2*(measure.Inch+measure.NM(rng.Int64N(int64(4*measure.Inch)))), []measure.NM{measure.Inch / 4, 6 * measure.Millimetre}[rng.IntN(2)], units)
		column, err := blocks.ByLength(z.SideFinished*measure.NM(2+rng.IntN(7)), z.SideFinished, z.SideFinished/2+measure.NM(rng.Int64N(int64(z.SideFinished))))
		if err != nil {
			continue
		}
		z.Divided = &column
		pieces := columnOf(column, z.SideFinished, rng.IntN(2) == 0)
		strip := z.SideFinished + 2*z.Seam
		for i, o := range []outline{pieces[0], pieces[len(pieces)/2]} {
			shape := blocks.ColumnShape(i == 0 || len(pieces) == 2)
			c, exact, ok := shape.Description().Cut(z)
			if !ok {
				t.Fatalf("%+v: no %s", z, shape)
			}
			p, _ := measured(grown(o, in(z.Seam)))
			f, _ := measured(o)
			wide, narrow := c.WideCut-c.TrimCut, c.NarrowCut-c.TrimCut
			if !near(in(wide), p.wide(), 3*slack) || !near(in(narrow), p.narrow(), 3*slack) || c.AcrossExact != strip || c.AcrossCut != strip || c.SideFinished != z.SideFinished || !near(in(c.LengthFinished), f.mean(), slack) {
				t.Errorf("%+v: a %s is %+v, want %+v", z, shape, c, p)
			}
			if c.Grain != shape.Description().Grain || exact[0].Cut != strip || exact[0].SideOf(strip+2) != z.SideFinished+2 {
				t.Errorf("%+v: a %s has the grain %v and must have %+v", z, shape, c.Grain, exact)
			}
			if shape == blocks.ColumnShape(false) {
				if line := exact[1].Cut; c.AlongExact != c.WideCut || c.AlongCut != c.WideCut || c.Method != blocks.Nested || exact[1].SideOf != nil || !near(blocks.MeanByLine(line, strip, z.Seam)/inch, f.mean(), slack) {
					t.Errorf("%+v: a tumbler is %+v, exact %+v", z, c, exact)
				}
				continue
			}
			if c.Method != blocks.EndPairs || c.Method.PerUnit() != 2 || !near(in(c.AlongExact), p.wide()+p.narrow(), slack) || !upTo(c.AlongCut, c.AlongExact, z.Steps.Exact) || c.TrimCut != (c.AlongCut-c.AlongExact)/2 {
				t.Errorf("%+v: two end pieces are %+v", z, c)
			}
		}
	}
}

// TestLinesOfTumblers: a tumbler is cut by a line of the rule that lies beyond its strip, so that it has a narrow side, and that a rule may have.
func TestLinesOfTumblers(t *testing.T) {
	const q = measure.Inch / 4
	strip := 6*measure.Inch + 2*q
	for line, want := range map[measure.NM]bool{strip: false, strip + 1: true, blocks.MaxCut: true, blocks.MaxCut + 1: false} {
		z := sizing(6*measure.Inch, q, measure.Inches)
		z.Divided = &blocks.Column{Mean: blocks.MeanByLine(line, strip, q), Whole: 1, End: float64(measure.Inch)}
		if blocks.LineFor(z.Divided.Mean, strip, q) != line {
			t.Fatalf("the line %d is not had back", line)
		}
		if _, _, ok := blocks.Tumbler.Description().Cut(z); ok != want {
			t.Errorf("a line of %d: %v", line, ok)
		}
	}
	z := sizing(blocks.MaxCut-2*q, q, measure.Inches)
	for _, more := range []measure.NM{0, 2} {
		z.SideFinished += more
		z.Divided = &blocks.Column{Mean: blocks.MeanByLine(blocks.MaxCut, z.SideFinished+2*q, q), End: 1}
		if _, _, ok := blocks.Tumbler.Description().Cut(z); ok {
			t.Error("a tumbler has a line within its strip")
		}
	}
}

// TestColumnsHoldAllTheyCan: by a line a column has as many whole pieces as leave both ends a corner.
func TestColumnsHoldAllTheyCan(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 11))
	refused := 0
	for range 2000 {
		side := 1 + measure.NM(rng.Int64N(int64(9*measure.Inch)))
		lean := float64((math.Sqrt2 - 1) * float64(side))
		length := side + measure.NM(rng.Int64N(int64(60*measure.Inch)))
		if rng.IntN(5) == 0 {
			length = side + measure.NM(rng.IntN(2)) // one block high
		}
		mean := lean * (0.8 + 2*rng.Float64())
		switch rng.IntN(6) {
		case 0:
			mean = lean
		case 1: // so that some number of pieces just leaves the ends their corners, or just does not
			mean = (float64(length) - lean) / float64(1+rng.IntN(6))
		}
		c, err := blocks.ByLine(length, side, mean)
		fits := func(whole int) bool { return (float64(length)-float64(float64(whole)*mean))/2 > lean/2 }
		var fault *blocks.ColumnError
		if err != nil {
			fault = err.(*blocks.ColumnError)
		}
		switch {
		case mean <= lean:
			if fault == nil || float64(fault.Needed) < lean || float64(fault.Needed) >= lean+1 {
				t.Errorf("pieces of %v that lean by %v: %+v", mean, lean, fault)
			}
			refused++
		case fault != nil || !fits(c.Whole) || fits(c.Whole+1) || c.Mean != mean || !near(float64(c.Whole)*c.Mean+2*c.End, float64(length), 1):
			t.Errorf("a column of %d with a lean of %v in pieces of %v: %+v, %v", length, lean, mean, c, err)
		}
	}
	if refused < 50 {
		t.Errorf("only %d columns are refused", refused)
	}
}

// TestStepsOfRulers: what is trimmed goes up to a quarter of an inch or half a centimeter and has a sixteenth or 2 mm to trim; strips and what must
// be exact go by the marks of a ruler. Common practice, no source.
func TestStepsOfRulers(t *testing.T) {
	inches := blocks.Steps{Trimmed: measure.Inch / 4, Spare: measure.Inch / 16, Exact: measure.Inch / 8, Mark: measure.Inch / 16}
	metric := blocks.Steps{Trimmed: 5 * measure.Millimetre, Spare: 2 * measure.Millimetre, Exact: measure.Millimetre, Mark: measure.Millimetre}
	own := blocks.Steps{Trimmed: 1, Spare: 2, Exact: 3, Mark: 4}
	for units, want := range map[measure.System]blocks.Steps{measure.Inches: inches, measure.Centimetres: metric} {
		if got := (blocks.Steps{}).Filled(units); got != want || own.Filled(units) != own {
			t.Errorf("%v: %+v, want %+v; given %+v", units, got, want, own.Filled(units))
		}
		one := blocks.Steps{Spare: 1}.Filled(units)
		if want.Spare = 1; one != want {
			t.Errorf("%v: with a step given %+v, want %+v", units, one, want)
		}
	}
}

// TestKitesSquareJustEnough: a kite's square that is just as large as a corner of a ring needs serves for it, and one that is less does not.
func TestKitesSquareJustEnough(t *testing.T) {
	const q, strip = measure.Inch / 4, measure.Inch
	need := blocks.HalfSquareExact(blocks.RingCornerFinished(strip, q), q)
	spare := need - blocks.KiteExact(strip, q)
	for less, want := range map[measure.NM]measure.NM{0: need, 1: 0} {
		z := sizing(measure.Inch, q, measure.Inches)
		z.StripsCut[blocks.ToMiddle] = strip
		z.Steps.Trimmed, z.Steps.Spare = 1, spare-less
		if c, _, ok := blocks.RingCorner.Description().Cut(z); !ok || c.KitesCut != want {
			t.Errorf("a kite's square %d nm below the need of %d: %d", less, need, c.KitesCut)
		}
	}
}
