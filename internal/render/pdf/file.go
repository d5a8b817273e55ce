// Package pdf turns outlines, lines, words and pixels on pages into a PDF file. It is the one
// place that knows the PDF library. Places are in points from a page's upper left corner, y
// downwards. Paths and the order of a file are written here; objects, fonts and images are the
// library's.
package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"strconv"

	"github.com/carlos7ags/folio/core"
	"github.com/carlos7ags/folio/font"
	"github.com/carlos7ags/folio/image"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// Properties are what a file says of itself; what is empty is left out. No file says when it
// was made.
type Properties struct {
	Title, Author, Subject, Keywords string
	Copyright                        string
	Language                         string // of the text, as in BCP 47
	Marker                           string // a line of comment near the beginning, without its %
}

// File is a PDF on which is drawn page by page. The same calls give the same bytes.
type File struct {
	Properties
	sheets    []sheet
	onPage    *core.PdfIndirectReference // that is drawn on
	shift     measure.Vec                // of the page from its sheet's lower left corner, upwards
	objects   objects
	fonts     [2]*font.EmbeddedFont // regular, bold
	used      [2]bool               // of the fonts
	pages     []*core.PdfIndirectReference
	bookmarks []bookmark
	pictures  map[string]*core.PdfIndirectReference
	resources resources
	err       error // the first

	page          *core.PdfDictionary // that is drawn on, nil before the first
	width, height float64             // of the page
	bytes         []byte              // of the page's contents, not packed yet
	packed        *bytes.Buffer       // the page's contents, packed
	packer        *zlib.Writer        // into packed
	face          Face                // as the page has it

	whole         *Element                                // nil for a file without structure
	owners        []owners                                // by their key in the table of them
	pageKey       int                                     // of the page that is drawn on
	inside        bool                                    // an element is open, or what is not read
	element       *Element                                // that is open
	around        *Element                                // that the span lies in
	references    map[*Element]*core.PdfIndirectReference // once they are written
	places        map[string]*core.PdfArray               // that links lead to
	layers        map[string]layer                        // by name
	layer         string                                  // that is open, "" for none
	layersInOrder []*core.PdfIndirectReference
	links         []link
}

// New begins a file with the Go fonts in it.
func New(p Properties) (*File, error) {
	fonts, err := goFonts()
	if err != nil {
		return nil, wrapped(err)
	}
	f := &File{Properties: p, fonts: fonts, pictures: map[string]*core.PdfIndirectReference{}, places: map[string]*core.PdfArray{}, layers: map[string]layer{}, resources: newResources()}
	f.packer, _ = zlib.NewWriterLevel(nil, packedLevel) // fails only for a level that there is not
	f.objects.reserve()
	return f, nil
}

func wrapped(err error) error {
	if err != nil {
		return fmt.Errorf("the PDF cannot be written: %w", err)
	}
	return nil
}

// failed keeps the first fault.
func (f *File) failed(err error) {
	if f.err == nil {
		f.err = err
	}
}

// Page begins a page of a size.
func (f *File) Page(width, height float64) {
	f.endPage()
	f.Sheets(1, width, height)
	f.On(len(f.sheets)-1, measure.Vec{}, width, height)
}

// endPage hands the page's contents on.
func (f *File) endPage() {
	if f.page == nil {
		return
	}
	f.Layer("")
	f.outside()
	if f.shift != (measure.Vec{}) {
		f.Operator("Q")
	}
	f.flush()
	if err := f.packer.Close(); err != nil {
		f.failed(err)
	}
	stream := core.NewPdfStream(f.packed.Bytes())
	stream.Dict.Set("Filter", name("FlateDecode"))
	switch own := f.objects.add(stream); before := f.page.Get("Contents").(type) {
	case nil:
		f.page.Set("Contents", own)
	case *core.PdfArray:
		before.Add(own)
	default:
		f.page.Set("Contents", core.NewPdfArray(before, own))
	}
	f.page = nil
}

// flush packs the page's operators.
func (f *File) flush() {
	if _, err := f.packer.Write(f.bytes); err != nil {
		f.failed(err)
	}
	f.bytes = f.bytes[:0]
}

// Operator writes an operator, or several.
func (f *File) Operator(name string) { f.bytes = append(append(f.bytes, name...), '\n') }

// Numbers writes operands.
func (f *File) Numbers(list ...float64) {
	for _, v := range list {
		f.bytes = strconv.AppendFloat(f.bytes, v, 'f', 4, 64)
		for f.bytes[len(f.bytes)-1] == '0' {
			f.bytes = f.bytes[:len(f.bytes)-1]
		}
		if last := len(f.bytes) - 1; f.bytes[last] == '.' {
			f.bytes = f.bytes[:last]
		}
		f.bytes = append(f.bytes, ' ')
	}
}

