package templates

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/layout"
	"eighthturn/palettes"
	"eighthturn/samples"
	"slices"
)

// inventedTops are tops of layouts made up by number.
func inventedTops(t testing.TB, most int) []*quilt.Top {
	t.Helper()
	var list []*quilt.Top
	for seed := range uint64(most) {
		if d, _, _ := layout.Read(invent.Layout(seed)); d != nil {
			list = append(list, quilt.Lay(d))
		}
	}
	if len(list) < most/2 {
		t.Fatalf("only %d layouts of %d were laid", len(list), most)
	}
	return list
}

func points(outline []measure.Point) []xy {
	list := make([]xy, len(outline))
	for i, p := range outline {
		list[i] = xy{float64(p.X), float64(p.Y)}
	}
	return list
}

// wrongAllowance says what is wrong with a cut outline: every corner of the piece lies an
// allowance within every cut side or further, and every cut side lies an allowance beyond a
// side of the piece, or as far beyond a tip.
func wrongAllowance(finished, cut []xy, seam float64) string {
	touching := 0
	for i, a := range cut {
		d := unitOf(a, cut[(i+1)%len(cut)])
		least := math.Inf(1)
		for _, p := range finished {
			least = min(least, float64(d.x*(p.y-a.y))-float64(d.y*(p.x-a.x)))
		}
		if math.Abs(least-seam) > 4 {
			return fmt.Sprintf("cut side %d is %.1f nm from the piece, the allowance is %.1f", i, least, seam)
		}
		for n, p := range finished {
			q := finished[(n+1)%len(finished)]
			if e := unitOf(p, q); math.Abs(e.x*d.y-e.y*d.x) < 1e-5 && e.x*d.x+e.y*d.y > 0 {
				touching++
			}
		}
	}
	if touching != len(finished) {
		return fmt.Sprintf("%d cut sides run along a side of the piece, which has %d", touching, len(finished))
	}
	return ""
}

// TestAllowance: on every sample and invented layout the cut line lies the seam allowance
// beyond the seam line, all round, and sharp tips are blunt.
func TestAllowance(t *testing.T) {
	list := inventedTops(t, 300)
	for _, top := range tops(t) {
		list = append(list, top)
	}
	shapes := map[blocks.Shape]int{}
	for n, top := range list {
		for _, p := range usual(top) {
			shapes[p.Shape]++
			if top.Seam == 0 {
				continue
			}
			if wrong := wrongAllowance(points(p.Finished), points(p.Cut), float64(top.Seam)); wrong != "" {
				t.Fatalf("layout %d, %s %s: %s", n, p.Name(), p.Shape, wrong)
			}
			for i := range p.Cut {
				before, at, after := p.Cut[(i+len(p.Cut)-1)%len(p.Cut)], p.Cut[i], p.Cut[(i+1)%len(p.Cut)]
				if in, out := unitOf(points([]measure.Point{before})[0], points([]measure.Point{at})[0]), unitOf(points([]measure.Point{at})[0], points([]measure.Point{after})[0]); in.x*out.x+in.y*out.y < -0.5 {
					t.Fatalf("layout %d, %s: a corner sharper than 60 degrees is left", n, p.Name())
				}
			}
		}
	}
	for shape := blocks.Wedge; shape < blocks.Strip; shape++ {
		if shapes[shape] == 0 {
			t.Errorf("no %s was looked at", shape)
		}
	}
}

func TestWrongAllowanceIsNoticed(t *testing.T) {
	top := laid(t, samples.All()[0].Text)
	p := usual(top)[0]
	cut := points(p.Cut)
	cut[1].x += 100
	if wrongAllowance(points(p.Finished), cut, float64(top.Seam)) == "" || wrongAllowance(points(p.Finished), points(p.Cut), float64(top.Seam)*1.01) == "" {
		t.Error("a wrong cut line was not noticed")
	}
}

// uncounted says which patches no template, or more than one, stands for.
func uncounted(top *quilt.Top, list []Template) string {
	pieces, counted := 0, 0
	for i := range top.Patches {
		p := &top.Patches[i]
		if p.Shape == blocks.Strip {
			continue
		}
		pieces++
		same := 0
		for n := range list {
			if _, ok := congruent(floats(p.Outline), points(list[n].Finished)); ok && list[n].Shape == p.Shape {
				same++
			}
		}
		if same != 1 {
			return fmt.Sprintf("patch %d, a %s, is like %d templates", i, p.Shape, same)
		}
	}
	for i := range list {
		counted += list[i].Count
	}
	if counted != pieces {
		return fmt.Sprintf("%d pieces are counted, there are %d", counted, pieces)
	}
	return ""
}

