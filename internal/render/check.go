package render

import (
	"bytes"
	"errors"
	"fmt"
	"image/png"
	"strconv"
	"strings"
	"unicode/utf8"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
)

// Warning is something that a page does not show as it was asked for.
type Warning struct {
	Kind    Kind
	Page    int // from 1; 0 for none in particular
	Message string
}

// Kind is what a warning is about.
type Kind uint8

const (
	MissingSign  Kind = iota + 1 // the fonts lack a sign, and a mark stands in its place
	Overflow                     // something reaches beyond the margins: never but for a fault of this package
	TooSmall                     // an illustration is smaller than the least that was asked for
	StackedTable                 // a table is set row by row
	ShortPage                    // a page is less than half full, and no chapter ends there
)

// Limits of a document, checked before anything is laid out.
const (
	mostBytes   = 8 << 20 // of all texts
	mostTitle   = 1000    // bytes of a title, the maker and the copyright
	mostBlocks  = 200_000
	mostCells   = 500_000
	mostColumns = 60
	mostDepth   = 20
	mostAcross  = 12
	mostPixels  = 8000         // along a side of what lies beneath a picture
	leastRoom   = measure.Inch // between the margins, across and down
	mostPaper   = 200 * measure.Inch
)

// check says what is wrong with a document, nil for nothing.
func check(d document.Document) error {
	if line(d.Title) == "" {
		return errors.New("the document has no title, but one is needed")
	}
	if d.Language != "" && !isLanguageTag(d.Language) {
		return fmt.Errorf("the document's language is %s, but a tag such as \"en\" or \"pt-BR\" is needed", quoted(d.Language))
	}
	c := &checker{}
	c.text(d.Author, d.Subject, d.Keywords)
	c.title(d.Title, d.Maker, d.Copyright)
	if d.Cover != nil {
		c.title(d.Cover.Subtitle)
		c.texts(d.Cover.Lines...)
		if d.Cover.Picture != nil {
			c.block(*d.Cover.Picture, 0)
		}
	}
	for _, p := range d.Sections {
		c.title(p.Title)
		c.list(p.Blocks, 0)
	}
	return c.err
}

// checker counts what a document holds.
type checker struct {
	bytes, blocks, cells int
	err                  error
}

func (c *checker) fail(format string, values ...any) {
	if c.err == nil {
		c.err = fmt.Errorf(format, values...)
	}
}

func (c *checker) text(list ...string) {
	for _, s := range list {
		if c.bytes += len(s); c.bytes > mostBytes {
			c.fail("the document has more than %d bytes of text, the most that is laid out", mostBytes)
		}
	}
}

func (c *checker) title(list ...string) {
	c.text(list...)
	for _, s := range list {
		if len(s) > mostTitle {
			c.fail("the title %s has %d bytes, but %d is the most", quoted(s), len(s), mostTitle)
		}
	}
}

func (c *checker) texts(list ...document.Text) {
	for _, t := range list {
		for _, r := range t {
			c.text(r.Text)
		}
	}
}

func (c *checker) list(blocks []document.Block, depth int) {
	if depth > mostDepth {
		c.fail("blocks stand within blocks %d deep, but %d is the most", depth, mostDepth)
		return
	}
	for _, b := range blocks {
		if c.err != nil {
			return
		}
		c.block(b, depth)
	}
}

func (c *checker) block(b document.Block, depth int) {
	if c.blocks++; c.blocks > mostBlocks {
		c.fail("the document has more than %d blocks, the most that is laid out", mostBlocks)
		return
	}
	switch v := b.(type) {
	case document.Heading:
		c.text(v.Text)
	case document.Paragraph:
		c.texts(v.Text)
	case document.List:
		for _, i := range v.Items {
			c.texts(i.Text)
			c.list(i.Blocks, depth+1)
		}
	case document.Source:
		c.text(v.Lines...)
	case document.Table:
		c.table(v)
	case document.Gallery:
		for _, p := range v.Pictures {
			c.block(p, depth)
		}
	case document.Box:
		c.text(v.Word)
		c.list(v.Blocks, depth+1)
	case document.Together:
		c.list(v.Blocks, depth+1)
	case document.Figure:
		c.illustration(shapeOf(v))
	case document.Picture:
		c.illustration(shapeOf(v))
	case document.PageBreak, document.Ruled:
	default:
		c.fail("a block is a %T, which is none of the kinds of block", b)
	}
}

