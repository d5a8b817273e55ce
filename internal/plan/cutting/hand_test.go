package cutting

import (
	"fmt"
	"slices"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	repeat "eighthturn/internal/plan/repeats"
	"eighthturn/internal/plan/supplies"
)

// Small cases worked out by hand.

// TestMaxSetsByHand: the set that is one too many is a fault, and the strip that is, each once.
func TestMaxSetsByHand(t *testing.T) {
	const hint = "name one fabric for some of its strips, or use a smaller pool"
	for _, c := range []struct {
		strips, from, to int // of each set; how many sets are no fault, and how many are one at all
		message          string
	}{
		{40, 125, 126, `the pools of "s" make different strip sets of more than 5000 strips in all; the limit is 5000`},
		{39, 128, 129, `the pools of "s" make different strip sets of more than 5000 strips in all; the limit is 5000`},
		{9, 500, 501, `the pools of "s" make more than 500 different strip sets; the limit is 500`},
		{2, 500, 501, `the pools of "s" make more than 500 different strip sets; the limit is 500`},
	} {
		p := &planning{Plan: &Plan{}}
		for n := 1; n < 600; n++ {
			p.tooManySets(&StripSet{Name: "s", Bands: make([]Band, c.strips)}, Place{3, 4})
			p.Sets = append(p.Sets, StripSet{})
			if want := boolInt(n > c.from); len(p.Faults) != want {
				t.Fatalf("%d sets of %d strips: %v", n, c.strips, p.Faults)
			}
		}
		if p.Faults[0] != (Fault{Place{3, 4}, c.message, hint}) {
			t.Errorf("%d strips: %+v", c.strips, p.Faults[0])
		}
	}
}

// TestCutAlike: strips that differ in anything but the lines that they are joined for are cut otherwise.
func TestCutAlike(t *testing.T) {
	made := func() Strip {
		return Strip{WidthCut: 5, LengthCut: 40, InBlock: -1, OnSheet: -1, OnEnd: -1, End: -1, Times: 3, EndLeftCut: 2, Cuts: []Cut{{Lines: []int{1}, Set: -1, Use: ForPieces, Units: 4, Rows: 1, AcrossCut: 5, AlongCut: 6}}}
	}
	for n, change := range []func(s *Strip){
		func(s *Strip) { s.WidthCut++ }, func(s *Strip) { s.LengthCut++ }, func(s *Strip) { s.InBlock++ }, func(s *Strip) { s.OnSheet++ }, func(s *Strip) { s.OnPrint = true }, func(s *Strip) { s.OnEnd++ },
		func(s *Strip) { s.End++ }, func(s *Strip) { s.EndLeftCut++ }, func(s *Strip) { s.Cuts = nil }, func(s *Strip) { s.Cuts[0].Lines = []int{2} }, func(s *Strip) { s.Cuts[0].Set++ }, func(s *Strip) { s.Cuts[0].Use = ForSet },
		func(s *Strip) { s.Cuts[0].Units++ }, func(s *Strip) { s.Cuts[0].Rows++ }, func(s *Strip) { s.Cuts[0].AcrossCut++ }, func(s *Strip) { s.Cuts[0].AlongCut++ }, func(s *Strip) { s.Cuts[0].Nests = true },
	} {
		a, b := made(), made()
		change(&b)
		f := &Fabric{Strips: []Strip{a, b, a}}
		list := f.AsCut()
		if len(list) != 2 || list[0].Times != 6 || list[1].Times != 3 || !slices.Equal(list[0].Cuts[0].Lines, []int{1}) {
			t.Errorf("change %d: %+v", n, list)
		}
	}
	a, b := made(), made()
	a.Cuts[0].Use, b.Cuts[0].Use, a.Cuts[0].Lines, b.Cuts[0].Lines = ForJoining, ForJoining, []int{7, 2}, []int{3, 2}
	f := &Fabric{Strips: []Strip{a, b}}
	if list := f.AsCut(); len(list) != 1 || list[0].Times != 6 || !slices.Equal(list[0].Cuts[0].Lines, []int{2, 3, 7}) || !slices.Equal(f.Strips[0].Cuts[0].Lines, []int{7, 2}) {
		t.Errorf("to be joined: %+v", list)
	}
}

