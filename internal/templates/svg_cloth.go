package templates

import (
	"encoding/base64"
	"fmt"
	"strconv"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
)

// ClothNote says what to do with the layer of templates that show their cloth.
const ClothNote = "The layer fabric is a pale picture of the print: hide it before cutting."

// cloth draws the cloth that a piece is cut from, as a picture cut off at the outline: no shape is filled with it, since a machine would cut
// out its edge.
func (s *svgSheet) cloth(p laidPiece, a *diagram.Area) {
	vec := func(q measure.Point) measure.Vec { return measure.Vec{X: float64(q.X), Y: float64(q.Y)} }
	c := diagram.Cloth{Print: a.Print, At: vec(p.point(a.Repeat)), Turn: a.Turn, Size: measure.Vec{X: float64(a.Print.Across), Y: float64(a.Print.Down)}}
	var outline []measure.Vec
	for _, q := range p.points(a.Outline) {
		outline = append(outline, vec(q))
	}
	fmt.Fprint(s.out, "<defs>\n<clipPath id=\"outline\">\n")
	s.path(p.points(a.Outline), true)
	fmt.Fprintf(s.out, `</clipPath>`+"\n"+`<image id="repeat" x="%s" y="%s" width="%s" height="%s" preserveAspectRatio="none" xlink:href="data:image/png;base64,%s"/>`+"\n</defs>\n",
		userUnit(-a.Print.Margin.X), userUnit(-a.Print.Margin.Y), userUnit(a.Print.Across+2*a.Print.Margin.X), userUnit(a.Print.Down+2*a.Print.Margin.Y), base64.StdEncoding.EncodeToString(a.Print.File))
	s.canvas.Group(`id="fabric"`, layerName("fabric"), `clip-path="url(#outline)"`)
	at := p.point(a.Repeat)
	s.canvas.Gtransform("translate(" + userUnit(at.X) + " " + userUnit(at.Y) + ") rotate(" + strconv.FormatFloat(a.Turn, 'f', 6, 64) + ")")
	for _, r := range c.Repeats(outline) {
		fmt.Fprintf(s.out, `<use xlink:href="#repeat" x="%s" y="%s"/>`+"\n", userUnit(measure.NM(r.X)), userUnit(measure.NM(r.Y)))
	}
	s.canvas.Gend()
	s.canvas.Gend()
}
