package cutting

import (
	"encoding/json"
	"fmt"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
)

// The law of changed tops: the plan of a top whose border was made narrower, or its blocks smaller, without laying it out anew, is that of
// the layout in which the change is written.

// bare is all that a plan says, without places in the layout, which move, and without finished edges, which nothing is cut by.
func bare(t *testing.T, top *quilt.Top, o Options) string {
	t.Helper()
	p := Build(nil, top, o)
	for i := range p.Lines {
		p.Lines[i].Place, p.Lines[i].Piece.EdgesFinished = Place{}, nil
	}
	for _, list := range [][]Fault{p.Faults, p.Warnings} {
		for i := range list {
			list[i].Place = Place{}
		}
	}
	text, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// firstUnlike is where two texts part.
func firstUnlike(a, b string) string {
	for i := range min(len(a), len(b)) {
		if a[i] != b[i] {
			from := max(0, i-200)
			return fmt.Sprintf("%s\n%s", a[from:min(len(a), i+80)], b[from:min(len(b), i+80)])
		}
	}
	return ""
}

const changedFabrics = "fabric a #111\nfabric b #888\nfabric c #eee\nstrip-set s a rest b 1\n"

// changedLayouts have every sort of patch that lies outside the blocks, and blocks of every kind: {side}, {0}, {1}, {2} stand for what is
// changed.
func changedLayouts() map[string]string {
	return map[string]string{
		"borders":    "block A plain piece a\nblock B ring wedges b corners c\ngrid\n A B A\n B A B\nborder %v b\nborder %v a\nborder %v c\nbinding 2 1/2 a\nbacking c\n",
		"corners":    "block A plain piece a\nblock B web wedges a kites c\ngrid\n A B\n B A\nborder %v b corners a\nborder %v a\nborder %v c corners b\n",
		"corners in": "block A halves pieces a b\ngrid\n A A A A\nborder %v b\nborder %v a corners c\nborder %v c\n",
		"lengthwise": "block A plain piece a\ngrid\n A A A A A\nrepeat down 6\nborder %v b lengthwise\nborder %v a corners b\nborder %v c lengthwise\n",
		"sashes":     "block A plain piece a\nblock B ring wedges b corners c\ngrid\n A B A\n B A B\nsash 1 c\nborder %v b\nborder %v a\nborder %v c corners a\n",
		"posts":      "block A plain piece a\ngrid\n A A A\n A A A\nsash 1 1/2 c posts b around\nborder %v b\nborder %v a corners a\nborder %v c\nbinding 2 1/4 b\n",
		"strip sets": "block A web wedges s kites c\nblock B ring wedges reversed s corners c\ngrid\n A B A\n A B A\nborder %v b\nborder %v a\nborder %v c\n",
	}
}

func TestNarrowedIsAsLaid(t *testing.T) {
	for name, text := range changedLayouts() {
		widths := [3]measure.NM{3 * measure.Inch, 5 * measure.Inch / 2, 4 * measure.Inch}
		written := func(w [3]measure.NM) *quilt.Top {
			return lay.Top(t, "side 6\n"+changedFabrics+fmt.Sprintf(text, measure.Number(w[0], measure.Inches), measure.Number(w[1], measure.Inches), measure.Number(w[2], measure.Inches)))
		}
		top := written(widths)
		for n := range widths {
			other := widths
			other[n] -= 5 * measure.Inch / 4
			for _, o := range []Options{{}, {LeastCloth: true, DiagonalBorders: true}} {
				if a, b := bare(t, narrowed(top, n, other[n]), o), bare(t, written(other), o); a != b {
					t.Errorf("%s, border %d: %s", name, n, firstUnlike(a, b))
				}
			}
		}
		if a, b := bare(t, top, Options{}), bare(t, written(widths), Options{}); a != b {
			t.Errorf("%s: the top is changed itself: %s", name, firstUnlike(a, b))
		}
	}
}

func TestResizedIsAsLaid(t *testing.T) {
	for name, text := range changedLayouts() {
		text = changedFabrics + fmt.Sprintf(text, 3, 2, 4)
		for _, sides := range [][2]string{{"side 8", "side 6"}, {"side 4", "side 3"}, {"side 3", "side 2"}} { // some as large as a border is wide
			top, other := lay.Top(t, sides[0]+"\n"+text), lay.Top(t, sides[1]+"\n"+text)
			scaled := resized(top, other.SideFinished)
			if name == "strip sets" { // whose strips keep their parts of the whole: here those that the layout gives
				scaled.CutFacts.Sets = other.CutFacts.Sets
			}
			if a, b := bare(t, scaled, Options{}), bare(t, other, Options{}); a != b {
				t.Errorf("%s, %s for %s: %s", name, sides[1], sides[0], firstUnlike(a, b))
			}
		}
	}
}

// TestParts: strips of a strip set keep their finished shares of the whole, and come to it to the last nanometre.
func TestParts(t *testing.T) {
	in := measure.Inch
	for _, c := range []struct{ bands, want []measure.NM }{
		{[]measure.NM{3 * in / 2, 5 * in / 2}, []measure.NM{in, 3 * in / 2}}, // finished 1 and 2 in become 1/2 and 1
		{[]measure.NM{7 * in / 2}, []measure.NM{2 * in}},
		{[]measure.NM{in, in, 5 * in / 2}, []measure.NM{3 * in / 4, 3 * in / 4, 3 * in / 2}},
	} {
		if got := parts(c.bands, 2*in, in/4); fmt.Sprint(got) != fmt.Sprint(c.want) {
			t.Errorf("%v: %v, want %v", c.bands, got, c.want)
		}
	}
	sum := measure.NM(0)
	for _, b := range parts([]measure.NM{in, in, in}, 2*in+1, in/4) { // a third of an odd number of nanometres
		sum += b - in/2
	}
	if sum != 3*in/2+1 {
		t.Errorf("the rest comes to %d", sum)
	}
}

// TestPiecesOnHandOfAnotherSize: with smaller blocks pieces on hand serve no more, with a narrower border they do.
func TestPiecesOnHandOfAnotherSize(t *testing.T) {
	top := lay.Top(t, "side 6\nfabric a #111\nfabric b #888\nblock A web wedges a kites b\ngrid\n A A\n A A\nborder 2 b\non-hand kites b 3\n")
	if p := Build(nil, resized(top, 5*measure.Inch), Options{}); len(p.OnHand) != 0 {
		t.Errorf("of another side: %+v", p.OnHand)
	}
	for _, same := range []*quilt.Top{resized(top, 6*measure.Inch), narrowed(top, 0, measure.Inch)} {
		if p := Build(nil, same, Options{}); len(p.OnHand) != 1 || p.OnHand[0].Used != 3 || p.OnHand[0].Left() != 0 {
			t.Errorf("of the same side: %+v", p.OnHand)
		}
	}
}

// TestScaled: an outline of another size stands where its first corner does.
func TestScaled(t *testing.T) {
	got := scaled([]measure.Point{{X: 100, Y: 40}, {X: 300, Y: 40}, {X: 301, Y: 241}}, 0.5)
	if want := []measure.Point{{X: 100, Y: 40}, {X: 200, Y: 40}, {X: 201, Y: 141}}; fmt.Sprint(got) != fmt.Sprint(want) { // half of 201 is rounded up
		t.Errorf("%v, want %v", got, want)
	}
	top := printedTop(t, 8)
	for i, p := range resized(top, 4*measure.Inch).Patches {
		for k, at := range p.Outline {
			want := top.Patches[i].Outline[0].Add(measure.Point{X: (top.Patches[i].Outline[k].X - top.Patches[i].Outline[0].X) / 2, Y: (top.Patches[i].Outline[k].Y - top.Patches[i].Outline[0].Y) / 2})
			if d := measure.Point(blocks.Place{X: at.X - want.X, Y: at.Y - want.Y}); top.CutOfPatch(i) != nil && (d.X > 1 || d.X < -1 || d.Y > 1 || d.Y < -1) {
				t.Fatalf("patch %d, corner %d: %v, want %v", i, k, at, want)
			}
		}
	}
}

// printedTop has pieces from a place of a print.
func printedTop(t *testing.T, side int) *quilt.Top {
	return lay.Top(t, fmt.Sprintf("side %d\nfabric navy #1f3350\nfabric cream #f4ead5\nfabric garden stripes navy 1 cream 1\nmotif rose garden across 5 down 5\nblock R ring wedges rose corners navy\ngrid\n R R\n R R\n", side))
}
