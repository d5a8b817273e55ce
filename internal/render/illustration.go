package render

import (
	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
)

// shape is what Figure and Picture have in common.
type shape struct {
	figure       diagram.Figure
	ground       []byte // a PNG file
	layers       []document.Layer
	legend       bool
	width, least measure.NM
	cover        bool // a file of its own shows it on the cover
	caption      document.Text
	alternative  string
}

func figureShape(f document.Figure) shape {
	s := shape{figure: f.Of, legend: true, width: f.Width, least: f.Least, caption: runs(f.Caption), alternative: line(f.Alternative)}
	if len(s.caption) == 0 {
		s.caption = runs(document.Plain(f.Of.Title))
	}
	if s.alternative == "" {
		s.alternative = line(f.Of.Description)
	}
	if s.alternative == "" {
		s.alternative = textLine(s.caption)
	}
	s.figure.Description = s.alternative
	return s
}

func shapeOf(i document.Illustration) shape {
	switch v := i.(type) {
	case document.Figure:
		return figureShape(v)
	case document.Picture:
		return pictureShape(v)
	}
	return shape{} // there are no others
}

func pictureShape(p document.Picture) shape {
	s := shape{
		figure: diagram.Figure{Title: textLine(p.Caption), Description: line(p.Alternative), Min: p.Of.Min, Max: p.Of.Max, Marks: p.Of.Marks},
		ground: p.Of.Ground, layers: p.Of.Layers, width: p.Width, least: p.Least, caption: runs(p.Caption), alternative: line(p.Alternative),
	}
	if s.figure.Title == "" {
		s.figure.Title = s.alternative
	}
	return s
}

// sheet is an illustration put on paper: a figure's sheet, enlarged with its words and lines.
type sheet struct {
	*diagram.Sheet
	shape *shape
	zoom  float64
}

func (s *sheet) width() float64  { return s.Width * s.zoom }
func (s *sheet) height() float64 { return s.Height * s.zoom }

// place puts an illustration into a width and height; it is never larger, but for one of true
// size.
func (s *shape) place(w, h, zoom float64) *sheet {
	o := diagram.Options{NoLegend: !s.legend, Width: nanometres(w / zoom), Height: nanometres(h / zoom)}
	if s.figure.TrueSize {
		o.NoLegend = o.NoLegend || zoom > 1 // its words would be small among large print; the text says what its lines are
		return &sheet{diagram.Place(&s.figure, o), s, 1}
	}
	placed := &sheet{diagram.Place(&s.figure, o), s, zoom}
	placed.zoom /= max(1, placed.width()/w, placed.height()/h)
	return placed
}

func nanometres(points float64) measure.NM {
	return measure.NM(points * float64(measure.Inch) / 72)
}

// Parts of the page's height that an illustration takes at the most: where no width is asked
// for, and side by side with others.
const (
	usualPart   = 0.5
	galleryPart = 0.55
)

// minPart is the narrowest width of an illustration as part of the wanted.
const minPart = 0.75

// minRow is the least height of what a row of panels shows, as part of the wanted; its words stay as large as they are.
const minRow = 0.65

// illustration sets a figure or picture with its caption.
func (b *builder) illustration(i document.Illustration, c column) {
	s := shapeOf(i)
	caption := b.lines(s.caption, min(c.w, b.measure), fixed(b.small, false, grey()))
	below := b.small * leading * float64(len(caption))
	if len(caption) > 0 {
		below += b.small * 0.4
	}
	most := max(b.room()-below-b.frameRoom(), b.room()/3)
	w, h := min(points(s.width), c.w), most
	if s.width <= 0 {
		w, h = c.w, most*usualPart
	}
	b.within("Div", func() {
		if len(s.figure.Panels) > 0 {
			b.panels(&s, c, most)
		} else {
			placed := s.place(w, h, b.zoom)
			if !b.fits(placed, &s, rect{w: c.w, h: most}) {
				return
			}
			b.space(b.body * 0.9)
			b.add(b.flexible(placed, &s, art{x: c.x, of: figureElement(b.element, s.alternative), name: b.captioned(s.caption)}))
		}
		b.captionLines(caption, c.x)
		b.space(b.body * 0.9)
	})
}

// panels sets a figure of panels over the whole width, row by row.
func (b *builder) panels(s *shape, c column, most float64) {
	of := figureElement(b.element, s.alternative)
	for _, f := range diagram.Rows(&s.figure, diagram.Options{Width: nanometres(c.w / b.zoom)}) {
		part := *s
		part.figure = *f
		placed := part.place(c.w, most, b.zoom)
		b.space(b.body * 0.9)
		b.add(b.flexible(placed, &part, art{x: c.x, of: of, name: b.captioned(s.caption)}))
	}
}

