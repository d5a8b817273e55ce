// Package svgout turns a finished top into an SVG picture: in colour, in the greys of its
// values, or in line to be coloured by hand.
package svgout

import (
	"fmt"
	"io"
	"slices"

	"eighthturn/measure"
	"eighthturn/patchwork"
)

// View is what a picture shows.
type View uint8

const (
	Colour View = iota // fabrics in their colours
	Value              // each fabric in the grey of its lightness, CIE L*
	Line               // outlines and the letters of the roles
)

// Views are the names of the views, in their order.
func Views() []string { return []string{"colour", "value", "line"} }

// Options choose a picture; the zero value is the plain colour view.
type Options struct {
	View      View
	SeamLines bool   // draw seam lines; the line view always does
	Legend    bool   // list the fabrics below the top
	ByFabric  bool   // one path a fabric: smaller and quicker, without titles on patches
	Prefix    string // of all ids; letters, digits, - and _, a letter first
}

// Marker stands near the beginning of every file that this package writes.
const Marker = "<!-- drawn by eighthturn -->"

// PixelsPerInch is how many user units an inch has: those of CSS, so that programs which
// take no notice of the physical size still show it right.
const PixelsPerInch = 96

// Draw writes the picture of a top. Its width and height are the top's own, in inches or
// millimetres; a legend makes it higher. The same top and options give the same bytes.
func Draw(w io.Writer, t *patchwork.Top, o Options) error {
	d := newDocument(w, t, o)
	d.begin()
	switch o.View {
	case Line:
		d.linework()
	default:
		d.cloth()
		if o.SeamLines {
			d.seamLines()
		}
	}
	if o.Legend {
		d.legend()
	}
	return d.end()
}

// picture is what stays the same while one picture is drawn.
type picture struct {
	*patchwork.Top
	Options
	faces  [][]int32 // by fabric
	stroke float64   // width of seam lines, user units
	font   float64   // size of the legend's letters, user units
}

func newPicture(t *patchwork.Top, o Options) picture {
	p := picture{Top: t, Options: o, faces: make([][]int32, len(t.Fabrics))}
	count := make([]int, len(t.Fabrics))
	for i := range t.Faces {
		count[t.Faces[i].Fabric]++
	}
	for f, n := range count {
		p.faces[f] = make([]int32, 0, n)
	}
	for i := range t.Faces {
		f := t.Faces[i].Fabric
		p.faces[f] = append(p.faces[f], int32(i))
	}
	longest := pixels(max(t.Outer.Width(), t.Outer.Height()))
	p.stroke = max(0.5, longest/1400)
	p.font = max(6, pixels(t.Outer.Width())/44)
	return p
}

// pixels is a length in user units.
func pixels(nm measure.NM) float64 { return float64(nm) * PixelsPerInch / float64(measure.Inch) }

// fill is the colour that a fabric is painted with.
func (p *picture) fill(fabric int) string {
	c := p.Fabrics[fabric].Colour
	if p.View == Value {
		c = c.Grey()
	}
	return c.Hex()
}

// shown are the fabrics that the top shows, in the order of the layout.
func (p *picture) shown() []int {
	var list []int
	for f := range p.faces {
		if len(p.faces[f]) > 0 {
			list = append(list, f)
		}
	}
	return list
}

// cloth paints the fabrics so that nothing shows between them. Beneath lies one shape of
// the whole top; on it, along every seam, the colour of the one of its two fabrics that is
// painted first afterwards. A renderer that covers the pixels of a seam in part twice over
// then mixes just the two colours of the seam.
func (d *document) cloth() {
	shown := d.shown()
	if len(shown) == 0 {
		return
	}
	d.beneath(shown)
	for _, f := range slices.Backward(shown) {
		d.layer(fmt.Sprintf("fabric-%d", f+1), d.Fabrics[f].Name, `fill="`+d.fill(f)+`"`)
		if d.ByFabric {
			d.wholeFabric(f)
		} else {
			d.patches(f)
		}
		d.close()
	}
}

