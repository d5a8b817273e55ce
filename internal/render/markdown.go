package render

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"path"
	"strconv"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/layout"
)

// Markdown writes a document for editing: the text as name.md, and each illustration as an SVG
// file beside it, name-1.svg and so on, and each color of the tables' swatches, name-f4ecdc.svg. What is of true size stands in
// TrueSizeFile, a PDF put on paper by the options, and the text refers to it. The map holds each file's content by its name.
func Markdown(d document.Document, name string, o Options) (map[string][]byte, error) {
	return markdown(d, name, true, o)
}

// markdown writes a document with pictures of its swatches, or with their colors in words.
func markdown(d document.Document, name string, pictured bool, o Options) (map[string][]byte, error) {
	d = withoutRuled(d.Print())
	if err := check(d); err != nil {
		return nil, err
	}
	if name == "" || path.Base(name) != name || name == "." || name == ".." || strings.ContainsAny(name, `\:`) {
		return nil, fmt.Errorf("the files' name is %s, but a name without folders was wanted", quoted(name))
	}
	m := &marked{name: name, pictured: pictured, files: map[string][]byte{}}
	m.document(d)
	if plates, ok := trueSize(d); ok && m.err == nil {
		printed, err := PDF(plates, o)
		if err != nil {
			return nil, err
		}
		m.files[TrueSizeFile] = printed.File
	}
	m.files[name+".md"] = append(bytes.TrimRight(m.out.Bytes(), "\n"), '\n')
	return m.files, m.err
}

// marked writes Markdown (CommonMark, with the tables of GitHub Flavored Markdown).
type marked struct {
	name     string
	pictured bool // swatches are pictures
	files    map[string][]byte
	figures  int
	out      bytes.Buffer
	indent   string // before each line: of lists and quotations
	lead     string // before the next line instead of the indent
	top      int    // the level of the title, below which chapters are; 0 where it stands in front
	level    int
	err      error
}

// line writes one line.
func (m *marked) line(text string) {
	lead := m.indent
	if m.lead != "" {
		lead, m.lead = m.lead, ""
	}
	m.out.WriteString(strings.TrimRight(lead+text, " ") + "\n")
}

// paragraph writes a line and an empty one.
func (m *marked) paragraph(text string) {
	m.line(text)
	m.line("")
}

func (m *marked) document(d document.Document) {
	if m.pictured {
		m.front(d)
	} else {
		m.top = 1
		m.paragraph("# " + spelled(d.Title))
	}
	m.cover(d)
	for _, p := range d.Sections {
		m.level = m.top
		if line(p.Title) != "" {
			m.block(document.Heading{Text: p.Title})
		}
		if p.Back {
			p.Blocks = besideTitle(p.Blocks, d)
		}
		if p.Back || p.Alone {
			p.Blocks = pictureFirst(p.Blocks)
		}
		m.blocks(p.Blocks)
	}
	if line(d.Copyright) != "" && !saidAtTheBack(d, d.Copyright) {
		m.paragraph(started(spelled(d.Copyright)))
	}
}

// cover writes what of the cover does not stand in front.
func (m *marked) cover(d document.Document) {
	if line(d.Maker) != "" && (line(d.Author) == "" || !m.pictured) {
		m.paragraph(started(spelled(d.Maker)))
	}
	if d.Cover == nil {
		return
	}
	if d.Cover.Picture != nil {
		front := shapeOf(*d.Cover.Picture)
		front.cover = true
		m.illustration(front)
	}
	for _, t := range d.Cover.Lines {
		m.text(t)
	}
}

func (m *marked) blocks(list []document.Block) {
	for _, b := range list {
		m.block(b)
	}
}

func (m *marked) block(b document.Block) {
	switch v := b.(type) {
	case document.Heading:
		m.level = min(min(max(v.Level, 1), 3)+m.top+1, m.level+1)
		m.paragraph(strings.Repeat("#", m.level) + " " + spelled(v.Text))
	case document.Paragraph:
		m.text(v.Text)
	case document.List:
		m.list(v)
	case document.Source:
		for _, line := range v.Lines {
			m.line(strings.TrimRight("    "+layout.Visible(line), " "))
		}
		m.line("")
	case document.Table:
		m.table(v)
	case document.Figure:
		m.illustration(shapeOf(v))
	case document.Picture:
		m.illustration(shapeOf(v))
	case document.Gallery:
		for _, p := range v.Pictures {
			m.illustration(shapeOf(p))
		}
	case document.Box:
		m.within("> ", func() {
			m.paragraph("**" + spelled(v.Head()) + "**")
			m.blocks(v.Blocks)
		})
		// An empty line of the quotation's own would draw what follows into it, as pandoc reads it.
		if end := []byte("\n" + m.indent + ">\n"); bytes.HasSuffix(m.out.Bytes(), end) {
			m.out.Truncate(m.out.Len() - len(end) + 1)
			m.line("")
		}
	case document.Together:
		m.blocks(v.Blocks)
	}
}

