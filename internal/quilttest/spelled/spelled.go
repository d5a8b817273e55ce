// Package spelled spells documents and figures out for tests, a line for each thing, with all that is in them: words, numbers, places, and what
// each line is about. It reads them by itself, as no renderer does, so that whatever changes in a document shows in the text.
package spelled

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
)

// Book is the text. What stood above word by word, as cautions do in every pattern, is cut to its first words.
type Book struct {
	text strings.Builder
	seen map[string]bool

	Drawn *regexp.Regexp // the titles of figures that are spelled out mark by mark; of others their marks are counted; nil for none
}

// New is an empty book.
func New() *Book { return &Book{seen: map[string]bool{}} }

// Page is the text since the last page.
func (b *Book) Page() string {
	defer b.text.Reset()
	return b.text.String()
}

// Line adds a line of one's own.
func (b *Book) Line(format string, args ...any) { fmt.Fprintf(&b.text, format+"\n", args...) }

// long is from how many letters on a text that stood above is cut to so many, and so many.
const long, cut = 48, 28

func (b *Book) once(text string) string {
	text = strings.ReplaceAll(strings.ReplaceAll(text, "\n", "\\n"), "\u00a0", "~")
	if utf8.RuneCountInString(text) < long {
		return text
	}
	if b.seen[text] {
		return string([]rune(text)[:cut]) + "…"
	}
	b.seen[text] = true
	return text
}

// Document spells a document out.
func (b *Book) Document(d document.Document) {
	b.Line("## %s", b.once(d.Title))
	for _, property := range [][2]string{{"maker", d.Maker}, {"author", d.Author}, {"subject", d.Subject}, {"keywords", d.Keywords}, {"copyright", d.Copyright}, {"language", d.Language}} {
		if property[1] != "" {
			b.Line("%s: %s", property[0], property[1])
		}
	}
	if c := d.Cover; c != nil {
		b.Line("cover: %s", c.Subtitle)
		for _, line := range c.Lines {
			b.Line("  %s", b.styled(line))
		}
		if c.Picture != nil {
			b.block("  ", *c.Picture)
		}
	}
	for i := range d.Sections {
		b.Section("", &d.Sections[i])
	}
}

// Section spells a section out, behind some blanks.
func (b *Book) Section(in string, s *document.Section) {
	b.Line("%s== %s [%s]%s%s%s", in, b.once(s.Title), s.ID, flags(map[string]bool{"detail": s.Depth == document.Detail, "why": s.Depth == document.Why, "new page": s.NewPage, "back": s.Back, "alone": s.Alone}),
		swatches(s.Swatches), about(s.About, s.Tone))
	b.Blocks(in+" ", s.Blocks)
}

// Blocks spells blocks out, behind some blanks.
func (b *Book) Blocks(in string, list []document.Block) {
	for _, one := range list {
		b.block(in, one)
	}
}

func (b *Book) block(in string, one document.Block) {
	switch v := one.(type) {
	case document.Section:
		b.Section(in, &v)
	case document.Heading:
		b.Line("%s%s %s", in, strings.Repeat("=", 2+v.Level), b.once(v.Text))
	case document.Paragraph:
		b.Line("%s%s%s", in, b.styled(v.Text), about(v.About, v.Tone))
	case document.Source:
		b.Line("%s> %s", in, strings.Join(v.Lines, " / "))
	case document.List:
		b.list(in, &v)
	case document.Table:
		b.table(in, &v)
	case document.Figure:
		b.figure(in, &v)
	case document.Picture:
		b.picture(in, &v)
	case document.Gallery:
		b.Line("%sgallery, %d across", in, v.Across)
		for _, p := range v.Pictures {
			b.block(in+"  ", p)
		}
	case document.Box:
		b.Line("%sbox %q%s", in, v.Word, flags(map[string]bool{"caution": v.Caution}))
		b.Blocks(in+"  ", v.Blocks)
	case document.Together:
		b.Line("%stogether", in)
		b.Blocks(in+"  ", v.Blocks)
	default:
		b.Line("%s%T", in, one)
	}
}

func (b *Book) list(in string, l *document.List) {
	for i := range l.Items {
		sign := "-"
		switch l.Marker {
		case document.Numbered:
			sign = strconv.Itoa(max(l.First, 1)+i) + "."
		case document.Tick:
			sign = "[ ]"
		}
		b.Line("%s%s %s%s", in, sign, b.styled(l.Items[i].Text), about(l.Items[i].About, l.Items[i].Tone))
		b.Blocks(in+"   ", l.Items[i].Blocks)
	}
}

// wide is how many columns a table has at the most whose rows are spelled out cell by cell; of others the cells with something in them.
const wide = 40

