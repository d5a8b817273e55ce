package layout

import (
	"math/rand/v2"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// TestLinesAreCounted: where each byte of a text stands, as counted by splitting it at the ends of lines that Unicode names (UAX 14, mandatory
// breaks, but for the form feed) and counting characters up to it.
func TestLinesAreCounted(t *testing.T) {
	ends := regexp.MustCompile("\r\n|\n|\r|\u2028|\u2029|\u0085")
	pieces := []string{"a", "b c", "é", "赤", "\r\n", "\n", "\r", "\u2028", "\u2029", "\u0085", "\t", "e\u0301", "\u00a0", "\xe2", "\xc2"}
	rng := rand.New(rand.NewPCG(2, 9))
	for n := range 400 {
		var b strings.Builder
		if n%5 == 0 {
			b.WriteString(byteOrderMark)
		}
		for range rng.IntN(14) {
			b.WriteString(pieces[rng.IntN(len(pieces))])
		}
		text := b.String()
		s := NewSource(text)
		var want []Span
		start := 0
		for _, at := range ends.FindAllStringIndex(text, -1) {
			want = append(want, Span{start, at[0]})
			start = at[1]
		}
		if start < len(text) {
			want = append(want, Span{start, len(text)})
		}
		if len(want) != len(s.lines) {
			t.Fatalf("%q has %d lines, expected %d", text, len(s.lines), len(want))
		}
		for i, at := range want {
			if s.LineSpan(i+1) != at {
				t.Errorf("line %d of %q is %v, expected %v", i+1, text, s.LineSpan(i+1), at)
			}
		}
		beyond := Span{len(text), len(text)}
		if s.LineSpan(0) != beyond || s.LineSpan(len(want)+1) != beyond || s.LineSpan(-1) != beyond {
			t.Errorf("lines of %q that are not there lie at %v and %v", text, s.LineSpan(0), s.LineSpan(len(want)+1))
		}
		for at := range len(text) + 1 {
			line := 1
			for i, l := range want {
				if l.Start <= at {
					line = i + 1
				}
			}
			if got, _ := s.Position(at); got != line || s.Line(at) != line {
				t.Errorf("byte %d of %q is in line %d, expected %d", at, text, got, line)
			}
		}
	}
	for text, columns := range map[string]map[int]int{
		"ab\ncd": {0: 1, 1: 2, 2: 3, 3: 1, 4: 2, 5: 3, 6: 3}, "e\u0301x": {0: 1, 3: 2, 4: 3}, byteOrderMark + "ab": {0: 1, 3: 1, 4: 2, 5: 3},
		"é\u2028b": {0: 1, 2: 2, 5: 1, 6: 2}, "\xffa": {0: 1, 1: 2, 2: 3}, "": {0: 1, 7: 1}, "a\r\n": {0: 1, 1: 2, 2: 2, 3: 2},
	} {
		for at, want := range columns {
			if _, got := NewSource(text).Position(at); got != want {
				t.Errorf("byte %d of %q is in column %d, expected %d", at, text, got, want)
			}
		}
	}
}

// TestColumnsAreFound: every stretch of one column block down a column of the grid is one column of pieces, as long as its blocks; where
// sashes part the blocks each is one by itself.
func TestColumnsAreFound(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 6))
	for n := range 150 {
		rows, columns := 1+rng.IntN(5), 1+rng.IntN(4)
		grid := make([]string, rows)
		for y := range grid {
			for range columns {
				grid[y] += " " + "TTTUP."[rng.IntN(6):][:1]
			}
		}
		text := "side 4\nfabric navy #1f3350\nblock T tumblers pieces navy about 2\nblock U tumblers pieces navy about 3\nblock P plain piece navy\ngrid\n" + strings.Join(grid, "\n") + "\n"
		if n%3 == 0 {
			text += "sash 1 navy\n"
		}
		d, _, list := Read(text)
		if d == nil {
			continue // of empty places alone
		}
		at := func(x, y int) byte { return grid[y][2*x+1] }
		found := 0
		for y := range rows {
			for x := range columns {
				label, cell := at(x, y), d.Cells[y*columns+x]
				if label == 'P' || label == '.' {
					if cell.Run != -1 {
						t.Errorf("%c at %d, %d is of a column\n%s", label, x, y, text)
					}
					continue
				}
				run := d.Runs[cell.Run]
				first := y
				for n%3 != 0 && first > 0 && at(x, first-1) == label {
					first--
				}
				last := y
				for n%3 != 0 && last < rows-1 && at(x, last+1) == label {
					last++
				}
				if run.X != x || run.Y != first || run.Cells != last-first+1 || d.Blocks[run.Block].Label != string(label) {
					t.Errorf("%c at %d, %d is of %+v\n%s", label, x, y, run, text)
				}
				mean := map[byte]float64{'T': 2, 'U': 3}[label] * float64(measure.Inch)
				length := float64(run.Cells) * 4 * float64(measure.Inch)
				if pieces := float64(run.Divided.Whole) + 2*run.Divided.End/run.Divided.Mean; pieces*run.Divided.Mean < length-1 || pieces*run.Divided.Mean > length+1 || run.Divided.Mean < mean/2 || run.Divided.Mean > 2*mean {
					t.Errorf("%+v does not fill %g\n%s", run.Divided, length, text)
				}
				if first == y {
					found++
				}
			}
		}
		if found != len(d.Runs) {
			t.Errorf("%d columns, expected %d: %v\n%s", len(d.Runs), found, list, text)
		}
	}
}