// TestEveryPieceHasItsTemplate, one and only one, and all are counted.
func TestEveryPieceHasItsTemplate(t *testing.T) {
	for name, top := range tops(t) {
		if wrong := uncounted(top, usual(top)); wrong != "" {
			t.Errorf("%s: %s", name, wrong)
		}
	}
	for n, top := range inventedTops(t, 60) {
		if wrong := uncounted(top, usual(top)); wrong != "" {
			t.Errorf("layout %d: %s", n, wrong)
		}
	}
}

func TestMissingTemplateIsNoticed(t *testing.T) {
	top := laid(t, samples.All()[0].Text)
	list := usual(top)
	if uncounted(top, list[1:]) == "" || uncounted(top, append(list, list[0])) == "" {
		t.Error("a template too few or too many was not noticed")
	}
	list[0].Count--
	if uncounted(top, list) == "" {
		t.Error("a piece that is not counted was not noticed")
	}
}

// TestCountsAreThoseOfTheCuttingPlan: as many pieces of each shape, hand and cloth as the
// plan has, which counts them in another way.
func TestCountsAreThoseOfTheCuttingPlan(t *testing.T) {
	for name, top := range tops(t) {
		want, got := map[string]int{}, map[string]int{}
		plan := cutting.Build(top, cutting.Options{})
		for i := range plan.Lines {
			l := &plan.Lines[i]
			if l.Piece.Shape == blocks.Strip {
				continue
			}
			cloth := "a set"
			if l.Fabric >= 0 {
				cloth = plan.Fabrics[l.Fabric].Name
			}
			want[fmt.Sprint(l.Piece.Shape, cloth, "left")] += l.Left
			want[fmt.Sprint(l.Piece.Shape, cloth, "right")] += l.Right
			want[fmt.Sprint(l.Piece.Shape, cloth)] += l.Pieces - l.Left - l.Right
		}
		for _, p := range usual(top) {
			for _, c := range p.Cloths {
				cloth := "a set"
				if c.Fabric >= 0 {
					cloth = top.Fabrics[c.Fabric].Name
				}
				got[fmt.Sprint(p.Shape, cloth)+p.Hand] += c.Count
			}
		}
		for what, n := range want {
			if got[what] != n {
				t.Errorf("%s: %d of %q, the cutting plan has %d", name, got[what], what, n)
			}
		}
	}
}

// TestWorkedSizes: cut sizes worked out by hand from the angle alone, in inches: a wedge
// from strips of 4 has a base of 3.6478 and a tip of 0.3341; a tumbler from a strip of 7 1/2
// cut by line 10 of a wedge rule has sides of 8.6184 and 2.4052; a half-square triangle's
// cut legs are 0.8536 longer than the finished ones where its tips are sharp.
func TestWorkedSizes(t *testing.T) {
	const ring = "strip 4\nfabric a #fff\nfabric b #000\nblock R ring wedges a b corners a\ngrid\n R\n"
	const tumblers = "strip 7 1/2\nfabric a #fff\nfabric b #000\nblock T tumblers pieces a b line 10\ngrid\n T\n T\n T\n"
	for _, c := range []struct {
		text  string
		shape blocks.Shape
		sides []float64 // each must be there
	}{
		{ring, blocks.Wedge, []float64{3.6478, 0.3341}},
		{tumblers, blocks.Tumbler, []float64{8.6184, 2.4052}},
	} {
		for _, p := range usual(laid(t, c.text)) {
			if p.Shape != c.shape {
				continue
			}
			for _, want := range c.sides {
				if !hasSide(p.Cut, want) {
					t.Errorf("%s: no cut side of %g in", c.shape, want)
				}
			}
			if c.shape == blocks.Wedge {
				if _, high := bounds(p.Cut); high.Y-4*measure.Inch > 2 || 4*measure.Inch-high.Y > 2 {
					t.Errorf("the wedge is %d nm high, the strip 4 in", high.Y)
				}
			}
		}
	}
}

func hasSide(outline []measure.Point, inchesLong float64) bool {
	list := points(outline)
	for i, p := range list {
		if math.Abs(distance(p, list[(i+1)%len(list)])/float64(measure.Inch)-inchesLong) < 6e-5 {
			return true
		}
	}
	return false
}

// usualRoom is about what a page of Letter paper has for plates, and usualMost what is printed.
var (
	usualRoom = measure.Point{X: 279 * measure.Inch / 40, Y: 8 * measure.Inch}
	usualMost = Most{OfPiece: 60, InAll: 1000}
)

