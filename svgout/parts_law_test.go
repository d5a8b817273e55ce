package svgout

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// lawLayers says that each layer of a scene is a group that drawing programs show as a layer of its name, that what lies beneath the seams is
// locked where fabrics are paints and no other layer ever is, and that a file says near its beginning what drew it.
func lawLayers(s *Scene, svg []byte) error {
	root, err := parse(svg)
	if err != nil {
		return err
	}
	groups := slices.DeleteFunc(slices.Clone(root.children), func(n *node) bool { return n.attr("inkscape:groupmode") != "layer" })
	for _, l := range s.Layers {
		if l.ID == "" {
			continue
		}
		if len(groups) == 0 {
			return fmt.Errorf("no layer %s", l.ID)
		}
		locked := ""
		if l.Part == Beneath && s.OnePaint {
			locked = "true"
		}
		g := groups[0]
		if g.attr("id") != s.prefix+l.ID || g.attr("inkscape:label") != l.Name || g.attr("sodipodi:insensitive") != locked {
			return fmt.Errorf("the layer %s is %v", l.ID, g.attrs)
		}
		groups = groups[1:]
	}
	if len(groups) > 0 {
		return fmt.Errorf("a layer %v", groups[0].attrs)
	}
	if at := bytes.Index(svg, []byte(Marker)); at < 0 || at > 1000 {
		return fmt.Errorf("its marker stands at %d", at)
	}
	wants := map[string]string{"xmlns:inkscape": "http://www.inkscape.org/namespaces/inkscape", "xmlns:sodipodi": ""}
	if s.OnePaint {
		wants["xmlns:sodipodi"] = "http://sodipodi.sourceforge.net/DTD/sodipodi-0.dtd"
	}
	for name, want := range wants {
		if root.attr(name) != want {
			return fmt.Errorf("%s is %q, expected %q", name, root.attr(name), want)
		}
	}
	paints := slices.DeleteFunc(slices.Collect(root.all()), func(n *node) bool { return n.name != "linearGradient" })
	for i, n := range paints {
		if f := s.Top.Fabrics[i]; n.attr("id") != fmt.Sprintf("%spaint-%d", s.prefix, i+1) || n.attr("inkscape:label") != held(f.Name) || n.attr("inkscape:swatch") != "solid" || n.children[0].attr("stop-color") != s.Paints[i].Colour.Hex() {
			return fmt.Errorf("the paint of %s is %v", f.Name, n.attrs)
		}
	}
	if s.OnePaint != (len(paints) == len(s.Top.Fabrics)) {
		return fmt.Errorf("%d paints", len(paints))
	}
	if defs := slices.ContainsFunc(root.children, func(n *node) bool { return n.name == "defs" }); defs != (s.OnePaint || s.Places != nil) {
		return fmt.Errorf("something is defined: %v", defs)
	}
	return nil
}

func TestLayersAreLayers(t *testing.T) {
	for _, top := range []*quilt.Top{lapTop(t), printed(t)} {
		for _, o := range everyScene() {
			if o.View == Squint {
				continue
			}
			s, err := NewScene(top, o)
			if err != nil {
				t.Fatal(err)
			}
			if prints := slices.ContainsFunc(s.Paints, func(p Paint) bool { return p.Print != nil }); (s.Places != nil) != prints || prints != (o.Prints && o.View != Line && top.Fabrics[0].Cloth != nil) {
				t.Errorf("%+v: places of prints %v, prints %v", o, s.Places != nil, prints)
			}
			if err := lawLayers(s, written(t, s)); err != nil {
				t.Errorf("%+v: %v", o, err)
			}
		}
	}
	s, err := NewScene(lapTop(t), Options{OnePaint: true})
	if err != nil {
		t.Fatal(err)
	}
	for pattern, bad := range map[string]string{Marker: "", `sodipodi:insensitive="true"`: "", `(id="seams")`: `$1 sodipodi:insensitive="true"`, `(<g [^>]*label=")rust`: "${1}ruts", `(swatch="solid" inkscape:label=")rust`: "${1}ruts", `xmlns:sodipodi="[^"]*"`: "", ` inkscape:groupmode="layer"`: ""} {
		broken(t, func(svg []byte) error { return lawLayers(s, svg) }, written(t, s), pattern, bad)
	}
}

// TestWordsAreGray: the words of a legend and the letters of pieces are a gray that is read on white: of at least 7:1, what WCAG 2.1 asks of
// words at its higher level (success criterion 1.4.6).
func TestWordsAreGray(t *testing.T) {
	s, err := NewScene(lapTop(t), Options{View: Line, Legend: true})
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, l := range s.Layers {
		if l.ID != "legend" && l.ID != "letters" {
			continue
		}
		seen++
		if c := l.Style.Fill.Colour; c.R != c.G || c.G != c.B || palettes.ContrastRatio(c, *white()) < 7 {
			t.Errorf("the words of %s are %s", l.ID, c.Hex())
		}
	}
	if seen != 2 {
		t.Errorf("%d layers of words", seen)
	}
}

