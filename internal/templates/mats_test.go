package templates

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/samples"
)

// wrongMats says which piece of some mats lies outside or too near to another, and of which template too many or too few lie on them.
func wrongMats(list []Template, mats []Mat) error {
	laid := map[string]int{}
	for i := range mats {
		m := &mats[i]
		for j, p := range m.pieces {
			laid[fmt.Sprint(p.Name(), " ", m.Fabric)] += m.Times
			outline := p.points(p.Cut)
			low, high := bounds(outline)
			if low.X < matGap || low.Y < matGap || high.X > m.size.X-matGap || high.Y > m.size.Y-matGap {
				return fmt.Errorf("mat %d of fabric %d: %s lies at its edge or beyond", m.Number, m.Fabric, p.Name())
			}
			for k := range j {
				if apart(floats(outline), floats(m.pieces[k].points(m.pieces[k].Cut))) < 0.3*float64(matGap) {
					return fmt.Errorf("mat %d of fabric %d: %s and %s overlap", m.Number, m.Fabric, p.Name(), m.pieces[k].Name())
				}
			}
		}
	}
	for i := range list {
		for _, c := range list[i].Cloths {
			name := fmt.Sprint(list[i].Name(), " ", c.Fabric)
			wanted := c.Count
			if list[i].Print != nil { // lined up on the print one by one
				wanted = 0
			}
			if c.Fabric >= 0 && laid[name] != wanted {
				return fmt.Errorf("%s: %d lie on mats, %d are wanted", name, laid[name], wanted)
			}
		}
	}
	return nil
}

// apart is how far two convex outlines lie apart at the least along the normal of a side, below 0 where they overlap.
func apart(a, b []xy) float64 {
	most := math.Inf(-1)
	for _, pair := range [][2][]xy{{a, b}, {b, a}} {
		for i, p := range pair[0] {
			d := unitOf(p, pair[0][(i+1)%len(pair[0])])
			least := math.Inf(1)
			for _, q := range pair[1] {
				least = min(least, -(float64(d.x*(q.y-p.y)) - float64(d.y*(q.x-p.x))))
			}
			most = max(most, least)
		}
	}
	return most
}

// TestMats: all pieces of each fabric lie on its mats, as often as they are cut, within them and apart from each other.
func TestMats(t *testing.T) {
	tops := inventedTops(t, judges.Of(40, 150))
	for _, s := range samples.All() {
		tops = append(tops, lay.Top(t, s.Text))
	}
	laid, refused := 0, 0
	for n, top := range tops {
		list := usual(top)
		size := measure.Point{X: measure.NM(8+4*(n%3)) * measure.Inch, Y: measure.NM(12+6*(n%4)) * measure.Inch}
		mats, err := Mats(top, list, size)
		if large := new(TooLarge); errors.As(err, &large) {
			refused++
			if large.Size.X <= size.X && large.Size.Y <= size.Y {
				t.Errorf("%s: %v is refused on a mat of %v", top.Title, large.Size, size)
			}
			continue
		}
		if err := wrongMats(list, mats); err != nil {
			t.Errorf("%d %s: %v", n, top.Title, err)
		}
		if len(mats) == 0 || len(mats[0].pieces) < 2 {
			continue
		}
		laid++
		m := &mats[0]
		for _, broken := range []func(){
			func() { m.pieces[1] = m.pieces[0] }, func() { m.pieces[0].at.X -= measure.Inch }, func() { m.Times++ },
		} {
			kept, times := append([]laidPiece(nil), m.pieces...), m.Times
			if broken(); wrongMats(list, mats) == nil {
				t.Errorf("%s: a wrong mat is not noticed", top.Title)
			}
			m.pieces, m.Times = kept, times
		}
	}
	if laid < 10 || refused == 0 {
		t.Errorf("%d tops were laid on mats, %d refused", laid, refused)
	}
}

// TestNoMatsOfStripSets: what is cut from strip sets alone has no mat.
func TestNoMatsOfStripSets(t *testing.T) {
	top := lay.Top(t, samples.All()[0].Text)
	list := usual(top)
	for i := range list {
		list[i].Cloths = []ClothCount{{Fabric: -1, Set: 0, Count: 8}}
	}
	if mats, err := Mats(top, list, measure.Point{X: measure.Inch, Y: measure.Inch}); err != nil || len(mats) != 0 {
		t.Errorf("%d mats, %v", len(mats), err)
	}
}

// wrongDrawing says which mat or piece of a drawing of mats is missing.
func wrongDrawing(drawing string, mats []Mat, top *quilt.Top) error {
	pieces := 0
	for i := range mats {
		if pieces += len(mats[i].pieces); !strings.Contains(drawing, mats[i].says(top)) {
			return fmt.Errorf("nothing says %q", mats[i].says(top))
		}
	}
	for layer, want := range map[string]int{cutLayer: pieces, sewLayer: pieces, matLayer: len(mats)} {
		if got := strings.Count(drawing, "POLYLINE\r\n8\r\n"+layer+"\r\n"); got != want {
			return fmt.Errorf("%d outlines on %s, expected %d", got, layer, want)
		}
	}
	if strings.Contains(drawing, "\r\ncut ") {
		return errors.New("a piece says how many are cut of the whole quilt")
	}
	return nil
}

