package svgout

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// listed is an entry of a legend as it is drawn.
type listed struct {
	sign  *Item // a swatch or a letter
	lines []*Text
}

// listedIn are the ground and the entries of a scene's legend.
func listedIn(s *Scene) (ground Box, list []listed) {
	l := s.Layers[len(s.Layers)-1]
	for i := range l.Items[1:] {
		item := &l.Items[1+i]
		if item.Box != nil || item.Style.Middle {
			list = append(list, listed{sign: item})
			continue
		}
		last := &list[len(list)-1]
		last.lines = append(last.lines, item.Text)
	}
	return *l.Items[0].Box, list
}

// corner is the upper left corner of the square of an entry's sign. The size of a name's letters is the measure of all others.
func (e *listed) corner() (x, y float64) {
	font := e.lines[0].Size
	if box := e.sign.Box; box != nil {
		return box.X, box.Y
	}
	return e.sign.Text.X - font*swatchSize/2, e.sign.Text.Y - font*letterLine
}

// lawLegendPlaces says that a legend fills what it adds to the picture, below the top or, where that is more than two and a half times as
// high as wide, beside it; that its four margins are alike; that its entries stand in even rows and columns, as many in a row as there is
// room for, or as few columns as hold them, and that nothing of one runs into another.
func lawLegendPlaces(s *Scene) error {
	ground, list := listedIn(s)
	wide, high := userUnits(s.Top.Outer.Width()), userUnits(s.Top.Outer.Height())
	across, down := userUnits(s.Width), userUnits(s.Height)
	beside := high > 2.5*wide
	want := Box{0, high, wide, down - high}
	if beside {
		want = Box{wide, 0, across - wide, high}
	}
	if !alike(ground, want) || !beside && across != wide || beside && down != high {
		return fmt.Errorf("the ground is %v in a picture of %g by %g, the top %g by %g", ground, across, down, wide, high)
	}
	font, most := list[0].lines[0].Size, 1
	widest := 0.0
	for _, e := range list {
		most = max(most, len(e.lines))
		for _, t := range e.lines {
			widest = max(widest, t.Size*map[bool]float64{true: boldWidth(t.Text), false: textWidth(t.Text)}[t.Bold])
		}
	}
	entryWide, entryHigh := font*(swatchSize+swatchGap)+widest, font*max(swatchSize, float64(most)*lineHeight)
	columns := 1
	x0, y0 := list[0].corner()
	for columns < len(list) {
		if _, y := list[columns].corner(); y > y0+font/2 {
			break
		}
		columns++
	}
	rows := (len(list) + columns - 1) / columns
	for i, e := range list {
		x, y := e.corner()
		wantX, wantY := x0+float64(i%columns)*(entryWide+font*columnGap), y0+float64(i/columns)*(entryHigh+font*rowGap)
		if math.Hypot(x-wantX, y-wantY) > 0.01 {
			return fmt.Errorf("entry %d stands at %g, %g, expected %g, %g", i, x, y, wantX, wantY)
		}
		if err := e.linesAt(x+font*(swatchSize+swatchGap), y, font); err != nil {
			return fmt.Errorf("entry %d: %w", i, err)
		}
	}
	right := ground.X + ground.Width - x0 - float64(columns)*entryWide - float64(columns-1)*font*columnGap
	below := ground.Y + ground.Height - y0 - float64(rows)*entryHigh - float64(rows-1)*font*rowGap
	edge := x0 - ground.X
	if math.Abs(edge-font*margin) > 0.01 || math.Abs(y0-ground.Y-edge) > 0.01 {
		return fmt.Errorf("the first entry is %g and %g from the edges, expected %g", edge, y0-ground.Y, font*margin)
	}
	if !beside {
		// One more in a row has no room, or saves no row and is left out so that rows are of like length.
		room := right - edge - entryWide - font*columnGap
		fits := columns < len(list) && room >= 0 && (len(list)+columns)/(columns+1) < rows
		less := columns > 1 && (len(list)+columns-2)/(columns-1) == rows
		if math.Abs(below-edge) > 0.01 || right < edge-0.01 && columns > 1 || fits || less {
			return fmt.Errorf("%d columns of %d, the margins %g on the right, %g below, %g on the left", columns, len(list), right, below, edge)
		}
		return nil
	}
	full := int((high - 2*edge + font*rowGap) / (entryHigh + font*rowGap)) // rows that there is room for
	if math.Abs(right-edge) > 0.01 || columns != (len(list)+full-1)/full {
		return fmt.Errorf("%d columns of %d beside the top, with room for %d rows, the margins %g on the right, %g on the left", columns, len(list), full, right, edge)
	}
	return nil
}

