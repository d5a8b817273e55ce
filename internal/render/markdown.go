package render

import (
	"bytes"
	"eighthturn/internal/document"
	"eighthturn/layout"
	"fmt"
	"path"
	"strconv"
	"strings"
)

// Markdown writes a document for editing: the text as name.md, and each illustration as an SVG
// file beside it, name-1.svg and so on. What is of true size stands in TrueSizeFile, a PDF put on paper by the options, and the
// text refers to it. The map holds each file's content by its name.
func Markdown(d document.Document, name string, o Options) (map[string][]byte, error) {
	d = withoutRuled(d.Print())
	if err := check(d); err != nil {
		return nil, err
	}
	if name == "" || path.Base(name) != name || name == "." || name == ".." || strings.ContainsAny(name, `\:`) {
		return nil, fmt.Errorf("the files' name is %s, but a name without folders was wanted", quoted(name))
	}
	m := &marked{name: name, files: map[string][]byte{}}
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
	name   string
	files  map[string][]byte
	out    bytes.Buffer
	indent string // before each line: of lists and quotations
	lead   string // before the next line instead of the indent
	level  int
	err    error
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
	m.paragraph("# " + spelled(d.Title))
	if d.Cover != nil && line(d.Cover.Subtitle) != "" {
		m.paragraph(started(spelled(d.Cover.Subtitle)))
	}
	if line(d.Maker) != "" {
		m.paragraph(started(spelled(d.Maker)))
	}
	if d.Cover != nil {
		if d.Cover.Picture != nil {
			m.illustration(shapeOf(*d.Cover.Picture))
		}
		for _, t := range d.Cover.Lines {
			m.text(t)
		}
	}
	for _, p := range d.Sections {
		m.level = 1
		if line(p.Title) != "" {
			m.level = 2
			m.paragraph("## " + spelled(p.Title))
		}
		m.blocks(p.Blocks)
	}
	if line(d.Copyright) != "" {
		m.paragraph(started(spelled(d.Copyright)))
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
		m.level = min(min(max(v.Level, 1), 3)+2, m.level+1)
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
	heads, rules := make([]string, len(t.Columns)), make([]string, len(t.Columns))
	for i, c := range t.Columns {
		heads[i] = celled(spelled(c.Title))
		rules[i] = "---"
		if c.Kind.Right() {
			rules[i] = "--:"
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
			row[i] = celled(strings.TrimSpace(swatched(c.Swatches) + styled(said)))
		}
		m.cells(row)
	}
	m.line("")
}

func (m *marked) cells(list []string) { m.line("| " + strings.Join(list, " | ") + " |") }

// swatched says swatches in words; those without a letter are said by the words beside them.
func swatched(list []document.Swatch) string {
	var text string
	for _, s := range list {
		if line(s.Letter) == "" {
			continue
		}
		text += "**" + spelled(s.Letter) + "** (" + s.Colour.Hex() + ") "
	}
	return text
}

func (m *marked) illustration(s shape) {
	if s.figure.TrueSize {
		m.paragraph("[" + spelled(textLine(s.caption)) + "](<" + TrueSizeFile + ">)")
		return
	}
	picture, err := s.svg(false)
	if err != nil && m.err == nil {
		m.err = err
	}
	file := m.name + "-" + strconv.Itoa(len(m.files)+1) + ".svg"
	m.files[file] = picture
	m.paragraph("![" + spelled(s.alternative) + "](<" + file + ">)")
	m.text(s.caption)
}