// TestGroups: which long pieces come from one strip in each manner, of two quilts with two long and one short piece each.
func TestGroups(t *testing.T) {
	p := &planning{Plan: &Plan{Copies: 2, Lines: []Line{{Pieces: 4}, {Pieces: 2}}}}
	p.Lines[0].Piece.AlongCut, p.Lines[1].Piece.AlongCut = inch(50), inch(30)
	pieces := p.longPieces([]int{0, 1})
	o := supplies.StripOptions{Units: measure.Inches, StripCut: inch(3), UsableWidth: inch(40), Join: supplies.Straight, Seam: inch(0.25)}
	for m, want := range map[manner]string{
		byPiece: "[[0] [0] [0] [0] [1] [1]]", inHalves: "[[0 0 0 0] [1 1]]", inQuilts: "[[0 0 1] [0 0 1]]", allInOne: "[[0 0 0 0 1 1]]", besideBlock: "[[0 0 0 0 1 1]]", nothingOver + byPiece: "[[0] [0] [0] [0] [1] [1]]",
	} {
		var got [][]int
		for _, g := range p.groups(pieces, o, m) {
			var lines []int
			for _, l := range g {
				lines = append(lines, l.line)
			}
			got = append(got, lines)
		}
		if fmt.Sprint(got) != want {
			t.Errorf("manner %d: %v, want %s", m, got, want)
		}
	}
	many := slices.Repeat([]long{{0, inch(10)}}, 60) // each shorter than a strip: four go into one with three cuts and no join
	if n := len(p.groups(many, o, inGroups)); n < 15 {
		t.Errorf("60 pieces in %d groups", n)
	}
	if n := len(p.groups(append(many, long{0, inch(10)}), o, inGroups)); n != 1 {
		t.Errorf("61 pieces in %d groups", n)
	}
	p.Lines[0].Pieces = 19_998
	if p.tooMany([]int{0, 1}) {
		t.Error("20,000 pieces are too many")
	}
	if p.Lines[1].Pieces++; !p.tooMany([]int{0, 1}) {
		t.Error("20,001 pieces are not too many")
	}
}

// TestStripsToJoin: the strips for long pieces, whole ones and with the least cloth, worked out by hand for cloth of 40 in and joins that
// take 1/2 in, or as much as the strip is wide.
func TestStripsToJoin(t *testing.T) {
	p := &planning{Plan: &Plan{Units: measure.Inches, Seam: inch(0.25), Steps: blocks.Steps{Trimmed: inch(0.25)}}}
	text := func(list []demand) (s string) {
		for _, d := range list {
			s += fmt.Sprintf("%d x %v ", d.count, inches(d.along))
		}
		return s
	}
	half := inch(0.5)
	for _, c := range []struct {
		long  []float64
		spare bool
		want  string
	}{
		{[]float64{30}, false, "1 x 30 "}, {[]float64{30}, true, "1 x 30.25 "}, {[]float64{30.1}, false, "1 x 30.25 "}, {[]float64{40}, false, "1 x 40 "}, {[]float64{40}, true, "1 x 40 "}, {[]float64{2}, false, "1 x 3 "}, {[]float64{2}, true, "1 x 4 "},
		{[]float64{40.5}, false, "1 x 3 1 x 40 "}, {[]float64{40.5}, true, "1 x 4 1 x 40 "}, {[]float64{60}, false, "1 x 20.5 1 x 40 "}, {[]float64{60}, true, "1 x 20.75 1 x 40 "},
		{[]float64{79.5}, false, "2 x 40 "}, {[]float64{79.5}, true, "2 x 40 "}, {[]float64{79.75}, false, "1 x 3 2 x 40 "}, {[]float64{39.5, 40}, true, "2 x 40 "}, {[]float64{60, 59}, false, "3 x 40 "},
	} {
		p.options.LeastCloth = true
		var group []long
		for n, l := range c.long {
			group = append(group, long{9 - n, inch(l)})
		}
		list := p.group(group, inch(40), half, inch(3), c.spare)
		if got := text(list); got != c.want {
			t.Errorf("%v, something to spare %v: %s, want %s", c.long, c.spare, got, c.want)
		}
		for _, d := range list {
			if d.use != ForJoining || d.set != -1 || d.across != inch(3) || len(d.lines) != len(c.long) || !slices.IsSorted(d.lines) {
				t.Errorf("%v: %+v", c.long, d)
			}
		}
	}
	p.options.LeastCloth = false
	for longer, cases := range map[measure.NM]map[float64]int{0: {40: 1, 40.001: 2, 79.5: 2, 79.6: 3, 119: 3, 119.1: 4}, 2 * measure.Inch: {38: 1, 38.1: 2, 77.5: 2, 77.6: 3}} {
		p.Longer = longer
		for long1, want := range cases {
			if list := p.group([]long{{0, inch(long1)}}, inch(40), half, inch(3), true); len(list) != 1 || list[0].count != want || list[0].along != inch(40) || list[0].use != ForJoining || list[0].set != -1 {
				t.Errorf("%v in, %v longer: %+v, want %d", long1, longer, list, want)
			}
		}
	}
	p.Longer = 0
	for total, want := range map[measure.NM]int{inch(40): 1, inch(40) + 1: 2, inch(79.5): 2, inch(79.5) + 1: 3} {
		if list := p.wholeStrips([]long{{0, total}}, inch(3), inch(40), half); list[0].count != want {
			t.Errorf("%d: %d strips, want %d", total, list[0].count, want)
		}
	}
	for _, c := range []struct {
		across   float64
		diagonal bool
		want     float64
	}{{3, false, 3}, {20, false, 20}, {20.5, false, 0.5}, {20.5, true, 20.5}, {0.25, false, 0.5}, {0.25, true, 0.5}} {
		p.options.DiagonalBorders = c.diagonal
		if got := p.wholeLoss(inch(c.across), inch(40)); got != inch(c.want) {
			t.Errorf("strips of %v in, diagonal %v: a join takes %v, want %v", c.across, c.diagonal, inches(got), c.want)
		}
	}
	p.Copies = 3
	if list := p.wholeBinding(inch(2.5), inch(40), 7); text(list) != "21 x 40 " || list[0].use != ForBinding || list[0].across != inch(2.5) || list[0].set != -1 {
		t.Errorf("bindings of three quilts: %+v", list)
	}
}