func figuresOf(top *quilt.Top) []Piece {
	var list []Piece
	for _, p := range usual(top) {
		list = append(list, Piece{p.Name(), p.Figure(top)})
	}
	return list
}

// wrongPlate says what of a plate lies beyond its room, or pieces that lie on one another.
func wrongPlate(p *Plate) string {
	var cut [][2]measure.Point
	for _, m := range p.Figure.Marks {
		var list []measure.Point
		switch {
		case m.Area != nil:
			list = m.Area.Outline
		case m.Line != nil:
			list = m.Line.Points
		}
		for _, q := range list {
			if q.X < 0 || q.Y < 0 || q.X > p.Figure.Max.X || q.Y > p.Figure.Max.Y {
				return fmt.Sprintf("a place lies at %v, the room is %v", q, p.Figure.Max)
			}
		}
		if m.Area == nil || m.Area.Edge != diagram.Cut && m.Area.Fill == (palettes.Colour{}) {
			continue
		}
		low, high := bounds(list)
		if m.Area.Edge == diagram.Cut || high.X-low.X == inchSquare || high.X-low.X == centimetreSquare {
			cut = append(cut, [2]measure.Point{low, high})
		}
	}
	for i, a := range cut {
		for _, b := range cut[:i] {
			if a[0].X < b[1].X && b[0].X < a[1].X && a[0].Y < b[1].Y && b[0].Y < a[1].Y {
				return "two outlines lie on one another"
			}
		}
	}
	return ""
}

// TestPlatesKeepToTheRoom: what is on a plate lies in its room, and neither pieces nor test
// squares on one another.
func TestPlatesKeepToTheRoom(t *testing.T) {
	count := 0
	for _, top := range append(inventedTops(t, 80), laid(t, samples.All()[0].Text), laid(t, hugeLayout)) {
		for _, room := range []measure.Point{usualRoom, {X: 9 * measure.Inch / 2, Y: 6 * measure.Inch}} {
			plates, _ := Plates(figuresOf(top), room, usualMost)
			for i := range plates {
				count++
				if wrong := wrongPlate(&plates[i]); wrong != "" {
					t.Fatalf("plate %d of %q: %s", i+1, top.Title, wrong)
				}
			}
		}
	}
	if count < 100 {
		t.Errorf("only %d plates were looked at", count)
	}
	plates, _ := Plates(figuresOf(laid(t, samples.All()[0].Text)), usualRoom, usualMost)
	bad := plates[0]
	bad.Figure.Marks = append(slices.Clone(bad.Figure.Marks), moved(bad.Figure.Marks[0], measure.Point{X: 1}))
	if wrongPlate(&bad) == "" {
		t.Error("a piece that lies on itself was not noticed")
	}
	bad = plates[0]
	bad.Figure.Max.X = measure.Inch
	if wrongPlate(&bad) == "" {
		t.Error("a piece beyond the room was not noticed")
	}
}

// wrongSquares says which test square of a plate is missing or not true over its outer edges,
// the line along them included.
func wrongSquares(p *Plate) string {
	for _, side := range []measure.NM{inchSquare, centimetreSquare} {
		found := 0
		for _, m := range p.Figure.Marks {
			if m.Area == nil || len(m.Area.Outline) != 4 || m.Area.Fill.R > 100 || m.Area.Clear {
				continue
			}
			low, high := bounds(m.Area.Outline)
			pen := measure.NM(m.Area.Edge.Pen().Width / diagram.TrueScale)
			if high.X-low.X+pen == side && high.Y-low.Y+pen == side {
				found++
			}
		}
		if found != 1 {
			return fmt.Sprintf("%d squares are %d nm wide over their outer edges", found, side)
		}
	}
	return ""
}

// TestSquaresAreTrue: every plate has both test squares, true over their outer edges.
func TestSquaresAreTrue(t *testing.T) {
	plates, _ := Plates(figuresOf(laid(t, hugeLayout)), usualRoom, usualMost)
	more, _ := Plates(figuresOf(laid(t, samples.All()[0].Text)), usualRoom, usualMost)
	for _, p := range append(plates, more...) {
		if wrong := wrongSquares(&p); wrong != "" {
			t.Error(wrong)
		}
	}
	bad := more[0]
	bad.Figure.Marks = slices.Clone(bad.Figure.Marks)
	for i, m := range bad.Figure.Marks {
		if m.Area != nil && m.Area.Edge == diagram.NoStroke {
			area := *m.Area
			area.Edge = diagram.Cut // stands out by half of its breadth
			bad.Figure.Marks[i].Area = &area
		}
	}
	if wrongSquares(&bad) == "" {
		t.Error("a square that its line makes larger was not noticed")
	}
}