// TestMarksByWidth: marks are as broad as they say, in widths of a seam's line, with their white edge half of its width on either side, and
// a single mark is drawn too.
func TestMarksByWidth(t *testing.T) {
	top := markedTop(t)
	seams, err := NewScene(top, Options{})
	if err != nil {
		t.Fatal(err)
	}
	line := seams.Layers[len(seams.Layers)-1].Items[0].Style.Width
	for heavy, want := range map[bool]Layer{
		true:  {ID: "marked", Name: "seams marked", Items: []Item{{Style: Style{Width: 7 * line}}, {Style: Style{Width: 4.5 * line}}}},
		false: {ID: "marked-lightly", Name: "seams marked lightly", Items: []Item{{Style: Style{Width: 4.5 * line}}, {Style: Style{Width: 2 * line, Dash: 5 * line}}}},
	} {
		s := marked(top, marks{Options: Options{View: Protan}, colours: palettes.Colour.Grey, seams: []mark{{top.Seams[3], heavy}}})
		l := s.Layers[len(s.Layers)-1]
		if l.ID != want.ID || l.Name != want.Name || len(l.Items) != 2 || !l.Style.Caps || l.Style.Fill.Kind != Unfilled || s.Layers[len(s.Layers)-2].Part != Cloth {
			t.Fatalf("a mark alone, heavy %v: %+v", heavy, l)
		}
		for i, item := range l.Items {
			w := want.Items[i].Style
			if math.Abs(item.Style.Width-w.Width) > 1e-9 || math.Abs(item.Style.Dash-w.Dash) > 1e-9 || !item.Open || len(collected(item.Outlines)) != 1 {
				t.Errorf("%s, line %d: %g wide, dashes %g, expected %g and %g", l.ID, i, item.Style.Width, item.Style.Dash, w.Width, w.Dash)
			}
		}
		if *l.Items[0].Style.Line != *white() || *l.Items[1].Style.Line != *markColour() {
			t.Errorf("%s is %s on %s", l.ID, l.Items[1].Style.Line.Hex(), l.Items[0].Style.Line.Hex())
		}
	}
}

// TestDrawingStops: whoever asks for outlines or letters one by one may stop after any of them.
func TestDrawingStops(t *testing.T) {
	for _, name := range []string{"lap", "holes", "sashed"} {
		top := lay(t, layouts()[name])
		for _, o := range []Options{{}, {View: Line}, {View: Vanishing}} {
			s, err := NewScene(top, o)
			if err != nil {
				t.Fatal(err)
			}
			for _, l := range s.Layers {
				for _, item := range l.Items {
					if item.Outlines != nil {
						stopped(item.Outlines)
					} else {
						stopped(item.Texts)
					}
				}
			}
		}
	}
}

// stopped asks for the first, then for the first two, and so on. What gives one more than it is asked for panics.
func stopped[T any, Seq ~func(yield func(T) bool)](list Seq) {
	for most := 1; most < 6; most++ {
		n := 0
		for range list {
			if n++; n == most {
				break
			}
		}
	}
}

// TestATopWithoutAnOutside: where blocks are missing and nothing goes round, no line goes round the top either, and what lies beneath the
// seams are the blocks one by one.
func TestATopWithoutAnOutside(t *testing.T) {
	top := lay(t, strings.Replace(layouts()["holes"], "border 2 rust\n", "", 1))
	s, err := NewScene(top, Options{View: Line})
	if err != nil {
		t.Fatal(err)
	}
	if err := lawRim(top, s); err != nil {
		t.Error(err)
	}
	squares := func(o Outlines) (there [][2]measure.Point) {
		for c := range o {
			there = append(there, [2]measure.Point{c[0], c[2]})
		}
		return there
	}
	var want [][2]measure.Point
	for i, c := range top.Cells {
		if c.Count > 0 {
			want = append(want, [2]measure.Point{top.CellRect(i).Min, top.CellRect(i).Max})
		}
	}
	if got := squares(s.Layers[0].Items[0].Outlines); !slices.Equal(got, want) {
		t.Errorf("the paper is %v, expected %v", got, want)
	}
	if got := squares(beneathOf(t, top).Items[0].Outlines); !slices.Equal(got, want) {
		t.Errorf("beneath lies %v, expected %v", got, want)
	}
}

