package diagram

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"path/filepath"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/golden"
	"eighthturn/palettes"
)

func pt(x, y float64) measure.Point {
	return measure.Point{X: measure.NM(x * float64(measure.Inch)), Y: measure.NM(y * float64(measure.Inch))}
}

func boxed(x, y, w, h float64) []measure.Point {
	return []measure.Point{pt(x, y), pt(x+w, y), pt(x+w, y+h), pt(x, y+h)}
}

func hue(r, g, b uint8) palettes.Colour { return palettes.Colour{R: r, G: g, B: b} }

func checked() *Print {
	picture := image.NewRGBA(image.Rect(0, 0, 2, 2))
	for i := range 4 {
		picture.Set(i%2, i/2, color.RGBA{R: uint8(80 * i), G: 90, B: 160, A: 255})
	}
	return NewPrint(picture, measure.Inch, measure.Inch/2, 20)
}

// linesOfAll are lines of every style, straight and bent, with every end.
func linesOfAll() *Figure {
	f := &Figure{Title: "Lines", Description: "Lines of every style.", Max: pt(12, 8)}
	for i := range Gauge + 2 {
		y := float64(i) / 2
		f.Marks = append(f.Marks, Mark{Lit: []int{int(i), 7}, Line: &Line{Points: []measure.Point{pt(0, y), pt(5, y)}, Stroke: i, Start: Ending(i % 4), End: Ending((i / 4) % 4)}})
	}
	for i, stroke := range []Stroke{Pressing, Thin, Sew} {
		x := 6 + 2*float64(i)
		f.Marks = append(f.Marks, Mark{Line: &Line{Points: []measure.Point{pt(x, 1), pt(x+1, 0), pt(x+1, 0), pt(x+1.5, 2)}, Stroke: stroke, Start: Dot, End: Arrow}},
			Mark{Line: &Line{Points: []measure.Point{pt(x, 3), pt(x+0.1, 3)}, Stroke: stroke, Start: Arrow, End: Arrow}},
			Mark{Line: &Line{Points: []measure.Point{pt(x, 4)}, Stroke: stroke, Start: Arrow, End: Bar}}, Mark{Line: &Line{Stroke: stroke}})
	}
	return f
}

// areasOfAll are areas filled in every way.
func areasOfAll() *Figure {
	f := &Figure{Title: "Areas", Max: pt(10, 6)}
	print := checked()
	for i, a := range []Area{
		{Fill: hue(230, 220, 200), Edge: Thin}, {Fill: hue(30, 40, 60), Edge: Thin}, {Fill: hue(30, 40, 60), Edge: Thin, Clear: true}, {Fill: hue(200, 60, 30)}, {Fill: hue(200, 60, 30), Edge: Trim},
		{Fill: hue(200, 60, 30), Hatch: true, Edge: Thin}, {Fill: hue(10, 60, 30), Hatch: true}, {Fill: hue(10, 60, 30), Hatch: true, Clear: true, Edge: Cut},
		{Fill: hue(90, 90, 90), Print: print, Repeat: pt(0.25, 0.3)}, {Fill: hue(90, 90, 90), Print: print, Repeat: pt(2.25, 3.3)}, {Fill: hue(90, 90, 90), Print: print, Repeat: pt(0.5, 0.3), Turn: 30, Edge: Thin}, {Fill: hue(9, 90, 90), Print: print},
	} {
		x, y := 2.4*float64(i%4), 2*float64(i/4)
		a.Outline = []measure.Point{pt(x, y), pt(x+2, y), pt(x+1.5, y+1.5), pt(x+1, y+0.5), pt(x, y+1.5)}
		f.Marks = append(f.Marks, Mark{Area: &a, Lit: []int{i}})
	}
	f.Marks = append(f.Marks, Mark{Area: &Area{Hatch: true}}, Mark{Area: &Area{Outline: boxed(0, 0, 1, 1)[:2], Hatch: true, Edge: Thin}})
	return f
}