// linesAt says that the lines of an entry begin at one place, below one another and not on one another, within the entry's height, and
// that a letter stands in the middle of its square.
func (e *listed) linesAt(x, y, font float64) error {
	last := y
	for i, t := range e.lines {
		small := smallLetters
		if i == 0 {
			small = 1
		}
		if math.Abs(t.X-x) > 0.01 || math.Abs(t.Size-small*font) > 0.01 || t.Bold != (i == 0) {
			return fmt.Errorf("line %d of %q begins at %g, expected %g, and is %g high", i, t.Text, t.X, x, t.Size)
		}
		if t.Y-last < capitalHeight*t.Size || t.Y-last > 2*font {
			return fmt.Errorf("line %d of %q stands %g below what is above it", i, t.Text, t.Y-last)
		}
		last = t.Y
	}
	if room := y + font*max(swatchSize, float64(len(e.lines))*lineHeight) - last; room < 0 {
		return fmt.Errorf("%q hangs out of its entry", e.lines[len(e.lines)-1].Text)
	}
	if box := e.sign.Box; box != nil && (box.Width != font*swatchSize || box.Height != box.Width) {
		return fmt.Errorf("a swatch is %g by %g", box.Width, box.Height)
	}
	return nil
}

// alike says whether boxes are the same to the rounding of their corners to nanometers.
func alike(a, b Box) bool {
	return max(math.Abs(a.X-b.X), math.Abs(a.Y-b.Y), math.Abs(a.Width-b.Width), math.Abs(a.Height-b.Height)) < 0.001
}

// manyFabrics is a top of so many fabrics, of so many columns and rows.
func manyFabrics(t *testing.T, n, columns, rows int) *quilt.Top {
	t.Helper()
	var text strings.Builder
	text.WriteString("side 6\n")
	for i := range n {
		fmt.Fprintf(&text, "fabric f%s #%02x%02x40 \"print %s\"\nblock P%d plain piece f%s\n", strings.Repeat("o", i%7), 40+i*3, 250-i*4, strings.Repeat("n", i%5), i, strings.Repeat("o", i%7))
	}
	at := 0
	text.WriteString("grid\n")
	for range rows {
		for range columns {
			fmt.Fprintf(&text, " P%d", at%n)
			at++
		}
		text.WriteString("\n")
	}
	return lay(t, text.String())
}

// TestLegendsHaveTheirRoom tries the law on tops of every shape, with few fabrics and many, read from near and from far off.
func TestLegendsHaveTheirRoom(t *testing.T) {
	list := []*quilt.Top{}
	for _, text := range layouts() {
		list = append(list, lay(t, text))
	}
	for n := range 7 {
		for _, size := range [][2]int{{3, 3}, {1, 7}, {7, 1}, {2, 5}, {4, 10}} {
			list = append(list, manyFabrics(t, n+1, size[0], size[1]))
		}
	}
	for _, top := range list {
		for _, o := range []Options{{ByFabric: true}, {ByFabric: true, FarOff: true}, {ByFabric: true, View: Line}, {ByFabric: true, View: Value}} {
			o.Legend = true
			s, err := NewScene(top, o)
			if err != nil {
				t.Fatal(err)
			}
			if err := lawLegendPlaces(s); err != nil {
				t.Errorf("%d by %d blocks, %+v: %v", top.Columns, top.Rows, o, err)
			}
		}
	}
}

