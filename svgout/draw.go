// Package svgout turns a finished top into a scene, a flat list of what a picture of it shows,
// and a scene into an SVG picture. Other formats are written from the same scene.
package svgout

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"eighthturn/internal/credits"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// Options choose a picture; the zero value is the plain colour view.
type Options struct {
	View      View
	SeamLines Seams  // whether seams are drawn as thin lines; the line view always has them, and views that mark seams or are in pixels never
	Legend    bool   // list the fabrics, below the top or beside one that is much higher than wide
	FarOff    bool   // the legend is read on a phone or from across a room: names alone, in large letters
	Prints    bool   // fabrics that have a photo or stripes are painted with them, in the colors of the view; in line and squinted at never
	ByFabric  bool   // one path a fabric: smaller and quicker, without titles on patches
	OnePaint  bool   // each fabric's color is one paint of the file, for drawing programs
	Prefix    string // of all ids; letters, digits, - and _ of ASCII, a letter first
}

// Seams say whether a picture has its seams as thin lines.
type Seams uint8

const (
	SeamsByView  Seams = iota // in the color view; the view of values shows what light and dark tell by themselves
	SeamsDrawn                // in the view of values too
	SeamsLeftOut              // nowhere
)

// drawn says whether a view of colors or values has its seams drawn.
func (s Seams) drawn(v View) bool { return s == SeamsDrawn || s == SeamsByView && v == Colour }

// Marker stands near the beginning of every SVG file that this package writes.
const Marker = "<!-- drawn by eighthturn -->"

// PixelsPerInch is how many user units an inch has: those of CSS, so that programs which
// take no notice of the physical size still show it right.
const PixelsPerInch = 96

// Draw writes the picture of a top. Its width and height are the top's own, in inches or
// millimetres; a legend adds to one of them. The same top and options give the same bytes.
// Options that name no view or no ids are refused before anything is written; otherwise
// the first error of w is returned.
func Draw(w io.Writer, t *quilt.Top, o Options) error {
	s, err := NewScene(t, o)
	if err != nil {
		return err
	}
	return s.SVG(w)
}

// NewScene is the picture of a top. An error is options that name no view or no ids.
func NewScene(t *quilt.Top, o Options) (*Scene, error) {
	if err := o.check(); err != nil {
		return nil, err
	}
	switch {
	case o.View == Squint:
		return squinted(t, o)
	case o.View > Line:
		return marked(t, marksOf(t, o)), nil
	}
	p := newPicture(t, o)
	p.describe()
	if o.View == Line {
		p.linework()
	} else {
		p.cloth()
		if o.SeamLines.drawn(o.View) {
			p.seamLines()
		}
	}
	return p.finished(), nil
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

// picture is the work on one scene. Its lengths are user units.
type picture struct {
	*quilt.Top
	Options
	scene  Scene
	faces  [][]int32                // by fabric
	stroke float64                  // width of seam lines
	value  func(fabric int) float64 // CIE L* that the legend names
}

func newPicture(t *quilt.Top, o Options) *picture {
	p := &picture{Top: t, Options: o}
	p.scene = Scene{Top: t, Title: t.Title, Width: t.Outer.Width(), Height: t.Outer.Height(), prefix: o.Prefix, OnePaint: o.OnePaint,
		Credits: credits.Credits{Title: t.Title, Author: t.Credits.Designer, Copyright: t.Credits.Copyright}}
	if t.Title == "" {
		p.scene.Title = "Quilt top"
	}
	p.value = func(f int) float64 { return p.Fabrics[f].Colour.Lightness() }
	p.faces = sorted(len(t.Fabrics), len(t.Faces), func(i int) int { return int(t.Faces[i].Fabric) })
	longest, side := userUnits(max(t.Outer.Width(), t.Outer.Height())), userUnits(t.SideFinished)
	p.stroke = min(longest/1000, side/90)
	for f := range t.Fabrics {
		p.scene.Paints = append(p.scene.Paints, Paint{p.colour(f), p.print(f)})
	}
	if slices.ContainsFunc(p.scene.Paints, func(q Paint) bool { return q.Print != nil }) {
		p.scene.Places = t.ClothPlaces()
	}
	return p
}

// layer adds a layer on top of the others.
func (p *picture) layer(l Layer) { p.scene.Layers = append(p.scene.Layers, l) }

// finished is the scene, with its legend if it has one.
func (p *picture) finished() *Scene {
	if p.Legend {
		p.drawLegend()
	}
	return &p.scene
}

// describeAs says in words how large the top is and how it is drawn.
func (p *picture) describeAs(drawn string) {
	p.scene.Description = fmt.Sprintf("A quilt top of %d by %d blocks, %s by %s finished, drawn %s.", p.Columns, p.Rows,
		measure.Text(p.Outer.Width(), p.Units), measure.Text(p.Outer.Height(), p.Units), drawn)
}

// describe says in words what the picture shows.
func (p *picture) describe() {
	p.describeAs([...]string{Colour: "in color", Value: "in the grays of its values", Line: "in line, with the letters of its pieces"}[p.View])
	if fabrics := len(p.shown()); fabrics == 1 {
		p.scene.Description += " It shows one fabric."
	} else {
		p.scene.Description += fmt.Sprintf(" It shows %d fabrics.", fabrics)
	}
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

// userUnits is a length in user units.
func userUnits(nm measure.NM) float64 { return float64(nm) * PixelsPerInch / float64(measure.Inch) }

// colour is the colour that a fabric is painted with.
func (p *picture) colour(fabric int) palettes.Colour {
	c := p.Fabrics[fabric].Colour
	if p.View == Value {
		c = c.Grey()
	}
	return c
}

// print is the print that a fabric is painted with, nil where it is painted in its colour or not shown.
func (p *picture) print(fabric int) *Print {
	cloth := p.Fabrics[fabric].Cloth
	if !p.Prints || p.View == Line || p.View == Squint || cloth == nil || len(p.faces[fabric]) == 0 {
		return nil
	}
	one := cloth.Picture()
	if one == nil {
		return nil
	}
	print := &Print{cloth, one}
	if p.View == Value {
		print = print.in(palettes.Colour.Grey)
	}
	return print
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

// outlinesOf are the outlines of faces.
func (p *picture) outlinesOf(faces []int32) Outlines {
	return func(yield func([]measure.Point) bool) {
		for _, i := range faces {
			if !yield(p.Faces[i].Outline) {
				return
			}
		}
	}
}

// lines are n stretches.
func lines(n int, seam func(i int) *quilt.Seam) Outlines {
	return func(yield func([]measure.Point) bool) {
		var ends [2]measure.Point
		for i := range n {
			s := seam(i)
			ends = [2]measure.Point{s.From, s.To}
			if !yield(ends[:]) {
				return
			}
		}
	}
}

// cornersOf is the outline of a rectangle.
func cornersOf(r quilt.Rect) []measure.Point {
	return []measure.Point{r.Min, {X: r.Max.X, Y: r.Min.Y}, r.Max, {X: r.Min.X, Y: r.Max.Y}}
}
