package render

import (
	"eighthturn/internal/measure"
	"eighthturn/internal/stop"
)

// Paper is a size of page. Nothing is printed outside its margin.
type Paper struct {
	Name          string
	Width, Height measure.NM
	Margin        measure.NM // on all four sides
	Fold          bool       // sheets are folded and stapled: pages come in fours
}

// Letter is 8 1/2 by 11 in (ANSI/ASME Y14.1, size A).
func Letter() Paper {
	return Paper{"Letter", 17 * measure.Inch / 2, 11 * measure.Inch, 7 * measure.Inch / 10, false}
}

// A4 is 210 by 297 mm (ISO 216).
func A4() Paper {
	return Paper{"A4", 210 * measure.Millimetre, 297 * measure.Millimetre, 18 * measure.Millimetre, false}
}

// HalfLetter is 5 1/2 by 8 1/2 in, a Letter sheet folded: what pattern booklets are printed on
// by common practice.
func HalfLetter() Paper {
	return Paper{"Half-letter", 11 * measure.Inch / 2, 17 * measure.Inch / 2, measure.Inch / 2, true}
}

// A5 is 148 by 210 mm, an A4 sheet folded (ISO 216).
func A5() Paper {
	return Paper{"A5", 148 * measure.Millimetre, 210 * measure.Millimetre, 12 * measure.Millimetre, true}
}

// Papers are the sizes of page, in the order for help.
func Papers() []Paper { return []Paper{Letter(), A4(), HalfLetter(), A5()} }

// UsualPaper is the page for layouts in a system of units, where none is asked for.
func UsualPaper(s measure.System) Paper {
	if s == measure.Centimetres {
		return A4()
	}
	return Letter()
}

// FoldedPaper is half a sheet of that.
func FoldedPaper(s measure.System) Paper {
	if s == measure.Centimetres {
		return A5()
	}
	return HalfLetter()
}

// Options are how a document is put on paper.
type Options struct {
	Paper Paper // Letter if not given
	Large bool  // large print: no type below 18 pt

	CropMarks bool // each page on a larger sheet, with bleed and marks to cut by
	Imposed   bool // pages that are folded: two beside each other, in the order in which the sheets are stapled

	Sign   *stop.Sign // ends the work; nil for never
	Marker string     // a line of comment near the beginning of the file, by which it can be told; "" for none
}

func (o Options) paper() Paper {
	if o.Paper.Width == 0 && o.Paper.Height == 0 {
		return Letter()
	}
	return o.Paper
}

// look is the sizes of type and the page in points, y downwards.
type look struct {
	wide, high  float64 // of the page
	margin      float64
	top, bottom float64 // of what the parts fill
	body, small float64
	headings    [4]float64 // of a part, and of the levels within
	title       float64
	measure     float64 // of lines of running text, the most
	zoom        float64 // how much larger the words in diagrams are
	large       bool
}

// largeZoom makes the least words of a diagram, 8 points, as large as the text of large print, 18.
const largeZoom = 2.25

// leading is the height of a line as a multiple of the size of its type.
const leading = 1.42

// Zoom is by how much words and lines of illustrations are larger than in usual print.
func (o Options) Zoom() float64 { return o.look().zoom }

func points(nm measure.NM) float64 { return float64(nm) * 72 / float64(measure.Inch) }

func (o Options) look() look {
	p := o.paper()
	l := look{wide: points(p.Width), high: points(p.Height), margin: points(p.Margin), zoom: 1, large: o.Large}
	switch {
	case o.Large:
		l.body, l.small, l.title = 18, 18, 34
		if l.narrow() {
			l.title = 26
		}
		l.headings, l.zoom = [4]float64{28, 24, 21, 18}, largeZoom
	case l.narrow():
		l.body, l.small, l.title = 9, 8, 25
		l.headings = [4]float64{17, 12, 10, 9}
	default:
		l.body, l.small, l.title = 10.5, 9, 34
		l.headings = [4]float64{21, 14, 11.5, 10.5}
	}
	l.measure = min(l.text(), 42*l.body)
	l.top = l.margin + l.small*(leading+1.7)
	l.bottom = l.high - l.margin - l.small*(leading+0.9)
	return l
}

// narrow says whether pages are half a sheet, or smaller.
func (l look) narrow() bool { return l.wide < 450 }

// text is the width between the margins.
func (l look) text() float64 { return l.wide - 2*l.margin }

// room is the height between head and foot.
func (l look) room() float64 { return l.bottom - l.top }