// TestPartsShowTheWholePiece: parts of a piece that is larger than the plate show all of its
// lines, each at its place.
func TestPartsShowTheWholePiece(t *testing.T) {
	outline := []measure.Point{{}, {X: 11 * measure.Inch}, {X: 7 * measure.Inch, Y: 13 * measure.Inch}, {Y: 4 * measure.Inch}}
	f := &diagram.Figure{Max: measure.Point{X: 11 * measure.Inch, Y: 13 * measure.Inch}, Marks: []diagram.Mark{{Area: &diagram.Area{Outline: outline, Edge: diagram.Cut}}}}
	l := &plating{room: measure.Point{X: 4 * measure.Inch, Y: 5 * measure.Inch}}
	parts := l.parts(Piece{"T1", f})
	if missing := unseenPoints(f, parts, l); missing != 0 {
		t.Errorf("%d points of the outline are on no plate", missing)
	}
	if missing := unseenPoints(f, parts[1:], l); missing == 0 {
		t.Error("a plate that is missing is not noticed")
	}
}

// unseenPoints is how many of some points along a figure's outline no page shows.
func unseenPoints(f *diagram.Figure, pages []Plate, l *plating) int {
	outline := f.Marks[0].Area.Outline
	missing := 0
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		for n := range measure.NM(100) {
			at := measure.Point{X: p.X + (q.X-p.X)*n/100, Y: p.Y + (q.Y-p.Y)*n/100}
			if !shownAnywhere(at, f, pages, l) {
				missing++
			}
		}
	}
	return missing
}

// shownAnywhere says whether a point of a figure lies on a line of one of its pages; which window a page is of is found by
// trying all.
func shownAnywhere(at measure.Point, f *diagram.Figure, list []Plate, l *plating) bool {
	for row := range measure.NM(8) {
		for column := range measure.NM(8) {
			low := measure.Point{X: column * (l.room.X - overlap), Y: row * (l.room.Y - overlap)}
			w := window{low, measure.Point{X: low.X + l.room.X, Y: low.Y + l.room.Y}}
			if !w.holds(at) {
				continue
			}
			marks := w.clipped(f)
			for _, s := range list {
				if sameLines(s.Figure.Marks, marks) {
					return true
				}
			}
		}
	}
	return false
}

// sameLines says whether a page begins with the lines of a window.
func sameLines(page, lines []diagram.Mark) bool {
	if len(lines) == 0 || len(page) < len(lines) {
		return false
	}
	for i, m := range lines {
		if page[i].Line == nil || page[i].Line.Points[0] != m.Line.Points[0] || page[i].Line.Points[1] != m.Line.Points[1] {
			return false
		}
	}
	return true
}

const hugeLayout = "side 40\nfabric a #b5532a\nfabric b #204050\nblock W web wedges a b kites b\nblock F floating wedges a background b\ngrid\n W F\n F W\n"

// TestHugePiecesAreLeftOut and named, tiny ones are printed.
func TestHugePiecesAreLeftOut(t *testing.T) {
	if _, large := Plates(figuresOf(laid(t, strings.Replace(hugeLayout, "40", "120", 1))), usualRoom, usualMost); len(large) == 0 || large[0].Plates <= usualMost.OfPiece {
		t.Errorf("left out are %v", large)
	}
	for _, text := range []string{
		strings.Replace(hugeLayout, "side 40", "side 1\nseam 1/16", 1), strings.Replace(hugeLayout, "side 40", "units cm\nside 3\nseam 0.1", 1),
	} {
		if plates, large := Plates(figuresOf(laid(t, text)), usualRoom, usualMost); len(plates) == 0 || len(large) > 0 {
			t.Errorf("%d plates, left out are %v", len(plates), large)
		}
	}
}

// wrongFoundation says what is wrong with a foundation: its pieces fill it, and each but the
// first is sewn to those before it.
func wrongFoundation(f *Foundation) string {
	sum := 0.0
	for i := range f.Pieces {
		area := areaOf(points(f.Pieces[i].Finished))
		if area <= 0 {
			return fmt.Sprintf("piece %d goes the wrong way round", i+1)
		}
		sum += area
		if i > 0 && len(f.seamsOf(i)) == 0 {
			return fmt.Sprintf("piece %d is sewn to nothing", i+1)
		}
	}
	if whole := areaOf(points(f.Finished)); math.Abs(sum-whole) > whole/1e6 {
		return fmt.Sprintf("the pieces fill %.6f of it", sum/whole)
	}
	return ""
}

