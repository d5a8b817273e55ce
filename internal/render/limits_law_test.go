package render

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
)

// oneMore are documents that have one letter more, each in another place where a text may stand.
func oneMore() map[string]func(d *document.Document) {
	put := func(b document.Block) func(d *document.Document) {
		return func(d *document.Document) { d.Sections[0].Blocks = append(d.Sections[0].Blocks, b) }
	}
	x := document.Plain("x")
	cell := func(c document.Cell) document.Block {
		return document.Table{Columns: make([]document.Column, 1), Rows: []document.Row{{Cells: []document.Cell{c}}}}
	}
	return map[string]func(d *document.Document){
		"heading": put(document.Heading{Text: "x"}), "paragraph": put(document.Paragraph{Text: x}), "source": put(document.Source{Lines: []string{"x"}}),
		"item": put(document.List{Items: []document.Item{{Text: x}}}), "block of an item": put(document.List{Items: []document.Item{{Blocks: []document.Block{document.Paragraph{Text: x}}}}}),
		"caption of a table": put(document.Table{Caption: x, Columns: make([]document.Column, 1)}), "head": put(document.Table{Columns: []document.Column{{Title: "x"}}}),
		"cell": put(cell(document.Cell{Text: x})), "swatch": put(cell(document.Cell{Swatches: []document.Swatch{{Letter: "x"}}})),
		"word of a box": put(document.Box{Word: "x"}), "block of a box": put(document.Box{Blocks: []document.Block{document.Paragraph{Text: x}}}),
		"together": put(document.Together{Blocks: []document.Block{document.Paragraph{Text: x}}}), "alternative": put(document.Picture{Alternative: "x"}),
		"gallery": put(document.Gallery{Pictures: []document.Illustration{document.Picture{Alternative: "x"}}}),
		"section": func(d *document.Document) { d.Sections[0].Title = "x" }, "author": func(d *document.Document) { d.Author = "x" },
		"subject": func(d *document.Document) { d.Subject = "x" }, "keywords": func(d *document.Document) { d.Keywords = "x" },
		"maker": func(d *document.Document) { d.Maker = "x" }, "copyright": func(d *document.Document) { d.Copyright = "x" },
		"subtitle":        func(d *document.Document) { d.Cover = &document.Cover{Subtitle: "x"} },
		"line of a cover": func(d *document.Document) { d.Cover = &document.Cover{Lines: []document.Text{x}} },
		"picture of a cover": func(d *document.Document) {
			d.Cover = &document.Cover{Picture: &document.Picture{Alternative: "x"}}
		},
	}
}

// TestEveryTextCounts: as much text as may be is taken, and one letter more in any place is not.
func TestEveryTextCounts(t *testing.T) {
	full := document.Plain(strings.Repeat("a", mostBytes-1))
	whole := func() document.Document {
		return document.Document{Title: "t", Sections: []document.Section{{Blocks: []document.Block{document.Paragraph{Text: full}}}}}
	}
	if err := check(whole()); err != nil {
		t.Fatal(err)
	}
	for name, more := range oneMore() {
		d := whole()
		if more(&d); check(d) == nil {
			t.Errorf("one letter more as %s is taken", name)
		}
	}
}

// pngOf is the head of a PNG file (ISO/IEC 15948, 11.2.2) that says how large it is.
func pngOf(width, height uint32) []byte {
	head := binary.BigEndian.AppendUint32(binary.BigEndian.AppendUint32([]byte("IHDR"), width), height)
	head = append(head, 8, 0, 0, 0, 0)
	file := append([]byte("\x89PNG\r\n\x1a\n\x00\x00\x00\r"), head...)
	return binary.BigEndian.AppendUint32(file, crc32.ChecksumIEEE(head))
}

