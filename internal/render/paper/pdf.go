// Package paper turns the pieces of a top into templates at true size.
package paper

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"regexp"
	"strconv"
	"time"
	"unicode/utf16"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// pdfFile is the one place that writes PDF. Places are in points from a page's upper left
// corner, y downwards. Paths are written here, since the library rounds them to a hundredth
// of a point; fonts, images and the file itself are the library's.
type pdfFile struct {
	document *fpdf.Fpdf
	letters  *diagram.Lettering
	height   float64 // of the page
	bytes    []byte  // of the page's contents, not handed on yet
	title    string
	marker   string // near the beginning of the file
}

const fontName = "Go"

// newPDF begins a file with the fonts in it; the same calls give the same bytes. The marker is a line of comment near its
// beginning.
func newPDF(title, marker string) (*pdfFile, error) {
	document := fpdf.NewCustom(&fpdf.InitType{UnitStr: "pt", Size: fpdf.SizeType{Wd: 612, Ht: 792}})
	document.SetCatalogSort(true)
	document.SetCreationDate(time.Unix(0, 0).UTC()) // finish takes the dates out
	document.SetModificationDate(time.Unix(0, 0).UTC())
	document.SetAutoPageBreak(false, 0)
	document.SetMargins(0, 0, 0)
	for i, file := range [][]byte{goregular.TTF, gobold.TTF} {
		document.AddUTF8FontFromBytes(fontName, []string{"", "B"}[i], bytes.Clone(file))
		if err := document.Error(); err != nil {
			return nil, err
		}
	}
	return &pdfFile{document: document, letters: diagram.NewLettering(), title: title, marker: marker}, nil
}

// page begins a page.
func (f *pdfFile) page(width, height float64) {
	f.flush()
	f.height = height
	f.document.AddPageFormat("P", fpdf.SizeType{Wd: width, Ht: height})
}

// flush hands the page's paths on.
func (f *pdfFile) flush() {
	if len(f.bytes) > 0 {
		f.document.RawWriteStr(string(f.bytes))
		f.bytes = f.bytes[:0]
	}
}

func (f *pdfFile) number(v float64) {
	f.bytes = strconv.AppendFloat(f.bytes, v, 'f', 4, 64)
	for f.bytes[len(f.bytes)-1] == '0' {
		f.bytes = f.bytes[:len(f.bytes)-1]
	}
	if last := len(f.bytes) - 1; f.bytes[last] == '.' {
		f.bytes = f.bytes[:last]
	}
	f.bytes = append(f.bytes, ' ')
}

func (f *pdfFile) operator(name string) { f.bytes = append(append(f.bytes, name...), '\n') }

// colour sets a colour. Its parts are rounded upwards, so that programs which cut off come
// back to the same byte as those which round.
func (f *pdfFile) colour(c palettes.Colour, operator string) {
	for _, v := range []int{int(c.R), int(c.G), int(c.B)} {
		f.number(float64((v*10_000+254)/255) / 10_000)
	}
	f.operator(operator)
}

// paint is how paths are painted; widths and dashes are points.
type paint struct {
	fill, line *palettes.Colour
	width      float64
	dashes     []float64
	round      bool    // ends and corners
	opacity    float64 // of the line, 0 to 1
}

// paths paints paths.
func (f *pdfFile) paths(list []path, p paint) {
	if p.fill != nil && p.line != nil && p.opacity < 1 { // the fill is opaque all the same
		f.paths(list, paint{fill: p.fill, opacity: 1})
		p.fill = nil
	}
	operator := p.operator()
	if operator == "" || len(list) == 0 {
		return
	}
	if p.opacity < 1 {
		f.flush()
		f.document.SetAlpha(p.opacity, "Normal")
	}
	f.operator("q")
	if p.fill != nil {
		f.colour(*p.fill, "rg")
	}
	if p.line != nil {
		f.pen(p)
	}
	for _, l := range list {
		f.trace(l)
	}
	f.operator(operator)
	f.operator("Q")
	if p.opacity < 1 {
		f.flush()
		f.document.SetAlpha(1, "Normal")
	}
}

