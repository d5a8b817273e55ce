package render

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/quilttest/readpdf"
)

// What stands on pages, read off the marks that are painted: words are not over words, rules or pictures; columns, lists and frames are in
// line; heads and feet say where the page belongs.

// stood is a mark on a page with where it reaches, from the page's upper left corner.
type stood struct {
	mark
	rect
}

// standing are the marks of a page.
func standing(p sheetOfPaper) (list []stood) {
	for _, s := range p {
		if _, is := s.mark.(outline); is {
			continue
		}
		r := s.extent()
		r.x, r.y = r.x+s.x, r.y+s.y
		list = append(list, stood{s.mark, r})
	}
	return list
}

// over says whether two rectangles lie over each other by more than a hair.
func over(a, b rect) bool {
	const hair = 0.3 // points
	return a.x+hair < b.x+b.w && b.x+hair < a.x+a.w && a.y+hair < b.y+b.h && b.y+hair < a.y+a.h
}

// struck are the words of a page that stand over other words, over a picture or under a rule.
func struck(list []stood) (wrong []string) {
	for i, a := range list {
		t, is := a.mark.(text)
		if !is || strings.TrimSpace(t.shown) == "" {
			continue
		}
		for k, b := range list {
			switch m := b.mark.(type) {
			case text:
				if k > i && m.tall == even && t.tall == even && strings.TrimSpace(m.shown) != "" && over(a.rect, b.rect) {
					wrong = append(wrong, fmt.Sprintf("%q stands over %q", t.shown, m.shown))
				}
			case art:
				if over(a.rect, b.rect) {
					wrong = append(wrong, fmt.Sprintf("%q stands over a picture", t.shown))
				}
			case panel:
				middle := rect{a.x, a.y + a.h*0.25, a.w, a.h * 0.45} // of the letters
				if b.h < 2 && over(middle, rect{b.x, b.y - 0.3, b.w, b.h + 0.6}) {
					wrong = append(wrong, fmt.Sprintf("a rule goes through %q", t.shown))
				}
			}
		}
	}
	return wrong
}

// wrongRunning is what the head and the foot of a page lack: title and chapter, copyright and number, each at its margin, on one line.
func wrongRunning(b *builder, d document.Document, list []stood, p page, number [2]int) (wrong []string) {
	left, right := b.margin, b.wide-b.margin
	at := func(said string, x float64, end bool) bool {
		return slices.ContainsFunc(list, func(s stood) bool {
			t, is := s.mark.(text)
			edge, part := s.x, strings.HasPrefix(said, strings.TrimSpace(t.shown))
			if end {
				edge, part = s.x+s.w, strings.HasSuffix(said, t.shown)
			}
			return is && part && t.shown != "" && math.Abs(edge-x) < 0.2 && (s.y < b.top || s.y > b.bottom)
		})
	}
	want := fmt.Sprintf("Page %d of %d", number[0], number[1])
	if !at(want, right, true) {
		wrong = append(wrong, want+" is not at the right of the foot")
	}
	title, part := line(d.Title), ""
	if p.part >= 0 {
		part = line(d.Sections[p.part].Title)
	}
	small := typed(b.small, false, grey())
	if b.width(title, small)+b.width(part, small) > b.text()*0.8 || strings.ContainsFunc(title+part, func(r rune) bool { return r > 126 }) {
		return wrong // something is cut off, or set in pieces
	}
	if title != "" && !at(title, left, false) {
		wrong = append(wrong, title+" is not at the left of the head")
	}
	if part != "" && !at(part, right, true) {
		wrong = append(wrong, part+" is not at the right of the head")
	}
	return wrong
}

// wrongWidths is which words are said to be as wide as they are not.
func wrongWidths(b *builder, list []stood) (wrong []string) {
	for _, s := range list {
		if t, is := s.mark.(text); is && math.Abs(t.width-b.width(t.shown, t.style)) > 0.5 {
			wrong = append(wrong, fmt.Sprintf("%q is %.2f wide, not %.2f", t.shown, b.width(t.shown, t.style), t.width))
		}
	}
	return wrong
}