// TestLimitsFromBothSides: what is just within each limit is taken, what is just beyond is not.
func TestLimitsFromBothSides(t *testing.T) {
	with := func(list ...document.Block) document.Document {
		return document.Document{Title: "t", Sections: []document.Section{{Blocks: list}}}
	}
	nested := func(depth int) document.Document {
		b := document.Block(document.PageBreak{})
		for range depth {
			b = document.Together{Blocks: []document.Block{b}}
		}
		return with(b)
	}
	wide := make([]document.Cell, mostColumns)
	cells := func(n int) document.Document {
		table := document.Table{Columns: make([]document.Column, mostColumns)}
		for ; n >= mostColumns; n -= mostColumns {
			table.Rows = append(table.Rows, document.Row{Cells: wide})
		}
		for range n { // an empty row counts as one cell
			table.Rows = append(table.Rows, document.Row{})
		}
		return with(table)
	}
	picture := func(change func(p *document.Picture)) document.Document {
		p := document.Picture{Alternative: "a"}
		change(&p)
		return with(p)
	}
	pixels := func(w, h uint32) document.Document {
		return picture(func(p *document.Picture) { p.Of.Ground = pngOf(w, h) })
	}
	least := func(nm measure.NM) document.Document { return picture(func(p *document.Picture) { p.Least = nm }) }
	asked := func(nm measure.NM) document.Document { return picture(func(p *document.Picture) { p.Width = nm }) }
	to := func(x, y measure.NM) document.Document {
		return picture(func(p *document.Picture) { p.Of.Max = measure.Point{X: x, Y: y} })
	}
	letter := func(s string) document.Document {
		return with(document.Table{Columns: make([]document.Column, 1), Rows: []document.Row{{Cells: []document.Cell{{Swatches: []document.Swatch{{Letter: s}}}}}}})
	}
	for name, c := range map[string][2]document.Document{
		"depth":       {nested(mostDepth), nested(mostDepth + 1)},
		"columns":     {with(document.Table{Columns: make([]document.Column, mostColumns)}), with(document.Table{Columns: make([]document.Column, mostColumns+1)})},
		"one column":  {with(document.Table{Columns: make([]document.Column, 1)}), with(document.Table{})},
		"blocks":      {with(breaksOf(mostBlocks)...), with(breaksOf(mostBlocks + 1)...)},
		"cells":       {cells(mostCells), cells(mostCells + 1)},
		"a title":     {{Title: strings.Repeat("a", mostTitle)}, {Title: strings.Repeat("a", mostTitle+1)}},
		"pixels":      {pixels(mostPixels, mostPixels), pixels(mostPixels+1, 1)},
		"pixels down": {pixels(1, mostPixels), pixels(1, mostPixels+1)},
		"wide":        {asked(mostPaper), asked(mostPaper + 1)}, "not wide": {asked(0), asked(-1)},
		"at least": {least(mostPaper), least(mostPaper + 1)}, "not at least": {least(0), least(-1)},
		"frame": {to(0, 0), to(-1, 0)}, "frame down": {to(0, 0), to(0, -1)},
		"letters": {letter("abc"), letter("abcd")}, "a letter": {letter("é"), letter(" ")},
	} {
		if err := check(c[0]); err != nil {
			t.Errorf("%s: what is within is refused: %v", name, err)
		}
		if check(c[1]) == nil {
			t.Errorf("%s: what is beyond is taken", name)
		}
	}
}

// breaksOf are so many blocks.
func breaksOf(n int) []document.Block {
	list := make([]document.Block, n)
	for i := range list {
		list[i] = document.PageBreak{}
	}
	return list
}

// TestLanguageTags: examples of BCP 47 (RFC 5646, appendix A), and what lies just beside its letters and digits.
func TestLanguageTags(t *testing.T) {
	for _, tag := range []string{"de", "zh-Hant", "zh-cmn-Hans-CN", "sl-rozaj-biske", "de-CH-1901", "de-Latn-DE-1996", "es-419", "en-US-u-islamcal", "az-ZA-a09", "zz", "AZ", "abcdefgh-abcdefgh-1"} {
		if !isLanguageTag(tag) {
			t.Errorf("%s is not taken for a tag", tag)
		}
	}
	for _, tag := range []string{"", "a-DE", "a", "d0", "d1", "d9", "0d", "9d", "1de", "en-", "-en", "en--us", "abcdefghi", "en-abcdefghi", "en us", "e`", "e{", "e@", "e[", "en-/", "en-:", "én"} {
		if isLanguageTag(tag) {
			t.Errorf("%s is taken for a tag", tag)
		}
	}
}