// At writes a place on the page as operands.
func (f *File) At(x, y float64) { f.Numbers(x, f.height-y) }

// Colour sets a colour. Its parts are rounded upwards, so that programs which cut off come
// back to the same byte as those which round.
// Black, grey and white are set as such, so that a press prints them with black alone.
func (f *File) Colour(c palettes.Colour, operator string) {
	parts := []int{int(c.R), int(c.G), int(c.B)}
	if c.R == c.G && c.G == c.B {
		parts, operator = parts[:1], map[string]string{"rg": "g", "RG": "G"}[operator]
	}
	for _, v := range parts {
		f.Numbers(float64((v*10_000+254)/255) / 10_000)
	}
	f.Operator(operator)
}

// Opacity sets how opaque fills and lines are from here on, 0 to 1.
func (f *File) Opacity(part float64) {
	f.Operator(f.resources.opacity(part) + " gs")
}

// Outline writes a path, without painting it.
func (f *File) Outline(points []measure.Vec, closed bool) {
	for i, p := range points {
		f.At(p.X, p.Y)
		if i == 0 {
			f.Operator("m")
		} else {
			f.Operator("l")
		}
	}
	if closed && len(points) > 0 {
		f.Operator("h")
	}
	if len(f.bytes) > 1<<16 {
		f.flush()
	}
}

// Rectangle writes a rectangle, without painting it.
func (f *File) Rectangle(at measure.Vec, width, height float64) {
	f.At(at.X, at.Y+height)
	f.Numbers(width, height)
	f.Operator("re")
}

// handle is how far the handles of a quarter circle reach as part of its radius.
const handle = 0.5522847

// Circle writes a circle, without painting it.
func (f *File) Circle(c measure.Vec, r float64) {
	f.At(c.X+r, c.Y)
	f.Operator("m")
	for _, q := range [][2]float64{{1, 0}, {0, 1}, {-1, 0}, {0, -1}} {
		x, y := q[0]*r, q[1]*r
		nx, ny := -y, x
		f.At(c.X+x+nx*handle, c.Y+y+ny*handle)
		f.At(c.X+nx+x*handle, c.Y+ny+y*handle)
		f.At(c.X+nx, c.Y+ny)
		f.Operator("c")
	}
	f.Operator("h")
}

// Pen sets how lines are drawn: width, dashes and gaps in turn, round corners, round ends.
func (f *File) Pen(pen diagram.Pen, joins, caps bool) {
	f.Colour(pen.Colour, "RG")
	f.Numbers(pen.Width)
	f.Operator("w")
	if joins {
		f.Operator("1 j")
	}
	if caps {
		f.Operator("1 J")
	}
	f.bytes = append(f.bytes, '[')
	f.Numbers(pen.Dashes...)
	f.Operator("] 0 d")
}

// Painting is the operator that fills paths, or draws their lines, or both (ISO 32000-1,
// 8.5.3); "" for neither.
func Painting(fill, line bool) string {
	switch {
	case fill && line:
		return "B"
	case fill:
		return "f"
	case line:
		return "S"
	}
	return ""
}

// Image stretches a PNG file over a rectangle; it is kept in the PDF once under its name.
func (f *File) Image(label string, file []byte, at measure.Vec, width, height float64) {
	if !f.hasPicture(label, file) {
		return
	}
	f.Operator("q")
	f.Numbers(width, 0, 0, height)
	f.At(at.X, at.Y+height)
	f.Operator("cm " + f.resources.picture(f.pictures[label]) + " Do Q")
}

// ImageTurned stretches a PNG file between three corners: its upper left, upper right and lower left one. It is kept in the PDF once
// under its name.
func (f *File) ImageTurned(label string, file []byte, corner, right, lower measure.Vec) {
	if !f.hasPicture(label, file) {
		return
	}
	f.Operator("q")
	f.Numbers(right.X-corner.X, corner.Y-right.Y, corner.X-lower.X, lower.Y-corner.Y)
	f.At(lower.X, lower.Y)
	f.Operator("cm " + f.resources.picture(f.pictures[label]) + " Do Q")
}

// hasPicture keeps a PNG file under its name, and says whether it can be read.
func (f *File) hasPicture(label string, file []byte) bool {
	if f.pictures[label] != nil {
		return true
	}
	picture, err := image.NewPNG(file)
	if err != nil {
		f.failed(err)
		return false
	}
	f.pictures[label], _ = picture.BuildXObject(f.objects.add)
	return true
}

// Err is the first fault, nil for none.
func (f *File) Err() error { return wrapped(f.err) }