// wordsOfAll are words at every place, turned and with whatever lies beneath.
func wordsOfAll() *Figure {
	dark, pale := hue(30, 40, 60), hue(240, 230, 200)
	f := &Figure{Title: "Words < & >", Description: "Words\nin \x01lines.", Min: pt(-1, -1), Max: pt(11, 9), NoLegend: true}
	for i := range 12 {
		w := &Words{Text: fmt.Sprint("words ", i), At: pt(float64(i%4)*3, float64(i/4)*2), Points: 6 + float64(i), Anchor: Anchor(i % 3), Quarters: i - 4, Bold: i%2 == 0, Halo: i%5 == 0, Colour: hue(uint8(20*i), 0, 90)}
		if i%4 == 3 {
			w.Plate, w.Across = i%3 == 0, measure.NM(i)*measure.Inch/40
		}
		if i%3 == 1 {
			w.Backing, w.Room = []*palettes.Colour{&dark, &pale}[i%2], measure.NM(i)*measure.Inch/8
		}
		f.Marks = append(f.Marks, Mark{Words: w, Lit: []int{i}})
	}
	for i := range 8 { // left out where they have no room
		f.Marks = append(f.Marks, Mark{Words: &Words{Text: "if there is room", At: pt(float64(i), 8), Points: 9, Optional: true, Plate: i%2 == 1, Across: measure.NM(i) * measure.Inch / 12, Room: measure.NM(i/4) * 2 * measure.Inch}})
	}
	f.Marks = append(f.Marks, Mark{Words: &Words{Text: " \t"}}, Mark{Words: &Words{Text: "no size"}})
	return f
}

// stepsOfAll is a figure of panels.
func stepsOfAll(n, across int) *Figure {
	f := &Figure{Title: "Steps", Description: "Steps beside each other.", Across: across}
	for i := range n {
		p := Panel{Caption: strings.Repeat("Sew it ", 1+3*(i%3)), Note: strings.Repeat("Press. ", i%2*5), First: len(f.Marks), Count: 2, Max: pt(4, float64(2+3*(i%3)))}
		f.Marks = append(f.Marks, Mark{Area: &Area{Outline: boxed(0, 0, 4, float64(2+3*(i%3))), Fill: hue(uint8(40*i), 90, 90), Edge: Thin}},
			Mark{Line: &Line{Points: []measure.Point{pt(1, 1), pt(3, 1)}, Stroke: Sew, End: Ending(i % 4)}})
		f.Panels = append(f.Panels, p)
	}
	return f
}

// rowsText are the rows of panels in words.
func rowsText(f *Figure, o Options) string {
	var b strings.Builder
	for _, r := range Rows(f, o) {
		fmt.Fprintf(&b, "%d marks, %d keyed, %d across:", len(r.Marks), len(r.keyed()), r.Across)
		for _, p := range r.Panels {
			fmt.Fprintf(&b, " %d+%d", p.First, p.Count)
		}
		b.WriteByte('\n')
	}
	return b.String()
}

// TestSpecimens: figures with everything in them, as somebody has looked at them.
func TestSpecimens(t *testing.T) {
	inch := measure.Inch
	for name, c := range map[string]struct {
		f *Figure
		o Options
	}{
		"lines": {linesOfAll(), Options{}}, "lines-low": {linesOfAll(), Options{Width: 3 * inch, Height: 2 * inch, Units: measure.Centimetres}}, "areas": {areasOfAll(), Options{Inline: true}},
		"words": {wordsOfAll(), Options{}}, "words-small": {wordsOfAll(), Options{Width: 2 * inch, Inline: true}}, "words-true": {func() *Figure { f := wordsOfAll(); f.TrueSize = true; return f }(), Options{Inline: true, Width: inch}},
		"steps": {stepsOfAll(5, 0), Options{}}, "steps-one": {stepsOfAll(1, 0), Options{Inline: true}}, "steps-low": {stepsOfAll(5, 2), Options{Width: 4 * inch, Height: 4 * inch, NoLegend: true, Inline: true}}, "steps-high": {stepsOfAll(3, 0), Options{Height: 5 * inch, Inline: true}},
		"key-narrow": {linesOfAll(), Options{Width: inch, NoLegend: false}}, "large": {&Figure{Title: "Large", Max: pt(3, 1), Marks: []Mark{{Words: &Words{Text: "½ 赤\xff é", At: pt(1, 1), Points: 500}}}}, Options{}}, "point": {&Figure{Title: "Point", Marks: []Mark{{Line: &Line{Points: []measure.Point{{}, {}}, Stroke: Cut, End: Arrow}}}}, Options{}},
	} {
		var out bytes.Buffer
		if err := SVG(&out, c.f, c.o); err != nil {
			t.Fatal(err)
		}
		c.o.AnyFace = !c.o.Inline
		s := Place(c.f, c.o)
		fmt.Fprintf(&out, "<!-- %.3f by %.3f, %.3f of words, scale %.6g, from %.3f %.3f -->\n", s.Width, s.Height, s.Words, s.Scale/TrueScale, s.Origin.X, s.Origin.Y)
		if len(c.f.Panels) > 0 {
			fmt.Fprintf(&out, "<!-- %s-->\n", rowsText(c.f, c.o))
		}
		golden.Text(t, filepath.Join("testdata", "specimen", name+".svg"), out.Bytes())
	}
}