func (m *marked) text(t document.Text) {
	if text := styled(t); text != "" {
		m.paragraph(started(text))
	}
}

// within indents what is written.
func (m *marked) within(by string, write func()) {
	before := m.indent
	m.indent += by
	write()
	m.indent = before
}

func (m *marked) list(l document.List) {
	for i, item := range l.Items {
		sign := "- "
		switch l.Marker {
		case document.Numbered:
			sign = itemSign(l, i) + " "
		case document.Tick:
			sign = "- [ ] "
		}
		by := len(sign)
		if l.Marker == document.Tick {
			by = len("- ")
		}
		m.lead = m.indent + sign
		m.within(strings.Repeat(" ", by), func() {
			m.line(started(styled(item.Text)))
			if len(item.Blocks) > 0 {
				m.line("")
				m.blocks(item.Blocks)
			}
		})
	}
	m.line("")
}

func (m *marked) table(t document.Table) {
	m.text(bold(t.Caption))
	heads, rules, shares, centered := make([]string, len(t.Columns)), make([]string, len(t.Columns)), columnShares(&t), numbersCentered(&t)
	for i, c := range t.Columns {
		heads[i] = celled(spelled(c.Title))
		rules[i] = strings.Repeat("-", shares[i])
		if c.Kind.Right() {
			rules[i] = rules[i][1:] + ":"
			if centered {
				rules[i] = ":" + rules[i][1:]
			}
		}
	}
	m.cells(heads)
	m.cells(rules)
	for _, r := range t.Rows {
		row := make([]string, len(t.Columns))
		for i, c := range r.Cells {
			said := c.Text
			if r.Total || across(r, len(t.Columns)) {
				said = bold(said)
			}
			row[i] = celled(strings.TrimSpace(m.swatched(c.Swatches) + styled(said)))
		}
		m.cells(row)
	}
	m.line("")
}

func (m *marked) cells(list []string) { m.line("| " + strings.Join(list, " | ") + " |") }

// swatched shows swatches, or says them in words; those without a letter are said by the words beside them.
func (m *marked) swatched(list []document.Swatch) string {
	var text string
	for _, s := range list {
		letter := ""
		if line(s.Letter) != "" {
			letter = "**" + spelled(s.Letter) + "**\u00a0" // a letter and its swatch stay on one line
		}
		hex := s.Colour.Hex()
		switch {
		case m.pictured:
			file := m.name + "-" + strings.TrimPrefix(hex, "#") + pictureEnding
			m.files[file] = []byte(xml.Header + `<svg xmlns="http://www.w3.org/2000/svg" width="16" height="12"><title>` + hex +
				`</title><rect x="0.5" y="0.5" width="15" height="11" fill="` + hex + `" stroke="#555555"/></svg>` + "\n")
			text += letter + "![" + spelled(hex) + "](<" + file + ">) "
		case letter != "":
			text += letter + "(" + hex + ") "
		}
	}
	return text
}

const pictureEnding = ".svg"

// illustration writes a picture with its caption in one paragraph. Programs that make documents of Markdown take a picture that is a
// paragraph by itself for a figure, and what is for those who cannot see it for its caption; so it never is one.
func (m *marked) illustration(s shape) {
	if s.figure.TrueSize {
		m.paragraph(strings.TrimSpace(started(styled(s.caption)) + " `" + TrueSizeFile + "`")) // a link would lead nowhere in a book
		return
	}
	picture, err := s.svg(false)
	if err != nil && m.err == nil {
		m.err = err
	}
	m.figures++
	file := m.name + "-" + strconv.Itoa(m.figures) + pictureEnding
	m.files[file] = picture
	alternative, more := inShort(s.alternative)
	image := "![" + spelled(alternative) + "](<" + file + ">)"
	if caption := styled(s.caption); caption != "" {
		m.line(image + "\\")
		m.paragraph(started(caption))
	} else {
		m.paragraph(image + "<!-- -->")
	}
	for _, sentence := range more {
		m.line("- " + started(spelled(sentence)))
	}
	if len(more) > 0 {
		m.line("")
	}
}

// maxAlternative is how long what stands in place of a picture may be, in bytes.
const maxAlternative = 400

// inShort is a description's first sentence, and where all of it is long the other ones.
func inShort(text string) (first string, more []string) {
	if len(text) <= maxAlternative {
		return text, nil
	}
	list := strings.Split(text, ". ")
	for i := range list[:len(list)-1] {
		list[i] += "."
	}
	return list[0], list[1:]
}
