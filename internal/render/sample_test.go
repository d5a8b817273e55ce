package render

import (
	"fmt"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// The pattern printed here is invented, as are its fabrics.

func rgb(hex string) palettes.Colour {
	c, err := palettes.Parse(hex)
	if err != nil {
		panic(err)
	}
	return c
}

type cloth struct {
	letter, name string
	colour       palettes.Colour
}

func cloths() []cloth {
	return []cloth{
		{"A", "night pond", rgb("#1f3350")}, {"B", "wet slate", rgb("#5b6b7a")}, {"C", "rust", rgb("#b5552b")},
		{"D", "oat", rgb("#e9dfc9")}, {"E", "moss", rgb("#6f7f4a")},
	}
}

func inch(n, over int) measure.NM { return measure.NM(n) * measure.Inch / measure.NM(over) }

// top is a picture of blocks of eight wedges with corners, by fabric.
func top(across, down int, coloured bool) document.Drawing {
	side := 8 * measure.Inch
	d := document.Drawing{Max: measure.Point{X: side * measure.NM(across), Y: side * measure.NM(down)}}
	for _, f := range cloths() {
		l := document.Layer{Name: f.name, Line: 0.4, Ink: rgb("#444444")}
		if coloured {
			l = document.Layer{Name: f.name, Fill: &f.colour}
		}
		d.Layers = append(d.Layers, l)
	}
	for y := range down {
		for x := range across {
			octagon(&d, x, y, side)
		}
	}
	return d
}

// octagon adds one block.
func octagon(d *document.Drawing, x, y int, side measure.NM) {
	const k = 0.29289
	at := func(u, v float64) measure.Point {
		return measure.Point{X: side*measure.NM(x) + measure.NM(u*float64(side)), Y: side*measure.NM(y) + measure.NM(v*float64(side))}
	}
	rim := []measure.Point{at(k, 0), at(1-k, 0), at(1, k), at(1, 1-k), at(1-k, 1), at(k, 1), at(0, 1-k), at(0, k)}
	for i := range rim {
		f := (i + x + y) % 2
		if (x+y)%3 == 0 && f == 1 {
			f = 2
		}
		d.Layers[f].Paths = append(d.Layers[f].Paths, []measure.Point{at(0.5, 0.5), rim[i], rim[(i+1)%8]})
	}
	for i, c := range [][2]float64{{1, 0}, {1, 1}, {0, 1}, {0, 0}} {
		f := 3 + (x+y)%2
		d.Layers[f].Paths = append(d.Layers[f].Paths, []measure.Point{rim[2*i+1], at(c[0], c[1]), rim[(2*i+2)%8]})
	}
}

// strip is a diagram of wedges cut from a strip.
func strip(n int) diagram.Figure {
	f := diagram.Figure{
		Title: fmt.Sprintf("Cutting wedges from a strip, %d of them", n), Description: "A strip 4 1/2 in high, cut into wedges that point up and down by turns.",
		Max: measure.Point{X: inch(22*n+19, 10), Y: inch(9, 2)},
	}
	fill := rgb("#b5552b")
	f.Marks = append(f.Marks, diagram.Mark{Area: &diagram.Area{Outline: []measure.Point{{}, {X: f.Max.X}, f.Max, {Y: f.Max.Y}}, Fill: rgb("#f4efe6"), Edge: diagram.Frame}})
	for i := range n {
		x := inch(22*i, 10)
		w := []measure.Point{{X: x, Y: f.Max.Y}, {X: x + inch(19, 10), Y: 0}, {X: x + inch(22, 10), Y: 0}, {X: x + inch(41, 10), Y: f.Max.Y}}
		if i%2 == 1 {
			for j := range w {
				w[j].Y = f.Max.Y - w[j].Y
			}
		}
		f.Marks = append(f.Marks,
			diagram.Mark{Area: &diagram.Area{Outline: w, Fill: fill, Edge: diagram.Cut}},
			diagram.Mark{Words: &diagram.Words{Text: "C", At: measure.Point{X: x + inch(205, 100), Y: f.Max.Y / 2}, Points: 9, Bold: true, Backing: &fill, Room: inch(2, 1)}})
	}
	f.Marks = append(f.Marks,
		diagram.Mark{Line: &diagram.Line{Points: []measure.Point{{X: 0, Y: -inch(3, 2)}, {X: f.Max.X, Y: -inch(3, 2)}}, Stroke: diagram.Dimension, Start: diagram.Bar, End: diagram.Bar}},
		diagram.Mark{Words: &diagram.Words{Text: "40 in", At: measure.Point{X: f.Max.X / 2, Y: -inch(5, 2)}, Points: 8}})
	return f
}

func cells(list ...string) []document.Cell {
	var row []document.Cell
	for _, s := range list {
		row = append(row, document.Cell{Text: document.Plain(s)})
	}
	return row
}

func needs() document.Table {
	t := document.Table{Caption: document.Plain("What to buy"), Named: true, Columns: []document.Column{{Title: "Fabric"}, {Title: "Used for"}, {Title: "Yards", Kind: document.Counts}, {Title: "Metres", Kind: document.Counts}}}
	for i, c := range cloths() {
		row := cells(c.name, "blocks and border", fmt.Sprintf("%d 3/8 yd", i+1), fmt.Sprintf("%d.25 m", i+1))
		row[0].Swatches = []document.Swatch{{Letter: c.letter, Colour: c.colour}}
		t.Rows = append(t.Rows, document.Row{Cells: row})
	}
	t.Rows = append(t.Rows, document.Row{Total: true, Cells: cells("All fabrics", "", "16 7/8 yd", "15.5 m")})
	return t
}

func cuts() document.Table {
	t := document.Table{Columns: []document.Column{{Title: "Piece"}, {Title: "First cut"}, {Title: "Number", Kind: document.Counts}, {Title: "Cut height", Kind: document.Counts}, {Title: "Cut base", Kind: document.Counts}}}
	for i, c := range cloths() {
		t.Rows = append(t.Rows, document.Row{Cells: cells("From " + c.name)})
		for j := range 5 {
			row := cells(fmt.Sprintf("wedge %d", j+1), "strip across the width of the fabric", fmt.Sprint(3*i+j), fmt.Sprintf("%d 1/2 in", j+2), fmt.Sprintf("%d 5/16 in", j+1))
			row[0].Swatches = []document.Swatch{{Letter: c.letter, Colour: c.colour}}
			t.Rows = append(t.Rows, document.Row{Cells: row})
		}
	}
	return t
}

func steps() document.List {
	l := document.List{Marker: document.Numbered}
	for i, s := range []string{
		"Sew two wedges together along their long sides, right sides together, with a 1/4 in seam. Press the seam towards the darker fabric. Make 4 pairs.",
		"Join the pairs into two halves. Each half measures 4 1/2 x 8 1/2 in unfinished.",
		"Join the halves. Match the seams at the middle and pin. Press the last seam open.",
		"Sew a corner to each of the four short sides. The block measures 8 1/2 x 8 1/2 in unfinished and finishes 8 in.",
	} {
		item := document.Item{Text: document.Plain(s)}
		if i == 1 {
			item.Blocks = []document.Block{document.Figure{Of: strip(4), Width: inch(3, 1)}}
		}
		l.Items = append(l.Items, item)
	}
	return l
}

func shown(d document.Drawing, caption, alternative string) document.Picture {
	return document.Picture{Of: d, Caption: document.Plain(caption), Alternative: alternative}
}

func labelled() document.Drawing {
	d := top(4, 4, true)
	for i := range 4 {
		d.Marks = append(d.Marks, diagram.Mark{Words: &diagram.Words{Text: fmt.Sprintf("Row %d", i+1), At: measure.Point{X: -inch(2, 1), Y: inch(8*i+4, 1)}, Anchor: diagram.End, Points: 9}})
	}
	return d
}

func beginning() []document.Block {
	return []document.Block{
		document.Paragraph{Text: document.Text{{Text: "All seams are 1/4 in and included in every "}, {Text: "cut", Bold: true}, {Text: " size. Fabric is counted as 40 in of usable width. A "}, {Text: "finished", Bold: true}, {Text: " size is what is seen once everything is sewn; a size in sixteenths, such as 3 5/16 in, lies halfway between two lines of a ruler marked in eighths. Read everything once before you cut: the order of cutting matters, since the longest strips come first."}}},
		document.Box{Caution: true, Blocks: []document.Block{document.List{Items: []document.Item{{Text: document.Plain("Close the guard of the rotary cutter after every cut, and cut away from yourself.")}, {Text: document.Plain("Irons and steam burn. Rest the iron on its heel and unplug it when you leave the room.")}}}}},
		document.Heading{Level: 1, Text: "Words used"},
		document.Table{Columns: []document.Column{{Title: "Short"}, {Title: "In full"}}, Named: true, Rows: []document.Row{{Cells: cells("WOF", "width of fabric, from selvage to selvage")}, {Cells: cells("RST", "right sides together")}}},
		document.Box{Blocks: []document.Block{document.Paragraph{Text: document.Plain("Wash and press your fabrics first if you mean to wash the quilt.")}}},
	}
}

// sample is a pattern with a block of every kind.
func sample() document.Document {
	return document.Document{
		Title: "Still Pond", Maker: "Designed by Maren Holt", Author: "Maren Holt", Subject: "A lap quilt of eight-wedge blocks", Keywords: "quilt, wedges",
		Copyright: "© 2026 Maren Holt. For your own sewing.",
		Cover: &document.Cover{Subtitle: "A lap quilt of eight wedges", Picture: &document.Picture{Of: top(6, 7, true), Alternative: "The quilt top: six blocks across and seven down."},
			Lines: []document.Text{document.Bold("Finished size 48 x 56 in"), document.Plain("Blocks finish 8 in, 42 of them. For confident beginners.")}},
		Sections: []document.Section{
			{Title: "Before you begin", Blocks: beginning()},
			{Title: "Fabric", Blocks: []document.Block{needs(), document.List{Marker: document.Tick, Items: []document.Item{
				{Text: document.Plain("rotary cutter, mat and a ruler with a 45 degree line")}, {Text: document.Plain("backing 56 x 64 in and batting of the same size")}}}}},
			{Title: "Cutting", NewPage: true, Blocks: []document.Block{document.Paragraph{Text: document.Plain("Cut in this order, the longest strips first.")}, cuts(), document.Figure{Of: strip(17)}}},
			{Title: "Blocks", NewPage: true, Blocks: []document.Block{
				document.Heading{Level: 1, Text: "The pond block"}, steps(),
				document.Gallery{Across: 3, Pictures: []document.Illustration{
					shown(top(1, 1, true), "Block one", "A block of eight wedges."), shown(top(2, 2, true), "Four blocks together", "Four blocks."),
					shown(top(1, 1, false), "Lines only", "A block in lines.")}},
				document.Heading{Level: 2, Text: "Layout"}, document.Together{Blocks: []document.Block{shown(labelled(), "Lay the blocks out in rows.", "Four rows of four blocks.")}}}},
			{Title: "Colour it yourself", Blocks: []document.Block{document.PageBreak{}, shown(top(6, 7, false), "The top in lines", "The quilt top in lines.")}},
		},
	}
}