func (b *Book) table(in string, t *document.Table) {
	b.Line("%stable %s%s", in, t.Caption, flags(map[string]bool{"named": t.Named}))
	var heads []string
	for i := range t.Columns {
		c := &t.Columns[i]
		head := c.Title + flags(map[string]bool{"lengths": c.Kind == document.Lengths, "counts": c.Kind == document.Counts, "swatches": c.Kind == document.Swatches, "aside": c.Aside, "by size": c.BySize, "sum": c.Sum})
		if c.Factors != nil {
			head += " = " + strings.Join(c.Factors, " x ")
		}
		heads = append(heads, head)
	}
	b.Line("%s  %s", in, strings.Join(heads, " | "))
	for i := range t.Rows {
		r := &t.Rows[i]
		var cells []string
		for n, c := range r.Cells {
			text := strings.TrimSpace(swatches(c.Swatches) + " " + b.styled(c.Text))
			if c.Number != "" {
				text += "=" + c.Number
			}
			if len(t.Columns) > wide {
				if text == "" {
					continue
				}
				text = t.Columns[n].Title + " " + text
			}
			cells = append(cells, text)
		}
		b.Line("%s  | %s%s%s", in, strings.Join(cells, " | "), flags(map[string]bool{"total": r.Total}), about(r.About, r.Tone))
		for _, under := range r.Under {
			b.Line("%s    %s", in, b.styled(under))
		}
		if r.Figure != nil {
			b.figure(in+"    ", r.Figure)
		}
	}
	if t.More != nil {
		b.Line("%s  %s", in, t.More)
	}
}

// styled is a text with stars round what is bold and parentheses round what is left out in large print.
func (b *Book) styled(t document.Text) string {
	var text strings.Builder
	for _, r := range t {
		switch {
		case r.Bold:
			text.WriteString("*" + r.Text + "*")
		case r.Small:
			text.WriteString("(" + r.Text + ")")
		default:
			text.WriteString(r.Text)
		}
	}
	return b.once(text.String())
}

func (b *Book) figure(in string, f *document.Figure) {
	b.Line("%sfigure: %s; %s%s%s", in, b.styled(f.Caption), b.once(f.Alternative), widths(f.Width, f.Least), about(f.About, document.Calm))
	if f.Marks != nil {
		b.Line("%s  its marks stand for %d numbers", in, len(f.Marks))
	}
	b.Figure(in+"  ", f.Diagram())
}

func widths(wanted, least measure.NM) string {
	if wanted == 0 && least == 0 {
		return ""
	}
	return fmt.Sprintf(" {%s to %s wide}", mm(least), mm(wanted))
}

// picture spells a picture out layer by layer: how many outlines it has, and where they begin and end.
func (b *Book) picture(in string, p *document.Picture) {
	b.Line("%spicture: %s; %s%s", in, b.styled(p.Caption), b.once(p.Alternative), widths(p.Width, p.Least))
	b.Line("%s  frame %s to %s, %d bytes of ground", in, at(p.Of.Min), at(p.Of.Max), min(len(p.Of.Ground), 1))
	for _, l := range p.Of.Layers {
		fill := "clear"
		if l.Fill != nil {
			fill = l.Fill.Hex()
		}
		var corners []measure.Point
		for _, path := range l.Paths {
			corners = append(corners, path...)
		}
		low, high := frame(corners)
		b.Line("%s  %s", in, b.once(fmt.Sprintf("layer %s %s%s line %.3g %s: %d outlines of %d corners from %s to %s, first %s", l.Name, fill, flags(map[string]bool{"open": l.Open}), l.Line, l.Ink.Hex(), len(l.Paths), len(corners), at(low), at(high), places(corners[:min(4, len(corners))]))))
	}
	b.marks(in+"  ", p.Of.Marks)
}

func frame(list []measure.Point) (low, high measure.Point) {
	for i, p := range list {
		if i == 0 {
			low, high = p, p
		}
		low, high = measure.Point{X: min(low.X, p.X), Y: min(low.Y, p.Y)}, measure.Point{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
	}
	return low, high
}

// Figure spells a figure out, behind some blanks.
func (b *Book) Figure(in string, f *diagram.Figure) {
	b.Line("%s%s: %s [%s to %s]%s", in, b.once(f.Title), b.once(f.Description), at(f.Min), at(f.Max), flags(map[string]bool{"true size": f.TrueSize, "no legend": f.NoLegend}))
	if b.Drawn == nil || !b.Drawn.MatchString(f.Title) {
		b.Line("%s%d marks in %d panels", in, len(f.Marks), len(f.Panels))
		return
	}
	if len(f.Panels) == 0 {
		b.marks(in, f.Marks)
	}
	for i := range f.Panels {
		p := &f.Panels[i]
		b.Line("%spanel %s (%s) [%s to %s] from mark %d", in, p.Caption, p.Note, at(p.Min), at(p.Max), p.First)
		b.marks(in+"  ", f.Marks[p.First:p.First+p.Count])
	}
}

// marks spells marks out, those in a row that look alike on one line.
func (b *Book) marks(in string, list []diagram.Mark) {
	last := ""
	var line []string
	end := func() {
		if len(line) > 0 {
			b.Line("%s%s", in, b.once(last+": "+strings.Join(line, " / ")))
		}
		line = nil
	}
	for i := range list {
		look, where := marked(&list[i])
		if list[i].Lit != nil {
			where += " @" + runs(list[i].Lit)
		}
		if look != last {
			end()
		}
		last, line = look, append(line, where)
	}
	end()
}
