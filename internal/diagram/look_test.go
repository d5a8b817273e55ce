package diagram

import (
	"os"
	"path/filepath"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// shown is a figure with one of everything.
func shown() *Figure {
	in := func(x, y float64) measure.Point {
		return measure.Point{X: measure.NM(x * float64(measure.Inch)), Y: measure.NM(y * float64(measure.Inch))}
	}
	navy, cream := palettes.Colour{R: 0x1b, G: 0x2a, B: 0x49}, palettes.Colour{R: 0xf4, G: 0xea, B: 0xd5}
	f := &Figure{Title: "Everything", Description: "One of each", Max: in(40, 18)}
	area := func(a Area, x float64) {
		a.Outline = []measure.Point{in(x, 4), in(x+6, 4), in(x+8, 10), in(x, 10)}
		f.Marks = append(f.Marks, Mark{Area: &a, Lit: []int{1, 2}})
	}
	area(Area{Fill: navy, Edge: Thin}, 1)
	area(Area{Fill: cream, Edge: Cut}, 11)
	area(Area{Fill: navy, Hatch: true, Edge: Thin}, 21)
	area(Area{Clear: true, Edge: Trim}, 31)
	for i, s := range strokes() {
		x := 1 + 3.8*float64(i)
		f.Marks = append(f.Marks, Mark{Line: &Line{Points: []measure.Point{in(x, 5), in(x+3, 9)}, Stroke: s, End: Ending(i % 4), Start: Ending(i / 3 % 4)}})
	}
	words := func(w Words) { f.Marks = append(f.Marks, Mark{Words: &w}) }
	words(Words{Text: "on navy 3 1/2 in × 4 ⅛", At: in(4, 9), Points: 9, Backing: &navy, Room: 6 * measure.Inch})
	words(Words{Text: "with a rim, bold", At: in(24, 5), Points: 9, Bold: true, Halo: true})
	words(Words{Text: "turned once", At: in(0, 7), Points: 9, Quarters: 1})
	words(Words{Text: "turned thrice", At: in(40, 7), Points: 9, Quarters: 3})
	words(Words{Text: "start", At: in(20, 14), Points: 9, Anchor: Start})
	words(Words{Text: "end", At: in(20, 16), Points: 9, Anchor: End})
	words(Words{Text: "upside down", At: in(30, 15), Points: 9, Quarters: 2})
	f.Marks = append(f.Marks, Mark{Line: &Line{Points: []measure.Point{in(1, 2), in(39, 2)}, Stroke: Dimension, Start: Bar, End: Bar}})
	words(Words{Text: "38 in", At: in(20, 1), Points: 8})
	return f
}

// TestLook leaves pictures in a folder for whoever wants to look at them.
func TestLook(t *testing.T) {
	folder := os.Getenv("EIGHTHTURN_LOOK")
	if folder == "" {
		t.Skip("EIGHTHTURN_LOOK names no folder")
	}
	for name, o := range map[string]Options{"wide": {}, "narrow": {Width: 3 * measure.Inch}} {
		file, err := os.Create(filepath.Join(folder, name+".svg"))
		if err != nil {
			t.Fatal(err)
		}
		if err := SVG(file, shown(), o); err != nil {
			t.Fatal(err)
		}
		if err := file.Close(); err != nil {
			t.Fatal(err)
		}
	}
}
