package render

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"strconv"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
)

// screenWidth is how wide an illustration is drawn for a screen where no width is asked for.
const screenWidth = 13 * measure.Inch / 2

// The greatest height of an illustration: within a page where no width is asked for; and as a file, which programs put on paper of their
// own, with so much room on a cover between the title and what is said beneath, below a title where no width is asked for, and else above a caption.
const (
	tallest          = 8 * measure.Inch
	tallestOnCover   = 11 * measure.Inch / 2
	tallestTitled    = 13 * measure.Inch / 2
	tallestCaptioned = 15 * measure.Inch / 2
)

// svg writes an illustration as a picture of its own, or to stand within a page.
func (s *shape) svg(inline bool) ([]byte, error) {
	o := diagram.Options{NoLegend: !s.legend, Width: s.width, Inline: inline, AnyFace: !inline}
	switch {
	case s.width <= 0 && inline:
		o.Width, o.Height = screenWidth, tallest
	case s.cover:
		o.Width, o.Height = screenWidth, tallestOnCover
	case s.width <= 0:
		o.Width, o.Height = screenWidth, tallestTitled
	case !inline:
		o.Height = tallestCaptioned
	}
	placed := diagram.Place(&s.figure, o)
	var file bytes.Buffer
	if err := placed.SVG(&file, o); err != nil {
		return nil, fmt.Errorf("the illustration %s cannot be written: %w", quoted(s.alternative), err)
	}
	return spliced(file.Bytes(), s.layerSVG(placed)), nil
}

// spliced puts the layers of a picture beneath the marks: behind the title, the description and the ground that open every figure.
func spliced(file, layers []byte) []byte {
	if len(layers) == 0 {
		return file
	}
	for _, end := range []string{diagram.Ground, "</desc>\n", "</title>\n"} {
		if i := bytes.Index(file, []byte(end)); i >= 0 {
			at := i + len(end)
			return append(append(bytes.Clone(file[:at]), layers...), file[at:]...)
		}
	}
	return file
}

// layerSVG are the outlines of a picture within a frame that cuts them off.
func (s *shape) layerSVG(placed *diagram.Sheet) []byte {
	if len(s.layers) == 0 && s.ground == nil {
		return nil
	}
	low, high := placed.At(s.figure.Min), placed.At(s.figure.Max)
	out := []byte(`<svg x="`)
	for i, v := range []float64{low.X, low.Y, high.X - low.X, high.Y - low.Y} {
		out = append(coordinate(out, v), []string{`" y="`, `" width="`, `" height="`, `" viewBox="`}[i]...)
	}
	for i, v := range []float64{low.X, low.Y, high.X - low.X, high.Y - low.Y} {
		out = append(coordinate(out, v), []string{" ", " ", " ", `">` + "\n"}[i]...)
	}
	if s.ground != nil {
		out = append(out, `<image`...)
		for i, v := range []float64{low.X, low.Y, high.X - low.X, high.Y - low.Y} {
			out = append(coordinate(append(out, []string{` x="`, ` y="`, ` width="`, ` height="`}[i]...), v), '"')
		}
		out = append(out, ` preserveAspectRatio="none" href="data:image/png;base64,`...)
		out = append(base64.StdEncoding.AppendEncode(out, s.ground), "\"/>\n"...)
	}
	for i := range s.layers {
		out = layerSVG(out, &s.layers[i], placed)
	}
	return append(out, "</svg>\n"...)
}

// layerSVG appends a layer as one path.
func layerSVG(out []byte, l *document.Layer, placed *diagram.Sheet) []byte {
	if operator(l) == "" {
		return out
	}
	fill, line := "none", ""
	if l.Fill != nil && !l.Open {
		fill = l.Fill.Hex()
	}
	if l.Line > 0 {
		line = ` stroke="` + l.Ink.Hex() + `" stroke-linejoin="round" stroke-width="` + string(coordinate(nil, l.Line)) + `"`
	}
	out = append(out, `<path fill="`+fill+`"`+line+` d="`...)
	for _, path := range l.Paths {
		next := byte('M')
		for _, p := range path {
			at := placed.At(p)
			out = coordinate(append(out, next), at.X)
			out = coordinate(append(out, ' '), at.Y)
			next = 'L'
		}
		if !l.Open && len(path) > 0 {
			out = append(out, 'Z')
		}
	}
	return append(out, "\"/>\n"...)
}

// coordinate appends points with three decimals at the most.
func coordinate(out []byte, v float64) []byte {
	n := len(out)
	out = strconv.AppendFloat(out, v, 'f', 3, 64)
	out = bytes.TrimSuffix(bytes.TrimRight(out, "0"), []byte("."))
	if string(out[n:]) == "-0" || len(out) == n {
		out = append(out[:n], '0')
	}
	return out
}