// operator is what paints a path so (ISO 32000-1, 8.5.3), "" for nothing.
func (p *paint) operator() string {
	switch {
	case p.fill != nil && p.line != nil:
		return "B"
	case p.fill != nil:
		return "f"
	case p.line != nil:
		return "S"
	}
	return ""
}

func (f *pdfFile) pen(p paint) {
	f.colour(*p.line, "RG")
	f.number(p.width)
	f.operator("w")
	if p.round {
		f.operator("1 J 1 j")
	}
	if len(p.dashes) > 0 {
		f.bytes = append(f.bytes, '[')
		for _, d := range p.dashes {
			f.number(d)
		}
		f.operator("] 0 d")
	}
}

func (f *pdfFile) trace(l path) {
	for i, p := range l.points {
		f.number(p.x)
		f.number(f.height - p.y)
		f.operator([2]string{"l", "m"}[bit(i == 0)])
	}
	if l.closed {
		f.operator("h")
	}
	if len(f.bytes) > 1<<16 {
		f.flush()
	}
}

func bit(b bool) int {
	if b {
		return 1
	}
	return 0
}

// setting is how words are set.
type setting struct {
	size     float64
	bold     bool
	colour   palettes.Colour
	quarters int     // turned about where the words begin, quarter turns clockwise
	rim      float64 // of white round the letters, 0 for none
}

// words sets words whose line of letters begins at a place.
func (f *pdfFile) words(text string, at xy, s setting) {
	f.flush()
	style := ""
	if s.bold {
		style = "B"
	}
	f.document.SetFont(fontName, style, s.size)
	f.document.SetTextColor(int(s.colour.R), int(s.colour.G), int(s.colour.B))
	if s.quarters != 0 {
		f.document.TransformBegin()
		f.document.TransformRotate(float64(-90*s.quarters), at.x, at.y)
	}
	text = shown(f.letters, text)
	if s.rim > 0 {
		f.document.RawWriteStr("q 1 1 1 RG 1 j " + strconv.FormatFloat(2*s.rim, 'f', 2, 64) + " w 1 Tr\n")
		f.document.Text(at.x, at.y, text)
		f.document.RawWriteStr("Q\n")
	}
	f.document.Text(at.x, at.y, text)
	if s.quarters != 0 {
		f.document.TransformEnd()
	}
}

// clip lets what follows show within paths alone (ISO 32000-1, 8.5.4), until unclip.
func (f *pdfFile) clip(list []path) {
	f.operator("q")
	for _, l := range list {
		f.trace(l)
	}
	f.operator("W n")
}

func (f *pdfFile) unclip() { f.operator("Q") }

// image draws a PNG file over a rectangle; it is kept in the PDF once under its name.
func (f *pdfFile) image(name string, file []byte, at xy, width, height float64) {
	f.flush()
	options := fpdf.ImageOptions{ImageType: "PNG"}
	f.document.RegisterImageOptionsReader(name, options, bytes.NewReader(file))
	f.document.ImageOptions(name, at.x, at.y, width, height, false, options, 0, "")
}

// end writes the file.
func (f *pdfFile) end(w io.Writer) error {
	f.flush()
	var b bytes.Buffer
	if err := f.document.Output(&b); err != nil {
		return err
	}
	file, err := unscaled(b.Bytes(), f.title, f.marker)
	if err != nil {
		return err
	}
	_, err = w.Write(file)
	return err
}

// templateMarker is a line of comment near the beginning of the PDF files that this package writes.
const templateMarker = "%eighthturn templates\n"

// IsTemplate says whether a file begins as the PDF, DXF and SVG files of templates of this package do.
func IsTemplate(head []byte) bool {
	return begins(head, templateMarker) || bytes.HasPrefix(head, []byte("999\r\n"+dxfMarker)) || bytes.Contains(head, []byte(TemplateMarker))
}

// begins says whether a file is a PDF with a marker near its beginning.
func begins(head []byte, marker string) bool {
	return bytes.HasPrefix(head, []byte("%PDF-")) && bytes.Contains(head[:min(len(head), 64)], []byte(marker))
}

