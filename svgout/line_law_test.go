package svgout

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// lawLetters says that in the line view each face has the letter of its piece's role, and of a strip set the strip's number from the wide
// end, inside its outline with room on all sides, and no larger than a tenth of a block.
func lawLetters(top *quilt.Top, s *Scene) error {
	n := 0
	for _, l := range s.Layers {
		if l.ID != "letters" {
			continue
		}
		for text := range l.Items[0].Texts {
			if n == len(top.Faces) {
				return fmt.Errorf("more letters than faces")
			}
			f := top.Faces[n]
			patch := top.Patches[f.Patch]
			want := top.Roles[patch.Role].Letter
			if patch.Count > 1 {
				want = fmt.Sprint(want, n-int(patch.First)+1)
			}
			if text.Text != want {
				return fmt.Errorf("face %d has the letter %q, expected %q", n, text.Text, want)
			}
			if text.Size <= 0 || text.Size > userUnits(top.SideFinished)/10 {
				return fmt.Errorf("face %d has a letter %g high", n, text.Size)
			}
			// The capitals of plain faces are 0.72 of their size high; of Helvetica 718 of 1000 (Adobe, Core 14 font metrics, from memory).
			half := text.Size * 0.72 / 2
			wide := text.Size * textWidth(text.Text) / 2
			for _, at := range [][2]float64{{-wide, 0}, {wide, 0}, {-wide, -2 * half}, {wide, -2 * half}} {
				if !insideOutline(text.X+at[0]*0.9, text.Y+at[1]*0.9-0.05*half, f.Outline) {
					return fmt.Errorf("%q of face %d leaves its outline", text.Text, n)
				}
			}
			n++
		}
	}
	if n != len(top.Faces) {
		return fmt.Errorf("%d letters for %d faces", n, len(top.Faces))
	}
	return nil
}

// insideOutline says whether a place in user units lies in a convex outline that runs clockwise on screen.
func insideOutline(x, y float64, outline []measure.Point) bool {
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		ax, ay, bx, by := userUnits(p.X), userUnits(p.Y), userUnits(q.X), userUnits(q.Y)
		if (bx-ax)*(y-ay)-(by-ay)*(x-ax) < 0 {
			return false
		}
	}
	return true
}

// lawRim says that the line round the top lies inside it, its outer edge on the top's own; it is there where the top's whole edge is.
func lawRim(top *quilt.Top, s *Scene) error {
	for _, l := range s.Layers {
		if l.ID != "outlines" {
			continue
		}
		rim := l.Items[0].ID == "rim"
		whole := top.Patches[len(top.Patches)-1].Border >= 0
		if !whole {
			whole = true
			for i := range top.Cells {
				whole = whole && !top.Empty(i)
			}
		}
		if rim != whole {
			return fmt.Errorf("a line round the top: %v, expected %v", rim, whole)
		}
		if !rim {
			return nil
		}
		corners, half := collected(l.Items[0].Outlines)[0], l.Style.Width/2
		for i, want := range [][2]float64{{half, half}, {userUnits(top.Outer.Width()) - half, half}, {userUnits(top.Outer.Width()) - half, userUnits(top.Outer.Height()) - half}, {half, userUnits(top.Outer.Height()) - half}} {
			if math.Hypot(userUnits(corners[i].X)-want[0], userUnits(corners[i].Y)-want[1]) > 1e-4 {
				return fmt.Errorf("a corner of the line round the top lies at %v, expected %v", corners[i], want)
			}
		}
	}
	return nil
}

func TestLineView(t *testing.T) {
	for _, top := range tops(t) {
		s, err := NewScene(top.Top, Options{View: Line})
		if err != nil {
			t.Fatal(err)
		}
		for _, law := range []func(*quilt.Top, *Scene) error{lawLetters, lawRim} {
			if err := law(top.Top, s); err != nil {
				t.Errorf("%s: %v", top.name, err)
			}
		}
	}
}