// TestEverySortOfItemComesInPieces: however an item is written, it is handed on while it is written, in pieces.
func TestEverySortOfItemComesInPieces(t *testing.T) {
	top := printed(t)
	base, err := NewScene(top, Options{Prints: true})
	if err != nil {
		t.Fatal(err)
	}
	const many = 9000
	outline := top.Faces[0].Outline
	outlines := func(yield func([]measure.Point) bool) {
		for range many {
			if !yield(outline) {
				return
			}
		}
	}
	letters := func(yield func(Text) bool) {
		for range many {
			if !yield(Text{X: 1, Y: 2, Size: 3, Text: "W"}) {
				return
			}
		}
	}
	named := &Labels{ID: func(b []byte, n int) []byte { return strconv.AppendInt(append(b, 'p'), int64(n), 10) }, Title: func(b []byte, _ int) []byte { return b }}
	cloth := Style{Fill: Fill{Kind: Fabric}}
	for what, item := range map[string]Item{
		"one path":         {Outlines: outlines},
		"paths":            {Outlines: outlines, Each: named},
		"paths of a print": {Outlines: outlines, Style: cloth, Faces: make([]int32, many)},
		"letters":          {Texts: letters},
	} {
		s := *base
		s.Layers = []Layer{{ID: "all", Items: []Item{item}}}
		var w pieces
		if err := s.SVG(&w); err != nil {
			t.Fatal(err)
		}
		if len(w) < 3 || slices.Max(w) > sinkBytes+sinkBytes/8 {
			t.Errorf("%s: pieces of %v bytes", what, w)
		}
	}
	faces := *top
	faces.Faces = slices.Repeat(faces.Faces[:1], many)
	s := *base
	s.Top, s.Places, s.Layers = &faces, slices.Repeat(base.Places[:1], many), nil
	var w pieces
	if err := s.SVG(&w); err != nil {
		t.Fatal(err)
	}
	if len(w) < 3 || slices.Max(w) > sinkBytes+sinkBytes/8 {
		t.Errorf("turned prints: pieces of %v bytes", w)
	}
}

// TestAFullDisk: the first error of a writer is told, and nothing is written after it.
func TestAFullDisk(t *testing.T) {
	s, err := NewScene(lay(t, layouts()["wide"]), Options{SeamLines: SeamsDrawn})
	if err != nil {
		t.Fatal(err)
	}
	s.Layers = slices.Repeat(s.Layers, 4)
	var all pieces
	if err := s.SVG(&all); err != nil || len(all) < 3 {
		t.Fatal(len(all), err)
	}
	for room := range all {
		w := &disk{room: room}
		if err := s.SVG(w); err != io.ErrShortWrite || w.calls != room+1 {
			t.Errorf("room for %d pieces: %v after %d", room, err, w.calls)
		}
	}
}

// disk has room for so many pieces.
type disk struct{ room, calls int }

func (d *disk) Write(b []byte) (int, error) {
	if d.calls++; d.calls > d.room {
		return 0, io.ErrShortWrite
	}
	return len(b), nil
}

// TestValuesLeaveTheClothAlone: a picture in other colors changes nothing of the top, whose stripes are drawn as before.
func TestValuesLeaveTheClothAlone(t *testing.T) {
	top := printedEverywhere(t)
	before := drawn(t, top, Options{Prints: true})
	for _, view := range []View{Value, Tritan} {
		other := drawn(t, top, Options{Prints: true, View: view})
		if bytes.Equal(other, before) || !bytes.Equal(drawn(t, top, Options{Prints: true}), before) {
			t.Errorf("a picture in the colors of %s changes the cloth", Views()[view])
		}
		s, err := NewScene(top, Options{Prints: true, View: view})
		if err != nil {
			t.Fatal(err)
		}
		of := map[View]func(palettes.Colour) palettes.Colour{Value: palettes.Colour.Grey, Tritan: func(c palettes.Colour) palettes.Colour { return c.SeenBy(palettes.Tritan, 1) }}[view]
		for f, p := range s.Paints {
			if p.Print == nil {
				continue
			}
			own, b := top.Fabrics[f].Cloth.Picture(), p.Print.Picture.Bounds()
			for y := b.Min.Y; y < b.Max.Y; y += 7 {
				for x := b.Min.X; x < b.Max.X; x++ {
					c := own.RGBAAt(x, y)
					if got, want := p.Print.Picture.RGBAAt(x, y), of(palettes.Colour{R: c.R, G: c.G, B: c.B}); got.R != want.R || got.G != want.G || got.B != want.B || got.A != c.A {
						t.Fatalf("fabric %d at %d, %d is %v, expected %v", f, x, y, got, want)
					}
				}
			}
			if p.Print.Stripes == nil {
				continue
			}
			for i, stripe := range top.Fabrics[f].Cloth.Stripes.List {
				if got := p.Print.Stripes.List[i]; got.Colour != of(stripe.Colour) || got.Width != stripe.Width {
					t.Errorf("stripe %d is %v, expected %s", i, got, of(stripe.Colour).Hex())
				}
			}
		}
	}
}