// TestDemands: what a line asks of a strip, and how demands of one sort are put together.
func TestDemands(t *testing.T) {
	line := Line{Number: 4, Units: 7, Border: -1, Piece: Piece{Shape: blocks.Square, CutSize: blocks.CutSize{AcrossCut: 5, AlongCut: 6}}}
	if d := lineDemand(&line); fmt.Sprintf("%+v", d) != "{item:{across:5 along:6 extra:0 count:7 stacks:true} lines:[4] set:-1 use:0 nests:false turn:false number:0}" {
		t.Errorf("%+v", d)
	}
	line.Piece.Method, line.Piece.WideCut, line.Piece.NarrowCut = Nested, 10, 4
	if d := lineDemand(&line); fmt.Sprintf("%+v", d) != "{item:{across:5 along:7 extra:3 count:7 stacks:false} lines:[4] set:-1 use:0 nests:true turn:false number:0}" {
		t.Errorf("%+v", d)
	}
	line.Piece = Piece{Shape: blocks.Strip, CutSize: blocks.CutSize{AcrossCut: 5, AlongCut: 6}}
	for border, turn := range map[int]bool{-1: true, 0: false, 2: false} { // of a sash it may lie either way
		if line.Border = border; lineDemand(&line).turn != turn {
			t.Errorf("border %d: %+v", border, lineDemand(&line))
		}
	}
	one := demand{item: item{across: 5, along: 6, count: 2}, lines: []int{1}, set: -1}
	for n, change := range []func(d *demand){func(*demand) {}, func(d *demand) { d.across++ }, func(d *demand) { d.along++ }, func(d *demand) { d.use = ForSet }, func(d *demand) { d.set++ }, func(d *demand) { d.lines = []int{2} }} {
		other := one
		other.count = 3
		change(&other)
		list := added([]demand{one}, other)
		if n == 0 && (len(list) != 1 || list[0].count != 5) || n > 0 && (len(list) != 2 || list[0].count != 2 || list[1].count != 3) {
			t.Errorf("change %d: %+v", n, list)
		}
	}
	for _, c := range []struct {
		pieces, onHand, units, spare int
		method                       Method
	}{{9, 0, 9, 0, Whole}, {9, 0, 5, 1, OnceOnDiagonal}, {9, 1, 4, 0, OnceOnDiagonal}, {9, 0, 3, 3, TwiceOnDiagonal}, {9, 9, 0, 0, TwiceOnDiagonal}, {7, 0, 4, 1, EndPairs}} {
		l := Line{Pieces: c.pieces, OnHand: c.onHand, Piece: Piece{CutSize: blocks.CutSize{Method: c.method}}}
		if (&planning{}).unitsOf(&l); l.Units != c.units || l.Spare != c.spare {
			t.Errorf("%+v: %d units, %d to spare", c, l.Units, l.Spare)
		}
	}
}