// TestTheLawsOfLinesCatch: letters that are wrong, moved, too large or too few, and a line round the top that is moved or missing.
func TestTheLawsOfLinesCatch(t *testing.T) {
	top := lapTop(t)
	for what, spoil := range map[string]func(s *Scene, text *Text){
		"nothing":           func(*Scene, *Text) {},
		"another letter":    func(_ *Scene, text *Text) { text.Text += "1" },
		"a letter moved":    func(_ *Scene, text *Text) { text.X += 2 * PixelsPerInch },
		"a letter outside":  func(_ *Scene, text *Text) { text.Y = -1 },
		"a letter too big":  func(_ *Scene, text *Text) { text.Size *= 3 },
		"a letter too many": func(s *Scene, _ *Text) { s.Layers = append(s.Layers, s.Layers[len(s.Layers)-1]) },
		"no rim":            func(s *Scene, _ *Text) { s.Layers[1].Items = s.Layers[1].Items[1:] },
		"a rim at the edge": func(s *Scene, _ *Text) { s.Layers[1].Style.Width *= 2 },
	} {
		s, err := NewScene(top, Options{View: Line})
		if err != nil {
			t.Fatal(err)
		}
		item := &s.Layers[len(s.Layers)-1].Items[0]
		letters := slices.Collect(item.Texts)
		item.Texts = slices.Values(letters)
		spoil(s, &letters[7])
		caught := lawLetters(top, s) != nil || lawRim(top, s) != nil
		if caught != (what != "nothing") {
			t.Errorf("%s: caught %v", what, caught)
		}
	}
}

// TestSeamWidth: lines are a thousandth of the longer side of the top wide, and of a top of few blocks a ninetieth of a block's.
func TestSeamWidth(t *testing.T) {
	for _, c := range []struct {
		columns, rows int
		want          float64
	}{{20, 2, 20.0 * 6 * 96 / 1000}, {2, 20, 20.0 * 6 * 96 / 1000}, {12, 1, 6 * 96 / 90.0}, {11, 11, 11.0 * 6 * 96 / 1000}, {1, 1, 6.0 * 96 / 1000}} {
		s, err := NewScene(manyFabrics(t, 2, c.columns, c.rows), Options{View: Line})
		if err != nil {
			t.Fatal(err)
		}
		if got := s.Layers[1].Style.Width; math.Abs(got-min(c.want, 6*96/90.0)) > 1e-9 {
			t.Errorf("%d by %d blocks of 6 in: lines are %g wide, expected %g", c.columns, c.rows, got, c.want)
		}
	}
}

// TestIDsSayWhere: an id says row, column and number in the block, or the border, or the sash, counted from 1, and of a strip set the
// strip; a title says fabric, strip, role and place.
func TestIDsSayWhere(t *testing.T) {
	for _, text := range []string{layouts()["sashed"], layouts()["lap"]} {
		top := lay(t, text)
		p := newPicture(top, Options{})
		for i, f := range top.Faces {
			patch := top.Patches[f.Patch]
			id, where, strip := fmt.Sprintf("sash%d", patch.Number), "", ""
			if patch.Cell >= 0 {
				row, column := int(patch.Cell)/top.Columns+1, int(patch.Cell)%top.Columns+1
				id, where = fmt.Sprintf("r%dc%dp%d", row, column, patch.Number), fmt.Sprintf(", row %d, column %d", row, column)
			} else if patch.Border >= 0 {
				id, where = fmt.Sprintf("border%dp%d", patch.Border+1, patch.Number), fmt.Sprintf(", border number %d", patch.Border+1)
			}
			var names []string
			for n := range patch.Count {
				names = append(names, top.Fabrics[top.Faces[patch.First+n].Fabric].Name)
			}
			of := p.patchLabels([]int32{f.Patch})
			if got, want := string(of.Title(nil, 0)), strings.Join(names, ", ")+", "+top.Roles[patch.Role].Name+where; got != want || string(of.ID(nil, 0)) != id {
				t.Errorf("a piece is %s, %q, expected %s, %q", of.ID(nil, 0), got, id, want)
			}
			if patch.Count > 1 {
				strip = fmt.Sprintf(", strip %d of %d", i-int(patch.First)+1, patch.Count)
				id += fmt.Sprintf("b%d", i-int(patch.First)+1)
			}
			one := p.faceLabels([]int32{int32(i)}, int(f.Fabric))
			if got, want := string(one.Title(nil, 0)), top.Fabrics[f.Fabric].Name+strip+", "+top.Roles[patch.Role].Name+where; got != want || string(one.ID(nil, 0)) != id {
				t.Errorf("a face is %s, %q, expected %s, %q", one.ID(nil, 0), got, id, want)
			}
		}
	}
}

