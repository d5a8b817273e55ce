package svgout

import (
	"encoding/base64"
	"fmt"
	"io"

	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// Marks choose a picture of a top in colours other than its own, with some seams marked.
// The zero value is the plain top.
type Marks struct {
	Options                                  // View and SeamLines are not read
	Colours func(fabric int) palettes.Colour // nil for each fabric's own
	Values  func(fabric int) float64         // CIE L* that the legend names; nil for that of the colours
	Shows   string                           // what the picture shows, to go on from "drawn "; "" for "in colour"
	Seams   []Mark
}

// Mark is a seam to be marked.
type Mark struct {
	Seam  quilt.Seam
	Heavy bool // a broad line, and not a thin dashed one
}

// Colours and measures of marks. Heavy and light ones differ by width and dashes too, so
// that they are told apart without colour; a white edge parts them from any cloth.
const (
	markColour = "#c2185b"
	markEdge   = "#ffffff"
	heavyWidth = 4.5 // in strokes of seam lines
	lightWidth = 2
	markMargin = 2.5
)

// DrawMarked writes a picture with marked seams, at the size that Draw gives it. The same
// top and marks give the same bytes.
func DrawMarked(w io.Writer, t *quilt.Top, m Marks) error {
	m.View, m.SeamLines = Colour, false
	if err := m.check(); err != nil {
		return err
	}
	d := newDocumentWith(w, inColours(t, m.Colours), m.Options, m.Values)
	if m.Shows == "" {
		m.Shows = "in colour"
	}
	d.beginWith(d.describeAs(m.Shows))
	d.cloth()
	d.marks(m.Seams, false)
	d.marks(m.Seams, true)
	if m.Legend {
		d.drawLegend()
	}
	return d.end()
}

// inColours is the top with other colours; it shares everything else.
func inColours(t *quilt.Top, colours func(int) palettes.Colour) *quilt.Top {
	if colours == nil {
		return t
	}
	other := *t
	other.Fabrics = append([]quilt.Fabric(nil), t.Fabrics...)
	for f := range other.Fabrics {
		other.Fabrics[f].Colour = colours(f)
	}
	return &other
}

// marks draws the heavy marks or the light ones.
func (d *document) marks(list []Mark, heavy bool) {
	var some []Mark
	for _, m := range list {
		if m.Heavy == heavy {
			some = append(some, m)
		}
	}
	if len(some) == 0 {
		return
	}
	id, label, width, dashes := "marked-lightly", "seams marked lightly", lightWidth*d.stroke, fmt.Sprintf(` stroke-dasharray="%s"`, rounded(5*d.stroke))
	if heavy {
		id, label, width, dashes = "marked", "seams marked", heavyWidth*d.stroke, ""
	}
	d.layer(id, label, `fill="none" stroke-linecap="round"`)
	part := func(b []byte, i int) []byte { return appendStretch(b, some[i].Seam.From, some[i].Seam.To) }
	d.path(fmt.Sprintf(`stroke="%s" stroke-width="%s"`, markEdge, rounded(width+markMargin*d.stroke)), len(some), part)
	d.path(fmt.Sprintf(`stroke="%s" stroke-width="%s"%s`, markColour, rounded(width), dashes), len(some), part)
	d.close()
}

// DrawPixels writes an SVG picture that holds a PNG picture of the whole top, at the size
// that Draw gives it. Shows says what it shows, to go on from "drawn ".
func DrawPixels(w io.Writer, t *quilt.Top, png []byte, shows string) error {
	d := newDocument(w, t, Options{})
	d.beginWith(d.describeAs(shows))
	fmt.Fprintf(d.out, `<image x="0" y="0" width="%s" height="%s" preserveAspectRatio="none" style="image-rendering:pixelated" xlink:href="data:image/png;base64,`,
		appendNumber(nil, t.Outer.Width()), appendNumber(nil, t.Outer.Height()))
	encoder := base64.NewEncoder(base64.StdEncoding, d.out)
	_, _ = encoder.Write(png) // the sink keeps the error
	_ = encoder.Close()
	fmt.Fprintln(d.out, `"/>`)
	return d.end()
}