// TestPapersFromBothSides: the least and the most paper is printed on, and a hair beyond is not.
func TestPapersFromBothSides(t *testing.T) {
	room := func(width, height measure.NM) (o Options) {
		o.Paper = Paper{Width: width, Height: height, Margin: 0}
		return o
	}
	l := room(10*measure.Inch, 10*measure.Inch).look()
	between := measure.NM((l.high - l.room()) / 72 * float64(measure.Inch))
	fold := Paper{Width: 5 * measure.Inch, Height: 8 * measure.Inch, Margin: measure.Inch / 2, Fold: true}
	for name, c := range map[string][2]Options{
		"wide":      {room(mostPaper, 9*measure.Inch), room(mostPaper+1, 9*measure.Inch)},
		"high":      {room(9*measure.Inch, mostPaper), room(9*measure.Inch, mostPaper+1)},
		"high room": {room(9*measure.Inch, measure.Inch+between+1000), room(9*measure.Inch, measure.Inch+between-1000)},
		"wide room": {room(measure.Inch, 9*measure.Inch), room(measure.Inch-1000, 9*measure.Inch)},
		"imposed":   {{Paper: fold, Imposed: true}, {Imposed: true}},
		"cut":       {{Paper: fold, CropMarks: true}, {Paper: fold, CropMarks: true, Imposed: true}},
	} {
		if err := c[0].check(); err != nil {
			t.Errorf("%s: what is within is refused: %v", name, err)
		}
		if c[1].check() == nil {
			t.Errorf("%s: what is beyond is taken", name)
		}
	}
}

var (
	openList = regexp.MustCompile(`<ol(?: start="([0-9]+)")?>|<ul( class="tick")?>`)
	svgSize  = regexp.MustCompile(`<svg [^>]*width="([0-9.]+)(in|cm|mm|pt|px)?" height="([0-9.]+)`)
)

// TestListsCountOn: a list in HTML begins with its own number, and says what it is.
func TestListsCountOn(t *testing.T) {
	var lists []document.Block
	var want []string
	for first := range 4 {
		for _, marker := range []document.Marker{document.Numbered, document.Tick, document.Bullet} {
			lists = append(lists, document.List{Marker: marker, First: first, Items: []document.Item{{Text: document.Plain("x")}}})
			switch {
			case marker == document.Tick:
				want = append(want, ` class="tick"`)
			case marker == document.Numbered && first > 1:
				want = append(want, strconv.Itoa(first))
			default:
				want = append(want, "")
			}
		}
	}
	page, err := HTML(document.Document{Title: "t", Sections: []document.Section{{Blocks: lists}}})
	if err != nil {
		t.Fatal(err)
	}
	_, main, _ := strings.Cut(string(page), "<main>")
	var got []string
	for _, m := range openList.FindAllStringSubmatch(main, -1) {
		got = append(got, m[1]+m[2])
	}
	if fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("lists begin with %q, wanted %q", got, want)
	}
}

// TestPicturesAreAsLargeAsAsked: on a page in HTML a picture is as wide as it was asked for, and where nothing was asked as wide as the text or as
// high as a page, whichever comes first; in a file of its own it leaves room for its caption.
func TestPicturesAreAsLargeAsAsked(t *testing.T) {
	for _, c := range []struct {
		wide, high, asked measure.NM
		inline            bool
		w, h              float64 // inches
	}{
		{10, 10, 3, true, 3, 3}, {10, 40, 3, true, 3, 12}, {10, 10, 0, true, 6.5, 6.5}, {10, 40, 0, true, 2, 8},
		{10, 10, 3, false, 3, 3}, {10, 40, 3, false, 1.875, 7.5}, {10, 10, 0, false, 6.5, 6.5}, {10, 40, 0, false, 1.625, 6.5},
	} {
		p := document.Picture{Alternative: "a", Width: c.asked * measure.Inch, Of: document.Drawing{Max: measure.Point{X: c.wide * measure.Inch, Y: c.high * measure.Inch}}}
		s := shapeOf(p)
		file, err := s.svg(c.inline)
		if err != nil {
			t.Fatal(err)
		}
		m := svgSize.FindSubmatch(bytes.ReplaceAll(file, []byte("\n"), []byte(" ")))
		if m == nil {
			t.Fatalf("%.300s", file)
		}
		per := map[string]float64{"in": 1, "cm": 2.54, "mm": 25.4, "pt": 72, "px": 96, "": 96}[string(m[2])]
		w, _ := strconv.ParseFloat(string(m[1]), 64)
		h, _ := strconv.ParseFloat(string(m[3]), 64)
		if w, h = w/per, h/per; max(w-c.w, c.w-w, h-c.h, c.h-h) > 0.05+c.h/60 {
			t.Errorf("%+v: it is %.3f by %.3f in", c, w, h)
		}
	}
}