// TestIDsOfFabrics: layers, and what is drawn of a fabric as one, have its number, counted from 1.
func TestIDsOfFabrics(t *testing.T) {
	top := lapTop(t)
	s, err := NewScene(top, Options{ByFabric: true})
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, l := range s.Layers {
		if l.Part != Cloth {
			continue
		}
		for _, item := range l.Items {
			id := fmt.Sprintf("cloth-%d", top.Faces[item.Faces[0]].Fabric+1)
			if l.ID == "borders" {
				id = "border-" + id
			} else if want := fmt.Sprintf("fabric-%d", top.Faces[item.Faces[0]].Fabric+1); l.ID != want || l.Name != top.Fabrics[top.Faces[item.Faces[0]].Fabric].Name {
				t.Errorf("the layer %s is called %s, expected %s", l.ID, l.Name, want)
			}
			if item.ID != id {
				t.Errorf("%s holds %s, expected %s", l.ID, item.ID, id)
			}
			seen++
		}
	}
	if seen != 6 {
		t.Errorf("%d items of cloth, expected four fabrics and two borders", seen)
	}
}

// TestLettersOfStrips: the legend of the line view says how the strips of a set are numbered, and whose pieces share a name.
func TestLettersOfStrips(t *testing.T) {
	for text, wanted := range map[string][]string{
		layouts()["sashed"]: {"W1, W2 …: strips from the wide end to the tip", "of tumblers", "of halves"},
		"side 5 1/2\nfabric a #123\nfabric b #edc\nblock H halves pieces a b\nblock T tumblers pieces a b about 3 1/2\n" + grid("H T T"): {"of tumblers", "of halves"},
	} {
		s, err := NewScene(lay(t, text), Options{View: Line, Legend: true})
		if err != nil {
			t.Fatal(err)
		}
		_, list := listedIn(s)
		said := map[string]bool{}
		for _, e := range list {
			for _, text := range e.lines {
				said[text.Text] = true
			}
		}
		for _, want := range wanted {
			if !said[want] {
				t.Errorf("nobody says %q: %v", want, said)
			}
		}
	}
}

// TestFilesComeInPieces: a large picture is handed on as it is written, in large pieces.
func TestFilesComeInPieces(t *testing.T) {
	s, err := NewScene(lay(t, layouts()["wide"]), Options{SeamLines: SeamsDrawn})
	if err != nil {
		t.Fatal(err)
	}
	var w pieces
	for range 9 { // many of one make a large one
		s.Layers = append(s.Layers, s.Layers...)
		if len(s.Layers) > 64 {
			break
		}
	}
	if err := s.SVG(&w); err != nil {
		t.Fatal(err)
	}
	for i, n := range w {
		if n > 2*sinkBytes || n < sinkBytes && i < len(w)-1 {
			t.Errorf("piece %d of %d has %d bytes", i, len(w), n)
		}
	}
	if len(w) < 3 {
		t.Errorf("%d pieces", len(w))
	}
}

// pieces are the lengths of what is written.
type pieces []int

func (p *pieces) Write(b []byte) (int, error) {
	*p = append(*p, len(b))
	return len(b), nil
}

