package picture

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/render/pdf"
	"eighthturn/svgout"
)

// PDF writes a canvas as a PDF of one page, its pictures as lines and its words as text.
func (c *Canvas) PDF(w io.Writer) error {
	scale := pointsPerInch / c.PerInch // points a pixel
	width, height := float64(c.Width)*scale, float64(c.Height)*scale
	if e := beyondPage(width, height, &Frame{}); e != nil {
		e.Units = c.Panels[0].Scene.Top.Units
		return e
	}
	file, err := pdf.New(pdf.Properties{Title: c.title(), Author: c.Credits.Author, Copyright: c.Credits.Copyright, Language: "en-US", Marker: marker})
	if err != nil {
		return err
	}
	whole := &pdf.Element{Kind: "Document"}
	file.Whole(whole)
	file.Page(width, height)
	file.Within(nil)
	file.Colour(c.Ground, "rg")
	file.Rectangle(measure.Vec{}, width, height)
	file.Operator("f")
	letters := diagram.NewLettering()
	for i := range c.Panels {
		if err := c.pdfPanel(file, whole, i, scale, letters); err != nil {
			return err
		}
	}
	file.Layer("")
	for i := range c.Words {
		t := &c.Words[i]
		file.Within(whole.Add("P"))
		file.Set(pdf.Face{Size: t.Size * scale, Bold: t.Bold, Colour: c.Ink})
		file.Text(t.Text.Text, measure.Vec{X: t.X * scale, Y: t.Y * scale})
	}
	return file.End(w)
}

// pdfPanel draws one picture on the page, and the line round it.
func (c *Canvas) pdfPanel(file *pdf.File, whole *pdf.Element, n int, scale float64, letters *diagram.Lettering) error {
	panel := &c.Panels[n]
	s := sidesOf(panel.Scene)
	p := &page{File: file, scene: panel.Scene, origin: xy{float64(panel.At.Min.X) * scale, float64(panel.At.Min.Y) * scale},
		scale: float64(panel.At.Dx()) * scale / s.across.whole, sides: s, letters: letters, prefix: fmt.Sprintf(" of %d", n+1), prints: map[int]*laidPrint{}}
	figure := whole.Add("Figure")
	figure.Alternative = panel.Scene.Description
	file.Frame(figure, p.at(xy{}), float64(panel.At.Dx())*scale, float64(panel.At.Dy())*scale)
	if err := p.layers(figure); err != nil {
		return err
	}
	file.Layer("")
	file.Within(nil)
	file.Opacity(rimOpacity)
	file.Operator("q")
	file.Pen(diagram.Pen{Width: c.hairline() * scale, Colour: c.Ink}, false, false)
	b := c.rim(panel.At)
	file.Rectangle(measure.Vec{X: b.X * scale, Y: b.Y * scale}, b.Width*scale, b.Height*scale)
	file.Operator("S Q")
	file.Opacity(1)
	return nil
}

// title is what the file is called.
func (c *Canvas) title() string {
	if c.Credits.Title != "" {
		return c.Credits.Title
	}
	return c.Says
}

// SVG writes a canvas as an SVG picture, its words as outlines. The ids of its scenes must have prefixes of their own.
func (c *Canvas) SVG(w io.Writer) error {
	sheet := &svgout.Sheet{Width: c.Width, Height: c.Height, PerInch: c.PerInch, Ground: c.Ground, Ink: c.Ink,
		Title: c.title(), Description: c.Description, Credits: c.Credits, Line: c.hairline(), LineOpacity: rimOpacity}
	for i := range c.Panels {
		p := &c.Panels[i]
		sheet.Pictures = append(sheet.Pictures, svgout.Placed{Scene: p.Scene, Rim: c.rim(p.At),
			At: svgout.Box{X: float64(p.At.Min.X), Y: float64(p.At.Min.Y), Width: float64(p.At.Dx()), Height: float64(p.At.Dy())}})
	}
	g := newGlyphs()
	for i := range c.Words {
		sheet.Words = append(sheet.Words, svgout.Outlined{Text: c.Words[i].Text.Text, Path: pathData(g.text(&c.Words[i].Text, false))})
	}
	return sheet.SVG(w)
}

// pathData is outlines as the data of an SVG path, to a hundredth of a pixel.
func pathData(outlines [][]xy) string {
	var b strings.Builder
	number := func(v float64) string { return strconv.FormatFloat(v, 'f', 2, 64) }
	for _, outline := range outlines {
		for i, q := range outline {
			b.WriteString(map[bool]string{true: "M", false: "L"}[i == 0] + number(q.x) + " " + number(q.y))
		}
		b.WriteString("Z")
	}
	return b.String()
}
