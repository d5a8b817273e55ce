package render

import (
	"bytes"
	"fmt"
	"strconv"
	"time"
	"unicode/utf16"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/palettes"
)

// painter writes marks into a PDF. It is the one place that knows the PDF library.
type painter struct {
	*fpdf.Fpdf
	setter
	height float64 // of the page
	now    style
	raw    []byte // operators that are not yet handed over
}

const family = "go"

// paint writes the pages.
func paint(d document.Document, pages []sheetOfPaper, l look) ([]byte, error) {
	size := fpdf.SizeType{Wd: l.wide, Ht: l.high}
	p := &painter{Fpdf: fpdf.NewCustom(&fpdf.InitType{UnitStr: "pt", Size: size}), height: l.high}
	p.letters = diagram.NewLettering()
	p.SetCatalogSort(true)
	p.SetCreationDate(time.Unix(0, 0).UTC())
	p.SetModificationDate(time.Unix(0, 0).UTC())
	p.SetAutoPageBreak(false, 0)
	p.SetMargins(0, 0, 0)
	p.AddUTF8FontFromBytes(family, "", bytes.Clone(goregular.TTF))
	p.AddUTF8FontFromBytes(family, "B", bytes.Clone(gobold.TTF))
	for _, page := range pages {
		p.AddPageFormat("P", size)
		p.now = style{}
		for _, m := range page {
			m.paint(p, m.x, m.y)
		}
		p.flush()
		if p.Err() {
			return nil, fmt.Errorf("the PDF cannot be written: %w", p.Error())
		}
	}
	var file bytes.Buffer
	if err := p.Output(&file); err != nil {
		return nil, fmt.Errorf("the PDF cannot be written: %w", err)
	}
	return finish(file.Bytes(), d)
}

// flush hands over the operators that wait.
func (p *painter) flush() {
	if len(p.raw) > 0 {
		p.RawWriteStr(string(p.raw))
		p.raw = p.raw[:0]
	}
}

func (p *painter) op(name string) { p.raw = append(append(p.raw, name...), '\n') }

// numbers appends operands in points; a thousandth of one is a third of a micrometre.
func (p *painter) numbers(list ...float64) {
	for _, v := range list {
		p.raw = append(strconv.AppendFloat(p.raw, v, 'f', 3, 64), ' ')
	}
}

// at appends a place on the page, given with y downwards.
func (p *painter) at(x, y float64) { p.numbers(x, p.height-y) }

func (p *painter) colour(c palettes.Colour, op string) {
	p.numbers(float64(c.R)/255, float64(c.G)/255, float64(c.B)/255)
	p.op(op)
}

func (t text) paint(p *painter, x, y float64) { p.write(t.piece, x+t.x, y+t.base) }

// write sets a piece of text with its left end on the line at a place.
func (p *painter) write(t piece, x, y float64) {
	if t.shown == "" {
		return
	}
	p.face(t.style)
	p.flush()
	if t.meant != "" {
		p.instead(t.meant)
		defer p.RawWriteStr("EMC\n")
	}
	_, right, lower := t.set()
	p.Text(x+right, y+lower, t.shown)
}

// instead opens a span that stands for another text when the page is searched or copied.
func (p *painter) instead(meant string) {
	hex := []byte("/Span <</ActualText <FEFF")
	for _, unit := range utf16.Encode([]rune(meant)) {
		hex = fmt.Appendf(hex, "%04X", unit)
	}
	p.RawWriteStr(string(hex) + ">>> BDC\n")
}

// face sets font, size and colour where they change.
func (p *painter) face(st style) {
	if st == p.now {
		return
	}
	p.flush()
	name := ""
	if st.bold {
		name = "B"
	}
	size, _, _ := st.set()
	p.SetFont(family, name, size)
	p.SetTextColor(int(st.ink.R), int(st.ink.G), int(st.ink.B))
	p.now = st
}

func (b panel) paint(p *painter, x, y float64) {
	p.op("q")
	op := ""
	if b.fill != nil {
		p.colour(*b.fill, "rg")
		op = "f"
	}
	if b.line > 0 {
		p.colour(b.ink, "RG")
		p.numbers(b.line)
		p.op("w [] 0 d")
		op = map[string]string{"": "S", "f": "B"}[op]
	}
	if op == "" {
		op = "n"
	}
	p.at(x+b.x, y+b.y+b.h)
	p.numbers(b.w, b.h)
	p.op("re " + op + " Q")
}

// outline is a bookmark in its place.
type outline struct{ bookmark }

func (o outline) extent() rect { return rect{} }

func (o outline) paint(p *painter, _, y float64) {
	if p.now == (style{}) {
		p.face(style{size: 10, ink: ink()}) // so that the library takes the title for Unicode
	}
	p.Bookmark(twoBytes(o.text), o.level, y)
}

// twoBytes is text without signs that a title of the library's outline cannot hold.
func twoBytes(text string) string {
	list := []rune(text)
	for i, r := range list {
		if r > 0xFFFF {
			list[i] = stand
		}
	}
	return string(list)
}