// wrongFlow is what stands on a page in another order than it was built, or not below what it follows.
func wrongFlow(p page, b *builder) (wrong []string) {
	for k := range p.placed {
		s := &p.placed[k]
		if s.y < b.top-0.01 || s.y+s.height > b.bottom+0.01 {
			wrong = append(wrong, fmt.Sprintf("slice %d goes from %.1f to %.1f", s.order, s.y, s.y+s.height))
		}
		if k == 0 {
			continue
		}
		before := &p.placed[k-1]
		if gap := s.y - before.y - before.height; gap < -0.01 || gap < s.above-0.01 && !before.again && !s.again {
			wrong = append(wrong, fmt.Sprintf("slice %d stands %.1f below the one before it, wanted %.1f", s.order, gap, s.above))
		}
	}
	return wrong
}

// wrongTables is where cells of a column are not in line: the left edges of words, the right edges of numbers, and rules that are not as wide.
func wrongTables(p page) (wrong []string) {
	for k := range p.placed {
		s := &p.placed[k]
		reach := math.Inf(-1)
		for column, cell := range s.cells {
			first, last := math.Inf(1), math.Inf(-1)
			for _, m := range cell {
				r := m.extent()
				first, last = min(first, r.x), max(last, r.x+r.w)
			}
			if first < reach+2 && len(cell) > 0 {
				wrong = append(wrong, fmt.Sprintf("column %d begins at %.1f, the one before it ends at %.1f", column+1, first, reach))
			}
			reach = max(reach, last)
		}
		for _, m := range s.marks {
			if r, is := m.(panel); is && s.row > 0 && r.h < 2 && r.w > 60 && reach > r.x+r.w+0.5 {
				wrong = append(wrong, fmt.Sprintf("a rule ends at %.1f, the row at %.1f", r.x+r.w, reach))
			}
		}
	}
	return wrong
}

// wrongFrames is which slice of a frame has words beyond it on a page, or too near its edge.
func wrongFrames(p page, l look) (wrong []string) {
	framed := p.framed(l.margin)
	if len(framed)%2 != 0 {
		return []string{"a frame has no bar"}
	}
	for k := 0; k < len(framed); k += 2 {
		f, bar := framed[k].extent(), framed[k+1].extent()
		if math.Abs(bar.x-f.x) > 0.01 || math.Abs(bar.h-f.h) > 0.01 || math.Abs(bar.y-f.y) > 0.01 || bar.w <= 0 {
			wrong = append(wrong, fmt.Sprintf("a bar %v in a frame %v", bar, f))
		}
		for i := range p.placed {
			s := &p.placed[i]
			within := s.y >= f.y-0.01 && s.y+s.height <= f.y+f.h+0.01
			if within != slices.ContainsFunc(s.frames, func(g *frame) bool { return math.Abs(g.x-f.x) < 0.01 && math.Abs(g.w-f.w) < 0.01 }) && !s.again {
				if !within {
					continue // of another frame of that width
				}
				wrong = append(wrong, fmt.Sprintf("slice %d lies in a frame that is not its own", s.order))
			}
			for _, m := range s.marks {
				r := m.extent()
				if _, is := m.(text); is && within && (r.x < f.x+bar.w+1 || r.x+r.w > f.x+f.w-1) {
					wrong = append(wrong, fmt.Sprintf("words from %.1f to %.1f in a frame from %.1f to %.1f", r.x, r.x+r.w, f.x, f.x+f.w))
				}
			}
		}
	}
	return wrong
}

// wrongPages is all that is wrong with pages.
func wrongPages(b *builder, d document.Document, pages []page) (wrong []string) {
	for i, sheet := range b.decorated(d, pages) {
		list := standing(sheet)
		found := slices.Concat(struck(list), wrongWidths(b, list), wrongFlow(pages[i], b), wrongTables(pages[i]), wrongFrames(pages[i], b.look))
		if !(d.Cover != nil && i == 0 || back(d) && i == len(pages)-1) {
			found = append(found, wrongRunning(b, d, list, pages[i], [2]int{i + 1, len(pages)})...)
		} else if slices.ContainsFunc(list, func(s stood) bool { return s.y+s.h < b.top-b.small*1.7 || s.y > b.bottom+b.small }) {
			found = append(found, "a cover has a head or a foot")
		}
		for _, what := range found {
			wrong = append(wrong, fmt.Sprintf("page %d: %s", i+1, what))
		}
	}
	return wrong
}