// TestLeftByHand: what is left of strips and of a length with strips side by side, wherever it lies: ends, what lies beside narrower
// stretches, the free places of a last length of rows; below 2 in either way it is for the bin.
func TestLeftByHand(t *testing.T) {
	in := measure.Inch
	left := func(list ...measure.NM) (want []LeftOver) {
		for i := 0; i < len(list); i += 3 {
			want = append(want, LeftOver{int(list[i]), list[i+1], list[i+2]})
		}
		return want
	}
	cut := func(units, rows int, across, along measure.NM) Cut {
		return Cut{Units: units, Rows: rows, AcrossCut: across, AlongCut: along}
	}
	for _, c := range []struct {
		name  string
		strip Strip
		want  []LeftOver
	}{
		{"rows, and one stretch narrower", Strip{WidthCut: 9 * in, Times: 3, EndLeftCut: 10 * in, Cuts: []Cut{cut(5, 2, 4*in, 6*in), cut(3, 1, 5*in, 4*in)}}, left(3, 9*in, 10*in, 3, 4*in, 6*in, 3, 4*in, 12*in)},
		{"two stretches of one height beside one of another", Strip{WidthCut: 9 * in, Times: 1, EndLeftCut: in, Cuts: []Cut{cut(2, 1, 7*in, 3*in), cut(1, 1, 7*in, 5*in), cut(2, 1, 6*in, 4*in), cut(1, 1, 9*in, 2*in)}}, left(1, 2*in, 11*in, 1, 3*in, 8*in)},
		{"three rows, one of three in the last length", Strip{WidthCut: 10 * in, Times: 2, Cuts: []Cut{cut(4, 3, 3*in, 5*in)}}, left(2, 6*in, 5*in)},
		{"three rows, two of three in the last length", Strip{WidthCut: 10 * in, Times: 2, Cuts: []Cut{cut(5, 3, 3*in, 5*in)}}, left(2, 3*in, 5*in)},
		{"a hair too narrow, and a hair too short", Strip{WidthCut: 9 * in, Times: 1, EndLeftCut: 2*in - 1, Cuts: []Cut{cut(2, 1, 7*in+1, 3*in)}}, nil},
		{"just enough", Strip{WidthCut: 9 * in, Times: 1, EndLeftCut: 2 * in, Cuts: []Cut{cut(2, 1, 7*in, in)}}, left(1, 9*in, 2*in, 1, 2*in, 2*in)},
		{"no strip at all", Strip{WidthCut: 9 * in, EndLeftCut: 5 * in}, nil},
	} {
		f := &Fabric{}
		if f.leftInStrip(&c.strip); !slices.Equal(f.LeftOver, c.want) {
			t.Errorf("%s: %v, want %v", c.name, f.LeftOver, c.want)
		}
	}
	f := &Fabric{Strips: []Strip{{InBlock: 0, Times: 3, WidthCut: 4 * in}, {InBlock: 1, Times: 1, WidthCut: 9 * in}, {InBlock: -1, Times: 1, WidthCut: 5 * in}},
		Blocks: []Block{{Times: 2, LengthCut: 60 * in, LeftWidthCut: 7 * in, Columns: []Column{{WidthCut: 10 * in, LengthCut: 60 * in}, {WidthCut: 12 * in, LengthCut: 41 * in}}}, {Times: 1, LengthCut: 9 * in, LeftWidthCut: 7 * in}}}
	f.leftInBlock(0)
	f.leftInBlock(1)
	if want := left(2, 48*in, 7*in, 2, 19*in, 12*in); !slices.Equal(f.LeftOver, want) {
		t.Errorf("of a length: %v, want %v", f.LeftOver, want)
	}
	f.left(48*in, 7*in, 3) // more of one size
	if f.LeftOver[0].Times != 5 || len(f.LeftOver) != 2 {
		t.Errorf("%v", f.LeftOver)
	}
}

