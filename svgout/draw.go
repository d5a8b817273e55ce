// Package svgout turns a finished top into an SVG picture: in colour, in the greys of its
// values, or in line to be coloured by hand.
package svgout

import (
	"fmt"
	"io"
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
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
	Legend    bool   // list the fabrics, below the top or beside one that is much higher than wide
	Prints    bool   // fabrics that have a photo are painted with it; in the colour view alone
	ByFabric  bool   // one path a fabric: smaller and quicker, without titles on patches
	Prefix    string // of all ids; letters, digits, - and _ of ASCII, a letter first
}

// Marker stands near the beginning of every file that this package writes.
const Marker = "<!-- drawn by eighthturn -->"

// PixelsPerInch is how many user units an inch has: those of CSS, so that programs which
// take no notice of the physical size still show it right.
const PixelsPerInch = 96

// Draw writes the picture of a top. Its width and height are the top's own, in inches or
// millimetres; a legend adds to one of them. The same top and options give the same bytes.
// Options that name no view or no ids are refused before anything is written; otherwise
// the first error of w is returned.
func Draw(w io.Writer, t *quilt.Top, o Options) error {
	if err := o.check(); err != nil {
		return err
	}
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
		d.drawLegend()
	}
	return d.end()
}

func (o *Options) check() error {
	if int(o.View) >= len(Views()) {
		return fmt.Errorf("view number %d, expected 0 to %d", o.View, len(Views())-1)
	}
	for i, r := range o.Prefix {
		letter := 'a' <= r && r <= 'z' || 'A' <= r && r <= 'Z'
		if !letter && (i == 0 || !strings.ContainsRune("0123456789-_", r)) {
			return fmt.Errorf("the prefix %q cannot begin an id, expected a letter, then letters, digits, - and _", o.Prefix)
		}
	}
	return nil
}

// picture is what stays the same while one picture is drawn. Its lengths are user units.
type picture struct {
	*quilt.Top
	Options
	faces  [][]int32 // by fabric
	stroke float64   // width of seam lines
	legend legend
	value  func(fabric int) float64 // CIE L* that the legend names
}

func newPicture(t *quilt.Top, o Options, values func(int) float64) picture {
	p := picture{Top: t, Options: o, value: values}
	if values == nil {
		p.value = func(f int) float64 { return t.Fabrics[f].Colour.Lightness() }
	}
	p.faces = sorted(len(t.Fabrics), len(t.Faces), func(i int) int { return t.Faces[i].Fabric })
	longest, side := pixels(max(t.Outer.Width(), t.Outer.Height())), pixels(t.SideFinished)
	p.stroke = min(longest/1000, side/90)
	if o.Legend {
		p.legend = p.newLegend()
	}
	return p
}

// sorted is the numbers below n in lists by their group, in their order; those of group -1
// are in none. There are fewer groups than 1<<15, since a layout has fewer fabrics.
func sorted(groups, n int, group func(i int) int) [][]int32 {
	count, of := make([]int, groups+1), make([]int16, n)
	for i := range n {
		g := group(i)
		of[i] = int16(g)
		count[g+1]++
	}
	lists, all := make([][]int32, groups), make([]int32, n-count[0])
	for g, c := range count[1:] {
		lists[g], all = all[:0:c], all[c:]
	}
	for i, g := range of {
		if g >= 0 {
			lists[g] = append(lists[g], int32(i))
		}
	}
	return lists
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