// beneath draws what lies under the seams.
func (d *document) beneath(shown []int) {
	d.layer("beneath", "beneath the seams", "")
	under := d.underSeams()
	d.path(d.whole(), `fill="`+d.fill(d.mostOf(shown))+`"`)
	for _, f := range shown {
		if len(under[f]) > 0 {
			d.path(under[f], `fill="`+d.fill(f)+`"`)
		}
	}
	d.close()
}

// mostOf is the fabric with the most faces.
func (d *document) mostOf(shown []int) int {
	best := shown[0]
	for _, f := range shown {
		if len(d.faces[f]) > len(d.faces[best]) {
			best = f
		}
	}
	return best
}

// whole is the outline of everything that is there: the whole top at once, or cell by cell
// where places with nothing in them would be covered.
func (d *document) whole() []byte {
	full := true
	for i := range d.Cells {
		full = full && d.Cells[i].Count > 0
	}
	if full {
		return appendRect(nil, d.Outer)
	}
	var path []byte
	for i := range d.Cells {
		if d.Cells[i].Count == 0 {
			continue
		}
		at := d.Field.Min.Add(patchwork.Point{X: measure.NM(i%d.Columns) * d.SideFinished, Y: measure.NM(i/d.Columns) * d.SideFinished})
		path = appendRect(path, patchwork.Rect{Min: at, Max: at.Add(patchwork.Point{X: d.SideFinished, Y: d.SideFinished})})
	}
	for i := range d.Patches {
		if d.Patches[i].Border >= 0 {
			path = appendOutline(path, d.Patches[i].Outline)
		}
	}
	return path
}

// underSeams is, for each fabric, the four-sided shapes along the seams that it lies
// beneath: from one end of the seam by the middle of one face to the other end and back by
// the middle of the other face.
func (d *document) underSeams() [][]byte {
	middles := make([]patchwork.Point, len(d.Faces))
	for i := range d.Faces {
		middles[i] = middle(d.Faces[i].Outline)
	}
	under := make([][]byte, len(d.Fabrics))
	add := func(seams []patchwork.Seam) {
		for i := range seams {
			s := &seams[i]
			a, b := d.Faces[s.A].Fabric, d.Faces[s.B].Fabric
			if a == b && d.ByFabric {
				continue
			}
			f := max(a, b)
			under[f] = appendCoarse(under[f], s.From, middles[s.B], s.To, middles[s.A])
		}
	}
	add(d.Seams)
	add(d.StripSeams)
	return under
}

// middle is the mean of an outline's corners.
func middle(outline []patchwork.Point) patchwork.Point {
	var sum patchwork.Point
	for _, p := range outline {
		sum = sum.Add(p)
	}
	n := measure.NM(len(outline))
	return patchwork.Point{X: sum.X / n, Y: sum.Y / n}
}

// wholeFabric draws all of a fabric as one path.
func (d *document) wholeFabric(f int) {
	path := make([]byte, 0, 48*len(d.faces[f]))
	for _, i := range d.faces[f] {
		path = appendOutline(path, d.Faces[i].Outline)
	}
	d.path(path, `id="`+d.Prefix+fmt.Sprintf("cloth-%d", f+1)+`"`)
}

// seamLines draws every seam as a thin line.
func (d *document) seamLines() {
	d.layer("seams", "seam lines", fmt.Sprintf(`fill="none" stroke="#000000" stroke-opacity="0.55" stroke-width="%.2f" stroke-linecap="round"`, d.stroke))
	d.path(d.seamPath(d.Seams), `id="`+d.Prefix+`piece-seams"`)
	if len(d.StripSeams) > 0 {
		d.path(d.seamPath(d.StripSeams), fmt.Sprintf(`id="%sstrip-seams" stroke-width="%.2f"`, d.Prefix, d.stroke*0.6))
	}
	d.close()
}

func (d *document) seamPath(seams []patchwork.Seam) []byte {
	path := make([]byte, 0, 32*len(seams))
	for i := range seams {
		path = appendStretch(path, seams[i].From, seams[i].To)
	}
	return path
}
