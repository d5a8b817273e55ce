package diagram

import (
	"math"
	"strings"

	"eighthturn/internal/measure"
)

// Panel is a part of a figure that stands by itself on paper, beside and below others. Panels are put side by side, as many
// as there is room for at a width at which their words can be read.
type Panel struct {
	Caption      string        // above it
	Note         string        // below it
	First, Count int           // its marks
	Min, Max     measure.Point // its frame
}

// Measures of panels, in points.
const (
	leastPanel  = 96.0 // the narrowest
	panelGap    = 14.0
	captionSize = 8.5
	noteSize    = 8.0
	lineHigh    = 1.3  // of a line of words, as a multiple of its size
	panelShape  = 0.85 // of a panel: its height is at most so much of its width
	panelRoom   = 6.0  // between a panel and the words above and below it
)

// LowPanel is the least height of what a panel shows, in points.
const LowPanel = 56.0

// across is how many panels stand in a row of a width: rows are filled alike.
func (f *Figure) across(width float64) int {
	if f.Across > 0 {
		return f.Across
	}
	most := max(1, int((width+panelGap)/(leastPanel+panelGap)))
	rows := (len(f.Panels) + most - 1) / most
	return (len(f.Panels) + rows - 1) / rows
}

// panelRow is a row of panels put on paper.
type panelRow struct {
	panels         []placedPanel
	captions, note float64 // the height of the words above and below
	high           float64 // of what the panels show
}

func (r *panelRow) height() float64 { return r.captions + r.high + r.note }

// placedPanel is a panel's own sheet, and its lines of words.
type placedPanel struct {
	sheet          *Sheet
	captions, note []string
}

// panelSheet puts the panels of a figure on paper.
func panelSheet(f *Figure, o Options) *Sheet {
	letters := o.lettering()
	limit := o.limit()
	width := limit.X - 2*edge
	s := &Sheet{Title: f.Title, Description: f.Description, Scale: TrueScale, Width: limit.X}
	var key legend
	if !o.NoLegend {
		key = newLegend(letters, f)
	}
	below := key.flow(width, width)
	rows := f.rows(letters, width, limit.Y-2*edge-below)
	y, wide := float64(edge), f.panelWidth(width)
	for i := range rows {
		if i > 0 {
			y += panelGap
		}
		for n := range rows[i].panels {
			s.panel(letters, &rows[i], n, measure.Vec{X: edge + float64(n)*(wide+panelGap), Y: y}, wide)
		}
		y += rows[i].height()
	}
	s.Height = y + edge
	if below > 0 {
		key.draw(s)
		s.Height += below
	}
	s.Words = s.Height
	for i := range rows {
		s.Words -= rows[i].high
	}
	return s
}

func (f *Figure) panelWidth(width float64) float64 {
	n := float64(f.across(width))
	return (width - (n-1)*panelGap) / n
}

// rows puts panels into rows of a width, within a height if they can be.
func (f *Figure) rows(letters *Lettering, width, height float64) []panelRow {
	n, wide := f.across(width), f.panelWidth(width)
	var list []panelRow
	words := 0.0
	for i := 0; i < len(f.Panels); i += n {
		var row panelRow
		for _, p := range f.Panels[i:min(i+n, len(f.Panels))] {
			made := placedPanel{captions: letters.wrapped(p.Caption, captionSize, wide), note: letters.wrapped(p.Note, noteSize, wide)}
			row.captions = max(row.captions, wordsHigh(made.captions, captionSize))
			row.note = max(row.note, wordsHigh(made.note, noteSize))
			row.panels = append(row.panels, made)
		}
		words += row.captions + row.note
		list = append(list, row)
	}
	high := wide * panelShape
	if !math.IsInf(height, 1) {
		high = min(high, max(LowPanel, (height-words-panelGap*float64(len(list)-1))/float64(len(list))))
	}
	for i := range list {
		for n := range list[i].panels {
			sheet := Place(f.panel(i*f.across(width)+n), Options{Width: nanometres(wide), Height: nanometres(high), NoLegend: true, AnyFace: letters.anyFace})
			list[i].panels[n].sheet = sheet
			list[i].high = max(list[i].high, sheet.Height)
		}
	}
	return list
}

func nanometres(points float64) measure.NM { return measure.NM(points / TrueScale) }

// panel is a panel as a figure.
func (f *Figure) panel(n int) *Figure {
	p := &f.Panels[n]
	return &Figure{Min: p.Min, Max: p.Max, Marks: f.Marks[p.First : p.First+p.Count]}
}

func wordsHigh(lines []string, size float64) float64 {
	if len(lines) == 0 {
		return 0
	}
	return float64(len(lines))*lineHigh*size + panelRoom
}

// wrapped is a text in lines of a width.
func (l *Lettering) wrapped(text string, size, width float64) []string {
	var lines []string
	for _, word := range strings.Fields(plain(text)) {
		if n := len(lines); n > 0 && l.Width(lines[n-1]+" "+word, size, false) <= width {
			lines[n-1] += " " + word
			continue
		}
		lines = append(lines, word)
	}
	return lines
}

// panel draws a panel of a row from its upper left corner.
func (s *Sheet) panel(letters *Lettering, row *panelRow, n int, at measure.Vec, wide float64) {
	p := &row.panels[n]
	s.wordLines(letters, p.captions, captionSize, at)
	by := measure.Vec{X: at.X + (wide-p.sheet.Width)/2, Y: at.Y + row.captions + (row.high-p.sheet.Height)/2}
	for _, i := range p.sheet.Items {
		s.Items = append(s.Items, i.moved(by))
	}
	s.wordLines(letters, p.note, noteSize, measure.Vec{X: at.X, Y: at.Y + row.captions + row.high + panelRoom})
}

func (s *Sheet) wordLines(letters *Lettering, lines []string, size float64, at measure.Vec) {
	for i, text := range lines {
		s.Items = append(s.Items, Item{Label: &Label{Text: text, At: measure.Vec{X: at.X, Y: at.Y + (float64(i)*lineHigh+highest)*size}, Anchor: Start,
			Size: size, Width: letters.Width(text, size, false), Colour: Black()}})
	}
}

// moved is an item at another place.
func (i Item) moved(by measure.Vec) Item {
	if i.Label != nil {
		l := *i.Label
		l.At = l.At.Plus(by)
		i.Label = &l
	}
	if i.Shape != nil {
		shape := *i.Shape
		shape.Points = make([]measure.Vec, len(i.Shape.Points))
		for n, p := range i.Shape.Points {
			shape.Points[n] = p.Plus(by)
		}
		i.Shape = &shape
	}
	return i
}

// Rows is a figure's panels row by row, as the options' width puts them, the legend of all below the last.
func Rows(f *Figure, o Options) []*Figure {
	limit := o.limit()
	n := f.across(limit.X - 2*edge)
	var parts []*Figure
	for i := 0; i < len(f.Panels); i += n {
		part := *f
		part.Across, part.Marks, part.Panels, part.key = n, nil, nil, []Mark{}
		for _, p := range f.Panels[i:min(i+n, len(f.Panels))] {
			marks := f.Marks[p.First : p.First+p.Count]
			p.First = len(part.Marks)
			part.Marks, part.Panels = append(part.Marks, marks...), append(part.Panels, p)
		}
		parts = append(parts, &part)
	}
	parts[len(parts)-1].key = f.Marks
	return parts
}

// keyed are the marks whose styles the legend lists.
func (f *Figure) keyed() []Mark {
	if f.NoLegend {
		return nil
	}
	if f.key != nil {
		return f.key
	}
	return f.Marks
}