// TestMatsDXF: all mats are in one drawing, each with its edge, its pieces, and how often it is cut.
func TestMatsDXF(t *testing.T) {
	top := lay.Top(t, samples.All()[0].Text)
	mats, err := Mats(top, usual(top), measure.Point{X: 12 * measure.Inch, Y: 12 * measure.Inch})
	if err != nil || len(mats) < 2 {
		t.Fatal(len(mats), err)
	}
	var b bytes.Buffer
	if err := MatsDXF(&b, top, mats); err != nil {
		t.Fatal(err)
	}
	if err := wrongDrawing(b.String(), mats, top); err != nil || !IsOurs(b.Bytes()[:1000]) {
		t.Error(err)
	}
	if MatsDXF(failing{}, top, mats) == nil {
		t.Error("an error of the writer is lost")
	}
	if wrongDrawing(b.String(), mats[1:], top) == nil || wrongDrawing(strings.Replace(b.String(), "Cut it", "Cut", 1), mats, top) == nil {
		t.Error("a wrong drawing is not noticed")
	}
}

// TestMatSVG: a mat's file is as large as the mat, has its layers and says how often it is cut; the same each time.
func TestMatSVG(t *testing.T) {
	top := lay.Top(t, samples.All()[0].Text)
	mats, err := Mats(top, usual(top), measure.Point{X: 12 * measure.Inch, Y: 24 * measure.Inch})
	if err != nil {
		t.Fatal(err)
	}
	var a, b bytes.Buffer
	if mats[0].SVG(&a, top) != nil || mats[0].SVG(&b, top) != nil || !bytes.Equal(a.Bytes(), b.Bytes()) || !IsOurs(a.Bytes()[:1000]) {
		t.Error("two files differ, or are not marked")
	}
	for _, want := range []string{`width="12.0000in" height="24.0000in"`, `id="cut"`, `id="sew"`, `id="marks"`, `id="grain"`, `id="labels"`, "mat 1 of ", "Cut it ", LayersNote} {
		if !strings.Contains(a.String(), want) {
			t.Errorf("%q is missing: %.600s", want, a.String())
		}
	}
}

// shifted is an outline elsewhere.
func shifted(outline []measure.Point, by measure.Point) []measure.Point {
	list := make([]measure.Point, len(outline))
	for i, p := range outline {
		list[i] = p.Add(by)
	}
	return list
}

// wrongMarks says which label of a template leaves its seam lines, and which notch does not begin at the raw edge.
func wrongMarks(p *Template) error {
	finished, cut := floats(p.Finished), floats(p.Cut)
	for _, l := range (laidPiece{Template: p}).labels() {
		wide, high := float64(l.height)*float64(len(l.text))/2, float64(l.height)/2
		for _, corner := range []xy{{-wide, -high}, {wide, -high}, {wide, high}, {-wide, high}} {
			at := xy{float64(l.middle.X) + corner.x, float64(l.middle.Y) + corner.y}
			if roomAt(finished, at, 1) <= 0 {
				return fmt.Errorf("%q leaves the piece", l.text)
			}
		}
	}
	for _, n := range p.notches() {
		if begins := roomAt(cut, xy{float64(n[0].X), float64(n[0].Y)}, 10); begins > 3 || roomAt(cut, xy{float64(n[1].X), float64(n[1].Y)}, 10) < 5 {
			return fmt.Errorf("a notch begins %g nm within the edge", begins)
		}
	}
	return nil
}

// TestMarksAreWithin: labels stand within the seam lines, notches go inwards from the raw edge, two at each corner.
func TestMarksAreWithin(t *testing.T) {
	seamed := 0
	for _, top := range append(inventedTops(t, judges.Of(40, 150)), lay.Top(t, samples.All()[0].Text)) {
		for _, p := range usual(top) {
			seamed++
			if err := wrongMarks(&p); err != nil || len(p.notches()) != 2*len(p.Finished) {
				t.Errorf("%s, %s: %v", top.Title, p.Name(), err)
			}
		}
	}
	if seamed == 0 {
		t.Error("no template has a seam")
	}
	wrong := usual(lay.Top(t, samples.All()[0].Text))[0]
	for _, broken := range []func(p *Template){
		func(p *Template) { p.Cut = shifted(p.Cut, measure.Point{X: 2 * measure.Inch}) },
		func(p *Template) { p.Finished = []measure.Point{{}, {X: measure.Inch}, {X: measure.Inch, Y: 1000}} },
	} {
		p := wrong
		if broken(&p); wrongMarks(&p) == nil {
			t.Error("marks in wrong places are not noticed")
		}
	}
}