// TestDescriptions: whoever cannot see the picture is told how large the top is, how it is drawn and what it shows.
func TestDescriptions(t *testing.T) {
	const size = "A quilt top of 2 by 1 blocks, 12 in by 6 in finished, drawn "
	for view, want := range map[View]string{Colour: "in color. It shows 2 fabrics.", Value: "in the grays of its values. It shows 2 fabrics.", Line: "in line, with the letters of its pieces. It shows 2 fabrics.",
		Vanishing: "in the grays of its values, with the seams marked that are hard to see.", Protan: "as protan eyes see it.", Deutan: "as deutan eyes see it.", Tritan: "as tritan eyes see it."} {
		s, err := NewScene(manyFabrics(t, 2, 2, 1), Options{View: view})
		if err != nil {
			t.Fatal(err)
		}
		if s.Description != size+want || s.Title != "Quilt top" {
			t.Errorf("%s: %q, %q", Views()[view], s.Title, s.Description)
		}
	}
	s, err := NewScene(manyFabrics(t, 1, 2, 1), Options{})
	if want := size + "in color. It shows one fabric."; err != nil || s.Description != want {
		t.Errorf("%v: %q, expected %q", err, s.Description, want)
	}
}

// TestPixelsAreDescribed: a picture in pixels says how it is drawn, too.
func TestPixelsAreDescribed(t *testing.T) {
	s := inPixels(manyFabrics(t, 2, 2, 1), Options{}, nil, "as it looks with eyes half shut")
	if want := "A quilt top of 2 by 1 blocks, 12 in by 6 in finished, drawn as it looks with eyes half shut."; s.Description != want {
		t.Errorf("%q, expected %q", s.Description, want)
	}
}

// TestTextWidth: words are taken to be as wide as Helvetica sets them, or up to a quarter wider. Widths in thousandths of the size from
// Adobe's Core 14 font metrics (Helvetica.afm and Helvetica-Bold.afm), from memory.
func TestTextWidth(t *testing.T) {
	small := []int{556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500}
	large := []int{667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611}
	boldSmall := []int{556, 611, 556, 611, 556, 333, 611, 611, 278, 278, 556, 278, 889, 611, 611, 611, 611, 389, 556, 333, 611, 556, 778, 556, 556, 500}
	boldLarge := []int{722, 722, 722, 722, 667, 611, 778, 722, 278, 556, 722, 611, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611}
	width := func(text string, small, large []int) float64 {
		sum := 0
		for _, r := range text {
			switch {
			case r >= 'a' && r <= 'z':
				sum += small[r-'a']
			case r >= 'A' && r <= 'Z':
				sum += large[r-'A']
			case r >= '0' && r <= '9':
				sum += 556
			case strings.ContainsRune("()-", r):
				sum += 333
			default: // blank, full stop, comma
				sum += 278
			}
		}
		return float64(sum) / 1000
	}
	for _, text := range []string{"sea glass", "Cream crackle, 12 in", "OPAL", "midnight", "Plum (dark)", "little lilli ill", "mammoth womww", "MMWW", "fret-tart", "storm 0123456789", "HARBOR", "navy blue"} {
		for _, c := range []struct {
			what      string
			got, want float64
		}{{"plain", textWidth(text), width(text, small, large)}, {"bold", boldWidth(text), width(text, boldSmall, boldLarge)}} {
			if part := c.got / c.want; part < 1 || part > 1.25 {
				t.Errorf("%s, %s: %g, of Helvetica %g (%.2f)", text, c.what, c.got, c.want, part)
			}
		}
	}
	// Characters of East Asian texts fill a square (Unicode Standard Annex 11, wide), with whatever is joined to them.
	for text, wide := range map[string]float64{"赤い": 2, "👩‍👩‍👧": 1, "e\u0301e\u0301": 2 * 0.556} {
		if part := textWidth(text) / wide; part < 1 || part > 1.1 {
			t.Errorf("%s: %g, expected %g", text, textWidth(text), wide)
		}
	}
}

// TestThinLinesKeepTheirWidth: widths below a unit have three decimals, others two.
func TestThinLinesKeepTheirWidth(t *testing.T) {
	for width, want := range map[float64]string{0.1234: "0.123", 0.04: "0.040", 0.9994: "0.999", 1: "1.00", 12.346: "12.35"} {
		if got := rounded(width); got != want {
			t.Errorf("%g is written %s, expected %s", width, got, want)
		}
	}
}