// TestMostPieces: the most pieces that a block and the sashes of a grid can have, counted: a web block has four wedges and two kites, and of
// wedges each strip of a set is one; columns are counted by themselves; strips of sashes lie on each side of each place, with posts
// between them.
func TestMostPieces(t *testing.T) {
	c := &checker{}
	for name, want := range map[string][2]int{"web": {6, 22}, "ring": {12, 44}, "plain": {1, 1}, "halves": {2, 2}, "tumblers": {4, 4}} {
		kind, ok := blocks.Find(blocks.Kinds(), name)
		if !ok {
			t.Fatalf("no kind is called %s", name)
		}
		for i, widest := range []int{1, 5} {
			if got := c.blockPatches(&Block{Kind: kind}, widest); got != want[i] {
				t.Errorf("%s with strip sets of %d: %d pieces, expected %d", name, widest, got, want[i])
			}
		}
	}
	c.design.Columns, c.design.Rows = 3, 2
	if got := c.sashPatches(); got != 0 {
		t.Errorf("without sashes there are %d strips", got)
	}
	// Four short strips a row with those at its ends, three rows of posts, and a long strip in each of those.
	if c.design.Sash = (&Edging{Corners: -1}); c.sashPatches() != 15 {
		t.Errorf("%d strips without posts, expected 15", c.sashPatches())
	}
	if c.design.Sash.Corners = 0; c.sashPatches() != 36 { // at each of 4 by 3 crossings a post and two strips
		t.Errorf("%d strips and posts, expected 36", c.sashPatches())
	}
}

// TestColumnsHaveTheirLimit: a column may have as many pieces as the limit, and not one more.
func TestColumnsHaveTheirLimit(t *testing.T) {
	for whole, want := range map[int]bool{1: true, MaxColumn - 3: true, MaxColumn - 2: true, MaxColumn - 1: false, 2 * MaxColumn: false} {
		c := &checker{session: sessionOf("grid")}
		if got := c.columnLimit(Span{0, 4}, &blocks.Column{Whole: whole}); got != want || len(c.list) != map[bool]int{false: 1}[want] {
			t.Errorf("a column of %d pieces is accepted: %v, %v", whole+2, got, c.list)
		}
	}
}