// TestFoundations: each is filled by its pieces, in an order that can be sewn, and every
// half with a seam in it is counted.
func TestFoundations(t *testing.T) {
	for n, top := range append(inventedTops(t, 150), laid(t, samples.All()[0].Text)) {
		counted, want := 0, 0
		for _, f := range Foundations(top) {
			counted += f.Count
			if wrong := wrongFoundation(&f); wrong != "" {
				t.Fatalf("layout %d, foundation %d: %s", n, f.Number, wrong)
			}
			if wrong := wrongAllowance(points(f.Finished), points(f.Cut), float64(top.Seam)); wrong != "" && top.Seam > 0 {
				t.Fatalf("layout %d, foundation %d: %s", n, f.Number, wrong)
			}
		}
		for i := range top.Cells {
			wedges := 0
			kind, ok := blocks.Find(blocks.Kinds(), top.Cells[i].Kind)
			for k := top.Cells[i].First; k < top.Cells[i].First+top.Cells[i].Count; k++ {
				wedges += bit(top.Patches[k].Shape == blocks.Wedge)
			}
			if ok && kind.Turning.InLattice() { // a half has one wedge or two
				want += map[int]int{0: 0, 1: 1, 2: 2, 4: 2}[wedges]
				if len(kind.Pieces) == 4 && wedges == 2 && hasKite(kind) {
					want-- // one half has both
				}
			}
		}
		if counted != want {
			t.Fatalf("layout %d: %d halves are counted, there are %d with a seam", n, counted, want)
		}
	}
}

func hasKite(k *blocks.Kind) bool {
	for _, p := range k.Pieces {
		if p.Shape == blocks.Kite {
			return true
		}
	}
	return false
}

func TestWrongFoundationIsNoticed(t *testing.T) {
	f := Foundations(laid(t, hugeLayout))[0]
	pieces := f.Pieces
	f.Pieces = pieces[1:]
	if wrongFoundation(&f) == "" {
		t.Error("a missing piece was not noticed")
	}
}

// TestTemplateFilesAreTheSameEachTime, and are marked as ours.
func TestTemplateFilesAreTheSameEachTime(t *testing.T) {
	top := laid(t, samples.All()[0].Text)
	list := usual(top)
	for name, write := range map[string]func(io.Writer) error{
		"dxf": func(w io.Writer) error { return DXF(w, top, list) },
		"svg": func(w io.Writer) error { return list[0].SVG(w, top) },
	} {
		var a, b bytes.Buffer
		if write(&a) != nil || write(&b) != nil || !bytes.Equal(a.Bytes(), b.Bytes()) {
			t.Errorf("%s: two files differ", name)
		}
		if head := a.Bytes()[:min(1000, a.Len())]; !IsOurs(head) {
			t.Errorf("%s: the file is not marked", name)
		}
		if write(failing{}) == nil {
			t.Errorf("%s: an error of the writer is lost", name)
		}
	}
}

type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, io.ErrClosedPipe }

// TestTemplateSVGIsPlain: nothing but a title and paths, each of straight lines.
func TestTemplateSVGIsPlain(t *testing.T) {
	top := laid(t, samples.All()[0].Text)
	for _, p := range usual(top) {
		var b bytes.Buffer
		if err := p.SVG(&b, top); err != nil {
			t.Fatal(err)
		}
		reader := xml.NewDecoder(&b)
		for {
			token, err := reader.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			if err != nil {
				t.Fatal(err)
			}
			if e, ok := token.(xml.StartElement); ok && !strings.Contains("svg title path", e.Name.Local) {
				t.Errorf("an element %s", e.Name.Local)
			}
		}
	}
}

// TestEverythingPrints: whatever is laid out, its pieces are printed or said to be too large,
// and no number in the files is none.
func TestEverythingPrints(t *testing.T) {
	for n, top := range inventedTops(t, 60) {
		pieces := figuresOf(top)
		shown := map[string]bool{}
		plates, large := Plates(pieces, usualRoom, usualMost)
		for _, p := range plates {
			for _, name := range p.Shows {
				shown[name] = true
			}
		}
		if len(shown)+len(large) != len(pieces) {
			t.Errorf("layout %d: %d pieces are printed, %d left out, of %d", n, len(shown), len(large), len(pieces))
		}
		list := usual(top)
		var b bytes.Buffer
		if err := DXF(&b, top, list); err != nil {
			t.Fatal(err)
		}
		for i := range list {
			if err := list[i].SVG(&b, top); err != nil {
				t.Fatal(err)
			}
		}
		if text := b.String(); strings.Contains(text, "NaN") || strings.Contains(text, "Inf") {
			t.Errorf("layout %d: a number is none", n)
		}
	}
}