// TestPagesStandInLine: see wrongPages, of documents with everything and of invented ones, on every paper.
func TestPagesStandInLine(t *testing.T) {
	seen := 0
	ask := func(name string, d document.Document, o Options) {
		b, pages := laid(t, d.Print(), o)
		for _, wrong := range wrongPages(b, d.Print(), pages) {
			t.Errorf("%s: %s", name, wrong)
		}
		seen += len(pages)
	}
	for _, p := range Papers() {
		ask("sample on "+p.Name, sample(), Options{Paper: p})
	}
	ask("sample, large", sample(), Options{Large: true})
	for seed := range uint64(judges.Of(25, 200)) {
		d, v := invent(seed)
		if o := v.paperFor(); o.paper().Name != "small" {
			ask(fmt.Sprint("seed ", seed), d, o)
		}
	}
	if seen < 50 {
		t.Errorf("only %d pages", seen)
	}
}

// TestPagesStandInLineCatches: words that are moved onto others, a cell beyond its column, a number that is missing are noticed.
func TestPagesStandInLineCatches(t *testing.T) {
	b, pages := laid(t, sample(), Options{})
	for name, broken := range map[string]func(p *page){
		"a slice that is too near": func(p *page) { p.placed[2].y = p.placed[1].y + 1 },
		"a cell beyond its column": func(p *page) {
			for i := range p.placed {
				if cells := p.placed[i].cells; len(cells) > 1 && len(cells[0]) > 0 {
					cells[0] = append(slices.Clone(cells[0]), panel{rect: rect{0, 0, 500, 5}})
				}
			}
		},
		"words beyond their frame": func(p *page) {
			for i := range p.placed {
				if len(p.placed[i].frames) > 0 {
					p.placed[i].marks = append(slices.Clone(p.placed[i].marks), text{x: 0.5, base: 10, piece: b.piece("x", typed(9, false, diagram.Black()))})
				}
			}
		},
	} {
		list := slices.Clone(pages)
		for i := range list[1:] {
			list[i+1].placed = slices.Clone(list[i+1].placed)
			for k := range list[i+1].placed {
				list[i+1].placed[k].cells = slices.Clone(list[i+1].placed[k].cells)
			}
			if len(list[i+1].placed) > 2 {
				broken(&list[i+1])
			}
		}
		if len(wrongPages(b, sample(), list)) == 0 {
			t.Errorf("%s is not noticed", name)
		}
	}
	if len(wrongPages(b, sample(), pages)) > 0 {
		t.Error("pages that nobody touched are wrong")
	}
}

// hasFrame says whether a slice of a page lies in a frame at a place across the page.
func (p page) hasFrame(x, w float64) bool {
	return slices.ContainsFunc(p.placed, func(s placed) bool {
		return slices.ContainsFunc(s.frames, func(f *frame) bool { return math.Abs(f.x-x) < 0.01 && math.Abs(f.w-w) < 0.01 })
	})
}

// inventory is what a document has: illustrations, boxes, and headings that have words.
type inventory struct{ pictures, boxes, headings int }

func inventoryOf(d document.Document) (n inventory) {
	var blocks func(list []document.Block)
	blocks = func(list []document.Block) {
		for _, block := range list {
			switch v := block.(type) {
			case document.Heading:
				if line(v.Text) != "" {
					n.headings++
				}
			case document.List:
				for _, item := range v.Items {
					blocks(item.Blocks)
				}
			case document.Figure, document.Picture:
				n.pictures++
			case document.Gallery:
				n.pictures += len(v.Pictures)
			case document.Box:
				n.boxes++
				blocks(v.Blocks)
			case document.Together:
				blocks(v.Blocks)
			}
		}
	}
	if d.Cover != nil && d.Cover.Picture != nil {
		n.pictures++
	}
	if line(d.Title) != "" {
		n.headings++
	}
	for _, s := range d.Sections {
		if line(s.Title) != "" {
			n.headings++
		}
		blocks(s.Blocks)
	}
	return n
}

