package render

import (
	"bytes"
	"eighthturn/internal/document"
	"fmt"
	"html"
	"regexp"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/alone"
)

var (
	wordShape = regexp.MustCompile(`q[0-9]+[a-p]*z`)
	notText   = regexp.MustCompile(`(?s)<head>.*?</head>|<nav.*?</nav>|<div class="plate">.*?</div>|<[^>]*>`)
	titled    = regexp.MustCompile(`(?s)<div class="plate">\n<svg [^>]*role="img"[^>]*>\s*<title>[^<]+</title>\s*<desc>[^<]+</desc>`)
	blanks    = regexp.MustCompile(`\s+`)
)

// wordsOf are the invented words in a text, each where it comes first, with the heads of
// tables left out of the order, and the heads, sorted.
func wordsOf(text string, heads map[string]bool) (order, tops []string) {
	seen := map[string]bool{}
	for _, w := range wordShape.FindAllString(blanks.ReplaceAllString(text, ""), -1) {
		switch {
		case seen[w]:
			continue
		case heads[w]:
			tops = append(tops, w)
		default:
			order = append(order, w)
		}
		seen[w] = true
	}
	slices.Sort(tops)
	return order, tops
}

// missed says where a text does not hold all words in order, "" for nowhere.
func missed(text string, wanted string, heads map[string]bool) string {
	got, gotTops := wordsOf(text, heads)
	want, wantTops := wordsOf(wanted, heads)
	for i, w := range want {
		if i >= len(got) || got[i] != w {
			return fmt.Sprintf("word %d of %d is %q, want %q", i, len(want), strings.Join(got[min(i, len(got)):min(i+1, len(got))], ""), w)
		}
	}
	if len(got) > len(want) {
		return fmt.Sprintf("%d words too many", len(got)-len(want))
	}
	if !slices.Equal(gotTops, wantTops) {
		return "heads of tables are missing"
	}
	return ""
}

// said is the text of a document in reading order.
func said(d document.Document) string {
	var b strings.Builder
	add := func(list ...string) {
		for _, s := range list {
			b.WriteString(s + "\n")
		}
	}
	var blocks func([]document.Block)
	blocks = func(list []document.Block) {
		for _, block := range list {
			switch v := block.(type) {
			case document.Heading:
				add(v.Text)
			case document.Paragraph:
				add(v.Text.String())
			case document.List:
				for _, i := range v.Items {
					add(i.Text.String())
					blocks(i.Blocks)
				}
			case document.Table:
				add(v.Caption.String())
				for _, c := range v.Columns {
					add(c.Title)
				}
				for _, r := range v.Rows {
					for _, c := range r.Cells {
						add(c.Text.String())
					}
				}
			case document.Gallery:
				for _, p := range v.Pictures {
					add(shapeOf(p).caption.String())
				}
			case document.Figure:
				if textLine(v.Caption) == "" {
					add(v.Of.Title)
				}
				add(v.Caption.String())
			case document.Picture:
				add(v.Caption.String())
			case document.Box:
				add(v.Head())
				blocks(v.Blocks)
			case document.Together:
				blocks(v.Blocks)
			}
		}
	}
	add(d.Title)
	if d.Cover != nil {
		add(d.Cover.Subtitle)
	}
	add(d.Maker)
	if d.Cover != nil {
		if d.Cover.Picture != nil {
			add(shapeOf(*d.Cover.Picture).caption.String())
		}
		for _, t := range d.Cover.Lines {
			add(t.String())
		}
	}
	for _, p := range d.Sections {
		add(p.Title)
		blocks(p.Blocks)
	}
	return b.String()
}

// webText is the text of a page in HTML without what stands in pictures and contents.
func webText(page []byte) string {
	return html.UnescapeString(notText.ReplaceAllString(string(page), ""))
}

func TestWebHoldsTheText(t *testing.T) {
	for seed := range uint64(60) {
		d, v := invent(seed)
		page, err := HTML(d)
		if err != nil {
			t.Fatal(err)
		}
		if wrong := missed(webText(page), said(d)+d.Copyright, v.heads); wrong != "" {
			t.Errorf("seed %d: %s", seed, wrong)
		}
		if n := bytes.Count(page, []byte(`role="img"`)); n != v.figures {
			t.Errorf("seed %d: %d pictures, want %d", seed, n, v.figures)
		}
		if n := len(titled.FindAll(page, -1)); n != v.figures {
			t.Errorf("seed %d: %d pictures have a name and a description, want %d", seed, n, v.figures)
		}
		if !bytes.Contains(page, []byte(`<meta http-equiv="Content-Security-Policy" content="default-src 'none';`)) {
			t.Errorf("seed %d: the page does not forbid scripts", seed)
		}
		for _, wrong := range alone.Requests(page) {
			t.Errorf("seed %d: the page does not stand alone: %s", seed, wrong)
		}
		again, _ := HTML(d)
		if !bytes.Equal(page, again) {
			t.Errorf("seed %d: two pages of one document differ", seed)
		}
	}
}