// frameRoom is the height that the edges of the boxes around take.
func (b *builder) frameRoom() float64 { return float64(len(b.frames)) * b.body * 4 }

// captionLines sets the lines of a caption, held to what is above.
func (b *builder) captionLines(caption []lineOf, x float64) {
	b.within("Caption", func() {
		for i, l := range caption {
			b.next = bound
			if i == 0 {
				b.space(b.small * 0.4)
			}
			b.add(slice{height: lineHeight(l), marks: set(l, x, 0)})
		}
	})
}

// fits says whether an illustration of true size fits on the page, and warns where another
// had to be made smaller than it can be read.
func (b *builder) fits(placed *sheet, s *shape, room rect) bool {
	if s.figure.TrueSize && (placed.width() > room.w+0.01 || placed.height() > room.h+0.01) {
		b.fail("the figure %q is %s by %s in at true size, but the page has room for %s by %s in", s.figure.Title,
			inches(placed.width()), inches(placed.height()), inches(room.w), inches(room.h))
		return false
	}
	if least := points(s.least); placed.width() < least-0.01 && !s.figure.TrueSize {
		b.warn(Warning{Kind: TooSmall, Message: "the illustration " + quoted(s.alternative) + " is " + inches(placed.width()) + " in wide, but at least " + inches(least) + " in was asked for"})
	}
	return true
}

// flexible is an illustration at its place, that may be made smaller.
func (b *builder) flexible(placed *sheet, s *shape, at art) slice {
	at.sheet = placed
	own := slice{height: placed.height(), marks: []mark{at}}
	if s.figure.TrueSize {
		return own
	}
	least := minPart * placed.height()
	switch {
	case len(s.figure.Panels) > 0:
		words := placed.Words * placed.zoom
		shown := placed.height() - words
		least = words + min(shown, max(minRow*shown, diagram.LowPanel*placed.zoom))
	case s.least > 0:
		words := placed.Words * placed.zoom // of the legend, which are as high as ever
		least = words + min(1, points(s.least)/placed.width())*(placed.height()-words)
	}
	w, zoom := placed.width(), b.zoom
	own.flex = &flex{least: least, words: placed.Words * placed.zoom, at: func(height float64) []mark {
		at.sheet = s.place(w, height, zoom)
		return []mark{at}
	}}
	return own
}

// gallery sets illustrations side by side, as many as there is room for.
func (b *builder) gallery(g document.Gallery, c column) {
	n := galleryColumns(g)
	gap := b.body * 1.6
	if b.large {
		n = 1
	}
	for n > 1 && (c.w-gap*float64(n-1))/float64(n) < 9*b.body {
		n--
	}
	w := (c.w - gap*float64(n-1)) / float64(n)
	for i := 0; i < len(g.Pictures); {
		to := min(i+n, len(g.Pictures))
		if n == 1 || !b.side(g.Pictures[i:to], c.x, w, gap) {
			for _, one := range g.Pictures[i:to] {
				b.illustration(one, c)
			}
		}
		i = to
	}
}

// side sets illustrations side by side; not where one is of true size, or a caption long.
func (b *builder) side(list []document.Illustration, x, w, gap float64) bool {
	row := slice{}
	arts := make([]art, len(list))
	captions := make([][]lineOf, len(list))
	for i, one := range list {
		s := shapeOf(one)
		captions[i] = b.lines(s.caption, w, fixed(b.small, false, grey()))
		if s.figure.TrueSize || float64(len(captions[i]))*b.small*leading > b.room()/4 {
			return false
		}
		wanted := w
		if s.width > 0 {
			wanted = min(w, points(s.width))
		}
		arts[i] = art{x: x + float64(i)*(w+gap), name: b.captioned(s.caption), sheet: s.place(wanted, b.room()*galleryPart, b.zoom)}
		row.height = max(row.height, arts[i].height())
	}
	top := row.height + b.small*0.4
	for i, lines := range captions {
		pair := b.element.Add("Div")
		arts[i].of = figureElement(pair, arts[i].shape.alternative)
		row.marks = append(row.marks, arts[i])
		caption := pair.Add("Caption")
		y := top
		for _, l := range lines {
			row.marks = append(row.marks, owned(set(l, arts[i].x, y), caption)...)
			y += lineHeight(l)
			row.height = max(row.height, y)
		}
	}
	b.space(b.body * 0.9)
	b.add(row)
	b.space(b.body * 0.9)
	return true
}
