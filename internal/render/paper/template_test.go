package paper

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
	"eighthturn/samples"
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

func points(outline []diagram.Point) []xy {
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
				if in, out := unitOf(points([]diagram.Point{before})[0], points([]diagram.Point{at})[0]), unitOf(points([]diagram.Point{at})[0], points([]diagram.Point{after})[0]); in.x*out.x+in.y*out.y < -0.5 {
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

func hasSide(outline []diagram.Point, inchesLong float64) bool {
	list := points(outline)
	for i, p := range list {
		if math.Abs(distance(p, list[(i+1)%len(list)])/float64(measure.Inch)-inchesLong) < 6e-5 {
			return true
		}
	}
	return false
}

// TestSheetsKeepToThePaper: what is on a page lies in its room, templates do not lie on one
// another, and parts of one that is larger than the page show all of it.
func TestSheetsKeepToThePaper(t *testing.T) {
	for _, top := range append(inventedTops(t, 80), laid(t, samples.All()[0].Text)) {
		for _, paper := range []Size{Letter, A4} {
			pages, err := sheets(top, usual(top), paper)
			var many *TooManySheets
			if errors.As(err, &many) {
				continue
			}
			origin, room := paper.area()
			for _, page := range pages {
				for i, p := range page.placed {
					if p.at.x < origin.x-1e-6 || p.at.y < origin.y-1e-6 || p.at.x+p.Width > origin.x+room.x+1e-6 || p.at.y+p.Height > origin.y+room.y+1e-6 {
						t.Fatalf("a template lies at %v, %g by %g", p.at, p.Width, p.Height)
					}
					for _, q := range page.placed[:i] {
						if p.at.x < q.at.x+q.Width && q.at.x < p.at.x+p.Width && p.at.y < q.at.y+q.Height && q.at.y < p.at.y+p.Height {
							t.Fatal("two templates lie on one another")
						}
					}
				}
			}
			for name, missing := range uncovered(pages) {
				if missing > 0 {
					t.Fatalf("%d places of %s are on no sheet", missing, name)
				}
			}
		}
	}
}

// uncovered counts, for each template in parts, places on its outline that no part shows.
func uncovered(pages []sheet) map[string]int {
	missing := map[string]int{}
	parts := map[string][]*tile{}
	for i := range pages {
		if p := pages[i].tile; p != nil {
			parts[p.name] = append(parts[p.name], p)
		}
	}
	for name, list := range parts {
		outline := list[0].Items[0].Shape.Points
		for i, a := range outline {
			b := outline[(i+1)%len(outline)]
			for n := range 40 {
				at := xy{a.X + (b.X-a.X)*float64(n)/40, a.Y + (b.Y-a.Y)*float64(n)/40}
				shown := false
				for _, p := range list {
					shown = shown || at.x >= p.from.x && at.y >= p.from.y && at.x <= p.from.x+p.size.x && at.y <= p.from.y+p.size.y
				}
				if !shown {
					missing[name]++
				}
			}
		}
	}
	return missing
}

const hugeLayout = "side 40\nfabric a #b5532a\nfabric b #204050\nblock W web wedges a b kites b\nblock F floating wedges a ground b\ngrid\n W F\n F W\n"

func TestMissingPartIsNoticed(t *testing.T) {
	top := laid(t, hugeLayout)
	pages, err := sheets(top, usual(top), Letter)
	if err != nil || pages[0].tile == nil {
		t.Fatalf("no parts: %v", err)
	}
	if uncovered(pages)["T1"] != 0 || uncovered(pages[1:])["T1"] == 0 && uncovered(append(pages[:1:1], pages[2:]...))["T1"] == 0 {
		t.Error("a missing part was not noticed")
	}
}

// TestHugePiecesAreRefused before anything is written, tiny ones are printed.
func TestHugePiecesAreRefused(t *testing.T) {
	var b bytes.Buffer
	var many *TooManySheets
	huge := laid(t, strings.Replace(hugeLayout, "40", "120", 1))
	if _, err := TemplatesPDF(&b, huge, piecesOf(huge), TemplateOptions{}); !errors.As(err, &many) || b.Len() > 0 {
		t.Errorf("the error is %v, %d bytes were written", err, b.Len())
	}
	for _, text := range []string{
		strings.Replace(hugeLayout, "side 40", "side 1\nseam 1/16", 1), strings.Replace(hugeLayout, "side 40", "units cm\nside 3\nseam 0.1", 1),
	} {
		if _, err := TemplatesPDF(io.Discard, laid(t, text), piecesOf(laid(t, text)), TemplateOptions{Foundations: true}); err != nil {
			t.Error(err)
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
		"pdf": func(w io.Writer) error {
			_, err := TemplatesPDF(w, top, piecesOf(top), TemplateOptions{Foundations: true})
			return err
		},
		"dxf": func(w io.Writer) error { return TemplatesDXF(w, top, list) },
		"svg": func(w io.Writer) error { return list[0].SVG(w, top) },
	} {
		var a, b bytes.Buffer
		if write(&a) != nil || write(&b) != nil || !bytes.Equal(a.Bytes(), b.Bytes()) {
			t.Errorf("%s: two files differ", name)
		}
		if head := a.Bytes()[:min(1000, a.Len())]; !IsTemplate(head) {
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
		var many *TooManySheets
		if _, err := TemplatesPDF(io.Discard, top, piecesOf(top), TemplateOptions{Paper: Size(n % 2), Foundations: true}); err != nil && !errors.As(err, &many) {
			t.Errorf("layout %d: %v", n, err)
		}
		list := usual(top)
		var b bytes.Buffer
		if err := TemplatesDXF(&b, top, list); err != nil {
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