// TestLeftOfPrintsByHand: what strips along the selvages leave beside each other, beside the last and behind the longest, and what no piece
// of a strip reaches.
func TestLeftOfPrintsByHand(t *testing.T) {
	in := measure.Inch
	strip := func(x, y, toX, toY measure.NM, pieces ...FussyPiece) FussyStrip {
		return FussyStrip{Min: measure.Point{X: x * in, Y: y * in}, Max: measure.Point{X: toX * in, Y: toY * in}, WidthCut: 3 * in, Pieces: pieces}
	}
	f := &Fabric{UsableWidth: 40 * in}
	f.leftBesideStrips(&FromPrint{Times: 2, Strips: []FussyStrip{strip(3, 0, 8, 20), strip(11, 0, 15, 24), strip(0, 30, 6, 50)}})
	if want := []LeftOver{{4, 3 * in, 24 * in}, {2, 25 * in, 24 * in}, {2, 40 * in, 6 * in}, {2, 34 * in, 20 * in}}; !slices.Equal(f.LeftOver, want) {
		t.Errorf("beside strips: %v, want %v", f.LeftOver, want)
	}
	outline := func(wide, high measure.NM) repeat.Piece {
		return repeat.Piece{Outline: rectangle(0, 0, wide*in, high*in)}
	}
	at := func(line int, x, y measure.NM) FussyPiece {
		return FussyPiece{line, measure.Point{X: x * in, Y: y * in}}
	}
	for _, c := range []struct {
		lengthwise bool
		strip      FussyStrip
		want       []LeftOver
	}{
		{false, strip(0, 0, 40, 3, at(7, 10, 0), at(7, 2, 0), at(8, 16, 0), at(7, 17, 0)), []LeftOver{{6, 3 * in, 2 * in}, {3, 3 * in, 4 * in}, {3, 3 * in, 15 * in}}}, // 0 to 2, 6 to 10, 14 to 16, 25 to 40
		{true, strip(5, 9, 8, 40, at(7, 5, 14), at(8, 5, 25)), []LeftOver{{3, 3 * in, 5 * in}, {3, 3 * in, 8 * in}, {3, 3 * in, 13 * in}}},                             // 9 to 14, 17 to 25, 27 to 40
	} {
		f := &Fabric{UsableWidth: 40 * in}
		f.leftInPrintStrip(&FromPrint{Lines: []int{7, 8}, Times: 3, Lengthwise: c.lengthwise, outlines: []repeat.Piece{outline(4, 3), outline(9, 2)}}, &c.strip)
		if !slices.Equal(f.LeftOver, c.want) {
			t.Errorf("in a strip along the selvages %v: %v, want %v", c.lengthwise, f.LeftOver, c.want)
		}
	}
	f = &Fabric{UsableWidth: 40 * in, gapsLeft: []gap{{3 * in, 4}, {in, 9}}}
	if (&planning{}).leftOnPrint(f); !slices.Equal(f.LeftOver, []LeftOver{{4, 3 * in, 40 * in}}) {
		t.Errorf("of gaps: %v", f.LeftOver)
	}
}

// TestLeftPiecesByHand: pieces that are cut beyond those wanted, those of the lines first, then wedges of each order of each strip set.
func TestLeftPiecesByHand(t *testing.T) {
	p := &planning{Plan: &Plan{Lines: []Line{{Set: -1, Spare: 1}, {Set: -1}, {Set: 0, Spare: 5}, {Set: -1, Spare: 3}}, Sets: []StripSet{{Lines: [2]int{2, -1}, LeftOver: [2]int{1, 0}}, {Lines: [2]int{-1, 4}, LeftOver: [2]int{2, 1}}}}}
	p.leftPieces()
	want := []LeftPieces{{Line: 0, Set: -1, Pieces: 1}, {Line: 3, Set: -1, Pieces: 3}, {Line: 2, Set: 0, Pieces: 1}, {Line: -1, Set: 1, Pieces: 2}, {Line: 4, Set: 1, Reversed: true, Pieces: 1}}
	if !slices.Equal(p.Left, want) {
		t.Errorf("%+v, want %+v", p.Left, want)
	}
}