// printedOf is what stands on pages: the words between head and foot, and what is counted.
func printedOf(b *builder, d document.Document, pages []page) (words string, n inventory) {
	frames := map[*frame]bool{}
	drawn := 0 // frames, once on each page that they come to
	var said strings.Builder
	for _, sheet := range b.decorated(d, pages) {
		for _, s := range sheet {
			switch m := s.mark.(type) {
			case art:
				n.pictures++
			case outline:
				n.headings++
			case text:
				if m.of == nil {
					continue // heads and feet, and heads of tables that are repeated
				}
				if m.meant != "" {
					said.WriteString(m.meant)
				} else {
					said.WriteString(m.shown)
				}
			case panel:
				if m.fill != nil && m.line > 0 && m.h > 0 && slices.ContainsFunc(pages, func(p page) bool { return p.hasFrame(m.x-m.line/2, m.w+m.line) }) {
					drawn++
				}
			}
		}
	}
	for _, p := range pages {
		for i := range p.placed {
			for _, f := range p.placed[i].frames {
				frames[f] = true
			}
		}
	}
	if n.boxes = len(frames); drawn < n.boxes {
		n.boxes = drawn
	}
	return said.String(), n
}

// TestPagesHoldEverything: all words of a document stand on its pages and so do its pictures, its
// boxes and the entries of its outline.
func TestPagesHoldEverything(t *testing.T) {
	for seed := range uint64(judges.Of(30, 200)) {
		d, v := invent(seed)
		b, pages := laid(t, d.Print(), v.paperFor())
		words, got := printedOf(b, d.Print(), pages)
		have, _ := wordsOf(words, nil)
		wanted := said(d)
		if d.Cover != nil {
			wanted += d.Copyright // else in the feet alone
		}
		all, _ := wordsOf(wanted, nil)
		loose := func(w string) bool { return v.heads[w] || len(w) > 40 } // heads may stand for empty cells, and long words on two pages
		have, all = slices.DeleteFunc(have, loose), slices.DeleteFunc(all, loose)
		slices.Sort(have)
		slices.Sort(all)
		if !slices.Equal(have, all) {
			t.Errorf("seed %d: there are %d words, wanted %d; missing %q, too many %q", seed, len(have), len(all), lacking(all, have), lacking(have, all))
		}
		want := inventoryOf(d.Print())
		if got != want {
			t.Errorf("seed %d: there are %+v, wanted %+v", seed, got, want)
		}
	}
}

// lacking is what a sorted list has that another has not.
func lacking(list, other []string) (rest []string) {
	for _, w := range list {
		if _, is := slices.BinarySearch(other, w); !is {
			rest = append(rest, w)
		}
	}
	return rest
}

// TestTablesStandApart: above and below a table, set in columns or row by row, there is more room than between its rows.
func TestTablesStandApart(t *testing.T) {
	for name, words := range map[string]string{"in columns": "a", "row by row": strings.Repeat("w", 60)} {
		table := document.Table{Columns: make([]document.Column, 12)}
		for range 3 {
			row := document.Row{}
			for range table.Columns {
				row.Cells = append(row.Cells, document.Cell{Text: document.Plain(words)})
			}
			table.Rows = append(table.Rows, row)
		}
		small := document.Paragraph{Text: document.Plain("p")}
		b := newBuilder(Options{}.look())
		list := b.document(document.Document{Title: "t", Sections: []document.Section{{Blocks: []document.Block{small, table, document.Box{Blocks: []document.Block{small}}, table, document.List{Items: []document.Item{{Text: document.Plain("i")}}}}}}})
		rows := slices.ContainsFunc(list, func(s slice) bool { return s.row > 0 })
		if rows != (name == "in columns") {
			t.Fatalf("%s: set in rows: %v", name, rows)
		}
		first := slices.IndexFunc(list, func(s slice) bool { return len(s.marks) > 0 && shows(s, "p") }) + 1
		if list[first].above < 0.75*b.body {
			t.Errorf("%s: %.1f above a table", name, list[first].above)
		}
		if last := list[len(list)-1]; !shows(last, "i") || last.above < 0.75*b.body {
			t.Errorf("%s: %.1f below a table", name, last.above)
		}
	}
}

