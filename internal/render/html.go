package render

import (
	"bytes"
	"eighthturn/internal/document"
	_ "embed"
	"fmt"
	"html"
	"slices"
	"strconv"
	"strings"
)

//go:embed page.css
var stylesheet string

//go:embed page_dark.css
var darkStylesheet string

// HTML writes a document as one page that asks for nothing else: its style and its pictures
// are within. It is dark where a screen is. Words of the document are escaped; the same document gives the same bytes.
func HTML(d document.Document) ([]byte, error) {
	return htmlIn(d, "light dark", stylesheet+darkStylesheet)
}

// PaperHTML is such a page that shows what is printed, and so is white on any screen.
func PaperHTML(d document.Document) ([]byte, error) { return htmlIn(d, "light", stylesheet) }

func htmlIn(d document.Document, schemes, style string) ([]byte, error) {
	d = withoutRuled(d.Print())
	if err := check(d); err != nil {
		return nil, err
	}
	w := &web{}
	w.head(d, schemes, style)
	w.titles(d)
	w.contents(d)
	w.put("<main>\n")
	for i, p := range d.Sections {
		w.part(p, i)
	}
	w.put("</main>\n")
	if text := line(d.Copyright); text != "" && !saidAtTheBack(d, text) {
		w.put("<footer>\n<p>", escaped(text), "</p>\n</footer>\n")
	}
	w.put("</body>\n</html>\n")
	return w.page.Bytes(), w.err
}

// web writes a page.
type web struct {
	page  bytes.Buffer
	level int // of the headings around
	err   error
}

// put appends what is ready for the page: tags of ours and escaped text.
func (w *web) put(parts ...string) {
	for _, p := range parts {
		w.page.WriteString(p)
	}
}

// escaped is text of the document for a page, cleaned.
func escaped(text string) string { return html.EscapeString(clean(text)) }

// pagePolicy lets a page have its own style and the pictures within it, and nothing else: it runs no script and loads
// nothing (Content Security Policy Level 3, delivered by a meta element).
const pagePolicy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'"

func (w *web) head(d document.Document, schemes, style string) {
	w.put("<!DOCTYPE html>\n<html lang=\"", escaped(languageOf(d)), "\">\n<head>\n<meta charset=\"utf-8\">\n",
		"<meta http-equiv=\"Content-Security-Policy\" content=\"", pagePolicy, "\">\n",
		"<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<meta name=\"color-scheme\" content=\"", schemes, "\">\n",
		"<title>", escaped(d.Title), "</title>\n")
	for _, m := range [][2]string{{"author", d.Author}, {"description", d.Subject}, {"keywords", d.Keywords}} {
		if text := line(m[1]); text != "" {
			w.put("<meta name=\"", m[0], "\" content=\"", escaped(text), "\">\n")
		}
	}
	w.put("<style>\n", style, "</style>\n</head>\n<body>\n")
}

func (w *web) titles(d document.Document) {
	open := "<header>"
	if d.Cover != nil {
		open = "<header class=\"cover\">"
	}
	w.put(open, "\n<h1>", escaped(d.Title), "</h1>\n")
	if d.Cover != nil && line(d.Cover.Subtitle) != "" {
		w.put("<p class=\"subtitle\">", escaped(d.Cover.Subtitle), "</p>\n")
	}
	if line(d.Maker) != "" {
		w.put("<p class=\"maker\">", escaped(d.Maker), "</p>\n")
	}
	if d.Cover != nil {
		if d.Cover.Picture != nil {
			w.illustration(shapeOf(*d.Cover.Picture))
		}
		for _, t := range d.Cover.Lines {
			w.put("<p>")
			w.text(t)
			w.put("</p>\n")
		}
	}
	w.put("</header>\n")
}

// contents lists the parts that have a heading; a single one is found without.
func (w *web) contents(d document.Document) {
	var list []int
	for i, p := range d.Sections {
		if line(p.Title) != "" {
			list = append(list, i)
		}
	}
	if len(list) < 2 {
		return
	}
	w.put("<nav aria-label=\"Contents\">\n<ul>\n")
	for _, i := range list {
		w.put("<li><a href=\"#part-", strconv.Itoa(i+1), "\">", escaped(d.Sections[i].Title), "</a></li>\n")
	}
	w.put("</ul>\n</nav>\n")
}

func (w *web) part(p document.Section, i int) {
	number := strconv.Itoa(i + 1)
	class := ""
	if p.NewPage || p.Alone {
		class = " class=\"new\""
	}
	w.level = 1
	head := ""
	if line(p.Title) == "" {
		w.put("<section id=\"part-", number, "\"", class, ">\n")
		if _, breaks := first(p.Blocks).(document.PageBreak); breaks && class != "" { // a second one would leave a page empty
			p.Blocks = p.Blocks[1:]
		}
	} else {
		w.level = 2
		w.put("<section id=\"part-", number, "\"", class, " aria-labelledby=\"head-", number, "\">\n")
		head = "<h2 id=\"head-" + number + "\">" + escaped(p.Title) + "</h2>\n"
	}
	w.headed(head, p.Blocks)
	w.put("</section>\n")
}