func TestWebTextCatches(t *testing.T) {
	d, v := invent(3)
	page, _ := HTML(d)
	words := wordShape.FindAllString(webText(page), -1)
	cut := strings.ReplaceAll(webText(page), words[len(words)/2], "")
	if missed(cut, said(d)+d.Copyright, v.heads) == "" {
		t.Error("a missing word is not noticed")
	}
	moved := strings.Replace(cut, words[1], words[1]+words[len(words)/2], 1)
	if missed(moved, said(d)+d.Copyright, v.heads) == "" {
		t.Error("a moved word is not noticed")
	}
}

func TestMarkdownHoldsTheText(t *testing.T) {
	for seed := range uint64(60) {
		d, v := invent(seed)
		files, err := Markdown(d, "law", Options{})
		if err != nil {
			t.Fatal(err)
		}
		text := strings.ReplaceAll(string(files["law.md"]), `\`, "")
		read := regexp.MustCompile(`(?m)^(rights|description|lang): .*\n`).ReplaceAllString(text, "") // of what stands in front, the title and beneath
		if wrong := missed(read, said(d)+d.Copyright, v.heads); wrong != "" {
			t.Errorf("seed %d: %s", seed, wrong)
		}
		swatches := 0
		for name := range files {
			if len(name) == len("law-f4ecdc.svg") {
				swatches++
			}
		}
		if len(files)-swatches != v.figures+1 {
			t.Errorf("seed %d: %d files and %d swatches, want %d", seed, len(files)-swatches, swatches, v.figures+1)
		}
		for name := range files {
			if name != "law.md" && !strings.Contains(text, "(<"+name+">)") {
				t.Errorf("seed %d: %s is not shown", seed, name)
			}
		}
	}
}

// laid is a document on pages.
func laid(t *testing.T, d document.Document, o Options) (*builder, []page) {
	t.Helper()
	if err := o.check(); err != nil {
		t.Fatal(err)
	}
	b := newBuilder(o.look())
	list := b.document(d)
	if b.err != nil {
		t.Fatal(b.err)
	}
	return b, paginate(list, b.look)
}

func TestPagesHoldTogether(t *testing.T) {
	for seed := range uint64(100) {
		d, v := invent(seed)
		b, pages := laid(t, d, v.paperFor())
		for _, wrong := range parted(pages, b.list, b.room()) {
			t.Errorf("seed %d: %s", seed, wrong)
		}
		for _, wrong := range overflows(b.decorated(d, pages), b.look) {
			t.Errorf("seed %d: %v", seed, wrong)
		}
	}
}

// parted are the places where pages end within what is held together though it would fit on
// one, or end too early.
func parted(pages []page, list []slice, room float64) []string {
	var wrong []string
	var all []slice // as placed
	starts := map[int]int{}
	for n, p := range pages {
		starts[len(all)] = n
		for _, s := range p.placed {
			if !s.again {
				s.above, s.tie = list[s.order].above, list[s.order].tie
				all = append(all, s.slice)
			}
		}
	}
	for i, n := range starts {
		if n == 0 || i >= len(all) {
			continue
		}
		if o := all[i].order; list[o].tie == bound && around(list, o) <= room {
			wrong = append(wrong, fmt.Sprintf("page %d begins within what is held together", n+1))
		}
		if !all[i].newPage && !all[i].opens && pages[n-1].filled()+pages[n].filled()+all[i].above < room-1 {
			wrong = append(wrong, fmt.Sprintf("page %d and the next are nearly empty", n))
		}
	}
	return wrong
}

// around is the height of the slices that are held to slice i.
func around(all []slice, i int) float64 {
	from, to := i, i+1
	for from > 0 && all[from].tie == bound {
		from--
	}
	for to < len(all) && all[to].tie == bound {
		to++
	}
	height := 0.0
	for _, s := range all[from].heads {
		height += s.height
	}
	for j := from; j < to; j++ {
		height += all[j].height
		if j > from {
			height += all[j].above
		}
	}
	return height
}

func TestPartedCatches(t *testing.T) {
	var anywhere, single int
	for seed := range uint64(20) {
		d, _ := invent(seed)
		b := newBuilder(Options{}.look())
		list := b.document(d)
		loose := slices.Clone(list)
		var lines []page
		for i := range loose {
			loose[i].tie = free
			lines = append(lines, page{placed: []placed{{list[i], 0}}})
		}
		anywhere += len(parted(paginate(loose, b.look), list, b.room()))
		single += len(parted(lines, list, b.room()))
	}
	if anywhere == 0 {
		t.Error("pages that end anywhere are not noticed")
	}
	if single == 0 {
		t.Error("a page for each line is not noticed")
	}
}

func TestOverflowCatches(t *testing.T) {
	b, pages := laid(t, sample(), Options{})
	narrow := b.look
	narrow.margin += 3
	if len(overflows(b.decorated(sample(), pages), narrow)) == 0 {
		t.Error("text beyond a margin is not noticed")
	}
}

func TestSamePDF(t *testing.T) {
	for seed := range uint64(12) {
		d, v := invent(seed)
		o := v.paperFor()
		if _, pages := laid(t, d, o); len(pages) > 40 {
			continue
		}
		one, err := PDF(d, o)
		two, _ := PDF(d, o)
		if err != nil || !bytes.Equal(one.File, two.File) {
			t.Errorf("seed %d: two files of one document differ, or %v", seed, err)
		}
		d.Title += "."
		if other, _ := PDF(d, o); bytes.Equal(one.File, other.File) {
			t.Errorf("seed %d: files of two documents are alike", seed)
		}
	}
}