// shows says whether a slice has a text.
func shows(s slice, said string) bool {
	return slices.ContainsFunc(s.marks, func(m mark) bool {
		t, is := m.(text)
		return is && t.shown == said
	})
}

// TestLinesToWriteOnArePaper: a chapter that is nothing but lines to write on is left out where there is no paper, and no other.
func TestLinesToWriteOnArePaper(t *testing.T) {
	d := document.Document{Title: "t", Sections: []document.Section{{Title: "Aaa", Blocks: []document.Block{document.Ruled{}, document.Ruled{}}}, {Title: "Bbb", Blocks: []document.Block{document.Ruled{}, document.Paragraph{Text: document.Plain("p")}}}, {Title: "Ccc"}}}
	page, err := HTML(d)
	if err != nil {
		t.Fatal(err)
	}
	for title, there := range map[string]bool{"Aaa": false, "Bbb": true, "Ccc": true} {
		if strings.Contains(string(page), title) != there {
			t.Errorf("%s stands on the page: %v", title, !there)
		}
	}
}

// TestLayersAreFilled: layers with a color are filled with it, those without are lines, as SVG and in a PDF.
func TestLayersAreFilled(t *testing.T) {
	square := [][]measure.Point{{{}, {X: measure.Inch}, {X: measure.Inch, Y: measure.Inch}}}
	red := rgb("#c01020")
	for _, filled := range []bool{false, true} {
		l := document.Layer{Name: "l", Line: 1, Ink: rgb("#0040a0"), Paths: square}
		if filled {
			l.Fill = &red
		}
		s := shapeOf(document.Picture{Alternative: "a", Of: document.Drawing{Max: measure.Point{X: measure.Inch, Y: measure.Inch}, Layers: []document.Layer{l}}})
		file, err := s.svg(true)
		if err != nil {
			t.Fatal(err)
		}
		if strings.Contains(string(file), "#c01020") != filled || !strings.Contains(string(file), "#0040a0") || strings.Contains(string(file), `fill="none"`) == filled {
			t.Errorf("filled %v: %s", filled, file)
		}
		picture := document.Picture{Alternative: "a", Of: document.Drawing{Max: measure.Point{X: measure.Inch, Y: measure.Inch}, Layers: []document.Layer{l}}}
		printed, err := PDF(document.Document{Title: "t", Sections: []document.Section{{Blocks: []document.Block{picture}}}}, Options{})
		if err != nil {
			t.Fatal(err)
		}
		text, err := readpdf.Text(printed.File)
		if err != nil {
			t.Fatal(err)
		}
		if inRed, inBlue := strings.Contains(text, "0.753 0.0628 0.1255 rg\n"), strings.Contains(text, "0 0.251 0.6275 RG\n"); inRed != filled || !inBlue {
			t.Errorf("filled %v: in the PDF, red is filled with: %v, the line is blue: %v", filled, inRed, inBlue)
		}
	}
}

// TestHeadingsAcrossStandWhole: a heading across a table is not broken between letters where its columns are narrower than its words.
func TestHeadingsAcrossStandWhole(t *testing.T) {
	table := document.Table{Columns: make([]document.Column, 2), Rows: []document.Row{{Cells: cells("Background")}, {Cells: cells("1", "2")}}}
	b := newBuilder(Options{}.look())
	for _, s := range b.document(document.Document{Title: "t", Sections: []document.Section{{Blocks: []document.Block{table}}}}) {
		for _, cell := range s.cells {
			for _, m := range cell {
				if said := m.(text).shown; said != "Background" && said != "1" && said != "2" {
					t.Errorf("%q is a part of a word", said)
				}
			}
		}
	}
}
