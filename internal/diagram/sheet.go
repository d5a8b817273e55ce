package diagram

import (
	"math"

	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// Options say how a figure is put on paper. The zero value is a drawing up to 6 1/2 inches
// wide with its legend.
type Options struct {
	Width    measure.NM     // of the whole at the most; 0 for 6 1/2 in; not read for a figure of true size
	Height   measure.NM     // of the whole at the most; 0 for as high as it comes; not read for a figure of true size
	Units    measure.System // of the SVG's own width and height: inches, or millimetres
	NoLegend bool           // leave out the list of line styles
	Inline   bool           // an SVG to stand within a page: without the line that opens a file
	AnyFace  bool           // words may be set in another face than the Go fonts: room is left for a wider one
}

// pointsPerInch is the size of the page's unit.
const pointsPerInch = 72

// TrueScale is the scale of a figure that is as large as its subject, in points a nanometre.
const TrueScale = pointsPerInch / float64(measure.Inch)

// Sheet is a figure put on paper: everything is in points, and all of it lies between (0, 0)
// and (Width, Height).
type Sheet struct {
	Title, Description string
	Width, Height      float64
	Words              float64     // of the height, what the legend takes, and of panels the words too
	Scale              float64     // points a nanometre of the subject
	Origin             measure.Vec // where the subject's point (0, 0) lies
	Items              []Item      // drawn in this order
}

// Item is one thing on the sheet: a shape, or words.
type Item struct {
	Lit   []int
	Shape *Shape
	Label *Label
}

// Shape is an outline or a line.
type Shape struct {
	Points []measure.Vec
	Closed bool
	Filled bool
	Fill   palettes.Colour
	Pen    Pen  // a width of 0 draws no line
	Round  bool // a circle: Points holds its middle, Radius how large it is
	Radius float64
	Cloth  *Cloth // what it shows, over the fill; nil for nothing
}

// Cloth is a print as it lies on a sheet: one of its repeats begins at a place, about which it is turned.
type Cloth struct {
	*Print
	At, Size, Margin measure.Vec
	Turn             float64 // degrees clockwise
}

// OnSheet is where a place of the cloth lies, in points from where that repeat begins.
func (c *Cloth) OnSheet(v measure.Vec) measure.Vec {
	sin, cos := math.Sincos(c.Turn * math.Pi / 180)
	return measure.Vec{X: c.At.X + float64(v.X*cos) - float64(v.Y*sin), Y: c.At.Y + float64(v.X*sin) + float64(v.Y*cos)}
}

// OnCloth is the place of the cloth, in points from where that repeat begins, that a place of the sheet shows.
func (c *Cloth) OnCloth(v measure.Vec) measure.Vec {
	sin, cos := math.Sincos(c.Turn * math.Pi / 180)
	v = v.Minus(c.At)
	return measure.Vec{X: float64(v.X*cos) + float64(v.Y*sin), Y: float64(v.Y*cos) - float64(v.X*sin)}
}

// Repeats are where the repeats begin that fill an outline, on the cloth in points from that one.
func (c *Cloth) Repeats(outline []measure.Vec) (list []measure.Vec) {
	low := c.OnCloth(outline[0])
	high := low
	for _, q := range outline {
		q = c.OnCloth(q)
		low, high = measure.Vec{X: min(low.X, q.X), Y: min(low.Y, q.Y)}, measure.Vec{X: max(high.X, q.X), Y: max(high.Y, q.Y)}
	}
	for y := math.Floor(low.Y/c.Size.Y) * c.Size.Y; y < high.Y; y += c.Size.Y {
		for x := math.Floor(low.X/c.Size.X) * c.Size.X; x < high.X; x += c.Size.X {
			list = append(list, measure.Vec{X: x, Y: y})
		}
	}
	return list
}

// Label is words on the sheet.
type Label struct {
	Text     string
	At       measure.Vec // where the line on which the letters stand begins
	Anchor   Anchor      // which part of the words keeps its place where they are set narrower or wider
	Size     float64
	Width    float64 // by the Go fonts; with Options.AnyFace the room that is left for them
	Bold     bool
	Quarters int // turned about At, quarter turns clockwise, 0 to 3
	Colour   palettes.Colour
	Halo     bool
	Rim      palettes.Colour // of the halo
}

// At is where a point of the subject lies on the sheet.
func (s *Sheet) At(p measure.Point) measure.Vec {
	return measure.Vec{X: s.Origin.X + float64(float64(p.X)*s.Scale), Y: s.Origin.Y + float64(float64(p.Y)*s.Scale)}
}

// edge is what is left free round everything, in points.
const edge = 2

// minSide is the least width and height of a sheet that are asked for, in points.
const minSide = 36

// usualWidth is the width of a drawing where none is asked for.
const usualWidth = 13 * measure.Inch / 2

// Place puts a figure on paper as large as the options allow, or as large as its subject,
// with room for all of its words and lines, and its legend below. It never fails: words that
// are too wide for the paper are made smaller.
func Place(f *Figure, o Options) *Sheet {
	if len(f.Panels) > 0 {
		return panelSheet(f, o)
	}
	p := &placing{figure: f, letters: o.lettering(), shrink: 1}
	p.measure()
	s := &Sheet{Title: f.Title, Description: f.Description, Scale: TrueScale}
	limit := measure.Vec{X: math.Inf(1), Y: math.Inf(1)}
	if !f.TrueSize {
		limit = o.limit()
	}
	var key legend
	if !o.NoLegend {
		key = newLegend(p.letters, f)
	}
	below := 0.0
	for range 3 { // the legend's height depends on the width that is left for it
		if !f.TrueSize {
			s.Scale = p.fit(limit.X-2*edge, max(limit.Y/4, limit.Y-2*edge-below))
		}
		box := p.box(s.Scale)
		s.Origin = measure.Vec{X: edge - box.min.X, Y: edge - box.min.Y}
		s.Width, s.Height = box.max.X-box.min.X+2*edge, box.max.Y-box.min.Y+2*edge
		below = key.flow(s.Width-2*edge, limit.X-2*edge)
	}
	p.draw(s)
	if below > 0 {
		key.draw(s)
		s.Words = below
		s.Width, s.Height = max(s.Width, key.width+2*edge), s.Height+below
	}
	return s
}

// lettering is what words are measured by.
func (o *Options) lettering() *Lettering {
	l := NewLettering()
	l.anyFace = o.AnyFace
	return l
}

// limit is the greatest size of the sheet in points; no less than half an inch.
func (o *Options) limit() measure.Vec {
	width, height := o.Width, o.Height
	if width <= 0 {
		width = usualWidth
	}
	limit := measure.Vec{X: max(minSide, float64(width)*TrueScale), Y: math.Inf(1)}
	if height > 0 {
		limit.Y = max(minSide, float64(height)*TrueScale)
	}
	return limit
}