// TestLegendsSayWhatIsThere: a legend of fabrics has each that is seen, in the order of the layout, by value from light to dark in the view
// of values; of each it says the part of the top that it takes, by the areas of its faces, and its value: its own, or where eyes see other
// colors that of the color shown.
func TestLegendsSayWhatIsThere(t *testing.T) {
	for name, text := range layouts() {
		top := lay(t, text)
		area, all := map[int]float64{}, 0.0
		for _, f := range top.Faces {
			twice := 0.0
			for i, p := range f.Outline {
				q := f.Outline[(i+1)%len(f.Outline)]
				twice += float64(p.X)*float64(q.Y) - float64(q.X)*float64(p.Y)
			}
			area[int(f.Fabric)] += math.Abs(twice)
			all += math.Abs(twice)
		}
		for view := range Tritan + 1 {
			if view == Squint || view == Line {
				continue
			}
			s, err := NewScene(top, Options{View: view, Legend: true, ByFabric: true})
			if err != nil {
				t.Fatal(err)
			}
			var fabrics []int
			for f := range top.Fabrics {
				if area[f] > 0 {
					fabrics = append(fabrics, f)
				}
			}
			value := func(f int) float64 { return top.Fabrics[f].Colour.Lightness() }
			switch view {
			case Value:
				slices.SortStableFunc(fabrics, func(a, b int) int { return int(math.Copysign(1, value(b)-value(a))) })
			case Protan, Deutan, Tritan:
				value = func(f int) float64 {
					return top.Fabrics[f].Colour.SeenBy([]palettes.Deficiency{palettes.Protan, palettes.Deutan, palettes.Tritan}[view-Protan], 1).Lightness()
				}
			}
			_, list := listedIn(s)
			for i, f := range fabrics {
				if got, want := s.Paints[f].Colour, inView(top.Fabrics[f].Colour, view); got != want {
					t.Errorf("%s, %s: fabric %d is %s, expected %s", name, Views()[view], f, got.Hex(), want.Hex())
				}
				want := []string{top.Fabrics[f].Name}
				if top.Fabrics[f].Print != "" {
					want = append(want, top.Fabrics[f].Print)
				}
				want = append(want, fmt.Sprintf("%.1f%% of the top, value %.0f", 100*area[f]/all, value(f)))
				var got []string
				for _, t := range list[i].lines {
					got = append(got, t.Text)
				}
				if !slices.Equal(got, want) || list[i].sign.Style.Fill != (Fill{Kind: Fabric, Fabric: f}) {
					t.Errorf("%s, %s: entry %d says %q beside %v, expected %q", name, Views()[view], i, got, list[i].sign.Style.Fill, want)
				}
			}
			if len(list) != len(fabrics) {
				t.Errorf("%s, %s: %d entries, expected %d", name, Views()[view], len(list), len(fabrics))
			}
		}
	}
}

// inView is the color that a view shows a color in.
func inView(c palettes.Colour, view View) palettes.Colour {
	switch view {
	case Value, Vanishing:
		return c.Grey()
	case Protan:
		return c.SeenBy(palettes.Protan, 1)
	case Deutan:
		return c.SeenBy(palettes.Deutan, 1)
	case Tritan:
		return c.SeenBy(palettes.Tritan, 1)
	}
	return c
}

// TestLegendsThatRunOver: the law of places catches a legend that is moved, too small, too far from its top, or in a row too long.
func TestLegendsThatRunOver(t *testing.T) {
	for what, spoil := range map[string]func(s *Scene, l *Layer){
		"nothing":                  func(*Scene, *Layer) {},
		"an entry moved":           func(_ *Scene, l *Layer) { l.Items[3].Text.X++ },
		"a ground too small":       func(_ *Scene, l *Layer) { l.Items[0].Box.Height-- },
		"a picture too small":      func(s *Scene, _ *Layer) { s.Height -= measure.Inch },
		"a last line on the first": func(_ *Scene, l *Layer) { l.Items[3].Text.Y = l.Items[2].Text.Y },
		"a margin too large": func(s *Scene, l *Layer) {
			s.Height += measure.Inch
			l.Items[0].Box.Height += PixelsPerInch
		},
	} {
		s, err := NewScene(lapTop(t), Options{Legend: true, ByFabric: true})
		if err != nil {
			t.Fatal(err)
		}
		spoil(s, &s.Layers[len(s.Layers)-1])
		if err := lawLegendPlaces(s); (err == nil) != (what == "nothing") {
			t.Errorf("%s: %v", what, err)
		}
	}
}