// TestCutLengthsKeepTheirSeams: in a size of blocks twice as large, pieces of a column are twice as long finished, whether their length is
// given finished or cut, and a column has as many of them.
func TestCutLengthsKeepTheirSeams(t *testing.T) {
	for about, want := range map[string]string{"about 3": "about 6", "about 3 finished": "about 6", "about 3 1/2 cut": "about 6 1/2", "about 2 3/4 cut": "about 5", "about 2 1/4": "about 4 1/2"} {
		text := "side 4\nfabric navy #1f3350\nfabric rust #b5532a\nblock T tumblers pieces navy rust " + about + "\ngrid\n T T\nrepeat down 9\nsize double side 8\n"
		tree, _ := Parse(NewSource(text))
		d, _, list := Read(text)
		if len(list) > 0 {
			t.Fatalf("%s: %v", about, list)
		}
		scaled := tree.Rescale(d, 8*measure.Inch)
		if got := "about " + measure.Number(scaled[0].To, measure.Inches); len(scaled) != 1 || got != want {
			t.Errorf("%s becomes %s, expected %s", about, got, want)
		}
		if own, double := d.Runs[0].Divided.Whole, d.InSize("double").Runs[0].Divided.Whole; own != double {
			t.Errorf("%s: a column has %d pieces, and in twice the size %d", about, own+2, double+2)
		}
	}
}

// TestSidesOfSizesKeepTheirFrame: a size whose side is given cut is to the nanometer the size whose side is given finished, in inches and in
// centimeters, with all that is scaled.
func TestSidesOfSizesKeepTheirFrame(t *testing.T) {
	base := "side 4\nfabric navy #1f3350\nfabric rust #b5532a\nstrip-set glow navy 1 rust rest\nblock R ring wedges glow corners rust\nblock T tumblers pieces navy rust about 3\nblock U tumblers pieces navy rust line 5 1/4\ngrid\n T R U\nrepeat down 9\n"
	for cut, finished := range map[string]string{"side 9 cut": "side 8 1/2", "side 2 3/4 cut": "side 2 1/4", "side 21.5 cut units cm": "side 20 units cm", "side 14 cut units cm": "side 12.5 units cm"} {
		d, _, list := Read(base + "size a " + cut + "\nsize b " + finished + "\n")
		if len(list) > 0 {
			t.Fatalf("%s: %v", cut, list)
		}
		a, b := d.InSize("a"), d.InSize("b")
		if a.SideFinished != b.SideFinished || !reflect.DeepEqual(bandsOf(a), bandsOf(b)) || !reflect.DeepEqual(a.Runs, b.Runs) {
			t.Errorf("%s gives %d, %v, %v, and %s gives %d, %v, %v", cut, a.SideFinished, bandsOf(a), a.Runs, finished, b.SideFinished, bandsOf(b), b.Runs)
		}
	}
}

func bandsOf(d *Design) (list [][blocks.Heights]measure.NM) {
	for _, s := range d.StripSets {
		for _, b := range s.Bands {
			list = append(list, b.Cut)
		}
	}
	return list
}

// TestSeamsOfOtherUnits: strips of a set in a size in the other units have the seam allowance that is usual there: of a set of 4 cm in strips of
// 10 cm, 2.5 cm finished, strips of 4 in make 1 1/2 in cut; of one of 1 1/2 in in strips of 4 in, 1 in finished, strips of 10 cm make 3.9 cm.
func TestSeamsOfOtherUnits(t *testing.T) {
	for _, c := range []struct {
		head, size string
		want       measure.NM
	}{
		{"units cm\nstrip 10\nstrip-set glow navy 4 cream rest\n", "strip 4 units inches", 3 * measure.Inch / 2},
		{"strip 4\nstrip-set glow navy 1 1/2 cream rest\n", "strip 10 units cm", 39 * measure.Millimetre},
	} {
		d, _, list := Read(c.head + "fabric navy #1f3350\nfabric cream #f4ead7\nblock W web wedges glow kites cream\ngrid\n W W\n W W\nsize other " + c.size + "\n")
		if len(list) > 0 {
			t.Fatal(list)
		}
		other := d.InSize("other")
		for _, cut := range other.StripSets[0].Bands[0].Cut {
			if cut != 0 && cut != c.want {
				t.Errorf("%s: the first strip is %s", c.size, measure.Text(cut, other.Units))
			}
		}
	}
}