func (c *checker) illustration(s shape) {
	c.texts(s.caption)
	c.text(s.alternative)
	if s.alternative == "" {
		c.fail("an illustration has no alternative text, but one is needed for those who cannot see it")
	}
	if s.width < 0 || s.width > mostPaper || s.least < 0 || s.least > mostPaper {
		c.fail("the illustration %s is to be %s in wide, but 0 to %s in is the range", quoted(s.alternative),
			measure.Number(s.width, measure.Inches), measure.Number(mostPaper, measure.Inches))
	}
	if s.ground != nil {
		c.ground(s)
	}
	if f := &s.figure; f.Max.X < f.Min.X || f.Max.Y < f.Min.Y {
		c.fail("the frame of the illustration %s ends before it begins", quoted(s.alternative))
	}
}

// ground refuses what is no PNG file of a size that is printed.
func (c *checker) ground(s shape) {
	size, err := png.DecodeConfig(bytes.NewReader(s.ground))
	if err != nil || size.Width > mostPixels || size.Height > mostPixels {
		c.fail("what lies beneath the illustration %s is no PNG file of %d by %d pixels at the most", quoted(s.alternative), mostPixels, mostPixels)
	}
}

func (c *checker) table(t document.Table) {
	c.texts(t.Caption)
	if n := len(t.Columns); n < 1 || n > mostColumns {
		c.fail("a table has %s, but 1 to %d is the range", counted(n, "column"), mostColumns)
	}
	for _, column := range t.Columns {
		c.text(column.Title)
	}
	for _, r := range t.Rows {
		c.cells += max(1, len(r.Cells))
		if c.cells > mostCells {
			c.fail("the tables have more than %d cells, the most that is laid out", mostCells)
			return
		}
		if len(r.Cells) > len(t.Columns) {
			c.fail("a row has %s in a table of %s", counted(len(r.Cells), "cell"), counted(len(t.Columns), "column"))
		}
		for _, cell := range r.Cells {
			c.cell(cell)
		}
	}
}

func (c *checker) cell(cell document.Cell) {
	c.texts(cell.Text)
	for _, s := range cell.Swatches {
		c.text(s.Letter)
		n := utf8.RuneCountInString(line(s.Letter))
		if n == 0 && textLine(cell.Text) != "" {
			continue // the words beside it say what the color is
		}
		if n < 1 || n > 3 {
			c.fail("a swatch has the letter %s, but 1 to 3 letters are needed, since color alone says nothing to some", quoted(s.Letter))
		}
	}
}

// check says what is wrong with the paper, nil for nothing.
func (o Options) check() error {
	p := o.paper()
	if p.Width > mostPaper || p.Height > mostPaper {
		return fmt.Errorf("the page is %s by %s in, but %s in is the most", measure.Number(p.Width, measure.Inches),
			measure.Number(p.Height, measure.Inches), measure.Number(mostPaper, measure.Inches))
	}
	if o.Imposed && (!p.Fold || o.CropMarks) {
		return fmt.Errorf("only pages that are folded are imposed, and without crop marks")
	}
	l := o.look()
	if p.Margin < 0 || l.text() < points(leastRoom) || l.room() < points(leastRoom) {
		return fmt.Errorf("the page has room for %s by %s in of text, but at least %s by %s in is needed",
			inches(l.text()), inches(l.room()), inches(points(leastRoom)), inches(points(leastRoom)))
	}
	return nil
}

// inches writes points as inches with two decimals at the most.
func inches(points float64) string {
	s := strconv.FormatFloat(points/72, 'f', 2, 64)
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}

// quoted is a user's text in quotation marks, cut off where it is long.
func quoted(s string) string {
	const most = 60
	if utf8.RuneCountInString(s) > most {
		s = string([]rune(s)[:most]) + "…"
	}
	return strconv.Quote(s)
}

// isLanguageTag says whether a text has the form that all tags of languages share (BCP 47, RFC 5646, section 2.1): parts of
// one to eight letters and digits between hyphens, the first of at least two letters. Whether there is such a language, it
// does not say.
func isLanguageTag(tag string) bool {
	parts := strings.Split(tag, "-")
	for i, part := range parts {
		digit := strings.ContainsFunc(part, func(r rune) bool { return r >= '0' && r <= '9' })
		other := strings.ContainsFunc(part, func(r rune) bool { return !(r >= '0' && r <= '9' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z') })
		if other || len(part) < 1 || len(part) > 8 || i == 0 && (digit || len(part) < 2) {
			return false
		}
	}
	return true
}

// languageOf is the tag of a document's language.
func languageOf(d document.Document) string {
	if d.Language == "" {
		return "en-US"
	}
	return d.Language
}

// galleryColumns is how many illustrations stand side by side.
func galleryColumns(g document.Gallery) int {
	if g.Across < 1 {
		return 2
	}
	return min(g.Across, mostAcross)
}