// unscaled appends an update to a file of the library's (ISO 32000-1, 7.5.6) that asks
// viewers not to scale when they print (12.2, PrintScaling), and that names the file without
// a date.
func unscaled(file []byte, title, marker string) ([]byte, error) {
	file, start, err := marked(file, marker)
	if err != nil {
		return nil, err
	}
	numbers := regexp.MustCompile(`/Size (\d+)\n/Root (\d+) 0 R\n/Info (\d+) 0 R\n>>\nstartxref\n`).FindSubmatch(file[start:])
	if numbers == nil {
		return nil, errors.New("the PDF library ended its file in a way that is not known")
	}
	size, root, info := numbers[1], numbers[2], numbers[3]
	_, catalogue, found := bytes.Cut(file, fmt.Appendf(nil, "\n%s 0 obj\n<<\n", root))
	catalogue, _, ended := bytes.Cut(catalogue, []byte("\n>>\nendobj"))
	if !found || !ended || !bytes.Contains(catalogue, []byte("/Type /Catalog")) {
		return nil, errors.New("the PDF library wrote a catalogue that is not known")
	}
	places := [2]int{len(file)}
	file = fmt.Appendf(file, "%s 0 obj\n<<\n%s\n/ViewerPreferences <</PrintScaling /None /DisplayDocTitle true>>\n>>\nendobj\n", root, catalogue)
	places[1] = len(file)
	file = fmt.Appendf(file, "%s 0 obj\n<< /Title %s /Creator (eighthturn) >>\nendobj\n", info, textString(title))
	at := len(file)
	file = fmt.Appendf(file, "xref\n%s 1\n%010d 00000 n \n%s 1\n%010d 00000 n \n", root, places[0], info, places[1])
	return fmt.Appendf(file, "trailer\n<< /Size %s /Root %s 0 R /Info %s 0 R /Prev %d >>\nstartxref\n%d\n%%%%EOF\n", size, root, info, start, at), nil
}

// marked is a file with the marker behind its first line, and the place of its table of
// objects; the places in the table are moved along.
func marked(file []byte, marker string) ([]byte, int, error) {
	head, rest, found := bytes.Cut(file, []byte("\n"))
	at := bytes.LastIndex(rest, []byte("\nxref\n"))
	if !found || at < 0 {
		return nil, 0, errors.New("the PDF library wrote no table of objects")
	}
	body, table := rest[:at+1], rest[at+1:]
	out := append(append(append(append([]byte(nil), head...), '\n'), marker...), body...)
	start := len(out)
	table = regexp.MustCompile(`(?m)^\d{10} 00000 n `).ReplaceAllFunc(table, func(entry []byte) []byte {
		n, _ := strconv.Atoi(string(entry[:10])) // ten digits
		return fmt.Appendf(nil, "%010d 00000 n ", n+len(marker))
	})
	table = regexp.MustCompile(`startxref\n\d+\n`).ReplaceAll(table, fmt.Appendf(nil, "startxref\n%d\n", start))
	return append(out, table...), start, nil
}

// textString is a text as a PDF holds it, in UTF-16 (ISO 32000-1, 7.9.2.2).
func textString(text string) string {
	out := "<FEFF"
	for _, unit := range utf16.Encode([]rune(text)) {
		out += fmt.Sprintf("%04X", unit)
	}
	return out + ">"
}

const (
	pointsPerInch = 72
	unitsPerInch  = 96 // of SVG
)

func userUnits(nm measure.NM) float64 { return float64(nm) * unitsPerInch / float64(measure.Inch) }

type xy struct{ x, y float64 }

type path struct {
	points []xy
	closed bool
}

// discCorners is how many corners stand for a circle.
const discCorners = 16

func disc(at xy, radius float64) []xy {
	list := make([]xy, discCorners)
	for i := range list {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / discCorners)
		list[i] = xy{at.x + float64(radius*cos), at.y + float64(radius*sin)}
	}
	return list
}
