package svgout

import (
	"fmt"
	"io"

	svg "github.com/ajstarks/svgo/float"

	"eighthturn/internal/credits"
	"eighthturn/palettes"
)

// Sheet is several scenes and lines of words on one ground. Places are pixels from its upper left corner.
type Sheet struct {
	Width, Height int
	PerInch       float64 // pixels
	Ground, Ink   palettes.Colour
	Title         string
	Description   string // what it shows, for someone who cannot see it
	Credits       credits.Credits
	Line          float64 // width of the line round a scene
	LineOpacity   float64
	Pictures      []Placed
	Words         []Outlined
}

// Placed is a scene and its place; its ids have a prefix that no other scene of the sheet has.
type Placed struct {
	Scene *Scene
	At    Box
	Rim   Box // the line round it
}

// Outlined is a line of words as outlines.
type Outlined struct{ Text, Path string }

// SVG writes the sheet as an SVG picture; the error is the first of w. The same sheet gives the same bytes.
func (s *Sheet) SVG(w io.Writer) error {
	out := &sink{to: w, bytes: make([]byte, 0, sinkBytes+sinkBytes/8)}
	canvas := svg.New(out)
	canvas.Decimals = 4
	canvas.Startunit(float64(s.Width)/s.PerInch, float64(s.Height)/s.PerInch, "in", fmt.Sprintf(`viewBox="0 0 %d %d"`, s.Width, s.Height),
		`xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape"`)
	fmt.Fprintln(out, Marker)
	canvas.Title(s.Title)
	canvas.Desc(s.Description)
	if s.Credits.Said() {
		fmt.Fprintln(out, "<metadata>"+s.Credits.RDF()+"</metadata>")
	}
	canvas.Rect(0, 0, float64(s.Width), float64(s.Height), `fill="`+s.Ground.Hex()+`"`)
	for i := range s.Pictures {
		s.picture(canvas, out, &s.Pictures[i])
	}
	canvas.Group(`fill="` + s.Ink.Hex() + `"`)
	for _, words := range s.Words {
		fmt.Fprintf(out, `<path role="img" aria-label="%s" d="%s"/>`+"\n", escaped(words.Text), words.Path)
	}
	canvas.Gend()
	canvas.End()
	out.flush()
	return out.err
}

// picture draws a scene into its place, and a line round it.
func (s *Sheet) picture(canvas *svg.SVG, out *sink, p *Placed) {
	d := &document{Scene: p.Scene, canvas: canvas, out: out}
	fmt.Fprintf(out, `<svg x="%s" y="%s" width="%s" height="%s" viewBox="0 0 %s %s" preserveAspectRatio="none">`+"\n",
		rounded(p.At.X), rounded(p.At.Y), rounded(p.At.Width), rounded(p.At.Height), appendNumber(nil, p.Scene.Width), appendNumber(nil, p.Scene.Height))
	d.prints()
	d.palette()
	for i := range p.Scene.Layers {
		d.layer(&p.Scene.Layers[i])
	}
	fmt.Fprintln(out, "</svg>")
	canvas.Rect(p.Rim.X, p.Rim.Y, p.Rim.Width, p.Rim.Height, `fill="none"`, `stroke="`+s.Ink.Hex()+`"`,
		`stroke-opacity="`+fmt.Sprint(s.LineOpacity)+`"`, `stroke-width="`+rounded(s.Line)+`"`)
}