func first(list []document.Block) document.Block {
	if len(list) == 0 {
		return nil
	}
	return list[0]
}

func (w *web) blocks(list []document.Block) { w.headed("", list) }

// headed writes blocks beneath a heading that is ready for the page, "" for none. Headings and what is short behind them are held together,
// since not every browser that prints keeps a heading with what follows.
func (w *web) headed(head string, list []document.Block) {
	for head != "" || len(list) > 0 {
		n := slices.IndexFunc(list, func(b document.Block) bool { _, is := b.(document.Heading); return !is })
		if n < 0 {
			n = len(list)
		}
		held := (head != "" || n > 0) && n < len(list) && isShort(list[n])
		if held {
			w.put("<div class=\"together\">\n")
		}
		w.put(head)
		for _, b := range list[:min(n+1, len(list))] {
			w.block(b)
		}
		if held {
			w.put("</div>\n")
		}
		head, list = "", list[min(n+1, len(list)):]
	}
}

// shortRows is how many rows or items what is held together has at the most.
const shortRows = 8

// isShort says whether a block is held together with its heading in print.
func isShort(b document.Block) bool {
	switch v := b.(type) {
	case document.Paragraph, document.Picture, document.Together:
		return true
	case document.Figure:
		return !v.Of.TrueSize
	case document.Table:
		return len(v.Rows) <= shortRows
	case document.List:
		return len(v.Items) <= shortRows && !slices.ContainsFunc(v.Items, func(i document.Item) bool { return len(i.Blocks) > 0 })
	}
	return false
}

func (w *web) block(b document.Block) {
	switch v := b.(type) {
	case document.Heading:
		w.level = min(min(max(v.Level, 1), 3)+2, w.level+1)
		tag := "h" + strconv.Itoa(w.level)
		w.put("<", tag, ">", escaped(v.Text), "</", tag, ">\n")
	case document.Paragraph:
		w.put("<p>")
		w.text(v.Text)
		w.put("</p>\n")
	case document.List:
		w.list(v)
	case document.Source:
		w.put("<pre>", html.EscapeString(strings.Join(v.Lines, "\n")), "</pre>\n")
	case document.Table:
		w.table(v)
	case document.Figure:
		w.illustration(shapeOf(v))
	case document.Picture:
		w.illustration(shapeOf(v))
	case document.Gallery:
		w.put("<div class=\"gallery across-", strconv.Itoa(galleryColumns(v)), "\">\n")
		for _, p := range v.Pictures {
			w.illustration(shapeOf(p))
		}
		w.put("</div>\n")
	case document.Box:
		w.box(v)
	case document.PageBreak:
		w.put("<div class=\"break\"></div>\n")
	case document.Together:
		w.put("<div class=\"together\">\n")
		w.blocks(v.Blocks)
		w.put("</div>\n")
	}
}

func (w *web) text(t document.Text) {
	for _, r := range runs(t) {
		text := html.EscapeString(r.Text)
		if r.Bold {
			text = "<strong>" + text + "</strong>"
		}
		if r.Small {
			text = "<small>" + text + "</small>"
		}
		w.put(text)
	}
}

func (w *web) list(l document.List) {
	open, end := "<ul>\n", "</ul>\n"
	switch l.Marker {
	case document.Numbered:
		open, end = "<ol>\n", "</ol>\n"
		if max(l.First, 1) > 1 {
			open = fmt.Sprintf("<ol start=\"%d\">\n", max(l.First, 1))
		}
	case document.Tick:
		open = "<ul class=\"tick\">\n"
	}
	w.put(open)
	for _, item := range l.Items {
		w.put("<li>")
		w.text(item.Text)
		if len(item.Blocks) > 0 {
			w.put("\n")
			w.blocks(item.Blocks)
		}
		w.put("</li>\n")
	}
	w.put(end)
}

func (w *web) box(b document.Box) {
	class := "note"
	if b.Caution {
		class = "caution"
	}
	w.put("<div role=\"note\" class=\"box ", class, "\">\n<p class=\"word\"><strong>", escaped(b.Head()), "</strong></p>\n")
	w.blocks(b.Blocks)
	w.put("</div>\n")
}

func (w *web) illustration(s shape) {
	picture, err := s.svg(true)
	if err != nil && w.err == nil {
		w.err = err
	}
	class := "plate"
	if s.figure.TrueSize {
		class = "plate true" // on paper it keeps its size
	}
	w.put("<figure>\n<div class=\"", class, "\">\n")
	w.page.Write(picture)
	w.put("</div>\n")
	if len(s.caption) > 0 {
		w.put("<figcaption>")
		w.text(s.caption)
		w.put("</figcaption>\n")
	}
	w.put("</figure>\n")
}
